//! All tests in one binary: a second one would link everything again.
#![allow(clippy::unwrap_used, missing_docs)]
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::type_complexity,
    reason = "a test may look at a clock"
)]

mod bad_input;
mod blocks;
mod book_drafts;
mod booklet;
mod by_hand;
mod care;
mod cases;
mod changes_told;
mod chart;
mod chart_steps;
mod cli;
mod comparing;
mod completing;
mod curves_derivatives;
mod curves_places;
mod curves_set_off;
mod curves_values;
mod derived;
mod derived_edges;
mod derived_garment;
mod derived_outside;
mod derived_recipes;
mod derived_slashes;
mod desktop;
mod dice;
mod drafts;
mod examples;
mod explaining;
mod file_read;
mod file_save;
mod file_write;
mod findings;
mod findings_finishing;
mod finishing;
mod finishing_darts;
mod finishing_marks;
mod functions;
mod fuzz_corpus;
mod help;
mod home;
mod house;
mod kept;
mod killed;
mod labels;
mod language;
mod lay_pictures;
mod laying;
mod laying_plans;
mod lengthen;
mod licences;
mod metamorphic;
#[cfg(unix)]
mod mishaps;
mod numeric_diagnosis;
mod numeric_projection;
mod numeric_settle;
mod numeric_systems;
mod oracle;
mod outlines;
mod output_demo;
mod output_dxf;
mod output_pdf;
mod output_save;
mod output_svg;
mod output_wide;
mod outputs;
mod packing;
mod patching;
mod pencil;
mod planted;
mod practice;
mod preferences;
mod projector;
mod readme;
mod release;
mod renaming;
mod renaming_derived;
mod said_in_german;
mod seeds;
mod session;
mod spoken;
mod styling;
mod tables;
mod taken;
mod tape;
mod texts;
mod views;
#[cfg(feature = "window")]
mod window;
mod writing;

/// The program, to be called: it speaks English whatever the system speaks.
fn program() -> std::process::Command {
    let mut program = std::process::Command::new(env!("CARGO_BIN_EXE_tracewheel"));
    program.env("LC_ALL", "C");
    program
}
