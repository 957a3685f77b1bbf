//! The room in which a person says how the window looks. Every change is seen at once.

use egui::{Frame, Margin, RichText, Role, ScrollArea, Slider, Ui, WidgetInfo};

use super::look::{self, Look, letters};
use super::own::OwnWish;
use super::state::{Shown, Wish};
use super::{help, screen};
use crate::base::Severity;
use crate::session::{Act, LightWish, Preferences, Spacing};

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    let now = &shown.own.preferences;
    let mut next = now.clone();
    Frame::new().fill(look.sheet).inner_margin(Margin::same(18)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        ui.horizontal(|ui| {
            ui.label(RichText::new("Preferences").font(letters(look::LARGE)).color(look.ink));
            help::question(ui, "preferences", "preferences", wishes);
            if ui.button("Show the pieces").clicked() {
                wishes.push(Wish::Act(Act::Preferences));
            }
        });
        let words = "Your own, on this computer. No number of a draft hangs on them.";
        ui.label(RichText::new(words).color(look.soft));
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            looks(ui, look, &mut next);
            measured(ui, look, now, &mut next, wishes);
        });
    });
    if next != *now {
        wishes.push(Wish::Own(OwnWish::Prefer(next)));
    }
}

fn heading(ui: &mut Ui, look: &Look, words: &str) {
    ui.add_space(14.0);
    ui.label(RichText::new(words).color(look.ink).strong());
}

/// One of several words.
fn one_of<T: PartialEq + Copy>(ui: &mut Ui, of: &str, all: &[(T, &str)], chosen: &mut T) {
    ui.horizontal_wrapped(|ui| {
        for (value, word) in all {
            let on = *chosen == *value;
            let response = ui.selectable_label(on, *word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, format!("{of}: {word}")));
            if response.clicked() {
                *chosen = *value;
            }
        }
    });
}

fn looks(ui: &mut Ui, look: &Look, next: &mut Preferences) {
    heading(ui, look, "Light or dark");
    let all = [(LightWish::System, "as the system"), (LightWish::Light, "light"), (LightWish::Dark, "dark")];
    one_of(ui, "look", &all, &mut next.light);
    heading(ui, look, "Size of text");
    let sizes = [80, 90, 100, 110, 125, 150, 175, 200].map(|t: u32| (t, format!("{t} %")));
    let sizes: Vec<(u32, &str)> = sizes.iter().map(|(t, word)| (*t, word.as_str())).collect();
    one_of(ui, "text", &sizes, &mut next.text);
    heading(ui, look, "Spacing");
    let all = [(Spacing::Dense, "dense"), (Spacing::Usual, "usual"), (Spacing::Roomy, "roomy")];
    one_of(ui, "spacing", &all, &mut next.spacing);
    heading(ui, look, "Colours");
    ui.checkbox(&mut next.contrast, "High contrast");
    ui.checkbox(&mut next.apart, "Colours for colour-blind eyes");
    ui.horizontal_wrapped(|ui| {
        for severity in [Severity::Error, Severity::Warning, Severity::Note] {
            let words = format!("{} {}", look::sign(severity), severity.word());
            ui.label(RichText::new(words).color(look.severity(severity)));
        }
        ui.label(RichText::new("  sizes:").color(look.soft));
        for i in 0..6 {
            let words = RichText::new(format!("{}", i + 1)).strong().color(look.size(Some(i as f32 / 5.0)));
            ui.label(words);
        }
    });
}

fn measured(ui: &mut Ui, look: &Look, now: &Preferences, next: &mut Preferences, wishes: &mut Vec<Wish>) {
    heading(ui, look, "True scale");
    let words = "Lay a bank card on the outline, or a ruler on the bar below it, and make them as long. A bank card is \
                 85.60 mm wide (ISO/IEC 7810, ID-1).";
    ui.label(RichText::new(words).color(look.soft));
    let per_mm = screen::points_per_mm(ui.ctx(), now) * f64::from(ui.ctx().pixels_per_point());
    ui.horizontal(|ui| {
        let mut value = per_mm;
        ui.spacing_mut().slider_width = 260.0;
        ui.visuals_mut().widgets.inactive.bg_fill = look.border;
        let slider = ui.add(Slider::new(&mut value, 2.0..=16.0).logarithmic(true).show_value(false));
        slider.widget_info(|| WidgetInfo::labeled(Role::Slider, true, "px in a millimetre"));
        if slider.changed() {
            next.screen = (value * 1_000.0).round() as u32;
        }
        screen::buttons(ui, now, wishes);
    });
    let state = match now.screen {
        0 => format!("not measured: {:.1} px to the inch are taken", per_mm * 25.4),
        _ => format!("measured: {:.3} px in a millimetre, {:.1} to the inch", per_mm, per_mm * 25.4),
    };
    ui.horizontal(|ui| {
        ui.label(RichText::new(state).color(look.ink));
        if now.screen != 0 && ui.small_button("Forget the measuring").clicked() {
            next.screen = 0;
        }
    });
    ui.add_space(6.0);
    screen::card(ui, look, now);
    ui.add_space(6.0);
    screen::bar(ui, look, 100.0, now);
    ui.label(RichText::new("100 mm").font(letters(look::SMALL)).color(look.soft));
}
