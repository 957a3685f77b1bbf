//! `chart`: the body chart.

use std::path::Path;

use super::{ChartCall, Done, Stopped, internal, mind_comments, open, report, save};
use crate::base::{DisplayUnit, Finding, Severity};
use crate::compute::Engine;
use crate::document::{Axis, Draft, RowKind};
use crate::language::{Kind, tidy};
use crate::session::{self, NewSize};
use crate::texts::{message, own_length, own_number, say};

pub(super) fn run(path: &Path, call: &ChartCall) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    match call {
        ChartCall::List => list(&opened.draft),
        ChartCall::Export => {
            let data = session::export_chart(&opened.draft).map_err(|e| Stopped::no(e.to_string()))?;
            Ok(Done { data, ..Done::default() })
        }
        ChartCall::Add { size, cells, between, axis, comments } => {
            let unknown = || Stopped::trouble(say!("cli-chart-axis", axis));
            let axis = Axis::of(axis).ok_or_else(unknown)?;
            let mut typed = Vec::new();
            for cell in cells {
                let (row, text) = cell.split_once('=').ok_or_else(|| Stopped::trouble(say!("cli-chart-cell", cell)))?;
                typed.push((row.trim().to_owned(), tidy(text)));
            }
            let new = NewSize {
                label: size.trim().to_owned(),
                axis,
                between: between.as_ref().map(|b| (b[0].clone(), b[1].clone())),
                cells: typed,
            };
            let told = session::add_size(&mut opened.draft, &new).map_err(|e| Stopped::no(e.to_string()))?;
            let wrong = wrong_cell(&opened.draft, &new)?;
            if let Some(words) = wrong {
                return Err(Stopped::no(words));
            }
            mind_comments(&mut opened, path, *comments)?;
            let draft = opened.draft.clone();
            save(path, &draft, &opened)?;
            Ok(Done { messages: told + "\n", ..Done::default() })
        }
        ChartCall::Import { csv, unit, comments } => {
            let text = std::fs::read_to_string(csv).map_err(|e| unread(csv, &e))?;
            let told = session::import_chart(&mut opened.draft, &text, unit.as_deref())
                .map_err(|e| Stopped::no(format!("{}: {e}", csv.display())))?;
            mind_comments(&mut opened, path, *comments)?;
            let draft = opened.draft.clone();
            save(path, &draft, &opened)?;
            Ok(Done { messages: told + "\n", ..Done::default() })
        }
    }
}

/// What is wrong with a cell that was typed for a new size, in words.
fn wrong_cell(draft: &Draft, new: &NewSize) -> Result<Option<String>, Stopped> {
    let model = Engine::new().compute_guarded(draft, &[]).map_err(|f| internal(&f))?;
    let is_typed = |f: &&Finding| {
        let own = |(row, text): &(String, String)| f.place.name == format!("chart.{row}") && f.formula == *text;
        f.severity() == Severity::Error && new.cells.iter().any(own)
    };
    let told = |f: &Finding| format!("{}: {}", f.place.name, message(f, draft.display));
    Ok(model.findings.iter().find(is_typed).map(told))
}

fn unread(path: &Path, error: &std::io::Error) -> Stopped {
    Stopped::trouble(say!("cli-unread", file = path.display().to_string(), problem = error.to_string()))
}

/// The chart in all sizes and for all persons; proposals are marked `?`.
fn list(draft: &Draft) -> Result<Done, Stopped> {
    let model = Engine::new().compute_guarded(draft, &[]).map_err(|f| internal(&f))?;
    let plan = &model.plan;
    let mut rows = vec![vec![say!("cli-chart-row"), say!("cli-chart-kind")]];
    rows[0].extend(
        plan.cases
            .list
            .iter()
            .enumerate()
            .map(|(i, c)| if Some(i) == plan.cases.base { format!("{}*", c.address) } else { c.address.clone() }),
    );
    let guesses: Vec<_> = model
        .findings
        .iter()
        .filter(|f| matches!(f.code, crate::base::Code::CellGuessed | crate::base::Code::CellBeyond))
        .collect();
    for (i, row) in draft.chart.rows.iter().enumerate() {
        let kind = if row.kind == RowKind::Body { say!("cli-chart-body") } else { say!("cli-chart-house") };
        let mut line = vec![row.name.clone(), kind];
        let name = format!("chart.{}", row.name);
        for (case, model_case) in plan.cases.list.iter().zip(&model.cases) {
            let of_case = |s: &String| *s == case.address || s.split('/').all(|p| case.parts.iter().any(|q| q == p));
            let guessed = guesses.iter().any(|f| f.place.name == name && f.sizes.iter().any(of_case));
            let text = match &model_case.rows[i] {
                Ok(v) => text_of(*v, plan.nodes[i].kind, draft.display),
                Err(_) => "–".to_owned(),
            };
            line.push(if guessed { format!("{text}?") } else { text });
        }
        rows.push(line);
    }
    let mut data = report::table(&rows);
    if plan.cases.base.is_some() {
        data.push_str(&format!("* {}", say!("cli-chart-base")));
        if !guesses.is_empty() {
            data.push_str(&format!("   ? {}", say!("cli-chart-guessed")));
        }
        data.push('\n');
    }
    Ok(Done { data, ..Done::default() })
}

fn text_of(value: f64, kind: Option<Kind>, unit: DisplayUnit) -> String {
    match kind {
        Some(Kind::LENGTH) => own_length(value, unit),
        Some(Kind::Angle) => format!("{}°", own_number(format_args!("{:.2}", value.to_degrees()))),
        _ => own_number(format_args!("{value:.3}")),
    }
}
