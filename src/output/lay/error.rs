//! Why something cannot be laid: always with which piece, in which size, and what could be done.

use thiserror::Error;

use super::length::{EIGHTH, both, rounded_up};
use crate::base::DisplayUnit;
use crate::finish::ClothError;
use crate::texts::{own_length, owned, say};

/// Why there is no lay plan.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LayError {
    /// It cannot be told what is laid.
    #[error(transparent)]
    Cloth(#[from] ClothError),
    /// Something is wider than the cloth.
    #[error("{}", too_wide((piece, size), [*least, *room, *sold], *lengthwise, *on_fold))]
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
    #[error("{}", match size.as_str() {
        "" => say!("lay-border", piece),
        _ => say!("lay-border-in", piece, size),
    })]
    Border {
        /// The piece.
        piece: String,
        /// The size.
        size: String,
    },
    /// A strip does not come out of the cloth.
    #[error("{}", strip_words((strip, size), *usable, *most))]
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
    #[error("{}", say!("lay-not-found"))]
    NotFound,
    /// Locked pieces overlap or lie outside.
    #[error("{}", say!("lay-locked"))]
    Locked,
}

/// A length for whoever is at the program.
fn own_both(mm: f64) -> String {
    owned(|| both(mm))
}

/// The same rounded up: to a millimetre, and to an eighth of an inch.
fn both_up(mm: f64) -> String {
    let (cm, inches) = (rounded_up(mm, 1.0), rounded_up(mm, EIGHTH));
    format!("{} ({})", own_length(cm, DisplayUnit::Cm), own_length(inches, DisplayUnit::InchEighths))
}

/// That a piece is too wide, and what could be done about it.
fn too_wide(
    (piece, size): (&str, &str),
    [least, room, sold]: [f64; 3],
    lengthwise: Option<f64>,
    on_fold: bool,
) -> String {
    let mut done = vec![say!("lay-wide-cloth", width = both_up(sold))];
    if let Some(mm) = lengthwise {
        done.push(say!("lay-wide-lengthwise", width = own_both(mm)));
    }
    if on_fold {
        done.push(say!("lay-wide-halves"));
    } else if room > 0.0 {
        let pieces = (least / room).ceil().max(2.0) as u64;
        done.push(say!("lay-wide-joined", pieces));
    }
    let (least, room, done) = (own_both(least), own_both(room), done.join(", "));
    match size {
        "" => say!("lay-too-wide", piece, least, room, done),
        _ => say!("lay-too-wide-in", piece, size, least, room, done),
    }
}

fn strip_words((strip, size): (&str, &str), usable: f64, most: Option<f64>) -> String {
    let why = match most {
        Some(most) => say!("lay-strip-not-joined", most = own_both(most)),
        None => say!("lay-strip-narrow", usable = own_both(usable)),
    };
    match size {
        "" => say!("lay-strip", strip, why),
        _ => say!("lay-strip-in", strip, size, why),
    }
}
