//! What of the chart is shown, and what a person wishes of it.

use std::cell::RefCell;
use std::rc::Rc;

use crate::app::scene::Scene;
use crate::app::state::Field;
use crate::document::Axis;
use crate::session::{Block, Laid, lay};

/// The pages of the chart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(in crate::app) enum Page {
    /// The numbers.
    #[default]
    Numbers,
    /// Axes, labels, size sets.
    Sizes,
    /// Numbers that wait to be confirmed.
    Proposals,
    /// A block that is to be taken in.
    Paste,
}

/// What of the chart is shown.
#[derive(Default)]
pub(in crate::app) struct ChartShown {
    pub page: Page,
    /// Whether steps stand under the numbers.
    pub steps: bool,
    /// A cell that the keyboard is to go to, once it is there and no dialog lies over it.
    pub go: Option<Field>,
    /// The block that is looked at.
    pub block: Option<Block>,
    /// The file that it came from; empty: it was pasted.
    pub source: String,
    /// How it lies on the chart, and on which revision.
    laid: RefCell<Option<(u64, Rc<Laid>)>>,
}

impl ChartShown {
    /// Looks at another block, or the same with something else said of it.
    pub fn look_at(&mut self, block: Option<Block>) {
        self.block = block;
        self.laid.replace(None);
    }

    /// How the block lies on the chart, found once for a revision.
    pub fn laid(&self, scene: &Scene) -> Option<Rc<Laid>> {
        let block = self.block.as_ref()?;
        let revision = scene.computed.revision;
        if let Some((known, laid)) = &*self.laid.borrow()
            && *known == revision
        {
            return Some(Rc::clone(laid));
        }
        let laid = Rc::new(lay(scene.draft(), block));
        *self.laid.borrow_mut() = Some((revision, Rc::clone(&laid)));
        Some(laid)
    }
}

/// What a person wishes of the chart.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::app) enum ChartWish {
    /// Show this page.
    Page(Page),
    /// Look at this text as a block, put at this row and column.
    Look(String, (String, String)),
    /// Something else is said of the block.
    Say(Box<Block>),
    /// Take its right cells.
    Take,
    /// The keyboard is in the cell that it was to go to.
    Arrived,
    /// Put the block away.
    Close,
    /// Ask for a new label of an axis.
    AddLabel(Axis),
    /// Ask for another label.
    RenameLabel(Axis, String),
    /// Ask before a label is taken out.
    DeleteLabel(Axis, String),
}
