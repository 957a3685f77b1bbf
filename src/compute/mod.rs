//! From draft to model: the graph of names, evaluated in every size.
//!
//! A [`Plan`] is what a draft means, without numbers: names resolved, formulas checked, nodes in an order in which they can
//! be computed, and the parts that hang together through found values as systems. A [`Model`] is the plan evaluated for
//! each case, that is each (view, size address). Nothing here judges; that is `proof`'s.

mod asked;
mod build;
mod cases;
mod chart;
mod choose;
mod compile;
mod derive;
mod engine;
mod finishing;
mod geometry;
mod graph;
mod inside;
mod item;
mod machine;
mod measure;
mod model;
mod names;
mod nothing;
mod plan;
mod publishing;
mod seam;
mod shape;
mod shared;
mod slots;
mod solve;
mod told;
mod trial;
mod views;
mod width;

pub use asked::{InView, VIEW_SIGN};
pub use build::unit_of;
pub use cases::{Case, CaseError, Cases, MAX_CASES};
pub(crate) use derive::{Double, Lineage, Locals, Named, Owner};
pub use engine::{Engine, guarded};
pub use finishing::{AllowancePlan, CornerPlan, CutPlan, FoldPlan, LinePlan, MarkPlan, MeasurePlan, PieceFinishing};
pub use item::{EdgeShape, Item, Mouth};
pub use measure::{Measured, measure};
pub use model::{CaseModel, Model, Slot, Solved, told_of};
pub(crate) use names::MATERIAL_MEMBERS;
pub use plan::{
    Def, Fit, Formula, FramePlan, Node, NodeId, NotchPlan, Part, Plan, SeamPlan, SegmentDef, StretchPlan, System,
};
pub use publishing::{Braced, BracedPart, MaterialPlan, NotionPlan, Publishing, StepPlan, StripPlan};
pub use seam::{Run, RunPart, run_of};
pub use slots::Slots;
pub(crate) use told::told_once;
pub use trial::Trial;
