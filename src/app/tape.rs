//! The tape: where it is held, what lies between, and its length in every size.

use kurbo::{BezPath, Point};

use super::Window;
use super::ask::Ask;
use super::state::Room;
use crate::compute::{Model, Trial};
use crate::language::{Kind, What};
use crate::session::{Act, Computed, Sight, TapeStop, tape_between};
use crate::texts::say;

/// The tape while it is in the hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Tape {
    /// Where it is held, in order.
    pub stops: Vec<TapeStop>,
    /// What lies between each place and the next, with the ways in which it can be measured.
    pub legs: Vec<Leg>,
    /// The place under the pointer, and what lies between the last one and it.
    pub over: Option<(TapeStop, Leg)>,
    /// The length of all of it in each case, mm, with the place under the pointer.
    pub lengths: Vec<Option<f64>>,
    /// What is measured, as a formula.
    pub formula: String,
    asked: Option<(u64, String, Point)>,
}

/// What lies between two places.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Leg {
    /// Formulas: straight first, then along edges. None: the tape is lifted from one piece to another.
    pub ways: Vec<String>,
    /// Which of them is measured.
    pub at: usize,
    /// Along edges: these, in their frame, in the chosen size.
    pub paths: Vec<BezPath>,
}

/// What a person does with the tape.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hold {
    /// It is over a place of a piece or drawing, mm; how near things must be, px per mm. None: over nothing.
    Over(Option<(String, Point, f64, f64)>),
    /// It is held there.
    Here,
    /// Measured another way: straight, along, or around the other side.
    Next,
    /// The last place is let go.
    Back,
    /// The length becomes a value.
    Keep,
}

impl Tape {
    /// Whether the place under the pointer is known already.
    pub fn knows(&self, revision: u64, frame: &str, place: Point) -> bool {
        self.asked.as_ref().is_some_and(|(r, f, p)| (*r, f.as_str(), *p) == (revision, frame, place))
    }

    /// All legs with the one to the pointer.
    pub fn all_legs(&self) -> impl Iterator<Item = &Leg> {
        self.legs.iter().chain(self.over.as_ref().filter(|_| !self.stops.is_empty()).map(|(_, leg)| leg))
    }

    /// Gives up the places where it is held; none were: it is put away.
    pub fn give_up(&mut self) -> bool {
        let held = !self.stops.is_empty();
        *self = Self::default();
        held
    }
}

impl Window {
    /// Takes the tape up, or puts it away.
    pub(super) fn take_tape(&mut self) {
        self.shown.pencil = None;
        self.shown.tape = match self.shown.tape {
            Some(_) => None,
            None => Some(Tape::default()),
        };
        self.shown.room = Room::Table;
    }

    /// Does what the tape was told.
    pub(super) fn hold(&mut self, hold: Hold) {
        let Some(mut tape) = self.shown.tape.take() else { return };
        match hold {
            Hold::Over(None) => (tape.over, tape.asked) = (None, None),
            Hold::Over(Some((frame, place, reach, scale))) => {
                let way = tape.over.as_ref().map_or(usize::MAX, |(_, leg)| leg.at);
                let same = |s: &TapeStop| tape.over.as_ref().is_some_and(|(o, _)| o.text == s.text);
                let case = self.scene.case_of(&self.shown.case);
                let stop = Sight::of(&self.scene.computed, &frame, case).and_then(|s| s.stop(place, reach, scale));
                let keep = stop.as_ref().is_some_and(same);
                // Where it is held already nothing lies between.
                let stop = stop.filter(|s| tape.stops.last().is_none_or(|last| last.text != s.text));
                tape.over = stop.map(|stop| {
                    let leg = self.leg(tape.stops.last(), &stop, if keep { way } else { usize::MAX });
                    (stop, leg)
                });
                tape.asked = Some((self.scene.computed.revision, frame, place));
            }
            Hold::Here => {
                if let Some((stop, leg)) = tape.over.take() {
                    if !tape.stops.is_empty() {
                        tape.legs.push(leg);
                    }
                    tape.stops.push(stop);
                    tape.asked = None;
                }
            }
            Hold::Next => {
                let (last, over) = (tape.stops.last().cloned(), tape.over.take());
                if let Some((stop, leg)) = over {
                    let next = self.leg(last.as_ref(), &stop, (leg.at + 1) % leg.ways.len().max(1));
                    tape.over = Some((stop, next));
                } else if let ([.., a, b], Some(leg)) = (&tape.stops[..], tape.legs.last()) {
                    let next = self.leg(Some(a), b, (leg.at + 1) % leg.ways.len().max(1));
                    tape.legs.pop();
                    tape.legs.push(next);
                }
            }
            Hold::Back => {
                tape.stops.pop();
                tape.legs.pop();
                tape.asked = None;
            }
            Hold::Keep => self.keep_tape(&tape),
        }
        self.measure(&mut tape);
        self.shown.tape = Some(tape);
    }

    /// Measures anew what the tape lies along: after another draft was computed too.
    pub(super) fn measure_again(&mut self) {
        if let Some(mut tape) = self.shown.tape.take() {
            self.measure(&mut tape);
            self.shown.tape = Some(tape);
        }
    }

    fn measure(&self, tape: &mut Tape) {
        let chosen = tape.all_legs().filter_map(|leg| leg.ways.get(leg.at)).cloned().collect::<Vec<_>>();
        tape.formula = chosen.join(" + ");
        tape.lengths = Vec::new();
        let Some(measuring) = Measuring::of(&self.scene.computed) else { return };
        let case = self.scene.case_of(&self.shown.case);
        if !tape.formula.is_empty() {
            tape.lengths = (0..measuring.model.cases.len()).map(|c| measuring.length(&tape.formula, c)).collect();
        }
        let over = tape.over.as_mut().map(|(_, leg)| leg);
        for leg in tape.legs.iter_mut().chain(over) {
            leg.paths = leg.ways.get(leg.at).map_or_else(Vec::new, |way| measuring.paths(way, case));
        }
    }

    /// What lies between two places; along the edge on which both lie, where nothing else is said.
    fn leg(&self, from: Option<&TapeStop>, to: &TapeStop, at: usize) -> Leg {
        let draft = self.scene.draft();
        let ways = from.map_or_else(Vec::new, |from| tape_between(draft, from, to));
        let at = match at {
            usize::MAX => self.shortest_along(&ways),
            at => at.min(ways.len().saturating_sub(1)),
        };
        Leg { ways, at, paths: Vec::new() }
    }

    /// The shortest way along edges, else the straight one.
    fn shortest_along(&self, ways: &[String]) -> usize {
        let Some(measuring) = Measuring::of(&self.scene.computed).filter(|_| ways.len() > 1) else { return 0 };
        let case = self.scene.case_of(&self.shown.case);
        let long: Vec<f64> = ways.iter().map(|w| measuring.length(w, case).unwrap_or(f64::INFINITY)).collect();
        (1..ways.len()).min_by(|a, b| long[*a].total_cmp(&long[*b])).unwrap_or(0)
    }

    /// Asks for the name of the value that the length becomes.
    fn keep_tape(&mut self, tape: &Tape) {
        if tape.formula.is_empty() {
            return self.refuse(say!("tape-two-places"));
        }
        if let Some(mut ask) = Ask::adding(Act::AddValue, &self.scene, &self.shown) {
            if let Some(field) = ask.fields.get_mut(1) {
                field.text.clone_from(&tape.formula);
            }
            self.shown.ask = Some(ask);
        }
    }
}

/// Formulas measured beside what was computed.
struct Measuring<'a> {
    trial: Trial<'a>,
    model: &'a Model,
}

impl<'a> Measuring<'a> {
    fn of(computed: &'a Computed) -> Option<Self> {
        let model = computed.model.as_ref()?;
        Some(Self { trial: Trial::new(&computed.draft, &model.plan), model })
    }

    /// The length that a formula gives in a case, mm.
    fn length(&self, formula: &str, case: usize) -> Option<f64> {
        let formula = self.trial.read(None, formula, What::Kind(Kind::LENGTH)).ok()?;
        self.trial.value(self.model, case, &formula)?.real()
    }

    /// The edges of a way, as lines in their frame.
    fn paths(&self, way: &str, case: usize) -> Vec<BezPath> {
        let parts = way.split(" + ").filter_map(|part| part.strip_prefix("length(")?.strip_suffix(')'));
        let edge = What::Kind(Kind::Edge(crate::language::Frame(0)));
        let read = |text: &str| self.trial.value(self.model, case, &self.trial.read(None, text, edge).ok()?);
        parts.filter_map(|text| Some(read(text)?.edge()?.curve.to_path())).collect()
    }
}
