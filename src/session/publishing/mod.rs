//! What is printed at home: which sizes come together, on which paper, and where a person put the pieces.

use kurbo::{Point, Size};

mod listed;
mod outputs;
mod photos;
mod sheets;
mod unsaid;
mod what;

use super::literal::{number_typed, signed_length};
use crate::base::{DisplayUnit, Unit};
use crate::compute::Model;
use crate::document::{Draft, RowKind, TablePlace};
use crate::finish::{Finished, is_block};
use crate::language::{Kind, literal_text};
use crate::output::{
    self, Grid, HOME_MARGIN, HomeSettings, HomeSheets, Paper, ProjectorSettings, SheetError, SheetPiece,
};
use crate::texts::{readable, speaking, t};

pub use listed::{Listed, what_files_are_for};
pub use outputs::{Order, OutputError, Outputs, Progress, Published, booklet_of, how_many, outputs};
pub use photos::photos;
pub use sheets::{SheetPlan, sheet_plan};
pub use what::What;

/// The sheet whose places of pieces are those on the pages of a home printer.
pub const PAGES: &str = "pages";

/// What a print is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PrintFor {
    /// A trial garment: never blocked, never stamped.
    #[default]
    Toile,
    /// Testers.
    Testers,
    /// Buyers: blocked by errors.
    Release,
}

impl PrintFor {
    /// As it is named on sheets; nothing for a release.
    pub fn words(self) -> String {
        match self {
            Self::Toile => t!("for-toile"),
            Self::Testers => t!("for-testers"),
            Self::Release => String::new(),
        }
    }

    /// As it is named in file names.
    pub fn short(self) -> &'static str {
        match self {
            Self::Toile => "toile",
            Self::Testers => "testers",
            Self::Release => "pattern",
        }
    }
}

/// How a person wants it printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PrintWish {
    /// On which paper.
    pub paper: Paper,
    /// What for.
    pub purpose: PrintFor,
    /// Only these pieces; none: all.
    pub pieces: Vec<String>,
    /// Border that the printer leaves free, mm; none: the draft's.
    pub margin: Option<f64>,
    /// Pieces that are cut on the fold are drawn whole.
    pub whole: bool,
    /// The projector.
    pub projector: ProjectorWish,
}

/// The projector that a person has.
#[derive(Clone, Debug, PartialEq)]
pub struct ProjectorWish {
    /// What is seen of the projection on the cloth: width and height, mm.
    pub picture: [f64; 2],
    /// How many pixels it has there: across and down.
    pub pixels: [u32; 2],
    /// Width of lines, mm; none: as wide as they must be to be seen.
    pub line: Option<f64>,
}

impl Default for ProjectorWish {
    /// See [`ProjectorSettings`].
    fn default() -> Self {
        let usual = ProjectorSettings::default();
        Self { picture: [usual.picture.width, usual.picture.height], pixels: usual.pixels, line: None }
    }
}

impl ProjectorWish {
    /// How its pages are made.
    fn settings(&self, draft: &Draft, title: &str, dark: bool) -> ProjectorSettings {
        let inches = matches!(draft.display, DisplayUnit::InchEighths | DisplayUnit::InchSixteenths);
        ProjectorSettings {
            title: title.to_owned(),
            edition: output::edition_words(draft),
            picture: Size::new(self.picture[0], self.picture[1]),
            pixels: self.pixels,
            line: self.line,
            dark,
            grid: if inches { Grid::Inches } else { Grid::Centimetres },
            unit: draft.display,
            ..ProjectorSettings::default()
        }
    }
}

/// The pieces of some cases, those that are wanted, and the names of those that cannot be drawn, with their sizes.
pub fn wanted_pieces(
    draft: &Draft,
    model: &Model,
    finished: &Finished,
    cases: &[usize],
    (only, whole): (&[String], bool),
) -> (Vec<SheetPiece>, Vec<(String, String)>) {
    let mut pieces = Vec::new();
    let mut missing = Vec::new();
    for case in cases {
        let (found, lost) = output::sheet_pieces(draft, model, finished, *case, whole);
        let size = model.plan.cases.list.get(*case).map_or("", |c| c.address.as_str());
        let wanted = |name: &String| if only.is_empty() { !is_block(model, name) } else { only.contains(name) };
        pieces.extend(found.into_iter().filter(|p| wanted(&p.name)));
        missing.extend(lost.into_iter().filter(wanted).map(|name| (name, size.to_owned())));
    }
    (pieces, missing)
}

/// The pieces of some cases of a view, those that are wanted, and those that cannot be drawn. `model` and `finished` are of the whole draft.
/// A piece that is not the very same in every view that has it says on its label for which it is.
pub fn pieces_of_view(
    (model, finished): (&Model, &Finished),
    view: usize,
    cases: &[usize],
    only: (&[String], bool),
) -> (Vec<SheetPiece>, Vec<(String, String)>) {
    let (own, made) = (&model.of_views()[view], &finished.of_views()[view]);
    let (mut pieces, missing) = wanted_pieces(&own.draft, own, made, cases, only);
    for piece in pieces.iter_mut().filter(|_| !model.views.is_empty()) {
        let frame = own.plan.frames().iter().position(|f| *f.name == *piece.name);
        let of = |finished: &Finished, case: usize| finished.cases.get(case)?.get(frame?)?.clone();
        let is_everywhere = finished.of_views().iter().zip(model.of_views()).all(|(other, model)| {
            let lacks = frame.is_some_and(|f| !model.plan.has_frame(f));
            let same = |case: &usize| match (of(made, *case), of(other, *case)) {
                (Some(a), Some(b)) => std::sync::Arc::ptr_eq(&a, &b),
                _ => false,
            };
            lacks || cases.iter().all(same)
        });
        if !is_everywhere {
            piece.notes.push(t!("of-view", view = readable(own.view())));
        }
    }
    (pieces, missing)
}

/// The settings of a home print.
pub fn home_settings(draft: &Draft, model: &Model, cases: &[usize], wish: &PrintWish) -> HomeSettings {
    let length = |text: &str| {
        let (value, unit) = number_typed(text)?;
        let (times, over) = unit.filter(|u| u.is_length())?.inside();
        Some(value * times / over)
    };
    let row = draft.chart.rows.iter().filter(|r| r.kind == RowKind::Body).find_map(|row| {
        let node = model.plan.node_named(&format!("chart.{}", row.name))?;
        let is_length = model.plan.nodes[node as usize].kind == Some(Kind::LENGTH);
        let value = model.item(*cases.first()?, node)?.real()?;
        is_length.then(|| (row.name.replace('_', " "), value))
    });
    HomeSettings {
        paper: wish.paper,
        margin: wish.margin.or_else(|| length(&draft.settings.page_margin)).unwrap_or(HOME_MARGIN),
        title: title_of(draft, model.view()),
        purpose: wish.purpose.words(),
        edition: output::edition_words(draft),
        body: row,
        places: places_on(draft, PAGES),
        unit: draft.display,
    }
}

/// What a sheet is called: the draft's title, and the view if there is one.
pub fn title_of(draft: &Draft, view: &str) -> String {
    let title = if draft.title.is_empty() { t!("untitled") } else { draft.title.clone() };
    if view.is_empty() { title } else { format!("{title}, {}", t!("of-view", view = readable(view))) }
}

/// The pages of some sizes of a view together. `model` and `finished` are of the whole draft.
///
/// # Errors
/// See [`SheetError`].
pub fn home_print(
    draft: &Draft,
    (model, finished): (&Model, &Finished),
    view: usize,
    cases: &[usize],
    wish: &PrintWish,
) -> Result<(HomeSheets, Vec<(String, String)>), SheetError> {
    speaking(draft.language, || {
        let (pieces, missing) = pieces_of_view((model, finished), view, cases, (&wish.pieces, wish.whole));
        let sheets = output::home_sheets(&pieces, &home_settings(draft, &model.of_views()[view], cases, wish))?;
        Ok((sheets, missing))
    })
}

/// What a print is for, as a part of a file's name: for a release its edition, so that two editions lie in one folder side by side.
pub(in crate::session) fn purpose_name(purpose: PrintFor, edition: &str) -> String {
    match (purpose, edition.trim()) {
        (PrintFor::Release, edition) if !edition.is_empty() => format!("edition-{}", clean(edition)),
        _ => purpose.short().to_owned(),
    }
}

/// `skirt-72-toile-A4-or-Letter-9-pages.pdf`: what, which view if there are any, which sizes and pieces, what for, on what; letters and digits
/// only.
pub fn file_name(
    (stem, view): (&str, &str),
    sizes: &[&str],
    pieces: &[String],
    purpose: &str,
    rest: &str,
    kind: &str,
) -> String {
    let sizes = match sizes {
        [first, .., last] if sizes.len() > 6 => format!("{}-to-{}", clean(first), clean(last)),
        _ => sizes.iter().map(|s| clean(s)).collect::<Vec<_>>().join("+"),
    };
    let pieces: String = pieces.iter().map(|p| format!("-{}", clean(p))).collect();
    let view = if view.is_empty() { String::new() } else { format!("-{}", clean(view)) };
    let sizes = if sizes.is_empty() { sizes } else { format!("-{sizes}") };
    format!("{}{view}{sizes}{pieces}-{purpose}-{rest}.{kind}", clean(stem))
}

/// Words as a part of a file's name: letters and digits only.
pub(in crate::session) fn clean(text: &str) -> String {
    text.chars().map(|c| if c.is_alphanumeric() || c == '-' || c == '_' { c } else { '-' }).collect()
}

/// Puts a piece at a place of a sheet (of the window's table, where the sheet has no name), mm; `None`: wherever there is room.
pub fn put_on(draft: &mut Draft, sheet: &str, piece: &str, at: Option<Point>) {
    draft.table.retain(|t| !(t.sheet == sheet && t.piece == piece));
    if let Some(at) = at {
        let unit = crate::compute::unit_of(draft);
        // To a tenth of a millimetre: it is a place for scissors.
        let text = |mm: f64| literal_text((mm * 10.0).round() / 10.0, Some(unit));
        draft.table.push(TablePlace {
            sheet: sheet.to_owned(),
            piece: piece.to_owned(),
            x: text(at.x),
            y: text(at.y),
            ..TablePlace::default()
        });
    }
}

/// Where pieces were put on a sheet, mm.
pub fn places_on(draft: &Draft, sheet: &str) -> Vec<(String, Point)> {
    let length = |text: &str| signed_length(text, Unit::Millimetre);
    let places = draft.table.iter().filter(|t| t.sheet == sheet);
    places.filter_map(|t| Some((t.piece.clone(), Point::new(length(&t.x)?, length(&t.y)?)))).collect()
}
