//! Reads the few forms in which help is written: headings, paragraphs, lists, tables, code and links.
//!
//! A page is written as `# heading`, paragraphs, `- item`, `| cell | cell |`, fenced or indented code; inside a line
//! `` `code` ``, `**strong**` and `[words](page)`. Anything else is words: a page always reads to something.

/// A stretch of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Span {
    /// Words.
    Words(String),
    /// Strong words.
    Strong(String),
    /// A formula, or what is typed.
    Code(String),
    /// Words that lead to a page.
    Link(String, String),
}

/// A block of a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// A heading, 1 the page's own.
    Heading(usize, Vec<Span>),
    /// A paragraph.
    Words(Vec<Span>),
    /// An item of a list.
    Item(Vec<Span>),
    /// Lines as they are typed.
    Code(String),
    /// The cells of a row of a table.
    Row(Vec<Vec<Span>>),
}

/// Reads a page. Nothing is refused.
pub fn blocks(text: &str) -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    let mut open = false; // whether the next line goes on with the last block
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if line.starts_with("```") {
            let code: Vec<&str> = lines.by_ref().take_while(|l| !l.starts_with("```")).collect();
            out.push(Block::Code(code.join("\n")));
            open = false;
            continue;
        }
        let words = line.trim();
        let level = words.bytes().take_while(|b| *b == b'#').count();
        if words.is_empty() {
            open = false;
        } else if (1..=4).contains(&level) && words[level..].starts_with(' ') {
            out.push(Block::Heading(level, spans(words[level..].trim())));
            open = false;
        } else if words.len() > 1 && words.starts_with('|') && words.ends_with('|') {
            let cells = cells(words);
            if !cells.iter().all(|c| c.chars().all(|c| matches!(c, '-' | ':' | ' '))) {
                out.push(Block::Row(cells.iter().map(|c| spans(c.trim())).collect()));
            }
            open = false;
        } else if let Some(item) = words.strip_prefix("- ") {
            out.push(Block::Item(spans(item)));
            open = true;
        } else if let (true, Some(Block::Words(last) | Block::Item(last))) = (open, out.last_mut()) {
            last.push(Span::Words(" ".to_owned()));
            last.extend(spans(words));
        } else {
            out.push(Block::Words(spans(words)));
            open = true;
        }
    }
    out
}

/// The cells of a row; a bar in code is no border.
fn cells(row: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut code = false;
    for letter in row.trim_matches('|').chars() {
        match letter {
            '`' => code = !code,
            '|' if !code => {
                out.push(String::new());
                continue;
            }
            _ => {}
        }
        if let Some(last) = out.last_mut() {
            last.push(letter);
        }
    }
    out
}

/// Reads the stretches of a line. A mark that is not closed is words.
pub fn spans(line: &str) -> Vec<Span> {
    let mut out = Vec::new();
    let mut words = String::new();
    let mut rest = line;
    while let Some(first) = rest.chars().next() {
        let (span, after) = if let Some((code, after)) = enclosed(rest, "`", "`") {
            (Some(Span::Code(code.to_owned())), after)
        } else if let Some((strong, after)) = enclosed(rest, "**", "**") {
            (Some(Span::Strong(strong.to_owned())), after)
        } else if let Some((link, after)) = link(rest) {
            (Some(link), after)
        } else {
            words.push(first);
            (None, &rest[first.len_utf8()..])
        };
        if let Some(span) = span {
            if !words.is_empty() {
                out.push(Span::Words(std::mem::take(&mut words)));
            }
            out.push(span);
        }
        rest = after;
    }
    if !words.is_empty() {
        out.push(Span::Words(words));
    }
    out
}

fn enclosed<'a>(text: &'a str, open: &str, close: &str) -> Option<(&'a str, &'a str)> {
    let (inner, after) = text.strip_prefix(open)?.split_once(close)?;
    (!inner.is_empty()).then_some((inner, after))
}

fn link(text: &str) -> Option<(Span, &str)> {
    let (words, after) = enclosed(text, "[", "]")?;
    let (to, after) = enclosed(after, "(", ")")?;
    let words = words.trim_matches('`').to_owned();
    Some((Span::Link(words, to.trim_end_matches(".md").to_owned()), after))
}

/// The words of a line, without marks.
pub fn plain(spans: &[Span]) -> String {
    spans
        .iter()
        .map(|s| match s {
            Span::Words(words) | Span::Strong(words) | Span::Code(words) | Span::Link(words, _) => words.as_str(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Span {
        Span::Words(text.to_owned())
    }

    #[test]
    fn every_form_is_read() {
        let text = "# Head\n\nOne line\ngoes on.\n- an **item**\n  of two lines\n- `b`\n\n```\nx = 1\n# no head\n```\n| a | `b | c` |\n| --- | --- |\n";
        let read = blocks(text);
        assert_eq!(read[0], Block::Heading(1, vec![words("Head")]));
        assert_eq!(read[1], Block::Words(vec![words("One line"), words(" "), words("goes on.")]));
        assert_eq!(
            read[2],
            Block::Item(vec![words("an "), Span::Strong("item".to_owned()), words(" "), words("of two lines")])
        );
        assert_eq!(read[3], Block::Item(vec![Span::Code("b".to_owned())]));
        assert_eq!(read[4], Block::Code("x = 1\n# no head".to_owned()));
        assert_eq!(read[5], Block::Row(vec![vec![words("a")], vec![Span::Code("b | c".to_owned())]]));
        assert_eq!(read.len(), 6);
    }

    #[test]
    fn links_lead_somewhere_and_what_is_not_closed_is_words() {
        let link = Span::Link("the chart".to_owned(), "chart".to_owned());
        assert_eq!(spans("see [the chart](chart)."), [words("see "), link, words(".")]);
        assert_eq!(spans("see [`file.md`](file.md)")[1], Span::Link("file.md".to_owned(), "file".to_owned()));
        for open in ["a `b", "a **b", "[a](b", "[a] (b)", "``", "****", "ä[ß"] {
            assert_eq!(plain(&spans(open)), open);
            assert_eq!(spans(open).len(), 1, "{open}");
        }
    }

    #[test]
    fn no_text_is_refused() {
        for text in ["", "```", "|", "||", "#", "# ", "-", "\u{0}", "```\n| a", "|a|\n|---|"] {
            let _ = blocks(text).iter().map(|b| format!("{b:?}").len()).sum::<usize>();
        }
        assert_eq!(blocks("|"), [Block::Words(vec![words("|")])]);
    }
}
