//! `desktop`: an entry in the menu of the desktop, an icon, and drafts that are opened by a click. For one person, no administrator needed.

#![allow(clippy::disallowed_methods, reason = "where the person's own things lie, and where this program does")]

use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::{Done, FINE, NO, Stopped, named};
use crate::base::system::{HAS_DESKTOP_ENTRIES, OwnThings, own_folder};
use crate::output::{make_folder, save_all};
use crate::texts::{gathered, owned, say};

/// The files that the desktop looks for: folder, name, content.
const FILES: [(&str, &str, &str); 3] = [
    ("applications", "tracewheel.desktop", include_str!("../../assets/desktop/tracewheel.desktop")),
    ("icons/hicolor/scalable/apps", "tracewheel.svg", include_str!("../../assets/desktop/tracewheel.svg")),
    ("mime/packages", "tracewheel.xml", include_str!("../../assets/desktop/tracewheel.xml")),
];
/// Programs of the desktop that read those files anew, and the folder that each is told.
const READ_ANEW: [(&str, &str); 2] = [("update-mime-database", "mime"), ("update-desktop-database", "applications")];

/// Puts the entry in its place, or takes it away.
pub(super) fn run(remove: bool) -> Result<Done, Stopped> {
    if !HAS_DESKTOP_ENTRIES {
        return Err(Stopped::no(say!("cli-desktop-none")));
    }
    let from = |name: &str| std::env::var_os(name);
    let shared = own_folder(OwnThings::Shared, &from).ok_or_else(|| Stopped::trouble(say!("cli-desktop-home")))?;
    if remove { removed(&shared) } else { installed(&shared) }
}

fn installed(shared: &Path) -> Result<Done, Stopped> {
    let program =
        std::env::current_exe().map_err(|e| Stopped::trouble(say!("cli-desktop-lost", problem = e.to_string())))?;
    let called = quoted(&program)
        .ok_or_else(|| Stopped::trouble(say!("cli-desktop-name", program = program.display().to_string())))?;
    let mut data = String::new();
    for (folder, name, content) in FILES {
        let content = content.replace("Exec=tracewheel ", &format!("Exec={called} "));
        let folder = shared.join(folder);
        make_folder(&folder).map_err(|e| Stopped::trouble(e.to_string()))?;
        let written = save_all(&folder, &[(name.to_owned(), content.into_bytes())]);
        for path in written.map_err(|e| Stopped::trouble(e.to_string()))? {
            data.push_str(&format!("{}\n", path.display()));
        }
    }
    Ok(Done { data, messages: read_anew(shared), exit: FINE })
}

fn removed(shared: &Path) -> Result<Done, Stopped> {
    let mut data = String::new();
    for (folder, name, _) in FILES {
        let path: PathBuf = shared.join(folder).join(name);
        match fs::remove_file(&path) {
            Ok(()) => data.push_str(&format!("{}\n", path.display())),
            Err(e) if e.kind() == ErrorKind::NotFound => {}
            Err(e) => {
                let (file, problem) = (path.display().to_string(), e.to_string());
                return Err(Stopped::trouble(say!("cli-desktop-removed", file, problem)));
            }
        }
    }
    if data.is_empty() {
        let messages = named(&say!("cli-desktop-nothing"));
        return Ok(Done { messages, exit: NO, ..Done::default() });
    }
    Ok(Done { data, messages: read_anew(shared), exit: FINE })
}

/// Has the desktop read its files anew. Where a program for that is missing, most desktops do so by themselves at the next login.
fn read_anew(shared: &Path) -> String {
    let mut missing = Vec::new();
    for (program, folder) in READ_ANEW {
        let quiet = Command::new(program).arg(shared.join(folder)).stdout(Stdio::null()).stderr(Stdio::null()).status();
        if !quiet.is_ok_and(|s| s.success()) {
            missing.push(program);
        }
    }
    match missing.as_slice() {
        [] => String::new(),
        some => named(&say!("cli-desktop-login", programs = owned(|| gathered(some)))),
    }
}

/// A path as the Desktop Entry Specification wants it in `Exec`: in quotes, four signs behind a backslash (which the file itself needs
/// twice), a per cent sign twice. `None` where it is no text or holds what no entry can.
fn quoted(path: &Path) -> Option<String> {
    let text = path.to_str().filter(|t| !t.chars().any(char::is_control))?;
    let mut out = String::from("\"");
    for sign in text.chars() {
        match sign {
            '"' | '`' | '$' => out.push_str("\\\\"),
            '\\' => out.push_str("\\\\\\"),
            '%' => out.push('%'),
            _ => {}
        }
        out.push(sign);
    }
    out.push('"');
    Some(out)
}
