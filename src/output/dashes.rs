//! The line of each size: told apart in black and white.

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

#[cfg(test)]
mod tests {
    use super::*;

    /// A pattern repeats after this much at most, mm: so every stretch as long as a fingernail shows its size.
    const MOST_REPEAT: f64 = 12.0;

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
