//! Blocks that were taken from other drafts.

use serde::{Deserialize, Serialize};

use super::OWN_LETTER;

/// A block that was taken from another draft. What was taken stands in this draft like everything else, so that it computes without the
/// other file; this says where it came from, so that a change there is noticed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TakenBlock {
    /// What it is called here.
    pub name: String,
    /// The other file, seen from the folder of this one, with `/` between folders.
    pub file: String,
    /// What the other draft is called.
    pub title: String,
    /// Who drafted it.
    pub author: String,
    /// On what terms it may be used.
    pub licence: String,
    /// Where its maker can be asked.
    pub contact: String,
    /// Its edition when it was taken.
    pub edition: String,
    /// The date of that edition.
    pub date: String,
    /// The pieces that were asked for, as they are called there; all else was taken because they need it.
    pub pieces: Vec<String>,
    /// What was put in front of all names that came along.
    pub prefix: String,
    /// What was taken.
    pub parts: Vec<TakenPart>,
    /// Anything worth telling.
    pub note: String,
}

impl TakenBlock {
    /// A name for a block by the path of its file.
    pub fn name_of(path: &str) -> String {
        let file = path.rsplit(['/', '\\']).next().unwrap_or_default();
        let stem = file.rsplit_once('.').map_or(file, |(stem, _)| stem);
        let is_letter = |c: char| c.is_alphanumeric() && c != OWN_LETTER;
        let mut name: String = stem.chars().map(|c| if is_letter(c) { c } else { '_' }).collect();
        if !name.starts_with(char::is_alphabetic) {
            name.insert_str(0, "block_");
        }
        name
    }
}

/// A part of a block.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TakenPart {
    /// The part as it is called there: `piece front`.
    pub part: String,
    /// Its name here.
    pub name: String,
    /// Points, edges and whatever else in it has another name here than there: `edge neckline` there, and the name here.
    pub names: Vec<(String, String)>,
    /// Digest of it there when it was taken.
    pub there: String,
    /// Digest of it here when it was taken, under the names that it had then.
    pub here: String,
}
