//! Pages and rows of pictures of lays, with what is told of them in words: several lays together where they can still be read.

use kurbo::{Point, Size, Vec2};

use super::length::{both, yards, yards_exact};
use super::picture::{Letters, has_face_down, laid_briefly, lay_figure, legend};
use super::plan::Lay;
use crate::base::DisplayUnit;
use crate::output::drawing::{Item, Picture, Text};
use crate::output::font;
use crate::texts::{self, readable, t};

/// A page of A4, standing, mm (ISO 216).
const PAGE: Size = Size::new(210.0, 297.0);
const MARGIN: f64 = 12.0;
const WORDS: f64 = 3.0;
const LINE: f64 = 4.2;
const TITLE: f64 = 5.0;
/// Between two lays.
const BETWEEN: f64 = 6.0;
/// Lays stand side by side where each is drawn no smaller than this; else one below the other.
const READABLE: f64 = 20.0;
/// Words beside a lay are so wide, if they do not stand under it.
const ASIDE: f64 = 70.0;
/// The room of a lay is no higher than this share of a page.
const HIGHEST: f64 = 0.8;

/// A lay with its name.
pub type Named<'a> = (String, &'a Lay);

/// How much cloth a lay needs, in a sentence.
pub fn need_words(lay: &Lay) -> String {
    let need = lay.need();
    t!(
        "lay-need",
        cm = texts::length(need.exact, DisplayUnit::Cm),
        yards = yards_exact(need.exact),
        buy_cm = texts::length(need.buy, DisplayUnit::Cm),
        buy_yards = yards(need.buy_yards)
    )
}

/// What is told under a picture of a lay besides, in sentences.
pub fn lay_words(lay: &Lay, letters: Letters<'_>) -> Vec<String> {
    let mut out = vec![format!("{}.", legend(lay, letters))];
    if has_face_down(lay) {
        out.push(t!("lay-face-down"));
    }
    if lay.job.stretches.iter().flat_map(|s| &s.shapes).any(|s| s.on_fold) {
        out.push(t!("lay-on-fold"));
    }
    if lay.job.stretches.iter().flat_map(|s| &s.shapes).any(|s| s.gives == 2) {
        out.push(t!("lay-twice"));
    }
    out.extend(lay.reasons());
    out.extend(lay.notes());
    out
}

/// What is told of several lays together: each sentence once, with the names of those of which it is said where it is not said of all.
pub fn common_words(lays: &[Named<'_>], letters: Letters<'_>) -> Vec<String> {
    let mut out: Vec<(String, Vec<&str>)> = Vec::new();
    for (name, lay) in lays {
        for words in lay_words(lay, letters) {
            match out.iter_mut().find(|(w, _)| *w == words) {
                Some((_, names)) => names.push(name),
                None => out.push((words, vec![name])),
            }
        }
    }
    let said = |(words, names): (String, Vec<&str>)| {
        if names.len() == lays.len() { words } else { t!("lay-said-of", names = names.join(", "), words) }
    };
    out.into_iter().map(said).collect()
}

/// Lays as rows of pictures, each row this wide and its lays no higher than so much, in the order in which they are given: two in a row where both
/// can be read so. With each row the places of its lays.
pub fn lay_rows(lays: &[Named<'_>], letters: Letters<'_>, room: Size) -> Vec<(Picture, Vec<usize>)> {
    let half = Size::new((room.width - BETWEEN) / 2.0, room.height);
    let small: Vec<Option<Picture>> = lays.iter().map(|one| tile(one, letters, half, READABLE)).collect();
    let mut out = Vec::new();
    let mut i = 0;
    while i < lays.len() {
        let row: Vec<&Picture> = small[i..].iter().take(2).map_while(Option::as_ref).collect();
        if row.is_empty() {
            out.extend(tile(&lays[i], letters, room, f64::INFINITY).map(|p| (p, vec![i])));
            i += 1;
            continue;
        }
        let height = row.iter().map(|p| p.height).fold(0.0, f64::max);
        let at = |k: usize| Vec2::new(k as f64 * (half.width + BETWEEN), 0.0);
        let items = row.iter().enumerate().flat_map(|(k, p)| p.moved(at(k))).collect();
        out.push((Picture { width: room.width, height, items }, (i..i + row.len()).collect()));
        i += row.len();
    }
    out
}

/// A lay under its name and what it needs; none where one of its millimetres would stand for more than so many.
fn tile((name, lay): &Named<'_>, letters: Letters<'_>, room: Size, most: f64) -> Option<Picture> {
    let mut items = Vec::new();
    let needs = |scale: f64| {
        let words = format!("{} {}", need_words(lay), t!("lay-drawn", scale = scale.to_string()));
        font::wrapped(&words, WORDS, room.width)
    };
    let lines = font::wrapped(name, WORDS * 1.1, room.width).len() + needs(100.0).len();
    let head = lines as f64 * LINE + 1.0;
    let (figure, scale) = lay_figure(lay, letters, Size::new(room.width, (room.height - head).max(30.0)));
    if scale > most {
        return None;
    }
    let mut down = LINE * 0.75;
    let named = font::wrapped(name, WORDS * 1.1, room.width).into_iter().map(|l| (l, WORDS * 1.1));
    let needed = needs(scale.ceil()).into_iter().map(|l| (l, WORDS));
    for (line, size) in named.chain(needed) {
        items.push(Item::Text(Text::new(line, Point::new(0.0, down), size)));
        down += LINE;
    }
    items.extend(figure.moved(Vec2::new(0.0, head)));
    Some(Picture { width: room.width, height: head + figure.height, items })
}

/// Words in lines from here down; where they end.
fn lines(items: &mut Vec<Item>, words: &[String], size: f64, (at, width): (Point, f64)) -> f64 {
    let mut down = at.y;
    for line in words.iter().flat_map(|w| font::wrapped(w, size, width)) {
        down += size * LINE / WORDS;
        items.push(Item::Text(Text::new(line, Point::new(at.x, down - 0.3 * size), size)));
    }
    down
}

/// A page with one lay: A4, standing or lying, its words under the picture or beside it, whichever shows it largest.
pub fn lay_page(title: &str, lay: &Lay, letters: Letters<'_>) -> Picture {
    let mut words = vec![format!("{}: {}", cloth_words(lay), need_words(lay))];
    words.extend(lay_words(lay, letters));
    let lying = Size::new(PAGE.height, PAGE.width);
    let ways = [(PAGE, false), (lying, false), (lying, true)];
    let drawn = ways.map(|(page, aside)| one_page(title, &words, lay, letters, (page, aside)));
    let largest = drawn.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
    largest.map_or_else(|| Picture { width: PAGE.width, height: PAGE.height, items: Vec::new() }, |d| d.0)
}

/// The same in one of those ways, and what one of its millimetres stands for.
fn one_page(
    title: &str,
    words: &[String],
    lay: &Lay,
    letters: Letters<'_>,
    (page, aside): (Size, bool),
) -> (Picture, f64) {
    let room = Size::new(page.width - 2.0 * MARGIN, page.height - 2.0 * MARGIN);
    let mut items = Vec::new();
    let top = lines(&mut items, &[title.to_owned()], TITLE, (Point::new(MARGIN, MARGIN), room.width)) + 2.0;
    let wide = if aside { ASIDE } else { room.width };
    let high = words.iter().map(|w| font::wrapped(w, WORDS, wide).len()).sum::<usize>() as f64 * LINE + 2.0 * LINE;
    let left = page.height - MARGIN - top;
    let own = match aside {
        true => Size::new(room.width - ASIDE - BETWEEN, left),
        false => Size::new(room.width, (left - high).max(40.0)),
    };
    let (figure, scale) = lay_figure(lay, letters, own);
    items.extend(figure.moved(Vec2::new(MARGIN, top)));
    let to_scale = t!("lay-scale", scale = scale.ceil().to_string());
    let words: Vec<String> = std::iter::once(to_scale).chain(words.iter().cloned()).collect();
    let at = match aside {
        true => Point::new(page.width - MARGIN - ASIDE, top),
        false => Point::new(MARGIN, top + figure.height + 2.0),
    };
    lines(&mut items, &words, WORDS, (at, wide));
    (Picture { width: page.width, height: page.height, items }, scale)
}

/// Pages with several lays: those of one cloth together under its words. `cloth_of` says under which.
pub fn lay_pages(title: &str, lays: &[(String, Named<'_>)], letters: Letters<'_>) -> Vec<Picture> {
    if let [(_, (name, lay))] = lays {
        return vec![lay_page(&format!("{title}: {name}"), lay, letters)];
    }
    // Where a lay is too long for a standing page, all lie.
    let room_of = |page: Size| Size::new(page.width - 2.0 * MARGIN, page.height - 2.0 * MARGIN);
    let lying = Size::new(PAGE.height, PAGE.width);
    let own = Size::new(room_of(PAGE).width, room_of(PAGE).height * HIGHEST);
    let fits = lays.iter().all(|(_, (_, lay))| lay_figure(lay, letters, own).1 <= READABLE);
    let page = if fits { PAGE } else { lying };
    let room = room_of(page);
    let mut pages: Vec<Vec<Item>> = vec![Vec::new()];
    let at = |down: f64| Point::new(MARGIN, down);
    let mut down = lines(&mut pages[0], &[title.to_owned()], TITLE, (at(MARGIN), room.width)) + 2.0;
    let mut i = 0;
    while i < lays.len() {
        let cloth = &lays[i].0;
        let many = lays[i..].iter().take_while(|l| l.0 == *cloth).count();
        let group: Vec<Named<'_>> = lays[i..i + many].iter().map(|l| l.1.clone()).collect();
        let mut words = Vec::new();
        let after = lines(&mut words, std::slice::from_ref(cloth), WORDS * 1.3, (at(0.0), room.width)) + 1.0;
        let after = lines(&mut words, &common_words(&group, letters), WORDS, (at(after), room.width)) + 2.0;
        let highest = Size::new(room.width, (room.height * HIGHEST).min(room.height - after - 2.0 * TITLE));
        for (k, (row, _)) in lay_rows(&group, letters, highest).into_iter().enumerate() {
            let head = if k == 0 { after } else { 0.0 };
            if down + head + row.height > page.height - MARGIN && pages.last().is_some_and(|p| !p.is_empty()) {
                pages.push(Vec::new());
                down = MARGIN;
            }
            let Some(items) = pages.last_mut() else { break };
            if k == 0 {
                let told = Picture { width: 0.0, height: 0.0, items: std::mem::take(&mut words) };
                items.extend(told.moved(Vec2::new(0.0, down)));
                down += after;
            }
            items.extend(row.moved(Vec2::new(MARGIN, down)));
            down += row.height + BETWEEN;
        }
        i += many;
    }
    pages.into_iter().map(|items| Picture { width: page.width, height: page.height, items }).collect()
}

/// The cloth of a lay in words, under which lays of it stand together.
pub fn cloth_words(lay: &Lay) -> String {
    let cloth = &lay.job.on.cloth;
    let (name, width, laid) = (readable(&cloth.name), both(cloth.sold), laid_briefly(cloth.laid));
    if cloth.nap { t!("lay-cloth-nap", name, width, laid) } else { t!("lay-cloth", name, width, laid) }
}

/// The sizes of a lay in words: `size 88`, `2 x S + 4 x M`.
pub fn sizes_words(sizes: &[(String, u32)]) -> String {
    let one = |(size, count): &(String, u32)| if *count <= 1 { size.clone() } else { format!("{count} x {size}") };
    let all = sizes.iter().map(one).collect::<Vec<_>>().join(" + ");
    if sizes.len() == 1 && sizes[0].1 <= 1 { t!("size-head", size = all) } else { all }
}
