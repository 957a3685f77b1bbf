//! The program: the window, or a command.

use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Instant;

use clap::Parser;
use tracewheel::cli::{self, Call};
use tracewheel::file::OpenedFile;

fn main() -> ExitCode {
    let begun = begun();
    speak();
    let call = Call::parse();
    if let Some(command) = &call.command {
        return cli::run(command);
    }
    let file = call.file.as_deref();
    match cli::draft_for_window(file) {
        Err(exit) => exit,
        Ok(opened) => match window(file.map(PathBuf::from).zip(opened), begun) {
            Ok(()) => ExitCode::SUCCESS,
            Err(reason) => cli::no_window(file, &reason),
        },
    }
}

#[allow(clippy::disallowed_methods, reason = "only the window tells times, and only to those who ask")]
fn begun() -> Instant {
    Instant::now()
}

/// Everything is said in the system's language, until the preferences of the window say another.
#[allow(clippy::disallowed_methods, reason = "the language is the system's")]
fn speak() {
    tracewheel::texts::set_own(tracewheel::base::system::language(&|name| std::env::var_os(name)));
}

#[cfg(feature = "window")]
fn window(file: Option<(PathBuf, OpenedFile)>, begun: Instant) -> Result<(), String> {
    use tracewheel::app::{Start, show};
    use tracewheel::session::{Own, RecoveryFolder};
    show(Start { file, recovery: RecoveryFolder::of_system(), own: Own::of_system(), begun: Some(begun) })
}

#[cfg(not(feature = "window"))]
fn window(_file: Option<(PathBuf, OpenedFile)>, _begun: Instant) -> Result<(), String> {
    Err(cli::windowless())
}
