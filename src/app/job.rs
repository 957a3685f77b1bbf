//! Writing every size beside the window: how far it is, and a way to stop it. All files are written, or none.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use egui::Context;

use crate::compute::Model;
use crate::output::{WideSettings, save_all};
use crate::session::{Computed, Order, PrintWish, Progress, What, outputs};

/// What the thread tells.
enum News {
    Done(usize),
    Ended(Result<usize, String>),
}

/// A print of every size.
pub(super) struct PrintJob {
    news: Receiver<News>,
    progress: Arc<Progress>,
    /// Sizes whose pages are made.
    pub done: usize,
    /// All sizes.
    pub all: usize,
}

impl PrintJob {
    /// Begins to print every size of the range in every view into a folder.
    pub fn start(ctx: &Context, computed: Arc<Computed>, wish: PrintWish, folder: PathBuf, stem: String) -> Self {
        let all = computed.model.as_ref().map_or(0, |m| m.plan.cases.range * m.of_views().len());
        let (sender, news) = channel();
        let progress = Arc::new(Progress::default());
        let (halt, ctx) = (Arc::clone(&progress), ctx.clone());
        let work = move || {
            let ended = run(&computed, &wish, &folder, &stem, &halt, &|done| tell(&sender, &ctx, News::Done(done)));
            tell(&sender, &ctx, News::Ended(ended));
        };
        // Where the system gives no thread, the news end at once and that is told.
        let _ = thread::Builder::new().name("print".to_owned()).spawn(work);
        Self { news, progress, done: 0, all }
    }

    /// Stops it; nothing is written.
    pub fn stop(&self) {
        self.progress.stop.store(true, Ordering::Relaxed);
    }

    /// Hears how far it is; the end of it, if it has ended.
    pub fn hear(&mut self) -> Option<Result<usize, String>> {
        loop {
            match self.news.try_recv() {
                Ok(News::Done(done)) => self.done = done,
                Ok(News::Ended(ended)) => return Some(ended),
                Err(std::sync::mpsc::TryRecvError::Empty) => return None,
                Err(std::sync::mpsc::TryRecvError::Disconnected) => {
                    return Some(Err("the print ended without a word".to_owned()));
                }
            }
        }
    }
}

fn tell(sender: &Sender<News>, ctx: &Context, news: News) {
    // The window may be closed by now.
    let _ = sender.send(news);
    ctx.request_repaint();
}

fn run(
    computed: &Computed,
    wish: &PrintWish,
    folder: &std::path::Path,
    stem: &str,
    progress: &Progress,
    told: &(dyn Fn(usize) + Sync),
) -> Result<usize, String> {
    let model = computed.model.as_ref().ok_or("the draft cannot be computed")?;
    let finished = computed.finished.as_ref().ok_or("the draft cannot be computed")?;
    let groups: Vec<(usize, Vec<usize>)> = (0..model.of_views().len())
        .filter(|view| wish.pieces.iter().all(|p| has_piece(&model.of_views()[*view], p)))
        .flat_map(|view| (0..model.plan.cases.range).map(move |case| (view, vec![case])))
        .collect();
    let order = Order {
        draft: &computed.draft,
        model,
        finished,
        stem,
        what: &[What::Pages],
        groups: &groups,
        wish,
        width: WideSettings::default().width,
        folder: None,
    };
    let made = outputs(&order, progress, told).map_err(|e| e.to_string())?;
    if let Some((piece, size)) = made.missing.first() {
        return Err(format!("{piece} cannot be drawn in size {size}; nothing was written"));
    }
    let files: Vec<(String, Vec<u8>)> = made.files.into_iter().map(|f| (f.name, f.bytes)).collect();
    std::fs::create_dir_all(folder).map_err(|e| format!("the folder {} cannot be made: {e}", folder.display()))?;
    save_all(folder, &files).map(|written| written.len()).map_err(|e| e.to_string())
}

/// Whether a piece belongs to a view.
fn has_piece(model: &Model, name: &str) -> bool {
    model.plan.frames().iter().position(|f| *f.name == *name).is_some_and(|f| model.plan.has_frame(f))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::session::Work;

    #[test]
    fn stopped_between_two_sizes_nothing_is_written() {
        let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/bodice-sleeve.ron");
        let work = Work::here(crate::file::open(&file).unwrap().draft);
        let computed = work.computed();
        let folder = tempfile::tempdir().unwrap();
        let into = folder.path().join("pages");
        let progress = Progress::default();
        let halt = |done| progress.stop.store(done >= 2, Ordering::Relaxed);
        let ended = run(computed, &PrintWish::default(), &into, "block", &progress, &halt);
        assert_eq!(ended, Err("stopped; nothing was written".to_owned()));
        assert!(!into.exists());
        let again = Progress::default();
        assert_eq!(run(computed, &PrintWish::default(), &into, "block", &again, &|_| {}), Ok(12));
        assert_eq!(std::fs::read_dir(&into).unwrap().count(), 12);
    }
}
