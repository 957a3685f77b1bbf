//! `trace`: outlines of an SVG file as pieces of a draft.

use std::path::Path;

use super::{Done, Stopped, TraceCall, mind_comments, open, report, save};
use crate::base::tolerance;
use crate::compute::unit_of;
use crate::document::Draft;
use crate::file::svg::{Outlines, Scale, open_svg};
use crate::session::{Command, OutlineCommand, StatedScale, TracedOutline, Tracing, Work, closed_outlines, trace};
use crate::texts::{own_length, own_number, say};

/// Lists the outlines, or puts them in a draft and writes it.
pub(super) fn run(call: &TraceCall) -> Result<Done, Stopped> {
    let found = open_svg(&call.svg).map_err(|e| Stopped::trouble(format!("{}: {e}", call.svg.display())))?;
    match &call.into {
        None => list(&found),
        Some(path) => take(call, &found, path),
    }
}

/// What there is, with sizes if the scale is known.
fn list(found: &Outlines) -> Result<Done, Stopped> {
    let (closed, open) = closed_outlines(found, &[]);
    let mut rows = vec![vec![
        say!("cli-trace-outline"),
        say!("cli-trace-name"),
        say!("cli-trace-width"),
        say!("cli-trace-height"),
        String::new(),
    ]];
    let draft = Draft::default();
    let size = |units: f64| match found.scale {
        Scale::Known(mm) => own_length(units * mm, draft.display),
        Scale::Unknown(_) => say!("cli-trace-units", units = own_number(format_args!("{units:.2}"))),
    };
    for outline in &closed {
        let odd = if outline.crosses { say!("cli-trace-crosses") } else { String::new() };
        let (w, h) = (size(outline.size.0), size(outline.size.1));
        rows.push(vec![(outline.at + 1).to_string(), outline.name.clone(), w, h, odd]);
    }
    let mut messages = format!("{}\n", say!("cli-trace-open", count = open));
    if let Scale::Unknown(why) = &found.scale {
        messages.push_str(&format!("{}\n", say!("cli-trace-scale", why)));
    }
    messages.push_str(&notes(found));
    Ok(Done { data: report::table(&rows), messages, ..Done::default() })
}

/// What was left out of a file, or is odd.
fn notes(found: &Outlines) -> String {
    found.notes.iter().map(|note| format!("{}\n", say!("cli-trace-note", note = note.to_string()))).collect()
}

/// A refusal, after which all is as it was.
fn refused(problem: &impl ToString) -> Stopped {
    Stopped::no(say!("cli-trace-refused", problem = problem.to_string()))
}

/// The outlines that are wanted, with the names of the pieces.
fn wanted(call: &TraceCall, found: &Outlines, closed: &[TracedOutline]) -> Result<Vec<TracedOutline>, Stopped> {
    if call.pieces.is_empty() {
        let whole: Vec<TracedOutline> = closed.iter().filter(|c| !c.crosses).cloned().collect();
        if whole.is_empty() {
            return Err(Stopped::no(say!("cli-trace-none")));
        }
        return Ok(whole);
    }
    let one = |text: &String| {
        let (at, name) = text.split_once('=').unwrap_or((text, ""));
        let at = at.trim();
        let number = at.parse::<usize>().ok().and_then(|n| n.checked_sub(1));
        let own = closed.iter().find(|c| Some(c.at) == number || c.name == at || found.all[c.at].name == at).cloned();
        let mut own = own.ok_or_else(|| {
            let known: Vec<String> = closed.iter().map(|c| format!("{} ({})", c.at + 1, c.name)).collect();
            Stopped::no(say!("cli-trace-unknown", outline = at, known = known.join(", ")))
        })?;
        if !name.trim().is_empty() {
            name.trim().clone_into(&mut own.name);
        }
        Ok(own)
    };
    call.pieces.iter().map(one).collect()
}

fn take(call: &TraceCall, found: &Outlines, path: &Path) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    let taken: Vec<String> = opened.draft.pieces.iter().map(|p| p.name.clone()).collect();
    let (closed, _) = closed_outlines(found, &taken);
    let wanted = wanted(call, found, &closed)?;
    let unit = unit_of(&opened.draft);
    let stated = match (&call.unit, &call.width, call.css_px) {
        (Some(text), ..) => StatedScale::Unit(text.clone()),
        (_, Some(text), _) => StatedScale::Width(text.clone()),
        (_, _, true) => StatedScale::Css,
        _ => StatedScale::File,
    };
    let unscaled = |problem: String| Stopped::no(say!("cli-trace-unscaled", problem));
    let scale = stated.scale(&found.scale, wanted.first()).map_err(|e| unscaled(e.to_string()))?;
    let corner = call.corner.map_or(tolerance::TRACED_CORNER, f64::to_radians);
    if !(corner > 0.0 && corner < std::f64::consts::PI) {
        return Err(Stopped::trouble(say!("cli-trace-corner")));
    }
    let pieces = wanted.iter().map(|w| (w.at, w.name.clone())).collect();
    let wish = Tracing { scale, corner, pieces };
    let (made, notes) = trace(found, &wish, unit).map_err(|e| refused(&e))?;
    mind_comments(&mut opened, path, call.comments)?;
    let mut work = Work::here(opened.draft.clone());
    let add = Command::Outline(Box::new(OutlineCommand::AddPieces(made, notes)));
    let told = work.run(&add).map_err(|e| refused(&e))?;
    save(path, work.draft(), &opened)?;
    let mut messages = format!("{told}\n");
    let unit = say!("cli-trace-unit", mm = own_number(format_args!("{scale:.4}")));
    messages.push_str(&format!("{unit}\n{}", self::notes(found)));
    Ok(Done { messages, ..Done::default() })
}
