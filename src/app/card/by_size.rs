//! A number in each size, one under the other, as a bar and in words.

use egui::{Align, CornerRadius, Layout, Rect, RichText, Sense, Ui, pos2, vec2};

use super::Card;
use crate::app::field;
use crate::app::look::{self, letters};
use crate::app::state::Wish;
use crate::language::Kind;
use crate::texts::{self, say};

/// The most sizes that are listed.
const MOST: usize = 120;

/// How a number is said.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Said {
    Length,
    Angle,
    Number,
}

impl Said {
    pub fn of(kind: Option<Kind>) -> Option<Self> {
        match kind? {
            Kind::LENGTH | Kind::Edge(_) => Some(Self::Length),
            Kind::Angle => Some(Self::Angle),
            Kind::NUMBER => Some(Self::Number),
            _ => None,
        }
    }
}

impl Card<'_> {
    /// A number in words.
    pub(super) fn say(&self, value: f64, said: Said) -> String {
        texts::owned(|| match said {
            Said::Length => texts::length(value, self.draft_unit()),
            Said::Angle => texts::decimal(&format!("{:.1}°", value.to_degrees())),
            Said::Number => texts::decimal(&format!("{value:.3}")),
        })
    }

    /// The list; a click on a size shows it.
    pub(super) fn by_size(&mut self, ui: &mut Ui, caption: &str, said: Said, value: &dyn Fn(usize) -> Option<f64>) {
        let Some(cases) = self.scene.cases() else { return };
        let range = if cases.range > 0 { cases.range } else { cases.list.len() };
        let numbers: Vec<(usize, Option<f64>)> = (0..range.min(MOST)).map(|c| (c, value(c))).collect();
        // The chosen person stands below the range.
        let person = (self.case >= range).then(|| (self.case, value(self.case)));
        if numbers.is_empty() && person.is_none() {
            return;
        }
        field::caption(ui, self.look, caption);
        let most = numbers.iter().filter_map(|(_, n)| *n).map(f64::abs).fold(0.0, f64::max);
        let mut before: Option<f64> = None;
        for (case, number) in numbers.into_iter().chain(person) {
            let words = number.map_or_else(|| say!("card-no-value"), |n| self.say(n, said));
            let step = match (number, before) {
                (Some(n), Some(b)) if case < range => {
                    let words = self.say((n - b).abs(), said);
                    format!("{}{words}", if n >= b { "+" } else { "−" })
                }
                _ => String::new(),
            };
            before = number;
            self.size_line(
                ui,
                case,
                number.map_or(0.0, |n| if most > 0.0 { (n.abs() / most) as f32 } else { 0.0 }),
                &words,
                &step,
            );
        }
    }

    fn size_line(&mut self, ui: &mut Ui, case: usize, part: f32, words: &str, step: &str) {
        let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width() - 8.0, 19.0), Sense::click());
        let address = self.scene.cases().and_then(|c| c.list.get(case)).map_or("", |c| c.address.as_str()).to_owned();
        let called = say!("card-size-line", size = self.scene.called(case), number = words);
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &called));
        if response.clicked() {
            self.wishes.push(Wish::Choose(address.clone()));
        }
        if !ui.is_rect_visible(rect) {
            return;
        }
        let own = self.look.size(self.scene.part(case));
        let painter = ui.painter_at(rect);
        if case == self.case {
            painter.rect_filled(rect, CornerRadius::same(4), self.look.touched);
        }
        let y = rect.center().y;
        let draw = |x: f32, align: Align, words: &str, color, size: f32| {
            let galley = painter.layout_no_wrap(words.to_owned(), letters(size), color);
            let left = match align {
                Align::Max => x - galley.size().x,
                _ => x,
            };
            painter.galley(pos2(left, y - galley.size().y / 2.0), galley, color);
        };
        draw(rect.left() + 4.0, Align::Min, &address, own, look::SMALL);
        let bar = (rect.width() - 210.0).max(10.0);
        let bar = Rect::from_min_size(pos2(rect.left() + 52.0, y - 4.0), vec2(bar * part, 8.0));
        if address.len() <= 6 {
            painter.rect_filled(bar, CornerRadius::same(3), own.gamma_multiply(0.45));
        }
        draw(rect.right() - 76.0, Align::Max, words, self.look.ink, look::SMALL);
        draw(rect.right() - 4.0, Align::Max, step, self.look.soft, look::SMALL - 1.0);
    }

    /// A short line of words.
    pub(super) fn say_line(&self, ui: &mut Ui, words: &str) {
        ui.with_layout(Layout::top_down(Align::Min), |ui| {
            ui.label(RichText::new(words).font(letters(look::SMALL)).color(self.look.soft));
        });
    }
}
