//! What a release is made of, as it stands in its folder: `release.ron`.

use std::path::Path;

use serde::{Deserialize, Serialize};

use super::ReleaseStop;
use crate::file::{from_ron, sha256, to_ron};
use crate::texts::say;

/// The name of that file.
pub const MANIFEST: &str = "release.ron";
/// The name of the draft beside it.
pub const DRAFT: &str = "draft.ron";
/// Most bytes of it that are read.
const MOST: usize = 16 << 20;
/// What its first field says.
const FORMAT: &str = "tracewheel release";

/// What a release is made of.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Manifest {
    /// Always `tracewheel release`.
    pub format: String,
    /// The program that wrote it.
    pub program: String,
    /// Its version.
    pub version: String,
    /// What the pattern is called.
    pub title: String,
    /// The edition.
    pub edition: String,
    /// The date of the edition.
    pub date: String,
    /// The edition before it; empty: none.
    pub after: String,
    /// The sizes.
    pub sizes: Vec<String>,
    /// Those of which the draft's log tells no fitting. For who publishes; not told to buyers.
    pub never_sewn: Vec<String>,
    /// Warnings that proof told when it was released.
    pub warnings: usize,
    /// Notes that it told.
    pub notes: usize,
    /// The headings of the cautions.
    pub cautions: Vec<String>,
    /// All files but this one.
    pub files: Vec<ReleasedFile>,
    /// SHA-256 of this text with nothing between these quotes.
    pub seal: String,
}

/// A file of a release.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct ReleasedFile {
    /// Its name from the folder of the release on, `/` between.
    pub name: String,
    /// Its kind, as on the command line; empty: it belongs to the release itself.
    pub kind: String,
    /// Its view.
    pub view: String,
    /// The sizes in it.
    pub sizes: Vec<String>,
    /// How many bytes it has.
    pub bytes: usize,
    /// Their SHA-256.
    pub sha256: String,
    /// Digests of its pages without edition, date and contact.
    pub pages: Vec<String>,
    /// What its pages call themselves, the first page by nothing; empty where they go by their numbers.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub page_names: Vec<String>,
    /// The digest of all that it holds without edition, date and contact; empty where that is not known.
    pub content: String,
}

impl ReleasedFile {
    /// A file of these bytes.
    pub fn of(name: String, content: &[u8]) -> Self {
        Self { name, bytes: content.len(), sha256: sha256(content), ..Self::default() }
    }
}

impl Manifest {
    /// The text of the file, sealed.
    ///
    /// # Errors
    /// It cannot be written as RON.
    pub fn text(&self) -> Result<String, ReleaseStop> {
        let own = Self { format: FORMAT.to_owned(), seal: String::new(), ..self.clone() };
        let text = to_ron(&own).map_err(|e| ReleaseStop::Manifest { path: MANIFEST.into(), problem: e.to_string() })?;
        let seal = sha256(text.as_bytes());
        Ok(with_seal(&text, &seal).unwrap_or(text))
    }

    /// Reads the file of a release's folder.
    ///
    /// # Errors
    /// When there is none, when it cannot be read, and when it is not as it was written.
    pub fn read(folder: &Path) -> Result<(Self, String), ReleaseStop> {
        let path = folder.join(MANIFEST);
        let stop = |problem: String| ReleaseStop::Manifest { path: path.clone(), problem };
        let about = std::fs::metadata(&path).map_err(|e| match e.kind() {
            std::io::ErrorKind::NotFound => stop(say!("manifest-missing")),
            _ => stop(e.to_string()),
        })?;
        if about.len() > MOST as u64 {
            return Err(stop(say!("manifest-bytes", most = MOST)));
        }
        let bytes = std::fs::read(&path).map_err(|e| stop(e.to_string()))?;
        let text = String::from_utf8(bytes).map_err(|_| stop(say!("manifest-utf8")))?;
        let manifest: Self = from_ron(&text).map_err(stop)?;
        if manifest.format != FORMAT {
            return Err(stop(say!("manifest-format", format = FORMAT)));
        }
        let open = with_seal(&text, "").ok_or_else(|| stop(say!("manifest-no-seal")))?;
        if sha256(open.as_bytes()) != manifest.seal {
            return Err(stop(say!("manifest-seal")));
        }
        if let Some(file) = manifest.files.iter().find(|f| !is_inside(&f.name)) {
            return Err(stop(say!("manifest-outside", file = format!("{:?}", file.name))));
        }
        Ok((manifest, text))
    }
}

/// The text with another seal.
fn with_seal(text: &str, seal: &str) -> Option<String> {
    const BEFORE: &str = "seal: \"";
    // The last field: a title that holds such words stands before it.
    let at = text.rfind(BEFORE)? + BEFORE.len();
    let end = at + text[at..].find('"')?;
    Some(format!("{}{seal}{}", &text[..at], &text[end..]))
}

/// Whether a name leads to a file within the folder.
fn is_inside(name: &str) -> bool {
    !name.is_empty() && !name.contains(['\\', ':', '\0']) && name.split('/').all(|p| !matches!(p, "" | "." | ".."))
}
