//! The nearest right spelling of a word.

/// The candidate that differs least from `word`, if it is near enough to be meant.
pub(super) fn nearest<'a>(word: &str, candidates: &[&'a str]) -> Option<&'a str> {
    let plain = |text: &str| text.to_lowercase().replace('-', "_");
    let word = plain(word);
    let letters = word.chars().count();
    if letters > 40 {
        return None;
    }
    let allowed = if letters <= 3 { 1 } else { 2 };
    candidates
        .iter()
        .map(|candidate| (steps(&word, &plain(candidate)), *candidate))
        .filter(|(steps, _)| *steps <= allowed)
        .min_by_key(|(steps, _)| *steps)
        .map(|(_, candidate)| candidate)
}

/// How many letters must be put in, taken out, replaced or exchanged with their neighbour to make `a` of `b`
/// (optimal string alignment).
fn steps(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut before: Vec<usize> = Vec::new();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for i in 1..=a.len() {
        let mut next = vec![i];
        for j in 1..=b.len() {
            let same = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (row[j] + 1).min(next[j - 1] + 1).min(row[j - 1] + same);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(before[j - 2] + 1);
            }
            next.push(least);
        }
        before = std::mem::replace(&mut row, next);
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::{nearest, steps};

    #[test]
    fn counts_steps() {
        let counted =
            [("", "", 0), ("edgs", "edges", 1), ("egdes", "edges", 1), ("edge", "edges", 1), ("abc", "xyz", 3)];
        for (a, b, expected) in counted {
            assert_eq!((steps(a, b), steps(b, a)), (expected, expected), "{a} {b}");
        }
    }

    #[test]
    fn proposes_only_what_is_near() {
        assert_eq!(nearest("smooth-at", &["from", "smooth_at"]), Some("smooth_at"));
        assert_eq!(nearest("Edges", &["edges"]), Some("edges"));
        assert_eq!(nearest("hem", &["name", "edges"]), None);
    }
}
