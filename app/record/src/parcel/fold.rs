//! A fold in a parcel: its keys as JSON, its blocks as parts.

use super::Garbled;
use crate::shelf::{BlockKey, Fold, RowKey};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(super) struct FoldNote {
    keys: Vec<BlockKey>,
    blocks_out: Vec<BlockKey>,
    journal_out: Vec<RowKey>,
    base: Vec<(BlockKey, u32)>,
}

impl FoldNote {
    pub(super) fn of(fold: Fold) -> (Self, Vec<Vec<u8>>) {
        let Fold { blocks_in, blocks_out, journal_out, base } = fold;
        let (keys, blocks) = blocks_in.into_iter().unzip();
        (Self { keys, blocks_out, journal_out, base }, blocks)
    }

    pub(super) fn with(self, blocks: Vec<Vec<u8>>) -> Result<Fold, Garbled> {
        let Self { keys, blocks_out, journal_out, base } = self;
        if keys.len() != blocks.len() {
            return Err(Garbled);
        }
        Ok(Fold { blocks_in: keys.into_iter().zip(blocks).collect(), blocks_out, journal_out, base })
    }
}
