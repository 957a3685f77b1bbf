//! What is published beside the pieces: strips, notions, cloth, the steps of the booklet, fittings.

use crate::document::{
    BookletStep, Draft, FittingNote, GirthPlace, Material, MaterialKind, Notion, Part, Release, RuleGirth, Strip,
};
use crate::session::EditError;
use crate::session::choices::choose;
use crate::session::commands::part::add;
use crate::texts::say;

/// A change of what is published. Texts are changed as such; renaming and deleting are those of parts.
#[derive(Clone, Debug, PartialEq)]
pub enum PublishCommand {
    /// A strip is added: name, length.
    AddStrip(String, String),
    /// A notion is added: name, length or size.
    AddNotion(String, String),
    /// A material is added.
    AddMaterial(String, MaterialKind),
    /// A step of the booklet is put at a place: place, heading.
    AddStep(usize, String),
    /// A fitting of a size is noted.
    AddFitting(String),
    /// A release was made: its date is that of the edition.
    Released(Release),
    /// A part of a list is put at another place of it.
    Place(Part, usize),
    /// A field that is chosen: part, field, what, as `choices` says.
    Choose(Part, &'static str, u32),
    /// A step of the booklet draws a piece, or not.
    StepPiece(usize, String, bool),
    /// A step of the booklet belongs to a view, or not.
    StepView(usize, String, bool),
    /// A list inside a part gets one more: `widths` of a material, `sold` of a notion, `pictures` of a step.
    AddItem(Part, &'static str),
    /// One of such a list is taken out; also of `fittings` and `girths`.
    TakeItem(Part, &'static str, usize),
    /// A girth of which rules speak gets a formula.
    AddGirth(GirthPlace),
    /// Every size of the chart gets a place for the size of the rules that it is.
    RuleSizes,
}

impl PublishCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddStrip(name, _) => say!("undo-add-strip", name),
            Self::AddNotion(name, _) => say!("undo-add-notion", name),
            Self::AddMaterial(name, _) => say!("undo-add-material", name),
            Self::AddStep(..) => say!("undo-add-booklet-step"),
            Self::AddFitting(_) => say!("undo-add-fitting"),
            Self::Released(release) => say!("undo-released", edition = release.edition),
            Self::Place(part, _) => say!("undo-move", part = part.words()),
            Self::Choose(part, ..) | Self::AddItem(part, _) | Self::TakeItem(part, ..) => {
                say!("undo-change", part = part.words())
            }
            Self::StepPiece(step, ..) | Self::StepView(step, ..) => {
                say!("undo-change", part = Part::Step(*step).words())
            }
            Self::AddGirth(_) | Self::RuleSizes => say!("undo-care"),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::AddStrip(name, length) => {
                let strip = Strip { name: name.clone(), length: length.clone(), ..Strip::default() };
                return add(draft, Part::Strip(name.clone()), |d| d.strips.push(strip));
            }
            Self::AddNotion(name, size) => {
                let notion = Notion { name: name.clone(), count: 1, size: size.clone(), ..Notion::default() };
                return add(draft, Part::Notion(name.clone()), |d| d.notions.push(notion));
            }
            Self::AddMaterial(name, kind) => {
                let material = Material { name: name.clone(), kind: *kind, ..Material::default() };
                return add(draft, Part::Material(name.clone()), |d| d.materials.push(material));
            }
            Self::AddStep(place, title) => {
                let step = BookletStep { title: title.clone(), ..BookletStep::default() };
                draft.booklet.insert((*place).min(draft.booklet.len()), step);
            }
            Self::AddFitting(size) => {
                draft.log.fittings.push(FittingNote { size: size.clone(), ..FittingNote::default() });
            }
            Self::Released(release) => {
                draft.date.clone_from(&release.date);
                draft.log.releases.push(release.clone());
            }
            Self::Place(part, to) => place(draft, part, *to)?,
            Self::Choose(part, field, to) => {
                if !choose(draft, part, field, *to) {
                    return Err(gone(part));
                }
            }
            Self::StepPiece(i, piece, has) => {
                let all: Vec<String> = draft.pieces.iter().map(|p| p.name.clone()).collect();
                tick(&mut step(draft, *i)?.pieces, &all, piece, *has);
            }
            Self::StepView(i, view, has) => {
                let all: Vec<String> = draft.views.iter().map(|v| v.name.clone()).collect();
                let views = &mut step(draft, *i)?.views;
                // No view means all of them.
                if views.is_empty() {
                    views.clone_from(&all);
                }
                tick(views, &all, view, *has);
                if views.is_empty() {
                    let words = say!("refused-only-view", view);
                    return Err(EditError::refused(words));
                }
                if *views == all {
                    views.clear();
                }
            }
            Self::AddItem(part, field) => change(draft, part, field, None)?,
            Self::TakeItem(part, field, i) => change(draft, part, field, Some(*i))?,
            Self::AddGirth(place) => {
                if draft.care.girths.iter().all(|g| g.place != *place) {
                    draft.care.girths.push(RuleGirth { place: *place, is: String::new() });
                }
            }
            Self::RuleSizes => {
                let sizes = &mut draft.care.rule_sizes;
                let missing = draft.chart.girth.iter().filter(|l| sizes.iter().all(|(own, _)| own != *l));
                let missing: Vec<_> = missing.map(|l| (l.clone(), String::new())).collect();
                sizes.extend(missing);
            }
        }
        Ok(String::new())
    }
}

fn gone(part: &Part) -> EditError {
    EditError::refused(say!("gone-part", part = part.words()))
}

fn step(draft: &mut Draft, i: usize) -> Result<&mut BookletStep, EditError> {
    draft.booklet.get_mut(i).ok_or_else(|| gone(&Part::Step(i)))
}

/// Puts a name into a list or takes it out; the list stands in the order of `all`.
fn tick(list: &mut Vec<String>, all: &[String], name: &str, has: bool) {
    list.retain(|n| n != name);
    if has {
        list.push(name.to_owned());
    }
    list.sort_by_key(|n| all.iter().position(|a| a == n));
}

/// Puts a part of a list at another place.
fn place(draft: &mut Draft, part: &Part, to: usize) -> Result<(), EditError> {
    fn put<T>(list: &mut Vec<T>, from: Option<usize>, to: usize) -> Option<()> {
        let from = from.filter(|i| *i < list.len())?;
        let one = list.remove(from);
        list.insert(to.min(list.len()), one);
        Some(())
    }
    let from = place_of(draft, part);
    let done = match part {
        Part::Strip(_) => put(&mut draft.strips, from, to),
        Part::Notion(_) => put(&mut draft.notions, from, to),
        Part::Material(_) => put(&mut draft.materials, from, to),
        Part::Step(_) => put(&mut draft.booklet, from, to),
        _ => None,
    };
    done.ok_or_else(|| gone(part))
}

/// Where a part stands in its list: strips, notions, materials and steps of the booklet.
pub fn place_of(draft: &Draft, part: &Part) -> Option<usize> {
    match part {
        Part::Strip(name) => draft.strips.iter().position(|s| s.name == *name),
        Part::Notion(name) => draft.notions.iter().position(|n| n.name == *name),
        Part::Material(name) => draft.materials.iter().position(|m| m.name == *name),
        Part::Step(i) => (*i < draft.booklet.len()).then_some(*i),
        _ => None,
    }
}

/// Adds one to a list inside a part, or takes one out.
fn change(draft: &mut Draft, part: &Part, field: &str, take: Option<usize>) -> Result<(), EditError> {
    fn put<T: Default>(list: &mut Vec<T>, take: Option<usize>) -> Option<()> {
        match take {
            None => list.push(T::default()),
            Some(i) if i < list.len() => drop(list.remove(i)),
            Some(_) => return None,
        }
        Some(())
    }
    let at = place_of(draft, part);
    let done = match (part, field, at) {
        (Part::Material(_), "widths", Some(i)) => put(&mut draft.materials[i].widths, take),
        (Part::Notion(_), "sold", Some(i)) => put(&mut draft.notions[i].sold, take),
        (Part::Step(_), "pictures", Some(i)) => put(&mut draft.booklet[i].pictures, take),
        (Part::Kept, "fittings", _) => put(&mut draft.log.fittings, take),
        (Part::Draft, "girths", _) => put(&mut draft.care.girths, take),
        _ => None,
    };
    done.ok_or_else(|| gone(part))
}
