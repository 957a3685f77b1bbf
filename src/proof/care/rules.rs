//! The rules that cautions speak of: their names, numbers and where these were read. Nothing here is decided; `cords`, `sleepwear` and
//! `parts` look at the draft.
//!
//! Read in the United States Code of Federal Regulations: 16 CFR 1120.2(c) and 1120.3(b) as amended 80 FR 44269 (2015), with the
//! Consumer Product Safety Commission's questions and answers on drawstrings, for ASTM F1816; 16 CFR 1615.1(o) as amended through 72 FR 13689
//! (2007); 16 CFR 1616.2(m) as amended through 64 FR 61021 (1999); 16 CFR 1501.4. `tests/outside/safety-values.json` has what was read, and the
//! tests compare. EN 14682 is named without numbers: they differ between its editions.

use crate::document::{GirthPlace, Wearers};
use crate::texts::t;

/// What stands behind every caution.
pub(super) fn usual() -> String {
    t!("care-usual")
}

/// Cords on upper outerwear of children, by name.
pub(super) fn cords() -> String {
    t!("rule-cords")
}
/// The European one, by name.
pub(super) const CORDS_EUROPE: &str = "EN 14682";
/// Sleepwear of children, by name.
pub(super) fn sleepwear() -> String {
    t!("rule-sleepwear")
}
/// Small parts, by name.
pub(super) const PARTS: &str = "16 CFR 1501";

/// Sizes in which no cord is at hood or neck: 2T to 12.
pub(super) const NECK_SIZES: (f64, f64) = (2.0, 12.0);
/// Sizes in which cords at waist and lower edge are limited: 2T to 16.
pub(super) const WAIST_SIZES: (f64, f64) = (2.0, 16.0);
/// How far a free end may hang out there, mm: 75 mm, beside which the rule says 3 in (76.2 mm); the smaller counts.
pub(super) const FREE_END: f64 = 75.0;
/// Letters that the rule takes for numbers.
pub(super) const LETTERS: [(&str, f64); 2] = [("l", 12.0), ("xl", 16.0)];
/// A size between 6 and 7.
pub(super) const SIX_X: f64 = 6.5;
/// Sizes of the sleepwear rules in years: over 9 months to size 14.
pub(super) const SLEEPWEAR_SIZES: (f64, f64) = (0.75, 14.0);
/// Years under which small parts are cautioned of.
pub(super) const PARTS_YEARS: f64 = 3.0;
/// What small parts are held against, from memory: the figure was not in the text that was read.
pub(super) fn cylinder() -> String {
    t!("rule-cylinder")
}

/// A size of the rules for close-fitting sleepwear.
#[derive(Debug)]
pub(super) struct TightRow {
    /// As the rule calls it.
    pub size: &'static str,
    /// For whom; anyone: for both.
    pub wearers: Wearers,
    /// At most so much around, in cm and in inches as printed there, in the order of [`GirthPlace::ALL`].
    most: [(f64, f64); 7],
}

impl TightRow {
    /// What is printed for a place: cm and inches.
    pub fn printed(&self, place: GirthPlace) -> (f64, f64) {
        GirthPlace::ALL.into_iter().zip(self.most).find(|(p, _)| *p == place).map_or((0.0, 0.0), |(_, most)| most)
    }

    /// The most at a place, mm: the smaller of what is printed in cm and in inches, which disagree in places.
    pub fn most(&self, place: GirthPlace) -> f64 {
        let (cm, inches) = self.printed(place);
        (cm * 10.0).min(inches * 25.4)
    }

    /// Whether it holds for these wearers. What is not for girls alone must keep to the boys' row.
    pub fn is_for(&self, wearers: Wearers) -> bool {
        match self.wearers {
            Wearers::Anyone => true,
            Wearers::Girls => wearers == Wearers::Girls,
            Wearers::Boys => wearers != Wearers::Girls,
        }
    }
}

const fn row(size: &'static str, wearers: Wearers, most: [(f64, f64); 7]) -> TightRow {
    TightRow { size, wearers, most }
}

/// The most that close-fitting sleepwear measures around, all sizes.
#[rustfmt::skip]
pub(super) const TIGHT: [TightRow; 25] = [
    row("9-12 mo", Wearers::Anyone, [(48.3, 19.0), (48.3, 19.0), (48.3, 19.0), (14.3, 5.625), (26.7, 10.5), (10.5, 4.125), (13.0, 5.125)]),
    row("12-18 mo", Wearers::Anyone, [(49.5, 19.5), (49.5, 19.5), (50.8, 20.0), (14.9, 5.875), (28.3, 11.125), (10.5, 4.125), (13.1, 5.125)]),
    row("18-24 mo", Wearers::Anyone, [(52.1, 20.5), (50.8, 20.0), (53.3, 21.0), (15.6, 6.125), (29.5, 11.625), (11.0, 4.25), (13.6, 5.375)]),
    row("2", Wearers::Anyone, [(52.1, 20.5), (50.8, 20.0), (53.3, 21.0), (15.6, 6.125), (29.8, 11.75), (11.4, 4.5), (14.0, 5.5)]),
    row("3", Wearers::Anyone, [(53.3, 21.0), (52.1, 20.5), (56.0, 22.0), (16.2, 6.375), (31.4, 12.375), (11.7, 4.625), (14.9, 5.875)]),
    row("4", Wearers::Anyone, [(56.0, 22.0), (53.3, 21.0), (58.4, 23.0), (16.8, 6.625), (33.0, 13.0), (12.1, 4.75), (15.9, 6.25)]),
    row("5", Wearers::Anyone, [(58.4, 23.0), (54.6, 21.5), (61.0, 24.0), (17.5, 6.875), (34.6, 13.625), (12.4, 4.875), (16.8, 6.625)]),
    row("6", Wearers::Anyone, [(61.0, 24.0), (55.9, 22.0), (63.5, 25.0), (18.1, 7.125), (36.2, 14.25), (12.7, 5.0), (17.8, 7.0)]),
    row("6X", Wearers::Anyone, [(62.9, 24.75), (57.2, 22.5), (65.4, 25.75), (18.7, 7.375), (37.8, 14.875), (13.0, 5.125), (18.7, 7.375)]),
    row("7", Wearers::Boys, [(63.5, 25.0), (58.4, 23.0), (66.0, 26.0), (18.7, 7.375), (37.2, 14.625), (13.0, 5.125), (18.7, 7.375)]),
    row("7", Wearers::Girls, [(63.5, 25.0), (58.4, 23.0), (67.3, 26.5), (18.7, 7.375), (38.7, 15.25), (13.0, 5.125), (18.7, 7.375)]),
    row("8", Wearers::Boys, [(66.0, 26.0), (59.7, 23.5), (67.3, 26.5), (19.4, 7.625), (38.4, 15.125), (13.3, 5.25), (19.1, 7.5)]),
    row("8", Wearers::Girls, [(66.0, 26.0), (59.7, 23.5), (71.1, 28.0), (19.4, 7.625), (41.3, 16.25), (13.3, 5.25), (19.1, 7.5)]),
    row("9", Wearers::Boys, [(68.6, 27.0), (61.0, 24.0), (69.2, 27.25), (20.0, 7.875), (39.7, 15.625), (13.7, 5.375), (19.4, 7.625)]),
    row("9", Wearers::Girls, [(68.6, 27.0), (61.0, 24.0), (73.7, 29.0), (20.0, 7.875), (42.6, 16.75), (13.7, 5.375), (19.4, 7.625)]),
    row("10", Wearers::Boys, [(71.1, 28.0), (62.2, 24.5), (71.1, 28.0), (20.6, 8.125), (41.0, 16.125), (14.0, 5.5), (19.7, 7.75)]),
    row("10", Wearers::Girls, [(71.1, 28.0), (62.2, 24.5), (76.2, 30.0), (20.6, 8.125), (43.8, 17.25), (14.0, 5.5), (19.7, 7.75)]),
    row("11", Wearers::Boys, [(73.7, 29.0), (63.5, 25.0), (73.7, 29.0), (21.0, 8.25), (42.2, 16.625), (14.3, 5.625), (20.0, 7.875)]),
    row("11", Wearers::Girls, [(73.7, 29.0), (63.5, 25.0), (78.7, 31.0), (21.0, 8.25), (45.1, 17.75), (14.3, 5.625), (20.0, 7.875)]),
    row("12", Wearers::Boys, [(76.2, 30.0), (64.8, 25.5), (76.2, 30.0), (21.6, 8.5), (43.5, 17.125), (14.6, 5.75), (20.3, 8.0)]),
    row("12", Wearers::Girls, [(76.2, 30.0), (64.8, 25.5), (81.3, 32.0), (21.6, 8.5), (46.7, 18.5), (14.6, 5.75), (20.3, 8.0)]),
    row("13", Wearers::Boys, [(78.7, 31.0), (66.0, 26.0), (78.7, 31.0), (22.2, 8.75), (44.8, 17.625), (14.9, 5.875), (20.6, 8.125)]),
    row("13", Wearers::Girls, [(78.7, 31.0), (66.0, 26.0), (83.8, 33.0), (22.2, 8.75), (47.6, 18.75), (14.9, 5.875), (20.6, 8.125)]),
    row("14", Wearers::Boys, [(81.3, 32.0), (67.3, 26.5), (81.3, 32.0), (22.9, 9.0), (46.0, 18.125), (15.2, 6.0), (21.0, 8.25)]),
    row("14", Wearers::Girls, [(81.3, 32.0), (67.3, 26.5), (86.4, 34.0), (22.9, 9.0), (49.5, 19.5), (15.2, 6.0), (21.0, 8.25)]),
];
