//! The slots of a case in blocks that several models share, so that a small change copies little.

use std::ops::Index;
use std::sync::Arc;

use super::item::Stop;
use super::model::Slot;

/// Slots of one block.
const BLOCK: usize = 64;

#[derive(Clone, Debug, PartialEq)]
struct Block {
    slots: Vec<Slot>,
    /// How many of them failed.
    failed: u32,
}

/// One slot for each node of a plan.
#[derive(Clone, Debug, Default)]
pub struct Slots {
    blocks: Vec<Arc<Block>>,
    len: usize,
}

impl Slots {
    /// So many that all failed, each for something before it.
    pub(super) fn new(len: usize) -> Self {
        let block =
            |count: usize| Arc::new(Block { slots: vec![Slot::Failed(Stop::upstream()); count], failed: count as u32 });
        let blocks = (0..len).step_by(BLOCK).map(|from| block(BLOCK.min(len - from))).collect();
        Self { blocks, len }
    }

    /// The slot of a node.
    pub fn get(&self, node: usize) -> Option<&Slot> {
        self.blocks.get(node / BLOCK)?.slots.get(node % BLOCK)
    }

    pub(super) fn set(&mut self, node: usize, slot: Slot) {
        let block = Arc::make_mut(&mut self.blocks[node / BLOCK]);
        let place = &mut block.slots[node % BLOCK];
        block.failed -= u32::from(place.good().is_none());
        block.failed += u32::from(slot.good().is_none());
        *place = slot;
    }

    /// All, in the order of the nodes.
    pub fn iter(&self) -> impl Iterator<Item = &Slot> {
        self.blocks.iter().flat_map(|b| &b.slots)
    }

    /// Those that failed, with their nodes.
    pub(super) fn failed(&self) -> impl Iterator<Item = (usize, &Stop)> {
        let blocks = self.blocks.iter().enumerate().filter(|(_, b)| b.failed > 0);
        blocks.flat_map(|(k, b)| {
            b.slots.iter().enumerate().filter_map(move |(i, slot)| match slot {
                Slot::Failed(stop) => Some((k * BLOCK + i, stop)),
                Slot::Good(_) => None,
            })
        })
    }
}

impl PartialEq for Slots {
    fn eq(&self, other: &Self) -> bool {
        let mut pairs = self.blocks.iter().zip(&other.blocks);
        self.len == other.len && pairs.all(|(a, b)| Arc::ptr_eq(a, b) || a == b)
    }
}

impl Index<usize> for Slots {
    type Output = Slot;
    fn index(&self, node: usize) -> &Slot {
        &self.blocks[node / BLOCK].slots[node % BLOCK]
    }
}
