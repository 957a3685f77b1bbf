//! Files are written all or nothing.

use std::fs;
use std::path::Path;

use tracewheel::output::{SaveError, save_all};

fn files(pairs: &[(&str, &str)]) -> Vec<(String, Vec<u8>)> {
    pairs.iter().map(|(n, c)| ((*n).to_owned(), c.as_bytes().to_vec())).collect()
}

/// Names in a folder, sorted, hidden ones too.
fn names(dir: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(dir).unwrap().map(|e| e.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn files_are_written_and_old_ones_replaced() {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join("a.pdf"), "old").unwrap();
    let paths = save_all(dir.path(), &files(&[("b.pdf", "new b"), ("a.pdf", "new a")])).unwrap();
    assert_eq!(paths, [dir.path().join("b.pdf"), dir.path().join("a.pdf")]);
    assert_eq!(fs::read_to_string(&paths[1]).unwrap(), "new a");
    assert_eq!(names(dir.path()), ["a.pdf", "b.pdf"]);
}

#[test]
fn one_bad_file_leaves_the_folder_as_it_was() {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join("a.pdf"), "old").unwrap();
    fs::create_dir(dir.path().join("b.pdf")).unwrap();
    let error = save_all(dir.path(), &files(&[("a.pdf", "new"), ("b.pdf", "new")])).unwrap_err();
    assert!(matches!(error, SaveError::InTheWay { .. }), "{error}");
    // A name longer than file systems allow fails only while it is written.
    let long = "x".repeat(300);
    let error = save_all(dir.path(), &files(&[("a.pdf", "new"), (&long, "new")])).unwrap_err();
    assert!(matches!(error, SaveError::Write { .. }) && error.to_string().contains("nothing was changed"), "{error}");
    assert_eq!(names(dir.path()), ["a.pdf", "b.pdf"]);
    assert_eq!(fs::read_to_string(dir.path().join("a.pdf")).unwrap(), "old");
}

#[test]
fn folders_and_names_that_cannot_be_are_told_apart() {
    let dir = tempfile::tempdir().unwrap();
    let one = files(&[("a.pdf", "x")]);
    let said = |result: Result<_, SaveError>| -> String { result.map(|_: Vec<_>| ()).unwrap_err().to_string() };
    assert!(said(save_all(&dir.path().join("gone"), &one)).contains("gone does not exist; make it first"));
    fs::write(dir.path().join("file"), "").unwrap();
    assert!(said(save_all(&dir.path().join("file"), &one)).contains("file is not a folder"));
    assert!(said(save_all(&dir.path().join("file/deeper"), &one)).contains("is not a folder"));
    for name in ["", ".", "..", "a/b", "../a", "a\\b"] {
        assert!(matches!(save_all(dir.path(), &files(&[(name, "x")])), Err(SaveError::NameBad { .. })), "{name}");
    }
    assert!(said(save_all(dir.path(), &files(&[("a", "1"), ("a", "2")]))).contains("twice"));
    assert_eq!(names(dir.path()), ["file"]);
}

#[test]
fn leftovers_of_a_crash_are_not_in_the_way() {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join(".a.pdf.0.part"), "half").unwrap();
    save_all(dir.path(), &files(&[("a.pdf", "new")])).unwrap();
    assert_eq!(names(dir.path()), [".a.pdf.0.part", "a.pdf"]);
    assert_eq!(fs::read_to_string(dir.path().join("a.pdf")).unwrap(), "new");
}

#[cfg(unix)]
#[test]
fn links_are_followed_and_rights_kept() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let dir = tempfile::tempdir().unwrap();
    let other = tempfile::tempdir().unwrap();
    let real = other.path().join("real.pdf");
    fs::write(&real, "old").unwrap();
    fs::set_permissions(&real, fs::Permissions::from_mode(0o600)).unwrap();
    symlink(&real, dir.path().join("a.pdf")).unwrap();
    save_all(dir.path(), &files(&[("a.pdf", "new")])).unwrap();
    assert_eq!(fs::read_to_string(&real).unwrap(), "new");
    assert_eq!(fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o600);
    assert!(fs::symlink_metadata(dir.path().join("a.pdf")).unwrap().is_symlink());
}
