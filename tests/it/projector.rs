//! Pages for a projector: lines that can be seen, positions that join, numbers that are those of the cases.

use kurbo::{BezPath, Point, Rect, Shape, Size};
use tracewheel::output::{
    Grid, Ink, Item, Picture, ProjectorError, ProjectorSettings, SheetPiece, Text, projector_sheet, write_pdf,
};
use tracewheel::session::{PrintFor, file_name};

use crate::labels::example;
use crate::output_demo::{demo, piece};

fn flat(items: &[Item]) -> Vec<&Item> {
    items
        .iter()
        .flat_map(|item| match item {
            Item::Group { items, .. } | Item::Clip { items, .. } => flat(items),
            other => vec![other],
        })
        .collect()
}

fn texts(picture: &Picture) -> Vec<&Text> {
    flat(&picture.items).into_iter().filter_map(|i| if let Item::Text(t) = i { Some(t) } else { None }).collect()
}

fn strokes(picture: &Picture) -> Vec<(&BezPath, &tracewheel::output::Pen)> {
    let all = flat(&picture.items).into_iter();
    all.filter_map(|i| if let Item::Stroke { path, pen } = i { Some((path, pen)) } else { None }).collect()
}

#[test]
fn c105_lines_are_two_projected_pixels_wide() {
    // 24 in over 720 pixels: 0.847 mm a pixel, so at least 1.7 mm (1.693); 0.35 mm is refused.
    let settings = ProjectorSettings::default();
    assert!((settings.pixel() - 0.847).abs() < 0.001 && (settings.least_line() - 1.693).abs() < 0.001);
    let thin = ProjectorSettings { line: Some(0.35), ..settings.clone() };
    let problem = projector_sheet(&demo(), &thin).unwrap_err();
    assert!(matches!(problem, ProjectorError::LineThin { .. }));
    assert!(problem.to_string().contains("0.35 mm") && problem.to_string().contains("at least 1.693 mm"), "{problem}");
    for line in [None, Some(1.7), Some(3.0)] {
        for page in projector_sheet(&demo(), &ProjectorSettings { line, ..settings.clone() }).unwrap() {
            assert!(strokes(&page).len() > 4);
            for (_, pen) in strokes(&page) {
                assert!(pen.width >= 1.693 - 0.001, "{}", pen.width);
            }
            // Letters of 16 pixels at the least.
            assert!(!texts(&page).is_empty() && texts(&page).iter().all(|t| t.size >= 16.0 * 0.846));
        }
    }
}

/// The rings of shift marks with their names.
fn marks(picture: &Picture) -> Vec<(String, Point)> {
    let rings: Vec<Rect> = strokes(picture)
        .iter()
        .map(|(p, _)| p.bounding_box())
        .filter(|b| (b.width() - b.height()).abs() < 0.3 && b.width() > 15.0 && b.width() < 40.0)
        .collect();
    let named = texts(picture).into_iter().filter(|t| t.text.contains('–') && t.text.len() < 12);
    named
        .map(|t| {
            let near = rings.iter().map(|r| r.center()).min_by(|a, b| a.distance(t.at).total_cmp(&b.distance(t.at)));
            (t.text.clone(), near.unwrap())
        })
        .collect()
}

#[test]
fn c106_a_leg_longer_than_the_picture_takes_two_positions_with_marks_in_common() {
    // 110 cm over a picture of 91.4 cm with 10 cm common: two positions.
    let leg = piece("Leg", "M", "M 0 0 L 1076 0 L 1076 300 L 0 300 Z", &[]);
    let pages = projector_sheet(&[leg], &ProjectorSettings::default()).unwrap();
    assert_eq!(pages.len(), 3, "the test of the scale and two positions");
    let [a, b] = [&pages[1], &pages[2]].map(marks);
    assert_eq!(a.iter().map(|m| m.0.as_str()).collect::<Vec<_>>(), ["1–2 a", "1–2 b"]);
    assert_eq!(a.len(), b.len());
    let outline = |page: &Picture| {
        let all = strokes(page).into_iter().map(|s| s.0.bounding_box());
        all.filter(|b| (b.width() - 1076.0).abs() < 1e-6).map(|b| b.origin()).next().unwrap()
    };
    let moved = outline(&pages[2]) - outline(&pages[1]);
    let room = Rect::new(0.0, 0.0, 914.4, 609.6);
    for ((name, one), (_, other)) in a.iter().zip(&b) {
        assert!((*other - *one - moved).hypot() < 1e-6, "{name}: {one:?} {other:?}, the piece moves by {moved:?}");
        // 10 cm common at least: the ring lies in it on both pages.
        let common = room.intersect(room - moved);
        assert!(common.width() >= 100.0 && common.inset(-8.0).contains(*one), "{name} {one:?} {common:?}");
    }
    // Together they show all of it.
    let seen: Vec<Rect> = pages[1..].iter().map(|p| room - outline(p).to_vec2()).collect();
    assert!(seen[0].x0 <= 0.0 && seen[1].x1 >= 1076.0 && seen[0].x1 > seen[1].x0);
    for (i, page) in pages[1..].iter().enumerate() {
        assert!(texts(page).iter().any(|t| t.text.starts_with(&format!(
            "position {} of 2 · Leg {} of 2",
            i + 1,
            i + 1
        ))));
    }
}

#[test]
fn any_piece_is_shown_whole_by_positions_that_overlap() {
    for (width, height, common) in
        [(700.0, 400.0, 100.0), (1500.0, 900.0, 100.0), (2600.0, 1500.0, 150.0), (300.0, 2000.0, 70.0)]
    {
        let large = piece("Cape", "M", &format!("M 0 0 L {width} 0 L {width} {height} L 0 {height} Z"), &[]);
        let settings = ProjectorSettings { common, ..ProjectorSettings::default() };
        let pages = projector_sheet(&[large], &settings).unwrap();
        let room = Rect::from_origin_size(Point::ZERO, settings.picture);
        let mut views = Vec::new();
        for page in &pages[1..] {
            assert_eq!((page.width, page.height), (settings.picture.width, settings.picture.height));
            let mut own = strokes(page).into_iter().map(|s| s.0.bounding_box());
            let own = own.find(|b| (b.width() - width).abs() < 1e-6 && (b.height() - height).abs() < 1e-6).unwrap();
            views.push(room - own.origin().to_vec2());
        }
        // Every place of the piece is seen.
        for i in 0..=40 {
            for k in 0..=40 {
                let p = Point::new(width * f64::from(i) / 40.0, height * f64::from(k) / 40.0);
                assert!(views.iter().any(|v| v.inflate(1e-6, 1e-6).contains(p)), "{p:?} is not seen");
            }
        }
        // Neighbours have what is asked for in common, and each common part has two marks on both pages.
        let mut joins = 0;
        for (i, a) in views.iter().enumerate() {
            for (k, b) in views.iter().enumerate().skip(i + 1) {
                let by = b.origin() - a.origin();
                if (by.x.abs() > 1e-6) == (by.y.abs() > 1e-6) {
                    continue;
                }
                let name = format!("{}–{} ", i + 1, k + 1);
                let found = [i, k].map(|n| marks(&pages[n + 1]).into_iter().filter(|m| m.0.starts_with(&name)).count());
                if found == [0, 0] {
                    continue; // no neighbours
                }
                joins += 1;
                assert_eq!(found, [2, 2]);
                let both = a.intersect(*b);
                assert!(both.width().min(both.height()) >= common - 1e-6, "{both:?}");
            }
        }
        let (across, down) = (
            tracewheel::output::pages_over(width + 24.0, 914.4, common),
            tracewheel::output::pages_over(height + 24.0, 609.6, common),
        );
        assert_eq!(views.len(), across * down);
        assert_eq!(joins, (across - 1) * down + across * (down - 1), "{width} x {height}");
    }
}

#[test]
fn small_pieces_share_a_position_and_lie_apart() {
    let small: Vec<SheetPiece> = (0..9)
        .map(|i| piece(&format!("P{i}"), "M", &format!("M 0 0 L {0} 0 L {0} 180 L 0 180 Z", 190 + 7 * i), &[]))
        .collect();
    let pages = projector_sheet(&small, &ProjectorSettings::default()).unwrap();
    assert!(pages.len() - 1 <= 2, "{}", pages.len());
    let mut found = 0;
    for page in &pages[1..] {
        let all =
            strokes(page).into_iter().filter(|(p, _)| matches!(p.elements().last(), Some(kurbo::PathEl::ClosePath)));
        let boxes: Vec<Rect> =
            all.map(|(p, _)| p.bounding_box()).filter(|b| (b.height() - 180.0).abs() < 1e-6).collect();
        found += boxes.len();
        for (i, a) in boxes.iter().enumerate() {
            assert!(Rect::new(0.0, 0.0, 914.4, 609.6).contains_rect(*a));
            assert!(boxes[i + 1..].iter().all(|b| a.inflate(5.0, 5.0).intersect(*b).area() == 0.0));
        }
    }
    assert_eq!(found, 9);
}

#[test]
fn the_first_page_tests_the_scale_both_ways_and_the_grid_is_told() {
    let settings = ProjectorSettings { grid: Grid::Both, title: "A top".into(), ..ProjectorSettings::default() };
    let pages = projector_sheet(&demo(), &settings).unwrap();
    let lengths: Vec<(f64, f64)> = strokes(&pages[0])
        .into_iter()
        .filter(|(p, pen)| p.elements().len() == 2 && pen.ink == Ink::grey(255))
        .map(|(p, _)| (p.bounding_box().width(), p.bounding_box().height()))
        .collect();
    // In two separate units, both ways: the larger marks across, where there is room.
    for wanted in [(500.0, 0.0), (508.0, 0.0), (0.0, 200.0), (0.0, 203.2)] {
        assert!(lengths.iter().any(|l| (l.0 - wanted.0).hypot(l.1 - wanted.1) < 1e-9), "{wanted:?}: {lengths:?}");
    }
    let said = texts(&pages[0]).iter().map(|t| t.text.as_str()).collect::<Vec<_>>().join(" ");
    for words in [
        "500 mm",
        "20 in",
        "A top",
        "91.44 cm wide and 60.96 cm high",
        "0.85 mm",
        "1.69 mm",
        "solid lines 5 cm apart, dotted lines 2 in apart",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    // The grid: one path of solid lines 50 mm apart, one of dotted lines 50.8 mm apart.
    let grid: Vec<_> = strokes(&pages[1]).into_iter().filter(|(_, pen)| pen.ink == Ink::grey(70)).collect();
    assert_eq!(grid.len(), 2);
    for ((path, pen), (pitch, solid)) in grid.into_iter().zip([(50.0, true), (50.8, false)]) {
        assert_eq!(pen.dashes.is_empty(), solid);
        let mut xs: Vec<f64> =
            path.segments().map(|s| s.bounding_box()).filter(|b| b.width() == 0.0).map(|b| b.x0).collect();
        xs.sort_by(f64::total_cmp);
        assert!(xs.len() >= 17 && xs.windows(2).all(|w| (w[1] - w[0] - pitch).abs() < 1e-9), "{xs:?}");
    }
    // Nothing but the ground is as dark as it, and the other way round.
    let light = projector_sheet(&demo(), &ProjectorSettings { dark: false, ..settings }).unwrap();
    for (pages, ground) in [(&pages, Ink::BLACK), (&light, Ink::grey(255))] {
        let first = flat(&pages[1].items)[0];
        assert!(
            matches!(first, Item::Fill { path, ink } if *ink == ground && path.bounding_box().size() == Size::new(914.4, 609.6))
        );
        assert!(strokes(&pages[1]).iter().all(|(_, pen)| pen.ink != ground));
    }
    // What is not true is seen, but not as what is to be cut.
    for dark in [true, false] {
        let piece = SheetPiece { faded: true, ..piece("Faded", "M", "M 0 0 L 400 0 L 400 300 Z", &[]) };
        let settings = ProjectorSettings { dark, ..ProjectorSettings::default() };
        let page = projector_sheet(&[piece], &settings).unwrap().remove(1);
        let inks: Vec<Ink> =
            strokes(&page).into_iter().filter(|(p, _)| p.elements().len() == 4).map(|s| s.1.ink).collect();
        assert!(inks.len() == 1 && ![Ink::BLACK, Ink::grey(255)].contains(&inks[0]), "{inks:?}");
    }
}

/// A label beside its piece takes no further position: it stands where the picture has room, or over the lines.
#[test]
fn labels_take_no_positions_of_their_own() {
    let count = |pieces: &[SheetPiece]| projector_sheet(pieces, &ProjectorSettings::default()).unwrap().len() - 1;
    let with = |mut piece: SheetPiece, words: &str| {
        piece.notes = vec![words.to_owned()];
        piece
    };
    let words = "cut 2 (1 + 1 mirrored) from main, 2 = 1 pair";
    // As long as the picture is wide, 5 mm high: the label stands below, not at the end.
    let strip = with(piece("Strip", "M", "M 0 0 L 888 0 L 888 5 L 0 5 Z", &[]), words);
    // As large as the picture, with lines so close that no label has room between them.
    let lines: Vec<String> = (1..58).map(|i| format!("M 0 {0} L 888 {0}", 10 * i)).collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let full = with(piece("Full", "M", "M 0 0 L 888 0 L 888 584 L 0 584 Z", &lines), words);
    for one in [&strip, &full] {
        let pages = projector_sheet(std::slice::from_ref(one), &ProjectorSettings::default()).unwrap();
        assert_eq!(pages.len(), 2, "{}", one.name);
        let label = texts(&pages[1]).into_iter().find(|t| t.text.starts_with(&one.name)).unwrap();
        let half = tracewheel::output::text_width(&label.text, label.size) / 2.0;
        assert!(label.at.x >= half && label.at.x + half <= 914.4, "{}: {:?}", one.name, label.at);
        assert!(label.at.y >= label.size && label.at.y <= 609.6, "{}: {:?}", one.name, label.at);
        assert!(label.size * 0.727 > 9.0, "it can be read: {}", label.size);
    }
    // Two that share a position share it still.
    let half = |name: &str| with(piece(name, "M", "M 0 0 L 888 0 L 888 280 L 0 280 Z", &lines[..28]), words);
    assert_eq!(count(&[half("One"), half("Two")]), 1);
    // A label larger than its piece lies over no neighbour: then there may be more positions.
    let tiny = |i: usize| with(piece(&format!("T{i}"), "M", "M 0 0 L 30 0 L 30 30 L 0 30 Z", &[]), words);
    let tiny: Vec<SheetPiece> = (0..4).map(tiny).collect();
    let pages = projector_sheet(&tiny, &ProjectorSettings::default()).unwrap();
    let dots = pages[1..]
        .iter()
        .flat_map(|p| flat(&p.items))
        .filter(|i| matches!(i, Item::Fill { path, .. } if path.bounding_box().width() < 30.0));
    assert_eq!(dots.count(), 4, "each with a line to its piece");
}

/// A label that takes more positions than there are lies over its piece, but only over one that is as large as the label both ways: over a
/// smaller one it would lie on the neighbours.
#[test]
fn a_label_lies_over_no_piece_that_is_smaller_than_it() {
    let words = "cut 2 (1 + 1 mirrored) from main, 2 = 1 pair";
    let of = |name: &str, width: f64, height: f64| {
        // Lines so close that no label has room between them.
        let lines: Vec<String> = (1..)
            .map(|i| 6.0 * f64::from(i))
            .take_while(|y| *y < height)
            .map(|y| format!("M 0 {y} L {width} {y}"))
            .collect();
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        let outline = format!("M 0 0 L {width} 0 L {width} {height} L 0 {height} Z");
        SheetPiece { notes: vec![words.to_owned()], ..piece(name, "M", &outline, &lines) }
    };
    // Both pieces of a pair lie on one position without their labels: 2 x 280 mm of the 609.6 mm, with 3 x 12 mm of room.
    let large = [of("One", 888.0, 280.0), of("Two", 888.0, 280.0)];
    // Lower than a label, or narrower: eight high ones, twenty flat ones fill a position.
    let narrow: Vec<SheetPiece> = (0..8).map(|i| of(&format!("N{i}"), 99.0, 585.0)).collect();
    let flat: Vec<SheetPiece> = (0..24).map(|i| of(&format!("F{i}"), 888.0, 12.0)).collect();
    // At its end a label would take the least room, but a second position: it stands below.
    let strip = [of("Strip", 888.0, 60.0)];
    for (pieces, over) in [(&large[..], true), (&narrow[..], false), (&flat[..], false), (&strip[..], false)] {
        let pages = projector_sheet(pieces, &ProjectorSettings::default()).unwrap();
        for piece in pieces {
            let named = |t: &&Text| t.text.starts_with(&piece.name) && !t.text.contains("position");
            let page = pages[1..].iter().find(|p| texts(p).iter().any(&named)).unwrap();
            let label = texts(page).into_iter().find(|t| named(t)).unwrap();
            let half = tracewheel::output::text_width(&label.text, label.size) / 2.0;
            let boxes =
                strokes(page).into_iter().filter(|(p, pen)| p.elements().len() > 4 && pen.ink == Ink::grey(255));
            let boxes: Vec<Rect> = boxes.map(|(p, _)| p.bounding_box()).collect();
            let place = Rect::new(label.at.x - half, label.at.y - 0.7 * label.size, label.at.x + half, label.at.y);
            let covered = boxes.iter().filter(|b| b.intersect(place).area() > 0.0).count();
            assert_eq!(covered, usize::from(over), "{}: {place:?} on {boxes:?}", piece.name);
        }
    }
    assert_eq!(projector_sheet(&large, &ProjectorSettings::default()).unwrap().len(), 2);
    assert_eq!(projector_sheet(&strip, &ProjectorSettings::default()).unwrap().len(), 2);
}

/// The grid lies still under a piece from position to position: it is what the cloth is moved by.
#[test]
fn the_grid_moves_with_the_piece() {
    let leg = piece("Leg", "M", "M 0 0 L 1076 0 L 1076 900 L 0 900 Z", &[]);
    let pages = projector_sheet(&[leg], &ProjectorSettings::default()).unwrap();
    assert_eq!(pages.len(), 5);
    let mut phases = Vec::new();
    for page in &pages[1..] {
        let own = strokes(page).into_iter().map(|s| s.0.bounding_box()).find(|b| (b.width() - 1076.0).abs() < 1e-6);
        let origin = own.unwrap().origin();
        let (grid, _) = strokes(page).into_iter().find(|(_, pen)| pen.ink == Ink::grey(70)).unwrap();
        for segment in grid.segments().map(|s| s.bounding_box()) {
            let off = if segment.width() == 0.0 { segment.x0 - origin.x } else { segment.y0 - origin.y };
            phases.push((off / 50.0 - (off / 50.0).round()).abs());
        }
    }
    assert!(phases.len() > 4 * 25 && phases.iter().all(|p| *p < 1e-9), "{phases:?}");
}

#[test]
fn refusals_say_what_and_what_to_do() {
    let settings = ProjectorSettings::default();
    let said = |settings: ProjectorSettings| projector_sheet(&demo(), &settings).unwrap_err().to_string();
    for picture in [Size::new(0.0, 600.0), Size::new(f64::NAN, 600.0), Size::new(9000.0, 600.0)] {
        assert!(said(ProjectorSettings { picture, ..settings.clone() }).contains("measure what is lit on the table"));
    }
    assert!(said(ProjectorSettings { pixels: [0, 720], ..settings.clone() }).contains("0 x 720 pixels"));
    for common in [0.0, 400.0, f64::NAN] {
        assert!(said(ProjectorSettings { common, ..settings.clone() }).contains("ask for 61 to 305 mm"));
    }
    assert!(said(ProjectorSettings { line: Some(f64::NAN), ..settings.clone() }).contains("vanish"));
    assert!(projector_sheet(&[], &settings).unwrap_err().to_string().contains("no pieces"));
}

#[test]
fn c104_names_of_files_say_use_paper_and_sizes() {
    let settings = ProjectorSettings::default();
    let name = |paper: &str| file_name(("top", "long"), &["88", "92"], &[], PrintFor::Testers.short(), paper, "pdf");
    assert_eq!(name(&settings.paper_name()), "top-long-88+92-testers-projector-dark-914x610mm.pdf");
    let light = ProjectorSettings { dark: false, ..settings };
    assert_eq!(name(&light.paper_name()), "top-long-88+92-testers-projector-light-914x610mm.pdf");
    assert_eq!(name("A4-12-pages"), "top-long-88+92-testers-A4-12-pages.pdf");
}

/// Samples for eyes.
pub fn write_samples(folder: &std::path::Path) {
    let made = example("panel-top");
    for (name, dark, grid) in [("dark", true, Grid::Centimetres), ("light", false, Grid::Both)] {
        let settings =
            ProjectorSettings { dark, grid, title: made.draft.title.clone(), ..ProjectorSettings::default() };
        let pages = projector_sheet(&made.pieces("88", false), &settings).unwrap();
        std::fs::write(folder.join(format!("projector-{name}.pdf")), write_pdf("projector", &pages).unwrap()).unwrap();
    }
}

#[test]
fn pages_of_a_garment_are_the_same_twice() {
    let made = example("panel-top");
    let pieces: Vec<SheetPiece> = ["88", "92"].iter().flat_map(|s| made.pieces(s, false)).collect();
    let make = || write_pdf("x", &projector_sheet(&pieces, &ProjectorSettings::default()).unwrap()).unwrap();
    assert!(make() == make());
}
