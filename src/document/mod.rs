//! What a person typed: the draft as inert, comparable data.
//!
//! Nothing here can be computed from anything else here; formulas are kept as the text that was typed. Reading and
//! writing files is `file`'s, meaning is `compute`'s. Every part of a draft has its place from the first format on,
//! also those that nothing computes yet.
//!
//! The written form leaves out whatever is empty, zero or `false`, so every type is `Default` and an absent field is
//! the empty one. No `Option`: emptiness says it.

mod care;
mod chart;
mod draft;
mod name;
mod part;
mod piece;
mod publish;
mod seam;
mod step;
mod taken;
mod texts;
mod value;

pub use care::{Care, GirthPlace, RuleGirth, Wearers, WornAs};
pub use chart::{Axis, Cell, Chart, Person, Row, RowKind, SizeSet};
pub use draft::{Audience, Draft, DraftSettings, Silence};
pub use name::{MAX_NAME_LETTERS, NameFault, OWN_LETTER, check_label, check_name, fold, normal};
pub use part::{Address, Inner, Part, Role};
pub use piece::{
    Allowance, Corner, CornerForm, Cut, Dart, DartForm, Drawing, Edge, Face, Fold, Grain, GrainWays, Label, Mark,
    MarkKind, Outline, Piece, PinnedLine, Placement, Point, Pressed, Segment, Tuck, Turn,
};
pub use publish::{
    BookletStep, ClothLaid, FittingNote, LaidPiece, LaidSize, LayPlan, Log, Material, MaterialKind, Nap, Notion,
    Picture, Release, Sheet, Shrinks, StepPicture, Strip, StripGrain, StripInLay, StripKind, StripPlace, TablePlace,
    View,
};
pub use seam::{Condition, Fit, Joint, Measure, Notch, Seam, SeamPressed, Side, Stretch};
pub use step::{
    AddStrip, CutOff, Does, Draw, EdgeShare, Join, MoveDart, MoveEdge, Opening, Redraw, Share, Spread, Step, StripEnds,
    ToCutLine, Unfold,
};
pub use taken::{TakenBlock, TakenPart};
pub use texts::Visit;
pub use value::Value;

/// The word at the head of every draft file.
pub const FORMAT: &str = "tracewheel draft";
/// The version that this program writes and the newest it reads. It stays 0 until a release.
pub const VERSION: u32 = 0;

/// `true` where a field holds its type's default, so that it can be left out of the file.
fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}
