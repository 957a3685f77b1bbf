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
    BraceOpen Error "brace-open" "A brace in words is not closed." "the brace is never closed; what stands between an opening and a closing one is a formula";
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
    BlockRights Warning "block-rights" "A block that was taken from another draft does not say whose it is." "block {block}, taken from {file}, comes without {what}: ask its maker before the pattern is sold";
    BlockChanged Warning "block-changed" "A block was changed in its own draft since it was taken." "{file} is not as it was taken: {what}";
    BlockMissing Warning "block-missing" "The draft that a block was taken from cannot be read." "what was taken is here, but whether it changed cannot be said: {problem}";
    ViewEmpty Error "view-empty" "A view has no pieces." "the view {view} has none of the pieces of this draft{named}";
    ViewValueTwice Error "view-value-twice" "A view gives a value twice." "{value} has two formulas in the view {view}; keep one";
    PieceInNoView Note "piece-in-no-view" "A piece belongs to no view." "{piece} belongs to no view, so it is not drawn, judged or published; if that is meant, leave it";
    InNoView Note "in-no-view" "A seam, condition or finished measure belongs to no view." "no view has all that {what} names, so nothing judges it; if that is meant, leave it";
    ViewsAlike Note "views-alike" "Two views are the same." "the view {view} has the same pieces and values as {other}";
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
    StepFails Error "step-fails" "A step of a derived piece cannot be done." "{problem}";
    StepLook Warning "step-look" "What a step of a derived piece does must be looked at." "{problem}";
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
    StretchOff Error "stretch-off" "A stretch of a seam does not end on both sides, in order." "{seam}: {problem}";
    SharesOff Error "shares-off" "The shares of a seam's ease do not add up to the whole." "{seam}: the shares of its stretches add up to {sum}, not to 1";
    NoFullness Error "no-fullness" "A seam is said to be gathered or stretched without any fullness." "{seam} is said to be {fit}, but {longer} is {times} times as long as {shorter}; say how many times it is meant to be, such as {example}";
    FullnessOff Error "fullness-off" "The fullness of a gathered seam is outside its limits." "{seam}: {longer} is {times} times as long as {shorter}, meant {meant}";
    NotchOff Error "notch-off" "A notch has no place on a side of its seam." "notch {notch} of {seam} has no place on {side}: {problem}";
    NotchApart Error "notch-apart" "Two notches that are to meet lie apart." "notch {notch} of {seam} is told at {told} on {side} and would meet its mate at {meets}: {apart} off, limit {limit}";
    NotchNear Error "notch-near" "A notch is cut too near to the stitching." "notch {notch} of {seam} is cut {depth} deep into an allowance of {allowance} on {edge}: {left} left, limit {limit}";
    SeamsAlike Warning "seams-alike" "Seams of one length carry the same notches, so that pieces can be mistaken for each other." "{seams} are equally long and notched alike, so their pieces can be joined wrongly; set their notches at different places";
    OrderCircular Error "order-circular" "Seams are to be sewn after each other in a circle." "these seams wait for each other: {members}";
    JointShaping Note "joint-shaping" "Corners that are sewn all round do not lie flat." "the corners sewn together at {points} add up to {angle}: {shaping} of shaping";
    ClosureOff Error "closure-off" "The end of a closure does not lie on its seam." "the closure of {seam} ends at {at}, but the side is only {length} long";
    ConditionFails Error "condition-fails" "A condition does not hold." "{condition}: {left} against {right}, {difference} off";
    WatchFails Warning "watch-fails" "A comparison that is watched does not hold." "{condition}: {left} against {right}";
    NotTrue Error "not-true" "Equations cannot hold together." "{conditions} cannot hold{together}: {excess} off at the nearest fit of {values}{hint}";
    LimitInWay Error "limit-in-way" "A limit of a found value keeps an equation from holding." "{conditions} cannot hold: {value} stops at its {limit}, {excess} off";
    NoEffect Error "no-effect" "A found value cannot change the seam or condition it is to keep true." "{value} cannot change {conditions}: {problem}";
    NotSolved Error "not-solved" "The search for found values did not come to an end." "no values found for {values} within {count} tries; the nearest fit is {excess} off";
    NothingFixes Warning "nothing-fixes" "No seam or condition fixes a found value." "nothing fixes {value}; it stays at its start";
    TwoSolutions Note "two-solutions" "Found values have a second solution, which goes on from a neighbouring size." "{value} has two solutions here: {taken} is taken, reached from its start; {other} would go on from size {neighbour}, so look which is meant and move the start or a limit";
    StartOutside Warning "start-outside" "The start of a found value lies outside its limits." "the start of {value} lies outside its limits; the nearest limit is taken";
    DartLegs Error "dart-legs" "The legs of a dart are not equally long." "the legs of {dart} are {one} and {two}: {difference} apart, limit {limit}; swing the shorter one about the tip, or move the tip";
    FoldBent Error "fold-bent" "A fold is not straight." "{fold} folds along {line}, which is bent by {off}: cloth folds along a straight line only, so make it an edge and a seam";
    FoldApart Error "fold-apart" "What is folded over does not lie on its target." "{fold}: folded over, {over} lies {apart} away from {onto}, limit {limit}";
    FoldNotSquare Warning "fold-not-square" "An edge does not cross a fold squarely, so that it has a point or a dip when unfolded." "{edge} meets {line} at {angle}: unfolded it makes a point or a dip of {gap} at 10 mm, limit {limit}";
    HemShort Warning "hem-short" "The turned edge of a hem is shorter than the place where it is sewn." "turned up, {edge} is {have} long where {needed} are needed: {short} short on the piece; let its corners follow the sides";
    HemFull Note "hem-full" "The edge of a curved hem is longer than where it is sewn, and must be shrunk or eased." "the turned edge of {edge} has {full} too much, to be eased or pressed away";

    // Cutting.
    NotCut Warning "not-cut" "A piece does not say how it is cut." "nothing says from which cloth {piece} is cut, and how often";
    GrainMissing Error "grain-missing" "A cut piece has no grain line." "{piece} has no grain line for {material}: give the heading of its lengthwise thread";
    GrainOff Warning "grain-off" "A grain line is not parallel to the line that it must follow." "the grain of {piece} is {angle} off {line}: {off} over its length, limit {limit}; its heading would be {heading}";
    FaceMissing Error "face-missing" "A single piece that is not symmetric does not say which side of the cloth is up." "{piece} is cut {count} from {material} and is not symmetric: say which side of the cloth is up, or cut pairs";
    FaceOnFold Error "face-on-fold" "A piece with one face up is to be cut on the fold." "{piece} lies on a fold of {material} and shows one face: cut on the fold it comes as both halves";
    AllowanceMissing Warning "allowance-missing" "An edge of a piece that is cut has no allowance." "nothing tells the allowance of {edge}: it is cut on its stitch line; give a width, also where it is meant to be 0";
    AllowanceBad Error "allowance-bad" "An allowance is below zero." "the allowance of {edge} is {width}: it must be 0 or more";
    CutCrosses Warning "cut-line-crosses" "A cut line would cross itself and was trimmed." "the cut line of {piece} would cross itself where its allowance is wider than the place leaves room for, and was trimmed{where}";
    CutFailed Error "no-cut-line" "A cut line cannot be made." "no cut line can be made for {piece}: {problem}";
    LabelOutside Warning "label-outside" "A label does not lie on its piece." "the label of {piece} would stand outside of it";
    MarkOutside Warning "mark-outside" "A mark or dart does not lie on its piece." "{mark} lies {distance} outside of {piece}";
    PlaceFlat Warning "place-flat" "The place of a piece with darts, pleats or tucks is drawn larger than it is sewn." "{mark} shows {piece} as it is cut, {takes} in it open: sewn it is smaller; mark its corners where they come to lie instead";
    RowMissesLevel Warning "row-misses-level" "None of a row of buttons lies level with the point that must be held." "spread evenly, the nearest of {mark} lies {off} from {fixed}: steps of {step}; with number {number} level with it the steps would be {other} and the row {ends} long";

    // Cloth.
    LayOddSize Note "lay-odd-size" "By its kept lay plan a size needs more cloth than a larger one." "on {cloth} {size} needs {own} and the larger {larger} only {less}: a longer search would find a lay as short as that, unless the smaller size is the longer one somewhere";
    LayStale Error "lay-stale" "A lay plan that is kept is not one of these pieces any more." "kept lay plans on {cloth} are not ones of this draft any more: {why}. Lengths to buy are not told from them: lay them anew, or take them out";

    // Strips and notions.
    StripNoWidth Note "strip-no-width" "Nothing tells how wide the cloth of a strip is sold." "nothing tells how wide {material} is sold, so how many {strip} come from it, and how much cloth they take, is not told";
    StripNotJoined Warning "strip-not-joined" "A strip is longer than its cloth gives in one piece, and nothing tells how it is joined." "{strip} is cut {length} long, but {material} that is {width} wide gives {most} at most in one piece: give the allowance of a join, or a wider cloth";
    StripTooWide Warning "strip-too-wide" "A strip does not come out of its cloth." "{strip} is cut {wide} wide and {length} long, which does not come out of {material} that is {width} wide ({usable} of it usable)";
    StripGrainOff Warning "strip-grain-off" "A strip that is to stretch is cut with the thread of cloth of which nothing says that it stretches." "{strip} is stretched by its seam, but cut {way} the thread, and nothing says that {material} stretches so: cut it on the bias, tell the stretch, or look at its length again";
    NotionTooLong Warning "notion-too-long" "No size of a notion that is sold is large enough." "{notion} must be {needed}, but the largest sold is {sold}";

    // Finished measures and the range.
    EaseOff Warning "ease-off" "A finished measure leaves more or less ease than is meant." "{measure} is {finished} over a body of {body}: ease {ease}, meant {meant}";
    OpeningSmall Error "opening-small" "An opening is too small for what must pass." "{measure} opens to {opening}, but {body} is {needed}: {short} too small";
    EaseDrifts Warning "ease-drifts" "A measure grows otherwise than the body over the range." "{measure} differs from the base by {grows}, the body by {body_grows}: {drift} of drift, limit {limit}";
    OddSize Warning "odd-size" "One size stands out from its neighbours." "{what} is {value} here; its neighbours suggest {expected}, limit {limit}";
    LimitsCrossed Error "limits-crossed" "The least of a found value is above its most." "the least of {value} is above its most";

    // Care: where a garment can hurt.
    CordAtNeck Warning "cord-at-neck" "A cord is at the hood or neck of a child's garment." "{strip} is a cord at hood or neck of a child's garment: {rule}. {usual}";
    CordEnds Warning "cord-ends" "The free ends of a cord of a child's garment hang out far." "the free ends of {strip} hang out {is}, {over} more than the {most} of {rule}. {usual}";
    CordLoose Warning "cord-not-fastened" "A cord of a child's garment is not sewn fast at its middle." "{strip} is not sewn fast at its middle and can be drawn out: a bar tack is wanted by {rule}. {usual}";
    CordUnplaced Warning "cord-unplaced" "A cord of a child's garment does not say where it is." "{strip} is a cord of a child's garment and does not say where it is: give its place, on which cautions hang. {usual}";
    SleepwearGirth Warning "sleepwear-girth" "Sleepwear of a child that is to fit close is wider than its rule allows." "around the {place} it is {is}, {over} more than the {most} at most of {rule} for what fits close. {usual}";
    SleepwearLoose Warning "sleepwear-loose" "Loose sleepwear of a child calls for cloth that resists flames." "loose sleepwear of a child: {rule} want cloth that resists flames, which is not looked at here. {usual}";
    SmallParts Warning "small-parts" "A garment for a child under three has small parts." "{parts}: a child under three can swallow what comes off; see {rule}. {usual}";
    CareNotChecked Note "care-not-checked" "What cautions speak of and is not looked at here." "not checked: {what}. {usual}";
    WearerUnsaid Note "wearer-unsaid" "Nothing says who wears a garment for which cautions hang on that." "{why}, and nothing says who wears it: say so in `audience`, so that the usual cautions can be given";
    AgesUnread Warning "ages-unread" "The ages of those who wear it cannot be read." "{text} cannot be read as ages: {problem}";
    RuleSizeUnread Warning "rule-size-unread" "A size of the rules cannot be read, or belongs to no size." "size {size} is said to be {rule} of the rules: {problem}";
    SurveyChart Note "survey-chart" "The chart is a survey of bodies, not one to fit by." "the chart is a survey of bodies: good to draft and check with, not to fit by; nothing drafted on it is released";
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
                | Self::PieceInNoView
                | Self::InNoView
                | Self::ViewsAlike
                | Self::FullnessOff
                | Self::NotchApart
                | Self::NotchNear
                | Self::SeamsAlike
                | Self::JointShaping
                | Self::DartLegs
                | Self::FoldApart
                | Self::FoldNotSquare
                | Self::HemShort
                | Self::HemFull
                | Self::NotCut
                | Self::GrainOff
                | Self::AllowanceMissing
                | Self::CutCrosses
                | Self::LabelOutside
                | Self::MarkOutside
                | Self::PlaceFlat
                | Self::RowMissesLevel
                | Self::StripNoWidth
                | Self::StripNotJoined
                | Self::StripTooWide
                | Self::StripGrainOff
                | Self::NotionTooLong
                | Self::EaseOff
                | Self::OpeningSmall
                | Self::EaseDrifts
                | Self::OddSize
        )
    }
}
