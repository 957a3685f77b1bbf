//! Packs a public instance of irregular strip packing and prints what came of it, as JSON. It knows no garments: it is there to compare the packer
//! with others.
//!
//! `cargo run --release --no-default-features --example nest_instances -- FILE --seconds 60 --seed 1`
//!
//! An instance has `strip_height` and `items`, each with `demand`, `shape.data` (points) and the turns in which it may lie: none told is any; here that
//! means every 15 degrees. Its units are its own: it is packed at a scale at which the strip is 1500 mm wide, so that tolerances in mm mean the same in
//! each.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "that is what it is for")]

use std::process::ExitCode;
use std::time::{Duration, Instant};

use clap::Parser;
use kurbo::Point;
use serde_json::{Value, json};
use tracewheel::output::lay::packing::{
    Across, Effort, Go, Job, Packed, Phase, Pose, Progress, Shape, Touch, faults, pack,
};

/// How wide the strip is while it is packed, mm.
const WIDE: f64 = 1500.0;

#[derive(Parser)]
#[command(about = "Packs an instance of irregular strip packing")]
struct Asked {
    /// The instance, a JSON file.
    file: std::path::PathBuf,
    /// How long to search; four fifths of it shorter lengths are tried, then the layout is pressed together.
    #[arg(long, default_value_t = 60.0)]
    seconds: f64,
    /// Moves instead of seconds: the same result each time.
    #[arg(long)]
    moves: Option<u64>,
    /// Where chance begins.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// So many searches side by side, with seeds of their own; the shortest layout is taken.
    #[arg(long, default_value_t = 1)]
    threads: u64,
    /// Also prints the pieces as they lie, in the units of the instance.
    #[arg(long)]
    layout: bool,
}

fn main() -> ExitCode {
    let asked = Asked::parse();
    match run(&asked) {
        Ok(value) => {
            println!("{value}");
            ExitCode::SUCCESS
        }
        Err(said) => {
            eprintln!("{}: {said}", asked.file.display());
            ExitCode::FAILURE
        }
    }
}

#[allow(clippy::disallowed_methods, reason = "whoever asks for a layout looks at the clock, the packer does not")]
fn run(asked: &Asked) -> Result<Value, String> {
    let text = std::fs::read_to_string(&asked.file).map_err(|e| format!("cannot be read: {e}"))?;
    let value: Value = serde_json::from_str(&text).map_err(|e| format!("is no JSON: {e}"))?;
    let height = number(&value, "strip_height")?;
    let scale = WIDE / height;
    let job = job(&value, scale)?;
    let begun = Instant::now();
    let one = |k: u64| {
        let told = asked.moves.is_some();
        let mut watch = |progress: &Progress<'_>| {
            let share = if told { 0.0 } else { begun.elapsed().as_secs_f64() / asked.seconds };
            match progress.phase {
                _ if share >= 1.0 => Go::Stop,
                Phase::Explore if share >= 0.8 => Go::Next,
                _ => Go::On,
            }
        };
        let seed = asked.seed.wrapping_add(k.wrapping_mul(1_000_003));
        let effort = Effort { moves: asked.moves.unwrap_or(u64::MAX), seed, start: None };
        pack(&job, &effort, &mut watch)
    };
    let found: Vec<_> = std::thread::scope(|scope| {
        let one = &one;
        let threads: Vec<_> = (0..asked.threads.max(1)).map(|k| scope.spawn(move || one(k))).collect();
        threads.into_iter().map(|t| t.join().map_err(|_| "a search broke off".to_string())).collect()
    });
    let took: Duration = begun.elapsed();
    let mut packed: Vec<Packed> = Vec::new();
    for result in found {
        packed.push(result?.map_err(|e| e.to_string())?);
    }
    let best = packed.iter().min_by(|a, b| a.layout.length.total_cmp(&b.layout.length)).ok_or("nothing was found")?;
    let area: f64 = job.shapes.iter().map(|s| s.count as f64 * area(&s.outline)).sum();
    let faults = faults(&job, &best.layout);
    let mut told = json!({
        "length": best.layout.length / scale,
        "density": area / (best.layout.length * job.width),
        "seconds": took.as_secs_f64(),
        "valid": faults.is_empty(),
        "moves": packed.iter().map(|p| p.moves).sum::<u64>(),
        "evaluations": packed.iter().map(|p| p.evaluations).sum::<u64>(),
        "bound": best.bound / scale,
    });
    if asked.layout {
        let piece = |l: &tracewheel::output::lay::packing::Laid| {
            let pose = job.shapes[l.shape].poses[l.pose];
            json!({"item": l.shape, "turned": pose.turned, "mirrored": pose.mirrored, "x": l.x / scale, "y": l.y / scale})
        };
        told["pieces"] = best.layout.laid.iter().map(piece).collect();
    }
    Ok(told)
}

fn number(value: &Value, key: &str) -> Result<f64, String> {
    let number = value[key].as_f64().filter(|n| n.is_finite() && *n > 0.0);
    number.ok_or_else(|| format!("\"{key}\" must be a number above 0"))
}

fn area(points: &[Point]) -> f64 {
    let twice: f64 =
        (0..points.len()).map(|i| points[i].to_vec2().cross(points[(i + 1) % points.len()].to_vec2())).sum();
    twice.abs() / 2.0
}

fn job(value: &Value, scale: f64) -> Result<Job, String> {
    let items = value["items"].as_array().ok_or("\"items\" must be a list")?;
    let shape = |(i, item): (usize, &Value)| shape(item, scale).map_err(|e| format!("item {i} of \"items\": {e}"));
    let shapes = items.iter().enumerate().map(shape).collect::<Result<Vec<Shape>, String>>()?;
    Ok(Job { width: WIDE, shapes, gap: 0.0, locked: Vec::new(), step: 0.0, before: 0.0 })
}

fn shape(item: &Value, scale: f64) -> Result<Shape, String> {
    let count =
        item["demand"].as_u64().and_then(|d| usize::try_from(d).ok()).ok_or("\"demand\" must be a whole number")?;
    let data = item["shape"]["data"].as_array().ok_or("\"shape\" must have \"data\", a list of points")?;
    let mut outline = Vec::new();
    for (k, pair) in data.iter().enumerate() {
        let (x, y) = (pair[0].as_f64(), pair[1].as_f64());
        let (Some(x), Some(y)) = (x, y) else { return Err(format!("point {k} of \"data\" must be [x, y]")) };
        outline.push(Point::new(x * scale, y * scale));
    }
    if outline.len() > 1 && outline[0] == outline[outline.len() - 1] {
        outline.pop();
    }
    let across = Across { from: 0.0, to: WIDE, touch: Touch::Free };
    let poses = poses(item)?.into_iter().map(|(turned, mirrored)| Pose { mirrored, turned, across }).collect();
    Ok(Shape { outline, count, poses })
}

/// The turns, and whether turned over: by the older key, a list of degrees, or the newer one.
fn poses(item: &Value) -> Result<Vec<(f64, bool)>, String> {
    let any = || (0..24).map(|k| 15.0 * f64::from(k)).collect::<Vec<f64>>();
    let list = |value: &Value, key: &str| {
        let list = value.as_array().ok_or_else(|| format!("\"{key}\" must be a list of degrees"))?;
        let each = list.iter().map(|d| d.as_f64().filter(|d| d.is_finite()));
        each.collect::<Option<Vec<f64>>>()
            .filter(|l| !l.is_empty())
            .ok_or_else(|| format!("\"{key}\" must hold degrees"))
    };
    let mut mirrors = false;
    let turns = match (&item["allowed_orientations"], &item["orientation"]) {
        (Value::Null, Value::Null) => any(),
        (Value::Null, told) => {
            mirrors = told["reflection_axes"].as_array().is_some_and(|axes| !axes.is_empty());
            match told["rotation"]["mode"].as_str() {
                Some("discrete") => list(&told["rotation"]["angles"], "angles")?,
                Some("continuous") => any(),
                Some("none") => vec![0.0],
                _ => {
                    return Err(
                        "\"orientation\" must have \"rotation\" with \"mode\": discrete, continuous or none".into()
                    );
                }
            }
        }
        (told, _) => list(told, "allowed_orientations")?,
    };
    let sides: &[bool] = if mirrors { &[false, true] } else { &[false] };
    Ok(turns.iter().flat_map(|t| sides.iter().map(move |m| (*t, *m))).collect())
}
