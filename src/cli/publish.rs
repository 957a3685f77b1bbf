//! `publish`: the pieces in true size.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Done, FINE, NO, PaperCall, PublishCall, Purpose, Stopped, WhatCall, asked, internal, named, open, report};
use crate::base::{Code, Severity};
use crate::compute::{Engine, Model};
use crate::finish::finish;
use crate::language::nearest;
use crate::output::{self, MOST_SIZES, Paper};
use crate::proof::{count, proof_of};
use crate::session::{
    LookedAt, Order, Outputs, PrintFor, PrintWish, Progress, ProjectorWish, ReleaseStop, What, length_with_unit,
    look_at_blocks, outputs, sheet_plan,
};
use crate::texts::say;

pub(super) fn run(call: &PublishCall) -> Result<Done, Stopped> {
    let draft = open(&call.file)?.draft;
    let blocks = look_at_blocks(&draft, &call.file);
    let typed = |flag: &str, text: &str| {
        length_with_unit(text).map_err(|problem| Stopped::trouble(format!("`--{flag} {text}`: {problem}")))
    };
    let width = typed("width", &call.width)?;
    let margin = call.margin.as_ref().map(|text| typed("margin", text)).transpose()?;
    if call.purpose == Purpose::Release && draft.chart.survey {
        return Err(Stopped::no(ReleaseStop::Survey.to_string()));
    }
    let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let finished = finish(&draft, &model);
    let findings = proof_of(&draft, &model, &finished);
    let mut messages = String::new();
    if call.purpose == Purpose::Release {
        let rights = findings.iter().filter(|f| f.code == Code::BlockRights && f.silenced.is_none()).cloned();
        for finding in rights.chain(blocks.iter().filter_map(LookedAt::finding)) {
            messages.push_str(&report::lines(&finding, draft.display));
        }
    }
    if call.purpose == Purpose::Release && count(&findings).errors > 0 {
        for finding in findings.iter().filter(|f| f.severity() == Severity::Error && f.silenced.is_none()) {
            messages.push_str(&report::lines(finding, draft.display));
        }
        messages.push_str(&named(&say!("cli-publish-blocked")));
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    let unknown = call.pieces.iter().find(|name| !draft.pieces.iter().any(|p| p.name == **name));
    if let Some(name) = unknown {
        let near = nearest(name, draft.pieces.iter().map(|p| p.name.as_str()));
        return Err(Stopped::trouble(match near {
            Some(near) => say!("cli-publish-piece-near", name, near),
            None => say!("cli-publish-piece", name),
        }));
    }
    let stem = call.file.file_stem().map_or_else(|| "draft".into(), |s| s.to_string_lossy());
    let wish = PrintWish {
        paper: home(call).unwrap_or_default(),
        purpose: purpose(call),
        pieces: call.pieces.clone(),
        margin,
        whole: call.whole,
        projector: projector(call)?,
    };
    let asked = if call.sheets.is_empty() {
        vec![Asked { what: whats(call), groups: groups(&model, call)?, wish, width }]
    } else {
        of_sheets(&model, call, &wish, width)?
    };
    let mut made = Outputs::default();
    for Asked { what, groups, wish, width } in &asked {
        let order = Order {
            draft: &draft,
            model: &model,
            finished: &finished,
            stem: &stem,
            what,
            groups,
            wish,
            width: *width,
            folder: call.file.parent(),
        };
        let more = outputs(&order, &Progress::default(), &|_| {}).map_err(|e| Stopped::no(e.to_string()))?;
        made.add(more);
    }
    for (name, size) in &made.missing {
        let file = call.file.display().to_string();
        messages.push_str(&named(&say!("cli-publish-left-out", name, size, file)));
    }
    for lacking in &made.lacking {
        messages.push_str(&named(lacking));
    }
    for note in &made.notes {
        messages.push_str(&named(note));
    }
    let exit = if made.missing.is_empty() && made.lacking.is_empty() { FINE } else { NO };
    if made.files.is_empty() {
        let only_lays = asked.iter().all(|a| a.what == [What::Lays]);
        let words = if only_lays { say!("cli-publish-no-lays") } else { say!("cli-publish-nothing") };
        messages.push_str(&named(&words));
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    output::make_folder(&call.out).map_err(|e| Stopped::trouble(e.to_string()))?;
    let list = made.list(&stem, &draft, purpose(call));
    let files: Vec<_> = list.into_iter().chain(made.files.into_iter().map(|f| (f.name, f.bytes))).collect();
    let written = output::save_all(&call.out, &files).map_err(|e| Stopped::trouble(e.to_string()))?;
    let data: String = written.iter().map(|p| format!("{}\n", p.display())).collect();
    Ok(Done { data, messages, exit })
}

/// The projector of the call.
fn projector(call: &PublishCall) -> Result<ProjectorWish, Stopped> {
    let bad = |flag: &str, text: &str, as_in: &str| {
        Stopped::trouble(say!("cli-publish-unread", call = format!("--{flag} {text}"), example = as_in))
    };
    let two = |text: &str| text.split_once(['x', '×']).map(|(a, b)| [a.trim().to_owned(), b.trim().to_owned()]);
    let of_picture = |text: &str| length_with_unit(text).ok();
    let picture = two(&call.picture).and_then(|[width, height]| {
        // A unit behind both counts for both.
        let unit = height.trim_start_matches(|c: char| c.is_ascii_digit() || ".,/ ".contains(c)).to_owned();
        let width = if width.ends_with(|c: char| c.is_ascii_digit()) { format!("{width} {unit}") } else { width };
        Some((of_picture(&width)?, of_picture(&height)?))
    });
    let (width, height) = picture.ok_or_else(|| bad("picture", &call.picture, "36 x 24 in"))?;
    let pixels = two(&call.pixels).and_then(|[a, b]| Some([a.parse().ok()?, b.parse().ok()?]));
    let pixels = pixels.ok_or_else(|| bad("pixels", &call.pixels, "1280 x 720"))?;
    let line = match &call.line {
        None => None,
        Some(text) => Some(length_with_unit(text).map_err(|_| bad("line", text, "2 mm"))?),
    };
    Ok(ProjectorWish { picture: [width, height], pixels, line })
}

/// What is asked for with one paper.
struct Asked {
    what: Vec<What>,
    groups: Vec<(usize, Vec<usize>)>,
    wish: PrintWish,
    width: f64,
}

/// The sheets of the draft that are asked for.
fn of_sheets(model: &Model, call: &PublishCall, wish: &PrintWish, width: f64) -> Result<Vec<Asked>, Stopped> {
    let known = &model.draft.sheets;
    let one = |name: &String| {
        let Some(sheet) = known.iter().find(|s| s.name == *name) else {
            let all: Vec<&str> = known.iter().map(|s| s.name.as_str()).collect();
            return Err(Stopped::trouble(match all.as_slice() {
                [] => say!("cli-publish-no-sheets", name),
                all => say!("cli-publish-sheet", name, known = all.join(", ")),
            }));
        };
        let plan = sheet_plan(model, sheet).map_err(Stopped::no)?;
        let wanted = asked(model, &[], &call.views)?;
        let groups = plan.groups.into_iter().filter(|(view, _)| wanted.iter().any(|w| w.view == *view)).collect();
        let wish = PrintWish { paper: plan.paper, pieces: plan.pieces, ..wish.clone() };
        Ok(Asked { what: vec![plan.what], groups, wish, width: if plan.width > 0.0 { plan.width } else { width } })
    };
    call.sheets.iter().map(one).collect()
}

/// What is asked for: sheets on the paper that is told, unless more is.
fn whats(call: &PublishCall) -> Vec<What> {
    let sheets = if home(call).is_some() { What::Pages } else { What::Wide };
    match call.what.as_slice() {
        [] => vec![sheets],
        asked if asked.contains(&WhatCall::All) => {
            let sold = call.purpose == Purpose::Release;
            What::ALL.into_iter().filter(|w| w.is_for_buyers() || !sold).collect()
        }
        asked => asked
            .iter()
            .map(|what| match what {
                WhatCall::Sheets | WhatCall::All => sheets,
                WhatCall::Pages => What::Pages,
                WhatCall::Wide => What::Wide,
                WhatCall::Booklet => What::Booklet,
                WhatCall::Tables => What::Tables,
                WhatCall::Lays => What::Lays,
                WhatCall::Projector => What::Projector,
                WhatCall::CheckList => What::CheckList,
                WhatCall::Svg => What::Svg,
                WhatCall::Dxf => What::Dxf,
            })
            .collect(),
    }
}

/// The paper of a home printer, if that is what is asked for.
fn home(call: &PublishCall) -> Option<Paper> {
    match call.paper {
        PaperCall::Wide => None,
        PaperCall::A4 => Some(Paper::A4),
        PaperCall::Letter => Some(Paper::Letter),
        PaperCall::Both => Some(Paper::Both),
    }
}

fn purpose(call: &PublishCall) -> PrintFor {
    match call.purpose {
        Purpose::Toile => PrintFor::Toile,
        Purpose::Testers => PrintFor::Testers,
        Purpose::Release => PrintFor::Release,
    }
}

/// Each size of the range by itself, or the named ones together, or all; each view by itself.
fn groups(model: &Model, call: &PublishCall) -> Result<Vec<(usize, Vec<usize>)>, Stopped> {
    let all = asked(model, &call.sizes, &call.views)?;
    if call.sizes.is_empty() && !call.all_sizes {
        return Ok(all.into_iter().map(|at| (at.view, vec![at.case])).collect());
    }
    let mut groups: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for at in all {
        groups.entry(at.view).or_default().push(at.case);
    }
    let most = groups.values().map(Vec::len).max().unwrap_or(0);
    if home(call).is_some() && most > MOST_SIZES && !call.all_sizes {
        return Err(Stopped::trouble(say!("cli-publish-sizes", count = most, most = MOST_SIZES)));
    }
    Ok(groups.into_iter().collect())
}
