//! The check list: for each piece what it is sewn to, its notches, grain, counts and the steps that mention it, and what is missing.
//! It is for who makes the pattern, not for who buys it.

use super::{Page, cutting, notions};
use crate::compute::{AllowancePlan, FramePlan, Model, NodeId};
use crate::document::Draft;
use crate::finish::{Sewing, Sewn, is_block, letters, seams_of_strip};
use crate::output::{Cell, Line, Table, steps_of_view};
use crate::texts::{readable, t};

/// A line for every piece that is cut and each of its edges, and for every strip.
pub(super) fn table(page: &Page<'_>) -> Table {
    let mut table = page.titled("check-list", t!("table-check-list"));
    table.head = vec![t!("check-part"), t!("check-is"), t!("check-notches"), t!("check-steps"), t!("check-open")];
    table.before.push(t!("check-before"));
    let list = List { page, sewing: Sewing::of(&page.model.plan), steps: Steps::of(page) };
    let letters = letters(page.all);
    for (frame, plan) in page.model.plan.frames().iter().enumerate() {
        if plan.is_piece && page.model.plan.has_frame(frame) && !is_block(page.all, &plan.name) {
            let letter = &letters[frame];
            let name = readable(&plan.name);
            let group = if letter.is_empty() { name } else { format!("{letter} {name}") };
            table.lines.push(Line { group: group.clone(), ..list.piece(frame, plan) });
            table
                .lines
                .extend((0..plan.edges.len()).map(|edge| Line { group: group.clone(), ..list.edge(frame, edge) }));
        }
    }
    for strip in page.model.plan.publishing.strips.iter().filter(|s| page.model.plan.is_needed(s.length)) {
        table
            .lines
            .push(Line { group: t!("check-strips"), ..list.strip(strip.length, &page.draft.strips[strip.place].name) });
    }
    for (notion, _) in notions::of_view(page) {
        let steps = list.steps.that_mention(&notion.name);
        let open = list.steps.lacking(&steps);
        let is = t!("check-notion", count = notion.count.max(1));
        table
            .lines
            .push(Line { group: t!("check-notions"), ..line(&readable(&notion.name), &is, Cell::Empty, steps, &open) });
    }
    let range: Vec<usize> = (0..page.model.plan.cases.range).collect();
    for (material, sizes, all) in cloth_without_plan(page.draft, page.model, &range) {
        let sizes = if all { t!("check-all-sizes") } else { sizes.join(", ") };
        table.lines.push(Line {
            group: t!("check-cloth"),
            ..line(&material, "", Cell::Empty, Vec::new(), &[t!("check-no-plan", sizes)])
        });
    }
    let open = lines_open(&table);
    table.notes.push(if open == 0 { t!("check-nothing-open") } else { t!("check-lines-open", count = open) });
    table
}

/// How many lines of a check list have something open.
pub fn lines_open(table: &Table) -> usize {
    table.lines.iter().filter(|l| !matches!(l.cells.last(), Some(Cell::Empty) | None)).count()
}

/// Cloth of a view of which no lay plan tells how much one garment needs: the material, the sizes, whether these are all of them.
pub fn cloth_without_plan(draft: &Draft, own: &Model, cases: &[usize]) -> Vec<(String, Vec<String>, bool)> {
    let plan = &own.plan;
    let frames = plan.frames().iter().enumerate().filter(|(f, of)| of.is_piece && plan.has_frame(*f));
    let mut materials: Vec<&str> = Vec::new();
    for cut in frames.flat_map(|(_, of)| &of.finishing.cuts).filter(|c| !c.material.is_empty()) {
        if !materials.contains(&&*cut.material) {
            materials.push(&cut.material);
        }
    }
    let sizes: Vec<&str> = cases.iter().filter_map(|c| plan.cases.list.get(*c)).map(|c| c.address.as_str()).collect();
    let has = |material: &str, size: &str| {
        let mut of_view = draft.plans.iter().filter(|p| p.material == material && p.view == own.view());
        of_view.any(|p| matches!(p.sizes.as_slice(), [one] if one.size == size && one.count <= 1))
    };
    let lacking = materials.into_iter().map(|material| {
        let lacks: Vec<String> = sizes.iter().filter(|s| !has(material, s)).map(|s| (*s).to_owned()).collect();
        let all = lacks.len() == sizes.len();
        (material.to_owned(), lacks, all)
    });
    lacking.filter(|(_, lacks, _)| !lacks.is_empty()).collect()
}

/// What lines are made of.
struct List<'a> {
    page: &'a Page<'a>,
    sewing: Sewing,
    steps: Steps,
}

impl List<'_> {
    fn piece(&self, frame: usize, plan: &FramePlan) -> Line {
        let cuts: Vec<String> =
            plan.finishing.cuts.iter().map(|cut| cutting::in_words(self.page, (frame, cut))).collect();
        let steps = self.steps.that_mention(&plan.name);
        let mut open = Vec::new();
        if cuts.is_empty() {
            open.push(t!("check-no-cut"));
        }
        if plan.finishing.cuts.iter().any(|c| c.along.is_none() && c.heading.is_none()) {
            open.push(t!("check-no-grain"));
        }
        open.extend(self.steps.lacking(&steps));
        let seams = (0..plan.edges.len()).flat_map(|e| self.sewing.of_edge(frame, e)).map(|s| s.seam);
        let notches: Vec<usize> = distinct(seams).map(|s| self.page.model.plan.seams[s].notches.len()).collect();
        line(&t!("check-the-piece"), &cuts.join("; "), Cell::Count(notches.iter().sum::<usize>() as u64), steps, &open)
    }

    fn edge(&self, frame: usize, edge: usize) -> Line {
        let plan = &self.page.model.plan.frames()[frame];
        let sewn = self.sewing.of_edge(frame, edge);
        let mut is: Vec<String> = Vec::new();
        for seam in sewn.iter().map(|s| self.seam((frame, edge), s)) {
            // A seam of an edge with its own mirrored copy has it on both sides.
            if !is.contains(&seam) {
                is.push(seam);
            }
        }
        is.extend(self.otherwise(frame, edge));
        let notches: usize =
            distinct(sewn.iter().map(|s| s.seam)).map(|s| self.page.model.plan.seams[s].notches.len()).sum();
        let notches = if sewn.is_empty() { Cell::Empty } else { Cell::Count(notches as u64) };
        let open: Vec<String> = is.is_empty().then(|| t!("check-edge-open")).into_iter().collect();
        line(&self.edge_name(plan, edge), &is.join("; "), notches, Vec::new(), &open)
    }

    /// A seam, seen from an edge: `seam side, to front side`.
    fn seam(&self, own: (usize, usize), sewn: &Sewn) -> String {
        let plan = &self.page.model.plan;
        let (ours, theirs) = (self.sewing.parts(sewn.seam, sewn.side), self.sewing.parts(sewn.seam, 1 - sewn.side));
        // Part by part where both sides have as many, else to the whole other side.
        let mates = if ours.len() == theirs.len() { &theirs[sewn.part..=sewn.part] } else { theirs };
        // Piece by piece, each with its edges.
        let mut by_piece: Vec<(String, Vec<String>)> = Vec::new();
        for (frame, edge, ..) in mates.iter().flatten() {
            let other = &plan.frames()[*frame];
            let (piece, edge) = if (*frame, *edge) == own {
                (t!("check-own-copy"), String::new())
            } else {
                (readable(&other.name), self.edge_name(other, *edge))
            };
            match by_piece.iter_mut().find(|(known, _)| *known == piece) {
                Some((_, edges)) if edges.contains(&edge) => {}
                Some((_, edges)) => edges.push(edge),
                None => by_piece.push((piece, vec![edge])),
            }
        }
        let named = by_piece.iter().map(|(piece, edges)| format!("{piece} {}", edges.join(", ")).trim_end().to_owned());
        let mut names: Vec<String> = named.collect();
        let strips =
            plan.publishing.strips.iter().filter(|s| seams_of_strip(self.page.model, s.length).contains(&sewn.seam));
        names.extend(strips.map(|s| readable(&self.page.draft.strips[s.place].name)));
        let of = &plan.seams[sewn.seam];
        let seam = readable(&of.name);
        let words = if names.is_empty() {
            t!("check-seam", seam)
        } else {
            t!("check-seam-to", seam, others = names.join(&format!(" {} ", t!("check-and"))))
        };
        if sewn.partial { t!("check-partly", words) } else { words }
    }

    /// What an edge is besides its seams.
    fn otherwise(&self, frame: usize, edge: usize) -> Vec<String> {
        let plan = &self.page.model.plan.frames()[frame];
        let mut out = Vec::new();
        if plan.finishing.cuts.iter().any(|c| c.on_fold == Some(edge)) {
            out.push(t!("on-fold-of-cloth"));
        }
        if plan.finishing.cuts.iter().any(|c| c.border == Some(edge)) {
            out.push(t!("check-border"));
        }
        let of_edge = || plan.finishing.allowances.iter().filter(|a| a.edge == edge);
        match of_edge().map(|a| a.turns).max() {
            Some(turns) if turns > 0 => out.push(t!("check-hem", turns)),
            _ => {}
        }
        if !out.is_empty() || !self.sewing.of_edge(frame, edge).is_empty() {
            return out;
        }
        let folds = plan.finishing.folds.iter().filter(|f| f.line.1 == plan.edges[edge]);
        out.extend(folds.map(|f| t!("check-fold", name = readable(&f.name))));
        let frames =
            self.page.model.plan.frames().iter().enumerate().filter(|(f, _)| self.page.model.plan.has_frame(*f));
        let on = frames.filter(|(_, f)| f.finishing.marks.iter().any(|m| m.piece.as_deref() == Some(&*plan.name)));
        out.extend(on.map(|(_, f)| t!("check-lies-on", piece = readable(&f.name))));
        if out.is_empty() && of_edge().next().is_some() {
            let is_nothing = of_edge().all(|a| self.is_nothing(a));
            out.push(if is_nothing { t!("check-as-cut") } else { t!("check-own-allowance") });
        }
        out
    }

    /// Whether an allowance is told to be 0, in all sizes.
    fn is_nothing(&self, allowance: &AllowancePlan) -> bool {
        let width = |case: usize| self.page.model.real(case, &allowance.width).ok();
        allowance.to_width.is_none() && self.page.cases.iter().all(|c| width(*c) == Some(0.0))
    }

    fn strip(&self, length: NodeId, name: &str) -> Line {
        let plan = &self.page.model.plan;
        let seams = seams_of_strip(self.page.model, length);
        let is: Vec<String> = seams.iter().map(|s| t!("check-seam", seam = readable(&plan.seams[*s].name))).collect();
        let notches: usize = seams.iter().map(|s| plan.seams[*s].notches.len()).sum();
        let notches = if seams.is_empty() { Cell::Empty } else { Cell::Count(notches as u64) };
        let steps = self.steps.that_mention(name);
        let open = self.steps.lacking(&steps);
        line(&readable(name), &is.join("; "), notches, steps, &open)
    }

    fn edge_name(&self, frame: &FramePlan, edge: usize) -> String {
        let piece = self.page.model.draft.pieces.iter().find(|p| *p.name == *frame.name);
        piece.and_then(|p| p.edges.get(edge)).map_or_else(|| t!("check-edge", number = edge + 1), |e| readable(&e.name))
    }
}

fn line(name: &str, is: &str, notches: Cell, steps: Vec<String>, open: &[String]) -> Line {
    let words = |text: String| if text.is_empty() { Cell::Empty } else { Cell::Words(text) };
    let cells = vec![words(is.to_owned()), notches, words(steps.join(", ")), words(open.join("; "))];
    Line { name: name.to_owned(), cells, ..Line::default() }
}

fn distinct(places: impl Iterator<Item = usize>) -> impl Iterator<Item = usize> {
    let mut all: Vec<usize> = places.collect();
    all.sort_unstable();
    all.dedup();
    all.into_iter()
}

/// The steps of the view: their number, the pieces drawn, their words.
struct Steps {
    /// Number, pieces that are drawn, words in small letters with `_` as a space.
    list: Vec<(usize, Vec<String>, String)>,
    /// Names that words could mean, longest first: `front` is not meant where `front yoke` stands.
    names: Vec<String>,
}

impl Steps {
    fn of(page: &Page<'_>) -> Self {
        let steps = steps_of_view(page.draft, page.model).into_iter().zip(1..);
        let list = steps.map(|(plan, number)| {
            let step = &page.draft.booklet[plan.place];
            (number, step.pieces.clone(), plain(&format!("{} {}", step.title, step.text)))
        });
        let others = page.draft.strips.iter().map(|s| &s.name).chain(page.draft.notions.iter().map(|n| &n.name));
        let mut names: Vec<String> =
            page.draft.pieces.iter().map(|p| &p.name).chain(others).map(|n| plain(n)).collect();
        names.sort_by_key(|n| std::cmp::Reverse(n.chars().count()));
        names.dedup();
        Self { list: list.collect(), names }
    }

    /// What is open of something that these steps mention: nothing where there are no steps at all.
    fn lacking(&self, mentioning: &[String]) -> Vec<String> {
        let is_open = mentioning.is_empty() && !self.list.is_empty();
        is_open.then(|| t!("check-no-step")).into_iter().collect()
    }

    /// The numbers of the steps that show a piece, and in brackets of those that only name it.
    fn that_mention(&self, name: &str) -> Vec<String> {
        let own = plain(name);
        let longer: Vec<&String> = self.names.iter().filter(|n| n.len() > own.len() && n.contains(&own)).collect();
        let says = |words: &str| {
            let rest = longer.iter().fold(words.to_owned(), |rest, other| rest.replace(other.as_str(), "\u{0}"));
            rest.match_indices(&own).any(|(at, _)| {
                let before = rest[..at].chars().next_back();
                let behind = rest[at + own.len()..].trim_start_matches(['s', 'e']).chars().next();
                !before.is_some_and(char::is_alphanumeric) && !behind.is_some_and(char::is_alphanumeric)
            })
        };
        let one = |(number, pieces, words): &(usize, Vec<String>, String)| match pieces.iter().any(|p| p == name) {
            true => Some(number.to_string()),
            // "Press it to the back" may speak of a piece or not: whoever reads the list decides.
            false => says(words).then(|| format!("({number})")),
        };
        self.list.iter().filter_map(one).collect()
    }
}

fn plain(words: &str) -> String {
    words.replace('_', " ").to_lowercase()
}
