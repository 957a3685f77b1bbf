//! Names through derived pieces: renaming, "used by" and deleting follow them, and nothing that is computed changes.

use std::collections::BTreeSet;

use tracewheel::base::Code;
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Address, Does, Draft, Inner, Join, Mark, MarkKind, Part, Piece, Role, Seam, Step, Value};
use tracewheel::file;
use tracewheel::finish::finish;
use tracewheel::session::{
    Command, Deleting, Deletion, PartCommand, STEP_KINDS, StepCommand, TextCommand, Work, check_free, comes_from,
    delete, fresh_inner, fresh_name, new_step, qualify_for, rename, stands_elsewhere, used_by, users,
};

use crate::derived::draft as from_block;
use crate::dice::Dice;

/// Chains of derived pieces with every kind of step, named from everywhere.
fn draft() -> Draft {
    from_block(
        r#"(name: "moved", of: "block", steps: [(name: "away", does: move_dart(close: "bust", on: "side", at: "length(side) / 2", stays: "centre", makes: "side_dart"))]),
        (name: "home", of: "moved", steps: [(name: "back", does: move_dart(close: "side_dart", on: "top", at: "8.5 cm", stays: "centre", makes: "bust"))]),
        (name: "round", of: "block", steps: [(name: "away", does: move_dart(close: "bust", on: "side", at: "1/2", stays: "centre", makes: "side_dart")),
            (name: "back", does: move_dart(close: "side_dart", on: "top", at: "8.5 cm", stays: "nw", makes: "bust"))]),
        (name: "styled", of: "block", steps: [(name: "line", does: draw(points: [(name: "low", at: "hem.at(1/2)")], lines: [(name: "style", from: "tip", by: [curve("tip.down(5 cm)", "low.up(gap(tip, low) / 4)", "low")])], marks: [(name: "cross", kind: drill_hole, at: "halfway(tip, low)")]))]),
        (name: "left", of: "styled", steps: [(name: "panel", does: cut(from: "bust", to: "hem", along: "style", keep: "centre", makes: "panel", start: "upper", end: "lower"))],
            allowances: [(edge: "panel", width: "1 cm")], label: (at: "halfway(tip, nw)")),
        (name: "right", of: "styled", steps: [(name: "panel", does: cut(from: "bust", to: "hem", along: "style", keep: "side", makes: "panel", start: "upper", end: "lower")),
            (name: "soft", does: redraw(edge: "side", by: [curve("ne.down(10 cm)", "se.up(gap(ne, upper) / 2)", "se")]))]),
        (name: "both", of: "left", steps: [(name: "join", does: join(edge: "panel", piece: "right", to: "panel", reversed: true, prefix: "r_")),
            (name: "lift", does: move_edge(edge: "r_side", by: "length(r_hem) / 100 + 0 * gap(r_ne, r_se)"))]),
        (name: "whole", of: "left", steps: [(name: "unfold", does: unfold(over: "centre", prefix: "l_")), (name: "stand", does: add_strip(edge: "l_top", width: "2 cm", makes: "outer", start: "inner_end", end: "lower_end")),
            (name: "over", does: draw(lines: [(name: "across", from: "outer_start", by: [straight("l_upper")])]))],
            marks: [(name: "hole", kind: drill_hole, at: "l_upper.up(0 mm).down(length(across) / 9)"), (name: "seen", kind: button, at: "across.at(1/2)")]),
        (name: "twice", of: "whole", steps: [(name: "gone", does: leave_out(["across", "l_cross"])), (name: "flare", does: spread(from: "hem", from_at: "1/3", to: "top", to_at: "1/2", by: "1 cm + 0.1 * gap(l_lower, sw)", stays: "l_hem", opening: dart, makes: "pinch"))]),
        (name: "hers", of: "both", steps: [(name: "narrow", person: "Ada", does: move_edge(edge: "r_side", by: "length(r_top) / 20")), (name: "over", does: turn_over)])],
        values: [(name: "reach", is: "length(whole.l_hem) + gap(whole.outer_start, whole.nw) + twice.pinch.intake + twice.l_tip.x - block.tip.x"), (name: "half", is: "area(both) / width(both, level(both.r_ne.down(1 cm)))")],
        placements: [(name: "laid", lay: "both", on: "block", point: "r_ne", onto: "nw", towards: "r_se", along: "sw")],
        seams: [(name: "panels", one: ["left.panel"], two: ["reversed(right.panel)"], notches: [(name: "tip", at: "left.tip")]), (name: "sides", one: ["both.r_side"], two: ["right.side"]),
            (name: "hems", one: ["whole.hem"], two: ["reversed(whole.l_hem)"], notches: [(name: "m", at: "1/2")])],
        conditions: [(name: "near", must: "gap(laid.r_se, block.sw) <= 50 cm"), (name: "wide", must: "length(whole.l_top) >= 5 cm")],
        booklet: [(title: "Top", text: "Sew {length(both.r_top)} to {length(whole.outer)}.", pieces: ["both"])],
        silenced: [(code: "step-fails", at: "twice, step flare", number: "", reason: "a fixture"), (code: "fold-flat", at: "whole.l_top", number: "", reason: "a fixture")"#,
    )
}

/// All that is computed and finished, bit for bit; names are not looked at.
fn computed(draft: &Draft) -> Vec<String> {
    let model = Engine::new().compute(draft);
    let mut out = crate::renaming::slots(&model);
    let mut findings: Vec<String> = tracewheel::proof::proof(&model.draft, &model)
        .iter()
        .map(|f| format!("{:?} {:?} {:?} {:?}", f.code, f.silenced, f.sizes, f.amounts))
        .collect();
    findings.sort();
    out.extend(findings);
    let finished = finish(&model.draft, &model);
    for piece in finished.cases.iter().flatten() {
        out.push(piece.as_ref().map_or("none".to_owned(), |p| {
            let cuts: Vec<_> = p.cuts.iter().map(|c| (&c.outline, &c.edges, &c.grain)).collect();
            format!("{:?} {cuts:?} {:?} {}", p.stitch, p.label, p.marks.len())
        }));
    }
    out
}

fn stays_the_same(have: &[String], want: &[String], what: &str) {
    assert_eq!(have.len(), want.len(), "{what}");
    for (i, (have, want)) in have.iter().zip(want).enumerate() {
        assert!(have == want, "{what}: {i} is {have}, was {want}");
    }
}

/// All parts that have a name of their own, those that steps make too.
fn parts(draft: &Draft) -> Vec<Part> {
    let mut out: BTreeSet<Part> = BTreeSet::new();
    draft.clone().each_text(&mut |at, role, text| match role {
        Role::OwnName => {
            out.insert(at.part.clone());
        }
        Role::Makes(inner) if !text.is_empty() => {
            out.insert(Part::Inner(at.part.frame().unwrap_or_default().to_owned(), *inner, text.clone()));
        }
        _ => {}
    });
    out.into_iter().collect()
}

/// Texts that give names in steps without being a part: what is put in front, and the steps' own names.
fn given(draft: &Draft) -> Vec<(Address, String)> {
    let mut out = Vec::new();
    draft.clone().each_text(&mut |at, role, text| {
        if *role == Role::Prefix || at.field == "step name" {
            out.push((at.clone(), text.clone()));
        }
    });
    out
}

fn check_all_renames(draft: &Draft, what: &str, dice: &mut Dice, every: u64) -> usize {
    let (text, before) = (file::write(draft), computed(draft));
    let (mut many, mut work) = (0, Work::here(draft.clone()));
    for part in parts(draft) {
        if dice.below(every) > 0 {
            continue;
        }
        let fresh = fresh_name(draft, "quite_new");
        let what = format!("{what}, {part}");
        match work.run(&Command::Part(PartCommand::Rename(part.clone(), fresh.clone()))) {
            Ok(_) => many += 1,
            // What a step would make if it could be done is nowhere.
            Err(e) if e.to_string().contains("it is not there") => continue,
            Err(e) => panic!("{what}: {e}"),
        }
        let renamed = work.draft().clone();
        assert_ne!(file::write(&renamed), text, "{what}");
        // The name of a person stands among the sizes of findings.
        let (is, was) = (format!("{fresh:?}"), format!("{:?}", part.name()));
        let after: Vec<String> = computed(&renamed).iter().map(|line| line.replace(&is, &was)).collect();
        stays_the_same(&after, &before, &what);
        let back = part.renamed(&fresh);
        assert_eq!(users(draft, &part).len(), users(&renamed, &back).len(), "{what}");
        if dice.below(2) == 0 {
            let mut again = Draft::clone(&renamed);
            rename(&mut again, &back, part.name()).unwrap_or_else(|e| panic!("{what} back: {e}"));
            assert_eq!(file::write(&again), text, "{what} and back");
        }
        work.undo().unwrap();
        assert_eq!(file::write(work.draft()), text, "{what}, undone");
    }
    for (at, old) in given(draft) {
        if dice.below(every) > 0 {
            continue;
        }
        let what = format!("{what}, {} {} {old}", at.part, at.field);
        work.run(&Command::Text(TextCommand::Set(at.clone(), "quite_new_".into())))
            .unwrap_or_else(|e| panic!("{what}: {e}"));
        stays_the_same(&computed(work.draft()), &before, &what);
        work.run(&Command::Text(TextCommand::Set(at, old))).unwrap_or_else(|e| panic!("{what} back: {e}"));
        assert_eq!(file::write(work.draft()), text, "{what} and back");
        many += 1;
    }
    many
}

#[test]
fn renaming_any_part_follows_through_derived_pieces() {
    let mut dice = Dice(1);
    let small = draft();
    let model = Engine::new().compute(&small);
    let told: Vec<_> = model.findings.iter().map(|f| (&f.place.name, f.code, &f.words, &f.formula)).collect();
    assert!(told.is_empty(), "{told:#?}");
    let many = check_all_renames(&small, "the fixture", &mut dice, 1);
    assert!(many > 60, "{many}");
    let text = std::fs::read_to_string("examples/panel-top.ron").unwrap();
    let many = check_all_renames(&file::read(&text).unwrap().draft, "panel-top", &mut dice, 3);
    assert!(many > 40);
}

/// Pieces derived at random from a block and from each other, and named at random.
fn at_random(dice: &mut Dice) -> Draft {
    let mut draft = from_block(r#"(name: "p0", of: "block")"#);
    for n in 1..5 {
        let told: Vec<Piece> = Engine::new().compute(&draft).draft.pieces.iter().map(|p| Piece::clone(p)).collect();
        let base = told[dice.below(told.len() as u64) as usize].clone();
        let name = format!("p{n}");
        draft.pieces.push(Piece { name: name.clone(), of: base.name.clone(), ..Piece::default() }.into());
        for k in 0..1 + dice.below(3) {
            let now = Engine::new().compute(&draft).draft.pieces.last().unwrap().as_ref().clone();
            let mut step = new_step(&draft, &now, dice.below(STEP_KINDS.len() as u64) as usize, "cm");
            let edge = |dice: &mut Dice| now.edges[dice.below(now.edges.len() as u64) as usize].name.clone();
            match &mut step.does {
                Does::Join(join) => {
                    let other = &told[dice.below(told.len() as u64) as usize];
                    let to = other.edges[dice.below(other.edges.len() as u64) as usize].name.clone();
                    *join = Join { edge: edge(dice), piece: other.name.clone(), to, ..join.clone() };
                }
                Does::Unfold(unfold) => unfold.over = edge(dice),
                Does::AddStrip(strip) => strip.edge = edge(dice),
                Does::Cut(cut) => cut.keep = edge(dice),
                Does::MoveEdge(moved) => moved.by = format!("length({}) / 30", edge(dice)),
                _ => {}
            }
            let step = Step { name: format!("s{k}"), ..step };
            let mut work = Work::here(draft.clone());
            let _ = work.run(&Command::Step(StepCommand::Add(name.clone(), Box::new(step))));
            // Only what can be done, mostly: a step that fails makes no names.
            let fails =
                Engine::new().compute(work.draft()).findings.len() > Engine::new().compute(&draft).findings.len();
            if !fails || dice.below(4) == 0 {
                draft = Draft::clone(work.draft());
            }
        }
        let now = Engine::new().compute(&draft).draft.pieces.last().unwrap().as_ref().clone();
        let seen: Vec<_> = now.named().filter(|(_, n)| !n.contains(tracewheel::document::OWN_LETTER)).collect();
        let of = |dice: &mut Dice, inner: Inner| {
            let all: Vec<&String> = seen.iter().filter(|(i, _)| *i == inner).map(|(_, n)| *n).collect();
            all.get(dice.below(all.len().max(1) as u64) as usize).map_or_else(String::new, |n| (*n).clone())
        };
        let (edge, point, other) = (of(dice, Inner::Edge), of(dice, Inner::Point), of(dice, Inner::Point));
        let is = format!("length({name}.{edge}) + gap({name}.{point}, {name}.{other})");
        draft.values.push(Value { name: format!("v{n}"), is, ..Value::default() });
        draft.seams.push(
            Seam {
                name: format!("e{n}"),
                one: vec![format!("{name}.{edge}")],
                two: vec![format!("reversed({name}.{edge})")],
                ..Seam::default()
            }
            .into(),
        );
        let at = format!("halfway({point}, {other})");
        let piece = std::sync::Arc::make_mut(draft.pieces.last_mut().unwrap());
        piece.marks.push(Mark { name: format!("m{n}"), kind: MarkKind::Button, at, ..Mark::default() });
    }
    draft
}

#[test]
fn drafts_at_random_keep_all_that_is_computed() {
    let mut many = 0;
    for seed in 1..=12 {
        let mut dice = Dice(seed);
        let draft = at_random(&mut dice);
        many += check_all_renames(&draft, &format!("seed {seed}\n{}", file::write(&draft)), &mut dice, 8);
    }
    assert!(many > 40, "{many}");
}

/// Names in texts that mean nothing, and steps that cannot be done.
fn dangling(draft: &Draft) -> usize {
    let model = Engine::new().compute(draft);
    let is_dangling = |c: Code| matches!(c, Code::UnknownName | Code::StepFails | Code::PartUnknown);
    model.findings.iter().filter(|f| is_dangling(f.code)).count()
}

fn check_all_deletions(draft: &Draft, what: &str, dice: &mut Dice, every: u64) -> usize {
    let (model, before) = (Engine::new().compute(draft), dangling(draft));
    let mut many = 0;
    for part in parts(draft) {
        if dice.below(every) > 0 {
            continue;
        }
        let users = users(draft, &part);
        for how in [Deleting::IfUnused, Deleting::PutValue] {
            let mut tried = draft.clone();
            match delete(&mut tried, &model, &part, how) {
                Ok(_) => {
                    assert!(how == Deleting::PutValue || users.is_empty(), "{what}, {part}: {users:?}");
                    assert!(
                        dangling(&tried) <= before,
                        "{what}, {part}, {how:?}: {:#?}",
                        Engine::new().compute(&tried).findings
                    );
                    many += 1;
                }
                Err(_) => assert_eq!(tried, *draft, "{what}, {part}"),
            }
        }
    }
    for piece in &draft.pieces {
        for i in 0..piece.steps.len() {
            let mut work = Work::here(draft.clone());
            let remove = StepCommand::Remove(piece.name.clone(), i, Deletion::IfUnused);
            if work.run(&Command::Step(remove)).is_ok() {
                assert!(dangling(work.draft()) <= before, "{what}, step {i} of {}", piece.name);
                many += 1;
            }
        }
    }
    many
}

#[test]
fn whatever_is_deleted_unasked_leaves_no_name_behind() {
    let mut dice = Dice(3);
    let many = check_all_deletions(&draft(), "the fixture", &mut dice, 1);
    let text = std::fs::read_to_string("examples/panel-top.ron").unwrap();
    let garment = check_all_deletions(&file::read(&text).unwrap().draft, "panel-top", &mut dice, 4);
    let mut random = 0;
    for seed in 21..=26 {
        let mut dice = Dice(seed);
        let draft = at_random(&mut dice);
        random += check_all_deletions(&draft, &format!("seed {seed}\n{}", file::write(&draft)), &mut dice, 6);
    }
    assert!(many > 5 && garment > 5 && random > 5, "{many} {garment} {random}");
}

fn edge(frame: &str, name: &str) -> Part {
    Part::edge(frame, name)
}

#[test]
fn a_name_is_followed_from_the_block_to_the_last_copy() {
    let mut d = draft();
    rename(&mut d, &edge("block", "hem"), "bottom").unwrap();
    rename(&mut d, &edge("left", "panel"), "slope").unwrap();
    rename(&mut d, &edge("whole", "outer"), "rim").unwrap();
    rename(&mut d, &Part::point("block", "ne"), "corner").unwrap();
    let text = file::write(&d);
    for expected in [
        "at: \"bottom.at(1/2)\"",
        "to: \"bottom\"",
        "by: \"length(r_bottom) / 100 + 0 * gap(r_corner, r_se)\"",
        "stays: \"l_bottom\"",
        "length(whole.l_bottom) + gap(whole.rim_start, whole.nw)",
        "one: [\"left.slope\"]",
        "two: [\"reversed(right.panel)\"]",
        "makes: \"slope\"",
        "edge: \"slope\",",
        "from: \"rim_start\"",
        "{length(whole.rim)}",
        "level(both.r_corner.down(1 cm))",
        "point: \"r_corner\"",
    ] {
        assert!(text.contains(expected), "{expected}\n{text}");
    }
    assert!(!text.contains("hem\"") && !text.contains("outer_start"), "{text}");
}

#[test]
fn a_name_that_passes_is_renamed_where_it_comes_from() {
    let (mut a, mut b) = (draft(), draft());
    rename(&mut a, &edge("twice", "l_hem"), "l_bottom").unwrap();
    rename(&mut b, &edge("block", "hem"), "bottom").unwrap();
    assert_eq!(a, b);
    let before = a.clone();
    let problem = rename(&mut a, &edge("twice", "l_bottom"), "low").unwrap_err().to_string();
    assert!(problem.contains("is edge block.bottom") && problem.contains("`l_low`"), "{problem}");
    assert_eq!(a, before);
    assert_eq!(
        comes_from(&a, &edge("twice", "l_bottom")).unwrap(),
        "It is edge block.bottom, which passes into twice."
    );
    assert_eq!(comes_from(&a, &edge("left", "panel")).unwrap(), "It is made by step panel of left.");
    assert_eq!(comes_from(&a, &edge("block", "bottom")), None);
}

#[test]
fn a_name_that_would_be_double_anywhere_in_the_chain_is_refused() {
    let d = draft();
    for (part, to, says) in [
        (edge("block", "hem"), "Panel", "`panel` would be the name of two things in left, step panel"),
        (edge("block", "hem"), "pinch", "`pinch` would be the name of two things in twice, step flare"),
        (edge("left", "panel"), "Hem", "would be the name of two things in left, step panel: the edge there has it"),
        (edge("block", "top"), "l_hem", "two things in whole, step unfold"),
        (Part::point("block", "tip"), "outer_start", "two things in whole, step stand"),
        (edge("block", "hem"), "seen", "two things in whole: "),
        (edge("block", "hem"), "cm", "is a word of the language"),
        (edge("block", "hem"), &"h".repeat(59), "in both it would be called"),
    ] {
        let mut tried = d.clone();
        let problem = rename(&mut tried, &part, to).unwrap_err().to_string();
        assert!(problem.contains(says), "{part} to {to}: {problem}");
        assert_eq!(tried, d);
    }
    // The same where a part is added: in the block, or in a piece that is made of it.
    assert!(check_free(&d, &Part::point("block", "pinch")).unwrap_err().to_string().contains("in twice, step flare"));
    assert!(check_free(&d, &Part::point("twice", "L_hem")).unwrap_err().to_string().contains("two things in twice"));
    check_free(&d, &Part::point("block", "free")).unwrap();
    let fresh = fresh_inner(&d, "block", Inner::Edge, &[]);
    check_free(&d, &edge("block", &fresh)).unwrap();
}

#[test]
fn formulas_in_steps_get_the_longer_spelling() {
    // A step says the row `w`; the block gets a point of that name.
    let d = from_block(
        r#"(name: "p", of: "block", steps: [(name: "s", does: move_edge(edge: "side", by: "w / 20 + ease"))], marks: [(name: "m", kind: button, at: "nw.down(w / 10)", size: "w / 20")])],
        values: [(name: "ease", is: "1 cm")"#,
    );
    let before = computed(&d);
    let mut renamed = d.clone();
    let told = rename(&mut renamed, &Part::point("block", "sw"), "ease").unwrap();
    assert!(told.contains("1 got a longer spelling"), "{told}");
    assert!(file::write(&renamed).contains("w / 20 + value.ease"));
    stays_the_same(&computed(&renamed), &before, "ease");
    let mut added = d.clone();
    std::sync::Arc::make_mut(&mut added.pieces[0]).points.push(tracewheel::document::Point {
        name: "ease".into(),
        at: "(1 cm, 1 cm)".into(),
        ..Default::default()
    });
    qualify_for(&mut added, &Part::point("block", "ease"));
    assert!(file::write(&added).contains("w / 20 + value.ease"));
    // A formula of the block goes along with its mark: in the piece that is made of it, the name must not be taken for a point there.
    let d = from_block(
        r#"(name: "p", of: "block", steps: [(name: "s", does: draw(points: [(name: "q", at: "nw.down(1 cm)")]))])],
        values: [(name: "ease", is: "2 cm")"#,
    );
    let text = file::write(&d).replace("width: \"2 cm\"", "width: \"ease\"");
    let d = file::read(&text).unwrap().draft;
    let before = computed(&d);
    let mut renamed = d.clone();
    rename(&mut renamed, &Part::point("p", "q"), "ease").unwrap();
    assert!(file::write(&renamed).contains("width: \"value.ease\""), "{}", file::write(&renamed));
    stays_the_same(&computed(&renamed), &before, "a formula that goes along");
}

#[test]
fn a_formula_of_a_step_sees_what_a_later_step_of_its_stage_makes() {
    // The first step ends a stage; the formulas of the next two see each other's points, whichever is first.
    let d = from_block(
        r#"(name: "p", of: "block", steps: [(name: "wider", does: move_edge(edge: "side", by: "1 cm")),
            (name: "a", does: draw(points: [(name: "low", at: "high.down(2 cm)")])), (name: "b", does: draw(points: [(name: "high", at: "nw.down(1 cm)")]))])],
        values: [(name: "reach", is: "gap(p.low, p.nw)")"#,
    );
    let before = computed(&d);
    let mut renamed = d.clone();
    rename(&mut renamed, &Part::point("p", "high"), "upper").unwrap();
    let text = file::write(&renamed);
    assert!(text.contains("upper.down(2 cm)") && !text.contains("high"), "{text}");
    stays_the_same(&computed(&renamed), &before, "upper");
}

#[test]
fn used_by_sees_through_derived_pieces() {
    let d = draft();
    let words = |part: &Part| users(&d, part).join(", ");
    let hem = words(&edge("block", "hem"));
    for user in [
        "step panel of left",
        "step line of styled",
        "step lift of both",
        "step flare of twice",
        "seam hems",
        "value reach",
    ] {
        assert!(hem.contains(user), "{user}: {hem}");
    }
    assert_eq!(words(&edge("twice", "l_hem")), hem, "it is the same part");
    assert_eq!(words(&edge("left", "panel")), "seam panels, piece left, step join of both");
    assert_eq!(words(&edge("whole", "outer")), "value reach, booklet step 1, step over of whole");
    assert!(words(&Part::Piece("styled".into())).contains("piece left"));
    // Not the place where it is given a name.
    assert!(
        used_by(&d, &Part::Inner("twice".into(), Inner::Dart, "pinch".into()))
            .iter()
            .all(|u| u.at.field != "step makes")
    );
}

#[test]
fn what_a_step_makes_or_a_base_has_is_not_deleted_elsewhere() {
    let d = draft();
    let model: Model = Engine::new().compute(&d);
    let why = |part: &Part| {
        let mut tried = d.clone();
        let problem = delete(&mut tried, &model, part, Deleting::LeaveBroken).unwrap_err().to_string();
        assert_eq!((Some(&problem), &tried), (stands_elsewhere(&d, part).as_ref(), &d));
        problem
    };
    assert_eq!(why(&edge("left", "panel")), "edge left.panel is made by step panel of left: take out that step");
    assert_eq!(
        why(&edge("twice", "l_hem")),
        "edge twice.l_hem is edge block.hem, which passes into twice: take that out"
    );
    assert_eq!(
        why(&Part::Inner("twice".into(), Inner::Mark, "l_hole".into())),
        "mark twice.l_hole is mark block.hole, which passes into twice: take that out, or let a step of twice leave it out"
    );
    // What a step draws is taken out of the step.
    let mut tried = d.clone();
    delete(&mut tried, &model, &Part::Inner("styled".into(), Inner::Mark, "cross".into()), Deleting::LeaveBroken)
        .unwrap();
    assert!(!file::write(&tried).contains("name: \"cross\""));
    // A base is not taken from under what is made of it.
    let mut tried = d.clone();
    let problem =
        delete(&mut tried, &model, &Part::Piece("styled".into()), Deleting::IfUnused).unwrap_err().to_string();
    assert!(problem.contains("piece left") && problem.contains("piece right"), "{problem}");
    // Nor a step from under what names the things that it makes.
    let mut work = Work::here(d.clone());
    let remove = |how| Command::Step(StepCommand::Remove("left".into(), 0, how));
    let problem = work.run(&remove(Deletion::IfUnused)).unwrap_err().to_string();
    assert_eq!(
        problem,
        "what step 1 of left makes is used by seam panels, piece left, step join of both, step over of whole, mark whole.hole, step flare of twice"
    );
    let told = work.run(&remove(Deletion::LeaveBroken)).unwrap();
    assert_eq!(told, "the step was taken out; what used it is broken now: 6");
    assert!(dangling(work.draft()) > 0);
}

#[test]
fn the_fields_of_a_step_rename() {
    let d = draft();
    let at = |piece: &str, field: &'static str, i: usize| Address::nth(Part::Piece(piece.into()), field, i);
    let set = |work: &mut Work, at: Address, to: &str| work.run(&Command::Text(TextCommand::Set(at, to.into())));
    let mut work = Work::here(d.clone());
    set(&mut work, at("left", "step makes", 0), "slope").unwrap();
    assert!(file::write(work.draft()).contains("one: [\"left.slope\"]"));
    let problem = set(&mut work, at("left", "step makes", 0), "hem").unwrap_err().to_string();
    assert!(problem.contains("two things in left, step panel"), "{problem}");
    set(&mut work, at("both", "step prefix", 0), "other_").unwrap();
    let text = file::write(work.draft());
    assert!(text.contains("both.other_side") && text.contains("length(other_top) / 20"), "{text}");
    assert!(set(&mut work, at("whole", "step prefix", 0), "").unwrap_err().to_string().contains("two things in whole"));
    set(&mut work, at("twice", "step name", 1), "wider").unwrap();
    assert!(file::write(work.draft()).contains("at: \"twice, step wider\""));
    assert!(set(&mut work, at("twice", "step name", 1), "Gone").unwrap_err().to_string().contains("already"));
    assert!(set(&mut work, at("twice", "step name", 1), "").unwrap_err().to_string().contains("needs a name"));
    stays_the_same(&computed(work.draft()), &computed(&d), "fields");
}

/// A piece whose block is gone keeps what is typed in it, and that follows when it is renamed.
#[test]
fn what_is_typed_in_a_piece_without_its_block_is_renamed() {
    let mut draft = from_block(
        r#"(name: "lost", of: "gone", points: [(name: "spot", at: "(1 cm, 2 cm)"), (name: "next", at: "spot.down(1 cm)")], marks: [(name: "hole", kind: drill_hole, at: "spot")])"#,
    );
    rename(&mut draft, &Part::point("lost", "spot"), "peak").unwrap();
    let lost = draft.pieces.iter().find(|p| p.name == "lost").unwrap();
    let points: Vec<(&str, &str)> = lost.points.iter().map(|p| (&*p.name, &*p.at)).collect();
    assert_eq!(points, [("peak", "(1 cm, 2 cm)"), ("next", "peak.down(1 cm)")]);
    assert_eq!(lost.marks[0].at, "peak");
}

/// A cut that starts at a corner needs no name for its start: a name that it has there all the same makes nothing.
#[test]
fn a_start_that_is_not_made_passes_as_it_is() {
    let mut draft = from_block(
        r#"(name: "left", of: "block", steps: [(name: "panel", does: cut(from: "ne", to: "hem", to_at: "1/2", keep: "centre", makes: "panel", start: "tip", end: "low"))],
            marks: [(name: "spot", kind: drill_hole, at: "tip.down(1 cm)")])"#,
    );
    let told = |draft: &Draft| -> Vec<_> { Engine::new().compute(draft).findings.iter().map(|f| f.code).collect() };
    assert_eq!(told(&draft), []);
    rename(&mut draft, &Part::point("block", "tip"), "peak").unwrap();
    let left = draft.pieces.iter().find(|p| p.name == "left").unwrap();
    assert_eq!(left.marks[0].at, "peak.down(1 cm)");
    assert_eq!(told(&draft), []);
}
