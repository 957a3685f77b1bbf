//! The chart: which number a row has in which size, typed, by formula or guessed.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::cases::{AXES, Case, Cases, axis_said, labels, part_unknown};
use super::compile::FormulaReader;
use super::graph::order_of;
use super::item::{NodeTrouble, Stop};
use super::plan::Formula;
use crate::base::{Amount, Code, DisplayUnit, Finding};
use crate::document::{Chart, Row};
use crate::language::{Found, Frame, Function, Kind, Machine, Scope, Trouble, Value, evaluate, nearest};
use crate::texts::{decimal, id, length, owned, say};

/// A row, ready to be evaluated.
#[derive(Clone, Debug, Default, PartialEq)]
struct RowPlan {
    name: String,
    /// The axes it varies by, as places in the list of axes.
    by: Vec<usize>,
    cells: BTreeMap<Vec<u32>, Option<Formula>>,
    otherwise: Option<Formula>,
    /// A formula is there, but broken.
    broken: bool,
    persons: BTreeMap<u32, Option<Formula>>,
    kind: Option<Kind>,
}

/// The chart, ready to be evaluated.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct ChartPlan {
    rows: Vec<RowPlan>,
    axis_lengths: [u32; 3],
    /// Rows in an order in which each stands after those that it names.
    order: Vec<u32>,
    /// Rows in certain sizes, for `in_size`: their symbols come behind [`IN_SIZE`].
    sized: Vec<RowInSize>,
}

/// A row, and the size it is asked for by its place on each axis.
type RowInSize = (u32, [Option<u32>; 3]);

/// Symbols from here on are places in the list of rows in certain sizes.
const IN_SIZE: u32 = 1 << 24;

/// Formulas in the chart see rows only. A row's number is its place in the chart.
struct RowScope<'a> {
    rows: &'a BTreeMap<&'a str, u32>,
    kinds: &'a [Option<Kind>],
    unit: crate::base::Unit,
    cases: &'a Cases,
    sized: &'a RefCell<Vec<RowInSize>>,
}

impl Scope for RowScope<'_> {
    fn look_up(&self, parts: &[&str]) -> Found {
        let name = match parts {
            [name] | ["chart", name] => *name,
            _ => return Found::Unknown(None),
        };
        match self.rows.get(name) {
            Some(&row) => self.kinds[row as usize].map_or(Found::Broken, |kind| Found::Symbol(row, kind)),
            None => Found::Unknown(nearest(name, self.rows.keys().copied()).map(str::to_owned)),
        }
    }
    fn frame(&self) -> Option<Frame> {
        None
    }
    fn frame_name(&self, _frame: Frame) -> String {
        String::new()
    }
    fn unit(&self) -> crate::base::Unit {
        self.unit
    }
    fn row_in(&self, symbol: u32, size: &str) -> Result<u32, String> {
        let case = self.cases.of_range(size)?;
        let wanted = (symbol, self.cases.list[case].labels);
        let mut sized = self.sized.borrow_mut();
        let place = sized.iter().position(|s| *s == wanted).unwrap_or(sized.len());
        if place == sized.len() {
            sized.push(wanted);
        }
        Ok(IN_SIZE + place as u32)
    }
}

impl ChartPlan {
    /// Reads a chart's formulas.
    pub fn of(chart: &Chart, cases: &Cases, reader: &mut FormulaReader<'_>) -> Self {
        let lengths = AXES.map(|axis| labels(chart, axis).len() as u32);
        let places: BTreeMap<&str, u32> =
            chart.rows.iter().enumerate().rev().map(|(i, row)| (row.name.as_str(), i as u32)).collect();
        let sized = RefCell::default();
        let mut plan = Self { rows: Vec::with_capacity(chart.rows.len()), axis_lengths: lengths, ..Self::default() };
        for row in &chart.rows {
            let by: Vec<usize> = AXES.iter().enumerate().filter(|(_, a)| row.by.contains(a)).map(|(i, _)| i).collect();
            plan.rows.push(RowPlan { name: row.name.clone(), by, ..RowPlan::default() });
        }
        let unit = reader.unit;
        let (order, circles) = order_of(chart.rows.len(), |i| rows_named_by(&chart.rows[i], chart, &places));
        for circle in &circles {
            let names: Vec<String> = circle.iter().map(|i| format!("chart.{}", chart.rows[*i].name)).collect();
            reader.findings.push(Finding::new(Code::Circular).at(names[0].clone()).word("members", names.join(", ")));
        }
        // The kind of a row is that of its first cell that can be read.
        let mut kinds: Vec<Option<Kind>> = vec![None; chart.rows.len()];
        for &i in order.iter().filter(|i| !circles.iter().any(|c| c.contains(i))) {
            let scope = RowScope { rows: &places, kinds: &kinds, unit, cases, sized: &sized };
            kinds[i] = texts_of(&chart.rows[i], chart).take(8).find_map(|text| {
                crate::language::parse(text).ok().and_then(|e| crate::language::check(&e, &scope).ok()).map(|c| c.kind)
            });
        }
        let scope = RowScope { rows: &places, kinds: &kinds, unit, cases, sized: &sized };
        for (i, row) in chart.rows.iter().enumerate() {
            plan.rows[i].kind = kinds[i];
            plan.rows[i].broken = circles.iter().any(|c| c.contains(&i));
            if !plan.rows[i].broken {
                plan.read_row(i, row, chart, &scope, reader);
            }
        }
        plan.order = order.into_iter().map(|i| i as u32).collect();
        plan.sized = sized.into_inner();
        plan
    }

    /// Whether rows, their kinds and what they ask of other sizes are the same.
    pub fn is_like(&self, other: &Self) -> bool {
        let alike =
            |(a, b): (&RowPlan, &RowPlan)| a.name == b.name && a.by == b.by && a.kind == b.kind && a.broken == b.broken;
        self.axis_lengths == other.axis_lengths
            && self.sized == other.sized
            && self.rows.len() == other.rows.len()
            && self.rows.iter().zip(&other.rows).all(alike)
    }

    fn read_row(&mut self, i: usize, row: &Row, chart: &Chart, scope: &RowScope<'_>, reader: &mut FormulaReader<'_>) {
        let name = format!("chart.{}", row.name);
        let kind = self.rows[i].kind;
        let mut read = |text: &str, sizes: Vec<String>| -> Option<Formula> {
            let checked = reader.read_in(text, scope, |f| Finding { sizes: sizes.clone(), ..f.at(name.clone()) })?;
            match kind {
                Some(kind) if kind != checked.kind => {
                    reader.findings.push(Finding {
                        sizes: sizes.clone(),
                        formula: text.to_owned(),
                        span: Some(checked.program.span),
                        ..Finding::new(Code::RowKind)
                            .at(name.clone())
                            .word("found", checked.kind.words())
                            .word("expected", kind.words())
                            .word("row", row.name.clone())
                    });
                    None
                }
                _ => Some(checked),
            }
        };
        if !row.is.is_empty() {
            self.rows[i].otherwise = read(&row.is, Vec::new());
            self.rows[i].broken = self.rows[i].otherwise.is_none();
        }
        let mut problems = Vec::new();
        for cell in &row.cells {
            match key_of(&cell.0, &self.rows[i].by, chart) {
                Err(hint) => problems.push(
                    Finding::new(Code::CellUnknown)
                        .at(name.clone())
                        .word("row", row.name.clone())
                        .word("name", format!("`{}`", cell.0))
                        .word("hint", hint),
                ),
                Ok(key) if self.rows[i].cells.contains_key(&key) => problems.push(
                    Finding::new(Code::CellTwice)
                        .at(name.clone())
                        .word("row", row.name.clone())
                        .word("name", format!("`{}`", cell.0)),
                ),
                Ok(key) => {
                    let formula = read(&cell.1, vec![cell.0.clone()]);
                    self.rows[i].cells.insert(key, formula);
                }
            }
        }
        for (p, person) in chart.persons.iter().enumerate() {
            let cells: Vec<_> = person.cells.iter().filter(|c| c.0 == row.name).collect();
            if let Some(cell) = cells.first() {
                let formula = read(&cell.1, vec![person.name.clone()]);
                self.rows[i].persons.insert(p as u32, formula);
            }
            if cells.len() > 1 {
                problems.push(
                    Finding::new(Code::CellTwice)
                        .at(name.clone())
                        .word("row", row.name.clone())
                        .word("name", format!("`{}`", person.name)),
                );
            }
        }
        if i == 0 {
            for person in &chart.persons {
                for cell in person.cells.iter().filter(|c| !chart.rows.iter().any(|r| r.name == c.0)) {
                    let known: Vec<&String> = chart.rows.iter().map(|r| &r.name).collect();
                    problems.push(part_unknown("row", &cell.0, known).at(format!("person {}", person.name)));
                }
            }
        }
        reader.findings.extend(problems);
    }

    /// The kind of a row.
    pub fn kind(&self, row: u32) -> Option<Kind> {
        self.rows.get(row as usize).and_then(|r| r.kind)
    }
}

/// All formulas of a row: its cells, its formula, its persons' cells.
fn texts_of<'a>(row: &'a Row, chart: &'a Chart) -> impl Iterator<Item = &'a String> {
    let persons = chart.persons.iter().flat_map(|p| p.cells.iter().filter(|c| c.0 == row.name).map(|c| &c.1));
    let cells = row.cells.iter().map(|c| &c.1);
    cells.chain(std::iter::once(&row.is)).chain(persons).filter(|t| !t.is_empty())
}

/// The rows that a row's formulas name.
fn rows_named_by(row: &Row, chart: &Chart, places: &BTreeMap<&str, u32>) -> Vec<usize> {
    let mut named = Vec::new();
    // Plain numbers name nothing; most cells are that.
    for text in texts_of(row, chart).filter(|t| t.chars().filter(|c| c.is_alphabetic()).count() > 2) {
        if let Ok(expr) = crate::language::parse(text) {
            expr.each_name(&mut |parts| {
                let name = match parts {
                    [word, name, ..] if word.text == "chart" => &name.text,
                    [name, ..] => &name.text,
                    [] => return,
                };
                named.extend(places.get(name.as_str()).map(|i| *i as usize));
            });
        }
    }
    named
}

/// The place of a cell on the axes of its row, or a hint.
fn key_of(label: &str, by: &[usize], chart: &Chart) -> Result<Vec<u32>, String> {
    let parts: Vec<&str> = label.split('/').collect();
    if by.is_empty() {
        return Err(say!("row-by-no-axis"));
    }
    if parts.len() != by.len() {
        let axes: Vec<String> = by.iter().map(|a| axis_said(AXES[*a])).collect();
        return Err(say!("row-keyed-by", axes = axes.join("/")));
    }
    let mut key = Vec::new();
    for (part, axis) in parts.iter().zip(by) {
        let all = labels(chart, AXES[*axis]);
        match all.iter().position(|l| l == part.trim()) {
            Some(i) => key.push(i as u32),
            None => {
                let near = nearest(part, all.iter().map(String::as_str));
                return Err(near.map_or(String::new(), |n| say!("did-you-mean", name = n)));
            }
        }
    }
    Ok(key)
}

/// Whose number is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Who {
    Size([Option<u32>; 3]),
    Person(u32),
}

/// How a number that nobody typed came about: the labels of its neighbours.
#[derive(Clone, Debug, PartialEq)]
struct Guess {
    between: (String, Option<String>),
}

type CellResult = (Result<f64, Stop>, Option<Guess>);

/// One evaluation of the chart, with what has been found so far.
pub(crate) struct ChartRun<'a> {
    plan: &'a ChartPlan,
    chart: &'a Chart,
    done: RefCell<BTreeMap<(u32, Who), CellResult>>,
}

struct CellMachine<'a, 'b> {
    run: &'a ChartRun<'b>,
    who: Who,
}

impl Machine<f64> for CellMachine<'_, '_> {
    type Edge = ();
    fn load(&self, row: u32) -> Result<Value<f64, ()>, Trouble> {
        let (row, who) = match row.checked_sub(IN_SIZE) {
            None => (row, self.who),
            Some(i) => self.run.plan.sized.get(i as usize).map_or((u32::MAX, self.who), |(r, l)| (*r, Who::Size(*l))),
        };
        self.run.cell(row, who).0.map(Value::Real).map_err(|_| Trouble::Upstream)
    }
    fn call(&self, _function: Function, _arguments: &[Value<f64, ()>]) -> Result<Value<f64, ()>, Trouble> {
        Err(Trouble::NoAnswer(id!("answer-chart")))
    }
}

impl<'a> ChartRun<'a> {
    /// Evaluates every row in these cases, each after those that it names, so that no chain of names is followed deep.
    pub fn new(plan: &'a ChartPlan, chart: &'a Chart, cases: &[Case]) -> Self {
        let run = Self { plan, chart, done: RefCell::default() };
        for &row in &plan.order {
            for case in cases {
                // Only to have it computed; what is wrong is told later.
                let _ = run.cell(row, who(case));
            }
        }
        run
    }

    /// The numbers of all rows in a case.
    pub fn rows(&self, case: &Case) -> Vec<Result<f64, Stop>> {
        (0..self.plan.rows.len() as u32).map(|row| self.cell(row, who(case)).0).collect()
    }

    fn cell(&self, row: u32, who: Who) -> CellResult {
        let Some(plan) = self.plan.rows.get(row as usize) else { return (Err(Stop::upstream()), None) };
        // A row's formula, or a cell's, may name rows that vary by more axes: so the whole address counts.
        if let Some(known) = self.done.borrow().get(&(row, who)) {
            return known.clone();
        }
        let result = self.compute(plan, row, who);
        self.done.borrow_mut().insert((row, who), result.clone());
        result
    }

    fn compute(&self, plan: &RowPlan, row: u32, who: Who) -> CellResult {
        let typed = match who {
            Who::Person(p) => plan.persons.get(&p),
            Who::Size(labels) => key(plan, labels).and_then(|k| plan.cells.get(&k)),
        };
        match (typed, &plan.otherwise) {
            (Some(None), _) => (Err(Stop::upstream()), None),
            (Some(Some(formula)), _) | (None, Some(formula)) => (self.run(formula, who), None),
            (None, None) if plan.broken => (Err(Stop::upstream()), None),
            (None, None) => match who {
                Who::Person(_) => (Err(Stop::upstream()), None),
                Who::Size(labels) => self.guess(plan, row, labels),
            },
        }
    }

    fn run(&self, formula: &Formula, who: Who) -> Result<f64, Stop> {
        match evaluate(&formula.program, &CellMachine { run: self, who }) {
            Ok(Value::Real(v)) => Ok(v),
            Ok(_) => Err(Stop::upstream()),
            Err((trouble, span)) => {
                Err(Stop { trouble: NodeTrouble::Formula(trouble), formula: Some((formula.text.clone(), span)) })
            }
        }
    }

    /// By equal steps of place along the row's first axis; beyond the ends the last step goes on.
    fn guess(&self, plan: &RowPlan, row: u32, place: [Option<u32>; 3]) -> CellResult {
        let nothing = (Err(Stop::upstream()), None);
        let Some(&axis) = plan.by.first() else { return nothing };
        let Some(here) = place[axis] else { return nothing };
        let typed: Vec<u32> = (0..self.plan.axis_lengths[axis])
            .filter(|i| {
                let mut there = place;
                there[axis] = Some(*i);
                key(plan, there).is_some_and(|k| plan.cells.contains_key(&k))
            })
            .collect();
        let below = typed.iter().rev().find(|i| **i < here);
        let above = typed.iter().find(|i| **i > here);
        let (a, b) = match (below, above) {
            (Some(&a), Some(&b)) => (a, b),
            (Some(&a), None) => match typed.iter().rev().find(|i| **i < a) {
                Some(&b) => (b, a),
                None => return nothing,
            },
            (None, Some(&b)) => match typed.iter().find(|i| **i > b) {
                Some(&c) => (b, c),
                None => return nothing,
            },
            (None, None) => return nothing,
        };
        let at = |i: u32| {
            let mut there = place;
            there[axis] = Some(i);
            self.cell(row, Who::Size(there)).0
        };
        let (Ok(va), Ok(vb)) = (at(a), at(b)) else { return nothing };
        let value = va + (vb - va) * (f64::from(here) - f64::from(a)) / (f64::from(b) - f64::from(a));
        let label = |i: u32| labels(self.chart, AXES[axis]).get(i as usize).cloned().unwrap_or_default();
        let between = match (below, above) {
            (Some(&a), Some(&b)) => (label(a), Some(label(b))),
            (Some(&a), None) => (label(a), None),
            (_, Some(&b)) => (label(b), None),
            (None, None) => (String::new(), None),
        };
        (Ok(value), Some(Guess { between }))
    }

    /// What is to be said of the chart in these cases: guesses and gaps. `unit` is the draft's.
    pub fn findings(&self, cases: &[Case], unit: DisplayUnit) -> Vec<Finding> {
        let mut out = Vec::new();
        for (i, row) in self.plan.rows.iter().enumerate() {
            let name = format!("chart.{}", row.name);
            let mut missing: Vec<String> = Vec::new();
            let mut absent: Vec<String> = Vec::new();
            let mut told: Vec<Who> = Vec::new();
            for case in cases {
                let who = match who(case) {
                    Who::Size(labels) => Who::Size([0, 1, 2].map(|a| labels[a].filter(|_| row.by.contains(&a)))),
                    person => person,
                };
                if told.contains(&who) {
                    continue;
                }
                told.push(who);
                let (value, guess) = self.cell(i as u32, who);
                let label = self.label_of(row, who, case);
                match (value, guess) {
                    (Ok(value), Some(Guess { between: (before, after) })) => {
                        let text = match row.kind {
                            Some(Kind::LENGTH) => owned(|| length(value, unit)),
                            Some(Kind::Angle) => owned(|| decimal(&format!("{:.2}°", value.to_degrees()))),
                            _ => owned(|| decimal(&format!("{value:.4}"))),
                        };
                        let code = if after.is_some() { Code::CellGuessed } else { Code::CellBeyond };
                        let mut finding = Finding::new(code)
                            .at(name.clone())
                            .word("row", row.name.clone())
                            .word("guess", text)
                            .word("before", before)
                            .word("after", after.unwrap_or_default());
                        let unit = if row.kind == Some(Kind::LENGTH) { "mm" } else { "" };
                        finding.amounts.push(Amount { name: "number", unit, by_size: vec![value] });
                        finding.sizes.push(label);
                        out.push(finding);
                    }
                    (Err(stop), _) if stop.is_upstream() => {
                        let untyped = match who {
                            Who::Person(p) => !row.persons.contains_key(&p),
                            Who::Size(l) => key(row, l).is_none_or(|k| !row.cells.contains_key(&k)),
                        };
                        match who {
                            Who::Size(_) if untyped && row.otherwise.is_none() && !row.broken => missing.push(label),
                            Who::Person(_) if untyped && row.otherwise.is_none() => absent.push(label),
                            _ => {}
                        }
                    }
                    (Err(stop), _) => {
                        let mut finding = super::model::trouble_finding(&stop).at(name.clone());
                        finding.sizes.push(label);
                        out.push(finding);
                    }
                    (Ok(_), None) => {}
                }
            }
            for (code, sizes) in [(Code::CellMissing, missing), (Code::PersonLacks, absent)] {
                if !sizes.is_empty() {
                    out.push(Finding { sizes, ..Finding::new(code).at(name.clone()).word("row", row.name.clone()) });
                }
            }
        }
        out
    }

    fn label_of(&self, row: &RowPlan, who: Who, case: &Case) -> String {
        match who {
            Who::Person(_) => case.address.clone(),
            Who::Size(places) => {
                let parts: Vec<&str> = row
                    .by
                    .iter()
                    .filter_map(|a| labels(self.chart, AXES[*a]).get(places[*a]? as usize).map(String::as_str))
                    .collect();
                if parts.is_empty() { case.address.clone() } else { parts.join("/") }
            }
        }
    }
}

fn who(case: &Case) -> Who {
    case.person.map_or(Who::Size(case.labels), Who::Person)
}

fn key(row: &RowPlan, labels: [Option<u32>; 3]) -> Option<Vec<u32>> {
    if row.by.is_empty() { None } else { row.by.iter().map(|a| labels[*a]).collect() }
}
