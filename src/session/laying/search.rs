//! The search for many lays: a quick pass over all of them first, then longer ones.
//!
//! Lays of one cloth make a chain, from the middle size outward, each beginning with what its neighbour has; chains are independent of each
//! other until all are through a pass, so that two threads do them and nothing hangs on which is faster. After each pass narrower cloth
//! hands its lay to wider cloth, and cloth with nap to cloth without, where theirs is shorter: it lies there as well.
//!
//! A wish may be tried in several ways at once: odd ones behind the folded cloth or on it, from a told lay or from nothing. After the first long
//! pass the shortest goes on alone.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use super::hand::LayHand;
use super::wish::{LayWish, books, jobs_from};
use super::{LayRow, plan_name};
use crate::base::tolerance;
use crate::compute::Model;
use crate::document::ClothLaid;
use crate::finish::Finished;
use crate::output::lay::packing::{Effort, Go, Laid, Layout, PackError, Progress, pack};
use crate::output::lay::{Lay, LayError, LayJob, LayStretch};
use crate::texts::{carried, say};

/// Moves of single pieces for each lay in the first pass.
pub const QUICK_MOVES: u64 = 500;
/// Moves for each lay where nothing else is said.
pub const USUAL_MOVES: u64 = 8_000;
/// At most so many passes.
const MOST_PASSES: u32 = 24;
/// After this pass only the shortest of several ways goes on; where there is time, one that begins with a told lay is held against a fresh one a
/// little longer.
const CHOSEN: (u32, u32) = (1, 2);
/// Chance of what begins anew beside a told lay is another one than that of the told lay's own search.
const AFRESH: u64 = 0xd1b5_4a32_d192_ed03;
/// Whoever looks on is told no more often than this.
const TOLD_EACH: Duration = Duration::from_millis(60);
/// So many threads.
const THREADS: usize = 2;

/// How hard it is looked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LayEffort {
    /// Moves of single pieces for each lay: the same number and seed give the same lays.
    pub moves: u64,
    /// Where chance begins.
    pub seed: u64,
    /// No longer than this, for all lays together: then moves are no limit unless told, and what is found hangs on the machine.
    pub time: Option<Duration>,
}

impl Default for LayEffort {
    fn default() -> Self {
        Self { moves: USUAL_MOVES, seed: 1, time: None }
    }
}

/// Tells the row of a wish something new.
pub(super) type Told<'a> = dyn Fn(usize, &dyn Fn(&mut LayRow)) + Sync + 'a;

/// Whoever looks on: hears a wish, by its place, whenever there is something new of it.
pub type LookOn<'a> = dyn Fn(usize, &LayRow) + Sync + 'a;

/// The same for one wish.
type ToldOne<'a> = dyn Fn(&dyn Fn(&mut LayRow)) + 'a;

/// What time it is: only to end in time, and to tell no more often than can be seen.
#[allow(clippy::disallowed_methods, reason = "lays hang on moves; on time only where the best within it is asked for")]
fn now() -> Instant {
    Instant::now()
}

/// Looks for lays, to the end. `model` and `finished` are of the whole draft.
pub fn lays(
    of: (&Model, &Finished),
    wishes: &[LayWish],
    starts: &[Option<LayHand>],
    effort: &LayEffort,
) -> Vec<LayRow> {
    lays_until(of, (wishes, starts), effort, (&|| false, &|_, _| {}))
}

/// The same, until it is told to stop: then the best so far. `look_on` hears of it.
pub fn lays_until(
    (model, finished): (&Model, &Finished),
    (wishes, starts): (&[LayWish], &[Option<LayHand>]),
    effort: &LayEffort,
    (stop, look_on): (&(dyn Fn() -> bool + Sync), &LookOn<'_>),
) -> Vec<LayRow> {
    let rows: Mutex<Vec<LayRow>> = Mutex::new(wishes.iter().cloned().map(LayRow::new).collect());
    let told = |i: usize, change: &dyn Fn(&mut LayRow)| {
        if let Some(row) = rows.lock().unwrap_or_else(PoisonError::into_inner).get_mut(i) {
            change(row);
            look_on(i, row);
        }
    };
    search((model, finished), (wishes, starts), effort, stop, &told);
    let mut rows = rows.into_inner().unwrap_or_else(PoisonError::into_inner);
    rows.iter_mut().for_each(|r| r.done = true);
    rows
}

/// A wish on its way.
struct Seek {
    wish: LayWish,
    /// All ways to lay it; none where nothing can be laid.
    jobs: Vec<Arc<LayJob>>,
    /// What is tried.
    tries: Vec<Try>,
    best: Option<Arc<Lay>>,
    failed: Option<LayError>,
    /// Pieces that stay, as stretch and place in the lay that it begins with.
    locked: Vec<Vec<Laid>>,
    /// A lay of another size to begin with, instead of its own.
    other: Option<Arc<Lay>>,
    moves: u64,
}

/// One way to lay what is wished.
struct Try {
    job: Arc<LayJob>,
    /// The shortest of it.
    best: Option<Arc<Lay>>,
    /// It takes nothing that was told to begin with.
    is_fresh: bool,
    /// Nothing shorter can be bought in this way.
    settled: bool,
}

impl Seek {
    /// Nothing can be laid.
    fn none(wish: &LayWish, why: LayError) -> Self {
        let (jobs, tries, locked) = (Vec::new(), Vec::new(), Vec::new());
        Self { wish: wish.clone(), jobs, tries, best: None, failed: Some(why), locked, other: None, moves: 0 }
    }

    /// What is tried at first: every way; beside a told lay the same way from nothing, and no other where a piece must stay.
    fn new(wish: &LayWish, jobs: Vec<LayJob>, start: Option<&LayHand>) -> Self {
        let jobs: Vec<Arc<LayJob>> = jobs.into_iter().map(Arc::new).collect();
        let fresh =
            |job: &Arc<LayJob>, is_fresh: bool| Try { job: Arc::clone(job), best: None, is_fresh, settled: false };
        let mut tries: Vec<Try> = jobs.iter().map(|job| fresh(job, false)).collect();
        let (mut best, mut other, mut locked) = (None, None, Vec::new());
        if let Some((lay, stay)) = start.and_then(|hand| hand.over_to(&jobs)) {
            locked = stay;
            let lay = Arc::new(lay);
            let is_own = |t: &Try| Arc::ptr_eq(&t.job, &lay.job);
            if !locked.iter().all(Vec::is_empty) {
                tries.retain(is_own);
            }
            tries.push(fresh(&lay.job, true));
            // What overlaps is something to begin with, but no lay.
            if lay.faults().is_empty() {
                tries.iter_mut().filter(|t| is_own(t) && !t.is_fresh).for_each(|t| t.best = Some(Arc::clone(&lay)));
                best = Some(lay);
            } else {
                other = Some(lay);
            }
        }
        Self { wish: wish.clone(), jobs, tries, best, failed: None, locked, other, moves: 0 }
    }

    /// Nothing more comes of it.
    fn settled(&self) -> bool {
        self.tries.iter().all(|t| t.settled)
    }

    /// Whether a piece must stay where it is.
    fn has_locks(&self) -> bool {
        !self.locked.iter().all(Vec::is_empty)
    }

    /// A lay of another wish as one of this, its odd ones as they lie there; none where that cannot be, or where a piece must stay.
    fn fitted(&self, lay: &Lay) -> Option<Lay> {
        let job = self.jobs.iter().find(|j| j.lies_like(&lay.job)).or(self.jobs.first())?;
        (!self.has_locks()).then(|| fitted(lay, job))
    }

    /// Takes a lay if it is sound and shorter than the best.
    fn take(&mut self, lay: Lay) -> bool {
        let sound = lay.faults().is_empty();
        if !sound && self.best.is_none() {
            self.failed = Some(LayError::NotFound);
        }
        if !sound || !is_shorter(&lay, self.best.as_deref()) {
            return false;
        }
        let lay = Arc::new(lay);
        match self.tries.iter_mut().find(|t| Arc::ptr_eq(&t.job, &lay.job)) {
            Some(own) => own.best = Some(Arc::clone(&lay)),
            None => {
                let (job, best) = (Arc::clone(&lay.job), Some(Arc::clone(&lay)));
                self.tries = vec![Try { job, best, is_fresh: false, settled: false }];
            }
        }
        self.best = Some(lay);
        true
    }

    /// From here on only the shortest goes on; of those alike the first.
    fn choose(&mut self, pass: u32, timed: bool) {
        let longer = timed && self.tries.iter().any(|t| t.is_fresh);
        if pass < if longer { CHOSEN.1 } else { CHOSEN.0 } {
            return;
        }
        let need = |t: &Try| t.best.as_ref().map_or(f64::INFINITY, |b| b.need().exact);
        // A hair is no reason to lay a spare piece.
        let shortest = (1..self.tries.len()).fold(0, |k, other| {
            if need(&self.tries[other]) < need(&self.tries[k]) - tolerance::lay::STEP { other } else { k }
        });
        if shortest < self.tries.len() {
            let chosen = self.tries.swap_remove(shortest);
            self.best = chosen.best.clone().or(self.best.take());
            self.tries = vec![Try { is_fresh: false, ..chosen }];
        }
    }
}

fn is_shorter(lay: &Lay, than: Option<&Lay>) -> bool {
    than.is_none_or(|b| lay.need().exact < b.need().exact - tolerance::EQUAL)
}

/// Looks for lays and tells of them.
pub(super) fn search(
    (model, finished): (&Model, &Finished),
    (wishes, starts): (&[LayWish], &[Option<LayHand>]),
    effort: &LayEffort,
    stop: &(dyn Fn() -> bool + Sync),
    told: &Told<'_>,
) {
    let until = effort.time.and_then(|t| now().checked_add(t));
    let over = || stop() || until.is_some_and(|u| now() >= u);
    let books = books(model, finished);
    let seeks: Vec<Mutex<Seek>> = wishes
        .iter()
        .enumerate()
        .map(|(i, wish)| {
            let jobs = match jobs_from(&books, wish) {
                Ok(jobs) => jobs,
                Err(why) => {
                    told(i, &|row| {
                        row.failed = Some(why.clone());
                        row.done = true;
                    });
                    return Mutex::new(Seek::none(wish, why));
                }
            };
            let seek = Seek::new(wish, jobs, starts.get(i).and_then(Option::as_ref));
            if let Some(best) = &seek.best {
                told(i, &|row| row.best = Some(Arc::clone(best)));
            }
            Mutex::new(seek)
        })
        .collect();
    let chains = chains(wishes);
    for pass in 0..MOST_PASSES {
        // First layouts of all, so that there is a table soon; then better ones of all.
        let (moves, last) = match (pass, until.is_some()) {
            (0, _) => (0, false),
            (1, timed) => (QUICK_MOVES.min(effort.moves), !timed && effort.moves <= QUICK_MOVES),
            (2, false) => (effort.moves.saturating_sub(QUICK_MOVES), true),
            (_, false) => break,
            (pass, true) => (QUICK_MOVES << (pass - 1).min(16), false),
        };
        if pass > 0 && moves == 0 || over() {
            break;
        }
        let seed = effort.seed.wrapping_add(u64::from(pass).wrapping_mul(0x9e37_79b9_7f4a_7c15));
        let next = AtomicUsize::new(0);
        let run = || {
            loop {
                let c = next.fetch_add(1, Ordering::Relaxed);
                let Some(chain) = chains.get(c) else { break };
                for (k, i) in chain.iter().enumerate() {
                    let neighbour = chain[..k].iter().rev().find_map(|n| {
                        let near = wishes[*n].call.sizes.first()?.0.abs_diff(wishes[*i].call.sizes.first()?.0);
                        let best = lock(&seeks[*n]).best.clone()?;
                        Some((near, best))
                    });
                    let mut seek = lock(&seeks[*i]);
                    if over() {
                        return;
                    }
                    if !seek.settled() {
                        let neighbour = neighbour.map(|n| n.1);
                        each_way(&mut seek, neighbour, (moves, seed), &over, &|change| told(*i, change));
                        seek.choose(pass, until.is_some());
                    }
                    if (last || seek.settled()) && !over() {
                        told(*i, &|row| row.done = true);
                    }
                }
            }
        };
        let threads = std::thread::available_parallelism().map_or(1, usize::from).min(THREADS).min(chains.len()).max(1);
        std::thread::scope(|scope| {
            for _ in 1..threads {
                scope.spawn(carried(run));
            }
            run();
        });
        hand_on(&seeks, told);
        odd_sizes(model, &seeks, &chains, told);
        if seeks.iter().all(|s| lock(s).settled()) {
            break;
        }
    }
    for (i, seek) in seeks.iter().enumerate() {
        let seek = lock(seek);
        // What there was no time for has neither a lay nor a reason.
        let failed = seek.failed.clone().filter(|_| seek.best.is_none());
        told(i, &|row| {
            row.failed.clone_from(&failed);
            row.phase = None;
            row.done = true;
        });
    }
}

fn lock<T>(one: &Mutex<T>) -> std::sync::MutexGuard<'_, T> {
    one.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Wishes of one cloth together, from the middle size outward.
fn chains(wishes: &[LayWish]) -> Vec<Vec<usize>> {
    let mut out: Vec<Vec<usize>> = Vec::new();
    let alike = |a: &LayWish, b: &LayWish| {
        let single = |w: &LayWish| w.call.sizes.len() == 1 && w.call.sizes[0].1 <= 1;
        a.view == b.view && a.width == b.width && single(a) && single(b) && {
            let (mut x, y) = (a.call.clone(), &b.call);
            x.sizes.clone_from(&y.sizes);
            x == *y
        }
    };
    for i in 0..wishes.len() {
        match out.iter_mut().find(|chain| alike(&wishes[chain[0]], &wishes[i])) {
            Some(chain) => chain.push(i),
            None => out.push(vec![i]),
        }
    }
    for chain in &mut out {
        chain.sort_by_key(|i| wishes[*i].call.sizes.first().map(|s| s.0));
        let middle = chain.len() / 2;
        let mut order: Vec<usize> = (0..chain.len()).collect();
        order.sort_by_key(|k| (k.abs_diff(middle), *k));
        *chain = order.into_iter().map(|k| chain[k]).collect();
    }
    out
}

/// Looks on in each way that is tried.
fn each_way(
    seek: &mut Seek,
    neighbour: Option<Arc<Lay>>,
    told_effort: (u64, u64),
    over: &(dyn Fn() -> bool + Sync),
    told: &ToldOne<'_>,
) {
    let other = seek.other.take();
    for t in 0..seek.tries.len() {
        if over() {
            return;
        }
        if !seek.tries[t].settled {
            one(seek, t, (other.as_deref(), neighbour.as_deref()), told_effort, over, told);
        }
    }
}

/// Looks for one lay in one way, stretch by stretch.
fn one(
    seek: &mut Seek,
    t: usize,
    (other, neighbour): (Option<&Lay>, Option<&Lay>),
    (moves, seed): (u64, u64),
    over: &(dyn Fn() -> bool + Sync),
    told: &ToldOne<'_>,
) {
    let Try { job, best: own, is_fresh, .. } = &seek.tries[t];
    let (job, own, is_fresh) = (Arc::clone(job), own.clone(), *is_fresh);
    let seed = if is_fresh { seed ^ AFRESH } else { seed };
    // What there is already of another way is a start too, as far as it goes.
    let from = other.or(if own.is_some() { None } else { neighbour.or(seek.best.as_deref()) }).filter(|_| !is_fresh);
    let start = from.map(|lay| fitted(lay, &job)).or_else(|| own.as_deref().cloned());
    let mut layouts: Vec<Layout> = Vec::new();
    let mut settled = true;
    let before = seek.moves;
    let mut last = now();
    for (s, stretch) in job.stretches.iter().enumerate() {
        let own = own.as_ref().and_then(|b| b.layouts.get(s));
        let mut packing = stretch.job.clone();
        packing.before += layouts.iter().map(|l| l.length).sum::<f64>();
        packing.locked = seek.locked.get(s).cloned().unwrap_or_default();
        let begin = start.as_ref().and_then(|lay| lay.layouts.get(s)).filter(|l| !l.laid.is_empty());
        let effort = Effort { moves, seed, start: begin };
        let done = before + (s as u64) * moves;
        let seen_best = seek.best.as_deref();
        let mut watch = |p: &Progress<'_>| {
            if p.is_new || last.elapsed() >= TOLD_EACH {
                last = now();
                let seen = done + p.moves;
                // One stretch alone is the whole lay: what is found is shown at once.
                let whole = job.stretches.len() == 1 && p.is_new;
                let best = whole.then(|| Lay { job: Arc::clone(&job), layouts: vec![p.best.clone()] }.on_grid());
                let best = best.filter(|lay| is_shorter(lay, seen_best)).map(Arc::new);
                let phase = p.phase;
                told(&|row| {
                    row.moves = seen;
                    row.phase = Some(phase);
                    if let Some(best) = &best {
                        row.best = Some(Arc::clone(best));
                    }
                });
            }
            if over() { Go::Stop } else { Go::On }
        };
        match pack(&packing, &effort, &mut watch) {
            Ok(packed) => {
                seek.moves += packed.moves;
                settled &= packed.ended == crate::output::lay::packing::Ended::Least;
                let shorter = own.is_none_or(|o| packed.layout.length < o.length - tolerance::EQUAL);
                layouts.push(if shorter { packed.layout } else { own.cloned().unwrap_or_default() });
            }
            Err(PackError::Stopped) => return,
            Err(why) => {
                seek.failed = Some(match why {
                    PackError::Locked => LayError::Locked,
                    _ => LayError::NotFound,
                });
                seek.tries[t].settled =
                    matches!(why, PackError::Locked | PackError::NoOutline { .. } | PackError::TooWide { .. });
                return;
            }
        }
    }
    let lay = Lay { job, layouts }.on_grid();
    let sound = lay.faults().is_empty();
    // What cannot be shorter is that wherever it began.
    let alike = seek.tries.iter_mut().filter(|other| Arc::ptr_eq(&other.job, &lay.job));
    alike.for_each(|other| other.settled |= settled);
    let own = &mut seek.tries[t];
    if sound && is_shorter(&lay, own.best.as_deref()) {
        own.best = Some(Arc::new(lay));
    }
    match own.best.clone() {
        Some(lay) if is_shorter(&lay, seek.best.as_deref()) => seek.best = Some(lay),
        None if seek.best.is_none() => seek.failed = Some(LayError::NotFound),
        _ => {}
    }
    let (best, moves) = (seek.best.clone(), seek.moves);
    told(&|row| {
        row.best.clone_from(&best);
        row.moves = moves;
        row.failed = None;
    });
}

/// A lay of another job as one to begin with: what is the same piece, in whatever size, lies where it lay.
pub(super) fn fitted(lay: &Lay, job: &Arc<LayJob>) -> Lay {
    let mut layouts: Vec<Layout> = job.stretches.iter().map(|_| Layout::default()).collect();
    let bare = Lay { job: Arc::clone(job), layouts: layouts.clone() };
    for (s, stretch) in job.stretches.iter().enumerate() {
        let (Some(from), Some(layout)) = (lay.job.stretches.get(s), lay.layouts.get(s)) else { continue };
        let one = lay.job.on.sizes.len() == 1 && job.on.sizes.len() == 1;
        // Larger pieces lie farther along the cloth, by as much as there is more of them.
        let farther = (area_of(stretch) / area_of(from)).clamp(0.5, 2.0);
        for piece in &layout.laid {
            let (Some(was), Some(pose)) = (from.shapes.get(piece.shape), lay.pose(s, piece)) else { continue };
            let laid = &mut layouts[s].laid;
            let found = (0..stretch.shapes.len()).find_map(|k| {
                let (now, shape) = (&stretch.shapes[k], &stretch.job.shapes[k]);
                let same = now.name == was.name
                    && now.strip == was.strip
                    && now.cut == was.cut
                    && now.one_layer == was.one_layer
                    && (one || now.size == was.size);
                let free = laid.iter().filter(|l| l.shape == k).count() < shape.count;
                let pose = shape.poses.iter().position(|p| {
                    (p.mirrored, p.turned, p.across.touch) == (pose.mirrored, pose.turned, pose.across.touch)
                })?;
                (same && free).then_some((k, pose))
            });
            if let Some((shape, pose)) = found {
                let (now, was) = (Laid { shape, pose, x: 0.0, y: 0.0 }, lay.room(s, piece).center());
                let middle = bare.room(s, &now).center();
                laid.push(Laid { x: was.x * farther - middle.x, y: was.y - middle.y, ..now });
            }
        }
        layouts[s].laid.sort_by_key(|l| l.shape);
    }
    Lay { job: Arc::clone(job), layouts }.measured()
}

/// All that is laid on a stretch, mm².
fn area_of(stretch: &LayStretch) -> f64 {
    stretch.job.shapes.iter().map(|s| s.area() * s.count as f64).sum::<f64>().max(tolerance::EQUAL)
}

/// Hands lays on to cloth on which they lie as well: wider, or without nap.
fn hand_on(seeks: &[Mutex<Seek>], told: &Told<'_>) {
    let mut order: Vec<usize> = (0..seeks.len()).collect();
    let key = |i: &usize| {
        let seek = lock(&seeks[*i]);
        let nap = seek.jobs.first().is_some_and(|j| j.on.cloth.nap);
        (seek.wish.call.width, !nap)
    };
    order.sort_by(|a, b| {
        let (a, b) = (key(a), key(b));
        a.0.total_cmp(&b.0).then(a.1.cmp(&b.1))
    });
    for (n, i) in order.iter().enumerate() {
        for k in &order[..n] {
            let (from, mut to) = (lock(&seeks[*k]), lock(&seeks[*i]));
            let (Some(best), Some(job)) = (&from.best, to.jobs.first()) else { continue };
            let (a, b) = (&from.wish, &to.wish);
            let cloths = (&best.job.on.cloth, &job.on.cloth);
            let alike = a.view == b.view
                && a.call.material == b.call.material
                && a.call.sizes == b.call.sizes
                && cloths.0.laid == cloths.1.laid
                && (!cloths.1.nap || cloths.0.nap)
                // There the lanes are others.
                && cloths.0.laid != ClothLaid::FoldedToMiddle;
            if alike
                && is_shorter(best, to.best.as_deref())
                && let Some(lay) = to.fitted(best)
            {
                drop(from);
                if to.take(lay) {
                    let best = to.best.clone();
                    told(*i, &|row| row.best.clone_from(&best));
                }
            }
        }
    }
}

/// Where a size needs more than a larger one does, it begins with the larger one's lay the next time; and it is told.
fn odd_sizes(model: &Model, seeks: &[Mutex<Seek>], chains: &[Vec<usize>], told: &Told<'_>) {
    for chain in chains {
        let mut sizes = chain.clone();
        sizes.sort_by_key(|i| lock(&seeks[*i]).wish.call.sizes.first().map(|s| s.0));
        let mut least: Option<usize> = None;
        for i in sizes.iter().rev() {
            let need = |i: usize| lock(&seeks[i]).best.as_ref().map(|b| b.need().exact);
            let (Some(own), larger) = (need(*i), least.and_then(need)) else { continue };
            let odd = larger.is_some_and(|l| l < own - tolerance::PRINT);
            let mut words = None;
            if let Some(from) = least.filter(|_| odd) {
                let (best, wish) = {
                    let s = lock(&seeks[from]);
                    (s.best.clone(), s.wish.clone())
                };
                let mut seek = lock(&seeks[*i]);
                if let Some(best) = best {
                    let lay = seek.fitted(&best);
                    if !lay.is_some_and(|lay| seek.take(lay)) {
                        seek.other = Some(best);
                        let own = &model.of_views()[wish.view.min(model.of_views().len() - 1)];
                        words = Some(say!("lay-longer-than", plan = plan_name(own, &wish)));
                    }
                }
            } else {
                least = Some(*i);
            }
            let best = lock(&seeks[*i]).best.clone();
            told(*i, &|row| {
                row.odd.clone_from(&words);
                row.best.clone_from(&best);
            });
        }
    }
}
