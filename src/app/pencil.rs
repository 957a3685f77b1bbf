//! The pencil: where it measures from, what it would write, what is typed, and writing it.

use kurbo::Point;

use super::Window;
use super::state::Room;
use crate::document::{Draft, Inner, Part};
use crate::session::{
    Command, Joined, PartCommand, PieceCommand, Pointing, Reading, Sight, fresh_inner, fresh_name, joined,
};
use crate::texts::say;

/// The pencil while it is in the hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Pencil {
    /// The piece or drawing in which it draws.
    pub frame: String,
    /// Points from which is measured: the one before last, and the last.
    pub from: Vec<String>,
    /// Whether each point is joined to the one before.
    pub join: bool,
    /// What the place under the pointer could mean, the likeliest first.
    pub readings: Vec<Reading>,
    /// Which of them is meant.
    pub at: usize,
    /// The reading with the numbers that were typed, or what is wrong with them.
    pub typed: Option<Typed>,
    /// A line is being drawn from the last point.
    pub drawing: bool,
    /// What the readings are of.
    asked: Option<(u64, usize, Pointing)>,
}

/// Numbers that are typed instead of those that were read from the place.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Typed {
    /// The texts, one for each number that was come to.
    pub texts: Vec<String>,
    /// The reading in which they stand; it does not follow the pointer any more.
    of: Reading,
    /// What comes of it.
    pub made: Result<Reading, String>,
}

/// What a person does with the pencil.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Stroke {
    /// It points at a place of its frame, mm; how near things must be, px per mm, and whether it snaps.
    At(Point, f64, f64, bool),
    /// The next reading, or the one before.
    Next(bool),
    /// Something was typed.
    Type(String),
    /// The last letter is taken back.
    Back,
    /// On to the next number, and at the last one write.
    Enter,
    /// Write the point; curved: the line to it is a curve.
    Place(bool),
    /// A line begins here.
    Press,
    /// The line ends here; whether it is a curve.
    Drop(bool),
    /// Points are joined, or not.
    Join,
}

impl Pencil {
    /// The reading that would be written.
    pub fn reading(&self) -> Option<&Reading> {
        match &self.typed {
            Some(typed) => typed.made.as_ref().ok(),
            None => self.readings.get(self.at),
        }
    }

    /// Whether the readings are of this place already.
    pub fn knows(&self, revision: u64, case: usize, place: Point, snap: bool) -> bool {
        self.asked.as_ref().is_some_and(|(known, of, asked)| {
            *known == revision && *of == case && asked.at == place && asked.snap == snap && asked.from == self.from
        })
    }

    /// Gives up the innermost thing: what is typed, the line that is drawn, the points to measure from. None: nothing was left.
    pub fn give_up(&mut self) -> bool {
        let typed = self.typed.take().is_some();
        let drawn = !typed && std::mem::take(&mut self.drawing);
        if !typed && !drawn && !self.from.is_empty() {
            self.from.clear();
            self.asked = None;
            return true;
        }
        typed || drawn
    }

    /// What is not there any more is not measured from.
    pub fn keep_to(&mut self, draft: &Draft) {
        let points = draft.pieces.iter().find(|p| p.name == self.frame).map(|p| &p.points);
        let points = points.or(draft.drawings.iter().find(|d| d.name == self.frame).map(|d| &d.points));
        self.from.retain(|name| points.is_some_and(|all| all.iter().any(|p| p.name == *name)));
    }

    /// A part got another name.
    pub fn renamed(&mut self, part: &Part, to: &str) {
        match part {
            Part::Inner(frame, Inner::Point, name) if *frame == self.frame => {
                self.from.iter_mut().filter(|n| *n == name).for_each(|n| to.clone_into(n));
            }
            Part::Piece(name) | Part::Drawing(name) if *name == self.frame => to.clone_into(&mut self.frame),
            _ => {}
        }
    }

    /// A point that was come to is the next to measure from.
    fn reached(&mut self, point: String) {
        self.from.retain(|p| *p != point);
        if self.from.len() > 1 {
            self.from.remove(0);
        }
        self.from.push(point);
        (self.typed, self.drawing, self.asked, self.at) = (None, false, None, 0);
    }
}

impl Window {
    /// Takes the pencil up, or puts it down.
    pub(super) fn take_pencil(&mut self) {
        if self.shown.pencil.take().is_some() {
            return;
        }
        let frame = match self.shown.frame() {
            Some(frame) => frame.to_owned(),
            None => {
                let draft = self.open.work().draft();
                match (&draft.pieces[..], &draft.drawings[..]) {
                    ([], []) => {
                        let name = fresh_name(draft, "piece");
                        self.run(&Command::Part(PartCommand::AddPiece(name.clone())));
                        name
                    }
                    ([only], []) => only.name.clone(),
                    ([], [only]) => only.name.clone(),
                    _ => return self.refuse(say!("pencil-choose")),
                }
            }
        };
        if self.shown.frame().is_none() {
            self.shown.part = Some(Part::Piece(frame.clone()));
        }
        let from = match &self.shown.part {
            Some(Part::Inner(_, Inner::Point, name)) => vec![name.clone()],
            _ => Vec::new(),
        };
        (self.shown.room, self.shown.tape) = (Room::Table, None);
        self.shown.pencil = Some(Pencil { frame, from, join: false, ..Pencil::default() });
    }

    /// Does what the pencil was told.
    pub(super) fn stroke(&mut self, stroke: Stroke) {
        let Some(mut pencil) = self.shown.pencil.take() else { return };
        pencil.keep_to(self.open.work().draft());
        match stroke {
            Stroke::At(at, reach, scale, snap) => self.point_at(&mut pencil, at, reach, scale, snap),
            Stroke::Next(on) => {
                let all = pencil.readings.len().max(1);
                pencil.at = if on { (pencil.at + 1) % all } else { (pencil.at + all - 1) % all };
            }
            Stroke::Type(text) => self.type_number(&mut pencil, |last| last.push_str(&text)),
            Stroke::Back => self.type_number(&mut pencil, |last| {
                last.truncate(last.len() - last.chars().next_back().map_or(0, char::len_utf8))
            }),
            Stroke::Enter => {
                let all = pencil.typed.as_ref().map_or(0, |t| t.of.numbers.len());
                match &mut pencil.typed {
                    Some(typed) if typed.made.is_ok() && typed.texts.len() < all => typed.texts.push(String::new()),
                    _ => self.write(&mut pencil, false, false),
                }
            }
            Stroke::Place(curved) => self.write(&mut pencil, false, curved),
            Stroke::Press => {
                self.write(&mut pencil, false, false);
                pencil.drawing = !pencil.from.is_empty();
            }
            Stroke::Drop(curved) => self.write(&mut pencil, true, curved),
            Stroke::Join => pencil.join = !pencil.join,
        }
        self.shown.pencil = Some(pencil);
    }

    fn point_at(&self, pencil: &mut Pencil, at: Point, reach: f64, scale: f64, snap: bool) {
        let computed = &self.scene.computed;
        let case = self.scene.case_of(&self.shown.case);
        let Some(sight) = Sight::of(computed, &pencil.frame, case) else { return pencil.readings.clear() };
        let pointing = Pointing { at, reach, from: pencil.from.clone(), snap, rounding: sight.rounding(scale) };
        let asked = Some((computed.revision, case, pointing.clone()));
        if pencil.asked == asked {
            return;
        }
        pencil.readings = sight.readings(&pointing);
        // Another place begins with its likeliest reading.
        let moved = pencil.asked.as_ref().is_none_or(|(_, _, before)| (before.at - at).hypot() > reach / 2.0);
        if moved || pencil.at >= pencil.readings.len() {
            pencil.at = 0;
        }
        pencil.asked = asked;
    }

    fn type_number(&self, pencil: &mut Pencil, change: impl FnOnce(&mut String)) {
        let Some(of) = pencil.typed.as_ref().map(|t| t.of.clone()).or_else(|| pencil.readings.get(pencil.at).cloned())
        else {
            return;
        };
        if of.numbers.is_empty() {
            return;
        }
        let begins = |text: &str| text.starts_with(|c: char| c.is_numeric() || ".,-(=".contains(c));
        let mut texts = pencil.typed.take().map_or_else(|| vec![String::new()], |t| t.texts);
        if let Some(last) = texts.last_mut() {
            change(last);
        }
        if texts.iter().all(String::is_empty) || !texts.iter().all(|t| t.is_empty() || begins(t)) {
            return;
        }
        let case = self.scene.case_of(&self.shown.case);
        let made = match Sight::of(&self.scene.computed, &pencil.frame, case) {
            Some(sight) => of.with(&sight, &texts),
            None => Err(say!("cannot-be-computed")),
        };
        pencil.typed = Some(Typed { texts, of, made });
    }

    /// Writes the point that is meant, if it is not there yet, and the line to it where points are joined.
    fn write(&mut self, pencil: &mut Pencil, join: bool, curved: bool) {
        if let Some(Typed { made: Err(problem), .. }) = &pencil.typed {
            return self.refuse(problem.clone());
        }
        let Some(reading) = pencil.reading().cloned() else { return };
        let draft = self.open.work().draft();
        let frame = pencil.frame.clone();
        let point = reading.there.clone().unwrap_or_else(|| fresh_inner(draft, &frame, Inner::Point, &[]));
        let mut all = Vec::new();
        if reading.there.is_none() {
            let add = PieceCommand::AddPoint(frame.clone(), point.clone(), reading.formula.clone());
            all.push(Command::Piece(add));
        }
        let before = pencil.from.last().filter(|from| (join || pencil.join) && **from != point).cloned();
        if let Some(before) = before {
            let (inner, add): (_, Box<dyn Fn(String) -> PieceCommand>) = match joined(draft, &frame, &before, &point) {
                Joined::Outline(from, to) => {
                    let piece = frame.clone();
                    (
                        Inner::Edge,
                        Box::new(move |name| PieceCommand::AddEdge {
                            piece: piece.clone(),
                            name,
                            from: from.clone(),
                            to: vec![to.clone()],
                        }),
                    )
                }
                Joined::Line(from, to) => {
                    let frame = frame.clone();
                    (
                        Inner::Line,
                        Box::new(move |name| PieceCommand::AddLine(frame.clone(), name, [from.clone(), to.clone()])),
                    )
                }
            };
            let name = fresh_inner(draft, &frame, inner, std::slice::from_ref(&point));
            all.push(Command::Piece(add(name.clone())));
            if curved {
                all.push(Command::Piece(PieceCommand::Bend(frame.clone(), name, 0, true)));
            }
        }
        if !all.is_empty() {
            let label = say!("step-draw", point = format!("{frame}.{point}"));
            self.finish_typing();
            if let Err(problem) = self.open.run(&Command::Several(label, all)) {
                return self.refuse(problem.to_string());
            }
            self.shown.message = None;
        }
        self.shown.part = Some(Part::point(&frame, &point));
        pencil.reached(point);
    }
}
