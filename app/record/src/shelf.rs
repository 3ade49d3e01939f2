//! All records of one book: packed blocks, and over them the records that were changed since.
//!
//! In go the bytes of blocks and of journal rows, in any order, and records just saved; out come records, directory
//! entries, counts, days, children and search results. Records that lie in both a block and the journal count once and
//! are shown merged. The shelf writes nothing: [`Shelf::fold_plan`] says what is to be written and
//! [`Shelf::apply_fold`] takes it over once it was.

mod find;
mod fold;
mod left;
mod refer;
mod select;

use crate::day::DayNumber;
use crate::facts::Facts;
use crate::merge::merge;
use crate::packed::{Block, Damage, Entry};
use crate::{Id, Kind, Record};
use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

pub use find::{Found, Hit};
pub use fold::Fold;
pub(crate) use fold::{More, NoMore};
pub use select::Selection;

/// The key of a block.
pub type BlockKey = u32;
/// The key of a journal row: the session's name and its running number.
pub type RowKey = (String, u32);

/// All records of one book.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    /// Ordered by key: the newest last.
    blocks: Vec<Shelved>,
    overlay: BTreeMap<Id, Held>,
    /// The journal rows whose records lie in the overlay.
    rows: BTreeSet<RowKey>,
    days: OnceCell<BTreeMap<DayNumber, usize>>,
}

#[derive(Clone, Debug)]
struct Shelved {
    key: BlockKey,
    block: Block,
    /// The least and the greatest id, and the least and the greatest on which something hangs.
    range: Option<(Id, Id)>,
    parents: Option<(Id, Id)>,
}

impl Shelved {
    fn of(key: BlockKey, block: Block) -> Self {
        Self { key, range: block.range(), parents: block.parents(), block }
    }
}

fn lies_in(id: Id, range: Option<(Id, Id)>) -> bool {
    range.is_some_and(|(least, greatest)| least <= id && id <= greatest)
}

/// A record that was changed since its block was written, or lies in none.
#[derive(Clone, Debug)]
struct Held {
    record: Record,
    facts: Facts,
    /// In which block it lies: key and row.
    place: Option<(BlockKey, usize)>,
    /// The journal rows that hold it.
    rows: Vec<RowKey>,
}

impl Held {
    fn entry(&self) -> Entry<'_> {
        let Facts { deleted, day, parent, number, conflict, digest } = &self.facts;
        Entry {
            id: self.record.id,
            kind: &self.record.kind,
            deleted: *deleted,
            day: *day,
            parent: *parent,
            number: number.as_deref(),
            conflict: *conflict,
            digest: *digest,
        }
    }
}

impl Shelf {
    /// Adds a block, or puts it in the place of the one with the same key.
    ///
    /// **Errors**: as [`Damage`]; the shelf is then as it was.
    pub fn add_block(&mut self, key: BlockKey, bytes: Vec<u8>) -> Result<(), Damage> {
        let block = Block::open(bytes)?;
        self.days.take();
        let shelved = Shelved::of(key, block);
        match self.blocks.binary_search_by_key(&key, |shelved| shelved.key) {
            Ok(place) => self.blocks[place] = shelved,
            Err(place) => self.blocks.insert(place, shelved),
        }
        self.settle_overlay(key);
        Ok(())
    }

    /// Merges the records of a block that has just come into those that lie over it.
    fn settle_overlay(&mut self, key: BlockKey) {
        let Some(shelved) = self.blocks.iter().find(|shelved| shelved.key == key) else { return };
        let Some((least, greatest)) = shelved.range else { return };
        for (id, held) in self.overlay.range_mut(least..=greatest) {
            let Some(row) = shelved.block.find(*id) else { continue };
            held.place = Some((key, row));
            if let Some(below) = shelved.block.record(row) {
                held.record = merge(&below, &held.record);
                held.facts = Facts::of(&held.record);
            }
        }
    }

    /// Adds the records of a journal row.
    ///
    /// **Errors**: as [`Damage`]; the shelf is then as it was.
    pub fn add_row(&mut self, bytes: Vec<u8>, row: RowKey) -> Result<(), Damage> {
        let records = unpacked(bytes)?;
        records.into_iter().for_each(|record| self.put(record, Some(row.clone())));
        self.rows.insert(row);
        Ok(())
    }

    /// Adds a copy of another shelf's overlay, and the journal rows from which it came.
    pub(crate) fn add_overlay(&mut self, bytes: Vec<u8>, rows: Vec<RowKey>) -> Result<(), Damage> {
        unpacked(bytes)?.into_iter().for_each(|record| self.put(record, None));
        self.rows.extend(rows);
        Ok(())
    }

    /// Takes a record that was saved in a journal row, merging it with what is there.
    pub fn put(&mut self, record: Record, row: Option<RowKey>) {
        let id = record.id;
        let mut rows = self.overlay.get(&id).map(|held| held.rows.clone()).unwrap_or_default();
        rows.extend(row.clone());
        self.rows.extend(row);
        let before = self.entry(id).and_then(|entry| living_day(&entry));
        let place = self.place_of(id).map(|(shelved, row)| (shelved.key, row));
        let record = match self.get(id) {
            Some(now) => merge(&now, &record),
            None => record,
        };
        let held = Held { facts: Facts::of(&record), record, place, rows };
        let after = living_day(&held.entry());
        self.overlay.insert(id, held);
        self.move_day(before, after);
    }

    /// Puts a record in the place of what is there, without merging.
    pub(crate) fn replace(&mut self, record: Record) {
        let place = self.place_of(record.id).map(|(shelved, row)| (shelved.key, row));
        self.days.take();
        self.overlay.insert(record.id, Held { facts: Facts::of(&record), record, place, rows: Vec::new() });
    }

    fn move_day(&mut self, before: Option<DayNumber>, after: Option<DayNumber>) {
        let Some(days) = self.days.get_mut() else { return };
        if let Some(count) = before.and_then(|day| days.get_mut(&day)) {
            *count -= 1;
        }
        if let Some(day) = after {
            *days.entry(day).or_insert(0) += 1;
        }
        days.retain(|_, count| *count > 0);
    }

    /// The record with this id, deleted or not.
    pub fn get(&self, id: Id) -> Option<Record> {
        if let Some(held) = self.overlay.get(&id) {
            return Some(held.record.clone());
        }
        let (shelved, row) = self.place_of(id)?;
        shelved.block.record(row)
    }

    /// What the directory says of a record, deleted or not.
    pub fn entry(&self, id: Id) -> Option<Entry<'_>> {
        if let Some(held) = self.overlay.get(&id) {
            return Some(held.entry());
        }
        let (shelved, row) = self.place_of(id)?;
        shelved.block.entry(row)
    }

    fn place_of(&self, id: Id) -> Option<(&Shelved, usize)> {
        let near = self.blocks.iter().rev().filter(|shelved| lies_in(id, shelved.range));
        near.filter_map(|shelved| Some((shelved, shelved.block.find(id)?))).next()
    }

    /// How many living records of a kind there are.
    pub fn count(&self, kind: &Kind) -> usize {
        let packed: usize = self.blocks.iter().map(|shelved| shelved.block.count(kind)).sum();
        let alive = |entry: &Entry| !entry.deleted && entry.kind == kind;
        let over = self.overlay.values().filter(|held| alive(&held.entry())).count();
        let under = self.overlay.values().filter(|held| self.under(held).is_some_and(|entry| alive(&entry))).count();
        packed - under + over
    }

    /// What the block says of a record that lies in the overlay.
    fn under(&self, held: &Held) -> Option<Entry<'_>> {
        let (key, row) = held.place?;
        self.block(key)?.entry(row)
    }

    fn block(&self, key: BlockKey) -> Option<&Block> {
        let place = self.blocks.binary_search_by_key(&key, |shelved| shelved.key).ok()?;
        Some(&self.blocks[place].block)
    }

    /// The directory entries of all records, deleted ones too, each once and in no order.
    pub fn entries(&self) -> impl Iterator<Item = Entry<'_>> {
        let packed = self.blocks.iter().flat_map(|shelved| shelved.block.entries());
        packed.filter(|entry| !self.is_over(entry.id)).chain(self.overlay.values().map(Held::entry))
    }

    /// True when the record lies in the overlay. The overlay holds mostly the newest, so most ids fall outside it.
    fn is_over(&self, id: Id) -> bool {
        self.overlay.last_key_value().is_some_and(|(last, _)| id <= *last)
            && self.overlay.first_key_value().is_some_and(|(first, _)| id >= *first)
            && self.overlay.contains_key(&id)
    }

    /// The records that hang on another one, deleted ones too, ordered by id.
    pub fn children(&self, parent: Id) -> Vec<Id> {
        let mut ids = self.packed_children(parent);
        let over = self.overlay.values().filter(|held| held.facts.parent == Some(parent));
        ids.extend(over.map(|held| held.record.id));
        ids.sort_unstable();
        ids.dedup();
        ids
    }

    fn packed_children(&self, parent: Id) -> Vec<Id> {
        let near = self.blocks.iter().filter(|shelved| lies_in(parent, shelved.parents));
        let rows = near.flat_map(|shelved| {
            let block = &shelved.block;
            block.children(parent).filter_map(|row| block.entry(row)).map(|entry| entry.id)
        });
        rows.filter(|id| !self.is_over(*id)).collect()
    }

    /// The days with living events, in order, and how many each has.
    pub fn days(&self) -> Vec<(DayNumber, usize)> {
        self.days.get_or_init(|| self.counted_days()).iter().map(|(day, count)| (*day, *count)).collect()
    }

    fn counted_days(&self) -> BTreeMap<DayNumber, usize> {
        let mut days = BTreeMap::new();
        for shelved in &self.blocks {
            for (day, row) in shelved.block.days() {
                if !shelved.block.is_deleted(row) {
                    *days.entry(day).or_insert(0) += 1;
                }
            }
        }
        for held in self.overlay.values() {
            if let Some(day) = self.under(held).and_then(|entry| living_day(&entry)) {
                *days.entry(day).or_insert(1) -= 1;
            }
            if let Some(day) = living_day(&held.entry()) {
                *days.entry(day).or_insert(0) += 1;
            }
        }
        days.retain(|_, count| *count > 0);
        days
    }

    /// The living events of a day, ordered by id.
    pub fn events_on(&self, day: DayNumber) -> Vec<Id> {
        let living = self.of_day(day).filter(|entry| !entry.deleted);
        let mut ids: Vec<Id> = living.map(|entry| entry.id).collect();
        ids.sort_unstable();
        ids.dedup();
        ids
    }

    /// The events of a day, deleted ones too.
    fn of_day(&self, day: DayNumber) -> impl Iterator<Item = Entry<'_>> {
        let packed = self.blocks.iter().flat_map(move |shelved| {
            let block = &shelved.block;
            block.of_day(day).filter_map(|row| block.entry(row))
        });
        let over = self.overlay.values().map(Held::entry).filter(move |entry| entry.day == Some(day));
        packed.filter(|entry| !self.is_over(entry.id)).chain(over)
    }

    /// The living records of a kind, ordered by id.
    pub fn by_kind(&self, kind: &Kind) -> Vec<Id> {
        let having = self.blocks.iter().filter(|shelved| shelved.block.count(kind) > 0);
        let packed = having.flat_map(|shelved| shelved.block.entries()).filter(|entry| !self.is_over(entry.id));
        let all = packed.chain(self.overlay.values().map(Held::entry));
        let mut ids: Vec<Id> = all.filter(|entry| !entry.deleted && entry.kind == kind).map(|entry| entry.id).collect();
        ids.sort_unstable();
        ids
    }

    /// The newest living records of a kind, the newest first, at most so many.
    pub fn newest(&self, kind: &Kind, most: usize) -> Vec<Id> {
        let mut newest: BTreeSet<Id> = BTreeSet::new();
        let mut offer = |id: Id| {
            newest.insert(id);
            if newest.len() > most {
                newest.pop_first();
            }
            newest.len() < most || newest.first() < Some(&id)
        };
        let wanted = |entry: &Entry| !entry.deleted && entry.kind == kind;
        for held in self.overlay.values().rev().filter(|held| wanted(&held.entry())) {
            if !offer(held.record.id) {
                break;
            }
        }
        for shelved in self.blocks.iter().rev() {
            let living = shelved.block.entries().rev().filter(|entry| wanted(entry) && !self.is_over(entry.id));
            for entry in living {
                if !offer(entry.id) {
                    break;
                }
            }
        }
        newest.into_iter().rev().collect()
    }

    /// How many records lie in the overlay, waiting to be folded.
    pub fn waiting(&self) -> usize {
        self.overlay.len()
    }

    /// The journal rows whose records lie in the overlay.
    pub fn rows(&self) -> impl Iterator<Item = &RowKey> {
        self.rows.iter()
    }

    /// The keys of the blocks, ascending.
    pub fn block_keys(&self) -> impl Iterator<Item = BlockKey> {
        self.blocks.iter().map(|shelved| shelved.key)
    }

    /// The bytes of a block.
    pub fn block_bytes(&self, key: BlockKey) -> Option<&[u8]> {
        self.block(key).map(Block::bytes)
    }

    /// The records that lie in the overlay.
    pub fn overlaid(&self) -> impl Iterator<Item = &Record> {
        self.overlay.values().map(|held| &held.record)
    }
}

fn unpacked(bytes: Vec<u8>) -> Result<Vec<Record>, Damage> {
    let block = Block::open(bytes)?;
    (0..block.len()).map(|row| block.record(row)).collect::<Option<_>>().ok_or(Damage::Content)
}

fn living_day(entry: &Entry) -> Option<DayNumber> {
    entry.day.filter(|_| !entry.deleted)
}
