//! Files and folders that may not be written. An administrator may write anywhere, so that the inner test gives that right up.

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::path::Path;

use super::super::oracle::tracewheel;
use super::{
    can_be_saved_elsewhere, everything, inner_folder, is_allowed, open, put_skirt, retitle, run_within, title_in,
};

fn allow(path: &Path, mode: u32) {
    fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
}

#[test]
fn a_file_that_is_protected() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let mut work = open(&draft);
    allow(&draft, 0o444);
    let before = everything(folder.path());
    retitle(&mut work, "Mine");
    let told = work.save(None, false).unwrap_err().to_string();
    let wanted = "is protected against writing; take the protection off, or save under another name";
    assert_eq!(told, format!("`{}` {wanted}", draft.display()));
    let ran = tracewheel(&["chart", draft.to_str().unwrap(), "add", "15", "hip=102cm"]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains(wanted), "{}", ran.err);
    assert_eq!(everything(folder.path()), before);
    can_be_saved_elsewhere(&mut work, "Mine", &folder.path().join("mine.ron"));
    assert_eq!(title_in(&draft), "Plain skirt");
}

#[test]
fn a_folder_that_is_protected() {
    let folder = tempfile::tempdir().unwrap();
    let test = "mishaps::rights::in_a_folder_that_is_protected";
    let may_write = {
        let probe = folder.path().join("probe");
        fs::create_dir(&probe).unwrap();
        allow(&probe, 0o555);
        let may = fs::write(probe.join("x"), "").is_ok();
        allow(&probe, 0o755);
        may
    };
    if !may_write {
        return run_within(&["env"], test, folder.path());
    }
    let without = ["setpriv", "--bounding-set", "-dac_override,-dac_read_search"];
    if is_allowed(&without, "a folder without the right to write") {
        run_within(&without, test, folder.path());
    }
}

#[test]
#[ignore = "is started by the test above, without the rights of an administrator"]
fn in_a_folder_that_is_protected() {
    let Some(folder) = inner_folder() else { return };
    let (closed, draft) = (folder.join("closed"), folder.join("closed/skirt.ron"));
    fs::create_dir(&closed).unwrap();
    put_skirt(&draft);
    let mut work = open(&draft);
    allow(&closed, 0o555);
    assert!(fs::write(closed.join("probe"), "").is_err(), "the right to write anywhere was not given up");
    let before = everything(&closed);
    retitle(&mut work, "Mine");
    let told = work.save(None, false).unwrap_err().to_string();
    assert_eq!(
        told,
        format!("no permission for `{}`; change the permissions, or choose another place", closed.display())
    );
    let (at, out) = (draft.to_str().unwrap(), closed.to_str().unwrap());
    for (args, words) in [
        (vec!["publish", at, "--out", out], "could not be written"),
        (vec!["release", at, "--out", out], "could not be written"),
        (vec!["chart", at, "add", "15", "hip=102cm"], "no permission for"),
    ] {
        let ran = tracewheel(&args);
        assert_eq!(ran.exit, 2, "{args:?} {}", ran.err);
        assert!(ran.err.contains(words) && ran.err.contains(out), "{}", ran.err);
    }
    assert_eq!(everything(&closed), before);
    can_be_saved_elsewhere(&mut work, "Mine", &folder.join("mine.ron"));
    // A file that may not be read.
    allow(&closed, 0o755);
    allow(&draft, 0o000);
    let ran = tracewheel(&["proof", at]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains("no permission for") && ran.err.contains(at), "{}", ran.err);
    allow(&draft, 0o644);
    assert_eq!(title_in(&draft), "Plain skirt");
}
