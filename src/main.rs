//! The program: the window, or a command.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Parser;
use tracewheel::cli::{self, Call};
use tracewheel::file::OpenedFile;

fn main() -> ExitCode {
    let call = Call::parse();
    if let Some(command) = &call.command {
        return cli::run(command);
    }
    let file = call.file.as_deref();
    match cli::draft_for_window(file) {
        Err(exit) => exit,
        Ok(opened) => match window(file.map(PathBuf::from).zip(opened)) {
            Ok(()) => ExitCode::SUCCESS,
            Err(reason) => cli::no_window(file, &reason),
        },
    }
}

#[cfg(feature = "window")]
fn window(file: Option<(PathBuf, OpenedFile)>) -> Result<(), String> {
    use tracewheel::app::{Start, show};
    use tracewheel::session::RecoveryFolder;
    show(Start { file, recovery: RecoveryFolder::of_system() })
}

#[cfg(not(feature = "window"))]
fn window(_file: Option<(PathBuf, OpenedFile)>) -> Result<(), String> {
    Err("this build has none".to_owned())
}
