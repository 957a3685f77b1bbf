//! `lay`: lay plans, how much cloth to buy, and what comes out of the cloth at hand.

use std::io::{IsTerminal, Write};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use serde_json::{Value as Json, json};

use super::{Done, FINE, LayCall, NO, Stopped, asked, internal, mind_comments, named, open, report, save};
use crate::base::{DisplayUnit, tolerance};
use crate::compute::{Engine, Model};
use crate::document::{ClothLaid, Draft, LayPlan};
use crate::finish::{ClothCall, finish, letters};
use crate::language::tidy;
use crate::output::lay::packing::Touch;
use crate::output::lay::{Lay, LayError, cloth_words, lay_page, lay_pages, yards, yards_exact};
use crate::output::{SvgSettings, make_folder, save_all, write_pdf, write_svg};
use crate::session::{
    Command, LayCommand, LayEffort, LayRow, LayWish, Work, file_name, lays_until, length_with_unit, longest, plan_name,
};
use crate::texts::{own_length, own_number, owned, say, speaking, t};

pub(super) fn run(call: &LayCall) -> Result<Done, Stopped> {
    let mut opened = open(&call.file)?;
    if call.keep {
        mind_comments(&mut opened, &call.file, call.comments)?;
    }
    let model = Engine::new().compute_guarded(&opened.draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let finished = finish(&draft, &model);
    let wishes = wishes(call, &model)?;
    let time = match call.seconds {
        Some(s) if s.is_finite() && s > 0.0 => Some(Duration::from_secs_f64(s.min(86_400.0))),
        Some(_) => return Err(Stopped::trouble(say!("cli-above-zero", flag = "--seconds"))),
        None => None,
    };
    if call.moves == 0 {
        return Err(Stopped::trouble(say!("cli-above-zero", flag = "--moves")));
    }
    let effort = LayEffort { moves: call.moves, seed: call.seed, time };
    let have = call.have.as_deref().map(length).transpose()?;
    if let (Some(name), Some(have)) = (&call.vary, have) {
        return vary(call, &draft, &model, (name, have), (&wishes, &effort));
    }
    let told = Progress::new(&model, std::io::stderr().is_terminal());
    let rows = lays_until((&model, &finished), (&wishes, &[]), &effort, (&|| false, &|_, row| told.hear(row)));
    told.end();
    let mut messages = String::new();
    for row in &rows {
        let name = plan_name(own(&model, &row.wish), &row.wish);
        if let Some(why) = &row.failed {
            messages.push_str(&named(&format!("{name}: {why}")));
        }
        if row.best.is_none() && row.failed.is_none() {
            messages.push_str(&named(&say!("cli-lay-no-time", name)));
        }
        if let Some(odd) = &row.odd {
            messages.push_str(&named(&format!("{name}: {odd}")));
        }
        if let (Some(lay), Some(have)) = (&row.best, have) {
            let short = lay.need().exact - have;
            if short > tolerance::lay::STEP {
                let more = own_length(short, draft.display);
                messages.push_str(&named(&say!("cli-lay-short", name, more)));
            }
        }
    }
    let fails = rows
        .iter()
        .any(|r| r.best.as_ref().is_none_or(|l| have.is_some_and(|h| l.need().exact - h > tolerance::lay::STEP)));
    let data = if call.json { as_json(&model, &rows) } else { as_table(&model, &rows) };
    if let Some(folder) = &call.out {
        // Pictures are in the language of the draft, as all that is printed.
        messages.push_str(&speaking(draft.language, || pictures(call, folder, &model, &rows))?);
    }
    if call.keep {
        messages.push_str(&keep(call, &opened, &model, &rows)?);
    }
    Ok(Done { data, messages, exit: if fails { NO } else { FINE } })
}

/// How far the search is, told on stderr while it goes on, where that is a terminal: a line that is written over, and one for each lay that is
/// settled. Nothing of it goes where data or messages go.
struct Progress<'a> {
    model: &'a Model,
    shown: bool,
    /// The plans that are settled, by name; how long the line is that stands there.
    told: Mutex<(Vec<String>, usize)>,
}

impl<'a> Progress<'a> {
    fn new(model: &'a Model, shown: bool) -> Self {
        Self { model, shown, told: Mutex::default() }
    }

    fn hear(&self, row: &LayRow) {
        if !self.shown {
            return;
        }
        let mut told = self.told.lock().unwrap_or_else(PoisonError::into_inner);
        let name = plan_name(own(self.model, &row.wish), &row.wish);
        if told.0.contains(&name) {
            return;
        }
        let line = progress_line(&name, row);
        let spaces = " ".repeat(told.1.saturating_sub(line.chars().count()));
        let end = if row.done { "\n" } else { "" };
        // Nobody is there to be told that this cannot be written.
        let _ = write!(std::io::stderr(), "\r{line}{spaces}{end}");
        told.1 = if row.done { 0 } else { line.chars().count() };
        if row.done {
            told.0.push(name);
        }
    }

    /// Leaves no unfinished line behind.
    fn end(&self) {
        let told = self.told.lock().unwrap_or_else(PoisonError::into_inner);
        if told.1 > 0 {
            let _ = write!(std::io::stderr(), "\r{}\r", " ".repeat(told.1));
        }
    }
}

/// How far a lay is, in a line.
fn progress_line(name: &str, row: &LayRow) -> String {
    let so_far = match (&row.best, &row.failed) {
        (Some(lay), _) => {
            let mm = lay.need().exact;
            format!("{} ({})", own_length(mm, DisplayUnit::Cm), owned(|| yards_exact(mm)))
        }
        (None, Some(_)) => say!("cli-lay-cannot"),
        (None, None) => say!("cli-lay-not-yet"),
    };
    if row.done { format!("{name}: {so_far}") } else { say!("cli-lay-progress", name, so_far, moves = row.moves) }
}

/// A length as it is typed, mm.
fn length(text: &str) -> Result<f64, Stopped> {
    length_with_unit(&spaced(text)).map_err(Stopped::trouble)
}

fn own<'a>(model: &'a Model, wish: &LayWish) -> &'a Model {
    &model.of_views()[wish.view.min(model.of_views().len() - 1)]
}

/// What is asked for: view by view, width by width, size by size.
fn wishes(call: &LayCall, model: &Model) -> Result<Vec<LayWish>, Stopped> {
    let draft = &model.draft;
    let material = match &call.material {
        Some(name) => tidy(name),
        None => match draft.materials.as_slice() {
            [one] => one.name.clone(),
            [] => {
                return Err(Stopped::trouble(say!("cli-lay-no-materials")));
            }
            many => {
                let names: Vec<&str> = many.iter().map(|m| m.name.as_str()).collect();
                return Err(Stopped::trouble(say!("cli-lay-which", materials = names.join(", "))));
            }
        },
    };
    let Some(told) = draft.materials.iter().find(|m| m.name == material) else {
        let names: Vec<&str> = draft.materials.iter().map(|m| m.name.as_str()).collect();
        return Err(Stopped::trouble(say!("cli-lay-unknown", material, materials = names.join(", "))));
    };
    let folded_part = call.folded_part.as_deref().map(length).transpose()?;
    let basic = |width: f64, sizes: Vec<(usize, u32)>| ClothCall {
        material: material.clone(),
        width,
        laid: call.laid.map(super::LaidCall::laid),
        nap: call.nap.then_some(true),
        folded_part,
        sizes,
    };
    let mut out = Vec::new();
    let groups: Vec<Vec<(String, u32)>> = call.groups.iter().map(|g| group(g)).collect::<Result<_, _>>()?;
    let sizes: Vec<String> = groups.iter().flatten().map(|g| g.0.clone()).collect();
    let wanted = asked(model, if groups.is_empty() { &call.sizes } else { &sizes }, &call.views)?;
    for (view, own) in model.of_views().iter().enumerate() {
        let mut cases: Vec<usize> = wanted.iter().filter(|a| a.view == view).map(|a| a.case).collect();
        if call.sizes.is_empty() && groups.is_empty() {
            cases.retain(|c| *c < own.plan.cases.range);
        }
        if cases.is_empty() {
            continue;
        }
        let sets: Vec<Vec<(usize, u32)>> = if groups.is_empty() {
            cases.iter().map(|c| vec![(*c, 1)]).collect()
        } else {
            let place = |size: &str| {
                cases.iter().copied().find(|c| own.plan.cases.list[*c].address == size || own.address(*c) == size)
            };
            groups.iter().map(|g| g.iter().filter_map(|(s, n)| Some((place(s)?, *n))).collect()).collect()
        };
        let plan = own.plan.publishing.materials.iter().find(|m| draft.materials[m.place].name == material);
        for set in sets.into_iter().filter(|s| !s.is_empty()) {
            if call.widths.is_empty() {
                let Some(plan) = plan else { continue };
                for (nth, (formula, width)) in crate::finish::widths(own, set[0].0, plan).into_iter().enumerate() {
                    let Some((sold, _)) = width else {
                        return Err(Stopped::no(say!("cli-lay-width", width = &*formula.text, material)));
                    };
                    let wish = LayWish { view, width: formula.text.to_string(), call: basic(sold, set.clone()) };
                    out.push((view, nth, wish));
                }
                continue;
            }
            for (nth, width) in call.widths.iter().enumerate() {
                let mm = length(width)?;
                out.push((view, nth, LayWish { view, width: spaced(width), call: basic(mm, set.clone()) }));
            }
        }
    }
    if out.is_empty() && told.widths.is_empty() && call.widths.is_empty() {
        return Err(Stopped::trouble(say!("cli-lay-no-width", material)));
    }
    if out.is_empty() {
        return Err(Stopped::trouble(say!("cli-lay-nothing")));
    }
    // All sizes of one width stand together.
    out.sort_by_key(|(view, nth, _)| (*view, *nth));
    Ok(out.into_iter().map(|(.., wish)| wish).collect())
}

/// A length with a space before its unit: `45in` and `4yd` are what people type.
fn spaced(text: &str) -> String {
    let trimmed = text.trim();
    let split = trimmed.find(|c: char| c.is_alphabetic()).unwrap_or(trimmed.len());
    format!("{} {}", trimmed[..split].trim(), trimmed[split..].trim()).trim().to_owned()
}

/// `2 x S, 4 x M`.
fn group(text: &str) -> Result<Vec<(String, u32)>, Stopped> {
    let wrong = || Stopped::trouble(say!("cli-lay-group", text));
    let one = |part: &str| {
        let part = part.trim();
        match part.split_once(" x ") {
            Some((count, size)) => {
                let count: u32 = count.trim().parse().map_err(|_| wrong())?;
                if (1..=999).contains(&count) { Ok((size.trim().to_owned(), count)) } else { Err(wrong()) }
            }
            None if part.is_empty() => Err(wrong()),
            None => Ok((part.to_owned(), 1)),
        }
    };
    text.split(',').map(one).collect()
}

/// The largest value that comes out of what is at hand.
fn vary(
    call: &LayCall,
    draft: &Draft,
    model: &Model,
    (name, have): (&str, f64),
    (wishes, effort): (&[LayWish], &LayEffort),
) -> Result<Done, Stopped> {
    let [wish] = wishes else {
        return Err(Stopped::trouble(say!("cli-lay-vary", count = wishes.len())));
    };
    let found = longest(draft, name, wish, have, effort).map_err(|e| match e {
        crate::session::LongestStop::Set(_)
        | crate::session::LongestStop::NoLength(_)
        | crate::session::LongestStop::Told => Stopped::trouble(e.to_string()),
        crate::session::LongestStop::Nothing { .. } => Stopped::no(e.to_string()),
    })?;
    let of = plan_name(own(model, wish), wish);
    let need = found.lay.need();
    if call.json {
        let out = json!({
            "of": of, "value": name, "largest_mm": found.value, "now_mm": found.now, "now_fits": found.now_fits(),
            "now_needs_mm": found.now_needs.as_ref().ok(), "now_has_no_lay": found.now_needs.as_ref().err(),
            "not_fitting_mm": found.beyond, "tries": found.tries, "have_mm": have, "needed_mm": need.exact, "lay": lay_json(&found.lay),
        });
        return Ok(Done { data: format!("{out:#}\n"), ..Done::default() });
    }
    let words = found.words(name, draft.display);
    let tries = say!("cli-lay-tries", count = found.tries, moves = effort.moves);
    Ok(Done { data: format!("{of}: {words} {tries}\n"), ..Done::default() })
}

fn as_table(model: &Model, rows: &[LayRow]) -> String {
    let mut out = vec![vec![
        say!("cli-lay-plan"),
        say!("cli-lay-needed"),
        String::new(),
        say!("cli-lay-buy"),
        String::new(),
        say!("cli-lay-covered"),
    ]];
    let mut notes: Vec<String> = Vec::new();
    for row in rows {
        let name = plan_name(own(model, &row.wish), &row.wish);
        let Some(lay) = &row.best else {
            let why = match &row.failed {
                None => say!("cli-lay-not-in-time"),
                Some(LayError::Cloth(_)) => say!("cli-lay-cannot"),
                Some(LayError::NotFound) => say!("cli-lay-none"),
                Some(_) => say!("cli-lay-not-fit"),
            };
            out.push(vec![name, why]);
            continue;
        };
        let need = lay.need();
        out.push(vec![
            name.clone(),
            own_length(need.exact, DisplayUnit::Cm),
            owned(|| yards_exact(need.exact)),
            own_length(need.buy, DisplayUnit::Cm),
            yards(need.buy_yards),
            format!("{} %", own_number(format_args!("{:.1}", lay.covered() * 100.0))),
        ]);
        for words in owned(|| lay.reasons().into_iter().chain(lay.notes()).collect::<Vec<_>>()) {
            if !notes.contains(&words) {
                notes.push(words);
            }
        }
    }
    let mut text = report::table(&out);
    notes.iter().for_each(|n| text.push_str(&format!("{n}\n")));
    text
}

fn as_json(model: &Model, rows: &[LayRow]) -> String {
    let list: Vec<Json> = rows
        .iter()
        .map(|row| {
            let own = own(model, &row.wish);
            let sizes = row.wish.call.sizes.iter().map(|(case, count)| {
                json!({ "size": own.plan.cases.list.get(*case).map_or("", |c| c.address.as_str()), "count": count })
            });
            let mut out = json!({
                "name": plan_name(own, &row.wish), "view": own.view(), "material": row.wish.call.material,
                "width": row.wish.width, "sizes": sizes.collect::<Vec<_>>(), "moves": row.moves,
                "failed": row.failed.as_ref().map(ToString::to_string), "odd": row.odd,
            });
            if let (Some(lay), Json::Object(map)) = (&row.best, &mut out) {
                map.insert("lay".to_owned(), lay_json(lay));
            }
            out
        })
        .collect();
    serde_json::to_string_pretty(&json!({ "version": 1, "plans": list })).unwrap_or_default() + "\n"
}

/// A lay with every piece as it lies, mm; y from the edge of what is used of the width, or from the fold.
fn lay_json(lay: &Lay) -> Json {
    let cloth = &lay.job.on.cloth;
    let need = lay.need();
    let stretches: Vec<Json> = lay
        .job
        .stretches
        .iter()
        .zip(&lay.layouts)
        .enumerate()
        .map(|(s, (stretch, layout))| {
            let pieces = layout.laid.iter().filter_map(|laid| {
                let (about, pose) = (stretch.shapes.get(laid.shape)?, lay.pose(s, laid)?);
                let corner = lay.room(s, laid).origin();
                let polygon: Vec<[f64; 2]> = lay.polygon(s, laid).iter().map(|p| [p.x, p.y]).collect();
                let touch = match pose.across.touch {
                    Touch::Free => "free",
                    Touch::From => "from",
                    Touch::To => "to",
                };
                Some(json!({
                    "piece": about.name, "strip": about.strip, "cut": about.cut, "size": about.size, "x": corner.x, "y": corner.y,
                    "turned": pose.turned, "mirrored": pose.mirrored, "gives": about.gives, "on_fold": about.on_fold,
                    "one_layer": about.one_layer,
                    "at_border": about.at_border, "one_way": about.one_way,
                    "across": { "from": pose.across.from, "to": pose.across.to, "touch": touch }, "polygon": polygon,
                }))
            });
            json!({
                "laid": laid_word(stretch.laid), "width": stretch.job.width, "length": layout.length,
                "folded_part": stretch.folded_part, "pieces": pieces.collect::<Vec<_>>(),
            })
        })
        .collect();
    json!({
        "sold": cloth.sold, "wide": cloth.wide, "usable": cloth.usable, "selvedge": cloth.selvedge, "gap": cloth.gap,
        "nap": cloth.nap, "laid": laid_word(cloth.laid), "shrinks": cloth.shrinks, "counted": lay.job.counted,
        "needed": need.exact, "buy": need.buy, "buy_yards": need.buy_yards, "covered": lay.covered(),
        "reasons": owned(|| lay.reasons()), "notes": owned(|| lay.notes()), "stretches": stretches,
    })
}

fn laid_word(laid: ClothLaid) -> &'static str {
    match laid {
        ClothLaid::Open => "open",
        ClothLaid::Folded => "folded",
        ClothLaid::FoldedToMiddle => "to-middle",
        ClothLaid::FoldedPart => "part",
    }
}

/// Writes pictures of lays; what was written, for stderr.
fn pictures(call: &LayCall, folder: &std::path::Path, model: &Model, rows: &[LayRow]) -> Result<String, Stopped> {
    let stem = call.file.file_stem().map_or_else(|| "draft".to_owned(), |s| s.to_string_lossy().into_owned());
    let signs = letters(model);
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    let mut laid = Vec::new();
    for row in rows {
        let Some(lay) = &row.best else { continue };
        let name = plan_name(own(model, &row.wish), &row.wish);
        let page = lay_page(&name, lay, &signs);
        let settings = SvgSettings { title: name.clone(), ..SvgSettings::default() };
        let text = write_svg(&page, &settings).map_err(|e| Stopped::trouble(e.to_string()))?;
        files.push((file_name((&stem, ""), &[], &[], "lay", &clean(&name), "svg"), text.into_bytes()));
        laid.push((cloth_words(lay), (name, &**lay)));
    }
    if laid.is_empty() {
        return Ok(named(&say!("cli-lay-undrawn")));
    }
    let title = match model.draft.title.as_str() {
        "" => t!("lay-title"),
        garment => t!("lay-title-of", garment),
    };
    let bytes = write_pdf(&title, &lay_pages(&title, &laid, &signs)).map_err(|e| Stopped::trouble(e.to_string()))?;
    files.push((format!("{stem}-lay-plans.pdf"), bytes));
    make_folder(folder).map_err(|e| Stopped::trouble(e.to_string()))?;
    let written = save_all(folder, &files).map_err(|e| Stopped::trouble(e.to_string()))?;
    Ok(written.iter().map(|p| format!("{}\n", p.display())).collect())
}

fn clean(text: &str) -> String {
    let signs = text.chars().map(|c| if c.is_alphanumeric() { c } else { '-' });
    let mut out = String::new();
    for sign in signs {
        if !(sign == '-' && out.ends_with('-')) {
            out.push(sign);
        }
    }
    out.trim_matches('-').to_owned()
}

/// Keeps the lays in the draft.
fn keep(call: &LayCall, opened: &crate::file::OpenedFile, model: &Model, rows: &[LayRow]) -> Result<String, Stopped> {
    let plans: Vec<LayPlan> = rows
        .iter()
        .filter_map(|row| {
            let own = own(model, &row.wish);
            let lay = row.best.as_ref()?;
            Some(lay.to_plan(own, (&plan_name(own, &row.wish), &row.wish.width), &[]))
        })
        .collect();
    if plans.is_empty() {
        return Ok(named(&say!("cli-lay-unkept")));
    }
    let many = plans.len();
    let mut work = Work::here(opened.draft.clone());
    work.run(&Command::Lay(LayCommand::Keep(plans))).map_err(|e| Stopped::no(e.to_string()))?;
    save(&call.file, work.draft(), opened)?;
    Ok(named(&say!("cli-lay-kept", count = many, file = call.file.display().to_string())))
}
