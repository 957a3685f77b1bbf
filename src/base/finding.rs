//! A finding: something that a person should know about the content of a draft.

use super::{Code, Span};

/// How bad it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Something published would be wrong or missing.
    Error,
    /// A person must look at it.
    Warning,
    /// Told once.
    Note,
}

impl Severity {
    /// Its word, as in the machine contract.
    pub fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Note => "note",
        }
    }
}

/// What a finding speaks of. Empty: nothing of that kind.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// A piece (or drawing).
    pub piece: String,
    /// An edge of it.
    pub edge: String,
    /// A seam.
    pub seam: String,
    /// A view.
    pub view: String,
    /// The thing itself as it is written in formulas or in the file: `front.armhole`, `chart.bust`, `seam.side`.
    pub name: String,
}

/// A number of a finding, for each of its sizes, or one for all of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// What it is (`one`, `two`, `excess`).
    pub name: &'static str,
    /// Its unit: `mm`, `deg` or empty.
    pub unit: &'static str,
    /// The numbers, in the order of the finding's sizes; a single one holds for all.
    pub by_size: Vec<f64>,
}

/// Named words of a finding that its message speaks.
pub type Words = Vec<(&'static str, String)>;

/// A proposal: the formula's text with this span replaced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mend {
    /// What is replaced.
    pub span: Span,
    /// By what.
    pub by: String,
}

/// A finding. Its message is made by `texts::message`, of the text of its code and the named words and numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// What kind.
    pub code: Code,
    /// What it speaks of.
    pub place: Place,
    /// Size addresses in file order; empty: not a matter of sizes.
    pub sizes: Vec<String>,
    /// Which of the sizes the message speaks of: the worst one.
    pub worst: usize,
    /// Named numbers.
    pub amounts: Vec<Amount>,
    /// Named words.
    pub words: Words,
    /// The text of the formula, if it is one.
    pub formula: String,
    /// Where in that text.
    pub span: Option<Span>,
    /// How to mend it.
    pub mend: Option<Mend>,
    /// The reason why a person silenced it.
    pub silenced: Option<String>,
}

impl Finding {
    /// A finding of a kind, about nothing yet.
    pub fn new(code: Code) -> Self {
        Self {
            code,
            place: Place::default(),
            sizes: Vec::new(),
            worst: 0,
            amounts: Vec::new(),
            words: Vec::new(),
            formula: String::new(),
            span: None,
            mend: None,
            silenced: None,
        }
    }

    /// About the thing of this name.
    pub fn at(mut self, name: impl Into<String>) -> Self {
        self.place.name = name.into();
        self
    }

    /// About this piece.
    pub fn piece(mut self, piece: impl Into<String>) -> Self {
        self.place.piece = piece.into();
        self
    }

    /// About this edge.
    pub fn edge(mut self, edge: impl Into<String>) -> Self {
        self.place.edge = edge.into();
        self
    }

    /// About this seam.
    pub fn seam(mut self, seam: impl Into<String>) -> Self {
        self.place.seam = seam.into();
        self
    }

    /// With a word.
    pub fn word(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.words.push((name, text.into()));
        self
    }

    /// With a length in millimetres.
    pub fn mm(mut self, name: &'static str, value: f64) -> Self {
        self.amounts.push(Amount { name, unit: "mm", by_size: vec![value] });
        self
    }

    /// The same for these sizes only; `None` if it has sizes and none of them is among them.
    pub fn only(&self, wanted: &dyn Fn(&str) -> bool) -> Option<Self> {
        let kept: Vec<usize> = (0..self.sizes.len()).filter(|i| wanted(&self.sizes[*i])).collect();
        if kept.len() == self.sizes.len() {
            return Some(self.clone());
        }
        let mut out = self.clone();
        out.sizes = kept.iter().map(|i| self.sizes[*i].clone()).collect();
        for amount in &mut out.amounts {
            if amount.by_size.len() == self.sizes.len() {
                amount.by_size = kept.iter().map(|i| amount.by_size[*i]).collect();
            }
        }
        let last = |i: usize| out.amounts.last().and_then(|a| a.by_size.get(i)).map_or(0.0, |v| v.abs());
        out.worst = (0..kept.len()).reduce(|best, i| if last(i) > last(best) { i } else { best })?;
        Some(out)
    }

    /// How bad it is.
    pub fn severity(&self) -> Severity {
        self.code.severity()
    }
}
