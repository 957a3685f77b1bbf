//! The table of findings: each with its code and how bad it is. Their words are in the catalogues (`texts::message`).

use super::Severity;

macro_rules! codes {
    ($($name:ident $severity:ident $code:literal;)*) => {
        /// What kind of finding it is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code { $(#[doc = concat!("`", $code, "`.")] $name,)* }

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
        }
    };
}

codes! {
    // Reading a formula.
    FormulaEmpty Error "formula-empty";
    FormulaLong Error "formula-long";
    FormulaDeep Error "formula-deep";
    UnknownSign Error "unknown-sign";
    Unexpected Error "unexpected";
    BraceOpen Error "brace-open";
    BraceStray Error "brace-stray";
    BracketOpen Error "bracket-open";
    NumberBad Error "number-bad";
    UnknownName Error "unknown-name";
    AmbiguousName Error "ambiguous-name";
    UnknownFunction Error "unknown-function";
    WrongArguments Error "wrong-arguments";
    UnitMissing Error "unit-missing";
    KindsDiffer Error "kinds-differ";
    WrongKind Error "wrong-kind";
    OtherFrame Error "other-frame";

    // Names and the shape of the draft.
    NameBad Error "name-bad";
    NameTwice Error "name-twice";
    PartMissing Error "part-missing";
    PartUnknown Error "part-unknown";
    ValueTwice Error "value-twice";
    SettingBad Error "setting-bad";
    BlockRights Warning "block-rights";
    BlockChanged Warning "block-changed";
    BlockMissing Warning "block-missing";
    ViewEmpty Error "view-empty";
    ViewValueTwice Error "view-value-twice";
    PieceInNoView Note "piece-in-no-view";
    InNoView Note "in-no-view";
    ViewsAlike Note "views-alike";
    NotUsedYet Note "not-used-yet";

    // The chart.
    NoSizes Error "no-sizes";
    SizeTwice Error "size-twice";
    BaseUnknown Error "base-unknown";
    CellUnknown Error "cell-unknown";
    CellTwice Error "cell-twice";
    CellMissing Error "cell-missing";
    CellGuessed Warning "cell-guessed";
    CellBeyond Warning "cell-beyond";
    PersonLacks Warning "person-lacks";
    RowKind Error "row-kind";

    // Computing.
    Circular Error "circular";
    CircularFound Error "circular-found";
    NotFinite Error "not-finite";
    OffTheEdge Error "off-the-edge";
    NotOnEdge Error "not-on-edge";
    NoAnswer Error "no-answer";
    SeveralAnswers Error "several-answers";
    InsideMouth Error "inside-mouth";
    Internal Error "internal";

    // Pieces.
    StepFails Error "step-fails";
    StepLook Warning "step-look";
    RingOpen Error "ring-open";
    ArcUneven Error "arc-uneven";
    TakenApart Error "taken-apart";
    EdgeBroken Error "edge-broken";
    DartOff Error "dart-off";
    DartOverlap Error "dart-overlap";
    NotSmooth Warning "not-smooth";

    // Seams and found values.
    RunBroken Error "run-broken";
    SeamLength Error "seam-length";
    JointBent Warning "joint-bent";
    StretchOff Error "stretch-off";
    SharesOff Error "shares-off";
    NoFullness Error "no-fullness";
    FullnessOff Error "fullness-off";
    NotchOff Error "notch-off";
    NotchApart Error "notch-apart";
    NotchNear Error "notch-near";
    SeamsAlike Warning "seams-alike";
    OrderCircular Error "order-circular";
    JointShaping Note "joint-shaping";
    ClosureOff Error "closure-off";
    ConditionFails Error "condition-fails";
    WatchFails Warning "watch-fails";
    NotTrue Error "not-true";
    LimitInWay Error "limit-in-way";
    NoEffect Error "no-effect";
    NotSolved Error "not-solved";
    NothingFixes Warning "nothing-fixes";
    TwoSolutions Note "two-solutions";
    StartOutside Warning "start-outside";
    DartLegs Error "dart-legs";
    FoldBent Error "fold-bent";
    FoldApart Error "fold-apart";
    FoldNotSquare Warning "fold-not-square";
    HemShort Warning "hem-short";
    HemFull Note "hem-full";

    // Cutting.
    NotCut Warning "not-cut";
    GrainMissing Error "grain-missing";
    GrainOff Warning "grain-off";
    FaceMissing Error "face-missing";
    FaceOnFold Error "face-on-fold";
    AllowanceMissing Warning "allowance-missing";
    AllowanceBad Error "allowance-bad";
    CutCrosses Warning "cut-line-crosses";
    CutFailed Error "no-cut-line";
    LabelOutside Warning "label-outside";
    MarkOutside Warning "mark-outside";
    PlaceFlat Warning "place-flat";
    RowMissesLevel Warning "row-misses-level";

    // Cloth.
    LayOddSize Note "lay-odd-size";
    LayStale Error "lay-stale";

    // Strips and notions.
    StripNoWidth Note "strip-no-width";
    StripNotJoined Warning "strip-not-joined";
    StripTooWide Warning "strip-too-wide";
    StripGrainOff Warning "strip-grain-off";
    NotionTooLong Warning "notion-too-long";

    // Finished measures and the range.
    EaseOff Warning "ease-off";
    OpeningSmall Error "opening-small";
    EaseDrifts Warning "ease-drifts";
    OddSize Warning "odd-size";
    LimitsCrossed Error "limits-crossed";

    // Care: where a garment can hurt.
    CordAtNeck Warning "cord-at-neck";
    CordEnds Warning "cord-ends";
    CordLoose Warning "cord-not-fastened";
    CordUnplaced Warning "cord-unplaced";
    SleepwearGirth Warning "sleepwear-girth";
    SleepwearUntold Warning "sleepwear-untold";
    SleepwearLoose Warning "sleepwear-loose";
    SmallParts Warning "small-parts";
    CareNotChecked Note "care-not-checked";
    WearerUnsaid Note "wearer-unsaid";
    AgesUnread Warning "ages-unread";
    RuleSizeUnread Warning "rule-size-unread";
    SurveyChart Note "survey-chart";
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
