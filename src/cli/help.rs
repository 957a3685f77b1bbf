//! Pages of help on the command line.

use std::fmt::Write as _;

use clap::CommandFactory;

use super::{Call, Done, Stopped};
use crate::help::{Group, Page, pages, printed, search};
use crate::texts::say;

/// The most pages that are offered where several fit.
const MOST: usize = 20;

/// Prints the page that is meant: by its name, else the usage of a command, else the only page that holds the words.
pub(super) fn run(topic: &[String]) -> Result<Done, Stopped> {
    let words = topic.join(" ");
    let all = pages();
    if words.trim().is_empty() {
        return Ok(Done { data: contents(all), ..Done::default() });
    }
    if let Some(page) = all.iter().find(|p| p.id == words) {
        return Ok(Done { data: printed(&page.text), ..Done::default() });
    }
    if let Some(command) = Call::command().find_subcommand_mut(&words) {
        let usage = command.clone().bin_name(format!("tracewheel {words}")).render_long_help();
        let mut data = usage.to_string();
        for page in all.iter().filter(|p| is_of_command(p, &words)) {
            let _ = write!(data, "\n{}\n", say!("cli-help-more", page = page.id, title = page.title));
        }
        return Ok(Done { data, ..Done::default() });
    }
    let found = search(all, &words);
    let called = |page: &Page| {
        let wanted = words.to_lowercase().replace(' ', "-");
        page.title.to_lowercase() == words.to_lowercase()
            || page.title.to_lowercase().ends_with(&format!("(us: {})", words.to_lowercase()))
            || page.id.rsplit('/').next() == Some(wanted.as_str())
    };
    match found.as_slice() {
        [] => Err(Stopped::no(say!("cli-help-none", words))),
        [one] => Ok(Done { data: printed(&all[*one].text), ..Done::default() }),
        [first, ..] if called(&all[*first]) => Ok(Done { data: printed(&all[*first].text), ..Done::default() }),
        several => {
            let mut data =
                format!("{}\n", say!("cli-help-several", count = several.len(), words, page = all[several[0]].id));
            for i in several.iter().take(MOST) {
                // Writing to a string cannot fail.
                let _ = writeln!(data, "  {:<26} {}", all[*i].id, all[*i].title);
            }
            if several.len() > MOST {
                let _ = writeln!(data, "  {}", say!("cli-help-rest", count = several.len() - MOST));
            }
            Ok(Done { data, ..Done::default() })
        }
    }
}

/// Whether a page is about the thing that a command makes: `releases` about `release`.
fn is_of_command(page: &Page, command: &str) -> bool {
    page.id.rsplit('/').next().is_some_and(|id| id.strip_suffix('s') == Some(command))
}

/// The list of all pages.
fn contents(all: &[Page]) -> String {
    let mut data = format!("{}\n", say!("cli-help-contents"));
    for group in Group::ALL {
        let _ = writeln!(data, "\n{}", group.word());
        for page in all.iter().filter(|p| p.group == group) {
            let _ = writeln!(data, "  {:<26} {}", page.id, page.title);
        }
    }
    data
}
