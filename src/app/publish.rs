//! The dialog in which it is chosen what is published: kinds of files, sizes, views, paper, use, folder. What the draft knows is
//! filled in.

use std::path::PathBuf;
use std::sync::Arc;

use egui::{Context, Id, Key, Modal, RichText, Role, ScrollArea, TextEdit, Ui, WidgetInfo};

use super::act::path_of;
use super::job::{Asked, PrintJob};
use super::look::{self, Look, letters};
use super::release::ReleaseWish;
use super::scene::Scene;
use super::sheets::{paper_choice, purpose_choice};
use super::state::{Shown, Wish};
use super::{Window, field, help};
use crate::base::{Severity, Unit};
use crate::compute::{Model, unit_of};
use crate::language::literal_text;
use crate::output::{MOST_SIZES, WideSettings};
use crate::session::{PrintFor, PrintWish, ProjectorWish, What, length_with_unit, sheet_plan};
use crate::texts::{message, owned, say};

/// Width of the dialog, px.
const WIDTH: f32 = 640.0;

/// Which sizes come in one file of pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sizes {
    /// Each by itself.
    Each,
    /// Those that are chosen, together.
    Chosen,
    /// All of the range, each in a layer of its own.
    All,
}

/// The dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PublishAsk {
    pub what: Vec<What>,
    /// Sheets that the draft tells of.
    pub sheets: Vec<String>,
    pub sizes: Sizes,
    pub chosen: Vec<String>,
    pub views: Vec<String>,
    pub wish: PrintWish,
    /// How wide the paper of a wide sheet is.
    pub width: String,
    /// Of the projector: what is seen on the cloth, width and height; pixels across and down; width of lines.
    pub projector: [String; 5],
    pub folder: String,
    pub problem: String,
    /// What blocks a release: places in the list of findings.
    pub blocking: Vec<usize>,
}

/// What a person wishes in the dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum PublishWish {
    /// It is filled in so.
    Change(Box<PublishAsk>),
    Write,
    Close,
}

impl Window {
    /// Opens the dialog.
    pub(super) fn ask_publish(&mut self) {
        let printing = &self.shown.printing;
        let (projector, unit) = (&printing.wish.projector, unit_of(self.scene.draft()));
        let shown = |mm: f64| literal_text(mm, Some(unit));
        let folder = self.open.path().map(|p| p.with_extension("published"));
        let model = self.scene.whole.model.as_ref();
        let views = model.iter().flat_map(|m| m.of_views()).map(|m| m.view().to_owned()).collect();
        let usual = || {
            let width = literal_text(WideSettings::default().width, Some(Unit::Millimetre));
            (vec![What::Pages, What::Tables, What::Booklet], width)
        };
        let (what, width) = printing.published.clone().unwrap_or_else(usual);
        let chosen = if printing.sizes.is_empty() { vec![self.shown.case.clone()] } else { printing.sizes.clone() };
        self.shown.publish = Some(PublishAsk {
            what,
            sheets: Vec::new(),
            sizes: if printing.sizes.is_empty() { Sizes::Each } else { Sizes::Chosen },
            chosen,
            views,
            wish: PrintWish { pieces: Vec::new(), ..printing.wish.clone() },
            width,
            projector: [
                shown(projector.picture[0]),
                shown(projector.picture[1]),
                projector.pixels[0].to_string(),
                projector.pixels[1].to_string(),
                projector.line.map_or_else(String::new, shown),
            ],
            folder: folder.map_or_else(|| "published".to_owned(), |p| p.display().to_string()),
            problem: String::new(),
            blocking: Vec::new(),
        });
    }

    /// Does what is wished in the dialog.
    pub(super) fn publish_wish(&mut self, ctx: &Context, wish: PublishWish) {
        match wish {
            PublishWish::Change(ask) => {
                self.shown.publish = Some(PublishAsk { problem: String::new(), blocking: Vec::new(), ..*ask })
            }
            PublishWish::Write => self.publish(ctx),
            PublishWish::Close => self.shown.publish = None,
        }
    }

    /// Begins to write what is chosen beside the window, unless something stands in the way.
    fn publish(&mut self, ctx: &Context) {
        let Some(ask) = self.shown.publish.clone() else { return };
        let blocking = if ask.wish.purpose == PrintFor::Release { errors(&self.scene) } else { Vec::new() };
        let asked = if self.job.is_some() {
            Err(say!("publish-going-on"))
        } else if !blocking.is_empty() {
            Err(say!("release-blocked", count = blocking.len()))
        } else if ask.folder.trim().is_empty() {
            Err(say!("publish-needs-folder"))
        } else {
            asked(&self.scene, &ask)
        };
        let asked = match asked {
            Ok(asked) => asked,
            Err(problem) => {
                self.shown.publish = Some(PublishAsk { problem, blocking, ..ask });
                return;
            }
        };
        let stem = self.open.path().and_then(|p| p.file_stem()).map_or("draft".into(), |s| s.to_string_lossy());
        let beside = self.open.path().and_then(|p| p.parent()).map(PathBuf::from);
        let computed = Arc::clone(&self.scene.whole);
        let into = path_of(ask.folder.trim());
        self.job = Some(PrintJob::start(ctx, computed, asked, into, (stem.into_owned(), beside), ask.clone()));
        let printing = &mut self.shown.printing;
        printing.wish = PrintWish { pieces: std::mem::take(&mut printing.wish.pieces), ..ask.wish };
        printing.published = Some((ask.what, ask.width));
        self.shown.publish = None;
    }
}

/// The errors that block a release, by their places.
pub(super) fn errors(scene: &Scene) -> Vec<usize> {
    scene.findings().filter(|(_, f)| f.severity() == Severity::Error).map(|(i, _)| i).collect()
}

/// What is asked for, as orders; why not, in words.
fn asked(scene: &Scene, ask: &PublishAsk) -> Result<Vec<Asked>, String> {
    let model = scene.whole.model.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    if ask.what.is_empty() && ask.sheets.is_empty() {
        return Err(say!("publish-nothing"));
    }
    let cases = &model.plan.cases;
    let range = if cases.range > 0 { cases.range } else { cases.list.len() };
    let find = |address: &String| cases.list.iter().position(|c| c.address == *address);
    let mut chosen: Vec<usize> = ask.chosen.iter().filter_map(find).collect();
    chosen.sort_unstable();
    if ask.sizes == Sizes::Chosen && chosen.is_empty() {
        return Err(say!("publish-no-size"));
    }
    if ask.sizes == Sizes::Chosen && chosen.len() > MOST_SIZES {
        return Err(say!("publish-too-many", count = chosen.len(), most = MOST_SIZES));
    }
    let groups: Vec<Vec<usize>> = match ask.sizes {
        Sizes::Each => (0..range).map(|case| vec![case]).collect(),
        Sizes::Chosen => vec![chosen],
        Sizes::All => vec![(0..range).collect()],
    };
    let views: Vec<usize> = wanted_views(model, &ask.views);
    if views.is_empty() {
        return Err(say!("publish-no-view"));
    }
    let width = length(&say!("publish-wide-paper"), &ask.width)?;
    let projector = projector(ask)?;
    let mut out = Vec::new();
    if !ask.what.is_empty() {
        let groups = views.iter().flat_map(|view| groups.iter().map(|cases| (*view, cases.clone()))).collect();
        let wish = PrintWish { projector: projector.clone(), ..ask.wish.clone() };
        out.push(Asked { what: ask.what.clone(), groups, wish, width });
    }
    for sheet in model.draft.sheets.iter().filter(|s| ask.sheets.contains(&s.name)) {
        let plan = sheet_plan(model, sheet)?;
        let groups = plan.groups.into_iter().filter(|(view, _)| views.contains(view)).collect();
        let projector = projector.clone();
        let wish = PrintWish { paper: plan.paper, pieces: plan.pieces, projector, ..ask.wish.clone() };
        let width = if plan.width > 0.0 { plan.width } else { width };
        out.push(Asked { what: vec![plan.what], groups, wish, width });
    }
    Ok(out)
}

/// A length that is typed in the dialog, mm.
fn length(of: &str, text: &str) -> Result<f64, String> {
    length_with_unit(text).map_err(|problem| say!("publish-length-problem", of, problem = problem.to_string()))
}

/// The projector that is typed in the dialog.
fn projector(ask: &PublishAsk) -> Result<ProjectorWish, String> {
    let [width, height, across, down, line] = &ask.projector;
    let of = &say!("publish-projection");
    let pixels = |text: &String| {
        let many = text.trim().parse::<u32>().ok().filter(|n| *n > 0);
        many.ok_or_else(|| say!("publish-no-pixels", text))
    };
    let line = if line.trim().is_empty() { None } else { Some(length(&say!("publish-lines"), line)?) };
    Ok(ProjectorWish {
        picture: [length(of, width)?, length(of, height)?],
        pixels: [pixels(across)?, pixels(down)?],
        line,
    })
}

fn wanted_views(model: &Model, names: &[String]) -> Vec<usize> {
    let views = model.of_views().iter().enumerate();
    views.filter(|(_, m)| names.iter().any(|n| n == m.view())).map(|(i, _)| i).collect()
}

/// Paints the dialog, if it is open.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(ask) = &shown.publish else { return };
    let mut next = ask.clone();
    let mut wish = None;
    let modal = Modal::new(Id::unique("publish")).backdrop_color(look.backdrop()).frame(look.dialog());
    let modal = modal.show(ui.ctx(), |ui| {
        ui.set_width(WIDTH);
        ui.horizontal(|ui| {
            ui.label(RichText::new(say!("publish-title")).font(letters(look::LARGE)).color(look.ink));
            help::question(ui, &say!("ask-this-dialog"), "publishing", wishes);
        });
        // As high as it is at once: it must not grow under a hand that clicks.
        let most = ui.ctx().content_rect().height() - 280.0 - field::PROBLEM;
        ScrollArea::vertical().max_height(most).min_scrolled_height(most).show(ui, |ui| {
            kinds(ui, look, scene, &mut next);
            sizes(ui, look, scene, &mut next);
            caption(ui, look, &say!("publish-paper"));
            ui.horizontal_wrapped(|ui| paper_choice(ui, &mut next.wish));
            caption(ui, look, &say!("publish-for"));
            ui.horizontal_wrapped(|ui| purpose_choice(ui, &mut next.wish));
            machines(ui, look, &mut next);
            tick(ui, &mut next.wish.whole, &say!("publish-whole"), &say!("publish-whole-called"));
            field::focus_in_sight(ui);
        });
        if folder(ui, look, &mut next) {
            wish = Some(PublishWish::Write);
        }
        field::problem(ui, look, &ask.problem);
        blocking(ui, look, scene, &ask.blocking, wishes);
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            if ui.button(say!("publish-do")).clicked() {
                wish = Some(PublishWish::Write);
            }
            if ui.button(say!("cancel")).clicked() {
                wish = Some(PublishWish::Close);
            }
        });
    });
    if modal.should_close() {
        wish = Some(PublishWish::Close);
    }
    if next != *ask {
        wishes.push(Wish::Publish(PublishWish::Change(Box::new(next))));
    }
    wishes.extend(wish.map(Wish::Publish));
}

fn caption(ui: &mut Ui, look: &Look, words: &str) {
    ui.add_space(5.0);
    field::caption(ui, look, words);
}

fn tick(ui: &mut Ui, is: &mut bool, words: &str, called: &str) {
    let response = ui.checkbox(is, words);
    response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, *is, called));
}

/// Ticks one of a list.
fn tick_of<T: Clone + PartialEq>(ui: &mut Ui, list: &mut Vec<T>, one: &T, words: &str, called: &str) {
    let mut is = list.contains(one);
    tick(ui, &mut is, words, called);
    if is != list.contains(one) {
        match list.iter().position(|own| own == one) {
            Some(i) => drop(list.remove(i)),
            None => list.push(one.clone()),
        }
    }
}

fn kinds(ui: &mut Ui, look: &Look, scene: &Scene, next: &mut PublishAsk) {
    for what in What::ALL {
        let (kind, says) = owned(|| (what.heading(), what.says()));
        tick_of(ui, &mut next.what, &what, &say!("publish-kind", kind, says), &say!("publish-write", kind));
    }
    let sheets = &scene.draft().sheets;
    if !sheets.is_empty() {
        caption(ui, look, &say!("publish-sheets"));
    }
    for sheet in sheets {
        let paper = if sheet.paper.is_empty() { say!("publish-both-papers") } else { sheet.paper.clone() };
        let words = format!("{} – {paper}", sheet.name);
        tick_of(ui, &mut next.sheets, &sheet.name, &words, &say!("publish-write-sheet", sheet = sheet.name));
    }
}

fn sizes(ui: &mut Ui, look: &Look, scene: &Scene, next: &mut PublishAsk) {
    caption(ui, look, &say!("publish-sizes"));
    ui.horizontal_wrapped(|ui| {
        for (sizes, word) in [
            (Sizes::Each, say!("publish-each")),
            (Sizes::Chosen, say!("publish-chosen")),
            (Sizes::All, say!("publish-all")),
        ] {
            let chosen = next.sizes == sizes;
            let response = ui.selectable_label(chosen, &word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &word));
            if response.clicked() {
                next.sizes = sizes;
            }
        }
    });
    if next.sizes == Sizes::Chosen {
        ui.horizontal_wrapped(|ui| {
            for case in scene.cases().into_iter().flat_map(|c| &c.list) {
                let called = say!("publish-size", size = case.address);
                tick_of(ui, &mut next.chosen, &case.address, &case.address, &called);
            }
        });
    }
    let views: Vec<&str> = scene.whole.views().collect();
    if !views.is_empty() {
        caption(ui, look, &say!("publish-views"));
        ui.horizontal_wrapped(|ui| {
            for view in views {
                tick_of(ui, &mut next.views, &view.to_owned(), view, &say!("publish-view", view));
            }
        });
    }
}

/// What is asked of wide paper and projectors, where they are wanted.
fn machines(ui: &mut Ui, look: &Look, next: &mut PublishAsk) {
    let typed = |ui: &mut Ui, called: String, hint: &str, text: &mut String, width: f32| {
        field::typed(ui, ("publish", &called), hint, text, width);
    };
    if next.what.contains(&What::Wide) {
        caption(ui, look, &say!("publish-width"));
        typed(ui, say!("publish-width-called"), "914 mm", &mut next.width, 90.0);
    }
    if next.what.contains(&What::Projector) {
        caption(ui, look, &say!("publish-projector"));
        ui.horizontal(|ui| {
            let [width, height, across, down, line] = &mut next.projector;
            typed(ui, say!("publish-across"), "36 in", width, 90.0);
            ui.label("×");
            typed(ui, say!("publish-down"), "24 in", height, 90.0);
            ui.add_space(10.0);
            typed(ui, say!("publish-pixels-across"), "1280", across, 90.0);
            ui.label("×");
            typed(ui, say!("publish-pixels-down"), "720", down, 90.0);
            ui.add_space(10.0);
            // Its hint is the longest.
            typed(ui, say!("publish-lines-called"), &say!("publish-as-needed"), line, 126.0);
        });
    }
}

/// The folder; whether it was left with Enter.
fn folder(ui: &mut Ui, look: &Look, next: &mut PublishAsk) -> bool {
    caption(ui, look, &say!("publish-folder"));
    let edit = TextEdit::singleline(&mut next.folder).id(Id::unique("publish folder")).hint_text(say!("path-hint"));
    let response = ui.add(edit.desired_width(WIDTH - 20.0));
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(say!("folder-label")));
    field::ring(ui, &response);
    response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter))
}

/// What blocks a release; a click goes there.
pub(super) fn blocking(ui: &mut Ui, look: &Look, scene: &Scene, errors: &[usize], wishes: &mut Vec<Wish>) {
    if errors.is_empty() {
        return;
    }
    ScrollArea::vertical().id_salt("blocking").max_height(140.0).show(ui, |ui| {
        for i in errors {
            let Some(finding) = scene.computed.findings.get(*i) else { continue };
            let words = format!("{} {}", look::sign(finding.severity()), message(finding, scene.draft().display));
            if ui.link(RichText::new(words).color(look.error)).clicked() {
                wishes.push(Wish::Publish(PublishWish::Close));
                wishes.push(Wish::Edition(ReleaseWish::Close));
                wishes.push(Wish::Finding(*i));
            }
        }
    });
}
