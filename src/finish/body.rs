//! A piece in one case as it is finished: its stitch line edge by edge, with darts, pleats and tucks.

use std::sync::Arc;

use kurbo::{Affine, Vec2};

use crate::compute::{FramePlan, Item, Model};
use crate::curves::{Curve, Pt};
use crate::document::{DartForm, Piece, Pressed};

/// A piece in one case.
#[derive(Clone, Debug)]
pub(super) struct Body {
    /// Edges as drawn, in the order of the outline.
    pub edges: Vec<Arc<Curve<f64>>>,
    /// What opens on them.
    pub mouths: Vec<BodyMouth>,
    /// 1 where the inside is on the right as the outline runs, else -1.
    pub sense: f64,
}

/// A dart, pleat or tuck.
#[derive(Clone, Debug)]
pub(super) struct BodyMouth {
    /// Its edge.
    pub edge: usize,
    /// Flat places of its feet.
    pub feet: [f64; 2],
    /// Its feet.
    pub at: [Pt<f64>; 2],
    /// Its tip; pleats and tucks have none.
    pub tip: Option<Pt<f64>>,
    /// Towards which end it is pressed.
    pub pressed: Pressed,
    /// Which leg is kept.
    pub kept: Pressed,
    /// How it is sewn.
    pub form: DartForm,
    /// Whether its legs bow: its mouth is then left as it is drawn.
    pub is_bowed: bool,
    /// Its place among the piece's darts, pleats and tucks.
    pub place: usize,
}

impl Body {
    /// The piece of a frame; none where an edge or a dart has no shape.
    pub fn of(model: &Model, case: usize, frame: &FramePlan, piece: &Piece) -> Option<Self> {
        let mut edges = Vec::with_capacity(frame.edges.len());
        for edge in &frame.edges {
            edges.push(model.item(case, *edge)?.edge()?.curve.clone());
        }
        let first = edges.first()?.start();
        for pair in 0..edges.len() {
            let next = if pair + 1 < edges.len() { edges[pair + 1].start() } else { first };
            if (edges[pair].end() - next).length() > crate::base::tolerance::ON_EDGE {
                return None;
            }
        }
        let sense = model.item(case, frame.sense)?.real()?;
        let darts = piece.darts.iter().map(|d| (&d.on, d.pressed, d.kept, d.form));
        let tucks = piece.pleats.iter().chain(&piece.tucks);
        let tucks = tucks.map(|t| (&t.on, t.pressed, Pressed::ToStart, DartForm::Folded));
        let mut mouths = Vec::new();
        for (place, ((on, pressed, kept, form), (node, _))) in darts.chain(tucks).zip(&frame.mouths).enumerate() {
            if form == DartForm::TwoEnded {
                continue;
            }
            let edge = piece.edges.iter().position(|e| e.name == *on)?;
            let Item::Mouth(mouth) = model.item(case, *node)? else { return None };
            let feet = [mouth.first, mouth.second];
            let at = [mouth.first_foot, mouth.second_foot];
            let is_bowed = mouth.bow.is_some_and(|bow| bow.abs() > crate::base::tolerance::EQUAL);
            mouths.push(BodyMouth { edge, feet, at, tip: mouth.tip, pressed, kept, form, is_bowed, place });
        }
        mouths
            .sort_by(|a, b| (a.edge, a.feet[0]).partial_cmp(&(b.edge, b.feet[0])).unwrap_or(std::cmp::Ordering::Equal));
        Some(Self { edges, mouths, sense })
    }

    /// The piece as it is cut from cloth that changes its size: `along` and `across` a heading, each as a factor.
    pub fn compensated(&self, heading: f64, along: f64, across: f64) -> Option<Self> {
        let warp = warp(heading, along, across);
        let at = |p: Pt<f64>| {
            let q = warp * p.value();
            Pt::new(q.x, q.y)
        };
        let edges: Option<Vec<_>> = self.edges.iter().map(|e| e.warped(warp).ok().map(Arc::new)).collect();
        let edges = edges?;
        let mouths = self.mouths.iter().map(|m| {
            let place = |foot: Pt<f64>| edges[m.edge].locate(foot).along;
            let feet = m.at.map(at);
            BodyMouth { feet: feet.map(place), at: feet, tip: m.tip.map(at), ..m.clone() }
        });
        let mouths = mouths.collect();
        Some(Self { edges, mouths, sense: self.sense })
    }
}

/// Stretches the plane along and across a heading, by factors.
pub(super) fn warp(heading: f64, along: f64, across: f64) -> Affine {
    Affine::rotate(heading)
        * Affine::scale_non_uniform(along, across)
        * Affine::rotate(-heading)
        * Affine::translate(Vec2::ZERO)
}
