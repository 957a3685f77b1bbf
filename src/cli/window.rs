//! What the command line does around the window: read the draft first, and say why there is no window.

use std::path::Path;
use std::process::ExitCode;

use super::{Done, NO_DISPLAY, named, open, report};
use crate::file::OpenedFile;
use crate::texts::say;

fn stop(message: &str, exit: u8) -> ExitCode {
    ExitCode::from(report::print(&Done { messages: named(message), exit, ..Done::default() }))
}

/// The draft for the window. A file that cannot be read is told before a window opens on nothing.
///
/// # Errors
/// The exit, after the message was printed.
pub fn draft_for_window(file: Option<&Path>) -> Result<Option<OpenedFile>, ExitCode> {
    match file.map(open).transpose() {
        Ok(opened) => Ok(opened),
        Err(stopped) => Err(stop(&stopped.message, stopped.exit)),
    }
}

/// Why a build without a window opens none.
pub fn windowless() -> String {
    say!("build-no-window")
}

/// Says in one sentence that there is no window, and how to go on without one. Exit 3.
pub fn no_window(file: Option<&Path>, reason: &str) -> ExitCode {
    let file = file.map_or_else(|| say!("cli-window-file"), |f| f.display().to_string());
    stop(&say!("cli-window", reason, file), NO_DISPLAY)
}
