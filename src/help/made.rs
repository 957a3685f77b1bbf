//! Pages that are made from the program's own tables: functions, findings, actions and keys.

use super::pages::{Group, Page};
use crate::base::Code;
use crate::language::{FUNCTIONS, How, Signature, usage};
use crate::session::{ACTIONS, Action, Menu, When};
use crate::texts::{advice, means, say, severity, template};

/// All of them.
pub(super) fn pages() -> Vec<Page> {
    let mut out = vec![functions(), findings(), actions(), keys()];
    for (i, f) in FUNCTIONS.iter().enumerate() {
        if !FUNCTIONS[..i].iter().any(|other| other.name == f.name) {
            out.push(function(f.name));
        }
    }
    out.extend(Code::ALL.iter().map(|c| finding(*c)));
    out.extend(ACTIONS.iter().map(action));
    out
}

fn made(id: impl Into<String>, title: impl Into<String>, group: Group, text: String) -> Page {
    Page { id: id.into(), title: title.into(), group, text }
}

/// The page of a function, if there is one of this name.
pub fn function_page(name: &str) -> Option<String> {
    FUNCTIONS.iter().any(|f| f.name == name).then(|| format!("function/{name}"))
}

fn functions() -> Page {
    let mut text = format!("# {}\n\n{}\n\n", say!("help-functions"), say!("help-functions-intro"));
    for f in FUNCTIONS {
        text.push_str(&format!("- [{}](function/{}): {}\n", f.name, f.name, f.sentence()));
    }
    made("functions", say!("help-functions-all"), Group::Functions, text)
}

/// A function; several forms of one name stand on one page.
fn function(name: &str) -> Page {
    let mut text = format!("# {name}\n");
    for f in FUNCTIONS.iter().filter(|f| f.name == name) {
        form(&mut text, f);
    }
    text.push_str(&format!("\n{}\n", say!("help-function-end")));
    made(format!("function/{name}"), name, Group::Functions, text)
}

fn form(text: &mut String, f: &Signature) {
    text.push_str(&format!("\n{}\n\n```\n{}\n```\n\n", f.sentence(), usage(f)));
    for p in f.parameters {
        let kind = p.takes.words();
        let takes = match p.how {
            How::Placed => kind.to_owned(),
            How::Optional => say!("help-takes-optional", kind),
            How::Repeated => say!("help-takes-repeated", kind),
            How::Named => say!("help-takes-named", kind),
            How::Choice => say!("help-takes-choice", kind),
        };
        text.push_str(&format!("- `{}`: {takes}\n", p.name));
    }
    let gives = say!("help-function-gives", kind = f.gives.words());
    text.push_str(&format!("\n{gives}\n\n```\n{}\n```\n", f.example));
}

fn findings() -> Page {
    let mut text = format!("# {}\n\n{}\n\n", say!("help-findings"), say!("help-findings-intro"));
    for code in Code::ALL {
        let (word, severity) = (code.word(), severity(code.severity()));
        text.push_str(&format!("- [{word}](finding/{word}) ({severity}): {}\n", means(*code)));
    }
    made("findings", say!("help-findings-all"), Group::Findings, text)
}

fn finding(code: Code) -> Page {
    let silence = match code.can_be_silenced() {
        true => say!("help-finding-silenced"),
        false => say!("help-finding-told"),
    };
    let text = format!(
        "# {}\n\n**{}.** {}\n\n{}\n\n{}\n\n{silence}\n\n{}\n",
        code.word(),
        capital(&severity(code.severity())),
        means(code),
        say!("help-finding-do", advice = advice(code)),
        say!("help-finding-says", template = template(code)),
        say!("help-finding-end"),
    );
    made(format!("finding/{}", code.word()), code.word(), Group::Findings, text)
}

fn actions() -> Page {
    let mut text = format!("# {}\n\n{}\n", say!("help-actions"), say!("help-actions-intro"));
    for menu in Menu::ALL {
        text.push_str(&format!("\n## {}\n\n", menu.words()));
        for action in ACTIONS.iter().filter(|a| a.menu == menu) {
            text.push_str(&format!("- [{}](action/{}){}: {}\n", bare(action), action.id, key(action), action.what()));
        }
    }
    made("actions", say!("help-actions-all"), Group::Actions, text)
}

fn action(action: &Action) -> Page {
    let key = match action.key {
        "" => say!("help-action-keyless"),
        key => say!("help-action-key", key),
    };
    let text = format!(
        "# {}\n\n{}\n\n{} {key} {}\n\n{}\n",
        bare(action),
        action.what(),
        say!("help-action-menu", menu = action.menu.words()),
        when(action.when),
        say!("help-action-end"),
    );
    made(format!("action/{}", action.id), bare(action), Group::Actions, text)
}

fn keys() -> Page {
    let title = say!("help-keys");
    let mut text = format!("# {title}\n\n");
    for action in ACTIONS.iter().filter(|a| !a.key.is_empty()) {
        text.push_str(&format!("- `{}`: [{}](action/{})\n", action.key, bare(action), action.id));
    }
    text.push_str(&format!("\n## {}\n\n", say!("help-keys-unnamed")));
    for unnamed in [
        say!("help-keys-escape"),
        say!("help-keys-arrows"),
        say!("help-keys-enter"),
        say!("help-keys-redo"),
        say!("help-keys-size"),
    ] {
        text.push_str(&format!("- {unnamed}\n"));
    }
    text.push_str(&format!("\n## {}\n\n", say!("help-keys-keyless")));
    for action in ACTIONS.iter().filter(|a| a.key.is_empty()) {
        let link = format!("[{}](action/{})", bare(action), action.id);
        text.push_str(&format!("- {}\n", say!("help-key-in-menu", action = link, menu = action.menu.words())));
    }
    made("keys", title, Group::Actions, text)
}

/// The name of an action, whether it asks for more or not.
pub(super) fn bare(action: &Action) -> &'static str {
    action.name().trim_end_matches(" …")
}

fn key(action: &Action) -> String {
    if action.key.is_empty() { String::new() } else { format!(" `{}`", action.key) }
}

fn when(when: When) -> String {
    match when {
        When::Always => say!("help-when-always"),
        When::CanUndo => say!("help-when-can-undo"),
        When::CanRedo => say!("help-when-can-redo"),
        When::PartChosen => say!("help-when-part-chosen"),
        When::PieceChosen => say!("help-when-piece-chosen"),
        When::OutlineOpen => say!("help-when-outline-open"),
        When::SeamChosen => say!("help-when-seam-chosen"),
        When::SizeChosen => say!("help-when-size-chosen"),
        When::HasSizes => say!("help-when-has-sizes"),
        When::CanDelete => say!("help-when-can-delete"),
        When::InOrder => say!("help-when-in-order"),
        When::HasFindings => say!("help-when-has-findings"),
        When::Planning => say!("help-when-planning"),
        When::PlanSeen => say!("help-when-plan-seen"),
        When::LaidChosen => say!("help-when-laid-chosen"),
        When::HasPlans => say!("help-when-has-plans"),
        When::Comparing => say!("help-when-comparing"),
        When::HasProposals => say!("help-when-has-proposals"),
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
