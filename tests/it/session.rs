//! Scripts of commands without a window: after every step what was computed is what is computed from nothing, undoing
//! everything gives the first draft back, and every draft on the way is saved and opened unchanged.

use std::sync::Arc;

use tracewheel::compute::Engine;
use tracewheel::document::{Address, Axis, Draft, Inner, Part, RowKind};
use tracewheel::file;
use tracewheel::proof::proof;
use tracewheel::session::{
    ChartCommand, Command, Deletion, Grip, NewSize, PartCommand, PieceCommand, Reach, TextCommand, Work, inner_parts,
};

use crate::seeds::generate;

struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % n.max(1)
    }
    fn one<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len())]
    }
}

/// A command that may or may not be possible.
fn command(draft: &Draft, dice: &mut Dice, step: usize) -> Command {
    let fresh = format!("new_{step}");
    let piece = dice.one(&draft.pieces).clone();
    let points: Vec<Part> =
        inner_parts(draft, &piece.name).into_iter().filter(|p| matches!(p, Part::Inner(_, Inner::Point, _))).collect();
    match dice.below(17) {
        0 => {
            let value = dice.one(&draft.values).clone();
            let field = if value.is_found() { "start" } else { "is" };
            let text = format!("{} cm", 1 + dice.below(40));
            Command::Text(TextCommand::Set(Address::new(Part::Value(value.name), field), text))
        }
        1 => {
            let row = dice.one(&draft.chart.rows).name.clone();
            let label = dice.one(&draft.chart.girth).clone();
            Command::Chart(ChartCommand::Cell(row, label, format!("{} cm", 40 + dice.below(80))))
        }
        2 => Command::Chart(ChartCommand::AddSize(NewSize {
            label: format!("size {step}"),
            axis: Axis::Girth,
            between: None,
            cells: Vec::new(),
        })),
        3 => Command::Chart(ChartCommand::AddRow(fresh, RowKind::House)),
        4 => Command::Chart(ChartCommand::AddPerson(format!("somebody {step}"))),
        5 => Command::Part(PartCommand::AddValue(fresh, "3 cm + nowhere".into())),
        6 => {
            let first = points.first().map_or("(0 cm, 0 cm)".to_owned(), |p| format!("{}.down(3 cm)", p.name()));
            Command::Piece(PieceCommand::AddPoint(piece.name.clone(), fresh, first))
        }
        7 => {
            let part = dice.one(&points).clone();
            Command::Part(PartCommand::Rename(part, fresh))
        }
        8 => {
            let value = dice.one(&draft.values).name.clone();
            Command::Part(PartCommand::Rename(Part::Value(value), fresh))
        }
        9 => {
            let row = dice.one(&draft.chart.rows).name.clone();
            Command::Part(PartCommand::Delete(Part::Row(row), Deletion::PutValue))
        }
        10 => {
            let part = dice.one(&points).clone();
            let how = if dice.below(2) == 0 { Deletion::IfUnused } else { Deletion::LeaveBroken };
            Command::Part(PartCommand::Delete(part, how))
        }
        11 => {
            let edge = dice.one(&piece.edges);
            let bend = dice.below(2) == 0;
            Command::Piece(PieceCommand::Bend(piece.name.clone(), edge.name.clone(), 0, bend))
        }
        14 => Command::Chart(ChartCommand::PlaceRow(dice.one(&draft.chart.rows).name.clone(), dice.below(4))),
        15 => {
            let label = dice.one(&draft.chart.girth).clone();
            Command::Chart(ChartCommand::PlaceSize(Axis::Girth, label, dice.below(4)))
        }
        16 => {
            let row = dice.one(&draft.chart.rows).name.clone();
            let by = if dice.below(2) == 0 { vec![Axis::Girth] } else { Vec::new() };
            Command::Chart(ChartCommand::By(row, by))
        }
        12 => Command::Chart(ChartCommand::DeleteSize(Axis::Girth, dice.one(&draft.chart.girth).clone())),
        _ => {
            let part = dice.one(&points).clone();
            let wrong = *dice.one(&["(", "bust +", "(0 cm, 3 deg)", "nothing.down(2 cm)", ""]);
            Command::Text(TextCommand::Set(Address::new(part, "at"), wrong.into()))
        }
    }
}

/// What was computed equals what is computed from nothing.
fn check(work: &Work, what: &str) {
    let draft = work.draft();
    let computed = work.computed();
    assert!(work.is_up_to_date(), "{what}");
    let model = Engine::new().compute(draft);
    let now = computed.model.as_ref().unwrap();
    assert_eq!(now.cases.len(), model.cases.len(), "{what}");
    for (a, b) in now.cases.iter().zip(&model.cases) {
        assert_eq!(a.slots, b.slots, "{what}");
        assert_eq!(a.untrue, b.untrue, "{what}");
    }
    assert_eq!(computed.findings, proof(draft, &model), "{what}");
    let text = file::write(draft);
    let again = file::read(&text).unwrap().draft;
    assert_eq!(file::write(&again), text, "{what}");
}

#[test]
fn after_every_command_the_model_is_the_one_from_scratch() {
    let (mut done, mut refused) = (0, 0);
    for seed in 1..=8u64 {
        let options = generate::Options { seed, pieces: 2, points: 7, sizes: 4, found: 2, ..Default::default() };
        let first = generate::draft(&options);
        let mut work = Work::here(first.clone());
        let mut dice = Dice(seed);
        let mut steps = 0;
        for step in 0..48 {
            let before = Arc::clone(work.draft());
            let command = command(&before, &mut dice, step);
            match work.run(&command) {
                Ok(_) => {
                    done += 1;
                    steps += usize::from(!Arc::ptr_eq(&before, work.draft()));
                }
                Err(problem) => {
                    refused += 1;
                    assert!(!problem.to_string().is_empty());
                    assert!(Arc::ptr_eq(&before, work.draft()), "seed {seed}: all or nothing");
                }
            }
            check(&work, &format!("seed {seed}, step {step}: {command:?}"));
        }
        let last = Arc::clone(work.draft());
        let mut undone = 0;
        while work.undo().is_some() {
            undone += 1;
        }
        assert_eq!(undone, steps, "seed {seed}: one command is one step");
        assert_eq!(**work.draft(), first, "seed {seed}");
        check(&work, "all undone");
        while work.redo().is_some() {}
        assert!(Arc::ptr_eq(work.draft(), &last), "seed {seed}: redone to the very same draft");
        check(&work, "all redone");
    }
    assert!(done > 200 && refused > 20, "{done} done, {refused} refused");
}

#[test]
fn pulls_go_where_they_are_told_and_back() {
    for seed in 1..=6u64 {
        let options = generate::Options { seed, pieces: 2, points: 8, sizes: 4, found: 2, ..Default::default() };
        let first = generate::draft(&options);
        let mut work = Work::here(first.clone());
        let mut dice = Dice(seed);
        let mut pulled = 0;
        for _ in 0..30 {
            let piece = dice.one(&work.draft().pieces).name.clone();
            let parts = inner_parts(work.draft(), &piece);
            let points: Vec<&Part> = parts.iter().filter(|p| matches!(p, Part::Inner(_, Inner::Point, _))).collect();
            let at = Address::new((*dice.one(&points)).clone(), "at");
            let case = dice.below(4);
            let computed = Arc::clone(work.computed());
            let before = Arc::clone(work.draft());
            let Ok(grip) = Grip::take(&before, &computed, &at, case) else { continue };
            let reach = *dice.one(&[Reach::All, Reach::One, Reach::FromHereUp]);
            let loose = dice.below(3) == 0;
            let way = kurbo::Vec2::new(dice.below(60) as f64 - 30.0, dice.below(60) as f64 - 30.0);
            let Ok(pull) = grip.pulled(&computed, way, reach, loose) else {
                assert!(grip.held_by().is_some() && !loose, "only what no number moves is refused");
                continue;
            };
            // The same pull twice is the pull; the way back is no pull at all.
            work.begin("pull");
            for part in [0.3, 0.7, 1.0, 1.0] {
                let pull = grip.pulled(&computed, way * part, reach, loose).unwrap();
                work.run(&Command::Pull(Box::new(pull))).unwrap();
                check(&work, &format!("seed {seed}"));
            }
            work.finish();
            if Arc::ptr_eq(work.draft(), &before) {
                continue; // too short a way for any step
            }
            let after = file::write(work.draft());
            work.undo();
            assert!(Arc::ptr_eq(work.draft(), &before));
            work.run(&Command::Pull(Box::new(pull))).unwrap();
            assert_eq!(file::write(work.draft()), after, "seed {seed}: by steps or at once");
            work.begin("pull");
            let Ok(grip) = Grip::take(work.draft(), &Arc::clone(work.computed()), &at, case) else { continue };
            let computed = Arc::clone(work.computed());
            for way in [way, kurbo::Vec2::ZERO] {
                if let Ok(pull) = grip.pulled(&computed, way, Reach::All, false) {
                    work.run(&Command::Pull(Box::new(pull))).unwrap();
                }
            }
            assert_eq!(file::write(work.draft()), after, "seed {seed}: back at the start of the pull");
            work.finish();
            pulled += 1;
        }
        assert!(pulled > 5, "seed {seed}: {pulled}");
    }
}

#[test]
fn a_pull_in_one_size_leaves_the_others_where_they_are() {
    let draft = file::read(&std::fs::read_to_string("examples/bodice-sleeve.ron").unwrap()).unwrap().draft;
    let mut work = Work::here(draft);
    let at = Address::new(Part::point("back", "pitch"), "at");
    let place = |work: &Work, case: usize| {
        let model = work.computed().model.as_ref().unwrap().clone();
        let p = model.item(case, model.plan.node_named("back.pitch").unwrap()).unwrap().point().unwrap();
        kurbo::Point::new(p.x, p.y)
    };
    let before: Vec<_> = (0..22).map(|c| place(&work, c)).collect();
    // The fifth size, and from there on a person.
    for (case, reach, moves) in
        [(4, Reach::One, vec![4]), (15, Reach::One, vec![15]), (9, Reach::FromHereUp, vec![9, 10, 11])]
    {
        let start = Arc::clone(work.draft());
        let computed = Arc::clone(work.computed());
        let grip = Grip::take(work.draft(), &computed, &at, case).unwrap();
        let way = kurbo::Vec2::new(6.0, -9.0);
        let pull = grip.pulled(&computed, way, reach, false).unwrap();
        assert!(work.run(&Command::Pull(Box::new(pull))).unwrap().contains("house row"));
        for (i, was) in before.iter().enumerate() {
            let moved = place(&work, i) - *was;
            let wanted = if moves.contains(&i) { way } else { kurbo::Vec2::ZERO };
            // Numbers are written to the step that moves a point by less than 0.1 mm; sizes beyond have other lengths.
            let near = if i == case || !moves.contains(&i) { 0.1 } else { 1.5 };
            assert!((moved - wanted).hypot() < near, "case {i} pulled in {case}: {moved:?}");
        }
        work.undo();
        assert!(Arc::ptr_eq(work.draft(), &start));
    }
}
