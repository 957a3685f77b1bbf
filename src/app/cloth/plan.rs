//! The chosen plan as it lies: the cloth to scale, its pieces, what overlaps. Pointer and keys over it are `steering`'s.

use std::sync::Arc;

use egui::{
    Align2, Color32, CornerRadius, Id, Label, Mesh, Painter, Pos2, Rect, RichText, Role, Sense, Shape, Stroke,
    StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use kurbo::{Point, Vec2};

use super::fill::{room_for_letter, triangles};
use super::steering::{hand, keys, piece_at};
use super::{ClothShown, ClothWish, STEPS, Standing, bought, button, called, steps};
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::app::view::View;
use crate::base::{DisplayUnit, shown_small};
use crate::document::ClothLaid;
use crate::finish::letters as letters_of;
use crate::output::lay::packing::Laid;
use crate::output::lay::{Lay, LayJob, LayStretch};
use crate::session::{Act, LayKey};
use crate::texts::{own_length, own_number, owned, readable, say, typed};

/// Between two stretches, mm.
const BETWEEN: f64 = 90.0;
/// Room at the left of the cloth for its words, px.
const WORDS: f32 = 96.0;
/// Letters are painted where they have so much room, px.
const LEAST: f64 = 13.0;
/// At most so many faults are told one by one.
const MOST_TOLD: usize = 3;

/// A shape in one of its poses, at its origin.
pub(super) struct Posed {
    pub outline: Vec<Point>,
    triangles: Vec<u32>,
    /// Where a letter stands, and how much room it has, mm.
    letter: (Point, f64),
}

/// Outlines that were cut into triangles, of one job; by stretch, shape and pose.
#[derive(Default)]
pub(super) struct Painted {
    job: Option<Arc<LayJob>>,
    posed: std::collections::BTreeMap<(usize, usize, usize), std::rc::Rc<Posed>>,
}

impl Painted {
    pub(super) fn of(&mut self, lay: &Lay, stretch: usize, piece: &Laid) -> std::rc::Rc<Posed> {
        if !self.job.as_ref().is_some_and(|j| Arc::ptr_eq(j, &lay.job)) {
            self.posed.clear();
            self.job = Some(Arc::clone(&lay.job));
        }
        let key = (stretch, piece.shape, piece.pose);
        let made = self.posed.entry(key).or_insert_with(|| {
            let outline = lay.polygon(stretch, &Laid { x: 0.0, y: 0.0, ..*piece });
            let (triangles, letter) = (triangles(&outline), room_for_letter(&outline));
            std::rc::Rc::new(Posed { outline, triangles, letter })
        });
        std::rc::Rc::clone(made)
    }
}

/// Where a stretch of cloth lies on the table of this room, mm: what is used of it, and all of it with selvedges.
pub(super) struct Spread {
    /// Where its first usable corner lies.
    pub origin: Vec2,
    /// The cloth, in its own measures.
    from: f64,
    to: f64,
    long: f64,
}

fn spreads(lay: &Lay) -> Vec<Spread> {
    let mut x = 0.0;
    let edge = lay.job.on.cloth.selvedge;
    let each = lay.job.stretches.iter().zip(&lay.layouts).map(|(stretch, layout)| {
        let fold = stretch.laid != ClothLaid::Open;
        let middle = stretch.laid == ClothLaid::FoldedToMiddle;
        let (from, to) = (if fold { 0.0 } else { -edge }, stretch.job.width + if middle { 0.0 } else { edge });
        let long = layout.length.max(1.0);
        let out = Spread { origin: Vec2::new(x, 0.0), from, to, long };
        x += long + BETWEEN;
        out
    });
    each.collect()
}

/// A piece as it is called: its letter and name, its size in a group, and which of those with this name it is.
fn names(scene: &Scene, lay: &Lay, key: &LayKey) -> Vec<Vec<(String, String)>> {
    let letters = scene.model().map_or_else(Vec::new, letters_of);
    let mut seen: std::collections::BTreeMap<String, u32> = std::collections::BTreeMap::new();
    let group = key.sizes.len() > 1;
    let mut one = |stretch: &LayStretch, piece: &Laid| {
        let Some(about) = stretch.shapes.get(piece.shape) else { return (String::new(), String::new()) };
        let letter = if about.strip { String::new() } else { letters.get(about.frame).cloned().unwrap_or_default() };
        let mut name = readable(&about.name);
        let mut short = if letter.is_empty() { name.clone() } else { letter.clone() };
        if group {
            name = format!("{name} {}", about.size);
            short = format!("{short} {}", about.size);
        }
        let count = seen.entry(name.clone()).or_insert(0);
        *count += 1;
        (short, format!("{name}, {count}"))
    };
    let each = lay.job.stretches.iter().zip(&lay.layouts);
    each.map(|(stretch, layout)| layout.laid.iter().map(|l| one(stretch, l)).collect()).collect()
}

/// Paints the plan with what can be done to it.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let cloth = &shown.cloth;
    let Some(key) = cloth.at.clone().filter(|_| cloth.has_cell()) else {
        ui.add_space(30.0);
        ui.label(RichText::new(say!("cloth-choose")).color(look.soft));
        return;
    };
    let lay = cloth.seen();
    title(ui, look, scene, cloth, &key, lay, wishes);
    let Some(lay) = lay else { return missing(ui, look, cloth, &key) };
    // What is told under the picture has its own room, so that the picture does not move under the hand.
    let room = ui.available_size() - vec2(0.0, 84.0);
    picture(ui, look, scene, shown, (&key, lay), room, wishes);
    told(ui, look, cloth, &key, lay);
}

/// What the plan is of, how long it is, and the buttons.
fn title(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    cloth: &ClothShown,
    key: &LayKey,
    lay: Option<&Lay>,
    wishes: &mut Vec<Wish>,
) {
    let unit = scene.draft().display;
    let hand = cloth.hand();
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(called(cloth, key)).color(look.ink).strong());
        if let Some(lay) = lay {
            let need = lay.need();
            let pieces: f64 = need.stretches.iter().map(|s| s.1).sum();
            let pieces = own_length(pieces, unit);
            let words = [
                say!("cloth-buy", length = bought(&need, unit)),
                match need.counted > 0.0 {
                    true => say!("cloth-lie-on-strips", pieces, strips = own_length(need.counted, unit)),
                    false => say!("cloth-lie-on", pieces),
                },
                say!("cloth-covered", share = own_number(format_args!("{:.0}", lay.covered() * 100.0))),
            ];
            ui.label(RichText::new(words.join(" · ")).color(look.ink));
        }
    });
    ui.horizontal_wrapped(|ui| {
        let standing = cloth.standing(key);
        let free = cloth.search.is_none();
        let word = match &standing {
            Standing::NotPlanned | Standing::NotFound(_) | Standing::DoesNotFit(_) | Standing::CannotBeLaid(_) => {
                say!("cloth-plan-it")
            }
            Standing::Stale(_) => say!("cloth-plan-again"),
            _ => say!("cloth-improve"),
        };
        button(
            ui,
            Act::ImprovePlan,
            &word,
            free && !matches!(standing, Standing::DoesNotFit(_) | Standing::CannotBeLaid(_)),
            wishes,
        );
        let wrong = hand.is_some_and(|h| !h.faults.is_empty());
        let can_keep = matches!(standing, Standing::Found | Standing::ByHand) && !wrong;
        button(ui, Act::KeepPlan, &say!("cloth-keep"), can_keep, wishes);
        if matches!(standing, Standing::Kept | Standing::Stale(_)) {
            button(ui, Act::TakePlan, &say!("cloth-take-out"), true, wishes);
        }
        ui.separator();
        let chosen = cloth.piece.is_some() && lay.is_some();
        let locked = cloth.piece.zip(hand).is_some_and(|((s, i), h)| h.hand.is_locked(s, i))
            || hand.is_none() && cloth.piece.is_some_and(|p| cloth.locks(key).contains(&p));
        button(ui, Act::TurnHalf, &say!("cloth-turn-half"), chosen, wishes);
        button(ui, Act::TurnOver, &say!("cloth-turn-over"), chosen, wishes);
        let word = if locked { say!("cloth-unlock") } else { say!("cloth-lock") };
        button(ui, Act::LockPiece, &word, chosen, wishes);
        ui.separator();
        let step = steps(unit)[cloth.step % STEPS];
        let is_metric = matches!(unit, DisplayUnit::Mm | DisplayUnit::Cm);
        let word = say!("cloth-arrows", step = if is_metric { small(step, unit) } else { own_length(step, unit) });
        if ui.button(word).on_hover_text(say!("cloth-arrows-hint")).clicked() {
            wishes.push(Wish::Cloth(ClothWish::Step((cloth.step + 1) % STEPS)));
        }
    });
}

/// A short length, to a hundredth of a millimetre.
fn small(mm: f64, unit: DisplayUnit) -> String {
    owned(|| typed(&shown_small(mm, unit)))
}

/// Why there is no picture.
fn missing(ui: &mut Ui, look: &Look, cloth: &ClothShown, key: &LayKey) {
    ui.add_space(20.0);
    let (words, color) = match cloth.standing(key) {
        Standing::DoesNotFit(why) | Standing::CannotBeLaid(why) => (format!("■ {}", sentence(&why)), look.error),
        Standing::NotFound(why) => (format!("■ {}", sentence(&why)), look.error),
        Standing::Stale(why) => (format!("▲ {}", say!("cloth-is-stale", why)), look.warning),
        Standing::Searching => (format!("… {}", say!("cloth-being-sought")), look.soft),
        _ => (format!("○ {}", say!("cloth-not-yet")), look.soft),
    };
    ui.add(Label::new(RichText::new(words).color(color)).wrap());
}

/// Words with a capital and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map_or_else(String::new, |c| c.to_uppercase().collect());
    format!("{first}{}.", letters.as_str()).replace('_', " ")
}

/// What is wrong, else why it is as long as it is, and what the marks mean.
fn told(ui: &mut Ui, look: &Look, cloth: &ClothShown, key: &LayKey, lay: &Lay) {
    ui.add_space(2.0);
    let small = |words: String, color: Color32| RichText::new(words).font(letters(look::SMALL)).color(color);
    let faults = cloth.hand().map_or(&[][..], |h| &h.faults);
    let mut lines: Vec<(String, Color32)> = Vec::new();
    for fault in faults.iter().take(MOST_TOLD) {
        lines.push((format!("■ {}", fault.says), look.error));
    }
    if faults.len() > MOST_TOLD {
        lines.push((format!("■ {}", say!("cloth-more-faults", count = faults.len() - MOST_TOLD)), look.error));
    }
    if faults.is_empty() {
        if let Some(odd) = cloth.found(key).and_then(|f| f.odd.as_ref()) {
            lines.push((format!("▲ {}", sentence(odd)), look.warning));
        }
        let reasons = owned(|| lay.reasons().into_iter().chain(lay.notes()).collect::<Vec<_>>());
        if !reasons.is_empty() {
            lines.push((reasons.join(" "), look.soft));
        }
    }
    lines.push((say!("cloth-hint"), look.soft));
    egui::ScrollArea::vertical().id_salt("cloth words").auto_shrink([false, false]).max_height(78.0).show(ui, |ui| {
        for (words, color) in lines {
            ui.add(Label::new(small(words, color)).wrap());
        }
    });
}

fn picture(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    (key, lay): (&LayKey, &Lay),
    size: egui::Vec2,
    wishes: &mut Vec<Wish>,
) {
    let cloth = &shown.cloth;
    let response = ui.allocate_response(size.max(vec2(60.0, 60.0)), Sense::click_and_drag());
    let canvas = response.rect;
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("cloth-plan-of", plan = called(cloth, key))));
    ui.painter().rect(canvas, CornerRadius::same(4), look.desk, Stroke::new(1.0, look.border), StrokeKind::Inside);
    let painter = ui.painter_at(canvas.shrink(1.0));
    let spreads = spreads(lay);
    let Some(all) = spreads.iter().map(room).reduce(|a, b| a.union(b)) else { return };
    let view = cloth.view.unwrap_or_else(|| fitting(all, canvas));
    let at = |p: Point| view.screen_from_table(canvas, p);
    for (spread, stretch) in spreads.iter().zip(&lay.job.stretches) {
        ground(&painter, look, lay, (spread, stretch), &at);
        measures(&painter, look, scene, spread, &at);
    }
    let names = names(scene, lay, key);
    let locked = cloth.hand().map_or_else(|| cloth.locks(key), |h| h.hand.locked.clone());
    let faults = cloth.hand().map_or(&[][..], |h| &h.faults);
    let under = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer());
    let under = under.and_then(|p| piece_at(cloth, lay, &spreads, view.table_from_screen(canvas, p)));
    let hovered = cloth.carried.map(|c| (c.stretch, c.piece)).or(under);
    let (drawn, turned_over) = grounds(look);
    let mut words: Option<(Rect, String)> = None;
    for (s, layout) in lay.layouts.iter().enumerate() {
        for (i, piece) in layout.laid.iter().enumerate() {
            let posed = cloth.painted.borrow_mut().of(lay, s, piece);
            let shift = spreads[s].origin + Vec2::new(piece.x, piece.y);
            let line: Vec<Pos2> = posed.outline.iter().map(|p| at(*p + shift)).collect();
            let wrong = faults.iter().any(|f| f.stretch == s && f.pieces.contains(&i));
            let (is_chosen, is_over) = (cloth.piece == Some((s, i)), hovered == Some((s, i)));
            let about = &lay.job.stretches[s].shapes[piece.shape];
            let over = lay.pose(s, piece).is_some_and(|p| p.mirrored) && !about.on_fold;
            let ground = if over { turned_over } else { drawn };
            let ground = if is_chosen || is_over { ground.lerp_to_gamma(look.handle, 0.14) } else { ground };
            let ground = if wrong { ground.lerp_to_gamma(look.error, 0.22).gamma_multiply(0.85) } else { ground };
            painter.add(filled(&line, &posed.triangles, ground));
            let (wide, color) = match (wrong, is_chosen || is_over) {
                (true, _) => (2.0, look.error),
                (_, true) => (2.5, look.handle),
                _ => (1.25, look.ink),
            };
            painter.add(Shape::closed_line(line, Stroke::new(wide, color)));
            let (place, free) = posed.letter;
            let is_locked = locked.contains(&(s, i));
            let (short, full) = &names[s][i];
            let signs = [
                over.then(|| say!("cloth-sign-over")),
                is_locked.then(|| say!("cloth-locked")),
                about.on_fold.then(|| say!("cloth-sign-fold")),
                about.one_layer.then(|| say!("cloth-sign-layer")),
            ];
            let signs: Vec<String> = signs.into_iter().flatten().collect();
            letter(&painter, look, at(place + shift), free * view.scale, short, &signs);
            // Its box is what the keys and those who do not see it reach.
            let own = view.screen_rect(canvas, lay.room(s, piece) + spreads[s].origin);
            let id = id_of(s, i);
            let seen = own.intersect(canvas);
            let spot = ui.interact(if seen.is_positive() { seen } else { own }, id, Sense::focusable_noninteractive());
            let mut state = vec![say!("cloth-on-cloth", piece = full)];
            state.extend(is_locked.then(|| say!("cloth-locked")));
            state.extend(wrong.then(|| say!("cloth-cannot-cut")));
            let called = state.join(", ");
            spot.widget_info(|| WidgetInfo::selected(Role::Button, true, is_chosen, &called));
            if spot.gained_focus() && !is_chosen {
                wishes.push(Wish::Cloth(ClothWish::Piece(Some((s, i)))));
            }
            if spot.has_focus() {
                keys(ui, id, wishes);
            }
            if is_over {
                let turned = lay.pose(s, piece).map_or(0.0, |p| p.turned);
                words = Some((own, hint(full, about, over, turned, is_locked)));
            }
        }
    }
    marks(&painter, look, (lay, scene.draft().display), &spreads, faults, &at);
    legend(&painter, look, canvas);
    if let Some((own, words)) = words.filter(|_| cloth.carried.is_none()) {
        word_at(&painter, look, canvas, own.center_top(), &words);
    }
    hand(ui, &response, cloth, lay, &spreads, view, wishes);
}

/// The grounds of pieces as drawn and turned over: lighter than the cloth by day and by night.
fn grounds(look: &Look) -> (Color32, Color32) {
    let night = look.ink.r() > look.sheet.r();
    let drawn = if night { look.touched } else { look.sheet };
    (drawn, drawn.lerp_to_gamma(look.ink, 0.15))
}

/// What a piece is, for the pointer.
fn hint(full: &str, about: &crate::output::lay::LayShape, over: bool, turned: f64, locked: bool) -> String {
    let told = [
        Some(full.to_owned()),
        (about.gives > 1).then(|| say!("cloth-is-double", count = about.gives)),
        about.on_fold.then(|| say!("cloth-is-half")),
        about.one_layer.then(|| say!("cloth-is-one-layer")),
        about.at_border.then(|| say!("cloth-is-border")),
        over.then(|| say!("cloth-is-over")),
        (turned == 180.0).then(|| say!("cloth-is-turned")),
        about.one_way.then(|| say!("cloth-is-one-way")),
        locked.then(|| say!("cloth-locked")),
    ];
    told.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// The name of a piece among the widgets.
pub(super) fn id_of(stretch: usize, piece: usize) -> Id {
    Id::unique(("on the cloth", stretch, piece))
}

fn room(spread: &Spread) -> kurbo::Rect {
    kurbo::Rect::new(0.0, spread.from, spread.long, spread.to) + spread.origin
}

/// The view in which all of the cloth is seen, with its words.
fn fitting(all: kurbo::Rect, canvas: Rect) -> View {
    let wide = f64::from(canvas.width() - WORDS - 24.0).max(1.0);
    let high = f64::from(canvas.height() - 64.0).max(1.0);
    let scale = (wide / all.width().max(1.0)).min(high / all.height().max(1.0));
    let aside = Vec2::new(-f64::from(WORDS - 24.0) / 2.0 / scale, 8.0 / scale);
    View { scale, middle: all.center() + aside }.within_limits()
}

/// The cloth under the pieces: its layers, selvedges, folds, printed side and nap.
fn ground(
    painter: &Painter,
    look: &Look,
    lay: &Lay,
    (spread, stretch): (&Spread, &LayStretch),
    at: &dyn Fn(Point) -> Pos2,
) {
    let cloth = &lay.job.on.cloth;
    let edge = cloth.selvedge;
    let put = |x: f64, y: f64| at(Point::new(x, y) + spread.origin);
    let strip = |from: f64, to: f64| Rect::from_min_max(put(0.0, from), put(spread.long, to));
    let whole = strip(spread.from, spread.to);
    let (double, single) = (look.desk.lerp_to_gamma(look.ink, 0.16), look.desk.lerp_to_gamma(look.ink, 0.07));
    painter.rect_filled(whole, 0.0, if stretch.laid == ClothLaid::Open { single } else { double });
    let small = |p: Pos2, align: Align2, words: &str| {
        painter.text(p, align, words, letters(look::SMALL), look.soft);
    };
    let selvedge = |from: f64, to: f64, words: String| {
        let own = strip(from, to);
        painter.rect_filled(own, 0.0, look.desk.lerp_to_gamma(look.ink, 0.3));
        small(pos2(whole.left() - 6.0, own.center().y), Align2::RIGHT_CENTER, &words);
    };
    let fold = |y: f64| {
        let (a, b) = (put(0.0, y), put(spread.long, y));
        painter.extend(Shape::dashed_line(&[a, b], Stroke::new(2.5, look.ink), 14.0, 5.0));
        small(pos2(whole.left() - 6.0, a.y), Align2::RIGHT_CENTER, &say!("cloth-fold"));
    };
    match stretch.laid {
        ClothLaid::Open => {
            selvedge(spread.from, 0.0, say!("cloth-selvedge"));
            selvedge(stretch.job.width, spread.to, say!("cloth-selvedge"));
        }
        ClothLaid::Folded => {
            fold(0.0);
            selvedge(stretch.job.width, spread.to, say!("cloth-both-selvedges"));
        }
        ClothLaid::FoldedToMiddle => {
            fold(0.0);
            fold(stretch.job.width);
            let middle = stretch.job.width / 2.0;
            selvedge(middle - edge, middle + edge, say!("cloth-selvedges"));
        }
        ClothLaid::FoldedPart => {
            let part = stretch.folded_part;
            painter.rect_filled(strip(part, spread.to), 0.0, single);
            fold(0.0);
            selvedge(part - edge, part, say!("cloth-selvedge"));
            selvedge(stretch.job.width, spread.to, say!("cloth-selvedge"));
        }
    }
    painter.rect_stroke(whole, 0.0, Stroke::new(1.0, look.soft), StrokeKind::Inside);
    let side = match stretch.laid {
        ClothLaid::Open => say!("cloth-side-up"),
        ClothLaid::FoldedPart => say!("cloth-side-part"),
        _ => say!("cloth-sides-together"),
    };
    let head = whole.left_top() - vec2(0.0, 5.0);
    // What an arrow means is said where it is drawn.
    let nap = if cloth.nap { say!("cloth-thread-nap") } else { say!("cloth-thread") };
    let wide = painter.text(head, Align2::LEFT_BOTTOM, format!("{side} · {nap}"), letters(look::SMALL), look.soft);
    let start = pos2(wide.right() + 6.0, wide.center().y);
    let tip = start + vec2(34.0, 0.0);
    painter.line_segment([start, tip], Stroke::new(1.5, look.soft));
    for by in [-4.0, 4.0] {
        painter.line_segment([tip, tip + vec2(-7.0, by)], Stroke::new(1.5, look.soft));
        if !cloth.nap {
            painter.line_segment([start, start + vec2(7.0, by)], Stroke::new(1.5, look.soft));
        }
    }
}

/// How long and how wide the cloth is, under its end.
fn measures(painter: &Painter, look: &Look, scene: &Scene, spread: &Spread, at: &dyn Fn(Point) -> Pos2) {
    let unit = scene.draft().display;
    let (long, wide) = (own_length(spread.long, unit), own_length(spread.to - spread.from, unit));
    let end = at(Point::new(spread.long, spread.to) + spread.origin) + vec2(0.0, 4.0);
    painter.text(end, Align2::RIGHT_TOP, say!("cloth-measures", long, wide), letters(look::SMALL), look.soft);
}

fn filled(line: &[Pos2], triangles: &[u32], color: Color32) -> Shape {
    let mut mesh = Mesh::default();
    line.iter().for_each(|p| mesh.colored_vertex(*p, color));
    mesh.indices.extend_from_slice(triangles);
    Shape::mesh(mesh)
}

/// The letter of a piece, as large as it has room; signs of what was done with it.
fn letter(painter: &Painter, look: &Look, at: Pos2, free: f64, short: &str, signs: &[String]) {
    if free < LEAST {
        return;
    }
    let size = ((free / short.chars().count().max(1) as f64) as f32).clamp(9.0, 20.0);
    painter.text(at, Align2::CENTER_CENTER, short, letters(size), look.ink);
    if !signs.is_empty() && free > 58.0 {
        let words = signs.join(", ");
        painter.text(at + vec2(0.0, size * 0.62), Align2::CENTER_TOP, words, letters(11.0), look.soft);
    }
}

/// Where pieces overlap, or lie where they cannot: a sign with how deep.
fn marks(
    painter: &Painter,
    look: &Look,
    (lay, unit): (&Lay, DisplayUnit),
    spreads: &[Spread],
    faults: &[crate::session::HandFault],
    at: &dyn Fn(Point) -> Pos2,
) {
    for fault in faults {
        let rooms = fault.pieces.iter().filter_map(|i| {
            let piece = lay.layouts.get(fault.stretch)?.laid.get(*i)?;
            Some(lay.room(fault.stretch, piece) + spreads[fault.stretch].origin)
        });
        let Some(room) = rooms.reduce(|a, b| a.intersect(b)) else { continue };
        let words = format!("■ {}", small(fault.mm, unit));
        let text = painter.layout_no_wrap(words, letters(look::SMALL), look.sheet);
        let own = Rect::from_center_size(at(room.center()), text.size() + vec2(10.0, 4.0));
        painter.rect_filled(own, CornerRadius::same(5), look.error);
        painter.galley(own.min + vec2(5.0, 2.0), text, look.sheet);
    }
}

/// What the grounds and lines mean.
fn legend(painter: &Painter, look: &Look, canvas: Rect) {
    let mut x = canvas.left() + 10.0;
    let y = canvas.bottom() - 14.0;
    let small = letters(look::SMALL);
    let box_of = |x: f32| Rect::from_center_size(pos2(x + 8.0, y), vec2(16.0, 11.0));
    let word = |x: &mut f32, words: String| {
        let seen = painter.text(pos2(*x + 21.0, y), Align2::LEFT_CENTER, words, small.clone(), look.soft);
        *x = seen.right() + 14.0;
    };
    let (drawn, turned_over) = grounds(look);
    for (ground, words) in [(drawn, say!("cloth-as-drawn")), (turned_over, say!("cloth-is-over"))] {
        painter.rect(box_of(x), 0.0, ground, Stroke::new(1.25, look.ink), StrokeKind::Inside);
        word(&mut x, words);
    }
    painter.rect_filled(box_of(x), 0.0, look.desk.lerp_to_gamma(look.ink, 0.3));
    word(&mut x, say!("cloth-selvedge"));
    let own = box_of(x);
    painter.extend(Shape::dashed_line(&[own.left_center(), own.right_center()], Stroke::new(2.5, look.ink), 7.0, 3.0));
    word(&mut x, say!("cloth-fold"));
}

/// Words over the picture, inside of it.
fn word_at(painter: &Painter, look: &Look, canvas: Rect, at: Pos2, words: &str) {
    let text = painter.layout_no_wrap(words.to_owned(), letters(look::SMALL), look.sheet);
    let size = text.size() + vec2(14.0, 8.0);
    let x =
        at.x.clamp(canvas.left() + size.x / 2.0 + 4.0, (canvas.right() - size.x / 2.0 - 4.0).max(canvas.left() + 4.0));
    let y = (at.y - 18.0).max(canvas.top() + size.y / 2.0 + 4.0);
    let own = Rect::from_center_size(pos2(x, y), size);
    painter.rect_filled(own, CornerRadius::same(5), look.ink);
    painter.galley(own.min + vec2(7.0, 4.0), text, look.sheet);
}
