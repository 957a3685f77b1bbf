//! Opening and saving: the old file survives every failure, and nothing is left behind.

use std::fs;
use std::path::{Path, PathBuf};

use proptest::prelude::*;
use tempfile::TempDir;
use tracewheel::document::{Draft, FORMAT, Piece};
use tracewheel::file::{FileError, Fingerprint, Refusal, limits, open, save, write};

use crate::drafts;

fn titled(title: &str) -> Draft {
    Draft { format: FORMAT.into(), title: title.into(), ..Draft::default() }
}

fn folder() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("cuff.draft");
    (folder, path)
}

/// The names in a folder, in order.
fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

/// A message with the folder taken out.
fn told(error: &FileError, folder: &TempDir) -> String {
    error.to_string().replace(&folder.path().display().to_string(), "HERE")
}

#[test]
fn saves_and_opens() {
    let (folder, path) = folder();
    let draft = titled("Cuff");
    let saved = save(&path, &draft, None).unwrap();
    assert_eq!(names(folder.path()), ["cuff.draft"]);
    let opened = open(&path).unwrap();
    assert_eq!((&opened.draft, opened.fingerprint, opened.had_comments), (&draft, saved, false));
    assert_eq!(opened.text, write(&draft));
    // A longer one, then a shorter one, in the same place.
    let second = save(&path, &titled(&"long ".repeat(1_000)), Some(&saved)).unwrap();
    assert_ne!(second, saved);
    assert_eq!(save(&path, &draft, Some(&second)).unwrap(), saved);
    assert_eq!(fs::read_to_string(&path).unwrap(), write(&draft));
    assert_eq!(names(folder.path()), ["cuff.draft"]);
}

#[test]
fn opens_files_as_they_are() {
    let (_folder, path) = folder();
    let text = format!("\u{feff}(format: \"{FORMAT}\", version: 0, title: \"Cuff\") // mine\r\n");
    fs::write(&path, &text).unwrap();
    let opened = open(&path).unwrap();
    assert_eq!((opened.draft.title.as_str(), opened.had_comments), ("Cuff", true));
    assert_eq!(opened.text, text);
    assert_eq!(opened.fingerprint, Fingerprint::of(text.as_bytes()));
    // Opening does not touch it; saving then brings it into the standard form.
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
    save(&path, &opened.draft, Some(&opened.fingerprint)).unwrap();
    assert_eq!(fs::read_to_string(&path).unwrap(), write(&opened.draft));
}

/// FNV-1a, 64 bits. Source: the test vectors published with the hash (draft-eastlake-fnv), from memory.
#[test]
fn fingerprints_tell_contents_apart() {
    let shown = |text: &str| format!("{:?}", Fingerprint::of(text.as_bytes()));
    assert!(shown("").contains(&0xcbf2_9ce4_8422_2325_u64.to_string()));
    assert!(shown("a").contains(&0xaf63_dc4c_8601_ec8c_u64.to_string()));
    assert!(shown("foobar").contains(&0x8594_4171_f739_67e8_u64.to_string()));
    assert_ne!(Fingerprint::of(b"ab"), Fingerprint::of(b"ba"));
    assert_ne!(Fingerprint::of(b"\0"), Fingerprint::of(b"\0\0"));
}

#[test]
fn does_not_save_over_changes_made_outside() {
    let (folder, path) = folder();
    let seen = save(&path, &titled("mine"), None).unwrap();
    let theirs = write(&titled("thei"));
    assert_eq!(theirs.len(), write(&titled("mine")).len());
    fs::write(&path, &theirs).unwrap();
    let error = save(&path, &titled("mine again"), Some(&seen)).unwrap_err();
    assert!(matches!(error, FileError::ChangedOutside { gone: false, .. }), "{error}");
    assert_eq!(
        told(&error, &folder),
        "`HERE/cuff.draft` was changed by another program since it was opened; save under another name, or save over it"
    );
    assert_eq!(fs::read_to_string(&path).unwrap(), theirs);
    // Something put behind it is a change too.
    fs::write(&path, format!("{}\n", write(&titled("mine")))).unwrap();
    assert!(matches!(save(&path, &titled("x"), Some(&seen)), Err(FileError::ChangedOutside { gone: false, .. })));
    fs::remove_file(&path).unwrap();
    let error = save(&path, &titled("mine again"), Some(&seen)).unwrap_err();
    assert!(matches!(error, FileError::ChangedOutside { gone: true, .. }), "{error}");
    assert_eq!(names(folder.path()), [""; 0]);
    // By will.
    let forced = save(&path, &titled("mine again"), None).unwrap();
    assert_eq!(open(&path).unwrap().fingerprint, forced);
}

#[cfg(unix)]
#[test]
fn follows_links_and_keeps_permissions() {
    use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
    let (folder, path) = folder();
    let here = folder.path();
    fs::create_dir(here.join("deep")).unwrap();
    let target = here.join("deep").join("real.draft");
    symlink("deep/real.draft", here.join("second")).unwrap();
    symlink("second", &path).unwrap();
    // The file that the links lead to does not exist yet.
    save(&path, &titled("one"), None).unwrap();
    assert_eq!(open(&target).unwrap().draft.title, "one");
    for mode in [0o600, 0o640, 0o664, 0o751] {
        fs::set_permissions(&target, fs::Permissions::from_mode(mode)).unwrap();
        let seen = open(&path).unwrap().fingerprint;
        save(&path, &titled(&format!("{mode:o}")), Some(&seen)).unwrap();
        assert_eq!(fs::metadata(&target).unwrap().mode() & 0o7777, mode);
        assert_eq!(open(&target).unwrap().draft.title, format!("{mode:o}"));
    }
    assert!(fs::symlink_metadata(&path).unwrap().is_symlink());
    assert!(fs::symlink_metadata(here.join("second")).unwrap().is_symlink());
    assert_eq!(names(&here.join("deep")), ["real.draft"]);
    assert_eq!(names(here), ["cuff.draft", "deep", "second"]);
    // Links in a circle.
    symlink("b", here.join("a")).unwrap();
    symlink("a", here.join("b")).unwrap();
    let error = save(&here.join("a"), &titled("x"), None).unwrap_err();
    assert_eq!(told(&error, &folder), "the links from `HERE/a` lead nowhere; choose the file itself");
    // A file that is protected against writing stays as it is, although its folder would let it be replaced.
    fs::set_permissions(&target, fs::Permissions::from_mode(0o444)).unwrap();
    let error = save(&path, &titled("x"), None).unwrap_err();
    assert_eq!(
        told(&error, &folder),
        "`HERE/cuff.draft` is protected against writing; take the protection off, or save under another name"
    );
    assert_eq!(open(&path).unwrap().draft.title, "751");
}

#[test]
fn says_why_nothing_was_opened() {
    let (folder, path) = folder();
    let fails = |path: &Path| told(&open(path).unwrap_err(), &folder);
    assert_eq!(fails(&path), "there is no file `HERE/cuff.draft`; look for its name and folder");
    assert_eq!(fails(&folder.path().join("a/b")), "there is no file `HERE/a/b`; look for its name and folder");
    assert_eq!(fails(folder.path()), "`HERE` is a folder; give the name of a file in it");
    fs::write(&path, b"(format: \"tracewheel draft\"\xff\xfe").unwrap();
    assert_eq!(fails(&path), "`HERE/cuff.draft` is not a draft: byte 27 is not text in UTF-8; choose another file");
    fs::write(&path, "").unwrap();
    assert_eq!(
        fails(&path),
        "`HERE/cuff.draft`: this is not a draft: it is empty, expected `(format: \"tracewheel draft\"`"
    );
    fs::File::create(&path).unwrap().set_len(limits::FILE.most as u64 + 1).unwrap();
    assert_eq!(
        fails(&path),
        "`HERE/cuff.draft` is longer than 16777216 bytes, the most that is read; it is hardly a draft"
    );
    let text = format!("(format: \"{FORMAT}\", version: 0,\n titel: \"Cuff\")");
    fs::write(&path, &text).unwrap();
    match open(&path) {
        Err(FileError::Refused { error, text: shown, .. }) => {
            assert_eq!((error.refusal, error.line, error.column), (Refusal::Unknown, 2, 2));
            assert_eq!(shown, text);
        }
        other => panic!("{other:?}"),
    }
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
}

#[test]
fn says_why_nothing_was_saved() {
    let (folder, path) = folder();
    let fails = |path: &Path, draft: &Draft| told(&save(path, draft, None).unwrap_err(), &folder);
    let missing = folder.path().join("missing").join("cuff.draft");
    assert_eq!(fails(&missing, &titled("x")), "there is no folder `HERE/missing`; make it, or save elsewhere");
    assert_eq!(fails(folder.path(), &titled("x")), "`HERE` is a folder; give the name of a file in it");
    save(&path, &titled("old"), None).unwrap();
    let below = path.join("cuff.draft");
    assert_eq!(fails(&below, &titled("x")), "there is no folder `HERE/cuff.draft`; make it, or save elsewhere");
    // A draft that could not be opened again.
    let pieces = vec![Piece::default().into(); limits::PIECES.most + 1];
    let message = fails(&path, &Draft { pieces, ..titled("x") });
    let start = "`HERE/cuff.draft` was not saved and is as it was: the draft could not be opened again (line ";
    assert!(message.starts_with(start), "{message}");
    assert!(message.ends_with("found 2001 pieces, at most 2000; split the draft in two)"), "{message}");
    assert_eq!(open(&path).unwrap().draft.title, "old");
    assert_eq!(names(folder.path()), ["cuff.draft"]);
}

/// Devices, pipes and the like are never replaced by a file, nor waited for.
#[cfg(unix)]
#[test]
fn leaves_what_is_no_file_alone() {
    use std::os::unix::fs::FileTypeExt;
    let (folder, path) = folder();
    let _socket = std::os::unix::net::UnixListener::bind(&path).unwrap();
    for error in [save(&path, &titled("x"), None).unwrap_err(), open(&path).unwrap_err()] {
        assert_eq!(told(&error, &folder), "`HERE/cuff.draft` is not a plain file; choose another one");
    }
    assert!(fs::metadata(&path).unwrap().file_type().is_socket());
    assert_eq!(names(folder.path()), ["cuff.draft"]);
}

/// An administrator may write into any folder: then only that nothing else is in it afterwards can be seen here.
#[cfg(unix)]
#[test]
fn folders_that_may_not_be_written() {
    use std::os::unix::fs::PermissionsExt;
    let (folder, path) = folder();
    save(&path, &titled("old"), None).unwrap();
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
    let administrator = fs::write(folder.path().join("probe"), "").is_ok();
    let result = save(&path, &titled("new"), None);
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
    if administrator {
        fs::remove_file(folder.path().join("probe")).unwrap();
        assert!(result.is_ok());
    } else {
        let message = told(&result.unwrap_err(), &folder);
        assert_eq!(message, "no permission for `HERE`; change the permissions, or choose another place");
    }
    assert_eq!(open(&path).unwrap().draft.title, if administrator { "new" } else { "old" });
    assert_eq!(names(folder.path()), ["cuff.draft"]);
}

/// A leftover of a killed program is neither used nor touched.
#[test]
fn passes_over_leftovers() {
    let (folder, path) = folder();
    let leftover = folder.path().join(format!(".tracewheel-{}-0.saving", std::process::id()));
    fs::write(&leftover, "theirs").unwrap();
    save(&path, &titled("x"), None).unwrap();
    assert_eq!(fs::read_to_string(&leftover).unwrap(), "theirs");
    assert_eq!(names(folder.path()).len(), 2);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 16, ..ProptestConfig::default() })]

    #[test]
    fn opens_what_it_saved(first in drafts::draft(), second in drafts::draft()) {
        let (folder, path) = folder();
        let seen = save(&path, &first, None).unwrap();
        prop_assert_eq!(&open(&path).unwrap().draft, &first);
        let seen = save(&path, &second, Some(&seen)).unwrap();
        let opened = open(&path).unwrap();
        prop_assert_eq!(&opened.draft, &second);
        prop_assert_eq!(opened.fingerprint, seen);
        prop_assert_eq!(names(folder.path()).len(), 1);
    }
}
