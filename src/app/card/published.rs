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
use crate::texts;

/// A line of a card.
pub(super) enum Line {
    /// A formula: field, caption, what stands there while it is empty.
    Formula(&'static str, &'static str, &'static str),
    /// Words.
    Words(&'static str, &'static str, &'static str),
    /// Something that is chosen.
    Choice(&'static str, &'static str),
    /// A count that is one where nothing is said.
    OneOrMore(&'static str, &'static str),
    /// Formulas in a list: field, caption, the word of the button that adds one, hint.
    List(&'static str, &'static str, &'static str, &'static str),
}

/// Strips, after what they are cut from.
const STRIP: &[Line] = &[
    Line::Choice("kind", "what it is"),
    Line::OneOrMore("count", "how many"),
    Line::Formula("length", "finished length, from seam to seam", "such as waist * 0.9"),
    Line::Formula("ends", "added at each end", "nothing"),
    Line::Formula("width", "finished width", "such as 2 cm"),
    Line::OneOrMore("layers", "layers of it"),
    Line::Formula("allowance", "added along each side", "nothing"),
    Line::Choice("grain", "how it lies on the cloth"),
    Line::Formula("join", "allowance on each side of a join", "it is not joined"),
    Line::Choice("place", "where on the body (cautions hang on it)"),
    Line::Formula("free_end", "how far each free end hangs out", "not said"),
    Line::Choice("fastened", "sewn fast at its middle"),
    Line::Choice("in_lay", "in lay plans of its cloth"),
    Line::Words("note", "note", ""),
];

const NOTION: &[Line] = &[
    Line::Choice("count", "how many"),
    Line::Formula("size", "length or size", "none"),
    Line::List("sold", "sold in", "Another size in which it is sold", "such as 20 cm"),
    Line::Words("note", "note", ""),
];

const MATERIAL: &[Line] = &[
    Line::Choice("kind", "what it is"),
    Line::List("widths", "sold in the width", "Another width in which it is sold", "such as 140 cm"),
    Line::Formula("selvedge", "selvedge on each side, not used", "nothing"),
    Line::Choice("nap", "direction"),
    Line::Choice("laid", "how it is laid to be cut"),
    Line::Formula("folded_part", "width of the folded part, from the fold on", "as wide as its pieces need"),
    Line::Formula("gap", "least distance between pieces", "none"),
    Line::Formula("sold_in", "sold in steps of", "10 cm, or 1/8 yd"),
    Line::Formula("stretch_along", "stretches along the thread by", "nothing, such as 5 %"),
    Line::Formula("stretch_across", "stretches across by", "nothing"),
    Line::Formula("shrinkage_along", "shrinks along the thread by", "nothing"),
    Line::Formula("shrinkage_across", "shrinks across by", "nothing"),
    Line::Choice("shrinks", "where that is allowed for"),
    Line::Words("note", "note", ""),
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
            self.by_size(ui, "length by size", Said::Length, &|case| model.item(case, plan.length)?.real());
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
            self.by_size(ui, "by size", said, &|case| model.real(case, formula).ok());
        }
    }

    pub(super) fn material(&mut self, ui: &mut Ui, name: &str) {
        let act = Act::Cloth.action();
        let seen = self.shown.room == Room::Cloth;
        if !seen && ui.small_button("How much to buy").on_hover_text(act.what()).clicked() {
            self.wishes.push(Wish::Act(Act::Cloth));
        }
        self.lines(ui, &Part::Material(name.to_owned()), MATERIAL);
    }

    /// The material of a strip, chosen from those of the draft.
    fn cut_from(&mut self, ui: &mut Ui, part: &Part, strip: &Strip) {
        field::caption(ui, self.look, "cut from");
        let word = |name: &str| if name.is_empty() { "bought".to_owned() } else { name.to_owned() };
        let names = std::iter::once("").chain(self.scene.draft().materials.iter().map(|m| m.name.as_str()));
        let mut chosen = None;
        let menu = ComboBox::from_id_salt(("cut from", part)).selected_text(word(&strip.material)).show_ui(ui, |ui| {
            for name in names {
                if ui.selectable_label(strip.material == name, word(name)).clicked() {
                    chosen = Some(name.to_owned());
                }
            }
        });
        menu.response.widget_info(|| WidgetInfo::labeled(Role::ComboBox, true, format!("cut from, of {part}")));
        if let Some(name) = chosen {
            let at = Address::new(part.clone(), "material");
            self.wishes.push(Wish::Run(Command::Text(TextCommand::Set(at, name))));
        }
    }

    /// All lines of a card.
    pub(super) fn lines(&mut self, ui: &mut Ui, part: &Part, lines: &[Line]) {
        for line in lines {
            match line {
                Line::Formula(field, caption, hint) => {
                    self.formula(ui, Address::new(part.clone(), field), caption, hint)
                }
                Line::Words(field, caption, hint) => {
                    self.text(ui, Address::new(part.clone(), field), caption, false, hint);
                }
                Line::Choice(field, caption) => self.choice(ui, part, field, caption),
                Line::OneOrMore(field, caption) => self.count(ui, part, field, caption, 1),
                Line::List(field, caption, another, hint) => self.list(ui, part, field, (caption, another, hint)),
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
                self.say_line(ui, &format!("{words} in {}", self.scene.called(self.case)));
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
                        let (word, chosen) = (texts::said(texts::own(), word, &[]), choice.now == i);
                        let response = ui.selectable_label(chosen, &word);
                        let called = format!("{caption}, of {part}: {word}");
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
                let called = format!("{caption}, of {part}");
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
            if self.small(ui, "−", format!("fewer: {caption}, of {part}")) {
                to = now.saturating_sub(1);
            }
            let color = if is_said { self.look.ink } else { self.look.soft };
            let response = ui.label(RichText::new(counts.to_string()).color(color));
            response.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("{counts}: {caption}, of {part}")));
            if self.small(ui, "+", format!("more: {caption}, of {part}")) {
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
            self.formula(ui, Address::nth(part.clone(), field, many), &format!("{caption}{number}"), hint);
            let called = format!("take out: {caption}{number}");
            if self.small(ui, "Take it out", called) {
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
