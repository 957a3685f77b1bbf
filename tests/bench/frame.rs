//! What a frame of the window costs on its own: the code of the rooms and the tessellation, without a screen.
//!
//! The engine works beside it in a thread of its own, as in the real window. Times are printed, not judged.

#![allow(clippy::disallowed_methods, clippy::print_stdout, missing_docs, reason = "a bench")]

#[path = "../../examples/generate.rs"]
#[allow(dead_code, clippy::unwrap_used, missing_docs)]
mod generate;

use std::path::PathBuf;
use std::sync::Arc;
use std::time::{Duration, Instant};

use egui::{Context, Event, Modifiers, PointerButton, Pos2, RawInput, Rect, pos2, vec2};
use tracewheel::app::{Start, Window, dress};

const SCREEN: Rect = Rect::from_min_max(Pos2::ZERO, pos2(1600.0, 1000.0));

struct Stage {
    ctx: Context,
    window: Window,
    rects: Vec<(String, Rect)>,
}

impl Stage {
    fn on(path: PathBuf) -> Self {
        let ctx = Context::default();
        dress(&ctx);
        let opened = tracewheel::file::open(&path).expect("a draft");
        let window = Window::new(
            Start { file: Some((path, opened)), recovery: None, own: None, begun: None },
            Some(Arc::new(|| {})),
        );
        Self { ctx, window, rects: Vec::new() }
    }

    /// One frame and how long it took: rooms, tessellation, number of triangles' corners.
    fn frame(&mut self, events: Vec<Event>) -> (Duration, Duration, usize) {
        let input = RawInput { screen_rect: Some(SCREEN), events, ..RawInput::default() };
        let start = Instant::now();
        let mut output = self.ctx.clone().run_ui(input, |ui| self.window.paint(ui));
        let rooms = start.elapsed();
        if let Some(update) = output.platform_output.accesskit_update.take() {
            self.rects = update
                .nodes
                .iter()
                .filter_map(|(_, n)| {
                    let b = n.bounds()?;
                    let rect = Rect::from_min_max(pos2(b.x0 as f32, b.y0 as f32), pos2(b.x1 as f32, b.y1 as f32));
                    Some((n.label()?.to_owned(), rect))
                })
                .collect();
        }
        let shapes = std::mem::take(&mut output.shapes);
        let start = Instant::now();
        let meshes = self.ctx.tessellate(shapes, output.pixels_per_point);
        let drawing = start.elapsed();
        let corners = meshes
            .iter()
            .map(|m| match &m.primitive {
                egui::epaint::Primitive::Mesh(mesh) => mesh.vertices.len(),
                egui::epaint::Primitive::Callback(_) => 0,
            })
            .sum();
        output.drop_without_applying_deltas();
        (rooms, drawing, corners)
    }

    fn rect(&self, name: &str) -> Rect {
        let found = self.rects.iter().find(|(n, _)| n == name);
        found.unwrap_or_else(|| panic!("{name} is not there")).1
    }
}

fn middle(mut times: Vec<Duration>) -> f64 {
    times.sort();
    times[times.len() / 2].as_secs_f64() * 1e3
}

fn measure(what: &str, path: PathBuf, piece: &str, grip: &str) {
    let mut stage = Stage::on(path);
    // The engine in its thread gets the time that it needs.
    for _ in 0..50 {
        stage.frame(vec![]);
        std::thread::sleep(Duration::from_millis(10));
    }
    let mut rest = Vec::new();
    let mut corners = 0;
    for _ in 0..200 {
        let (rooms, drawing, count) = stage.frame(vec![]);
        rest.push(rooms + drawing);
        corners = count;
    }
    println!("{what}: a frame at rest {:.2} ms, {corners} corners", middle(rest));
    // Choose the piece, take the grip and pull it about.
    stage.ctx.enable_accesskit();
    stage.frame(vec![]);
    let click = |stage: &mut Stage, at: Pos2| {
        for pressed in [true, false] {
            let modifiers = Modifiers::NONE;
            let event = Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers };
            stage.frame(vec![Event::PointerMoved(at), event]);
        }
    };
    let at = stage.rect(piece).center();
    click(&mut stage, at);
    for _ in 0..5 {
        stage.frame(vec![]);
    }
    let from = stage.rect(grip).center();
    stage.ctx.disable_accesskit();
    let modifiers = Modifiers::NONE;
    let down = Event::PointerButton { pos: from, button: PointerButton::Primary, pressed: true, modifiers };
    stage.frame(vec![Event::PointerMoved(from)]);
    stage.frame(vec![down]);
    let (mut rooms, mut drawing) = (Vec::new(), Vec::new());
    for i in 0..200 {
        let to = from + vec2(8.0 * (i as f32 * 0.1).sin(), 8.0 * (i as f32 * 0.13).cos());
        let (r, d, _) = stage.frame(vec![Event::PointerMoved(to)]);
        rooms.push(r);
        drawing.push(d);
        // As much time as a screen leaves, so that the engine keeps up.
        std::thread::sleep(Duration::from_millis(4));
    }
    let both = rooms.iter().zip(&drawing).map(|(a, b)| *a + *b).collect();
    println!(
        "{what}: a frame while pulling {:.2} ms (rooms {:.2}, tessellation {:.2})",
        middle(both),
        middle(rooms),
        middle(drawing)
    );
    // Let go, take the pencil up and point about: each move is read anew.
    let up = Event::PointerButton { pos: from, button: PointerButton::Primary, pressed: false, modifiers };
    stage.frame(vec![up]);
    std::thread::sleep(Duration::from_millis(100));
    stage.frame(vec![]);
    let press = |key, pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers };
    stage.frame(vec![press(egui::Key::D, true)]);
    stage.frame(vec![press(egui::Key::D, false)]);
    let mut moves = Vec::new();
    for i in 0..100 {
        let to = from + vec2(40.0 * (i as f32 * 0.1).sin(), 40.0 * (i as f32 * 0.13).cos());
        let (r, d, _) = stage.frame(vec![Event::PointerMoved(to)]);
        moves.push(r + d);
    }
    println!("{what}: a frame while the pencil reads {:.2} ms", middle(moves));
}

fn main() {
    let block = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/bodice-sleeve.ron"));
    measure("check block, 36 outlines", block, "piece front", "front.pitch");
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("large.ron");
    let options = generate::Options { pieces: 30, points: 20, sizes: 20, found: 60, ..generate::Options::default() };
    let draft = generate::draft(&options);
    std::fs::write(&path, tracewheel::file::write(&draft)).expect("a file");
    let piece = &draft.pieces[0];
    let grip = format!("{}.{}", piece.name, piece.points[2].name);
    measure("30 pieces x 20 sizes, 600 outlines", path, &format!("piece {}", piece.name), &grip);
}
