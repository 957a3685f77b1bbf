//! `tables`: the numbers that a buyer gets.

use std::sync::Arc;

use serde_json::{Value as Json, json};

use super::{Done, FINE, NO, Stopped, TablesCall, asked, internal, named, open, report};
use crate::compute::{Engine, Model};
use crate::document::Draft;
use crate::finish::finish;
use crate::output::{Cell, Shown, Table, check_list, lines_open, make_folder, save_all, tables_of, to_csv};
use crate::texts::{say, speaking, t};

pub(super) fn run(call: &TablesCall) -> Result<Done, Stopped> {
    let draft = open(&call.file)?.draft;
    speaking(draft.language, || told(call, &draft))
}

/// The tables, in the language of the draft: they are what its buyers get.
fn told(call: &TablesCall, draft: &Draft) -> Result<Done, Stopped> {
    let model = Engine::new().compute_guarded(draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let finished = finish(&draft, &model);
    let wanted = asked(&model, &call.sizes, &call.views)?;
    let mut messages = String::new();
    for at in &wanted {
        let own = &model.of_views()[at.view];
        if at.case >= own.plan.cases.range && !call.sizes.is_empty() {
            messages.push_str(&named(&say!("cli-tables-person", name = own.address(at.case))));
        }
    }
    let mut out: Vec<(String, Table)> = Vec::new();
    for (view, own) in model.of_views().iter().enumerate() {
        let cases: Vec<usize> =
            wanted.iter().filter(|a| a.view == view && a.case < own.plan.cases.range).map(|a| a.case).collect();
        if cases.is_empty() {
            continue;
        }
        let made = (&model, &finished);
        let tables = if call.check_list {
            check_list(&draft, made, view).into_iter().collect()
        } else {
            tables_of(&draft, made, view, &cases)
        };
        out.extend(tables.into_iter().map(|t| (own.view().to_owned(), t)));
    }
    if out.is_empty() {
        messages.push_str(&named(&say!("cli-tables-nothing")));
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    let data = match (&call.csv, call.json) {
        (_, true) => {
            let text = serde_json::to_string_pretty(&out.iter().map(as_json).collect::<Vec<_>>()).unwrap_or_default();
            text + "\n"
        }
        (Some(folder), false) => {
            let files: Vec<(String, Vec<u8>)> =
                out.iter().map(|(v, t)| (file_name(&model, v, t), to_csv(t).into())).collect();
            make_folder(folder).map_err(|e| Stopped::trouble(e.to_string()))?;
            let written = save_all(folder, &files).map_err(|e| Stopped::trouble(e.to_string()))?;
            written.iter().map(|p| format!("{}\n", p.display())).collect()
        }
        (None, false) => {
            let words = if call.check_list { as_list } else { as_text };
            out.iter().map(|(_, t)| words(t)).collect::<Vec<_>>().join("\n")
        }
    };
    let is_open = call.check_list && out.iter().any(|(_, t)| lines_open(t) > 0);
    let exit = if messages.is_empty() && !is_open { FINE } else { NO };
    Ok(Done { data, messages, exit })
}

/// The table's own name, and the view's where there are several.
fn file_name(model: &Model, view: &str, table: &Table) -> String {
    let view: String = view.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    if model.views.is_empty() { format!("{}.csv", table.name) } else { format!("{view}-{}.csv", table.name) }
}

/// A table of words: each line with what stands in its cells, and under which head.
fn as_list(table: &Table) -> String {
    let mut out = format!("{}\n", table.title);
    table.before.iter().for_each(|line| out.push_str(&format!("{line}\n")));
    let mut group = "";
    for line in &table.lines {
        if line.group != group {
            group = &line.group;
            out.push_str(&format!("{group}\n"));
        }
        let cells = table.head.iter().skip(1).zip(&line.cells).filter(|(_, cell)| **cell != Cell::Empty);
        let told = cells.map(|(head, cell)| {
            let shown = cell.shown(Shown::Plain);
            if *head == t!("check-is") { shown } else { format!("{head}: {shown}") }
        });
        out.push_str(&format!("  {} – {}\n", line.name, told.collect::<Vec<_>>().join("; ")));
    }
    table.notes.iter().for_each(|note| out.push_str(&format!("{note}\n")));
    out
}

/// A table with its columns set flush; lines with lengths twice, in both units.
fn as_text(table: &Table) -> String {
    let mut out = format!("{}\n", table.title);
    table.before.iter().for_each(|line| out.push_str(&format!("{line}\n")));
    let (first, heads) = table.head.split_first().map_or(("", &[][..]), |(f, h)| (f.as_str(), h));
    let mut rows = vec![vec![first.to_owned(), String::new()]];
    rows[0].extend(heads.iter().cloned());
    let mut group = "";
    for line in &table.lines {
        if line.group != group {
            group = &line.group;
            rows.push(vec![group.to_owned()]);
        }
        let indent = if group.is_empty() { "" } else { "  " };
        let name = format!("{indent}{}", line.name);
        for (k, unit) in line.units().iter().enumerate() {
            // What has no unit is told once.
            let cells = line.cells.iter().map(|c| if k > 0 && !c.has_units() { String::new() } else { c.shown(*unit) });
            let first = if k == 0 { name.clone() } else { String::new() };
            rows.push([first, unit.word()].into_iter().chain(cells).collect());
        }
    }
    out.push_str(&report::table(&rows));
    table.notes.iter().for_each(|note| out.push_str(&format!("{note}\n")));
    out
}

fn as_json((view, table): &(String, Table)) -> Json {
    let lines: Vec<Json> = table
        .lines
        .iter()
        .map(|l| json!({ "group": l.group, "name": l.name, "cells": l.cells.iter().map(cell).collect::<Vec<_>>() }))
        .collect();
    json!({
        "view": view, "name": table.name, "title": table.title, "before": table.before, "head": table.head, "lines": lines,
        "notes": table.notes,
    })
}

/// A cell: a length in mm and as shown in both units, a number, words; null where it cannot be computed.
fn cell(cell: &Cell) -> Json {
    match cell {
        Cell::Empty => json!(""),
        Cell::Missing => Json::Null,
        Cell::Words(words) => json!(words),
        Cell::Count(count) => json!(count),
        Cell::Number(number) => json!(number),
        Cell::Angle(radians) => json!({ "degrees": radians.to_degrees() }),
        Cell::Length(mm) | Cell::ToBuy([mm, _]) => json!({ "mm": mm, "cm": cell.in_cm(), "in": cell.in_inches() }),
        Cell::Signed(inner, sign) => json!({ "sign": sign, "cell": self::cell(inner) }),
    }
}
