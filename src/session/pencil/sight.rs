//! What can be pointed at in a piece or drawing, in one size.

use kurbo::{BezPath, Point};

use super::Rounding;
use crate::base::DisplayUnit;
use crate::compute::{Formula, Trial, unit_of};
use crate::document::{Draft, Edge, Segment};
use crate::language::{Frame, Kind, What, tidy};
use crate::session::Computed;
use crate::texts::{message, say};

/// A named point.
pub(in crate::session) struct SeenPoint {
    pub name: String,
    pub at: Point,
}

/// A named edge or line.
pub(in crate::session) struct SeenEdge {
    pub name: String,
    pub path: BezPath,
    /// Names of the points at which it starts and ends.
    pub ends: [String; 2],
    /// Whether it is one straight stretch.
    pub straight: bool,
    /// Whether it belongs to the outline of a piece: then it has an inside.
    pub outline: bool,
}

/// Everything that can be pointed at in a piece or drawing.
pub struct Sight<'a> {
    pub(in crate::session) frame: String,
    pub(in crate::session) points: Vec<SeenPoint>,
    pub(in crate::session) edges: Vec<SeenEdge>,
    computed: &'a Computed,
    trial: Trial<'a>,
    case: usize,
    unit: DisplayUnit,
}

fn point_kind() -> What {
    What::Kind(Kind::Point(Frame(0)))
}

impl<'a> Sight<'a> {
    /// What is seen of a piece or drawing in a case; none where the draft cannot be computed or the frame is not in it.
    pub fn of(computed: &'a Computed, frame: &str, case: usize) -> Option<Self> {
        let model = computed.model.as_ref()?;
        let place = model.plan.frames().iter().position(|f| *f.name == *frame)?;
        let plan = &model.plan.frames()[place];
        let local = |node: u32| {
            let name = &*model.plan.nodes[node as usize].part.name;
            name.split_once('.').map_or(name, |(_, l)| l).to_owned()
        };
        let mut points = Vec::new();
        for node in &plan.points {
            let at = model.item(case, *node).and_then(|i| i.point()).map(|p| Point::new(p.x, p.y));
            points.extend(at.filter(|p| p.is_finite()).map(|at| SeenPoint { name: local(*node), at }));
        }
        let (outline, lines) = drawn_edges(&computed.draft, frame);
        let mut edges = Vec::new();
        let all = plan.edges.iter().map(|n| (*n, true)).chain(plan.lines.iter().map(|n| (*n, false)));
        for (node, is_outline) in all {
            let name = local(node);
            let drawn = if is_outline { outline } else { lines }.iter().find(|e| e.name == name);
            let shape = model.item(case, node).and_then(|i| i.edge());
            let (Some(drawn), Some(shape)) = (drawn, shape) else { continue };
            let end = drawn.by.last().map_or(drawn.from.as_str(), Segment::end);
            edges.push(SeenEdge {
                path: shape.curve.to_path(),
                ends: [drawn.from.clone(), end.to_owned()],
                straight: matches!(drawn.by[..], [Segment::Straight(_)]),
                outline: is_outline,
                name,
            });
        }
        let trial = Trial::new(&computed.draft, &model.plan);
        let unit = computed.draft.display;
        Some(Self { frame: frame.to_owned(), points, edges, computed, trial, case, unit })
    }

    /// The place of a point of the frame.
    pub fn point(&self, name: &str) -> Option<Point> {
        self.points.iter().find(|p| p.name == name).map(|p| p.at)
    }

    /// Where a formula puts a point.
    ///
    /// # Errors
    /// What is wrong with it; `None` where it is right and has no answer in this size, or names something that is broken.
    pub fn place(&self, text: &str) -> Result<Point, Option<String>> {
        let formula = self.read(text, point_kind())?;
        let model = self.computed.model.as_ref().ok_or(None)?;
        let item = self.trial.value(model, self.case, &formula).ok_or(None)?;
        item.point().map(|p| Point::new(p.x, p.y)).filter(|p| p.is_finite()).ok_or(None)
    }

    /// What a formula for a length or an angle gives, mm or radians.
    pub(in crate::session) fn real(&self, text: &str) -> Option<f64> {
        let formula = self.read(text, What::Quantity).ok()?;
        self.trial.value(self.computed.model.as_ref()?, self.case, &formula)?.real().filter(|v| v.is_finite())
    }

    fn read(&self, text: &str, what: What) -> Result<Formula, Option<String>> {
        let read = self.trial.read(Some(&self.frame), text, what);
        read.map_err(|finding| finding.map(|f| message(&f, self.unit)))
    }

    /// A number as it was typed instead of another one, as it is to be written: a bare number gets the unit of what it stands for, or the draft's.
    pub(super) fn number(&self, typed: &str, instead: &str) -> Result<String, String> {
        let typed = tidy(typed.strip_prefix('=').unwrap_or(typed));
        let is_angle = instead.ends_with('°') || instead.ends_with("deg");
        let is_length = instead.ends_with(|c: char| c.is_ascii_alphabetic()) && !is_angle;
        let bare = typed.parse::<f64>().is_ok() || fraction(&typed);
        let to = match (bare, is_angle, is_length) {
            (true, true, _) => format!("{typed}°"),
            (true, _, true) => self.with_unit(&typed),
            // A place on an edge: up to 1 a part of it, beyond that so far along.
            (true, ..) if typed.parse::<f64>().is_ok_and(|v| v > 1.0) => self.with_unit(&typed),
            _ => typed,
        };
        let what = match (is_angle, is_length) {
            (true, _) => What::Kind(Kind::Angle),
            (_, true) => What::Kind(Kind::LENGTH),
            _ => What::Place,
        };
        match self.read(&to, what) {
            Ok(_) => Ok(to),
            Err(why) => Err(why.unwrap_or_else(|| say!("formula-uncomputed", text = to))),
        }
    }

    fn with_unit(&self, number: &str) -> String {
        format!("{number} {}", unit_of(&self.computed.draft).sign())
    }

    /// Rounding for this draft at a scale, px per mm.
    pub fn rounding(&self, scale: f64) -> Rounding {
        Rounding::of(self.unit, scale)
    }
}

/// `3/8`, `1 1/2`.
fn fraction(text: &str) -> bool {
    let Some((over, under)) = text.split_once('/') else { return false };
    let whole = |t: &str| !t.is_empty() && t.chars().all(|c| c.is_ascii_digit());
    over.split_whitespace().count() <= 2
        && over.split_whitespace().all(whole)
        && !over.trim().is_empty()
        && whole(under.trim())
}

/// Outline and lines of a piece, or the lines of a drawing.
fn drawn_edges<'d>(draft: &'d Draft, frame: &str) -> (&'d [Edge], &'d [Edge]) {
    let piece = draft.pieces.iter().find(|p| p.name == frame);
    let drawing = draft.drawings.iter().find(|d| d.name == frame);
    piece.map(|p| (&p.edges[..], &p.lines[..])).or(drawing.map(|d| (&[][..], &d.lines[..]))).unwrap_or((&[], &[]))
}
