//! What is the person's own: kept, set aside when damaged, never written over silently.

use std::fs;
use std::path::Path;

use tracewheel::base::Language;
use tracewheel::session::{Left, LightWish, Own, Preferences, Spacing};

fn open(path: &Path) -> (Own, Option<String>) {
    Own::open(Some(path.to_owned()))
}

#[test]
fn what_is_preferred_is_there_again() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a/b/preferences.ron");
    let (mut own, told) = open(&path);
    assert!(told.is_none() && own.preferences == Preferences::default());
    let wanted = Preferences {
        light: LightWish::Dark,
        text: 150,
        spacing: Spacing::Roomy,
        contrast: true,
        apart: true,
        screen: 4_321,
        guide: true,
        language: Some(Language::German),
    };
    own.prefer(wanted.clone()).unwrap();
    let (own, told) = open(&path);
    assert!(told.is_none() && own.preferences == wanted, "{:?}", own.preferences);
    let names: Vec<_> = fs::read_dir(path.parent().unwrap()).unwrap().map(|f| f.unwrap().file_name()).collect();
    assert_eq!(names, ["preferences.ron"], "nothing is left over");
}

#[test]
fn a_damaged_or_foreign_file_is_told_and_set_aside() {
    let good = "(version: 1, preferences: (text: 110), recent: [])";
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("preferences.ron");
    fs::write(&path, good).unwrap();
    assert_eq!(open(&path).0.preferences.text, 110, "parts that are not said have their usual value");
    let bad: [(&[u8], &str); 6] = [
        (b"(version: 1, preferences: (text: ", "line 1"),
        (&[0, 159, 146, 150], "UTF-8"),
        (b"(version: 2)", "version 2"),
        (b"{\"text\": 3}", "line 1"),
        (b"", "line 1"),
        (&[b' '; 1_100_000], "more than"),
    ];
    for (i, (bytes, says)) in bad.iter().enumerate() {
        fs::write(&path, bytes).unwrap();
        let (mut own, told) = open(&path);
        let told = told.unwrap();
        assert!(told.contains(says) && told.contains("set aside"), "{told}");
        assert_eq!(own.preferences, Preferences::default());
        let aside = folder.path().join(format!("preferences.set-aside-{}.ron", i + 1));
        assert_eq!(fs::read(&aside).unwrap(), *bytes, "kept as it was");
        own.prefer(Preferences { text: 90, ..Preferences::default() }).unwrap();
        assert_eq!(open(&path).0.preferences.text, 90);
    }
}

#[test]
fn numbers_out_of_their_limits_are_taken_back_into_them() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("preferences.ron");
    fs::write(&path, "(version: 1, preferences: (text: 90000, screen: 1))").unwrap();
    let (own, told) = open(&path);
    assert_eq!((own.preferences.text, own.preferences.screen, told), (200, 1_000, None));
}

#[test]
fn recent_drafts_keep_where_they_were_left_and_the_list_stays_short() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("preferences.ron");
    let (mut own, _) = open(&path);
    for i in 0..20 {
        own.note(&folder.path().join(format!("{i}.ron")), None).unwrap();
    }
    assert_eq!(own.recent.len(), 12);
    let left = Left { case: "92".to_owned(), room: "chart".to_owned(), ..Left::default() };
    let draft = folder.path().join("15.ron");
    own.note(&draft, Some(left.clone())).unwrap();
    let (mut again, _) = open(&path);
    assert_eq!(again.left(&draft), Some(&left));
    assert!(again.recent[0].path.ends_with("15.ron") && again.recent.len() == 12);
    assert_eq!(again.recent[0].ago(), "just now");
    // Opened once more without saying where: the place stays known.
    again.note(&draft, None).unwrap();
    assert_eq!(again.left(&draft), Some(&left));
    again.forget(&again.recent[0].path.clone()).unwrap();
    assert!(open(&path).0.left(&draft).is_none());
}

#[test]
fn two_windows_do_not_lose_each_others_drafts() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("preferences.ron");
    let ((mut one, _), (mut two, _)) = (open(&path), open(&path));
    one.note(&folder.path().join("one.ron"), None).unwrap();
    two.note(&folder.path().join("two.ron"), None).unwrap();
    one.prefer(Preferences { contrast: true, ..Preferences::default() }).unwrap();
    let (own, _) = open(&path);
    assert!(own.recent.len() == 2 && own.preferences.contrast, "{own:?}");
}

#[test]
fn a_file_that_breaks_while_the_window_is_open_is_left_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("preferences.ron");
    let (mut own, _) = open(&path);
    own.prefer(Preferences::default()).unwrap();
    fs::write(&path, "half written by an edi").unwrap();
    let told = own.prefer(Preferences { text: 120, ..Preferences::default() }).unwrap_err();
    assert!(told.contains("left as they are"), "{told}");
    assert_eq!(fs::read_to_string(&path).unwrap(), "half written by an edi");
    assert_eq!(own.preferences.text, 120, "it holds as long as the window is open");
}

#[test]
fn where_nothing_can_be_written_it_is_told_and_nothing_stops() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    let (mut own, told) = open(&file.join("preferences.ron"));
    assert_eq!(told, None);
    // A file stands where the folder should be.
    fs::write(&file, "").unwrap();
    let told = own.prefer(Preferences { text: 120, ..Preferences::default() });
    assert!(told.is_err() && own.preferences.text == 120, "{told:?}");
    let (mut own, told) = open(&file.join("preferences.ron"));
    assert!(told.as_ref().is_some_and(|t| t.contains("none are kept")), "{told:?}");
    assert_eq!(own.prefer(Preferences { text: 110, ..Preferences::default() }), Ok(()));
    assert_eq!((own.preferences.text, fs::read_to_string(&file).unwrap().as_str()), (110, ""));
}
