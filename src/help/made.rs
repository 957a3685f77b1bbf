//! Pages that are made from the program's own tables: functions, findings, actions and keys.

use super::advice::advice;
use super::pages::{Group, Page};
use crate::base::Code;
use crate::language::{FUNCTIONS, How, Signature, usage};
use crate::session::{ACTIONS, Action, Menu, When};

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
    let mut text =
        "# Functions\n\n`a.f(x)` is the same as `f(a, x)` for every one of them. See [formulas](formulas) and \
                    [the whole language](language).\n\n"
            .to_owned();
    for f in FUNCTIONS {
        text.push_str(&format!("- [{}](function/{}): {}\n", f.name, f.name, f.sentence()));
    }
    made("functions", "All functions", Group::Functions, text)
}

/// A function; several forms of one name stand on one page.
fn function(name: &str) -> Page {
    let mut text = format!("# {name}\n");
    for f in FUNCTIONS.iter().filter(|f| f.name == name) {
        form(&mut text, f);
    }
    text.push_str("\nAll functions: [functions](functions). How formulas are read: [formulas](formulas).\n");
    made(format!("function/{name}"), name, Group::Functions, text)
}

fn form(text: &mut String, f: &Signature) {
    text.push_str(&format!("\n{}\n\n```\n{}\n```\n\n", f.sentence(), usage(f)));
    for p in f.parameters {
        let how = match p.how {
            How::Placed => "",
            How::Optional => "; may be left out",
            How::Repeated => "; once or more often",
            How::Named => "; given by its name",
            How::Choice => "; given by its name, may be left out",
        };
        text.push_str(&format!("- `{}`: {}{how}\n", p.name, p.takes.words()));
    }
    text.push_str(&format!("\nIt gives {}. For example:\n\n```\n{}\n```\n", f.gives.words(), f.example));
}

fn findings() -> Page {
    let mut text =
        "# Findings\n\nEvery kind of thing that can be found about a draft. See [proof](proof).\n\n".to_owned();
    for code in Code::ALL {
        let (word, severity) = (code.word(), code.severity().word());
        text.push_str(&format!("- [{word}](finding/{word}) ({severity}): {}\n", code.sentence()));
    }
    made("findings", "All findings", Group::Findings, text)
}

fn finding(code: Code) -> Page {
    let silence = match code.can_be_silenced() {
        true => "It can be silenced with a reason, or switched off in the settings of the draft.",
        false => "It is always told.",
    };
    let text = format!(
        "# {}\n\n**{}.** {}\n\nWhat to do: {}\n\nIt says: `{}`\n\n{silence}\n\nAll kinds: [findings](findings).\n",
        code.word(),
        capital(code.severity().word()),
        code.sentence(),
        advice(code),
        code.template(),
    );
    made(format!("finding/{}", code.word()), code.word(), Group::Findings, text)
}

fn actions() -> Page {
    let mut text = "# Actions\n\nEverything that can be done by name; [keys](keys) lists the keys alone.\n".to_owned();
    for menu in Menu::ALL {
        text.push_str(&format!("\n## {}\n\n", menu.word()));
        for action in ACTIONS.iter().filter(|a| a.menu == menu) {
            text.push_str(&format!("- [{}](action/{}){}: {}\n", bare(action), action.id, key(action), action.what));
        }
    }
    made("actions", "All actions", Group::Actions, text)
}

fn action(action: &Action) -> Page {
    let key = if action.key.is_empty() { "It has no key.".to_owned() } else { format!("Its key is `{}`.", action.key) };
    let text = format!(
        "# {}\n\n{}\n\nIt stands in the menu {}. {key} {}\n\nAll actions: [actions](actions).\n",
        bare(action),
        action.what,
        action.menu.word(),
        when(action.when),
    );
    made(format!("action/{}", action.id), bare(action), Group::Actions, text)
}

fn keys() -> Page {
    let mut text = "# Keys\n\n".to_owned();
    for action in ACTIONS.iter().filter(|a| !a.key.is_empty()) {
        text.push_str(&format!("- `{}`: [{}](action/{})\n", action.key, bare(action), action.id));
    }
    text.push_str(
        "\n## Without a name of their own\n\n\
         - `Escape`: gives up the pull, the field or the dialog, then the choice.\n\
         - Arrow keys on a point or handle: push it by 1 mm; with `Shift` by 10 mm.\n\
         - `Enter` in the chart: to the cell below; `Tab`: to the right.\n\
         - `Ctrl+Y`: the same as \"Redo\".\n\
         - `Ctrl` and a click on a size: that size alone.\n\n## Without a key\n\n",
    );
    for action in ACTIONS.iter().filter(|a| a.key.is_empty()) {
        text.push_str(&format!("- [{}](action/{}), in the menu {}\n", bare(action), action.id, action.menu.word()));
    }
    made("keys", "Keys", Group::Actions, text)
}

fn bare(action: &Action) -> &'static str {
    action.name.trim_end_matches(" …")
}

fn key(action: &Action) -> String {
    if action.key.is_empty() { String::new() } else { format!(" `{}`", action.key) }
}

fn when(when: When) -> &'static str {
    match when {
        When::Always => "It can be done at any time.",
        When::CanUndo => "It needs a change that can be taken back.",
        When::CanRedo => "It needs a change that was taken back.",
        When::PartChosen => "Choose a part first.",
        When::PieceChosen => "Choose a piece first.",
        When::OutlineOpen => "Choose a piece whose outline is open first.",
        When::SeamChosen => "Choose a seam first.",
        When::SizeChosen => "Choose a size of the range first.",
        When::HasSizes => "The draft needs a size first.",
        When::CanDelete => "Choose something with a name, or a step of the booklet, first.",
        When::InOrder => "Choose a row of the chart, a strip, a notion, a cloth or a step of the booklet first.",
        When::HasFindings => "It needs something that was found.",
        When::Planning => "Lays must be looked for.",
        When::PlanSeen => "Choose a cell in the room of cloth first.",
        When::LaidChosen => "Choose a piece on the cloth first.",
        When::HasPlans => "A lay plan must be kept in the draft.",
        When::Comparing => "Compare with another draft first.",
        When::HasProposals => "It needs proposed numbers in the chart.",
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
