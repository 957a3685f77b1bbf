//! What was computed, with the shapes that are drawn of it.

use std::cell::RefCell;
use std::path::Path;
use std::rc::Rc;
use std::sync::Arc;

use super::booklet::{self, Photos};
use super::canvas::{Flat, State, tags};
use super::shapes::Shapes;
use super::sheets::{Made, Printing};
use crate::base::{Code, Finding};
use crate::compute::{Cases, Model};
use crate::document::{Draft, Inner, OWN_LETTER, Part};
use crate::session::{Computed, PrintWish, inner_parts, part_of_finding};
use crate::texts::say;

/// One revision of the draft as it is shown.
pub(super) struct Scene {
    /// What was computed, in the view that is shown.
    pub computed: Arc<Computed>,
    /// The same in all views.
    pub whole: Arc<Computed>,
    /// The name of the view that is shown; empty: the first, or the draft has none.
    view: String,
    pub shapes: Shapes,
    /// The part that each finding speaks of.
    parts: Vec<Option<Part>>,
    /// How the seams stand in a case, looked up once for a revision.
    seams: RefCell<Option<(usize, Rc<Vec<State>>)>>,
    /// The pages that were made last, and of what.
    pages: RefCell<Option<(Printing, String, Made)>>,
    /// The booklet that was made last, and of what.
    booklet: RefCell<Option<(PrintWish, booklet::Made)>>,
    photos: RefCell<Photos>,
    /// Shapes as straight lines, at the scale at which they were drawn last.
    pub flat: RefCell<Flat>,
}

impl Scene {
    /// Whether a step of this piece cannot be done, so that it is drawn without it.
    pub fn step_fails(&self, piece: &str) -> bool {
        let is_it = |f: &&Finding| f.code == Code::StepFails && f.place.piece == piece;
        self.computed.findings.iter().find(is_it).is_some()
    }

    pub fn of(whole: Arc<Computed>) -> Self {
        let computed = whole.in_view(0);
        let shapes = computed.model.as_ref().map_or_else(Shapes::default, |m| Shapes::of(&m.draft, m));
        let parts = parts(&computed);
        let (seams, pages, flat) = (RefCell::default(), RefCell::default(), RefCell::default());
        let (booklet, photos) = (RefCell::default(), RefCell::default());
        Self { computed, whole, view: String::new(), shapes, parts, seams, pages, booklet, photos, flat }
    }

    /// Which view is shown, by its place; 0 where the draft has none.
    pub fn view(&self) -> usize {
        self.whole.views().position(|v| v == self.view).unwrap_or(0)
    }

    /// Shows another view.
    pub fn see_view(&mut self, view: &str) {
        view.clone_into(&mut self.view);
        self.take(Arc::clone(&self.whole), false);
    }

    /// The pages of a print, made once for a revision.
    pub fn sheets(&self, printing: &Printing, chosen: &str) -> Made {
        if let Some((known, size, made)) = &*self.pages.borrow()
            && known == printing
            && size == chosen
        {
            return Rc::clone(made);
        }
        let made = Rc::new(super::sheets::make(self, printing, chosen));
        *self.pages.borrow_mut() = Some((printing.clone(), chosen.to_owned(), Rc::clone(&made)));
        made
    }

    /// The booklet, made once for a revision. `folder`: that of the draft.
    pub fn booklet(&self, wish: &PrintWish, folder: Option<&Path>) -> booklet::Made {
        if let Some((known, made)) = &*self.booklet.borrow()
            && known == wish
        {
            return Rc::clone(made);
        }
        let made = Rc::new(booklet::make(self, wish, &mut self.photos.borrow_mut(), folder));
        *self.booklet.borrow_mut() = Some((wish.clone(), Rc::clone(&made)));
        made
    }

    /// How the seams stand in a case, in the order of the plan.
    pub fn seams(&self, case: usize) -> Rc<Vec<State>> {
        if let Some((known, states)) = &*self.seams.borrow()
            && *known == case
        {
            return Rc::clone(states);
        }
        let states = Rc::new(self.model().map_or_else(Vec::new, |model| tags::states(self, model, case)));
        *self.seams.borrow_mut() = Some((case, Rc::clone(&states)));
        states
    }

    /// Takes in what was computed of a later revision. Pieces keep their places on the table, and shapes that cannot be
    /// computed any more are the last good ones.
    /// `still`: something is pulled, and the sizes lie over each other as they did.
    /// Gives back what was shown before.
    pub fn take(&mut self, whole: Arc<Computed>, still: bool) -> Arc<Computed> {
        let old = std::mem::replace(&mut self.whole, whole);
        let computed = self.whole.in_view(self.view());
        if let Some(model) = &computed.model {
            let earlier = std::mem::take(&mut self.shapes);
            self.shapes = earlier.followed(&model.draft, model, still);
        }
        self.parts = parts(&computed);
        self.seams.replace(None);
        self.pages.replace(None);
        self.booklet.replace(None);
        self.flat.get_mut().tidy();
        self.computed = computed;
        old
    }

    pub fn draft(&self) -> &Draft {
        &self.computed.draft
    }

    pub fn model(&self) -> Option<&Model> {
        self.computed.model.as_ref()
    }

    /// The named parts of a piece or drawing; of a derived piece those that it has in the end, so far as that is computed.
    pub fn parts_in(&self, frame: &str) -> Vec<Part> {
        let told = self.model().map(|m| &m.draft.pieces).and_then(|p| p.iter().find(|p| p.name == frame));
        let Some(told) = told else { return inner_parts(self.draft(), frame) };
        let is_seen = |(_, name): &(Inner, &String)| !name.contains(OWN_LETTER);
        told.named().filter(is_seen).map(|(i, name)| Part::Inner(frame.to_owned(), i, name.clone())).collect()
    }

    pub fn cases(&self) -> Option<&Cases> {
        self.model().map(|m| &m.plan.cases)
    }

    /// The place of a size or person among the cases; the base or the first where there is none of that name.
    pub fn case_of(&self, address: &str) -> usize {
        let Some(cases) = self.cases() else { return 0 };
        cases.list.iter().position(|c| c.address == address).or(cases.base).unwrap_or(0)
    }

    /// The address that is shown first: the base size, else the first size or person.
    pub fn first(&self) -> String {
        let Some(cases) = self.cases() else { return String::new() };
        cases.list.get(cases.base.unwrap_or(0)).map_or_else(String::new, |c| c.address.clone())
    }

    /// Where a case stands in the range: 0 the first size, 1 the last. Persons are in no range.
    pub fn part(&self, case: usize) -> Option<f32> {
        let range = self.cases()?.range;
        match range {
            _ if case >= range => None,
            1 => Some(0.0),
            _ => Some(case as f32 / (range - 1) as f32),
        }
    }

    /// How a case is called: `size 88`, `subject 28249`.
    pub fn called(&self, case: usize) -> String {
        let Some(cases) = self.cases() else { return String::new() };
        match cases.list.get(case) {
            Some(c) if c.person.is_none() => say!("window-size", size = c.address),
            Some(c) => c.address.clone(),
            None => String::new(),
        }
    }

    /// Whether a piece or drawing belongs to the view that is shown.
    pub fn has(&self, frame: &str) -> bool {
        let has =
            |m: &Model| m.plan.frames().iter().position(|f| *f.name == *frame).is_none_or(|f| m.plan.has_frame(f));
        self.model().is_none_or(has)
    }

    pub fn title(&self) -> String {
        let title = self.draft().title.trim();
        if title.is_empty() { say!("window-untitled") } else { title.to_owned() }
    }

    /// Open findings, with their places in the whole list.
    pub fn findings(&self) -> impl Iterator<Item = (usize, &Finding)> {
        self.computed.findings.iter().enumerate().filter(|(_, f)| f.silenced.is_none())
    }

    /// Open findings that speak of a part.
    pub fn findings_at<'a>(&'a self, part: &'a Part) -> impl Iterator<Item = (usize, &'a Finding)> {
        self.findings().filter(move |(i, _)| self.parts.get(*i).and_then(Option::as_ref) == Some(part))
    }
}

fn parts(computed: &Computed) -> Vec<Option<Part>> {
    computed.findings.iter().map(|f| part_of_finding(&computed.draft, f)).collect()
}
