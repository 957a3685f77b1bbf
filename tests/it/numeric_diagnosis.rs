//! Conflicts and effects.

use tracewheel::numeric::{Chosen, Ending, conflict, effect, settle};

use crate::numeric_systems::{Posed, judged};

fn conflict_of(posed: &Posed) -> (Vec<usize>, usize) {
    let mut calls = 0;
    let set = conflict(posed.count, &mut |chosen| {
        calls += 1;
        let mut all = posed.counted();
        settle(&posed.unknowns(), &mut Chosen::new(&mut all, chosen)).ending == Ending::True
    });
    (set, calls)
}

fn find(name: &str) -> Posed {
    judged().into_iter().find(|p| p.name == name).unwrap()
}

#[test]
fn conflicts_are_minimal() {
    for (name, expected) in [
        ("conflict of two", vec![0, 1]),
        ("conflict of three", vec![0, 1, 2]),
        ("conflict of five", vec![0, 1, 2, 3, 4]),
        // The second and the third circle are too far apart: hypot(140, 200) = 244 > 120 + 90.
        ("conflict, three circles", vec![1, 2]),
        // The limit is the other party.
        ("limit in the way, one", vec![0]),
        ("ring of three", vec![]),
        ("redundant, the sum", vec![]),
    ] {
        let posed = find(name);
        let (set, calls) = conflict_of(&posed);
        assert_eq!(set, expected, "{name}");
        assert!(calls <= 2 * posed.count, "{name}: {calls} calls");
    }
}

#[test]
fn bystanders_are_left_out() {
    // A set contradicts itself where it holds 1 and 4, or 2 and 4 and 5; the later equations stay.
    let mut solvable = |set: &[usize]| {
        let has = |e| set.contains(&e);
        !(has(1) && has(4) || has(2) && has(4) && has(5))
    };
    assert_eq!(conflict(7, &mut solvable), vec![2, 4, 5]);
    assert_eq!(conflict(0, &mut |_| true), Vec::<usize>::new());
}

#[test]
fn effect_is_the_largest_change_of_a_scale_step() {
    let rows = [1.0, 0.0, -4.0, 2.0, 0.0, 1e-11];
    assert_eq!(effect(&rows, 2, 3, &[10.0, 10.0, 0.5]), vec![20.0, 0.0, 2.0]);
    assert_eq!(effect(&[], 0, 2, &[1.0, 1.0]), vec![0.0, 0.0]);
}
