//! Where the draft of a block lies.

use std::path::{Component, Path, PathBuf};

use crate::document::{Draft, TakenBlock};
use crate::file::{self, FileError};
use crate::texts::say;

/// Opens the draft that a block was taken from. `draft`: the file in which the block stands.
///
/// # Errors
/// See [`file::open`].
pub fn open_block(draft: &Path, block: &TakenBlock) -> Result<Draft, FileError> {
    file::open(&block_path(draft, &block.file)).map(|opened| opened.draft)
}

/// The path of a file that is written down as seen from the folder of a draft.
pub fn block_path(draft: &Path, file: &str) -> PathBuf {
    let folder = draft.parent().unwrap_or(Path::new(""));
    file.split('/').fold(folder.to_owned(), |path, part| path.join(part))
}

/// A file that a person named: as it is, or where there is none, as seen from the folder of the draft.
pub fn named_beside(draft: &Path, file: &Path) -> PathBuf {
    let beside = draft.parent().map(|folder| folder.join(file));
    beside.filter(|b| !file.exists() && b.exists()).unwrap_or_else(|| file.to_owned())
}

/// A file as it is seen from the folder of a draft, with `/` between folders. Both must be there.
///
/// # Errors
/// Why it cannot be said.
pub fn relative_to(draft: &Path, file: &Path) -> Result<String, String> {
    let real = |path: &Path| {
        path.canonicalize()
            .map_err(|e| say!("block-file-lost", path = path.display().to_string(), error = e.to_string()))
    };
    let folder = match draft.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => real(folder)?,
        _ => real(Path::new("."))?,
    };
    let (from, to) = (folder, real(file)?);
    let (from, to): (Vec<Component<'_>>, Vec<Component<'_>>) = (from.components().collect(), to.components().collect());
    let same = from.iter().zip(&to).take_while(|(a, b)| a == b).count();
    if same == 0 {
        return Err(say!("block-other-drive", path = file.display().to_string()));
    }
    let up = std::iter::repeat_n("..".to_owned(), from.len() - same);
    let down = to[same..].iter().map(|c| c.as_os_str().to_string_lossy().into_owned());
    Ok(up.chain(down).collect::<Vec<_>>().join("/"))
}
