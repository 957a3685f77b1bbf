//! The findings at the bottom: how many there are, and what the first of them say.

use egui::text::LayoutJob;
use egui::{
    Align, Button, CornerRadius, Label, Layout, RichText, Role, ScrollArea, Sense, TextFormat, Ui, WidgetInfo, vec2,
};

use super::look::{self, Look, letters, sign};
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use super::{guide, help};
use crate::base::{Finding, Severity};
use crate::proof::looked_at;
use crate::session::Act;
use crate::texts::{self, message, say};

/// How many are told without being asked.
const FIRST: usize = 3;
/// The most that are listed.
const MOST: usize = 300;
/// Height of the last line, px.
const LAST: f32 = 20.0;
/// Width of the column of severities, px.
const COLUMN: f32 = 84.0;

/// Paints the findings.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let open: Vec<(usize, &Finding)> = scene.findings().collect();
    let silenced = scene.computed.findings.len() - open.len();
    let head = vec2(ui.available_width(), look::HEAD);
    ui.allocate_ui_with_layout(head, Layout::right_to_left(Align::Center), |ui| {
        help::question(ui, &say!("proof-list-about"), "proof", wishes);
        if open.len() > FIRST {
            let word =
                if shown.all_findings { say!("proof-list-first") } else { say!("proof-list-all", count = open.len()) };
            let button = Button::new(word).corner_radius(look::ROUND).min_size(vec2(0.0, look::BUTTON));
            if ui.add(button).clicked() {
                wishes.push(Wish::Act(Act::AllFindings));
            }
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ui.label(RichText::new(say!("proof-list-title")).font(letters(look::LARGE)).color(look.ink));
            ui.add_space(6.0);
            if shown.room == Room::Welcome {
                ui.label(RichText::new(say!("proof-list-nothing-yet")).color(look.soft));
                return;
            }
            let counts = scene.computed.counts;
            for (many, severity) in
                [(counts.errors, Severity::Error), (counts.warnings, Severity::Warning), (counts.notes, Severity::Note)]
            {
                let color = if many > 0 { look.severity(severity) } else { look.soft };
                ui.label(RichText::new(format!("{} {}", sign(severity), counted(many, severity))).color(color));
            }
            if silenced > 0 {
                ui.label(RichText::new(say!("proof-list-silenced", count = silenced)).color(look.soft));
            }
        });
    });
    if shown.room == Room::Welcome {
        return;
    }
    let most = (ui.available_height() - LAST).max(20.0);
    if open.is_empty() {
        ui.label(RichText::new(format!("✓ {}", say!("proof-list-none"))).color(look.ink));
    } else {
        let many = if shown.all_findings { MOST } else { FIRST };
        ScrollArea::vertical().max_height(most).min_scrolled_height(most).auto_shrink([false, true]).show(ui, |ui| {
            ui.set_min_width(ui.available_width());
            let from = match shown.finding.and_then(|f| open.iter().position(|(i, _)| *i == f)) {
                // The one that was gone to is among those that are seen.
                Some(at) if !shown.all_findings => at.saturating_sub(FIRST - 1),
                _ => 0,
            };
            for (i, finding) in open.iter().skip(from).take(many) {
                line(ui, look, scene, shown, (*i, finding), wishes);
            }
            if shown.all_findings && open.len() > MOST {
                let rest = say!("proof-list-rest", count = open.len() - MOST);
                ui.label(RichText::new(rest).color(look.soft));
            }
        });
    }
    if let Some(model) = scene.model() {
        let looked =
            RichText::new(capital(&looked_at(scene.draft(), model))).font(letters(look::SMALL)).color(look.soft);
        ui.label(looked);
    }
}

/// So many findings of a severity.
fn counted(many: usize, severity: Severity) -> String {
    match severity {
        Severity::Error => say!("proof-list-errors", count = many),
        Severity::Warning => say!("proof-list-warnings", count = many),
        Severity::Note => say!("proof-list-notes", count = many),
    }
}

/// One finding: its severity in a column, its words beside it, wrapped.
fn line(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    (i, finding): (usize, &Finding),
    wishes: &mut Vec<Wish>,
) {
    let chosen = shown.finding == Some(i);
    let severity = finding.severity();
    let said = message(finding, scene.draft().display);
    let called = format!("{}: {}{said}", texts::severity(severity), place(finding));
    let response = ui
        .scope(|ui| {
            ui.horizontal_top(|ui| {
                let word = RichText::new(format!("{} {}", sign(severity), texts::severity(severity)));
                ui.allocate_ui_with_layout(vec2(COLUMN, 0.0), Layout::left_to_right(Align::Min), |ui| {
                    ui.set_min_width(COLUMN);
                    ui.label(word.color(look.severity(severity)));
                });
                ui.vertical(|ui| {
                    let mut text = LayoutJob::default();
                    text.append(&place(finding), 0.0, TextFormat::simple(letters(look::TEXT), look.soft));
                    text.append(&said, 0.0, TextFormat::simple(letters(look::TEXT), look.ink));
                    ui.add(Label::new(text).selectable(false));
                });
            });
        })
        .response;
    // The whole line leads to the place it speaks of.
    let response = ui.interact(response.rect, egui::Id::unique(("finding", i)), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
    if chosen {
        guide::mark(ui, shown, Act::NextFinding, &response);
    }
    if chosen || response.hovered() || response.has_focus() {
        let line = egui::Stroke::new(1.0, if chosen { look.ink } else { look.border });
        let rect = response.rect.expand2(vec2(4.0, 1.0));
        ui.painter().rect_stroke(rect, CornerRadius::same(4), line, egui::StrokeKind::Inside);
    }
    if response.clicked() {
        wishes.push(Wish::Finding(i));
    }
}

/// What a finding speaks of.
fn place(finding: &Finding) -> String {
    match finding.place.name.as_str() {
        "" => String::new(),
        name => format!("{name}: "),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
