//! Doing what was wished of the chart: blocks, tables on the disk, rows that are moved.

use std::path::Path;

use crate::app::Window;
use crate::app::ask::Ask;
use crate::app::state::Room;
use crate::document::{Part, Row};
use crate::output::save_all;
use crate::session::{Act, Block, ChartCommand, Command, export_chart};
use crate::texts::say;

use super::{ChartWish, Page};

/// The largest table that is read, bytes.
const MOST_BYTES: u64 = 2_000_000;

impl Window {
    /// Does what was wished of the chart.
    pub(in crate::app) fn chart_wish(&mut self, wish: ChartWish) {
        match wish {
            ChartWish::Page(page) => self.chart_page(page),
            ChartWish::Look(text, at) => {
                self.chart_page(Page::Paste);
                self.shown.chart.source.clear();
                let block = Block::of(self.open.work().draft(), &text, at);
                self.shown.chart.look_at(Some(block));
            }
            ChartWish::Say(block) => self.shown.chart.look_at(Some(*block)),
            ChartWish::Take => self.take_block(),
            ChartWish::Arrived => self.shown.chart.go = None,
            ChartWish::Close => {
                self.shown.chart.look_at(None);
                self.shown.chart.source.clear();
                self.chart_page(Page::Numbers);
            }
            ChartWish::AddLabel(axis) => {
                self.shown.ask = Ask::adding(Act::AddSize, &self.scene, &self.shown);
                if let Some(field) = self.shown.ask.as_mut().and_then(|a| a.fields.get_mut(2)) {
                    axis.word().clone_into(&mut field.text);
                }
            }
            ChartWish::RenameLabel(axis, label) => self.shown.ask = Some(Ask::renaming_size(axis, &label)),
            ChartWish::DeleteLabel(axis, label) => {
                self.shown.ask = Some(Ask::deleting_size(self.open.work().draft(), axis, &label));
            }
        }
    }

    /// Shows a page of the chart.
    pub(in crate::app) fn chart_page(&mut self, page: Page) {
        self.finish_typing();
        self.shown.room = Room::Chart;
        self.shown.chart.page = page;
        self.shown.chart.go = None;
    }

    /// Does an action of the chart.
    pub(in crate::app) fn chart_act(&mut self, act: Act) {
        match act {
            Act::PasteNumbers => self.chart_page(Page::Paste),
            Act::Proposals => self.chart_page(Page::Proposals),
            Act::ChartSizes => self.chart_page(Page::Sizes),
            Act::Steps => {
                self.chart_page(Page::Numbers);
                self.shown.chart.steps = !self.shown.chart.steps;
            }
            Act::RowUp => self.move_row(-1),
            Act::RowDown => self.move_row(1),
            Act::ReadTable => self.shown.ask = Some(Ask::reading_table(&self.open)),
            Act::WriteTable => self.shown.ask = Some(Ask::writing_table(&self.open)),
            _ => {}
        }
    }

    /// Takes the right cells. Where some are wrong, the block stays.
    fn take_block(&mut self) {
        let Some(block) = self.shown.chart.block.clone() else { return };
        self.finish_typing();
        match self.open.run(&Command::Chart(ChartCommand::Paste(Box::new(block)))) {
            Ok(told) => {
                self.tell(told);
                self.open.settle();
                self.follow();
                let wrong = self.shown.chart.laid(&self.scene).is_some_and(|l| l.wrong().next().is_some());
                if !wrong {
                    self.shown.chart.look_at(None);
                    self.shown.chart.source.clear();
                    self.shown.chart.page = Page::Numbers;
                }
            }
            Err(problem) => self.refuse(problem.to_string()),
        }
    }

    /// The chosen row goes one place up or down among those that it is shown with.
    fn move_row(&mut self, by: isize) {
        let Some(Part::Row(name)) = self.shown.part.clone() else { return };
        let rows = &self.open.work().draft().chart.rows;
        let Some(from) = rows.iter().position(|r| r.name == name) else { return };
        let beside = |r: &(usize, &Row)| r.1.by == rows[from].by;
        let to = match by < 0 {
            true => rows.iter().enumerate().take(from).rfind(beside),
            false => rows.iter().enumerate().skip(from + 1).find(beside),
        };
        match to.map(|(i, _)| i) {
            Some(to) => self.run(&Command::Chart(ChartCommand::PlaceRow(name, to))),
            None if by < 0 => self.refuse(say!("chart-first-row", row = name)),
            None => self.refuse(say!("chart-last-row", row = name)),
        }
    }

    /// Reads a table from the disk, to be looked at.
    pub(in crate::app) fn read_table(&mut self, path: &Path) {
        let read = || -> Result<String, String> {
            let file = path.display().to_string();
            let cannot = |e: std::io::Error| say!("chart-not-read", file, why = e.to_string());
            let about = std::fs::metadata(path).map_err(cannot)?;
            if !about.is_file() {
                return Err(say!("chart-no-file", file));
            }
            if about.len() > MOST_BYTES {
                return Err(say!("chart-too-large", file, bytes = about.len(), most = MOST_BYTES));
            }
            String::from_utf8(std::fs::read(path).map_err(cannot)?).map_err(|_| say!("chart-not-text", file))
        };
        match read() {
            Ok(text) => {
                self.shown.ask = None;
                self.chart_wish(ChartWish::Look(text, Default::default()));
                self.shown.chart.source =
                    path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
            }
            Err(problem) => self.problem(&problem),
        }
    }

    /// Writes the chart as a table.
    pub(in crate::app) fn write_table(&mut self, path: &Path) {
        let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let Some(name) = path.file_name().map(|n| n.to_string_lossy().into_owned()) else {
            return self.problem(&say!("chart-name-needed"));
        };
        let written = export_chart(self.open.work().draft())
            .map_err(|e| e.to_string())
            .and_then(|text| save_all(folder, &[(name, text.into_bytes())]).map_err(|e| e.to_string()));
        match written {
            Ok(_) => {
                self.shown.ask = None;
                self.tell(say!("chart-written", file = path.display().to_string()));
            }
            Err(problem) => self.problem(&problem),
        }
    }
}
