//! Looking at the files from which blocks were taken.

use std::path::Path;
use std::sync::Arc;

use super::{Standing, open_block, standing};
use crate::base::{Code, Finding};
use crate::document::Draft;

/// What was seen of a block.
#[derive(Clone, Debug, PartialEq)]
pub struct LookedAt {
    /// The block.
    pub name: String,
    /// Its file, as it is written down.
    pub file: String,
    /// Its own draft, and how the block stands against it; or why that cannot be said.
    pub found: Result<(Arc<Draft>, Standing), String>,
}

impl LookedAt {
    /// What a person must look at, if there is something.
    pub fn finding(&self) -> Option<Finding> {
        let at = format!("block {}", self.name);
        match &self.found {
            Ok((_, standing)) if standing.is_same() => None,
            Ok((_, standing)) => Some(
                Finding::new(Code::BlockChanged)
                    .at(at)
                    .word("block", &self.name)
                    .word("file", &self.file)
                    .word("what", standing.words()),
            ),
            Err(problem) => Some(
                Finding::new(Code::BlockMissing).at(at).word("block", &self.name).word("problem", problem.trim_end()),
            ),
        }
    }
}

/// Looks at the file of each block. `path`: the draft's own file.
pub fn look_at_blocks(draft: &Draft, path: &Path) -> Vec<LookedAt> {
    let look = |block: &crate::document::TakenBlock| {
        let source = open_block(path, block).map_err(|e| e.to_string())?;
        let standing = standing(draft, block, &source).map_err(|e| e.to_string())?;
        Ok((Arc::new(source), standing))
    };
    draft.blocks.iter().map(|b| LookedAt { name: b.name.clone(), file: b.file.clone(), found: look(b) }).collect()
}
