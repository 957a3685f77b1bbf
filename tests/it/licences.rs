//! The page of licences names every crate that the program is built of.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::process::Command;

use serde_json::Value;

const PAGE: &str = "assets/help/licences.md";
/// Behind this line the page is written by `write_licences`.
const MARK: &str = "## Crates in the program\n";
/// What may stand in a licence: all allow to pass the program on, with their notices; MPL-2.0 asks that changes of its own files are shown, and
/// none are changed.
const ALLOWED: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "MPL-2.0",
    "NCSA",
    "OFL-1.1",
    "Ubuntu-font-1.0",
    "Unicode-3.0",
    "Unlicense",
    "WTFPL",
    "Zlib",
    "bzip2-1.0.6",
];

/// Names and versions of what `Cargo.lock` holds, this program left out.
fn locked() -> BTreeSet<(String, String)> {
    let text = std::fs::read_to_string("Cargo.lock").unwrap();
    let field = |block: &str, name: &str| {
        let line = block.lines().find_map(|l| l.strip_prefix(&format!("{name} = \"")))?;
        Some(line.trim_end_matches('"').to_owned())
    };
    let blocks = text.split("[[package]]").skip(1);
    let all = blocks.filter_map(|b| Some((field(b, "name")?, field(b, "version")?)));
    all.filter(|(name, _)| name != "tracewheel").collect()
}

/// Lines of the page: `- name 1.2.3: MIT`.
fn listed(page: &str) -> BTreeMap<(String, String), String> {
    let lines = page.split_once(MARK).unwrap().1.lines();
    let items = lines.filter_map(|l| l.strip_prefix("- ")?.split_once(": "));
    items
        .filter_map(|(crate_, licence)| Some((crate_.split_once(' ')?, licence)))
        .map(|((n, v), l)| ((n.to_owned(), v.to_owned()), l.to_owned()))
        .collect()
}

#[test]
fn every_crate_has_its_licence_on_the_page() {
    let page = std::fs::read_to_string(PAGE).unwrap();
    let (listed, locked) = (listed(&page), locked());
    let named: BTreeSet<(String, String)> = listed.keys().cloned().collect();
    assert!(locked.len() > 100);
    let (lacking, gone): (Vec<_>, Vec<_>) = (locked.difference(&named).collect(), named.difference(&locked).collect());
    assert!(
        lacking.is_empty() && gone.is_empty(),
        "not listed: {lacking:?}; not there any more: {gone:?}; run `cargo test -- --ignored write_licences`"
    );
    for (name, licence) in &listed {
        // `A OR B` is a choice, so one that is allowed is enough; of what is joined by AND all must be.
        let is_fine = |all: &str| {
            all.split(" AND ")
                .all(|one| ALLOWED.contains(&one.split(" WITH ").next().unwrap().trim_matches(['(', ')', ' '])))
        };
        let any = licence.replace('/', " OR ").split(" OR ").any(is_fine);
        assert!(any, "{name:?}: {licence}");
    }
}

/// Writes the list anew, from what cargo knows of each crate.
#[test]
#[ignore = "writes the page; asks cargo, which may fetch what is missing"]
fn write_licences() {
    let out = Command::new(env!("CARGO")).args(["metadata", "--format-version", "1", "--locked"]).output().unwrap();
    let known: Value = serde_json::from_slice(&out.stdout).unwrap();
    let text = |v: &Value| v.as_str().unwrap_or_default().to_owned();
    let packages: BTreeMap<String, &Value> =
        known["packages"].as_array().unwrap().iter().map(|p| (text(&p["id"]), p)).collect();
    let nodes: BTreeMap<String, &Value> =
        known["resolve"]["nodes"].as_array().unwrap().iter().map(|n| (text(&n["id"]), n)).collect();
    // What the program itself needs, on any system; the rest builds or tests it.
    let mut inside: BTreeSet<String> = BTreeSet::new();
    let mut next = vec![text(&known["resolve"]["root"])];
    while let Some(id) = next.pop() {
        if inside.insert(id.clone()) {
            let needs = nodes[&id]["deps"].as_array().unwrap().iter();
            let needs = needs.filter(|d| d["dep_kinds"].as_array().unwrap().iter().any(|k| k["kind"].is_null()));
            next.extend(needs.map(|d| text(&d["pkg"])));
        }
    }
    let list = |within: bool| {
        let own = packages.iter().filter(|(id, p)| p["name"] != "tracewheel" && inside.contains(*id) == within);
        let lines: BTreeSet<String> = own
            .map(|(_, p)| format!("- {} {}: {}\n", text(&p["name"]), text(&p["version"]), text(&p["license"])))
            .collect();
        lines.into_iter().collect::<String>()
    };
    let page = std::fs::read_to_string(PAGE).unwrap();
    let mut new = page.split_once(MARK).unwrap().0.to_owned();
    let _ = write!(new, "{MARK}\n{}\n## Crates that build or test it only\n\n{}", list(true), list(false));
    std::fs::write(PAGE, new).unwrap();
}
