//! `block`: pieces taken from other drafts.

use std::path::Path;
use std::sync::Arc;

use super::{BlockCall, Comments, Done, FINE, KeepCall, NO, Stopped, internal, mind_comments, open, save};
use crate::compute::Engine;
use crate::document::{Draft, TakenBlock};
use crate::file::OpenedFile;
use crate::finish::finish;
use crate::output::{Side, compare};
use crate::proof::{errors, proof_of};
use crate::session::{self, Keep, LookedAt, Taking, look_at_blocks};
use crate::texts::{owned, say};

pub(super) fn run(path: &Path, call: &BlockCall) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    match call {
        BlockCall::List => list(path, &opened.draft),
        BlockCall::Take { from, pieces, name, prefix, comments } => {
            let from = &session::named_beside(path, from);
            let source = open(from)?.draft;
            let taking = Taking {
                name: name.clone().unwrap_or_else(|| TakenBlock::name_of(&from.to_string_lossy())),
                file: session::relative_to(path, from).map_err(Stopped::trouble)?,
                pieces: pieces.clone(),
                prefix: prefix.clone(),
            };
            let told = session::take_block(&mut opened.draft, &source, &taking);
            keep(path, opened, *comments, vec![told.map_err(|e| Stopped::no(e.to_string()))?])
        }
        BlockCall::Accept { name, keep: wish, comments } => {
            let wish = wish.map(|k| match k {
                KeepCall::Here => Keep::Here,
                KeepCall::There => Keep::There,
            });
            let names: Vec<String> = match name {
                Some(name) => vec![name.clone()],
                None => opened.draft.blocks.iter().map(|b| b.name.clone()).collect(),
            };
            let mut told = Vec::new();
            for name in names {
                let source = source(path, &opened.draft, &name)?;
                let clashes = wish.is_none() && clashes(path, &opened.draft, &name);
                let words = session::accept_block(&mut opened.draft, &name, &source, wish).map_err(|e| {
                    let problem = e.to_string();
                    Stopped::no(if clashes { say!("cli-block-keep", problem) } else { problem })
                })?;
                told.push(words);
            }
            keep(path, opened, *comments, told)
        }
        BlockCall::Untie { name, comments } => {
            let told = session::untie_block(&mut opened.draft, name).map_err(|e| Stopped::no(e.to_string()))?;
            keep(path, opened, *comments, vec![told])
        }
        BlockCall::Move { name, to, comments } => {
            let to = &session::named_beside(path, to);
            let file = session::relative_to(path, to).map_err(Stopped::trouble)?;
            let told = session::move_block(&mut opened.draft, name, &file).map_err(|e| Stopped::no(e.to_string()))?;
            keep(path, opened, *comments, vec![told])
        }
    }
}

fn keep(path: &Path, mut opened: OpenedFile, comments: Option<Comments>, told: Vec<String>) -> Result<Done, Stopped> {
    mind_comments(&mut opened, path, comments)?;
    let draft = opened.draft.clone();
    save(path, &draft, &opened)?;
    Ok(Done { messages: told.join("\n") + "\n", ..Done::default() })
}

fn source(path: &Path, draft: &Draft, name: &str) -> Result<Draft, Stopped> {
    match draft.blocks.iter().find(|b| b.name == name) {
        Some(block) => session::open_block(path, block).map_err(|e| Stopped::trouble(e.to_string())),
        // Told by the session, with the names that there are.
        None => Ok(Draft::default()),
    }
}

/// Whether a part of a block was changed on both sides.
fn clashes(path: &Path, draft: &Draft, name: &str) -> bool {
    let looked = look_at_blocks(draft, path).into_iter().find(|l| l.name == name);
    looked.is_some_and(|l| l.found.is_ok_and(|(_, standing)| !standing.clashes().is_empty()))
}

fn list(path: &Path, draft: &Draft) -> Result<Done, Stopped> {
    let mut data = String::new();
    let mut exit = FINE;
    if draft.blocks.is_empty() {
        data.push_str(&format!("{}\n", say!("cli-block-none")));
    }
    for (block, looked) in draft.blocks.iter().zip(look_at_blocks(draft, path)) {
        data.push_str(&format!("{}\n", about(block)));
        match &looked.found {
            Err(problem) => {
                exit = NO;
                data.push_str(&format!("  {}\n", problem.trim_end().replace('\n', "\n  ")));
            }
            Ok((_, standing)) if standing.is_same() => data.push_str(&format!("  {}\n", say!("cli-block-same"))),
            Ok((source, standing)) => {
                exit = NO;
                data.push_str(&format!("  {}\n", say!("cli-block-changed", parts = standing.words())));
                data.push_str(&would_change(draft, &looked, source)?);
            }
        }
        if let Ok((_, standing)) = &looked.found
            && !standing.here.is_empty()
        {
            data.push_str(&format!("  {}\n", standing.own_words()));
        }
    }
    Ok(Done { data, exit, ..Done::default() })
}

/// Where it is from and whose it is.
fn about(block: &TakenBlock) -> String {
    let or_nothing = |text: &str, words: String| if text.is_empty() { String::new() } else { words };
    let licence = if block.licence.is_empty() { say!("cli-block-unlicensed") } else { block.licence.clone() };
    let said = [
        say!("cli-block-file", file = block.file),
        block.title.clone(),
        or_nothing(&block.edition, say!("edition", edition = block.edition)),
        block.date.clone(),
        or_nothing(&block.author, say!("cli-block-author", author = block.author)),
        licence,
    ];
    let said: Vec<String> = said.into_iter().filter(|s| !s.is_empty()).collect();
    say!("cli-block", name = block.name, from = said.join(", "), pieces = block.pieces.join(", "))
}

/// What taking over would change in the whole draft.
fn would_change(draft: &Draft, looked: &LookedAt, source: &Arc<Draft>) -> Result<String, Stopped> {
    let mut after = draft.clone();
    if let Err(problem) = session::accept_block(&mut after, &looked.name, source, Some(Keep::There)) {
        return Ok(format!("  {}\n", say!("cli-block-not", problem = problem.to_string())));
    }
    let of = |draft: &Draft| -> Result<_, Stopped> {
        let model = Engine::new().compute_guarded(draft, &[]).map_err(|f| internal(&f))?;
        let finished = finish(draft, &model);
        let errors = errors(&proof_of(&model.draft, &model, &finished), draft.display);
        Ok((model, finished, errors))
    };
    let (old, new) = (of(draft)?, of(&after)?);
    let wrong: String = new.2.iter().filter(|e| !old.2.contains(e)).map(|e| format!("    {e}\n")).collect();
    let wrong = if wrong.is_empty() { wrong } else { format!("  {}\n{wrong}", say!("cli-block-wrong")) };
    let (was, is) =
        (Side { draft, model: &old.0, finished: &old.1 }, Side { draft: &after, model: &new.0, finished: &new.1 });
    let compared = owned(|| compare(was, is, &[], &[])).map_err(|e| Stopped::no(e.to_string()))?;
    let text = compared.text(draft.display);
    let lines: String = text.lines().map(|l| format!("    {l}\n")).collect();
    Ok(format!("{wrong}  {}\n{lines}", say!("cli-block-would")))
}
