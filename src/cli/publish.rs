//! `publish`: the pieces in true size.

use super::{Done, FINE, NO, PublishCall, Purpose, Stopped, internal, open, report};
use crate::base::{Severity, Unit};
use crate::compute::{Engine, Model};
use crate::document::Draft;
use crate::output::{self, SheetPiece, WideSettings};
use crate::proof::{count, proof};
use crate::session::length_typed;

pub(super) fn run(call: &PublishCall) -> Result<Done, Stopped> {
    let draft = open(&call.file)?.draft;
    let width = length_typed(&call.width, Unit::Millimetre).ok_or_else(|| {
        Stopped::trouble(format!("`--width {}` is not a length; write it as `914 mm` or `36 in`", call.width))
    })?;
    let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
    let findings = proof(&draft, &model);
    let mut messages = String::new();
    if call.purpose == Purpose::Release && count(&findings).errors > 0 {
        for finding in findings.iter().filter(|f| f.severity() == Severity::Error && f.silenced.is_none()) {
            messages.push_str(&report::lines(finding, draft.display));
        }
        messages.push_str(
            "tracewheel: a release is blocked by errors; nothing was written. A toile can be printed all the same\n",
        );
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    let groups = groups(&model, &call.sizes)?;
    let mut files = Vec::new();
    let mut exit = FINE;
    for group in groups {
        let mut pieces: Vec<SheetPiece> = Vec::new();
        for case in &group {
            let (found, missing) = output::sheet_pieces(&draft, &model, *case);
            pieces.extend(found);
            for name in missing {
                exit = NO;
                let size = &model.plan.cases.list[*case].address;
                messages.push_str(&format!(
                    "tracewheel: {name} cannot be drawn in size {size} and is left out; `tracewheel proof {}` says why\n",
                    call.file.display()
                ));
            }
        }
        if pieces.is_empty() {
            exit = NO;
            continue;
        }
        let sizes: Vec<&str> = group.iter().map(|c| model.plan.cases.list[*c].address.as_str()).collect();
        let bytes = output::publish_wide(&title(&draft, call), &pieces, WideSettings { width })
            .map_err(|e| Stopped::no(format!("size {}: {e}", sizes.join(", "))))?;
        files.push((file_name(call, &sizes), bytes));
    }
    if files.is_empty() {
        messages.push_str("tracewheel: nothing can be drawn; nothing was written\n");
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    std::fs::create_dir_all(&call.out)
        .map_err(|e| Stopped::trouble(format!("the folder {} cannot be made: {e}", call.out.display())))?;
    let written = output::save_all(&call.out, &files).map_err(|e| Stopped::trouble(e.to_string()))?;
    let data: String = written.iter().map(|p| format!("{}\n", p.display())).collect();
    Ok(Done { data, messages, exit })
}

/// Each size of the range by itself, or the named ones together.
fn groups(model: &Model, sizes: &[String]) -> Result<Vec<Vec<usize>>, Stopped> {
    let cases = &model.plan.cases;
    if sizes.is_empty() {
        let many = if cases.range > 0 { cases.range } else { cases.list.len() };
        return Ok((0..many).map(|i| vec![i]).collect());
    }
    let mut group = Vec::new();
    for size in sizes {
        let i = cases.find(size).map_err(|e| Stopped::trouble(e.to_string()))?;
        if !group.contains(&i) {
            group.push(i);
        }
    }
    Ok(vec![group])
}

fn title(draft: &Draft, call: &PublishCall) -> String {
    let name = if draft.title.is_empty() { "Untitled draft" } else { &draft.title };
    match call.purpose {
        Purpose::Toile => format!("{name} – for a toile"),
        Purpose::Testers => format!("{name} – for testers"),
        Purpose::Release => name.to_owned(),
    }
}

/// `skirt-72-true-size.pdf`: letters and digits of the names only.
fn file_name(call: &PublishCall, sizes: &[&str]) -> String {
    let stem = call.file.file_stem().map_or_else(|| "draft".to_owned(), |s| s.to_string_lossy().into_owned());
    let clean = |text: &str| -> String {
        text.chars().map(|c| if c.is_alphanumeric() || c == '-' || c == '_' { c } else { '-' }).collect()
    };
    let sizes = if sizes.len() > 6 {
        format!("{}-to-{}", clean(sizes[0]), clean(sizes[sizes.len() - 1]))
    } else {
        sizes.iter().map(|s| clean(s)).collect::<Vec<_>>().join("+")
    };
    format!("{}-{sizes}-true-size.pdf", clean(&stem))
}
