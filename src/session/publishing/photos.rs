//! Pictures from files beside the draft, for the booklet.

use std::collections::BTreeMap;
use std::path::{Component, Path};
use std::sync::Arc;

use crate::document::Draft;
use crate::output::Photo;
use crate::texts::say;

/// The pictures of a draft's booklet by the names of their files, and what is wrong with those that cannot be shown, in sentences.
/// `folder`: that of the draft; a draft that was never saved has none.
pub fn photos(draft: &Draft, folder: Option<&Path>) -> (BTreeMap<String, Arc<Photo>>, Vec<String>) {
    let mut out: BTreeMap<String, Arc<Photo>> = BTreeMap::new();
    let mut problems = Vec::new();
    for (i, step) in draft.booklet.iter().enumerate() {
        for picture in &step.pictures {
            if out.contains_key(&picture.file) {
                continue;
            }
            let told = match read(&picture.file, folder) {
                Ok(photo) => {
                    out.insert(picture.file.clone(), Arc::new(photo));
                    continue;
                }
                Err(problem) => say!("photo-out", step = i + 1, file = picture.file, problem),
            };
            if !problems.contains(&told) {
                problems.push(told);
            }
        }
    }
    (out, problems)
}

fn read(file: &str, folder: Option<&Path>) -> Result<Photo, String> {
    if file.trim().is_empty() {
        return Err(say!("photo-unnamed"));
    }
    let path: &Path = Path::new(file);
    // A draft from elsewhere must not draw in what lies anywhere on this disk.
    if path.components().any(|c| !matches!(c, Component::Normal(_) | Component::CurDir)) {
        return Err(say!("photo-elsewhere"));
    }
    let folder = folder.ok_or_else(|| say!("photo-no-folder"))?;
    let whole = folder.join(path);
    let bytes = std::fs::read(&whole).map_err(|e| match e.kind() {
        std::io::ErrorKind::NotFound => say!("photo-missing"),
        _ => e.to_string(),
    })?;
    Photo::read(&bytes).map_err(|e| e.to_string())
}
