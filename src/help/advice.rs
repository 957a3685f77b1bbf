//! What to do about each kind of finding: one table, complete (a test counts).

use crate::base::Code;

/// What to do about a finding of this kind; empty where the table has no line for it.
pub fn advice(code: Code) -> &'static str {
    ADVICE.iter().find(|(c, _)| *c == code).map_or("", |(_, words)| *words)
}

const ADVICE: &[(Code, &str)] = &[
    (Code::FormulaEmpty, "Type what is asked for beside it, or undo if it was emptied by mistake."),
    (Code::FormulaLong, "Give a part of it a name of its own as a value, and name that instead."),
    (Code::FormulaDeep, "Take an inner bracket out into a value with a name."),
    (Code::UnknownSign, "Take the sign out; multiply with *, divide with /, and write lengths as 8 cm or 3/8 in."),
    (Code::Unexpected, "Look at the underlined place: usually a sign, a comma or a number is missing just before it."),
    (Code::BraceOpen, "Close the brace behind the formula, or take the opening one out."),
    (Code::BracketOpen, "Close the bracket, or take the opening one out."),
    (
        Code::NumberBad,
        "Write digits on both sides of the point, such as 0.5, and whole numbers in a fraction, such as 3/8.",
    ),
    (
        Code::UnknownName,
        "Mend the spelling (a button offers the nearest name), or add the row, value or point that is meant.",
    ),
    (
        Code::AmbiguousName,
        "Write the one that is meant with its word in front, such as chart.shoulder or front.shoulder.",
    ),
    (Code::UnknownFunction, "Mend the spelling; the list of functions in this help shows all that there are."),
    (
        Code::WrongArguments,
        "Compare with the way the function is written on its page, and give each thing in its place.",
    ),
    (Code::UnitMissing, "Write a unit behind the number, such as 3 cm; only fractions and counts go without one."),
    (
        Code::KindsDiffer,
        "Put together only what is alike: lengths with lengths, angles with angles, a point with an offset.",
    ),
    (
        Code::WrongKind,
        "Change the formula until it gives what is needed: gap() makes a length of two points, at() a point of an edge.",
    ),
    (
        Code::OtherFrame,
        "Lay the other piece on this one by a placement and name the point through it, or measure it only.",
    ),
    (Code::NameBad, "Choose a name of letters, digits and underscores that begins with a letter and is no unit."),
    (Code::NameTwice, "Rename one of the two; every formula that names it follows."),
    (Code::PartMissing, "Go to the part and fill in what is missing."),
    (Code::PartUnknown, "Mend the name, or add the part that is meant."),
    (Code::ValueTwice, "Keep the formula if you know the number; keep start and limits if a seam is to find it."),
    (Code::SettingBad, "Type a number above zero with a unit, or empty the field to have the usual one."),
    (
        Code::ViewEmpty,
        "Name pieces in the view that the draft has, or leave its list of pieces empty: then it has all of them.",
    ),
    (Code::ViewValueTwice, "Take one of the two formulas out of the view."),
    (Code::PieceInNoView, "Add the piece to a view; one that is there only to make others of needs none."),
    (
        Code::InNoView,
        "Name what the pieces of a view have instead, or add the piece that is missing to a view; what is true of a block alone may stay.",
    ),
    (Code::ViewsAlike, "Take one of the two out, or say in which pieces or values they differ."),
    (Code::NotUsedYet, "Nothing need be done: it stays in the file. Do not count on it in this version."),
    (Code::NoSizes, "Add a first size with the + behind \"Sizes\"."),
    (Code::SizeTwice, "Rename one of the two sizes, or take it out."),
    (Code::BaseUnknown, "Make one of the sizes the base: choose it, then \"Make it the base size\"."),
    (Code::CellUnknown, "Add that size, or take the number out of the row in the file."),
    (Code::CellTwice, "Keep one of the two numbers in the file."),
    (Code::CellMissing, "Type the number in the chart, or give the row a formula that holds for all sizes."),
    (Code::CellGuessed, "Measure or look it up and type it, or confirm the proposal if it is right."),
    (
        Code::CellBeyond,
        "Bodies do not go on growing by the last step: check it against a table, then type or confirm it.",
    ),
    (Code::PersonLacks, "Take the measure of that person and type it in their column."),
    (Code::RowKind, "Give all numbers of the row the same kind of unit, or make two rows of it."),
    (
        Code::Circular,
        "Begin with one of the named things: give it a formula that needs none of the others, or let it be found.",
    ),
    (Code::CircularFound, "Write the start or the limit with rows and values that do not hang on what is to be found."),
    (
        Code::NotFinite,
        "Look for a division by nothing or a root of something below zero, and in which sizes it happens.",
    ),
    (Code::OffTheEdge, "Count from the other end, take a fraction such as 1/2, or make the edge longer."),
    (Code::NotOnEdge, "Use a point that lies on the edge, such as one made with at() or foot()."),
    (Code::NoAnswer, "Look at the sizes named: lines that do not meet there need a longer length or another line."),
    (Code::SeveralAnswers, "Say which one with side:, nearest: or from:; side: right is the usual choice."),
    (Code::InsideMouth, "Choose a place beside the dart; what lies in its mouth is folded away."),
    (Code::Internal, "Save under another name and report it with the file; undo the last step to go on working."),
    (Code::BlockRights, "Write author and licence into the block's own draft, and take that over."),
    (Code::BlockChanged, "Look at what would change, then take it over, or untie the block."),
    (Code::BlockMissing, "Say where its file lies now, put it back, or untie the block."),
    (
        Code::StepFails,
        "Name what is there before the step: edges, corners and darts of the piece as the steps before it leave it; what a step makes has the name that the step gives it.",
    ),
    (
        Code::StepLook,
        "Look at the piece in the smallest and the largest size; where it is as meant, silence this with the reason.",
    ),
    (
        Code::RingOpen,
        "Let each edge begin at the point where the one before ends; close the outline with its last edge.",
    ),
    (Code::ArcUneven, "Move the centre, or take one end as the other turned about the centre."),
    (Code::TakenApart, "Let the named points be the ends of the curve that is taken, or take a part of it."),
    (
        Code::EdgeBroken,
        "Look at its points in the sizes named: two of them fall together, or the curve turns back on itself.",
    ),
    (
        Code::DartOff,
        "Move the centre of the mouth along the edge, or make the intake smaller, until both feet lie on it.",
    ),
    (Code::DartOverlap, "Move one mouth along the edge, or make an intake smaller."),
    (Code::NotSmooth, "Put both handles and the point in one line, or take back that it must run on smoothly."),
    (
        Code::RunBroken,
        "Name the edges in the order in which they are sewn; write reversed() around one that runs the other way.",
    ),
    (
        Code::SeamLength,
        "Change one of the two sides, say that the seam is eased or gathered if that is meant, or let a value be found for it.",
    ),
    (
        Code::JointBent,
        "Move the corner or the handles beside it until the line runs on; declare it as a corner if it is meant.",
    ),
    (Code::StretchOff, "Give the stretch an end on both sides, in the order of the seam."),
    (Code::SharesOff, "Let the shares of all stretches add up to 1."),
    (Code::NoFullness, "Say how many times the longer side is meant to be, or call the fit equal."),
    (Code::FullnessOff, "Make the longer side longer or shorter, or change the least and the most."),
    (Code::NotchOff, "Tell the notch by a place that lies on its seam, outside the mouths of darts."),
    (Code::NotchApart, "Move one of the two, or leave the second out: then the program makes it."),
    (Code::NotchNear, "Make the allowance wider or the notch less deep."),
    (Code::SeamsAlike, "Put a notch of one of them at another place, or give it two strokes."),
    (Code::OrderCircular, "Let one of the seams wait for none of the others."),
    (Code::JointShaping, "Nothing need be done where shaping is meant; otherwise look at the corners named."),
    (Code::ClosureOff, "Make the opening shorter than its seam."),
    (Code::ConditionFails, "Change what it compares, or name values that may be found for it."),
    (Code::WatchFails, "Look whether it matters in the sizes named; change the draft, or silence it with the reason."),
    (
        Code::NotTrue,
        "Free one more value, widen a limit, or take one of the conditions back: they cannot hold together.",
    ),
    (Code::LimitInWay, "Widen the limit if the garment allows it, or change what the seam asks for."),
    (
        Code::NoEffect,
        "Use the value in a formula of a piece that the seam or condition hangs on, or name another value.",
    ),
    (Code::NotSolved, "Move the starts nearer to what is expected, and look at the seam lengths in the sizes named."),
    (Code::NothingFixes, "Name it in a seam or a condition, or give it a formula."),
    (
        Code::TwoSolutions,
        "Look at the piece in both sizes; move the start or a limit so that only the meant one is left.",
    ),
    (Code::StartOutside, "Move the start between the least and the most."),
    (Code::DartLegs, "Swing the shorter leg about the tip, or move the tip, until both legs are equal."),
    (Code::FoldBent, "Make the line straight, or make it an edge and sew a seam there."),
    (Code::FoldApart, "Draw one of the two as the other mirrored in the fold, or move the fold."),
    (Code::FoldNotSquare, "Let the edge leave the fold squarely: put its handle level or plumb with the fold's line."),
    (Code::HemShort, "Let the corners of the hem follow the sides, or make the hem less deep."),
    (Code::HemFull, "Make the hem less deep, cut it as a facing, or plan to ease or press the fullness away."),
    (Code::NotCut, "On the card of the piece say from which cloth it is cut, how often, and on which grain."),
    (Code::GrainMissing, "On the card of the piece give the heading of the lengthwise thread."),
    (Code::GrainOff, "Take the heading that is proposed, or name another line to follow."),
    (Code::FaceMissing, "Say which side of the cloth is up, or cut a pair."),
    (Code::FaceOnFold, "Cut it single with that face up, or on the fold without naming a face."),
    (Code::AllowanceMissing, "Give the edge an allowance on its card, or 0 where it is cut on the line."),
    (Code::AllowanceBad, "Type 0 or more."),
    (Code::CutCrosses, "Make the allowance narrower there, or look whether the trimmed corner can be sewn."),
    (Code::CutFailed, "Look at the outline in the sizes named: it must close and not cross itself."),
    (Code::LabelOutside, "Move the label to a point inside the piece."),
    (Code::MarkOutside, "Move the mark or the dart onto the piece, and look at it in the sizes named."),
    (
        Code::PlaceFlat,
        "Mark the corners of the sewn piece by circles: `length` of its edges counts without what darts and pleats take up.",
    ),
    (Code::RowMissesLevel, "Hold that button level and let the steps be as told, or accept the even row."),
    (
        Code::LayOddSize,
        "Improve the plan of the smaller size in the room of cloth; it may begin with the larger one's lay.",
    ),
    (
        Code::LayStale,
        "Lay the pieces anew and keep the new plan, or take the old one out; nothing is told of a plan that is not of these pieces.",
    ),
    (Code::StripNoWidth, "Give the material the widths in which it is sold."),
    (Code::StripNotJoined, "Give the strip an allowance for joins, or cut it along the thread or from wider cloth."),
    (
        Code::StripTooWide,
        "Look at the strip's width, layers and allowance, or at the widths and selvedges of its cloth.",
    ),
    (
        Code::StripGrainOff,
        "Cut it on the bias, or say how far its cloth stretches; the rule of its length holds for one grain only, so try it.",
    ),
    (
        Code::NotionTooLong,
        "Add a longer one to the sizes that are sold, or make the opening shorter in the sizes named.",
    ),
    (Code::EaseOff, "Change the piece, or the least and the most ease, after looking at the sizes named."),
    (
        Code::OpeningSmall,
        "Make the opening larger, add a closure, or use cloth that stretches; try it on before it is sold, for children above all.",
    ),
    (
        Code::EaseDrifts,
        "Let the measure grow with its body row; look for a fixed length in a formula that should follow the body.",
    ),
    (Code::OddSize, "Look at the numbers of that size in the chart first: a slip of typing is the usual cause."),
    (Code::LimitsCrossed, "Exchange the two, or widen one of them."),
    (
        Code::CordAtNeck,
        "Take the cord out and close the hood or neck with elastic, buttons or an overlap. A caution cannot be silenced; it is printed with the pattern.",
    ),
    (Code::CordEnds, "Shorten the free ends, so that opened flat no more than 75 mm (3 in) hang out of the channel."),
    (
        Code::CordLoose,
        "Sew the cord fast by a bar tack at the middle of the back, mark the place, and say `fastened: true`.",
    ),
    (Code::CordUnplaced, "Give the strip its place: neck, waist, hem or elsewhere."),
    (
        Code::SleepwearGirth,
        "Take the garment in there, or call it sleepwear that does not fit close, which brings another caution. See [cautions](cautions).",
    ),
    (
        Code::SleepwearLoose,
        "Ask the maker of the cloth, or make it close-fitting and give its girths. See [cautions](cautions).",
    ),
    (
        Code::SmallParts,
        "Look at each part that is named: can it come off, and is it large enough? Else close it another way.",
    ),
    (
        Code::CareNotChecked,
        "Have what is named looked at by somebody who knows the rules of the country where it is worn.",
    ),
    (Code::WearerUnsaid, "Say `audience: adult`, or `child` with the ages, at the head of the draft."),
    (Code::AgesUnread, "Write the youngest and the oldest as years or months, such as 2 years and 14 years."),
    (Code::RuleSizeUnread, "Write a size of the chart and the size of the rules that it is, such as 98 and 3."),
    (
        Code::SurveyChart,
        "Nothing need be done while drafting. To release the pattern, draft it on a chart that is made to fit by.",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_kind_of_finding_has_one_advice_of_its_own() {
        for code in Code::ALL {
            let lines = ADVICE.iter().filter(|(c, _)| c == code).count();
            assert_eq!(lines, 1, "{}: say in ADVICE what to do about it", code.word());
            let words = advice(*code);
            assert!(words.len() > 10 && words.ends_with('.'), "{}: {words}", code.word());
        }
        let own: BTreeSet<&str> = ADVICE.iter().map(|(_, words)| *words).collect();
        assert_eq!(own.len(), ADVICE.len(), "two kinds with the same advice");
    }
}
