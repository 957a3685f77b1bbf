//! The table of findings.

use std::fmt::Write as _;

use serde_json::json;

use super::{Done, Stopped};
use crate::base::Code;
use crate::texts::{means, say, severity};

/// Lists every kind of finding: its code, how bad it is, one sentence, whether it can be silenced or switched off.
pub(super) fn run(json: bool) -> Result<Done, Stopped> {
    if json {
        let rows: Vec<_> = Code::ALL
            .iter()
            .map(|c| {
                json!({
                    "code": c.word(), "severity": c.severity().word(), "what": means(*c), "can_be_silenced": c.can_be_silenced(),
                })
            })
            .collect();
        let data = serde_json::to_string_pretty(&rows).map_err(|e| Stopped::trouble(e.to_string()))?;
        return Ok(Done { data: format!("{data}\n"), ..Done::default() });
    }
    let mut data = String::new();
    for code in Code::ALL {
        let off = if code.can_be_silenced() { say!("cli-finding-off") } else { say!("cli-finding-always") };
        let severity = severity(code.severity());
        // Writing to a string cannot fail.
        let _ = writeln!(data, "{} ({severity}, {off})\n    {}", code.word(), means(*code));
    }
    Ok(Done { data, ..Done::default() })
}
