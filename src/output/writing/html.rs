//! Something written as one HTML file: read on a phone as well as on a large screen, without anything from elsewhere.
//!
//! Wide tables scroll in themselves and can be reached by keyboard; figures are drawn in the page and say what they show; light and dark
//! follow the reader's choice. Same writing, same bytes.

use std::fmt::Write;

use super::{Block, Cell, Line, Shown, Table, Writing};
use crate::output::svg::{self, SvgError, SvgSettings};
use crate::texts::{self, t};

/// The file.
///
/// # Errors
/// Where a figure cannot be written, see [`SvgError`].
pub fn html(writing: &Writing) -> Result<String, SvgError> {
    let mut page = Page {
        out: String::new(),
        chapters: chapters(writing),
        headings: 0,
        tables: 0,
        figures: 0,
        level: 1,
        open: false,
    };
    let title = escaped(&writing.title);
    page.line("<!doctype html>");
    page.line(&format!("<html lang=\"{}\">", texts::current().word()));
    page.line("<head>");
    page.line("<meta charset=\"utf-8\">");
    page.line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
    page.line("<meta name=\"color-scheme\" content=\"light dark\">");
    page.line(&format!("<meta name=\"generator\" content=\"Tracewheel {}\">", env!("CARGO_PKG_VERSION")));
    page.line(&format!("<title>{title}</title>"));
    page.line(&format!("<style>\n{STYLE}</style>"));
    page.line("</head>\n<body>");
    page.line(&format!("<a class=\"skip\" href=\"#words\">{}</a>", escaped(&t!("html-skip"))));
    page.line(&format!("<header>\n<h1>{title}</h1>"));
    for about in &writing.about {
        page.line(&format!("<p class=\"about\">{}</p>", escaped(about)));
    }
    page.line("</header>");
    page.contents();
    page.line("<main id=\"words\">");
    for block in &writing.blocks {
        page.block(block)?;
    }
    page.close_section();
    page.line("</main>\n</body>\n</html>");
    Ok(page.out)
}

fn chapters(writing: &Writing) -> Vec<(u8, String)> {
    let headings = writing.blocks.iter().filter_map(|b| match b {
        Block::Heading { level, text } => Some((*level, text.clone())),
        _ => None,
    });
    headings.collect()
}

/// A page that is being written.
struct Page {
    out: String,
    /// Its headings.
    chapters: Vec<(u8, String)>,
    /// How many of them are written, and how many tables and figures.
    headings: usize,
    tables: usize,
    figures: usize,
    /// The level of the last heading; the title is 1.
    level: u8,
    /// Whether a chapter is open.
    open: bool,
}

impl Page {
    fn line(&mut self, text: &str) {
        self.out.push_str(text);
        self.out.push('\n');
    }

    /// A list of the chapters, where there are several.
    fn contents(&mut self) {
        let chapters: Vec<(usize, String)> =
            self.chapters.iter().enumerate().filter(|(_, c)| c.0 == 2).map(|(i, c)| (i + 1, c.1.clone())).collect();
        if chapters.len() < 2 {
            return;
        }
        self.line(&format!("<nav aria-label=\"{}\">\n<ul>", escaped(&t!("html-contents"))));
        for (i, text) in chapters {
            self.line(&format!("<li><a href=\"#h{i}\">{}</a></li>", escaped(&text)));
        }
        self.line("</ul>\n</nav>");
    }

    fn close_section(&mut self) {
        if std::mem::take(&mut self.open) {
            self.line("</section>");
        }
    }

    fn block(&mut self, block: &Block) -> Result<(), SvgError> {
        match block {
            Block::Heading { level, text } => {
                self.headings += 1;
                let (i, text) = (self.headings, escaped(text));
                self.level = if *level == 2 { 2 } else { 3 };
                if *level == 2 {
                    self.close_section();
                    self.open = true;
                    self.line(&format!("<section aria-labelledby=\"h{i}\">\n<h2 id=\"h{i}\">{text}</h2>"));
                } else {
                    self.line(&format!("<h3 id=\"h{i}\">{text}</h3>"));
                }
            }
            Block::Paragraph(text) => self.line(&format!("<p>{}</p>", escaped(text))),
            Block::List { numbered, items } => {
                let tag = if *numbered { "ol" } else { "ul" };
                self.line(&format!("<{tag}>"));
                for item in items {
                    self.line(&format!("<li>{}</li>", escaped(item)));
                }
                self.line(&format!("</{tag}>"));
            }
            Block::Table(table) => self.table(table),
            Block::Figure { picture, says, caption } => {
                self.figures += 1;
                self.line("<figure>");
                let prefix = format!("f{}", self.figures);
                let drawn = svg::write(picture, &SvgSettings { title: says.clone(), prefix, inline: true })?;
                self.line(drawn.trim_end());
                if !caption.is_empty() {
                    self.line(&format!("<figcaption>{}</figcaption>", escaped(caption)));
                }
                self.line("</figure>");
            }
            Block::Photo { photo, says, caption } => {
                self.line("<figure>");
                let (width, height) = (photo.width, photo.height);
                let (says, from) = (escaped(says), photo.data_address());
                self.line(&format!("<img src=\"{from}\" alt=\"{says}\" width=\"{width}\" height=\"{height}\">"));
                if !caption.is_empty() {
                    self.line(&format!("<figcaption>{}</figcaption>", escaped(caption)));
                }
                self.line("</figure>");
            }
            Block::Caution { title, text } => {
                let title = escaped(title);
                self.line("<div class=\"caution\" role=\"note\">");
                self.line(&format!("<p><strong>{title}</strong></p>"));
                for sentence in text {
                    self.line(&format!("<p>{}</p>", escaped(sentence)));
                }
                self.line("</div>");
            }
            Block::NewPage => {}
        }
        Ok(())
    }

    fn table(&mut self, table: &Table) {
        self.tables += 1;
        let id = format!("t{}", self.tables);
        let with_units = table.has_units();
        let level = self.level + 1;
        self.line(&format!("<h{level} class=\"table\" id=\"{id}\">{}</h{level}>", escaped(&table.title)));
        for sentence in &table.before {
            self.line(&format!("<p>{}</p>", escaped(sentence)));
        }
        self.line(&format!("<div class=\"wide\" role=\"region\" aria-labelledby=\"{id}\" tabindex=\"0\">\n<table aria-labelledby=\"{id}\">"));
        let mut head = String::from("<thead>\n<tr>");
        for (i, column) in table.head.iter().enumerate() {
            let words = if column.is_empty() {
                format!("<span class=\"unseen\">{}</span>", escaped(&t!("html-line")))
            } else {
                escaped(column)
            };
            // A head stands over its column as the numbers in it do.
            let is_number = |l: &Line| l.cells.get(i.wrapping_sub(1)).is_some_and(is_number);
            let class = if i > 0 && table.lines.iter().any(is_number) { " class=\"number\"" } else { "" };
            let _ = write!(head, "<th scope=\"col\"{class}>{words}</th>");
            if i == 0 && with_units {
                let _ =
                    write!(head, "<th scope=\"col\"><span class=\"unseen\">{}</span></th>", escaped(&t!("csv-unit")));
            }
        }
        head.push_str("</tr>\n</thead>");
        self.line(&head);
        let columns = table.head.len() + usize::from(with_units);
        let mut group = "";
        let mut body = false;
        for line in &table.lines {
            if !body || line.group != group {
                if body {
                    self.line("</tbody>");
                }
                self.line("<tbody>");
                body = true;
                group = &line.group;
                if !group.is_empty() {
                    self.line(&format!(
                        "<tr><th class=\"group\" colspan=\"{columns}\" scope=\"rowgroup\">{}</th></tr>",
                        escaped(group)
                    ));
                }
            }
            self.rows(line, with_units);
        }
        self.line(if body { "</tbody>\n</table>\n</div>" } else { "</table>\n</div>" });
        for note in &table.notes {
            self.line(&format!("<p class=\"note\">{}</p>", escaped(note)));
        }
    }

    fn rows(&mut self, line: &Line, with_units: bool) {
        let units = line.units();
        for (k, unit) in units.iter().enumerate() {
            let over = if units.len() > 1 { format!(" rowspan=\"{}\"", units.len()) } else { String::new() };
            let mut row = String::from("<tr>");
            if k == 0 {
                let _ = write!(row, "<th scope=\"row\"{over}>{}</th>", escaped(&line.name));
            }
            if with_units {
                let _ = match unit {
                    Shown::Plain => write!(row, "<td></td>"),
                    _ => write!(row, "<td class=\"unit\">{}</td>", unit.word()),
                };
            }
            for cell in &line.cells {
                let class = if is_number(cell) { " class=\"number\"" } else { "" };
                let words = escaped(&cell.shown(*unit));
                let _ = match cell.has_units() {
                    true => write!(row, "<td{class}>{words}</td>"),
                    // What has no unit is told once.
                    false if k == 0 => write!(row, "<td{class}{over}>{words}</td>"),
                    false => Ok(()),
                };
            }
            row.push_str("</tr>");
            self.line(&row);
        }
    }
}

/// Whether a cell stands at the right of its column.
fn is_number(cell: &Cell) -> bool {
    !matches!(cell.unsigned(), Cell::Words(_) | Cell::Empty)
}

/// Words as they stand between marks and in attributes.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // Controls may not stand in HTML; nobody can see them either.
            c if c.is_control() && c != '\n' => out.push(' '),
            '\u{fffe}' | '\u{ffff}' => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// How it looks: one column of readable width, tables as wide as they are, nothing from elsewhere.
const STYLE: &str = "\
:root { --ink: #1d2430; --soft: #4b5566; --ground: #fbfaf6; --rule: #b9b4a6; --accent: #1f5c5a; --caution: #8a2d12; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #ece8dd; --soft: #b9b6ac; --ground: #1b1f24; --rule: #565b61; --accent: #8fd0c8; --caution: #f2a68c; }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; max-width: 46rem; padding: 1.2rem 1rem 4rem; background: var(--ground); color: var(--ink);
  font: 1.06rem/1.55 system-ui, sans-serif; overflow-wrap: break-word; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0.4rem 0 0.6rem; }
h2 { font-size: 1.3rem; line-height: 1.25; margin: 2.2rem 0 0.6rem; border-top: 2px solid var(--rule); padding-top: 0.7rem; }
h3, h4, h2.table { font-size: 1.08rem; margin: 1.6rem 0 0.4rem; border: 0; padding: 0; }
p, ul, ol { margin: 0.5rem 0 0.9rem; }
a { color: var(--accent); }
nav ul { list-style: none; padding: 0; }
nav li { padding: 0.25rem 0; }
.about, .note, figcaption { color: var(--soft); font-size: 0.92rem; margin: 0.2rem 0 0.5rem; }
.skip { position: absolute; left: -200vw; }
.skip:focus { left: 1rem; top: 0.5rem; background: var(--ground); padding: 0.4rem; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.wide { overflow-x: auto; margin: 0.6rem 0 0.8rem; }
.wide:focus-visible { outline: 2px solid var(--accent); outline-offset: 2px; }
table { border-collapse: collapse; font-size: 0.95rem; font-variant-numeric: tabular-nums; }
th, td { padding: 0.28rem 0.6rem; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
thead th { border-bottom: 2px solid var(--rule); white-space: nowrap; }
thead th.number { text-align: right; }
tbody th { font-weight: 500; min-width: 6rem; position: sticky; left: 0; background: var(--ground); }
th.group { position: static; }
th.group { color: var(--soft); padding-top: 0.8rem; }
td.number { text-align: right; white-space: nowrap; }
td.unit { color: var(--soft); }
@media (max-width: 34rem) { th, td { padding: 0.25rem 0.35rem; } tbody th { min-width: 4.5rem; } }
.caution { border: 2px solid var(--caution); border-left-width: 0.5rem; padding: 0.2rem 1rem; margin: 1rem 0; }
.caution strong { color: var(--caution); }
figure { margin: 1rem 0; }
figure svg, figure img { max-width: 100%; height: auto; }
figure svg { background: #fffefa; padding: 0.4rem; border-radius: 0.3rem; }
@media print { body { max-width: none; } nav, .skip { display: none; } section, tr, figure, .caution { break-inside: avoid; } }
";
