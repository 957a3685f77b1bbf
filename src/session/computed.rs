//! What was computed of a draft, all of one revision, and where it is computed.

use std::panic::AssertUnwindSafe;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;

use crate::base::{Finding, Language};
use crate::compute::{Engine, Model, guarded};
use crate::document::Draft;
use crate::finish::{Before, Finished, finish_after};
use crate::proof::{Counts, count, proof_of};
use crate::texts::{message, own, set_own};

/// A draft with everything that was computed of it.
#[derive(Debug)]
pub struct Computed {
    /// Counts up with every change.
    pub revision: u64,
    /// What was computed.
    pub draft: Arc<Draft>,
    /// Its model; none where the program failed on it.
    pub model: Option<Model>,
    /// Its pieces as they are cut; none where there is no model.
    pub finished: Option<Finished>,
    /// Everything that was found, errors first.
    pub findings: Vec<Finding>,
    /// How many.
    pub counts: Counts,
}

impl Computed {
    /// What was finished of a draft, so that the next one need not begin anew; none where nothing is cut.
    fn to_go_on_from(&self) -> Option<Before<'_>> {
        let (model, finished) = (self.model.as_ref()?, self.finished.as_ref()?);
        let is_cut = finished.cases.iter().flatten().flatten().any(|p| !p.cuts.is_empty());
        is_cut.then_some(Before { draft: &model.draft, model, finished })
    }

    pub(super) fn of(engine: &mut Engine, revision: u64, draft: Arc<Draft>, last: Option<&Self>) -> Self {
        let worked = engine.compute_guarded(&draft, &[]).and_then(|model| {
            let (finished, findings) = guarded(AssertUnwindSafe(|| {
                let finished = finish_after(&model.draft, &model, last.and_then(Self::to_go_on_from));
                let findings = proof_of(&model.draft, &model, &finished);
                (finished, findings)
            }))?;
            Ok((model, finished, findings))
        });
        let (model, finished, findings) = match worked {
            Ok((model, finished, findings)) => (Some(model), Some(finished), findings),
            Err(failed) => (None, None, vec![*failed]),
        };
        Self { revision, counts: count(&findings), draft, model, finished, findings }
    }

    /// The same, with the model and the pieces of one of the draft's views; itself where it has none. What was found is of all views.
    pub fn in_view(self: &Arc<Self>, view: usize) -> Arc<Self> {
        let of_model = self.model.as_ref().and_then(|m| m.views.get(view));
        let (Some(model), Some(finished)) = (of_model, self.finished.as_ref().and_then(|f| f.views.get(view))) else {
            return Arc::clone(self);
        };
        Arc::new(Self {
            revision: self.revision,
            draft: Arc::clone(&self.draft),
            model: Some(model.clone()),
            finished: Some(finished.clone()),
            findings: self.findings.clone(),
            counts: self.counts,
        })
    }

    /// The names of the views; none where the draft has none.
    pub fn views(&self) -> impl Iterator<Item = &str> {
        self.model.iter().flat_map(|m| &m.views).map(Model::view)
    }

    /// Why there is no model, in words.
    pub fn failure(&self) -> Option<String> {
        match self.model {
            Some(_) => None,
            None => self.findings.first().map(|f| message(f, self.draft.display)),
        }
    }
}

/// Called when something new was computed.
pub type Wake = Arc<dyn Fn() + Send + Sync>;

/// An engine with what it computed last, in the language in which that was worded: in another one it begins anew.
#[derive(Default)]
pub(super) struct Bench {
    engine: Engine,
    last: Option<Arc<Computed>>,
    language: Language,
}

impl Bench {
    /// Computes a draft in a language, which is that of the thread from now on.
    fn compute(&mut self, revision: u64, draft: Arc<Draft>, language: Language) -> Arc<Computed> {
        if self.language != language {
            *self = Self { language, ..Self::default() };
        }
        set_own(language);
        let computed = Arc::new(Computed::of(&mut self.engine, revision, draft, self.last.as_deref()));
        self.last = Some(Arc::clone(&computed)).filter(|c| c.to_go_on_from().is_some());
        computed
    }
}

/// Where drafts are computed: beside the window, the newest request first.
pub(super) enum Seat {
    /// In the same thread, at once.
    Here(Box<Bench>),
    /// In a thread of its own.
    Beside(Arc<Desk>),
}

/// What the two threads hand each other.
pub(super) struct Desk {
    state: Mutex<Papers>,
    changed: Condvar,
    wake: Wake,
}

#[derive(Default)]
struct Papers {
    wanted: Option<(u64, Arc<Draft>, Language)>,
    done: Option<Arc<Computed>>,
    /// What nobody shows any more: taking a large model apart is work too, and is done here.
    old: Vec<Arc<Computed>>,
    closed: bool,
}

impl Desk {
    fn papers(&self) -> MutexGuard<'_, Papers> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn work(&self) {
        let mut bench = Bench::default();
        loop {
            let mut papers = self.papers();
            let (revision, draft, language) = loop {
                if papers.closed {
                    return;
                }
                match papers.wanted.take() {
                    Some(wanted) => break wanted,
                    None => papers = self.changed.wait(papers).unwrap_or_else(PoisonError::into_inner),
                }
            };
            let old = std::mem::take(&mut papers.old);
            drop(papers);
            drop(old);
            self.papers().done = Some(bench.compute(revision, draft, language));
            self.changed.notify_all();
            (self.wake)();
        }
    }
}

impl Seat {
    pub fn here() -> Self {
        Self::Here(Box::default())
    }

    /// A thread of its own; in this one where the system gives none.
    pub fn beside(wake: Wake) -> Self {
        let desk = Arc::new(Desk { state: Mutex::default(), changed: Condvar::new(), wake });
        let own = Arc::clone(&desk);
        match thread::Builder::new().name("engine".to_owned()).spawn(move || own.work()) {
            Ok(_) => Self::Beside(desk),
            Err(_) => Self::here(),
        }
    }

    /// Asks for a draft, worded as this thread speaks; what is computed at once comes back at once.
    pub fn ask(&mut self, revision: u64, draft: &Arc<Draft>) -> Option<Arc<Computed>> {
        match self {
            Self::Here(bench) => Some(bench.compute(revision, Arc::clone(draft), own())),
            Self::Beside(desk) => {
                desk.papers().wanted = Some((revision, Arc::clone(draft), own()));
                desk.changed.notify_all();
                None
            }
        }
    }

    /// What came in since it was last asked.
    pub fn take(&self) -> Option<Arc<Computed>> {
        match self {
            Self::Here(..) => None,
            Self::Beside(desk) => desk.papers().done.take(),
        }
    }

    /// Takes back what is not shown any more.
    pub fn give_back(&self, old: Arc<Computed>) {
        if let Self::Beside(desk) = self {
            desk.papers().old.push(old);
        }
    }

    /// Waits until this revision was computed.
    pub fn wait(&self, revision: u64) -> Option<Arc<Computed>> {
        let Self::Beside(desk) = self else { return None };
        let mut papers = desk.papers();
        while papers.done.as_ref().is_none_or(|d| d.revision < revision) {
            papers = desk.changed.wait(papers).unwrap_or_else(PoisonError::into_inner);
        }
        papers.done.take()
    }
}

impl Drop for Seat {
    fn drop(&mut self) {
        if let Self::Beside(desk) = self {
            desk.papers().closed = true;
            desk.changed.notify_all();
        }
    }
}
