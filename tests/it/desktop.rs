//! The entry in the menu of the desktop: what is written, and that it is taken away again.

use std::path::Path;
use std::process::{Command, Output};

fn desktop(program: &Path, data: &Path, arguments: &[&str]) -> Output {
    Command::new(program).arg("desktop").args(arguments).env("XDG_DATA_HOME", data).output().unwrap()
}

/// From a folder with a space and signs that mean something in entries. What is quoted follows the Desktop Entry Specification, "The Exec
/// key": in double quotes `"`, `` ` ``, `$` and `\` behind a backslash, which is written twice in a file; `%` twice.
#[cfg(target_os = "linux")]
#[test]
fn an_entry_names_the_program_and_goes_again() {
    let folder = tempfile::tempdir().unwrap();
    let odd = folder.path().join("my $tools 100%");
    std::fs::create_dir(&odd).unwrap();
    let program = odd.join("tracewheel");
    // A link: the program itself is large.
    std::fs::hard_link(env!("CARGO_BIN_EXE_tracewheel"), &program)
        .or_else(|_| std::fs::copy(env!("CARGO_BIN_EXE_tracewheel"), &program).map(drop))
        .unwrap();
    let data = folder.path().join("data");
    let out = desktop(&program, &data, &[]);
    assert!(out.status.success(), "{out:?}");
    let entry = std::fs::read_to_string(data.join("applications/tracewheel.desktop")).unwrap();
    let start = folder.path().display();
    assert!(entry.contains(&format!("Exec=\"{start}/my \\\\$tools 100%%/tracewheel\" %f\n")), "{entry}");
    assert!(entry.contains("MimeType=application/x-tracewheel-draft;"), "{entry}");
    assert!(data.join("icons/hicolor/scalable/apps/tracewheel.svg").is_file());
    let kinds = std::fs::read_to_string(data.join("mime/packages/tracewheel.xml")).unwrap();
    // The beginning of every draft that is saved, as the file kind knows it.
    let example = std::fs::read("examples/panel-top.ron").unwrap();
    let sign = b"format: \"tracewheel draft\"";
    assert!(kinds.contains("format: &quot;tracewheel draft&quot;"));
    assert!(example.windows(sign.len()).take(64).any(|w| w == sign));

    let out = desktop(&program, &data, &["--remove"]);
    assert!(out.status.success(), "{out:?}");
    assert!(
        !data.join("applications/tracewheel.desktop").exists() && !data.join("mime/packages/tracewheel.xml").exists()
    );
    let again = desktop(&program, &data, &["--remove"]);
    assert_eq!(again.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&again.stderr).contains("there was no entry to take away"));
}

/// A folder that may not be written: told with its name, and nothing else happens.
#[test]
fn a_folder_in_the_way_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    std::fs::write(&data, "a file").unwrap();
    let out = desktop(Path::new(env!("CARGO_BIN_EXE_tracewheel")), &data, &[]);
    assert_eq!(out.status.code(), Some(2));
    let told = String::from_utf8_lossy(&out.stderr);
    assert!(told.contains("data/applications is not a folder; name a folder to write into"), "{told}");
}
