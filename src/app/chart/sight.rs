//! The chart as it is seen: which rows and columns there are, what was computed for a place, what was found about it.

use std::collections::BTreeMap;

use crate::app::scene::Scene;
use crate::app::state::Field;
use crate::base::{Code, Finding, Severity, Unit};
use crate::document::{Axis, Chart, Row};
use crate::language::{Kind, literal_text};
use crate::session::length_unit;
use crate::texts::{self, say};

/// A column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Column {
    /// A place of sizes.
    Size(String),
    /// A single body.
    Person(String),
    /// What is the same in every size: the row's formula.
    Every,
}

impl Column {
    /// Its name in the chart; what is the same in every size has none.
    pub fn name(&self) -> &str {
        match self {
            Self::Size(name) | Self::Person(name) => name,
            Self::Every => "",
        }
    }

    /// How it is called.
    pub fn words(&self) -> String {
        match self {
            Self::Size(name) | Self::Person(name) => name.clone(),
            Self::Every => say!("chart-every-size"),
        }
    }

    /// The field where a row and this column meet; none where the row's card is the place to type.
    pub fn field(&self, row: &Row) -> Option<Field> {
        match self {
            Self::Size(label) => Some(Field::Cell(row.name.clone(), label.clone())),
            Self::Person(person) => Some(Field::PersonCell(person.clone(), row.name.clone())),
            Self::Every => None,
        }
    }
}

/// Rows that vary by the same axes, with their columns.
pub(super) struct Section<'a> {
    pub by: Vec<Axis>,
    pub rows: Vec<&'a Row>,
    pub columns: Vec<Column>,
}

/// What is known about the chart in this frame.
pub(super) struct Sight<'a> {
    pub scene: &'a Scene,
    pub sections: Vec<Section<'a>>,
    /// What is proposed or missing: row, label and the finding.
    pub waiting: Vec<(&'a str, &'a str, &'a Finding)>,
    proposed: BTreeMap<(&'a str, &'a str), &'a Finding>,
    /// The worst that was found about a place.
    wrong: BTreeMap<(&'a str, &'a str), Severity>,
    /// The first case at each place of each section.
    cases: Vec<BTreeMap<String, usize>>,
}

impl<'a> Sight<'a> {
    pub fn of(scene: &'a Scene) -> Self {
        let chart = &scene.draft().chart;
        let sections = sections(chart);
        let cases = sections.iter().map(|s| cases_of(scene, &s.by)).collect();
        let (mut waiting, mut proposed, mut wrong) = (Vec::new(), BTreeMap::new(), BTreeMap::new());
        for (_, finding) in scene.findings() {
            let Some(row) = finding.place.name.strip_prefix("chart.") else { continue };
            let guess = matches!(finding.code, Code::CellGuessed | Code::CellBeyond);
            let missing = matches!(finding.code, Code::CellMissing | Code::PersonLacks);
            for size in &finding.sizes {
                if guess || missing {
                    proposed.insert((row, size.as_str()), finding);
                }
                if guess || finding.code == Code::CellMissing {
                    waiting.push((row, size.as_str(), finding));
                }
                if !guess && !missing {
                    let worst = wrong.entry((row, size.as_str())).or_insert_with(|| finding.severity());
                    // The worst stands first.
                    *worst = finding.severity().min(*worst);
                }
            }
        }
        Self { scene, sections, waiting, proposed, wrong, cases }
    }

    /// The text that was typed at a place.
    pub fn typed(&self, row: &'a Row, column: &Column) -> &'a str {
        let cell = match column {
            Column::Size(label) => row.cells.iter().find(|c| c.0 == *label),
            Column::Person(name) => {
                let person = self.scene.draft().chart.persons.iter().find(|p| p.name == *name);
                person.and_then(|p| p.cells.iter().find(|c| c.0 == row.name))
            }
            Column::Every => return &row.is,
        };
        cell.map_or("", |c| c.1.as_str())
    }

    /// What stands in an empty cell: the proposal, or what the row's formula gives.
    pub fn instead(&self, section: usize, row: &Row, column: &Column) -> String {
        if let Some(finding) = self.proposed.get(&(row.name.as_str(), column.name())) {
            return guess_of(finding).map_or_else(|| say!("chart-missing"), |guess| format!("{guess}?"));
        }
        texts::owned(|| match self.number(section, row, column) {
            Some((n, Some(Kind::LENGTH))) => format!("={}", texts::length(n, self.scene.draft().display)),
            Some((n, Some(Kind::Angle))) => texts::decimal(&format!("={:.1}°", n.to_degrees())),
            Some((n, _)) => texts::decimal(&format!("={n:.3}")),
            None => String::new(),
        })
    }

    /// The number that was computed at a place, inside, and its kind.
    pub fn number(&self, section: usize, row: &Row, column: &Column) -> Option<(f64, Option<Kind>)> {
        let model = self.scene.model()?;
        let node = model.plan.node_named(&format!("chart.{}", row.name))?;
        let number = model.item(self.case(section, column)?, node)?.real()?;
        Some((number, model.plan.nodes[node as usize].kind))
    }

    /// The first case in which a column of a section is computed.
    pub fn case(&self, section: usize, column: &Column) -> Option<usize> {
        match column {
            Column::Size(key) => self.cases.get(section)?.get(key).copied(),
            Column::Person(name) => self.scene.cases()?.list.iter().position(|c| c.address == *name),
            Column::Every => None,
        }
    }

    /// Whether the chosen case lies in a column.
    pub fn is_chosen(&self, section: usize, column: &Column, chosen: &str) -> bool {
        let Some(cases) = self.scene.cases() else { return false };
        let Some(case) = cases.list.iter().find(|c| c.address == chosen) else { return false };
        match column {
            Column::Person(name) => case.person.is_some() && case.address == *name,
            Column::Size(key) => {
                let by = &self.sections[section].by;
                case.person.is_none() && place_of(&self.scene.draft().chart, by, case.labels).as_ref() == Some(key)
            }
            Column::Every => false,
        }
    }

    /// How bad what was found about a place is.
    pub fn wrong(&self, row: &Row, column: &Column) -> Option<Severity> {
        self.wrong.get(&(row.name.as_str(), column.name())).copied()
    }
}

/// The number that a finding proposes.
pub(super) fn guess_of(finding: &Finding) -> Option<&str> {
    finding.words.iter().find(|(n, _)| *n == "guess").map(|(_, guess)| guess.as_str())
}

/// A step in the unit in which the row is typed.
pub(super) fn step_words(row: &Row, by: f64, kind: Option<Kind>, scene: &Scene) -> String {
    let sign = if by < 0.0 { "−" } else { "+" };
    let size = by.abs();
    let words = texts::owned(|| match (kind, length_unit(row)) {
        (Some(Kind::LENGTH), Some(unit @ (Unit::Millimetre | Unit::Centimetre | Unit::Metre))) => {
            texts::typed(&literal_text((size * 100.0).round() / 100.0, Some(unit)))
        }
        (Some(Kind::LENGTH), _) => texts::length(size, scene.draft().display),
        (Some(Kind::Angle), _) => texts::decimal(&format!("{:.1}°", size.to_degrees())),
        _ => texts::decimal(&format!("{}", (size * 1e3).round() / 1e3)),
    });
    format!("{sign}{words}")
}

/// Rows in their order, those that vary alike together, with their columns.
fn sections(chart: &Chart) -> Vec<Section<'_>> {
    let mut out: Vec<Section<'_>> = Vec::new();
    for row in &chart.rows {
        match out.iter_mut().find(|s| s.by == row.by) {
            Some(section) => section.rows.push(row),
            None => {
                let sizes = chart.keys(&row.by).into_iter().map(Column::Size);
                let every = row.by.is_empty().then_some(Column::Every);
                let persons = chart.persons.iter().map(|p| Column::Person(p.name.clone()));
                let columns = sizes.chain(every).chain(persons).collect();
                out.push(Section { by: row.by.clone(), rows: vec![row], columns });
            }
        }
    }
    out
}

fn place_of(chart: &Chart, by: &[Axis], labels: [Option<u32>; 3]) -> Option<String> {
    let parts = by.iter().map(|axis| chart.labels(*axis).get(labels[*axis as usize]? as usize).map(String::as_str));
    parts.collect::<Option<Vec<&str>>>().map(|p| p.join("/"))
}

fn cases_of(scene: &Scene, by: &[Axis]) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for (i, case) in scene.cases().iter().flat_map(|c| c.list.iter().enumerate()) {
        if let Some(key) = place_of(&scene.draft().chart, by, case.labels).filter(|_| case.person.is_none()) {
            out.entry(key).or_insert(i);
        }
    }
    out
}
