//! Derived pieces: steps become ordinary pieces, told by formulas.
//!
//! A derived piece is told in stages. A stage is a frame of its own in which the piece lies as it is before a step, under the very names
//! that the step may use. The next stage sees it through a link, a placement that moves nothing, and says where everything is now:
//! `link.tip.turned(…)`, `part(link.hem, …)`. The last stage is the piece itself. So a step only writes formulas, which edges there are hangs on
//! no number, and nothing else in the engine knows of steps.
//!
//! Where a step cannot be done (what it names is gone), that is told, and later steps see the piece as it is before it.

mod copy;
mod lineage;
mod ring;
mod shape;
mod steps;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use self::copy::{Copy, Moves};
use self::lineage::Following;
pub(crate) use self::lineage::{Double, Lineage, Locals, Named, Owner};
pub(super) use self::shape::OWN;
use self::shape::Shape;
use self::steps::{Before, Slash, draw, leave_out, mark_slashes};
use crate::base::{Code, Finding, Span};
use crate::document::{Axis, Cell, Does, Draft, Piece, Placement, Row, RowKind};
use crate::language::nearest;

/// A draft whose derived pieces are told like ordinary ones.
#[derive(Clone, Debug, Default)]
pub(super) struct Whole {
    pub draft: Arc<Draft>,
    /// The stages of derived pieces, in order.
    pub stages: Vec<Arc<Piece>>,
    pub links: Vec<Link>,
    /// Names of the pieces of which others are made.
    pub bases: Arc<BTreeSet<String>>,
    /// What is wrong with steps.
    findings: Vec<Finding>,
    /// Formulas as they were typed in steps, by stage and name.
    typed: BTreeMap<(String, String), TypedIn>,
}

/// How a frame sees the stage before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Link {
    pub name: String,
    pub lay: String,
    pub on: String,
}

/// A formula of a step.
#[derive(Clone, Debug)]
struct TypedIn {
    text: String,
    /// How many bytes the program put in front of it.
    before: usize,
}

impl Whole {
    /// The draft itself where no piece is derived.
    pub fn of(draft: &Draft) -> Self {
        Self::with_names(draft, None).0
    }

    /// The same; what names mean is followed where that is asked for.
    fn with_names(draft: &Draft, lineage: Option<Lineage>) -> (Self, Option<Lineage>) {
        let draft = Arc::new(draft.clone());
        if draft.pieces.iter().all(|p| p.of.is_empty() && p.steps.is_empty()) {
            return (Self { draft, ..Self::default() }, lineage);
        }
        let mut work = Deriving {
            typed: &draft,
            whole: Self::default(),
            done: BTreeMap::new(),
            shapes: BTreeMap::new(),
            persons: Vec::new(),
            placements: Vec::new(),
            lineage,
        };
        for piece in &draft.pieces {
            work.piece(&piece.name, &mut Vec::new());
        }
        let mut out = Draft::clone(&draft);
        for piece in &mut out.pieces {
            if let Some(Some(made)) = work.done.get(&piece.name) {
                *piece = Arc::clone(made);
            }
        }
        out.placements.append(&mut work.placements);
        for person in work.persons {
            let name = flag(&person);
            out.chart.rows.push(Row {
                name: name.clone(),
                kind: RowKind::House,
                is: "0".to_owned(),
                by: Vec::<Axis>::new(),
                ..Row::default()
            });
            for p in out.chart.persons.iter_mut().filter(|p| p.name == person) {
                p.cells.push(Cell(name.clone(), "1".to_owned()));
            }
        }
        (Self { draft: Arc::new(out), bases: Arc::new(bases_of(&draft)), ..work.whole }, work.lineage)
    }

    /// What is wrong with steps, and what was found in the stages, said of the pieces and steps that a person knows.
    pub fn told(&self, findings: &mut Vec<Finding>) {
        if self.stages.is_empty() && self.findings.is_empty() {
            return;
        }
        for finding in findings.iter_mut() {
            self.say(finding);
        }
        findings.splice(0..0, self.findings.iter().cloned());
    }

    fn say(&self, finding: &mut Finding) {
        let is_own = |t: &str| t.contains(OWN);
        if !is_own(&finding.place.piece) && !is_own(&finding.place.name) && !is_own(&finding.formula) {
            return;
        }
        // A formula of the program's own around one that was typed: only that one is shown.
        let local = finding.place.name.split_once('.').map(|(_, l)| l.to_owned()).unwrap_or_default();
        if let Some(typed) = self.typed.get(&(finding.place.piece.clone(), local)) {
            if let Some(span) = finding.span {
                let (from, to) =
                    (span.start.max(typed.before) - typed.before, span.end.max(typed.before) - typed.before);
                finding.span = Some(Span::new(from.min(typed.text.len()), to.min(typed.text.len())));
            }
            finding.formula.clone_from(&typed.text);
        }
        let stage =
            finding.place.piece.split_once(OWN).map(|(piece, k)| (piece.to_owned(), k.parse::<usize>().unwrap_or(0)));
        if let Some((name, k)) = stage {
            let step = self.stage_step(&name, k);
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

/// The names of the pieces that a piece is made of: the one that it is derived from, and those that are joined to it.
fn made_of(piece: &Piece) -> impl Iterator<Item = &String> {
    let joined = piece.steps.iter().filter_map(|s| match &s.does {
        Does::Join(join) => Some(&join.piece),
        _ => None,
    });
    std::iter::once(&piece.of).chain(joined)
}

/// Names of the pieces of which others are made.
fn bases_of(draft: &Draft) -> BTreeSet<String> {
    draft.pieces.iter().flat_map(|p| made_of(p)).filter(|n| !n.is_empty()).cloned().collect()
}

/// A text without the program's own names: links in front of names, and what marks hidden points.
fn without_own(text: &str) -> String {
    if !text.contains(OWN) {
        return text.to_owned();
    }
    let is_word = |c: char| c == '_' || c.is_alphanumeric();
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

/// The row that is 1 for a person and 0 for everybody else.
fn flag(person: &str) -> String {
    let word: String = person.chars().map(|c| if c.is_alphanumeric() { c } else { '_' }).collect();
    format!("{OWN}{word}")
}

struct Deriving<'a> {
    typed: &'a Draft,
    whole: Whole,
    /// Pieces as they are told; none where they are as typed.
    done: BTreeMap<String, Option<Arc<Piece>>>,
    /// What is known of them by now that their formulas do not tell.
    shapes: BTreeMap<String, Shape>,
    /// Persons for whom steps are done.
    persons: Vec<String>,
    placements: Vec<Placement>,
    /// What names mean, if that is asked for.
    lineage: Option<Lineage>,
}

impl Deriving<'_> {
    fn wrong(&mut self, piece: &str, step: &str, problem: impl Into<String>) {
        let at = if step.is_empty() { piece.to_owned() } else { format!("{piece}, step {step}") };
        let finding = Finding::new(Code::StepFails).piece(piece).at(at);
        self.whole.findings.push(finding.word("problem", problem.into()));
    }

    /// Tells a piece by formulas, after those that it is made from. `above`: pieces that wait for it.
    fn piece(&mut self, name: &str, above: &mut Vec<String>) {
        if self.done.contains_key(name) {
            return;
        }
        let Some(piece) = self.typed.pieces.iter().find(|p| p.name == name).cloned() else { return };
        if piece.of.is_empty() && piece.steps.is_empty() {
            self.done.insert(name.to_owned(), None);
            return;
        }
        above.push(name.to_owned());
        for needed in made_of(&piece) {
            if let Some(from) = above.iter().position(|n| n == needed) {
                let round = above[from..].join(", ");
                self.wrong(name, "", format!("{needed} is derived from itself, by way of {round}"));
                let made = self.bare(&piece);
                self.done.insert(name.to_owned(), Some(Arc::new(made)));
                above.pop();
                return;
            }
            self.piece(needed, above);
        }
        above.pop();
        let made = self.derive(&piece);
        self.done.insert(name.to_owned(), Some(Arc::new(made)));
    }

    /// A piece as it is told by now.
    fn told(&self, name: &str) -> Option<Arc<Piece>> {
        let made = self.done.get(name).and_then(Clone::clone);
        made.or_else(|| self.typed.pieces.iter().find(|p| p.name == name).cloned())
    }

    /// A piece by its names. A derived one is all curves taken from elsewhere: what is straight, and what lies on which edge, is kept beside.
    fn shape_of(&self, piece: &Piece, link: &str) -> (Shape, Vec<(String, String)>) {
        let (mut shape, places) = Shape::of(piece, link);
        if let Some(known) = self.shapes.get(&piece.name) {
            for (side, of) in [(&mut shape.edges, &known.edges), (&mut shape.lines, &known.lines)] {
                for side in side {
                    side.is_straight |= of.iter().any(|s| s.name == side.name && s.is_straight);
                }
            }
            for spot in &mut shape.spots {
                if let Some(of) = known.spots.iter().find(|s| s.name == spot.name) {
                    spot.on.clone_from(&of.on);
                }
            }
        }
        (shape, places)
    }

    /// A piece that cannot be derived.
    fn bare(&mut self, piece: &Piece) -> Piece {
        if let Some(lineage) = &mut self.lineage {
            lineage::bare(lineage, piece);
        }
        bare(piece)
    }

    fn derive(&mut self, piece: &Piece) -> Piece {
        let name = &piece.name;
        let Some(base) = self.told(&piece.of) else {
            let problem = match piece.of.as_str() {
                "" => "it has steps, but it does not say of which piece it is made".to_owned(),
                of => {
                    let hint = nearest(of, self.typed.pieces.iter().map(|p| p.name.as_str()));
                    let hint = hint.map_or(String::new(), |h| format!("; did you mean {h}?"));
                    format!("there is no piece {of} that it could be made of{hint}")
                }
            };
            self.wrong(name, "", problem);
            return self.bare(piece);
        };
        if !piece.edges.is_empty() {
            self.wrong(
                name,
                "",
                "a derived piece has the edges of the piece that it is made of; draw one anew by a step",
            );
        }
        let mut count = 0;
        let link_to = |k: usize| format!("{OWN}{name}{OWN}{k}");
        let frame_of = |k: usize| format!("{name}{OWN}{k}");
        let link = link_to(0);
        let (shape, places) = self.shape_of(&base, &link);
        let moves = Moves::none(&shape);
        let (mut stage, mut shape) = Copy { shape: &shape, link: &link, moves: &moves }.piece();
        for (name, at) in places {
            if let Some(p) = stage.points.iter_mut().find(|p| p.name == name) {
                p.at = at;
            }
        }
        // It is taken out while the piece is followed, and put back.
        let mut lineage = self.lineage.take();
        let mut names_of = lineage.as_mut().map(|l| Following::begin(l, self.typed, piece, &stage, &shape));
        let mut links = vec![Link { name: link, lay: base.name.clone(), on: String::new() }];
        let mut stages: Vec<Piece> = Vec::new();
        let mut names = BTreeSet::new();
        for step in &piece.steps {
            if !names.insert(&step.name) {
                self.wrong(name, &step.name, "two steps are called so; rename one");
            }
            if let Some(names) = &mut names_of {
                names.step();
            }
            let mut share = String::new();
            if !step.person.is_empty() {
                if !self.typed.chart.persons.iter().any(|p| p.name == step.person) {
                    self.wrong(
                        name,
                        &step.name,
                        format!("there is no person {} for whom it could be done", step.person),
                    );
                    continue;
                }
                if !self.persons.contains(&step.person) {
                    self.persons.push(step.person.clone());
                }
                share = format!(" * {}", flag(&step.person));
            }
            // What fails leaves the stage as it was.
            let (kept, kept_shape, kept_count) = (stage.clone(), shape.clone(), count);
            let (mut made, is_further) = (Vec::new(), !matches!(step.does, Does::Draw(_) | Does::LeaveOut(_)));
            let problem = match &step.does {
                Does::Draw(_) | Does::LeaveOut(_) if !share.is_empty() => {
                    Some("only amounts can be one person's".to_owned())
                }
                Does::Draw(what) => {
                    made = draw(&mut stage, &mut shape, what);
                    None
                }
                Does::LeaveOut(what) => leave_out(&mut stage, &mut shape, what).err(),
                does => 'rounds: {
                    let mut marked = Vec::new();
                    let rounds = match does {
                        Does::Spread(spread) if spread.count > 0 => {
                            match mark_slashes(&mut stage, &mut shape, spread) {
                                Ok(typed) => marked = typed,
                                Err(problem) => break 'rounds Some(problem),
                            }
                            spread.count
                        }
                        _ => 0,
                    };
                    let first = frame_of(count);
                    let mut problem = None;
                    for round in 0..rounds.max(1) {
                        let slash = (rounds > 0).then(|| Slash { round, stage: first.clone() });
                        let next = link_to(count + 1);
                        let on = frame_of(count + 1);
                        let other = |of: &str, link: &str| {
                            let told =
                                self.told(of).ok_or_else(|| format!("there is no piece {of} that could be joined"))?;
                            Ok(self.shape_of(&told, link))
                        };
                        let mut before = Before {
                            piece: &mut stage,
                            shape: &shape,
                            link: &next,
                            next: &on,
                            share: share.clone(),
                            slash,
                            typed: std::mem::take(&mut marked),
                            made: Vec::new(),
                            placements: Vec::new(),
                            other: &other,
                        };
                        let after = steps::done(&mut before, does);
                        let (typed, placements) =
                            (std::mem::take(&mut before.typed), std::mem::take(&mut before.placements));
                        made = std::mem::take(&mut before.made);
                        problem = match after {
                            Some(Ok((new, mut after))) => {
                                after.tidy();
                                let frame = frame_of(count);
                                for t in typed {
                                    self.whole
                                        .typed
                                        .insert((frame.clone(), t.name), TypedIn { text: t.text, before: t.before });
                                }
                                self.placements.extend(placements);
                                let mut done = std::mem::replace(&mut stage, new);
                                done.name.clone_from(&frame);
                                // Stages are read by their names only; the note says for whom to look.
                                done.note.clone_from(&step.name);
                                stages.push(done);
                                links.push(Link { name: next.clone(), lay: frame, on: String::new() });
                                shape = after;
                                count += 1;
                                None
                            }
                            Some(Err(problem)) => Some(problem),
                            None => None,
                        };
                        if problem.is_some() {
                            break;
                        }
                    }
                    problem
                }
            };
            if let Some(problem) = problem {
                (stage, shape, count) = (kept, kept_shape, kept_count);
                stages.truncate(count);
                links.truncate(count + 1);
                self.wrong(name, &step.name, problem);
            } else if let Some(names) = &mut names_of {
                names.done(self.typed, (&stage, &shape), &made, is_further);
            }
        }
        if let Some(names) = names_of {
            names.end();
        }
        self.lineage = lineage;
        // The last stage is the piece itself.
        for (k, link) in links.iter_mut().enumerate() {
            link.on = if k == count { name.clone() } else { frame_of(k) };
        }
        for p in self.placements.iter_mut().filter(|p| p.on == frame_of(count)) {
            p.on.clone_from(name);
        }
        self.whole.stages.extend(stages.into_iter().map(Arc::new));
        self.whole.links.extend(links);
        shape.tidy();
        self.shapes.insert(name.clone(), shape.clone());
        finished(stage, shape, piece)
    }
}

/// A derived piece without its steps: only what is typed in it.
fn bare(piece: &Piece) -> Piece {
    Piece { of: String::new(), steps: Vec::new(), ..piece.clone() }
}

/// The last stage with what the piece says of itself; that comes before what it has from its base.
fn finished(stage: Piece, shape: Shape, own: &Piece) -> Piece {
    let mut out = Piece { edges: Vec::new(), ..bare(own) };
    let rest = shape.rest;
    let mut points = stage.points;
    // Points that the piece itself draws replace none.
    points.extend(out.points);
    out.points = points;
    out.edges = stage.edges;
    let mut lines = stage.lines;
    lines.append(&mut out.lines);
    out.lines = lines;
    let mut darts = stage.darts;
    darts.append(&mut out.darts);
    out.darts = darts;
    let mut allowances = rest.allowances;
    allowances.retain(|a| !out.allowances.iter().any(|o| o.edge == a.edge && o.set == a.set));
    out.allowances.append(&mut allowances);
    let mut corners = rest.corners;
    corners.retain(|c| !out.corners.iter().any(|o| o.at == c.at));
    out.corners.append(&mut corners);
    let mut marks = rest.marks;
    marks.retain(|m| !out.marks.iter().any(|o| o.name == m.name));
    out.marks.append(&mut marks);
    let mut folds = rest.folds;
    folds.retain(|f| !out.folds.iter().any(|o| o.name == f.name));
    out.folds.append(&mut folds);
    out.pleats.splice(0..0, rest.pleats);
    out.tucks.splice(0..0, rest.tucks);
    if out.cuts.is_empty() {
        out.cuts = rest.cuts;
    }
    if out.stack.is_empty() {
        out.stack = rest.stack;
    }
    if out.label.turn.is_empty() {
        out.label.turn = rest.label.turn;
    }
    out
}

/// A point of a stage that nobody typed.
pub(super) fn is_hidden(name: &str) -> bool {
    name.contains(OWN)
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
