//! Writing the pages that are shown.

use std::path::Path;

use super::Window;
use crate::output::{save_all, write_pdf};
use crate::session::PrintFor;
use crate::texts::say;

impl Window {
    /// Writes the pages that are shown. A release is blocked by errors.
    pub(super) fn print(&mut self, path: &Path) {
        if let Some(words) = self.release_blocked() {
            return self.problem(&words);
        }
        let made = self.scene.sheets(&self.shown.printing, &self.shown.case);
        let sheets = match &*made {
            Ok(sheets) => sheets,
            Err(problem) => return self.problem(problem),
        };
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
        let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let Some(name) = name else { return self.problem(&say!("file-needs-name")) };
        let written = write_pdf(&self.scene.title(), &sheets.pages)
            .map_err(|e| e.to_string())
            .and_then(|bytes| save_all(folder, &[(name, bytes)]).map_err(|e| e.to_string()));
        match written {
            Ok(_) => {
                self.shown.ask = None;
                let (count, path) = (sheets.pages.len(), path.display().to_string());
                self.tell(say!("done-pages-written", count, path));
            }
            Err(problem) => self.problem(&problem),
        }
    }

    /// Why a release cannot be printed.
    fn release_blocked(&self) -> Option<String> {
        let errors = self.scene.computed.counts.errors;
        let release = self.shown.printing.wish.purpose == PrintFor::Release;
        (release && errors > 0).then(|| say!("release-blocked", count = errors))
    }
}
