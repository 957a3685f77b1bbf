//! What the window shows of a draft: computed once, drawn often.

use kurbo::{BezPath, Rect, Shape};

use crate::base::{Finding, message};
use crate::compute::Engine;
use crate::document::Draft;
use crate::output;
use crate::proof::{count, looked_at, proof};

/// How far a drawn line may be off the curve, mm: a tenth of a line's width at usual zoom.
const FLAT: f64 = crate::base::tolerance::PRINT;
/// Between pieces on the canvas, mm.
const BETWEEN: f64 = 40.0;

/// A piece in one size, flattened, at its place on the canvas (mm).
pub(super) struct Drawn {
    pub outline: Vec<[f64; 2]>,
    pub lines: Vec<Vec<[f64; 2]>>,
    /// It hangs on something that does not hold.
    pub untrue: bool,
}

/// One size: its pieces in the order of the draft; `None` where a piece cannot be computed.
pub(super) struct Size {
    pub label: String,
    pub pieces: Vec<Option<Drawn>>,
}

/// Everything that is shown.
pub(super) struct Shown {
    pub title: String,
    pub names: Vec<String>,
    /// The room of each piece over all sizes, on the canvas.
    pub rooms: Vec<Rect>,
    pub sizes: Vec<Size>,
    pub chosen: usize,
    pub base: Option<usize>,
    pub counts: String,
    pub findings: Vec<String>,
    pub looked_at: String,
}

impl Shown {
    /// Computes a draft for showing.
    ///
    /// # Errors
    /// The program failed while computing.
    pub fn of(draft: &Draft) -> Result<Self, Box<Finding>> {
        let model = Engine::new().compute_guarded(draft, &[])?;
        let cases = &model.plan.cases;
        let many = if cases.range > 0 { cases.range } else { cases.list.len() };
        let pieces: Vec<_> = model.plan.frames.iter().filter(|f| f.is_piece).collect();
        let paths: Vec<Vec<Option<BezPath>>> =
            (0..many).map(|c| pieces.iter().map(|p| output::outline(&model, c, p)).collect()).collect();
        let mut rooms = Vec::new();
        let mut moved = Vec::new();
        let mut right = 0.0;
        for p in 0..pieces.len() {
            let own = paths.iter().filter_map(|c| c[p].as_ref()).map(|o| o.bounding_box()).reduce(|a, b| a.union(b));
            let own = own.unwrap_or(Rect::new(0.0, 0.0, 200.0, 200.0));
            let shift = kurbo::Vec2::new(right - own.x0, -own.y0);
            rooms.push(own + shift);
            moved.push(shift);
            right += own.width() + BETWEEN;
        }
        let sizes = (0..many)
            .map(|c| Size {
                label: cases.list[c].address.clone(),
                pieces: pieces
                    .iter()
                    .enumerate()
                    .map(|(p, frame)| {
                        let outline = flat(paths[c][p].as_ref()?, moved[p]);
                        let lines = output::lines(&model, c, frame).iter().map(|l| flat(l, moved[p])).collect();
                        let untrue = frame.edges.iter().any(|e| model.is_untrue(c, *e));
                        Some(Drawn { outline, lines, untrue })
                    })
                    .collect(),
            })
            .collect();
        let findings = proof(draft, &model);
        let n = count(&findings);
        let say = |n: usize, word: &str| format!("{n} {word}{}", if n == 1 { "" } else { "s" });
        Ok(Self {
            title: if draft.title.is_empty() { "Untitled draft".to_owned() } else { draft.title.clone() },
            names: pieces.iter().map(|p| p.name.to_string()).collect(),
            rooms,
            sizes,
            chosen: cases.base.unwrap_or(0),
            base: cases.base,
            counts: [say(n.errors, "error"), say(n.warnings, "warning"), say(n.notes, "note")].join(" · "),
            findings: findings
                .iter()
                .map(|f| {
                    let sign = match f.severity() {
                        crate::base::Severity::Error => "✖ error",
                        crate::base::Severity::Warning => "▲ look at it",
                        crate::base::Severity::Note => "· note",
                    };
                    format!("{sign}: {}: {}", f.place.name, message(f, draft.display))
                })
                .collect(),
            looked_at: looked_at(&model),
        })
    }

    /// Goes to a neighbouring size.
    pub fn step(&mut self, by: i32) {
        let last = self.sizes.len().saturating_sub(1);
        self.chosen = self.chosen.saturating_add_signed(by as isize).min(last);
    }

    /// All that is drawn, on the canvas.
    pub fn bounds(&self) -> Rect {
        self.rooms.iter().copied().reduce(|a, b| a.union(b)).unwrap_or(Rect::new(0.0, 0.0, 500.0, 500.0))
    }
}

fn flat(path: &BezPath, shift: kurbo::Vec2) -> Vec<[f64; 2]> {
    let mut out: Vec<[f64; 2]> = Vec::new();
    kurbo::flatten(path, FLAT, |element| {
        if let Some(p) = element.end_point() {
            out.push([p.x + shift.x, p.y + shift.y]);
        }
    });
    out
}
