//! Findings in stages, said of the pieces and steps that a person knows.

use super::{OWN, Typed, Whole};
use crate::base::{Code, Finding, Span};
use crate::texts::say;

impl Whole {
    /// What is wrong with steps, and what was found in the stages, said of the pieces and steps that a person knows.
    pub fn told(&self, findings: &mut Vec<Finding>) {
        if self.stages.is_empty() && self.findings.is_empty() && self.typed.is_empty() {
            return;
        }
        for finding in findings.iter_mut() {
            self.say(finding);
        }
        // What a step needs several times may fail several times, for one cause.
        let mut told: Vec<Finding> = Vec::new();
        findings.retain(|f| {
            let is_new = !f.place.name.contains(", step ") || !told.contains(f);
            if is_new {
                told.push(f.clone());
            }
            is_new
        });
        findings.splice(0..0, self.findings.iter().cloned());
    }

    fn say(&self, finding: &mut Finding) {
        let local = finding.place.name.split_once('.').map_or("", |(_, local)| local);
        let local = local.split(|c: char| !is_word(c)).next().unwrap_or_default().to_owned();
        let typed = self.typed.get(&(finding.place.piece.clone(), local.clone()));
        let is_own = |t: &str| t.contains(OWN);
        if typed.is_none() && !is_own(&finding.place.piece) && !is_own(&finding.place.name) && !is_own(&finding.formula)
        {
            return;
        }
        let mut step = None;
        match typed {
            // A formula of the program's own around one that was typed: only that one is shown.
            Some(Typed::Formula { text, before }) => {
                if let Some(span) = finding.span {
                    let (from, to) = (span.start.max(*before) - before, span.end.max(*before) - before);
                    finding.span = Some(Span::new(from.min(text.len()), to.min(text.len())));
                }
                // What follows there is the program's own: for a person the formula ends.
                if finding.code == Code::Unexpected && finding.span.is_some_and(|s| s.start >= text.len()) {
                    let found = finding.words.iter_mut().filter(|(name, _)| *name == "found");
                    found.for_each(|(_, word)| *word = say!("read-the-end"));
                }
                finding.formula.clone_from(text);
            }
            Some(Typed::Drawn(by)) => step = Some(by.clone()),
            // One of the program's own alone tells a person nothing.
            None if local.starts_with(OWN) => {
                finding.formula.clear();
                finding.span = None;
            }
            None => {}
        }
        let stage =
            finding.place.piece.split_once(OWN).map(|(piece, k)| (piece.to_owned(), k.parse::<usize>().unwrap_or(0)));
        let stage = match (stage, step) {
            (Some((name, k)), None) => Some((self.stage_step(&name, k), name)),
            (Some((name, _)), Some(step)) => Some((step, name)),
            (None, Some(step)) => Some((step, finding.place.piece.clone())),
            (None, None) => None,
        };
        if let Some((step, name)) = stage {
            finding.place.name = format!("{name}, step {step}");
            finding.place.piece = name;
        }
        let clean = |text: &mut String| *text = without_own(text);
        clean(&mut finding.formula);
        clean(&mut finding.place.name);
        clean(&mut finding.place.edge);
        for (_, word) in &mut finding.words {
            clean(word);
        }
        if finding.span.is_some_and(|s| s.end > finding.formula.len()) {
            finding.span = Some(Span::new(0, finding.formula.len()));
        }
    }

    /// The step that is done in a stage.
    fn stage_step(&self, piece: &str, k: usize) -> String {
        let name = format!("{piece}{OWN}{k}");
        self.stages.iter().find(|s| s.name == name).map_or_else(String::new, |s| s.note.clone())
    }
}

fn is_word(c: char) -> bool {
    c == '_' || c.is_alphanumeric()
}

/// A text without the program's own names: links in front of names, and what marks hidden points.
fn without_own(text: &str) -> String {
    if !text.contains(OWN) {
        return text.to_owned();
    }
    let mut out = String::new();
    let mut rest = text;
    while let Some(start) = rest.find(is_word) {
        out.push_str(&rest[..start]);
        rest = &rest[start..];
        let end = rest.find(|c: char| !is_word(c)).unwrap_or(rest.len());
        let (word, after) = rest.split_at(end);
        if word.contains(OWN) && after.starts_with('.') && after[1..].starts_with(is_word) {
            rest = &after[1..]; // a link or a stage
        } else {
            out.push_str(&word.replace(OWN, ""));
            rest = after;
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::without_own;

    #[test]
    fn own_names_are_not_shown() {
        assert_eq!(without_own("ǀfrontǀ1.tip.turned(ǀfrontǀ1.ǀdt, 3 deg)"), "tip.turned(dt, 3 deg)");
        assert_eq!(without_own("gap(a, b)"), "gap(a, b)");
        assert_eq!(without_own("frontǀ0.hem"), "hem");
    }
}
