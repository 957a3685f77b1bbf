//! Numbers that nobody typed yet: which row, which size, what is proposed; confirmed one by one, by row or all, or typed over.

use egui::{Button, RichText, ScrollArea, Ui};

use super::sight::{Sight, guess_of};
use crate::app::field::{self, Form};
use crate::app::look::{self, Look, letters};
use crate::app::state::{Field, Shown, Wish};
use crate::base::Code;
use crate::session::{Act, ChartCommand, Command};

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
    let words = match (lines.len(), guesses) {
        (0, _) => "Every number of the chart was typed or follows from a formula: nothing waits to be confirmed.".to_owned(),
        _ => "These sizes have no number of their own yet. What is proposed lies evenly between the neighbours, or goes on with \
              the last step; the pieces are drawn with it. Confirm it, or type the measured number."
            .to_owned(),
    };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    if guesses > 0 && ui.button(format!("Confirm all {guesses}")).on_hover_text(Act::Confirm.action().what()).clicked()
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
                    if own > 0 && ui.small_button(format!("Confirm {own} of {row}")).clicked() {
                        confirm(wishes, row, "");
                    }
                });
            }
            ui.horizontal(|ui| one(ui, look, sight, shown, line, wishes));
        }
        if lines.len() > MOST {
            ui.label(RichText::new(format!("and {} more", lines.len() - MOST)).color(look.soft));
        }
    });
}

fn one(ui: &mut Ui, look: &Look, sight: &Sight<'_>, shown: &Shown, line: &Line, wishes: &mut Vec<Wish>) {
    ui.add_space(18.0);
    ui.add_sized([90.0, look.row], egui::Label::new(RichText::new(&line.size).color(look.ink)).truncate());
    let field = Field::Cell(line.row.clone(), line.size.clone());
    let rows = &sight.scene.draft().chart.rows;
    let text = rows.iter().find(|r| r.name == line.row).and_then(|r| r.cells.iter().find(|c| c.0 == line.size));
    let called = format!("{} in {}", line.row, line.size);
    let hint = line.guess.as_ref().map_or_else(|| "missing".to_owned(), |g| format!("{g}?"));
    let form = Form { called: &called, hint: &hint, width: 110.0, formula: false, choose_all: true, lines: 0 };
    field::line(ui, shown, field, text.map_or("", |c| c.1.as_str()), form, wishes);
    if line.guess.is_some() {
        let button = Button::new("Confirm").small();
        let response = ui.add(button);
        response.widget_info(|| {
            egui::WidgetInfo::labeled(egui::Role::Button, true, format!("confirm {} in {}", line.row, line.size))
        });
        if response.clicked() {
            confirm(wishes, &line.row, &line.size);
        }
        let words = if line.beyond { "beyond the numbers that were typed" } else { "between two numbers" };
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
