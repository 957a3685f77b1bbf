//! What is the person's own and in no draft: how the window looks, which drafts were open last and where they were left.
//!
//! Nothing of it has power over a number of a draft. It lies in one small file; one that cannot be read is told and set aside.
#![allow(clippy::disallowed_methods, reason = "where the person's own files lie, and when a draft was open last")]

use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use serde::{Deserialize, Serialize};

use crate::base::Language;
use crate::base::system::{OwnThings, own_folder};
use crate::file::{OwnFile, read_own, set_aside, write_own};
use crate::texts::say;

/// The most drafts that are remembered.
const MOST: usize = 12;
/// Least and most size of text, percent.
const TEXT: (u32, u32) = (80, 200);
/// Least and most of a screen, thousandths of a px in a mm: 25 to 1500 to the inch.
const SCREEN: (u32, u32) = (1_000, 60_000);
/// The shape of the file.
const VERSION: u32 = 1;

/// Which look is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LightWish {
    /// As the system says.
    #[default]
    System,
    /// Ink on paper.
    Light,
    /// Paper on ink.
    Dark,
}

/// How near things stand to each other.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Spacing {
    /// More lines are seen.
    Dense,
    /// Neither.
    #[default]
    Usual,
    /// Easier to hit.
    Roomy,
}

/// How the window looks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Preferences {
    /// Light, dark, or as the system says.
    pub light: LightWish,
    /// Size of text, percent.
    pub text: u32,
    /// How near things stand.
    pub spacing: Spacing,
    /// Blacker ink, stronger borders.
    pub contrast: bool,
    /// Colours that stay apart for colour-blind eyes.
    pub apart: bool,
    /// Real px in a mm of the screen, in thousandths; 0: not measured yet.
    pub screen: u32,
    /// Whether the guided first draft is shown.
    pub guide: bool,
    /// The language in which the program speaks to the person; none: the system's.
    pub language: Option<Language>,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            light: LightWish::System,
            text: 100,
            spacing: Spacing::Usual,
            contrast: false,
            apart: false,
            screen: 0,
            guide: false,
            language: None,
        }
    }
}

impl Preferences {
    /// The same, with every number in its limits.
    pub fn within_limits(mut self) -> Self {
        self.text = self.text.clamp(TEXT.0, TEXT.1);
        if self.screen != 0 {
            self.screen = self.screen.clamp(SCREEN.0, SCREEN.1);
        }
        self
    }
}

/// Where a draft was left.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Left {
    /// The chosen size or person.
    pub case: String,
    /// What stood in the middle.
    pub room: String,
    /// The chosen part, as [`part_named`](super::part_named) reads it.
    pub part: String,
    /// The part of the table that was seen: thousandths of a px in a mm, and its middle in thousandths of a mm; none: all of it.
    pub view: Option<(i64, i64, i64)>,
}

/// A draft that was open.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Recent {
    /// Its file.
    pub path: PathBuf,
    /// When it was open last, seconds since 1970.
    #[serde(default)]
    pub when: u64,
    /// Where it was left.
    #[serde(default)]
    pub left: Left,
}

impl Recent {
    /// Its file and folder, as a line.
    pub fn words(&self) -> (String, String) {
        let part = |p: Option<&std::ffi::OsStr>| p.map_or_else(String::new, |n| n.to_string_lossy().into_owned());
        let folder = self.path.parent().map_or_else(String::new, |p| p.display().to_string());
        (part(self.path.file_name()), folder)
    }

    /// How long ago it was open, in words.
    pub fn ago(&self) -> String {
        let minutes = now().saturating_sub(self.when) / 60;
        match minutes {
            0 => say!("since-now"),
            m if m < 120 => say!("since-minutes", count = m),
            m if m < 60 * 48 => say!("since-hours", count = m / 60),
            m => say!("since-days", count = m / 60 / 24),
        }
    }
}

fn now() -> u64 {
    SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |d| d.as_secs())
}

/// What is in the file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
struct Stored {
    version: u32,
    #[serde(default)]
    preferences: Preferences,
    #[serde(default)]
    recent: Vec<Recent>,
}

/// The person's own things and the file that holds them.
#[derive(Clone, Debug, Default)]
pub struct Own {
    path: Option<PathBuf>,
    /// How the window looks.
    pub preferences: Preferences,
    /// Drafts that were open, the last one first.
    pub recent: Vec<Recent>,
}

impl Own {
    /// Where the system wants such things of this person to lie.
    pub fn of_system() -> Option<PathBuf> {
        Some(own_folder(OwnThings::Preferences, &|name| std::env::var_os(name))?.join("preferences.ron"))
    }

    /// Reads the file, if one is given. What cannot be read is set aside, and the words say so; where even that cannot be
    /// done, nothing is written over it.
    pub fn open(path: Option<PathBuf>) -> (Self, Option<String>) {
        let Some(path) = path else { return (Self::default(), None) };
        match stored(&path) {
            OwnFile::Missing => (Self { path: Some(path), ..Self::default() }, None),
            OwnFile::Read(stored) => {
                (Self { path: Some(path), preferences: stored.preferences, recent: stored.recent }, None)
            }
            OwnFile::Damaged(problem) => {
                let of = path.display().to_string();
                match set_aside(&path) {
                    Ok(aside) => {
                        let words = say!("own-set-aside", path = of, problem, aside = aside.display().to_string());
                        (Self { path: Some(path), ..Self::default() }, Some(words))
                    }
                    Err(error) => {
                        let words = say!("own-not-set-aside", path = of, problem, error = error.to_string());
                        (Self::default(), Some(words))
                    }
                }
            }
        }
    }

    /// Changes the preferences.
    ///
    /// # Errors
    /// When they cannot be written; they hold as long as the window is open.
    pub fn prefer(&mut self, preferences: Preferences) -> Result<(), String> {
        self.preferences = preferences.within_limits();
        let wanted = self.preferences.clone();
        self.store(|stored| stored.preferences = wanted)
    }

    /// Remembers that a draft is open, or where it was left.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn note(&mut self, path: &Path, left: Option<Left>) -> Result<(), String> {
        // A path that is no text cannot be written down.
        let Some(path) = whole(path).to_str().map(PathBuf::from) else { return Ok(()) };
        let left = left.or_else(|| self.left(&path).cloned()).unwrap_or_default();
        self.store(|stored| {
            stored.recent.retain(|r| r.path != path);
            stored.recent.insert(0, Recent { path, when: now(), left });
            stored.recent.truncate(MOST);
        })
    }

    /// Forgets a draft that is not there any more.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn forget(&mut self, path: &Path) -> Result<(), String> {
        self.store(|stored| stored.recent.retain(|r| r.path != path))
    }

    /// Where a draft was left.
    pub fn left(&self, path: &Path) -> Option<&Left> {
        let path = whole(path);
        self.recent.iter().find(|r| r.path == path).map(|r| &r.left)
    }

    /// Changes what is in the file now: another window may have written it meanwhile.
    fn store(&mut self, change: impl FnOnce(&mut Stored)) -> Result<(), String> {
        let now = self.path.as_deref().map(stored);
        let mut next = match now {
            Some(OwnFile::Read(stored)) => stored,
            Some(OwnFile::Damaged(problem)) => {
                return Err(say!("own-unread", problem));
            }
            _ => Stored { version: VERSION, preferences: self.preferences.clone(), recent: self.recent.clone() },
        };
        change(&mut next);
        self.recent.clone_from(&next.recent);
        match &self.path {
            None => Ok(()),
            Some(path) => write_own(path, &next)
                .map_err(|e| say!("own-unwritten", path = path.display().to_string(), error = e.to_string())),
        }
    }
}

/// What is in the file; a file of a later version is none that this one can read.
fn stored(path: &Path) -> OwnFile<Stored> {
    match read_own::<Stored>(path) {
        OwnFile::Read(stored) if stored.version != VERSION => {
            OwnFile::Damaged(say!("own-version", version = stored.version, known = VERSION))
        }
        OwnFile::Read(mut stored) => {
            stored.preferences = stored.preferences.within_limits();
            stored.recent.truncate(MOST);
            OwnFile::Read(stored)
        }
        other => other,
    }
}

/// A path from the top, so that a draft is the same one from wherever it was opened.
fn whole(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| path.to_owned())
}
