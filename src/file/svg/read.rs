//! From the text of a file to its outlines: groups, transforms, nested drawings, what is drawn again by `use`.

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;
use std::str::FromStr;

use kurbo::{Affine, Vec2};
use roxmltree::{Document, Node, ParsingOptions};
use svgtypes::{Align, AspectRatio, Length, LengthUnit, Transform, ViewBox};

use super::shapes::{View, Way, length, mm_of, shape, short};
use super::{DEEPEST, MOST_BYTES, MOST_ELEMENTS, MOST_OUTLINES, MOST_RUNS, Outline, Outlines, Scale, SvgError};
use crate::base::tolerance;
use crate::texts::{decimal, owned, say};

/// The namespace of drawings.
const SVG: &str = "http://www.w3.org/2000/svg";
/// That of links in older files.
const LINK: &str = "http://www.w3.org/1999/xlink";

/// Reads the outlines of a file. The file is not touched.
///
/// # Errors
/// Why there are none.
pub fn open_svg(path: &Path) -> Result<Outlines, SvgError> {
    let fail = |e: std::io::Error| SvgError::File { path: path.to_owned(), problem: e.to_string() };
    let file = std::fs::File::open(path).map_err(fail)?;
    if !file.metadata().map_err(fail)?.is_file() {
        return Err(SvgError::File { path: path.to_owned(), problem: say!("svg-no-file") });
    }
    let mut bytes = Vec::new();
    file.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(fail)?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(SvgError::TooLarge { most: MOST_BYTES });
    }
    if bytes.starts_with(&[0x1f, 0x8b]) {
        return Err(SvgError::Packed);
    }
    let text = String::from_utf8(bytes).map_err(|e| SvgError::Letters(e.utf8_error().valid_up_to()))?;
    read_svg(&text)
}

/// Reads the outlines in a text.
///
/// # Errors
/// Why there are none.
pub fn read_svg(text: &str) -> Result<Outlines, SvgError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // Entities of the file itself are wanted (drawing programs write them); their depth and number are bounded by the reader,
    // and nothing outside is ever read.
    let options = ParsingOptions { allow_dtd: true, nodes_limit: MOST_ELEMENTS * 4, ..ParsingOptions::default() };
    let document = Document::parse_with_options(text, options).map_err(|e| SvgError::Xml(e.to_string()))?;
    let root = document.root_element();
    let is_svg = root.tag_name().name() == "svg" && root.tag_name().namespace().is_none_or(|n| n == SVG);
    if !is_svg {
        return Err(SvgError::Kind(short(root.tag_name().name())));
    }
    let mut walk = Walk::default();
    for node in document.descendants() {
        if let Some(id) = node.attribute("id") {
            walk.ids.entry(id).or_insert(node);
        }
        if node.tag_name().name() == "style" && node.text().is_some_and(|t| t.contains("transform")) {
            walk.count(&say!("svg-moving-styles"));
        }
    }
    let view_box = view_box(root, &mut walk.notes);
    let view = view_box.map(|v| (v.w, v.h));
    walk.children(root, Affine::IDENTITY, view, "", 0)?;
    let scale = scale(root, view_box);
    walk.done(scale)
}

/// The units of a drawing: origin and size.
fn view_box(node: Node<'_, '_>, notes: &mut BTreeMap<String, usize>) -> Option<ViewBox> {
    let text = node.attribute("viewBox")?;
    let view = ViewBox::from_str(text).ok().filter(|v| [v.x, v.y, v.w, v.h].iter().all(|n| n.is_finite()));
    if view.is_none() {
        *notes.entry(say!("svg-view-box", text = short(text))).or_default() += 1;
    }
    view
}

/// What a file says of its scale. Nothing is guessed: only a width and a height in units of length that agree with the units
/// of the drawing tell it.
fn scale(root: Node<'_, '_>, view_box: Option<ViewBox>) -> Scale {
    let side = |name: &str| -> Result<f64, String> {
        let text = root.attribute(name).ok_or_else(|| say!("svg-no-side", name))?;
        let length = Length::from_str(text.trim()).map_err(|_| say!("svg-no-length", name, text = short(text)))?;
        match (mm_of(length.unit), length.unit) {
            (Some(mm), _) if length.number > 0.0 && (length.number * mm).is_finite() => Ok(length.number * mm),
            (None, LengthUnit::None) => Err(say!("svg-no-unit", name, text = short(text))),
            (None, LengthUnit::Px) => Err(say!("svg-px", name, text = short(text))),
            _ => Err(say!("svg-no-size", name, text = short(text))),
        }
    };
    let told = side("width").and_then(|w| Ok((w, side("height")?)));
    match (told, view_box) {
        (Err(why), _) => Scale::Unknown(why),
        (Ok(_), None) => Scale::Unknown(say!("svg-size-no-view-box")),
        (Ok((w, h)), Some(view)) => {
            let (across, down) = (w / view.w, h / view.h);
            if (across / down - 1.0).abs() > tolerance::SCALES_AGREE {
                let [across, down] = [across, down].map(|mm| owned(|| decimal(&format!("{mm:.4}"))));
                return Scale::Unknown(say!("svg-scales-differ", across, down));
            }
            Scale::Known(across)
        }
    }
}

#[derive(Default)]
struct Walk<'a, 'i> {
    ids: BTreeMap<&'a str, Node<'a, 'i>>,
    /// What is being drawn again, so that nothing is drawn within itself.
    using: Vec<Node<'a, 'i>>,
    seen: u32,
    all: Vec<Outline>,
    /// What was left out, and how often.
    notes: BTreeMap<String, usize>,
}

impl<'a, 'i> Walk<'a, 'i> {
    fn count(&mut self, what: &str) {
        *self.notes.entry(what.to_owned()).or_default() += 1;
    }

    fn children(&mut self, of: Node<'a, 'i>, map: Affine, view: View, name: &str, deep: usize) -> Result<(), SvgError> {
        if deep > DEEPEST {
            let words = say!("svg-groups-deep", most = DEEPEST.to_string());
            return Err(SvgError::TooMuch(words));
        }
        for node in of.children().filter(Node::is_element) {
            self.element(node, map, view, name, deep)?;
        }
        Ok(())
    }

    fn element(
        &mut self,
        node: Node<'a, 'i>,
        map: Affine,
        view: View,
        above: &str,
        deep: usize,
    ) -> Result<(), SvgError> {
        self.seen += 1;
        if self.seen > MOST_ELEMENTS {
            let words = say!("svg-elements", most = MOST_ELEMENTS.to_string());
            return Err(SvgError::TooMuch(words));
        }
        if node.tag_name().namespace().is_some_and(|n| n != SVG) {
            return Ok(()); // what a drawing program keeps for itself
        }
        let kind = node.tag_name().name();
        match kind {
            "defs" | "symbol" | "clipPath" | "mask" | "pattern" | "marker" | "linearGradient" | "radialGradient"
            | "filter" | "title" | "desc" | "metadata" | "script" | "view" => return Ok(()),
            "style" => {
                self.count(&say!("svg-style-sheets"));
                return Ok(());
            }
            "text" | "textPath" | "tspan" => {
                self.count(&say!("svg-texts"));
                return Ok(());
            }
            "image" => {
                self.count(&say!("svg-pictures"));
                return Ok(());
            }
            _ => {}
        }
        let style: String =
            node.attribute("style").unwrap_or_default().chars().filter(|c| !c.is_whitespace()).collect();
        if node.attribute("display").is_some_and(|d| d.trim() == "none") || style.contains("display:none") {
            self.count(&say!("svg-hidden"));
            return Ok(());
        }
        if style.contains("transform:") || node.attribute("transform-origin").is_some() {
            self.count(&say!("svg-moved-by-style"));
            return Ok(());
        }
        if !style.is_empty() || node.attribute("class").is_some() {
            self.count(&say!("svg-styles"));
        }
        if node.attribute("clip-path").is_some_and(|c| c != "none") {
            self.count(&say!("svg-clipped"));
        }
        let map = match node.attribute("transform").map(Transform::from_str) {
            None => map,
            Some(Ok(t)) if [t.a, t.b, t.c, t.d, t.e, t.f].iter().all(|n| n.is_finite()) => {
                map * Affine::new([t.a, t.b, t.c, t.d, t.e, t.f])
            }
            Some(_) => {
                self.count(&say!("svg-transform"));
                return Ok(());
            }
        };
        let name = own_name(node).unwrap_or(above);
        match kind {
            "g" | "a" | "switch" => self.children(node, map, view, name, deep + 1),
            "svg" => self.nested(node, map, view, None, name, deep),
            "use" => self.again(node, map, view, name, deep),
            _ => match shape(node, map, view, name) {
                Ok(Some(outlines)) => outlines.into_iter().try_for_each(|o| self.take(o)),
                Ok(None) => {
                    self.count(&say!("svg-unknown-kind", kind = short(kind)));
                    Ok(())
                }
                Err(problem) => {
                    self.count(&match own_name(node) {
                        Some(name) => say!("svg-unread-named", kind, name = short(name), problem),
                        None => say!("svg-unread", kind, problem),
                    });
                    Ok(())
                }
            },
        }
    }

    /// A drawing within a drawing, or a symbol of the size that its `use` gives.
    fn nested(
        &mut self,
        node: Node<'a, 'i>,
        map: Affine,
        view: View,
        size: Option<(Option<f64>, Option<f64>)>,
        name: &str,
        deep: usize,
    ) -> Result<(), SvgError> {
        let own = view_box(node, &mut self.notes);
        let placed = || -> Result<(Affine, View), String> {
            let part = |attribute: &str, way| length(node, attribute, view, way);
            let at = match node.tag_name().name() {
                "svg" => Vec2::new(part("x", Way::Across)?.unwrap_or(0.0), part("y", Way::Down)?.unwrap_or(0.0)),
                _ => Vec2::ZERO,
            };
            let (given_w, given_h) = size.unwrap_or_default();
            let w = given_w.or(part("width", Way::Across)?).or(view.map(|v| v.0));
            let h = given_h.or(part("height", Way::Down)?).or(view.map(|v| v.1));
            let Some(own) = own else { return Ok((map * Affine::translate(at), w.zip(h))) };
            let (Some(w), Some(h)) = (w, h) else { return Err(say!("svg-inner-no-size")) };
            let ratio = node.attribute("preserveAspectRatio").and_then(|r| AspectRatio::from_str(r).ok());
            Ok((map * Affine::translate(at) * fitted(own, w, h, ratio), Some((own.w, own.h))))
        };
        match placed() {
            Ok((map, view)) => self.children(node, map, view, name, deep + 1),
            Err(problem) => {
                self.count(&say!("svg-inner", problem));
                Ok(())
            }
        }
    }

    /// What is drawn again.
    fn again(&mut self, node: Node<'a, 'i>, map: Affine, view: View, name: &str, deep: usize) -> Result<(), SvgError> {
        let link = node.attribute("href").or_else(|| node.attribute((LINK, "href"))).unwrap_or_default();
        let Some(id) = link.strip_prefix('#') else {
            self.count(&say!("svg-use-outside", link = short(link)));
            return Ok(());
        };
        let Some(target) = self.ids.get(id).copied() else {
            self.count(&say!("svg-use-missing", id = short(id)));
            return Ok(());
        };
        if self.using.contains(&target) || node.ancestors().any(|a| a == target) {
            self.count(&say!("svg-use-itself", id = short(id)));
            return Ok(());
        }
        let part = |attribute: &str, way| length(node, attribute, view, way);
        let placed = part("x", Way::Across).and_then(|x| {
            let (y, w, h) = (part("y", Way::Down)?, part("width", Way::Across)?, part("height", Way::Down)?);
            Ok((Vec2::new(x.unwrap_or(0.0), y.unwrap_or(0.0)), (w, h)))
        });
        let (by, size) = match placed {
            Ok(placed) => placed,
            Err(problem) => {
                self.count(&say!("svg-use-not-placed", problem));
                return Ok(());
            }
        };
        if deep + self.using.len() > DEEPEST {
            let words = say!("svg-uses-deep", most = DEEPEST.to_string());
            return Err(SvgError::TooMuch(words));
        }
        self.using.push(target);
        let map = map * Affine::translate(by);
        let done = match target.tag_name().name() {
            "symbol" => self.nested(target, map, view, Some(size), name, deep + 1),
            _ => self.element(target, map, view, name, deep + 1),
        };
        self.using.pop();
        done
    }

    fn take(&mut self, outline: Outline) -> Result<(), SvgError> {
        let points = outline.runs.iter().map(super::Run::end).chain([outline.start]);
        if !points.clone().all(|p| p.x.is_finite() && p.y.is_finite()) {
            self.count(&say!("svg-numbers-large"));
            return Ok(());
        }
        if points.clone().all(|p| p == outline.start) && outline.runs.len() < 2 && outline.bounds().area() <= 0.0 {
            self.count(&say!("svg-without-size"));
            return Ok(());
        }
        if outline.runs.len() > MOST_RUNS {
            self.count(&say!("svg-stretches", most = MOST_RUNS.to_string()));
            return Ok(());
        }
        self.all.push(outline);
        if self.all.len() > MOST_OUTLINES {
            let words = say!("svg-outlines", most = MOST_OUTLINES.to_string());
            return Err(SvgError::TooMuch(words));
        }
        Ok(())
    }

    fn done(self, scale: Scale) -> Result<Outlines, SvgError> {
        let notes: Vec<String> = self.notes.iter().map(|(what, times)| format!("{what}: {times}")).collect();
        if self.all.is_empty() {
            let left = if notes.is_empty() { String::new() } else { say!("svg-left-out", notes = notes.join("; ")) };
            return Err(SvgError::Nothing(left));
        }
        Ok(Outlines { all: self.all, scale, notes })
    }
}

/// How an element is called: by a label that a person gave it, else by its id.
fn own_name<'a>(node: Node<'a, '_>) -> Option<&'a str> {
    let label = node.attributes().find(|a| a.name() == "label" && a.namespace().is_some()).map(|a| a.value());
    label.or_else(|| node.attribute("id")).map(str::trim).filter(|n| !n.is_empty())
}

/// A drawing's units fitted into a room of this size, as the standard says.
fn fitted(own: ViewBox, w: f64, h: f64, ratio: Option<AspectRatio>) -> Affine {
    let ratio = ratio.unwrap_or(AspectRatio { defer: false, align: Align::XMidYMid, slice: false });
    let (mut sx, mut sy) = (w / own.w, h / own.h);
    if ratio.align != Align::None {
        let both = if ratio.slice { sx.max(sy) } else { sx.min(sy) };
        (sx, sy) = (both, both);
    }
    let (left_x, left_y) = (w - own.w * sx, h - own.h * sy);
    let (share_x, share_y) = match ratio.align {
        Align::None | Align::XMinYMin => (0.0, 0.0),
        Align::XMidYMin => (0.5, 0.0),
        Align::XMaxYMin => (1.0, 0.0),
        Align::XMinYMid => (0.0, 0.5),
        Align::XMidYMid => (0.5, 0.5),
        Align::XMaxYMid => (1.0, 0.5),
        Align::XMinYMax => (0.0, 1.0),
        Align::XMidYMax => (0.5, 1.0),
        Align::XMaxYMax => (1.0, 1.0),
    };
    Affine::translate(Vec2::new(left_x * share_x, left_y * share_y))
        * Affine::scale_non_uniform(sx, sy)
        * Affine::translate(Vec2::new(-own.x, -own.y))
}
