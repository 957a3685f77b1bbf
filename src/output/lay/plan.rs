//! A lay: where everything lies on a cloth. To and from a plan that is kept in a draft, how long it is, what is wrong with it.

use std::sync::Arc;

use kurbo::{Point, Rect, Vec2};

use super::job::{LayJob, LayNote, OddOne, lay_job};
use super::length::Need;
use super::packing::{Laid, LayFault, Layout, Pose, Shape, bounds, faults, posed};
use crate::base::{Unit, round_half_away, tolerance};
use crate::compute::Model;
use crate::document::{ClothLaid, LaidPiece, LaidSize, LayPlan, Nap};
use crate::finish::{case_of, plan_digest, plan_length, plan_turn};
use crate::language::literal_text;
use crate::texts::{readable, t};

/// Everything as it lies, stretch by stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Lay {
    /// What is laid.
    pub job: Arc<LayJob>,
    /// One layout for each stretch of it.
    pub layouts: Vec<Layout>,
}

/// Something wrong with a lay: on which stretch, and what.
pub type StretchFault = (usize, LayFault);

impl Lay {
    /// The polygon of a piece as it lies on its stretch, mm.
    pub fn polygon(&self, stretch: usize, piece: &Laid) -> Vec<Point> {
        let Some(shape) = self.job.stretches.get(stretch).and_then(|s| s.job.shapes.get(piece.shape)) else {
            return Vec::new();
        };
        let Some(pose) = shape.poses.get(piece.pose) else { return Vec::new() };
        let by = Vec2::new(piece.x, piece.y);
        posed(&shape.outline, pose).into_iter().map(|p| p + by).collect()
    }

    /// The box of a piece as it lies.
    pub fn room(&self, stretch: usize, piece: &Laid) -> Rect {
        bounds(&self.polygon(stretch, piece))
    }

    /// The pose of a piece.
    pub fn pose(&self, stretch: usize, piece: &Laid) -> Option<&Pose> {
        self.job.stretches.get(stretch)?.job.shapes.get(piece.shape)?.poses.get(piece.pose)
    }

    /// All places put to the step in which they are written, and lengths as they then are: what is seen is what is kept.
    pub fn on_grid(mut self) -> Self {
        for s in 0..self.layouts.len() {
            for i in 0..self.layouts[s].laid.len() {
                let piece = self.layouts[s].laid[i];
                let corner = self.room(s, &piece).origin();
                let to = |v: f64| round_half_away(v, tolerance::LAID);
                let by = Vec2::new(to(corner.x) - corner.x, to(corner.y) - corner.y);
                let laid = &mut self.layouts[s].laid[i];
                laid.x += by.x;
                laid.y += by.y;
            }
        }
        self.measured()
    }

    /// With every stretch as long as what lies on it.
    pub fn measured(mut self) -> Self {
        for s in 0..self.layouts.len() {
            let far = self.layouts[s].laid.iter().map(|l| self.room(s, l).x1).fold(0.0, f64::max);
            self.layouts[s].length = far;
        }
        self
    }

    /// What is wrong with it.
    pub fn faults(&self) -> Vec<StretchFault> {
        let each = self.job.stretches.iter().zip(&self.layouts).enumerate();
        each.flat_map(|(s, (stretch, layout))| faults(&stretch.job, layout).into_iter().map(move |f| (s, f))).collect()
    }

    /// How much cloth it needs.
    pub fn need(&self) -> Need {
        let stretches = self.job.stretches.iter().zip(&self.layouts).map(|(s, l)| (s.laid, l.length)).collect();
        let cloth = &self.job.on.cloth;
        Need::of(stretches, self.job.counted, cloth.shrinks, cloth.sold_in)
    }

    /// Share of the cloth that is covered, without strips that are counted; 0 where nothing is laid.
    pub fn covered(&self) -> f64 {
        let (mut covered, mut all) = (0.0, 0.0);
        for (stretch, layout) in self.job.stretches.iter().zip(&self.layouts) {
            covered +=
                layout.laid.iter().map(|l| stretch.job.shapes.get(l.shape).map_or(0.0, Shape::area)).sum::<f64>();
            all += layout.length * stretch.job.width;
        }
        if all > 0.0 { covered / all } else { 0.0 }
    }

    /// The reasons for its length, in sentences for readers: what may not be turned, what lies at the border or on a single layer.
    pub fn reasons(&self) -> Vec<String> {
        let mut out = Vec::new();
        let cloth = &self.job.on.cloth;
        let shapes = || self.job.stretches.iter().flat_map(|s| &s.shapes);
        let named = |is_it: &dyn Fn(&super::LayShape) -> bool| {
            let mut names: Vec<String> = shapes().filter(|s| is_it(s)).map(|s| readable(&s.name)).collect();
            names.dedup();
            names.sort();
            names.dedup();
            names.join(", ")
        };
        if cloth.nap {
            out.push(t!("lay-reason-nap"));
        } else {
            let one_way = named(&|s| s.one_way && !s.strip);
            if !one_way.is_empty() {
                out.push(t!("lay-reason-one-way", pieces = one_way));
            }
        }
        let at_border = named(&|s| s.at_border);
        if !at_border.is_empty() {
            out.push(t!("lay-reason-border", pieces = at_border));
        }
        if cloth.laid != ClothLaid::Open {
            let alone: Vec<&super::LayStretch> =
                self.job.stretches.iter().filter(|s| s.laid == ClothLaid::Open).collect();
            let mut names: Vec<String> = alone.iter().flat_map(|s| &s.shapes).map(|s| readable(&s.name)).collect();
            names.sort();
            names.dedup();
            if !names.is_empty() {
                out.push(t!("lay-reason-behind", pieces = names.join(", ")));
            }
        }
        let one_layer = named(&|s| s.one_layer);
        if !one_layer.is_empty() {
            out.push(t!("lay-reason-one-layer", pieces = one_layer));
        }
        if self.job.counted > 0.0 {
            let mut strips: Vec<String> = self.job.strips.iter().map(|(name, ..)| readable(name)).collect();
            strips.dedup();
            out.push(t!("lay-reason-strips", strips = strips.join(", ")));
        }
        if cloth.shrinks > 0.0 {
            out.push(t!("lay-reason-washed"));
        }
        out
    }

    /// What a person should know of it, in sentences for readers.
    pub fn notes(&self) -> Vec<String> {
        self.job.notes.iter().map(LayNote::words).collect()
    }

    /// The plan to be kept. `view` and `width` as they are told; `locked` says which pieces stay, stretch and place.
    pub fn to_plan(&self, model: &Model, (name, width): (&str, &str), locked: &[(usize, usize)]) -> LayPlan {
        let cloth = &self.job.on.cloth;
        let address = |case: usize| model.plan.cases.list.get(case).map_or_else(String::new, |c| c.address.clone());
        let mm = |v: f64| literal_text(round_half_away(v, tolerance::LAID), Some(Unit::Millimetre));
        let one = self.job.on.sizes.len() == 1;
        let mut places = Vec::new();
        for (s, (stretch, layout)) in self.job.stretches.iter().zip(&self.layouts).enumerate() {
            for (i, laid) in layout.laid.iter().enumerate() {
                let (Some(about), Some(pose)) = (stretch.shapes.get(laid.shape), self.pose(s, laid)) else { continue };
                let corner = self.room(s, laid).origin();
                places.push(LaidPiece {
                    piece: about.name.clone(),
                    strip: about.strip,
                    cut: about.cut as u32,
                    size: if one { String::new() } else { about.size.clone() },
                    stretch: s as u32,
                    x: mm(corner.x),
                    y: mm(corner.y),
                    turned: if pose.turned == 0.0 { String::new() } else { format!("{} deg", pose.turned) },
                    mirrored: pose.mirrored,
                    one_layer: about.one_layer,
                    locked: locked.contains(&(s, i)),
                });
            }
        }
        let sizes = self
            .job
            .on
            .sizes
            .iter()
            .map(|(case, count)| LaidSize { size: address(*case), count: if *count == 1 { 0 } else { *count } });
        let plan = LayPlan {
            name: name.to_owned(),
            view: model.view().to_owned(),
            material: cloth.name.clone(),
            // A width that is a formula is written down as what it is here.
            width: match plan_length(model, width) {
                Some(told) if (told - cloth.sold).abs() <= tolerance::EQUAL => width.to_owned(),
                _ => mm(cloth.sold),
            },
            laid: cloth.laid,
            folded_part: match (cloth.laid, cloth.folded_part) {
                (ClothLaid::FoldedPart, Some(part)) => mm(part),
                _ => String::new(),
            },
            nap: if cloth.nap { Nap::With } else { Nap::Without },
            sizes: sizes.collect(),
            places,
            digest: String::new(),
        };
        LayPlan { digest: plan_digest(model, &self.job.on, &plan), ..plan }
    }

    /// A kept plan laid out again, as far as it can be: what is not laid any more, or may not lie so, is left out. Locked pieces come with it,
    /// as stretch and place. `model` is its view's. Odd ones lie as in the plan, whatever the job says of them.
    pub fn of_plan(model: &Model, job: Arc<LayJob>, plan: &LayPlan) -> (Self, Vec<(usize, usize)>) {
        let odd = odd_ones(model, plan);
        let is_so = odd.len() == job.one_layer.len() && odd.iter().all(|o| job.one_layer.contains(o));
        let job = if is_so { job } else { lay_job(model, job.on.clone(), &odd).map_or(job, Arc::new) };
        let mut layouts: Vec<Layout> = job.stretches.iter().map(|_| Layout::default()).collect();
        let mut marks: Vec<Vec<bool>> = vec![Vec::new(); layouts.len()];
        for place in &plan.places {
            let s = place.stretch as usize;
            let Some(stretch) = job.stretches.get(s) else { continue };
            let numbers = (plan_length(model, &place.x), plan_length(model, &place.y), plan_turn(model, &place.turned));
            let (Some(x), Some(y), Some(turned)) = numbers else { continue };
            let case = case_of(model, plan, place);
            let free = |shape: usize| {
                layouts[s].laid.iter().filter(|l| l.shape == shape).count() < stretch.job.shapes[shape].count
            };
            let fits = |shape: usize| {
                let about = &stretch.shapes[shape];
                let is_it = about.name == place.piece
                    && about.strip == place.strip
                    && about.cut == place.cut as usize
                    && about.one_layer == place.one_layer
                    && case == Some(about.case);
                let poses = &stretch.job.shapes[shape].poses;
                let is_pose = |p: &Pose| {
                    p.mirrored == place.mirrored
                        && ((p.turned - turned).rem_euclid(360.0)).min((turned - p.turned).rem_euclid(360.0))
                            <= tolerance::EQUAL
                };
                // Where there are several parts of the width, the one in which it lies.
                let off = |p: &Pose| {
                    let high = bounds(&posed(&stretch.job.shapes[shape].outline, p)).height();
                    (p.across.from - y).max(y + high - p.across.to).max(0.0)
                };
                let own = (0..poses.len()).filter(|k| is_pose(&poses[*k]));
                let best = own.min_by(|a, b| off(&poses[*a]).total_cmp(&off(&poses[*b])));
                best.filter(|_| is_it && free(shape))
            };
            let Some((shape, pose)) = (0..stretch.shapes.len()).find_map(|k| Some((k, fits(k)?))) else { continue };
            let box_of = bounds(&posed(&stretch.job.shapes[shape].outline, &stretch.job.shapes[shape].poses[pose]));
            layouts[s].laid.push(Laid { shape, pose, x: x - box_of.x0, y: y - box_of.y0 });
            marks[s].push(place.locked);
        }
        // By shape, as layouts are.
        let mut locked = Vec::new();
        for (s, layout) in layouts.iter_mut().enumerate() {
            let mut order: Vec<usize> = (0..layout.laid.len()).collect();
            order.sort_by_key(|i| layout.laid[*i].shape);
            locked.extend(order.iter().enumerate().filter(|(_, i)| marks[s][**i]).map(|(now, _)| (s, now)));
            layout.laid = order.into_iter().map(|i| layout.laid[i]).collect();
        }
        (Self { job, layouts }.measured(), locked)
    }
}

/// What a plan lays on two layers to be cut from one of them.
fn odd_ones(model: &Model, plan: &LayPlan) -> Vec<OddOne> {
    let one = |place: &LaidPiece| {
        let found = if place.strip {
            model.draft.strips.iter().position(|s| s.name == place.piece)
        } else {
            model.draft.pieces.iter().position(|p| p.name == place.piece)
        };
        let case = case_of(model, plan, place)?;
        Some(OddOne { strip: place.strip, place: found?, cut: place.cut as usize, case })
    };
    plan.places.iter().filter(|p| p.one_layer).filter_map(one).collect()
}
