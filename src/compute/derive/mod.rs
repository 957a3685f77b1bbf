//! Derived pieces: steps become ordinary pieces, told by formulas.
//!
//! A derived piece is told in stages. A stage is a frame of its own in which the piece lies as it is before a step, under the very names
//! that the step may use. The next stage sees it through a link, a placement that moves nothing, and says where everything is now:
//! `link.tip.turned(…)`, `part(link.hem, …)`. The last stage is the piece itself. So a step only writes formulas, which edges there are hangs on
//! no number, and nothing else in the engine knows of steps.
//!
//! Where a step cannot be done (what it names is gone), that is told, and later steps see the piece as it is before it.

mod chain;
mod copy;
mod lineage;
mod ring;
mod say;
mod shape;
mod steps;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use self::chain::{Chain, frame_of, link_to, look};
use self::copy::{Copy, Moves};
use self::lineage::Following;
pub(crate) use self::lineage::{Double, Lineage, Locals, Named, Owner};
pub(super) use self::shape::OWN;
use self::shape::Shape;
use self::steps::{Before, Slash, Typed as TypedIn, draw, leave_out, mark_slashes};
use crate::base::{Code, Finding};
use crate::document::{Axis, Cell, Does, Draft, Piece, Placement, Row, RowKind, Step};
use crate::language::{nearest, parse};
use crate::texts::say;

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
    /// What was typed in steps, by stage and name.
    typed: BTreeMap<(String, String), Typed>,
}

/// How a frame sees the stage before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Link {
    pub name: String,
    pub lay: String,
    pub on: String,
}

/// What a person typed in a step.
#[derive(Clone, Debug)]
enum Typed {
    /// A formula within one of the program's own.
    Formula {
        text: String,
        /// How many bytes the program put in front of it.
        before: usize,
    },
    /// A point, line, dart or mark that is drawn in the step of this name.
    Drawn(String),
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
    fn wrong(&mut self, piece: &str, step: &str, problem: String) {
        let at = if step.is_empty() { piece.to_owned() } else { format!("{piece}, step {step}") };
        let finding = Finding::new(Code::StepFails).piece(piece).at(at);
        self.whole.findings.push(finding.word("problem", problem));
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
                self.wrong(name, "", say!("step-round", needed, round));
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
                "" => say!("step-of-nothing"),
                of => {
                    let hint = nearest(of, self.typed.pieces.iter().map(|p| p.name.as_str()));
                    let hint = hint.map_or(String::new(), |h| say!("step-hint", name = h));
                    say!("step-of-unknown", of, hint)
                }
            };
            self.wrong(name, "", problem);
            return self.bare(piece);
        };
        if !piece.edges.is_empty() {
            self.wrong(name, "", say!("step-own-edges"));
        }
        let mut chain = self.chain(name, &base);
        // It is taken out while the piece is followed, and put back.
        let mut lineage = self.lineage.take();
        let begin = |l| Following::begin(l, self.typed, piece, &chain.stage, &chain.shape);
        let mut names_of = lineage.as_mut().map(begin);
        let mut names = BTreeSet::new();
        for step in &piece.steps {
            if !names.insert(&step.name) {
                self.wrong(name, &step.name, say!("step-twice"));
            }
            if let Some(names) = &mut names_of {
                names.step();
            }
            if !step.person.is_empty() {
                if !self.typed.chart.persons.iter().any(|p| p.name == step.person) {
                    self.wrong(name, &step.name, say!("step-no-person", person = step.person));
                    continue;
                }
                if !self.persons.contains(&step.person) {
                    self.persons.push(step.person.clone());
                }
            }
            // What fails leaves the stage as it was.
            let before = (chain.stage.clone(), chain.shape.clone(), chain.stages.len());
            chain.made.clear();
            if let Err(problem) = self.step(&mut chain, piece, step) {
                chain.back_to(before);
                self.wrong(name, &step.name, problem);
            } else if let Some(names) = &mut names_of {
                let is_further = chain.stages.len() > before.2;
                names.done(self.typed, (&chain.stage, &chain.shape), &chain.made, is_further);
            }
        }
        if let Some(names) = names_of {
            names.end();
        }
        self.lineage = lineage;
        chain.shape.tidy();
        self.shapes.insert(name.clone(), chain.shape.clone());
        let (stage, shape) = self.close(chain);
        finished(stage, shape, piece)
    }

    /// A piece as it lies before its first step.
    fn chain(&self, name: &str, base: &Piece) -> Chain {
        let link = link_to(name, 0);
        let (shape, places) = self.shape_of(base, &link);
        let moves = Moves::none(&shape);
        let (mut stage, shape) = Copy { shape: &shape, link: &link, moves: &moves }.piece();
        for (name, at) in places {
            if let Some(p) = stage.points.iter_mut().find(|p| p.name == name) {
                p.at = at;
            }
        }
        let links = vec![Link { name: link, lay: base.name.clone(), on: String::new() }];
        Chain {
            name: name.to_owned(),
            stage,
            shape,
            stages: Vec::new(),
            links,
            typed: BTreeMap::new(),
            placements: Vec::new(),
            looks: Vec::new(),
            made: Vec::new(),
        }
    }

    /// Does a step. Where it cannot be done, the stage is left half done.
    fn step(&self, chain: &mut Chain, piece: &Piece, step: &Step) -> Result<(), String> {
        let share = if step.person.is_empty() { String::new() } else { format!(" * {}", flag(&step.person)) };
        match &step.does {
            Does::Draw(_) | Does::LeaveOut(_) if !share.is_empty() => {
                return Err(say!("step-amounts-only"));
            }
            Does::Draw(what) => {
                let known = |p: &Piece| (p.points.len(), p.lines.len(), p.darts.len());
                let (points, lines, darts) = known(&chain.stage);
                chain.made.extend(draw(&mut chain.stage, &mut chain.shape, what));
                let place = chain.stages.len();
                let points = chain.stage.points[points..].iter().map(|p| &p.name);
                let lines = chain.stage.lines[lines..].iter().map(|l| &l.name);
                for name in points.chain(lines).chain(chain.stage.darts[darts..].iter().map(|d| &d.name)) {
                    chain.typed.insert((place, name.clone()), Typed::Drawn(step.name.clone()));
                }
                return Ok(());
            }
            Does::LeaveOut(what) => return leave_out(&mut chain.stage, &mut chain.shape, what),
            Does::Spread(spread) if spread.count > 0 => {
                let mut marked = mark_slashes(&mut chain.stage, &mut chain.shape, spread)?;
                let stage = frame_of(&chain.name, chain.stages.len());
                for round in 0..spread.count {
                    let slash = Slash { round, stage: stage.clone() };
                    self.further(chain, piece, step, (Some(slash), std::mem::take(&mut marked)))?;
                }
                return Ok(());
            }
            _ => {}
        }
        self.further(chain, piece, step, (None, Vec::new()))
    }

    /// Does a step, or one of several slashes of it, that leads to a further stage. `marked`: formulas that it was given already.
    fn further(
        &self,
        chain: &mut Chain,
        piece: &Piece,
        step: &Step,
        (slash, marked): (Option<Slash>, Vec<TypedIn>),
    ) -> Result<(), String> {
        let share = if step.person.is_empty() { String::new() } else { format!(" * {}", flag(&step.person)) };
        let place = chain.stages.len();
        let (next, on) = (link_to(&chain.name, place + 1), frame_of(&chain.name, place + 1));
        let other = |of: &str, link: &str| {
            let told = self.told(of).ok_or_else(|| say!("step-joined-unknown", of))?;
            Ok(self.shape_of(&told, link))
        };
        let of_seam = |edge: &str| self.usual_width(piece, edge);
        let mut before = Before {
            piece: &mut chain.stage,
            shape: &chain.shape,
            link: &next,
            next: &on,
            share,
            slash,
            typed: marked,
            made: Vec::new(),
            placements: Vec::new(),
            other: &other,
            usual_width: &of_seam,
        };
        let (new, mut after) = steps::done(&mut before, &step.does)?;
        after.tidy();
        let (typed, placements, mut made) = (before.typed, before.placements, before.made);
        // What goes wrong with something that a step makes is told of the step.
        for m in &made {
            chain.typed.insert((place + 1, format!("{}{}", m.name, m.tail)), Typed::Drawn(step.name.clone()));
        }
        chain.made.append(&mut made);
        for t in typed {
            chain.typed.insert((place, t.name), Typed::Formula { text: t.text, before: t.before });
        }
        look(chain, step, &new, &next);
        chain.placements.extend(placements);
        let mut done = std::mem::replace(&mut chain.stage, new);
        done.name = frame_of(&chain.name, place);
        // Stages are read by their names only; the note says for whom to look.
        done.note.clone_from(&step.name);
        chain.stages.push(done);
        chain.links.push(Link { name: next, lay: frame_of(&chain.name, place), on: String::new() });
        chain.shape = after;
        Ok(())
    }

    /// Keeps the stages of a piece; its last one, which is the piece itself, is given back.
    fn close(&mut self, mut chain: Chain) -> (Piece, Shape) {
        let count = chain.stages.len();
        let name = chain.name;
        let frame = |k: usize| if k == count { name.clone() } else { frame_of(&name, k) };
        for (k, link) in chain.links.iter_mut().enumerate() {
            link.on = frame(k);
        }
        for p in chain.placements.iter_mut().filter(|p| p.on == frame_of(&name, count)) {
            p.on.clone_from(&name);
        }
        self.placements.append(&mut chain.placements);
        self.whole.findings.append(&mut chain.looks);
        self.whole.typed.extend(chain.typed.into_iter().map(|((k, local), typed)| ((frame(k), local), typed)));
        self.whole.stages.extend(chain.stages.into_iter().map(Arc::new));
        self.whole.links.extend(chain.links);
        (chain.stage, chain.shape)
    }

    /// The allowance of an edge that tells none itself: its seam's, else the draft's; empty: none.
    fn usual_width(&self, piece: &Piece, edge: &str) -> String {
        let full = [&*piece.of, edge];
        let names = |text: &String| {
            let mut found = false;
            if let Ok(expr) = parse(text) {
                expr.each_name(&mut |parts| {
                    let parts: Vec<&str> = parts.iter().map(|p| p.text.as_str()).collect();
                    found |= parts == full || parts.strip_prefix(&["piece"]).is_some_and(|rest| *rest == full);
                });
            }
            found
        };
        let mut told = self.typed.seams.iter().filter(|s| !s.allowance.trim().is_empty());
        let of_seam = told.find(|s| s.one.iter().chain(&s.two).any(names)).map(|s| &s.allowance);
        of_seam.unwrap_or(&self.typed.settings.allowance).trim().to_owned()
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
