//! Blocks taken from other drafts, in the window: taking one, noticing that it changed, looking at what would change, taking that over.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::{RichText, Ui};

use super::Window;
use super::act::path_of;
use super::ask::{Ask, Purpose};
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::shapes::Shapes;
use super::state::{Room, Shown, Wish};
use super::versus::Versus;
use crate::document::{Draft, TakenBlock};
use crate::file;
use crate::session::{
    BlockCommand, Command, Comparing, Keep, LookedAt, OpenDraft, Seen, Taking, Wake, Watch, accept_block, block_path,
    look_at_blocks, named_beside, relative_to, standing,
};
use crate::texts::say;

/// What a person wishes of blocks.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum BlockWish {
    /// Look at their files again.
    Look,
    /// Show what taking over would change.
    Show(String),
    /// Take it over; which side counts where both were changed.
    Accept(String, Option<Keep>),
    /// Not now: the notice goes until the block changes again.
    Later(String),
    /// Say where its file is.
    Where(String),
    /// It is followed no more.
    Untie(String),
}

/// What is known of the files of blocks.
#[derive(Default)]
pub(super) struct Blocks {
    pub looked: Vec<LookedAt>,
    /// Notices that were put off: block, and what was said.
    later: Vec<(String, String)>,
    watches: Vec<(PathBuf, Watch)>,
    /// Of what was looked last.
    draft: Option<Arc<Draft>>,
    path: Option<PathBuf>,
    seen: Vec<Seen>,
}

impl Blocks {
    /// Looks at the files if the draft's blocks, its place or the files are others than they were.
    fn follow(&mut self, open: &OpenDraft, wake: Option<&Wake>) {
        let draft = open.work().draft();
        let seen = || self.watches.iter().map(|(_, w)| w.seen()).collect::<Vec<_>>();
        if self.draft.as_ref().is_some_and(|d| Arc::ptr_eq(d, draft)) && self.seen == seen() {
            return;
        }
        let same = self.draft.as_ref().is_some_and(|d| d.blocks == draft.blocks)
            && self.path.as_deref() == open.path()
            && self.seen == seen();
        self.draft = Some(Arc::clone(draft));
        if same {
            // What is said of changes here follows every edit.
            for looked in self.looked.iter_mut().filter(|l| l.found.as_ref().is_ok_and(|(_, s)| !s.is_same())) {
                let block = draft.blocks.iter().find(|b| b.name == looked.name);
                if let (Some(block), Ok((source, now))) = (block, &mut looked.found)
                    && let Ok(standing) = standing(draft, block, source)
                {
                    *now = standing;
                }
            }
            return;
        }
        self.path = open.path().map(Path::to_owned);
        self.look(draft, wake);
    }

    /// Looks at the files anew, so that it is told in the language that is spoken now.
    pub fn tell_again(&mut self) {
        (self.draft, self.path) = (None, None);
    }

    fn look(&mut self, draft: &Draft, wake: Option<&Wake>) {
        let Some(path) = &self.path else {
            *self = Self { draft: self.draft.take(), ..Self::default() };
            return;
        };
        self.looked = look_at_blocks(draft, path);
        let paths: Vec<PathBuf> = draft.blocks.iter().map(|b| block_path(path, &b.file)).collect();
        self.watches.retain(|(p, _)| paths.contains(p));
        for path in paths {
            if let Some(wake) = wake
                && !self.watches.iter().any(|(p, _)| *p == path)
            {
                let wake = Arc::clone(wake);
                // Where the system gives no thread, "Look again" is left.
                if let Ok(watch) = Watch::start(path.clone(), Box::new(move || wake())) {
                    self.watches.push((path, watch));
                }
            }
        }
        self.seen = self.watches.iter().map(|(_, w)| w.seen()).collect();
    }

    /// Blocks that want to be looked at: which, in words, and whether something was changed on both sides; none where the file is missing.
    pub fn notices(&self) -> Vec<(&str, String, Option<bool>)> {
        let told = |l: &LookedAt| match &l.found {
            Ok((_, standing)) if standing.is_same() => None,
            Ok((_, standing)) => {
                let words = say!("block-changed", block = l.name, file = l.file, changes = standing.words());
                Some((words, Some(!standing.clashes().is_empty())))
            }
            Err(problem) => {
                let short = problem.lines().next().unwrap_or_default();
                Some((say!("block-untold", block = l.name, problem = short), None))
            }
        };
        let all = self.looked.iter().filter_map(|l| told(l).map(|(words, clash)| (l.name.as_str(), words, clash)));
        all.filter(|(name, words, _)| !self.later.iter().any(|(n, w)| n == name && w == words)).collect()
    }

    fn of(&self, name: &str) -> Option<&LookedAt> {
        self.looked.iter().find(|l| l.name == name)
    }
}

impl Window {
    pub(super) fn follow_blocks(&mut self) {
        if !self.open.work().in_gesture() {
            self.shown.blocks.follow(&self.open, self.wake.as_ref());
        }
    }

    pub(super) fn block_wish(&mut self, wish: BlockWish) {
        match wish {
            BlockWish::Look => {
                let draft = Arc::clone(self.open.work().draft());
                self.shown.blocks.later.clear();
                self.shown.blocks.look(&draft, self.wake.as_ref());
                let many = self.shown.blocks.notices().len();
                match many {
                    0 => self.tell(say!("block-all-same")),
                    _ => self.tell(say!("block-to-see", count = many)),
                }
            }
            BlockWish::Show(name) => self.show_block(&name),
            BlockWish::Accept(name, keep) => {
                let Some(Ok((source, _))) = self.shown.blocks.of(&name).map(|l| l.found.clone()) else { return };
                let was = Arc::clone(self.open.work().draft());
                self.run(&Command::Block(Box::new(BlockCommand::Accept(name, source, keep))));
                if !Arc::ptr_eq(&was, self.open.work().draft()) && self.shown.room == Room::Differences {
                    self.shown.versus = None;
                    self.shown.room = Room::Table;
                }
            }
            BlockWish::Later(name) => {
                let told = self.shown.blocks.notices().into_iter().find(|n| n.0 == name).map(|n| n.1);
                if let Some(words) = told {
                    self.shown.blocks.later.push((name, words));
                }
            }
            BlockWish::Where(name) => {
                let title = say!("block-where-title", block = name);
                let choices = [say!("block-where-do"), say!("browse")];
                let ask = Ask::new(Purpose::BlockFile(name), title, say!("block-where-note"), &choices);
                self.shown.ask = Some(ask.of_file(".ron", ""));
            }
            BlockWish::Untie(name) => self.run(&Command::Block(Box::new(BlockCommand::Untie(name)))),
        }
    }

    /// Shows what taking over would change: the draft as it would be, beside the open one.
    fn show_block(&mut self, name: &str) {
        let Some(Ok((source, _))) = self.shown.blocks.of(name).map(|l| l.found.clone()) else { return };
        let mut after = Draft::clone(self.open.work().draft());
        if let Err(problem) = accept_block(&mut after, name, &source, Some(Keep::There)) {
            return self.refuse(say!("block-not-taken-over", problem = problem.to_string()));
        }
        let work = Comparing::towards(say!("block-taken-over", block = name), after, self.wake.clone());
        self.shown.versus = Some(Versus { work, seen: None, shapes: Shapes::default(), at: None });
        self.shown.room = Room::Differences;
        self.follow_other();
    }

    /// Takes the block that the dialog asks for.
    pub(super) fn take_other_block(&mut self, ask: &Ask) {
        let Some(own) = self.open.path().map(Path::to_owned) else {
            return self.problem(&say!("block-save-first"));
        };
        let from = named_beside(&own, &path_of(ask.text(0)));
        let source = match file::open(&from) {
            Ok(opened) => opened.draft,
            Err(problem) => return self.problem(&problem.to_string()),
        };
        let file = match relative_to(&own, &from) {
            Ok(file) => file,
            Err(problem) => return self.problem(&problem),
        };
        let name =
            if ask.text(1).is_empty() { TakenBlock::name_of(&from.to_string_lossy()) } else { ask.text(1).to_owned() };
        let taking = Taking { name, file, pieces: ask.list(2), prefix: ask.text(3).to_owned() };
        self.try_ask(&Command::Block(Box::new(BlockCommand::Take(taking, Arc::new(source)))));
    }

    /// The file of a block is said to be there.
    pub(super) fn move_block(&mut self, name: &str, to: &Path) {
        let Some(own) = self.open.path().map(Path::to_owned) else { return };
        match relative_to(&own, &named_beside(&own, to)) {
            Ok(file) => {
                self.try_ask(&Command::Block(Box::new(BlockCommand::Move(name.to_owned(), file))));
            }
            Err(problem) => self.problem(&problem),
        }
    }
}

/// The dialog in which a block is taken.
pub(super) fn asking() -> Ask {
    let choices = [say!("block-take-do"), say!("browse")];
    Ask::new(Purpose::TakeBlock, say!("block-take-title"), say!("block-take-note"), &choices)
        .of_file(".ron", "")
        .field(say!("block-take-name"), say!("block-take-name-hint"), "")
        .field(say!("block-take-pieces"), say!("block-take-pieces-hint"), "")
        .field(say!("block-take-prefix"), say!("block-take-prefix-hint"), "")
}

/// The blocks of the draft, on its card.
pub(super) fn card(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let blocks = &scene.draft().blocks;
    if blocks.is_empty() {
        return;
    }
    super::field::caption(ui, look, &say!("block-caption"));
    for block in blocks {
        ui.label(RichText::new(say!("block-from", block = block.name, file = block.file)).color(look.ink));
        let author = if block.author.is_empty() { say!("block-no-author") } else { block.author.clone() };
        let licence = if block.licence.is_empty() { say!("block-no-licence") } else { block.licence.clone() };
        let by = match block.edition.as_str() {
            "" => say!("block-by", author, licence),
            edition => say!("block-by-edition", author, licence, edition),
        };
        ui.label(RichText::new(by).font(letters(look::SMALL)).color(look.soft));
        let state = match shown.blocks.of(&block.name).map(|l| &l.found) {
            None => say!("block-not-looked"),
            Some(Ok((_, standing))) => {
                let there = match standing.is_same() {
                    true => say!("block-same-there"),
                    false => say!("block-changed-there", changes = standing.words()),
                };
                [there, standing.own_words()].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>().join("; ")
            }
            Some(Err(_)) => say!("block-unreadable"),
        };
        ui.label(RichText::new(state).font(letters(look::SMALL)).color(look.soft));
        ui.horizontal_wrapped(|ui| {
            let mut button = |ui: &mut Ui, word: String, wish: BlockWish| {
                let response = ui.small_button(&word);
                let called = say!("block-button", word, block = block.name);
                response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, called.clone()));
                if response.clicked() {
                    wishes.push(Wish::Block(wish));
                }
            };
            button(ui, say!("block-where"), BlockWish::Where(block.name.clone()));
            button(ui, say!("block-untie"), BlockWish::Untie(block.name.clone()));
        });
    }
    if ui.button(say!("block-look-again")).clicked() {
        wishes.push(Wish::Block(BlockWish::Look));
    }
}
