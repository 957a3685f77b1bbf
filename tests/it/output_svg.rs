//! Pictures as SVG: well-formed, true in millimetres, layers by name, able to stand in a page beside others.

use std::sync::Arc;

use kurbo::{BezPath, Point, Rect, Vec2};
use tracewheel::output::{
    Align, Ink, Item, Pen, Picture, Shared, SvgError, SvgSettings, Text, interchange_drawing, write_dxf, write_pdf,
    write_svg,
};

use crate::labels::example;
use crate::output_dxf::{READ, open, settings};

fn path(svg: &str) -> BezPath {
    BezPath::from_svg(svg).unwrap()
}

/// Something of everything.
fn all() -> Picture {
    let stroke = |svg: &str, dashes: &[f64]| Item::Stroke {
        path: path(svg),
        pen: Pen { width: 0.35, dashes: dashes.to_vec(), ink: Ink { red: 200, green: 0, blue: 16 } },
    };
    let shared = Arc::new(Shared { room: Rect::new(0.0, 0.0, 20.0, 20.0), items: vec![stroke("M 0 0 L 40 40", &[])] });
    let text =
        Text { angle: -0.5, align: Align::Middle, ..Text::new("a < b & \"c\"  d\u{1}", Point::new(50.0, 60.0), 5.0) };
    let layer = |name: &str, items: Vec<Item>| Item::Group { layer: Some(name.into()), items };
    Picture {
        width: 200.0,
        height: 100.5,
        items: vec![
            layer("size 88", vec![stroke("M 10 10 C 20 0 30 20 40.12345 10 Q 50 50 60 10 Z", &[6.0, 2.0])]),
            layer("size 92", vec![stroke("M 0 0 L -0.0001 100", &[])]),
            Item::Clip {
                rect: Rect::new(5.0, 5.0, 25.0, 15.0),
                items: vec![Item::Fill { path: path("M 0 0 L 50 0 L 0 50 Z"), ink: Ink::grey(128) }],
            },
            Item::Shared { what: Arc::clone(&shared), at: Vec2::new(100.0, 0.0) },
            Item::Shared { what: shared, at: Vec2::new(150.0, 50.0) },
            layer("size 88", vec![Item::Text(text)]),
        ],
    }
}

fn settings_of(prefix: &str, inline: bool) -> SvgSettings {
    SvgSettings { title: "Front <1>".into(), prefix: prefix.into(), inline }
}

#[test]
fn everything_is_written_in_millimetres() {
    let text = write_svg(&all(), &settings_of("f1-", false)).unwrap();
    let doc = roxmltree::Document::parse(&text).unwrap();
    let root = doc.root_element();
    assert_eq!((root.attribute("width"), root.attribute("height")), (Some("200mm"), Some("100.5mm")));
    assert_eq!(root.attribute("viewBox"), Some("0 0 200 100.5"));
    let all: Vec<_> = doc.descendants().collect();
    let ds: Vec<&str> = all.iter().filter_map(|n| n.attribute("d")).collect();
    assert!(ds.contains(&"M10 10 C20 0 30 20 40.123 10 Q50 50 60 10 Z"), "{ds:?}");
    assert!(ds.contains(&"M0 0 L0 100"), "{ds:?}");
    let dashed = all.iter().find(|n| n.attribute("stroke-dasharray").is_some()).unwrap();
    assert_eq!(dashed.attribute("stroke-dasharray"), Some("6 2"));
    assert_eq!((dashed.attribute("stroke"), dashed.attribute("stroke-width")), (Some("#c80010"), Some("0.35")));
    let words = all.iter().find(|n| n.has_tag_name(("http://www.w3.org/2000/svg", "text"))).unwrap();
    assert_eq!(words.text(), Some("a < b & \"c\"  d "));
    assert_eq!(words.attribute(("http://www.w3.org/XML/1998/namespace", "space")), Some("preserve"));
    assert_eq!(
        (words.attribute("text-anchor"), words.attribute("transform")),
        (Some("middle"), Some("rotate(-28.648 50 60)"))
    );
    // Ids begin with the prefix and are told once; every reference has its id.
    let ids: Vec<&str> = all.iter().filter_map(|n| n.attribute("id")).collect();
    assert!(ids.iter().all(|id| id.starts_with("f1-")), "{ids:?}");
    let different: std::collections::BTreeSet<&&str> = ids.iter().collect();
    assert_eq!(different.len(), ids.len());
    assert!(ids.contains(&"f1-size-88") && ids.contains(&"f1-size-88.2") && ids.contains(&"f1-size-92"));
    let named = |id: &str| ids.contains(&id.trim_start_matches("url(").trim_end_matches(')').trim_start_matches('#'));
    let references: Vec<&str> = all.iter().filter_map(|n| n.attribute("href").or(n.attribute("clip-path"))).collect();
    assert_eq!(references.len(), 4, "{references:?}");
    assert!(references.into_iter().all(named));
    assert_eq!(text.matches("M0 0 L40 40").count(), 1, "what is shared is written once");
}

#[test]
fn two_drawings_can_stand_in_one_page() {
    let [a, b] = ["a-", "b-"].map(|p| write_svg(&all(), &settings_of(p, true)).unwrap());
    assert!(a.starts_with("<svg ") && !a.contains("<?xml"));
    let page = format!("<body>{a}{b}</body>");
    let doc = roxmltree::Document::parse(&page).unwrap();
    let ids: Vec<&str> = doc.descendants().filter_map(|n| n.attribute("id")).collect();
    let different: std::collections::BTreeSet<&&str> = ids.iter().collect();
    assert_eq!(different.len(), ids.len());
    assert_eq!(write_svg(&all(), &settings_of("a-", true)).unwrap(), a, "the same bytes twice");
    // A prefix that is no name of XML becomes one.
    let odd = write_svg(&all(), &settings_of("8 \"x\"", true)).unwrap();
    assert!(roxmltree::Document::parse(&odd).is_ok() && odd.contains("id=\"n8--x-size-88\""), "{}", &odd[..300]);
}

#[test]
fn what_cannot_be_written_is_refused() {
    let empty = Picture { width: 0.0, height: 10.0, items: Vec::new() };
    assert!(matches!(write_svg(&empty, &SvgSettings::default()), Err(SvgError::Empty { .. })));
    for number in [f64::NAN, f64::INFINITY, 1e9] {
        let mut picture = all();
        let mut line = BezPath::new();
        line.move_to((0.0, 0.0));
        line.line_to((number, 0.0));
        picture.items.push(Item::Stroke { path: line, pen: Pen::solid(1.0) });
        let problem = write_svg(&picture, &settings_of("", false)).unwrap_err();
        assert!(problem.to_string().contains("Front <1>"), "{problem}");
    }
}

#[test]
fn pieces_stand_in_named_groups() {
    let made = example("panel-top");
    let pieces: Vec<_> = ["76", "88"].iter().flat_map(|s| open(&made, s)).collect();
    let text = write_svg(&interchange_drawing(&pieces), &SvgSettings { title: "Top".into(), ..SvgSettings::default() })
        .unwrap();
    let doc = roxmltree::Document::parse(&text).unwrap();
    let name = |n: &roxmltree::Node<'_, '_>| {
        n.children()
            .find(|c| c.has_tag_name(("http://www.w3.org/2000/svg", "title")))
            .and_then(|t| t.text())
            .map(str::to_owned)
    };
    let groups = |n: roxmltree::Node<'_, '_>| {
        n.children().filter(|c| c.has_tag_name(("http://www.w3.org/2000/svg", "g"))).map(|c| c.id()).collect::<Vec<_>>()
    };
    let get = |id| doc.get_node(id).unwrap();
    let sizes = groups(doc.root_element());
    assert_eq!(sizes.iter().map(|s| name(&get(*s)).unwrap()).collect::<Vec<_>>(), ["size 76", "size 88"]);
    let mut kinds = std::collections::BTreeSet::new();
    for size in sizes {
        let own = groups(get(size));
        assert_eq!(own.len(), pieces.len() / 2);
        for piece in own {
            let inside: Vec<String> = groups(get(piece)).into_iter().map(|k| name(&get(k)).unwrap()).collect();
            assert_eq!(inside[0], "cut line");
            kinds.extend(inside);
        }
    }
    for kind in ["cut line", "stitch line", "notches", "grain", "fold", "inner lines", "marks", "labels"] {
        assert!(kinds.contains(kind), "{kind}: {kinds:?}");
    }
}

/// Takes all text out, so that fonts do not matter.
fn bare(items: &[Item]) -> Vec<Item> {
    let kept = items.iter().filter(|i| !matches!(i, Item::Text(_)));
    kept.map(|item| match item {
        Item::Group { layer, items } => Item::Group { layer: layer.clone(), items: bare(items) },
        Item::Clip { rect, items } => Item::Clip { rect: *rect, items: bare(items) },
        other => other.clone(),
    })
    .collect()
}

/// Writes samples into the folder in `TRACEWHEEL_SAMPLES`, for `tests/outside/dxf_read.py`, `svg_read.py` and for eyes.
#[test]
#[ignore = "writes files where TRACEWHEEL_SAMPLES says"]
fn write_interchange_samples() {
    let folder = std::path::PathBuf::from(std::env::var("TRACEWHEEL_SAMPLES").unwrap());
    for (name, size) in READ {
        let made = example(name);
        let pieces = open(&made, size);
        std::fs::write(folder.join(format!("{name}.dxf")), write_dxf(&pieces, &settings(&made)).unwrap()).unwrap();
        let drawing = interchange_drawing(&pieces);
        let svg =
            write_svg(&drawing, &SvgSettings { title: made.draft.title.clone(), ..SvgSettings::default() }).unwrap();
        std::fs::write(folder.join(format!("{name}.svg")), svg).unwrap();
        let plain = Picture { items: bare(&drawing.items), ..drawing };
        std::fs::write(folder.join(format!("{name}.pdf")), write_pdf(name, &[plain]).unwrap()).unwrap();
    }
    let (svg, pdf) = (all(), Picture { items: bare(&all().items), ..all() });
    std::fs::write(folder.join("all.svg"), write_svg(&svg, &settings_of("", false)).unwrap()).unwrap();
    std::fs::write(folder.join("all.pdf"), write_pdf("all", &[pdf]).unwrap()).unwrap();
    crate::projector::write_samples(&folder);
}
