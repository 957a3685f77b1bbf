//! The folder goes while its draft is open: removed, moved, or a file in its place.

use std::fs;

use super::{can_be_saved_elsewhere, open, put_skirt, retitle, title_in};
use tracewheel::file::FileError;
use tracewheel::session::RecoveryFolder;

#[test]
fn a_folder_that_is_removed() {
    let folder = tempfile::tempdir().unwrap();
    let (inner, draft) = (folder.path().join("inner"), folder.path().join("inner/skirt.ron"));
    fs::create_dir(&inner).unwrap();
    put_skirt(&draft);
    let mut work = open(&draft);
    let recovery = RecoveryFolder::open(folder.path().join("recovery")).unwrap();
    work.keep_in(&recovery).unwrap();
    fs::remove_dir_all(&inner).unwrap();
    retitle(&mut work, "Still here");
    let told = work.save(None, false).unwrap_err().to_string();
    assert_eq!(told, format!("there is no folder `{}`; make it, or save elsewhere", inner.display()));
    assert!(!inner.exists(), "a folder that somebody removed is not made again unasked");
    // Killed now, it would be found again.
    work.keeper().unwrap().flush();
    assert!(fs::read_to_string(work.keeper().unwrap().path()).unwrap().contains("Still here"));
    // A file in the place of the folder.
    fs::write(&inner, "in the way").unwrap();
    let told = work.save(None, false).unwrap_err().to_string();
    assert_eq!(told, format!("there is no folder `{}`; make it, or save elsewhere", inner.display()));
    assert_eq!(fs::read_to_string(&inner).unwrap(), "in the way");
    // With the folder again, but without the file: that is asked about, then done.
    fs::remove_file(&inner).unwrap();
    fs::create_dir(&inner).unwrap();
    assert!(matches!(work.save(None, false), Err(FileError::ChangedOutside { gone: true, .. })));
    work.save(None, true).unwrap();
    assert_eq!(title_in(&draft), "Still here");
    // Removed once more, it is saved elsewhere; what was kept goes when it is.
    fs::remove_dir_all(&inner).unwrap();
    retitle(&mut work, "And again");
    assert!(work.save(None, false).is_err());
    can_be_saved_elsewhere(&mut work, "And again", &folder.path().join("elsewhere.ron"));
    drop(work);
    assert!(recovery.left_behind().is_empty());
}

#[test]
fn a_folder_that_is_moved() {
    let folder = tempfile::tempdir().unwrap();
    let (inner, moved) = (folder.path().join("inner"), folder.path().join("moved"));
    fs::create_dir(&inner).unwrap();
    put_skirt(&inner.join("skirt.ron"));
    let mut work = open(&inner.join("skirt.ron"));
    retitle(&mut work, "Moved");
    fs::rename(&inner, &moved).unwrap();
    let told = work.save(None, false).unwrap_err().to_string();
    assert!(told.contains("there is no folder") && told.contains("inner"), "{told}");
    assert_eq!(title_in(&moved.join("skirt.ron")), "Plain skirt");
    can_be_saved_elsewhere(&mut work, "Moved", &moved.join("skirt.ron"));
}
