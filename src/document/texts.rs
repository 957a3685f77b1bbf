//! Every text of a draft with its address and its role, to be read or changed.
//!
//! The one list of what a draft holds: renaming, "used by" and the fields of the window all go through it.

mod plans;
mod steps;

use std::sync::Arc;

use super::{Address, Audience, Draft, Edge, Fit, Inner, Part, Point, Role, Segment, Tuck};

/// Sees a text.
pub type Visit<'a> = dyn FnMut(&Address, &Role, &mut String) + 'a;

impl Draft {
    /// Shows `visit` every text. Pieces, drawings and seams in which it changes nothing stay shared.
    pub fn each_text(&mut self, visit: &mut Visit<'_>) {
        self.texts_outside_frames(visit);
        self.texts_of_frames(&|_| true, visit);
    }

    /// Texts of the pieces and drawings that are wanted by name.
    fn texts_of_frames(&mut self, wanted: &dyn Fn(&str) -> bool, visit: &mut Visit<'_>) {
        for drawing in self.drawings.iter_mut().filter(|d| wanted(&d.name)) {
            shared(drawing, visit, |drawing, visit| {
                let name = drawing.name.clone();
                let mut to = In(Part::Drawing(name.clone()), visit);
                to.see("name", Role::OwnName, &mut drawing.name);
                to.see("note", Role::Words, &mut drawing.note);
                points(&name, &mut drawing.points, visit);
                edges(&name, Inner::Line, &mut drawing.lines, visit);
            });
        }
        for piece in self.pieces.iter_mut().filter(|p| wanted(&p.name)) {
            shared(piece, visit, piece_texts);
        }
    }

    fn texts_outside_frames(&mut self, visit: &mut Visit<'_>) {
        self.head(visit);
        self.chart_texts(visit);
        self.block_texts(visit);
        for value in &mut self.values {
            let mut to = In(Part::Value(value.name.clone()), visit);
            to.see("name", Role::OwnName, &mut value.name);
            to.see("is", Role::Formula, &mut value.is);
            to.see("start", Role::Formula, &mut value.start);
            to.see("least", Role::Formula, &mut value.least);
            to.see("most", Role::Formula, &mut value.most);
            to.see("note", Role::Words, &mut value.note);
        }
        self.placement_texts(visit);
        for seam in &mut self.seams {
            shared(seam, visit, seam_texts);
        }
        self.judged_texts(visit);
        self.bought_texts(visit);
        self.published_texts(visit);
    }

    /// Texts of the part of an address and of others near it.
    fn texts_near(&mut self, at: &Address, visit: &mut Visit<'_>) {
        match at.part.frame() {
            Some(frame) => self.texts_of_frames(&|name| name == frame, visit),
            None => self.texts_outside_frames(visit),
        }
    }

    /// The text at an address.
    pub fn text(&self, at: &Address) -> Option<String> {
        let mut found = None;
        self.only(&at.part).texts_near(at, &mut |address, _, text| {
            if address == at && found.is_none() {
                found = Some(text.clone());
            }
        });
        found
    }

    /// Puts a text at an address; says whether there is such an address.
    pub fn set_text(&mut self, at: &Address, to: &str) -> bool {
        let mut found = false;
        self.texts_near(at, &mut |address, _, text| {
            if address == at && !found {
                found = true;
                if text != to {
                    to.clone_into(text);
                }
            }
        });
        found
    }

    /// A draft with this part alone; of parts that have no list of their own: the whole draft.
    pub fn only(&self, part: &Part) -> Self {
        fn named<T: Clone>(list: &[T], is_it: impl Fn(&T) -> bool) -> Vec<T> {
            list.iter().filter(|t| is_it(t)).cloned().collect()
        }
        let mut out = Self::default();
        match part {
            Part::Value(n) => out.values = named(&self.values, |v| v.name == *n),
            Part::Row(n) => out.chart.rows = named(&self.chart.rows, |r| r.name == *n),
            Part::Person(n) => out.chart.persons = named(&self.chart.persons, |p| p.name == *n),
            Part::Piece(n) | Part::Drawing(n) | Part::Inner(n, ..) => {
                out.pieces = named(&self.pieces, |p| p.name == *n);
                out.drawings = named(&self.drawings, |d| d.name == *n);
            }
            Part::Seam(n) => out.seams = named(&self.seams, |s| s.name == *n),
            Part::Condition(n) => out.conditions = named(&self.conditions, |c| c.name == *n),
            Part::Placement(n) => out.placements = named(&self.placements, |p| p.name == *n),
            Part::Joint(n) => out.joints = named(&self.joints, |j| j.name == *n),
            Part::Measure(n) => out.measures = named(&self.measures, |m| m.name == *n),
            Part::Material(n) => out.materials = named(&self.materials, |m| m.name == *n),
            Part::Strip(n) => out.strips = named(&self.strips, |s| s.name == *n),
            Part::Notion(n) => out.notions = named(&self.notions, |m| m.name == *n),
            Part::Step(_) => out.booklet.clone_from(&self.booklet),
            Part::Draft => {
                out.title.clone_from(&self.title);
                out.note.clone_from(&self.note);
                out.author.clone_from(&self.author);
                out.licence.clone_from(&self.licence);
                out.contact.clone_from(&self.contact);
                out.edition.clone_from(&self.edition);
                out.date.clone_from(&self.date);
                out.audience.clone_from(&self.audience);
                out.language = self.language;
                out.care.clone_from(&self.care);
                out.settings.clone_from(&self.settings);
                out.chart.survey = self.chart.survey;
                out.chart.girth.clone_from(&self.chart.girth);
                out.chart.cup.clone_from(&self.chart.cup);
                out.chart.length.clone_from(&self.chart.length);
                out.chart.base.clone_from(&self.chart.base);
            }
            _ => out = self.clone(),
        }
        out
    }

    fn head(&mut self, visit: &mut Visit<'_>) {
        let mut to = In(Part::Draft, visit);
        to.see("title", Role::Words, &mut self.title);
        to.see("note", Role::Words, &mut self.note);
        to.see("author", Role::Words, &mut self.author);
        to.see("licence", Role::Words, &mut self.licence);
        to.see("contact", Role::Words, &mut self.contact);
        to.see("edition", Role::Words, &mut self.edition);
        to.see("date", Role::Words, &mut self.date);
        let settings = &mut self.settings;
        to.see("seam_limit", Role::Formula, &mut settings.seam_limit);
        to.see("notch_limit", Role::Formula, &mut settings.notch_limit);
        to.see("joint_angle", Role::Formula, &mut settings.joint_angle);
        to.see("joint_gap", Role::Formula, &mut settings.joint_gap);
        to.see("notch_margin", Role::Formula, &mut settings.notch_margin);
        to.see("notch_depth", Role::Formula, &mut settings.notch_depth);
        to.see("allowance", Role::Formula, &mut settings.allowance);
        to.see("page_margin", Role::Formula, &mut settings.page_margin);
        to.see("odd_angle", Role::Formula, &mut settings.odd_angle);
        to.see("odd_length", Role::Formula, &mut settings.odd_length);
        to.see("grain_angle", Role::Formula, &mut settings.grain_angle);
        for (i, (_, reason)) in settings.unchecked.iter_mut().enumerate() {
            to.nth("unchecked reason", i, Role::Words, reason);
        }
        if let Audience::Child { from, to: until } = &mut self.audience {
            to.see("youngest", Role::Words, from);
            to.see("oldest", Role::Words, until);
        }
        for (i, (size, rule)) in self.care.rule_sizes.iter_mut().enumerate() {
            to.nth("rule size of", i, Role::Label, size);
            to.nth("rule size", i, Role::Words, rule);
        }
        for (i, girth) in self.care.girths.iter_mut().enumerate() {
            to.nth("rule girth", i, Role::Formula, &mut girth.is);
        }
    }

    fn block_texts(&mut self, visit: &mut Visit<'_>) {
        let mut to = In(Part::Kept, visit);
        for (i, block) in self.blocks.iter_mut().enumerate() {
            for (field, text) in [
                ("block name", &mut block.name),
                ("block file", &mut block.file),
                ("block title", &mut block.title),
                ("block author", &mut block.author),
                ("block licence", &mut block.licence),
                ("block contact", &mut block.contact),
                ("block edition", &mut block.edition),
                ("block date", &mut block.date),
                ("block note", &mut block.note),
            ] {
                to.nth(field, i, Role::Words, text);
            }
            for (k, taken) in block.parts.iter_mut().enumerate() {
                if let Some(part) = Part::of_words(&taken.part) {
                    to.within("block part", i, k, Role::NameOf(part.renamed(&taken.name)), &mut taken.name);
                }
            }
        }
    }

    fn chart_texts(&mut self, visit: &mut Visit<'_>) {
        let chart = &mut self.chart;
        let mut to = In(Part::Draft, visit);
        to.all("girth", &Role::Label, &mut chart.girth);
        to.all("cup", &Role::Label, &mut chart.cup);
        to.all("length", &Role::Label, &mut chart.length);
        to.see("base", Role::Label, &mut chart.base);
        for set in &mut chart.sets {
            let mut to = In(Part::SizeSet(set.name.clone()), visit);
            to.see("name", Role::OwnName, &mut set.name);
            to.all("girth", &Role::Label, &mut set.girth);
            to.all("cup", &Role::Label, &mut set.cup);
            to.all("length", &Role::Label, &mut set.length);
            to.see("base", Role::Label, &mut set.base);
            to.all("sheets", &Role::Sheet, &mut set.sheets);
        }
        for row in &mut chart.rows {
            let mut to = In(Part::Row(row.name.clone()), visit);
            to.see("name", Role::OwnName, &mut row.name);
            for (field, text) in [
                ("what", &mut row.what),
                ("level", &mut row.level),
                ("how", &mut row.how),
                ("source", &mut row.source),
                ("note", &mut row.note),
            ] {
                to.see(field, Role::Words, text);
            }
            to.see("is", Role::Formula, &mut row.is);
            for (i, cell) in row.cells.iter_mut().enumerate() {
                to.nth("cell of", i, Role::Label, &mut cell.0);
                to.nth("cell", i, Role::Formula, &mut cell.1);
            }
        }
        for person in &mut chart.persons {
            let mut to = In(Part::Person(person.name.clone()), visit);
            to.see("name", Role::OwnName, &mut person.name);
            to.see("note", Role::Words, &mut person.note);
            for (i, cell) in person.cells.iter_mut().enumerate() {
                to.nth("cell of", i, Role::Row, &mut cell.0);
                to.nth("cell", i, Role::Formula, &mut cell.1);
            }
        }
    }

    fn placement_texts(&mut self, visit: &mut Visit<'_>) {
        for p in &mut self.placements {
            let mut to = In(Part::Placement(p.name.clone()), visit);
            let (lay, on) = (Role::FormulaIn(p.lay.clone()), Role::FormulaIn(p.on.clone()));
            to.see("name", Role::OwnName, &mut p.name);
            to.see("lay", Role::Frame, &mut p.lay);
            to.see("on", Role::Frame, &mut p.on);
            to.see("point", lay.clone(), &mut p.point);
            to.see("onto", on.clone(), &mut p.onto);
            to.see("towards", lay, &mut p.towards);
            to.see("along", on.clone(), &mut p.along);
            to.see("turned", on.clone(), &mut p.turned);
            to.see("overlap", on, &mut p.overlap);
        }
    }

    fn judged_texts(&mut self, visit: &mut Visit<'_>) {
        for joint in &mut self.joints {
            let mut to = In(Part::Joint(joint.name.clone()), visit);
            to.see("name", Role::OwnName, &mut joint.name);
            to.all("corners", &Role::Formula, &mut joint.corners);
            to.see("meant", Role::Formula, &mut joint.meant);
            to.see("note", Role::Words, &mut joint.note);
        }
        for condition in &mut self.conditions {
            let mut to = In(Part::Condition(condition.name.clone()), visit);
            to.see("name", Role::OwnName, &mut condition.name);
            to.see("must", Role::Condition, &mut condition.must);
            to.all("found_by", &Role::Value, &mut condition.found_by);
            to.see("note", Role::Words, &mut condition.note);
        }
        for measure in &mut self.measures {
            let mut to = In(Part::Measure(measure.name.clone()), visit);
            to.see("name", Role::OwnName, &mut measure.name);
            to.see("is", Role::Formula, &mut measure.is);
            to.see("body", Role::Row, &mut measure.body);
            to.see("ease_least", Role::Formula, &mut measure.ease_least);
            to.see("ease_most", Role::Formula, &mut measure.ease_most);
            to.see("drift_most", Role::Formula, &mut measure.drift_most);
            to.see("passes", Role::Row, &mut measure.passes);
            to.see("stretch", Role::Formula, &mut measure.stretch);
            to.see("note", Role::Words, &mut measure.note);
        }
    }

    fn bought_texts(&mut self, visit: &mut Visit<'_>) {
        for m in &mut self.materials {
            let mut to = In(Part::Material(m.name.clone()), visit);
            to.see("name", Role::OwnName, &mut m.name);
            to.all("widths", &Role::Formula, &mut m.widths);
            for (field, text) in [
                ("folded_part", &mut m.folded_part),
                ("gap", &mut m.gap),
                ("sold_in", &mut m.sold_in),
                ("selvedge", &mut m.selvedge),
                ("stretch_along", &mut m.stretch_along),
                ("stretch_across", &mut m.stretch_across),
                ("shrinkage_along", &mut m.shrinkage_along),
                ("shrinkage_across", &mut m.shrinkage_across),
            ] {
                to.see(field, Role::Formula, text);
            }
            to.see("note", Role::Words, &mut m.note);
        }
        for s in &mut self.strips {
            let mut to = In(Part::Strip(s.name.clone()), visit);
            to.see("name", Role::OwnName, &mut s.name);
            to.see("material", Role::Material, &mut s.material);
            to.see("length", Role::Formula, &mut s.length);
            to.see("ends", Role::Formula, &mut s.ends);
            to.see("width", Role::Formula, &mut s.width);
            to.see("allowance", Role::Formula, &mut s.allowance);
            to.see("join", Role::Formula, &mut s.join);
            to.see("free_end", Role::Formula, &mut s.free_end);
            to.see("note", Role::Words, &mut s.note);
        }
        for n in &mut self.notions {
            let mut to = In(Part::Notion(n.name.clone()), visit);
            to.see("name", Role::OwnName, &mut n.name);
            to.see("size", Role::Formula, &mut n.size);
            to.all("sold", &Role::Formula, &mut n.sold);
            to.see("note", Role::Words, &mut n.note);
        }
    }

    fn published_texts(&mut self, visit: &mut Visit<'_>) {
        for view in &mut self.views {
            let mut to = In(Part::View(view.name.clone()), visit);
            to.see("name", Role::OwnName, &mut view.name);
            to.all("pieces", &Role::Frame, &mut view.pieces);
            for (i, (value, formula)) in view.values.iter_mut().enumerate() {
                to.nth("value", i, Role::Value, value);
                to.nth("value is", i, Role::Formula, formula);
            }
            to.see("note", Role::Words, &mut view.note);
        }
        for (i, step) in self.booklet.iter_mut().enumerate() {
            let mut to = In(Part::Step(i), visit);
            to.see("title", Role::Braces, &mut step.title);
            to.see("text", Role::Braces, &mut step.text);
            for (k, picture) in step.pictures.iter_mut().enumerate() {
                to.nth("picture file", k, Role::Words, &mut picture.file);
                to.nth("picture says", k, Role::Words, &mut picture.says);
                to.nth("picture caption", k, Role::Words, &mut picture.caption);
            }
            to.all("pieces", &Role::Frame, &mut step.pieces);
            to.all("views", &Role::View, &mut step.views);
        }
        for sheet in &mut self.sheets {
            let mut to = In(Part::Sheet(sheet.name.clone()), visit);
            to.see("name", Role::OwnName, &mut sheet.name);
            to.see("paper", Role::Words, &mut sheet.paper);
            to.all("sizes", &Role::Label, &mut sheet.sizes);
            to.all("pieces", &Role::Frame, &mut sheet.pieces);
        }
        let mut to = In(Part::Kept, visit);
        for (i, place) in self.table.iter_mut().enumerate() {
            to.nth("table sheet", i, Role::Sheet, &mut place.sheet);
            to.nth("table piece", i, Role::Frame, &mut place.piece);
        }
        for (i, picture) in self.pictures.iter_mut().enumerate() {
            to.nth("picture under", i, Role::Frame, &mut picture.under);
            to.nth("picture file", i, Role::Words, &mut picture.file);
        }
        for (i, plan) in self.plans.iter_mut().enumerate() {
            plans::plan(&mut to, i, plan);
        }
        for (i, silence) in self.silenced.iter_mut().enumerate() {
            to.nth("silenced at", i, Role::FindingPlace, &mut silence.at);
        }
        for (i, fitting) in self.log.fittings.iter_mut().enumerate() {
            to.nth("fitting date", i, Role::Words, &mut fitting.date);
            to.nth("fitting size", i, Role::Label, &mut fitting.size);
            to.nth("fitting cloth", i, Role::Words, &mut fitting.cloth);
            to.nth("fitting note", i, Role::Words, &mut fitting.note);
        }
    }
}

/// Visits a part that is shared, and makes it the draft's own only if something in it was changed.
fn shared<T: Clone + PartialEq>(part: &mut Arc<T>, visit: &mut Visit<'_>, texts: fn(&mut T, &mut Visit<'_>)) {
    let mut own = T::clone(part);
    texts(&mut own, visit);
    if own != **part {
        *part = Arc::new(own);
    }
}

/// The part whose texts are shown.
struct In<'a, 'b>(Part, &'a mut Visit<'b>);

impl In<'_, '_> {
    fn see(&mut self, field: &'static str, role: Role, text: &mut String) {
        self.within(field, 0, 0, role, text);
    }
    fn nth(&mut self, field: &'static str, at: usize, role: Role, text: &mut String) {
        self.within(field, at, 0, role, text);
    }
    fn all(&mut self, field: &'static str, role: &Role, texts: &mut [String]) {
        for (i, text) in texts.iter_mut().enumerate() {
            self.within(field, i, 0, role.clone(), text);
        }
    }
    fn all_within(&mut self, field: &'static str, at: usize, role: &Role, texts: &mut [String]) {
        for (k, text) in texts.iter_mut().enumerate() {
            self.within(field, at, k, role.clone(), text);
        }
    }
    fn within(&mut self, field: &'static str, at: usize, inner: usize, role: Role, text: &mut String) {
        (self.1)(&Address { part: self.0.clone(), field, at, inner }, &role, text);
    }
}

fn inner(frame: &str, what: Inner, name: &str) -> Part {
    Part::Inner(frame.to_owned(), what, name.to_owned())
}

fn points(frame: &str, points: &mut [Point], visit: &mut Visit<'_>) {
    for point in points {
        let mut to = In(inner(frame, Inner::Point, &point.name), visit);
        to.see("name", Role::OwnName, &mut point.name);
        to.see("at", Role::Formula, &mut point.at);
        to.see("note", Role::Words, &mut point.note);
    }
}

fn edges(frame: &str, what: Inner, edges: &mut [Edge], visit: &mut Visit<'_>) {
    for edge in edges {
        let mut to = In(inner(frame, what, &edge.name), visit);
        to.see("name", Role::OwnName, &mut edge.name);
        to.see("from", Role::Own(Inner::Point), &mut edge.from);
        for (i, segment) in edge.by.iter_mut().enumerate() {
            segment_texts(&mut to, i, segment);
        }
        to.all("smooth_at", &Role::Own(Inner::Point), &mut edge.smooth_at);
        to.see("note", Role::Words, &mut edge.note);
    }
}

fn segment_texts(to: &mut In<'_, '_>, i: usize, segment: &mut Segment) {
    let end = match segment {
        Segment::Straight(end) => end,
        Segment::Curve(leaving, arriving, end) => {
            to.nth("leaving", i, Role::Formula, leaving);
            to.nth("arriving", i, Role::Formula, arriving);
            end
        }
        Segment::Arc { centre, to: end, .. } => {
            to.nth("centre", i, Role::Formula, centre);
            end
        }
        Segment::Smooth { through, leaving, arriving, to: end } => {
            to.nth("leaving heading", i, Role::Formula, leaving);
            for (k, point) in through.iter_mut().enumerate() {
                to.within("through", i, k, Role::Formula, point);
            }
            to.nth("arriving heading", i, Role::Formula, arriving);
            end
        }
        Segment::Taken { curve, off, off_end, to: end } => {
            to.nth("curve", i, Role::Formula, curve);
            to.nth("off", i, Role::Formula, off);
            to.nth("off_end", i, Role::Formula, off_end);
            end
        }
    };
    to.nth("to", i, Role::Own(Inner::Point), end);
}

fn tucks(frame: &str, what: Inner, tucks: &mut [Tuck], visit: &mut Visit<'_>) {
    for tuck in tucks {
        let mut to = In(inner(frame, what, &tuck.name), visit);
        to.see("name", Role::OwnName, &mut tuck.name);
        to.see("on", Role::Own(Inner::Edge), &mut tuck.on);
        to.see("centre", Role::Formula, &mut tuck.centre);
        to.see("intake", Role::Formula, &mut tuck.intake);
        to.see("depth", Role::Formula, &mut tuck.depth);
        to.see("note", Role::Words, &mut tuck.note);
    }
}

fn piece_texts(piece: &mut super::Piece, visit: &mut Visit<'_>) {
    let name = piece.name.clone();
    let mut to = In(Part::Piece(name.clone()), visit);
    to.see("name", Role::OwnName, &mut piece.name);
    to.see("letter", Role::Words, &mut piece.letter);
    to.see("note", Role::Words, &mut piece.note);
    to.see("of", Role::Frame, &mut piece.of);
    for (i, step) in piece.steps.iter_mut().enumerate() {
        steps::step(&mut to, i, step);
    }
    points(&name, &mut piece.points, visit);
    edges(&name, Inner::Edge, &mut piece.edges, visit);
    edges(&name, Inner::Line, &mut piece.lines, visit);
    for dart in &mut piece.darts {
        let mut to = In(inner(&name, Inner::Dart, &dart.name), visit);
        to.see("name", Role::OwnName, &mut dart.name);
        to.see("on", Role::Own(Inner::Edge), &mut dart.on);
        to.see("centre", Role::Formula, &mut dart.centre);
        to.see("foot", Role::Formula, &mut dart.foot);
        to.see("intake", Role::Formula, &mut dart.intake);
        to.see("tip", Role::Formula, &mut dart.tip);
        to.see("bow", Role::Formula, &mut dart.bow);
        to.see("allowance", Role::Formula, &mut dart.allowance);
        to.see("note", Role::Words, &mut dart.note);
    }
    tucks(&name, Inner::Pleat, &mut piece.pleats, visit);
    tucks(&name, Inner::Tuck, &mut piece.tucks, visit);
    for fold in &mut piece.folds {
        let mut to = In(inner(&name, Inner::Fold, &fold.name), visit);
        to.see("name", Role::OwnName, &mut fold.name);
        to.see("line", Role::Own(Inner::Edge), &mut fold.line);
        to.all("over", &Role::Own(Inner::Edge), &mut fold.over);
        to.all("onto", &Role::Own(Inner::Edge), &mut fold.onto);
        to.see("note", Role::Words, &mut fold.note);
    }
    for (what, lines) in [(Inner::Lengthen, &mut piece.lengthen), (Inner::Slit, &mut piece.slits)] {
        for line in lines {
            let mut to = In(inner(&name, what, &line.name), visit);
            to.see("name", Role::OwnName, &mut line.name);
            to.see("line", Role::Formula, &mut line.line);
            to.see("note", Role::Words, &mut line.note);
        }
    }
    for mark in &mut piece.marks {
        let mut to = In(inner(&name, Inner::Mark, &mark.name), visit);
        to.see("name", Role::OwnName, &mut mark.name);
        to.see("at", Role::Formula, &mut mark.at);
        to.see("to", Role::Formula, &mut mark.to);
        to.see("fixed", Role::Formula, &mut mark.fixed);
        to.see("piece", Role::Frame, &mut mark.piece);
        to.see("size", Role::Formula, &mut mark.size);
        to.see("text", Role::Braces, &mut mark.text);
    }
    let mut to = In(Part::Piece(name), visit);
    for (i, allowance) in piece.allowances.iter_mut().enumerate() {
        to.nth("allowance edge", i, Role::Own(Inner::Edge), &mut allowance.edge);
        to.nth("allowance width", i, Role::Formula, &mut allowance.width);
        to.nth("allowance from", i, Role::Formula, &mut allowance.from);
        to.nth("allowance to_width", i, Role::Formula, &mut allowance.to_width);
        to.nth("allowance turn_in", i, Role::Formula, &mut allowance.turn_in);
    }
    for (i, corner) in piece.corners.iter_mut().enumerate() {
        to.nth("corner at", i, Role::Own(Inner::Point), &mut corner.at);
        to.nth("corner width", i, Role::Formula, &mut corner.width);
    }
    for (i, cut) in piece.cuts.iter_mut().enumerate() {
        to.nth("cut material", i, Role::Material, &mut cut.material);
        to.nth("cut on_fold", i, Role::Own(Inner::Edge), &mut cut.on_fold);
        to.nth("cut border", i, Role::Own(Inner::Edge), &mut cut.border);
        to.nth("cut heading", i, Role::Formula, &mut cut.grain.heading);
        to.nth("cut along", i, Role::Own(Inner::Edge), &mut cut.grain.along);
    }
    to.see("label at", Role::Formula, &mut piece.label.at);
    to.see("label turn", Role::Formula, &mut piece.label.turn);
    to.all("stack", &Role::Own(Inner::Point), &mut piece.stack);
}

fn seam_texts(seam: &mut super::Seam, visit: &mut Visit<'_>) {
    let mut to = In(Part::Seam(seam.name.clone()), visit);
    to.see("name", Role::OwnName, &mut seam.name);
    to.all("one", &Role::Formula, &mut seam.one);
    to.all("two", &Role::Formula, &mut seam.two);
    fit_texts(&mut to, "fit", 0, &mut seam.fit);
    for (i, stretch) in seam.stretches.iter_mut().enumerate() {
        to.nth("stretch to_one", i, Role::Formula, &mut stretch.to_one);
        to.nth("stretch to_two", i, Role::Formula, &mut stretch.to_two);
        fit_texts(&mut to, "stretch fit", i, &mut stretch.fit);
        to.nth("stretch share", i, Role::Formula, &mut stretch.share);
    }
    to.all("found_by", &Role::Value, &mut seam.found_by);
    for (i, notch) in seam.notches.iter_mut().enumerate() {
        to.nth("notch at", i, Role::Formula, &mut notch.at);
        to.nth("notch other", i, Role::Formula, &mut notch.other);
    }
    to.see("order", Role::AfterSeam, &mut seam.order);
    to.see("allowance", Role::Formula, &mut seam.allowance);
    to.see("closure", Role::Formula, &mut seam.closure);
    to.see("note", Role::Words, &mut seam.note);
}

/// The formulas of a fit: the one that it always has comes first.
fn fit_texts(to: &mut In<'_, '_>, field: &'static str, at: usize, fit: &mut Fit) {
    match fit {
        Fit::Equal => {}
        Fit::Eased { by, .. } => to.within(field, at, 0, Role::Formula, by),
        Fit::Gathered { times, least, most, .. } => {
            to.within(field, at, 0, Role::Formula, times);
            to.within(field, at, 1, Role::Formula, least);
            to.within(field, at, 2, Role::Formula, most);
        }
        Fit::Stretched { times, .. } => to.within(field, at, 0, Role::Formula, times),
    }
}
