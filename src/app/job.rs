//! Publishing beside the window: how far it is, and a way to stop it. All files are written, or none.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use egui::Context;

use super::publish::PublishAsk;
use crate::output::{make_folder, save_all};
use crate::session::{Computed, Order, Outputs, PrintFor, PrintWish, Progress, What, how_many, outputs};
use crate::texts::{carried, say};

/// What the thread tells.
enum News {
    Done(usize),
    Ended(Result<String, String>),
}

/// The most sentences that are told at the end.
const MOST_TOLD: usize = 3;

/// What is published with one paper.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    pub what: Vec<What>,
    /// Views with the sizes that come together in one file.
    pub groups: Vec<(usize, Vec<usize>)>,
    pub wish: PrintWish,
    /// How wide the paper of a wide sheet is, mm.
    pub width: f64,
}

/// Something that is being published.
pub(super) struct PrintJob {
    news: Receiver<News>,
    progress: Arc<Progress>,
    /// Files that are made.
    pub done: usize,
    /// All files.
    pub all: usize,
    /// The dialog as it was filled in: it comes back when nothing can be written.
    ask: PublishAsk,
}

impl PrintJob {
    /// Begins to publish into a folder. `named`: with what the names of files begin, and the folder of the draft.
    pub fn start(
        ctx: &Context,
        computed: Arc<Computed>,
        asked: Vec<Asked>,
        folder: PathBuf,
        named: (String, Option<PathBuf>),
        ask: PublishAsk,
    ) -> Self {
        let all = orders(&computed, &asked, &named).map_or(0, |all| all.iter().map(how_many).sum());
        let (sender, news) = channel();
        let progress = Arc::new(Progress::default());
        let (halt, ctx) = (Arc::clone(&progress), ctx.clone());
        let work = move || {
            let ended = run(&computed, &asked, &folder, &named, &halt, &|done| tell(&sender, &ctx, News::Done(done)));
            tell(&sender, &ctx, News::Ended(ended));
        };
        // Where the system gives no thread, the news end at once and that is told.
        let _ = thread::Builder::new().name("publish".to_owned()).spawn(carried(work));
        Self { news, progress, done: 0, all, ask }
    }

    /// Stops it; nothing is written.
    pub fn stop(&self) {
        self.progress.stop.store(true, Ordering::Relaxed);
    }

    /// The dialog again, with why nothing was written; none: a person stopped it, and knows.
    pub fn ask_again(self, problem: &str) -> Option<PublishAsk> {
        let stopped = self.progress.stop.load(Ordering::Relaxed);
        (!stopped).then(|| PublishAsk { problem: problem.to_owned(), ..self.ask })
    }

    /// Hears how far it is; the end of it, if it has ended.
    pub fn hear(&mut self) -> Option<Result<String, String>> {
        loop {
            match self.news.try_recv() {
                Ok(News::Done(done)) => self.done = done,
                Ok(News::Ended(ended)) => return Some(ended),
                Err(std::sync::mpsc::TryRecvError::Empty) => return None,
                Err(std::sync::mpsc::TryRecvError::Disconnected) => {
                    return Some(Err(say!("job-ended")));
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

/// The orders of what is asked for.
fn orders<'a>(
    computed: &'a Computed,
    asked: &'a [Asked],
    (stem, beside): &'a (String, Option<PathBuf>),
) -> Result<Vec<Order<'a>>, String> {
    let model = computed.model.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    let finished = computed.finished.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    let order = |one: &'a Asked| Order {
        draft: &computed.draft,
        model,
        finished,
        stem,
        what: &one.what,
        groups: &one.groups,
        wish: &one.wish,
        width: one.width,
        folder: beside.as_deref(),
    };
    Ok(asked.iter().map(order).collect())
}

/// Publishes; what there is to tell, in sentences.
fn run(
    computed: &Computed,
    asked: &[Asked],
    folder: &Path,
    named: &(String, Option<PathBuf>),
    progress: &Progress,
    told: &(dyn Fn(usize) + Sync),
) -> Result<String, String> {
    let mut made = Outputs::default();
    for order in orders(computed, asked, named)? {
        made.add(outputs(&order, progress, told).map_err(|e| e.to_string())?);
    }
    if made.files.is_empty() {
        return Err(say!("job-nothing"));
    }
    let purpose = asked.first().map_or_else(PrintFor::default, |a| a.wish.purpose);
    let list = made.list(&named.0, &computed.draft, purpose);
    let files: Vec<_> = list.into_iter().chain(made.files.into_iter().map(|f| (f.name, f.bytes))).collect();
    make_folder(folder).map_err(|e| e.to_string())?;
    let written = save_all(folder, &files).map_err(|e| e.to_string())?.len();
    let mut words = vec![say!("job-written", count = written, folder = folder.display().to_string())];
    let missing = made.missing.iter().map(|(piece, size)| say!("piece-left-out", piece, size));
    let more: Vec<String> = missing.chain(made.lacking).chain(made.notes).collect();
    words.extend(more.iter().take(MOST_TOLD).cloned());
    if more.len() > MOST_TOLD {
        words.push(say!("and-more", count = more.len() - MOST_TOLD));
    }
    Ok(words.join("; "))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::session::Work;

    #[test]
    fn stopped_between_two_sizes_nothing_is_written() {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/bodice-sleeve.ron");
        let work = Work::here(crate::file::open(&file).unwrap().draft);
        let computed = work.computed();
        let folder = tempfile::tempdir().unwrap();
        let into = folder.path().join("pages");
        let groups = (0..12).map(|case| (0, vec![case])).collect();
        let wish = PrintWish::default();
        let asked = [Asked { what: vec![What::Pages, What::Booklet], groups, wish, width: 900.0 }];
        let named = ("block".to_owned(), None);
        let progress = Progress::default();
        let halt = |done| progress.stop.store(done >= 2, Ordering::Relaxed);
        let ended = run(computed, &asked, &into, &named, &progress, &halt);
        assert_eq!(ended, Err("stopped; nothing was written".to_owned()));
        assert!(!into.exists());
        // Twelve sizes, the booklet as pages and as one HTML file, a list of what each is for.
        let again = Progress::default();
        let told = run(computed, &asked, &into, &named, &again, &|_| {}).unwrap();
        assert!(told.starts_with("15 files are written to "), "{told}");
        assert_eq!(std::fs::read_dir(&into).unwrap().count(), 15);
    }
}
