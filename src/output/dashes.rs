//! The line of each size: told apart in black and white.

use kurbo::{BezPath, ParamCurveArclen};

/// Repeats of a pattern by which it is known.
const KNOWN: f64 = 2.0;
/// Accuracy of lengths, mm.
const ACCURACY: f64 = 0.1;

/// The dash pattern of the `i`th size, mm: solid, long, short, then dashes with one dot more each time. More than six in a
/// file are not for cutting: their patterns are as long as they need be to differ.
pub fn dashes(i: usize) -> Vec<f64> {
    match i {
        0 => Vec::new(),
        1 => vec![6.0, 2.0],
        2 => vec![2.0, 2.0],
        3 => vec![6.0, 1.5, 0.8, 1.5],
        4 => vec![4.5, 1.3, 0.8, 1.3, 0.8, 1.3],
        5 => vec![3.5, 1.2, 0.8, 1.2, 0.8, 1.2, 0.8, 1.2],
        _ => [9.0, 1.5].into_iter().chain([1.0, 1.5].into_iter().cycle().take(2 * (i - 2))).collect(),
    }
}

/// The pattern of a line inside a piece: that of its size, unless the line is too short to show it. Strokes of signs stay whole.
pub fn inner_dashes<'a>(line: &BezPath, own: &'a [f64]) -> &'a [f64] {
    let needed = KNOWN * own.iter().sum::<f64>();
    let long: f64 = line.segments().map(|s| s.arclen(ACCURACY)).sum();
    if long >= needed { own } else { &[] }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A pattern repeats after this much at most, mm: so every stretch as long as a fingernail shows its size.
    const MOST_REPEAT: f64 = 12.0;

    #[test]
    fn long_lines_within_a_piece_show_their_size_and_strokes_of_signs_do_not() {
        let line = |long: f64| {
            BezPath::from_vec(vec![kurbo::PathEl::MoveTo((0.0, 0.0).into()), kurbo::PathEl::LineTo((long, 0.0).into())])
        };
        for own in (1..8).map(dashes) {
            assert_eq!(inner_dashes(&line(60.0), &own), own);
            assert!(inner_dashes(&line(5.0), &own).is_empty());
        }
        assert!(inner_dashes(&line(60.0), &[]).is_empty());
    }

    #[test]
    fn patterns_differ_and_repeat_soon() {
        let all: Vec<Vec<f64>> = (0..6).map(dashes).collect();
        for (i, a) in all.iter().enumerate() {
            assert!(a.iter().sum::<f64>() <= MOST_REPEAT, "{a:?}");
            assert!(a.len() % 2 == 0);
            assert!(!all[..i].contains(a));
        }
        let many: std::collections::BTreeSet<String> = (0..40).map(|i| format!("{:?}", dashes(i))).collect();
        assert_eq!(many.len(), 40);
    }
}
