//! Colours and letters of the window: warm paper, ink, and a row of colours for sizes that is never the only difference.

use std::sync::Arc;

use eframe::egui::{self, Color32, FontData, FontDefinitions, FontFamily, Visuals};

/// A colour of the window.
pub(super) type Colour = Color32;

/// Colours of the canvas.
pub(super) struct Colours {
    pub paper: Colour,
    pub ink: Colour,
    pub words: Colour,
    pub wrong: Colour,
}

/// Colours by light and dark.
pub(super) fn colours(dark: bool) -> Colours {
    if dark {
        Colours {
            paper: Color32::from_rgb(38, 40, 44),
            ink: Color32::from_rgb(122, 214, 172),
            words: Color32::from_rgb(232, 228, 216),
            wrong: Color32::from_rgb(255, 150, 120),
        }
    } else {
        Colours {
            paper: Color32::from_rgb(253, 252, 247),
            ink: Color32::from_rgb(24, 92, 68),
            words: Color32::from_rgb(44, 44, 40),
            wrong: Color32::from_rgb(176, 48, 16),
        }
    }
}

/// From small to large: teal, olive, ochre, brick.
pub(super) fn size_colour(i: usize, many: usize, dark: bool) -> Colour {
    const ROW: [[f32; 3]; 4] = [[44.0, 120.0, 150.0], [110.0, 140.0, 70.0], [190.0, 140.0, 60.0], [196.0, 92.0, 80.0]];
    let at = if many < 2 { 0.0 } else { i as f32 / (many - 1) as f32 * 3.0 };
    let (from, share) = ((at.floor() as usize).min(2), at - at.floor().min(2.0));
    let mix = |k: usize| {
        let v = ROW[from][k] + (ROW[from + 1][k] - ROW[from][k]) * share;
        (if dark { v * 0.8 + 50.0 } else { v }) as u8
    };
    Color32::from_rgb(mix(0), mix(1), mix(2))
}

/// Sets letters and colours once.
pub(super) fn dress(context: &egui::Context) {
    // Paper is light where the system does not say.
    context.options_mut(|o| o.fallback_theme = egui::Theme::Light);
    let mut fonts = FontDefinitions::default();
    let inter = include_bytes!("../../assets/fonts/Inter-Regular.otf");
    fonts.font_data.insert("Inter".to_owned(), Arc::new(FontData::from_static(inter)));
    if let Some(list) = fonts.families.get_mut(&FontFamily::Proportional) {
        list.insert(0, "Inter".to_owned());
    }
    context.set_fonts(fonts);
    let mut light = Visuals::light();
    light.panel_fill = Color32::from_rgb(246, 242, 233);
    light.override_text_color = Some(Color32::from_rgb(44, 44, 40));
    light.weak_text_color = Some(Color32::from_rgb(92, 88, 76));
    light.selection.bg_fill = Color32::from_rgb(196, 224, 210);
    light.selection.stroke.color = Color32::from_rgb(16, 60, 44);
    context.set_visuals_of(egui::Theme::Light, light);
    let mut dark = Visuals::dark();
    dark.override_text_color = Some(Color32::from_rgb(232, 228, 216));
    dark.weak_text_color = Some(Color32::from_rgb(180, 176, 164));
    context.set_visuals_of(egui::Theme::Dark, dark);
}
