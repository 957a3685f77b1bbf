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
use crate::session::{Act, OpenDraft, comes_from, stands_elsewhere, used_by, users, users_of_step, uses};

/// What a dialog is for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Purpose {
    /// Something is added.
    Add(Act),
    /// A part gets another name.
    Rename(Part),
    /// A part is taken out.
    Delete(Part),
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

/// A field of a dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct AskField {
    pub label: &'static str,
    pub hint: String,
    pub text: String,
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

impl AskField {
    /// Whether a formula stands in it.
    pub fn is_formula(&self) -> bool {
        ["place", "formula", "start", "least", "most", "must hold", "length", "length or size"].contains(&self.label)
    }
}

impl Ask {
    pub fn new(purpose: Purpose, title: impl Into<String>, note: impl Into<String>, choices: &[&str]) -> Self {
        Self {
            purpose,
            title: title.into(),
            note: note.into(),
            fields: Vec::new(),
            choices: choices.iter().map(|c| (*c).to_owned()).collect(),
            parts: Vec::new(),
            problem: String::new(),
            at: 0,
        }
    }

    pub fn field(mut self, label: &'static str, hint: impl Into<String>, text: impl Into<String>) -> Self {
        self.fields.push(AskField { label, hint: hint.into(), text: text.into() });
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
        let add = |note: &str, choices: &[&str]| Self::new(Purpose::Add(act), title, note, choices);
        let frame = shown.frame().unwrap_or_default().to_owned();
        let draft = scene.draft();
        Some(match act {
            Act::AddSize => {
                let note = "Rows without a formula get a proposal for it, to be confirmed in the chart.";
                add(note, &["Add the size"])
                    .field("label", "such as 86", "")
                    .field("after which size", "in order of the numbers, else the last", "")
                    .field("along which axis", "girth, cup or length", Self::axis_of(draft))
            }
            Act::AddPerson => {
                add("A single body: kept out of the range, shown beside it.", &["Add the person"]).field("name", "", "")
            }
            Act::AddRow => add(
                "A body row is a measure of bodies and is published; a house row is anything else that goes by size.",
                &["Add a body row", "Add a house row"],
            )
            .field("name", "such as hip", ""),
            Act::AddSet => {
                let note = "A part of the range under a name of its own; its sizes are chosen afterwards.";
                add(note, &["Add the set"]).field("name", "such as petite", "")
            }
            Act::AddValue => add("A number, length or angle with a name.", &["Add the value"])
                .field("name", "such as bust_ease", "")
                .field("formula", "such as 10 cm", ""),
            Act::AddFound => add(
                "The program finds it in every size, so that the seams or conditions that name it hold.",
                &["Add the value"],
            )
            .field("name", "such as cap_height", "")
            .field("start", "such as 14 cm", "")
            .field("least", "no limit", "")
            .field("most", "no limit", ""),
            Act::AddPiece => add("", &["Add the piece"]).field("name", "such as front", ""),
            Act::DerivePiece => {
                let chosen = draft.pieces.iter().find(|p| p.name == frame).or(draft.pieces.first());
                add("A copy that is styled by steps: the block can be changed afterwards, and it follows.", &["Derive the piece"])
                    .field("name", "such as side_panel", "")
                    .field("made of", "a piece", chosen.map_or("", |p| p.name.as_str()))
            }
            Act::AddPoint => {
                let note = format!("A point of {frame}. Right and down are positive.");
                let first = points(draft, &frame).is_empty();
                let hint = if first { "(0 cm, 0 cm)" } else { "such as neck.down(8 cm).right(bust / 4)" };
                add(&note, &["Add the point"])
                    .field("name", "such as neck", "")
                    .field("place", hint, if first { "(0 cm, 0 cm)" } else { "" })
            }
            Act::AddEdge => {
                let piece = draft.pieces.iter().find(|p| p.name == frame);
                let from = piece.and_then(|p| p.edges.last()).map_or("", |e| e.by.last().map_or(&*e.from, |s| s.end()));
                let known = points(draft, &frame).join(", ");
                add(&format!("Straight between points of {frame}; it can be curved afterwards. Points: {known}."), &["Add the edge"])
                    .field("name", "such as shoulder", "")
                    .field("from", "a point", from)
                    .field("to", "a point, or several in order", "")
            }
            Act::Close => add(
                "A straight edge from the last point of the outline to its first.",
                &["Close it"],
            )
            .field("name of the edge", "such as centre", ""),
            Act::AddSeam => add(
                "Both sides start at the same sewn end. An edge that runs the other way is written reversed(front.side).",
                &["Add the seam"],
            )
            .field("name", "such as side", "")
            .field("side one", "such as front.side", "")
            .field("side two", "such as back.side", "")
            .field("kept true by", "watched only", ""),
            Act::AddView => {
                let note = "A version of the garment. It has all pieces at first; which, and what values say in it, stands on its card.";
                add(note, &["Add the view"]).field("name", "such as sleeveless", "")
            }
            Act::AddStrip => add("A thing cut to a length. What it is, its width and how it is joined stand on its card.", &["Add the strip"])
                .field("name", "such as waist_elastic", "")
                .field("length", "finished, from seam to seam: such as waist * 0.9", ""),
            Act::AddNotion => add("A thing that is bought. How many, and the sizes in which it is sold, stand on its card.", &["Add the notion"])
                .field("name", "such as zip", "")
                .field("length or size", "such as 20 cm; it may stay empty", ""),
            Act::AddMaterial => {
                let choices = ["Add an outer cloth", "Add a lining", "Add an interfacing"];
                add("What pieces and strips are cut from.", &choices).field("name", "such as cotton", "")
            }
            Act::AddStep => {
                let note = "A step of sewing, behind the chosen one. Its words stand on its card.";
                add(note, &["Add the step"]).field("heading", "such as Join the shoulders", "")
            }
            Act::AddCondition => add("An equation that must hold, or a comparison that is watched.", &["Add the condition"])
                .field("name", "such as neck_opening", "")
                .field("must hold", "a = b, or a >= b", "")
                .field("kept true by", "all that it depends on", ""),
            _ => return None,
        })
    }

    /// The dialog that gives a part another name.
    pub fn renaming(draft: &Draft, part: &Part) -> Self {
        let note = "Every formula that names it follows.";
        let note = comes_from(draft, part).map_or_else(|| note.to_owned(), |from| format!("{from} {note}"));
        Self::new(Purpose::Rename(part.clone()), format!("Rename {part}"), note, &["Rename it"]).field(
            "name",
            "",
            part.name(),
        )
    }

    /// The dialog that gives a size another label.
    pub fn renaming_size(axis: Axis, label: &str) -> Self {
        let note = "Its numbers and every formula that names it follow.";
        let purpose = Purpose::RenameSize(axis, label.to_owned());
        Self::new(purpose, format!("Rename size {label}"), note, &["Rename it"]).field("label", "", label)
    }

    /// The dialog before a size is taken out.
    pub fn deleting_size(draft: &Draft, axis: Axis, label: &str) -> Self {
        let own = |r: &Row| r.by.iter().position(|a| *a == axis);
        let rows = draft.chart.rows.iter().filter_map(|r| Some((r, own(r)?)));
        let cells =
            rows.flat_map(|(r, i)| r.cells.iter().filter(move |c| c.0.split('/').nth(i) == Some(label))).count();
        let note = format!("Its {cells} numbers go with it; undoing brings them back.");
        Self::new(
            Purpose::DeleteSize(axis, label.to_owned()),
            format!("Delete size {label}"),
            note,
            &["Delete the size"],
        )
    }

    /// The dialog before a part is taken out.
    pub fn deleting(draft: &Draft, part: &Part) -> Self {
        let users = users(draft, part);
        let purpose = Purpose::Delete(part.clone());
        let title = format!("Delete {part}");
        if let Some(why) = stands_elsewhere(draft, part) {
            return Self::new(purpose, title, format!("{why}."), &[]);
        }
        if users.is_empty() {
            let note = if let Part::Step(_) = part {
                "Its words go with it; undoing brings them back."
            } else {
                "Nothing names it."
            };
            return Self::new(purpose, title, note, &["Delete"]);
        }
        let note = format!("It is used by {}.", listed(&users));
        let has_value = matches!(part, Part::Row(_) | Part::Value(_));
        let choices: &[&str] = if has_value {
            &["Put its present value instead", "Delete, and leave what uses it broken"]
        } else {
            &["Delete, and leave what uses it broken"]
        };
        Self::new(purpose, title, note, choices)
    }

    /// The dialog before a step is taken out that makes what is used, if it does.
    pub fn taking_out(draft: &Draft, piece: &str, step: usize) -> Option<Self> {
        let users = users_of_step(draft, piece, step);
        let note = format!("What it makes is used by {}.", listed(&users));
        let title = format!("Take out step {} of {piece}", step + 1);
        let purpose = Purpose::TakeOut(piece.to_owned(), step);
        (!users.is_empty()).then(|| Self::new(purpose, title, note, &["Take it out, and leave what uses it broken"]))
    }

    /// The list of what uses a part and what it uses.
    pub fn using(draft: &Draft, part: &Part) -> Self {
        let note = comes_from(draft, part).unwrap_or_default();
        let mut ask = Self::new(Purpose::Uses, format!("Used by and uses: {part}"), note, &["Good"]);
        for used in used_by(draft, part) {
            let words = format!("used by {}", used.place(draft));
            if !ask.parts.iter().any(|(w, _)| *w == words) {
                ask.parts.push((words, used.at.part));
            }
        }
        for other in uses(draft, part) {
            ask.parts.push((format!("uses {other}"), other));
        }
        if ask.parts.is_empty() {
            ask.note = format!("{} Nothing names it, and it names nothing.", ask.note).trim().to_owned();
        }
        ask
    }

    /// The dialog in which a file is named.
    pub fn file(purpose: Purpose, open: &OpenDraft) -> Self {
        let own = open.path().map_or_else(String::new, |p| p.display().to_string());
        match purpose {
            Purpose::Open => {
                Self::new(purpose, "Open a draft", "", &["Open", "Browse …"]).field("file", "a path to a .ron file", "")
            }
            Purpose::Compare => {
                let note = "What differs from it is listed; its lines are laid under the pieces. It is not changed.";
                Self::new(purpose, "Compare with another draft", note, &["Compare", "Browse …"]).field(
                    "file",
                    "a path to a .ron file",
                    "",
                )
            }
            _ => {
                let text = if own.is_empty() { "new-draft.ron".to_owned() } else { own };
                Self::new(purpose, "Save the draft as", "", &["Save", "Browse …"]).field("file", "a path", text)
            }
        }
    }

    /// The dialog in which the file of the pages is named.
    pub fn printing(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("pdf"));
        let text = path.map_or_else(|| "pages.pdf".to_owned(), |p| p.display().to_string());
        let note = "What Sheets shows, as a PDF file to be printed at 100 %.";
        Self::new(Purpose::Print, "Write the pages", note, &["Write"]).field("file", "a path", text)
    }

    /// The axis along which a size is most likely added.
    fn axis_of(draft: &Draft) -> &'static str {
        Axis::ALL.into_iter().find(|a| !draft.chart.labels(*a).is_empty()).unwrap_or(Axis::Girth).word()
    }

    /// The dialog in which a table that is to be read is named.
    pub fn reading_table(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("csv"));
        let text = path.map_or_else(String::new, |p| p.display().to_string());
        let note = "A table as spreadsheets save it (CSV). It is looked at before anything is taken.";
        Self::new(Purpose::ReadTable, "Read numbers from a table", note, &["Read"]).field(
            "file",
            "a path to a .csv file",
            text,
        )
    }

    /// The dialog in which the file of the table is named.
    pub fn writing_table(open: &OpenDraft) -> Self {
        let path = open.path().map(|p| p.with_extension("csv"));
        let text = path.map_or_else(|| "chart.csv".to_owned(), |p| p.display().to_string());
        let note = "Rows, sizes and persons as text with commas between, cells as they were typed.";
        Self::new(Purpose::WriteTable, "Write the chart as a table", note, &["Write"]).field("file", "a path", text)
    }

    /// The question before unsaved work is left.
    pub fn unsaved(open: &OpenDraft, then: Then) -> Self {
        let note = format!(
            "{} holds changes that are not saved.",
            if open.path().is_some() { open.file_name() } else { "The draft".to_owned() }
        );
        Self::new(Purpose::Unsaved(then), "Save first?", note, &["Save", "Go on without saving"])
    }
}

fn points(draft: &Draft, frame: &str) -> Vec<String> {
    let piece = draft.pieces.iter().find(|p| p.name == frame).map(|p| &p.points);
    let drawing = draft.drawings.iter().find(|d| d.name == frame).map(|d| &d.points);
    piece.or(drawing).map_or_else(Vec::new, |p| p.iter().map(|p| p.name.clone()).collect())
}

/// At most a dozen words, and how many more there are.
fn listed(words: &[String]) -> String {
    let mut out = words.iter().take(12).cloned().collect::<Vec<_>>().join(", ");
    if words.len() > 12 {
        out.push_str(&format!(" and {} more", words.len() - 12));
    }
    out
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
                help::question(ui, "this dialog", help::page_of_dialog(ask), wishes);
            });
            if !ask.note.is_empty() {
                ui.label(RichText::new(&ask.note).color(look.soft));
            }
            let mut entered = false;
            for (i, own) in ask.fields.iter().enumerate() {
                let caption = ui.label(RichText::new(own.label).font(letters(look::SMALL)).color(look.soft));
                let mut text = own.text.clone();
                let id = field_id(ask, i);
                let spot = Spot::Ask(i);
                let has_focus = own.is_formula() && ui.memory(|m| m.has_focus(id));
                let mut taken = offers::keys(ui, shown, &spot, has_focus, wishes);
                let edit = TextEdit::singleline(&mut text).id(id).hint_text(own.hint.clone()).desired_width(420.0);
                let edit = if own.is_formula() { edit.event_filter(offers::filter(shown, &spot)) } else { edit };
                let mut output = edit.show(ui);
                let response = output.response.response.clone().labelled_by(caption.id);
                if response.gained_focus() {
                    // What stands there is chosen, so that typing takes its place.
                    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
                    output.state.cursor.set_char_range(Some(all));
                    output.state.clone().store(ui.ctx(), response.id);
                }
                ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(own.label));
                field::ring(ui, &response);
                if own.is_formula() && response.has_focus() {
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
                if ask.purpose != Purpose::Uses && ui.button("Cancel").clicked() {
                    wishes.push(Wish::Cancel);
                }
            });
        });
    if modal.should_close() {
        wishes.push(Wish::Cancel);
    }
}
