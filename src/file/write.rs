//! Writing a draft in its standard form.
//!
//! The standard form leaves out what is empty, keeps the order of the types' fields and lays groups out by one rule, so
//! that two programs that hold the same draft write the same bytes and `diff` shows what a person changed.

use super::layout::lay_out;
use super::tree::{Node, tree};
use crate::document::{Draft, FORMAT, VERSION};

/// The standard form of a draft. Format and version are those of this program, whatever the draft says.
///
/// Reading it gives the draft again, unless the draft is over a limit of the reader; [`super::save()`] looks after that.
pub fn write(draft: &Draft) -> String {
    let rest = match tree(draft) {
        Ok(Node::Group(_, fields)) => fields,
        // Only a document type of a kind that the format does not have leads here; the round trip tests hold all of
        // them. Written out it is no draft, so that `save` refuses it instead of losing a part.
        Ok(_) => Vec::new(),
        Err(error) => return format!("/* {error} */\n"),
    };
    let mut fields = vec![("format", Node::Text(FORMAT.to_owned())), ("version", Node::Plain(VERSION.to_string()))];
    fields.extend(rest.into_iter().filter(|(name, _)| !matches!(*name, "format" | "version")));
    lay_out(&Node::Group("", fields))
}
