//! The findings at the bottom: how many there are, and what the first of them say.

use egui::text::LayoutJob;
use egui::{Align, Button, Layout, RichText, ScrollArea, TextFormat, Ui, vec2};

use super::look::{self, Look, letters};
use super::opened::Opened;
use super::{Shown, Wish};
use crate::base::{Finding, Severity, message};
use crate::proof::looked_at;

/// How many are told without being asked.
const FIRST: usize = 3;
/// The most that are listed.
const MOST: usize = 300;
/// The most height that they take, as a part of the window's; more of them scroll.
const MOST_HEIGHT: f32 = 0.35;
/// Width of the column of severities, px.
const COLUMN: f32 = 84.0;

/// Paints the findings.
pub(super) fn show(ui: &mut Ui, look: &Look, opened: &Opened, shown: &Shown, wishes: &mut Vec<Wish>) {
    let open: Vec<&Finding> = opened.findings.iter().filter(|f| f.silenced.is_none()).collect();
    let silenced = opened.findings.len() - open.len();
    let head = vec2(ui.available_width(), look::HEAD);
    ui.allocate_ui_with_layout(head, Layout::right_to_left(Align::Center), |ui| {
        if open.len() > FIRST {
            let word =
                if shown.all_findings { "First findings".to_owned() } else { format!("All {} findings", open.len()) };
            let button = Button::new(word).corner_radius(look::ROUND).min_size(vec2(0.0, look::BUTTON));
            if ui.add(button).clicked() {
                wishes.push(Wish::AllFindings(!shown.all_findings));
            }
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ui.label(RichText::new("Findings").font(letters(look::LARGE)).color(look.ink));
            ui.add_space(6.0);
            let counts = opened.counts;
            for (many, severity) in
                [(counts.errors, Severity::Error), (counts.warnings, Severity::Warning), (counts.notes, Severity::Note)]
            {
                let color = if many > 0 { look.severity(severity) } else { look.soft };
                let plural = if many == 1 { "" } else { "s" };
                ui.label(RichText::new(format!("{} {many} {}{plural}", sign(severity), severity.word())).color(color));
            }
            if silenced > 0 {
                ui.label(RichText::new(format!("{silenced} silenced")).color(look.soft));
            }
        });
    });
    let most = ui.ctx().content_rect().height() * MOST_HEIGHT;
    if open.is_empty() {
        ui.label(RichText::new("✓ Nothing was found.").color(look.ink));
    } else {
        let many = if shown.all_findings { MOST } else { FIRST };
        ScrollArea::vertical().max_height(most).min_scrolled_height(most).show(ui, |ui| {
            ui.set_min_width(ui.available_width());
            for finding in open.iter().take(many) {
                line(ui, look, opened, finding);
            }
            if shown.all_findings && open.len() > MOST {
                let rest = open.len() - MOST;
                ui.label(
                    RichText::new(format!("and {rest} more: the command `proof` lists all of them")).color(look.soft),
                );
            }
        });
    }
    let looked = RichText::new(capital(&looked_at(&opened.model))).font(letters(look::SMALL)).color(look.soft);
    ui.label(looked);
}

/// One finding: its severity in a column, its words beside it, wrapped.
fn line(ui: &mut Ui, look: &Look, opened: &Opened, finding: &Finding) {
    let severity = finding.severity();
    ui.horizontal_top(|ui| {
        let word = RichText::new(format!("{} {}", sign(severity), severity.word())).color(look.severity(severity));
        ui.allocate_ui_with_layout(vec2(COLUMN, 0.0), Layout::left_to_right(Align::Min), |ui| {
            ui.set_min_width(COLUMN);
            ui.label(word);
        });
        ui.vertical(|ui| {
            let mut text = LayoutJob::default();
            if !finding.place.name.is_empty() {
                let name = format!("{}: ", finding.place.name);
                text.append(&name, 0.0, TextFormat::simple(letters(look::TEXT), look.soft));
            }
            let said = message(finding, opened.draft.display);
            text.append(&said, 0.0, TextFormat::simple(letters(look::TEXT), look.ink));
            ui.label(text);
        });
    });
}

/// Severities are told apart by shape too.
fn sign(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "■",
        Severity::Warning => "▲",
        Severity::Note => "●",
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
