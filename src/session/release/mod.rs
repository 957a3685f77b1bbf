//! Releases: all outputs of a draft in one folder, with the draft, the version of the program and digests of every file.
//!
//! A release is never made twice: printing it again copies the folder. What is sold is in its folder `pattern`; `draft.ron` and
//! `release.ron` stay with whoever publishes. The draft in it is the one without the log's entry of this very release, because that entry
//! holds the digest of it.

mod again;
mod last;
mod manifest;
mod words;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use thiserror::Error;

pub use again::{Looked, look as look_at_release, release_again};
pub use last::{Last, last_beside};
pub use manifest::{DRAFT, MANIFEST, Manifest, ReleasedFile};

use super::publishing::clean;
use super::{
    LookedAt, Order, OutputError, Outputs, PrintFor, PrintWish, Progress, Published, What, look_at_blocks, outputs,
    sheet_plan,
};
use crate::base::{Code, DisplayUnit, Finding};
use crate::compute::{Engine, Model};
use crate::document::{Draft, Log, Release};
use crate::file;
use crate::finish::{Finished, finish};
use crate::output::{FolderError, Paper, save_folder};
use crate::proof::{count, errors, proof_of};
use crate::texts::{message, say, speaking};

/// Where the files for buyers lie in the folder of a release.
const PATTERN: &str = "pattern";
/// How wide the paper of wide sheets is where the draft tells of none, mm.
const WIDE: f64 = 1_500.0;

/// What is asked for.
#[derive(Clone, Debug)]
pub struct ReleaseOrder<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// Its text as it stands in its file.
    pub text: &'a str,
    /// Its file.
    pub path: &'a Path,
    /// The folder in which that of the release is made.
    pub out: &'a Path,
    /// The date of the edition, `YYYY`, `YYYY-MM` or `YYYY-MM-DD`; empty: the draft's own.
    pub date: &'a str,
    /// Where the release before is looked for.
    pub last: Last,
}

/// A release that was written.
#[derive(Clone, Debug)]
pub struct Released {
    /// Its folder.
    pub folder: PathBuf,
    /// What it is made of.
    pub manifest: Manifest,
    /// What whoever publishes should know, in sentences.
    pub notes: Vec<String>,
    /// What changed since the release before; empty where there is none.
    pub changes: String,
    /// The draft with its date and with the log's new entry: to be saved.
    pub draft: Draft,
}

/// Why nothing is released.
#[derive(Debug, Error)]
pub enum ReleaseStop {
    /// Proof tells errors.
    #[error("{}", say!("stop-errors", count = .errors.len(), errors = .errors.join("\n")))]
    Errors {
        /// All of them, in sentences.
        errors: Vec<String>,
    },
    /// The chart is a survey.
    #[error("{}", say!("stop-survey"))]
    Survey,
    /// Something that stands on everything is not told.
    #[error("{words}")]
    Untold {
        /// What, and what to do.
        words: String,
    },
    /// A date that is none.
    #[error("{}", say!("stop-date", date))]
    Date {
        /// As it was typed.
        date: String,
    },
    /// The draft's date is none.
    #[error("{}", say!("stop-draft-date", date))]
    DraftDate {
        /// As it stands there.
        date: String,
    },
    /// An edition is released once.
    #[error("{}", say!("stop-edition", edition, told, mend))]
    Edition {
        /// Which.
        edition: String,
        /// When and where.
        told: String,
        /// What to do.
        mend: String,
    },
    /// Something that belongs to it is missing.
    #[error("{}", say!("stop-lacking", lacking = .lacking.join("\n")))]
    Lacking {
        /// What, in sentences.
        lacking: Vec<String>,
    },
    /// A sheet of the draft cannot be made out.
    #[error("{}", say!("stop-sheet", problem))]
    Sheet {
        /// What is wrong.
        problem: String,
    },
    /// Outputs cannot be made.
    #[error(transparent)]
    Output(#[from] OutputError),
    /// A folder of a release cannot be made out.
    #[error("{}: {problem}", .path.display())]
    Manifest {
        /// The file.
        path: PathBuf,
        /// What is wrong.
        problem: String,
    },
    /// A release is not as it was written.
    #[error("{}", say!("stop-damaged", folder = .folder.display().to_string(), faults = .faults.join("\n")))]
    Damaged {
        /// Its folder.
        folder: PathBuf,
        /// What is wrong, in sentences.
        faults: Vec<String>,
    },
    /// What changed cannot be said.
    #[error("{}", say!("stop-changes", problem))]
    Changes {
        /// Why.
        problem: String,
    },
    /// The folder cannot be written.
    #[error(transparent)]
    Folder(#[from] FolderError),
}

/// A draft computed and finished.
struct Whole {
    draft: Arc<Draft>,
    model: Model,
    finished: Finished,
}

impl Whole {
    fn of(draft: &Draft) -> Result<Self, ReleaseStop> {
        let model = Engine::new().compute_guarded(draft, &[]);
        let model = model.map_err(|f| ReleaseStop::Errors { errors: vec![message(&f, DisplayUnit::Mm)] })?;
        let draft = Arc::clone(&model.draft);
        let finished = finish(&draft, &model);
        Ok(Self { draft, model, finished })
    }
}

/// Makes a release and writes its folder, all or nothing. The draft's own file is not touched: see [`Released::draft`].
///
/// # Errors
/// See [`ReleaseStop`]; then nothing was written.
pub fn release(order: &ReleaseOrder<'_>) -> Result<Released, ReleaseStop> {
    let draft = dated(order)?;
    if draft.chart.survey {
        return Err(ReleaseStop::Survey);
    }
    let whole = Whole::of(&draft)?;
    let findings = proof_of(&whole.draft, &whole.model, &whole.finished);
    let wrong = errors(&findings, draft.display);
    if !wrong.is_empty() {
        return Err(ReleaseStop::Errors { errors: wrong });
    }
    let mut notes = told(&findings, order, draft.display);
    let before = last::before(&order.last, order.out, &draft, &mut notes);
    // That the edition is none to be released at all is told first.
    is_new_edition(&draft, before.as_ref().ok().and_then(Option::as_ref))?;
    let before = before?;
    if let Some(before) = before.as_ref().filter(|b| b.manifest.date > draft.date) {
        let Manifest { edition, date: other, .. } = &before.manifest;
        notes.push(say!("note-date-before", date = draft.date, edition, other));
    }
    let name = folder_name(title(&draft), &draft.edition);
    if order.out.join(&name).symlink_metadata().is_ok() {
        let folder = order.out.join(&name);
        if !folder.join(MANIFEST).is_file() {
            return Err(FolderError::Exists { folder }.into());
        }
        let told = say!("edition-in", folder = folder.display().to_string());
        let mend = say!("mend-raise-edition");
        return Err(ReleaseStop::Edition { edition: draft.edition.clone(), told, mend });
    }

    let made = make(order, &whole)?;
    let lacking: Vec<String> = made
        .missing
        .iter()
        .map(|(name, size)| say!("lacks-piece", name, size))
        .chain(made.lacking.iter().cloned())
        .collect();
    if !lacking.is_empty() {
        return Err(ReleaseStop::Lacking { lacking });
    }
    notes.extend(made.notes);
    let plain = contents(order, &draft)?;
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    let mut listed: Vec<ReleasedFile> = Vec::new();
    for (i, published) in made.files.into_iter().enumerate() {
        // Where edition, date and contact made other files, each is taken as it is.
        let plain = plain.get(i).filter(|p| {
            (p.what, &p.view, &p.sizes, p.pages.len())
                == (published.what, &published.view, &published.sizes, published.pages.len())
        });
        let name = format!("{PATTERN}/{}/{}", published.what.word(), published.name);
        listed.push(ReleasedFile {
            kind: published.what.word().to_owned(),
            view: published.view,
            page_names: published.page_names,
            sizes: published.sizes,
            content: plain.map_or_else(String::new, content),
            pages: plain.map_or(published.pages, |p| p.pages.clone()).iter().map(|p| format!("{p:032x}")).collect(),
            ..ReleasedFile::of(name.clone(), &published.bytes)
        });
        files.push((name, published.bytes));
    }
    let language = draft.language;
    let cautions = words::Cautions::of(&whole, language);
    let changes = before.as_ref().map(|b| speaking(language, || words::changes(b, (&whole, &cautions), &listed)));
    let changes = changes.transpose()?.unwrap_or_default();
    let never_sewn = never_sewn(&draft, &whole.model);
    if !never_sewn.is_empty() {
        let which = super::gathered(&never_sewn);
        notes.push(say!("note-never-sewn", sizes = which, file = MANIFEST));
    }
    let read_me = speaking(language, || words::read_me(&draft, &listed, &cautions.told, !changes.is_empty()));
    let text = if draft == *order.draft { order.text.to_owned() } else { file::write(&draft) };
    let mut more = vec![(format!("{PATTERN}/read-me-first.txt"), read_me), (DRAFT.to_owned(), text)];
    if !changes.is_empty() {
        more.push((format!("{PATTERN}/what-changed.txt"), changes.clone()));
    }
    for (name, text) in more {
        listed.push(ReleasedFile::of(name.clone(), text.as_bytes()));
        files.push((name, text.into_bytes()));
    }
    let counts = count(&findings);
    let manifest = Manifest {
        program: env!("CARGO_PKG_NAME").to_owned(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        title: title(&draft).to_owned(),
        edition: draft.edition.clone(),
        date: draft.date.clone(),
        after: before.as_ref().map(|b| b.manifest.edition.clone()).unwrap_or_default(),
        sizes: range(&whole.model).map(str::to_owned).collect(),
        never_sewn,
        warnings: counts.warnings,
        notes: counts.notes,
        cautions: cautions.plain.into_iter().map(|c| c.title).collect(),
        files: listed,
        ..Manifest::default()
    };
    let text = manifest.text()?;
    let digest = file::sha256(text.as_bytes());
    files.push((MANIFEST.to_owned(), text.into_bytes()));
    let folder = save_folder(order.out, &name, &files)?;
    let mut draft = draft;
    draft.log.releases.push(Release { date: draft.date.clone(), edition: draft.edition.clone(), digest });
    Ok(Released { folder, manifest, notes, changes, draft })
}

/// The same files without edition, date and contact: by them it is told what is other. How long these are moves labels and breaks lines,
/// so it is not enough to leave their words out of a digest.
fn contents(order: &ReleaseOrder<'_>, draft: &Draft) -> Result<Vec<Published>, ReleaseStop> {
    let draft = Draft { edition: String::new(), date: String::new(), contact: String::new(), ..draft.clone() };
    Ok(make(order, &Whole::of(&draft)?)?.files)
}

/// The digest of all that a file holds: of its pages where it has any, because pictures are told apart by what is seen of them.
fn content(plain: &Published) -> String {
    if plain.pages.is_empty() {
        return file::sha256(&plain.bytes);
    }
    let pages: Vec<String> = plain.pages.iter().map(|p| format!("{p:032x}")).collect();
    file::sha256(pages.join("\n").as_bytes())
}

/// `Market-apron-edition-2`.
fn folder_name(title: &str, edition: &str) -> String {
    format!("{}-edition-{}", clean(title), clean(edition))
}

fn title(draft: &Draft) -> &str {
    if draft.title.is_empty() { "Untitled draft" } else { &draft.title }
}

/// The draft with the date that it is to have; edition and date stand on everything that is released.
fn dated(order: &ReleaseOrder<'_>) -> Result<Draft, ReleaseStop> {
    let mut draft = order.draft.clone();
    if !order.date.is_empty() {
        if !is_date(order.date) {
            return Err(ReleaseStop::Date { date: order.date.to_owned() });
        }
        order.date.clone_into(&mut draft.date);
    }
    if draft.edition.trim().is_empty() {
        return Err(ReleaseStop::Untold { words: say!("stop-untold-edition") });
    }
    if draft.date.trim().is_empty() {
        return Err(ReleaseStop::Untold { words: say!("stop-untold-date") });
    }
    if !is_date(draft.date.trim()) {
        return Err(ReleaseStop::DraftDate { date: draft.date });
    }
    Ok(draft)
}

/// Whether it is a year, a month or a day of the calendar: `YYYY`, `YYYY-MM`, `YYYY-MM-DD`.
fn is_date(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let (year, month, day) = match parts.as_slice() {
        [year] => (year, &"01", &"01"),
        [year, month] => (year, month, &"01"),
        [year, month, day] => (year, month, day),
        _ => return false,
    };
    let digits = |text: &str, n: usize| text.len() == n && text.bytes().all(|b| b.is_ascii_digit());
    if !digits(year, 4) || !digits(month, 2) || !digits(day, 2) {
        return false;
    }
    let (Ok(year), Ok(month), Ok(day)) = (year.parse::<u32>(), month.parse::<u32>(), day.parse::<u32>()) else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 => 28 + u32::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return false,
    };
    (1..=days).contains(&day)
}

/// Warnings that whoever publishes must see: cautions, rights, blocks, and how many others there are.
fn told(findings: &[Finding], order: &ReleaseOrder<'_>, unit: DisplayUnit) -> Vec<String> {
    let blocks = look_at_blocks(order.draft, order.path);
    let of_blocks: Vec<Finding> = blocks.iter().filter_map(LookedAt::finding).collect();
    let is_told = |f: &&Finding| {
        let is_caution = f.words.iter().any(|(name, _)| *name == "usual");
        f.silenced.is_none() && (f.code == Code::BlockRights || is_caution || f.code == Code::WearerUnsaid)
    };
    let mut out: Vec<String> = findings.iter().filter(is_told).chain(&of_blocks).map(|f| message(f, unit)).collect();
    match count(findings).warnings {
        0 => {}
        many => out.push(say!("note-warnings", count = many)),
    }
    out.extend(untold(order.draft));
    out
}

/// What buyers look for at the head of a draft and it does not tell, in sentences: it blocks nothing.
pub fn untold(draft: &Draft) -> Vec<String> {
    let head = [(say!("untold-licence"), &draft.licence), (say!("untold-contact"), &draft.contact)];
    let missing = head.into_iter().filter(|(_, text)| text.trim().is_empty());
    missing.map(|(words, _)| words).collect()
}

/// An edition is released once, with one content.
fn is_new_edition(draft: &Draft, before: Option<&last::Before>) -> Result<(), ReleaseStop> {
    let stop = |told: String, mend: String| ReleaseStop::Edition { edition: draft.edition.clone(), told, mend };
    let new = || say!("mend-new-edition");
    if let Some(before) = before.filter(|b| b.manifest.edition == draft.edition) {
        let content = |d: &Draft| file::write(&Draft { log: Log::default(), date: String::new(), ..d.clone() });
        let is_same = content(draft) == content(&before.draft);
        let mend = if is_same { say!("mend-print-again") } else { new() };
        return Err(stop(
            say!("edition-on-in", date = before.manifest.date, folder = before.folder.display().to_string()),
            mend,
        ));
    }
    match draft.log.releases.iter().find(|r| r.edition == draft.edition) {
        Some(known) => Err(stop(say!("edition-on-log", date = known.date), new())),
        None => Ok(()),
    }
}

/// The sizes of the range.
fn range(model: &Model) -> impl Iterator<Item = &str> {
    let cases = &model.plan.cases;
    let many = if cases.range > 0 { cases.range } else { cases.list.len() };
    cases.list[..many].iter().map(|c| c.address.as_str())
}

/// Sizes of which the log tells no fitting.
pub fn never_sewn(draft: &Draft, model: &Model) -> Vec<String> {
    let is_sewn = |size: &str| draft.log.fittings.iter().any(|f| f.size.trim() == size);
    range(model).filter(|size| !size.is_empty() && !is_sewn(size)).map(str::to_owned).collect()
}

/// All outputs: sheets as the draft tells of them, else each size by itself on pages and on a wide sheet; everything else there is.
fn make(order: &ReleaseOrder<'_>, whole: &Whole) -> Result<Outputs, ReleaseStop> {
    let Whole { draft, model, finished } = whole;
    let stem = order.path.file_stem().map_or_else(|| "draft".into(), |s| s.to_string_lossy());
    let wish = PrintWish { paper: Paper::Both, purpose: PrintFor::Release, ..PrintWish::default() };
    let mut out = Outputs::default();
    let mut add = |what: &[What], groups: &[(usize, Vec<usize>)], wish: &PrintWish, width: f64| {
        let order =
            Order { draft, model, finished, stem: &stem, what, groups, wish, width, folder: order.path.parent() };
        outputs(&order, &Progress::default(), &|_| {}).map(|made| out.add(made))
    };
    let mut told = if draft.sheets.is_empty() { Vec::new() } else { vec![What::Pages, What::Wide] };
    for sheet in &draft.sheets {
        let plan = sheet_plan(model, sheet).map_err(|problem| ReleaseStop::Sheet { problem })?;
        told.push(plan.what);
        let wish = PrintWish { paper: plan.paper, pieces: plan.pieces.clone(), ..wish.clone() };
        add(&[plan.what], &plan.groups, &wish, if plan.width > 0.0 { plan.width } else { WIDE })?;
    }
    let rest: Vec<What> = What::ALL.into_iter().filter(|w| w.is_for_buyers() && !told.contains(w)).collect();
    let all = model.asked(&[], &[]).map_err(|e| ReleaseStop::Sheet { problem: e.to_string() })?;
    let groups: Vec<(usize, Vec<usize>)> = all.into_iter().map(|at| (at.view, vec![at.case])).collect();
    add(&rest, &groups, &wish, WIDE)?;
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::is_date;

    #[test]
    fn dates_are_years_months_or_days_of_the_calendar() {
        for date in ["2026", "2026-05", "2026-12-31", "2028-02-29", "2000-02-29"] {
            assert!(is_date(date), "{date}");
        }
        for none in [
            "",
            "soon",
            "26",
            "2026-",
            "2026-5",
            "2026-13",
            "2026-00",
            "2026-02-29",
            "2100-02-29",
            "2026-05-00",
            "2026-05-31-1",
            "1.5.2026",
            "20260531",
        ] {
            assert!(!is_date(none), "{none}");
        }
    }
}
