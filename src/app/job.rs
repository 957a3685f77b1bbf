//! Writing every size beside the window: how far it is, and a way to stop it. All files are written, or none.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use egui::Context;

use crate::compute::Model;
use crate::output::{save_all, write_pdf};
use crate::session::{Computed, PrintWish, home_print, print_name};

/// What the thread tells.
enum News {
    Done(usize),
    Ended(Result<usize, String>),
}

/// A print of every size.
pub(super) struct PrintJob {
    news: Receiver<News>,
    stop: Arc<AtomicBool>,
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
        let stop = Arc::new(AtomicBool::new(false));
        let (halt, ctx) = (Arc::clone(&stop), ctx.clone());
        let work = move || {
            let ended = run(&computed, &wish, &folder, &stem, &halt, &|done| tell(&sender, &ctx, News::Done(done)));
            tell(&sender, &ctx, News::Ended(ended));
        };
        // Where the system gives no thread, the news end at once and that is told.
        let _ = thread::Builder::new().name("print".to_owned()).spawn(work);
        Self { news, stop, done: 0, all }
    }

    /// Stops it; nothing is written.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
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
    stop: &AtomicBool,
    done: &dyn Fn(usize),
) -> Result<usize, String> {
    let model = computed.model.as_ref().ok_or("the draft cannot be computed")?;
    let finished = computed.finished.as_ref().ok_or("the draft cannot be computed")?;
    let mut files = Vec::new();
    let range = model.plan.cases.range;
    for (view, case) in (0..model.of_views().len()).flat_map(|view| (0..range).map(move |case| (view, case))) {
        if stop.load(Ordering::Relaxed) {
            return Err("stopped; nothing was written".to_owned());
        }
        let size = model.plan.cases.list[case].address.as_str();
        let own = model.of_views()[view].view();
        if wish.pieces.iter().any(|p| !has_piece(&model.of_views()[view], p)) {
            continue;
        }
        let called = if own.is_empty() { format!("size {size}") } else { format!("view {own}, size {size}") };
        let made = home_print(&computed.draft, (model, finished), view, &[case], wish);
        let (sheets, missing) = made.map_err(|e| format!("{called}: {e}"))?;
        if let Some((piece, _)) = missing.first() {
            return Err(format!("{piece} cannot be drawn in {called}; nothing was written"));
        }
        let bytes = write_pdf(&computed.draft.title, &sheets.pages).map_err(|e| format!("{called}: {e}"))?;
        let name = print_name((stem, own), &[size], &wish.pieces, wish.purpose, &sheets.paper_name(wish.paper));
        files.push((name, bytes));
        done(view * range + case + 1);
    }
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
        let stop = AtomicBool::new(false);
        let halt = |done| stop.store(done == 2, Ordering::Relaxed);
        let ended = run(computed, &PrintWish::default(), &into, "block", &stop, &halt);
        assert_eq!(ended, Err("stopped; nothing was written".to_owned()));
        assert!(!into.exists());
        stop.store(false, Ordering::Relaxed);
        assert_eq!(run(computed, &PrintWish::default(), &into, "block", &stop, &|_| {}), Ok(12));
        assert_eq!(std::fs::read_dir(&into).unwrap().count(), 12);
    }
}
