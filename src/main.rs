//! The program: the window, or a command.

use std::process::ExitCode;

use clap::Parser;
use tracewheel::cli::{self, Call};

fn main() -> ExitCode {
    let call = Call::parse();
    match &call.command {
        Some(command) => cli::run(command),
        None => cli::open_window(call.file.as_deref()),
    }
}
