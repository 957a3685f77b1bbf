//! What comes on a cloth: the pieces and strips of some sizes that are cut from one material, each with its true count, turned so that its
//! lengthwise thread runs along the cloth.
//!
//! How they are laid is `output::lay`'s. The digest here says whether a plan is still one of these pieces.

use std::cell::RefCell;
use std::collections::BTreeMap;

use kurbo::{Affine, BezPath, Point, Rect, Shape};
use thiserror::Error;

use super::cutting::MOST_SHRINKAGE;
use super::outward::outward;
use super::{CutStrip, Finished, NoYield, StripYield, Symmetry, symmetry, unfolded};
use crate::base::{digest, round_half_away, tolerance};
use crate::compute::{CutPlan, MaterialPlan, Model};
use crate::document::{ClothLaid, Face, Nap, Outline, Shrinks, StripGrain, StripInLay};
use crate::texts::{decimal, id, own, owned, said, say};

/// What is asked: of which material, how wide and how laid it is, which sizes.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothCall {
    /// The material's name.
    pub material: String,
    /// The width of the cloth, selvedge to selvedge, mm.
    pub width: f64,
    /// How it is laid; none: as the draft says.
    pub laid: Option<ClothLaid>,
    /// Whether all heads lie one way; none: as the draft says.
    pub nap: Option<bool>,
    /// How wide the folded part is, mm; none: as the draft says.
    pub folded_part: Option<f64>,
    /// The sizes (places of cases), and how many garments of each.
    pub sizes: Vec<(usize, u32)>,
}

/// A cloth, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Cloth {
    /// Its name.
    pub name: String,
    /// As it is sold, selvedge to selvedge.
    pub sold: f64,
    /// Selvedge on each side, not used.
    pub selvedge: f64,
    /// As it is cut: less what it shrinks in washing before.
    pub wide: f64,
    /// What is left of that without selvedges.
    pub usable: f64,
    /// How it is laid.
    pub laid: ClothLaid,
    /// How wide its folded part is, from the fold to the selvedge; none: as wide as its pieces need.
    pub folded_part: Option<f64>,
    /// Whether all heads lie one way.
    pub nap: bool,
    /// The least distance between two pieces.
    pub gap: f64,
    /// The step in which it is sold; none: the usual ones.
    pub sold_in: Option<f64>,
    /// By which part it gets shorter in washing before it is cut.
    pub shrinks: f64,
}

/// A piece that comes on the cloth, in one size. Its frame has the thread along x, the head of the arrow towards greater x.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothPiece {
    /// Its place among the pieces of the draft.
    pub frame: usize,
    /// Which of its cuts.
    pub cut: usize,
    /// The size: place of its case.
    pub case: usize,
    /// How many are cut of it, for all garments of this size.
    pub count: u32,
    /// The whole piece, unfolded where it is cut on the fold: a polygon that contains its cut line and lies within 0.1 mm of it.
    pub outline: Vec<Point>,
    /// The half of it, where it can lie on a fold along the cloth.
    pub half: Option<ClothHalf>,
    /// Whether it is the same when it is turned over.
    pub symmetric: bool,
    /// Which side of the cloth is up.
    pub face: Face,
    /// Whether it may be turned by half, as far as the piece goes.
    pub both_ways: bool,
    /// On which side of it the edge lies that comes to the border: 1 towards greater y, -1 towards lesser; none: it has none.
    pub border: Option<f64>,
    /// Whether nothing tells its thread, so that its own height was taken.
    pub untold_grain: bool,
    /// See [`ClothPiece::digest`].
    digest: u128,
}

/// Half of a piece that is cut on the fold.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothHalf {
    /// Its outline, the fold at y = 0.
    pub outline: Vec<Point>,
    /// Whether it lies at greater y than its fold.
    pub below: bool,
}

/// A strip that comes on the cloth, in one size.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothStrip {
    /// Its place among the strips of the draft.
    pub place: usize,
    /// The size: place of its case.
    pub case: usize,
    /// How many, for all garments of this size.
    pub count: u32,
    /// As it is cut.
    pub cut: CutStrip,
    /// Whether it lies among the pieces; else the cloth for it is added.
    pub laid: bool,
}

/// All that comes on a cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct OnCloth {
    /// The cloth.
    pub cloth: Cloth,
    /// The sizes, as asked.
    pub sizes: Vec<(usize, u32)>,
    /// The pieces, in the order of the draft, size by size.
    pub pieces: Vec<ClothPiece>,
    /// The strips.
    pub strips: Vec<ClothStrip>,
}

/// Why it cannot be told what comes on a cloth.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ClothError {
    /// No such material.
    #[error("{}", say!("on-cloth-no-material", material = _0, known = _1))]
    NoMaterial(String, String),
    /// No cloth is left between the selvedges.
    #[error("{}", say!("on-cloth-no-width", material, wide = owned(|| decimal(&format!("{wide:.1}")))))]
    NoWidth {
        /// The material.
        material: String,
        /// mm.
        wide: f64,
    },
    /// A number of the material has no value.
    #[error("{}", say!("on-cloth-no-number", what = said(own(), what, &[]), material, size))]
    NoNumber {
        /// The id of which.
        what: &'static str,
        /// The material.
        material: String,
        /// The size.
        size: String,
    },
    /// A piece has no cut line.
    #[error("{}", say!("on-cloth-no-outline", piece, size, problem))]
    NoOutline {
        /// The piece.
        piece: String,
        /// The size.
        size: String,
        /// Why.
        problem: String,
    },
    /// A strip has no length or width.
    #[error("{}", say!("on-cloth-no-strip", strip, size))]
    NoStrip {
        /// The strip.
        strip: String,
        /// The size.
        size: String,
    },
    /// Nothing is cut from it, in this view; empty: none.
    #[error("{}", nothing_cut(_0, _1))]
    Nothing(String, String),
    /// No size.
    #[error("{}", say!("on-cloth-no-size"))]
    NoSize,
}

fn nothing_cut(material: &str, view: &str) -> String {
    match view.is_empty() {
        true => say!("on-cloth-nothing", material),
        false => say!("on-cloth-nothing-in-view", material, view),
    }
}

/// What is known of the pieces of one view, so that each is turned and flattened once for many cloths.
pub struct ClothBook<'a> {
    model: &'a Model,
    finished: &'a Finished,
    /// By piece, cut and case, for one garment.
    pieces: RefCell<BTreeMap<(usize, usize, usize), ClothPiece>>,
    /// By piece and cut.
    handed: RefCell<BTreeMap<(usize, usize), bool>>,
}

impl<'a> ClothBook<'a> {
    /// Of a view: its model and its finished pieces.
    pub fn new(model: &'a Model, finished: &'a Finished) -> Self {
        Self { model, finished, pieces: RefCell::default(), handed: RefCell::default() }
    }

    /// The view's model.
    pub fn model(&self) -> &'a Model {
        self.model
    }

    /// What of the view comes on a cloth.
    ///
    /// # Errors
    /// See [`ClothError`].
    pub fn on_cloth(&self, call: &ClothCall) -> Result<OnCloth, ClothError> {
        let (model, plan, draft) = (self.model, &self.model.plan, &self.model.draft);
        let Some(first) = call.sizes.first() else { return Err(ClothError::NoSize) };
        let is_it = |m: &&MaterialPlan| draft.materials.get(m.place).is_some_and(|d| d.name == call.material);
        let Some(material) = plan.publishing.materials.iter().find(is_it) else {
            let known: Vec<&str> = draft.materials.iter().map(|m| m.name.as_str()).collect();
            let rest =
                if known.is_empty() { say!("on-cloth-none") } else { say!("on-cloth-known", known = known.join(", ")) };
            return Err(ClothError::NoMaterial(call.material.clone(), rest));
        };
        let cloth = cloth(model, first.0, material, call)?;
        let mut out = OnCloth { cloth, sizes: call.sizes.clone(), pieces: Vec::new(), strips: Vec::new() };
        let frames: Vec<usize> = (0..draft.pieces.len()).filter(|f| plan.has_frame(*f)).collect();
        for (case, times) in &call.sizes {
            let times = (*times).max(1);
            for frame in &frames {
                for (place, cut) in plan.frames()[*frame].finishing.cuts.iter().enumerate() {
                    if *cut.material == *call.material {
                        let one = self.piece(*case, (*frame, place, cut))?;
                        out.pieces.push(one.times(times));
                    }
                }
            }
            for strip in plan.publishing.strips.iter().filter(|s| plan.is_needed(s.length)) {
                let told = &draft.strips[strip.place];
                if told.material != call.material {
                    continue;
                }
                let cut = CutStrip::of(model, *case, strip, told);
                let usable = |mm: Option<f64>| mm.is_some_and(|mm| mm.is_finite() && mm > 0.0);
                if !usable(cut.cut) || !usable(cut.cut_width) {
                    return Err(ClothError::NoStrip { strip: told.name.clone(), size: size_of(model, *case) });
                }
                let count = cut.count.saturating_mul(times);
                let is_whole = matches!(cut.from_cloth(out.cloth.usable), Some(Ok(from)) if from.joins == 0);
                let laid = told.in_lay == StripInLay::Laid && is_whole;
                out.strips.push(ClothStrip { place: strip.place, case: *case, count, cut, laid });
            }
        }
        if out.pieces.is_empty() && out.strips.is_empty() {
            return Err(ClothError::Nothing(call.material.clone(), model.view().to_owned()));
        }
        Ok(out)
    }

    fn piece(&self, case: usize, (frame, place, cut): (usize, usize, &CutPlan)) -> Result<ClothPiece, ClothError> {
        let key = (frame, place, case);
        if let Some(known) = self.pieces.borrow().get(&key) {
            return Ok(known.clone());
        }
        let made =
            piece((self.model, self.finished), case, (frame, place, cut), self.is_handed(case, (frame, place, cut)))?;
        self.pieces.borrow_mut().insert(key, made.clone());
        Ok(made)
    }

    /// Whether a piece comes in pairs: in any size of the range, or in that of a person.
    fn is_handed(&self, case: usize, (frame, place, cut): (usize, usize, &CutPlan)) -> bool {
        let range = self.model.plan.cases.range;
        let of = |cases: std::ops::Range<usize>| {
            symmetry(self.model, self.finished, cases, (frame, cut)) == Symmetry::Handed
        };
        let known = self.handed.borrow().get(&(frame, place)).copied();
        let handed = known.unwrap_or_else(|| of(0..range));
        self.handed.borrow_mut().insert((frame, place), handed);
        handed || case >= range && of(case..case + 1)
    }
}

fn size_of(model: &Model, case: usize) -> String {
    model.plan.cases.list.get(case).map_or_else(String::new, |c| c.address.clone())
}

fn cloth(model: &Model, case: usize, plan: &MaterialPlan, call: &ClothCall) -> Result<Cloth, ClothError> {
    let told = &model.draft.materials[plan.place];
    let none = |what| ClothError::NoNumber { what, material: told.name.clone(), size: size_of(model, case) };
    let node = |node: Option<u32>, what| match node {
        Some(node) => model.item(case, node).and_then(|i| i.real()).filter(|v| v.is_finite()).ok_or_else(|| none(what)),
        None => Ok(0.0),
    };
    let number = |formula: &Option<crate::compute::Formula>, text: &str, what| match formula {
        Some(formula) => model.real(case, formula).ok().filter(|v| v.is_finite()).map(Some).ok_or_else(|| none(what)),
        // What was typed and cannot be read is missing.
        None if !text.is_empty() => Err(none(what)),
        None => Ok(None),
    };
    let selvedge = node(plan.selvedge, id!("on-cloth-selvedge"))?.max(0.0);
    let washed = told.shrinks == Shrinks::BeforeCutting;
    let mut shrinks = [0.0; 2];
    for (i, what) in [id!("on-cloth-shrinkage-along"), id!("on-cloth-shrinkage-across")].into_iter().enumerate() {
        let part = node(plan.shrinkage[i], what)?;
        if !(0.0..=MOST_SHRINKAGE).contains(&part) {
            return Err(none(what));
        }
        shrinks[i] = if washed { part } else { 0.0 };
    }
    let wide = call.width * (1.0 - shrinks[1]);
    let selvedge_left = selvedge * (1.0 - shrinks[1]);
    let usable = wide - 2.0 * selvedge_left;
    if !(usable.is_finite() && usable > tolerance::EQUAL) {
        return Err(ClothError::NoWidth { material: told.name.clone(), wide: call.width });
    }
    let folded_part = match call.folded_part {
        Some(mm) => Some(mm),
        None => number(&plan.folded_part, &told.folded_part, id!("on-cloth-folded"))?,
    };
    Ok(Cloth {
        name: told.name.clone(),
        sold: call.width,
        selvedge: selvedge_left,
        wide,
        usable,
        laid: call.laid.unwrap_or(told.laid),
        folded_part,
        nap: call.nap.unwrap_or(told.nap == Nap::With),
        gap: number(&plan.gap, &told.gap, id!("on-cloth-gap"))?.unwrap_or(0.0).max(0.0),
        sold_in: number(&plan.sold_in, &told.sold_in, id!("on-cloth-sold-in"))?.filter(|s| *s > tolerance::ON_EDGE),
        shrinks: shrinks[0],
    })
}

/// By how much a piece is turned so that its thread runs along x; a quarter turn is exact.
fn turn(heading: f64) -> Affine {
    let (sin, cos) = (libm::sin(heading), libm::cos(heading));
    let exact = |v: f64| {
        let near = v.round();
        if (v - near).abs() <= tolerance::LEVEL { near } else { v }
    };
    let (sin, cos) = (exact(sin), exact(cos));
    Affine::new([cos, -sin, sin, cos, 0.0, 0.0])
}

fn piece(
    (model, finished): (&Model, &Finished),
    case: usize,
    (frame, place, cut): (usize, usize, &CutPlan),
    handed: bool,
) -> Result<ClothPiece, ClothError> {
    let name = &model.draft.pieces[frame].name;
    let fails = |problem: &str| ClothError::NoOutline {
        piece: name.clone(),
        size: size_of(model, case),
        problem: said(own(), problem, &[]),
    };
    let made = finished.cases.get(case).and_then(|c| c.get(frame)).and_then(Option::as_ref);
    let made = made.ok_or_else(|| fails(id!("on-cloth-not-drawn")))?;
    let own = made.cuts.iter().find(|c| c.place == place).ok_or_else(|| fails(id!("on-cloth-no-cut-line")))?;
    let line = own.outline.as_ref().ok_or_else(|| fails(own.problem.unwrap_or(id!("on-cloth-no-cut-line"))))?;
    let told = match &cut.heading {
        Some(heading) => Some(model.real(case, heading).map_err(|_| fails(id!("on-cloth-no-grain")))?),
        None => None,
    };
    let heading = told.unwrap_or(std::f64::consts::FRAC_PI_2);
    let turned = turn(heading) * line.clone();
    let fold = own.fold.filter(|_| cut.on_fold.is_some()).map(|ends| ends.map(|p| turn(heading) * p));
    let (whole, half) = match fold {
        None => (turned.clone(), None),
        Some(ends) => whole(&turned, ends, cut),
    };
    let outline = outward(&whole);
    if outline.len() < 3 {
        return Err(fails(id!("on-cloth-cut-line")));
    }
    let border = cut.border.map(|edge| {
        let middle = own.edges.get(edge).map_or(0.0, |e| (turn(heading) * e.clone()).bounding_box().center().y);
        if middle >= whole.bounding_box().center().y { 1.0 } else { -1.0 }
    });
    Ok(ClothPiece {
        frame,
        cut: place,
        case,
        count: cut.count,
        outline,
        half,
        symmetric: fold.is_some() || !handed,
        face: cut.face,
        both_ways: cut.both_ways,
        border,
        untold_grain: told.is_none(),
        digest: 0,
    }
    .digested())
}

/// A piece on the fold unfolded, and its half where the fold runs along the thread.
fn whole(half: &BezPath, ends: [Point; 2], cut: &CutPlan) -> (BezPath, Option<ClothHalf>) {
    let way = ends[1] - ends[0];
    if way.hypot() <= tolerance::EQUAL {
        return (half.clone(), None);
    }
    if cut.outline == Outline::Block {
        // A rough block is one around the whole piece.
        let mirror = Affine::reflect(ends[0], way);
        let room: Rect = half.bounding_box().union((mirror * half.clone()).bounding_box());
        return (room.to_path(tolerance::PRINT), None);
    }
    let whole = unfolded(half, (ends[0], ends[1]));
    if way.y.abs() > tolerance::ON_EDGE {
        return (whole, None);
    }
    let down = Affine::translate((0.0, -(ends[0].y + ends[1].y) / 2.0)) * half.clone();
    let middle = down.bounding_box().center().y;
    // What lies on the fold lies on it exactly.
    let outline =
        outward(&down).into_iter().map(|p| if p.y.abs() <= tolerance::ON_EDGE { Point::new(p.x, 0.0) } else { p });
    (whole, Some(ClothHalf { outline: outline.collect(), below: middle > 0.0 }))
}

impl OnCloth {
    /// How many cut pieces there are of pieces and of strips that are laid, as the cutting list counts them.
    pub fn count(&self) -> u64 {
        let strips = self.strips.iter().filter(|s| s.laid).map(|s| u64::from(s.count));
        self.pieces.iter().map(|p| u64::from(p.count)).sum::<u64>() + strips.sum::<u64>()
    }

    /// Digest of what is laid and how, without where: names do not count. It is another one as soon as an outline, a count, the cloth or
    /// what a piece may do on it is another.
    pub fn digest(&self) -> u128 {
        let mut all: Vec<u128> = self.pieces.iter().map(|p| p.digest()).collect();
        all.extend(self.strips.iter().map(|s| s.digest()));
        all.sort_unstable();
        let mut bytes = Bytes(Vec::new());
        let cloth = &self.cloth;
        for mm in [cloth.sold, cloth.selvedge, cloth.wide, cloth.gap, cloth.folded_part.unwrap_or(-1.0)] {
            bytes.number(mm);
        }
        bytes.number(cloth.shrinks * 1000.0);
        bytes.0.extend([cloth.laid as u8, u8::from(cloth.nap)]);
        for one in all {
            bytes.0.extend(one.to_be_bytes());
        }
        digest(&[&bytes.0])
    }
}

impl ClothPiece {
    /// Digest of all that says how it may lie.
    pub fn digest(&self) -> u128 {
        self.digest
    }

    /// So many times as often.
    fn times(self, times: u32) -> Self {
        let count = self.count.saturating_mul(times);
        if count == self.count { self } else { Self { count, ..self }.digested() }
    }

    fn digested(mut self) -> Self {
        let mut bytes = Bytes(vec![1, self.face as u8, u8::from(self.symmetric), u8::from(self.both_ways)]);
        bytes.0.extend(self.count.to_be_bytes());
        bytes.number(self.border.unwrap_or(0.0));
        bytes.points(&self.outline);
        if let Some(half) = &self.half {
            bytes.points(&half.outline);
        }
        self.digest = digest(&[&bytes.0]);
        self
    }
}

impl ClothStrip {
    /// How all of them come out of cloth of which so much of the width is used, mm.
    pub fn from_cloth(&self, usable: f64) -> Option<Result<StripYield, NoYield>> {
        CutStrip { count: self.count, ..self.cut }.from_cloth(usable)
    }

    /// Digest of all that says how much cloth it takes and how it may lie.
    pub fn digest(&self) -> u128 {
        let grain = match self.cut.grain {
            StripGrain::Along => 1,
            StripGrain::Across => 2,
            StripGrain::Bias => 3,
        };
        let mut bytes = Bytes(vec![2, grain, u8::from(self.laid)]);
        bytes.0.extend(self.count.to_be_bytes());
        for mm in [self.cut.cut, self.cut.cut_width, self.cut.join] {
            bytes.number(mm.unwrap_or(-1.0));
        }
        digest(&[&bytes.0])
    }
}

/// What is digested: lengths to the step in which they are compared.
struct Bytes(Vec<u8>);

impl Bytes {
    fn number(&mut self, value: f64) {
        let steps = (round_half_away(value, tolerance::COMPARED) / tolerance::COMPARED).round();
        // No piece is so large that this loses anything.
        self.0.extend((steps as i64).to_be_bytes());
    }

    fn points(&mut self, points: &[Point]) {
        self.0.extend((points.len() as u64).to_be_bytes());
        // Where a piece lies in its own frame is no matter.
        let least = |of: fn(&Point) -> f64| points.iter().map(of).fold(f64::INFINITY, f64::min);
        let (left, top) = (least(|p| p.x), least(|p| p.y));
        for p in points {
            self.number(p.x - left);
            self.number(p.y - top);
        }
    }
}
