//! Curves as straight lines, kept from frame to frame while neither the shape nor the scale changes much.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

use egui::{Color32, Mesh, Pos2};
use kurbo::{BezPath, PathEl, Point};

use crate::app::shapes::Drawn;

/// The straight lines leave the curves by no more than this, px.
const FLATNESS: f64 = 0.2;
/// They are kept until the scale has changed by this factor.
const SCALES: f64 = 1.5;
/// More shapes than this are not kept: then all are forgotten, which only costs time.
const MOST: usize = 20_000;

/// Lines of a shape, mm, in its own frame.
pub(in crate::app) struct Lines {
    pub outline: Vec<Vec<Point>>,
    pub lines: Vec<Vec<Point>>,
    scale: f64,
    /// As it was painted last, and where.
    painted: RefCell<Option<(Where, Arc<Mesh>)>>,
    /// Kept, so that no other shape comes to lie where it was.
    _shape: Arc<Drawn>,
}

/// Where and how lines are painted: the frame's origin on the screen, px per mm, width, colour.
type Where = (Pos2, f64, f32, Color32);

impl Lines {
    /// The lines as triangles, made anew only where they are painted otherwise than before.
    pub fn mesh(&self, at: Where, make: impl FnOnce() -> Mesh) -> Arc<Mesh> {
        let mut painted = self.painted.borrow_mut();
        match &*painted {
            Some((known, mesh)) if *known == at => Arc::clone(mesh),
            _ => {
                let mesh = Arc::new(make());
                *painted = Some((at, Arc::clone(&mesh)));
                mesh
            }
        }
    }
}

/// Shapes as straight lines.
#[derive(Default)]
pub(in crate::app) struct Flat {
    known: BTreeMap<usize, Rc<Lines>>,
}

impl Flat {
    /// The lines of a shape at a scale, px per mm.
    pub fn of(&mut self, drawn: &Arc<Drawn>, scale: f64) -> Rc<Lines> {
        let key = Arc::as_ptr(drawn) as usize;
        if let Some(lines) = self.known.get(&key)
            && (lines.scale / SCALES..lines.scale * SCALES).contains(&scale)
        {
            return Rc::clone(lines);
        }
        if self.known.len() >= MOST {
            self.known.clear();
        }
        let outline = lines(&drawn.outline, scale);
        let inner = drawn.lines.iter().flat_map(|l| lines(l, scale)).collect();
        let made =
            Rc::new(Lines { outline, lines: inner, scale, painted: RefCell::default(), _shape: Arc::clone(drawn) });
        self.known.insert(key, Rc::clone(&made));
        made
    }

    /// Forgets shapes that nobody else holds any more.
    pub fn tidy(&mut self) {
        self.known.retain(|_, lines| Arc::strong_count(&lines._shape) > 1);
    }
}

/// A path as straight lines, fine enough for half as much again as this scale.
pub(super) fn lines(path: &BezPath, scale: f64) -> Vec<Vec<Point>> {
    straight(path, FLATNESS / (scale * SCALES))
}

/// A path as straight lines that leave it by no more than this.
pub(in crate::app) fn straight(path: &BezPath, tolerance: f64) -> Vec<Vec<Point>> {
    let mut lines: Vec<Vec<Point>> = Vec::new();
    kurbo::flatten(path, tolerance, |element| match element {
        PathEl::MoveTo(p) => lines.push(vec![p]),
        PathEl::ClosePath => {
            if let Some(line) = lines.last_mut() {
                line.extend(line.first().copied());
            }
        }
        PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => {
            if let Some(line) = lines.last_mut() {
                line.push(p);
            }
        }
    });
    lines
}

/// A thin line as a strip of triangles without soft edges: a fifth of the work, for drawings of very many lines.
pub(super) fn strip(mesh: &mut Mesh, line: &[Pos2], width: f32, color: Color32) {
    if line.len() < 2 {
        return;
    }
    // Thinner than the grid of the screen it would have gaps.
    let width = width.max(1.1);
    let closed = line.first() == line.last() && line.len() > 2;
    let last = line.len() - 1;
    let first = mesh.vertices.len() as u32;
    let normal = |a: Pos2, b: Pos2| (b - a).normalized().rot90() * (width / 2.0);
    for (i, at) in line.iter().enumerate() {
        let before = match i {
            0 if closed => line[last - 1],
            0 => *at,
            _ => line[i - 1],
        };
        let after = match i {
            _ if i < last => line[i + 1],
            _ if closed => line[1],
            _ => *at,
        };
        let (a, b) = (normal(before, *at), normal(*at, after));
        let both = a + b;
        // At a sharp corner the line keeps its width, it does not run out in a spike.
        let long = both.length_sq();
        let sharp = long < width * width / 4.0;
        let off = if sharp { both.normalized() * (width / 2.0) } else { both * (width * width / (2.0 * long)) };
        let off = if off.x.is_finite() && off.y.is_finite() { off } else { a };
        mesh.colored_vertex(*at + off, color);
        mesh.colored_vertex(*at - off, color);
        if i > 0 {
            let v = first + 2 * (i as u32 - 1);
            mesh.add_triangle(v, v + 1, v + 2);
            mesh.add_triangle(v + 1, v + 2, v + 3);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    #[test]
    fn a_strip_is_as_wide_at_its_corners_as_between() {
        let square = [pos2(0.0, 0.0), pos2(50.0, 0.0), pos2(50.0, 50.0), pos2(0.0, 50.0), pos2(0.0, 0.0)];
        let mut mesh = Mesh::default();
        strip(&mut mesh, &square, 2.0, Color32::BLACK);
        for (i, at) in square.iter().enumerate() {
            for side in [0, 1] {
                let off = mesh.vertices[2 * i + side].pos - *at;
                assert!((off.x.abs() - 1.0).abs() < 1e-4 && (off.y.abs() - 1.0).abs() < 1e-4, "{i}: {off:?}");
            }
        }
        // A spike keeps the width instead of running out.
        let mut mesh = Mesh::default();
        strip(&mut mesh, &[pos2(0.0, 0.0), pos2(50.0, 0.0), pos2(0.0, 0.5)], 2.0, Color32::BLACK);
        assert!((mesh.vertices[2].pos - pos2(50.0, 0.0)).length() < 1.01);
    }
}
