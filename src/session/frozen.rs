//! A draft whose found values stay as they are, size by size: for trying what else a change does.

use super::fresh_name;
use crate::base::Unit;
use crate::compute::{Item, Model};
use crate::document::{Axis, Cell, Draft, Row, RowKind, Value};
use crate::language::{Kind, literal_text};

/// Found values as they were, size by size.
pub(super) struct Frozen {
    rows: Vec<Row>,
    /// For each person its cells.
    persons: Vec<Vec<Cell>>,
    /// Value and row.
    values: Vec<(String, String)>,
}

impl Frozen {
    pub fn of(draft: &Draft, model: &Model) -> Self {
        let chart = &draft.chart;
        let axes = [(Axis::Girth, &chart.girth), (Axis::Cup, &chart.cup), (Axis::Length, &chart.length)];
        let mut out = Self { rows: Vec::new(), persons: vec![Vec::new(); chart.persons.len()], values: Vec::new() };
        for value in draft.values.iter().filter(|v| v.is_found()) {
            let Some(node) = model.plan.node_named(&value.name) else { continue };
            let unit = match model.plan.nodes[node as usize].kind {
                Some(Kind::LENGTH) => Some(Unit::Millimetre),
                Some(Kind::Angle) => Some(Unit::Degree),
                Some(Kind::NUMBER) => None,
                _ => continue,
            };
            let name = fresh_name(draft, &format!("{}_found", value.name));
            let used = axes.iter().filter(|a| !a.1.is_empty());
            let mut row = Row { name, kind: RowKind::House, by: used.map(|a| a.0).collect(), ..Row::default() };
            for (case, of) in model.plan.cases.list.iter().enumerate() {
                let Some(found) = model.item(case, node).and_then(Item::real) else { continue };
                let text = literal_text(found, unit);
                if let Some(person) = of.person {
                    out.persons[person as usize].push(Cell(row.name.clone(), text));
                    continue;
                }
                let labels = axes.iter().zip(of.labels).filter_map(|((_, all), i)| all.get(i? as usize));
                let key = labels.map(String::as_str).collect::<Vec<_>>().join("/");
                if row.cells.iter().all(|c| c.0 != key) {
                    row.cells.push(Cell(key, text));
                }
            }
            out.values.push((value.name.clone(), row.name.clone()));
            out.rows.push(row);
        }
        out
    }

    pub fn in_draft(&self, draft: &Draft) -> Draft {
        let mut out = draft.clone();
        out.chart.rows.extend_from_slice(&self.rows);
        for (person, cells) in out.chart.persons.iter_mut().zip(&self.persons) {
            person.cells.extend_from_slice(cells);
        }
        for (name, row) in &self.values {
            if let Some(value) = out.values.iter_mut().find(|v| v.name == *name) {
                *value = Value { name: name.clone(), is: format!("chart.{row}"), ..Value::default() };
            }
        }
        out
    }
}
