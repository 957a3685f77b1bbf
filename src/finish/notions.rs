//! Notions: what is needed in a size, and the next size in which it is sold.

use crate::base::tolerance;
use crate::compute::{Model, NotionPlan};

/// A notion in one case; numbers of the kind of its size: mm, radians or plain.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NotionSize {
    /// What is needed; `None` where nothing is told or it cannot be computed.
    pub needed: Option<f64>,
    /// The smallest sold that is no smaller.
    pub sold: Option<f64>,
    /// The largest that is sold at all.
    pub largest: Option<f64>,
}

impl NotionSize {
    /// A notion in a case.
    pub fn of(model: &Model, case: usize, notion: &NotionPlan) -> Self {
        let needed = notion.size.as_ref().and_then(|f| model.real(case, f).ok());
        let mut sold: Vec<f64> = notion.sold.iter().filter_map(|f| model.real(case, f).ok()).collect();
        sold.sort_by(f64::total_cmp);
        let fits = |size: &&f64| needed.is_some_and(|n| **size >= n - tolerance::EQUAL);
        Self { needed, sold: sold.iter().find(fits).copied(), largest: sold.last().copied() }
    }

    /// Whether it is sold, but in no size that is large enough.
    pub fn is_too_long(&self) -> bool {
        self.needed.is_some() && self.largest.is_some() && self.sold.is_none()
    }
}
