//! Outlines out of SVG files: what is drawn there as lines, in the units of the file, and what the file says of its scale.
//!
//! Read as the SVG standard says (SVG 1.1 and 2 of the W3C: paths, basic shapes, groups, transforms, nested `svg`, `use`). Text,
//! pictures and styles are left out and counted. What the lines mean in a draft is `session`'s; nothing outside the file is read.

mod path;
mod read;
mod shapes;
mod trouble;

use kurbo::{Affine, BezPath, ParamCurve, Point, Rect, Shape, Vec2};

pub use read::{open_svg, read_svg};
pub use trouble::SvgError;

/// The most bytes of a file that are read (16 MiB).
pub const MOST_BYTES: u64 = 16 * 1024 * 1024;
/// The most elements that are looked at, those that are drawn again by `use` counted each time.
pub const MOST_ELEMENTS: u32 = 100_000;
/// The most outlines that are taken from a file.
pub const MOST_OUTLINES: usize = 1_000;
/// The most stretches of one outline: what an edge of a draft may have.
pub const MOST_RUNS: usize = 500;
/// The deepest nesting of groups and of `use`.
pub const DEEPEST: usize = 64;
/// CSS pixels in an inch, by the CSS standard.
pub const CSS_PER_INCH: f64 = 96.0;

/// What was found in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlines {
    /// The outlines, in the order in which they stand.
    pub all: Vec<Outline>,
    /// What the file says of its scale.
    pub scale: Scale,
    /// What was left out or is odd, in words.
    pub notes: Vec<String>,
}

/// What a file says of its scale.
#[derive(Clone, Debug, PartialEq)]
pub enum Scale {
    /// So many mm are one unit of the file.
    Known(f64),
    /// It does not say, and why.
    Unknown(String),
}

/// A line in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Its own name in the file, or that of its group; empty: none.
    pub name: String,
    /// Where it starts, in units of the file.
    pub start: Point,
    /// Its stretches.
    pub runs: Vec<Run>,
    /// Whether the file closes it.
    pub closed: bool,
}

/// A stretch of an outline, in units of the file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Run {
    /// Straight to a point.
    Straight(Point),
    /// A cubic with its two handles.
    Cubic(Point, Point, Point),
    /// A part of the unit circle as this map shows it: a circular arc or one of an ellipse.
    Arc(ArcRun),
}

/// A part of a circle or an ellipse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArcRun {
    /// From the unit circle to the file.
    pub map: Affine,
    /// Where on the unit circle it starts, radians.
    pub start: f64,
    /// How far it goes round there, radians.
    pub sweep: f64,
    /// Where it ends.
    pub to: Point,
}

impl Run {
    /// Where it ends.
    pub fn end(&self) -> Point {
        match self {
            Self::Straight(to) | Self::Cubic(_, _, to) => *to,
            Self::Arc(arc) => arc.to,
        }
    }

    /// The same, as another map shows it.
    pub fn mapped(&self, by: Affine) -> Self {
        match self {
            Self::Straight(to) => Self::Straight(by * *to),
            Self::Cubic(a, b, to) => Self::Cubic(by * *a, by * *b, by * *to),
            Self::Arc(arc) => Self::Arc(ArcRun { map: by * arc.map, to: by * arc.to, ..*arc }),
        }
    }
}

/// How far the cubics of [`ArcRun::cubics`] may leave the arc, as a share of its radius, for a turn of a quarter; it shrinks with the
/// sixth power of the turn. From the usual handle of 4/3 tan(turn / 4).
const QUARTER_ERROR: f64 = 2.8 / 10_000.0;

impl ArcRun {
    /// The point at a share of the turn.
    pub fn point(&self, share: f64) -> Point {
        let angle = self.start + self.sweep * share;
        self.map * Point::new(libm::cos(angle), libm::sin(angle))
    }

    /// The directions of both axes of the unit circle, as the file shows them.
    fn axes(&self) -> (Vec2, Vec2) {
        let [a, b, c, d, _, _] = self.map.as_coeffs();
        (Vec2::new(a, b), Vec2::new(c, d))
    }

    /// The longest way from the centre.
    pub fn reach(&self) -> f64 {
        let (a, b) = self.axes();
        libm::hypot(a.hypot(), b.hypot())
    }

    /// Centre, radius and whether it turns clockwise as seen, if it is circular within `limit`.
    pub fn circle(&self, limit: f64) -> Option<(Point, f64, bool)> {
        let (a, b) = self.axes();
        let radius = (a.hypot() + b.hypot()) / 2.0;
        let off = (a.hypot() - b.hypot()).abs().max(a.dot(b).abs() / radius);
        let clockwise = (a.cross(b) > 0.0) == (self.sweep > 0.0);
        (off <= limit).then(|| (self.map * Point::ZERO, radius, clockwise))
    }

    /// Both halves.
    pub fn halves(&self) -> [Self; 2] {
        let half = self.sweep / 2.0;
        [Self { sweep: half, to: self.point(0.5), ..*self }, Self { start: self.start + half, sweep: half, ..*self }]
    }

    /// Cubics that leave it by no more than `limit`.
    pub fn cubics(&self, limit: f64) -> Vec<Run> {
        const MOST: usize = 64;
        let turn = self.sweep.abs() / std::f64::consts::FRAC_PI_2;
        let error = |n: usize| self.reach() * QUARTER_ERROR * libm::pow(turn / n as f64, 6.0);
        let first = (turn.ceil() as usize).clamp(1, MOST);
        let many = (first..MOST).find(|n| error(*n) <= limit).unwrap_or(MOST);
        let step = self.sweep / many as f64;
        let handle = 4.0 / 3.0 * libm::tan(step / 4.0);
        let circle = |angle: f64| Vec2::new(libm::cos(angle), libm::sin(angle));
        (0..many)
            .map(|i| {
                let (from, to) = (self.start + step * i as f64, self.start + step * (i + 1) as f64);
                let (a, b) = (circle(from), circle(to));
                let leaving = a + Vec2::new(-a.y, a.x) * handle;
                let arriving = b - Vec2::new(-b.y, b.x) * handle;
                let end = if i + 1 == many { self.to } else { self.map * b.to_point() };
                Run::Cubic(self.map * leaving.to_point(), self.map * arriving.to_point(), end)
            })
            .collect()
    }
}

impl Outline {
    /// As cubics and straight lines, arcs within `limit`.
    pub fn path(&self, limit: f64) -> BezPath {
        let mut path = BezPath::new();
        path.move_to(self.start);
        for run in &self.runs {
            match run {
                Run::Straight(to) => path.line_to(*to),
                Run::Cubic(a, b, to) => path.curve_to(*a, *b, *to),
                Run::Arc(arc) => arc.cubics(limit).iter().for_each(|c| {
                    if let Run::Cubic(a, b, to) = c {
                        path.curve_to(*a, *b, *to);
                    }
                }),
            }
        }
        path
    }

    /// The smallest upright rectangle around it.
    pub fn bounds(&self) -> Rect {
        let mut bounds = Rect::from_points(self.start, self.start);
        let rough = self.runs.iter().fold(bounds, |r, run| r.union_pt(run.end()));
        let limit = rough.width().max(rough.height()) * crate::base::tolerance::EQUAL;
        for segment in self.path(limit.max(f64::MIN_POSITIVE)).segments() {
            bounds = bounds.union(segment.bounding_box()).union_pt(segment.eval(1.0));
        }
        bounds
    }
}
