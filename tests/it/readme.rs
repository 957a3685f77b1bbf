//! The README says what is so: its commands are run and must print what stands there.

use std::path::Path;

/// The `console` blocks: each command with the lines that follow it.
fn commands() -> Vec<(String, String)> {
    let text = std::fs::read_to_string("README.md").unwrap();
    let mut out: Vec<(String, String)> = Vec::new();
    let mut inside = false;
    for line in text.lines() {
        match line {
            "```console" => inside = true,
            "```" => inside = false,
            _ if !inside => {}
            _ => match line.strip_prefix("$ ") {
                Some(command) => out.push((command.to_owned(), String::new())),
                None => {
                    let last = out.last_mut().unwrap();
                    last.1.push_str(line);
                    last.1.push('\n');
                }
            },
        }
    }
    out
}

/// Splits a command as a shell would, as far as the README goes: words and single quotes.
fn words(command: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut quoted = false;
    for letter in command.chars() {
        match letter {
            '\'' => quoted = !quoted,
            ' ' if !quoted => out.push(String::new()),
            _ => out.last_mut().unwrap().push(letter),
        }
    }
    out
}

#[test]
fn the_tour_prints_what_the_readme_says() {
    let folder = tempfile::tempdir().unwrap();
    std::os::unix::fs::symlink(Path::new("examples").canonicalize().unwrap(), folder.path().join("examples")).unwrap();
    std::fs::create_dir_all(folder.path().join("target/tour")).unwrap();
    std::fs::copy("examples/bodice-sleeve.ron", folder.path().join("target/tour/my.ron")).unwrap();
    std::fs::copy("examples/market-apron.ron", folder.path().join("target/tour/apron.ron")).unwrap();
    let commands = commands();
    assert!(commands.len() >= 7, "the tour has {} commands", commands.len());
    for (command, expected) in commands {
        let words = words(&command);
        assert_eq!(words[0], "tracewheel", "{command}");
        let output = crate::program().args(&words[1..]).current_dir(folder.path()).output().unwrap();
        let printed = String::from_utf8(output.stdout).unwrap() + &String::from_utf8(output.stderr).unwrap();
        assert_eq!(printed, expected, "{command}");
    }
}
