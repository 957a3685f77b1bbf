//! A page as plain text, for a terminal.

use std::fmt::Write as _;

use super::reader::{Block, Span, blocks, plain};
use crate::texts::say;

/// Lines are no longer than this, letters.
const WIDTH: usize = 96;

/// The page as text: lines broken, links as words, and where they lead at the end.
pub fn printed(text: &str) -> String {
    let mut out = String::new();
    let mut links: Vec<String> = Vec::new();
    let mut last_was_item = false;
    for block in blocks(text) {
        let is_item = matches!(block, Block::Item(_) | Block::Row(_));
        let goes_on = is_item && last_was_item;
        if !out.is_empty() && !goes_on {
            out.push('\n');
        }
        last_was_item = is_item;
        match &block {
            Block::Heading(level, spans) => {
                let words = plain(spans);
                let line = if *level == 1 { "=" } else { "-" }.repeat(words.chars().count());
                // Writing to a string cannot fail.
                let _ = writeln!(out, "{words}\n{line}");
            }
            Block::Words(spans) => broken(&mut out, &plain(spans), "", ""),
            Block::Item(spans) => broken(&mut out, &plain(spans), "- ", "  "),
            Block::Code(code) => code.lines().for_each(|line| {
                let _ = writeln!(out, "    {line}");
            }),
            Block::Row(cells) => {
                let words: Vec<String> = cells.iter().map(|c| plain(c)).collect();
                broken(&mut out, &words.join("  |  "), "  ", "      ");
            }
        }
        let spans: Vec<&Span> = match &block {
            Block::Heading(_, s) | Block::Words(s) | Block::Item(s) => s.iter().collect(),
            Block::Row(cells) => cells.iter().flatten().collect(),
            Block::Code(_) => Vec::new(),
        };
        for span in spans {
            if let Span::Link(_, to) = span
                && !links.contains(to)
            {
                links.push(to.clone());
            }
        }
    }
    if !links.is_empty() {
        out.push('\n');
        broken(&mut out, &say!("help-see-also", pages = links.join(", ")), "", "");
    }
    out
}

/// Words in lines; the first begins with `first`, the others with `next`.
fn broken(out: &mut String, words: &str, first: &str, next: &str) {
    let mut line = first.to_owned();
    let mut empty = true;
    for word in words.split_whitespace() {
        if !empty && line.chars().count() + 1 + word.chars().count() > WIDTH {
            let _ = writeln!(out, "{line}");
            next.clone_into(&mut line);
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line.push_str(word);
        empty = false;
    }
    let _ = writeln!(out, "{line}");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_is_broken_into_lines_and_ends_with_its_links() {
        let long = "word ".repeat(60);
        let text = printed(&format!("# Head\n{long}\n- an item, see [more](other)\n- two\n"));
        assert!(text.starts_with("Head\n====\n\nword word"), "{text}");
        assert!(text.lines().all(|l| l.chars().count() <= WIDTH), "{text}");
        assert!(text.contains("- an item, see more\n- two\n"), "{text}");
        assert!(text.ends_with("\nSee also: other.\n"), "{text}");
    }
}
