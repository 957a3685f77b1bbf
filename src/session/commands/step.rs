//! Changes of derived pieces: which piece they are made of, and their steps.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::part::Deletion;
use crate::compute::Lineage;
use crate::document::{
    AddStrip, CutOff, Does, Draft, EdgeShare, Join, MoveDart, MoveEdge, Opening, Piece, Share, Spread, Step, StripEnds,
    ToCutLine, Unfold, fold,
};
use crate::session::{EditError, qualify_for, used_of_step};
use crate::texts::{id, say};

/// A change of a derived piece.
#[derive(Clone, Debug, PartialEq)]
pub enum StepCommand {
    /// Begins a piece of this name, made of that one.
    Derive(String, String),
    /// Adds a step to a piece.
    Add(String, Box<Step>),
    /// Takes a step out, by its place. What is to become of what names things that it makes: it has no value to be put instead.
    Remove(String, usize, Deletion),
    /// Moves a step, by its place, one place to the front (`true`) or back.
    Move(String, usize, bool),
    /// Sets what of a step is chosen among words, by its place.
    Switch(String, usize, Switch),
}

/// What is chosen among words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Switch {
    /// How what is opened is finished.
    Opening(Opening),
    /// How often it is slashed.
    Count(u32),
    /// Whether a slash is spread in parallel.
    Parallel(bool),
    /// Whether the other piece's edge is run the other way.
    Reversed(bool),
    /// How a strip ends.
    Ends(StripEnds),
}

impl StepCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::Derive(name, of) => say!("undo-derive", name, of),
            Self::Add(piece, step) => say!("undo-add-step", step = step.name, piece),
            Self::Remove(piece, i, _) => say!("undo-take-step", number = i + 1, piece),
            Self::Move(piece, i, _) => say!("undo-move-step", number = i + 1, piece),
            Self::Switch(piece, i, _) => say!("undo-change-step", number = i + 1, piece),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        if let Self::Derive(name, of) = self {
            return derive(draft, name, of);
        }
        let mut told = String::new();
        if let Self::Remove(name, i, how) = self {
            told = check_unused(draft, name, *i, *how)?;
        }
        let (Self::Add(name, _)
        | Self::Remove(name, ..)
        | Self::Move(name, ..)
        | Self::Switch(name, ..)
        | Self::Derive(name, _)) = self;
        let piece = draft.pieces.iter_mut().find(|p| p.name == *name).map(Arc::make_mut);
        let piece = piece.ok_or_else(|| EditError::refused(say!("gone-derived", name)))?;
        let there = |i: usize| match piece.steps.get(i) {
            Some(_) => Ok(()),
            None => Err(EditError::refused(say!("gone-step", name, number = i + 1))),
        };
        match self {
            Self::Derive(..) => {}
            Self::Add(_, step) => piece.steps.push((**step).clone()),
            Self::Remove(_, i, _) => {
                there(*i)?;
                piece.steps.remove(*i);
            }
            Self::Move(_, i, to_front) => {
                let to = if *to_front { i.checked_sub(1) } else { Some(i + 1) };
                let to = to.ok_or_else(|| EditError::refused(say!("refused-first-step")))?;
                there(*i)?;
                there(to).map_err(|_| EditError::refused(say!("refused-last-step")))?;
                piece.steps.swap(*i, to);
            }
            Self::Switch(_, i, switch) => {
                there(*i)?;
                match (&mut piece.steps[*i].does, *switch) {
                    (
                        Does::MoveDart(MoveDart { opening, .. }) | Does::Spread(Spread { opening, .. }),
                        Switch::Opening(to),
                    ) => *opening = to,
                    (Does::Spread(spread), Switch::Parallel(to)) => spread.parallel = to,
                    (Does::Spread(spread), Switch::Count(to)) => {
                        if spread.count == 0 {
                            // From one place between two: the whole edges.
                            spread.from_at.clear();
                            spread.to_at.clear();
                        }
                        spread.count = to;
                    }
                    (Does::Join(join), Switch::Reversed(to)) => join.reversed = to,
                    (Does::AddStrip(strip), Switch::Ends(to)) => strip.ends = to,
                    _ => return Err(EditError::refused(say!("refused-no-choice"))),
                }
            }
        }
        if let Self::Add(name, _) = self {
            qualify_made(draft, name);
        }
        Ok(told)
    }
}

/// Formulas that could mean what the last step of a piece makes get the longer spelling of what they meant.
fn qualify_made(draft: &mut Draft, piece: &str) {
    let lineage = Lineage::of(draft);
    for part in lineage.pieces.get(piece).and_then(|p| p.made.last()).into_iter().flatten() {
        qualify_for(draft, part);
    }
}

/// Refuses to take a step out while something names what it makes; if that is to be broken, says by how much.
fn check_unused(draft: &Draft, piece: &str, i: usize, how: Deletion) -> Result<String, EditError> {
    let users = users_of_step(draft, piece, i);
    match how {
        _ if users.is_empty() => Ok(String::new()),
        Deletion::LeaveBroken => Ok(say!("told-step-taken", count = users.len())),
        Deletion::IfUnused | Deletion::PutValue => {
            Err(EditError::refused(say!("refused-step-used", number = i + 1, piece, users = users.join(", "))))
        }
    }
}

/// Who names what a step makes, in words: each of them once.
pub fn users_of_step(draft: &Draft, piece: &str, step: usize) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for words in used_of_step(draft, piece, step).iter().map(|u| u.place(draft)) {
        if !out.contains(&words) {
            out.push(words);
        }
    }
    out
}

fn derive(draft: &mut Draft, name: &str, of: &str) -> Result<String, EditError> {
    if !draft.pieces.iter().any(|p| p.name == of) {
        let known: Vec<&str> = draft.pieces.iter().map(|p| p.name.as_str()).collect();
        return Err(EditError::refused(say!("refused-derive", of, pieces = known.join(", "))));
    }
    let piece = Piece { name: name.to_owned(), of: of.to_owned(), ..Piece::default() };
    super::part::add(draft, crate::document::Part::Piece(name.to_owned()), |d| d.pieces.push(Arc::new(piece)))
}

/// The kinds of steps that the window offers, by the ids of the words on their buttons.
pub const STEP_KINDS: [&str; 11] = [
    id!("step-kind-move-dart"),
    id!("step-kind-spread"),
    id!("step-kind-cut"),
    id!("step-kind-join"),
    id!("step-kind-unfold"),
    id!("step-kind-turn-over"),
    id!("step-kind-add-strip"),
    id!("step-kind-move-edge"),
    id!("step-kind-slash"),
    id!("step-kind-share"),
    id!("step-kind-to-cut-line"),
];

/// A new step of a kind of [`STEP_KINDS`] for a piece as it is by now, with proposals for what can be guessed; to be changed in its fields. What it
/// makes is called as nothing is in the piece and in those that are made of it.
pub fn new_step(draft: &Draft, piece: &Piece, kind: usize, unit: &str) -> Step {
    let lineage = Lineage::of(draft);
    let beyond = lineage.beyond(&piece.name).flat_map(|(_, names)| names.all()).map(|(name, _)| fold(name));
    let all: BTreeSet<String> = beyond.chain(piece.named().map(|(_, name)| fold(name))).collect();
    let taken = |name: &str| all.contains(&fold(name));
    let prefix = |stem: &str| {
        let numbered = (2..).map(|i| format!("{stem}_{i}_"));
        let mut stems = std::iter::once(format!("{stem}_")).chain(numbered);
        stems.find(|s| all.iter().all(|n| !n.starts_with(&fold(s)))).unwrap_or_default()
    };
    let fresh = |stem: &str| {
        let numbered = (2..).map(|i| format!("{stem}_{i}"));
        std::iter::once(stem.to_owned()).chain(numbered).find(|n| !taken(n)).unwrap_or_default()
    };
    let edge = |i: usize| {
        let count = piece.edges.len().max(1);
        piece.edges.get(i % count).map_or_else(String::new, |e| e.name.clone())
    };
    // By what edges are mostly called, else by their place.
    let called = |words: &[&str], i: usize| {
        let has = |word: &&str| piece.edges.iter().find(|e| e.name.contains(*word)).map(|e| e.name.clone());
        words.iter().find_map(has).unwrap_or_else(|| edge(i))
    };
    let (top, hem) = (called(&["shoulder", "top", "armhole", "neck"], 0), called(&["hem", "waist"], 2));
    let (side, centre) = (called(&["side"], 1), called(&["centre"], 3));
    let dart = piece.darts.first();
    let opens = [&side, &hem, &top].into_iter().find(|e| dart.is_none_or(|d| d.on != **e)).unwrap_or(&side);
    let half = || "1/2".to_owned();
    let does = match kind {
        0 => Does::MoveDart(MoveDart {
            close: dart.map_or_else(String::new, |d| d.name.clone()),
            on: opens.clone(),
            at: half(),
            stays: centre,
            makes: fresh("dart"),
            ..MoveDart::default()
        }),
        1 => Does::Spread(Spread {
            from: hem,
            from_at: half(),
            to: top,
            to_at: half(),
            by: format!("2 {unit}"),
            stays: centre,
            ..Spread::default()
        }),
        2 => Does::Cut(CutOff {
            from: top,
            from_at: half(),
            to: hem,
            to_at: half(),
            keep: centre,
            makes: fresh("cut"),
            start: fresh("cut_start"),
            end: fresh("cut_end"),
            ..CutOff::default()
        }),
        3 => Does::Join(Join { edge: side, prefix: prefix("other"), ..Join::default() }),
        4 => Does::Unfold(Unfold { over: centre, prefix: prefix("left") }),
        5 => Does::TurnOver,
        6 => Does::AddStrip(AddStrip {
            edge: centre,
            width: format!("3 {unit}"),
            makes: fresh("outer"),
            start: fresh("strip_start"),
            end: fresh("strip_end"),
            ..AddStrip::default()
        }),
        7 => Does::MoveEdge(MoveEdge { edge: side, by: format!("1 {unit}"), ..MoveEdge::default() }),
        8 => Does::Spread(Spread {
            from: hem,
            to: top,
            count: 5,
            by: format!("6 {unit}"),
            stays: centre,
            ..Spread::default()
        }),
        9 => {
            let part = |i: usize, share: String| EdgeShare { edge: edge(i), share };
            Does::Share(Share { by: format!("1 {unit}"), over: vec![part(1, half()), part(3, String::new())] })
        }
        _ => Does::ToCutLine(ToCutLine::default()),
    };
    Step { does, ..Step::default() }
}
