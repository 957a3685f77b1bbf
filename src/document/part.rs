//! The parts of a draft by name, and the texts in them by address.

use std::fmt;

use crate::texts::say;

/// A named part of a draft.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The draft itself: its head and settings.
    Draft,
    /// A row of the chart.
    Row(String),
    /// A single body.
    Person(String),
    /// A size set.
    SizeSet(String),
    /// A named value.
    Value(String),
    /// A drawing.
    Drawing(String),
    /// A piece.
    Piece(String),
    /// A part of a piece or drawing: which one, what, its name.
    Inner(String, Inner, String),
    /// A placement.
    Placement(String),
    /// A seam.
    Seam(String),
    /// A joint.
    Joint(String),
    /// A condition.
    Condition(String),
    /// A finished measure.
    Measure(String),
    /// A material.
    Material(String),
    /// A strip.
    Strip(String),
    /// A notion.
    Notion(String),
    /// A view.
    View(String),
    /// A step of the booklet, by its place.
    Step(usize),
    /// A sheet.
    Sheet(String),
    /// What a person decided and is kept by name: places on the table, lay plans, silenced findings, the log.
    Kept,
}

/// What a part of a piece or drawing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Inner {
    /// A point.
    Point,
    /// An edge of the outline.
    Edge,
    /// A line inside.
    Line,
    /// A dart.
    Dart,
    /// A pleat.
    Pleat,
    /// A tuck.
    Tuck,
    /// A fold.
    Fold,
    /// A line at which the piece is lengthened.
    Lengthen,
    /// A slit.
    Slit,
    /// A mark.
    Mark,
}

impl Inner {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Point,
        Self::Edge,
        Self::Line,
        Self::Dart,
        Self::Pleat,
        Self::Tuck,
        Self::Fold,
        Self::Lengthen,
        Self::Slit,
        Self::Mark,
    ];

    /// Its word in files and for machines.
    pub fn word(self) -> &'static str {
        match self {
            Self::Point => "point",
            Self::Edge => "edge",
            Self::Line => "line",
            Self::Dart => "dart",
            Self::Pleat => "pleat",
            Self::Tuck => "tuck",
            Self::Fold => "fold",
            Self::Lengthen => "lengthen-shorten line",
            Self::Slit => "slit",
            Self::Mark => "mark",
        }
    }

    /// What it is, for whoever is at the program.
    pub fn words(self) -> String {
        match self {
            Self::Point => say!("thing-point"),
            Self::Edge => say!("thing-edge"),
            Self::Line => say!("thing-line"),
            Self::Dart => say!("thing-dart"),
            Self::Pleat => say!("thing-pleat"),
            Self::Tuck => say!("thing-tuck"),
            Self::Fold => say!("thing-fold"),
            Self::Lengthen => say!("thing-lengthen"),
            Self::Slit => say!("thing-slit"),
            Self::Mark => say!("thing-mark"),
        }
    }
}

impl Part {
    /// A point.
    pub fn point(frame: &str, name: &str) -> Self {
        Self::Inner(frame.to_owned(), Inner::Point, name.to_owned())
    }

    /// An edge.
    pub fn edge(frame: &str, name: &str) -> Self {
        Self::Inner(frame.to_owned(), Inner::Edge, name.to_owned())
    }

    /// The piece or drawing in whose coordinates its formulas stand.
    pub fn frame(&self) -> Option<&str> {
        match self {
            Self::Drawing(name) | Self::Piece(name) | Self::Inner(name, ..) => Some(name),
            _ => None,
        }
    }

    /// Its word in files and for machines.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Draft => "draft",
            Self::Row(_) => "row",
            Self::Person(_) => "person",
            Self::SizeSet(_) => "size set",
            Self::Value(_) => "value",
            Self::Drawing(_) => "drawing",
            Self::Piece(_) => "piece",
            Self::Inner(_, inner, _) => inner.word(),
            Self::Placement(_) => "placement",
            Self::Seam(_) => "seam",
            Self::Joint(_) => "joint",
            Self::Condition(_) => "condition",
            Self::Measure(_) => "measure",
            Self::Material(_) => "material",
            Self::Strip(_) => "strip",
            Self::Notion(_) => "notion",
            Self::View(_) => "view",
            Self::Step(_) => "booklet step",
            Self::Sheet(_) => "sheet",
            Self::Kept => "what is kept",
        }
    }

    /// What it is, for whoever is at the program.
    pub fn kind_words(&self) -> String {
        match self {
            Self::Draft => say!("thing-draft"),
            Self::Row(_) => say!("thing-row"),
            Self::Person(_) => say!("thing-person"),
            Self::SizeSet(_) => say!("thing-size-set"),
            Self::Value(_) => say!("thing-value"),
            Self::Drawing(_) => say!("thing-drawing"),
            Self::Piece(_) => say!("thing-piece"),
            Self::Inner(_, inner, _) => inner.words(),
            Self::Placement(_) => say!("thing-placement"),
            Self::Seam(_) => say!("thing-seam"),
            Self::Joint(_) => say!("thing-joint"),
            Self::Condition(_) => say!("thing-condition"),
            Self::Measure(_) => say!("thing-measure"),
            Self::Material(_) => say!("thing-material"),
            Self::Strip(_) => say!("thing-strip"),
            Self::Notion(_) => say!("thing-notion"),
            Self::View(_) => say!("thing-view"),
            Self::Step(_) => say!("thing-step"),
            Self::Sheet(_) => say!("thing-sheet"),
            Self::Kept => say!("thing-kept"),
        }
    }

    /// What it is and how it is called, for whoever is at the program. In files it is written as [`fmt::Display`] does.
    pub fn words(&self) -> String {
        let kind = self.kind_words();
        match self {
            Self::Inner(frame, _, name) => say!("thing-called", kind, name = format!("{frame}.{name}")),
            Self::Step(i) => say!("thing-called", kind, name = i + 1),
            _ if self.name().is_empty() => kind,
            _ => say!("thing-called", kind, name = self.name()),
        }
    }

    /// Its own name, empty where it has none.
    pub fn name(&self) -> &str {
        match self {
            Self::Draft | Self::Step(_) | Self::Kept => "",
            Self::Row(n) | Self::Person(n) | Self::SizeSet(n) | Self::Value(n) | Self::Drawing(n) | Self::Piece(n) => n,
            Self::Inner(_, _, n) | Self::Placement(n) | Self::Seam(n) | Self::Joint(n) | Self::Condition(n) => n,
            Self::Measure(n) | Self::Material(n) | Self::Strip(n) | Self::Notion(n) | Self::View(n) => n,
            Self::Sheet(n) => n,
        }
    }

    /// The part of this word and name, as [`fmt::Display`] writes it; parts of pieces and those without a name are left out.
    pub fn of_words(words: &str) -> Option<Self> {
        let kinds: [fn(String) -> Self; 15] = [
            Self::Row,
            Self::Person,
            Self::SizeSet,
            Self::Value,
            Self::Drawing,
            Self::Piece,
            Self::Placement,
            Self::Seam,
            Self::Joint,
            Self::Condition,
            Self::Measure,
            Self::Material,
            Self::Strip,
            Self::Notion,
            Self::View,
        ];
        kinds.iter().find_map(|kind| {
            let word = kind(String::new()).word();
            let name = words.strip_prefix(word)?.strip_prefix(' ')?;
            Some(kind(name.to_owned()))
        })
    }

    /// The same part under another name.
    pub fn renamed(&self, name: &str) -> Self {
        let mut out = self.clone();
        match &mut out {
            Self::Draft | Self::Step(_) | Self::Kept => {}
            Self::Row(n) | Self::Person(n) | Self::SizeSet(n) | Self::Value(n) | Self::Drawing(n) | Self::Piece(n) => {
                name.clone_into(n);
            }
            Self::Inner(_, _, n) | Self::Placement(n) | Self::Seam(n) | Self::Joint(n) | Self::Condition(n) => {
                name.clone_into(n);
            }
            Self::Measure(n) | Self::Material(n) | Self::Strip(n) | Self::Notion(n) | Self::View(n) => {
                name.clone_into(n);
            }
            Self::Sheet(n) => name.clone_into(n),
        }
        out
    }
}

impl fmt::Display for Part {
    /// `point front.tip`, `seam side`, `booklet step 3`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Inner(frame, inner, name) => write!(f, "{} {frame}.{name}", inner.word()),
            Self::Step(i) => write!(f, "{} {}", self.word(), i + 1),
            _ if self.name().is_empty() => f.write_str(self.word()),
            _ => write!(f, "{} {}", self.word(), self.name()),
        }
    }
}

/// A text in a part of a draft: the name of its field as in the file, and places where the field holds several.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Address {
    /// The part.
    pub part: Part,
    /// The field.
    pub field: &'static str,
    /// Which of several: a segment of an edge, a cell of a row, an edge of a seam's side.
    pub at: usize,
    /// Which within that: a point that a smooth segment passes.
    pub inner: usize,
}

impl Address {
    /// A field that there is once.
    pub fn new(part: Part, field: &'static str) -> Self {
        Self { part, field, at: 0, inner: 0 }
    }

    /// One of several.
    pub fn nth(part: Part, field: &'static str, at: usize) -> Self {
        Self { part, field, at, inner: 0 }
    }
}

/// What a text is, so that names in it can be followed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Role {
    /// Words for people.
    Words,
    /// The name of the part itself.
    OwnName,
    /// A formula in the frame of its part, or outside all of them.
    Formula,
    /// A formula in the frame of another piece or drawing.
    FormulaIn(String),
    /// A condition.
    Condition,
    /// Words with formulas in braces.
    Braces,
    /// The name of a part of the same piece or drawing.
    Own(Inner),
    /// The name of a part of the same piece or drawing, of whatever kind.
    OwnAny,
    /// The name of a part of another piece.
    OwnOf(Inner, String),
    /// The name of something that a step of a derived piece makes.
    Makes(Inner),
    /// What a step of a derived piece puts in front of names.
    Prefix,
    /// The name of a person.
    Person,
    /// The name of a value.
    Value,
    /// The name of a row.
    Row,
    /// The name of a piece or drawing.
    Frame,
    /// The name of a material.
    Material,
    /// The name of a sheet.
    Sheet,
    /// The name of a view.
    View,
    /// The name of a seam behind `after`.
    AfterSeam,
    /// The label of a size, or several joined by `/`.
    Label,
    /// How a finding calls what it speaks of.
    FindingPlace,
    /// The name of this part.
    NameOf(Part),
}
