//! What may follow in a formula: names in the scope of the place, functions, the words of their arguments.

use tracewheel::compute::Trial;
use tracewheel::file;
use tracewheel::session::{Command, Completions, PartCommand, Work, completions, wants_name};

fn work() -> Work {
    let path = format!("{}/examples/bodice-sleeve.ron", env!("CARGO_MANIFEST_DIR"));
    Work::here(file::read(&std::fs::read_to_string(path).unwrap()).unwrap().draft)
}

fn offered(work: &Work, frame: Option<&str>, text: &str) -> Completions {
    let case = work.computed().model.as_ref().unwrap().plan.cases.base.unwrap();
    let at = text.find('|').unwrap();
    completions(work.computed(), frame, case, &text.replace('|', ""), at, false)
}

fn texts(of: &Completions) -> Vec<&str> {
    of.list.iter().map(|c| c.text.as_str()).collect()
}

#[test]
fn names_come_with_their_kind_and_value() {
    let work = work();
    let all = offered(&work, Some("front"), "bu|");
    assert_eq!(all.list[0].text, "bust");
    assert_eq!(all.list[0].about, "a length, 88 cm");
    assert!(texts(&all).contains(&"bust_ease"), "{all:?}");
    // The frame's own names need no prefix; from elsewhere they do.
    assert_eq!(texts(&offered(&work, Some("front"), "underar|"))[0], "underarm");
    let outside = offered(&work, None, "front.unde|");
    assert_eq!(texts(&outside), ["front.underarm"], "{outside:?}");
    assert_eq!(outside.list[0].about, "a point");
    let edge = offered(&work, None, "length(front.armh|");
    assert!(edge.list[0].text == "front.armhole" && edge.list[0].about == "an edge, 22.03 cm long", "{edge:?}");
    // The word is what is replaced, in the middle of a text too.
    let inside = offered(&work, Some("front"), "tip.down(bus| / 4)");
    assert_eq!(inside.span.unwrap().of("tip.down(bus / 4)"), "bus");
    // What is whole already is not offered, nor anything within a number.
    assert!(!texts(&offered(&work, None, "bust|")).contains(&"bust"));
    let mut numbered = Work::here((**work.draft()).clone());
    numbered.run(&Command::Part(PartCommand::AddValue("part_12".into(), "3 cm".into()))).unwrap();
    assert_eq!(texts(&offered(&numbered, None, "t_12|")), ["part_12"]);
    assert_eq!(offered(&numbered, None, "3 cm + 12|").list, []);
    assert_eq!(offered(&work, None, "|").list, []);
}

#[test]
fn functions_come_with_what_they_take_and_behind_a_point_only_those_that_take_one() {
    let work = work();
    let all = offered(&work, Some("front"), "on_w|");
    assert_eq!((all.list[0].text.as_str(), all.list[0].name.as_str()), ("on_way(", "on_way(from, to, place)"));
    assert!(all.list[0].about.ends_with('.'), "{all:?}");
    let point = offered(&work, Some("front"), "tip.d|");
    assert_eq!((point.list[0].text.as_str(), point.list[0].name.as_str()), ("tip.down(", "down(by)"));
    let edge = offered(&work, Some("front"), "armhole.a|");
    assert!(texts(&edge).contains(&"armhole.at(") && !texts(&edge).contains(&"armhole.abs("), "{edge:?}");
    let called = offered(&work, Some("front"), "tip.down(3 cm).ri|");
    assert_eq!(texts(&called)[0], ".right(");
    assert_eq!(called.span.unwrap().of("tip.down(3 cm).ri"), ".ri");
}

#[test]
fn words_of_arguments_are_offered_inside_the_brackets() {
    let work = work();
    let named = offered(&work, Some("front"), "cross(armhole, side, nea|");
    assert_eq!(texts(&named)[0], "nearest: ");
    assert_eq!(named.list[0].about, "of cross: a point");
    let sides = offered(&work, Some("front"), "cross(armhole, side, side: abo|");
    assert_eq!(texts(&sides)[0], "above");
    assert!(!texts(&offered(&work, Some("front"), "tip.down(nea|")).contains(&"nearest: "));
}

#[test]
fn what_has_parts_is_offered_as_a_step() {
    let work = work();
    let seams = offered(&work, None, "seam.front_a|");
    assert_eq!(texts(&seams)[0], "seam.front_armhole.");
    let members = offered(&work, None, "seam.front_armhole.d|");
    assert_eq!(texts(&members)[0], "seam.front_armhole.difference");
    assert_eq!(texts(&offered(&work, None, "fro|"))[0], "front.");
}

#[test]
fn a_name_is_wanted_after_a_sign_and_not_behind_something_whole() {
    for (head, wanted) in [
        ("", true),
        ("bust /", true),
        ("gap(", true),
        ("gap(tip, ", true),
        ("if(a < b and ", true),
        ("bust", false),
        ("bust / 4", false),
        ("gap(tip, neck)", false),
        ("sand", false),
    ] {
        assert_eq!(wants_name(head), wanted, "{head}");
    }
}

#[test]
fn every_name_that_is_offered_can_be_read_where_it_is_offered() {
    let work = work();
    let model = work.computed().model.as_ref().unwrap();
    for frame in [None, Some("front"), Some("sleeve")] {
        let trial = Trial::new(work.draft(), &model.plan);
        let known = trial.known(frame);
        assert!(known.len() > 60, "{}", known.len());
        for (name, node, kind) in known {
            let path: Vec<&str> = name.split('.').collect();
            // A whole piece is named by its bare name; all else is read as a formula would read it.
            if matches!(kind, tracewheel::language::Kind::Piece(_)) {
                continue;
            }
            let formula = trial.read(frame, &name, tracewheel::language::What::Any);
            // A point of another frame is no answer here, but a name that is understood.
            let understood = match formula {
                Ok(formula) => {
                    let given = trial.value(model, 0, &formula);
                    given.as_ref() == model.item(0, node)
                }
                Err(Some(finding)) => path.len() > 1 && !format!("{finding:?}").contains("NameUnknown"),
                Err(None) => false,
            };
            assert!(understood, "{name} in {frame:?}");
        }
    }
}

#[test]
fn names_of_the_place_itself_come_before_all_others() {
    let work = work();
    let plan = &work.computed().model.as_ref().unwrap().plan;
    let known = Trial::new(work.draft(), plan).known(Some("sleeve"));
    let own: Vec<bool> =
        known.iter().map(|(_, node, _)| plan.nodes[*node as usize].part.name.starts_with("sleeve.")).collect();
    assert!(own[0] && !own[own.len() - 1], "{known:?}");
    assert!(own.is_sorted_by(|a, b| a >= b), "{known:?}");
}
