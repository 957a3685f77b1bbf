//! A piece finished in one case.

use std::cell::OnceCell;
use std::collections::BTreeMap;
use std::sync::Arc;

use kurbo::{BezPath, Point};

use super::body::Body;
use super::corner::{self, Join, Limb};
use super::cutting;
use super::hem::{HemState, hems};
use super::limits::Limits;
use super::marks::{self, PlacedLine, PlacedMark};
use super::mouth;
use super::notches::{self, NotchMark, PlacedNotch};
use super::places;
use super::ring::{self, Behind, EdgeWidths, Stretch};
use super::sewing::{EdgeEnd, Sewing};
use super::trim;
use super::widths::{Asked, real};
use crate::base::tolerance::limit::SHARP;
use crate::compute::{CutPlan, Model, PieceFinishing};
use crate::curves::{Curve, Pt, Rigid, Segment};
use crate::document::{CornerForm, Draft, Material, Nap, Outline, SeamPressed, Shrinks};
use crate::texts::id;

/// A piece as it comes on a sheet: in its own frame, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct FinishedPiece {
    /// The stitch line, one closed ring, with the mouths of its darts shaped.
    pub stitch: BezPath,
    /// One for each way in which it is cut; one where nothing is told but allowances; none without any.
    pub cuts: Vec<FinishedCut>,
    /// Notches on the cut line of the first cut, else on the stitch line.
    pub notches: Vec<NotchMark>,
    /// Marks.
    pub marks: Vec<PlacedMark>,
    /// Lines that are only drawn.
    pub lines: Vec<PlacedLine>,
    /// Fold lines of pleats and tucks, and an arrow from the one to the other as they are laid.
    pub pleats: Vec<BezPath>,
    /// Places of other pieces that are sewn on it.
    pub places: Vec<BezPath>,
    /// Where its label is wanted.
    pub label: Option<Point>,
    /// Whether any edge has an allowance that is told.
    pub has_allowances: bool,
    /// Edges that are cut and have none told.
    pub untold: Vec<usize>,
}

/// A cut of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct FinishedCut {
    /// Its place among the cuts that are told.
    pub place: usize,
    /// The cut line, closed and simple; none where it cannot be made.
    pub outline: Option<BezPath>,
    /// Edge by edge what lies at its allowance, before corners are made.
    pub edges: Vec<BezPath>,
    /// Edge by edge its allowance; empty where it cannot be made.
    pub widths: Vec<EdgeWidths>,
    /// Why there is none.
    pub problem: Option<&'static str>,
    /// A point near which it would have crossed itself and was trimmed.
    pub trimmed: Option<Point>,
    /// Both ends of the edge on the fold of the cloth, as it is cut; none where there is none.
    pub fold: Option<[Point; 2]>,
    /// Both ends of the grain line, as long as the piece allows, its head first; none without a heading.
    pub grain: Option<[Point; 2]>,
    /// Whether the piece may lie either way along its thread: the line has two heads then.
    pub both_ways: bool,
    /// Turned edges of hems: edge, length of the turned edge, length where it is sewn, whether the hem is curved.
    pub hems: Vec<HemState>,
}

/// Why there is no cut line where nothing else is known.
const NOTHING_LEFT: &str = id!("cut-nothing-left");

/// A piece on its way.
pub(super) struct Work {
    pub body: Body,
    pub told: Vec<EdgeWidths>,
    pub stretches: Vec<Stretch>,
}

/// What a case is finished from.
struct Case<'a> {
    draft: &'a Draft,
    model: &'a Model,
    case: usize,
    sewing: &'a Sewing,
    limits: &'a Limits,
    /// Each piece with its main allowances, made when it is first needed.
    works: Vec<OnceCell<Option<Work>>>,
}

/// The finished pieces of a case, and the notches of all its seams.
pub(super) type CaseMade = (Vec<Option<Arc<FinishedPiece>>>, Arc<Vec<PlacedNotch>>);

/// What is known of a case: as it was before, or as another view has it.
pub(super) struct Known<'a> {
    /// For each piece whether it is still the same.
    pub kept: Vec<bool>,
    pub pieces: &'a [Option<Arc<FinishedPiece>>],
    pub notches: &'a Arc<Vec<PlacedNotch>>,
}

/// All pieces of a case, and the notches of all seams. Pieces that are kept are those that are known.
pub(super) fn finish_case(
    draft: &Draft,
    model: &Model,
    case: usize,
    (sewing, limits): (&Sewing, &Limits),
    known: &[Known<'_>],
) -> CaseMade {
    let works = draft.pieces.iter().map(|_| OnceCell::new()).collect();
    let work = Case { draft, model, case, sewing, limits, works };
    let notches = notches::places(model, case, sewing, known);
    let body = |frame: usize| work.work(frame).map(|w| &w.body);
    let stitch = |frame: usize| work.work(frame).and_then(|w| work.stitch_line(frame, w));
    let places = places::placed(model, case, sewing, &body, &stitch);
    let piece = |frame: usize| match known.iter().find(|k| k.kept[frame]) {
        Some(known) => known.pieces[frame].clone(),
        None => work.piece(frame, &notches, &places).map(Arc::new),
    };
    let pieces = (0..draft.pieces.len()).map(piece).collect();
    (pieces, Arc::new(notches))
}

impl Case<'_> {
    /// A piece with its main allowances; none where it has no shape, or the view has not got it.
    fn work(&self, frame: usize) -> Option<&Work> {
        if !self.model.plan.has_frame(frame) {
            return None;
        }
        let make = || {
            let plan = &self.model.plan.frames()[frame];
            let body = Body::of(self.model, self.case, plan, &self.draft.pieces[frame])?;
            let first = plan.finishing.cuts.first();
            let (set, on_fold) = (first.map_or("", |c| &c.set), first.and_then(|c| c.on_fold));
            let told = self.asked(frame).widths(&body, set, on_fold);
            // A piece that nobody says how to cut is drawn only.
            let is_cut = first.is_some() || told.iter().any(|t| t.told);
            let stretches = if is_cut { ring::stretches(&body, &told)? } else { Vec::new() };
            Some(Work { body, told, stretches })
        };
        self.works.get(frame)?.get_or_init(make).as_ref()
    }

    fn finishing(&self, frame: usize) -> &PieceFinishing {
        &self.model.plan.frames()[frame].finishing
    }

    fn asked(&self, frame: usize) -> Asked<'_> {
        let (model, case, sewing, limits) = (self.model, self.case, self.sewing, self.limits);
        Asked { model, case, frame, finishing: &model.plan.frames()[frame].finishing, sewing, limits }
    }

    fn piece(
        &self,
        frame: usize,
        notches: &[PlacedNotch],
        places: &BTreeMap<usize, Vec<BezPath>>,
    ) -> Option<FinishedPiece> {
        let work = self.work(frame)?;
        let finishing = self.finishing(frame);
        let has_allowances = work.told.iter().any(|t| t.told && !t.on_fold);
        let stitch = self.stitch_line(frame, work)?;
        let mut cuts = Vec::new();
        let flat = cutting::flattened(&stitch);
        for (place, cut) in finishing.cuts.iter().enumerate() {
            cuts.push(self.cut(frame, place, cut, work, &flat));
        }
        if finishing.cuts.is_empty() && has_allowances {
            let (outline, trimmed, hems) = self.cut_line(frame, work);
            let edges = set_off_edges(work);
            let problem = outline.is_none().then_some(NOTHING_LEFT);
            let widths = work.told.clone();
            cuts.push(FinishedCut {
                place: 0,
                outline,
                edges,
                widths,
                problem,
                trimmed,
                fold: None,
                grain: None,
                both_ways: false,
                hems,
            });
        }
        let untold = if finishing.cuts.is_empty() && !has_allowances {
            Vec::new()
        } else {
            (0..work.told.len()).filter(|e| !work.told[*e].told).collect()
        };
        Some(FinishedPiece {
            notches: notches::marks(frame, work, notches, self.limits),
            marks: marks::placed(self.model, self.case, finishing),
            lines: marks::lines(self.model, self.case, finishing, &flat),
            pleats: marks::pleats(self.model, self.case, finishing, &work.body),
            places: places.get(&frame).cloned().unwrap_or_default(),
            label: finishing.label.as_ref().and_then(|f| super::widths::point(self.model, self.case, f)).map(Pt::value),
            stitch,
            cuts,
            has_allowances,
            untold,
        })
    }

    fn cut(&self, frame: usize, place: usize, cut: &CutPlan, main: &Work, flat: &[Point]) -> FinishedCut {
        let heading = cut.heading.as_ref().and_then(|f| real(self.model, self.case, f));
        let grain = heading.and_then(|h| cutting::grain_line(flat, h));
        // Cloth that is washed before it is cut shrinks no more.
        let is_washed = |m: &Material| m.name == *cut.material && m.shrinks == Shrinks::BeforeCutting;
        let members = cut.members.filter(|_| !self.draft.materials.iter().any(is_washed));
        let part = |member: u32| members.and_then(|first| self.model.item(self.case, first + member)?.real());
        let [along, across] = [3, 4].map(|member| part(member).unwrap_or(0.0));
        if [along, across].iter().any(|p| !(0.0..=cutting::MOST_SHRINKAGE).contains(p)) {
            let problem = Some(id!("cut-shrinks"));
            let (edges, widths, hems) = (Vec::new(), Vec::new(), Vec::new());
            let both_ways = self.either_way(cut);
            return FinishedCut {
                place,
                outline: None,
                edges,
                widths,
                problem,
                trimmed: None,
                fold: None,
                grain,
                both_ways,
                hems,
            };
        }
        let (along, across) = (1.0 / (1.0 - along), 1.0 / (1.0 - across));
        let shrinks = along != 1.0 || across != 1.0;
        let same = place == 0 && !shrinks && cut.outline == Outline::Full;
        let mut widths = main.told.clone();
        let fold_of = |body: &Body| {
            let edge = body.edges.get(cut.on_fold?)?;
            Some([edge.start().value(), edge.end().value()])
        };
        let mut fold = fold_of(&main.body);
        let (outline, trimmed, hems) = if same {
            self.cut_line(frame, main)
        } else {
            let body = if shrinks {
                main.body.compensated(heading.unwrap_or(0.0), along, across)
            } else {
                Some(main.body.clone())
            };
            let made = body.and_then(|body| {
                let told = match cut.outline {
                    Outline::LessAllowance => {
                        vec![EdgeWidths { told: true, ..EdgeWidths::default() }; body.edges.len()]
                    }
                    _ => self.asked(frame).widths(&body, &cut.set, cut.on_fold),
                };
                let stretches = ring::stretches(&body, &told)?;
                Some(Work { body, told, stretches })
            });
            widths = made.as_ref().map_or_else(Vec::new, |work| work.told.clone());
            fold = made.as_ref().and_then(|work| fold_of(&work.body));
            let (outline, trimmed, hems) = made.map_or((None, None, Vec::new()), |work| self.cut_line(frame, &work));
            match cut.outline {
                Outline::Block => (outline.map(|o| cutting::block(&o, heading.unwrap_or(0.0))), None, Vec::new()),
                _ => (outline, trimmed, hems),
            }
        };
        let problem = outline.is_none().then_some(NOTHING_LEFT);
        let both_ways = self.either_way(cut);
        let edges = set_off_edges(main);
        FinishedCut { place, outline, edges, widths, problem, trimmed, fold, grain, both_ways, hems }
    }

    /// Whether a piece may be turned by half on its cloth: not where the cloth has a nap.
    fn either_way(&self, cut: &CutPlan) -> bool {
        let nap = self.draft.materials.iter().any(|m| m.name == *cut.material && m.nap == Nap::With);
        cut.both_ways && !nap
    }

    /// The stitch line with its mouths shaped.
    fn stitch_line(&self, frame: usize, work: &Work) -> Option<BezPath> {
        if work.body.mouths.is_empty() {
            let segments: Vec<_> = work.body.edges.iter().flat_map(|e| e.segments().iter().copied()).collect();
            return Curve::ring(&segments).ok();
        }
        let told = vec![EdgeWidths::default(); work.body.edges.len()];
        let stretches = ring::stretches(&work.body, &told)?;
        let bare = Work { body: work.body.clone(), told, stretches };
        let joins: Vec<Join> = (0..bare.stretches.len())
            .map(|k| {
                let (a, b, _) = limbs(&bare.stretches, k);
                match bare.stretches[k].behind {
                    Behind::Mouth(m) => self.mouth(frame, &bare, m, &a, &b, true),
                    _ => corner::as_they_are(&a, Vec::new()),
                }
            })
            .collect();
        assembled(&bare.stretches, &joins).map(|(path, _)| path)
    }

    /// The cut line, where it had to be trimmed, and its hems.
    fn cut_line(&self, frame: usize, work: &Work) -> (Option<BezPath>, Option<Point>, Vec<HemState>) {
        let count = work.stretches.len();
        let joins: Vec<Join> = (0..count).map(|k| self.join(frame, work, k)).collect();
        let hems = hems(work, &joins);
        let Some((path, used_up)) = assembled(&work.stretches, &joins) else { return (None, None, hems) };
        match used_up.or_else(|| trim::crossing(&path)) {
            None => (Some(path), None, hems),
            place => (trim::trimmed(&path), place, hems),
        }
    }

    fn mouth(&self, frame: usize, work: &Work, m: usize, a: &Limb<'_>, b: &Limb<'_>, bare: bool) -> Join {
        let mouth = &work.body.mouths[m];
        let told = self.finishing(frame).legs.get(mouth.place).and_then(Option::as_ref);
        let leg = told.and_then(|f| real(self.model, self.case, f)).or(self.limits.allowance).unwrap_or(0.0);
        let shaped = mouth::shaped(mouth, a, b, if bare { 0.0 } else { leg }, work.body.sense);
        shaped.unwrap_or_else(|| {
            corner::as_they_are(a, corner::straight(a.off.end(), b.off.start()).into_iter().collect())
        })
    }

    /// How the cut line goes on behind a stretch.
    fn join(&self, frame: usize, work: &Work, k: usize) -> Join {
        let (a, b, at) = limbs(&work.stretches, k);
        let sense = work.body.sense;
        match work.stretches[k].behind {
            Behind::Mouth(m) => self.mouth(frame, work, m, &a, &b, false),
            Behind::Bend => corner::plain(at, &a, &b, sense, SHARP),
            Behind::Corner(edge) => self.corner(frame, work, edge, at, &a, &b),
        }
    }

    fn corner(&self, frame: usize, work: &Work, edge: usize, at: Pt<f64>, a: &Limb<'_>, b: &Limb<'_>) -> Join {
        let sense = work.body.sense;
        let count = work.body.edges.len();
        let before = (edge + count - 1) % count;
        if let Some(told) =
            self.finishing(frame).corners.iter().find(|c| c.edge == edge && c.form != CornerForm::BySewing)
        {
            let width = told.width.as_ref().and_then(|f| real(self.model, self.case, f));
            return match told.form {
                CornerForm::Mitred => corner::mitred(at, a, b, sense, width.unwrap_or(0.0)),
                CornerForm::Across => {
                    let out = (a.way - b.way).unit().unwrap_or(a.way);
                    corner::square(at, a, b, out, width.unwrap_or(a.width.max(b.width)))
                }
                _ => corner::plain(at, a, b, sense, f64::INFINITY),
            };
        }
        let plain = || corner::plain(at, a, b, sense, SHARP);
        if work.told[before].on_fold
            || work.told[edge].on_fold
            || a.way.cross(b.way) * sense <= 0.0 && a.way.cross(b.way).abs() <= crate::base::tolerance::STRAIGHT
        {
            return plain();
        }
        let (hem_a, hem_b) = (work.told[before].hem, work.told[edge].hem);
        match (hem_a, hem_b) {
            (Some(_), Some(_)) => return plain(),
            (Some(hem), None) => {
                let out = a.way.square().scaled(-sense);
                let lid = corner::mirrored_lid(at, a.way, b, a.width);
                let lid = lid.and_then(|lid| corner::turned_twice(lid, at, a.way, out, hem));
                return lid.and_then(|lid| corner::lidded(a, b, &lid)).unwrap_or_else(plain);
            }
            (None, Some(hem)) => {
                let out = b.way.square().scaled(-sense);
                let (ra, rb) = (a.off.reversed(), b.off.reversed());
                let later = Limb { off: &ra, way: -a.way, width: a.width };
                let first = Limb { off: &rb, way: -b.way, width: b.width };
                let lid = corner::mirrored_lid(at, first.way, &later, b.width);
                let lid = lid.and_then(|lid| corner::turned_twice(lid, at, first.way, out, hem));
                let join = lid.and_then(|lid| corner::lidded(&first, &later, &lid));
                return join.map_or_else(plain, |join| corner::turned(join, a, b));
            }
            (None, None) => {}
        }
        let ends = [EdgeEnd { frame, edge: before, at_end: true }, EdgeEnd { frame, edge, at_end: false }];
        let [on_a, on_b] = ends.map(|end| self.sewing.at(self.model, end));
        let a_first = match (&on_a, &on_b) {
            (None, None) => return plain(),
            (Some(_), None) => true,
            (None, Some(_)) => false,
            (Some((_, Some(x))), Some((_, Some(y)))) if x != y => x < y,
            // Sewn in one go, or nobody says which comes first.
            _ => return plain(),
        };
        let (end, sewn) = if a_first { (ends[0], on_a) } else { (ends[1], on_b) };
        let Some((sewn, _)) = sewn else { return plain() };
        let pressed = self.model.plan.seams[sewn.seam].pressed;
        let away = matches!((pressed, sewn.side), (SeamPressed::ToOne, 1) | (SeamPressed::ToTwo, 0));
        let (ra, rb) = (a.off.reversed(), b.off.reversed());
        let (first, later) = if a_first {
            (*a, *b)
        } else {
            (Limb { off: &rb, way: -b.way, width: b.width }, Limb { off: &ra, way: -a.way, width: a.width })
        };
        if first.width <= 0.0 {
            return plain();
        }
        let lid = if away { self.laid_lid(end, &sewn, at, &first, &later, sense) } else { None };
        let lid = lid.or_else(|| corner::mirrored_lid(at, first.way, &later, first.width));
        let join = lid.and_then(|lid| corner::lidded(&first, &later, &lid));
        join.map_or_else(plain, |join| if a_first { join } else { corner::turned(join, a, b) })
    }

    /// The later cut line of the piece to which the allowance is pressed.
    fn laid_lid(
        &self,
        end: EdgeEnd,
        sewn: &super::sewing::Sewn,
        at: Pt<f64>,
        first: &Limb<'_>,
        later: &Limb<'_>,
        sense: f64,
    ) -> Option<corner::Lid> {
        let partner = self.sewing.partner(end, sewn)?;
        let other = self.work(partner.frame)?;
        let along = partner.across(other.body.edges.len());
        let stretch = |end: EdgeEnd| {
            let mut of = other.stretches.iter().filter(|s| s.edge == end.edge);
            if end.at_end { of.next_back() } else { of.next() }
        };
        let (seam, next) = (stretch(partner)?, stretch(along)?);
        let (from, way) = if partner.at_end {
            (seam.line.end(), seam.line.end_tangent()?)
        } else {
            (seam.line.start(), -seam.line.start_tangent()?)
        };
        // On which hand each piece lies, seen along the seam towards the corner.
        let own_right = (sense > 0.0) == end.at_end;
        let other_right = (other.body.sense > 0.0) == partner.at_end;
        let lay = Rigid::laying(from, from - way, at, at - first.way, own_right == other_right)?;
        let line = if along.at_end { next.off.reversed() } else { next.off.clone() };
        let width = if along.at_end { next.widths[1] } else { next.widths[0] };
        let limb = Limb { off: &line, way: line.start_tangent()?, width };
        corner::laid_lid(at, first.way, &limb, &lay, later, first.width)
    }
}

/// Edge by edge the set-off lines of a piece.
fn set_off_edges(work: &Work) -> Vec<BezPath> {
    let mut out = vec![BezPath::new(); work.body.edges.len()];
    for stretch in &work.stretches {
        let path = stretch.off.to_path();
        let edge = &mut out[stretch.edge];
        match edge.elements().is_empty() {
            true => edge.extend(path),
            false => {
                edge.line_to(stretch.off.start().value());
                edge.extend(path.elements().iter().skip(1).copied());
            }
        }
    }
    out
}

/// A stretch and the one behind it as limbs of a corner, and the corner.
fn limbs(stretches: &[Stretch], k: usize) -> (Limb<'_>, Limb<'_>, Pt<f64>) {
    let (a, b) = (&stretches[k], &stretches[(k + 1) % stretches.len()]);
    let nowhere = || Pt::new(1.0, 0.0);
    let (to, from) = (a.line.end_tangent().unwrap_or_else(nowhere), b.line.start_tangent().unwrap_or_else(nowhere));
    let arriving = Limb { off: &a.off, way: to, width: a.widths[1] };
    (arriving, Limb { off: &b.off, way: from, width: b.widths[0] }, a.line.end())
}

/// The closed line of all stretches and joins, and a point where a stretch is used up by its corners.
fn assembled(stretches: &[Stretch], joins: &[Join]) -> Option<(BezPath, Option<Point>)> {
    let n = stretches.len();
    let mut ring: Vec<Segment<f64>> = Vec::with_capacity(4 * n);
    let mut used_up = None;
    let add = |ring: &mut Vec<Segment<f64>>, segment: Segment<f64>| {
        let before = ring.last().map(Segment::end);
        if let Some(gap) = before.and_then(|end| corner::straight(end, segment.start())) {
            ring.push(gap);
            ring.push(segment);
        } else {
            ring.push(before.map_or(segment, |end| started_at(segment, end)));
        }
    };
    for k in 0..n {
        let (from, to) = (joins[(k + n - 1) % n].from, joins[k].keep);
        let off = &stretches[k].off;
        if to - from > crate::base::tolerance::EQUAL {
            let whole = from <= 0.0 && to >= off.length();
            let part = if whole { off.clone() } else { off.between(from.max(0.0), to.min(off.length()))? };
            part.segments().iter().for_each(|s| add(&mut ring, *s));
        } else if from - to > crate::base::tolerance::ON_EDGE {
            used_up = off.point_at(to.clamp(0.0, off.length())).map(Pt::value).or(used_up);
        }
        joins[k].via.iter().for_each(|s| add(&mut ring, *s));
    }
    if let (Some(first), Some(last)) = (ring.first().copied(), ring.last().copied()) {
        match corner::straight(last.end(), first.start()) {
            Some(gap) => ring.push(gap),
            None => ring[0] = started_at(first, last.end()),
        }
    }
    Some((Curve::ring(&ring).ok()?, used_up))
}

/// A segment that starts where the one before it ends, so that no sliver lies between them.
fn started_at(segment: Segment<f64>, at: Pt<f64>) -> Segment<f64> {
    match segment {
        Segment::Line(_, b) => Segment::Line(at, b),
        Segment::Cubic([_, b, c, d]) => Segment::Cubic([at, b, c, d]),
        arc @ Segment::Arc(_) => arc,
    }
}
