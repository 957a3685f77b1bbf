//! All that is published of a draft, as files in memory: the window, the command line and releases ask here.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};

use thiserror::Error;

use super::unsaid::{unplanned, unsaid};
use super::what::What;
use super::{PrintFor, PrintWish, file_name, home_settings, photos, pieces_of_view, purpose_name, title_of};
use crate::compute::Model;
use crate::document::{Draft, LayPlan};
use crate::finish::{ClothBook, Finished, letters};
use crate::output::lay::{Lay, cloth_words, kept_lays_of, lay_pages, sizes_words};
use crate::output::{
    self, Block, BookletOrder, DxfError, DxfSettings, PdfError, Picture, ProjectorError, SheetError, SheetPiece,
    SvgError, SvgSettings, Table, WideSettings, Writing,
};
use crate::proof::{Caution, cautions};
use crate::texts::{carried, say, speaking, t};

/// What is asked for.
pub struct Order<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// Its model: of the whole draft, with its views.
    pub model: &'a Model,
    /// The same, finished.
    pub finished: &'a Finished,
    /// With what the names of files begin.
    pub stem: &'a str,
    /// Which kinds.
    pub what: &'a [What],
    /// Views with the sizes that come together in one file: places of views, places of cases.
    pub groups: &'a [(usize, Vec<usize>)],
    /// Paper, purpose, pieces.
    pub wish: &'a PrintWish,
    /// How wide the paper of a wide sheet is, mm.
    pub width: f64,
    /// The folder of the draft, in which pictures of the booklet lie.
    pub folder: Option<&'a Path>,
}

/// A file that is published.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Published {
    /// Its name: use, paper and sizes stand in it.
    pub name: String,
    /// Its kind.
    pub what: What,
    /// The view, if there are any.
    pub view: String,
    /// The sizes in it.
    pub sizes: Vec<String>,
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Digests of its pages without edition, date and contact: where one differs, that page must be printed again.
    pub pages: Vec<u128>,
    /// What its pages call themselves, the first page by nothing; empty where they go by their numbers.
    pub page_names: Vec<String>,
}

/// What came of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outputs {
    /// The files, in the order of kinds, views and sizes.
    pub files: Vec<Published>,
    /// What a person should know, in sentences.
    pub notes: Vec<String>,
    /// Pieces that cannot be drawn and are left out, each with its size.
    pub missing: Vec<(String, String)>,
    /// What else should be there and is not, in sentences.
    pub lacking: Vec<String>,
}

/// Why nothing is published.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OutputError {
    /// A sheet cannot be made.
    #[error("{}", say!("output-of", of, problem = problem.to_string()))]
    Sheet {
        /// Which view and sizes.
        of: String,
        /// Why.
        problem: SheetError,
    },
    /// Pictures for a projector cannot be made.
    #[error("{}", say!("output-of", of, problem = problem.to_string()))]
    Projector {
        /// Which view and sizes.
        of: String,
        /// Why.
        problem: ProjectorError,
    },
    /// A DXF file cannot be made.
    #[error("{}", say!("output-of", of, problem = problem.to_string()))]
    Dxf {
        /// Which view and sizes.
        of: String,
        /// Why.
        problem: DxfError,
    },
    /// A figure of the booklet cannot be drawn.
    #[error(transparent)]
    Figure {
        /// Why.
        problem: SvgError,
    },
    /// A person stopped it.
    #[error("{}", say!("output-stopped"))]
    Stopped,
}

/// How far it is, and whether it is to stop.
#[derive(Debug, Default)]
pub struct Progress {
    /// Files that are made.
    pub done: AtomicUsize,
    /// Set it to stop.
    pub stop: AtomicBool,
}

/// How many files an order makes at most: what progress is told of.
pub fn how_many(order: &Order<'_>) -> usize {
    jobs(order).len()
}

/// Makes the files of an order. `told` hears how many are made.
///
/// # Errors
/// See [`OutputError`]; then nothing is published.
pub fn outputs(order: &Order<'_>, progress: &Progress, told: &(dyn Fn(usize) + Sync)) -> Result<Outputs, OutputError> {
    speaking(order.draft.language, || all_of(order, progress, told))
}

fn all_of(order: &Order<'_>, progress: &Progress, told: &(dyn Fn(usize) + Sync)) -> Result<Outputs, OutputError> {
    let jobs = jobs(order);
    let results: Vec<Mutex<Option<Made>>> = jobs.iter().map(|_| Mutex::new(None)).collect();
    let next = AtomicUsize::new(0);
    let work = || {
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some(job) = jobs.get(i) else { break };
            if progress.stop.load(Ordering::Relaxed) {
                break;
            }
            let made = make(order, job);
            if made.is_err() {
                // The rest would be thrown away.
                next.store(jobs.len(), Ordering::Relaxed);
            }
            if let Ok(mut slot) = results[i].lock() {
                *slot = Some(made);
            }
            told(progress.done.fetch_add(1, Ordering::Relaxed) + 1);
        }
    };
    // Results stand in their order, whoever made them.
    let threads = std::thread::available_parallelism().map_or(1, usize::from).min(jobs.len()).max(1);
    std::thread::scope(|scope| {
        for _ in 1..threads {
            scope.spawn(carried(work));
        }
        work();
    });
    if progress.stop.load(Ordering::Relaxed) {
        return Err(OutputError::Stopped);
    }
    let mut out = Outputs::default();
    for made in results {
        let Some(made) = made.into_inner().unwrap_or_default() else { continue };
        out.add(made?);
    }
    Ok(out)
}

impl Outputs {
    /// Adds what came of another order.
    pub fn add(&mut self, more: Self) {
        self.files.extend(more.files);
        add(&mut self.notes, more.notes);
        add(&mut self.missing, more.missing);
        add(&mut self.lacking, more.lacking);
    }
}

/// What is not told yet.
fn add<T: PartialEq>(out: &mut Vec<T>, more: Vec<T>) {
    for one in more {
        if !out.contains(&one) {
            out.push(one);
        }
    }
}

type Made = Result<Outputs, OutputError>;

/// One file, or a few that are made together.
struct Job {
    what: What,
    view: usize,
    cases: Vec<usize>,
}

fn jobs(order: &Order<'_>) -> Vec<Job> {
    let mut out = Vec::new();
    for what in What::ALL.into_iter().filter(|w| order.what.contains(w)) {
        if what.is_drawn() {
            out.extend(order.groups.iter().map(|(view, cases)| Job { what, view: *view, cases: cases.clone() }));
            continue;
        }
        let mut views: Vec<usize> = order.groups.iter().map(|g| g.0).collect();
        views.dedup();
        for view in views {
            let of_view = order.groups.iter().filter(|g| g.0 == view);
            let mut cases: Vec<usize> = of_view.flat_map(|g| g.1.iter().copied()).collect();
            cases.sort_unstable();
            cases.dedup();
            out.push(Job { what, view, cases });
        }
    }
    out
}

fn make(order: &Order<'_>, job: &Job) -> Made {
    match job.what {
        What::Lays => lay_plans(order, job),
        what if what.is_drawn() => drawn(order, job),
        _ => written(order, job),
    }
}

/// Of which view and sizes a job is, in words.
fn of(own: &Model, sizes: &[&str]) -> String {
    match own.view() {
        "" => say!("output-size", sizes = sizes.join(", ")),
        view => say!("output-view-size", view, sizes = sizes.join(", ")),
    }
}

fn sizes_of<'a>(own: &'a Model, cases: &[usize]) -> Vec<&'a str> {
    cases.iter().map(|c| own.plan.cases.list[*c].address.as_str()).collect()
}

/// Pieces in true size.
fn drawn(order: &Order<'_>, job: &Job) -> Made {
    let own = &order.model.of_views()[job.view];
    let sizes = sizes_of(own, &job.cases);
    let of = of(own, &sizes);
    if matches!(job.what, What::Svg | What::Dxf) {
        return interchanged(order, job, &of);
    }
    let wanted = (order.wish.pieces.as_slice(), order.wish.whole);
    let (pieces, missing) = pieces_of_view((order.model, order.finished), job.view, &job.cases, wanted);
    let mut out = Outputs { missing, ..Outputs::default() };
    if pieces.is_empty() {
        return Ok(out);
    }
    let title = title_of(order.draft, own.view());
    let sheet = |problem: SheetError| OutputError::Sheet { of: of.clone(), problem };
    let printed = |pictures: &[Picture]| {
        output::write_pdf(&stamped(&title, order.wish.purpose), pictures).map_err(|e: PdfError| sheet(e.into()))
    };
    if job.what == What::Projector {
        // Which shows better hangs on the cloth.
        let both = [true, false].map(|dark| order.wish.projector.settings(order.draft, &title, dark));
        let projected = |problem: ProjectorError| OutputError::Projector { of: of.clone(), problem };
        let made = output::projector_sheets(&pieces, &both).map_err(projected)?;
        for (settings, pictures) in both.iter().zip(made) {
            let digests = digests(order.draft, &pictures);
            let rest = settings.paper_name();
            out.files.push(file(order, job, &rest, "pdf", printed(&pictures)?, digests));
        }
        return Ok(out);
    }
    let made = match job.what {
        What::Wide => wide(order, &title, &pieces),
        _ => pages(order, job, own, &pieces, &mut out.notes),
    };
    let (pictures, rest, page_names) = made.map_err(sheet)?;
    let bytes = printed(&pictures)?;
    for note in &mut out.notes {
        *note = say!("output-of", of, problem = note.as_str());
    }
    out.files.push(Published { page_names, ..file(order, job, &rest, "pdf", bytes, digests(order.draft, &pictures)) });
    Ok(out)
}

/// Pieces for other programs.
fn interchanged(order: &Order<'_>, job: &Job, of: &str) -> Made {
    let (own, made) = (&order.model.of_views()[job.view], &order.finished.of_views()[job.view]);
    let only = &order.wish.pieces;
    let wanted = |name: &String| only.is_empty() || only.contains(name);
    let mut out = Outputs::default();
    let mut pieces = Vec::new();
    for case in &job.cases {
        let (found, lost) = output::open_pieces(own, made, *case);
        pieces.extend(found.into_iter().filter(|p| wanted(&p.name)));
        let size = &own.plan.cases.list[*case].address;
        out.missing.extend(lost.into_iter().filter(wanted).map(|name| (name, size.clone())));
    }
    if pieces.is_empty() {
        return Ok(out);
    }
    let title = stamped(&title_of(order.draft, own.view()), order.wish.purpose);
    let bytes = if job.what == What::Svg {
        let picture = output::interchange_drawing(&pieces);
        let settings = SvgSettings { title, ..SvgSettings::default() };
        output::write_svg(&picture, &settings).map_err(|problem| OutputError::Figure { problem })?.into_bytes()
    } else {
        let base = own.plan.cases.base.map_or(String::new(), |b| own.plan.cases.list[b].address.clone());
        let settings = DxfSettings { title, edition: output::edition_words(order.draft), base };
        let problem = |problem: DxfError| OutputError::Dxf { of: of.to_owned(), problem };
        output::write_dxf(&pieces, &settings).map_err(problem)?
    };
    let kind = job.what.word();
    out.files.push(file(order, job, "pieces", kind, bytes, Vec::new()));
    Ok(out)
}

/// A file of a job. All sizes together are not named.
fn file(order: &Order<'_>, job: &Job, rest: &str, kind: &str, bytes: Vec<u8>, pages: Vec<u128>) -> Published {
    let own = &order.model.of_views()[job.view];
    let sizes = sizes_of(own, &job.cases);
    let named: &[&str] = if job.what.is_drawn() { &sizes } else { &[] };
    let pieces: &[String] = if job.what.is_drawn() { &order.wish.pieces } else { &[] };
    let purpose = purpose_name(order.wish.purpose, &order.draft.edition);
    Published {
        name: file_name((order.stem, own.view()), named, pieces, &purpose, rest, kind),
        what: job.what,
        view: own.view().to_owned(),
        sizes: sizes.iter().map(|s| (*s).to_owned()).collect(),
        bytes,
        pages,
        page_names: Vec::new(),
    }
}

/// The booklet of a view, of these sizes. `photos` are the pictures of its steps.
pub fn booklet_of(
    order: &Order<'_>,
    view: usize,
    cases: &[usize],
    photos: &BTreeMap<String, Arc<output::Photo>>,
) -> Writing {
    speaking(order.draft.language, || words_of(order, view, cases, photos))
}

fn words_of(order: &Order<'_>, view: usize, cases: &[usize], photos: &BTreeMap<String, Arc<output::Photo>>) -> Writing {
    let own = &order.model.of_views()[view];
    output::booklet(&BookletOrder {
        draft: order.draft,
        model: own,
        finished: &order.finished.of_views()[view],
        cases,
        title: stamped(&title_of(order.draft, own.view()), order.wish.purpose),
        edition: output::edition_words(order.draft),
        cautions: cautions(order.draft, own).into_iter().map(caution_block).collect(),
        tables: output::tables_of(order.draft, (order.model, order.finished), view, cases),
        photos,
        notes: Vec::new(),
    })
}

/// The tables of a view, each of which can be used as a page alone.
fn tables_alone(order: &Order<'_>, own: &Model, tables: Vec<Table>) -> Writing {
    let about = [output::edition_words(order.draft), order.draft.contact.clone()];
    Writing {
        title: stamped(&title_of(order.draft, own.view()), order.wish.purpose),
        about: about.into_iter().filter(|a| !a.is_empty()).collect(),
        blocks: tables.into_iter().flat_map(|table| [Block::NewPage, Block::Table(table)]).skip(1).collect(),
        steps: 0..0,
    }
}

/// What is written: all sizes of a view together.
fn written(order: &Order<'_>, job: &Job) -> Made {
    let (own, made) = (&order.model.of_views()[job.view], &order.finished.of_views()[job.view]);
    let mut out = Outputs::default();
    let writing = if job.what != What::Booklet {
        let made = (order.model, order.finished);
        let tables = match job.what {
            What::CheckList => output::check_list(order.draft, made, job.view).into_iter().collect(),
            _ => output::tables_of(order.draft, made, job.view, &job.cases),
        };
        for table in &tables {
            let bytes = output::to_csv(table).into_bytes();
            let rest = if job.what == What::Tables { format!("table-{}", table.name) } else { table.name.clone() };
            out.files.push(file(order, job, &rest, "csv", bytes, Vec::new()));
        }
        tables_alone(order, own, tables)
    } else {
        let (photos, lacking) = photos(order.draft, order.folder);
        out.lacking = lacking;
        booklet_of(order, job.view, &job.cases, &photos)
    };
    if job.what != What::CheckList {
        out.lacking.extend(unsaid(order.draft, own, &job.cases, job.what == What::Booklet));
        out.notes.extend(unplanned(order.draft, own, &job.cases));
        let plans = plans_of(order, (own, made), &sizes_of(own, &job.cases));
        out.lacking.extend(plans.iter().filter_map(|(plan, lay)| Some(left_out(plan, lay.as_ref().err()?))));
    }
    let page = output::write_html(&writing).map_err(|problem| OutputError::Figure { problem })?;
    let pictures = output::written_pages(&writing, order.wish.paper);
    let sheet = |problem: PdfError| OutputError::Sheet { of: of(own, &[]), problem: problem.into() };
    let bytes = output::write_pdf(&writing.title, &pictures).map_err(sheet)?;
    let rest = format!("{}-{}", job.what.word(), order.wish.paper.short());
    out.files.insert(0, file(order, job, &rest, "pdf", bytes, digests(order.draft, &pictures)));
    out.files.insert(1, file(order, job, job.what.word(), "html", page.into_bytes(), Vec::new()));
    Ok(out)
}

/// The lay plans of a view that are kept, several on a page where they can be read so; nothing where none are.
fn lay_plans(order: &Order<'_>, job: &Job) -> Made {
    let (own, made) = (&order.model.of_views()[job.view], &order.finished.of_views()[job.view]);
    let mut out = Outputs::default();
    let sizes = sizes_of(own, &job.cases);
    let title = stamped(&title_of(order.draft, own.view()), order.wish.purpose);
    let signs = letters(order.model);
    let mut laid: Vec<(String, String, Lay)> = Vec::new();
    for (plan, lay) in plans_of(order, (own, made), &sizes) {
        match lay {
            Ok(lay) => {
                let of: Vec<(String, u32)> = plan.sizes.iter().map(|s| (s.size.clone(), s.count)).collect();
                laid.push((cloth_words(&lay), sizes_words(&of), lay));
            }
            Err(why) => out.lacking.push(left_out(plan, &why)),
        }
    }
    out.notes.extend(unplanned(order.draft, own, &job.cases));
    if laid.is_empty() {
        return Ok(out);
    }
    let named: Vec<_> = laid.iter().map(|(cloth, name, lay)| (cloth.clone(), (name.clone(), lay))).collect();
    let pages = lay_pages(&title, &named, &signs);
    let sheet = |problem: PdfError| OutputError::Sheet { of: of(own, &[]), problem: problem.into() };
    let bytes = output::write_pdf(&title, &pages).map_err(sheet)?;
    out.files.push(file(order, job, "lay-plans-A4", "pdf", bytes, digests(order.draft, &pages)));
    Ok(out)
}

/// The lay plans of a view that are kept for some of these sizes and no others: each as it lies, or why its numbers are not told.
fn plans_of<'a>(
    order: &Order<'a>,
    (own, made): (&Model, &Finished),
    sizes: &[&str],
) -> Vec<(&'a LayPlan, Result<Lay, String>)> {
    let draft = order.draft;
    let is_told = |plan: &LayPlan| plan.sizes.iter().all(|s| sizes.contains(&s.size.as_str()));
    let all = kept_lays_of(&ClothBook::new(own, made), &is_told);
    all.into_iter().map(|one| (&draft.plans[one.place], one.lay)).collect()
}

fn left_out(plan: &LayPlan, why: &str) -> String {
    say!("output-plan-out", plan = plan.name, why)
}

fn caution_block(caution: Caution) -> Block {
    let Caution { title, mut text, rule, .. } = caution;
    if !rule.is_empty() {
        text.insert(0, t!("care-the-rule", rule));
    }
    Block::Caution { title, text }
}

/// The title with what a print is for; nothing is added for a release.
fn stamped(title: &str, purpose: PrintFor) -> String {
    match purpose.words().as_str() {
        "" => title.to_owned(),
        words => format!("{title} – {words}"),
    }
}

/// Pages, what follows in the name of their file, and what they call themselves where they have more than a number.
type Drawn = Result<(Vec<Picture>, String, Vec<String>), SheetError>;

fn pages(order: &Order<'_>, job: &Job, own: &Model, pieces: &[SheetPiece], notes: &mut Vec<String>) -> Drawn {
    let settings = home_settings(order.draft, own, &job.cases, order.wish);
    let sheets = output::home_sheets(pieces, &settings)?;
    let paper = sheets.paper_name(order.wish.paper);
    notes.extend(sheets.notes);
    let names = std::iter::once(String::new()).chain(sheets.parts.into_iter().map(|part| part.name));
    Ok((sheets.pages, paper, names.collect()))
}

fn wide(order: &Order<'_>, title: &str, pieces: &[SheetPiece]) -> Drawn {
    let title = stamped(title, order.wish.purpose);
    let pages = sheets(&title, pieces, WideSettings { width: order.width })?;
    let name = match pages.as_slice() {
        [one] => format!("sheet-{}x{}mm", one.width, one.height),
        many => format!("{}-sheets", many.len()),
    };
    Ok((pages, name, Vec::new()))
}

/// One sheet, or as many as it takes where one would be longer than a page can be.
fn sheets(title: &str, pieces: &[SheetPiece], settings: WideSettings) -> Result<Vec<Picture>, SheetError> {
    match output::wide_sheet(title, pieces, settings) {
        Err(SheetError::TooLong { .. }) if pieces.len() > 1 => {
            let (first, rest) = pieces.split_at(pieces.len().div_ceil(2));
            let mut out = sheets(title, first, settings)?;
            out.extend(sheets(title, rest, settings)?);
            Ok(out)
        }
        made => made.map(|picture| vec![picture]),
    }
}

/// Digests of pages, without what every new edition changes.
fn digests(draft: &Draft, pictures: &[Picture]) -> Vec<u128> {
    let edition = output::edition_words(draft);
    let leave_out = [edition.as_str(), draft.date.as_str(), draft.contact.as_str()];
    pictures.iter().map(|p| output::picture_digest(p, &leave_out)).collect()
}

#[cfg(test)]
mod tests {
    use kurbo::{PathEl, Rect, Shape, Vec2};

    use super::*;
    use crate::output::Item;

    fn piece(i: u32) -> SheetPiece {
        // Each has a height of its own, by which it is known again.
        let outline = Rect::new(0.0, 0.0, 600.0, f64::from(300 + i)).to_path(0.1);
        SheetPiece {
            name: format!("p{i}"),
            letter: String::new(),
            size: String::new(),
            edges: vec![outline.clone()],
            outline,
            lines: Vec::new(),
            stitch: None,
            notes: Vec::new(),
            about: Vec::new(),
            words: Vec::new(),
            stack: Vec2::ZERO,
            faded: false,
            label_at: None,
        }
    }

    fn closed(items: &[Item], out: &mut Vec<Rect>) {
        for item in items {
            match item {
                Item::Group { items, .. } | Item::Clip { items, .. } => closed(items, out),
                Item::Stroke { path, .. } if matches!(path.elements().last(), Some(PathEl::ClosePath)) => {
                    out.push(path.bounding_box());
                }
                _ => {}
            }
        }
    }

    /// 40 pieces one under the other on narrow paper are 12.8 m and more: three sheets of at most 5.08 m at the least, each piece on one of
    /// them and once.
    #[test]
    fn pieces_on_several_sheets_are_there_once() {
        let pieces: Vec<SheetPiece> = (0..40).map(piece).collect();
        let made = sheets("x", &pieces, WideSettings { width: 640.0 }).expect("sheets");
        assert!(made.len() >= 3 && made.iter().all(|p| p.height <= output::MAX_SIDE), "{}", made.len());
        let mut found = Vec::new();
        made.iter().for_each(|picture| closed(&picture.items, &mut found));
        for i in 0..40 {
            let high = f64::from(300 + i);
            let own = found.iter().filter(|b| b.width() == 600.0 && (b.height() - high).abs() < 1e-6);
            assert_eq!(own.count(), 1, "p{i}");
        }
        // One piece alone that is too long for a page is refused, not split.
        let long = SheetPiece { outline: Rect::new(0.0, 0.0, 600.0, 6000.0).to_path(0.1), ..piece(0) };
        assert!(matches!(sheets("x", &[long], WideSettings { width: 640.0 }), Err(SheetError::TooLong { .. })));
    }
}
