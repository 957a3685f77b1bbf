//! Things that have another name and are else the same.
//!
//! Likely, not certain: what went and what came are taken for one if they are of one kind, all their numbers, places and lines are equal in every size,
//! and nothing else could be meant.

use std::collections::{BTreeMap, BTreeSet};

use super::facts::{Fact, Facts, PartFacts, Typed};
use super::{Got, differ};
use crate::document::Part;

/// Names of the new draft with those of the old one.
#[derive(Debug, Default)]
pub(super) struct Names {
    /// Pieces and drawings: new to old.
    frames: BTreeMap<String, String>,
    /// Other parts, with the new name of their piece: new to old.
    parts: BTreeMap<Part, Part>,
    /// What is written in formulas: old to new; with the piece in which it may be written short.
    written: BTreeMap<(Option<String>, String), String>,
}

impl Names {
    /// Looks for them.
    pub fn find(was: &Facts, is: &Facts) -> Self {
        let mut names = Self::default();
        names.find_frames(was, is);
        let went: Vec<&PartFacts> =
            was.parts.iter().filter(|p| is.place(&names.in_new_frame(&p.part)).is_none()).collect();
        let came: Vec<&PartFacts> = is.parts.iter().filter(|p| was.place(&names.before(&p.part)).is_none()).collect();
        let like = |old: &PartFacts, new: &PartFacts| {
            let at = names.in_new_frame(&old.part);
            std::mem::discriminant(&at) == std::mem::discriminant(&new.part)
                && at.renamed("") == new.part.renamed("")
                && !new.part.name().is_empty()
                && is_equal(old, new)
        };
        for (old, new) in only_mates(&went, &came, &like) {
            names.parts.insert(new.part.clone(), old.part.clone());
            let frame = new.part.frame().map(str::to_owned);
            names.written.insert((frame, old.part.name().to_owned()), new.part.name().to_owned());
        }
        names
    }

    /// Pieces and drawings whose parts have the same names and are the same.
    fn find_frames(&mut self, was: &Facts, is: &Facts) {
        let frames = |facts: &Facts, other: &Facts| -> Vec<Part> {
            let is_alone =
                |p: &&PartFacts| matches!(p.part, Part::Piece(_) | Part::Drawing(_)) && other.place(&p.part).is_none();
            facts.parts.iter().filter(is_alone).map(|p| p.part.clone()).collect()
        };
        let inner = |facts: &Facts, frame: &str| -> Vec<Part> {
            let is_in = |p: &&PartFacts| matches!(&p.part, Part::Inner(f, ..) if f == frame);
            facts.parts.iter().filter(is_in).map(|p| p.part.clone()).collect()
        };
        let (went, came) = (frames(was, is), frames(is, was));
        let like = |old: &Part, new: &Part| {
            let (a, b) = (inner(was, old.name()), inner(is, new.name()));
            let mate = |part: &Part| match part {
                Part::Inner(_, inner, name) => Part::Inner(new.name().to_owned(), *inner, name.clone()),
                other => other.clone(),
            };
            std::mem::discriminant(old) == std::mem::discriminant(new)
                && !a.is_empty()
                && a.len() == b.len()
                && a.iter().all(|part| {
                    let mates = was.place(part).zip(is.place(&mate(part)));
                    mates.is_some_and(|(i, k)| is_equal(&was.parts[i], &is.parts[k]) || has_no_numbers(&was.parts[i]))
                })
        };
        let (went, came): (Vec<&Part>, Vec<&Part>) = (went.iter().collect(), came.iter().collect());
        for (old, new) in only_mates(&went, &came, &like) {
            self.frames.insert(new.name().to_owned(), old.name().to_owned());
            self.parts.insert(new.clone(), old.clone());
            self.written.insert((None, old.name().to_owned()), new.name().to_owned());
        }
    }

    /// What a piece or drawing was called.
    pub fn frame_before<'a>(&'a self, frame: &'a str) -> &'a str {
        self.frames.get(frame).map_or(frame, String::as_str)
    }

    /// What a piece or drawing is called now.
    pub fn frame_after<'a>(&'a self, frame: &'a str) -> &'a str {
        self.frames.iter().find(|(_, old)| *old == frame).map_or(frame, |(new, _)| new.as_str())
    }

    /// A part of the old draft, by the new name of its piece.
    pub fn in_new_frame(&self, part: &Part) -> Part {
        match part {
            Part::Inner(frame, inner, name) => Part::Inner(self.frame_after(frame).to_owned(), *inner, name.clone()),
            Part::Piece(frame) => Part::Piece(self.frame_after(frame).to_owned()),
            Part::Drawing(frame) => Part::Drawing(self.frame_after(frame).to_owned()),
            other => other.clone(),
        }
    }

    /// The part of the old draft that a part of the new one was.
    pub fn before(&self, part: &Part) -> Part {
        if let Some(before) = self.parts.get(part) {
            return before.clone();
        }
        match part {
            Part::Inner(frame, inner, name) => Part::Inner(self.frame_before(frame).to_owned(), *inner, name.clone()),
            other => other.clone(),
        }
    }

    /// A text of the old draft with the new names in it.
    pub fn followed(&self, old: &Typed, frame: Option<&str>) -> String {
        if old.is_formula { self.follow(&old.text, frame) } else { old.text.clone() }
    }

    /// The same for any text: whole names, also behind that of their piece; not within quotes. `frame`: the piece, by its new name, in which short names are
    /// meant.
    pub fn follow(&self, text: &str, frame: Option<&str>) -> String {
        if self.written.is_empty() {
            return text.to_owned();
        }
        let of = |frame: Option<&str>, name: &str| self.written.get(&(frame.map(str::to_owned), name.to_owned()));
        let mut out = String::new();
        let mut rest = text;
        // The piece behind whose name and point the next name stands.
        let mut behind: Option<String> = None;
        while let Some(c) = rest.chars().next() {
            if c == '"' {
                let end = rest[1..].find('"').map_or(rest.len(), |i| i + 2);
                out.push_str(&rest[..end]);
                rest = &rest[end..];
            } else if c.is_alphabetic() || c == '_' {
                let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
                let name = &rest[..end];
                let new = match &behind {
                    Some(piece) => of(Some(piece), name),
                    None => frame.and_then(|f| of(Some(f), name)).or_else(|| of(None, name)),
                };
                let new = new.map_or(name, String::as_str);
                out.push_str(new);
                rest = &rest[end..];
                behind = rest.starts_with('.').then(|| new.to_owned());
            } else {
                if c != '.' {
                    behind = None;
                }
                out.push(c);
                rest = &rest[c.len_utf8()..];
            }
        }
        out
    }
}

/// Pairs of which each has no other mate.
fn only_mates<'a, T>(went: &[&'a T], came: &[&'a T], like: &dyn Fn(&T, &T) -> bool) -> Vec<(&'a T, &'a T)> {
    let pairs: Vec<(usize, usize)> = (0..went.len())
        .flat_map(|i| (0..came.len()).map(move |k| (i, k)))
        .filter(|(i, k)| like(went[*i], came[*k]))
        .collect();
    let twice = |of: &dyn Fn(&(usize, usize)) -> usize| -> BTreeSet<usize> {
        let mut seen = BTreeSet::new();
        pairs.iter().map(of).filter(|i| !seen.insert(*i)).collect()
    };
    let (left, right) = (twice(&|p| p.0), twice(&|p| p.1));
    let alone = pairs.iter().filter(|(i, k)| !left.contains(i) && !right.contains(k));
    alone.map(|(i, k)| (went[*i], came[*k])).collect()
}

fn numbers(part: &PartFacts) -> impl Iterator<Item = &Fact> {
    part.facts.iter().filter(|f| f.by_size)
}

fn has_no_numbers(part: &PartFacts) -> bool {
    numbers(part).next().is_none()
}

/// Whether all that goes by size is equal, and there is something.
fn is_equal(old: &PartFacts, new: &PartFacts) -> bool {
    let value = |got: &Got| match got {
        Got::Is(thing) => Some(thing.clone()),
        _ => None,
    };
    let same = |a: &Fact, b: &Fact| {
        a.what == b.what
            && a.values.len() == b.values.len()
            && a.values.iter().zip(&b.values).all(|(a, b)| match (value(a), value(b)) {
                (Some(a), Some(b)) => differ(&Ok(a), &Ok(b)).is_none(),
                _ => false,
            })
    };
    !has_no_numbers(old)
        && numbers(old).count() == numbers(new).count()
        && numbers(old).zip(numbers(new)).all(|(a, b)| same(a, b))
}
