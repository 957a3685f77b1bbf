//! Opening the window, or saying why there is none.

use std::path::Path;
use std::process::ExitCode;

use super::{Done, NO_DISPLAY, TROUBLE, report};

/// Opens the window on a draft. Exit 3 and one sentence where there is no display.
pub fn open_window(file: Option<&Path>) -> ExitCode {
    let on = file.map_or("FILE".to_owned(), |f| f.display().to_string());
    let stop = |message: String, exit: u8| {
        report::print(&Done { messages: format!("tracewheel: {message}\n"), exit, ..Done::default() });
        ExitCode::from(exit)
    };
    // A file that cannot be read is told before a window opens on nothing.
    let opened = match file.map(super::open).transpose() {
        Ok(opened) => opened,
        Err(stopped) => return stop(stopped.message, TROUBLE),
    };
    match show(file, opened) {
        Ok(()) => ExitCode::SUCCESS,
        Err(reason) => stop(
            format!(
                "no window can be opened here ({reason}); the same engine runs without one, as `tracewheel proof {on}` or `tracewheel --help`"
            ),
            NO_DISPLAY,
        ),
    }
}

#[cfg(feature = "window")]
fn show(file: Option<&Path>, opened: Option<crate::file::OpenedFile>) -> Result<(), String> {
    crate::app::show(file, opened.map(|o| o.draft))
}

#[cfg(not(feature = "window"))]
fn show(_file: Option<&Path>, _opened: Option<crate::file::OpenedFile>) -> Result<(), String> {
    Err("this build has none".to_owned())
}
