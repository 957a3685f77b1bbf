//! Cards of what is published beside the pieces: strips, notions, cloth; each a list of lines, all painted in one way.

use egui::{ComboBox, RichText, Role, Ui, WidgetInfo};

use super::Card;
use super::by_size::Said;
use crate::app::field;
use crate::app::scene::Scene;
use crate::app::state::{Room, Wish};
use crate::compute::{Formula, Model};
use crate::document::{Address, Part, Strip};
use crate::session::{Act, Choosing, Command, PublishCommand, TextCommand, choices};
use crate::texts::{id, own, said, say};

/// A line of a card. Captions, hints and words of buttons are ids of texts.
pub(super) enum Line {
    /// A formula: field, caption, what stands there while it is empty.
    Formula(&'static str, &'static str, &'static str),
    /// Words: field, caption.
    Words(&'static str, &'static str),
    /// Something that is chosen.
    Choice(&'static str, &'static str),
    /// A count that is one where nothing is said.
    OneOrMore(&'static str, &'static str),
    /// Formulas in a list: field, caption, the word of the button that adds one, hint.
    List(&'static str, &'static str, &'static str, &'static str),
}

/// Strips, after what they are cut from.
const STRIP: &[Line] = &[
    Line::Choice("kind", id!("card-what-it-is")),
    Line::OneOrMore("count", id!("card-how-many")),
    Line::Formula("length", id!("card-finished-length"), id!("card-finished-length-hint")),
    Line::Formula("ends", id!("card-strip-ends"), id!("card-nothing")),
    Line::Formula("width", id!("card-finished-width"), id!("card-finished-width-hint")),
    Line::OneOrMore("layers", id!("card-layers")),
    Line::Formula("allowance", id!("card-strip-sides"), id!("card-nothing")),
    Line::Choice("grain", id!("card-strip-grain")),
    Line::Formula("join", id!("card-strip-join"), id!("card-strip-join-hint")),
    Line::Choice("place", id!("card-strip-place")),
    Line::Formula("free_end", id!("card-free-end"), id!("card-not-said")),
    Line::Choice("fastened", id!("card-fastened")),
    Line::Choice("in_lay", id!("card-in-lay")),
    Line::Words("note", id!("card-note")),
];

const NOTION: &[Line] = &[
    Line::Choice("count", id!("card-how-many")),
    Line::Formula("size", id!("card-notion-size"), id!("card-none")),
    Line::List("sold", id!("card-sold"), id!("card-sold-another"), id!("card-sold-hint")),
    Line::Words("note", id!("card-note")),
];

const MATERIAL: &[Line] = &[
    Line::Choice("kind", id!("card-what-it-is")),
    Line::List("widths", id!("card-width"), id!("card-width-another"), id!("card-width-hint")),
    Line::Formula("selvedge", id!("card-selvedge"), id!("card-nothing")),
    Line::Choice("nap", id!("card-nap")),
    Line::Choice("laid", id!("card-laid")),
    Line::Formula("folded_part", id!("card-folded-part"), id!("card-folded-part-hint")),
    Line::Formula("gap", id!("card-gap"), id!("card-none")),
    Line::Formula("sold_in", id!("card-sold-in"), id!("card-sold-in-hint")),
    Line::Formula("stretch_along", id!("card-stretch-along"), id!("card-stretch-hint")),
    Line::Formula("stretch_across", id!("card-stretch-across"), id!("card-nothing")),
    Line::Formula("shrinkage_along", id!("card-shrink-along"), id!("card-nothing")),
    Line::Formula("shrinkage_across", id!("card-shrink-across"), id!("card-nothing")),
    Line::Choice("shrinks", id!("card-shrinks")),
    Line::Words("note", id!("card-note")),
];

impl Card<'_> {
    pub(super) fn strip(&mut self, ui: &mut Ui, name: &str) {
        let scene = self.scene;
        let Some(strip) = scene.draft().strips.iter().find(|s| s.name == *name) else { return };
        let part = Part::Strip(name.to_owned());
        self.cut_from(ui, &part, strip);
        self.lines(ui, &part, STRIP);
        let Some(model) = scene.model() else { return };
        let plan = model.plan.publishing.strips.iter().find(|p| scene.draft().strips[p.place].name == *name);
        if let Some(plan) = plan {
            self.by_size(ui, &say!("card-length-by-size"), Said::Length, &|case| model.item(case, plan.length)?.real());
        }
    }

    pub(super) fn notion(&mut self, ui: &mut Ui, name: &str) {
        let scene = self.scene;
        let part = Part::Notion(name.to_owned());
        self.lines(ui, &part, NOTION);
        let Some(size) = scene.draft().notions.iter().find(|n| n.name == *name).map(|n| &n.size) else { return };
        if let Some((model, formula)) = scene.model().zip(Self::formula_of(scene, &part, size))
            && let Some(said) = Said::of(Some(formula.kind))
        {
            self.by_size(ui, &say!("card-by-size"), said, &|case| model.real(case, formula).ok());
        }
    }

    pub(super) fn material(&mut self, ui: &mut Ui, name: &str) {
        let act = Act::Cloth.action();
        let seen = self.shown.room == Room::Cloth;
        if !seen && ui.small_button(say!("card-cloth")).on_hover_text(act.what()).clicked() {
            self.wishes.push(Wish::Act(Act::Cloth));
        }
        self.lines(ui, &Part::Material(name.to_owned()), MATERIAL);
    }

    /// The material of a strip, chosen from those of the draft.
    fn cut_from(&mut self, ui: &mut Ui, part: &Part, strip: &Strip) {
        field::caption(ui, self.look, &say!("card-cut-from"));
        let word = |name: &str| if name.is_empty() { say!("card-bought") } else { name.to_owned() };
        let names = std::iter::once("").chain(self.scene.draft().materials.iter().map(|m| m.name.as_str()));
        let mut chosen = None;
        let menu = ComboBox::from_id_salt(("cut from", part)).selected_text(word(&strip.material)).show_ui(ui, |ui| {
            for name in names {
                if ui.selectable_label(strip.material == name, word(name)).clicked() {
                    chosen = Some(name.to_owned());
                }
            }
        });
        let called = of_part(&say!("card-cut-from"), part);
        menu.response.widget_info(|| WidgetInfo::labeled(Role::ComboBox, true, called.as_str()));
        if let Some(name) = chosen {
            let at = Address::new(part.clone(), "material");
            self.wishes.push(Wish::Run(Command::Text(TextCommand::Set(at, name))));
        }
    }

    /// All lines of a card.
    pub(super) fn lines(&mut self, ui: &mut Ui, part: &Part, lines: &[Line]) {
        let words = |id: &str| said(own(), id, &[]);
        for line in lines {
            match line {
                Line::Formula(field, caption, hint) => {
                    self.formula(ui, Address::new(part.clone(), field), &words(caption), &words(hint));
                }
                Line::Words(field, caption) => {
                    self.text(ui, Address::new(part.clone(), field), &words(caption), false, "");
                }
                Line::Choice(field, caption) => self.choice(ui, part, field, &words(caption)),
                Line::OneOrMore(field, caption) => self.count(ui, part, field, &words(caption), 1),
                Line::List(field, caption, another, hint) => {
                    self.list(ui, part, field, (&words(caption), &words(another), &words(hint)));
                }
            }
        }
    }

    /// A formula with its value in the chosen size.
    pub(super) fn formula(&mut self, ui: &mut Ui, at: Address, caption: &str, hint: &str) {
        let Some(text) = self.scene.draft().text(&at) else { return };
        let (part, field) = (at.part.clone(), at.field);
        self.text(ui, at, caption, true, hint);
        let known = match (self.scene.model(), Self::formula_of(self.scene, &part, &text)) {
            (Some(model), Some(formula)) => model.real(self.case, formula).ok().zip(Said::of(Some(formula.kind))),
            (Some(model), None) => self.of_graph(model, &part, field),
            (None, _) => None,
        };
        if let Some((value, said)) = known {
            let words = self.say(value, said);
            // What was typed as a number says it itself.
            if words != text {
                self.say_line(ui, &say!("card-number-in", number = words, size = self.scene.called(self.case)));
            }
        }
    }

    /// The value of a field that formulas may name: the length of a strip, what a material says of itself.
    fn of_graph(&self, model: &Model, part: &Part, field: &str) -> Option<(f64, Said)> {
        let node = match part {
            Part::Strip(name) if field == "length" => {
                let draft = self.scene.draft();
                model.plan.publishing.strips.iter().find(|p| draft.strips[p.place].name == *name)?.length
            }
            Part::Material(name) => model.plan.node_named(&format!("{name}.{field}"))?,
            _ => return None,
        };
        let said = Said::of(model.plan.nodes[node as usize].kind)?;
        Some((model.item(self.case, node)?.real()?, said))
    }

    /// The formula of a part with this text, as it was read.
    fn formula_of<'a>(scene: &'a Scene, part: &Part, text: &str) -> Option<&'a Formula> {
        let of = match part {
            Part::Strip(name) => format!("strip.{name}"),
            Part::Notion(name) => format!("notion {name}"),
            Part::Material(name) => name.clone(),
            _ => "care".to_owned(),
        };
        let all = scene.model()?.plan.publishing.formulas(scene.draft());
        all.into_iter().find(|(at, formula)| *at == of && *formula.text == *text).map(|(_, formula)| formula)
    }

    /// Something that is chosen: words beside each other, a box to be ticked, a number.
    pub(super) fn choice(&mut self, ui: &mut Ui, part: &Part, field: &'static str, caption: &str) {
        let all = choices(self.scene.draft(), part);
        let Some(choice) = all.into_iter().find(|c| c.field == field) else { return };
        let mut to = choice.now;
        match choice.how {
            Choosing::Words(words) => {
                field::caption(ui, self.look, caption);
                ui.horizontal_wrapped(|ui| {
                    for (word, i) in words.iter().zip(0..) {
                        let (word, chosen) = (said(own(), word, &[]), choice.now == i);
                        let response = ui.selectable_label(chosen, &word);
                        let called = format!("{}: {word}", of_part(caption, part));
                        response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
                        if response.clicked() {
                            to = i;
                        }
                    }
                });
            }
            Choosing::YesNo => {
                let mut ticked = choice.now > 0;
                let response = ui.checkbox(&mut ticked, caption);
                let called = of_part(caption, part);
                response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, choice.now > 0, &called));
                to = u32::from(ticked);
            }
            Choosing::Count => return self.count(ui, part, field, caption, 0),
        }
        if to != choice.now {
            self.publish(PublishCommand::Choose(part.clone(), field, to));
        }
    }

    /// A count between two buttons; `unsaid` is what it counts as where nothing is said: that stands there as a hint.
    fn count(&mut self, ui: &mut Ui, part: &Part, field: &'static str, caption: &str, unsaid: u32) {
        let all = choices(self.scene.draft(), part);
        let Some(now) = all.into_iter().find(|c| c.field == field).map(|c| c.now) else { return };
        let (is_said, counts) = (now > 0, if now > 0 { now } else { unsaid });
        let mut to = now;
        field::caption(ui, self.look, caption);
        ui.horizontal(|ui| {
            let what = of_part(caption, part);
            if self.small(ui, "−", say!("card-fewer", what)) {
                to = now.saturating_sub(1);
            }
            let color = if is_said { self.look.ink } else { self.look.soft };
            let response = ui.label(RichText::new(counts.to_string()).color(color));
            response.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("{counts}: {what}")));
            if self.small(ui, "+", say!("card-more", what)) {
                to = counts + 1;
            }
        });
        if to != now {
            self.publish(PublishCommand::Choose(part.clone(), field, to));
        }
    }

    /// Formulas of which there may be several, each in a field of its own.
    fn list(&mut self, ui: &mut Ui, part: &Part, field: &'static str, (caption, another, hint): (&str, &str, &str)) {
        let mut many = 0;
        while self.scene.draft().text(&Address::nth(part.clone(), field, many)).is_some() {
            let number = if many == 0 { String::new() } else { format!(" ({})", many + 1) };
            let caption = format!("{caption}{number}");
            self.formula(ui, Address::nth(part.clone(), field, many), &caption, hint);
            if self.small(ui, &say!("card-take-out"), say!("card-take-out-what", what = caption)) {
                self.publish(PublishCommand::TakeItem(part.clone(), field, many));
            }
            many += 1;
        }
        if ui.small_button(another).clicked() {
            self.publish(PublishCommand::AddItem(part.clone(), field));
        }
    }

    /// A small button with a short word, called by a longer name.
    pub(super) fn small(&self, ui: &mut Ui, word: &str, called: String) -> bool {
        let response = ui.small_button(word);
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called.as_str()));
        response.clicked()
    }

    pub(super) fn publish(&mut self, command: PublishCommand) {
        self.wishes.push(Wish::Run(Command::Publish(command)));
    }
}

/// What a choice or count is called: its caption, and whose it is.
fn of_part(caption: &str, part: &Part) -> String {
    say!("card-choice-of", caption, part = part.words())
}
