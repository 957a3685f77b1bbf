//! Any draft, for property tests: every part of it, with texts that are hard to write down.

use std::fmt::Debug;
use std::sync::Arc;

use proptest::collection::vec;
use proptest::prelude::*;
use tracewheel::base::{DisplayUnit, Language};
use tracewheel::document::*;

/// A text as people type it, and as nobody would.
pub fn text() -> BoxedStrategy<String> {
    let odd = prop::sample::select(vec![
        "\"",
        "\\",
        "\\\"",
        "// none",
        "/* none */",
        "\u{0}\u{1}\u{1b}\u{7f}",
        "\u{feff}",
        "a\r\nb\tc\n",
        "r#\"x\"#",
        "\\u{41}",
        "\u{202e}abc\u{2066}",
        "\u{2028}\u{2029}\u{85}",
        "é e\u{301} 你好 🧵👩\u{200d}👩\u{200d}👧",
        "\u{10ffff}\u{e000}",
        "(",
        "])",
        ",",
        "NaN",
        "true",
        " ",
    ]);
    let formula =
        prop::sample::select(vec!["bust / 4 + 2 cm", "tip.polar(22°, chart.shoulder)", "1 1/2 in", "(0 cm, 0 cm)"]);
    prop_oneof![
        3 => Just(String::new()),
        3 => formula.prop_map(str::to_owned),
        2 => odd.prop_map(str::to_owned),
        2 => vec(any::<char>(), 0..12).prop_map(String::from_iter),
        1 => "[ -~]{0,150}",
    ]
    .boxed()
}

fn texts() -> BoxedStrategy<Vec<String>> {
    vec(text(), 0..4).boxed()
}

fn number() -> BoxedStrategy<u32> {
    prop_oneof![Just(0), 0..4u32, any::<u32>()].boxed()
}

fn few<T: Debug + Clone + 'static>(of: BoxedStrategy<T>) -> BoxedStrategy<Vec<T>> {
    vec(of, 0..3).boxed()
}

fn shared<T: Debug + Clone + 'static>(of: BoxedStrategy<T>) -> BoxedStrategy<Vec<Arc<T>>> {
    few(of.prop_map(Arc::new).boxed())
}

fn one_of<T: Debug + Clone + 'static>(words: &[T]) -> BoxedStrategy<T> {
    prop::sample::select(words.to_vec()).boxed()
}

/// Any of a type, field by field. A field that is forgotten here does not compile.
macro_rules! any_of {
    ($kind:ident { $($field:ident: $strategy:expr),* $(,)? }) => {{
        let strategy = Just($kind::default()).boxed();
        $(let strategy = (strategy, $strategy)
            .prop_map(|(mut whole, part)| { whole.$field = part; whole })
            .boxed();)*
        let $kind { $($field: _),* } = $kind::default();
        strategy
    }};
}

/// Any draft of this format.
pub fn draft() -> BoxedStrategy<Draft> {
    any_of!(Draft {
        format: Just(FORMAT.to_owned()),
        version: Just(VERSION),
        title: text(),
        note: text(),
        author: text(),
        licence: text(),
        contact: text(),
        edition: text(),
        date: text(),
        display: one_of(&[DisplayUnit::Cm, DisplayUnit::Mm, DisplayUnit::InchEighths, DisplayUnit::InchSixteenths]),
        language: one_of(&Language::ALL),
        audience: prop_oneof![
            Just(Audience::Unstated),
            Just(Audience::Adult),
            (text(), text()).prop_map(|(from, to)| Audience::Child { from, to }),
        ],
        care: any_of!(Care {
            worn_as: one_of(&[
                WornAs::Unstated,
                WornAs::Outerwear,
                WornAs::Sleepwear,
                WornAs::TightSleepwear,
                WornAs::Other,
            ]),
            wearers: one_of(&[Wearers::Anyone, Wearers::Boys, Wearers::Girls]),
            rule_sizes: few((text(), text()).boxed()),
            girths: few(any_of!(RuleGirth {
                place: one_of(&[
                    GirthPlace::Chest,
                    GirthPlace::Waist,
                    GirthPlace::Seat,
                    GirthPlace::UpperArm,
                    GirthPlace::Thigh,
                    GirthPlace::Wrist,
                    GirthPlace::Ankle,
                ]),
                is: text(),
            })),
        }),
        settings: settings(),
        blocks: few(any_of!(TakenBlock {
            name: text(),
            file: text(),
            title: text(),
            author: text(),
            licence: text(),
            contact: text(),
            edition: text(),
            date: text(),
            pieces: texts(),
            prefix: text(),
            parts: few(any_of!(TakenPart {
                part: text(),
                name: text(),
                names: few((text(), text()).boxed()),
                there: text(),
                here: text(),
            })),
            note: text(),
        })),
        chart: chart(),
        values: few(value()),
        drawings: shared(drawing()),
        pieces: shared(piece()),
        placements: few(placement()),
        seams: shared(seam()),
        joints: few(any_of!(Joint { name: text(), corners: texts(), meant: text(), note: text() })),
        conditions: few(any_of!(Condition { name: text(), must: text(), found_by: texts(), note: text() })),
        measures: few(measure()),
        materials: few(material()),
        strips: few(strip()),
        notions: few(any_of!(Notion { name: text(), count: number(), size: text(), sold: texts(), note: text() })),
        views: few(any_of!(View {
            name: text(),
            pieces: texts(),
            values: few((text(), text()).boxed()),
            note: text()
        })),
        booklet: few(any_of!(BookletStep {
            title: text(),
            text: text(),
            pieces: texts(),
            pictures: few(any_of!(StepPicture { file: text(), says: text(), caption: text() })),
            views: texts()
        })),
        sheets: few(any_of!(Sheet { name: text(), paper: text(), sizes: texts(), pieces: texts() })),
        table: few(any_of!(TablePlace { sheet: text(), piece: text(), x: text(), y: text(), turned: text() })),
        pictures: few(any_of!(Picture {
            under: text(),
            file: text(),
            x: text(),
            y: text(),
            scale: text(),
            turned: text(),
            fade: number(),
            hidden: any::<bool>()
        })),
        plans: few(plan()),
        silenced: few(any_of!(Silence { code: text(), at: text(), number: text(), reason: text() })),
        log: log(),
    })
}

fn settings() -> BoxedStrategy<DraftSettings> {
    any_of!(DraftSettings {
        seam_limit: text(),
        notch_limit: text(),
        joint_angle: text(),
        joint_gap: text(),
        notch_margin: text(),
        allowance: text(),
        page_margin: text(),
        notch_depth: text(),
        odd_angle: text(),
        odd_length: text(),
        grain_angle: text(),
        unchecked: few((text(), text()).boxed()),
    })
}

fn cells() -> BoxedStrategy<Vec<Cell>> {
    few((text(), text()).prop_map(|(label, formula)| Cell(label, formula)).boxed())
}

fn chart() -> BoxedStrategy<Chart> {
    let row = any_of!(Row {
        name: text(),
        kind: one_of(&[RowKind::Body, RowKind::House]),
        what: text(),
        level: text(),
        how: text(),
        source: text(),
        note: text(),
        by: few(one_of(&[Axis::Girth, Axis::Cup, Axis::Length])),
        is: text(),
        cells: cells(),
    });
    let set =
        any_of!(SizeSet { name: text(), girth: texts(), cup: texts(), length: texts(), base: text(), sheets: texts() });
    any_of!(Chart {
        girth: texts(),
        cup: texts(),
        length: texts(),
        base: text(),
        survey: any::<bool>().boxed(),
        sets: few(set),
        rows: few(row),
        persons: few(any_of!(Person { name: text(), note: text(), cells: cells() })),
    })
}

fn value() -> BoxedStrategy<Value> {
    any_of!(Value { name: text(), is: text(), start: text(), least: text(), most: text(), note: text() })
}

fn points() -> BoxedStrategy<Vec<Point>> {
    few(any_of!(Point { name: text(), at: text(), note: text() }))
}

/// Any segment of an edge.
pub fn segment() -> BoxedStrategy<Segment> {
    prop_oneof![
        text().prop_map(Segment::Straight),
        (text(), text(), text()).prop_map(|(a, b, c)| Segment::Curve(a, b, c)),
        (text(), one_of(&[Turn::Clockwise, Turn::Anticlockwise]), text()).prop_map(|(centre, turn, to)| Segment::Arc {
            centre,
            turn,
            to
        }),
        (texts(), text(), text(), text()).prop_map(|(through, leaving, arriving, to)| Segment::Smooth {
            through,
            leaving,
            arriving,
            to
        }),
        (text(), text(), text(), text()).prop_map(|(curve, off, off_end, to)| Segment::Taken {
            curve,
            off,
            off_end,
            to
        }),
    ]
    .boxed()
}

fn edges() -> BoxedStrategy<Vec<Edge>> {
    few(any_of!(Edge { name: text(), from: text(), by: few(segment()), smooth_at: texts(), note: text() }))
}

fn drawing() -> BoxedStrategy<Drawing> {
    any_of!(Drawing { name: text(), note: text(), points: points(), lines: edges() })
}

fn step() -> BoxedStrategy<Step> {
    any_of!(Step { name: text(), person: text(), does: does(), note: text() })
}

fn does() -> BoxedStrategy<Does> {
    let opening = || prop_oneof![Just(Opening::Dart), Just(Opening::Straight), Just(Opening::Curve)].boxed();
    prop_oneof![
        any_of!(MoveDart {
            close: text(),
            share: text(),
            on: text(),
            at: text(),
            stays: text(),
            opening: opening(),
            makes: text()
        })
        .prop_map(Does::MoveDart),
        (
            (text(), text(), text(), text(), number(), text(), text()),
            (text(), text(), any::<bool>(), text(), opening(), text())
        )
            .prop_map(
                |(
                    (from, from_at, to, to_at, count, from_until, to_until),
                    (by, angle, parallel, stays, opening, makes),
                )| {
                    Does::Spread(Spread {
                        from,
                        from_at,
                        to,
                        to_at,
                        count,
                        from_until,
                        to_until,
                        by,
                        angle,
                        parallel,
                        stays,
                        opening,
                        makes,
                    })
                }
            ),
        ((text(), text(), text(), text(), text()), (text(), text(), text(), text(), text(), texts())).prop_map(
            |((from, from_at, to, to_at, along), (keep, makes, start, end, rest, darts))| {
                Does::Cut(CutOff { from, from_at, to, to_at, along, keep, makes, start, end, rest, darts })
            }
        ),
        any_of!(Join { edge: text(), piece: text(), to: text(), reversed: any::<bool>(), prefix: text() })
            .prop_map(Does::Join),
        any_of!(Unfold { over: text(), prefix: text() }).prop_map(Does::Unfold),
        Just(Does::TurnOver),
        any_of!(AddStrip {
            edge: text(),
            width: text(),
            ends: prop_oneof![Just(StripEnds::Square), Just(StripEnds::Mirrored)].boxed(),
            makes: text(),
            start: text(),
            end: text()
        })
        .prop_map(Does::AddStrip),
        any_of!(MoveEdge { edge: text(), by: text(), to_by: text() }).prop_map(Does::MoveEdge),
        any_of!(Share { by: text(), over: few(any_of!(EdgeShare { edge: text(), share: text() })) })
            .prop_map(Does::Share),
        any_of!(ToCutLine { edges: texts(), set: text() }).prop_map(Does::ToCutLine),
        any_of!(Redraw { edge: text(), by: few(segment()), smooth_at: texts() }).prop_map(Does::Redraw),
        any_of!(Draw { points: points(), lines: edges(), darts: few(dart()), marks: few(mark()) }).prop_map(Does::Draw),
        texts().prop_map(Does::LeaveOut),
    ]
    .boxed()
}

fn dart() -> BoxedStrategy<Dart> {
    let pressed = || one_of(&[Pressed::ToStart, Pressed::ToEnd]);
    any_of!(Dart {
        name: text(),
        on: text(),
        centre: text(),
        foot: text(),
        intake: text(),
        tip: text(),
        bow: text(),
        pressed: pressed(),
        kept: pressed(),
        allowance: text(),
        form: one_of(&[DartForm::Folded, DartForm::Slashed, DartForm::CutOut, DartForm::TwoEnded]),
        note: text(),
    })
}

fn mark() -> BoxedStrategy<Mark> {
    any_of!(Mark {
        name: text(),
        kind: one_of(&[MarkKind::Circle, MarkKind::DrillHole, MarkKind::Buttonhole, MarkKind::ZipEnd, MarkKind::Text]),
        at: text(),
        to: text(),
        count: number(),
        fixed: text(),
        fixed_as: number(),
        piece: text(),
        size: text(),
        text: text(),
    })
}

fn piece() -> BoxedStrategy<Piece> {
    let pressed = || one_of(&[Pressed::ToStart, Pressed::ToEnd]);
    let tuck = || {
        any_of!(Tuck {
            name: text(),
            on: text(),
            centre: text(),
            intake: text(),
            depth: text(),
            pressed: pressed(),
            note: text(),
        })
    };
    let pinned = || few(any_of!(PinnedLine { name: text(), line: text(), note: text() }));
    let cut = any_of!(Cut {
        material: text(),
        count: number(),
        on_fold: text(),
        border: text(),
        grain: any_of!(Grain { heading: text(), along: text(), ways: one_of(&[GrainWays::Both, GrainWays::One]) }),
        face: one_of(&[Face::Pairs, Face::RightSideUp, Face::WrongSideUp]),
        outline: one_of(&[Outline::Full, Outline::LessAllowance, Outline::Block]),
        allowances: text(),
    });
    any_of!(Piece {
        name: text(),
        letter: text(),
        note: text(),
        of: text(),
        steps: few(step()),
        points: points(),
        edges: edges(),
        lines: edges(),
        darts: few(dart()),
        pleats: few(tuck()),
        tucks: few(tuck()),
        folds: few(any_of!(Fold {
            name: text(),
            line: text(),
            over: texts(),
            onto: texts(),
            turns: number(),
            note: text(),
        })),
        lengthen: pinned(),
        slits: pinned(),
        marks: few(mark()),
        allowances: few(any_of!(Allowance {
            edge: text(),
            set: text(),
            width: text(),
            from: text(),
            to_width: text(),
            turns: number(),
            turn_in: text(),
        })),
        corners: few(any_of!(Corner {
            at: text(),
            form: one_of(&[CornerForm::BySewing, CornerForm::Plain, CornerForm::Mitred, CornerForm::Across]),
            width: text(),
        })),
        cuts: few(cut),
        label: any_of!(Label { at: text(), turn: text() }),
        stack: few(text()),
    })
}

fn placement() -> BoxedStrategy<Placement> {
    any_of!(Placement {
        name: text(),
        lay: text(),
        on: text(),
        point: text(),
        onto: text(),
        towards: text(),
        along: text(),
        turned: text(),
        overlap: text(),
        mirrored: any::<bool>(),
    })
}

fn seam() -> BoxedStrategy<Seam> {
    let side = || one_of(&[Side::One, Side::Two]);
    let fit = || {
        prop_oneof![
            Just(Fit::Equal),
            (side(), text()).prop_map(|(longer, by)| Fit::Eased { longer, by }),
            (side(), text(), text(), text()).prop_map(|(longer, times, least, most)| Fit::Gathered {
                longer,
                times,
                least,
                most
            }),
            (side(), text()).prop_map(|(shorter, times)| Fit::Stretched { shorter, times }),
        ]
        .boxed()
    };
    any_of!(Seam {
        name: text(),
        one: texts(),
        two: texts(),
        fit: fit(),
        stretches: few(any_of!(Stretch { to_one: text(), to_two: text(), fit: fit(), share: text() })),
        found_by: texts(),
        notches: few(any_of!(Notch { name: text(), on: side(), at: text(), other: text(), strokes: number() })),
        order: text(),
        pressed: one_of(&[SeamPressed::Open, SeamPressed::ToOne, SeamPressed::ToTwo]),
        allowance: text(),
        closure: text(),
        note: text(),
    })
}

fn measure() -> BoxedStrategy<Measure> {
    any_of!(Measure {
        name: text(),
        is: text(),
        body: text(),
        ease_least: text(),
        ease_most: text(),
        drift_most: text(),
        passes: text(),
        stretch: text(),
        note: text(),
    })
}

fn material() -> BoxedStrategy<Material> {
    any_of!(Material {
        name: text(),
        kind: one_of(&[MaterialKind::Cloth, MaterialKind::Lining, MaterialKind::Interfacing]),
        widths: texts(),
        selvedge: text(),
        nap: one_of(&[Nap::Without, Nap::With]),
        laid: laid(),
        folded_part: text(),
        gap: text(),
        sold_in: text(),
        stretch_along: text(),
        stretch_across: text(),
        shrinkage_along: text(),
        shrinkage_across: text(),
        shrinks: one_of(&[Shrinks::InPieces, Shrinks::BeforeCutting]),
        note: text(),
    })
}

fn strip() -> BoxedStrategy<Strip> {
    any_of!(Strip {
        name: text(),
        kind: one_of(&[StripKind::Band, StripKind::Binding, StripKind::Elastic, StripKind::Cord]),
        count: number(),
        material: text(),
        length: text(),
        ends: text(),
        width: text(),
        layers: number(),
        allowance: text(),
        grain: one_of(&[StripGrain::Along, StripGrain::Across, StripGrain::Bias]),
        join: text(),
        place: one_of(&[
            StripPlace::Unstated,
            StripPlace::Neck,
            StripPlace::Waist,
            StripPlace::Hem,
            StripPlace::Elsewhere,
        ]),
        free_end: text(),
        fastened: any::<bool>().boxed(),
        in_lay: one_of(&[StripInLay::Counted, StripInLay::Laid]),
        note: text(),
    })
}

fn laid() -> BoxedStrategy<ClothLaid> {
    one_of(&[ClothLaid::Open, ClothLaid::Folded, ClothLaid::FoldedToMiddle, ClothLaid::FoldedPart])
}

fn plan() -> BoxedStrategy<LayPlan> {
    any_of!(LayPlan {
        name: text(),
        view: text(),
        material: text(),
        width: text(),
        laid: laid(),
        folded_part: text(),
        nap: one_of(&[Nap::Without, Nap::With]),
        sizes: few(any_of!(LaidSize { size: text(), count: number() })),
        places: few(any_of!(LaidPiece {
            piece: text(),
            strip: any::<bool>().boxed(),
            cut: number(),
            size: text(),
            stretch: number(),
            x: text(),
            y: text(),
            turned: text(),
            mirrored: any::<bool>().boxed(),
            one_layer: any::<bool>().boxed(),
            locked: any::<bool>().boxed(),
        })),
        digest: text(),
    })
}

fn log() -> BoxedStrategy<Log> {
    any_of!(Log {
        fittings: few(any_of!(FittingNote { date: text(), size: text(), cloth: text(), note: text() })),
        releases: few(any_of!(Release { date: text(), edition: text(), digest: text() })),
    })
}
