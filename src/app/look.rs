//! Colours, letters and measures of the window: warm paper and ink, by day and by night.
//!
//! Every pair of text and ground holds a contrast of at least 4.5 : 1 (WCAG 2.1, 1.4.3). What is painted where is left to
//! the rooms that paint.

use std::sync::Arc;

use egui::{
    Color32, Context, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Frame, Margin, Shadow, Stroke,
    TextStyle, Theme, ThemePreference, Visuals, style::ScrollStyle, vec2,
};

use super::palettes;
use crate::base::Severity;
use crate::session::{LightWish, Preferences, Spacing};

/// Roundness of buttons.
pub const ROUND: u8 = 13;
/// Height of buttons, px.
pub const BUTTON: f32 = 26.0;
/// Height of the line with a title and its buttons, px.
pub const HEAD: f32 = 28.0;
/// Line of the chosen size, px.
pub const STRONG: f32 = 2.5;
/// Line of a size that the pointer is asking for, px.
pub const ASKED: f32 = 1.75;
/// Line of any other size, px.
pub const THIN: f32 = 1.0;
/// Height of a line of the contents where things stand neither dense nor roomy, px.
const ROW: f32 = 24.0;
/// Letters of formulas, px.
pub const CODE: f32 = 13.0;
/// Small text, px.
pub const SMALL: f32 = 12.5;
/// Text, px.
pub const TEXT: f32 = 14.5;
/// Title and names of pieces, px.
pub const LARGE: f32 = 18.0;

/// The colours of one theme.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// What the sheet lies on.
    pub desk: Color32,
    /// Ground of strip and findings.
    pub panel: Color32,
    /// Ground of the drawing and of buttons.
    pub sheet: Color32,
    /// A button under the pointer.
    pub touched: Color32,
    /// Edges of sheet and buttons.
    pub border: Color32,
    /// The grid on the sheet.
    pub grid: Color32,
    /// Text.
    pub ink: Color32,
    /// Text that steps back.
    pub soft: Color32,
    /// Words of errors.
    pub error: Color32,
    /// Words of warnings.
    pub warning: Color32,
    /// Words of notes.
    pub note: Color32,
    /// Handles of curves.
    pub handle: Color32,
    /// A number that is about to change, on a ground of ink.
    pub number: Color32,
    /// Colours of the range, from the first size to the last.
    pub(super) sizes: [Color32; 6],
    /// Height of a line of the contents and the chart, px.
    pub row: f32,
}

pub(super) const DAY: Look = Look {
    desk: Color32::from_rgb(0xEA, 0xE6, 0xDC),
    panel: Color32::from_rgb(0xF7, 0xF4, 0xEA),
    sheet: Color32::from_rgb(0xFE, 0xFC, 0xF6),
    touched: Color32::from_rgb(0xEC, 0xE6, 0xD6),
    border: Color32::from_rgb(0xD3, 0xCC, 0xBC),
    grid: Color32::from_rgb(0xF1, 0xEE, 0xE4),
    ink: Color32::from_rgb(0x22, 0x2D, 0x38),
    soft: Color32::from_rgb(0x5C, 0x5F, 0x57),
    error: Color32::from_rgb(0xA1, 0x26, 0x2B),
    warning: Color32::from_rgb(0x86, 0x57, 0x00),
    note: Color32::from_rgb(0x24, 0x5B, 0x82),
    handle: Color32::from_rgb(0xB4, 0x4A, 0x22),
    number: Color32::from_rgb(0xFF, 0xC9, 0x9B),
    sizes: [
        Color32::from_rgb(0x20, 0x60, 0x8C),
        Color32::from_rgb(0x14, 0x74, 0x6C),
        Color32::from_rgb(0x3E, 0x75, 0x3A),
        Color32::from_rgb(0x7B, 0x6A, 0x12),
        Color32::from_rgb(0xA3, 0x54, 0x1C),
        Color32::from_rgb(0xB0, 0x34, 0x52),
    ],
    row: ROW,
};

pub(super) const NIGHT: Look = Look {
    desk: Color32::from_rgb(0x16, 0x1A, 0x1D),
    panel: Color32::from_rgb(0x1E, 0x24, 0x28),
    sheet: Color32::from_rgb(0x25, 0x2C, 0x31),
    touched: Color32::from_rgb(0x33, 0x3C, 0x42),
    border: Color32::from_rgb(0x45, 0x4F, 0x55),
    grid: Color32::from_rgb(0x2D, 0x35, 0x3A),
    ink: Color32::from_rgb(0xEF, 0xE9, 0xDC),
    soft: Color32::from_rgb(0xAE, 0xB3, 0xAD),
    error: Color32::from_rgb(0xFF, 0x9B, 0x90),
    warning: Color32::from_rgb(0xF0, 0xBF, 0x66),
    note: Color32::from_rgb(0x90, 0xC8, 0xEF),
    handle: Color32::from_rgb(0xFF, 0xA8, 0x7C),
    number: Color32::from_rgb(0x8A, 0x2F, 0x0C),
    sizes: [
        Color32::from_rgb(0x7F, 0xBA, 0xE8),
        Color32::from_rgb(0x6C, 0xCC, 0xBC),
        Color32::from_rgb(0x9D, 0xCC, 0x80),
        Color32::from_rgb(0xDA, 0xC3, 0x66),
        Color32::from_rgb(0xF0, 0xA4, 0x6E),
        Color32::from_rgb(0xF2, 0x94, 0xA4),
    ],
    row: ROW,
};

impl Look {
    /// The colours of a theme as a person wants them.
    pub fn of(theme: Theme, wanted: &Preferences) -> Self {
        let look = palettes::palette(theme, wanted.contrast, wanted.apart);
        Self { row: roomy(wanted, ROW, 5.0), ..look }
    }

    /// The colour of a size at this part of the range, 0 the first, 1 the last; ink for what is in no range.
    pub fn size(&self, part: Option<f32>) -> Color32 {
        let Some(part) = part else { return self.ink };
        let at = part.clamp(0.0, 1.0) * (self.sizes.len() - 1) as f32;
        let below = (at as usize).min(self.sizes.len() - 2);
        self.sizes[below].lerp_to_gamma(self.sizes[below + 1], at - below as f32)
    }

    /// A colour of lines, stepping back towards the sheet.
    pub fn faded(&self, line: Color32) -> Color32 {
        line.lerp_to_gamma(self.sheet, 0.35)
    }

    /// The colour of a finding's word.
    pub fn severity(&self, severity: Severity) -> Color32 {
        match severity {
            Severity::Error => self.error,
            Severity::Warning => self.warning,
            Severity::Note => self.note,
        }
    }

    /// The ground of a dialog.
    pub fn dialog(&self) -> Frame {
        let border = Stroke::new(1.0, self.border);
        Frame::new().fill(self.panel).inner_margin(Margin::same(18)).corner_radius(8).stroke(border)
    }

    /// What lies over the window while a dialog is open.
    pub fn backdrop(&self) -> Color32 {
        Color32::from_black_alpha(70)
    }

    /// The line of an edge under the pointer.
    pub fn touched_line(&self) -> Stroke {
        Stroke::new(STRONG + 1.5, self.handle.gamma_multiply(0.45))
    }

    /// The line of the chosen edge.
    pub fn chosen_line(&self) -> Stroke {
        Stroke::new(STRONG + 1.0, self.handle)
    }

    fn visuals(&self, theme: Theme) -> Visuals {
        let mut v = theme.default_visuals();
        let round = CornerRadius::same(ROUND);
        for (widget, ground, border) in [
            (&mut v.widgets.noninteractive, self.panel, self.border),
            (&mut v.widgets.inactive, self.sheet, self.border),
            (&mut v.widgets.hovered, self.touched, self.soft),
            (&mut v.widgets.active, self.touched, self.ink),
            (&mut v.widgets.open, self.touched, self.soft),
        ] {
            widget.bg_fill = ground;
            widget.weak_bg_fill = ground;
            widget.bg_stroke = Stroke::new(1.0, border);
            widget.fg_stroke = Stroke::new(1.0, self.ink);
            widget.corner_radius = round;
            widget.expansion = 0.0;
        }
        // A cursor that blinks costs time while nobody does anything.
        v.text_cursor.blink = false;
        v.selection.bg_fill = self.ink;
        v.selection.stroke = Stroke::new(1.5, self.sheet);
        v.weak_text_color = Some(self.soft);
        v.panel_fill = self.panel;
        v.window_fill = self.sheet;
        v.window_stroke = Stroke::new(1.0, self.border);
        v.window_shadow = Shadow::NONE;
        v.popup_shadow = Shadow::NONE;
        v.extreme_bg_color = self.sheet;
        v.faint_bg_color = self.desk;
        v.code_bg_color = self.touched;
        v.hyperlink_color = self.note;
        v.warn_fg_color = self.warning;
        v.error_fg_color = self.error;
        v
    }
}

/// Severities are told apart by shape too.
pub fn sign(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "■",
        Severity::Warning => "▲",
        Severity::Note => "●",
    }
}

/// Letters of formulas, of this size, px.
pub fn code(size: f32) -> FontId {
    FontId::monospace(size)
}

/// Letters of this size, px.
pub fn letters(size: f32) -> FontId {
    FontId::proportional(size)
}

/// A measure of the window, less or more by `by` where things stand dense or roomy, px.
fn roomy(wanted: &Preferences, usual: f32, by: f32) -> f32 {
    match wanted.spacing {
        Spacing::Dense => usual - by,
        Spacing::Usual => usual,
        Spacing::Roomy => usual + by,
    }
}

/// Gives the window its fonts and the usual preferences.
pub fn dress(ctx: &Context) {
    let mut fonts = FontDefinitions::default();
    let inter = FontData::from_static(include_bytes!("../../assets/fonts/Inter-Regular.otf"));
    fonts.font_data.insert("Inter".to_owned(), Arc::new(inter));
    // What Inter lacks comes from the fonts behind it.
    fonts.families.entry(FontFamily::Proportional).or_default().insert(0, "Inter".to_owned());
    ctx.set_fonts(fonts);
    ctx.options_mut(|o| {
        o.fallback_theme = Theme::Light;
        // How large text is, is a preference.
        o.zoom_with_keyboard = false;
    });
    wear(ctx, &Preferences::default());
}

/// Gives both themes what a person prefers. Which one is shown is said by them, else by the system, and is light where the
/// system does not say.
pub fn wear(ctx: &Context, wanted: &Preferences) {
    ctx.set_theme(match wanted.light {
        LightWish::System => ThemePreference::System,
        LightWish::Light => ThemePreference::Light,
        LightWish::Dark => ThemePreference::Dark,
    });
    ctx.set_zoom_factor(wanted.text as f32 / 100.0);
    for theme in [Theme::Light, Theme::Dark] {
        ctx.style_mut_of(theme, |style| {
            style.visuals = Look::of(theme, wanted).visuals(theme);
            style.text_styles.insert(TextStyle::Body, letters(TEXT));
            style.text_styles.insert(TextStyle::Button, letters(TEXT));
            style.text_styles.insert(TextStyle::Small, letters(SMALL));
            style.text_styles.insert(TextStyle::Heading, letters(LARGE));
            style.spacing.item_spacing = vec2(roomy(wanted, 8.0, 2.0), roomy(wanted, 6.0, 3.0));
            style.spacing.button_padding = vec2(roomy(wanted, 11.0, 3.0), roomy(wanted, 4.0, 2.0));
            style.spacing.interact_size.y = roomy(wanted, BUTTON, 4.0);
            // A bar that is always seen where there is more.
            style.spacing.scroll = ScrollStyle { foreground_color: true, ..ScrollStyle::solid() };
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Contrast of two colours, 1 to 21. Source: WCAG 2.1, "contrast ratio" and "relative luminance".
    fn contrast(a: Color32, b: Color32) -> f32 {
        let light = |c: Color32| {
            let c = egui::Rgba::from(c);
            0.2126 * c.r() + 0.7152 * c.g() + 0.0722 * c.b()
        };
        let (a, b) = (light(a), light(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn contrast_is_measured_as_the_source_says() {
        assert!((contrast(Color32::WHITE, Color32::BLACK) - 21.0).abs() < 0.01);
        // #767676 on white is the lightest grey that passes 4.5: 4.54 (WebAIM's published example).
        assert!((contrast(Color32::from_gray(0x76), Color32::WHITE) - 4.54).abs() < 0.01);
    }

    #[test]
    fn every_text_can_be_read_on_every_ground() {
        for (theme, contrasty, apart) in palettes::ALL {
            let look = palettes::palette(theme, contrasty, apart);
            let called = format!("{theme:?}, high contrast {contrasty}, apart {apart}");
            let least = if contrasty { 7.0 } else { 4.5 };
            for ground in [look.desk, look.panel, look.sheet, look.touched] {
                for text in [look.ink, look.soft, look.error, look.warning, look.note] {
                    let seen = contrast(text, ground);
                    assert!(seen >= least, "{called}: {text:?} on {ground:?}: {seen:.2}");
                }
            }
            assert!(contrast(look.number, look.ink) >= 4.5, "{called}: a number in the words at the pointer");
            for step in 0..=100 {
                let size = look.size(Some(step as f32 / 100.0));
                assert!(contrast(look.sheet, size) >= 4.5, "{called}: a chosen size at {step} %");
                let line = look.faded(size);
                assert!(contrast(look.sheet, line) >= 2.4, "{called}: a thin line at {step} %");
            }
        }
    }

    #[test]
    fn spacing_changes_the_lines_and_nothing_else() {
        let of = |spacing| Look::of(Theme::Light, &Preferences { spacing, ..Preferences::default() });
        let (dense, usual, roomy) = (of(Spacing::Dense), of(Spacing::Usual), of(Spacing::Roomy));
        assert!(dense.row < usual.row && usual.row < roomy.row);
        assert_eq!(Look { row: ROW, ..dense }, Look { row: ROW, ..roomy });
    }
}
