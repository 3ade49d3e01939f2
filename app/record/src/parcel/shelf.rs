//! A copy of a shelf in a parcel: its keys as JSON, its overlay and its blocks as parts.

use super::Garbled;
use crate::packed::pack;
use crate::shelf::{BlockKey, RowKey, Shelf};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(super) struct ShelfNote {
    keys: Vec<BlockKey>,
    rows: Vec<RowKey>,
}

impl ShelfNote {
    pub(super) fn of(shelf: &Shelf) -> Self {
        Self { keys: shelf.block_keys().collect(), rows: shelf.rows().cloned().collect() }
    }

    pub(super) fn rebuilt(self, overlay: Vec<u8>, blocks: Vec<Vec<u8>>) -> Result<Shelf, Garbled> {
        if self.keys.len() != blocks.len() {
            return Err(Garbled);
        }
        let mut shelf = Shelf::default();
        for (key, bytes) in self.keys.into_iter().zip(blocks) {
            shelf.add_block(key, bytes).map_err(|_| Garbled)?;
        }
        shelf.add_overlay(overlay, self.rows).map_err(|_| Garbled)?;
        Ok(shelf)
    }
}

pub(super) fn overlay(shelf: &Shelf) -> Vec<u8> {
    pack(&shelf.overlaid().cloned().collect::<Vec<_>>())
}

pub(super) fn blocks(shelf: &Shelf) -> impl Iterator<Item = Vec<u8>> {
    shelf.block_keys().filter_map(|key| shelf.block_bytes(key)).map(<[u8]>::to_vec)
}
