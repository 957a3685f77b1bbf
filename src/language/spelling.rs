//! Which known word a misspelled one is nearest to.

/// The nearest of `known` to `word`, if it is near enough to be meant: a third of its letters may differ.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let known: Vec<&str> = known.into_iter().collect();
    if let Ok(number) = word.parse::<f64>() {
        // Sizes that are numbers are near as numbers, not as letters.
        let away = |k: &&str| k.parse::<f64>().map_or(f64::INFINITY, |v| (v - number).abs());
        let near = known.iter().copied().min_by(|a, b| away(a).total_cmp(&away(b)));
        return near.filter(|k| away(k).is_finite());
    }
    let letters: Vec<char> = word.to_lowercase().chars().collect();
    if letters.len() > 64 {
        return None;
    }
    let most = (letters.len() / 3).max(1);
    let mut best: Option<(usize, &str)> = None;
    for candidate in known {
        let distance = steps(&letters, &candidate.to_lowercase().chars().collect::<Vec<_>>());
        if distance <= most && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, word)| word)
}

/// How many letters must be put in, taken out, changed or swapped with their neighbour.
fn steps(a: &[char], b: &[char]) -> usize {
    if a.len().abs_diff(b.len()) > a.len().max(b.len()) / 2 + 1 {
        return usize::MAX;
    }
    let width = b.len() + 1;
    let mut rows = vec![vec![0usize; width]; a.len() + 1];
    for (i, row) in rows.iter_mut().enumerate() {
        row[0] = i;
    }
    for (j, cell) in rows[0].iter_mut().enumerate() {
        *cell = j;
    }
    for i in 1..=a.len() {
        for j in 1..=b.len() {
            let change = usize::from(a[i - 1] != b[j - 1]);
            let mut best = (rows[i - 1][j] + 1).min(rows[i][j - 1] + 1).min(rows[i - 1][j - 1] + change);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                best = best.min(rows[i - 2][j - 2] + 1);
            }
            rows[i][j] = best;
        }
    }
    rows[a.len()][b.len()]
}
