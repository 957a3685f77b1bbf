//! The wide sheet: pieces apart, inside the margins, true to size, labelled inside.

use kurbo::{BezPath, Point, Rect, Shape, Size};
use proptest::prelude::*;
use tracewheel::output::{
    Align, GAP, Item, MARGIN, MAX_SIDE, Picture, Shapes, SheetError, SheetPiece, Text, WideSettings, text_width,
    wide_sheet,
};

use crate::output_demo::{demo, piece, wide_pdf};

fn sheet(pieces: &[SheetPiece], width: f64) -> Picture {
    wide_sheet("Demo", pieces, WideSettings { width }).unwrap()
}

/// All items with groups opened.
fn flat(items: &[Item]) -> Vec<&Item> {
    let open = |item: &'_ Item| -> bool { matches!(item, Item::Group { .. }) };
    items
        .iter()
        .flat_map(|item| match item {
            Item::Group { items, .. } => {
                assert!(!items.iter().any(open));
                items.iter().collect()
            }
            other => vec![other],
        })
        .collect()
}

/// The closed outlines in the order in which they were drawn.
fn outlines(picture: &Picture) -> Vec<&BezPath> {
    flat(&picture.items)
        .into_iter()
        .filter_map(|item| match item {
            Item::Stroke { path, pen } if pen.width == 0.35 => Some(path),
            _ => None,
        })
        .filter(|path| matches!(path.elements().last(), Some(kurbo::PathEl::ClosePath)))
        .collect()
}

fn texts(picture: &Picture) -> Vec<&Text> {
    flat(&picture.items)
        .into_iter()
        .filter_map(|item| if let Item::Text(text) = item { Some(text) } else { None })
        .collect()
}

/// The box of a text as seen, from the font's own measures; ascent and descent taken large.
fn text_box(text: &Text) -> Rect {
    let width = text_width(&text.text, text.size);
    let start = match text.align {
        Align::Start => 0.0,
        Align::Middle => -width / 2.0,
        Align::End => -width,
    };
    let upright = text.angle != 0.0;
    let (top, bottom) = (-0.76 * text.size, 0.22 * text.size);
    let (a, b) = (text.at, start);
    if upright {
        Rect::new(a.x + top, a.y - b - width, a.x + bottom, a.y - b)
    } else {
        Rect::new(a.x + b, a.y + top, a.x + b + width, a.y + bottom)
    }
}

fn mark_boxes(picture: &Picture) -> Vec<Rect> {
    picture
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Stroke { path, .. } if path.elements().len() == 6 => Some(path.bounding_box()),
            _ => None,
        })
        .collect()
}

#[test]
fn a_sheet_has_the_outlines_in_true_size_and_nothing_else_changed() {
    let pieces = demo();
    let picture = sheet(&pieces, 1500.0);
    let drawn = outlines(&picture);
    assert_eq!(drawn.len(), pieces.len());
    for piece in &pieces {
        let like = drawn.iter().filter(|d| {
            let (a, b) = (d.bounding_box(), piece.outline.bounding_box());
            (a.size() - b.size()).to_vec2().hypot() < 1e-9 && (d.area() - piece.outline.area()).abs() < 1e-6
        });
        assert!(like.count() >= 1, "{} {}", piece.name, piece.size);
    }
}

#[test]
fn sizes_differ_by_dashes_and_the_key_shows_them() {
    let many: Vec<SheetPiece> =
        (0..12).map(|i| piece("Strip", &format!("{i}"), "M 0 0 L 200 0 L 200 30 L 0 30 Z", &[])).collect();
    let picture = sheet(&many, 1500.0);
    let mut patterns: Vec<String> = Vec::new();
    for item in flat(&picture.items) {
        if let Item::Stroke { pen, .. } = item
            && pen.width == 0.35
        {
            patterns.push(format!("{:?}", pen.dashes));
        }
    }
    // One in the key and one on the sheet for each.
    assert_eq!(patterns.len(), 24);
    patterns.sort();
    patterns.dedup();
    assert_eq!(patterns.len(), 12);
}

#[test]
fn the_header_says_what_the_page_is() {
    let picture = sheet(&demo(), 1500.0);
    let all: Vec<&str> = texts(&picture).iter().map(|t| t.text.as_str()).collect();
    let all = all.join(" ");
    let page = format!("Page {} x {} mm", picture.width, picture.height);
    for words in ["Demo", &page, "100 %", "stitch lines", "no seam allowance", "100 mm", "4 in", "Größe 44 lang"] {
        assert!(all.contains(words), "{words} in {all}");
    }
    assert!(!all.contains("grey"));
    assert_eq!((picture.width.fract(), picture.height.fract()), (0.0, 0.0));
    let mut pieces = demo();
    pieces[3].faded = true;
    let all: Vec<String> = texts(&sheet(&pieces, 1500.0)).iter().map(|t| t.text.clone()).collect();
    assert!(all.join(" ").contains("Pieces in grey are not true"));
}

#[test]
fn marks_are_exact_both_ways_and_clear_of_the_pieces() {
    let picture = sheet(&demo(), 1500.0);
    let marks = mark_boxes(&picture);
    let mut lengths: Vec<(bool, f64)> =
        marks.iter().map(|m| (m.width() > m.height(), m.width().max(m.height()))).collect();
    lengths.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    for ((across, length), expected) in
        lengths.iter().zip([(false, 100.0), (false, 101.6), (true, 100.0), (true, 101.6)])
    {
        assert!(*across == expected.0 && (length - expected.1).abs() < 1e-9, "{lengths:?}");
    }
    assert_eq!(lengths.len(), 4);
    for (mark, outline) in marks.iter().flat_map(|m| outlines(&picture).into_iter().map(move |o| (m, o))) {
        assert!(mark.inflate(5.0, 5.0).intersect(outline.bounding_box()).area() == 0.0);
    }
}

#[test]
fn labels_and_words_lie_where_they_should() {
    let mut pieces = demo();
    // A shape whose middle is outside: a horseshoe.
    let horseshoe = "M 0 0 L 300 0 L 300 300 L 240 300 L 240 60 L 60 60 L 60 300 L 0 300 Z";
    pieces.push(piece("Horseshoe", "36", horseshoe, &[]));
    pieces.push(piece("Sliver", "36", "M 0 0 L 200 3 L 0 6 Z", &[]));
    let picture = sheet(&pieces, 1500.0);
    let drawn = outlines(&picture);
    let mut inside = 0;
    for text in texts(&picture) {
        let room = text_box(text);
        assert!(room.x0 >= MARGIN - 0.5 && room.x1 <= picture.width - MARGIN + 0.5, "{}", text.text);
        let Some(home) = drawn.iter().find(|o| o.winding(room.center()) != 0) else { continue };
        inside += 1;
        for corner in [room.origin(), Point::new(room.x1, room.y0), Point::new(room.x0, room.y1), room.max_point()] {
            assert!(home.winding(corner) != 0, "{} leaves its piece at {corner:?}", text.text);
        }
    }
    // Name and size, in one line or two.
    assert!(inside >= pieces.len(), "{inside} labels for {} pieces", pieces.len());
    for pair in texts(&picture).windows(2) {
        assert_eq!(text_box(pair[0]).intersect(text_box(pair[1])).area(), 0.0, "{} {}", pair[0].text, pair[1].text);
    }
}

trait MaxPoint {
    fn max_point(&self) -> Point;
}

impl MaxPoint for Rect {
    fn max_point(&self) -> Point {
        Point::new(self.x1, self.y1)
    }
}

#[test]
fn a_wanted_place_is_used_if_it_is_inside() {
    let mut one = piece("Front", "", "M 0 0 L 400 0 L 400 400 L 0 400 Z", &[]);
    let at = |one: &SheetPiece| {
        let picture = sheet(std::slice::from_ref(one), 1500.0);
        let origin = outlines(&picture)[0].bounding_box().origin();
        texts(&picture).iter().find(|t| t.text == "Front").unwrap().at - origin
    };
    one.label_at = Some(Point::new(100.0, 300.0));
    assert!((at(&one).x - 100.0).abs() < 1e-9 && (at(&one).y - 300.0).abs() < 5.0);
    one.label_at = Some(Point::new(500.0, 300.0));
    assert!((at(&one).x - 200.0).abs() < 50.0, "outside: {:?}", at(&one));
}

#[test]
fn room_for_a_label_is_the_largest_or_in_the_middle() {
    // Against plain knowledge: a 100 x 40 box holds a 10 x 4 box ten times, in its middle.
    let shapes = Shapes::new(&BezPath::from_svg("M 0 0 L 100 0 L 100 40 L 0 40 Z").unwrap(), &[]);
    assert!((shapes.scale_at(Point::new(50.0, 20.0), Size::new(10.0, 4.0), true, (0.0, 99.0)) - 10.0).abs() < 1e-12);
    assert!((shapes.scale_at(Point::new(30.0, 20.0), Size::new(10.0, 4.0), true, (0.0, 99.0)) - 6.0).abs() < 1e-12);
    let box_10_4 = Size::new(10.0, 4.0);
    let room = shapes.room(box_10_4, 100.0, true).unwrap();
    assert!(room.scale > 9.6 && (room.centre.x - 50.0).abs() < 2.0, "{room:?}");
    // A strip has the same room all along it: the middle is taken.
    let strip = Shapes::new(&BezPath::from_svg("M 0 0 L 400 0 L 400 40 L 0 40 Z").unwrap(), &[]);
    let room = strip.room(box_10_4, 100.0, true).unwrap();
    assert!(room.scale > 9.6 && (room.centre.x - 200.0).abs() < 1.0, "{room:?}");
    let line = BezPath::from_svg("M 50 0 L 50 40").unwrap();
    let split = Shapes::new(&BezPath::from_svg("M 0 0 L 100 0 L 100 40 L 0 40 Z").unwrap(), &[line]);
    let room = split.room(box_10_4, 100.0, true).unwrap();
    assert!(room.scale < 5.01 && room.scale > 4.5 && (room.centre.x - 50.0).abs() > 20.0, "{room:?}");
}

#[test]
fn what_does_not_fit_is_refused_with_numbers() {
    let said = |pieces: &[SheetPiece], width: f64| {
        wide_sheet("t", pieces, WideSettings { width }).map(|p| (p.width, p.height)).unwrap_err().to_string()
    };
    let wide = piece("Cape", "40", "M 0 0 L 1600 0 L 1600 100 L 0 100 Z", &[]);
    let text = said(std::slice::from_ref(&wide), 1500.0);
    assert!(text.contains("Cape in size 40 is 1600 mm wide") && text.contains("at least 1630 mm"), "{text}");
    assert!(wide_sheet("t", std::slice::from_ref(&wide), WideSettings { width: 1630.0 }).is_ok());
    let long = vec![piece("Cape", "40", "M 0 0 L 1000 0 L 1000 2000 L 0 2000 Z", &[]); 3];
    let text = said(&long, 1100.0);
    // 15 + 124 (the block) + 10 + 3 x 2000 + 2 x 10 + 15 = 6184.
    assert!(text.contains("6184 mm long, 1104 mm more than the 5080 mm"), "{text}");
    assert!(wide_sheet("t", &long, WideSettings { width: 2100.0 }).is_ok());
    assert!(said(&[], 1500.0).contains("no pieces"));
    for width in [0.0, 100.0, MAX_SIDE + 1.0, f64::NAN] {
        assert!(matches!(wide_sheet("t", &long, WideSettings { width }), Err(SheetError::WidthBad { .. })));
    }
    for outline in ["", "M 1 1", "M 0 0 L 10 0 Z"] {
        let text = said(&[piece("Front", "", outline, &[])], 1500.0);
        assert!(text.starts_with("piece Front has no outline"), "{text}");
    }
    let mut lost = piece("Front", "", "M 0 0 L 10 0 L 10 10 Z", &[]);
    lost.lines.push(BezPath::from_vec(vec![kurbo::PathEl::MoveTo(Point::new(f64::NAN, 0.0))]));
    assert!(matches!(wide_sheet("t", &[lost], WideSettings::default()), Err(SheetError::PieceEmpty { .. })));
}

#[test]
fn publishing_twice_gives_the_same_bytes() {
    let make = || wide_pdf("Demo", &demo(), WideSettings::default()).unwrap();
    let bytes = make();
    assert!(bytes.starts_with(b"%PDF-1.7") && bytes == make());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn pieces_never_overlap_and_stay_inside_the_margins(
        sizes in prop::collection::vec((5.0..600.0f64, 5.0..400.0f64, 0usize..3), 1..30),
        width in 640.0..3000.0f64,
    ) {
        let pieces: Vec<SheetPiece> = sizes
            .iter()
            .enumerate()
            .map(|(i, (w, h, size))| {
                // Frames off the origin; an inner line that sticks out of every other outline.
                let svg = format!("M -50 {i} l {w} 0 l 0 {h} q {} 3 {} 0 Z", -w / 2.0, -w);
                piece(&format!("Piece {i}"), &format!("{size}"), &svg, &[&format!("M {} {i} l 4 2", [-52, -49][i % 2])])
            })
            .collect();
        let picture = sheet(&pieces, width);
        prop_assert!(picture.width <= width.ceil() && picture.height <= MAX_SIDE);
        let boxes: Vec<Rect> = outlines(&picture).iter().map(|o| o.bounding_box()).collect();
        prop_assert_eq!(boxes.len(), pieces.len());
        let page = Rect::new(MARGIN, MARGIN, picture.width - MARGIN, picture.height - MARGIN).inflate(1e-6, 1e-6);
        for item in flat(&picture.items) {
            if let Item::Stroke { path, .. } = item {
                prop_assert!(page.contains_rect(path.bounding_box()));
            }
        }
        for (i, a) in boxes.iter().enumerate() {
            prop_assert!(page.contains_rect(*a), "{:?} in {:?}", a, page);
            for b in &boxes[i + 1..] {
                let apart = a.inflate(GAP / 2.0 - 1e-6, GAP / 2.0 - 1e-6)
                    .intersect(b.inflate(GAP / 2.0 - 1e-6, GAP / 2.0 - 1e-6));
                prop_assert!(apart.area() == 0.0, "{:?} {:?}", a, b);
            }
            for mark in mark_boxes(&picture) {
                prop_assert!(mark.inflate(5.0, 5.0).intersect(*a).area() == 0.0);
            }
        }
    }
}
