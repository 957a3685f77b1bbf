//! The table of functions. Help, completion, checking and tests read it.

use super::kind::{Kind, What};
use crate::texts::{id, own, said, say};

/// What an argument must be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// One value.
    One(What),
    /// One value of the same kind as the first argument.
    AsFirst,
    /// One value of the same kind as the argument before.
    AsBefore,
    /// A list of the same kind as the first argument.
    ListAsFirst,
    /// A list of quantities of one kind, as long as the list before.
    ListAlongside,
    /// Like `One`, but each time of whatever frame.
    Each(What),
    /// A row of the chart, by its name.
    Row,
    /// Words in quotes.
    Words,
    /// One of these words.
    Word(&'static [&'static str]),
}

/// How an argument is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// By its place.
    Placed,
    /// By its place; may be left out.
    Optional,
    /// By its place, once or more often.
    Repeated,
    /// By its name.
    Named,
    /// By its name; may be left out.
    Choice,
}

/// What a function gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gives {
    /// A kind; of the arguments' frame if it has one.
    Kind(Kind),
    /// The kind of the first argument.
    First,
    /// The kind of the second argument.
    Second,
    /// The square root of the first argument's kind.
    Root,
    /// The kind in the last list.
    OfList,
}

/// A parameter of a function.
#[derive(Clone, Copy, Debug)]
pub struct Parameter {
    /// Its name.
    pub name: &'static str,
    /// What it must be.
    pub takes: Takes,
    /// How it is given.
    pub how: How,
}

impl Takes {
    /// In words: "a length".
    pub fn words(self) -> String {
        match self {
            Self::One(what) | Self::Each(what) => what.words(),
            Self::AsFirst => say!("takes-as-first"),
            Self::AsBefore => say!("takes-as-before"),
            Self::ListAsFirst => say!("takes-list-as-first"),
            Self::ListAlongside => say!("takes-list-alongside"),
            Self::Row => say!("takes-row"),
            Self::Words => say!("takes-words"),
            Self::Word(words) => words.join(", "),
        }
    }
}

impl Gives {
    /// In words: "a length".
    pub fn words(self) -> String {
        match self {
            Self::Kind(kind) => kind.words(),
            Self::First => say!("gives-as-first"),
            Self::Second => say!("gives-as-second"),
            Self::Root => say!("gives-root"),
            Self::OfList => say!("gives-of-list"),
        }
    }
}

/// A row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Signature {
    /// What the program calls.
    pub function: Function,
    /// Its name in formulas. Two rows may share one; the names of arguments tell them apart.
    pub name: &'static str,
    /// What it takes.
    pub parameters: &'static [Parameter],
    /// What it gives.
    pub gives: Gives,
    /// The id of the sentence that says what it is for.
    pub says: &'static str,
    /// A formula that shows it.
    pub example: &'static str,
}

impl Signature {
    /// What it is for, in one sentence.
    pub fn sentence(&self) -> String {
        said(own(), self.says, &[])
    }
}

const ANY_FRAME: super::Frame = super::Frame(0);
const NUM: What = What::Kind(Kind::NUMBER);
const LEN: What = What::Kind(Kind::LENGTH);
const ANG: What = What::Kind(Kind::Angle);
const OFF: What = What::Kind(Kind::Offset);
const YES: What = What::Kind(Kind::Truth);
const PT: What = What::Kind(Kind::Point(ANY_FRAME));
const LINE: What = What::Kind(Kind::Line(ANY_FRAME));
const EDGE: What = What::Kind(Kind::Edge(ANY_FRAME));
const PIECE: What = What::Kind(Kind::Piece(ANY_FRAME));
const PATH: What = What::Path;
const THING: What = What::Thing;

/// The sides on which the outermost answer can be asked for.
pub const SIDES: &[&str] = &["left", "right", "above", "below"];
/// The ways round an arc.
pub const TURNS: &[&str] = &["clockwise", "anticlockwise"];

const NEAREST: Parameter = choice("nearest", Takes::One(PT));
const FROM: Parameter = choice("from", Takes::One(PT));
const SIDE: Parameter = choice("side", Takes::Word(SIDES));

const fn at(name: &'static str, what: What) -> Parameter {
    Parameter { name, takes: Takes::One(what), how: How::Placed }
}
const fn named(name: &'static str, what: What) -> Parameter {
    Parameter { name, takes: Takes::One(what), how: How::Named }
}
const fn choice(name: &'static str, takes: Takes) -> Parameter {
    Parameter { name, takes, how: How::Choice }
}
const fn other(name: &'static str, takes: Takes, how: How) -> Parameter {
    Parameter { name, takes, how }
}

macro_rules! functions {
    ($($(#[$doc:meta])* $function:ident $name:literal ($($parameter:expr),*) -> $gives:expr, id!($says:literal), $example:literal;)*) => {
        /// What a program can call.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Function { $(#[doc = concat!("`", $name, "`.")] $function,)* }

        /// All functions.
        pub const FUNCTIONS: &[Signature] = &[$(Signature {
            function: Function::$function, name: $name, parameters: &[$($parameter),*], gives: $gives,
            says: id!($says), example: $example,
        },)*];
    };
}

functions! {
    Abs "abs" (at("value", What::Quantity)) -> Gives::First,
        id!("function-abs"), "abs(3 cm - 5 cm)";
    Min "min" (at("value", What::Quantity), other("other", Takes::AsFirst, How::Repeated)) -> Gives::First,
        id!("function-min"), "min(3 cm, 1 in)";
    Max "max" (at("value", What::Quantity), other("other", Takes::AsFirst, How::Repeated)) -> Gives::First,
        id!("function-max"), "max(3 cm, 1 in)";
    Round "round" (at("value", What::Quantity), other("step", Takes::AsFirst, How::Optional)) -> Gives::First,
        id!("function-round"), "round(17.3 cm, 5 mm)";
    Sqrt "sqrt" (at("value", What::Quantity)) -> Gives::Root,
        id!("function-sqrt"), "sqrt(3 cm * 12 cm)";
    Sin "sin" (at("angle", ANG)) -> Gives::Kind(Kind::NUMBER), id!("function-sin"), "sin(30 deg)";
    Cos "cos" (at("angle", ANG)) -> Gives::Kind(Kind::NUMBER), id!("function-cos"), "cos(60 deg)";
    Tan "tan" (at("angle", ANG)) -> Gives::Kind(Kind::NUMBER), id!("function-tan"), "tan(45 deg)";
    Asin "asin" (at("ratio", NUM)) -> Gives::Kind(Kind::Angle), id!("function-asin"), "asin(1/2)";
    Acos "acos" (at("ratio", NUM)) -> Gives::Kind(Kind::Angle), id!("function-acos"), "acos(1/2)";
    Atan "atan" (at("ratio", NUM)) -> Gives::Kind(Kind::Angle), id!("function-atan"), "atan(1)";
    If "if" (at("condition", YES), at("then", What::Any), other("otherwise", Takes::AsBefore, How::Placed)) -> Gives::Second,
        id!("function-if"), "if(3 cm > 1 in, 8 mm, 5 mm)";
    Near "near" (at("one", What::Quantity), other("other", Takes::AsFirst, How::Placed), other("tolerance", Takes::AsFirst, How::Placed)) -> Gives::Kind(Kind::Truth),
        id!("function-near"), "near(25.4 mm, 1 in, 0.1 mm)";
    Graded "graded" (at("by", What::Quantity), other("at", Takes::ListAsFirst, How::Named), other("give", Takes::ListAlongside, How::Named)) -> Gives::OfList,
        id!("function-graded"), "graded(92 cm, at: [88 cm, 110 cm], give: [2 cm, 3 cm])";
    Offset "offset" (at("right", LEN), at("down", LEN)) -> Gives::Kind(Kind::Offset),
        id!("function-offset"), "offset(3 cm, -5 mm)";
    Right "right" (at("point", PT), at("by", LEN)) -> Gives::First, id!("function-right"), "(0 cm, 0 cm).right(3 cm)";
    Left "left" (at("point", PT), at("by", LEN)) -> Gives::First, id!("function-left"), "(0 cm, 0 cm).left(3 cm)";
    Down "down" (at("point", PT), at("by", LEN)) -> Gives::First, id!("function-down"), "(0 cm, 0 cm).down(8 cm)";
    Up "up" (at("point", PT), at("by", LEN)) -> Gives::First, id!("function-up"), "(0 cm, 0 cm).up(2 cm)";
    Polar "polar" (at("point", PT), at("angle", ANG), at("distance", LEN)) -> Gives::First,
        id!("function-polar"), "(0 cm, 0 cm).polar(20 deg, 13 cm)";
    Moved "moved" (at("thing", THING), at("by", OFF)) -> Gives::First, id!("function-moved"), "(0 cm, 0 cm).moved(offset(3 cm, 1 cm))";
    OnWay "on_way" (at("from", PT), at("to", PT), at("place", What::Place)) -> Gives::First,
        id!("function-on-way"), "on_way((0 cm, 0 cm), (9 cm, 0 cm), 1/3)";
    Halfway "halfway" (at("one", PT), at("other", PT)) -> Gives::First, id!("function-halfway"), "halfway((0 cm, 0 cm), (9 cm, 0 cm))";
    Turned "turned" (at("thing", THING), at("about", PT), at("by", ANG)) -> Gives::First,
        id!("function-turned"), "(5 cm, 0 cm).turned((0 cm, 0 cm), 90 deg)";
    TurnedLeg "turned" (at("thing", THING), at("about", PT), named("from", PT), named("to", PT)) -> Gives::First,
        id!("function-turned-leg"), "(5 cm, 0 cm).turned((0 cm, 0 cm), from: (1 cm, 0 cm), to: (0 cm, 1 cm))";
    Mirrored "mirrored" (at("thing", THING), at("in", LINE)) -> Gives::First, id!("function-mirrored"), "(5 cm, 2 cm).mirrored(level((0 cm, 0 cm)))";
    Foot "foot" (at("point", PT), at("on", PATH)) -> Gives::First, id!("function-foot"), "(5 cm, 2 cm).foot(plumb((0 cm, 0 cm)))";
    Line "line" (at("one", PT), at("other", PT)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-line"), "line((0 cm, 0 cm), (5 cm, 2 cm))";
    Level "level" (at("point", PT)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-level"), "level((0 cm, 3 cm))";
    Plumb "plumb" (at("point", PT)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-plumb"), "plumb((3 cm, 0 cm))";
    Through "through" (at("point", PT), named("square_to", LINE)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-through"), "through((3 cm, 0 cm), square_to: level((0 cm, 0 cm)))";
    ThroughParallel "through" (at("point", PT), named("parallel_to", LINE)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-through-parallel"), "through((3 cm, 0 cm), parallel_to: level((0 cm, 0 cm)))";
    ThroughHeading "through" (at("point", PT), named("heading", ANG)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-through-heading"), "through((3 cm, 0 cm), heading: 20 deg)";
    Along "along" (at("edge", EDGE), at("place", What::Place)) -> Gives::Kind(Kind::Line(ANY_FRAME)), id!("function-along"), "between((0 cm, 0 cm), (3 cm, 4 cm)).along(1/2)";
    Bisect "bisect" (at("from", PT), at("corner", PT), at("to", PT), at("distance", LEN)) -> Gives::First, id!("function-bisect"), "bisect((4 cm, 0 cm), (0 cm, 0 cm), (0 cm, 4 cm), 3 cm)";
    Parallel "parallel" (at("line", LINE), at("distance", LEN)) -> Gives::First, id!("function-parallel"), "parallel(level((0 cm, 0 cm)), 2 cm)";
    Swing "swing" (at("centre", PT), at("length", LEN), at("onto", PATH), NEAREST, FROM, SIDE) -> Gives::First, id!("function-swing"), "swing((0 cm, 0 cm), 5 cm, level((0 cm, 3 cm)), side: right)";
    Touch "touch" (at("point", PT), at("edge", EDGE), NEAREST, FROM, SIDE) -> Gives::First, id!("function-touch"), "touch((5 cm, 0 cm), circle((0 cm, 0 cm), 3 cm), side: below)";
    Cross "cross" (at("one", PATH), at("other", PATH), NEAREST, FROM, SIDE) -> Gives::Kind(Kind::Point(ANY_FRAME)), id!("function-cross"), "cross(level((0 cm, 3 cm)), plumb((2 cm, 0 cm)))";
    X "x" (at("of", What::PointOrOffset)) -> Gives::Kind(Kind::LENGTH), id!("function-x"), "(3 cm, 1 cm).x";
    Y "y" (at("of", What::PointOrOffset)) -> Gives::Kind(Kind::LENGTH), id!("function-y"), "(3 cm, 1 cm).y";
    Gap "gap" (at("one", PT), at("other", PT)) -> Gives::Kind(Kind::LENGTH), id!("function-gap"), "gap((0 cm, 0 cm), (3 cm, 4 cm))";
    Heading "heading" (at("from", PT), at("to", PT)) -> Gives::Kind(Kind::Angle), id!("function-heading"), "heading((0 cm, 0 cm), (0 cm, 4 cm))";
    HeadingOf "heading" (at("line", LINE)) -> Gives::Kind(Kind::Angle), id!("function-heading-of"), "heading(plumb((0 cm, 0 cm)))";
    Angle "angle" (at("from", PT), at("corner", PT), at("to", PT)) -> Gives::Kind(Kind::Angle), id!("function-angle"), "angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, 1 cm))";
    CornerAngle "corner_angle" (at("one", PT), at("corner", PT), at("other", PT)) -> Gives::Kind(Kind::Angle), id!("function-corner-angle"), "corner_angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, 1 cm))";
    Between "between" (at("one", PT), at("other", PT)) -> Gives::Kind(Kind::Edge(ANY_FRAME)), id!("function-between"), "between((0 cm, 0 cm), (3 cm, 4 cm))";
    Arc "arc" (at("centre", PT), at("from", PT), at("to", PT), choice("turn", Takes::Word(TURNS))) -> Gives::Kind(Kind::Edge(ANY_FRAME)), id!("function-arc"), "arc((0 cm, 0 cm), (3 cm, 0 cm), (0 cm, 3 cm))";
    Circle "circle" (at("centre", PT), at("radius", LEN)) -> Gives::Kind(Kind::Edge(ANY_FRAME)), id!("function-circle"), "circle((0 cm, 0 cm), 3 cm)";
    SetOff "set_off" (at("edge", EDGE), at("distance", LEN)) -> Gives::First, id!("function-set-off"), "set_off(between((0 cm, 0 cm), (3 cm, 4 cm)), 5 mm)";
    SetOffRunning "set_off" (at("edge", EDGE), named("from", LEN), named("to", LEN)) -> Gives::First, id!("function-set-off-running"), "set_off(between((0 cm, 0 cm), (3 cm, 4 cm)), from: 0 mm, to: 2 mm)";
    Length "length" (at("edge", EDGE)) -> Gives::Kind(Kind::LENGTH), id!("function-length"), "length(between((0 cm, 0 cm), (3 cm, 4 cm)))";
    FlatLength "flat_length" (at("edge", EDGE)) -> Gives::Kind(Kind::LENGTH), id!("function-flat-length"), "flat_length(between((0 cm, 0 cm), (3 cm, 4 cm)))";
    At "at" (at("edge", EDGE), at("place", What::Place)) -> Gives::Kind(Kind::Point(ANY_FRAME)), id!("function-at"), "between((0 cm, 0 cm), (3 cm, 4 cm)).at(1/2)";
    Off "off" (at("edge", EDGE), at("place", What::Place), at("distance", LEN)) -> Gives::Kind(Kind::Point(ANY_FRAME)), id!("function-off"), "hem.off(1/2, 4 cm)";
    Place "place" (at("edge", EDGE), at("point", PT)) -> Gives::Kind(Kind::LENGTH), id!("function-place"), "place(between((0 cm, 0 cm), (9 cm, 0 cm)), (3 cm, 0 cm))";
    Bend "bend" (at("edge", EDGE), at("place", What::Place)) -> Gives::Kind(Kind::Quantity(-1)), id!("function-bend"), "bend(circle((0 cm, 0 cm), 3 cm), 1/2)";
    Area "area" (at("piece", PIECE)) -> Gives::Kind(Kind::Quantity(2)), id!("function-area"), "area(front)";
    Width "width" (at("piece", PIECE), at("line", LINE)) -> Gives::Kind(Kind::LENGTH), id!("function-width"), "width(front, level(front.hip))";
    Girth "girth" (other("line", Takes::Each(LINE), How::Repeated)) -> Gives::Kind(Kind::LENGTH), id!("function-girth"), "girth(level(front.hip), level(back.hip))";
    InSize "in_size" (other("row", Takes::Row, How::Placed), other("size", Takes::Words, How::Placed)) -> Gives::First, id!("function-in-size"), "in_size(bust, \"88\")";
    Reversed "reversed" (at("edge", EDGE)) -> Gives::First, id!("function-reversed"), "reversed(between((0 cm, 0 cm), (3 cm, 4 cm)))";
    Copy "copy" (at("edge", EDGE)) -> Gives::First, id!("function-copy"), "copy(between((0 cm, 0 cm), (3 cm, 4 cm)))";
    LiesIn "lies_in" (at("point", PT), at("outline", EDGE)) -> Gives::Kind(Kind::Truth), id!("function-lies-in"), "lies_in((1 cm, 0 cm), circle((0 cm, 0 cm), 3 cm))";
    KeptIn "kept_in" (at("thing", THING), at("outline", EDGE)) -> Gives::First, id!("function-kept-in"), "kept_in(between((-5 cm, 0 cm), (0 cm, 0 cm)), circle((0 cm, 0 cm), 3 cm))";
    Part "part" (at("edge", EDGE), at("from", PT), at("to", PT)) -> Gives::First, id!("function-part"), "part(between((0 cm, 0 cm), (9 cm, 0 cm)), (3 cm, 0 cm), (5 cm, 0 cm))";
}
