//! Runs that need no oracle: what must not matter does not matter.

use std::sync::Arc;

use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;

const EXAMPLES: [&str; 3] = ["bodice-sleeve", "market-apron", "straight-skirt"];

fn text(name: &str) -> String {
    std::fs::read_to_string(format!("examples/{name}.ron")).unwrap()
}

fn draft(text: &str) -> Draft {
    file::read(text).unwrap().draft
}

/// Numbers of all named nodes by their names, for a case by its address.
fn numbers(model: &Model) -> Vec<(String, String, Vec<f64>)> {
    let mut out = Vec::new();
    for (c, case) in model.plan.cases.list.iter().enumerate() {
        for (i, node) in model.plan.nodes.iter().enumerate().filter(|(_, n)| n.kind.is_some()) {
            let values = match model.item(c, i as u32) {
                Some(item) if item.real().is_some() => vec![item.real().unwrap()],
                Some(item) if item.point().is_some() => vec![item.point().unwrap().x, item.point().unwrap().y],
                Some(item) => item.edge().map(|e| vec![e.sewn_length(), e.flat_length()]).unwrap_or_default(),
                None => Vec::new(),
            };
            out.push((case.address.clone(), node.part.name.to_string(), values));
        }
    }
    out.sort_by(|a, b| (&a.0, &a.1).cmp(&(&b.0, &b.1)));
    out
}

fn same(a: &[(String, String, Vec<f64>)], b: &[(String, String, Vec<f64>)], within: f64) {
    assert!(a.len() > 50);
    assert_eq!(a.len(), b.len());
    for (x, y) in a.iter().zip(b) {
        assert_eq!((&x.0, &x.1, x.2.len()), (&y.0, &y.1, y.2.len()));
        for (v, w) in x.2.iter().zip(&y.2) {
            assert!((v - w).abs() <= within, "{} in {}: {v} and {w}", x.1, x.0);
        }
    }
}

#[test]
fn units_of_literals_do_not_matter() {
    for name in EXAMPLES {
        let mut other = String::new();
        let before = text(name);
        // Each whole or decimal number of centimetres as ten times as many millimetres.
        let mut rest = before.as_str();
        let mut changed = 0;
        while let Some(at) = rest.find(" cm") {
            let number = rest[..at].rfind(|c: char| !c.is_ascii_digit() && c != '.').map_or(0, |i| i + 1);
            match rest[number..at].parse::<f64>() {
                Ok(value) if !rest[at + 3..].starts_with(char::is_alphanumeric) => {
                    other += &rest[..number];
                    other += &format!("{} mm", (value * 1e7).round() / 1e6);
                    changed += 1;
                }
                _ => other += &rest[..at + 3],
            }
            rest = &rest[at + 3..];
        }
        other += rest;
        assert!(changed > 5, "{name}");
        let (a, b) = (Engine::new().compute(&draft(&before)), Engine::new().compute(&draft(&other)));
        same(&numbers(&a), &numbers(&b), 1e-7);
    }
}

#[test]
fn the_order_of_sizes_does_not_matter() {
    for name in EXAMPLES {
        let one = draft(&text(name));
        let mut other = one.clone();
        other.chart.girth.reverse();
        let (a, b) = (Engine::new().compute(&one), Engine::new().compute(&other));
        same(&numbers(&a), &numbers(&b), 0.0);
    }
}

#[test]
fn a_piece_that_nothing_names_does_not_matter() {
    for name in EXAMPLES {
        let one = draft(&text(name));
        let mut other = one.clone();
        let mut copy = (*other.pieces[0]).clone();
        copy.name = "unused_copy".into();
        for line in copy.points.iter_mut().map(|p| &mut p.at) {
            *line = line.replace(&format!("{}.", one.pieces[0].name), "unused_copy.");
        }
        other.pieces.insert(0, Arc::new(copy));
        let (a, b) = (Engine::new().compute(&one), Engine::new().compute(&other));
        let b: Vec<_> = numbers(&b).into_iter().filter(|n| !n.1.starts_with("unused_copy")).collect();
        same(&numbers(&a), &b, 0.0);
    }
}

#[test]
fn names_do_not_matter() {
    let one = draft(&text("bodice-sleeve"));
    // A whole word, wherever it stands: the piece `sleeve` and its point `crown` under other names.
    let renamed =
        text("bodice-sleeve").replace("crown_x", "KEEP").replace("crown", "gipfel").replace("KEEP", "crown_x");
    let other = draft(&renamed);
    let (a, b) = (Engine::new().compute(&one), Engine::new().compute(&other));
    let back = |n: Vec<(String, String, Vec<f64>)>| -> Vec<_> {
        let mut n: Vec<_> = n.into_iter().map(|(s, name, v)| (s, name.replace("gipfel", "crown"), v)).collect();
        n.sort_by(|a, b| (&a.0, &a.1).cmp(&(&b.0, &b.1)));
        n
    };
    same(&numbers(&a), &back(numbers(&b)), 0.0);
}

#[test]
fn an_edge_cut_in_two_is_as_long() {
    let one = draft(&text("straight-skirt"));
    let mut other = one.clone();
    let piece = Arc::make_mut(&mut other.pieces[0]);
    piece.points.push(tracewheel::document::Point {
        name: "between".into(),
        at: "on_way(hem_centre, hem_side, 0.37)".into(),
        note: String::new(),
    });
    let hem = piece.edges.iter_mut().find(|e| e.name == "hem").unwrap();
    hem.by.insert(0, tracewheel::document::Segment::Straight("between".into()));
    let (a, b) = (Engine::new().compute(&one), Engine::new().compute(&other));
    let b: Vec<_> = numbers(&b).into_iter().filter(|n| n.1 != "back.between").collect();
    same(&numbers(&a), &b, 1e-9);
}

#[test]
fn the_place_of_the_machine_does_not_matter() {
    for name in EXAMPLES {
        let run = |lang: &str, zone: &str| {
            let path = format!("examples/{name}.ron");
            let out = crate::program()
                .args(["proof", &path, "--json"])
                .env("LANG", lang)
                .env("LC_ALL", lang)
                .env("TZ", zone)
                .output()
                .unwrap();
            assert!(out.stdout.len() > 100);
            String::from_utf8(out.stdout).unwrap()
        };
        let here = run("C", "UTC");
        assert_eq!(here, run("fr_FR.UTF-8", "Asia/Tokyo"), "{name}");
        // Where the program speaks another language, sentences differ and nothing else.
        let bare =
            |text: &str| text.lines().filter(|l| !l.contains("\"message\":")).map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(bare(&here), bare(&run("de_DE.UTF-8", "Asia/Tokyo")), "{name}");
    }
}

/// Every literal of every formula in turn, and back: the model that was computed by steps is the one from nothing.
#[test]
fn history_does_not_matter() {
    for name in EXAMPLES {
        let first = draft(&text(name));
        let mut engine = Engine::new();
        engine.compute(&first);
        let mut now = first.clone();
        let mut count = 0;
        for round in 0..60 {
            change(&mut now, round);
            let stepped = engine.compute(&now);
            let fresh = Engine::new().compute(&now);
            // As text, in which what is no number equals itself.
            for (a, b) in stepped.cases.iter().zip(&fresh.cases) {
                assert!(format!("{a:?}") == format!("{b:?}"), "{name}, round {round}");
            }
            assert_eq!(format!("{:?}", stepped.findings), format!("{:?}", fresh.findings), "{name}, round {round}");
            count += 1;
        }
        assert_eq!(count, 60);
    }
}

/// One small change, by a fixed rule: another number in a formula, a broken formula, a cell, a found value's start.
fn change(draft: &mut Draft, round: usize) {
    let nudge = |text: &mut String, by: usize| {
        if let Some(at) = text.find(|c: char| c.is_ascii_digit()) {
            let old = text[at..=at].to_owned();
            let new = ((old.parse::<usize>().unwrap() + 1 + by % 3) % 10).max(1).to_string();
            text.replace_range(at..=at, &new);
        }
    };
    match round % 6 {
        0 | 1 => {
            let p = round % draft.pieces.len();
            let piece = Arc::make_mut(&mut draft.pieces[p]);
            let k = (round * 7) % piece.points.len();
            nudge(&mut piece.points[k].at, round);
        }
        2 => {
            let k = (round * 5) % draft.values.len();
            nudge(&mut draft.values[k].is, round);
            nudge(&mut draft.values[k].start, round);
        }
        3 => {
            let rows = &mut draft.chart.rows;
            let k = round % rows.len();
            if let Some(cell) = rows[k].cells.get_mut(1) {
                nudge(&mut cell.1, round);
            }
        }
        4 => {
            let p = round % draft.pieces.len();
            let piece = Arc::make_mut(&mut draft.pieces[p]);
            let k = (round * 3) % piece.points.len();
            let at = &mut piece.points[k].at;
            *at = if at.ends_with(" +") { at.trim_end_matches(" +").to_owned() } else { format!("{at} +") };
        }
        _ => {
            // Mended again, so that not everything is broken at the end.
            for piece in &mut draft.pieces {
                if piece.points.iter().any(|p| p.at.ends_with(" +")) {
                    for point in &mut Arc::make_mut(piece).points {
                        point.at = point.at.trim_end_matches(" +").to_owned();
                    }
                }
            }
        }
    }
}

/// Every literal length of a text twice as long.
fn doubled(text: &str) -> (String, usize) {
    let (mut out, mut count, mut rest) = (String::new(), 0, text);
    let units = [" cm", " mm", " in"];
    while let Some(at) = units.iter().filter_map(|u| rest.find(u)).min() {
        let whole_word = !rest[at + 3..].starts_with(|c: char| c.is_alphanumeric() || c == '_');
        let from = rest[..at].rfind(|c: char| !c.is_ascii_digit() && !"./ ".contains(c)).map_or(0, |i| i + 1);
        let literal = rest[from..at].trim();
        let parts: Vec<&str> = literal.split([' ', '/']).collect();
        let value = match parts.iter().map(|p| p.parse::<f64>()).collect::<Result<Vec<_>, _>>().as_deref() {
            Ok([v]) => Some(*v),
            Ok([n, d]) => Some(n / d),
            Ok([w, n, d]) => Some(w + n / d),
            _ => None,
        };
        match value.filter(|_| whole_word) {
            Some(value) => {
                let lead = rest[from..at].len() - rest[from..at].trim_start().len();
                out += &rest[..from + lead];
                out += &format!("{}{}", value * 2.0, &rest[at..at + 3]);
                count += 1;
            }
            None => out += &rest[..at + 3],
        }
        rest = &rest[at + 3..];
    }
    (out + rest, count)
}

#[test]
fn twice_the_lengths_give_twice_the_draft() {
    use tracewheel::language::Kind;
    for name in EXAMPLES {
        let (other, count) = doubled(&text(name));
        assert!(count > 25, "{name}: {count}");
        let (a, b) = (Engine::new().compute(&draft(&text(name))), Engine::new().compute(&draft(&other)));
        let mut compared = 0;
        for case in 0..a.cases.len() {
            for (i, node) in a.plan.nodes.iter().enumerate() {
                let times = match node.kind {
                    Some(Kind::LENGTH | Kind::Point(_) | Kind::Edge(_)) => 2.0,
                    Some(Kind::NUMBER | Kind::Angle) => 1.0,
                    _ => continue,
                };
                let value = |m: &Model| {
                    let item = m.item(case, i as u32)?;
                    item.real().or(item.edge().map(|e| e.sewn_length())).or(item.point().map(|p| p.x + p.y))
                };
                let (Some(x), Some(y)) = (value(&a), value(&b)) else { continue };
                assert!((x * times - y).abs() < 1e-6, "{name}, {}: {x} and {y}", node.part.name);
                compared += 1;
            }
        }
        assert!(compared > 100, "{name}: {compared}");
    }
}
