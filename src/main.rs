//! The program: the window, or a command.

use std::path::Path;
use std::process::ExitCode;

use clap::Parser;
use tracewheel::cli::{self, Call};
use tracewheel::document::Draft;

fn main() -> ExitCode {
    let call = Call::parse();
    if let Some(command) = &call.command {
        return cli::run(command);
    }
    let file = call.file.as_deref();
    match cli::draft_for_window(file) {
        Err(exit) => exit,
        Ok(draft) => match window(file, draft) {
            Ok(()) => ExitCode::SUCCESS,
            Err(reason) => cli::no_window(file, &reason),
        },
    }
}

#[cfg(feature = "window")]
fn window(file: Option<&Path>, draft: Option<Draft>) -> Result<(), String> {
    tracewheel::app::show(file, draft)
}

#[cfg(not(feature = "window"))]
fn window(_file: Option<&Path>, _draft: Option<Draft>) -> Result<(), String> {
    Err("this build has none".to_owned())
}
