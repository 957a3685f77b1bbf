//! The system's dialog for files, beside the window. Where there is none, the path is typed.

use std::path::PathBuf;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;

use egui::Context;

use crate::texts::{carried, say};

/// What kind of files is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Drafts.
    Drafts,
    /// Pictures.
    Pictures,
    /// Drawings of outlines.
    Outlines,
}

impl Kind {
    /// Its word, and how its files end.
    fn filter(self) -> (String, &'static [&'static str]) {
        match self {
            Self::Drafts => (say!("files-drafts"), &["ron"]),
            Self::Pictures => (say!("files-pictures"), &["png", "jpg", "jpeg", "PNG", "JPG", "JPEG"]),
            Self::Outlines => (say!("files-outlines"), &["svg", "SVG"]),
        }
    }
}

/// A dialog that is open.
pub(super) struct Browsing {
    answer: Receiver<Option<PathBuf>>,
}

/// What became of it.
pub(super) enum Answer {
    /// Nothing yet.
    Open,
    /// A file was chosen, or none: the person gave up, or the system has no such dialog; these cannot be told apart.
    Closed(Option<PathBuf>),
}

impl Browsing {
    /// Opens the dialog in a thread of its own, so that the window goes on.
    pub fn start(ctx: &Context, saving: Option<PathBuf>, kind: Kind) -> Self {
        let (sender, answer) = channel();
        let ctx = ctx.clone();
        // Where the system gives no thread, the answer comes as "none".
        let _ = thread::Builder::new().name("files".to_owned()).spawn(carried(move || {
            let (word, endings) = kind.filter();
            let dialog = rfd::FileDialog::new().add_filter(word, endings);
            let chosen = match saving {
                Some(path) => {
                    let name = path.file_name().map_or_else(|| "draft.ron".into(), |n| n.to_string_lossy());
                    let dialog = dialog.set_file_name(name);
                    match path.parent().filter(|p| p.is_dir()) {
                        Some(folder) => dialog.set_directory(folder).save_file(),
                        None => dialog.save_file(),
                    }
                }
                None => dialog.pick_file(),
            };
            // The window may be closed by now.
            let _ = sender.send(chosen);
            ctx.request_repaint();
        }));
        Self { answer }
    }

    pub fn answer(&self) -> Answer {
        match self.answer.try_recv() {
            Ok(chosen) => Answer::Closed(chosen),
            Err(TryRecvError::Empty) => Answer::Open,
            Err(TryRecvError::Disconnected) => Answer::Closed(None),
        }
    }
}
