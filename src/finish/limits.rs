//! The limits by which a draft is judged: its settings, or the built-in ones.

use crate::base::{Code, Finding, Unit, tolerance};
use crate::compute::unit_of;
use crate::document::Draft;
use crate::language::{Found, Frame, Kind, Op, Scope, check, parse};
use crate::texts::say;

/// Limits, in mm and radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Seam against seam, mm.
    pub seam: f64,
    /// Bend over a seam, radians.
    pub joint_angle: f64,
    /// Gap beside the seam, mm.
    pub joint_gap: f64,
    /// Notch against notch, mm.
    pub notch: f64,
    /// Nearest that a notch comes to the stitching, mm.
    pub notch_margin: f64,
    /// How deep a notch is cut, mm, if that is told.
    pub notch_depth: Option<f64>,
    /// The allowance where an edge tells none, mm, if the draft has one.
    pub allowance: Option<f64>,
    /// How far one size may stand out in an angle, radians.
    pub odd_angle: f64,
    /// How far one size may stand out in a length, mm.
    pub odd_length: f64,
    /// Grain against the line that it follows, radians.
    pub grain_angle: f64,
}

/// A formula without names.
struct NoNames(Unit);

impl Scope for NoNames {
    fn look_up(&self, _parts: &[&str]) -> Found {
        Found::Unknown(None)
    }
    fn frame(&self) -> Option<Frame> {
        None
    }
    fn frame_name(&self, _frame: Frame) -> String {
        String::new()
    }
    fn unit(&self) -> Unit {
        self.0
    }
}

/// A plain literal of one kind, inside (mm, radians); `None` if it is anything else.
pub fn literal(text: &str, kind: Kind, unit: Unit) -> Result<f64, Box<Finding>> {
    let checked = match parse(text).map_err(Some).and_then(|expr| check(&expr, &NoNames(unit))) {
        Ok(checked) => checked,
        Err(finding) => return Err(finding.unwrap_or_else(|| Box::new(Finding::new(Code::NoAnswer)))),
    };
    match checked.program.root {
        Op::Constant(value) if checked.kind == kind => Ok(value),
        _ => Err(Box::new(Finding::new(Code::SettingBad))),
    }
}

impl Limits {
    /// The limits of a draft. A setting that cannot be used is told, and the built-in one holds.
    pub fn of(draft: &Draft, findings: &mut Vec<Finding>) -> Self {
        let unit = unit_of(draft);
        let mut read = |name: &'static str, text: &str, kind: Kind, built_in: f64| {
            if text.is_empty() {
                return built_in;
            }
            match literal(text, kind, unit) {
                Ok(value) if value > 0.0 => value,
                _ => {
                    let expected = if kind == Kind::Angle { say!("setting-angle") } else { say!("setting-length") };
                    findings.push(Finding {
                        formula: text.to_owned(),
                        ..Finding::new(Code::SettingBad)
                            .at(format!("settings.{name}"))
                            .word("name", name)
                            .word("expected", expected)
                    });
                    built_in
                }
            }
        };
        let s = &draft.settings;
        let limits = Self {
            seam: read("seam_limit", &s.seam_limit, Kind::LENGTH, tolerance::limit::SEAM),
            joint_angle: read("joint_angle", &s.joint_angle, Kind::Angle, tolerance::limit::JOINT_ANGLE),
            joint_gap: read("joint_gap", &s.joint_gap, Kind::LENGTH, tolerance::limit::JOINT_GAP),
            notch: read("notch_limit", &s.notch_limit, Kind::LENGTH, tolerance::limit::NOTCH),
            notch_margin: read("notch_margin", &s.notch_margin, Kind::LENGTH, tolerance::limit::NOTCH_MARGIN),
            notch_depth: Some(read("notch_depth", &s.notch_depth, Kind::LENGTH, 0.0)).filter(|d| *d > 0.0),
            allowance: Some(read("allowance", &s.allowance, Kind::LENGTH, 0.0)).filter(|w| *w > 0.0),
            odd_angle: read("odd_angle", &s.odd_angle, Kind::Angle, tolerance::limit::ODD_ANGLE),
            odd_length: read("odd_length", &s.odd_length, Kind::LENGTH, tolerance::limit::ODD_LENGTH),
            grain_angle: read("grain_angle", &s.grain_angle, Kind::Angle, tolerance::limit::GRAIN_ANGLE),
        };
        read("page_margin", &s.page_margin, Kind::LENGTH, 0.0);
        limits
    }
}
