//! Packing: what comes out is judged by geometry of its own (areas by slabs, distances by edges), not by that of the packer.
//!
//! A little over 600 lines; the reason: one judge and its makers of pieces serve all of these tests.

use kurbo::{Point, Rect};
use proptest::prelude::*;
use tracewheel::output::lay::packing::{
    Across, Effort, Ended, Go, Job, Laid, LayFault, Layout, PackError, Packed, Phase, Pose, Progress, Shape, Touch,
    faults, pack,
};

/// A piece may reach so far into another, mm; the packer's promise.
const DEEP: f64 = 0.01;

fn pose(turned: f64, across: Across) -> Pose {
    Pose { mirrored: false, turned, across }
}

fn anywhere(width: f64) -> Across {
    Across { from: 0.0, to: width, touch: Touch::Free }
}

fn shape(points: &[(f64, f64)], count: usize, poses: Vec<Pose>) -> Shape {
    Shape { outline: points.iter().map(|(x, y)| Point::new(*x, *y)).collect(), count, poses }
}

fn rectangle(long: f64, wide: f64) -> Vec<(f64, f64)> {
    vec![(0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide)]
}

fn job(width: f64, shapes: Vec<Shape>) -> Job {
    Job { width, shapes, gap: 0.0, locked: Vec::new(), step: 0.0, before: 0.0 }
}

/// Turned by halves: as drawn and head to tail.
fn both_ways(width: f64) -> Vec<Pose> {
    vec![pose(0.0, anywhere(width)), pose(180.0, anywhere(width))]
}

fn go(job: &Job, moves: u64, seed: u64) -> Packed {
    pack(job, &Effort { moves, seed, start: None }, &mut |_| Go::On).unwrap()
}

/// The outline of a piece as it lies; by the definition of a pose, with the sines of the standard library.
fn lying(job: &Job, laid: &Laid) -> Vec<Point> {
    let (shape, pose) = (&job.shapes[laid.shape], &job.shapes[laid.shape].poses[laid.pose]);
    let (sin, cos) = pose.turned.to_radians().sin_cos();
    let place = |p: &Point| {
        let y = if pose.mirrored { -p.y } else { p.y };
        Point::new(cos * p.x - sin * y + laid.x, sin * p.x + cos * y + laid.y)
    };
    shape.outline.iter().map(place).collect()
}

fn box_of(points: &[Point]) -> Rect {
    let first = Rect::from_points(points[0], points[0]);
    points.iter().fold(first, |b, p| b.union_pt(*p))
}

fn edges(points: &[Point]) -> Vec<(Point, Point)> {
    (0..points.len()).map(|i| (points[i], points[(i + 1) % points.len()])).collect()
}

/// Where a level line is inside a polygon.
fn chords(points: &[Point], y: f64) -> Vec<(f64, f64)> {
    let cut = |(a, b): &(Point, Point)| ((a.y > y) != (b.y > y)).then(|| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
    let mut cuts: Vec<f64> = edges(points).iter().filter_map(cut).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.chunks_exact(2).map(|c| (c[0], c[1])).collect()
}

/// The area that two polygons have in common, by slabs between all heights of corners, each cut at eight levels.
fn common_area(a: &[Point], b: &[Point]) -> f64 {
    let mut heights: Vec<f64> = a.iter().chain(b).map(|p| p.y).collect();
    heights.sort_by(f64::total_cmp);
    let mut sum = 0.0;
    for slab in heights.windows(2) {
        for k in 0..8 {
            let y = slab[0] + (slab[1] - slab[0]) * (k as f64 + 0.5) / 8.0;
            for (a0, a1) in chords(a, y) {
                for (b0, b1) in chords(b, y) {
                    sum += (a1.min(b1) - a0.max(b0)).max(0.0) * (slab[1] - slab[0]) / 8.0;
                }
            }
        }
    }
    sum
}

fn to_edge((a, b): (Point, Point), p: Point) -> f64 {
    let along = b - a;
    let t = ((p - a).dot(along) / along.hypot2()).clamp(0.0, 1.0);
    p.distance(a + along * t)
}

/// The least distance from a corner of one polygon to an edge of the other.
fn apart(a: &[Point], b: &[Point]) -> f64 {
    let one = |a: &[Point], b: &[Point]| {
        a.iter().flat_map(|p| edges(b).into_iter().map(move |e| to_edge(e, *p))).fold(f64::INFINITY, f64::min)
    };
    one(a, b).min(one(b, a))
}

fn around(points: &[Point]) -> f64 {
    edges(points).iter().map(|(a, b)| a.distance(*b)).sum()
}

/// Fails unless a layout is one: counts, places, overlaps, gaps, locks, and that its length is the true one.
fn judge(job: &Job, layout: &Layout) {
    for (i, shape) in job.shapes.iter().enumerate() {
        assert_eq!(layout.laid.iter().filter(|l| l.shape == i).count(), shape.count, "shape {i}");
    }
    assert!(layout.laid.is_sorted_by_key(|l| l.shape), "ordered by shape");
    let outlines: Vec<Vec<Point>> = layout.laid.iter().map(|l| lying(job, l)).collect();
    let mut right: f64 = 0.0;
    for (laid, outline) in layout.laid.iter().zip(&outlines) {
        let (b, across) = (box_of(outline), job.shapes[laid.shape].poses[laid.pose].across);
        assert!(b.x0 >= -DEEP && b.y0 >= across.from - DEEP && b.y1 <= across.to + DEEP, "{laid:?} {b:?}");
        match across.touch {
            Touch::Free => {}
            Touch::From => assert!((b.y0 - across.from).abs() <= 1e-6, "{laid:?} {b:?}"),
            Touch::To => assert!((b.y1 - across.to).abs() <= 1e-6, "{laid:?} {b:?}"),
        }
        right = right.max(b.x1);
    }
    assert!((right - layout.length).abs() <= 1e-6, "{right} {}", layout.length);
    for (i, a) in outlines.iter().enumerate() {
        for b in &outlines[i + 1..] {
            // As deep as is allowed, all along the shorter outline.
            let common = common_area(a, b);
            assert!(common <= DEEP * around(a).min(around(b)), "{common} mm² in common");
            assert!(job.gap == 0.0 || apart(a, b) >= job.gap - DEEP, "{} apart", apart(a, b));
        }
    }
    for lock in &job.locked {
        assert!(layout.laid.contains(lock), "{lock:?} is not there any more");
    }
    assert_eq!(faults(job, layout), [], "the check sees a fault that is none");
}

#[test]
fn rectangles_fill_a_strip_exactly() {
    // Six squares, three abreast, and a fourth kind of row that fits only beside others.
    let squares = job(300.0, vec![shape(&rectangle(100.0, 100.0), 6, vec![pose(0.0, anywhere(300.0))])]);
    let packed = go(&squares, 20_000, 1);
    judge(&squares, &packed.layout);
    assert_eq!(packed.ended, Ended::Least, "{}", packed.layout.length);
    assert!(packed.layout.length <= 200.0 * 1.001, "{}", packed.layout.length);
    let mixed = job(
        300.0,
        vec![
            shape(&rectangle(150.0, 100.0), 2, vec![pose(0.0, anywhere(300.0))]),
            shape(&rectangle(100.0, 200.0), 3, vec![pose(0.0, anywhere(300.0))]),
        ],
    );
    let packed = go(&mixed, 20_000, 1);
    judge(&mixed, &packed.layout);
    assert!(packed.layout.length <= 300.0 * 1.001, "{}", packed.layout.length);
}

#[test]
fn gores_are_laid_head_to_tail() {
    // Gores 300 wide at the hem and 60 at the waist: head to tail each further one takes 180 mm, all one way 300.
    let gore = [(0.0, 0.0), (300.0, 0.0), (180.0, 700.0), (120.0, 700.0)];
    let two = job(700.0, vec![shape(&gore, 6, both_ways(700.0))]);
    let one = job(700.0, vec![shape(&gore, 6, vec![pose(0.0, anywhere(700.0))])]);
    let (turned, straight) = (go(&two, 4000, 3).layout, go(&one, 2000, 3).layout);
    judge(&two, &turned);
    judge(&one, &straight);
    // The least: five steps of 180 and one whole hem.
    assert!(turned.length >= 1200.0 - DEEP && turned.length <= 1200.0 * 1.005, "{}", turned.length);
    assert!(straight.length >= 1800.0 - DEEP && straight.length <= 1800.0 * 1.005, "{}", straight.length);
}

#[test]
fn pieces_that_fit_only_turned_are_turned() {
    let long = rectangle(100.0, 390.0);
    let poses = vec![pose(0.0, anywhere(300.0)), pose(90.0, anywhere(300.0))];
    let job = job(300.0, vec![shape(&long, 3, poses)]);
    let packed = go(&job, 3000, 1);
    judge(&job, &packed.layout);
    assert!(packed.layout.laid.iter().all(|l| l.pose == 1));
    assert!(packed.layout.length <= 390.0 * 1.001, "{}", packed.layout.length);
}

#[test]
fn any_turn_is_exact() {
    // A triangle at 37 degrees and turned over: its box is not about its middle.
    let poses = vec![Pose { mirrored: true, turned: 37.0, across: anywhere(200.0) }];
    let job = job(200.0, vec![shape(&[(0.0, 0.0), (90.0, 10.0), (20.0, 60.0)], 7, poses)]);
    judge(&job, &go(&job, 800, 1).layout);
}

#[test]
fn locked_pieces_stay_and_others_go_around() {
    let mut job = job(
        400.0,
        vec![
            shape(&rectangle(100.0, 250.0), 2, both_ways(400.0)),
            shape(&rectangle(120.0, 120.0), 6, both_ways(400.0)),
        ],
    );
    job.locked = vec![Laid { shape: 0, pose: 0, x: 231.5, y: 70.25 }, Laid { shape: 1, pose: 1, x: 120.0, y: 130.0 }];
    let packed = go(&job, 1500, 5);
    judge(&job, &packed.layout);
    // All of it would fit on 341 mm if nothing were locked; a layout that leaves everything behind the lock would need far more.
    assert!(packed.layout.length < 560.0, "{}", packed.layout.length);
    assert!(packed.bound >= 331.5, "{}", packed.bound);
}

#[test]
fn locks_that_cannot_be_are_refused() {
    let base = job(400.0, vec![shape(&rectangle(100.0, 250.0), 2, both_ways(400.0))]);
    let at = |x: f64, y: f64| Laid { shape: 0, pose: 0, x, y };
    let refused = |locked: Vec<Laid>| {
        let job = Job { locked, ..base.clone() };
        pack(&job, &Effort { moves: 10, seed: 1, start: None }, &mut |_| Go::On) == Err(PackError::Locked)
    };
    assert!(refused(vec![at(0.0, 0.0), at(50.0, 0.0)]), "they overlap");
    assert!(refused(vec![at(0.0, 200.0)]), "beyond the strip");
    assert!(refused(vec![at(-1.0, 0.0)]), "before the strip");
    assert!(refused(vec![at(0.0, 0.0), at(100.0, 0.0), at(200.0, 0.0)]), "more than there are");
    assert!(refused(vec![Laid { shape: 3, ..at(0.0, 0.0) }]), "no such shape");
    assert!(refused(vec![Laid { pose: 9, ..at(0.0, 0.0) }]), "no such pose");
    assert!(refused(vec![at(f64::NAN, 0.0)]), "no number");
    assert!(!refused(vec![at(0.0, 0.0), at(100.0, 0.0)]));
}

#[test]
fn a_piece_on_a_fold_touches_it() {
    let fold = |touch| Across { from: 0.0, to: 500.0, touch };
    let half = [(0.0, 0.0), (300.0, 0.0), (260.0, 180.0), (40.0, 200.0)];
    let mut job = job(
        500.0,
        vec![
            shape(
                &half,
                2,
                vec![pose(0.0, fold(Touch::From)), Pose { mirrored: true, turned: 180.0, across: fold(Touch::From) }],
            ),
            shape(&half, 1, vec![pose(180.0, fold(Touch::To))]),
            shape(&[(0.0, 0.0), (150.0, 30.0), (60.0, 140.0)], 5, both_ways(500.0)),
        ],
    );
    let packed = go(&job, 1500, 2);
    judge(&job, &packed.layout);
    assert!(packed.layout.length < 750.0, "{}", packed.layout.length);
    // The same with a gap and a lock on the fold.
    job.gap = 4.0;
    job.locked = vec![Laid { shape: 0, pose: 0, x: 12.0, y: 0.0 }];
    judge(&job, &go(&job, 800, 2).layout);
}

#[test]
fn each_kind_stays_in_its_part_of_the_width() {
    // Cloth folded part way: one kind in the lower 300 mm, the other in the upper 500.
    let part = |from, to| Across { from, to, touch: Touch::Free };
    let job = job(
        800.0,
        vec![
            shape(&rectangle(200.0, 140.0), 4, vec![pose(0.0, part(0.0, 300.0))]),
            shape(&rectangle(150.0, 240.0), 6, vec![pose(0.0, part(300.0, 800.0))]),
        ],
    );
    let packed = go(&job, 1500, 4);
    judge(&job, &packed.layout);
    // Two rows of two, two rows of three.
    assert!(packed.layout.length <= 450.0 * 1.01, "{}", packed.layout.length);
    // The bound knows the parts: 6 x 150 x 240 on 500.
    assert!((packed.bound - 432.0).abs() < 0.1, "{}", packed.bound);
}

#[test]
fn gaps_are_kept() {
    let mut job = job(
        300.0,
        vec![
            shape(&[(0.0, 0.0), (120.0, 0.0), (150.0, 80.0), (60.0, 40.0), (10.0, 90.0)], 4, both_ways(300.0)),
            shape(&rectangle(70.0, 40.0), 4, both_ways(300.0)),
        ],
    );
    job.gap = 6.0;
    let wide = go(&job, 1500, 1).layout;
    judge(&job, &wide);
    // The gap is between pieces only: at the edges of the strip they may touch.
    let boxes: Vec<Rect> = wide.laid.iter().map(|l| box_of(&lying(&job, l))).collect();
    assert!(boxes.iter().any(|b| b.x0 < 3.0) && boxes.iter().any(|b| b.y0 < 3.0), "{boxes:?}");
    job.gap = 0.0;
    assert!(go(&job, 1500, 1).layout.length < wide.length);
}

/// A closed case: a rectangle of 1000 x 600 mm cut into fourteen pieces, of which it can be put together again without loss. With so few moves the
/// packer comes this near to it; less is a step back. The numbers are its own, measured when this was written.
#[test]
fn the_packer_gets_no_worse() {
    let cut: [&[(f64, f64)]; 14] = [
        &[(0.0, 0.0), (260.0, 0.0), (200.0, 210.0), (0.0, 170.0)],
        &[(260.0, 0.0), (520.0, 0.0), (470.0, 190.0), (200.0, 210.0)],
        &[(520.0, 0.0), (800.0, 0.0), (740.0, 230.0), (470.0, 190.0)],
        &[(800.0, 0.0), (1000.0, 0.0), (1000.0, 200.0), (740.0, 230.0)],
        &[(0.0, 170.0), (200.0, 210.0), (230.0, 400.0), (0.0, 380.0)],
        &[(200.0, 210.0), (470.0, 190.0), (230.0, 400.0)],
        &[(470.0, 190.0), (500.0, 420.0), (230.0, 400.0)],
        &[(470.0, 190.0), (740.0, 230.0), (500.0, 420.0)],
        &[(740.0, 230.0), (760.0, 390.0), (500.0, 420.0)],
        &[(740.0, 230.0), (1000.0, 200.0), (1000.0, 410.0), (760.0, 390.0)],
        &[(0.0, 380.0), (230.0, 400.0), (250.0, 600.0), (0.0, 600.0)],
        &[(230.0, 400.0), (500.0, 420.0), (490.0, 600.0), (250.0, 600.0)],
        &[(500.0, 420.0), (760.0, 390.0), (770.0, 600.0), (490.0, 600.0)],
        &[(760.0, 390.0), (1000.0, 410.0), (1000.0, 600.0), (770.0, 600.0)],
    ];
    let job = job(600.0, cut.iter().map(|points| shape(points, 1, both_ways(600.0))).collect());
    let mut density = 0.0;
    for seed in 1..=3 {
        let layout = go(&job, 1500, seed).layout;
        judge(&job, &layout);
        density += 1000.0 / layout.length / 3.0;
    }
    assert!(density >= FLOOR, "{density}");
}

/// What the packer reaches in the closed case, a little less than the 0.792 that were measured.
const FLOOR: f64 = 0.785;

#[test]
fn it_is_the_same_each_time() {
    let job = some_shapes(11);
    let one = go(&job, 1200, 7);
    let again = go(&job, 1200, 7);
    assert_eq!(one, again);
    assert_eq!(one.layout.length.to_bits(), again.layout.length.to_bits());
    assert_eq!((one.moves, one.ended), (1200, Ended::Moves));
    assert_ne!(one.layout, go(&job, 1200, 8).layout, "chance has no part in it");
    judge(&job, &one.layout);
}

#[test]
fn told_to_stop_it_has_the_layout_that_stands_or_none() {
    let job = some_shapes(3);
    let effort = Effort { moves: 1_000_000, seed: 1, start: None };
    let mut calls = 0;
    let mut stop = |_: &Progress<'_>| {
        calls += 1;
        Go::Stop
    };
    assert_eq!(pack(&job, &effort, &mut stop), Err(PackError::Stopped));
    assert_eq!(calls, 1);
    // As soon as there is a first layout, that is what is left.
    let mut later = |p: &Progress<'_>| if p.phase == Phase::First { Go::On } else { Go::Stop };
    let packed = pack(&job, &effort, &mut later).unwrap();
    judge(&job, &packed.layout);
    assert_eq!((packed.ended, packed.moves), (Ended::Told, 1));
    let none = go(&job, 0, 1);
    judge(&job, &none.layout);
    assert_eq!(none.ended, Ended::Moves);
    assert!(packed.layout.length <= none.layout.length, "{} {}", packed.layout.length, none.layout.length);
}

#[test]
fn progress_is_told_once_a_move() {
    let job = some_shapes(5);
    let (mut moves, mut phases, mut news, mut length) = (0, Vec::new(), 0, f64::INFINITY);
    let mut watch = |p: &Progress<'_>| {
        if phases.last() != Some(&p.phase) {
            phases.push(p.phase);
        }
        if p.phase != Phase::First {
            assert_eq!(p.moves, moves + 1);
            moves = p.moves;
            assert!(p.bound > 0.0 && p.best.length >= p.bound);
            assert!(p.is_new == (p.best.length < length), "{} {} {length}", p.is_new, p.best.length);
            assert_eq!(p.phase == Phase::Explore, p.moves <= 800, "{:?} at {}", p.phase, p.moves);
        }
        if p.is_new {
            assert!(p.best.length < length);
            length = p.best.length;
            judge(&job, p.best);
            news += 1;
        }
        Go::On
    };
    let packed = pack(&job, &Effort { moves: 1000, seed: 1, start: None }, &mut watch).unwrap();
    assert_eq!(phases, [Phase::First, Phase::Explore, Phase::Compress]);
    assert!(news > 3 && packed.layout.length <= length, "{news}");
    // Told to go on to the next phase.
    let mut after = Vec::new();
    let mut next = |p: &Progress<'_>| {
        after.push((p.moves, p.phase));
        if p.moves == 50 { Go::Next } else { Go::On }
    };
    pack(&job, &Effort { moves: 1000, seed: 1, start: None }, &mut next).unwrap();
    assert!(after.contains(&(50, Phase::Explore)) && after.contains(&(51, Phase::Compress)));
}

#[test]
fn what_does_not_fit_is_told() {
    let told = |job: &Job| pack(job, &Effort { moves: 10, seed: 1, start: None }, &mut |_| Go::On);
    let wide = job(
        300.0,
        vec![
            shape(&rectangle(100.0, 100.0), 1, both_ways(300.0)),
            shape(&rectangle(350.0, 420.0), 1, vec![pose(0.0, anywhere(300.0)), pose(90.0, anywhere(300.0))]),
        ],
    );
    assert_eq!(told(&wide), Err(PackError::TooWide { shape: 1, least: 350.0, room: 300.0 }));
    let said = told(&wide).unwrap_err().to_string();
    assert_eq!(said, "shape 1 is at least 350.0 mm wide and has 300.0 mm");
    let part = Across { from: 100.0, to: 180.0, touch: Touch::Free };
    let narrow = job(300.0, vec![shape(&rectangle(50.0, 100.0), 1, vec![pose(0.0, part)])]);
    assert_eq!(told(&narrow), Err(PackError::TooWide { shape: 0, least: 100.0, room: 80.0 }));
    let none_of_it = job(300.0, vec![shape(&rectangle(50.0, 400.0), 0, both_ways(300.0))]);
    assert!(told(&none_of_it).is_ok(), "a shape of which there is none needs no room");
}

#[test]
fn what_is_no_outline_is_told() {
    let bad: [&[(f64, f64)]; 6] = [
        &[],
        &[(0.0, 0.0), (10.0, 0.0)],
        &[(0.0, 0.0), (10.0, 0.0), (f64::NAN, 5.0)],
        &[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)],
        &[(0.0, 0.0), (100.0, 100.0), (100.0, 0.0), (0.0, 100.0)],
        &[(0.0, 0.0), (10.0, 0.0), (5.0, f64::INFINITY)],
    ];
    let good = shape(&rectangle(100.0, 100.0), 1, both_ways(300.0));
    for points in bad {
        let job = job(300.0, vec![good.clone(), shape(points, 1, both_ways(300.0))]);
        let told = pack(&job, &Effort { moves: 10, seed: 1, start: None }, &mut |_| Go::On);
        assert_eq!(told, Err(PackError::NoOutline { shape: 1 }), "{points:?}");
    }
    let turned = job(300.0, vec![shape(&rectangle(100.0, 100.0), 1, vec![pose(f64::NAN, anywhere(300.0))])]);
    let told = pack(&turned, &Effort { moves: 10, seed: 1, start: None }, &mut |_| Go::On);
    assert_eq!(told, Err(PackError::NoOutline { shape: 0 }));
}

#[test]
fn numbers_that_cannot_be_are_told() {
    let good = job(300.0, vec![shape(&rectangle(100.0, 100.0), 1, both_ways(300.0))]);
    for bad in [
        Job { width: f64::NAN, ..good.clone() },
        Job { width: 0.0, ..good.clone() },
        Job { width: f64::INFINITY, ..good.clone() },
        Job { gap: f64::NAN, ..good.clone() },
        Job { step: f64::INFINITY, ..good.clone() },
        Job { before: f64::NAN, ..good.clone() },
    ] {
        let told = pack(&bad, &Effort { moves: 10, seed: 1, start: None }, &mut |_| Go::On);
        assert_eq!(told, Err(PackError::Numbers), "{bad:?}");
    }
}

#[test]
fn nothing_and_one_piece_need_no_search() {
    let nothing = go(&job(300.0, vec![]), 1000, 1);
    assert_eq!((nothing.layout, nothing.moves, nothing.ended), (Layout::default(), 0, Ended::Least));
    let one = job(300.0, vec![shape(&[(5.0, 5.0), (95.0, 25.0), (35.0, 125.0)], 1, both_ways(300.0))]);
    let packed = go(&one, 1000, 1);
    judge(&one, &packed.layout);
    assert!(packed.layout.length <= 90.0 * 1.001 && packed.ended == Ended::Least, "{}", packed.layout.length);
    // One that cannot move: the bound is reached or moves are used up; it does not hang.
    let fixed = Across { from: 0.0, to: 120.0, touch: Touch::From };
    let stuck = job(120.0, vec![shape(&rectangle(90.0, 120.0), 2, vec![pose(0.0, fixed)])]);
    let packed = go(&stuck, 200, 1);
    judge(&stuck, &packed.layout);
    assert!(packed.moves <= 200 && packed.layout.length <= 180.2, "{}", packed.layout.length);
}

#[test]
fn a_strip_sold_by_steps_is_done_when_no_step_is_in_reach() {
    let squares = |step, before| Job {
        step,
        before,
        ..job(250.0, vec![shape(&rectangle(100.0, 100.0), 6, vec![pose(0.0, anywhere(250.0))])])
    };
    // Two abreast take 300 mm; by area it would be 240. In steps of 100 the least is 300: done as soon as it is reached.
    let hundred = squares(100.0, 0.0);
    let packed = go(&hundred, 1_000_000, 1);
    judge(&hundred, &packed.layout);
    assert_eq!(packed.ended, Ended::Least);
    assert!(packed.layout.length <= 300.0 + DEEP, "{}", packed.layout.length);
    // With 90 bought before, 300 make 390 and so 400; 240 would make 330 and so 400 as well. With 40: 340 against 280.
    assert_eq!(go(&squares(100.0, 90.0), 1_000_000, 1).ended, Ended::Least);
    assert_eq!(go(&squares(100.0, 40.0), 300, 1).ended, Ended::Moves);
}

#[test]
fn a_told_start_is_used() {
    let job = some_shapes(9);
    let good = go(&job, 3000, 2).layout;
    // A good one is the best from the beginning.
    let effort = |start, moves| Effort { moves, seed: 1, start: Some(start) };
    let kept = pack(&job, &effort(&good, 0), &mut |_| Go::On).unwrap();
    judge(&job, &kept.layout);
    assert!((kept.layout.length - good.length).abs() <= DEEP, "{} {}", kept.layout.length, good.length);
    // One put together by hand, with two pieces on each other and one beyond the strip, is mended.
    let mut by_hand = good.clone();
    by_hand.laid[1] = Laid { x: by_hand.laid[0].x + 3.0, y: by_hand.laid[0].y + 3.0, ..by_hand.laid[1] };
    by_hand.laid[2].y -= 50.0;
    assert!(!faults(&job, &by_hand).is_empty());
    let mended = pack(&job, &effort(&by_hand, 600), &mut |_| Go::On).unwrap();
    judge(&job, &mended.layout);
    let cold = go(&job, 600, 1);
    assert!(mended.layout.length < cold.layout.length, "{} {}", mended.layout.length, cold.layout.length);
    // That of a neighbouring size, of shapes 3 % larger.
    let mut larger = job.clone();
    for shape in &mut larger.shapes {
        shape.outline.iter_mut().for_each(|p| *p = Point::new(p.x * 1.03, p.y * 1.03));
    }
    let mut scaled = good.clone();
    scaled.laid.iter_mut().for_each(|l| l.x *= 1.03);
    scaled.length *= 1.03;
    // Chance decides single runs: the sums of several seeds are told apart.
    let (mut warm, mut cold) = (0.0, 0.0);
    for seed in 1..=6 {
        let next = pack(&larger, &Effort { moves: 600, seed, start: Some(&scaled) }, &mut |_| Go::On).unwrap();
        judge(&larger, &next.layout);
        warm += next.layout.length;
        cold += go(&larger, 600, seed).layout.length;
    }
    assert!(warm < cold, "{warm} {cold}");
    // One that knows other shapes and poses, or none: it is still a layout that comes out.
    for odd in [
        Layout::default(),
        Layout { laid: vec![Laid { shape: 77, pose: 5, x: f64::NAN, y: 1e300 }; 3], length: f64::NAN },
        Layout { laid: vec![Laid { shape: 0, pose: 5, x: 1e12, y: -1e300 }; 50], length: 1e300 },
    ] {
        judge(&job, &pack(&job, &Effort { moves: 50, seed: 1, start: Some(&odd) }, &mut |_| Go::On).unwrap().layout);
    }
}

#[test]
fn each_fault_is_seen() {
    let mut job = job(
        300.0,
        vec![
            shape(&rectangle(100.0, 100.0), 2, both_ways(300.0)),
            shape(&rectangle(50.0, 60.0), 1, vec![pose(0.0, Across { from: 0.0, to: 300.0, touch: Touch::From })]),
        ],
    );
    let at = |shape, x, y| Laid { shape, pose: 0, x, y };
    let layout = |laid: Vec<Laid>| Layout { laid, length: 300.0 };
    let seen = |job: &Job, laid: Vec<Laid>| faults(job, &layout(laid));
    assert_eq!(seen(&job, vec![at(0, 0.0, 0.0), at(0, 100.0, 0.0), at(1, 200.0, 0.0)]), []);
    let near = |found: Vec<LayFault>, expected: LayFault| {
        let numbers = |f: &LayFault| match *f {
            LayFault::Overlap { one, other, deep } => (0, one, other, deep),
            LayFault::Near { one, other, short } => (1, one, other, short),
            LayFault::Outside { piece, far } => (2, piece, 0, far),
            LayFault::Loose { piece, off } => (3, piece, 0, off),
            LayFault::Count { shape, laid, asked } => (4, shape, laid, asked as f64),
            LayFault::Unknown { piece } => (5, piece, 0, 0.0),
            LayFault::Moved { locked } => (6, locked, 0, 0.0),
        };
        let (a, b) = (numbers(&found[0]), numbers(&expected));
        assert!(found.len() == 1 && (a.0, a.1, a.2) == (b.0, b.1, b.2), "{found:?} {expected:?}");
        assert!((a.3 - b.3).abs() <= 0.02 * b.3 + 1e-9, "{found:?} {expected:?}");
    };
    // Three mm deep, side by side; the same square twice; a corner in another's middle.
    let over = |x, y| seen(&job, vec![at(0, 0.0, 100.0), at(0, x, y), at(1, 230.0, 0.0)]);
    near(over(97.0, 100.0), LayFault::Overlap { one: 0, other: 1, deep: 3.0 });
    near(over(0.0, 100.0), LayFault::Overlap { one: 0, other: 1, deep: 50.0 });
    near(over(50.0, 150.0), LayFault::Overlap { one: 0, other: 1, deep: 50.0 });
    assert_eq!(over(99.992, 100.0), [], "less than a hundredth of a mm");
    near(over(99.98, 100.0), LayFault::Overlap { one: 0, other: 1, deep: 0.02 });
    near(
        seen(&job, vec![at(0, 0.0, 100.0), at(0, 100.0, 210.5), at(1, 200.0, 0.0)]),
        LayFault::Outside { piece: 1, far: 10.5 },
    );
    near(
        seen(&job, vec![at(0, -2.0, 100.0), at(0, 100.0, 0.0), at(1, 200.0, 0.0)]),
        LayFault::Outside { piece: 0, far: 2.0 },
    );
    near(
        seen(&job, vec![at(0, 201.0, 100.0), at(0, 100.0, 0.0), at(1, 200.0, 0.0)]),
        LayFault::Outside { piece: 0, far: 1.0 },
    );
    near(
        seen(&job, vec![at(0, 0.0, 0.0), at(0, 100.0, 0.0), at(1, 200.0, 7.0)]),
        LayFault::Loose { piece: 2, off: 7.0 },
    );
    near(seen(&job, vec![at(0, 0.0, 0.0), at(1, 200.0, 0.0)]), LayFault::Count { shape: 0, laid: 1, asked: 2 });
    let unknown = seen(&job, vec![at(0, 0.0, 0.0), at(0, f64::NAN, 0.0), at(1, 200.0, 0.0)]);
    assert_eq!(unknown, [LayFault::Unknown { piece: 1 }]);
    job.locked = vec![at(0, 100.0, 0.0), at(0, 100.0, 150.0)];
    near(seen(&job, vec![at(0, 0.0, 0.0), at(0, 100.0, 0.0), at(1, 200.0, 0.0)]), LayFault::Moved { locked: 1 });
    job.locked.clear();
    job.gap = 5.0;
    near(
        seen(&job, vec![at(0, 0.0, 0.0), at(0, 103.0, 0.0), at(1, 210.0, 0.0)]),
        LayFault::Near { one: 0, other: 1, short: 2.0 },
    );
    // Corner against corner: 3 and 4 mm off is 5 mm apart.
    assert_eq!(seen(&job, vec![at(0, 0.0, 0.0), at(0, 103.0, 104.0), at(1, 230.0, 0.0)]), []);
    near(
        seen(&job, vec![at(0, 0.0, 0.0), at(0, 102.4, 103.2), at(1, 230.0, 0.0)]),
        LayFault::Near { one: 0, other: 1, short: 1.0 },
    );
}

#[test]
fn an_overlap_without_a_corner_in_the_other_is_seen() {
    // Two bars that cross, and a comb whose teeth a bar goes through.
    let bars = job(
        300.0,
        vec![shape(&rectangle(200.0, 20.0), 1, both_ways(300.0)), shape(&rectangle(20.0, 200.0), 1, both_ways(300.0))],
    );
    let crossed = Layout {
        laid: vec![Laid { shape: 0, pose: 0, x: 0.0, y: 100.0 }, Laid { shape: 1, pose: 0, x: 90.0, y: 0.0 }],
        length: 200.0,
    };
    let found = faults(&bars, &crossed);
    assert!(matches!(found[..], [LayFault::Overlap { deep, .. }] if (9.5..=10.1).contains(&deep)), "{found:?}");
    // A long edge that leans into another by a twentieth of a mm at its end.
    let lean = job(
        300.0,
        vec![
            shape(&rectangle(1000.0, 50.0), 1, both_ways(300.0)),
            shape(&[(0.0, 50.0), (1000.0, 49.95), (1000.0, 100.0), (0.0, 100.0)], 1, both_ways(300.0)),
        ],
    );
    let at = |shape, y| Laid { shape, pose: 0, x: 0.0, y };
    let laid = |y| Layout { laid: vec![at(0, 0.0), at(1, y)], length: 1000.0 };
    let found = faults(&lean, &laid(0.0));
    assert!(matches!(found[..], [LayFault::Overlap { deep, .. }] if (0.048..=0.051).contains(&deep)), "{found:?}");
    assert_eq!(faults(&lean, &laid(0.041)), []);
}

/// A few shapes of our own, curved and hollow ones among them.
fn some_shapes(count: usize) -> Job {
    let width = 400.0;
    let round: Vec<(f64, f64)> = (0..14)
        .map(|k| {
            let angle = f64::from(k) * std::f64::consts::TAU / 14.0;
            (70.0 * angle.cos(), 45.0 * angle.sin())
        })
        .collect();
    let hook = [(0.0, 0.0), (150.0, 0.0), (150.0, 40.0), (50.0, 45.0), (45.0, 130.0), (0.0, 120.0)];
    let wedge = [(0.0, 0.0), (170.0, 20.0), (120.0, 90.0), (30.0, 70.0)];
    let shapes = vec![
        shape(&round, 2 + count / 4, both_ways(width)),
        shape(&hook, 2 + count / 5, both_ways(width)),
        shape(&wedge, 2 + count / 6, both_ways(width)),
    ];
    job(width, shapes)
}

/// A star-shaped polygon by corners at chance distances from its middle, some of them hollow.
fn outline() -> impl Strategy<Value = Vec<(f64, f64)>> {
    proptest::collection::vec((15.0..80.0_f64, 0.3..1.0_f64), 3..12).prop_map(|corners| {
        let n = corners.len() as f64;
        let corner = |(k, (far, part)): (usize, &(f64, f64))| {
            let angle = (k as f64 + 0.8 * part) / n * std::f64::consts::TAU;
            (far * angle.cos(), far * angle.sin())
        };
        corners.iter().enumerate().map(corner).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is packed is a layout, by the judge of this file.
    #[test]
    fn any_pieces_are_packed_truly(
        outlines in proptest::collection::vec((outline(), 1..4_usize, 0..4_usize, any::<bool>()), 1..5),
        gap in prop_oneof![Just(0.0), 0.5..8.0_f64],
        seed in 0..1000_u64,
    ) {
        let width = 320.0;
        let shapes = outlines.iter().map(|(points, count, turn, mirrored)| {
            let across = anywhere(width);
            let second = Pose { mirrored: *mirrored, turned: [180.0, 90.0, 270.0, 33.0][*turn], across };
            shape(points, *count, vec![pose(0.0, across), second])
        });
        let job = Job { gap, ..job(width, shapes.collect()) };
        let packed = go(&job, 120, seed);
        judge(&job, &packed.layout);
        prop_assert!(packed.layout.length >= packed.bound - DEEP);
    }
}
