//! The help room: the list of pages, a search over all of them, the page itself with links, and where `F1` leads.

use egui::{
    Button, Context, Frame, Id, Key, Label, Margin, Modifiers, RichText, Role, ScrollArea, TextEdit, Ui, UiBuilder,
    WidgetInfo, vec2,
};

use super::ask::{Ask, Purpose, field_id};
use super::cloth::LongestAsk;
use super::look::{self, Look, letters};
use super::publish::PublishAsk;
use super::release::ReleaseAsk;
use super::state::{Field, Room, Shown, Wish};
use super::{Window, field};
use crate::document::{Inner, Part};
use crate::help::{Block, Group, Page, Span, blocks, function_page, page, pages, search};
use crate::session::{Act, part_of_finding};
use crate::texts::say;

/// Width of the list, px.
const LIST: f32 = 250.0;
/// Lines of a page are not longer than this, px.
const LONGEST: f32 = 700.0;
/// The most pages that "Back" remembers, and the most that a search lists.
const MOST: usize = 100;

/// What a person asks of the help.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum HelpWish {
    /// Open a page.
    Open(String),
    /// Search for these words.
    Search(String),
    /// Show the pages under a heading, or none.
    Group(Group),
    /// Go to the page before.
    Back,
    /// Go to where the person was.
    Close,
}

/// How the help is read.
#[derive(Clone, Debug, Default)]
pub(super) struct HelpState {
    search: String,
    back: Vec<String>,
    /// What stood in the middle before.
    from: Option<Room>,
    /// The dialog that was open before: one of these.
    pub aside: (Option<Ask>, Option<PublishAsk>, Option<ReleaseAsk>),
    /// The same for that of the longest value.
    pub longest: Option<LongestAsk>,
    /// The heading whose pages are listed.
    open: Option<Group>,
}

/// A small button that opens a page.
pub(super) fn question(ui: &mut Ui, of: &str, page: &str, wishes: &mut Vec<Wish>) {
    let response = ui.add(Button::new("?").corner_radius(look::ROUND).min_size(vec2(28.0, look::BUTTON)));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("help-room-called", of)));
    if response.on_hover_text(say!("help-room-hint")).clicked() {
        wishes.push(Wish::Help(HelpWish::Open(page.to_owned())));
    }
}

/// Listens to the key of help while a dialog is open.
pub(super) fn key(ui: &Ui, wishes: &mut Vec<Wish>) {
    if ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::F1)) {
        wishes.push(Wish::Act(Act::Help));
    }
}

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, shown: &Shown, id: &str, wishes: &mut Vec<Wish>) {
    Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        ui.horizontal(|ui| {
            ui.label(RichText::new(say!("help-room-title")).font(letters(look::LARGE)).color(look.ink));
            let back = ui.add_enabled(!shown.help.back.is_empty(), Button::new(say!("help-room-back")));
            back.widget_info(|| WidgetInfo::labeled(Role::Button, back.enabled(), say!("help-room-back-called")));
            if back.clicked() {
                wishes.push(Wish::Help(HelpWish::Back));
            }
            if ui.button(say!("help-room-close")).clicked() {
                wishes.push(Wish::Help(HelpWish::Close));
            }
            question(ui, &say!("help-room-about"), "help", wishes);
        });
        ui.add_space(6.0);
        let room = ui.available_rect_before_wrap();
        let list = egui::Rect::from_min_size(room.min, vec2(LIST, room.height()));
        let own = egui::Rect::from_min_max(egui::pos2(list.right() + 18.0, room.top()), room.max);
        let mut left = ui.new_child(UiBuilder::new().max_rect(list));
        contents(&mut left, look, shown, id, wishes);
        let mut right = ui.new_child(UiBuilder::new().max_rect(own));
        if let Some(page) = page(id) {
            text(&mut right, look, page, wishes);
        }
        ui.allocate_rect(room, egui::Sense::hover());
    });
}

fn contents(ui: &mut Ui, look: &Look, shown: &Shown, id: &str, wishes: &mut Vec<Wish>) {
    let mut words = shown.help.search.clone();
    let edit = TextEdit::singleline(&mut words)
        .id(Id::unique("help search"))
        .hint_text(say!("help-room-search"))
        .desired_width(LIST - 24.0);
    let response = ui.add(edit);
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(say!("help-room-search-called")));
    field::ring(ui, &response);
    if response.changed() {
        wishes.push(Wish::Help(HelpWish::Search(words)));
    }
    ui.add_space(4.0);
    let all = pages();
    ScrollArea::vertical().id_salt("help list").auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        if !shown.help.search.trim().is_empty() {
            let found = search(all, &shown.help.search);
            let words = match found.len() {
                0 => say!("help-room-none"),
                many => say!("pages", count = many),
            };
            ui.label(RichText::new(words).color(look.soft));
            for i in found.into_iter().take(MOST) {
                line(ui, &all[i], id, wishes);
            }
            return;
        }
        for group in Group::ALL {
            let own: Vec<&Page> = all.iter().filter(|p| p.group == group).collect();
            let open = shown.help.open == Some(group);
            let word = format!("{} {} ({})", if open { "–" } else { "+" }, group.word(), own.len());
            let response = ui.add(Button::new(RichText::new(word).color(look.ink)).frame(false));
            let name = group.word();
            let called = if open { say!("contents-fold", name) } else { say!("contents-unfold", name) };
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
            if response.clicked() {
                wishes.push(Wish::Help(HelpWish::Group(group)));
            }
            for page in own.into_iter().filter(|_| open) {
                line(ui, page, id, wishes);
            }
        }
    });
}

fn line(ui: &mut Ui, page: &Page, id: &str, wishes: &mut Vec<Wish>) {
    let chosen = page.id == id;
    let response = ui.add(Button::new(&page.title).selected(chosen).frame(chosen).truncate());
    response
        .widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, say!("help-room-page", page = page.title)));
    if response.clicked() {
        wishes.push(Wish::Help(HelpWish::Open(page.id.clone())));
    }
}

/// The page itself.
fn text(ui: &mut Ui, look: &Look, page: &Page, wishes: &mut Vec<Wish>) {
    ScrollArea::vertical().id_salt(("help page", &page.id)).auto_shrink([false, false]).show(ui, |ui| {
        ui.set_max_width((ui.available_width() - 12.0).min(LONGEST));
        for block in blocks(&page.text) {
            match block {
                Block::Heading(level, spans) => {
                    ui.add_space(if level == 1 { 0.0 } else { 8.0 });
                    let size = if level == 1 { look::LARGE + 2.0 } else { look::TEXT + 1.5 };
                    inline(ui, look, &spans, Some(size), wishes);
                }
                Block::Words(spans) => inline(ui, look, &spans, None, wishes),
                Block::Item(spans) => {
                    ui.horizontal_top(|ui| {
                        ui.spacing_mut().item_spacing.x = 6.0;
                        ui.label(RichText::new("•").color(look.soft));
                        ui.vertical(|ui| inline(ui, look, &spans, None, wishes));
                    });
                }
                Block::Code(code) => {
                    Frame::new().fill(look.touched).inner_margin(Margin::symmetric(10, 6)).corner_radius(4).show(
                        ui,
                        |ui| {
                            ui.label(RichText::new(code).font(look::code(look::CODE)).color(look.ink));
                        },
                    );
                }
                Block::Row(cells) => {
                    for (i, cell) in cells.iter().enumerate() {
                        ui.horizontal_top(|ui| {
                            ui.add_space(if i == 0 { 0.0 } else { 22.0 });
                            ui.vertical(|ui| inline(ui, look, cell, None, wishes));
                        });
                    }
                }
            }
            ui.add_space(3.0);
        }
    });
}

/// The stretches of a line behind each other.
fn inline(ui: &mut Ui, look: &Look, spans: &[Span], heading: Option<f32>, wishes: &mut Vec<Wish>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(0.0, 3.0);
        for span in spans {
            let own = |words: &str| RichText::new(words).font(letters(heading.unwrap_or(look::TEXT))).color(look.ink);
            match span {
                Span::Words(words) => drop(ui.label(own(words))),
                Span::Strong(words) => drop(ui.label(own(words).strong().italics())),
                Span::Code(words) => {
                    let code = RichText::new(words).font(look::code(look::CODE)).color(look.ink);
                    ui.label(code.background_color(look.touched));
                }
                Span::Link(words, to) => {
                    let link = RichText::new(words).font(letters(heading.unwrap_or(look::TEXT))).underline();
                    let response = ui.add(Label::new(link.color(look.note)).extend().sense(egui::Sense::click()));
                    let called = || say!("help-room-link", page = page(to).map_or(&**to, |p| &p.title));
                    response.widget_info(|| WidgetInfo::labeled(Role::Link, true, called()));
                    if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
                        wishes.push(Wish::Help(HelpWish::Open(to.clone())));
                    }
                }
            }
        }
    });
}

impl Window {
    /// Does what was asked of the help.
    pub(super) fn help(&mut self, wish: HelpWish) {
        match wish {
            HelpWish::Open(id) => self.open_help(&id),
            HelpWish::Search(words) => self.shown.help.search = words,
            HelpWish::Group(group) => {
                self.shown.help.open = (self.shown.help.open != Some(group)).then_some(group);
            }
            HelpWish::Back => {
                if let Some(id) = self.shown.help.back.pop() {
                    self.shown.help.open = page(&id).map(|p| p.group);
                    self.shown.room = Room::Help(id);
                }
            }
            HelpWish::Close => self.shown.room = self.shown.help.from.take().unwrap_or(Room::Table),
        }
    }

    fn open_help(&mut self, id: &str) {
        let Some(page) = page(id) else { return self.refuse(say!("help-room-no-page", page = id)) };
        let before = std::mem::replace(&mut self.shown.room, Room::Help(page.id.clone()));
        let help = &mut self.shown.help;
        help.open = Some(page.group);
        match before {
            Room::Help(now) if now == page.id => {}
            Room::Help(now) => {
                help.back.push(now);
                if help.back.len() > MOST {
                    help.back.remove(0);
                }
            }
            room => {
                help.from = Some(room);
                help.back.clear();
                help.search.clear();
            }
        }
        let shown = &mut self.shown;
        let open = (shown.ask.take(), shown.publish.take(), shown.release.take());
        if open != (None, None, None) {
            shown.help.aside = open;
        }
        // What is looked for goes on; its dialog comes back too.
        shown.help.longest = shown.cloth.longest.take().or(shown.help.longest.take());
        self.shown.finder = None;
    }

    /// Opens help on what the person is at.
    pub(super) fn help_here(&mut self, ctx: &Context) {
        let id = self.page_here(ctx);
        self.open_help(&id);
    }

    fn page_here(&self, ctx: &Context) -> String {
        let shown = &self.shown;
        if let Some(ask) = &shown.ask {
            let typed = (0..ask.fields.len()).find(|i| ctx.memory(|m| m.has_focus(field_id(ask, *i))));
            let function = typed.and_then(|i| function_at(ctx, field_id(ask, i), &ask.fields[i].text));
            return function.unwrap_or_else(|| page_of_dialog(ask).to_owned());
        }
        if shown.cloth.longest.is_some() {
            return "lays".to_owned();
        }
        if shown.publish.is_some() || shown.release.is_some() {
            return if shown.publish.is_some() { "publishing" } else { "releases" }.to_owned();
        }
        if let Some(typing) = &shown.typing {
            if let Some(function) = function_at(ctx, field::id(&typing.field), &typing.text) {
                return function;
            }
            if matches!(&typing.field, Field::Text(_, true)) {
                return "formulas".to_owned();
            }
        }
        let room = match &shown.room {
            Room::Table if shown.pencil.is_some() => Some("pencil"),
            Room::Table if shown.tape.is_some() => Some("tape"),
            Room::Table => None,
            Room::Chart => Some("chart"),
            Room::Sheets => Some("sheets"),
            Room::Cloth => Some("lays"),
            Room::Booklet => Some("booklet"),
            Room::Roll(_) => Some("roll"),
            Room::Differences => Some("compare"),
            Room::Help(_) => Some("help"),
            Room::Preferences => Some("preferences"),
            Room::Welcome => Some("start"),
        };
        if let Some(room) = room {
            return room.to_owned();
        }
        let finding = shown.finding.and_then(|i| self.scene.computed.findings.get(i));
        if let Some(finding) = finding
            && shown.part == Some(part_of_finding(self.scene.draft(), finding).unwrap_or(Part::Draft))
        {
            return format!("finding/{}", finding.code.word());
        }
        shown.part.as_ref().map_or("table", page_of_part).to_owned()
    }
}

/// The page about parts of this kind.
fn page_of_part(part: &Part) -> &'static str {
    match part {
        Part::Row(_) | Part::Person(_) | Part::SizeSet(_) => "chart",
        Part::Value(_) => "values",
        Part::Piece(_) | Part::Drawing(_) | Part::Placement(_) => "pieces",
        Part::Inner(_, Inner::Point, _) => "points",
        Part::Inner(_, Inner::Dart, _) => "about-darts",
        Part::Inner(..) => "edges",
        Part::Seam(_) | Part::Joint(_) => "about-seams",
        Part::Condition(_) => "about-found",
        Part::Strip(_) | Part::Notion(_) => "strips",
        Part::Material(_) => "cloth",
        Part::Step(_) => "booklet",
        Part::Kept => "publishing",
        Part::Draft => "card",
        _ => "file",
    }
}

/// The page about what a dialog is for.
pub(super) fn page_of_dialog(ask: &Ask) -> &'static str {
    match &ask.purpose {
        Purpose::Add(Act::AddPoint) => "points",
        Purpose::Add(Act::AddEdge | Act::Close) => "edges",
        Purpose::Add(Act::DerivePiece) | Purpose::TakeOut(..) => "derived",
        Purpose::Add(Act::AddPiece) => "pieces",
        Purpose::Add(Act::AddSeam) => "about-seams",
        Purpose::Add(Act::AddFound | Act::AddCondition) => "about-found",
        Purpose::Add(Act::AddValue) => "values",
        Purpose::Add(Act::AddView) => "views",
        Purpose::Add(Act::AddRow) => "chart",
        Purpose::Add(Act::AddStrip | Act::AddNotion | Act::AddMaterial) => "strips",
        Purpose::Add(Act::AddStep) => "booklet",
        Purpose::Add(_) | Purpose::RenameSize(..) | Purpose::DeleteSize(..) => "about-sizes",
        Purpose::MoveBy => "action/move_by",
        Purpose::Group | Purpose::Width => "lays",
        Purpose::ReadTable | Purpose::WriteTable => "chart",
        Purpose::Picture(_) => "pictures",
        Purpose::Rename(_) => "action/rename",
        Purpose::Delete(..) => "action/delete",
        Purpose::Uses => "action/used_by",
        Purpose::Print => "sheets",
        Purpose::Open => "action/open",
        Purpose::Compare => "compare",
        Purpose::TakeBlock | Purpose::BlockFile(_) => "blocks",
        Purpose::Comments => "file",
        Purpose::SaveAs | Purpose::Unsaved(_) | Purpose::Over(_) => "action/save_as",
    }
}

/// The page of the function at the cursor of a field.
fn function_at(ctx: &Context, field: Id, text: &str) -> Option<String> {
    let cursor = TextEdit::load_state(ctx, field)?.cursor.char_range()?.primary.index;
    function_around(text, cursor.into()).and_then(function_page)
}

/// The name of the function on which a cursor stands, else of the one in whose brackets it stands.
fn function_around(text: &str, cursor: usize) -> Option<&str> {
    let at = text.char_indices().nth(cursor).map_or(text.len(), |(i, _)| i);
    let is_name = |c: char| c == '_' || c.is_alphanumeric();
    let word = |end: usize| {
        let start =
            text[..end].rfind(|c| !is_name(c)).map_or(0, |i| i + text[i..].chars().next().map_or(1, char::len_utf8));
        let end = text[end..].find(|c| !is_name(c)).map_or(text.len(), |i| end + i);
        &text[start..end]
    };
    let own = word(at);
    if function_page(own).is_some() {
        return Some(own);
    }
    let mut depth = 0usize;
    for (i, letter) in text[..at].char_indices().rev() {
        match letter {
            ')' => depth += 1,
            '(' if depth > 0 => depth -= 1,
            '(' => {
                let name = word(i);
                if function_page(name).is_some() {
                    return Some(name);
                }
            }
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_function_at_the_cursor_is_the_word_or_the_bracket_around_it() {
        let text = "neck.swing(bust / 4, level(tip)).down(8 cm)";
        let at = |part: &str| function_around(text, text.find(part).expect("it is in the text"));
        assert_eq!(at("wing"), Some("swing"));
        assert_eq!(at("bust"), Some("swing"), "in its brackets");
        assert_eq!(at("tip"), Some("level"));
        assert_eq!(at("8 cm"), Some("down"));
        assert_eq!(at("neck"), None);
        assert_eq!(function_around(text, 999), None);
        assert_eq!(function_around("größe.down(ä)", 12), Some("down"));
        for cursor in 0..12 {
            let _ = function_around("ä(ö)(ü(", cursor);
        }
    }

    #[test]
    fn every_page_that_is_led_to_is_there() {
        use crate::session::OpenDraft;
        let open = OpenDraft::empty(None);
        for purpose in [Purpose::Open, Purpose::SaveAs, Purpose::Compare] {
            assert!(page(page_of_dialog(&Ask::file(purpose, &open))).is_some());
        }
        for act in crate::session::ACTIONS {
            let ask = Ask::new(Purpose::Add(act.act), "", "", &[""; 0]);
            assert!(page(page_of_dialog(&ask)).is_some());
        }
        let inner = |i| Part::Inner("a".to_owned(), i, "b".to_owned());
        for part in [Part::Draft, Part::Kept, Part::Seam(String::new()), inner(Inner::Dart), inner(Inner::Edge)] {
            assert!(page(page_of_part(&part)).is_some(), "{part}");
        }
    }
}
