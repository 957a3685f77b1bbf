//! A draft that is open: the work on it, the file it came from, and what keeps it from being lost.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::command::{Command, EditError};
use super::computed::Wake;
use super::recovery::{Keeper, KeptAbout, RecoveryFolder};
use super::watch::{Seen, Watch};
use super::work::Work;
use crate::document::Draft;
use crate::file::{FileError, Fingerprint, OpenedFile, comments, save};
use crate::texts::{own, say};

/// The file of a draft.
struct Place {
    path: PathBuf,
    fingerprint: Fingerprint,
    watch: Option<Watch>,
}

/// A draft that is open.
pub struct OpenDraft {
    work: Work,
    place: Option<Place>,
    /// Comments in the file, which saving takes out.
    comments: Vec<String>,
    keeper: Option<Keeper>,
    kept: u64,
    wake: Option<Wake>,
}

impl OpenDraft {
    /// Work on a draft that is in no file yet. `wake`: compute beside this thread and call it when something is ready.
    pub fn new(draft: Draft, wake: Option<Wake>) -> Self {
        let work = match &wake {
            Some(wake) => Work::beside(draft, Arc::clone(wake)),
            None => Work::here(draft),
        };
        Self { work, place: None, comments: Vec::new(), keeper: None, kept: 0, wake }
    }

    /// Work on nothing yet: there is nothing in it that could be lost. What is published of it is in the language of whoever begins it.
    pub fn empty(wake: Option<Wake>) -> Self {
        Self::copy(Draft { title: say!("new-draft"), language: own(), ..Draft::default() }, wake)
    }

    /// Work on a copy of a draft that is kept elsewhere: until it is changed there is nothing to lose.
    pub fn copy(draft: Draft, wake: Option<Wake>) -> Self {
        let mut open = Self::new(draft, wake);
        let own = Arc::clone(open.work.draft());
        open.work.mark_saved(&own);
        open
    }

    /// Work on a draft from a file.
    pub fn of_file(path: &Path, opened: OpenedFile, wake: Option<Wake>) -> Self {
        let mut open = Self::new(opened.draft, wake);
        if opened.had_comments {
            open.comments = comments(&opened.text);
        }
        let own = Arc::clone(open.work.draft());
        open.work.mark_saved(&own);
        open.put_in(path, opened.fingerprint);
        open
    }

    /// Work that was left behind: it is not saved, and its file, if there is one, is as it was then or has changed since.
    pub fn recovered(draft: Draft, about: &KeptAbout, wake: Option<Wake>) -> Self {
        let mut open = Self::new(draft, wake);
        if let (Some(path), Some(fingerprint)) = (&about.origin, &about.fingerprint) {
            open.put_in(path, *fingerprint);
        }
        open
    }

    fn put_in(&mut self, path: &Path, fingerprint: Fingerprint) {
        let watch = self.wake.as_ref().and_then(|wake| {
            let wake = Arc::clone(wake);
            let watch = Watch::start(path.to_owned(), Box::new(move || wake())).ok()?;
            watch.expect(fingerprint);
            Some(watch)
        });
        self.place = Some(Place { path: path.to_owned(), fingerprint, watch });
    }

    /// Keeps the work in this folder from now on, so that it outlives a crash.
    ///
    /// # Errors
    /// Why nothing can be kept there.
    pub fn keep_in(&mut self, folder: &RecoveryFolder) -> Result<(), String> {
        self.keeper = Some(Keeper::start(folder).map_err(|e| e.to_string())?);
        self.keep();
        Ok(())
    }

    fn about(&self) -> KeptAbout {
        KeptAbout {
            origin: self.place.as_ref().map(|p| p.path.clone()),
            fingerprint: self.place.as_ref().map(|p| p.fingerprint),
            step: self.work.revision(),
        }
    }

    /// Hands the work to the keeper, if there is something in it that is not in the file.
    fn keep(&mut self) {
        let about = self.about();
        let Some(keeper) = &self.keeper else { return };
        if !self.work.is_unsaved() {
            keeper.forget();
        } else if self.kept != self.work.revision() && !self.work.in_gesture() {
            keeper.keep(Arc::clone(self.work.draft()), about);
            self.kept = self.work.revision();
        }
    }

    /// The keeper, if there is one.
    pub fn keeper(&self) -> Option<&Keeper> {
        self.keeper.as_ref()
    }

    /// The work.
    pub fn work(&self) -> &Work {
        &self.work
    }

    /// The file, if there is one.
    pub fn path(&self) -> Option<&Path> {
        self.place.as_ref().map(|p| p.path.as_path())
    }

    /// What the file is called, or that there is none.
    pub fn file_name(&self) -> String {
        let name = self.path().and_then(Path::file_name);
        name.map_or_else(|| say!("no-file-yet"), |n| n.to_string_lossy().into_owned())
    }

    /// See [`Work::run`].
    ///
    /// # Errors
    /// Why the change was not made.
    pub fn run(&mut self, command: &Command) -> Result<String, EditError> {
        let told = self.work.run(command);
        self.keep();
        told
    }

    /// See [`Work::begin`].
    pub fn begin(&mut self, label: impl Into<String>) {
        self.work.begin(label);
    }

    /// See [`Work::finish`].
    pub fn finish(&mut self) {
        self.work.finish();
        self.keep();
    }

    /// See [`Work::abort`].
    pub fn abort(&mut self) {
        self.work.abort();
        self.keep();
    }

    /// See [`Work::undo`].
    pub fn undo(&mut self) -> Option<String> {
        let told = self.work.undo();
        self.keep();
        told
    }

    /// See [`Work::redo`].
    pub fn redo(&mut self) -> Option<String> {
        let told = self.work.redo();
        self.keep();
        told
    }

    /// See [`Work::poll`].
    pub fn poll(&mut self) -> bool {
        self.work.poll()
    }

    /// See [`Work::reword`].
    pub fn reword(&mut self) {
        self.work.reword();
    }

    /// See [`Work::settle`].
    pub fn settle(&mut self) {
        self.work.settle();
    }

    /// What another program did to the file since it was opened or saved.
    pub fn changed_outside(&self) -> Option<String> {
        let place = self.place.as_ref()?;
        let name = self.file_name();
        match place.watch.as_ref()?.seen() {
            Seen::Content(now) if now != place.fingerprint => Some(say!("file-changed-outside", name)),
            Seen::Gone => Some(say!("file-removed-outside", name)),
            _ => None,
        }
    }

    /// The change outside is known and does not matter: the next save writes over it.
    pub fn accept_outside(&mut self) {
        if let Some(place) = &mut self.place
            && let Some(Seen::Content(now)) = place.watch.as_ref().map(Watch::seen)
        {
            place.fingerprint = now;
        }
    }

    /// Saves in the draft's own file, or in this one. `over`: whatever is there.
    ///
    /// # Errors
    /// See [`save`]; what was there is as it was.
    pub fn save(&mut self, to: Option<&Path>, over: bool) -> Result<(), FileError> {
        self.work.finish();
        let Some(path) = to.or(self.path()).map(Path::to_owned) else {
            return Err(FileError::Missing { path: PathBuf::new() });
        };
        let own = self.place.as_ref().filter(|p| p.path == path);
        let seen = own.filter(|_| !over).map(|p| p.fingerprint);
        let draft = Arc::clone(self.work.draft());
        // What is kept is then never older than the file, however this ends.
        if let Some(keeper) = &self.keeper {
            keeper.flush();
        }
        let fingerprint = save(&path, &draft, seen.as_ref())?;
        self.work.mark_saved(&draft);
        self.comments.clear();
        match &mut self.place {
            Some(place) if place.path == path => {
                place.fingerprint = fingerprint;
                if let Some(watch) = &place.watch {
                    watch.expect(fingerprint);
                }
            }
            _ => self.put_in(&path, fingerprint),
        }
        self.keep();
        Ok(())
    }

    /// The comments of the file that saving would take out.
    pub fn comments(&self) -> &[String] {
        &self.comments
    }

    /// They were told, and are not asked about again.
    pub fn comments_told(&mut self) {
        self.comments.clear();
    }

    /// Nothing of it is worth keeping any more: it was saved, or thrown away on purpose.
    pub fn let_go(&mut self) {
        if let Some(keeper) = &self.keeper {
            keeper.forget();
        }
    }
}
