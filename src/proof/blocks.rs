//! Blocks taken from other drafts: whose they are.

use crate::base::{Code, Finding};
use crate::document::Draft;

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let lacks = |author: &str, licence: &str| match (author.trim(), licence.trim()) {
        ("", "") => Some("an author and a licence"),
        ("", _) => Some("an author"),
        (_, "") => Some("a licence"),
        _ => None,
    };
    let told = draft.blocks.iter().filter_map(|b| {
        let what = lacks(&b.author, &b.licence)?;
        let finding = Finding::new(Code::BlockRights).at(format!("block {}", b.name));
        Some(finding.word("block", &b.name).word("file", &b.file).word("what", what))
    });
    told.collect()
}
