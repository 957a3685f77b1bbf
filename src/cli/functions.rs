//! The table of the functions of formulas.

use std::fmt::Write as _;

use serde_json::json;

use super::{Done, Stopped};
use crate::language::{FUNCTIONS, usage};
use crate::texts::say;

/// Lists every function: how it is called, what it takes and gives, what it is for, an example.
pub(super) fn run(json: bool) -> Result<Done, Stopped> {
    if json {
        let rows: Vec<_> = FUNCTIONS
            .iter()
            .map(|f| {
                let takes: Vec<_> = f.parameters.iter().map(|p| json!({ "name": p.name, "takes": p.takes.words() })).collect();
                json!({
                    "name": f.name, "call": usage(f), "takes": takes, "gives": f.gives.words(), "what": f.sentence(), "example": f.example,
                })
            })
            .collect();
        let data = serde_json::to_string_pretty(&rows).map_err(|e| Stopped::trouble(e.to_string()))?;
        return Ok(Done { data: format!("{data}\n"), ..Done::default() });
    }
    let mut data = String::new();
    for f in FUNCTIONS {
        // Writing to a string cannot fail.
        let _ = writeln!(
            data,
            "{}\n    {} {}\n    {}",
            usage(f),
            f.sentence(),
            say!("cli-function-gives", kind = f.gives.words()),
            f.example
        );
    }
    Ok(Done { data, ..Done::default() })
}
