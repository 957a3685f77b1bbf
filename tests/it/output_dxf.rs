//! DXF for other programs: what is in it against the pieces themselves, against what another reader found in it, and what is refused.

use kurbo::{BezPath, Point, Shape};
use tracewheel::output::{DxfError, DxfSettings, OpenPiece, open_pieces, write_dxf};

use crate::labels::{Made, example};

/// Drafts of which a reader of its own said what is in their files (`tests/outside/dxf_read.py`).
pub const READ: [(&str, &str); 2] = [("panel-top", "88"), ("skirt-finished", "100")];

pub fn settings(made: &Made) -> DxfSettings {
    DxfSettings { title: made.draft.title.clone(), edition: "edition 1".into(), base: "88".into() }
}

pub fn open(made: &Made, size: &str) -> Vec<OpenPiece> {
    let (pieces, missing) = open_pieces(&made.model, &made.finished, made.case(size));
    assert_eq!(missing, Vec::<String>::new());
    pieces
}

/// A square of 100 mm with a quarter circle cut out of one corner, and something of everything.
fn square() -> OpenPiece {
    let path = |svg: &str| BezPath::from_svg(svg).unwrap();
    let k = 100.0 - 27.614_237_491_539_665; // the usual cubic of a quarter circle of 50 mm, 0.02 mm off a true one
    OpenPiece {
        name: "Größe_½".into(),
        letter: "A".into(),
        size: "38 / lang".into(),
        boundary: path(&format!("M 0 0 L 100 0 L 100 50 C {k} 50 50 {k} 50 100 L 0 100 Z")),
        stitch: Some(path("M 10 10 L 40 10 L 40 40 L 10 40 Z")),
        notches: vec![
            [Point::new(100.0, 20.0), Point::new(94.0, 20.0)],
            [Point::new(30.0, 0.0), Point::new(30.0, 6.0)],
        ],
        grain: Some([Point::new(20.0, 80.0), Point::new(20.0, 20.0)]),
        fold: Some([Point::new(0.0, 0.0), Point::new(0.0, 100.0)]),
        inner: vec![path("M 5 5 L 50 5 M 5 8 L 50 8")],
        slits: vec![path("M 60 20 L 60 40")],
        holes: vec![Point::new(70.0, 30.0)],
        marks: vec![path("M 70 10 L 80 10 L 80 20 Z")],
        words: vec![(Point::new(5.0, 90.0), "seam 1 cm (3/8 in)".into())],
        cuts: vec![tracewheel::output::OpenCut { material: "main".into(), counts: [1, 1], words: "cut 2".into() }],
        faded: false,
    }
}

/// Codes and values.
fn pairs(bytes: &[u8]) -> Vec<(u16, String)> {
    assert!(bytes.is_ascii());
    let text = String::from_utf8(bytes.to_vec()).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len() % 2, 0);
    lines.chunks(2).map(|l| (l[0].trim().parse().unwrap(), l[1].to_owned())).collect()
}

/// Entities: kind and pairs.
fn entities(pairs: &[(u16, String)]) -> Vec<(String, Vec<(u16, String)>)> {
    let mut out: Vec<(String, Vec<(u16, String)>)> = Vec::new();
    for (code, value) in pairs {
        match (code, out.last_mut()) {
            (0, _) => out.push((value.clone(), Vec::new())),
            (_, Some(last)) => last.1.push((*code, value.clone())),
            _ => {}
        }
    }
    out
}

fn value(entity: &(String, Vec<(u16, String)>), code: u16) -> Option<&str> {
    entity.1.iter().find(|(c, _)| *c == code).map(|(_, v)| v.as_str())
}

fn at(entity: &(String, Vec<(u16, String)>), code: u16) -> Point {
    let number = |code| value(entity, code).unwrap().parse().unwrap();
    Point::new(number(code), number(code + 10))
}

#[test]
fn a_block_has_everything_in_its_layer() {
    let bytes = write_dxf(&[square()], &DxfSettings { title: "Hemd".into(), ..DxfSettings::default() }).unwrap();
    let all = entities(&pairs(&bytes));
    let on = |kind: &str, layer: &str| {
        all.iter().filter(|e| e.0 == kind && value(e, 8) == Some(layer)).cloned().collect::<Vec<_>>()
    };
    let count = |kind: &str, layer: &str| on(kind, layer).len();
    assert_eq!(value(&all[0], 9), Some("$ACADVER"), "{:?}", &all[..3]);
    assert!(String::from_utf8(bytes.clone()).unwrap().contains("\r\nAC1009\r\n"));
    assert_eq!((count("POLYLINE", "1"), count("POLYLINE", "14"), count("POLYLINE", "11")), (1, 1, 1));
    assert_eq!(count("POLYLINE", "8"), 3, "two inner lines and a mark");
    assert_eq!((count("LINE", "7"), count("LINE", "6"), count("POINT", "13"), count("POINT", "4")), (1, 1, 1, 2));
    // Five corners, the ends of the curve among them; every other vertex of the boundary is a curve point.
    assert_eq!(count("POINT", "2"), 5);
    assert_eq!(count("POINT", "2") + count("POINT", "3"), count("VERTEX", "1"));
    // y is up: the grain's head, at (20, 80) with y down, ends at (20, -80).
    let grain = &on("LINE", "7")[0];
    assert_eq!((at(grain, 10), at(grain, 11)), (Point::new(20.0, -20.0), Point::new(20.0, -80.0)));
    // Notches point inwards: to the left, and down on the paper.
    let angles: Vec<f64> = on("POINT", "4").iter().map(|n| value(n, 50).unwrap().parse().unwrap()).collect();
    assert_eq!(angles, [180.0, -90.0]);
    let words: Vec<String> =
        on("TEXT", "1").iter().chain(&on("TEXT", "15")).map(|t| value(t, 1).unwrap().to_owned()).collect();
    for expected in [
        "Piece Name: Gr\\U+00F6\\U+00DFe_\\U+00BD",
        "Size: 38 / lang",
        "Quantity: 1,1",
        "Material: main",
        "Style Name: Hemd",
        "Units: METRIC",
        "seam 1 cm (3/8 in)",
    ] {
        assert!(words.iter().any(|w| w == expected), "{expected}: {words:?}");
    }
    let said = String::from_utf8(bytes).unwrap();
    assert!(
        said.starts_with("999\r\n") && said.contains("not read from the standard itself") && !said.contains("memory")
    );
}

#[test]
fn what_is_not_to_be_cut_is_said_and_lines_are_closed_or_not() {
    let plain = OpenPiece { faded: true, stitch: None, name: "x".repeat(300), ..square() };
    let bytes = write_dxf(&[plain, square()], &DxfSettings::default()).unwrap();
    let all = entities(&pairs(&bytes));
    let words: Vec<&str> = all.iter().filter(|e| e.0 == "TEXT").map(|e| value(e, 1).unwrap()).collect();
    for expected in ["Annotation: not true in this size, not to be cut", "no allowance is included"] {
        assert_eq!(words.iter().filter(|w| w.contains(expected)).count(), 1, "{expected}: {words:?}");
    }
    // A text of R12 has 255 signs at most: a long one goes on in another, and nothing of it is lost.
    assert!(words.iter().all(|w| w.len() <= 255), "{words:?}");
    assert!(words.iter().map(|w| w.matches('x').count()).sum::<usize>() >= 300, "{words:?}");
    let flags = |layer: &str| {
        let own = all.iter().filter(|e| e.0 == "POLYLINE" && value(e, 8) == Some(layer));
        own.map(|e| value(e, 70).unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!((flags("1"), flags("14")), (vec!["1".to_owned(); 2], vec!["1".to_owned()]));
    // Two inner lines and a mark that is a ring.
    assert_eq!(flags("8")[..3], ["0", "0", "1"]);
}

/// Where the blocks are put in, a plain viewer shows them: side by side, their tops level, below the words of the style, and all of it within
/// the extents that the head tells.
#[test]
fn pieces_stand_side_by_side_within_the_extents() {
    let moved = |x: f64, y: f64| {
        let by = kurbo::Affine::translate((x, y)) * kurbo::Affine::scale_non_uniform(1.0, 1.0 + x / 100.0);
        OpenPiece {
            boundary: by * square().boundary,
            stitch: None,
            inner: Vec::new(),
            slits: Vec::new(),
            marks: Vec::new(),
            ..square()
        }
    };
    let pieces = [moved(0.0, 0.0), moved(50.0, -300.0), moved(100.0, 700.0)];
    let bytes = write_dxf(&pieces, &DxfSettings { title: "Hemd".into(), ..DxfSettings::default() }).unwrap();
    let pairs = pairs(&bytes);
    let all = entities(&pairs);
    let inserts = all.iter().filter(|e| e.0 == "INSERT").map(|e| at(e, 10));
    let boxes: Vec<kurbo::Rect> = inserts
        .zip(&pieces)
        .map(|(at, piece)| {
            let own = kurbo::Affine::scale_non_uniform(1.0, -1.0) * piece.boundary.clone();
            own.bounding_box() + at.to_vec2()
        })
        .collect();
    assert_eq!(boxes.len(), 3);
    let near = |a: f64, b: f64| (a - b).abs() < 1e-3;
    for (i, room) in boxes.iter().enumerate() {
        assert!(near(room.y1, 0.0) && near(room.x0, 120.0 * i as f64), "{boxes:?}");
    }
    let extent = |name: &str| {
        let from = pairs.iter().position(|p| *p == (9, name.to_owned())).unwrap();
        at(&(String::new(), pairs[from + 1..from + 4].to_vec()), 10)
    };
    let whole = kurbo::Rect::from_points(extent("$EXTMIN"), extent("$EXTMAX"));
    assert!(extent("$EXTMIN").x <= 0.0 && extent("$EXTMIN").y < extent("$EXTMAX").y);
    assert!(boxes.iter().all(|b| whole.inflate(1e-3, 1e-3).contains_rect(*b)), "{whole:?} {boxes:?}");
    // Words of the style stand outside of all blocks.
    let first = pairs.iter().rposition(|p| *p == (0, "ENDBLK".to_owned())).unwrap();
    let words: Vec<Point> = entities(&pairs[first..]).iter().filter(|e| e.0 == "TEXT").map(|e| at(e, 10)).collect();
    assert!(words.len() >= 3 && words.iter().all(|w| w.y > 0.0 && whole.contains(*w)), "{words:?}");
}

/// The arrow's one head says where the nap points: downwards for a heading of 90°, which in the file, where y is up, is towards less.
#[test]
fn the_grain_points_as_the_draft_says() {
    let text = |heading: &str| {
        format!(
            r#"(format: "tracewheel draft", version: 0, chart: (girth: ["one"]), pieces: [(name: "p",
            points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "(20 cm, 0 cm)"), (name: "c", at: "(20 cm, 30 cm)"), (name: "d", at: "(0 cm, 30 cm)")],
            edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")])],
            cuts: [(count: 1, grain: (heading: "{heading}"))])])"#
        )
    };
    for (heading, x, y) in [("90°", 0.0, -1.0), ("-90°", 0.0, 1.0), ("0°", 1.0, 0.0)] {
        let made = crate::labels::made(&text(heading));
        let bytes = write_dxf(&open(&made, "one"), &DxfSettings::default()).unwrap();
        let all = entities(&pairs(&bytes));
        let line = all.iter().find(|e| e.0 == "LINE" && value(e, 8) == Some("7")).unwrap();
        let way = (at(line, 11) - at(line, 10)).normalize();
        assert!((way - kurbo::Vec2::new(x, y)).hypot() < 1e-3, "{heading}: {way:?}");
    }
}

#[test]
fn an_outline_is_flattened_outwards() {
    let piece = square();
    let bytes = write_dxf(std::slice::from_ref(&piece), &DxfSettings::default()).unwrap();
    let all = entities(&pairs(&bytes));
    let vertices: Vec<Point> =
        all.iter().filter(|e| e.0 == "VERTEX" && value(e, 8) == Some("1")).map(|e| at(e, 10)).collect();
    let mut polygon = BezPath::new();
    for (i, p) in vertices.iter().enumerate() {
        let p = Point::new(p.x, -p.y);
        if i == 0 { polygon.move_to(p) } else { polygon.line_to(p) }
    }
    polygon.close_path();
    // Dense points of the true line lie in the polygon, and not far in.
    let mut farthest: f64 = 0.0;
    for segment in piece.boundary.segments() {
        for i in 0..=400 {
            let p = kurbo::ParamCurve::eval(&segment, f64::from(i) / 400.0);
            let near = polygon.segments().map(|s| kurbo::ParamCurveNearest::nearest(&s, p, 1e-9).distance_sq);
            let near = near.fold(f64::INFINITY, f64::min).sqrt();
            // Written with four decimals.
            assert!(polygon.winding(p) != 0 || near < 1e-4, "{p:?} is {near} outside");
            farthest = farthest.max(near);
        }
    }
    assert!(farthest <= 0.01 + 1e-4 && farthest > 0.001, "{farthest}");
    let more = (polygon.area().abs() - piece.boundary.area().abs(), 0.01 * piece.boundary.perimeter(1e-6));
    assert!(more.0 > 0.0 && more.0 < more.1, "{more:?}");
}

#[test]
fn names_of_blocks_are_short_plain_and_differ() {
    let named = |name: &str, size: &str| OpenPiece { name: name.into(), size: size.into(), ..square() };
    let long = "a_name_that_is_much_longer_than_a_block_may_have";
    let pieces = [named(long, "88"), named(long, "92"), named("ä", ""), named("ö", ""), named("front", "88")];
    let bytes = write_dxf(&pieces, &DxfSettings::default()).unwrap();
    let all = entities(&pairs(&bytes));
    let of =
        |kind: &str| all.iter().filter(|e| e.0 == kind).map(|e| value(e, 2).unwrap().to_owned()).collect::<Vec<_>>();
    assert_eq!(of("BLOCK"), of("INSERT"));
    let different: std::collections::BTreeSet<String> = of("BLOCK").into_iter().collect();
    assert_eq!(different.len(), 5);
    for name in different {
        assert!(
            name.len() <= 31 && name.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit() || "-_$".contains(c)),
            "{name}"
        );
    }
    assert_eq!(write_dxf(&pieces, &DxfSettings::default()).unwrap(), bytes, "the same bytes twice");
}

#[test]
fn what_cannot_be_written_is_refused_by_name() {
    assert_eq!(write_dxf(&[], &DxfSettings::default()), Err(DxfError::NoPieces));
    let faults: [fn(&mut OpenPiece); 4] = [
        |p| p.boundary = BezPath::new(),
        |p| p.notches[0][0].x = f64::NAN,
        |p| p.inner.push(BezPath::from_svg("M 0 0 L 1e9 0").unwrap()),
        |p| p.words[0].0.y = f64::INFINITY,
    ];
    for fault in faults {
        let mut piece = square();
        fault(&mut piece);
        let problem = write_dxf(&[piece], &DxfSettings::default()).unwrap_err().to_string();
        assert!(problem.contains("piece Größe_½ in size 38 / lang"), "{problem}");
    }
}

#[test]
fn another_reader_found_the_pieces_in_it() {
    // tests/outside/dxf_read.json: what ezdxf read in the files of these drafts. Here against the pieces themselves.
    let read: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string("tests/outside/dxf_read.json").unwrap()).unwrap();
    for (name, size) in READ {
        let made = example(name);
        let pieces = open(&made, size);
        let of_file = &read[name];
        assert_eq!(of_file["errors"], 0);
        assert_eq!(of_file["blocks"].as_object().unwrap().len(), pieces.len(), "{name}");
        for piece in &pieces {
            let block = &of_file["blocks"][&piece.name];
            let number = |key: &str| block[key].as_f64().unwrap_or_else(|| panic!("{name} {} {key}", piece.name));
            let (area, long) = (piece.boundary.area().abs(), piece.boundary.perimeter(1e-6));
            let more = number("area") - area;
            assert!(more >= -1e-4 * long && more <= 0.0101 * long, "{name} {}: {more}", piece.name);
            let stitch = piece.stitch.as_ref().map_or(0.0, |s| s.perimeter(1e-6));
            assert!((number("sewn") - stitch).abs() < 0.01, "{name} {}: {} for {stitch}", piece.name, number("sewn"));
            let grain = piece.grain.map_or(0.0, |[a, b]| a.distance(b));
            assert!((number("grain") - grain).abs() < 1e-3);
            assert_eq!(number("notches") as usize, piece.notches.len());
            assert_eq!(number("holes") as usize, piece.holes.len());
            assert_eq!(number("mirror") as usize, piece.fold.iter().count());
            assert_eq!(block["size"], size);
        }
    }
}
