//! The cases in which a draft is computed: each size of the range, then each person.

use std::collections::BTreeSet;

use super::names::thing;
use crate::base::{Code, Finding};
use crate::document::{Axis, Chart, Draft, check_label};
use crate::language::nearest;
use crate::texts::say;

/// The most cases that are computed.
pub const MAX_CASES: usize = 4_000;

/// A (view, size address).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Case {
    /// Which view; 0 where the draft has none.
    pub view: u32,
    /// `set/girth/cup/length` with what is single left out, or the person's name.
    pub address: String,
    /// All parts of the address, also those left out.
    pub parts: Vec<String>,
    /// Place on the girth, cup and length axis.
    pub labels: [Option<u32>; 3],
    /// Which person, for a person's case.
    pub person: Option<u32>,
}

/// All cases in file order: the range first, persons after.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cases {
    /// The cases.
    pub list: Vec<Case>,
    /// How many of them are sizes of the range.
    pub range: usize,
    /// Which one is the base, if the range has any.
    pub base: Option<usize>,
}

/// Why a size could not be found.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CaseError {
    /// None of this name.
    #[error("{}", say!("case-unknown", asked, hint = hint_in_sentence(hint.as_deref()), known))]
    Unknown {
        /// What was asked for.
        asked: String,
        /// The nearest one.
        hint: Option<String>,
        /// All of them, in short.
        known: String,
    },
    /// No view of this name.
    #[error("{}", unknown_view(asked, hint.as_deref(), known))]
    UnknownView {
        /// What was asked for.
        asked: String,
        /// The nearest one.
        hint: Option<String>,
        /// All of them; none where the draft has no views.
        known: Vec<String>,
    },
    /// More than one.
    #[error("{}", say!("case-ambiguous", asked, choices = choices.join(", ")))]
    Ambiguous {
        /// What was asked for.
        asked: String,
        /// What it could be.
        choices: Vec<String>,
    },
}

fn hint_in_sentence(hint: Option<&str>) -> String {
    hint.map_or(String::new(), |name| say!("case-hint", name))
}

fn unknown_view(asked: &str, hint: Option<&str>, known: &[String]) -> String {
    if known.is_empty() {
        return say!("case-no-views", asked);
    }
    let hint = hint_in_sentence(hint);
    say!("case-unknown-view", asked, hint, known = known.join(", "))
}

/// Labels of an axis.
pub(super) fn labels(chart: &Chart, axis: Axis) -> &[String] {
    chart.labels(axis)
}

/// The axis as a person reads it.
pub(super) fn axis_said(axis: Axis) -> String {
    match axis {
        Axis::Girth => say!("case-axis-girth"),
        Axis::Cup => say!("case-axis-cup"),
        Axis::Length => say!("case-axis-length"),
    }
}

pub(super) const AXES: [Axis; 3] = Axis::ALL;

impl Cases {
    /// The cases of a draft, with what is wrong with its sizes.
    pub fn of(draft: &Draft, findings: &mut Vec<Finding>) -> Self {
        let chart = &draft.chart;
        for axis in AXES {
            let mut seen = BTreeSet::new();
            for label in labels(chart, axis) {
                if check_label(label).is_err() {
                    let problem = say!("case-label");
                    findings.push(
                        Finding::new(Code::NameBad)
                            .at("chart")
                            .word("name", format!("`{label}`"))
                            .word("problem", problem),
                    );
                }
                if !seen.insert(label) {
                    findings.push(
                        Finding::new(Code::SizeTwice).at("chart").word("name", label).word("axis", axis_said(axis)),
                    );
                }
            }
        }
        let mut cases = Self::default();
        cases.add_range(chart, findings);
        if cases.list.is_empty() && chart.persons.is_empty() {
            findings.push(Finding::new(Code::NoSizes).at("chart"));
        }
        cases.range = cases.list.len();
        cases.base = cases.find_base(chart, findings);
        for (i, person) in chart.persons.iter().enumerate() {
            let taken = cases.list.iter().any(|c| c.address == person.name);
            if taken || check_label(&person.name).is_err() {
                let problem = if taken { say!("case-taken") } else { say!("case-person-name") };
                findings.push(
                    Finding::new(Code::NameBad)
                        .at(format!("person {}", person.name))
                        .word("name", format!("`{}`", person.name))
                        .word("problem", problem),
                );
                continue;
            }
            cases.list.push(Case {
                view: 0,
                address: person.name.clone(),
                parts: vec![person.name.clone()],
                labels: [None; 3],
                person: Some(i as u32),
            });
        }
        cases
    }

    fn add_range(&mut self, chart: &Chart, findings: &mut Vec<Finding>) {
        let whole = [crate::document::SizeSet::default()];
        let sets = if chart.sets.is_empty() { &whole[..] } else { &chart.sets[..] };
        for set in sets {
            let chosen = [(Axis::Girth, &set.girth), (Axis::Cup, &set.cup), (Axis::Length, &set.length)].map(
                |(axis, wanted)| {
                    let all = labels(chart, axis);
                    let places = |l: &String| match all.iter().position(|a| a == l) {
                        Some(i) => Some(i as u32),
                        None => {
                            findings.push(part_unknown("size", l, all).at(format!("size set {}", set.name)));
                            None
                        }
                    };
                    match (all.is_empty(), wanted.is_empty()) {
                        (true, _) => vec![None],
                        (false, true) => (0..all.len() as u32).map(Some).collect(),
                        (false, false) => wanted.iter().filter_map(places).map(Some).collect::<Vec<_>>(),
                    }
                },
            );
            if chosen.iter().all(|c| c == &[None]) {
                continue;
            }
            if self.list.len() + chosen.iter().map(Vec::len).product::<usize>() > MAX_CASES {
                findings.push(
                    Finding::new(Code::PartMissing)
                        .at("chart")
                        .word("problem", say!("case-too-many", most = MAX_CASES)),
                );
                return;
            }
            for &girth in &chosen[0] {
                for &cup in &chosen[1] {
                    for &length in &chosen[2] {
                        let places = [girth, cup, length];
                        let names: Vec<(bool, &str)> = AXES
                            .iter()
                            .zip(places)
                            .zip(&chosen)
                            .filter_map(|((axis, i), all)| {
                                Some((all.len() > 1, labels(chart, *axis).get(i? as usize)?.as_str()))
                            })
                            .collect();
                        let mut parts = Vec::new();
                        let mut address = Vec::new();
                        if sets.len() > 1 {
                            parts.push(set.name.clone());
                            address.push(set.name.as_str());
                        }
                        parts.extend(names.iter().map(|(_, n)| (*n).to_owned()));
                        address.extend(names.iter().filter(|(many, _)| *many).map(|(_, n)| *n));
                        if address.is_empty() || (sets.len() > 1 && address.len() == 1 && names.iter().all(|n| !n.0)) {
                            address.extend(names.first().map(|(_, n)| *n));
                        }
                        self.list.push(Case {
                            view: 0,
                            address: address.join("/"),
                            parts,
                            labels: places,
                            person: None,
                        });
                    }
                }
            }
        }
    }

    fn find_base(&self, chart: &Chart, findings: &mut Vec<Finding>) -> Option<usize> {
        if self.range == 0 {
            return None;
        }
        if chart.base.is_empty() {
            return Some(0);
        }
        let found = self.find(&chart.base).ok().filter(|i| *i < self.range);
        if found.is_none() {
            let near = nearest(&chart.base, self.list[..self.range].iter().map(|c| c.address.as_str()));
            findings.push(
                Finding::new(Code::BaseUnknown)
                    .at("chart")
                    .word("name", format!("`{}`", chart.base))
                    .word("hint", near.map_or(String::new(), |n| say!("did-you-mean", name = n))),
            );
        }
        Some(found.unwrap_or(0))
    }

    /// The size of the range that is called so in a formula, or why there is none.
    pub(super) fn of_range(&self, asked: &str) -> Result<usize, String> {
        match self.find(asked) {
            Ok(i) if i < self.range => Ok(i),
            Ok(_) => Err(say!("case-is-person", asked)),
            Err(CaseError::Unknown { asked, hint, .. }) => {
                let hint = hint.map_or(String::new(), |h| say!("case-hint-quoted", name = h));
                Err(say!("case-no-size", asked, hint))
            }
            Err(CaseError::UnknownView { asked, .. }) => Err(say!("case-is-no-size", asked)),
            Err(CaseError::Ambiguous { asked, choices }) => {
                let choices = choices.into_iter().reduce(|first, last| say!("either", first, last));
                Err(say!("case-could-be", asked, choices = choices.unwrap_or_default()))
            }
        }
    }

    /// The case that is asked for by its address, or by enough parts of it to say which.
    pub fn find(&self, asked: &str) -> Result<usize, CaseError> {
        if let Some(i) = self.list.iter().position(|c| c.address == asked) {
            return Ok(i);
        }
        let wanted: Vec<&str> = asked.split('/').map(str::trim).collect();
        let fits = |case: &Case| {
            let mut parts = case.parts.iter();
            wanted.iter().all(|w| parts.any(|p| p == w))
        };
        let found: Vec<usize> = (0..self.list.len()).filter(|i| fits(&self.list[*i])).collect();
        match found.as_slice() {
            [one] => Ok(*one),
            [] => {
                let all: Vec<&str> = self.list.iter().map(|c| c.address.as_str()).collect();
                let known = if all.len() > 20 {
                    format!("{} … {}", all[..10].join(", "), all[all.len() - 1])
                } else {
                    all.join(", ")
                };
                let hint = nearest(asked, all.iter().copied()).map(str::to_owned);
                Err(CaseError::Unknown { asked: asked.chars().take(60).collect(), hint, known })
            }
            many => Err(CaseError::Ambiguous {
                asked: asked.to_owned(),
                choices: many.iter().take(12).map(|i| self.list[*i].address.clone()).collect(),
            }),
        }
    }
}

/// A part names something that is not there.
pub(super) fn part_unknown<'a, T: AsRef<str> + 'a>(
    what: &str,
    name: &str,
    known: impl IntoIterator<Item = &'a T>,
) -> Finding {
    let near = nearest(name, known.into_iter().map(AsRef::as_ref));
    Finding::new(Code::PartUnknown)
        .word("what", thing(what))
        .word("name", format!("`{name}`"))
        .word("hint", near.map_or(String::new(), |n| say!("did-you-mean", name = n)))
}
