//! Why something cannot be laid: always with which piece, in which size, and what could be done.

use thiserror::Error;

use super::length::{EIGHTH, rounded_up};
use crate::base::{DisplayUnit, shown};
use crate::finish::ClothError;

/// Why there is no lay plan.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LayError {
    /// It cannot be told what is laid.
    #[error(transparent)]
    Cloth(#[from] ClothError),
    /// Something is wider than the cloth.
    #[error("{piece} does not fit{}: it is {} across in its narrowest way and has {}; {}", in_size(size), both(*least), both(*room), done(*sold, *least, *room, *lengthwise, *on_fold))]
    TooWide {
        /// The piece or strip.
        piece: String,
        /// The size.
        size: String,
        /// Its width in its narrowest way, mm.
        least: f64,
        /// What there is for it, mm.
        room: f64,
        /// The least width of cloth as it is sold on which it would lie, mm.
        sold: f64,
        /// How wide it is with its thread across the cloth, mm, if it would fit so.
        lengthwise: Option<f64>,
        /// Whether it is cut on the fold.
        on_fold: bool,
    },
    /// A piece at the border would lie with its edge away from it.
    #[error(
        "{piece} cannot lie at the border{}: the way its arrow points, the edge for the border looks to the other side; turn its grain by half, or let it lie both ways",
        in_size(size)
    )]
    Border {
        /// The piece.
        piece: String,
        /// The size.
        size: String,
    },
    /// A strip does not come out of the cloth.
    #[error("the strip {strip} does not come out of the cloth{}: {}", in_size(size), strip_words(*usable, *most))]
    Strip {
        /// The strip.
        strip: String,
        /// The size.
        size: String,
        /// The usable width, mm.
        usable: f64,
        /// The longest piece, mm, where it is longer and nothing tells how it is joined.
        most: Option<f64>,
    },
    /// No layout was found.
    #[error("no lay without overlap was found in the time; give it more")]
    NotFound,
    /// Locked pieces overlap or lie outside.
    #[error("pieces that are to stay where they are overlap, or lie beyond the cloth; move or unlock them")]
    Locked,
}

fn in_size(size: &str) -> String {
    if size.is_empty() { String::new() } else { format!(" in size {size}") }
}

/// A length in cm and in inches.
fn both(mm: f64) -> String {
    format!("{} ({})", shown(mm, DisplayUnit::Cm), shown(mm, DisplayUnit::InchEighths))
}

/// The same rounded up: to a millimetre, and to an eighth of an inch.
fn both_up(mm: f64) -> String {
    let (cm, inches) = (rounded_up(mm, 1.0), rounded_up(mm, EIGHTH));
    format!("{} ({})", shown(cm, DisplayUnit::Cm), shown(inches, DisplayUnit::InchEighths))
}

/// What could be done about a piece that is too wide.
fn done(sold: f64, least: f64, room: f64, lengthwise: Option<f64>, on_fold: bool) -> String {
    let mut out = vec![format!("take cloth at least {} wide", both_up(sold))];
    if let Some(mm) = lengthwise {
        out.push(format!("or cut it with its length along the cloth, where it is {} across", both(mm)));
    }
    if on_fold {
        out.push("or lay it on open cloth in two halves with a seam".to_owned());
    } else if room > 0.0 {
        let pieces = (least / room).ceil().max(2.0);
        out.push(format!("or join it of {pieces} pieces"));
    }
    out.join(", ")
}

fn strip_words(usable: f64, most: Option<f64>) -> String {
    match most {
        Some(most) => format!(
            "it is longer than the longest piece, {}, and nothing tells how it is joined; say the allowance of its joins",
            both(most)
        ),
        None => format!("{} between the selvedges are not enough; take wider cloth", both(usable)),
    }
}
