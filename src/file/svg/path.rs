//! Path data and arcs: from what stands in an attribute to stretches in the units of the file.

use kurbo::{Affine, Arc, Point, SvgArc, Vec2};
use svgtypes::{PathParser, PathSegment};

use super::{ArcRun, Outline, Run};
use crate::texts::say;

/// Outlines of path data, in its own coordinates, shown by `map`.
///
/// # Errors
/// What is wrong with the data, and where.
pub(super) fn outlines(data: &str, map: Affine, name: &str) -> Result<Vec<Outline>, String> {
    let mut pen = Pen { map, name, done: Vec::new(), open: None, at: Point::ZERO, start: Point::ZERO, handle: None };
    for segment in PathParser::from(data) {
        pen.draw(segment.map_err(|e| e.to_string())?)?;
    }
    pen.lift(false);
    Ok(pen.done)
}

/// The last handle, which a smooth segment mirrors: of a cubic, of a quadratic.
#[derive(Clone, Copy)]
enum Handle {
    Cubic(Point),
    Quadratic(Point),
}

struct Pen<'a> {
    map: Affine,
    name: &'a str,
    done: Vec<Outline>,
    open: Option<Outline>,
    at: Point,
    start: Point,
    handle: Option<Handle>,
}

impl Pen<'_> {
    fn lift(&mut self, close: bool) {
        if let Some(mut outline) = self.open.take() {
            if close {
                let start = outline.start;
                if outline.runs.last().is_some_and(|r| r.end() != start) {
                    outline.runs.push(Run::Straight(start));
                }
                outline.closed = true;
            }
            if !outline.runs.is_empty() {
                self.done.push(outline);
            }
        }
    }

    fn run(&mut self, run: Run, to: Point) -> Result<(), String> {
        if !(to.x.is_finite() && to.y.is_finite()) {
            return Err(say!("svg-number-large"));
        }
        let (map, at, name) = (self.map, self.at, self.name);
        let outline = self.open.get_or_insert_with(|| Outline {
            name: name.to_owned(),
            start: map * at,
            runs: Vec::new(),
            closed: false,
        });
        outline.runs.push(run.mapped(map));
        self.at = to;
        Ok(())
    }

    fn place(&self, abs: bool, x: f64, y: f64) -> Point {
        if abs { Point::new(x, y) } else { self.at + Vec2::new(x, y) }
    }

    fn draw(&mut self, segment: PathSegment) -> Result<(), String> {
        let handle = self.handle.take();
        let at = self.at;
        match segment {
            PathSegment::MoveTo { abs, x, y } => {
                let to = self.place(abs, x, y);
                self.lift(false);
                (self.at, self.start) = (to, to);
                Ok(())
            }
            PathSegment::ClosePath { .. } => {
                self.lift(true);
                self.at = self.start;
                Ok(())
            }
            PathSegment::LineTo { abs, x, y } => self.line(self.place(abs, x, y)),
            PathSegment::HorizontalLineTo { abs, x } => self.line(Point::new(if abs { x } else { at.x + x }, at.y)),
            PathSegment::VerticalLineTo { abs, y } => self.line(Point::new(at.x, if abs { y } else { at.y + y })),
            PathSegment::CurveTo { abs, x1, y1, x2, y2, x, y } => {
                let [a, b, to] = [(x1, y1), (x2, y2), (x, y)].map(|(x, y)| self.place(abs, x, y));
                self.cubic(a, b, to)
            }
            PathSegment::SmoothCurveTo { abs, x2, y2, x, y } => {
                let [b, to] = [(x2, y2), (x, y)].map(|(x, y)| self.place(abs, x, y));
                let a = if let Some(Handle::Cubic(before)) = handle { at + (at - before) } else { at };
                self.cubic(a, b, to)
            }
            PathSegment::Quadratic { abs, x1, y1, x, y } => {
                let [middle, to] = [(x1, y1), (x, y)].map(|(x, y)| self.place(abs, x, y));
                self.quadratic(middle, to)
            }
            PathSegment::SmoothQuadratic { abs, x, y } => {
                let middle = if let Some(Handle::Quadratic(before)) = handle { at + (at - before) } else { at };
                self.quadratic(middle, self.place(abs, x, y))
            }
            PathSegment::EllipticalArc { abs, rx, ry, x_axis_rotation, large_arc, sweep, x, y } => {
                let to = self.place(abs, x, y);
                let arc = SvgArc {
                    from: at,
                    to,
                    radii: Vec2::new(rx, ry),
                    x_rotation: x_axis_rotation.to_radians(),
                    large_arc,
                    sweep,
                };
                match Arc::from_svg_arc(&arc) {
                    // By the standard: an arc without a radius is a straight line, one to where it starts is nothing.
                    None if at == to => Ok(()),
                    None => self.line(to),
                    Some(arc) => {
                        let map = Affine::translate(arc.center.to_vec2())
                            * Affine::rotate(arc.x_rotation)
                            * Affine::scale_non_uniform(arc.radii.x, arc.radii.y);
                        let own = ArcRun { map, start: arc.start_angle, sweep: arc.sweep_angle, to };
                        self.run(Run::Arc(own), to)
                    }
                }
            }
        }
    }

    fn line(&mut self, to: Point) -> Result<(), String> {
        self.run(Run::Straight(to), to)
    }

    fn cubic(&mut self, a: Point, b: Point, to: Point) -> Result<(), String> {
        self.run(Run::Cubic(a, b, to), to)?;
        self.handle = Some(Handle::Cubic(b));
        Ok(())
    }

    /// A quadratic is a cubic with both handles two thirds of the way to its one: exactly the same curve.
    fn quadratic(&mut self, middle: Point, to: Point) -> Result<(), String> {
        let at = self.at;
        self.run(Run::Cubic(at + (middle - at) * (2.0 / 3.0), to + (middle - to) * (2.0 / 3.0), to), to)?;
        self.handle = Some(Handle::Quadratic(middle));
        Ok(())
    }
}

/// An ellipse as four quarters that start at its right, as the standard draws it.
pub(super) fn ellipse(centre: Point, radii: Vec2, map: Affine, name: &str) -> Outline {
    let own = map * Affine::translate(centre.to_vec2()) * Affine::scale_non_uniform(radii.x, radii.y);
    let corners = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)].map(|(x, y)| own * Point::new(x, y));
    let quarter = std::f64::consts::FRAC_PI_2;
    let runs = (0..4)
        .map(|i| {
            let to = corners[(i + 1) % 4];
            Run::Arc(ArcRun { map: own, start: quarter * i as f64, sweep: quarter, to })
        })
        .collect();
    Outline { name: name.to_owned(), start: corners[0], runs, closed: true }
}

/// A rectangle, its corners rounded if there are radii.
pub(super) fn rectangle(corner: Point, size: Vec2, radii: Vec2, map: Affine, name: &str) -> Outline {
    let (rx, ry) = (radii.x.min(size.x / 2.0), radii.y.min(size.y / 2.0));
    let (x0, y0, x1, y1) = (corner.x, corner.y, corner.x + size.x, corner.y + size.y);
    let straight = |x, y| Run::Straight(map * Point::new(x, y));
    if rx <= 0.0 || ry <= 0.0 {
        let runs = vec![straight(x1, y0), straight(x1, y1), straight(x0, y1), straight(x0, y0)];
        return Outline { name: name.to_owned(), start: map * corner, runs, closed: true };
    }
    let quarter = std::f64::consts::FRAC_PI_2;
    let round = |x: f64, y: f64, i: i32, to: (f64, f64)| {
        let own = map * Affine::translate(Vec2::new(x, y)) * Affine::scale_non_uniform(rx, ry);
        Run::Arc(ArcRun { map: own, start: quarter * f64::from(i), sweep: quarter, to: map * Point::new(to.0, to.1) })
    };
    let runs = vec![
        straight(x1 - rx, y0),
        round(x1 - rx, y0 + ry, -1, (x1, y0 + ry)),
        straight(x1, y1 - ry),
        round(x1 - rx, y1 - ry, 0, (x1 - rx, y1)),
        straight(x0 + rx, y1),
        round(x0 + rx, y1 - ry, 1, (x0, y1 - ry)),
        straight(x0, y0 + ry),
        round(x0 + rx, y0 + ry, 2, (x0 + rx, y0)),
    ];
    Outline { name: name.to_owned(), start: map * Point::new(x0 + rx, y0), runs, closed: true }
}
