//! `measure`: formulas in every size.

use std::collections::BTreeSet;

use serde_json::{Map, Value as Json, json};

use super::{Done, FINE, MeasureCall, NO, Stopped, asked, internal, named, open, report};
use crate::base::{DisplayUnit, Finding, Severity};
use crate::compute::{Engine, InView, Measured, Model, measure, told_once};
use crate::language::{Kind, Value, tidy};
use crate::session;
use crate::texts::{own_length, own_number, say};

pub(super) fn run(call: &MeasureCall) -> Result<Done, Stopped> {
    let mut draft = open(&call.file)?.draft;
    for set in &call.sets {
        let (name, formula) = set.split_once('=').ok_or_else(|| Stopped::trouble(say!("cli-measure-set", set)))?;
        session::set_for_run(&mut draft, name.trim(), &tidy(formula)).map_err(|e| Stopped::trouble(e.to_string()))?;
    }
    let formulas: Vec<String> = call.formulas.iter().map(|f| tidy(f)).collect();
    let texts: Vec<&str> = formulas.iter().map(String::as_str).collect();
    let measured = measure(&mut Engine::new(), &draft, &texts).map_err(|f| internal(&f))?;
    if measured.model.plan.cases.list.is_empty() {
        return Err(Stopped::no(say!("cli-measure-no-sizes")));
    }
    let cases = asked(&measured.model, &call.sizes, &call.views)?;
    let mut messages = String::new();
    let fails = |i: usize| {
        let mut known = cases.iter().copied().filter(|c| !measured.is_absent(i, c.view)).peekable();
        known.peek().is_none() || known.any(|c| measured.value_in(i, c).is_none())
    };
    let absent: Vec<usize> =
        (0..texts.len()).filter(|i| cases.iter().any(|c| measured.is_absent(*i, c.view))).collect();
    let failed: Vec<usize> = (0..texts.len()).filter(|i| fails(*i)).collect();
    let views = measured.model.of_views();
    for i in absent {
        let without = views.iter().enumerate().filter(|(v, _)| measured.is_absent(i, *v)).map(|(_, m)| m.view());
        let without = without.collect::<Vec<_>>().join(", ");
        messages.push_str(&named(&say!("cli-measure-absent", formula = call.formulas[i], view = without)));
    }
    if !failed.is_empty() {
        for finding in told(&measured, &failed, &cases) {
            messages.push_str(&report::lines(&finding, draft.display));
        }
        let names: Vec<String> = failed.iter().map(|i| format!("`{}`", call.formulas[*i])).collect();
        messages.push_str(&named(&say!("cli-measure-not", formulas = names.join(", "))));
    }
    let data =
        if call.json { as_json(&measured, call, &cases) } else { as_table(&measured, call, &cases, draft.display) };
    Ok(Done { data, messages, exit: if failed.is_empty() { FINE } else { NO } })
}

/// Why formulas have no value in these cases; what holds in all views is told once.
fn told(measured: &Measured, failed: &[usize], cases: &[InView]) -> Vec<Finding> {
    let views = measured.model.of_views();
    let of_view = |(v, model): (usize, &Model)| {
        let own: Vec<usize> = cases.iter().filter(|c| c.view == v).map(|c| c.case).collect();
        let fails = |i: &usize| {
            let missing = |case: &usize| measured.value_in(*i, InView { view: v, case: *case }).is_none();
            !measured.is_absent(*i, v) && own.iter().any(missing)
        };
        let failed: Vec<usize> = failed.iter().copied().filter(fails).collect();
        if failed.is_empty() {
            return Vec::new();
        }
        let list = &model.plan.cases.list;
        let wanted = |size: &str| own.iter().any(|c| list[*c].address == size);
        causes(model, measured, &failed).into_iter().filter_map(|f| f.only(&wanted)).collect()
    };
    let lists: Vec<Vec<Finding>> = views.iter().enumerate().map(of_view).collect();
    told_once(views, lists)
}

/// The findings that explain why formulas have no value: those about what they need, else all errors.
fn causes<'a>(model: &'a Model, measured: &Measured, failed: &[usize]) -> Vec<&'a Finding> {
    let plan = &model.plan;
    let mut seen = BTreeSet::new();
    let mut work: Vec<u32> = failed.iter().filter_map(|i| measured.columns[*i].map(|c| c.0)).collect();
    while let Some(node) = work.pop() {
        if !seen.insert(node) {
            continue;
        }
        work.extend(&plan.nodes[node as usize].deps);
        // What is found hangs on the equations that name it.
        work.extend(plan.equations.iter().filter(|e| e.found_by.contains(&node)).map(|e| e.node));
    }
    let names: BTreeSet<&str> = seen.iter().map(|n| &*plan.nodes[*n as usize].part.name).collect();
    let edges: BTreeSet<(&str, &str)> = seen
        .iter()
        .map(|n| &plan.nodes[*n as usize].part)
        .filter(|p| !p.edge.is_empty())
        .map(|p| (&*p.piece, &*p.edge))
        .collect();
    let errors = || model.findings.iter().filter(|f| f.severity() == Severity::Error);
    let about: Vec<&Finding> = errors()
        .filter(|f| {
            let name = f.place.name.strip_prefix("value ").unwrap_or(&f.place.name);
            let unread = name == "asked" && f.formula.is_empty();
            !unread
                && (name == "asked"
                    || names.contains(name)
                    || edges.contains(&(f.place.piece.as_str(), f.place.edge.as_str()))
                    || (!f.place.seam.is_empty()
                        && names.iter().any(|n| n.starts_with(&format!("seam.{}", f.place.seam)))))
        })
        .collect();
    if about.is_empty() { errors().collect() } else { about }
}

fn as_json(measured: &Measured, call: &MeasureCall, cases: &[InView]) -> String {
    let mut out = Map::new();
    for (i, formula) in call.formulas.iter().enumerate() {
        let kind = measured.columns[i].map(|c| c.1);
        let sizes = cases.iter().map(|c| {
            let address = measured.model.of_views()[c.view].address(c.case);
            (address, measured.value_in(i, *c).map_or(Json::Null, |v| number(&v, kind)))
        });
        out.insert(formula.clone(), Json::Object(sizes.collect()));
    }
    // A map of texts and numbers always has a JSON form.
    let text = serde_json::to_string_pretty(&Json::Object(out)).unwrap_or_default();
    text + "\n"
}

/// mm, mm2, degrees, plain; points and offsets as pairs; a line as a point on it and its heading.
fn number(value: &Value<f64, ()>, kind: Option<Kind>) -> Json {
    match value {
        Value::Real(v) if kind == Some(Kind::Angle) => json!(v.to_degrees()),
        Value::Real(v) | Value::Share(v) => json!(v),
        Value::Pair(x, y) => json!([x, y]),
        Value::Truth(t) => json!(t),
        Value::Line(p, d) => json!([p[0], p[1], libm::atan2(d[1], d[0]).to_degrees()]),
        Value::Edge(()) => Json::Null,
    }
}

fn as_table(measured: &Measured, call: &MeasureCall, cases: &[InView], unit: DisplayUnit) -> String {
    let none = measured.model.views.is_empty();
    let mut rows = vec![vec![if none { say!("cli-measure-size") } else { say!("cli-measure-view-size") }]];
    rows[0].extend(call.formulas.iter().cloned());
    for c in cases {
        let mut row = vec![measured.model.of_views()[c.view].address(c.case)];
        for i in 0..call.formulas.len() {
            let kind = measured.columns[i].map(|c| c.1);
            row.push(measured.value_in(i, *c).map_or("–".to_owned(), |v| text(&v, kind, unit)));
        }
        rows.push(row);
    }
    report::table(&rows)
}

fn text(value: &Value<f64, ()>, kind: Option<Kind>, unit: DisplayUnit) -> String {
    match (value, kind) {
        (Value::Real(v), Some(Kind::Angle)) => format!("{}°", decimals(v.to_degrees(), 3)),
        (Value::Real(v), Some(Kind::LENGTH | Kind::Edge(_))) => own_length(*v, unit),
        (Value::Real(v), Some(Kind::Quantity(2))) => say!("change-square-cm", area = decimals(v / 100.0, 2)),
        (Value::Real(v), Some(Kind::Quantity(n))) if n != 0 => format!("{} mm^{n}", decimals(*v, 4)),
        (Value::Real(v) | Value::Share(v), _) => decimals(*v, 4),
        (Value::Pair(x, y), _) => pair(*x, *y, unit),
        (Value::Truth(true), _) => say!("yes"),
        (Value::Truth(false), _) => say!("no"),
        (Value::Line(p, d), _) => {
            let angle = decimals(libm::atan2(d[1], d[0]).to_degrees(), 3);
            say!("cli-measure-line", point = pair(p[0], p[1], unit), angle)
        }
        (Value::Edge(()), _) => "–".to_owned(),
    }
}

fn decimals(v: f64, places: usize) -> String {
    own_number(format_args!("{v:.places$}"))
}

/// Two lengths in brackets; where a comma is in them already they are held apart by a semicolon.
fn pair(x: f64, y: f64, unit: DisplayUnit) -> String {
    say!("cli-measure-pair", x = own_length(x, unit), y = own_length(y, unit))
}
