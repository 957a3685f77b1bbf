//! The window. In this first form it shows a draft: its pieces in every size, the chosen one strong, and its findings.
//!
//! Nothing can be changed in it yet; reading, computing and judging are the engine's.

mod canvas;
mod look;
mod shown;

use std::path::Path;

use eframe::egui;

use crate::document::Draft;
use canvas::Canvas;
use shown::Shown;

/// Opens the window and returns when it is closed.
///
/// # Errors
/// In words, where no window can be opened: no display, no graphics.
pub fn show(file: Option<&Path>, draft: Option<Draft>) -> Result<(), String> {
    let title = match (file, &draft) {
        (Some(file), Some(draft)) if draft.title.is_empty() => format!("{} · Tracewheel", file.display()),
        (_, Some(draft)) => format!("{} · Tracewheel", draft.title),
        _ => "Tracewheel".to_owned(),
    };
    let shown =
        draft.map(|draft| Shown::of(&draft).map_err(|f| crate::base::message(&f, draft.display))).transpose()?;
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default().with_inner_size([1400.0, 900.0]).with_min_inner_size([640.0, 420.0]),
        ..eframe::NativeOptions::default()
    };
    let create: eframe::AppCreator<'_> = Box::new(move |context| {
        look::dress(&context.egui_ctx);
        Ok(Box::new(Window { shown, canvas: Canvas::default(), others: true }))
    });
    eframe::run_native(&title, options, create).map_err(|e| match e {
        eframe::Error::WinitEventLoop(_) | eframe::Error::Winit(_) => "there is no display".to_owned(),
        other => other.to_string(),
    })
}

struct Window {
    shown: Option<Shown>,
    canvas: Canvas,
    /// Whether the sizes that are not chosen are drawn too.
    others: bool,
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        let Some(shown) = &mut self.shown else {
            egui::CentralPanel::default().show(ui, |ui| {
                ui.add_space(40.0);
                ui.vertical_centered(|ui| {
                    ui.heading("No draft is open");
                    ui.label("Start with a file, as in `tracewheel examples/bodice-sleeve.ron`.");
                });
            });
            return;
        };
        let step = ui.input(|i| {
            i32::from(i.key_pressed(egui::Key::ArrowRight)) - i32::from(i.key_pressed(egui::Key::ArrowLeft))
        });
        if step != 0 {
            shown.step(step);
        }
        egui::Panel::top("sizes").show(ui, |ui| {
            ui.add_space(6.0);
            ui.horizontal_wrapped(|ui| {
                ui.strong(&shown.title);
                ui.add_space(12.0);
                for i in 0..shown.sizes.len() {
                    let base = if shown.base == Some(i) { " ●" } else { "" };
                    let text = format!("{}{base}", shown.sizes[i].label);
                    let button = ui.selectable_label(shown.chosen == i, text);
                    let hint = if shown.base == Some(i) { "the base size" } else { "show this size" };
                    if button.on_hover_text(hint).clicked() {
                        shown.chosen = i;
                    }
                }
                ui.add_space(12.0);
                ui.checkbox(&mut self.others, "all sizes");
                if ui.button("Fit").on_hover_text("show everything (F)").clicked()
                    || ui.input(|i| i.key_pressed(egui::Key::F))
                {
                    self.canvas.fit();
                }
            });
            ui.add_space(6.0);
        });
        egui::Panel::bottom("proof").resizable(true).default_size(132.0).show(ui, |ui| {
            ui.add_space(4.0);
            ui.horizontal_wrapped(|ui| {
                ui.strong("Proof");
                ui.label(&shown.counts);
            });
            egui::ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
                for line in &shown.findings {
                    ui.label(line);
                }
                ui.weak(&shown.looked_at);
            });
        });
        egui::CentralPanel::default().show(ui, |ui| self.canvas.show(ui, shown, self.others));
    }
}
