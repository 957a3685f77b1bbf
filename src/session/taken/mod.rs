//! Blocks taken from other drafts: what comes along, what changed there since, and taking that over.
//!
//! A block is copied into the draft with all that its pieces need, so the draft computes without the other file. For each part a digest
//! of what it was there and of what it became here is kept: so a change there is noticed, and a change made here is not overwritten
//! unasked. Rows and materials that the draft has already stay its own.

mod gather;
mod look;
mod merge;
mod place;

use std::sync::Arc;

use self::gather::Gathered;
pub use self::look::{LookedAt, look_at_blocks};
pub use self::place::{block_path, named_beside, open_block, relative_to};
use super::EditError;
use super::delete::take_out;
use super::naming::check_free;
use crate::document::{Draft, Part, TakenBlock, TakenPart, check_name};
use crate::texts::say;

/// What is to be taken.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taking {
    /// What the block is called here.
    pub name: String,
    /// Its file, as it is to be written down.
    pub file: String,
    /// The pieces; none: all.
    pub pieces: Vec<String>,
    /// What is put in front of all names that come along, but for those of rows and materials.
    pub prefix: String,
}

/// A part that is not there as it was taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartChange {
    /// The part, as it is called here.
    pub part: Part,
    /// What became of it there.
    pub there: There,
    /// Whether it was changed here, too.
    pub here_too: bool,
}

/// What became of a part in the block's own draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum There {
    /// It is new.
    Came,
    /// It is another than it was.
    Changed,
    /// It is gone, or not needed any more.
    Went,
}

/// How a block stands against its own draft.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// The parts that changed there.
    pub changes: Vec<PartChange>,
    /// What its head says otherwise: edition, author, licence.
    pub head: Vec<String>,
    /// The parts that were changed here, whatever they are there.
    pub here: Vec<Part>,
}

impl Standing {
    /// Whether it is as it was taken.
    pub fn is_same(&self) -> bool {
        self.changes.is_empty() && self.head.is_empty()
    }

    /// Whether something changed there and here.
    pub fn clashes(&self) -> Vec<&PartChange> {
        self.changes.iter().filter(|c| c.here_too).collect()
    }

    /// What is other here than it was taken, in a few words; empty: nothing.
    pub fn own_words(&self) -> String {
        match self.here.as_slice() {
            [] => String::new(),
            parts => {
                let parts: Vec<String> = parts.iter().map(Part::words).collect();
                say!("taken-changed-here", parts = parts.join(", "))
            }
        }
    }

    /// What changed there, in a few words.
    pub fn words(&self) -> String {
        let mut all: Vec<String> = self
            .changes
            .iter()
            .map(|c| {
                let part = c.part.words();
                match (c.there, c.here_too) {
                    (There::Came, false) => say!("taken-new", part),
                    (There::Changed, false) => say!("taken-changed", part),
                    (There::Went, false) => say!("taken-gone", part),
                    (There::Came, true) => say!("taken-new-too", part),
                    (There::Changed, true) => say!("taken-changed-too", part),
                    (There::Went, true) => say!("taken-gone-too", part),
                }
            })
            .collect();
        all.extend(self.head.iter().cloned());
        all.join(", ")
    }
}

/// Which side counts where a part was changed on both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep {
    /// What is here stays.
    Here,
    /// What is there comes.
    There,
}

/// A change of the blocks of a draft.
#[derive(Clone, Debug, PartialEq)]
pub enum BlockCommand {
    /// A block is taken from a draft.
    Take(Taking, Arc<Draft>),
    /// What changed there is taken over.
    Accept(String, Arc<Draft>, Option<Keep>),
    /// What was taken stays, and is a part of this draft like any other from now on.
    Untie(String),
    /// Its file lies elsewhere now.
    Move(String, String),
}

impl BlockCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::Take(taking, _) => say!("undo-take-block", name = taking.name),
            Self::Accept(name, ..) => say!("undo-accept-block", name),
            Self::Untie(name) => say!("undo-untie-block", name),
            Self::Move(name, _) => say!("undo-move-block", name),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::Take(taking, source) => take_block(draft, source, taking),
            Self::Accept(name, source, keep) => accept_block(draft, name, source, *keep),
            Self::Untie(name) => untie_block(draft, name),
            Self::Move(name, file) => move_block(draft, name, file),
        }
    }
}

/// The block of this name.
fn find<'a>(draft: &'a Draft, name: &str) -> Result<&'a TakenBlock, EditError> {
    draft.blocks.iter().find(|b| b.name == name).ok_or_else(|| {
        let known: Vec<&str> = draft.blocks.iter().map(|b| b.name.as_str()).collect();
        match known.is_empty() {
            true => EditError::refused(say!("block-none-taken", name)),
            false => EditError::refused(say!("block-unknown", name, known = known.join(", "))),
        }
    })
}

/// From now on what was taken is like any other part of the draft. Returns what was done, in a sentence.
///
/// # Errors
/// There is no such block.
pub fn untie_block(draft: &mut Draft, name: &str) -> Result<String, EditError> {
    find(draft, name)?;
    draft.blocks.retain(|b| b.name != name);
    Ok(say!("told-block-untied", name))
}

/// The block's own draft lies elsewhere now. Returns what was done, in a sentence.
///
/// # Errors
/// There is no such block.
pub fn move_block(draft: &mut Draft, name: &str, file: &str) -> Result<String, EditError> {
    find(draft, name)?;
    for block in draft.blocks.iter_mut().filter(|b| b.name == name) {
        file.clone_into(&mut block.file);
    }
    Ok(say!("told-block-moved", name, file))
}

/// Takes pieces of another draft with all that they need. Returns what was done, in a sentence.
///
/// # Errors
/// A piece that is not there, names that are taken already, a name that a block has.
pub fn take_block(draft: &mut Draft, source: &Draft, taking: &Taking) -> Result<String, EditError> {
    if check_name(&taking.name).is_err() {
        return Err(EditError::refused(say!("block-name", name = taking.name)));
    }
    if draft.blocks.iter().any(|b| b.name == taking.name) {
        return Err(EditError::refused(say!("block-taken", name = taking.name)));
    }
    let pieces = match taking.pieces.as_slice() {
        [] => source.pieces.iter().map(|p| p.name.clone()).collect(),
        some => some.to_vec(),
    };
    if pieces.is_empty() {
        return Err(EditError::refused(say!("block-no-pieces")));
    }
    let shared = |part: &Part| merge::is_shared(draft, part);
    let gathered = Gathered::of(source, &pieces, &taking.prefix, &[], &|p| shared(p) || check_free(draft, p).is_ok())?;
    let mut next = draft.clone();
    let brings_sizes = merge::sizes(&mut next, source);
    let in_the_way: Vec<String> = gathered
        .parts
        .iter()
        .filter(|(_, here)| !shared(here) && check_free(&next, here).is_err())
        .map(|(_, here)| here.words())
        .collect();
    if !in_the_way.is_empty() {
        return Err(EditError::refused(say!("block-names", parts = in_the_way.join(", "), name = taking.name)));
    }
    let (own, common): (Vec<_>, Vec<_>) = gathered.parts.iter().cloned().partition(|(_, here)| !shared(here));
    merge::bring(&mut next, &gathered, &own);
    let told_rows = merge::shared_words(draft, &gathered.draft, &common);
    let mut block = TakenBlock {
        name: taking.name.clone(),
        file: taking.file.clone(),
        pieces,
        prefix: taking.prefix.clone(),
        ..TakenBlock::default()
    };
    merge::head(&mut block, source);
    block.parts = own.iter().map(|(there, here)| merge::taken(there, here, source)).collect();
    let digests = merge::digests(&next, &block);
    block.parts.iter_mut().zip(digests).for_each(|(t, digest)| t.here = digest);
    let counted = merge::counted(own.iter().map(|(_, here)| here));
    next.blocks.push(block);
    *draft = next;
    let sizes = if brings_sizes { say!("told-block-sizes") } else { String::new() };
    Ok(say!("told-block-taken", name = taking.name, counted, also = format!("{sizes}{told_rows}")))
}

/// How a block stands against its own draft as it is now.
///
/// # Errors
/// A piece that was asked for is not there any more.
pub fn standing(draft: &Draft, block: &TakenBlock, source: &Draft) -> Result<Standing, EditError> {
    let gathered = Gathered::of(source, &block.pieces, &block.prefix, &block.parts, &|_| true)?;
    let digests = merge::digests(draft, block);
    let changed = block.parts.iter().zip(&digests).filter(|(t, digest)| **digest != t.here);
    let here = changed.filter_map(|(t, _)| Some(Part::of_words(&t.part)?.renamed(&t.name))).collect();
    let here_too = |t: &TakenPart| block.parts.iter().zip(&digests).any(|(p, digest)| p == t && *digest != t.here);
    let mut out = Standing { head: merge::head_changes(block, source), here, ..Standing::default() };
    let taken = |there: &Part| block.parts.iter().find(|t| t.part == there.to_string());
    for (there, here) in &gathered.parts {
        match taken(there) {
            None if merge::is_shared(draft, here) => {}
            None => out.changes.push(PartChange { part: here.clone(), there: There::Came, here_too: false }),
            Some(t) if gather::digest(source, there) != t.there => {
                out.changes.push(PartChange { part: here.clone(), there: There::Changed, here_too: here_too(t) });
            }
            Some(_) => {}
        }
    }
    for t in &block.parts {
        let Some(there) = Part::of_words(&t.part) else { continue };
        if !gathered.parts.iter().any(|(p, _)| *p == there) {
            out.changes.push(PartChange { part: there.renamed(&t.name), there: There::Went, here_too: here_too(t) });
        }
    }
    Ok(out)
}

/// Takes over what changed in a block's own draft. Returns what was done, in a sentence.
///
/// # Errors
/// There is no such block; parts were changed here, too, and `keep` does not say what becomes of them; new names are taken already.
pub fn accept_block(draft: &mut Draft, name: &str, source: &Draft, keep: Option<Keep>) -> Result<String, EditError> {
    let block = find(draft, name)?.clone();
    let standing = standing(draft, &block, source)?;
    if standing.is_same() {
        return Ok(say!("told-block-same", name));
    }
    let clashes: Vec<String> = standing.clashes().iter().map(|c| c.part.words()).collect();
    if !clashes.is_empty() && keep.is_none() {
        return Err(EditError::refused(say!("block-clashes", parts = clashes.join(", "))));
    }
    let gathered = Gathered::of(source, &block.pieces, &block.prefix, &block.parts, &|_| true)?;
    let stays = |c: &PartChange| c.here_too && keep == Some(Keep::Here);
    let mut next = draft.clone();
    let mut comes = Vec::new();
    for c in standing.changes.iter().filter(|c| !stays(c)) {
        match c.there {
            There::Went => {
                take_out(&mut next, &c.part);
            }
            There::Came if check_free(&next, &c.part).is_err() => {
                return Err(EditError::refused(say!("block-new-name", part = c.part.words())));
            }
            There::Came | There::Changed => comes.extend(gathered.parts.iter().find(|(_, p)| *p == c.part).cloned()),
        }
    }
    merge::bring(&mut next, &gathered, &comes);
    let mut after = block.clone();
    merge::head(&mut after, source);
    after.parts.clear();
    for (there, here) in &gathered.parts {
        let taken = block.parts.iter().find(|t| t.part == there.to_string());
        if taken.is_none() && merge::is_shared(draft, here) {
            continue;
        }
        let mut new = merge::taken(there, here, source);
        new.names = taken.map_or_else(Vec::new, |t| t.names.clone());
        after.parts.push(new);
    }
    let digests = merge::digests(&next, &after);
    for (new, digest) in after.parts.iter_mut().zip(digests) {
        let old = block.parts.iter().find(|t| t.part == new.part);
        let came =
            comes.iter().any(|(_, p)| p.name() == new.name && p.word() == new.part.split(' ').next().unwrap_or(""));
        // What was changed here stays known as changed.
        new.here = old.filter(|_| !came).map_or(digest, |t| t.here.clone());
    }
    let many = standing.changes.len();
    next.blocks.iter_mut().filter(|b| b.name == name).for_each(|b| b.clone_from(&after));
    *draft = next;
    let kept = standing.changes.iter().filter(|c| stays(c)).count();
    let kept = if kept > 0 { say!("told-block-kept", count = kept) } else { String::new() };
    Ok(say!("told-block-accepted", name, count = many, kept))
}
