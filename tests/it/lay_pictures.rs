//! Pictures of lays: letters that can be read, words that do not lie on each other, every piece named, sheets that are used.

use kurbo::{Rect, Shape};
use tracewheel::base::Language;
use tracewheel::finish::letters;
use tracewheel::output::lay::{Lay, SMALLEST, cloth_words, lay_page, lay_pages};
use tracewheel::output::{Align, Item, Picture, Text, text_width};
use tracewheel::texts::speaking;

use crate::texts::drawn;

use super::laying::{DOWN, Made, draft, made, rectangle};

/// A pair, a single piece that is the same turned over, and many narrow strips, on folded cloth.
fn garment(sizes: usize) -> Made {
    let pair = rectangle("a_front", 40.0, 70.0, &format!("material: \"main\", count: 2, {DOWN}"));
    let single = rectangle("b_back", 30.0, 60.0, &format!("material: \"main\", count: 1, {DOWN}"));
    let small = rectangle("c_tab", 5.0, 6.0, &format!("material: \"main\", count: 1, {DOWN}"));
    let strips = "strips: [(name: \"tie_of_the_neck\", material: \"main\", length: \"80 cm\", width: \"3 cm\", count: 5, grain: along), \
                  (name: \"loop\", material: \"main\", length: \"7 cm\", width: \"2 cm\", count: 6, grain: along)]";
    let text = draft(&[pair, single, small].concat(), "laid: folded, selvedge: \"1 cm\", nap: with", strips);
    let names: Vec<String> = (0..sizes).map(|k| format!("\"{}\"", 80 + 4 * k)).collect();
    made(&text.replace("[\"one\"]", &format!("[{}]", names.join(", "))))
}

fn texts(picture: &Picture) -> Vec<&Text> {
    picture.items.iter().filter_map(|i| if let Item::Text(text) = i { Some(text) } else { None }).collect()
}

/// The room of a text, less a hair.
fn room(text: &Text) -> Rect {
    let wide = text_width(&text.text, text.size);
    let left = match text.align {
        Align::Start => text.at.x,
        Align::Middle => text.at.x - wide / 2.0,
        Align::End => text.at.x - wide,
    };
    Rect::new(left, text.at.y - 0.68 * text.size, left + wide, text.at.y + 0.02 * text.size)
}

#[track_caller]
fn can_be_read(picture: &Picture) {
    let all = texts(picture);
    assert!(all.len() > 8, "{}", all.len());
    let page = Rect::new(0.0, 0.0, picture.width, picture.height);
    for (i, text) in all.iter().enumerate() {
        assert!(text.size >= SMALLEST, "{} is {} mm", text.text, text.size);
        let own = room(text);
        assert!(page.contains(own.origin()) && page.x1 >= own.x1, "{} leaves the sheet: {own:?}", text.text);
        for other in &all[i + 1..] {
            let common = own.intersect(room(other));
            assert!(common.width() <= 0.0 || common.height() <= 0.0, "{} lies on {}", text.text, other.text);
        }
    }
}

#[test]
fn letters_are_large_enough_and_lie_apart() {
    let made = garment(1);
    let lay = made.laid(1400.0);
    let signs = letters(&made.model);
    let page = lay_page("a trial", &lay, &signs);
    can_be_read(&page);
    // Each kind of piece is named where it lies: the letters and, for strips, the names.
    let words: Vec<&str> = texts(&page).iter().map(|t| t.text.as_str()).collect();
    for sign in [&*signs[0], &*signs[1], &*signs[2], "tie of the neck", "loop"] {
        let is_it = |w: &&&str| w.split(", ").next() == Some(sign);
        assert!(words.iter().any(|w| is_it(&w)), "{sign} is nowhere: {words:?}");
    }
    // What is cut from one layer says so where it lies, once for each.
    let shapes =
        lay.job.stretches.iter().zip(&lay.layouts).flat_map(|(s, l)| l.laid.iter().map(|l| &s.shapes[l.shape]));
    let one_layer = shapes.filter(|s| s.one_layer).count();
    let said = words.iter().filter(|w| w.contains("cut from one layer")).count();
    assert!(one_layer > 0 && said > 0 && said <= one_layer, "{said} of {one_layer}: {words:?}");
    assert!(words.iter().any(|w| w.contains("all arrows point to the right, where the hems are")), "{words:?}");
}

/// How much of a page the drawn lay takes.
fn used(page: &Picture) -> f64 {
    let lines = page.items.iter().filter_map(|i| if let Item::Stroke { path, .. } = i { Some(path) } else { None });
    let all = lines.map(|p| p.bounding_box()).reduce(|a, b| a.union(b)).unwrap();
    all.area() / (page.width * page.height)
}

#[test]
fn a_sheet_is_used() {
    for (wide, long) in [(90.0, 130.0), (140.0, 150.0), (140.0, 500.0)] {
        let text = draft(
            &rectangle("a", wide, long, &format!("material: \"main\", count: 1, face: right_side_up, {DOWN}")),
            "",
            "",
        );
        let made = made(&text);
        let lay = made.laid(wide * 10.0);
        let part = used(&lay_page("a trial", &lay, &letters(&made.model)));
        // The longest can fill the width of a lying page only.
        let least = if long > 3.0 * wide { 0.3 } else { 0.5 };
        assert!(part > least, "{wide} x {long}: {part}");
    }
}

#[test]
fn lays_of_ten_sizes_share_pages() {
    let made = garment(10);
    let lay = made.laid(1400.0);
    let all: Vec<(String, (String, &Lay))> =
        (0..10).map(|k| (cloth_words(&lay), (format!("Size {}", 80 + 4 * k), &*lay))).collect();
    let pages = lay_pages("a trial", &all, &letters(&made.model));
    assert!((1..=4).contains(&pages.len()), "{}", pages.len());
    pages.iter().for_each(can_be_read);
    let names = pages.iter().flat_map(|p| texts(p)).filter(|t| t.text.starts_with("Size ")).count();
    assert_eq!(names, 10, "every size is there");
    // German words are longer.
    let named =
        |lay| (0..10).map(move |k| (cloth_words(lay), (format!("Größe {}", 80 + 4 * k), lay))).collect::<Vec<_>>();
    let german = speaking(Language::German, || {
        let (pages, one) =
            (lay_pages("ein Versuch", &named(&*lay), &letters(&made.model)), lay_page("eines", &lay, &[]));
        pages.into_iter().chain([one]).collect::<Vec<_>>()
    });
    german.iter().for_each(can_be_read);
    assert!(german.iter().flat_map(drawn).any(|t| t.contains("rechts auf rechts")), "they are in German");
    // One alone has a page of its own.
    assert_eq!(lay_pages("a trial", &all[..1], &letters(&made.model)).len(), 1);
}
