//! Laying out a draft's tree: a group stands on one line if it fits, else it has one member a line.

use super::tree::Node;

/// Columns of a line, its indentation included.
pub const LINE: usize = 110;
/// Columns by which each level is set in.
const STEP: usize = 4;

/// The text of a tree. The outermost group always has one member a line; the text ends with a line break.
pub(super) fn lay_out(node: &Node) -> String {
    let mut out = String::new();
    put_members(node, 0, &mut out);
    out.push('\n');
    out
}

/// Puts a node that begins at column `used` of a line and is followed by `behind` more letters.
fn put(node: &Node, indent: usize, used: usize, behind: usize, out: &mut String) {
    let room = LINE.saturating_sub(used + behind);
    let start = out.len();
    // Nothing is written twice beyond the width of a line, so that deep drafts take no longer than flat ones.
    if put_flat(node, room, out).is_none() {
        out.truncate(start);
        put_members(node, indent, out);
    }
}

/// Puts a node on one line and tells how much room is left, or gives up when it does not fit.
fn put_flat(node: &Node, room: usize, out: &mut String) -> Option<usize> {
    match node {
        Node::Plain(plain) => put_piece(plain, room, out),
        Node::Text(text) => put_piece(&quoted(text, room)?, room, out),
        Node::List(members) => {
            let room = put_piece("[", room, out)?;
            let room = put_row(members.iter().map(|member| ("", member)), room, out)?;
            put_piece("]", room, out)
        }
        Node::Pair(word, members) => {
            let room = put_piece(word, room, out)?;
            let room = put_piece("(", room, out)?;
            let room = put_row(members.iter().map(|member| ("", member)), room, out)?;
            put_piece(")", room, out)
        }
        Node::Group(word, fields) => {
            let room = put_piece(word, room, out)?;
            let room = put_piece("(", room, out)?;
            let room = put_row(fields.iter().map(|(name, member)| (*name, member)), room, out)?;
            put_piece(")", room, out)
        }
    }
}

fn put_row<'a>(members: impl Iterator<Item = (&'a str, &'a Node)>, mut room: usize, out: &mut String) -> Option<usize> {
    for (i, (name, member)) in members.enumerate() {
        if i > 0 {
            room = put_piece(", ", room, out)?;
        }
        if !name.is_empty() {
            room = put_piece(name, room, out)?;
            room = put_piece(": ", room, out)?;
        }
        room = put_flat(member, room, out)?;
    }
    Some(room)
}

fn put_piece(piece: &str, room: usize, out: &mut String) -> Option<usize> {
    let left = room.checked_sub(piece.chars().count())?;
    out.push_str(piece);
    Some(left)
}

/// Puts a node with one member a line. What has no members stands as it is, however long.
fn put_members(node: &Node, indent: usize, out: &mut String) {
    let (open, close, members): (String, char, Vec<(&str, &Node)>) = match node {
        Node::Plain(plain) => return out.push_str(plain),
        Node::Text(text) => return out.push_str(&quoted(text, usize::MAX).unwrap_or_default()),
        Node::List(members) => ("[".into(), ']', members.iter().map(|member| ("", member)).collect()),
        Node::Pair(word, members) => (format!("{word}("), ')', members.iter().map(|member| ("", member)).collect()),
        Node::Group(word, fields) => {
            (format!("{word}("), ')', fields.iter().map(|(name, member)| (*name, member)).collect())
        }
    };
    out.push_str(&open);
    out.push('\n');
    let inner = indent + STEP;
    for (name, member) in members {
        out.push_str(&" ".repeat(inner));
        let mut used = inner;
        if !name.is_empty() {
            out.push_str(name);
            out.push_str(": ");
            used += name.chars().count() + 2;
        }
        put(member, inner, used, 1, out);
        out.push_str(",\n");
    }
    out.push_str(&" ".repeat(indent));
    out.push(close);
}

/// A text in quotes, or nothing if it is sure not to fit into `room`.
fn quoted(text: &str, room: usize) -> Option<String> {
    // A letter has at most four bytes.
    if text.len() / 4 > room {
        return None;
    }
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            _ if letter.is_control() || is_unseen(letter) => {
                out.push_str(&format!("\\u{{{:x}}}", u32::from(letter)));
            }
            _ => out.push(letter),
        }
    }
    out.push('"');
    Some(out)
}

/// Letters that break lines or turn the direction of reading without being seen. Joiners, which scripts need within
/// their words, are kept as they are.
fn is_unseen(letter: char) -> bool {
    matches!(letter, '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}
