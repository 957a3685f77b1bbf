//! The search for a short layout: a chain of questions, each whether everything fits on a strip of some length, answered by letting pieces overlap
//! and moving those that do, while pairs that resist weigh more and more.
//!
//! The method is that of Gardeyn, Vanden Berghe and Wauters, "An open-source heuristic to reboot 2D nesting research" (arXiv:2509.13329); the line
//! at which a strip is shortened is a chance one, and pieces never leave the strip.

use super::bound::{is_least, sold};
use super::check::faults;
use super::kind::{Kind, Spot};
use super::slide::slide;
use super::strip::Strip;
use super::{Effort, Ended, Go, Job, Layout, PackError, Packed, Phase, Progress, bound, first, start};

/// When a question is given up: so many passes without less overlap, so many times in a row.
#[derive(Clone, Copy, Debug)]
struct Patience {
    passes: usize,
    strikes: usize,
}

const EXPLORING: Patience = Patience { passes: 60, strikes: 2 };
const COMPRESSING: Patience = Patience { passes: 100, strikes: 5 };
/// Less overlap by this share begins the count anew.
const GAIN: f64 = 0.02;
/// How much shorter a strip is asked for.
const SHORTER: f64 = 1.0 / 1000.0;
/// The same while a layout is compressed: at first, at last, and what is left of it after a failure.
const COMPRESSED: (f64, f64, f64) = (0.5 / 1000.0, 0.01 / 1000.0, 0.8);
/// The share of the moves in which shorter lengths are tried, as a fraction.
const EXPLORED: (u64, u64) = (4, 5);
/// How widely earlier tries are drawn from again: the deviation of the normal distribution over the pool, the best first.
const POOL_SPREAD: f32 = 0.25;
/// Earlier tries that are kept.
const POOL: usize = 200;
/// Tries for the next lower step of sale, before it is approached by small steps.
const ASKS: usize = 4;
/// A start that overlaps is given so much more length, so often, each time after little patience.
const LONGER: (f32, usize) = (1.015, 14);
const LOOSENING: Patience = Patience { passes: 12, strikes: 1 };

/// All begins anew when nothing was won for so many moves of each piece, and for so many times the moves that led there.
const STALE: (u64, u64) = (500, 1);

/// How a question ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Answer {
    /// Everything fits.
    Fits,
    /// Not found.
    No,
    /// The phase ended, or all.
    Over,
}

/// A search that goes on.
struct Search<'a> {
    /// What is searched for: pieces may lie a little farther apart in it than they must.
    job: &'a Job,
    /// What a layout must be.
    told: &'a Job,
    strip: Strip,
    watch: &'a mut dyn FnMut(&Progress<'_>) -> Go,
    phase: Phase,
    moves: u64,
    /// The moves after which the phase ends, and all.
    ends: (u64, u64),
    best: Layout,
    /// Where the pieces of the best layout lie; none yet before there is one.
    spots: Option<Vec<Spot>>,
    /// The layout from which the search goes on, and its length: the best one, or one of a later run that is not as good yet.
    run: Vec<Spot>,
    length: f64,
    is_new: bool,
    bound: f64,
    /// The phase is over.
    next: bool,
    /// All is over.
    ended: Option<Ended>,
}

/// See [`super::pack`].
pub(super) fn search(
    (told, job): (&Job, &Job),
    kinds: Vec<Kind>,
    effort: &Effort<'_>,
    watch: &mut dyn FnMut(&Progress<'_>) -> Go,
) -> Result<Packed, PackError> {
    let bound = bound::least(job, &kinds);
    let begin = effort.start.map_or(0.0, |s| s.length.clamp(0.0, bound * 10.0));
    let longest = (3.0 * bound + kinds.iter().map(Kind::shortest).sum::<f64>()).max(begin);
    let Some(strip) = Strip::new(job, kinds, longest as f32, effort.seed) else {
        // Nothing is laid at all.
        return Err(PackError::NotFound);
    };
    let explored = effort.moves / EXPLORED.1 * EXPLORED.0 + effort.moves % EXPLORED.1 * EXPLORED.0 / EXPLORED.1;
    let mut search = Search {
        job,
        told,
        strip,
        watch,
        phase: Phase::First,
        moves: 0,
        ends: (explored, effort.moves),
        best: Layout::default(),
        spots: None,
        run: Vec::new(),
        length: f64::INFINITY,
        is_new: false,
        bound,
        next: false,
        ended: None,
    };
    search.begin(effort)?;
    search.explore();
    search.compress();
    let Search { strip, best, moves, bound, ended, .. } = search;
    Ok(Packed { layout: best, moves, evaluations: strip.evaluations, bound, ended: ended.unwrap_or(Ended::Told) })
}

impl Search<'_> {
    /// A first layout: that which is told, if it is good; else one by chance, from which or from the told one the search goes on.
    fn begin(&mut self, effort: &Effort<'_>) -> Result<(), PackError> {
        start::lock(&mut self.strip);
        let told = effort.start.map(|layout| start::spots(&self.strip, layout));
        if let Some(told) = &told
            && told.iter().all(Option::is_some)
        {
            let spots: Vec<Spot> = told.iter().flatten().copied().collect();
            let right = self.strip.right_of(&spots);
            if right <= self.strip.longest() {
                self.strip.restore(&spots, right);
                if self.strip.total() == 0.0 {
                    self.accept();
                }
            }
        }
        if self.spots.is_none() {
            self.strip.clear();
            start::lock(&mut self.strip);
            let Self { strip, watch, best, bound, ended, .. } = self;
            let mut tell = || {
                let go = watch(&Progress { phase: Phase::First, moves: 0, best, is_new: false, bound: *bound });
                if go == Go::Stop {
                    *ended = Some(Ended::Told);
                }
                go
            };
            let laid = first::lay_all(strip, self.job, *bound as f32, &mut tell);
            if self.ended.is_some() {
                return Err(PackError::Stopped);
            }
            laid.ok_or(PackError::NotFound)?;
            if !self.accept() {
                return Err(PackError::Refused);
            }
        }
        let longest = self.best.length.max(effort.start.map_or(0.0, |s| s.length.min(self.best.length * 2.0)));
        if !self.strip.widen(self.job, longest as f32 * 1.05) {
            return Err(PackError::NotFound);
        }
        if let Some(told) = told
            && self.ended.is_none()
            && !self.is_told(&told)
        {
            self.loosen(&told);
        }
        Ok(())
    }

    /// Whether the best layout is the told one.
    fn is_told(&self, told: &[Option<Spot>]) -> bool {
        self.spots.as_ref().is_some_and(|spots| told.iter().zip(spots).all(|(t, s)| t.as_ref() == Some(s)))
    }

    /// Takes the told places, the others from the first layout, and lets them make room for each other.
    fn loosen(&mut self, told: &[Option<Spot>]) {
        let Some(best) = &self.spots else { return };
        let spots: Vec<Spot> = told.iter().zip(best).map(|(told, first)| told.unwrap_or(*first)).collect();
        let length = self.strip.right_of(&spots).min(self.strip.longest());
        let spots: Vec<Spot> = spots.iter().enumerate().map(|(i, s)| self.strip.within(i, *s, length)).collect();
        self.strip.restore(&spots, length);
        for _ in 0..LONGER.1 {
            match self.separate(LOOSENING) {
                Answer::Fits => {
                    self.accept();
                    return;
                }
                Answer::No => {
                    let length = (self.strip.length * LONGER.0).min(self.strip.longest());
                    let spots = self.strip.scaled_to(length);
                    self.strip.restore(&spots, length);
                }
                Answer::Over => return,
            }
        }
    }

    /// Takes the strip as the layout to go on from, if it has no fault and is shorter than that; also as the best one if it is.
    fn accept(&mut self) -> bool {
        let layout = self.strip.layout();
        if layout.length >= self.length || !faults(self.told, &layout).is_empty() {
            return false;
        }
        self.length = layout.length;
        self.strip.length = layout.length as f32;
        self.run = self.strip.spots();
        if self.spots.is_none() || layout.length < self.best.length {
            self.spots = Some(self.run.clone());
            self.best = layout;
            self.is_new = true;
        }
        true
    }

    /// Back to the layout from which the search goes on.
    fn back(&mut self) {
        self.strip.restore(&self.run, self.length as f32);
    }

    /// Goes on from the best layout.
    fn best_again(&mut self) {
        if let Some(spots) = &self.spots {
            self.run.clone_from(spots);
            self.length = self.best.length;
        }
    }

    /// Goes on from a first layout by chance, as if there were none yet.
    fn begin_again(&mut self) {
        self.strip.clear();
        start::lock(&mut self.strip);
        self.length = f64::INFINITY;
        let laid = first::lay_all(&mut self.strip, self.job, self.bound as f32, &mut || Go::On);
        if laid.is_none() || !self.accept() {
            self.best_again();
        }
    }

    /// Counts a move and asks how to go on; whether at all.
    fn tick(&mut self) -> bool {
        self.moves += 1;
        let told =
            Progress { phase: self.phase, moves: self.moves, best: &self.best, is_new: self.is_new, bound: self.bound };
        let go = (self.watch)(&told);
        self.is_new = false;
        match go {
            Go::On => {}
            Go::Next => self.next = true,
            Go::Stop => self.ended = Some(Ended::Told),
        }
        if self.moves >= self.ends.1 && self.ended.is_none() {
            self.ended = Some(Ended::Moves);
        }
        let end = if self.phase == Phase::Compress { self.ends.1 } else { self.ends.0 };
        self.next |= self.moves >= end;
        !self.next && self.ended.is_none()
    }

    /// Whether the best layout cannot be improved; then all is over.
    fn is_least(&mut self) -> bool {
        let least = is_least(self.job, self.best.length, self.bound);
        if least && self.ended.is_none() {
            self.ended = Some(Ended::Least);
        }
        least
    }

    /// Ever shorter lengths, until the phase is over. Where that leads no further, all begins anew: how far it leads is chance.
    fn explore(&mut self) {
        self.enter(Phase::Explore, self.ends.0);
        let (mut asks, mut begun, mut won) = (0, self.moves, self.moves);
        let least = STALE.0 * self.strip.pieces.len() as u64;
        while !self.next && self.ended.is_none() && !self.is_least() {
            self.back();
            let before = sold(self.job, self.length);
            let step = (self.job.step > 0.0 && asks < ASKS).then_some(before - self.job.step);
            let length = step.unwrap_or(self.length * (1.0 - SHORTER)).max(self.bound) as f32;
            let spots = match step {
                Some(_) => self.strip.scaled_to(length),
                None => self.strip.cut_to(length),
            };
            self.strip.restore(&spots, length);
            let until = won.saturating_add(least.max(STALE.1 * (won - begun)));
            match self.try_hard(length, step.map(|_| ASKS), until) {
                Answer::Fits => {
                    won = self.moves;
                    asks = if sold(self.job, self.length) < before { 0 } else { asks };
                }
                Answer::No if step.is_some() => asks = ASKS,
                Answer::No => {
                    self.begin_again();
                    (begun, won) = (self.moves, self.moves);
                }
                Answer::Over => break,
            }
        }
    }

    /// Asks for one length again and again, from disturbed earlier tries, up to `most` times if that is told, and about until so many moves are made.
    fn try_hard(&mut self, length: f32, most: Option<usize>, until: u64) -> Answer {
        let mut pool: Vec<(f64, Vec<Spot>)> = Vec::new();
        let mut tries = 0;
        loop {
            match self.separate(EXPLORING) {
                Answer::Fits if self.accept() => return Answer::Fits,
                // What single precision takes for free and the check does not is counted, so that it cannot go on for ever.
                Answer::Fits if !self.tick() => return Answer::Over,
                Answer::Over => return Answer::Over,
                Answer::Fits | Answer::No => {}
            }
            tries += 1;
            if most.is_some_and(|most| tries >= most) || self.moves >= until {
                return Answer::No;
            }
            let total = self.strip.total();
            let at = pool.partition_point(|(loss, _)| *loss <= total);
            pool.insert(at, (total, self.strip.spots()));
            pool.truncate(POOL);
            let drawn = (self.strip.chance.normal().abs() * POOL_SPREAD * pool.len() as f32) as usize;
            let spots = pool[drawn.min(pool.len() - 1)].1.clone();
            self.strip.restore(&spots, length);
            self.strip.disturb();
        }
    }

    /// Presses the best layout together by ever smaller steps.
    fn compress(&mut self) {
        self.enter(Phase::Compress, self.ends.1);
        self.best_again();
        let (mut by, least, left) = COMPRESSED;
        while !self.next && self.ended.is_none() && !self.is_least() {
            self.back();
            let length = (self.length * (1.0 - by)).max(self.bound) as f32;
            let spots = self.strip.cut_to(length);
            self.strip.restore(&spots, length);
            match self.separate(COMPRESSING) {
                Answer::Fits if self.accept() => {}
                Answer::Fits | Answer::No => {
                    by = (by * left).max(least);
                    self.tick();
                }
                Answer::Over => break,
            }
        }
    }

    fn enter(&mut self, phase: Phase, end: u64) {
        self.phase = phase;
        self.next = false;
        if self.ended.is_none() && self.moves >= self.ends.1 {
            self.ended = Some(Ended::Moves);
        }
        self.next = self.moves >= end;
    }

    /// Moves pieces until none overlap, or it is given up; then they lie with the least overlap that was found.
    fn separate(&mut self, patience: Patience) -> Answer {
        self.strip.forget();
        let mut total = self.strip.total();
        let mut least = (total, self.strip.spots());
        let length = self.strip.length;
        let mut strikes = 0;
        while total > 0.0 && strikes < patience.strikes {
            let begun = least.0;
            let mut stale = 0;
            while stale < patience.passes {
                if !self.pass() {
                    return Answer::Over;
                }
                total = self.strip.total();
                if total == 0.0 {
                    return Answer::Fits;
                }
                if total < least.0 {
                    if total < least.0 * (1.0 - GAIN) {
                        stale = 0;
                    }
                    least = (total, self.strip.spots());
                } else {
                    stale += 1;
                }
                self.strip.weigh();
            }
            strikes = if least.0 < begun * (1.0 - GAIN) { 0 } else { strikes + 1 };
            self.strip.restore(&least.1, length);
        }
        if total == 0.0 { Answer::Fits } else { Answer::No }
    }

    /// Moves every piece that collides once, in a chance order. Whether it goes on.
    fn pass(&mut self) -> bool {
        let movable = |i: &usize| self.strip.pieces[*i].locked.is_none() && self.strip.collides(*i);
        let mut order: Vec<usize> = (0..self.strip.pieces.len()).filter(movable).collect();
        self.strip.chance.shuffle(&mut order);
        for i in order {
            if self.strip.collides(i) {
                slide(&mut self.strip, i);
                if !self.tick() {
                    return false;
                }
            }
        }
        true
    }
}
