//! Random outlines laid on a strip: whatever comes out has no fault, is as long as it says, and comes out again.

use kurbo::Point;
use tracewheel::output::lay::packing::{
    Across, Effort, Go, Job, Laid, PackError, Pose, Progress, Shape, Touch, faults, pack,
};

use super::Bytes;

/// Moves of single pieces that a search may make.
const MOVES: u64 = 40;

/// A job out of the bytes.
fn job(bytes: &mut Bytes<'_>) -> Job {
    let width = 20.0 + 6.0 * bytes.next() as f64;
    let gap = [0.0, 0.0, 1.0, 5.5][bytes.below(4)];
    let step = [0.0, 0.0, 10.0, 100.0][bytes.below(4)];
    let before = [0.0, 37.0][bytes.below(2)];
    let shapes: Vec<Shape> = (0..=bytes.below(4)).map(|_| shape(bytes, width)).collect();
    let locked = (0..bytes.below(3)).map(|_| Laid {
        shape: bytes.below(shapes.len()),
        pose: bytes.below(3),
        x: 4.0 * bytes.next() as f64,
        y: 4.0 * bytes.next() as f64 - 100.0,
    });
    let locked = locked.collect();
    Job { width, shapes, gap, locked, step, before }
}

/// An outline of some corners on a grid, or, so that many of them are outlines at all, about a middle.
fn shape(bytes: &mut Bytes<'_>, width: f64) -> Shape {
    let many = 3 + bytes.below(8);
    let fine = [1.0, 0.1, 0.003][bytes.below(3)];
    let around = bytes.below(4) != 0;
    let outline = (0..many).map(|i| {
        let (a, b) = (bytes.next() as f64, bytes.next() as f64);
        if around {
            let (sin, cos) = (std::f64::consts::TAU * i as f64 / many as f64).sin_cos();
            let far = 3.0 + a * fine + b / 256.0;
            Point::new(cos * far, sin * far)
        } else {
            Point::new((a - 128.0) * fine, (b - 128.0) * fine)
        }
    });
    let outline = outline.collect();
    let poses = (0..=bytes.below(3)).map(|_| pose(bytes, width)).collect();
    Shape { outline, count: bytes.below(5), poses }
}

fn pose(bytes: &mut Bytes<'_>, width: f64) -> Pose {
    let turned = [0.0, 90.0, 180.0, 270.0, 1.4 * bytes.next() as f64][bytes.below(5)];
    let (from, to) = match bytes.below(3) {
        0 => (width * bytes.next() as f64 / 512.0, width * (256 + bytes.next()) as f64 / 512.0),
        _ => (0.0, width),
    };
    let touch = [Touch::Free, Touch::Free, Touch::From, Touch::To][bytes.below(4)];
    Pose { mirrored: bytes.below(2) == 1, turned, across: Across { from, to, touch } }
}

/// Packs a job twice.
pub fn packed(data: &[u8]) {
    let Some((seed, rest)) = data.split_first() else { return };
    let job = job(&mut Bytes(rest));
    let effort = Effort { moves: MOVES, seed: u64::from(*seed), start: None };
    let mut calls = 0_u64;
    let mut on = |_: &Progress<'_>| {
        calls += 1;
        Go::On
    };
    let found = pack(&job, &effort, &mut on);
    // One call for each move, and some for the first layout, which tries every piece in a few lengths.
    assert!(calls < MOVES + 4_000, "{calls} calls");
    assert_eq!(found, pack(&job, &effort, &mut |_| Go::On), "the same job gave another layout");
    match found {
        Ok(packed) => {
            assert_eq!(faults(&job, &packed.layout), [], "{job:?}\n{packed:?}");
            assert!(packed.moves <= MOVES && packed.layout.length.is_finite(), "{packed:?}");
        }
        Err(PackError::Stopped) => panic!("nobody told it to stop"),
        Err(_) => {}
    }
}
