//! The basic shapes, and the numbers in their attributes.

use kurbo::{Affine, Point, Vec2};
use roxmltree::Node;
use svgtypes::{Length, LengthUnit, PointsParser};

use super::path::{ellipse, outlines, rectangle};
use super::{CSS_PER_INCH, Outline, Run};
use crate::texts::say;

/// What lengths of a shape are shares of where they are given in `%`: the width and height of its view; none: not known.
pub(super) type View = Option<(f64, f64)>;

/// Which way a length runs, for `%`.
#[derive(Clone, Copy)]
pub(super) enum Way {
    Across,
    Down,
    Either,
}

/// Millimetres of an absolute unit.
pub(super) fn mm_of(unit: LengthUnit) -> Option<f64> {
    Some(match unit {
        LengthUnit::Mm => 1.0,
        LengthUnit::Cm => 10.0,
        LengthUnit::In => 25.4,
        LengthUnit::Pt => 25.4 / 72.0,
        LengthUnit::Pc => 25.4 / 6.0,
        LengthUnit::None | LengthUnit::Px | LengthUnit::Em | LengthUnit::Ex | LengthUnit::Percent => return None,
    })
}

/// A length in units of the file; absolute units are so many CSS pixels, as the standard says.
///
/// # Errors
/// Why it cannot be known.
pub(super) fn length(node: Node<'_, '_>, name: &str, view: View, way: Way) -> Result<Option<f64>, String> {
    let Some(text) = node.attribute(name) else { return Ok(None) };
    if text.trim() == "auto" {
        return Ok(None);
    }
    let length: Length = text.trim().parse().map_err(|_| say!("svg-no-length", name, text = short(text)))?;
    let value = match (length.unit, mm_of(length.unit)) {
        (_, Some(mm)) => length.number * mm * CSS_PER_INCH / 25.4,
        (LengthUnit::None | LengthUnit::Px, _) => length.number,
        (LengthUnit::Percent, _) => {
            let (w, h) = view.ok_or_else(|| say!("svg-share", name, text = short(text)))?;
            let whole = match way {
                Way::Across => w,
                Way::Down => h,
                Way::Either => ((w * w + h * h) / 2.0).sqrt(),
            };
            whole * length.number / 100.0
        }
        _ => return Err(say!("svg-letter-size", name, text = short(text))),
    };
    if value.is_finite() { Ok(Some(value)) } else { Err(say!("svg-side-large", name)) }
}

/// The outlines of a shape; `None`: it is no shape.
///
/// # Errors
/// What is wrong with it.
pub(super) fn shape(node: Node<'_, '_>, map: Affine, view: View, name: &str) -> Result<Option<Vec<Outline>>, String> {
    use Way::{Across, Down, Either};
    let number = |attribute: &str, way| length(node, attribute, view, way).map(|l| l.unwrap_or(0.0));
    Ok(Some(match node.tag_name().name() {
        "path" => match node.attribute("d") {
            Some(data) => outlines(data, map, name)?,
            None => Vec::new(),
        },
        "rect" => {
            let (x, y) = (number("x", Across)?, number("y", Down)?);
            let (w, h) = (number("width", Across)?, number("height", Down)?);
            let (rx, ry) = (length(node, "rx", view, Across)?, length(node, "ry", view, Down)?);
            let radii = Vec2::new(rx.or(ry).unwrap_or(0.0), ry.or(rx).unwrap_or(0.0));
            match w > 0.0 && h > 0.0 {
                true => vec![rectangle(Point::new(x, y), Vec2::new(w, h), radii, map, name)],
                false => Vec::new(),
            }
        }
        "circle" => {
            let (x, y, r) = (number("cx", Across)?, number("cy", Down)?, number("r", Either)?);
            if r > 0.0 { vec![ellipse(Point::new(x, y), Vec2::new(r, r), map, name)] } else { Vec::new() }
        }
        "ellipse" => {
            let (x, y) = (number("cx", Across)?, number("cy", Down)?);
            let (rx, ry) = (length(node, "rx", view, Across)?, length(node, "ry", view, Down)?);
            let radii = Vec2::new(rx.or(ry).unwrap_or(0.0), ry.or(rx).unwrap_or(0.0));
            match radii.x > 0.0 && radii.y > 0.0 {
                true => vec![ellipse(Point::new(x, y), radii, map, name)],
                false => Vec::new(),
            }
        }
        "line" => {
            let from = Point::new(number("x1", Across)?, number("y1", Down)?);
            let to = Point::new(number("x2", Across)?, number("y2", Down)?);
            let runs = vec![Run::Straight(map * to)];
            vec![Outline { name: name.to_owned(), start: map * from, runs, closed: false }]
        }
        kind @ ("polyline" | "polygon") => {
            let points: Vec<Point> = PointsParser::from(node.attribute("points").unwrap_or_default())
                .map(|(x, y)| map * Point::new(x, y))
                .collect();
            let closed = kind == "polygon";
            match points.split_first() {
                Some((first, rest)) if !rest.is_empty() => {
                    let mut runs: Vec<Run> = rest.iter().copied().map(Run::Straight).collect();
                    if closed && rest.last() != Some(first) {
                        runs.push(Run::Straight(*first));
                    }
                    vec![Outline { name: name.to_owned(), start: *first, runs, closed }]
                }
                _ => Vec::new(),
            }
        }
        _ => return Ok(None),
    }))
}

/// A text for a message, not too long.
pub(super) fn short(text: &str) -> String {
    const MOST: usize = 40;
    let clean: String = text.chars().take(MOST).map(|c| if c.is_control() { ' ' } else { c }).collect();
    if text.chars().count() > MOST { format!("{clean} …") } else { clean }
}
