//! Folding: the journal's records go into blocks, each id in one block only.

use super::{BlockKey, RowKey, Shelf, Shelved};
use crate::packed::{Block, Damage, pack};
use crate::{Id, Record};
use std::collections::{BTreeMap, BTreeSet};

/// A change of blocks and journal, to be written in one transaction, all of it or nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fold {
    /// Blocks to write, new or in place of older bytes.
    pub blocks_in: Vec<(BlockKey, Vec<u8>)>,
    /// Blocks to remove.
    pub blocks_out: Vec<BlockKey>,
    /// Journal rows to remove.
    pub journal_out: Vec<RowKey>,
    /// The blocks from which this was worked out, each with its checksum.
    pub base: Vec<(BlockKey, u32)>,
}

/// New records that lie elsewhere until they are packed.
pub(crate) trait More {
    /// Their ids, none of them on the shelf.
    fn ids(&self) -> Vec<Id>;
    /// One of them.
    fn record(&mut self, id: Id) -> Record;
}

/// No records besides those on the shelf.
pub(crate) struct NoMore;

impl More for NoMore {
    fn ids(&self) -> Vec<Id> {
        Vec::new()
    }

    fn record(&mut self, _: Id) -> Record {
        unreachable!("no id was offered")
    }
}

impl Shelf {
    /// Says how the records of the journal go into blocks: those that lie in a block already rewrite it, new ones fill
    /// up the newest block and then fresh ones.
    pub fn fold_plan(&self, most: usize) -> Fold {
        self.fold_with(most, &mut NoMore, &BTreeSet::new())
    }

    /// The same with more new records, read when their block is packed, and leaving out some altogether.
    pub(crate) fn fold_with(&self, most: usize, more: &mut dyn More, gone: &BTreeSet<Id>) -> Fold {
        let mut fresh = more.ids();
        let held = self.overlay.values().filter(|held| held.place.is_none()).map(|held| held.record.id);
        fresh.extend(held.filter(|id| !gone.contains(id)));
        fresh.sort_unstable();
        let mut fold = Fold {
            journal_out: self.rows.iter().cloned().collect(),
            base: self.blocks.iter().map(|shelved| (shelved.key, shelved.block.checksum())).collect(),
            ..Fold::default()
        };
        let mut fresh = fresh.into_iter();
        for (key, changed) in self.changed_blocks(gone, most, fresh.len()) {
            let mut records = rewritten(self.block(key).expect("a block holds its records"), changed, gone);
            if self.is_last(key) {
                let room = most.saturating_sub(records.len());
                records.extend(fresh.by_ref().take(room).map(|id| self.new_record(id, more)));
            }
            match records.is_empty() {
                true => fold.blocks_out.push(key),
                false => fold.blocks_in.push((key, pack(&records))),
            }
        }
        let next = self.blocks.last().map_or(1, |last| last.key + 1);
        for (key, ids) in (next..).zip(fresh.as_slice().chunks(most)) {
            let records: Vec<Record> = ids.iter().map(|id| self.new_record(*id, more)).collect();
            fold.blocks_in.push((key, pack(&records)));
        }
        fold
    }

    /// The blocks to rewrite, each with its changed records. The last is among them when new records find room in it.
    fn changed_blocks(&self, gone: &BTreeSet<Id>, most: usize, fresh: usize) -> BTreeMap<BlockKey, Vec<Record>> {
        let mut changed: BTreeMap<BlockKey, Vec<Record>> = BTreeMap::new();
        for held in self.overlay.values() {
            if let Some((key, _)) = held.place {
                changed.entry(key).or_default().push(held.record.clone());
            }
        }
        for (shelved, _) in gone.iter().filter_map(|id| self.place_of(*id)) {
            changed.entry(shelved.key).or_default();
        }
        if let Some(last) = self.blocks.last().filter(|last| last.block.len() < most && fresh > 0) {
            changed.entry(last.key).or_default();
        }
        changed
    }

    fn is_last(&self, key: BlockKey) -> bool {
        self.blocks.last().is_some_and(|last| last.key == key)
    }

    fn new_record(&self, id: Id, more: &mut dyn More) -> Record {
        let held = self.overlay.get(&id).map(|held| held.record.clone());
        held.unwrap_or_else(|| more.record(id))
    }

    /// True when the blocks are still those from which a fold was worked out; otherwise it must be worked out again.
    pub fn stands_on(&self, fold: &Fold) -> bool {
        let now = self.blocks.iter().map(|shelved| (shelved.key, shelved.block.checksum()));
        now.eq(fold.base.iter().copied())
    }

    /// Takes over a fold that was written.
    ///
    /// **Errors**: as [`Damage`], if the fold's bytes are no blocks; the shelf is then as it was.
    pub fn apply_fold(&mut self, fold: Fold) -> Result<(), Damage> {
        let opened: Vec<(BlockKey, Block)> = fold
            .blocks_in
            .into_iter()
            .map(|(key, bytes)| Ok((key, Block::open(bytes)?)))
            .collect::<Result<_, Damage>>()?;
        let keys: BTreeSet<BlockKey> = opened.iter().map(|(key, _)| *key).chain(fold.blocks_out).collect();
        self.blocks.retain(|shelved| !keys.contains(&shelved.key));
        self.blocks.extend(opened.into_iter().map(|(key, block)| Shelved::of(key, block)));
        self.blocks.sort_by_key(|shelved| shelved.key);
        self.days.take();
        for row in &fold.journal_out {
            self.rows.remove(row);
        }
        self.settle_after(&fold.journal_out);
        Ok(())
    }

    /// Records saved after the fold was worked out stay above the blocks; all others are in them now.
    fn settle_after(&mut self, folded: &[RowKey]) {
        let folded: BTreeSet<&RowKey> = folded.iter().collect();
        let overlay = std::mem::take(&mut self.overlay);
        for (id, held) in overlay {
            let place = self.place_of(id).map(|(shelved, row)| (shelved.key, row));
            let later = held.rows.iter().any(|row| !folded.contains(row));
            if later {
                self.overlay.insert(id, super::Held { place, ..held });
            }
        }
        let keys: Vec<BlockKey> = self.block_keys().collect();
        keys.into_iter().for_each(|key| self.settle_overlay(key));
    }
}

fn rewritten(block: &Block, changed: Vec<Record>, gone: &BTreeSet<Id>) -> Vec<Record> {
    let mut records: BTreeMap<Id, Record> = block.records().map(|record| (record.id, record)).collect();
    records.extend(changed.into_iter().map(|record| (record.id, record)));
    records.retain(|id, _| !gone.contains(id));
    records.into_values().collect()
}
