//! Blocks taken from other drafts: whose they are.

use crate::base::{Code, Finding};
use crate::document::Draft;
use crate::texts::say;

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let lacks = |author: &str, licence: &str| match (author.trim(), licence.trim()) {
        ("", "") => Some(say!("block-author-and-licence")),
        ("", _) => Some(say!("block-author")),
        (_, "") => Some(say!("block-licence")),
        _ => None,
    };
    let told = draft.blocks.iter().filter_map(|b| {
        let what = lacks(&b.author, &b.licence)?;
        let finding = Finding::new(Code::BlockRights).at(format!("block {}", b.name));
        Some(finding.word("block", &b.name).word("file", &b.file).word("what", what))
    });
    told.collect()
}
