//! The room of cloth: what is to be bought in every size, material and width, how far the search for it is, and the chosen plan.
//!
//! Nothing is searched or laid out here: the search goes on beside the window (`session::Laying`), the table is made there too, and what is
//! wished is granted in `work`, `keeping` and `handling`. The plan itself is painted by `plan`, the table by `table`.

mod fill;
mod handling;
mod keeping;
mod longest;
mod plan;
mod steering;
mod table;
mod work;

use std::cell::RefCell;
use std::sync::Arc;
use std::sync::mpsc::Receiver;

use egui::{Button, Label, RichText, Role, Ui, WidgetInfo, vec2};
use kurbo::Point;

pub(super) use longest::{LongestAsk, LongestWish, show as show_longest};

use super::help;
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::sheets::framed;
use super::state::{Shown, Wish};
use super::view::View;
use crate::base::DisplayUnit;
use crate::output::lay::packing::Phase;
use crate::output::lay::{Lay, LayError, Need, yards};
use crate::session::{Act, HandFault, LayHand, LayKey, LayRow, LayTable, Laying};
use crate::texts::{own_length, readable, say};

/// What was found for a cell.
#[derive(Clone)]
pub(super) struct Found {
    lay: Option<Arc<Lay>>,
    /// Its pieces that stay where they are, as stretch and place.
    locked: Vec<(usize, usize)>,
    failed: Option<LayError>,
    odd: Option<String>,
    /// Whether its pieces or its cloth are others by now.
    stale: bool,
}

/// A lay in the hand, with its own steps of undo: it is no part of the draft until it is kept.
pub(super) struct Hand {
    hand: LayHand,
    done: Vec<(String, LayHand)>,
    undone: Vec<(String, LayHand)>,
    faults: Vec<HandFault>,
    need: Need,
    unit: DisplayUnit,
    /// Whether it is another one than is kept.
    changed: bool,
}

/// A piece that is carried.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Carried {
    stretch: usize,
    piece: usize,
    /// Where the pointer took it, on its stretch, mm.
    from: Point,
    /// The first corner of its box then.
    corner: Point,
}

/// A search that goes on, and for which cells.
pub(super) struct Search {
    laying: Laying,
    keys: Vec<LayKey>,
    rows: Vec<LayRow>,
    /// What it began with, by cell.
    starts: Vec<Option<LayHand>>,
    /// Whether only one plan is looked for.
    one: bool,
}

/// What is shown of the cloth.
#[derive(Default)]
pub(super) struct ClothShown {
    table: Option<Arc<LayTable>>,
    /// Of which revision and groups the table is.
    of: (u64, usize),
    making: Option<((u64, usize), Receiver<LayTable>)>,
    /// Counts up with every change of the groups.
    generation: usize,
    /// Groups that were named.
    groups: Vec<Vec<(String, u32)>>,
    search: Option<Search>,
    found: Vec<(LayKey, Found)>,
    hands: Vec<(LayKey, Hand)>,
    /// The chosen cell.
    at: Option<LayKey>,
    /// The chosen piece: stretch and place.
    piece: Option<(usize, usize)>,
    carried: Option<Carried>,
    view: Option<View>,
    /// How far arrows push, as one of `steps`.
    step: usize,
    painted: RefCell<plan::Painted>,
    /// The dialog for the longest value, if it is open.
    pub longest: Option<LongestAsk>,
    pub seeking: Option<longest::Seeking>,
}

/// So many lengths there are for how far arrows push.
const STEPS: usize = 3;

/// How far arrows push, mm: lengths that read well in the unit of the draft.
fn steps(unit: DisplayUnit) -> [f64; STEPS] {
    match unit {
        DisplayUnit::Mm | DisplayUnit::Cm => [1.0, 5.0, 20.0],
        DisplayUnit::InchEighths => [25.4 / 8.0, 25.4 / 4.0, 25.4],
        DisplayUnit::InchSixteenths => [25.4 / 16.0, 25.4 / 4.0, 25.4],
    }
}

/// What a person wishes of the cloth.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::app) enum ClothWish {
    /// Show the plan of this cell.
    See(LayKey),
    /// Choose a piece, or none.
    Piece(Option<(usize, usize)>),
    /// It was taken, where the pointer was, mm on its stretch.
    Take((usize, usize), Point),
    /// It is carried there.
    Carry(Point),
    /// It was let go.
    LetGo,
    /// It is pushed by a key: along, across, in steps.
    Push(f64, f64),
    /// How far arrows push.
    Step(usize),
    /// See this part of the cloth; none: all of it.
    Look(Option<View>),
    /// Kept plans, by their places in the draft, are taken out of it.
    TakePlans(Vec<usize>),
    /// A group is taken out of the table.
    DropGroup(Vec<(String, u32)>),
    /// Something in the dialog for the longest value.
    Longest(LongestWish),
}

/// How a cell stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Standing {
    NotPlanned,
    Searching,
    Found,
    ByHand,
    Kept,
    Stale(String),
    DoesNotFit(String),
    CannotBeLaid(String),
    NotFound(String),
}

impl Standing {
    /// Its sign and word.
    fn words(&self) -> (&'static str, String) {
        match self {
            Self::NotPlanned => ("○", say!("cloth-not-planned")),
            Self::Searching => ("…", say!("cloth-searching")),
            Self::Found => ("●", say!("cloth-found")),
            Self::ByHand => ("●", say!("cloth-by-hand")),
            Self::Kept => ("✓", say!("cloth-kept")),
            Self::Stale(_) => ("▲", say!("cloth-stale")),
            Self::DoesNotFit(_) => ("■", say!("cloth-does-not-fit")),
            Self::CannotBeLaid(_) => ("■", say!("cloth-cannot-be-laid")),
            Self::NotFound(_) => ("■", say!("cloth-none-found")),
        }
    }

    fn color(&self, look: &Look) -> egui::Color32 {
        match self {
            Self::NotPlanned | Self::Searching => look.soft,
            Self::Found | Self::ByHand => look.note,
            Self::Kept => look.ink,
            Self::Stale(_) => look.warning,
            Self::DoesNotFit(_) | Self::CannotBeLaid(_) | Self::NotFound(_) => look.error,
        }
    }
}

/// A length of cloth that is bought.
pub(super) fn bought(need: &Need, unit: DisplayUnit) -> String {
    match unit {
        DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => yards(need.buy_yards),
        _ => own_length(need.buy, unit),
    }
}

impl ClothShown {
    /// Whether something is being looked for.
    pub fn is_searching(&self) -> bool {
        self.search.is_some() || self.seeking.is_some()
    }

    /// Whether a plan is seen that could be kept, or improved.
    pub fn has_cell(&self) -> bool {
        self.at.as_ref().is_some_and(|k| self.table.as_ref().is_some_and(|t| t.cell(k).is_some()))
    }

    /// Whether a piece of the plan is chosen.
    pub fn has_piece(&self) -> bool {
        self.piece.is_some() && self.seen().is_some()
    }

    /// What undoing would take back by hand.
    pub fn undo_label(&self) -> Option<&str> {
        self.hand()?.done.last().map(|d| d.0.as_str())
    }

    /// What could be done again by hand.
    pub fn redo_label(&self) -> Option<&str> {
        self.hand()?.undone.last().map(|d| d.0.as_str())
    }

    fn hand(&self) -> Option<&Hand> {
        let key = self.at.as_ref()?;
        self.hands.iter().find(|(k, _)| k == key).map(|(_, h)| h)
    }

    fn found(&self, key: &LayKey) -> Option<&Found> {
        self.found.iter().find(|(k, _)| k == key).map(|(_, f)| f)
    }

    /// The row of the search that is about a cell.
    fn row(&self, key: &LayKey) -> Option<&LayRow> {
        let search = self.search.as_ref()?;
        search.keys.iter().position(|k| k == key).and_then(|i| search.rows.get(i))
    }

    /// The same, if it goes on.
    fn sought(&self, key: &LayKey) -> Option<&LayRow> {
        self.row(key).filter(|r| !r.done)
    }

    /// The lay of a cell: in the hand, being looked for, found or kept.
    fn lay(&self, key: &LayKey) -> Option<&Lay> {
        let best = self.row(key).and_then(|r| r.best.as_deref());
        let hand = self.hands.iter().find(|(k, _)| k == key).map(|(_, h)| &h.hand.lay);
        let found = self.found(key).filter(|f| !f.stale).and_then(|f| f.lay.as_deref());
        let cell = self.table.as_ref().and_then(|t| t.cell(key));
        let kept = cell.and_then(|c| c.kept.as_ref()?.lay.as_ref().ok()).map(|k| &*k.0);
        let shorter = match (found, kept) {
            (Some(f), Some(k)) => Some(if f.need().exact < k.need().exact - TOLD { f } else { k }),
            (f, k) => f.or(k),
        };
        best.or(hand).or(shorter)
    }

    /// The lay that is seen.
    fn seen(&self) -> Option<&Lay> {
        self.lay(self.at.as_ref()?)
    }

    /// How a cell stands.
    fn standing(&self, key: &LayKey) -> Standing {
        let Some(cell) = self.table.as_ref().and_then(|t| t.cell(key)) else { return Standing::NotPlanned };
        if let Err(why) = &cell.job {
            return match why {
                // It is the pieces that are not right, not the cloth.
                LayError::Cloth(_) => Standing::CannotBeLaid(why.to_string()),
                _ => Standing::DoesNotFit(why.to_string()),
            };
        }
        if self.sought(key).is_some() {
            return Standing::Searching;
        }
        if self.hands.iter().any(|(k, h)| k == key && h.changed) {
            return Standing::ByHand;
        }
        let found = self.found(key).filter(|f| !f.stale);
        let settled = self.row(key).and_then(|r| r.best.as_ref());
        let lay = settled.or(found.and_then(|f| f.lay.as_ref()));
        match (lay, &cell.kept) {
            (Some(lay), Some(kept)) => match &kept.lay {
                Ok((own, _)) if own.need().exact <= lay.need().exact + TOLD => Standing::Kept,
                _ => Standing::Found,
            },
            (Some(_), None) => Standing::Found,
            (None, Some(kept)) => match &kept.lay {
                Ok(_) => Standing::Kept,
                Err(why) => Standing::Stale(why.clone()),
            },
            (None, None) => match found.and_then(|f| f.failed.as_ref()) {
                Some(why) => Standing::NotFound(why.to_string()),
                None if self.found(key).is_some_and(|f| f.stale && f.lay.is_some()) => {
                    Standing::Stale(say!("cloth-others-now"))
                }
                None => Standing::NotPlanned,
            },
        }
    }
}

/// Lengths that differ by less are the same, mm.
const TOLD: f64 = crate::base::tolerance::LAID;

/// A cell of the table, as it is called where a plan is named: material, width, sizes; how the cloth lies where the draft says otherwise.
fn called(cloth: &ClothShown, key: &LayKey) -> String {
    let untold = cloth.table.as_ref().is_some_and(|t| !t.is_told(key));
    let lies = if untold { format!(", {}", table::lies(key)) } else { String::new() };
    format!("{} {}{lies}, {}", readable(&key.material), key.width, key.sizes_called())
}

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    framed(ui, look, |ui| {
        let cloth = &shown.cloth;
        head(ui, look, cloth, wishes);
        progress(ui, look, scene, cloth);
        let Some(table) = cloth.table.as_ref() else {
            let words = match scene.whole.model {
                Some(_) => format!("{} …", say!("cloth-looking")),
                None => format!("■ {}", say!("cloth-not-computed")),
            };
            ui.label(RichText::new(words).color(look.soft));
            return;
        };
        if table.cells.is_empty() {
            nothing(ui, look, wishes);
            return;
        }
        ui.add_space(2.0);
        let room = ui.available_size();
        ui.horizontal_top(|ui| {
            let wide = table::width(table, scene.view()).min(room.x * 0.42);
            ui.allocate_ui(vec2(wide, room.y), |ui| {
                ui.set_min_size(vec2(wide, room.y));
                ui.vertical(|ui| table::show(ui, look, scene, shown, table, wishes));
            });
            ui.add_space(6.0);
            ui.vertical(|ui| plan::show(ui, look, scene, shown, wishes));
        });
    });
}

fn head(ui: &mut Ui, look: &Look, cloth: &ClothShown, wishes: &mut Vec<Wish>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("cloth-title")).font(letters(look::LARGE)).color(look.ink));
        help::question(ui, &say!("cloth-help-of"), "lays", wishes);
        let keep = cloth.table.as_ref().is_some_and(|t| {
            t.cells.iter().any(|c| matches!(cloth.standing(&c.key), Standing::Found | Standing::ByHand))
        });
        let going = cloth.search.is_some();
        let can_plan = cloth.table.as_ref().is_some_and(|t| t.cells.iter().any(|c| c.job.is_ok()));
        for (act, word, can) in [
            (Act::PlanAll, say!("cloth-plan-all"), can_plan && !going),
            (Act::StopPlanning, say!("cloth-stop"), going),
            (Act::KeepPlans, say!("cloth-keep-all"), keep),
        ] {
            button(ui, act, &word, can, wishes);
        }
        ui.separator();
        for (act, word) in [
            (Act::AddGroup, say!("cloth-group")),
            (Act::AddWidth, say!("cloth-width")),
            (Act::Longest, say!("cloth-longest")),
            (Act::Cloth, say!("cloth-show-pieces")),
        ] {
            button(ui, act, &word, true, wishes);
        }
    });
}

/// A button that does an action; its key is told on hovering.
fn button(ui: &mut Ui, act: Act, word: &str, can: bool, wishes: &mut Vec<Wish>) {
    let action = act.action();
    let response = ui.add_enabled(can, Button::new(word));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, can, word));
    let about =
        if action.key.is_empty() { action.what().to_owned() } else { format!("{} ({})", action.what(), action.key) };
    if response.on_hover_text(about).clicked() {
        wishes.push(Wish::Act(act));
    }
}

/// One line of one height: how far the search is, or what the numbers are.
fn progress(ui: &mut Ui, look: &Look, scene: &Scene, cloth: &ClothShown) {
    let unit = scene.draft().display;
    let words = match &cloth.search {
        Some(search) => {
            let settled = search.rows.iter().filter(|r| r.done).count();
            let moves: u64 = search.rows.iter().map(|r| r.moves).sum();
            let at = search.rows.iter().zip(&search.keys).find(|(r, _)| !r.done && r.phase.is_some());
            let mut words = vec![say!("cloth-settled", settled, all = search.rows.len())];
            if let Some((row, key)) = at {
                let what = match row.phase {
                    Some(Phase::First) | None => say!("cloth-phase-first"),
                    Some(Phase::Explore) => say!("cloth-phase-explore"),
                    Some(Phase::Compress) => say!("cloth-phase-compress"),
                };
                let plan = called(cloth, key);
                words.push(match &row.best {
                    Some(best) => say!("cloth-at-best", plan, what, best = bought(&best.need(), unit)),
                    None => say!("cloth-at", plan, what),
                });
            }
            words.push(say!("cloth-moves", moves = grouped(moves)));
            words.join(" · ")
        }
        None => {
            let cells: Vec<_> = cloth.table.iter().flat_map(|t| t.cells.iter().filter(|c| t.is_told(&c.key))).collect();
            let count = |is: &dyn Fn(&Standing) -> bool| cells.iter().filter(|c| is(&cloth.standing(&c.key))).count();
            let kept = count(&|s| *s == Standing::Kept);
            let stale = count(&|s| matches!(s, Standing::Stale(_)));
            let open = count(&|s| *s == Standing::NotPlanned);
            let never = count(&|s| matches!(s, Standing::DoesNotFit(_) | Standing::CannotBeLaid(_)));
            let mut words = vec![say!("cloth-lengths"), say!("cloth-kept-of", kept, all = cells.len())];
            words.extend((open > 0).then(|| say!("cloth-many-open", count = open)));
            words.extend((stale > 0).then(|| say!("cloth-many-stale", count = stale)));
            words.extend((never > 0).then(|| say!("cloth-many-never", count = never)));
            words.join(" · ")
        }
    };
    ui.add(Label::new(RichText::new(&words).color(look.soft)).truncate()).on_hover_text(words);
}

/// A count with spaces between thousands.
fn grouped(count: u64) -> String {
    let digits = count.to_string();
    let mut out = String::new();
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            out.push(' ');
        }
        out.push(digit);
    }
    out
}

/// Where nothing can be laid yet: what is missing.
fn nothing(ui: &mut Ui, look: &Look, wishes: &mut Vec<Wish>) {
    ui.add_space(20.0);
    ui.label(RichText::new(say!("cloth-nothing")).color(look.ink));
    ui.add_space(6.0);
    button(ui, Act::AddMaterial, &say!("cloth-add"), true, wishes);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_stand_apart() {
        assert_eq!([0, 999, 1_000, 1_234_567].map(grouped), ["0", "999", "1 000", "1 234 567"]);
    }
}
