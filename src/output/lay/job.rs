//! From what comes on a cloth to what is packed: which pieces lie on folded cloth and which on a single layer, and how each may lie.
//!
//! A cloth that is folded lies in two layers with its right sides together; one place then gives two pieces, one the mirror image of the
//! other, or one piece whose half lies on the fold. What cannot lie so gets a stretch of open cloth behind it. An odd one that is the same when
//! it is turned over may lie on the two layers all the same and be cut from one of them: whether that saves cloth is for the search to find.

use kurbo::Point;

use super::error::LayError;
use super::packing::{Across, Job, Pose, Touch, area, bounds, posed};
use crate::base::tolerance;
use crate::compute::Model;
use crate::document::{ClothLaid, Face, StripGrain};
use crate::finish::{ClothPiece, ClothStrip, NoYield, OnCloth, same_turned_over};
use crate::texts::{readable, t};

/// What is to be laid on one cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct LayJob {
    /// What comes on it.
    pub on: OnCloth,
    /// The stretches of cloth, one behind the other.
    pub stretches: Vec<LayStretch>,
    /// Length of cloth for strips that are counted, mm.
    pub counted: f64,
    /// The strips that are counted: name, size, length of cloth, mm.
    pub strips: Vec<(String, String, f64)>,
    /// What a person should know of it.
    pub notes: Vec<LayNote>,
    /// What could lie on two layers and be cut from one of them, the smallest first.
    pub odd: Vec<OddOne>,
    /// What of that does.
    pub one_layer: Vec<OddOne>,
}

/// What a person should know of a piece by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LayNote {
    /// It is too wide for the folded cloth.
    TooWide(String),
    /// It lies on a single layer of cloth that is folded.
    SingleLayer(String),
    /// Nothing tells its thread.
    Untold(String),
}

impl LayNote {
    /// As a sentence for readers.
    pub fn words(&self) -> String {
        match self {
            Self::TooWide(piece) => t!("lay-note-too-wide", piece = readable(piece)),
            Self::SingleLayer(piece) => t!("lay-note-single", piece = readable(piece)),
            Self::Untold(piece) => t!("lay-note-untold", piece = readable(piece)),
        }
    }
}

/// The last one of a piece, or strip, of which an odd number is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct OddOne {
    /// Whether it is a strip.
    pub strip: bool,
    /// Its place among the pieces, or the strips, of the draft.
    pub place: usize,
    /// Which of the piece's cuts.
    pub cut: usize,
    /// The size: place of its case.
    pub case: usize,
}

/// A stretch of cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct LayStretch {
    /// How the cloth lies there.
    pub laid: ClothLaid,
    /// How wide its folded part is, from the fold on, mm; 0 where none of it is, or all.
    pub folded_part: f64,
    /// What is packed.
    pub job: Job,
    /// For each shape of it what it is.
    pub shapes: Vec<LayShape>,
}

/// What is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct LayShape {
    /// The name of the piece, or of the strip.
    pub name: String,
    /// Whether it is a strip.
    pub strip: bool,
    /// Which of the piece's cuts.
    pub cut: usize,
    /// The size: place of its case.
    pub case: usize,
    /// The address of the size.
    pub size: String,
    /// The place of the piece in the draft.
    pub frame: usize,
    /// How many cut pieces come out of each place.
    pub gives: u32,
    /// Whether it is the half of a piece that lies on a fold.
    pub on_fold: bool,
    /// Whether it lies on two layers and is cut from one of them.
    pub one_layer: bool,
    /// Whether it lies at the border.
    pub at_border: bool,
    /// Whether it may lie one way only.
    pub one_way: bool,
    /// Which side of the cloth it must have up.
    pub face: Face,
    /// Digest of what it is.
    pub digest: u128,
}

/// A part of the width in which pieces lie.
#[derive(Clone, Copy)]
struct Lane {
    from: f64,
    to: f64,
    /// At which end a fold is.
    fold: Touch,
}

/// What becomes of a piece: which shapes where.
struct Making<'a> {
    model: &'a Model,
    on: &'a OnCloth,
    double: Vec<Lane>,
    single: Lane,
    main: Vec<Made>,
    /// What lies on a single layer.
    open: Vec<Made>,
    /// What lies behind cloth that is folded in part, since the single layer beside its fold is too narrow.
    behind: Vec<Made>,
    whole: Lane,
    notes: Vec<LayNote>,
    /// Which odd ones lie on two layers.
    one_layer: &'a [OddOne],
    /// Which could, and how large they are, mm².
    odd: Vec<(OddOne, f64)>,
}

struct Made {
    shape: super::packing::Shape,
    about: LayShape,
}

/// What is to be laid, and how. `one_layer`: the odd ones that lie on two layers where they can, and are cut from one of them.
///
/// # Errors
/// See [`LayError`]: what can lie nowhere.
pub fn lay_job(model: &Model, on: OnCloth, one_layer: &[OddOne]) -> Result<LayJob, LayError> {
    let cloth = &on.cloth;
    let (wide, edge) = (cloth.wide, cloth.selvedge);
    let open = Lane { from: 0.0, to: cloth.usable, fold: Touch::Free };
    let fold = if cloth.laid == ClothLaid::FoldedPart { folded_part(&on) } else { 0.0 };
    let quarter = wide / 4.0;
    let double = match cloth.laid {
        ClothLaid::Open => Vec::new(),
        ClothLaid::Folded => vec![Lane { from: 0.0, to: wide / 2.0 - edge, fold: Touch::From }],
        // In the middle selvedge meets selvedge in the upper layer: nothing lies across.
        ClothLaid::FoldedToMiddle => vec![
            Lane { from: 0.0, to: quarter - edge, fold: Touch::From },
            Lane { from: quarter + edge, to: wide / 2.0, fold: Touch::To },
        ],
        ClothLaid::FoldedPart => vec![Lane { from: 0.0, to: fold - edge, fold: Touch::From }],
    };
    let single = match cloth.laid {
        ClothLaid::FoldedPart => Lane { from: fold, to: wide - fold - edge, fold: Touch::Free },
        _ => open,
    };
    let double = double.into_iter().filter(|l| l.to - l.from > tolerance::EQUAL).collect();
    let mut making = Making {
        model,
        on: &on,
        double,
        single,
        main: Vec::new(),
        open: Vec::new(),
        behind: Vec::new(),
        whole: open,
        notes: Vec::new(),
        one_layer,
        odd: Vec::new(),
    };
    for piece in &on.pieces {
        making.piece(piece)?;
    }
    let (mut counted, mut strips) = (0.0, Vec::new());
    for strip in &on.strips {
        let told = &model.draft.strips[strip.place];
        if strip.laid {
            making.strip(strip, &told.name)?;
            continue;
        }
        let size = size_of(model, strip.case);
        match strip.from_cloth(cloth.usable) {
            Some(Ok(from)) => {
                counted += from.cloth;
                strips.push((told.name.clone(), size, from.cloth));
            }
            why => {
                let most = match why {
                    Some(Err(NoYield::NotJoined(most))) => Some(most),
                    _ => None,
                };
                return Err(LayError::Strip { strip: told.name.clone(), size, usable: cloth.usable, most });
            }
        }
    }
    let Making { main, open: rest, behind, mut notes, mut odd, .. } = making;
    odd.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
    let odd: Vec<OddOne> = odd.into_iter().map(|o| o.0).collect();
    let one_layer = odd.iter().copied().filter(|o| one_layer.contains(o)).collect();
    let untold = on.pieces.iter().filter(|p| p.untold_grain).map(|p| model.draft.pieces[p.frame].name.as_str());
    let mut untold: Vec<&str> = untold.collect();
    untold.dedup();
    notes.extend(untold.into_iter().map(|piece| LayNote::Untold(piece.to_owned())));
    let stretch = |laid: ClothLaid, width: f64, made: Vec<Made>| {
        let (shapes, about): (Vec<_>, Vec<_>) = made.into_iter().map(|m| (m.shape, m.about)).unzip();
        let step = cloth.sold_in.unwrap_or(super::length::usual_step(model.draft.display)) * (1.0 - cloth.shrinks);
        let job = Job { width, shapes, gap: cloth.gap, locked: Vec::new(), step, before: counted };
        let folded_part = if laid == ClothLaid::FoldedPart { fold } else { 0.0 };
        LayStretch { laid, folded_part, job, shapes: about }
    };
    let mut stretches = Vec::new();
    if cloth.laid == ClothLaid::Open {
        let all: Vec<Made> = main.into_iter().chain(rest).collect();
        stretches.extend((!all.is_empty()).then(|| stretch(ClothLaid::Open, cloth.usable, all)));
    } else {
        let width = match cloth.laid {
            ClothLaid::Folded => wide / 2.0 - edge,
            ClothLaid::FoldedToMiddle => wide / 2.0,
            _ => single.to,
        };
        if cloth.laid == ClothLaid::FoldedPart {
            let all: Vec<Made> = main.into_iter().chain(rest).collect();
            stretches.extend((!all.is_empty()).then(|| stretch(ClothLaid::FoldedPart, width, all)));
            stretches.extend((!behind.is_empty()).then(|| stretch(ClothLaid::Open, cloth.usable, behind)));
        } else {
            stretches.extend((!main.is_empty()).then(|| stretch(cloth.laid, width, main)));
            stretches.extend((!rest.is_empty()).then(|| stretch(ClothLaid::Open, cloth.usable, rest)));
        }
    }
    Ok(LayJob { stretches, counted, strips, notes, odd, one_layer, on })
}

/// At most so many ways to lay odd ones are tried.
const MOST_WAYS: usize = 4;

impl LayJob {
    /// Which odd ones might lie on two layers: none of them, ever larger ones besides, all of them.
    pub fn ways(&self) -> Vec<Vec<OddOne>> {
        let (all, steps) = (self.odd.len(), self.odd.len().min(MOST_WAYS - 1));
        (0..=steps).map(|k| self.odd[..if steps == 0 { 0 } else { (all * k).div_ceil(steps) }].to_vec()).collect()
    }

    /// Whether both lay the same pieces on the same cloth; odd ones may lie in other ways.
    pub fn is_of(&self, other: &Self) -> bool {
        let shapes = |job: &Self| {
            let all = job.stretches.iter().flat_map(|s| &s.shapes);
            let mut all: Vec<_> =
                all.map(|s| (s.name.clone(), s.strip, s.frame, s.cut, s.case, s.size.clone())).collect();
            all.sort();
            all.dedup();
            all
        };
        let step = |job: &Self| job.stretches.first().map(|s| s.job.step);
        self.on == other.on
            && self.counted == other.counted
            && self.strips == other.strips
            && step(self) == step(other)
            && shapes(self) == shapes(other)
    }

    /// Whether the same odd ones lie on two layers; a job of one size has the sizes of its own.
    pub fn lies_like(&self, other: &Self) -> bool {
        let single = self.on.sizes.len() == 1 && other.on.sizes.len() == 1;
        let key = |job: &Self| {
            let of = |o: &OddOne| OddOne { case: if single { 0 } else { o.case }, ..*o };
            let mut all: Vec<OddOne> = job.one_layer.iter().map(of).collect();
            all.sort_unstable();
            all
        };
        key(self) == key(other)
    }
}

fn size_of(model: &Model, case: usize) -> String {
    model.plan.cases.list.get(case).map_or_else(String::new, |c| c.address.clone())
}

/// How wide the folded part is: as told, else as the widest half on the fold needs, else as the widest pair does; whole mm.
fn folded_part(on: &OnCloth) -> f64 {
    if let Some(told) = on.cloth.folded_part {
        return told;
    }
    let wide = |points: &[Point]| bounds(points).height();
    let halves = on.pieces.iter().filter_map(|p| p.half.as_ref()).map(|h| wide(&h.outline));
    let widest = halves.fold(0.0, f64::max);
    let pairs = on.pieces.iter().filter(|p| p.face == Face::Pairs && p.count > 1).map(|p| wide(&p.outline));
    let widest = if widest > 0.0 { widest } else { pairs.fold(0.0, f64::max) };
    (widest + on.cloth.selvedge - tolerance::EQUAL).ceil()
}

/// How high a polygon is across the cloth in a pose.
fn across(points: &[Point], pose: &Pose) -> f64 {
    bounds(&posed(points, pose)).height()
}

impl Lane {
    fn free(self) -> Across {
        Across { from: self.from, to: self.to, touch: Touch::Free }
    }

    fn on_fold(self) -> Across {
        Across { from: self.from, to: self.to, touch: self.fold }
    }
}

/// Whether some pose has room.
fn fits(points: &[Point], poses: &[Pose]) -> bool {
    poses.iter().any(|p| across(points, p) <= p.across.to - p.across.from + tolerance::EQUAL)
}

fn turns(both_ways: bool) -> &'static [f64] {
    if both_ways { &[0.0, 180.0] } else { &[0.0] }
}

impl Making<'_> {
    fn piece(&mut self, piece: &ClothPiece) -> Result<(), LayError> {
        let both = piece.both_ways && !self.on.cloth.nap;
        if piece.border.is_none() && self.on_fold(piece, both) {
            return Ok(());
        }
        let mut single = piece.count;
        let pairs = piece.count / 2;
        if pairs > 0 && piece.face == Face::Pairs && piece.border.is_none() && !self.double.is_empty() {
            // Cut through two layers both a piece and its mirror image come out, whichever way it lies.
            let poses = self.double.iter().flat_map(|lane| {
                let one = move |mirrored: bool| {
                    turns(both).iter().map(move |t| Pose { mirrored, turned: *t, across: lane.free() })
                };
                one(false).chain(one(true))
            });
            let poses: Vec<Pose> = poses.collect();
            if fits(&piece.outline, &poses) {
                let made = self.made(piece, &piece.outline, pairs, 2, poses);
                self.main.push(made);
                single -= 2 * pairs;
            } else {
                self.told(piece, LayNote::TooWide);
            }
        }
        if single == 1 && piece.face == Face::Pairs && piece.border.is_none() && self.odd_one(piece, both) {
            return Ok(());
        }
        if single > 0 {
            self.single(piece, both, single)?;
        }
        Ok(())
    }

    /// Lays the last one of an odd number on two layers, if it is to lie so; whether it does. Cut from either layer it must be the same piece:
    /// one that is not the same on both sides never lies so, since nothing would keep a cutter from taking the wrong layer.
    fn odd_one(&mut self, piece: &ClothPiece, both: bool) -> bool {
        let poses = self.double.iter().flat_map(|lane| {
            let across = lane.free();
            turns(both).iter().map(move |turned| Pose { mirrored: false, turned: *turned, across })
        });
        let poses: Vec<Pose> = poses.collect();
        if !piece.symmetric || !fits(&piece.outline, &poses) || !same_turned_over(&piece.outline, both) {
            return false;
        }
        let one = OddOne { strip: false, place: piece.frame, cut: piece.cut, case: piece.case };
        self.odd.push((one, area(&piece.outline)));
        if !self.one_layer.contains(&one) {
            return false;
        }
        let made = self.made(piece, &piece.outline, 1, 1, poses);
        self.main.push(Made { about: LayShape { one_layer: true, ..made.about }, ..made });
        true
    }

    /// Lays the half on a fold of the cloth; whether that can be.
    fn on_fold(&mut self, piece: &ClothPiece, both: bool) -> bool {
        let Some(half) = piece.half.as_ref().filter(|_| !self.double.is_empty() && piece.face == Face::Pairs) else {
            return false;
        };
        let poses = self.double.iter().flat_map(|lane| {
            // The fold at the lesser end wants the half below it, one at the greater end above.
            let mirrored = half.below != (lane.fold == Touch::From);
            turns(both).iter().map(move |turned| {
                // Turned by half it would lie on the other side of its fold: there it is turned over as well.
                let over = mirrored != (*turned != 0.0);
                Pose { mirrored: over, turned: *turned, across: lane.on_fold() }
            })
        });
        let poses: Vec<Pose> = poses.collect();
        if !fits(&half.outline, &poses) {
            self.told(piece, LayNote::TooWide);
            return false;
        }
        let made = self.made(piece, &half.outline, piece.count, 1, poses);
        self.main.push(Made { about: LayShape { on_fold: true, ..made.about }, ..made });
        true
    }

    /// Lays copies on a single layer.
    fn single(&mut self, piece: &ClothPiece, both: bool, count: u32) -> Result<(), LayError> {
        let (drawn, over) = match (piece.face, piece.symmetric) {
            (Face::RightSideUp, _) => (count, 0),
            (Face::WrongSideUp, _) => (0, count),
            (Face::Pairs, true) => (count, 0),
            // Of an odd number nobody says which side the last one shows.
            (Face::Pairs, false) => (count.div_ceil(2), count / 2),
        };
        if !self.on.cloth.laid.eq(&ClothLaid::Open) {
            self.told(piece, LayNote::SingleLayer);
        }
        // Turned by half it is as wide.
        let high = bounds(&piece.outline).height();
        let beside = self.single.to - self.single.from + tolerance::EQUAL;
        let is_behind = self.on.cloth.laid == ClothLaid::FoldedPart && high > beside;
        for (count, mirrored) in [(drawn, false), (over, true)].into_iter().filter(|(n, _)| *n > 0) {
            let lane = if is_behind { self.whole } else { self.single };
            let mut poses = Vec::new();
            for turned in turns(both) {
                // Towards which side the border's edge looks as it lies.
                let looks = piece
                    .border
                    .map(|side| side * if mirrored { -1.0 } else { 1.0 } * if *turned == 0.0 { 1.0 } else { -1.0 });
                let touch = match looks {
                    None => Touch::Free,
                    Some(side) if side > 0.0 => Touch::To,
                    Some(_) => continue,
                };
                poses.push(Pose { mirrored, turned: *turned, across: Across { from: lane.from, to: lane.to, touch } });
            }
            if poses.is_empty() {
                return Err(LayError::Border { piece: self.name(piece), size: size_of(self.model, piece.case) });
            }
            if !fits(&piece.outline, &poses) {
                let least = poses.iter().map(|p| across(&piece.outline, p)).fold(f64::INFINITY, f64::min);
                let along = bounds(&piece.outline).width();
                return Err(self.too_wide(self.name(piece), piece.case, (least, along), lane, piece.half.is_some()));
            }
            let made = self.made(piece, &piece.outline, count, 1, poses);
            if is_behind { self.behind.push(made) } else { self.open.push(made) }
        }
        Ok(())
    }

    fn strip(&mut self, strip: &ClothStrip, name: &str) -> Result<(), LayError> {
        let (long, wide) = (strip.cut.cut.unwrap_or(0.0), strip.cut.cut_width.unwrap_or(0.0));
        let outline = vec![Point::new(0.0, 0.0), Point::new(long, 0.0), Point::new(long, wide), Point::new(0.0, wide)];
        let headings: &[f64] = match strip.cut.grain {
            StripGrain::Along => &[0.0],
            StripGrain::Across => &[90.0],
            StripGrain::Bias => &[45.0, 135.0],
        };
        let poses = |lane: Lane| -> Vec<Pose> {
            headings.iter().map(|t| Pose { mirrored: false, turned: *t, across: lane.free() }).collect()
        };
        let about = LayShape {
            name: name.to_owned(),
            strip: true,
            cut: 0,
            case: strip.case,
            size: size_of(self.model, strip.case),
            frame: strip.place,
            gives: 1,
            on_fold: false,
            one_layer: false,
            at_border: false,
            one_way: false,
            face: Face::Pairs,
            digest: strip.digest(),
        };
        let shape = |count: u32, poses: Vec<Pose>| super::packing::Shape {
            outline: outline.clone(),
            count: count as usize,
            poses,
        };
        let mut single = strip.count;
        let double: Vec<Pose> = self.double.iter().flat_map(|lane| poses(*lane)).collect();
        if fits(&outline, &double) {
            if strip.count > 1 {
                let about = LayShape { gives: 2, ..about.clone() };
                self.main.push(Made { shape: shape(strip.count / 2, double.clone()), about });
                single %= 2;
            }
            let one = OddOne { strip: true, place: strip.place, cut: 0, case: strip.case };
            if single == 1 {
                self.odd.push((one, area(&outline)));
            }
            if single == 1 && self.one_layer.contains(&one) {
                let about = LayShape { one_layer: true, ..about.clone() };
                self.main.push(Made { shape: shape(1, double), about });
                single = 0;
            }
        }
        let beside = poses(self.single);
        let is_behind = self.on.cloth.laid == ClothLaid::FoldedPart && !fits(&outline, &beside);
        if single > 0 {
            let poses = if is_behind { poses(self.whole) } else { beside };
            if !fits(&outline, &poses) {
                let least = poses.iter().map(|p| across(&outline, p)).fold(f64::INFINITY, f64::min);
                return Err(self.too_wide(name.to_owned(), strip.case, (least, long), self.single, false));
            }
            let made = Made { shape: shape(single, poses), about };
            if is_behind { self.behind.push(made) } else { self.open.push(made) }
        }
        Ok(())
    }

    fn name(&self, piece: &ClothPiece) -> String {
        self.model.draft.pieces[piece.frame].name.clone()
    }

    fn too_wide(&self, piece: String, case: usize, (least, along): (f64, f64), lane: Lane, on_fold: bool) -> LayError {
        let cloth = &self.on.cloth;
        let beside = cloth.wide - (lane.to - lane.from).max(0.0);
        LayError::TooWide {
            piece,
            size: size_of(self.model, case),
            least,
            room: (lane.to - lane.from).max(0.0),
            // As it is sold: with what shrinks away, selvedges, and what lies beside.
            sold: (least + beside) * cloth.sold / cloth.wide,
            lengthwise: (along <= lane.to - lane.from + tolerance::EQUAL).then_some(along),
            on_fold,
        }
    }

    fn told(&mut self, piece: &ClothPiece, what: fn(String) -> LayNote) {
        let note = what(self.name(piece));
        if !self.notes.contains(&note) {
            self.notes.push(note);
        }
    }

    fn made(&self, piece: &ClothPiece, outline: &[Point], count: u32, gives: u32, poses: Vec<Pose>) -> Made {
        let about = LayShape {
            name: self.name(piece),
            strip: false,
            cut: piece.cut,
            case: piece.case,
            size: size_of(self.model, piece.case),
            frame: piece.frame,
            gives,
            on_fold: false,
            one_layer: false,
            at_border: piece.border.is_some(),
            one_way: !piece.both_ways || self.on.cloth.nap,
            face: piece.face,
            digest: piece.digest(),
        };
        Made { shape: super::packing::Shape { outline: outline.to_vec(), count: count as usize, poses }, about }
    }
}
