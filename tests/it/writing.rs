//! Words and tables as pages: nothing outside the margins, nothing lost, heads again on every page.

use std::sync::Arc;

use kurbo::{BezPath, Rect, Shape};
use tracewheel::output::{
    Block, Cell, Item, Line, Paper, Pen, Photo, Picture, Table, Text, Writing, text_width, write_pdf, written_pages,
};

use crate::dice::Dice;

/// The least margin of a page, mm: what any printer can do (common practice, no source).
const MARGIN: f64 = 10.0;

/// All texts of a page with the box of each, also those in clips.
fn texts(items: &[Item]) -> Vec<(String, Rect)> {
    let mut out = Vec::new();
    for item in items {
        match item {
            Item::Text(Text { text, at, size, align, .. }) => {
                let width = text_width(text, *size);
                let left = match align {
                    tracewheel::output::Align::Start => at.x,
                    tracewheel::output::Align::Middle => at.x - width / 2.0,
                    tracewheel::output::Align::End => at.x - width,
                };
                out.push((text.clone(), Rect::new(left, at.y - size, left + width, at.y + 0.3 * size)));
            }
            Item::Clip { items, .. } | Item::Group { items, .. } => out.extend(texts(items)),
            _ => {}
        }
    }
    out
}

fn words(pages: &[Picture]) -> Vec<String> {
    // The last two are the foot of the page.
    let of_page = |page: &Picture| {
        let all = texts(&page.items);
        let many = all.len() - 2;
        all.into_iter().take(many)
    };
    let all = pages.iter().flat_map(of_page).map(|(text, _)| text);
    all.flat_map(|t| t.split_whitespace().map(str::to_owned).collect::<Vec<_>>()).collect()
}

fn below(dice: &mut Dice, many: u64) -> usize {
    dice.below(many) as usize
}

/// Words of one to twelve letters, some very long.
fn sentence(dice: &mut Dice, number: &mut usize) -> String {
    let many = 1 + below(dice, 60);
    let word = |dice: &mut Dice, number: &mut usize| {
        *number += 1;
        let long = if below(dice, 40) == 0 { 140 } else { below(dice, 9) };
        format!("w{number}{}", "x".repeat(long))
    };
    (0..many).map(|_| word(dice, number)).collect::<Vec<_>>().join(" ")
}

fn table(dice: &mut Dice, number: &mut usize) -> Table {
    let columns = 1 + below(dice, 24);
    let name = |number: &mut usize| {
        *number += 1;
        format!("n{number}")
    };
    let head = std::iter::once("line".to_owned()).chain((0..columns).map(|_| name(number))).collect();
    let lines = (0..1 + below(dice, 70))
        .map(|i| Line {
            group: format!("group{}", i / 9),
            name: name(number),
            cells: (0..columns)
                .map(|_| match below(dice, 5) {
                    0 => Cell::Missing,
                    1 => Cell::Count(dice.below(1000)),
                    2 => Cell::Words(format!("{} {}", name(number), name(number))),
                    _ => Cell::Length(below(dice, 20_000) as f64 / 7.0),
                })
                .collect(),
        })
        .collect();
    Table { name: "t".into(), title: name(number), head, lines, ..Table::default() }
}

#[test]
fn random_writing_stays_within_the_margins_and_loses_no_word() {
    for seed in 1..=40 {
        let mut dice = Dice(seed);
        let dice = &mut dice;
        let mut number = 0;
        let mut blocks = Vec::new();
        let mut wanted: Vec<String> = Vec::new();
        for _ in 0..1 + below(dice, 12) {
            let text = sentence(dice, &mut number);
            match below(dice, 5) {
                0 => blocks.push(Block::Heading { level: 2 + below(dice, 2) as u8, text: text.clone() }),
                1 => blocks.push(Block::Caution { title: text.clone(), text: vec![] }),
                2 => blocks.push(Block::List { numbered: true, items: vec![text.clone()] }),
                3 => {
                    let made = table(dice, &mut number);
                    wanted.push(made.title.clone());
                    wanted.extend(made.lines.iter().map(|l| l.name.clone()));
                    wanted.extend(made.head.iter().cloned());
                    blocks.push(Block::Table(made));
                    blocks.push(Block::Paragraph(text.clone()));
                }
                _ => blocks.push(Block::Paragraph(text.clone())),
            }
            wanted.extend(text.split_whitespace().map(str::to_owned));
        }
        let writing = Writing { title: "A title".into(), about: vec!["edition 2".into()], blocks, steps: 0..0 };
        for paper in [Paper::A4, Paper::Letter, Paper::Both] {
            let pages = written_pages(&writing, paper);
            for (i, page) in pages.iter().enumerate() {
                let room = Rect::new(MARGIN, MARGIN, page.width - MARGIN, page.height - MARGIN);
                for (text, at) in texts(&page.items) {
                    assert!(room.contains_rect(at), "seed {seed}, page {}: {text} at {at:?}", i + 1);
                }
                assert!(texts(&page.items).len() > 2, "seed {seed}: page {} of {} is empty", i + 1, pages.len());
                // The last two are the foot: nothing is written over it.
                let all = texts(&page.items);
                let (written, foot) = all.split_at(all.len() - 2);
                let top = foot.iter().map(|(_, at)| at.y0).fold(f64::INFINITY, f64::min);
                for (text, at) in written {
                    assert!(at.y1 <= top, "seed {seed}, page {}: {text} lies over the foot", i + 1);
                }
            }
            let have = words(&pages);
            // Words that are wider than a line are broken: their parts together.
            let joined = have.concat();
            for word in &wanted {
                assert!(have.contains(word) || joined.contains(word.as_str()), "seed {seed}: {word} is lost");
            }
            assert!(write_pdf("A title", &pages).is_ok());
        }
    }
}

#[test]
fn every_cell_of_a_wide_and_long_table_stands_once_with_its_names_beside_it() {
    let sizes: Vec<String> = (0..30).map(|i| format!("{}", 70 + 2 * i)).collect();
    let lines = (0..60)
        .map(|row| Line {
            name: format!("row {row}"),
            cells: (0..30).map(|c| Cell::Count(100_000 + (row * 100 + c) as u64)).collect(),
            ..Line::default()
        })
        .collect();
    let table = Table {
        title: "Wide".into(),
        head: std::iter::once("measure".to_owned()).chain(sizes.iter().cloned()).collect(),
        lines,
        ..Table::default()
    };
    let writing = Writing { title: "T".into(), about: Vec::new(), blocks: vec![Block::Table(table)], steps: 0..0 };
    let pages = written_pages(&writing, Paper::Both);
    let all: Vec<String> = pages.iter().flat_map(|p| texts(&p.items)).map(|(t, _)| t).collect();
    for row in 0..60 {
        for column in 0..30 {
            let number = (100_000 + row * 100 + column).to_string();
            assert_eq!(all.iter().filter(|t| **t == number).count(), 1, "{number}");
        }
    }
    // On each page the numbers stand right under the head of their size, beside the name of their row.
    for page in &pages {
        let found = texts(&page.items);
        for (text, at) in found.iter().filter(|(t, _)| t.len() == 6 && t.starts_with('1')) {
            let number: usize = text.parse().unwrap();
            let (row, column) = ((number - 100_000) / 100, number % 100);
            let under =
                |(t, head): &&(String, Rect)| *t == sizes[column] && (head.x1 - at.x1).abs() < 0.01 && head.y1 < at.y1;
            assert!(found.iter().any(|h| under(&h)), "{text} has no head above it");
            let beside = |(t, name): &&(String, Rect)| *t == format!("row {row}") && (name.y1 - at.y1).abs() < 0.01;
            assert!(found.iter().any(|h| beside(&h)), "{text} has no name beside it");
        }
    }
}

#[test]
fn a_length_is_shown_in_both_units_each_rounded_once() {
    // NIST Handbook 44, appendix C: 1 in = 25.4 mm exactly. 145.0 cm = 57.087 in: 57 1/8 (case C056); 1.27 cm + 1/16 in
    // is a tie between eighths and goes up.
    for (mm, cm, inches) in [
        (1450.0, "145.0", "57 1/8"),
        (25.4, "2.5", "1"),
        (12.7 + 25.4 / 16.0, "1.4", "5/8"),
        (0.0, "0.0", "0"),
        (-25.4, "-2.5", "-1"),
        (1016.0, "101.6", "40"),
        (0.5, "0.1", "0"),
    ] {
        assert_eq!(
            (Cell::Length(mm).in_cm(), Cell::Length(mm).in_inches()),
            (cm.to_owned(), inches.to_owned()),
            "{mm}"
        );
    }
    // Rounded twice, 9.449 mm would be 0.9 cm and from that 3/8 in (9.525 mm is 0.375): it is 0.372.
    assert_eq!(Cell::Length(4.85).in_inches(), "1/4");
    assert_eq!(Cell::Missing.in_cm(), "–");
}

#[test]
fn a_figure_is_never_made_larger_and_stays_on_its_page() {
    for (width, height) in [(20.0, 20.0), (900.0, 30.0), (30.0, 900.0), (174.0, 205.0)] {
        let path = BezPath::from_svg(&format!("M 0 0 L {width} 0 L {width} {height} L 0 {height} Z")).unwrap();
        let picture = Picture { width, height, items: vec![Item::Stroke { path, pen: Pen::solid(0.3) }] };
        let figure = Block::Figure { picture: Arc::new(picture), says: "a box".into(), caption: "a box".into() };
        let blocks = vec![Block::Paragraph("before".into()), figure];
        let pages = written_pages(&Writing { title: "T".into(), about: Vec::new(), blocks, steps: 0..0 }, Paper::Both);
        let clip = |items: &[Item]| {
            items.iter().find_map(|i| match i {
                Item::Clip { rect, .. } => Some(*rect),
                _ => None,
            })
        };
        let rect = pages.iter().find_map(|p| clip(&p.items)).unwrap();
        let page = &pages[0];
        let room = Rect::new(MARGIN, MARGIN, page.width - MARGIN, page.height - MARGIN);
        assert!(room.contains_rect(rect), "{rect:?}");
        assert!(rect.width() <= width + 1e-6);
        assert!((rect.width() / rect.height() - width / height).abs() < 1e-6);
    }
}

/// A picture of two colours as PNG.
fn png(width: u32, height: u32) -> Vec<u8> {
    let image = image::RgbaImage::from_fn(width, height, |x, _| {
        if x < width / 2 { image::Rgba([200, 30, 40, 255]) } else { image::Rgba([0, 0, 0, 0]) }
    });
    let mut out = std::io::Cursor::new(Vec::new());
    image.write_to(&mut out, image::ImageFormat::Png).unwrap();
    out.into_inner()
}

#[test]
fn a_picture_is_made_no_larger_than_print_needs_and_comes_without_what_a_camera_wrote() {
    let photo = Photo::read(&png(3200, 800)).unwrap();
    assert_eq!((photo.width, photo.height), (1600, 400));
    // What can be seen through is white paper.
    assert_eq!(&photo.points[..3], [200, 30, 40]);
    assert_eq!(&photo.points[photo.points.len() - 3..], [255, 255, 255]);
    assert_eq!(Photo::read(&png(3200, 800)).unwrap(), photo);

    // A JPEG with an Exif part that turns it by a quarter (orientation 6: its right edge is the upper one) and holds a text.
    let image =
        image::RgbImage::from_fn(64, 32, |x, _| image::Rgb(if x < 32 { [250, 250, 250] } else { [10, 10, 10] }));
    let mut plain = std::io::Cursor::new(Vec::new());
    image.write_to(&mut plain, image::ImageFormat::Jpeg).unwrap();
    let plain = plain.into_inner();
    let mut exif = b"Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0".to_vec();
    exif.extend(b"taken at home");
    let mut jpeg = plain[..2].to_vec();
    jpeg.extend([0xff, 0xe1]);
    jpeg.extend(((exif.len() + 2) as u16).to_be_bytes());
    jpeg.extend(&exif);
    jpeg.extend(&plain[2..]);
    let photo = Photo::read(&jpeg).unwrap();
    assert_eq!((photo.width, photo.height), (32, 64));
    let find = |bytes: &[u8]| bytes.windows(13).any(|w| w == b"taken at home");
    assert!(find(&jpeg) && !find(&photo.bytes));
    let back = image::load_from_memory(&photo.bytes).unwrap().to_rgb8();
    assert!(back.get_pixel(16, 4).0[0] > 200 && back.get_pixel(16, 60).0[0] < 60, "it stands upright");
}

#[test]
fn what_is_no_picture_is_told() {
    for bytes in [&b""[..], b"GIF89a\0\0", b"not a picture", &png(8, 8)[..40]] {
        let told = Photo::read(bytes).unwrap_err().to_string();
        assert!(told.contains("cannot be read as a PNG or JPEG picture"), "{told}");
    }
}

/// Strokes of a page, those in clips left out.
fn strokes(page: &Picture) -> Vec<(Rect, f64)> {
    let one =
        |item: &Item| if let Item::Stroke { path, pen } = item { Some((path.bounding_box(), pen.width)) } else { None };
    page.items.iter().filter_map(one).collect()
}

#[test]
fn a_heading_stands_over_what_follows_and_every_page_has_its_number() {
    let cells = || vec![Cell::Count(1)];
    let table = Table {
        title: "under".into(),
        head: vec!["line".into(), "M".into()],
        lines: (0..3).map(|i| Line { name: format!("row{i}"), cells: cells(), ..Line::default() }).collect(),
        ..Table::default()
    };
    // However much stands before it.
    for many in 20..70 {
        for last in [Block::Paragraph("under it stands this".into()), Block::Table(table.clone())] {
            let filler = (0..many).map(|i| Block::Paragraph(format!("filler {i}")));
            let heading = Block::Heading { level: 2, text: "Heading".into() };
            let blocks = filler.chain([heading, last]).collect();
            let writing = Writing { title: "T".into(), about: Vec::new(), blocks, steps: 0..0 };
            let pages = written_pages(&writing, Paper::A4);
            let on = |start: &str| {
                let has = |p: &Picture| texts(&p.items).iter().any(|(t, _)| t.starts_with(start));
                pages.iter().position(has).unwrap()
            };
            assert_eq!(on("Heading"), on("under"), "{many} paragraphs before it");
            for (i, page) in pages.iter().enumerate() {
                let number = format!("page {} of {}", i + 1, pages.len());
                assert_eq!(texts(&page.items).iter().filter(|(t, _)| *t == number).count(), 1, "{number}");
            }
        }
    }
}

#[test]
fn a_line_of_a_table_stays_together_and_its_group_and_notes_are_told() {
    let lines = (0..90).map(|i| Line {
        group: format!("group {}", i / 7),
        name: format!("row {i}"),
        cells: vec![Cell::Length(f64::from(i)), Cell::Words(format!("word{i}")), Cell::Missing],
    });
    let table = Table {
        title: "Long".into(),
        before: vec!["Stands before.".into()],
        head: ["line", "a", "b", "c"].map(str::to_owned).to_vec(),
        lines: lines.collect(),
        notes: vec!["Stands after.".into()],
        ..Table::default()
    };
    // Wherever on its page it begins.
    for many in 0..12 {
        let filler = (0..many).map(|i| Block::Paragraph(format!("filler {i}")));
        let blocks = filler.chain([Block::Table(table.clone())]).collect();
        let pages = written_pages(&Writing { title: "T".into(), about: Vec::new(), blocks, steps: 0..0 }, Paper::A4);
        assert!(pages.len() > 2);
        let all: Vec<Vec<(String, Rect)>> = pages.iter().map(|p| texts(&p.items)).collect();
        let count = |page: &[(String, Rect)], words: &str| page.iter().filter(|(t, _)| t == words).count();
        let whole: Vec<(String, Rect)> = all.concat();
        for page in &all {
            assert_eq!(count(page, "cm"), count(page, "in"), "both units of a line on one page");
        }
        for i in 0..90 {
            assert_eq!(count(&whole, &format!("word{i}")), 1, "what has no unit is told once");
        }
        assert_eq!(count(&whole, "–"), 90);
        for words in ["Stands before.", "Stands after.", "group 0", "group 12"] {
            assert_eq!(count(&whole, words), 1, "{words}");
        }
        // Numbers end under each other, words begin so; the head as they do.
        let at = |words: &str| whole.iter().find(|(t, _)| t == words).unwrap().1;
        assert!((at("a").x1 - at("0.0").x1).abs() < 0.01 && (at("8.9").x1 - at("0.1").x1).abs() < 0.01);
        assert!((at("b").x0 - at("word1").x0).abs() < 0.01 && (at("word89").x0 - at("word1").x0).abs() < 0.01);
    }
}

#[test]
fn a_caution_over_several_pages_has_a_frame_on_each_and_a_picture_keeps_its_shape() {
    let text: Vec<String> = (0..120).map(|i| format!("sentence {i}")).collect();
    let caution = Block::Caution { title: "Mind".into(), text };
    let pages = written_pages(
        &Writing { title: "T".into(), about: Vec::new(), blocks: vec![caution], steps: 0..0 },
        Paper::Both,
    );
    assert!(pages.len() > 2);
    let mut told = 0;
    for page in &pages {
        let frames: Vec<Rect> = strokes(page).into_iter().filter(|s| s.1 == 0.6).map(|s| s.0).collect();
        let own: Vec<(String, Rect)> =
            texts(&page.items).into_iter().filter(|(t, _)| t.starts_with("sentence")).collect();
        told += own.len();
        for (words, at) in own {
            assert!(frames.iter().any(|f| f.inflate(0.5, 0.5).contains_rect(at)), "{words} has no frame around it");
        }
    }
    assert_eq!(told, 120);
    for (width, height) in [(300, 100), (100, 300), (40, 40)] {
        let photo = Arc::new(Photo::read(&png(width, height)).unwrap());
        let block = Block::Photo { photo, says: "x".into(), caption: "so it looks".into() };
        let pages = written_pages(
            &Writing { title: "T".into(), about: Vec::new(), blocks: vec![block], steps: 0..0 },
            Paper::Both,
        );
        let rect =
            pages[0].items.iter().find_map(|i| if let Item::Photo { rect, .. } = i { Some(*rect) } else { None });
        let rect = rect.unwrap();
        assert!((rect.width() / rect.height() - f64::from(width) / f64::from(height)).abs() < 1e-9, "{rect:?}");
        assert!(texts(&pages[0].items).iter().any(|(t, at)| t == "so it looks" && at.y0 >= rect.y1 - 1.0));
    }
}
