//! Cut lines beside `i_overlay` (here) and shapely (in `figures.py`, which also compares the areas): the same outlines, one allowance all round,
//! corners of which the lines run on until they meet.
//!
//! Ours is the whole `finish` of a draft with these pieces: lines set off as curves within 0.001 mm, joined, looked through for crossings, trimmed
//! where there are any; beside that it gives widths, places and what else belongs to a finished piece. The others get the stitch line as a
//! polygon whose chords are within 0.001 mm of it, made beforehand, and give a polygon.

use std::fmt::Write as _;
use std::path::Path;

use i_overlay::mesh::float::outline::offset::OutlineOffset;
use i_overlay::mesh::float::style::{LineJoin, OutlineStyle};
use kurbo::{BezPath, PathEl, Point, Shape};
use serde_json::json;
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::finish::{Finished, finish};

use crate::dice::Dice;
use crate::{millis, told};

/// Chords leave the curve by no more, mm: what our own cut lines are held to.
const WITHIN: f64 = 1e-3;
/// How many outlines of each kind.
const COUNT: usize = 40;

/// Corners round a middle, joined by straight lines and curves that bulge a little or, if `tight`, go in with a narrow end.
fn outline(dice: &mut Dice, tight: bool) -> (Vec<Point>, Vec<Option<[Point; 2]>>) {
    let n = if tight { 10 } else { dice.from(5, 9) as usize };
    let mut share = |low: f64, high: f64| low + (high - low) * dice.below(10_001) as f64 / 10_000.0;
    let corners: Vec<Point> = (0..n)
        .map(|i| {
            let turn = std::f64::consts::TAU * (i as f64 + share(-0.15, 0.15)) / n as f64;
            Point::ORIGIN + kurbo::Vec2::from_angle(turn) * share(230.0, 270.0)
        })
        .collect();
    let edges = (0..n)
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            let way = b - a;
            // Corners run clockwise as seen with y down, so the outside lies on the left.
            let out = kurbo::Vec2::new(way.y, -way.x);
            if tight && i % 2 == 0 {
                let depth = out * -share(0.35, 0.5);
                Some([a + way * 0.7 + depth, a + way * 0.3 + depth])
            } else if i % 3 == 0 {
                None
            } else {
                Some([a + way / 3.0 + out * share(-0.1, 0.12), b - way / 3.0 + out * share(-0.1, 0.12)])
            }
        })
        .collect();
    (corners, edges)
}

fn draft(outlines: &[(Vec<Point>, Vec<Option<[Point; 2]>>)], allowance: f64) -> Draft {
    let at = |p: Point| format!("\"({:.6} mm, {:.6} mm)\"", p.x, p.y);
    let mut pieces = String::new();
    for (k, (corners, edges)) in outlines.iter().enumerate() {
        let (mut points, mut lines, mut forms) = (String::new(), String::new(), String::new());
        for (i, corner) in corners.iter().enumerate() {
            let end = format!("p{}", (i + 1) % corners.len());
            let by = match edges[i] {
                None => format!("straight(\"{end}\")"),
                Some([a, b]) => format!("curve({}, {}, \"{end}\")", at(a), at(b)),
            };
            let _ = write!(points, "(name: \"p{i}\", at: {}),", at(*corner));
            let _ = write!(lines, "(name: \"e{i}\", from: \"p{i}\", by: [{by}]),");
            let _ = write!(forms, "(at: \"p{i}\", form: plain),");
        }
        let _ = write!(pieces, "(name: \"piece{k}\", points: [{points}], edges: [{lines}], corners: [{forms}]),");
    }
    let text = format!(
        "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]), settings: (allowance: \"{allowance} mm\"), pieces: [{pieces}])"
    );
    file::read(&text).unwrap().draft
}

/// The points of a closed path, the first not told again.
fn polygon(path: &BezPath) -> Vec<[f64; 2]> {
    let mut points: Vec<[f64; 2]> = Vec::new();
    kurbo::flatten(path, WITHIN, |el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => points.push([p.x, p.y]),
        _ => {}
    });
    points.dedup();
    if points.first() == points.last() {
        points.pop();
    }
    points
}

fn cut_lines(finished: &Finished) -> Vec<&tracewheel::finish::FinishedCut> {
    finished.cases[0].iter().flatten().flat_map(|p| &p.cuts).collect()
}

/// By the other library, in its largest integers.
fn set_off(points: &Vec<[f64; 2]>, style: &OutlineStyle<f64>) -> Vec<Vec<Vec<[f64; 2]>>> {
    OutlineOffset::<[f64; 2]>::outline_as::<i64>(points, style)
}

/// The outside of what came of setting off.
fn outside(shapes: &[Vec<Vec<[f64; 2]>>]) -> Option<&Vec<[f64; 2]>> {
    shapes.iter().filter_map(|s| s.first()).max_by(|a, b| area(a).abs().total_cmp(&area(b).abs()))
}

fn area(points: &[[f64; 2]]) -> f64 {
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum::<f64>() / 2.0
}

pub fn run(rounds: usize, folder: &Path) {
    for (name, tight, allowance) in [("smooth", false, 10.0), ("tight", true, 15.0)] {
        let mut dice = Dice(20_261_130);
        let outlines: Vec<_> = (0..COUNT).map(|_| outline(&mut dice, tight)).collect();
        let draft = draft(&outlines, allowance);
        let model = Engine::new().compute(&draft);
        let finished = finish(&draft, &model);
        let cuts = cut_lines(&finished);
        assert!(cuts.len() == COUNT && cuts.iter().all(|c| c.outline.is_some()), "{name}: {:?}", model.findings);
        let stitches: Vec<Vec<[f64; 2]>> =
            finished.cases[0].iter().flatten().map(|p| polygon(&p.stitch)).map(counter).collect();
        let style = OutlineStyle::new(allowance)
            // Corners run on until they meet, however sharp, and on curves, where chords hardly turn.
            .line_join(LineJoin::Miter(0.1))
            .miter_min_turn(0.0);
        let mut times = Vec::new();
        for _ in 0..rounds {
            times.push([
                millis(|| drop(finish(&draft, &model))),
                millis(|| stitches.iter().for_each(|s| drop(set_off(s, &style)))),
            ]);
        }
        let theirs: Vec<_> = stitches.iter().map(|s| set_off(s, &style)).collect();
        let theirs: Vec<_> = theirs.iter().map(|shapes| outside(shapes).cloned().unwrap_or_default()).collect();
        let ours: Vec<_> = cuts.iter().map(|c| polygon(c.outline.as_ref().unwrap())).collect();
        let elements: usize = cuts.iter().filter_map(|c| c.outline.as_ref()).map(|o| o.elements().len()).sum();
        let exact: Vec<f64> = cuts.iter().map(|c| c.outline.as_ref().unwrap().area().abs()).collect();
        let points: usize = stitches.iter().map(Vec::len).sum();
        let file = folder.join(format!("{name}.json"));
        let all = json!({ "allowance": allowance, "stitch": stitches, "ours": ours, "i_overlay": theirs });
        std::fs::write(&file, all.to_string()).unwrap();
        told(&json!({
            "name": name, "allowance": allowance, "outlines": COUNT, "points": points, "elements": elements, "ms": times, "areas": exact,
            "trimmed": cuts.iter().filter(|c| c.trimmed.is_some()).count(),
        }));
    }
}

/// Turned round where it runs the other way: `i_overlay` takes the other sense for a hole.
fn counter(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    if area(&points) < 0.0 {
        points.reverse();
    }
    points
}
