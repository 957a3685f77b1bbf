//! The table of what is to be bought: a row for each size or group, a column for each cloth in a width.

use egui::{
    Align2, Button, CornerRadius, Label, Rect, RichText, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo,
    vec2,
};

use super::{ClothShown, ClothWish, bought, called};
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::document::Part;
use crate::output::lay::laid_briefly;
use crate::session::{Act, LayKey, LayTable, sizes_called};
use crate::texts::{owned, readable, say};

/// Width of a column, and of the one with the sizes, px.
const COLUMN: f32 = 104.0;
const SIZES: f32 = 74.0;
/// Height of the head and of a row, px. The head has room for three lines of how the cloth lies.
const HEAD: f32 = 84.0;
const ROW: f32 = 42.0;

/// How wide the table is where all of it is seen, px.
pub(super) fn width(table: &LayTable, view: usize) -> f32 {
    let many = table.columns.iter().filter(|c| c.view == view).count() as f32;
    SIZES + many * (COLUMN + 4.0) + 18.0
}

/// How the cloth lies, in words.
pub(super) fn lies(key: &LayKey) -> String {
    let laid = owned(|| laid_briefly(key.laid));
    if key.nap { say!("cloth-lies-nap", laid) } else { laid }
}

/// Paints the table.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, table: &LayTable, wishes: &mut Vec<Wish>) {
    let cloth = &shown.cloth;
    let columns: Vec<&LayKey> = table.columns.iter().filter(|c| c.view == scene.view()).collect();
    ScrollArea::both().id_salt("cloth table").auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing = vec2(4.0, 4.0);
        ui.horizontal(|ui| {
            let (corner, _) = ui.allocate_exact_size(vec2(SIZES, HEAD), Sense::hover());
            columns.iter().for_each(|column| head(ui, look, column, wishes));
            let own = pinned(ui, look, corner);
            let at = own.left_bottom() + vec2(2.0, -6.0);
            ui.painter().text(at, Align2::LEFT_BOTTOM, say!("cloth-size"), letters(look::SMALL), look.soft);
        });
        for row in &table.rows {
            let own: Vec<LayKey> = columns.iter().map(|c| LayKey { sizes: row.clone(), ..(*c).clone() }).collect();
            if own.iter().all(|k| table.cell(k).is_none()) {
                continue;
            }
            ui.horizontal(|ui| {
                let (room, _) = ui.allocate_exact_size(vec2(SIZES, ROW), Sense::hover());
                for key in own {
                    match table.cell(&key) {
                        Some(_) => cell(ui, look, scene, cloth, key, wishes),
                        None => drop(ui.allocate_exact_size(vec2(COLUMN, ROW), Sense::hover())),
                    }
                }
                // Painted last, so that cells that are scrolled away go under it.
                let room = pinned(ui, look, room);
                sizes(ui, look, (cloth, room), row, wishes);
            });
        }
        untold(ui, look, scene, cloth, table, wishes);
        lost(ui, look, scene, table, wishes);
    });
}

/// The room of a name at the left of the table as it stays in sight however far the table is scrolled sideways: what lies under it is covered,
/// and takes no clicks there.
fn pinned(ui: &Ui, look: &Look, room: Rect) -> Rect {
    let own = room.translate(vec2((ui.clip_rect().left() - room.left()).max(0.0), 0.0));
    if own != room {
        let covered = own.expand2(vec2(4.0, 2.0));
        ui.painter().rect_filled(covered, 0.0, look.sheet);
        ui.interact(covered, ui.scope_id().with(("pinned", room.top().to_bits())), Sense::CLICK);
    }
    own
}

/// The head of a column: the way to the card of its cloth.
fn head(ui: &mut Ui, look: &Look, column: &LayKey, wishes: &mut Vec<Wish>) {
    let name = readable(&column.material);
    let button = Button::new("").corner_radius(6).min_size(vec2(COLUMN, HEAD));
    let response = ui.add_sized(vec2(COLUMN, HEAD), button);
    let painter = ui.painter_at(response.rect.shrink(5.0));
    let first = response.rect.left_top() + vec2(8.0, 4.0);
    painter.text(first, Align2::LEFT_TOP, &name, letters(look::TEXT), look.ink);
    for (line, words) in [(20.0, column.width.clone()), (35.0, lies(column))] {
        let words = painter.layout(words, letters(look::SMALL), look.soft, COLUMN - 16.0);
        painter.galley(first + vec2(0.0, line), words, look.soft);
    }
    let called = say!("cloth-column", name, width = column.width, lies = lies(column));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
    if response.on_hover_text(say!("cloth-column-hint")).clicked() {
        wishes.push(Wish::Part(Part::Material(column.material.clone())));
    }
}

/// The sizes of a row; a group that only stands here can be taken out again.
fn sizes(ui: &mut Ui, look: &Look, (cloth, room): (&ClothShown, Rect), row: &[(String, u32)], wishes: &mut Vec<Wish>) {
    let mut inner = ui.new_child(egui::UiBuilder::new().max_rect(room.shrink2(vec2(2.0, 4.0))));
    inner.horizontal_centered(|ui| {
        let own = cloth.groups.iter().any(|g| g == row);
        if own {
            let response = ui.small_button("×");
            let called = say!("cloth-take-group", sizes = sizes_called(row));
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
            if response.clicked() {
                wishes.push(Wish::Cloth(ClothWish::DropGroup(row.to_vec())));
            }
        }
        ui.add(Label::new(RichText::new(sizes_called(row)).color(look.ink)).truncate());
    });
}

fn cell(ui: &mut Ui, look: &Look, scene: &Scene, cloth: &ClothShown, key: LayKey, wishes: &mut Vec<Wish>) {
    let standing = cloth.standing(&key);
    let (sign, word) = standing.words();
    let length = cloth.lay(&key).map(|l| bought(&l.need(), scene.draft().display));
    let chosen = cloth.at.as_ref() == Some(&key);
    let response = ui.allocate_response(vec2(COLUMN, ROW), Sense::click());
    let fill = if response.hovered() || chosen { look.touched } else { look.sheet };
    let line = if chosen { Stroke::new(2.0, look.ink) } else { Stroke::new(1.0, look.border) };
    ui.painter().rect(response.rect, CornerRadius::same(6), fill, line, StrokeKind::Inside);
    if response.has_focus() {
        let ring = Stroke::new(1.5, look.ink);
        ui.painter().rect_stroke(response.rect.expand(1.5), CornerRadius::same(7), ring, StrokeKind::Outside);
    }
    let inner = Rect::from_min_max(response.rect.min + vec2(8.0, 3.0), response.rect.max - vec2(8.0, 3.0));
    let first = length.clone().unwrap_or_else(|| "–".to_owned());
    ui.painter().text(inner.right_top(), Align2::RIGHT_TOP, &first, letters(look::TEXT), look.ink);
    let state = format!("{sign} {word}");
    ui.painter().text(inner.left_bottom(), Align2::LEFT_BOTTOM, state, letters(look::SMALL), standing.color(look));
    let name = match &length {
        Some(length) => format!("{}: {length}, {word}", called(cloth, &key)),
        None => format!("{}: {word}", called(cloth, &key)),
    };
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, &name));
    if response.clicked() {
        wishes.push(Wish::Cloth(ClothWish::See(key)));
    }
}

/// Kept plans of cloth that is laid, or is as wide, as no card says (any more): each cloth in a line, with its sizes.
fn untold(ui: &mut Ui, look: &Look, scene: &Scene, cloth: &ClothShown, table: &LayTable, wishes: &mut Vec<Wish>) {
    for cells in table.untold().into_iter().filter(|c| c[0].key.view == scene.view()) {
        let key = &cells[0].key;
        let of = format!("{} {}, {}", readable(&key.material), key.width, lies(key));
        ui.add_space(8.0);
        let words = say!("cloth-kept-for", cloth = of);
        ui.add(Label::new(RichText::new(words).font(letters(look::SMALL)).color(look.soft)).wrap());
        ui.horizontal_wrapped(|ui| {
            for cell in &cells {
                let standing = cloth.standing(&cell.key);
                let (sign, word) = standing.words();
                let chosen = cloth.at.as_ref() == Some(&cell.key);
                let words = RichText::new(format!("{sign} {}", cell.key.sizes_called())).color(standing.color(look));
                let response = ui.selectable_label(chosen, words);
                let name = format!("{}: {word}", called(cloth, &cell.key));
                response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, &name));
                if response.clicked() {
                    wishes.push(Wish::Cloth(ClothWish::See(cell.key.clone())));
                }
            }
            let response = ui.small_button(say!("cloth-take-out"));
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("cloth-take-plans", cloth = of)));
            if response.on_hover_text(say!("cloth-take-plans-hint")).clicked() {
                let places = cells.iter().filter_map(|c| c.kept.as_ref()).map(|k| k.place).collect();
                wishes.push(Wish::Cloth(ClothWish::TakePlans(places)));
            }
        });
    }
}

/// Plans of the draft that belong to nothing any more.
fn lost(ui: &mut Ui, look: &Look, scene: &Scene, table: &LayTable, wishes: &mut Vec<Wish>) {
    let stale = table.cells.iter().any(|c| c.kept.as_ref().is_some_and(|k| k.lay.is_err()));
    if table.lost.is_empty() && !stale {
        return;
    }
    ui.add_space(6.0);
    for (place, why) in &table.lost {
        let name = scene.draft().plans.get(*place).map_or("", |p| p.name.as_str());
        let words = format!("▲ {}", say!("cloth-lost", plan = name, why));
        ui.add(Label::new(RichText::new(words).font(letters(look::SMALL)).color(look.warning)).wrap());
    }
    let act = Act::TakeStalePlans.action();
    if ui.small_button(act.name()).on_hover_text(act.what()).clicked() {
        wishes.push(Wish::Act(Act::TakeStalePlans));
    }
}
