//! The PDF writer: structure, without outside tools. The rasterised page is judged by `tests/outside/print.py`.

use std::f64::consts::FRAC_PI_2;

use kurbo::{BezPath, Point};
use miniz_oxide::inflate::decompress_to_vec_zlib;
use tracewheel::output::{
    Align, Ink, Item, MAX_SIDE, PdfError, Pen, Picture, Text, missing_signs, text_width, write_pdf,
};

fn page(width: f64, height: f64, items: Vec<Item>) -> Picture {
    Picture { width, height, items }
}

fn find(bytes: &[u8], what: &str) -> Option<usize> {
    bytes.windows(what.len()).position(|w| w == what.as_bytes())
}

/// All streams of a file that zlib can open, as text.
fn streams(bytes: &[u8]) -> Vec<String> {
    let mut found = Vec::new();
    let mut rest = bytes;
    while let Some(start) = find(rest, "\nstream\n") {
        let end = find(&rest[start..], "\nendstream").unwrap() + start;
        if let Ok(open) = decompress_to_vec_zlib(&rest[start + 8..end]) {
            found.push(String::from_utf8_lossy(&open).into_owned());
        }
        rest = &rest[end..];
    }
    found
}

fn content(picture: &Picture) -> String {
    let bytes = write_pdf("t", std::slice::from_ref(picture)).unwrap();
    streams(&bytes).into_iter().find(|s| s.contains(" cm\n")).unwrap()
}

/// Width and height of the page boxes, in points as written.
fn boxes(bytes: &[u8]) -> Vec<(f64, f64)> {
    let text = String::from_utf8_lossy(bytes);
    text.split("/MediaBox [")
        .skip(1)
        .map(|part| {
            let numbers: Vec<f64> =
                part.split(']').next().unwrap().split_whitespace().map(|n| n.parse().unwrap()).collect();
            assert_eq!(numbers[..2], [0.0, 0.0]);
            (numbers[2], numbers[3])
        })
        .collect()
}

fn text(letters: &str) -> Item {
    Item::Text(Text::new(letters, Point::new(10.0, 20.0), 5.0))
}

#[test]
fn the_same_pictures_give_the_same_bytes_and_others_another_number() {
    let one = |letters: &str| write_pdf("Title", &[page(300.0, 200.0, vec![text(letters)])]).unwrap();
    assert_eq!(one("Front"), one("Front"));
    let id = |bytes: &[u8]| bytes[find(bytes, "/ID").unwrap()..][..40].to_vec();
    assert_ne!(id(&one("Front")), id(&one("Back")));
}

#[test]
fn no_file_carries_a_date_or_another_unit() {
    let bytes = write_pdf("Title", &[page(300.0, 200.0, vec![text("x")])]).unwrap();
    for word in ["CreationDate", "ModDate", "UserUnit"] {
        assert_eq!(find(&bytes, word), None, "{word}");
    }
    assert!(find(&bytes, "/PrintScaling /None").is_some());
}

#[test]
fn page_boxes_have_the_size_of_the_pictures() {
    let sizes = [(1200.0, 900.0), (333.333, 0.5), (MAX_SIDE, MAX_SIDE), (1499.999, 4999.995)];
    let pages: Vec<Picture> = sizes.iter().map(|(w, h)| page(*w, *h, Vec::new())).collect();
    let bytes = write_pdf("Title", &pages).unwrap();
    let found = boxes(&bytes);
    assert_eq!(found.len(), sizes.len());
    for ((w, h), (bw, bh)) in sizes.iter().zip(found) {
        assert!((bw / 72.0 * 25.4 - w).abs() < 0.001 && (bh / 72.0 * 25.4 - h).abs() < 0.001, "{w} x {h}: {bw} {bh}");
    }
    assert_eq!(boxes(&bytes)[2], (14400.0, 14400.0));
}

#[test]
fn a_page_too_large_says_by_how_much() {
    let error = write_pdf("t", &[page(100.0, 100.0, vec![]), page(6000.0, 5080.4, vec![])]).unwrap_err();
    assert_eq!(error, PdfError::PageTooLarge { page: 2, width: 6000.0, height: 5080.4 });
    let said = error.to_string();
    assert!(said.contains("page 2") && said.contains("920 mm too wide and 1 mm too high"), "{said}");
}

#[test]
fn pages_and_places_that_are_no_numbers_are_refused() {
    assert_eq!(write_pdf("t", &[]), Err(PdfError::NoPages));
    for (w, h) in [(0.0, 10.0), (10.0, -1.0), (f64::NAN, 10.0)] {
        assert!(matches!(write_pdf("t", &[page(w, h, vec![])]), Err(PdfError::PageEmpty { page: 1, .. })));
    }
    for bad in [f64::NAN, f64::INFINITY, 1e9] {
        let path =
            BezPath::from_vec(vec![kurbo::PathEl::MoveTo(Point::ORIGIN), kurbo::PathEl::LineTo(Point::new(bad, 1.0))]);
        let items = vec![Item::Stroke { path, pen: Pen::solid(0.3) }];
        assert_eq!(write_pdf("t", &[page(10.0, 10.0, items)]), Err(PdfError::NotFinite { page: 1 }));
    }
}

#[test]
fn coordinates_are_millimetres_to_the_thousandth_under_one_matrix() {
    let path = BezPath::from_svg("M 1.23449 2 L 4999.1236 3.00051 Q 10 20 30 40 Z").unwrap();
    let pen = Pen { width: 0.35, dashes: vec![7.0, 2.5], ink: Ink::BLACK };
    let text = content(&page(5000.0, 254.0, vec![Item::Stroke { path, pen }]));
    assert_eq!(text.matches(" cm\n").count(), 1);
    assert!(text.starts_with("2.8346457 0 0 -2.8346457 0 720 cm\n"), "{text}");
    for line in ["0.35 w", "[7 2.5] 0 d", "0 G", "1.234 2 m", "4999.124 3.001 l", "16.667 26.667 30 40 c", "h", "S"] {
        let found = text.lines().any(|l| l == line || (line.ends_with('c') && l.ends_with(line)));
        assert!(found, "{line} in {text}");
    }
    // PDF knows no exponents.
    let small = BezPath::from_svg("M 0.0000001 0 L 0.0004 0.001").unwrap();
    let text = content(&page(10.0, 10.0, vec![Item::Fill { path: small, ink: Ink { red: 255, green: 0, blue: 128 } }]));
    assert!(!text.contains('e') || !text.contains("e-"), "{text}");
    assert!(text.contains("0 0 m\n0 0.001 l") && text.contains("1 0 0.502 rg"), "{text}");
}

#[test]
fn text_is_placed_by_its_alignment_and_turned_clockwise() {
    let width = text_width("Front", 10.0);
    let with = |align, angle| Item::Text(Text { align, angle, ..Text::new("Front", Point::new(100.0, 50.0), 10.0) });
    let matrix = |item| {
        let text = content(&page(200.0, 100.0, vec![item]));
        let line = text.lines().find(|l| l.ends_with(" Tm")).unwrap().to_owned();
        line.split_whitespace().take(6).map(|n| n.parse().unwrap()).collect::<Vec<f64>>()
    };
    let near = |a: Vec<f64>, b: [f64; 6]| assert!(a.iter().zip(b).all(|(a, b)| (a - b).abs() < 6e-4), "{a:?} {b:?}");
    near(matrix(with(Align::Start, 0.0)), [1.0, 0.0, 0.0, -1.0, 100.0, 50.0]);
    near(matrix(with(Align::Middle, 0.0)), [1.0, 0.0, 0.0, -1.0, 100.0 - width / 2.0, 50.0]);
    near(matrix(with(Align::End, FRAC_PI_2)), [0.0, 1.0, 1.0, 0.0, 100.0, 50.0 - width]);
}

#[test]
fn letters_that_share_a_glyph_lead_back_to_themselves() {
    // In this font the Greek letter and the sign for a difference are one glyph; both must come back as typed.
    let bytes = write_pdf("t", &[page(100.0, 100.0, vec![text("aΔ∆b")])]).unwrap();
    let maps: Vec<String> = streams(&bytes).into_iter().filter(|s| s.contains("beginbfchar")).collect();
    let leads_to = |code: &str| maps.iter().filter(|m| m.contains(&format!("> <{code}>"))).count();
    assert_eq!((leads_to("0394"), leads_to("2206"), leads_to("0061")), (1, 1, 1), "{maps:?}");
    assert_eq!(maps.len(), 2);
}

#[test]
fn the_font_knows_the_letters_of_many_languages_and_names_those_it_lacks() {
    let known = "Größe Ärmel Łódź ½ ⅜ 45° × Κολάρο Рукав İğne ″ – … a\u{302}";
    assert_eq!(missing_signs([known]).into_iter().collect::<String>(), "");
    assert_eq!(missing_signs(["日a本", "Front\n"]).into_iter().collect::<String>(), "日本");
    // However a letter with a mark was typed, it is written as one.
    let typed = |letters: &str| write_pdf("t", &[page(100.0, 100.0, vec![text(letters)])]).unwrap();
    assert_eq!(typed("A\u{308}rmel"), typed("Ärmel"));
    // A box is drawn, the text behind it stays.
    let text = content(&page(100.0, 100.0, vec![text("a日b")]));
    assert!(text.contains("/Span") && text.contains("ActualText"), "{text}");
}

#[test]
fn widths_come_from_the_font() {
    // Independent: advances in the font's own hmtx table, read by hand here.
    let font = include_bytes!("../../assets/fonts/Inter-Regular.otf");
    let word = |at: usize| usize::from(u16::from_be_bytes([font[at], font[at + 1]]));
    let long = |at: usize| word(at) * 65_536 + word(at + 2);
    let table = |tag: &[u8]| {
        (0..word(4)).map(|i| 12 + 16 * i).find(|at| &font[*at..*at + 4] == tag).map(|at| long(at + 8)).unwrap()
    };
    let (em, hmtx) = (word(table(b"head") + 18), table(b"hmtx"));
    let advances = word(table(b"hhea") + 34);
    let all: Vec<usize> = (0..advances).map(|i| word(hmtx + 4 * i)).collect();
    for sign in ["A", "i", "ß", "½"] {
        let units = text_width(sign, em as f64);
        assert!(all.iter().any(|a| (*a as f64 - units).abs() < 1e-3), "{sign}: {units}");
    }
    assert!(text_width("W", 1.0) > 1.5 * text_width("i", 1.0));
    assert!((text_width("AA", 3.0) - 6.0 * text_width("A", 1.0)).abs() < 1e-12);
    assert_eq!(text_width("", 3.0), 0.0);
}

#[test]
fn layers_of_one_name_are_one_and_all_are_listed() {
    let group = |name: &str| Item::Group { layer: Some(name.to_owned()), items: vec![text("x")] };
    let pages = [page(50.0, 50.0, vec![group("size 36"), group("size 38")]), page(50.0, 50.0, vec![group("size 36")])];
    let bytes = write_pdf("t", &pages).unwrap();
    let file = String::from_utf8_lossy(&bytes);
    assert_eq!(file.matches("/Type /OCG").count(), 2);
    let listed = |key: &str| file.split(key).nth(1).unwrap().split(']').next().unwrap().matches(" 0 R").count();
    assert_eq!((listed("/OCGs ["), listed("/Order [")), (2, 2), "{file}");
    let marks: Vec<usize> =
        streams(&bytes).iter().filter(|s| s.contains(" cm\n")).map(|s| s.matches("/OC /L0 BDC").count()).collect();
    assert_eq!(marks, [1, 1]);
    let without = write_pdf("t", &[page(50.0, 50.0, vec![text("x")])]).unwrap();
    assert_eq!(find(&without, "/OC"), None);
}

#[test]
fn the_title_stands_in_the_file_whatever_signs_it_has() {
    let bytes = write_pdf("Rock & <Bluse>\u{1}", &[page(50.0, 50.0, vec![])]).unwrap();
    assert!(find(&bytes, "(Rock & <Bluse> )").is_some());
    assert!(find(&bytes, "<rdf:li xml:lang=\"x-default\">Rock &amp; &lt;Bluse&gt; </rdf:li>").is_some());
}
