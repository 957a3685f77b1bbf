//! The work on one draft: the one door for changes, undo, and what is computed of it.

use std::sync::Arc;

use super::command::{Command, EditError};
use super::computed::{Computed, Seat, Wake};
use crate::document::Draft;

/// The most steps that can be undone; of more the oldest are forgotten.
pub const MAX_STEPS: usize = 1_000;

/// A change that was made.
#[derive(Clone, Debug)]
struct Change {
    label: String,
    before: Arc<Draft>,
    after: Arc<Draft>,
}

/// A change in the making: a pull, or a field while it is typed in.
#[derive(Clone, Debug)]
struct Gesture {
    label: String,
    before: Arc<Draft>,
}

/// The work on one draft. Nothing here knows a file or a window.
pub struct Work {
    draft: Arc<Draft>,
    saved: Option<Arc<Draft>>,
    done: Vec<Change>,
    undone: Vec<Change>,
    gesture: Option<Gesture>,
    seat: Seat,
    revision: u64,
    computed: Arc<Computed>,
}

impl Work {
    /// Work on a draft, computed in this thread.
    pub fn here(draft: Draft) -> Self {
        Self::with(draft, Seat::here())
    }

    /// Work on a draft, computed beside this thread; `wake` is called there when something is ready.
    pub fn beside(draft: Draft, wake: Wake) -> Self {
        Self::with(draft, Seat::beside(wake))
    }

    fn with(draft: Draft, seat: Seat) -> Self {
        let draft = Arc::new(draft);
        let nothing = Computed {
            revision: 0,
            draft: Arc::new(Draft::default()),
            model: None,
            finished: None,
            findings: Vec::new(),
            counts: Default::default(),
        };
        let mut work = Self {
            draft,
            saved: None,
            done: Vec::new(),
            undone: Vec::new(),
            gesture: None,
            seat,
            revision: 0,
            computed: Arc::new(nothing),
        };
        work.ask();
        work
    }

    /// The draft as it stands.
    pub fn draft(&self) -> &Arc<Draft> {
        &self.draft
    }

    /// The newest that was computed; its revision may be behind the draft's.
    pub fn computed(&self) -> &Arc<Computed> {
        &self.computed
    }

    /// Whether what was computed is of the draft as it stands.
    pub fn is_up_to_date(&self) -> bool {
        self.computed.revision == self.revision
    }

    /// Counts up with every change of the draft.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Takes in what was computed meanwhile; says whether there was anything.
    pub fn poll(&mut self) -> bool {
        match self.seat.take() {
            Some(computed) => {
                let old = std::mem::replace(&mut self.computed, computed);
                self.seat.give_back(old);
                true
            }
            None => false,
        }
    }

    /// What was computed of an earlier revision is not shown any more.
    pub fn give_back(&self, old: Arc<Computed>) {
        self.seat.give_back(old);
    }

    /// Waits until the draft as it stands is computed.
    pub fn settle(&mut self) {
        if !self.is_up_to_date()
            && let Some(computed) = self.seat.wait(self.revision)
        {
            self.computed = computed;
        }
    }

    /// Has everything that was said of the draft worded anew, as this thread speaks now.
    pub fn reword(&mut self) {
        self.ask();
    }

    fn ask(&mut self) {
        self.revision += 1;
        if let Some(computed) = self.seat.ask(self.revision, &self.draft) {
            self.computed = computed;
        }
    }

    fn put(&mut self, draft: Arc<Draft>) {
        if !Arc::ptr_eq(&self.draft, &draft) {
            self.draft = draft;
            self.ask();
        }
    }

    /// Makes a change, all or nothing. One step of undo; within a gesture it takes the place of what the gesture did so far.
    /// Returns what was done, in a sentence, where there is something to tell.
    ///
    /// # Errors
    /// Why it cannot be done; the draft is as it was.
    pub fn run(&mut self, command: &Command) -> Result<String, EditError> {
        let before = match &self.gesture {
            Some(gesture) => Arc::clone(&gesture.before),
            None => Arc::clone(&self.draft),
        };
        let mut draft = Draft::clone(&before);
        let told = command.apply(&mut draft, &self.computed)?;
        if draft == *before {
            // Back at the start of the gesture, or nothing done at all.
            self.put(before);
            return Ok(told);
        }
        let after = Arc::new(draft);
        if self.gesture.is_none() {
            self.push(Change { label: command.label(), before, after: Arc::clone(&after) });
        }
        if *after != *self.draft {
            self.put(after);
        }
        Ok(told)
    }

    fn push(&mut self, change: Change) {
        self.undone.clear();
        self.done.push(change);
        if self.done.len() > MAX_STEPS {
            self.done.remove(0);
        }
    }

    /// Begins a gesture; one that was still going on is finished first.
    pub fn begin(&mut self, label: impl Into<String>) {
        self.finish();
        self.gesture = Some(Gesture { label: label.into(), before: Arc::clone(&self.draft) });
    }

    /// Whether a gesture is going on.
    pub fn in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Ends the gesture; what it did is one step of undo.
    pub fn finish(&mut self) {
        if let Some(Gesture { label, before }) = self.gesture.take()
            && !Arc::ptr_eq(&before, &self.draft)
        {
            self.push(Change { label, before, after: Arc::clone(&self.draft) });
        }
    }

    /// Ends the gesture and restores the very same draft as before it.
    pub fn abort(&mut self) {
        if let Some(gesture) = self.gesture.take() {
            self.put(gesture.before);
        }
    }

    /// What undoing would take back.
    pub fn undo_label(&self) -> Option<&str> {
        self.done.last().map(|c| c.label.as_str())
    }

    /// What redoing would do again.
    pub fn redo_label(&self) -> Option<&str> {
        self.undone.last().map(|c| c.label.as_str())
    }

    /// Takes the last change back, and says which.
    pub fn undo(&mut self) -> Option<String> {
        self.finish();
        let change = self.done.pop()?;
        let label = change.label.clone();
        self.put(Arc::clone(&change.before));
        self.undone.push(change);
        Some(label)
    }

    /// Does the change again that was taken back last, and says which.
    pub fn redo(&mut self) -> Option<String> {
        self.finish();
        let change = self.undone.pop()?;
        let label = change.label.clone();
        self.put(Arc::clone(&change.after));
        self.done.push(change);
        Some(label)
    }

    /// Whether the draft is another one than the one that was saved. An untouched new draft has nothing to lose.
    pub fn is_unsaved(&self) -> bool {
        match &self.saved {
            Some(saved) => !Arc::ptr_eq(saved, &self.draft),
            None => true,
        }
    }

    /// This very draft is on the disk now, or is not worth keeping.
    pub fn mark_saved(&mut self, draft: &Arc<Draft>) {
        self.saved = Some(Arc::clone(draft));
    }
}
