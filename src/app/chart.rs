//! The body chart in the middle: rows of measures, a column for each size and person. Enter goes down, Tab to the right.

use egui::{Align, Frame, Grid, Key, Layout, Margin, RichText, ScrollArea, Ui, vec2};

use super::field::{self, Form};
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Field, Room, Shown, Wish};
use super::{guide, help};
use crate::base::{Code, Finding, shown as length_text};
use crate::document::{Axis, Part, Row, RowKind};
use crate::language::Kind;
use crate::session::{Act, ChartCommand, Command};

/// Width of a row's name, px.
const NAME: f32 = 118.0;
/// Width of a cell, px.
const CELL: f32 = 94.0;
/// The most columns that are shown at once; of more, those beside the chosen size.
const MOST_COLUMNS: usize = 80;

/// A column.
enum Column {
    Size(String),
    Person(String),
}

/// Paints the chart.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let ground = Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6);
    ground.show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        head(ui, look, scene, shown, wishes);
        let draft = scene.draft();
        let chart = &draft.chart;
        if chart.rows.is_empty() || chart.girth.is_empty() && chart.cup.is_empty() && chart.length.is_empty() {
            ui.add_space(20.0);
            let words = "A chart needs sizes and rows: add the first size and the first row with the buttons above.";
            ui.label(RichText::new(words).color(look.soft));
        }
        let guessed: Vec<&Finding> = scene
            .findings()
            .map(|(_, f)| f)
            .filter(|f| matches!(f.code, Code::CellGuessed | Code::CellBeyond | Code::CellMissing | Code::PersonLacks))
            .collect();
        ScrollArea::both().auto_shrink([false, false]).show(ui, |ui| {
            for axes in axes_of(&chart.rows) {
                let rows: Vec<&Row> = chart.rows.iter().filter(|r| r.by == axes).collect();
                let columns = columns(scene, &axes);
                table(ui, look, scene, shown, (&rows, &columns), &guessed, wishes);
                ui.add_space(18.0);
            }
        });
    });
}

fn head(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    ui.horizontal(|ui| {
        ui.label(RichText::new("Chart").font(letters(look::LARGE)).color(look.ink));
        for act in [Act::AddSize, Act::AddRow, Act::AddPerson] {
            let response = ui.button(act.action().name.trim_end_matches(" …")).on_hover_text(act.action().what);
            guide::mark(ui, shown, act, &response);
            if response.clicked() {
                wishes.push(Wish::Act(act));
            }
        }
        let proposals =
            scene.findings().filter(|(_, f)| matches!(f.code, Code::CellGuessed | Code::CellBeyond)).count();
        if proposals > 0 {
            let words = format!("Confirm {proposals} proposed numbers");
            if ui.button(words).on_hover_text(Act::Confirm.action().what).clicked() {
                wishes.push(Wish::Act(Act::Confirm));
            }
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            help::question(ui, "the chart", "chart", wishes);
            if ui.button("Show the pieces").clicked() {
                wishes.push(Wish::Room(Room::Table));
            }
        });
    });
    let words = "Type a number with its unit, or +2 cm for a step from the size before. Enter goes down, Tab to the right. \
                 Numbers with a question mark are proposals until they are confirmed.";
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    ui.add_space(6.0);
}

/// Every combination of axes by which rows vary, in the order of the rows.
fn axes_of(rows: &[Row]) -> Vec<Vec<Axis>> {
    let mut out: Vec<Vec<Axis>> = Vec::new();
    for row in rows {
        if !out.contains(&row.by) {
            out.push(row.by.clone());
        }
    }
    out
}

/// The columns of rows that vary by these axes.
fn columns(scene: &Scene, axes: &[Axis]) -> Vec<Column> {
    let chart = &scene.draft().chart;
    let mut keys: Vec<String> = vec![String::new()];
    for axis in axes {
        let labels = match axis {
            Axis::Girth => &chart.girth,
            Axis::Cup => &chart.cup,
            Axis::Length => &chart.length,
        };
        let joined =
            |key: &String, label: &String| if key.is_empty() { label.clone() } else { format!("{key}/{label}") };
        keys = keys.iter().flat_map(|k| labels.iter().map(move |l| joined(k, l))).collect();
    }
    if axes.is_empty() {
        keys.clear();
    }
    let persons = chart.persons.iter().map(|p| Column::Person(p.name.clone()));
    keys.into_iter().map(Column::Size).chain(persons).take(MOST_COLUMNS).collect()
}

fn table(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    (rows, columns): (&[&Row], &[Column]),
    guessed: &[&Finding],
    wishes: &mut Vec<Wish>,
) {
    Grid::new(("chart", rows.first().map(|r| &r.name))).spacing(vec2(4.0, 3.0)).min_col_width(CELL).show(ui, |ui| {
        ui.label("");
        for column in columns {
            let name = match column {
                Column::Size(label) | Column::Person(label) => label,
            };
            let case = scene.cases().and_then(|c| c.list.iter().position(|c| c.address == *name));
            let chosen = *name == shown.case;
            let color = case.map_or(look.ink, |c| look.size(scene.part(c)));
            let words = RichText::new(name).font(letters(look::SMALL)).color(color);
            let words = if chosen { words.underline() } else { words };
            if ui.add(egui::Label::new(words).truncate().sense(egui::Sense::click())).clicked() {
                wishes.push(Wish::Choose(name.clone()));
            }
        }
        ui.end_row();
        for (r, row) in rows.iter().enumerate() {
            let words = RichText::new(&row.name).font(letters(look::TEXT)).color(look.ink);
            let words = if row.kind == RowKind::House { words.italics() } else { words };
            let label = egui::Label::new(words).truncate().sense(egui::Sense::click());
            let about = if row.kind == RowKind::House { "house row" } else { row.what.as_str() };
            let left = Layout::left_to_right(Align::Center);
            let named = ui.allocate_ui_with_layout(vec2(NAME, look.row), left, |ui| {
                ui.set_min_width(NAME);
                ui.add(label)
            });
            if named.inner.on_hover_text(about).clicked() {
                wishes.push(Wish::Part(Part::Row(row.name.clone())));
            }
            for column in columns {
                let below = rows.get(r + 1).map(|next| field_of(next, column));
                cell(ui, scene, shown, (row, column), below, guessed, wishes);
            }
            ui.end_row();
        }
    });
}

fn field_of(row: &Row, column: &Column) -> Field {
    match column {
        Column::Size(label) => Field::Cell(row.name.clone(), label.clone()),
        Column::Person(person) => Field::PersonCell(person.clone(), row.name.clone()),
    }
}

fn cell(
    ui: &mut Ui,
    scene: &Scene,
    shown: &Shown,
    (row, column): (&Row, &Column),
    below: Option<Field>,
    guessed: &[&Finding],
    wishes: &mut Vec<Wish>,
) {
    let chart = &scene.draft().chart;
    let (text, name) = match column {
        Column::Size(label) => (row.cells.iter().find(|c| c.0 == *label).map(|c| c.1.as_str()), label),
        Column::Person(name) => {
            let person = chart.persons.iter().find(|p| p.name == *name);
            (person.and_then(|p| p.cells.iter().find(|c| c.0 == row.name)).map(|c| c.1.as_str()), name)
        }
    };
    let text = text.unwrap_or("");
    let hint = if text.is_empty() { proposed(scene, row, name, guessed) } else { String::new() };
    let called = format!("{} in {name}", row.name);
    let form = Form { called: &called, hint: &hint, width: CELL, formula: false, choose_all: true };
    let response = field::line(ui, shown, field_of(row, column), text, form, wishes);
    if response.lost_focus()
        && ui.input(|i| i.key_pressed(Key::Enter))
        && let Some(below) = below
    {
        ui.memory_mut(|m| m.request_focus(field::id(&below)));
    }
    if response.secondary_clicked()
        && text.is_empty()
        && let Column::Size(label) = column
    {
        let confirm = ChartCommand::Confirm(row.name.clone(), label.clone());
        wishes.push(Wish::Run(Command::Chart(confirm)));
    }
}

/// What stands in an empty cell: the proposal or what the row's formula gives.
fn proposed(scene: &Scene, row: &Row, name: &str, guessed: &[&Finding]) -> String {
    let place = format!("chart.{}", row.name);
    let unit = scene.draft().display;
    let own = guessed.iter().find(|f| f.place.name == place && f.sizes.iter().any(|s| s == name));
    if let Some(finding) = own {
        let word = finding.words.iter().find(|(n, _)| *n == "guess");
        return word.map_or_else(|| "missing".to_owned(), |(_, guess)| format!("{guess}?"));
    }
    let Some(model) = scene.model() else { return String::new() };
    let case = model.plan.cases.list.iter().position(|c| c.address == name);
    let node = model.plan.node_named(&place);
    let (Some(case), Some(node)) = (case, node) else { return String::new() };
    let number = model.item(case, node).and_then(|i| i.real());
    match (number, model.plan.nodes[node as usize].kind) {
        (Some(n), Some(Kind::LENGTH)) => format!("={}", length_text(n, unit)),
        (Some(n), Some(Kind::Angle)) => format!("={:.1}°", n.to_degrees()),
        (Some(n), _) => format!("={n:.3}"),
        _ => String::new(),
    }
}
