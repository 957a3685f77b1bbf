//! Numbers that nobody typed yet: which row, which size, what is proposed; confirmed one by one, by row or all, or typed over.

use egui::{Button, RichText, ScrollArea, Ui};

use super::sight::{Sight, guess_of};
use crate::app::field::{self, Form};
use crate::app::look::{self, Look, letters};
use crate::app::state::{Field, Shown, Wish};
use crate::base::Code;
use crate::session::{Act, ChartCommand, Command};
use crate::texts::say;

/// The most lines that are listed at once; those that were confirmed make room for the next.
const MOST: usize = 200;

/// A line of the list.
struct Line {
    row: String,
    size: String,
    guess: Option<String>,
    beyond: bool,
}

/// Paints the page.
pub(super) fn show(ui: &mut Ui, look: &Look, sight: &Sight<'_>, shown: &Shown, wishes: &mut Vec<Wish>) {
    let lines = lines(sight, shown);
    let guesses = lines.iter().filter(|l| l.guess.is_some()).count();
    let words = if lines.is_empty() { say!("chart-none-waiting") } else { say!("chart-waiting") };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    if guesses > 0
        && ui.button(say!("chart-confirm-all", count = guesses)).on_hover_text(Act::Confirm.action().what()).clicked()
    {
        wishes.push(Wish::Act(Act::Confirm));
    }
    ScrollArea::vertical().id_salt("proposals").auto_shrink([false, false]).show(ui, |ui| {
        let mut row = "";
        for line in lines.iter().take(MOST) {
            if line.row != row {
                row = &line.row;
                let own = lines.iter().filter(|l| l.row == row && l.guess.is_some()).count();
                ui.add_space(6.0);
                ui.horizontal(|ui| {
                    ui.label(RichText::new(row).font(letters(look::TEXT)).color(look.ink));
                    if own > 0 && ui.small_button(say!("chart-confirm-row", count = own, row)).clicked() {
                        confirm(wishes, row, "");
                    }
                });
            }
            ui.horizontal(|ui| one(ui, look, sight, shown, line, wishes));
        }
        if lines.len() > MOST {
            ui.label(RichText::new(say!("chart-more", count = lines.len() - MOST)).color(look.soft));
        }
    });
}

fn one(ui: &mut Ui, look: &Look, sight: &Sight<'_>, shown: &Shown, line: &Line, wishes: &mut Vec<Wish>) {
    ui.add_space(18.0);
    ui.add_sized([90.0, look.row], egui::Label::new(RichText::new(&line.size).color(look.ink)).truncate());
    let field = Field::Cell(line.row.clone(), line.size.clone());
    let rows = &sight.scene.draft().chart.rows;
    let text = rows.iter().find(|r| r.name == line.row).and_then(|r| r.cells.iter().find(|c| c.0 == line.size));
    let called = say!("chart-cell", row = &*line.row, column = &*line.size);
    let hint = line.guess.as_ref().map_or_else(|| say!("chart-missing"), |g| format!("{g}?"));
    let form = Form { called: &called, hint: &hint, width: 110.0, formula: false, choose_all: true, lines: 0 };
    field::line(ui, shown, field, text.map_or("", |c| c.1.as_str()), form, wishes);
    if line.guess.is_some() {
        let button = Button::new(say!("chart-confirm")).small();
        let response = ui.add(button);
        let called = say!("chart-confirm-cell", row = &*line.row, size = &*line.size);
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, called.as_str()));
        if response.clicked() {
            confirm(wishes, &line.row, &line.size);
        }
        let words = if line.beyond { say!("chart-beyond") } else { say!("chart-between") };
        ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    }
}

fn confirm(wishes: &mut Vec<Wish>, row: &str, size: &str) {
    let confirm = ChartCommand::Confirm(row.to_owned(), size.to_owned());
    wishes.push(Wish::Run(Command::Chart(confirm)));
}

/// In the order of the chart. The place that is typed in stays until it is left.
fn lines(sight: &Sight<'_>, shown: &Shown) -> Vec<Line> {
    let typed = match shown.typing.as_ref().map(|t| &t.field) {
        Some(Field::Cell(row, size)) => Some((row.as_str(), size.as_str())),
        _ => None,
    };
    let mut out = Vec::new();
    for section in &sight.sections {
        for row in &section.rows {
            let own: Vec<_> = sight.waiting.iter().filter(|(r, ..)| *r == row.name).collect();
            if own.is_empty() && typed.is_none_or(|(r, _)| r != row.name) {
                continue;
            }
            for column in &section.columns {
                let found = own.iter().find(|(_, size, _)| *size == column.name()).map(|(_, _, f)| *f);
                if found.is_none() && typed != Some((row.name.as_str(), column.name())) {
                    continue;
                }
                out.push(Line {
                    row: row.name.clone(),
                    size: column.name().to_owned(),
                    guess: found.and_then(|f| guess_of(f)).map(str::to_owned),
                    beyond: found.is_some_and(|f| f.code == Code::CellBeyond),
                });
            }
        }
    }
    out
}
