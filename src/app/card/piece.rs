//! Cards of pieces, points and edges.

use egui::{RichText, Role, Ui, WidgetInfo};
use kurbo::Point;

use super::Card;
use super::by_size::Said;
use crate::app::canvas::grips::of_frame;
use crate::app::field;
use crate::app::guide;
use crate::app::look::{self, letters};
use crate::app::state::Wish;
use crate::compute::unit_of;
use crate::document::{Address, Edge, Inner, Part, Segment};
use crate::language::literal_text;
use crate::session::{Act, Command, PieceCommand};
use crate::texts::say;

impl Card<'_> {
    pub(super) fn piece(&mut self, ui: &mut Ui, name: &str) {
        let part = Part::Piece(name.to_owned());
        ui.horizontal_wrapped(|ui| {
            for act in [Act::AddPoint, Act::AddEdge, Act::Close] {
                let open = act != Act::Close || outline_is_open(self.scene.draft(), name);
                let button = egui::Button::new(act.action().name().trim_end_matches(" …"));
                let response = ui.add_enabled(open, button).on_hover_text(act.action().what());
                guide::mark(ui, self.shown, act, &response);
                if response.clicked() {
                    self.wishes.push(Wish::Act(act));
                }
            }
        });
        let derived = self.scene.draft().pieces.iter().find(|p| p.name == *name && !p.of.is_empty()).cloned();
        if let Some(piece) = &derived {
            self.steps(ui, piece);
        }
        self.text(ui, Address::new(part.clone(), "letter"), &say!("card-letter"), false, "");
        self.text(ui, Address::new(part.clone(), "note"), &say!("card-note"), false, "");
        let points = self.scene.parts_in(name);
        let count = |inner: Inner| points.iter().filter(|p| matches!(p, Part::Inner(_, i, _) if *i == inner)).count();
        let words: Vec<String> = [
            (count(Inner::Point), (|count| say!("card-points", count)) as fn(usize) -> String),
            (count(Inner::Edge), |count| say!("card-edges", count)),
            (count(Inner::Line), |count| say!("card-lines", count)),
            (count(Inner::Dart), |count| say!("card-darts", count)),
        ]
        .into_iter()
        .filter(|(n, _)| *n > 0)
        .map(|(n, words)| words(n))
        .collect();
        let words = if words.is_empty() { say!("card-empty-piece") } else { words.join(", ") };
        field::caption(ui, self.look, &words);
        self.cuts(ui, name);
        let stack = self.scene.draft().pieces.iter().find(|p| p.name == *name).map_or(0, |p| p.stack.len());
        for i in 0..stack {
            let caption = match (i, stack) {
                (0, 1) => say!("card-stacked"),
                (0, _) => say!("card-stacked-across"),
                _ => say!("card-stacked-down"),
            };
            let hint = say!("card-stacked-hint");
            self.text(ui, Address::nth(part.clone(), "stack", i), &caption, false, &hint);
        }
        let stacked = Command::Piece(PieceCommand::Stack(name.to_owned(), stack == 0));
        let word = if stack == 0 { say!("card-stack-points") } else { say!("card-stack-origin") };
        if ui.small_button(word).clicked() {
            self.wishes.push(Wish::Run(stacked));
        }
    }

    pub(super) fn point(&mut self, ui: &mut Ui, frame: &str, name: &str) {
        let part = Part::point(frame, name);
        self.text(ui, Address::new(part.clone(), "at"), &say!("card-place"), true, &say!("card-place-hint"));
        self.text(ui, Address::new(part, "note"), &say!("card-note"), false, "");
        let Some(model) = self.scene.model() else { return };
        let Some(node) = model.plan.node_named(&format!("{frame}.{name}")) else { return };
        let place = |case: usize| model.item(case, node)?.point().map(|p| Point::new(p.x, p.y));
        let size = self.scene.called(self.case);
        let words = match place(self.case) {
            Some(p) => {
                let (right, down) = (self.say(p.x, Said::Length), self.say(p.y, Said::Length));
                say!("card-placed", right, down, size)
            }
            None => say!("card-no-place", size),
        };
        field::caption(ui, self.look, &words);
        if self.scene.draft().pieces.iter().any(|p| p.name == *frame) {
            field::caption(ui, self.look, &say!("card-stack-here"));
            ui.horizontal_wrapped(|ui| {
                for (word, called, ways) in [
                    (say!("card-stack-both"), say!("card-stack-both-at", point = name), [true, true]),
                    (say!("card-stack-across"), say!("card-stack-across-at", point = name), [true, false]),
                    (say!("card-stack-down"), say!("card-stack-down-at", point = name), [false, true]),
                ] {
                    let response = ui.small_button(word);
                    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called.as_str()));
                    if response.clicked() {
                        let stack = PieceCommand::StackAt(frame.to_owned(), name.to_owned(), ways);
                        self.wishes.push(Wish::Run(Command::Piece(stack)));
                    }
                }
            });
        }
        self.by_size(ui, &say!("card-right-of-origin"), Said::Length, &|c| place(c).map(|p| p.x));
        self.by_size(ui, &say!("card-below-origin"), Said::Length, &|c| place(c).map(|p| p.y));
    }

    pub(super) fn edge(&mut self, ui: &mut Ui, frame: &str, name: &str) {
        let Some(edge) = edge_of(self.scene.draft(), frame, name) else {
            let of = self.scene.draft().pieces.iter().find(|p| p.name == *frame).map_or("", |p| p.of.as_str());
            if !of.is_empty() {
                field::caption(ui, self.look, &say!("card-edge-follows", of, piece = frame));
                self.allowances(ui, frame, name);
                self.number(ui, &format!("{frame}.{name}"), &say!("card-sewn-length"));
            }
            return;
        };
        let (part, is_edge) = match edge.1 {
            Inner::Line => (Part::Inner(frame.to_owned(), Inner::Line, name.to_owned()), false),
            _ => (Part::edge(frame, name), true),
        };
        let edge = edge.0;
        let bent = edge.by.iter().filter(|s| !matches!(s, Segment::Straight(_))).count();
        let ends = say!(
            "card-edge-ends",
            from = &*edge.from,
            to = edge.by.last().map_or("", Segment::end),
            bent,
            count = edge.by.len()
        );
        field::caption(ui, self.look, &ends);
        let mut from = edge.from.clone();
        for (i, segment) in edge.by.iter().enumerate() {
            self.segment(ui, &part, (frame, name), i, &from, segment);
            segment.end().clone_into(&mut from);
            if i + 1 < edge.by.len() && is_edge {
                self.joint(ui, edge, frame, &from);
            }
        }
        self.text(ui, Address::new(part, "note"), &say!("card-note"), false, "");
        if is_edge {
            self.allowances(ui, frame, name);
        }
        self.number(ui, &format!("{frame}.{name}"), &say!("card-sewn-length"));
    }

    fn segment(
        &mut self,
        ui: &mut Ui,
        part: &Part,
        (frame, name): (&str, &str),
        i: usize,
        from: &str,
        segment: &Segment,
    ) {
        let at = |field: &'static str| Address::nth(part.clone(), field, i);
        ui.add_space(4.0);
        ui.horizontal_wrapped(|ui| {
            let words = format!("{from} – {}", segment.end());
            ui.label(RichText::new(&words).font(letters(look::TEXT)).color(self.look.ink));
            let (word, curved) = match segment {
                Segment::Straight(_) => (say!("card-curve"), true),
                Segment::Curve(..) => (say!("card-straighten"), false),
                _ => return,
            };
            let response = ui.small_button(&word);
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{word} {words}")));
            if response.clicked() {
                let bend = PieceCommand::Bend(frame.to_owned(), name.to_owned(), i, curved);
                self.wishes.push(Wish::Run(Command::Piece(bend)));
            }
        });
        match segment {
            Segment::Straight(_) => {}
            Segment::Curve(..) => {
                self.text(ui, at("leaving"), &say!("card-handle-leaving", point = from), true, "");
                self.text(ui, at("arriving"), &say!("card-handle-arriving", point = segment.end()), true, "");
            }
            Segment::Arc { .. } => self.text(ui, at("centre"), &say!("card-centre"), true, ""),
            Segment::Smooth { through, .. } => {
                let free = say!("card-heading-free");
                self.text(ui, at("leaving heading"), &say!("card-heading-leaving"), true, &free);
                for k in 0..through.len() {
                    let at = Address { part: part.clone(), field: "through", at: i, inner: k };
                    self.text(ui, at, &say!("card-through", number = k + 1), true, "");
                }
                self.text(ui, at("arriving heading"), &say!("card-heading-arriving"), true, &free);
            }
            Segment::Taken { .. } => {
                self.text(ui, at("curve"), &say!("card-curve-taken"), true, "");
                self.text(ui, at("off"), &say!("card-set-off"), true, &say!("card-set-off-hint"));
                self.text(ui, at("off_end"), &say!("card-set-off-end"), true, &say!("card-the-same"));
            }
        }
    }

    /// Whether the edge runs on smoothly at a point inside it.
    fn joint(&mut self, ui: &mut Ui, edge: &Edge, frame: &str, point: &str) {
        let smooth = edge.smooth_at.iter().any(|p| p == point);
        let mut wanted = smooth;
        ui.checkbox(&mut wanted, say!("card-smooth-at", point));
        if wanted != smooth {
            let command = PieceCommand::SmoothAt(frame.to_owned(), edge.name.clone(), point.to_owned(), wanted);
            self.wishes.push(Wish::Run(Command::Piece(command)));
        }
        let about = say!("card-make-smooth-about");
        if ui.small_button(say!("card-make-smooth", point)).on_hover_text(about).clicked() {
            let far = literal_text(self.handle_at(edge, frame, point), Some(unit_of(self.scene.draft())));
            let command = PieceCommand::MakeSmooth(frame.to_owned(), edge.name.clone(), point.to_owned(), far);
            self.wishes.push(Wish::Run(Command::Piece(command)));
        }
    }

    /// How far the handle stands off a joint that is turned, in the chosen size, mm, to the tenth: the one that leaves, else the one that arrives.
    fn handle_at(&self, edge: &Edge, frame: &str, point: &str) -> f64 {
        const OTHERWISE: f64 = 20.0;
        let Some(i) = edge.by.iter().position(|s| s.end() == point) else { return OTHERWISE };
        let (field, at) = match edge.by.get(i + 1) {
            Some(Segment::Curve(..)) => ("leaving", i + 1),
            _ => ("arriving", i),
        };
        let grips = self.scene.model().map_or_else(Vec::new, |m| of_frame(m, self.case, frame));
        let grip = grips.into_iter().find(|g| g.at.part.name() == edge.name && g.at.field == field && g.at.at == at);
        let far = grip.and_then(|g| Some((g.place - g.knot?).hypot())).filter(|f| *f > 1.0);
        far.map_or(OTHERWISE, |f| (f * 10.0).round() / 10.0)
    }
}

/// An edge or line, and which it is.
fn edge_of<'a>(draft: &'a crate::document::Draft, frame: &str, name: &str) -> Option<(&'a Edge, Inner)> {
    if let Some(piece) = draft.pieces.iter().find(|p| p.name == *frame) {
        let edge = piece.edges.iter().find(|e| e.name == *name).map(|e| (e, Inner::Edge));
        return edge.or_else(|| piece.lines.iter().find(|e| e.name == *name).map(|e| (e, Inner::Line)));
    }
    let drawing = draft.drawings.iter().find(|d| d.name == *frame)?;
    drawing.lines.iter().find(|e| e.name == *name).map(|e| (e, Inner::Line))
}

/// Whether a piece has edges that do not come back to their start.
pub(in crate::app) fn outline_is_open(draft: &crate::document::Draft, name: &str) -> bool {
    let piece = draft.pieces.iter().find(|p| p.name == name);
    let ends = piece.and_then(|p| Some((p.edges.first()?, p.edges.last()?)));
    ends.is_some_and(|(first, last)| last.by.last().map_or(&*last.from, |s| s.end()) != first.from)
}
