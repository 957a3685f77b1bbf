//! Where a garment can hurt: the usual cautions, by who is to wear it.
//!
//! A caution never says that a garment is safe, and never that it keeps to a rule: it names the rule, the numbers of the draft beside those
//! of the rule, and what was not looked at. Who decides is somebody else. So a caution is a warning that cannot be silenced: it blocks
//! nothing, and is written into the booklet.

mod cords;
mod parts;
mod rules;
mod sleepwear;
mod wearer;

use crate::base::{Code, DisplayUnit, Finding};
use crate::compute::Model;
use crate::document::{Audience, Draft, StripKind, WornAs};
use crate::texts::{length, owned, readable, say, t};
use rules::usual;
use wearer::{Wearers, ages};

/// A caution for whoever sews or wears the garment.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Caution {
    /// Its heading.
    pub title: String,
    /// Its sentences: numbers of the draft and of the rule, in cm and in inches; the last one says who decides.
    pub text: Vec<String>,
    /// The rule by name.
    pub rule: String,
    /// The sizes of which it speaks.
    pub sizes: Vec<String>,
}

/// What was found in one view.
#[derive(Default)]
struct Found {
    findings: Vec<Finding>,
    cautions: Vec<Caution>,
    /// What was not looked at.
    unchecked: Vec<String>,
}

impl Found {
    /// Adds a caution; that it is only the usual one stands behind it.
    fn caution(&mut self, title: String, rule: String, sizes: Vec<String>, mut text: Vec<String>) {
        text.push(format!("{}.", usual()));
        self.cautions.push(Caution { title, text, rule, sizes });
    }

    /// Adds what was not looked at. Buyers read it too, so it holds no words of the program: what a draft can say of it stands in the
    /// advice.
    fn not_checked(&mut self, what: String) {
        if !self.unchecked.contains(&what) {
            self.unchecked.push(what);
        }
    }
}

/// The cautions that a draft calls for, over all its views; what is not so in all of them names those in which it is.
pub fn cautions(draft: &Draft, model: &Model) -> Vec<Caution> {
    let views = model.of_views();
    let mut out: Vec<(Caution, Vec<&str>)> = Vec::new();
    for view in views {
        for caution in look(draft, view).cautions {
            match out.iter_mut().find(|(known, _)| *known == caution) {
                Some((_, named)) => named.push(view.view()),
                None => out.push((caution, vec![view.view()])),
            }
        }
    }
    let named = |(mut caution, named): (Caution, Vec<&str>)| {
        if named.len() < views.len() {
            let views: Vec<String> = named.into_iter().map(readable).collect();
            caution.title = t!("care-of-view", title = caution.title, views = views.join(", "));
        }
        caution
    };
    out.into_iter().map(named).collect()
}

/// What is told of a view.
pub(super) fn check(draft: &Draft, model: &Model) -> Vec<Finding> {
    let mut found = owned(|| look(draft, model));
    if draft.chart.survey {
        found.findings.push(Finding::new(Code::SurveyChart).at("chart"));
    }
    found.findings
}

fn look(draft: &Draft, model: &Model) -> Found {
    let mut found = Found::default();
    match &draft.audience {
        Audience::Adult => {}
        Audience::Unstated => unsaid(draft, &mut found),
        Audience::Child { from, to } => {
            let ages = ages(from, to);
            if let Err(problem) = &ages {
                let text = say!("care-ages-typed", from, to);
                let finding = Finding::new(Code::AgesUnread).at("audience");
                found.findings.push(finding.word("text", text).word("problem", problem.clone()));
            }
            let wearers = wearer::wearers(draft, model, ages.ok(), &mut found);
            child(draft, model, &wearers, &mut found);
        }
    }
    found
}

/// All that concerns a child's garment.
fn child(draft: &Draft, model: &Model, wearers: &Wearers<'_>, found: &mut Found) {
    cords::look(draft, model, wearers, found);
    sleepwear::look(draft, model, wearers, found);
    parts::look(draft, model, wearers, found);
    if draft.care.worn_as == WornAs::Unstated {
        found.not_checked(t!("care-not-worn"));
    }
    if !found.unchecked.is_empty() {
        let text: Vec<String> = found.unchecked.iter().map(|what| t!("care-not-checked", what)).collect();
        found.caution(t!("care-unchecked-title"), String::new(), Vec::new(), text);
        let finding = Finding::new(Code::CareNotChecked).at("care").word("what", found.unchecked.join("; "));
        found.findings.push(finding.word("usual", usual()));
    }
}

/// Something on which cautions for children would hang, in a draft that does not say who wears it.
fn unsaid(draft: &Draft, found: &mut Found) {
    let is_hood = |name: &str| name.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| word == "hood");
    let cord = draft.strips.iter().find(|s| s.kind == StripKind::Cord).map(|s| say!("care-is-cord", name = s.name));
    let hood = draft.pieces.iter().find(|p| is_hood(&p.name)).map(|p| say!("care-is-hood", name = p.name));
    let worn = match draft.care.worn_as {
        WornAs::Sleepwear | WornAs::TightSleepwear => Some(say!("care-is-sleepwear")),
        _ => None,
    };
    if let Some(why) = cord.or(hood).or(worn) {
        found.findings.push(Finding::new(Code::WearerUnsaid).at("audience").word("why", why));
    }
}

/// The least that is told in millimetres.
const LEAST: f64 = 0.1;

/// How much is too much, in cm and in inches; what is too little for these in tenths of a millimetre, so that it is never told as nothing.
fn excess(mm: f64) -> String {
    let is_seen = length(mm, DisplayUnit::InchEighths) != length(0.0, DisplayUnit::InchEighths);
    if is_seen { both(mm) } else { length(mm.max(LEAST), DisplayUnit::Mm) }
}

/// A length in cm and in inches, both of the one value.
fn both(mm: f64) -> String {
    format!("{} ({})", length(mm, DisplayUnit::Cm), length(mm, DisplayUnit::InchEighths))
}
