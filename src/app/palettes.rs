//! The colours that a person can choose beside the usual ones: higher contrast, and colours that stay apart for colour-blind eyes.
//!
//! Apart means: simulated for each of the three dichromacies, neighbouring sizes and all severities keep a distance that the
//! tests measure. Severities and untrue lines are told apart by signs and dashes too.

use egui::{Color32, Theme};

use super::look::{DAY, Look, NIGHT};

const fn rgb(hex: u32) -> Color32 {
    Color32::from_rgb((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

const fn six(hex: [u32; 6]) -> [Color32; 6] {
    [rgb(hex[0]), rgb(hex[1]), rgb(hex[2]), rgb(hex[3]), rgb(hex[4]), rgb(hex[5])]
}

const SIZES_DAY: [Color32; 6] = six([0x0F0046, 0x2A1E15, 0x552100, 0xA62A0D, 0xA53794, 0xC5407A]);
const SIZES_NIGHT: [Color32; 6] = six([0x8486FF, 0xB2A1FF, 0x8CC48F, 0xE0C561, 0xFAFB7A, 0xE1FFFF]);

/// All of them: theme, whether of high contrast, whether apart.
#[cfg(test)]
pub(super) const ALL: [(Theme, bool, bool); 8] = [
    (Theme::Light, false, false),
    (Theme::Light, false, true),
    (Theme::Light, true, false),
    (Theme::Light, true, true),
    (Theme::Dark, false, false),
    (Theme::Dark, false, true),
    (Theme::Dark, true, false),
    (Theme::Dark, true, true),
];

/// The colours of a theme as they are wanted.
pub(super) fn palette(theme: Theme, contrast: bool, apart: bool) -> Look {
    let mut look = match theme {
        Theme::Light => DAY,
        Theme::Dark => NIGHT,
    };
    if contrast {
        look = match theme {
            Theme::Light => Look {
                desk: rgb(0xEFEDE8),
                panel: rgb(0xFBFAF7),
                sheet: rgb(0xFFFFFF),
                touched: rgb(0xE6E4DE),
                border: rgb(0x5A564C),
                grid: rgb(0xEDEBE6),
                ink: rgb(0x000000),
                soft: rgb(0x33342F),
                error: rgb(0x7C0A12),
                warning: rgb(0x553600),
                note: rgb(0x0B3B5E),
                handle: rgb(0x8A2C0A),
                ..look
            },
            Theme::Dark => Look {
                desk: rgb(0x000000),
                panel: rgb(0x0A0C0E),
                sheet: rgb(0x0F1214),
                touched: rgb(0x22282C),
                border: rgb(0xA0A8AC),
                grid: rgb(0x1C2124),
                ink: rgb(0xFFFFFF),
                soft: rgb(0xD8DCD8),
                error: rgb(0xFFB4AC),
                warning: rgb(0xFFD98A),
                note: rgb(0xB4DEFA),
                ..look
            },
        };
    }
    if apart {
        let (error, warning, note) = match (theme, contrast) {
            (Theme::Light, false) => (0xB02083, 0x523F00, 0x0A4DE8),
            (Theme::Light, true) => (0x870C62, 0x3C2E00, 0x0030B8),
            (Theme::Dark, false) => (0xFF8E80, 0xFFF05A, 0x2FCBFE),
            (Theme::Dark, true) => (0xFF9A8C, 0xFFF05A, 0x40D0FF),
        };
        let sizes = if theme == Theme::Light { SIZES_DAY } else { SIZES_NIGHT };
        look = Look { error: rgb(error), warning: rgb(warning), note: rgb(note), sizes, ..look };
    }
    look
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Severity;

    /// How colours look to those who lack one kind of cone: protanopia, deuteranopia, tritanopia, on linear red, green, blue.
    /// Source: Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
    /// IEEE TVCG 15 (6), 2009, severity 1.0.
    const LACKING: [(&str, [[f32; 3]; 3]); 3] = [
        (
            "protanopia",
            [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
        ),
        (
            "deuteranopia",
            [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
        ),
        (
            "tritanopia",
            [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
        ),
    ];
    const ALL_CONES: [[f32; 3]; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

    fn seen_by(eye: &[[f32; 3]; 3], color: Color32) -> [f32; 3] {
        let c = egui::Rgba::from(color);
        let c = [c.r(), c.g(), c.b()];
        eye.map(|row| (row[0] * c[0] + row[1] * c[1] + row[2] * c[2]).clamp(0.0, 1.0))
    }

    /// CIE 1976 L*a*b* under D65 (CIE 15; matrix of IEC 61966-2-1).
    fn lab([r, g, b]: [f32; 3]) -> [f32; 3] {
        let x = (0.412_456_4 * r + 0.357_576_1 * g + 0.180_437_5 * b) / 0.950_47;
        let y = 0.212_672_9 * r + 0.715_152_2 * g + 0.072_175 * b;
        let z = (0.019_333_9 * r + 0.119_192 * g + 0.950_304_1 * b) / 1.088_83;
        let f = |t: f32| if t > 216.0 / 24389.0 { libm::cbrtf(t) } else { t * 841.0 / 108.0 + 4.0 / 29.0 };
        [116.0 * f(y) - 16.0, 500.0 * (f(x) - f(y)), 200.0 * (f(y) - f(z))]
    }

    /// The distance of two colours for an eye: CIE 1976, the straight distance in L*a*b*.
    fn distance(eye: &[[f32; 3]; 3], a: Color32, b: Color32) -> f32 {
        let (a, b) = (lab(seen_by(eye, a)), lab(seen_by(eye, b)));
        (0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum::<f32>().sqrt()
    }

    fn eyes() -> Vec<(&'static str, [[f32; 3]; 3])> {
        LACKING.into_iter().chain([("all cones", ALL_CONES)]).collect()
    }

    #[test]
    fn the_simulation_and_the_distance_are_those_of_the_source() {
        // White stays white for everybody: each row of the matrices adds up to one.
        for (name, eye) in LACKING {
            for row in eye {
                assert!((row.iter().sum::<f32>() - 1.0).abs() < 1e-5, "{name}");
            }
        }
        // L*a*b* of pure red, green and blue of sRGB (published by B. Lindbloom: 53.24 80.09 67.20 and so on).
        for (color, wanted) in [
            (Color32::from_rgb(255, 0, 0), [53.24, 80.09, 67.20]),
            (Color32::from_rgb(0, 255, 0), [87.73, -86.18, 83.18]),
            (Color32::from_rgb(0, 0, 255), [32.30, 79.19, -107.86]),
        ] {
            let got = lab(seen_by(&ALL_CONES, color));
            assert!((0..3).all(|i| (got[i] - wanted[i]).abs() < 0.1), "{got:?} {wanted:?}");
        }
        // Red and green of one lightness are hard to tell apart without one of their cones.
        let (red, green) = (Color32::from_rgb(0xA0, 0x58, 0x20), Color32::from_rgb(0x6A, 0x70, 0x20));
        assert!(distance(&LACKING[1].1, red, green) < 0.35 * distance(&ALL_CONES, red, green));
    }

    #[test]
    fn neighbouring_sizes_stay_apart_for_every_eye() {
        for (theme, contrast, apart) in ALL.into_iter().filter(|p| p.2) {
            let look = palette(theme, contrast, apart);
            for (sizes, least) in [(6, 16.0), (12, 7.0)] {
                for (name, eye) in eyes() {
                    for i in 1..sizes {
                        let of = |i: usize| look.size(Some(i as f32 / (sizes - 1) as f32));
                        let far = distance(&eye, of(i - 1), of(i));
                        assert!(far >= least, "{theme:?} {name}: sizes {} and {} of {sizes}: {far:.1}", i, i + 1);
                    }
                }
            }
        }
        // The usual colours do not do that, which is why there are others.
        let usual = palette(Theme::Light, false, false);
        let near = |eye| (1..6).map(|i| distance(&eye, usual.sizes[i - 1], usual.sizes[i])).fold(f32::MAX, f32::min);
        assert!(LACKING.iter().any(|(_, eye)| near(*eye) < 15.0));
    }

    #[test]
    fn severities_stay_apart_for_every_eye() {
        let all = [Severity::Error, Severity::Warning, Severity::Note];
        for (theme, contrast, apart) in ALL.into_iter().filter(|p| p.2) {
            let look = palette(theme, contrast, apart);
            for (name, eye) in eyes() {
                for (i, one) in all.iter().enumerate() {
                    for other in &all[..i] {
                        let far = distance(&eye, look.severity(*one), look.severity(*other));
                        assert!(far >= 30.0, "{theme:?} {contrast} {name}: {one:?} and {other:?}: {far:.1}");
                    }
                }
            }
        }
    }
}
