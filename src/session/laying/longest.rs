//! What is the most that comes out of the cloth at hand: a value is the unknown, and a lay must fit.

use std::sync::Arc;

use super::search::{LayEffort, lays_until};
use super::wish::LayWish;
use crate::base::{DisplayUnit, Unit, tolerance};
use crate::compute::Engine;
use crate::document::Draft;
use crate::finish::finish;
use crate::language::literal_text;
use crate::output::lay::Lay;
use crate::session::{SetError, set_for_run};
use crate::texts::{length, owned, say};

/// The answer is a multiple of this, rounded down, mm.
const STEP: f64 = 1.0;
/// Values are looked for up to this many times the present one, or down to none.
const REACH: f64 = 4.0;
/// At most so many lays are made.
const MOST_TRIES: u32 = 40;

/// What came of it.
#[derive(Clone, Debug)]
pub struct Longest {
    /// The largest value for which a lay fits, mm.
    pub value: f64,
    /// The lay.
    pub lay: Arc<Lay>,
    /// What the draft says now, mm.
    pub now: f64,
    /// How much cloth that needs, mm, or in words why there is no lay.
    pub now_needs: Result<f64, String>,
    /// The cloth at hand, mm.
    pub have: f64,
    /// The least value that was tried and did not fit, mm; none where even the largest one fits.
    pub beyond: Option<f64>,
    /// How many lays were made.
    pub tries: u32,
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LongestStop {
    /// There is no such value.
    #[error(transparent)]
    Set(#[from] SetError),
    /// It is no length in that size.
    #[error("{}", say!("longest-no-length", name = .0))]
    NoLength(String),
    /// It was told to stop before anything was known to fit.
    #[error("{}", say!("longest-stopped"))]
    Told,
    /// Nothing fits.
    #[error("{}", say!(
        "longest-nothing",
        name,
        least,
        have = told(*have, *unit),
        least_needs = needs(least_needs, *unit),
        now = told(*now, *unit),
        now_needs = needs(now_needs, *unit),
    ))]
    Nothing {
        /// The value.
        name: String,
        /// The least that was tried.
        least: String,
        /// How much cloth that needs, mm, or in words why there is no lay.
        least_needs: Result<f64, String>,
        /// What the draft says now, mm.
        now: f64,
        /// How much cloth that needs.
        now_needs: Result<f64, String>,
        /// The cloth at hand, mm.
        have: f64,
        /// In which lengths are told.
        unit: DisplayUnit,
    },
}

/// What is needed, in words.
fn needs(needed: &Result<f64, String>, unit: DisplayUnit) -> String {
    match needed {
        Ok(mm) => say!("longest-needs", far = told(*mm, unit)),
        Err(why) => say!("longest-no-lay", why),
    }
}

/// A length as whoever is at the program reads it.
fn told(mm: f64, unit: DisplayUnit) -> String {
    owned(|| length(mm, unit))
}

impl Longest {
    /// Whether what the draft says now comes out of the cloth.
    pub fn now_fits(&self) -> bool {
        self.now_needs.as_ref().is_ok_and(|mm| *mm <= self.have + tolerance::ON_EDGE)
    }

    /// What was found, in sentences. Lengths are rounded where they are shown: one that then reads like another is not told beside it.
    pub fn words(&self, name: &str, unit: DisplayUnit) -> String {
        let length = |mm: f64| told(mm, unit);
        let (value, need, have) = (length(self.value), length(self.lay.need().exact), length(self.have));
        let mut out = match need == have {
            true => say!("longest-all", name, value, have),
            false => say!("longest-takes", name, value, need, have),
        };
        out.push(' ');
        let now = length(self.now);
        out.push_str(&match &self.now_needs {
            Ok(_) if self.now_fits() && now == value => say!("longest-is-now"),
            Ok(_) if self.now_fits() => say!("longest-now-fits", now),
            Ok(mm) => {
                let short = length(mm - self.have);
                say!("longest-now-needs", now, need = length(*mm), short)
            }
            Err(why) => say!("longest-now-none", now, why),
        });
        out.push(' ');
        out.push_str(&match self.beyond.map(length) {
            Some(beyond) if beyond == value || beyond == now => say!("longest-more-none"),
            Some(beyond) => say!("longest-beyond-none", beyond),
            None => say!("longest-untried"),
        });
        out
    }
}

/// The largest value of a length for which what is wished fits on so much cloth, mm, to a millimetre rounded down. It is looked for between
/// nothing and four times of what it is now by halving; that more of it needs more cloth is taken for granted.
///
/// # Errors
/// See [`LongestStop`].
pub fn longest(
    draft: &Draft,
    name: &str,
    wish: &LayWish,
    have: f64,
    effort: &LayEffort,
) -> Result<Longest, LongestStop> {
    longest_until(draft, (name, wish, have), effort, &|| false)
}

/// The same, until it is told to stop, also within a lay: then the best so far is the answer.
///
/// # Errors
/// See [`LongestStop`].
pub fn longest_until(
    draft: &Draft,
    (name, wish, have): (&str, &LayWish, f64),
    effort: &LayEffort,
    stop: &(dyn Fn() -> bool + Sync),
) -> Result<Longest, LongestStop> {
    let mut tries = 0;
    // The lay if it fits, else how much it needs, or why there is none.
    let mut fits = |mm: f64| -> Result<Result<Arc<Lay>, Result<f64, String>>, LongestStop> {
        if stop() {
            return Err(LongestStop::Told);
        }
        tries += 1;
        let mut own = draft.clone();
        set_for_run(&mut own, name, &literal_text(mm, Some(Unit::Millimetre)))?;
        let Ok(model) = Engine::new().compute_guarded(&own, &[]) else {
            return Ok(Err(Err(say!("longest-uncomputed"))));
        };
        let finished = finish(&model.draft, &model);
        let wishes = std::slice::from_ref(wish);
        let row = lays_until((&model, &finished), (wishes, &[]), effort, (stop, &|_, _| {})).into_iter().next();
        let found = match row.map(|r| (r.best, r.failed)) {
            Some((Some(lay), _)) if lay.need().exact <= have + tolerance::ON_EDGE => return Ok(Ok(lay)),
            Some((Some(lay), _)) => Ok(lay.need().exact),
            Some((None, Some(why))) => Err(why.to_string()),
            _ => Err(say!("longest-not-found")),
        };
        // A search that was broken off says nothing of what does not fit.
        if stop() { Err(LongestStop::Told) } else { Ok(Err(found)) }
    };
    let now = present(draft, name, wish)?;
    let mut low: Option<(f64, Arc<Lay>)> = None;
    let mut high: Option<f64> = None;
    let fits_now = fits(now)?;
    let now_needs = match &fits_now {
        Ok(lay) => {
            low = Some((now, Arc::clone(lay)));
            Ok(lay.need().exact)
        }
        Err(needed) => {
            high = Some(now);
            needed.clone()
        }
    };
    let (floor, ceiling) = (STEP, now * REACH);
    if let Some((at, _)) = low.clone() {
        let mut at = at;
        while high.is_none() && at < ceiling {
            at = (at * 1.5).min(ceiling);
            match fits(at) {
                Ok(Ok(lay)) => low = Some((at, lay)),
                Ok(Err(_)) => high = Some(at),
                Err(LongestStop::Told) => break,
                Err(other) => return Err(other),
            }
        }
    } else {
        match fits(floor)? {
            Ok(lay) => low = Some((floor, lay)),
            Err(least_needs) => {
                let (name, least) = (name.to_owned(), literal_text(floor, Some(Unit::Millimetre)));
                return Err(LongestStop::Nothing {
                    name,
                    least,
                    least_needs,
                    now,
                    now_needs,
                    have,
                    unit: draft.display,
                });
            }
        }
    }
    let Some(mut best) = low else { return Err(LongestStop::NoLength(name.to_owned())) };
    let mut over = high;
    for _ in 0..MOST_TRIES {
        let Some(top) = over else { break };
        let (from, to) = ((best.0 / STEP).floor(), (top / STEP).ceil());
        if to - from <= 1.0 {
            break;
        }
        let middle = ((from + to) / 2.0).floor() * STEP;
        if middle <= best.0 || middle >= top {
            break;
        }
        match fits(middle) {
            Ok(Ok(lay)) => best = (middle, lay),
            Ok(Err(_)) => over = Some(middle),
            Err(LongestStop::Told) => break,
            Err(other) => return Err(other),
        }
    }
    // Only what was laid is said.
    let down = (best.0 / STEP + tolerance::EQUAL).floor() * STEP;
    let value = if (best.0 - down).abs() <= tolerance::EQUAL { down } else { best.0 };
    Ok(Longest { value, lay: best.1, now, now_needs, have, beyond: over, tries })
}

/// What the value is now.
fn present(draft: &Draft, name: &str, wish: &LayWish) -> Result<f64, LongestStop> {
    let none = || LongestStop::NoLength(name.to_owned());
    // That there is such a value is said first.
    set_for_run(&mut draft.clone(), name, "1 mm")?;
    let model = Engine::new().compute_guarded(draft, &[]).map_err(|_| none())?;
    let own = &model.of_views()[wish.view.min(model.of_views().len() - 1)];
    let short = name.strip_prefix("value.").unwrap_or(name);
    let case = wish.call.sizes.first().map_or(0, |s| s.0);
    let asked = [short.to_owned(), format!("value.{short}"), format!("chart.{short}")];
    let node = asked.iter().find_map(|n| own.plan.node_named(n)).ok_or_else(none)?;
    let value = own.item(case, node).and_then(|i| i.real()).filter(|v| v.is_finite() && *v > 0.0);
    let is_length = own.plan.nodes[node as usize].kind == Some(crate::language::Kind::LENGTH);
    value.filter(|_| is_length).ok_or_else(none)
}
