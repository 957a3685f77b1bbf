//! A piece that is drawn as a half, unfolded.

use kurbo::{Affine, BezPath, PathSeg, Point};

use crate::base::tolerance;

/// A closed line, a part of which lies on a fold, with its mirror image: one closed line. As it is where none of it lies there.
pub fn unfolded(half: &BezPath, (a, b): (Point, Point)) -> BezPath {
    let way = b - a;
    if way.hypot() <= tolerance::EQUAL {
        return half.clone();
    }
    let on_fold = |p: Point| (way.cross(p - a) / way.hypot()).abs() <= tolerance::ON_EDGE;
    let all: Vec<PathSeg> = half.segments().collect();
    let lies = |s: &PathSeg| matches!(s, PathSeg::Line(l) if on_fold(l.p0) && on_fold(l.p1));
    // The open line begins behind the stretch on the fold.
    let Some(start) = (0..all.len()).find(|i| lies(&all[(i + all.len() - 1) % all.len()]) && !lies(&all[*i])) else {
        return half.clone();
    };
    let open: Vec<PathSeg> = (0..all.len()).map(|i| all[(start + i) % all.len()]).take_while(|s| !lies(s)).collect();
    let line = BezPath::from_path_segments(open.into_iter());
    let mirror = Affine::reflect(a, way);
    let mut whole = line.clone();
    let back = (mirror * line).reverse_subpaths();
    whole.extend(back.elements().iter().skip(1).copied());
    whole.close_path();
    whole
}

/// Lines with their mirror images.
pub fn doubled(lines: &mut Vec<BezPath>, (a, b): (Point, Point)) {
    let mirror = Affine::reflect(a, b - a);
    let own = lines.clone();
    lines.extend(own.into_iter().map(|l| mirror * l));
}
