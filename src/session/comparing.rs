//! The open draft compared with another one, beside the window, as it is edited.

use std::panic::AssertUnwindSafe;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;

use super::computed::{Computed, Wake};
use crate::base::{DisplayUnit, Language};
use crate::compute::{Engine, guarded};
use crate::document::Draft;
use crate::output::{Comparison, Side, compare};
use crate::proof::errors;
use crate::texts::{carried, message, own, owned, say, set_own};

/// What differs, and in which revision of the open draft.
#[derive(Debug)]
pub struct Compared {
    /// The revision.
    pub revision: u64,
    /// What differs; or why that cannot be said, in words.
    pub found: Result<Comparison, String>,
    /// What is wrong in the newer of the two and not in the older one, in words.
    pub wrong: Vec<String>,
}

/// Another draft, with which the open one is compared.
pub struct Comparing {
    name: String,
    desk: Arc<Desk>,
    /// Whether the other draft is what the open one may become, not what it was.
    towards: bool,
    /// Without a thread: the other draft and what was compared last.
    beside: bool,
    other: Option<Arc<Computed>>,
    last: Option<Arc<Compared>>,
    asked: Option<u64>,
}

/// What the two threads hand each other.
struct Desk {
    papers: Mutex<Papers>,
    changed: Condvar,
}

#[derive(Default)]
struct Papers {
    /// What is to be compared, and in which language that is told.
    wanted: Option<(Arc<Computed>, Language)>,
    other: Option<Arc<Computed>>,
    done: Option<Arc<Compared>>,
    closed: bool,
}

impl Desk {
    fn papers(&self) -> MutexGuard<'_, Papers> {
        self.papers.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn work(&self, draft: Arc<Draft>, towards: bool, wake: &Wake) {
        let other = Arc::new(Computed::of(&mut Engine::new(), 0, draft, None));
        self.papers().other = Some(Arc::clone(&other));
        wake();
        loop {
            let mut papers = self.papers();
            let (now, language) = loop {
                if papers.closed {
                    return;
                }
                match papers.wanted.take() {
                    Some(wanted) => break wanted,
                    None => papers = self.changed.wait(papers).unwrap_or_else(PoisonError::into_inner),
                }
            };
            drop(papers);
            set_own(language);
            let compared = Arc::new(Compared::of(&other, &now, towards));
            self.papers().done = Some(compared);
            wake();
        }
    }
}

impl Compared {
    fn of(other: &Computed, open: &Computed, towards: bool) -> Self {
        let found = match (side(other), side(open)) {
            (Some(other), Some(open)) => match guarded(AssertUnwindSafe(|| {
                owned(|| if towards { compare(open, other, &[], &[]) } else { compare(other, open, &[], &[]) })
            })) {
                Ok(found) => found.map_err(|e| e.to_string()),
                Err(failed) => Err(message(&failed, DisplayUnit::Mm)),
            },
            (None, _) => Err(other.failure().unwrap_or_else(|| say!("compare-other-uncomputed"))),
            (_, None) => Err(open.failure().unwrap_or_else(|| say!("draft-uncomputed"))),
        };
        let (old, new) = if towards { (open, other) } else { (other, open) };
        let said = |c: &Computed| errors(&c.findings, c.draft.display);
        let known = said(old);
        let wrong = said(new).into_iter().filter(|e| !known.contains(e)).collect();
        Self { revision: open.revision, found, wrong }
    }
}

fn side(computed: &Computed) -> Option<Side<'_>> {
    let (model, finished) = (computed.model.as_ref()?, computed.finished.as_ref()?);
    Some(Side { draft: &computed.draft, model, finished })
}

impl Comparing {
    /// Begins to compare with a draft of this name. `wake`: beside this thread; it is called when something is ready.
    pub fn start(name: String, draft: Draft, wake: Option<Wake>) -> Self {
        Self::with(name, draft, false, wake)
    }

    /// The same with a draft that the open one may become: differences are told from the open one to that.
    pub fn towards(name: String, draft: Draft, wake: Option<Wake>) -> Self {
        Self::with(name, draft, true, wake)
    }

    fn with(name: String, draft: Draft, towards: bool, wake: Option<Wake>) -> Self {
        let desk = Arc::new(Desk { papers: Mutex::default(), changed: Condvar::new() });
        let draft = Arc::new(draft);
        let beside = wake.is_some_and(|wake| {
            let (own, draft) = (Arc::clone(&desk), Arc::clone(&draft));
            let work = carried(move || own.work(draft, towards, &wake));
            thread::Builder::new().name("compare".to_owned()).spawn(work).is_ok()
        });
        let other = (!beside).then(|| Arc::new(Computed::of(&mut Engine::new(), 0, draft, None)));
        Self { name, desk, towards, beside, other, last: None, asked: None }
    }

    /// Whether differences are told from the open draft to the other one.
    pub fn is_towards(&self) -> bool {
        self.towards
    }

    /// How the other draft is called.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Follows the open draft: asks for a comparison with this revision, if that was not done yet, and takes in what is ready.
    pub fn follow(&mut self, now: &Arc<Computed>) {
        if self.asked != Some(now.revision) {
            self.asked = Some(now.revision);
            match &self.other {
                Some(other) if !self.beside => self.last = Some(Arc::new(Compared::of(other, now, self.towards))),
                _ => {
                    self.desk.papers().wanted = Some((Arc::clone(now), own()));
                    self.desk.changed.notify_all();
                }
            }
        }
        if self.beside {
            let mut papers = self.desk.papers();
            if let Some(done) = papers.done.take() {
                self.last = Some(done);
            }
            if let Some(other) = papers.other.take() {
                self.other = Some(other);
            }
        }
    }

    /// The other draft as computed; none while that is being done.
    pub fn other(&self) -> Option<&Arc<Computed>> {
        self.other.as_ref()
    }

    /// What was compared last; none yet at the beginning.
    pub fn last(&self) -> Option<&Arc<Compared>> {
        self.last.as_ref()
    }
}

impl Drop for Comparing {
    fn drop(&mut self) {
        self.desk.papers().closed = true;
        self.desk.changed.notify_all();
    }
}
