//! Every tolerance of the program. Nothing is compared against a literal elsewhere.

/// Residual at which the solver is content, mm.
pub const SOLVED: f64 = 1e-9;
/// Two lengths are equal, an equation is true, a reopened draft has not moved: mm.
pub const EQUAL: f64 = 1e-6;
/// Fitted curves and set-off lines, mm.
pub const CURVE: f64 = 1e-3;
/// A point is on an edge, the two ends of an arc are equally far from its centre: mm.
pub const ON_EDGE: f64 = 0.01;
/// Printed lines, flattening: mm.
pub const PRINT: f64 = 0.1;
/// Places on cloth are written down to this, mm: a tenth of what pieces may overlap.
pub const LAID: f64 = 1e-3;
/// A number that is pulled is rounded so that the point is off by less than this, mm.
pub const PULL_STEP: f64 = 0.1;
/// Numbers whose effect on a point is smaller than this do not move it, mm for one unit inside.
pub const NO_PULL: f64 = 1e-6;
/// Steps by which the effect of a number on a point is measured: a length in mm, any other number.
pub const PULL_PROBE: (f64, f64) = (0.1, 1e-4);
/// Corrections of a pull that come no nearer than this are given up, mm.
pub const PULL_GAIN: f64 = 1e-9;
/// Error of an arc length, mm.
pub const ARC_LENGTH: f64 = 1e-9;
/// Cubics that stand for an arc when it is drawn, mm.
pub const ARC_DRAWN: f64 = 1e-4;
/// A value whose every effect on a seam is smaller than this has none (mm for each step of its scale, see `numeric`).
pub const NO_EFFECT: f64 = 1e-9;
/// Numbers below this share of the largest singular value count as zero.
pub const RANK: f64 = 1e-9;

/// Lines that are handed to other programs as straight stretches: their chords leave the curve by no more, mm …
pub const FLAT: f64 = 0.002;
/// … and points of an outline that is cut are moved outwards by this, so that no chord cuts in (mm; together 0.01).
pub const FLAT_OUT: f64 = 0.008;

/// A set-off line may cross itself by less than this, mm: flattened so finely when it is looked for.
pub const CROSSING: f64 = 0.01;
/// Trimming works to this, mm.
pub const TRIM: f64 = 1e-5;
/// Two lines that differ by less than this run on straight, radians (0.01°).
pub const STRAIGHT: f64 = 1.745e-4;

/// Width and height of a drawing file give one scale if they differ by less than this share (0.1 %).
pub const SCALES_AGREE: f64 = 1e-3;
/// Lines from a drawing file that turn by more than this make a corner, where nothing else is said, radians (15°).
pub const TRACED_CORNER: f64 = 0.261_799_387_799_149_4;
/// Numbers of traced pieces are rounded to this: mm, and in inches.
pub const TRACED_STEP: f64 = 0.01;
/// The same in inches.
pub const TRACED_STEP_INCH: f64 = 1e-4;
/// An arc from a drawing file is kept as one up to this radius, mm; beyond, its centre would be nowhere.
pub const LARGEST_ARC: f64 = 10_000.0;

/// Built-in limits of proof, where a draft says nothing; proposals from common practice, no source.
pub mod limit {
    /// Seam against seam, mm.
    pub const SEAM: f64 = 1.0;
    /// Notch against notch, mm.
    pub const NOTCH: f64 = 1.0;
    /// Bend of a line that runs over a seam, radians (1°).
    pub const JOINT_ANGLE: f64 = 0.017_453_292_519_943_295;
    /// Gap at 10 mm beside the seam, mm.
    pub const JOINT_GAP: f64 = 0.5;
    /// Nearest that a notch comes to the stitching, mm (1/8 in).
    pub const NOTCH_MARGIN: f64 = 3.175;
    /// Deepest notch where nothing else is told, mm (1/4 in).
    pub const NOTCH_DEPTH: f64 = 6.35;
    /// How far one size may stand out in an angle, radians (1°).
    pub const ODD_ANGLE: f64 = 0.017_453_292_519_943_295;
    /// How far one size may stand out in a length, mm.
    pub const ODD_LENGTH: f64 = 3.0;
    /// Grain against the line that it follows, radians (0.25°).
    pub const GRAIN_ANGLE: f64 = 0.004_363_323_129_985_824;
    /// A sharp point of the cut line is cut square at so many allowances.
    pub const SHARP: f64 = 1.5;
    /// Cut lines of two widths that would meet farther than so many allowances from a corner that hardly turns make a step.
    pub const STEP: f64 = 3.0;
    /// How far beside the seam that gap is measured, mm.
    pub const JOINT_REACH: f64 = 10.0;
}

/// A direction that differs from level, plumb or another one by less (sine) is that one.
pub const LEVEL: f64 = 1e-9;

/// Natural steps of found values, by which the distance from their start is weighed: constants of the format.
pub mod step {
    /// Of a length, mm.
    pub const LENGTH: f64 = 10.0;
    /// Of an angle, radians (5°).
    pub const ANGLE: f64 = 0.087_266_462_599_716_48;
    /// Of a plain number: this share of its start, or of 1 if the start is smaller.
    pub const NUMBER: f64 = 0.1;
    /// From size to size, found values that move by more than so many of these steps are looked at: another solution may be near.
    pub const JUMP: f64 = 0.5;
}

/// When a step of the chart is told to be uneven: common practice, no source.
pub mod steps {
    /// It differs from both its neighbours by more than this share of the larger of them.
    pub const SHARE: f64 = 0.1;
    /// And by more than what the row is rounded to, which counts up to a quarter of an inch, mm.
    pub const ROUNDED_MOST: f64 = 6.35;
    /// The roundings that are looked for in a row, mm: halves and tenths of a centimetre, parts of an inch.
    pub const ROUNDED: [f64; 8] = [6.35, 5.0, 3.175, 2.0, 1.587_5, 1.0, 0.5, 0.1];
    /// How far a number may be off a multiple, as a share of the rounding.
    pub const ON_GRID: f64 = 1e-6;
}

/// Where two drafts are compared: lengths, places and handles that differ by no more are the same, mm. It is the step at which
/// outputs are written, so what is told can be seen in a file.
pub const COMPARED: f64 = 1e-3;
/// The same for plain numbers and powers of a length …
pub const COMPARED_NUMBER: f64 = 1e-6;
/// … and for angles, radians: 1e-3 mm at 100 mm.
pub const COMPARED_ANGLE: f64 = 1e-5;
/// The largest distance between two lines that are compared is found within this, mm; lines that are nearer are the same.
pub const LINES_APART: f64 = 0.01;

/// Laying pieces on cloth.
pub mod lay {
    /// Pieces may overlap, stick out or be too near by so much, mm.
    pub const DEEP: f64 = 0.01;
    /// The depth of an overlap is told within this factor …
    pub const DEPTH_WITHIN: f64 = 1.02;
    /// … or within this share of what is allowed.
    pub const DEPTH_FLOOR: f64 = 0.1;
    /// Where what was found in single precision does not stand the check, pieces are searched for so much farther apart, mm, one after the other.
    pub const APART: [f64; 4] = [0.0, 0.02, 0.2, 2.0];
    /// Outlines that are searched with lie inside the true ones by so much, mm, so that pieces that touch do not collide.
    pub const TOUCHING: f32 = 0.001;
    /// The straight stretches of a round corner at a gap lie inside it by this share of the gap: it is made wider by that.
    pub const ROUND: f64 = 0.002;
    /// Outlines are simplified outwards while their area grows by no more than this share.
    pub const SIMPLER: f32 = 0.001;
    /// Notches are filled up whose mouth is no more than this share of the diameter and whose area is no more than this share of the whole.
    pub const NOTCH: (f32, f32) = (0.01, 0.01);
    /// A length within this share of the least possible one is the least.
    pub const LEAST: f64 = 0.001;
    /// A length that exceeds a step of sale by less than this is that step, mm.
    pub const STEP: f64 = 0.01;
    /// By how much less a size may need than a smaller one before it is told, mm: less than half of the least step in which cloth is sold. Common
    /// practice, no source.
    pub const ODD: f64 = 20.0;
}
