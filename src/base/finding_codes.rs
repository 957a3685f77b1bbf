//! The table of findings: each with its code, how bad it is, one sentence for the help and the words of its message.

use super::Severity;

macro_rules! codes {
    ($($name:ident $severity:ident $code:literal $sentence:literal $template:literal;)*) => {
        /// What kind of finding it is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code { $(#[doc = $sentence] $name,)* }

        impl Code {
            /// All of them, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// Its word in files and reports.
            pub fn word(self) -> &'static str {
                match self { $(Self::$name => $code,)* }
            }

            /// How bad it is.
            pub fn severity(self) -> Severity {
                match self { $(Self::$name => Severity::$severity,)* }
            }

            /// What it means, in one sentence.
            pub fn sentence(self) -> &'static str {
                match self { $(Self::$name => $sentence,)* }
            }

            /// The words of its message, with `{names}` for what is filled in.
            pub fn template(self) -> &'static str {
                match self { $(Self::$name => $template,)* }
            }
        }
    };
}

codes! {
    // Reading a formula.
    FormulaEmpty Error "formula-empty" "A formula is needed here." "a formula is needed here: {expected}";
    FormulaLong Error "formula-long" "A formula is longer than the limit." "the formula has {count} letters; at most {limit} are read";
    FormulaDeep Error "formula-deep" "A formula has more brackets inside each other than the limit." "more than {limit} brackets stand inside each other here";
    UnknownSign Error "unknown-sign" "A sign is not part of the language." "the sign {found} has no meaning here";
    Unexpected Error "unexpected" "Something stands where something else is needed." "{found} stands where {expected} is needed";
    BracketOpen Error "bracket-open" "A bracket is not closed." "this bracket is never closed";
    NumberBad Error "number-bad" "A number cannot be read." "{found} is not a number that can be read: {problem}";
    UnknownName Error "unknown-name" "A name is not known." "nothing is called {name} here{hint}";
    AmbiguousName Error "ambiguous-name" "A name could mean two things." "{name} could mean {choices}; write which one";
    UnknownFunction Error "unknown-function" "A function is not known." "there is no function {name}{hint}";
    WrongArguments Error "wrong-arguments" "A function is given the wrong things." "{function}: {problem}";
    UnitMissing Error "unit-missing" "A plain number stands where a length is needed." "{found} has no unit here{hint}";
    KindsDiffer Error "kinds-differ" "Two things of different kinds cannot be put together." "{problem}";
    WrongKind Error "wrong-kind" "A formula gives another kind of thing than is needed." "this is {found}; {expected} is needed here";
    OtherFrame Error "other-frame" "A point of another piece is used without being laid." "{name} lies on {other}, not on {frame}; lay {other} on {frame} by a placement first";

    // Names and the shape of the draft.
    NameBad Error "name-bad" "A name cannot be used." "{name} cannot be a name: {problem}";
    NameTwice Error "name-twice" "Two things have one name." "{name} is the name of two things: {first} and {second}; rename one";
    PartMissing Error "part-missing" "A part lacks something it needs." "{problem}";
    PartUnknown Error "part-unknown" "A part names something that is not there." "there is no {what} called {name}{hint}";
    ValueTwice Error "value-twice" "A value is both given and to be found." "{name} has a formula and a start; keep one: a value is either given or found";
    SettingBad Error "setting-bad" "A draft setting cannot be used." "the setting {name} must be {expected} above zero";
    NotUsedYet Note "not-used-yet" "A part is kept, but nothing computes it yet." "{what}: kept in the file as written, but this version computes nothing from it";

    // The chart.
    NoSizes Error "no-sizes" "The chart has no sizes." "the chart has no sizes; add one before anything can be computed";
    SizeTwice Error "size-twice" "Two sizes have one label." "the label {name} stands twice on the {axis} axis";
    BaseUnknown Error "base-unknown" "The base is not a size of the chart." "the base {name} is not one of the sizes{hint}";
    CellUnknown Error "cell-unknown" "A cell is keyed by a size that is not there." "a cell of {row} is for {name}, which is not a size of the chart{hint}";
    CellTwice Error "cell-twice" "A row has two cells for one size." "{row} has two cells for {name}";
    CellMissing Error "cell-missing" "A row has no number for a size and nothing to propose one from." "{row} has no cell here, no formula, and no neighbours to propose a number from";
    CellGuessed Warning "cell-guessed" "A number was proposed between its neighbours." "{row} has no cell here: {guess} is guessed between {before} and {after}; confirm it or type the right one";
    CellBeyond Warning "cell-beyond" "A number was proposed beyond the last cell." "{row} has no cell here: {guess} is extrapolated beyond {before}; confirm it or type the right one";
    PersonLacks Warning "person-lacks" "A person has no number for a row." "no {row} was taken of this person; what needs it is not computed for them";
    RowKind Error "row-kind" "A row holds two kinds of numbers." "this cell is {found}; the first cell of {row} is {expected}";

    // Computing.
    Circular Error "circular" "Formulas need each other in a circle." "these need each other in a circle: {members}; one of them must be given, or found";
    CircularFound Error "circular-found" "The start or a limit of a found value needs the value itself." "the {part} of {name} needs what {name} is to find: {members}";
    NotFinite Error "not-finite" "A formula has no finite result." "this has no finite result: {problem}";
    OffTheEdge Error "off-the-edge" "A place lies outside its edge." "{at} is outside {edge}, which is {length} long";
    NotOnEdge Error "not-on-edge" "A point does not lie on the edge." "the point is {distance} away from {edge}";
    NoAnswer Error "no-answer" "A construction has no answer." "{problem}";
    SeveralAnswers Error "several-answers" "A construction has several answers." "this has {count} answers; say which one by `nearest:` a point, `from:` a point along the way, or `side:` left, right, above, below";
    InsideMouth Error "inside-mouth" "A place lies in the mouth of a dart, pleat or tuck." "the place falls into the mouth of {dart}";
    Internal Error "internal" "The program failed while computing." "the program failed here ({problem}); the draft is whole. Please report it with the file";

    // Pieces.
    RingOpen Error "ring-open" "The edges of a piece do not close to an outline." "{edge} ends at {end}, but {next} starts at {start}";
    ArcUneven Error "arc-uneven" "The ends of an arc are not equally far from its centre." "the start is {start} from the centre, the end {end}";
    TakenApart Error "taken-apart" "A taken curve does not start or end at the named point." "the curve's {which} is {distance} away from {point}";
    EdgeBroken Error "edge-broken" "An edge has no length or crosses itself in its definition." "{problem}";
    DartOff Error "dart-off" "The mouth of a dart, pleat or tuck does not lie on its edge." "the mouth of {dart} does not lie on {edge}: {problem}";
    DartOverlap Error "dart-overlap" "Two mouths on one edge overlap." "the mouths of {dart} and {other} overlap on {edge}";
    NotSmooth Warning "not-smooth" "A joint that is declared smooth is bent." "{edge} is bent by {angle} at {point}, where it is declared smooth";

    // Seams and found values.
    RunBroken Error "run-broken" "The edges of a seam's side do not follow one another." "{edge} starts {distance} away from where {before} ends{hint}";
    SeamLength Error "seam-length" "The two sides of a seam do not fit." "{seam}: {longer} is {difference} longer than {shorter}, meant {meant}: {excess}, limit {limit}";
    JointBent Warning "joint-bent" "A line is bent where it runs over a seam." "over {seam} the line {lines} makes {angle}, meant {meant}: {gap} off at 10 mm, limit {limit}";
    ConditionFails Error "condition-fails" "A condition does not hold." "{condition}: {left} against {right}, {difference} off";
    WatchFails Warning "watch-fails" "A comparison that is watched does not hold." "{condition}: {left} against {right}";
    NotTrue Error "not-true" "Equations cannot hold together." "{conditions} cannot hold{together}: {excess} off at the nearest fit of {values}{hint}";
    LimitInWay Error "limit-in-way" "A limit of a found value keeps an equation from holding." "{conditions} cannot hold: {value} stops at its {limit}, {excess} off";
    NoEffect Error "no-effect" "A found value cannot change the seam or condition it is to keep true." "{value} cannot change {conditions}: {problem}";
    NotSolved Error "not-solved" "The search for found values did not come to an end." "no values found for {values} within {count} tries; the nearest fit is {excess} off";
    NothingFixes Warning "nothing-fixes" "No seam or condition fixes a found value." "nothing fixes {value}; it stays at its start";
    TwoSolutions Note "two-solutions" "Found values have a second solution, which goes on from a neighbouring size." "{value} has two solutions here: {taken} is taken, reached from its start; {other} would go on from size {neighbour}, so look which is meant and move the start or a limit";
    StartOutside Warning "start-outside" "The start of a found value lies outside its limits." "the start of {value} lies outside its limits; the nearest limit is taken";
    LimitsCrossed Error "limits-crossed" "The least of a found value is above its most." "the least of {value} is above its most";
}

impl Code {
    /// The code whose word this is.
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|code| code.word() == word)
    }

    /// Whether a person may silence it. What cannot be computed or is not true cannot be silenced.
    pub fn can_be_silenced(self) -> bool {
        matches!(
            self,
            Self::SeamLength
                | Self::JointBent
                | Self::NotSmooth
                | Self::WatchFails
                | Self::CellGuessed
                | Self::CellBeyond
                | Self::NothingFixes
                | Self::StartOutside
                | Self::NotUsedYet
        )
    }
}
