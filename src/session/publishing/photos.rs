//! Pictures from files beside the draft, for the booklet.

use std::collections::BTreeMap;
use std::path::{Component, Path};
use std::sync::Arc;

use crate::document::Draft;
use crate::output::Photo;

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
                Err(problem) => format!("booklet step {}: the picture {} is left out: {problem}", i + 1, picture.file),
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
        return Err("no file is named".to_owned());
    }
    let path: &Path = Path::new(file);
    // A draft from elsewhere must not draw in what lies anywhere on this disk.
    if path.components().any(|c| !matches!(c, Component::Normal(_) | Component::CurDir)) {
        return Err("a picture lies in the folder of the draft or below it: copy it there".to_owned());
    }
    let folder = folder.ok_or("the draft has no folder yet: save it first")?;
    let whole = folder.join(path);
    let bytes = std::fs::read(&whole).map_err(|e| match e.kind() {
        std::io::ErrorKind::NotFound => "there is no such file in the folder of the draft".to_owned(),
        _ => e.to_string(),
    })?;
    Photo::read(&bytes).map_err(|e| e.to_string())
}
