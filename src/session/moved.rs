//! A draft in which some points move while what names them may need them as they were: those get points of their own for that.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::check_free;
use super::references::{Occurrence, references};
use crate::base::Span;
use crate::document::{Address, Draft, Inner, Part, Piece, Point, Value};
use crate::texts::say;

/// By how much it is tried, mm.
pub(super) const TRIED: f64 = 20.0;

/// The draft in which a side moves, as it is written.
pub(super) struct Work {
    pub draft: Draft,
    piece: String,
    /// What names stand for, in the draft as it was.
    names: Vec<Occurrence>,
    /// The texts as they were.
    old: Draft,
    /// The points that move.
    moving: Vec<String>,
    /// Those that are kept as they were, each with the name of its own for that.
    kept: BTreeMap<String, String>,
    /// How many texts were written.
    pub changed: usize,
}

impl Work {
    /// The draft with a value of that name, in which these points of the piece will move.
    pub fn of(draft: &Draft, piece: &Piece, name: &str, moving: Vec<String>) -> Self {
        let mut made = draft.clone();
        let is = format!("{TRIED} mm");
        made.values.push(Value { name: name.to_owned(), is, ..Value::default() });
        let names = references(draft).all;
        Self {
            draft: made,
            piece: piece.name.clone(),
            names,
            old: draft.clone(),
            moving,
            kept: BTreeMap::new(),
            changed: 0,
        }
    }

    /// Writes a text.
    pub fn write(&mut self, at: &Address, text: &str) {
        self.draft.set_text(at, text);
        self.changed += 1;
    }

    /// Directions in which splines leave and arrive, and the line itself, stay as they are.
    pub fn keep_as_drawn(&mut self, piece: &Piece, line: &str) {
        let own = |what: Inner, name: &str| Part::Inner(piece.name.clone(), what, name.to_owned());
        let mut all = vec![Address::new(own(Inner::Lengthen, line), "line")];
        let named = piece.edges.iter().map(|e| (Inner::Edge, e)).chain(piece.lines.iter().map(|l| (Inner::Line, l)));
        for (what, edge) in named {
            for i in 0..edge.by.len() {
                let at = |field: &'static str| Address::nth(own(what, &edge.name), field, i);
                all.extend([at("leaving heading"), at("arriving heading")]);
            }
        }
        for at in all {
            let Some(text) = self.old.text(&at).filter(|t| !t.is_empty()) else { continue };
            let before = self.as_before(&at);
            if before != text {
                self.write(&at, &before);
            }
        }
    }

    /// A text as it was, with points that move named as they were before: they get a point of their own for that.
    pub fn as_before(&mut self, at: &Address) -> String {
        let mut text = self.old.text(at).unwrap_or_default();
        let mut edits: Vec<(Span, String)> = Vec::new();
        for name in self.names.iter().filter(|o| o.at == *at) {
            for (span, part) in name.meanings.iter().take(1).flat_map(|m| m.parts()) {
                if let Part::Inner(frame, Inner::Point, point) = part
                    && *frame == self.piece
                    && self.moving.contains(point)
                {
                    edits.push((span, point.clone()));
                }
            }
        }
        edits.sort_by_key(|e| std::cmp::Reverse(e.0));
        for (span, point) in edits {
            let before = self.point_before(&point);
            text.replace_range(span.start..span.end, &before);
        }
        text
    }

    /// The name of a point as it was before it moved.
    fn point_before(&mut self, point: &str) -> String {
        let own = |name: &str| Part::Inner(self.piece.clone(), Inner::Point, name.to_owned());
        let at = Address::new(own(point), "at");
        let mut names = std::iter::once(format!("{point}_before")).chain((2..).map(|i| format!("{point}_before_{i}")));
        if let Some(there) = self.kept.get(point) {
            return there.clone();
        }
        let name = names.find(|n| check_free(&self.draft, &own(n)).is_ok()).unwrap_or_default();
        self.kept.insert(point.to_owned(), name.clone());
        let note = say!("note-before-lengthened", point);
        let made = Point { name: name.clone(), at: String::new(), note };
        if let Some(piece) = self.draft.pieces.iter_mut().find(|p| p.name == self.piece) {
            Arc::make_mut(piece).points.push(made);
        }
        let text = self.as_before(&at);
        let own = Part::Inner(self.piece.clone(), Inner::Point, name.clone());
        self.write(&Address::new(own, "at"), &text);
        name
    }
}
