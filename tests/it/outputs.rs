//! All that is published: the same bytes whoever makes them, in one order; digests of pages that know an edition from a line.

use std::sync::atomic::{AtomicUsize, Ordering};

use kurbo::{BezPath, Point, Rect, Vec2};
use tracewheel::output::{Ink, Item, Pen, Photo, Picture, Shared, Text, picture_digest};
use tracewheel::session::{Order, OutputError, Outputs, PrintWish, Progress, Published, What, how_many, outputs};

use crate::labels::{Made, example, made};

fn order<'a>(made: &'a Made, what: &'a [What], groups: &'a [(usize, Vec<usize>)], wish: &'a PrintWish) -> Order<'a> {
    let (draft, model, finished) = (&*made.draft, &made.model, &made.finished);
    Order { draft, model, finished, stem: "x", what, groups, wish, width: 1500.0, folder: None }
}

fn run(order: &Order<'_>) -> Outputs {
    outputs(order, &Progress::default(), &|_| ()).unwrap()
}

#[test]
fn the_same_bytes_twice_and_by_one_thread_as_by_many() {
    for name in ["panel-top", "top-in-views", "market-apron"] {
        let made = example(name);
        let views = made.model.of_views().len();
        let groups: Vec<(usize, Vec<usize>)> =
            (0..views).flat_map(|view| [vec![0, 1], vec![3]].map(|cases| (view, cases))).collect();
        let wish = PrintWish::default();
        let whole = run(&order(&made, &What::ALL, &groups, &wish));
        assert!(whole == run(&order(&made, &What::ALL, &groups, &wish)), "{name}: twice");
        // An order of one thing is made by one thread: all of them one after the other are the same files in the same order.
        let mut alone = Outputs::default();
        for what in What::ALL {
            let all_sizes = matches!(what, What::Tables | What::Booklet | What::CheckList);
            let parts: Vec<Vec<(usize, Vec<usize>)>> = if all_sizes {
                (0..views).map(|view| groups.iter().filter(|g| g.0 == view).cloned().collect()).collect()
            } else {
                groups.iter().map(|g| vec![g.clone()]).collect()
            };
            for part in parts {
                let (what, wish) = ([what], PrintWish::default());
                let one = order(&made, &what, &part, &wish);
                assert_eq!(how_many(&one), 1);
                alone.add(run(&one));
            }
        }
        let names = |out: &Outputs| out.files.iter().map(|f| f.name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&whole), names(&alone), "{name}");
        assert!(whole == alone, "{name}: one thread and many");
        let different: std::collections::BTreeSet<String> = names(&whole).into_iter().collect();
        assert_eq!(different.len(), whole.files.len(), "{name}: each name once");
        // No example keeps lay plans.
        for what in What::ALL.into_iter().filter(|w| *w != What::Lays) {
            assert!(whole.files.iter().any(|f| f.what == what && !f.bytes.is_empty()), "{name}: {what:?}");
        }
    }
}

#[test]
fn what_is_told_is_told_once_and_a_stop_publishes_nothing() {
    let text = std::fs::read_to_string("examples/bodice-finished.ron").unwrap();
    // A piece without a shape in any size, in two kinds of files.
    let broken = text.replacen("pieces: [", r#"pieces: [(name: "lost", points: [(name: "a", at: "(1 cm, 1 cm / 0)")], edges: [(name: "e", from: "a", by: [straight("a")])]), "#, 1);
    let made = made(&broken);
    let groups = [(0, vec![0]), (0, vec![1])];
    let wish = PrintWish::default();
    let out = run(&order(&made, &[What::Pages, What::Wide], &groups, &wish));
    let lost: Vec<&str> = out.missing.iter().filter(|m| m.0 == "lost").map(|m| m.1.as_str()).collect();
    let sizes: Vec<&str> = [0, 1].map(|c| made.model.plan.cases.list[c].address.as_str()).to_vec();
    assert_eq!(lost, sizes, "each size once, though two files lack it");

    let progress = Progress::default();
    let heard = AtomicUsize::new(0);
    let told = |_: usize| {
        heard.fetch_add(1, Ordering::Relaxed);
        progress.stop.store(true, Ordering::Relaxed);
    };
    let many: Vec<(usize, Vec<usize>)> = (0..8).map(|c| (0, vec![c])).collect();
    let all = order(&made, &[What::Svg], &many, &wish);
    assert_eq!(outputs(&all, &progress, &told), Err(OutputError::Stopped));
    assert!(heard.load(Ordering::Relaxed) < 8, "it stops soon");
}

/// A page with something of everything, each at the place it has.
fn page(at: f64, edition: &str) -> Picture {
    let line = |from: (f64, f64), to: (f64, f64)| {
        let path = BezPath::from_iter([kurbo::PathEl::MoveTo(from.into()), kurbo::PathEl::LineTo(to.into())]);
        Item::Stroke { path, pen: Pen::solid(0.3) }
    };
    let shared = Shared { room: Rect::new(0.0, 0.0, 400.0, 400.0), items: vec![line((at, 0.0), (at, 50.0))] };
    let items = vec![
        Item::Text(Text::new(format!("A shirt {edition}"), Point::new(10.0, 10.0), 4.0)),
        Item::Shared { what: std::sync::Arc::new(shared), at: Vec2::new(5.0, 20.0) },
    ];
    Picture { width: 100.0, height: 100.0, items: vec![Item::Clip { rect: Rect::new(5.0, 5.0, 95.0, 95.0), items }] }
}

#[test]
fn a_digest_of_a_page_knows_an_edition_from_a_line() {
    let digest = |at: f64, edition: &str| picture_digest(&page(at, edition), &["edition 1", "edition 2", ""]);
    let known = digest(40.0, "edition 1");
    assert_eq!(known, digest(40.0, "edition 2"), "the edition alone");
    assert_ne!(known, digest(40.0, "edition 3"), "other words");
    assert_ne!(known, digest(40.1, "edition 1"), "a line 0.1 mm farther on the page");
    // Beyond the page, and on it but behind the clip.
    let beyond = digest(120.0, "edition 1");
    assert_eq!(beyond, digest(120.1, "edition 1"));
    assert_eq!(digest(92.0, "edition 1"), beyond, "behind the clip is not seen either");
    assert_ne!(known, beyond);
    // The same drawing at another place of the page.
    let moved = |by: f64| {
        let mut page = page(40.0, "");
        if let [Item::Clip { items, .. }] = page.items.as_mut_slice()
            && let Some(Item::Shared { at, .. }) = items.last_mut()
        {
            at.x += by;
        }
        picture_digest(&page, &[])
    };
    assert_eq!(moved(0.0), moved(0.0));
    assert_ne!(moved(0.0), moved(0.1));
    let with = |more: Item| {
        let mut page = page(40.0, "");
        page.items.push(more);
        picture_digest(&page, &[])
    };
    let words = |text: &str, x: f64, y: f64| with(Item::Text(Text::new(text, Point::new(x, y), 3.0)));
    assert_ne!(words("a", 50.0, 50.0), words("b", 50.0, 50.0), "words");
    assert_eq!(words("a", 500.0, 50.0), words("b", 500.0, 50.0), "words beyond the page");
    let stroke = |width: f64, ink: Ink| {
        let path = BezPath::from_svg("M 0 0 L 50 50").unwrap();
        with(Item::Stroke { path, pen: Pen { ink, ..Pen::solid(width) } })
    };
    assert_ne!(stroke(0.3, Ink::BLACK), stroke(0.5, Ink::BLACK), "the width of a line");
    assert_ne!(stroke(0.3, Ink::BLACK), stroke(0.3, Ink::grey(90)), "its ink");
    let photo = |red: u8| {
        let image = image::RgbImage::from_pixel(4, 3, image::Rgb([red, 2, 3]));
        let mut bytes = std::io::Cursor::new(Vec::new());
        image.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
        let photo = std::sync::Arc::new(Photo::read(&bytes.into_inner()).unwrap());
        with(Item::Photo { photo, rect: Rect::new(10.0, 10.0, 20.0, 20.0) })
    };
    assert_ne!(photo(1), photo(200), "a picture");
    assert_eq!(photo(1), photo(1));
}

/// The digests of an order's pages do not change with the edition, those of a piece's pages do with its line.
#[test]
fn digests_of_published_pages_follow_the_pieces_not_the_edition() {
    let text = std::fs::read_to_string("examples/bodice-finished.ron").unwrap();
    let of = |text: &str| {
        let made = made(text);
        let (groups, wish) = ([(0, vec![2])], PrintWish::default());
        run(&order(&made, &[What::Pages, What::Wide, What::Tables], &groups, &wish)).files
    };
    let edition = |name: &str| text.replacen("edition: \"1\"", &format!("edition: \"{name}\", date: \"{name}\""), 1);
    let (one, two) = (of(&edition("2026-01")), of(&edition("2026-02")));
    let digests = |files: &[Published]| files.iter().map(|f| f.pages.clone()).collect::<Vec<_>>();
    assert!(one.iter().any(|f| f.pages.len() > 5));
    assert_eq!(digests(&one), digests(&two));
    let pdf = |files: &[Published]| files.iter().find(|f| f.what == What::Pages).unwrap().bytes.clone();
    assert_ne!(pdf(&one), pdf(&two), "the edition stands on the pages");
}

/// A PDF page can be 5080 mm long (14 400 points): what needs more comes on several. That no piece is lost or comes twice is seen beside
/// `sheets` itself.
#[test]
fn what_is_longer_than_a_page_can_be_comes_on_several_sheets() {
    let folder = tempfile::tempdir().unwrap();
    let mut command = crate::program();
    command.args(["publish", "examples/panel-top.ron", "--all-sizes", "--width", "640mm", "--out"]).arg(folder.path());
    let done = command.output().unwrap();
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
    let name = std::fs::read_dir(folder.path()).unwrap().next().unwrap().unwrap().file_name();
    let name = name.to_string_lossy().into_owned();
    assert!(name.ends_with("-sheets.pdf"), "{name}");
    let bytes = std::fs::read(folder.path().join(&name)).unwrap();
    let many = |what: &[u8]| bytes.windows(what.len()).filter(|w| w == &what).count();
    let told: usize = name.trim_end_matches("-sheets.pdf").rsplit('-').next().unwrap().parse().unwrap();
    assert!(told > 1 && many(b"/MediaBox") == told, "{name}: {} pages", many(b"/MediaBox"));
}
