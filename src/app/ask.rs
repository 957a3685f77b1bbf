//! Dialogs: a few named fields and what can be done with them. What is refused is told in the dialog, which stays open.

use std::path::PathBuf;

use egui::text::{CCursor, CCursorRange};
use egui::{Id, Key, Modal, Modifiers, RichText, ScrollArea, TextEdit, Ui};

use super::field;
use super::help;
use super::look::{self, Look, letters};
use super::offers;
use super::scene::Scene;
use super::state::{Shown, Spot, Wish};
use crate::document::{Axis, Draft, Part, Row};
use crate::session::{Act, Deletion, OpenDraft, comes_from, stands_elsewhere, used_by, users, users_of_step, uses};
use crate::texts::say;

/// What a dialog is for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Purpose {
    /// Something is added.
    Add(Act),
    /// A part gets another name.
    Rename(Part),
    /// A part is taken out; how, by the choices.
    Delete(Part, &'static [Deletion]),
    /// A step of a derived piece is taken out, by its place.
    TakeOut(String, usize),
    /// A size gets another label.
    RenameSize(Axis, String),
    /// A size is taken out.
    DeleteSize(Axis, String),
    /// What is chosen is moved by typed lengths.
    MoveBy,
    /// Sizes are laid together.
    Group,
    /// A cloth is sold in another width.
    Width,
    /// What uses a part.
    Uses,
    /// A file is opened.
    Open,
    /// The draft is compared with that of a file.
    Compare,
    /// A block is taken from the draft of a file.
    TakeBlock,
    /// The file of a block is named.
    BlockFile(String),
    /// The draft is saved under a name.
    SaveAs,
    /// The pages are written.
    Print,
    /// A table is read into the chart.
    ReadTable,
    /// The chart is written as a table.
    WriteTable,
    /// Work is not saved: what then is done.
    Unsaved(Then),
    /// Another program changed the file that is to be saved.
    Over(PathBuf),
    /// A picture is laid under a piece or drawing, or on the table.
    Picture(String),
    /// The file holds comments, which saving takes out.
    Comments,
}

/// What is done once unsaved work is dealt with.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Then {
    New,
    Open,
    Quit,
    Recover(usize),
    Reload,
    File(PathBuf),
    Example(usize),
}

/// The place of the first point.
const ORIGIN: &str = "(0 cm, 0 cm)";

/// A field of a dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct AskField {
    pub label: String,
    pub hint: String,
    pub text: String,
    /// Whether a formula stands in it.
    pub is_formula: bool,
}

/// A dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Ask {
    pub purpose: Purpose,
    pub title: String,
    pub note: String,
    pub fields: Vec<AskField>,
    /// What can be done; the first is what Enter does.
    pub choices: Vec<String>,
    /// Parts that can be gone to.
    pub parts: Vec<(String, Part)>,
    /// Why it was refused.
    pub problem: String,
    /// The field that was typed in last.
    pub at: usize,
}

impl Ask {
    pub fn new(
        purpose: Purpose,
        title: impl Into<String>,
        note: impl Into<String>,
        choices: &[impl AsRef<str>],
    ) -> Self {
        Self {
            purpose,
            title: title.into(),
            note: note.into(),
            fields: Vec::new(),
            choices: choices.iter().map(|c| c.as_ref().to_owned()).collect(),
            parts: Vec::new(),
            problem: String::new(),
            at: 0,
        }
    }

    pub fn field(mut self, label: impl Into<String>, hint: impl Into<String>, text: impl Into<String>) -> Self {
        let (label, hint, text) = (label.into(), hint.into(), text.into());
        self.fields.push(AskField { label, hint, text, is_formula: false });
        self
    }

    /// A field in which a formula stands.
    fn formula(mut self, label: String, hint: String, text: &str) -> Self {
        self.fields.push(AskField { label, hint, text: text.to_owned(), is_formula: true });
        self
    }

    /// The text of a field.
    pub fn text(&self, i: usize) -> &str {
        self.fields.get(i).map_or("", |f| f.text.trim())
    }

    /// The parts of a list with commas or spaces between.
    pub fn list(&self, i: usize) -> Vec<String> {
        split_list(self.text(i))
    }

    /// The dialog of an action that adds something, if it needs one.
    pub fn adding(act: Act, scene: &Scene, shown: &Shown) -> Option<Self> {
        let title = act.action().name().trim_end_matches(" …");
        let add = |note: String, choices: &[String]| Self::new(Purpose::Add(act), title, note, choices);
        let frame = shown.frame().unwrap_or_default().to_owned();
        let draft = scene.draft();
        Some(match act {
            Act::AddSize => add(say!("ask-size-note"), &[say!("ask-size-do")])
                .field(say!("ask-label"), say!("such-as", example = "86"), "")
                .field(say!("ask-size-after"), say!("ask-size-after-hint"), "")
                .field(say!("ask-size-axis"), say!("ask-size-axis-hint"), Self::axis_of(draft)),
            Act::AddPerson => add(say!("ask-person-note"), &[say!("ask-person-do")]).field(say!("ask-name"), "", ""),
            Act::AddRow => add(say!("ask-row-note"), &[say!("ask-row-body"), say!("ask-row-house")]).field(
                say!("ask-name"),
                say!("ask-row-hint"),
                "",
            ),
            Act::AddSet => {
                add(say!("ask-set-note"), &[say!("ask-set-do")]).field(say!("ask-name"), say!("ask-set-hint"), "")
            }
            Act::AddValue => add(say!("ask-value-note"), &[say!("ask-value-do")])
                .field(say!("ask-name"), say!("ask-value-hint"), "")
                .formula(say!("ask-formula"), say!("such-as", example = "10 cm"), ""),
            Act::AddFound => add(say!("ask-found-note"), &[say!("ask-value-do")])
                .field(say!("ask-name"), say!("ask-found-hint"), "")
                .formula(say!("ask-found-start"), say!("such-as", example = "14 cm"), "")
                .formula(say!("ask-found-least"), say!("ask-found-no-limit"), "")
                .formula(say!("ask-found-most"), say!("ask-found-no-limit"), ""),
            Act::AddPiece => {
                add(String::new(), &[say!("ask-piece-do")]).field(say!("ask-name"), say!("ask-piece-hint"), "")
            }
            Act::DerivePiece => {
                let chosen = draft.pieces.iter().find(|p| p.name == frame).or(draft.pieces.first());
                add(say!("ask-derive-note"), &[say!("ask-derive-do")])
                    .field(say!("ask-name"), say!("ask-derive-hint"), "")
                    .field(say!("ask-derive-of"), say!("ask-derive-of-hint"), chosen.map_or("", |p| p.name.as_str()))
            }
            Act::AddPoint => {
                let first = points(draft, &frame).is_empty();
                let hint = if first { ORIGIN.to_owned() } else { say!("ask-point-place-hint") };
                add(say!("ask-point-note", piece = frame), &[say!("ask-point-do")])
                    .field(say!("ask-name"), say!("ask-point-hint"), "")
                    .formula(say!("ask-point-place"), hint, if first { ORIGIN } else { "" })
            }
            Act::AddEdge => {
                let piece = draft.pieces.iter().find(|p| p.name == frame);
                let from = piece.and_then(|p| p.edges.last()).map_or("", |e| e.by.last().map_or(&*e.from, |s| s.end()));
                let known = points(draft, &frame).join(", ");
                add(say!("ask-edge-note", piece = frame, points = known), &[say!("ask-edge-do")])
                    .field(say!("ask-name"), say!("ask-edge-hint"), "")
                    .field(say!("ask-edge-from"), say!("ask-edge-from-hint"), from)
                    .field(say!("ask-edge-to"), say!("ask-edge-to-hint"), "")
            }
            Act::Close => add(say!("ask-close-note"), &[say!("ask-close-do")]).field(
                say!("ask-close-name"),
                say!("ask-close-hint"),
                "",
            ),
            Act::AddSeam => add(say!("ask-seam-note"), &[say!("ask-seam-do")])
                .field(say!("ask-name"), say!("ask-seam-hint"), "")
                .field(say!("ask-seam-one"), say!("ask-seam-one-hint"), "")
                .field(say!("ask-seam-two"), say!("ask-seam-two-hint"), "")
                .field(say!("ask-kept-by"), say!("ask-seam-kept-hint"), ""),
            Act::AddView => {
                add(say!("ask-view-note"), &[say!("ask-view-do")]).field(say!("ask-name"), say!("ask-view-hint"), "")
            }
            Act::AddStrip => add(say!("ask-strip-note"), &[say!("ask-strip-do")])
                .field(say!("ask-name"), say!("ask-strip-hint"), "")
                .formula(say!("ask-strip-length"), say!("ask-strip-length-hint"), ""),
            Act::AddNotion => add(say!("ask-notion-note"), &[say!("ask-notion-do")])
                .field(say!("ask-name"), say!("ask-notion-hint"), "")
                .formula(say!("ask-notion-size"), say!("ask-notion-size-hint"), ""),
            Act::AddMaterial => {
                let choices =
                    [say!("ask-material-cloth"), say!("ask-material-lining"), say!("ask-material-interfacing")];
                add(say!("ask-material-note"), &choices).field(say!("ask-name"), say!("ask-material-hint"), "")
            }
            Act::AddStep => add(say!("ask-step-note"), &[say!("ask-step-do")]).field(
                say!("ask-step-heading"),
                say!("ask-step-hint"),
                "",
            ),
            Act::AddCondition => add(say!("ask-condition-note"), &[say!("ask-condition-do")])
                .field(say!("ask-name"), say!("ask-condition-hint"), "")
                .formula(say!("ask-condition-holds"), say!("ask-condition-holds-hint"), "")
                .field(say!("ask-kept-by"), say!("ask-condition-kept-hint"), ""),
            _ => return None,
        })
    }

    /// The dialog that gives a part another name.
    pub fn renaming(draft: &Draft, part: &Part) -> Self {
        let from = comes_from(draft, part);
        let note = from.map_or_else(|| say!("ask-rename-note"), |from| say!("ask-rename-note-of", from));
        let title = say!("ask-rename-title", part = part.words());
        Self::new(Purpose::Rename(part.clone()), title, note, &[say!("ask-rename-do")]).field(
            say!("ask-name"),
            "",
            part.name(),
        )
    }

    /// The dialog that gives a size another label.
    pub fn renaming_size(axis: Axis, label: &str) -> Self {
        let purpose = Purpose::RenameSize(axis, label.to_owned());
        let title = say!("ask-rename-size-title", size = label);
        Self::new(purpose, title, say!("ask-rename-size-note"), &[say!("ask-rename-do")]).field(
            say!("ask-label"),
            "",
            label,
        )
    }

    /// The dialog before a size is taken out.
    pub fn deleting_size(draft: &Draft, axis: Axis, label: &str) -> Self {
        let own = |r: &Row| r.by.iter().position(|a| *a == axis);
        let rows = draft.chart.rows.iter().filter_map(|r| Some((r, own(r)?)));
        let cells =
            rows.flat_map(|(r, i)| r.cells.iter().filter(move |c| c.0.split('/').nth(i) == Some(label))).count();
        Self::new(
            Purpose::DeleteSize(axis, label.to_owned()),
            say!("ask-delete-size-title", size = label),
            say!("ask-delete-size-note", count = cells),
            &[say!("ask-delete-size-do")],
        )
    }

    /// The dialog before a part is taken out.
    pub fn deleting(draft: &Draft, part: &Part) -> Self {
        let users = users(draft, part);
        let title = say!("ask-delete-title", part = part.words());
        let has_value = matches!(part, Part::Row(_) | Part::Value(_));
        let (note, ways): (String, &'static [Deletion]) = if let Some(why) = stands_elsewhere(draft, part) {
            (format!("{why}."), &[])
        } else if !users.is_empty() {
            let ways: &[Deletion] =
                if has_value { &[Deletion::PutValue, Deletion::LeaveBroken] } else { &[Deletion::LeaveBroken] };
            (say!("ask-used-by-all", users = listed(&users)), ways)
        } else if let Part::Step(_) = part {
            (say!("ask-delete-step-note"), &[Deletion::IfUnused])
        } else {
            (say!("ask-delete-unnamed"), &[Deletion::IfUnused])
        };
        let word = |way: &Deletion| match way {
            Deletion::IfUnused => say!("ask-delete-do"),
            Deletion::PutValue => say!("ask-delete-put-value"),
            Deletion::LeaveBroken => say!("ask-delete-break"),
        };
        let choices: Vec<String> = ways.iter().map(word).collect();
        Self::new(Purpose::Delete(part.clone(), ways), title, note, &choices)
    }

    /// The dialog before a step is taken out that makes what is used, if it does.
    pub fn taking_out(draft: &Draft, piece: &str, step: usize) -> Option<Self> {
        let users = users_of_step(draft, piece, step);
        let note = say!("ask-take-out-note", users = listed(&users));
        let title = say!("ask-take-out-title", number = step + 1, piece);
        let purpose = Purpose::TakeOut(piece.to_owned(), step);
        (!users.is_empty()).then(|| Self::new(purpose, title, note, &[say!("ask-take-out-do")]))
    }

    /// The list of what uses a part and what it uses.
    pub fn using(draft: &Draft, part: &Part) -> Self {
        let note = comes_from(draft, part).unwrap_or_default();
        let mut ask = Self::new(Purpose::Uses, say!("ask-uses-title", part = part.words()), note, &[say!("good")]);
        for used in used_by(draft, part) {
            let words = say!("ask-uses-used-by", place = used.place(draft));
            if !ask.parts.iter().any(|(w, _)| *w == words) {
                ask.parts.push((words, used.at.part));
            }
        }
        for other in uses(draft, part) {
            ask.parts.push((say!("ask-uses-other", part = other.words()), other));
        }
        if ask.parts.is_empty() {
            ask.note = format!("{} {}", ask.note, say!("ask-uses-nothing")).trim().to_owned();
        }
        ask
    }

    /// The dialog in which a file is named.
    pub fn file(purpose: Purpose, open: &OpenDraft) -> Self {
        let own = open.path().map_or_else(String::new, |p| p.display().to_string());
        match purpose {
            Purpose::Open => Self::new(purpose, say!("ask-open-title"), "", &[say!("ask-open-do"), say!("browse")])
                .of_file(".ron", ""),
            Purpose::Compare => {
                let choices = [say!("ask-compare-do"), say!("browse")];
                Self::new(purpose, say!("ask-compare-title"), say!("ask-compare-note"), &choices).of_file(".ron", "")
            }
            _ => {
                let text = if own.is_empty() { "new-draft.ron".to_owned() } else { own };
                Self::new(purpose, say!("ask-save-as-title"), "", &[say!("ask-save-do"), say!("browse")]).of_path(text)
            }
        }
    }

    /// The dialog in which the file of the pages is named.
    pub fn printing(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("pdf"));
        let text = path.map_or_else(|| "pages.pdf".to_owned(), |p| p.display().to_string());
        Self::new(Purpose::Print, say!("ask-print-title"), say!("ask-print-note"), &[say!("ask-write-do")])
            .of_path(text)
    }

    /// The axis along which a size is most likely added.
    fn axis_of(draft: &Draft) -> &'static str {
        Axis::ALL.into_iter().find(|a| !draft.chart.labels(*a).is_empty()).unwrap_or(Axis::Girth).word()
    }

    /// The dialog in which a table that is to be read is named.
    pub fn reading_table(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("csv"));
        let text = path.map_or_else(String::new, |p| p.display().to_string());
        let note = say!("ask-read-table-note");
        Self::new(Purpose::ReadTable, say!("ask-read-table-title"), note, &[say!("ask-read-do")]).of_file(".csv", &text)
    }

    /// The dialog in which the file of the table is named.
    pub fn writing_table(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("csv"));
        let text = path.map_or_else(|| "chart.csv".to_owned(), |p| p.display().to_string());
        let note = say!("ask-write-table-note");
        Self::new(Purpose::WriteTable, say!("ask-write-table-title"), note, &[say!("ask-write-do")]).of_path(text)
    }

    /// The question before unsaved work is left.
    pub fn unsaved(open: &OpenDraft, then: Then) -> Self {
        let note = match open.path() {
            Some(_) => say!("ask-unsaved-note", file = open.file_name()),
            None => say!("ask-unsaved-note-unnamed"),
        };
        let choices = [say!("ask-save-do"), say!("ask-unsaved-go-on")];
        Self::new(Purpose::Unsaved(then), say!("ask-unsaved-title"), note, &choices)
    }

    /// The question before a file is saved over, and why it is asked.
    pub fn over(path: PathBuf, note: String) -> Self {
        Self::new(Purpose::Over(path), say!("over-title"), note, &[say!("over-other-name"), say!("over-do")])
    }

    /// With a field for a file that is there, which ends so.
    pub fn of_file(self, ending: &str, text: &str) -> Self {
        self.field(say!("file-label"), say!("path-to-hint", ending), text)
    }

    /// With a field for a file that is to be written.
    fn of_path(self, text: String) -> Self {
        self.field(say!("file-label"), say!("path-hint"), text)
    }
}

fn points(draft: &Draft, frame: &str) -> Vec<String> {
    let piece = draft.pieces.iter().find(|p| p.name == frame).map(|p| &p.points);
    let drawing = draft.drawings.iter().find(|d| d.name == frame).map(|d| &d.points);
    piece.or(drawing).map_or_else(Vec::new, |p| p.iter().map(|p| p.name.clone()).collect())
}

/// At most a dozen words, and how many more there are.
fn listed(words: &[String]) -> String {
    let list = words.iter().take(12).cloned().collect::<Vec<_>>().join(", ");
    if words.len() > 12 { say!("ask-listed-more", list, count = words.len() - 12) } else { list }
}

/// A list with commas between; commas inside brackets belong to a formula. Names may also have spaces between.
pub(super) fn split_list(text: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut depth = 0usize;
    for letter in text.chars() {
        match letter {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            _ => {}
        }
        if letter == ',' && depth == 0 {
            out.push(String::new());
        } else if let Some(last) = out.last_mut() {
            last.push(letter);
        }
    }
    let parts = out.iter().map(|p| p.trim()).filter(|p| !p.is_empty());
    let names = |p: &str| p.contains(' ') && p.chars().all(|c| c == ' ' || c == '_' || c.is_alphanumeric());
    parts
        .flat_map(|p| if names(p) { p.split_whitespace().map(str::to_owned).collect() } else { vec![p.to_owned()] })
        .collect()
}

/// The name of a field among the widgets.
pub(super) fn field_id(ask: &Ask, i: usize) -> Id {
    Id::unique(("ask field", &ask.title, i))
}

/// Paints the dialog, if one is open.
pub(super) fn show(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(ask) = &shown.ask else { return };
    let modal =
        Modal::new(Id::unique("ask")).backdrop_color(look.backdrop()).frame(look.dialog()).show(ui.ctx(), |ui| {
            ui.set_width(430.0);
            ui.horizontal(|ui| {
                ui.label(RichText::new(&ask.title).font(letters(look::LARGE)).color(look.ink));
                help::question(ui, &say!("ask-this-dialog"), help::page_of_dialog(ask), wishes);
            });
            if !ask.note.is_empty() {
                ui.label(RichText::new(&ask.note).color(look.soft));
            }
            let mut entered = false;
            for (i, own) in ask.fields.iter().enumerate() {
                let caption = ui.label(RichText::new(&own.label).font(letters(look::SMALL)).color(look.soft));
                let mut text = own.text.clone();
                let id = field_id(ask, i);
                let spot = Spot::Ask(i);
                let has_focus = own.is_formula && ui.memory(|m| m.has_focus(id));
                let mut taken = offers::keys(ui, shown, &spot, has_focus, wishes);
                let edit = TextEdit::singleline(&mut text).id(id).hint_text(own.hint.clone()).desired_width(420.0);
                let edit = if own.is_formula { edit.event_filter(offers::filter(shown, &spot)) } else { edit };
                let mut output = edit.show(ui);
                let response = output.response.response.clone().labelled_by(caption.id);
                if response.gained_focus() {
                    // What stands there is chosen, so that typing takes its place.
                    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
                    output.state.cursor.set_char_range(Some(all));
                    output.state.clone().store(ui.ctx(), response.id);
                }
                ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(own.label.as_str()));
                field::ring(ui, &response);
                if own.is_formula && response.has_focus() {
                    taken = taken.or_else(|| offers::show(ui, shown, &spot, &response));
                    let cursor = output.cursor_range.map_or(0, |r| r.primary.index.0);
                    let at = text.char_indices().nth(cursor).map_or(text.len(), |(i, _)| i);
                    let asked = ui.input_mut(|i| i.consume_key(Modifiers::CTRL, Key::Space));
                    let now = (spot.clone(), text.clone(), at);
                    if asked || shown.offered.as_ref().is_none_or(|o| o.of != now) {
                        wishes.push(Wish::Cursor(spot, text.clone(), at, asked));
                    }
                }
                if let Some(taken) = taken {
                    let cursor = CCursor::new(taken.text[..taken.cursor].chars().count());
                    output.state.cursor.set_char_range(Some(CCursorRange::one(cursor)));
                    output.state.store(ui.ctx(), response.id);
                    response.request_focus();
                    wishes.push(Wish::AskTyped(i, taken.text));
                    continue;
                }
                if response.changed() {
                    wishes.push(Wish::AskTyped(i, text));
                }
                entered |= response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
            }
            if !ask.fields.is_empty() && ui.memory(|m| m.focused().is_none()) && !entered {
                ui.memory_mut(|m| m.request_focus(field_id(ask, ask.at)));
            }
            ScrollArea::vertical().max_height(320.0).show(ui, |ui| {
                for (words, part) in &ask.parts {
                    if ui.link(words).clicked() {
                        wishes.push(Wish::Cancel);
                        wishes.push(Wish::Part(part.clone()));
                    }
                }
            });
            if !ask.problem.is_empty() {
                ui.label(RichText::new(format!("■ {}", ask.problem)).color(look.error));
            }
            ui.add_space(6.0);
            ui.horizontal_wrapped(|ui| {
                for (i, choice) in ask.choices.iter().enumerate() {
                    let response = ui.button(choice);
                    if response.clicked() || (i == 0 && entered) {
                        wishes.push(Wish::AskDone(i));
                    }
                }
                if ask.purpose != Purpose::Uses && ui.button(say!("cancel")).clicked() {
                    wishes.push(Wish::Cancel);
                }
            });
        });
    if modal.should_close() {
        wishes.push(Wish::Cancel);
    }
}
