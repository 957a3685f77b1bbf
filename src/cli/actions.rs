//! The table of the window's actions.

use std::fmt::Write as _;

use super::{Done, Stopped};
use crate::session::ACTIONS;

/// Lists every action: name, key, menu and what it does.
pub(super) fn run(json: bool) -> Result<Done, Stopped> {
    if json {
        let data = serde_json::to_string_pretty(ACTIONS).map_err(|e| Stopped::trouble(e.to_string()))?;
        return Ok(Done { data: format!("{data}\n"), ..Done::default() });
    }
    let mut data = String::new();
    for action in ACTIONS {
        // Writing to a string cannot fail.
        let _ = writeln!(data, "{:<7} {:<30} {:<14} {}", action.menu.words(), action.name(), action.key, action.what());
    }
    Ok(Done { data, ..Done::default() })
}
