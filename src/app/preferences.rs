//! The room in which a person says how the window looks. Every change is seen at once.

use egui::{Frame, Margin, RichText, Role, ScrollArea, Slider, Ui, WidgetInfo};

use super::look::{self, Look, letters};
use super::own::OwnWish;
use super::state::{Shown, Wish};
use super::{help, screen};
use crate::base::{Language, Severity};
use crate::session::{Act, LightWish, Preferences, Spacing};
use crate::texts::{self, decimal, owned, say};

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    let now = &shown.own.preferences;
    let mut next = now.clone();
    Frame::new().fill(look.sheet).inner_margin(Margin::same(18)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        ui.horizontal(|ui| {
            ui.label(RichText::new(say!("prefer-title")).font(letters(look::LARGE)).color(look.ink));
            help::question(ui, &say!("prefer-about"), "preferences", wishes);
            if ui.button(say!("show-the-pieces")).clicked() {
                wishes.push(Wish::Act(Act::Preferences));
            }
        });
        ui.label(RichText::new(say!("prefer-note")).color(look.soft));
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            language(ui, look, &mut next);
            looks(ui, look, &mut next);
            measured(ui, look, now, &mut next, wishes);
        });
    });
    if next != *now {
        wishes.push(Wish::Own(OwnWish::Prefer(next)));
    }
}

fn heading(ui: &mut Ui, look: &Look, words: String) {
    ui.add_space(14.0);
    ui.label(RichText::new(words).color(look.ink).strong());
}

/// One of several words.
fn one_of<T: PartialEq + Copy>(ui: &mut Ui, of: &str, all: &[(T, String)], chosen: &mut T) {
    ui.horizontal_wrapped(|ui| {
        for (value, word) in all {
            let on = *chosen == *value;
            let response = ui.selectable_label(on, word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, say!("prefer-called", of, word)));
            if response.clicked() {
                *chosen = *value;
            }
        }
    });
}

/// The language of the window. Each is named in itself, so that it is found whatever is spoken now.
fn language(ui: &mut Ui, look: &Look, next: &mut Preferences) {
    heading(ui, look, say!("prefer-language"));
    ui.label(RichText::new(say!("prefer-language-note")).color(look.soft));
    let all: Vec<(Option<Language>, String)> = std::iter::once((None, say!("prefer-as-system")))
        .chain(Language::ALL.map(|language| (Some(language), language.own_name().to_owned())))
        .collect();
    one_of(ui, &say!("prefer-language-called"), &all, &mut next.language);
}

fn looks(ui: &mut Ui, look: &Look, next: &mut Preferences) {
    heading(ui, look, say!("prefer-light"));
    let all = [
        (LightWish::System, say!("prefer-as-system")),
        (LightWish::Light, say!("prefer-is-light")),
        (LightWish::Dark, say!("prefer-is-dark")),
    ];
    one_of(ui, &say!("prefer-light-called"), &all, &mut next.light);
    heading(ui, look, say!("prefer-text"));
    let sizes = [80, 90, 100, 110, 125, 150, 175, 200].map(|t: u32| (t, format!("{t} %")));
    one_of(ui, &say!("prefer-text-called"), &sizes, &mut next.text);
    heading(ui, look, say!("prefer-spacing"));
    let all = [
        (Spacing::Dense, say!("prefer-dense")),
        (Spacing::Usual, say!("prefer-usual")),
        (Spacing::Roomy, say!("prefer-roomy")),
    ];
    one_of(ui, &say!("prefer-spacing-called"), &all, &mut next.spacing);
    heading(ui, look, say!("prefer-colours"));
    ui.checkbox(&mut next.contrast, say!("prefer-contrast"));
    ui.checkbox(&mut next.apart, say!("prefer-apart"));
    ui.horizontal_wrapped(|ui| {
        for severity in [Severity::Error, Severity::Warning, Severity::Note] {
            let words = format!("{} {}", look::sign(severity), texts::severity(severity));
            ui.label(RichText::new(words).color(look.severity(severity)));
        }
        ui.label(RichText::new(format!("  {}", say!("prefer-sizes"))).color(look.soft));
        for i in 0..6 {
            let words = RichText::new(format!("{}", i + 1)).strong().color(look.size(Some(i as f32 / 5.0)));
            ui.label(words);
        }
    });
}

fn measured(ui: &mut Ui, look: &Look, now: &Preferences, next: &mut Preferences, wishes: &mut Vec<Wish>) {
    heading(ui, look, say!("prefer-scale"));
    ui.label(RichText::new(say!("prefer-scale-note")).color(look.soft));
    let per_mm = screen::points_per_mm(ui.ctx(), now) * f64::from(ui.ctx().pixels_per_point());
    ui.horizontal(|ui| {
        let mut value = per_mm;
        ui.spacing_mut().slider_width = 260.0;
        ui.visuals_mut().widgets.inactive.bg_fill = look.border;
        let slider = ui.add(Slider::new(&mut value, 2.0..=16.0).logarithmic(true).show_value(false));
        slider.widget_info(|| WidgetInfo::labeled(Role::Slider, true, say!("prefer-pixels")));
        if slider.changed() {
            next.screen = (value * 1_000.0).round() as u32;
        }
        screen::buttons(ui, now, wishes);
    });
    let inch = owned(|| decimal(&format!("{:.1}", per_mm * 25.4)));
    let state = match now.screen {
        0 => say!("prefer-unmeasured", inch),
        _ => say!("prefer-measured", millimetre = owned(|| decimal(&format!("{per_mm:.3}"))), inch),
    };
    ui.horizontal(|ui| {
        ui.label(RichText::new(state).color(look.ink));
        if now.screen != 0 && ui.small_button(say!("prefer-forget")).clicked() {
            next.screen = 0;
        }
    });
    ui.add_space(6.0);
    screen::card(ui, look, now);
    ui.add_space(6.0);
    screen::bar(ui, look, 100.0, now);
    ui.label(RichText::new("100 mm").font(letters(look::SMALL)).color(look.soft));
}
