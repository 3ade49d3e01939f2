//! Takes an import back.
//!
//! In goes what an import noted (the records as they stood before it, and how much of them was seen after it) and the
//! shelf as it is now; out come the blocks as if the import had never been, with what was edited since. It is never a
//! wave of deletions, which would travel back and delete other people's records. Only the last import can be taken
//! back: what a later one brought would be taken for edits.

use crate::packed::{Block, Damage, pack};
use crate::shelf::{Fold, NoMore, Shelf};
use crate::{Dot, Edit, Id, Record, Seen};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// What is needed to take an import back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Undo {
    /// The changed records as they stood before.
    before: BTreeMap<Id, Record>,
    /// What had been seen of each added or changed record after the import: records without fields.
    after: BTreeMap<Id, Record>,
}

/// What taking an import back does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Undone {
    /// Records that stand as they did before the import.
    pub restored: usize,
    /// Records that the import had brought and that are gone again.
    pub removed: usize,
    /// Records that the import had brought and that stay, because they were edited since or something new hangs on
    /// them.
    pub kept: usize,
}

impl Undo {
    pub(crate) fn note(&mut self, before: Option<&Record>, after: &Record) {
        self.before.extend(before.map(|before| (before.id, before.clone())));
        let bare = Record { seen: after.seen.clone(), ..Record::new(after.id, after.kind.clone()) };
        self.after.insert(after.id, bare);
    }

    pub(crate) fn notes(&self, id: Id) -> bool {
        self.after.contains_key(&id)
    }

    /// True when there is nothing to take back.
    pub fn is_empty(&self) -> bool {
        self.after.is_empty()
    }

    /// As bytes.
    pub fn pack(&self) -> Vec<u8> {
        let before = pack(&self.before.values().cloned().collect::<Vec<_>>());
        let after = pack(&self.after.values().cloned().collect::<Vec<_>>());
        let length = u32::try_from(before.len()).expect("a block is far smaller than 4 GB");
        [&length.to_le_bytes()[..], &before, &after].concat()
    }

    /// Reads what [`Undo::pack`] wrote.
    ///
    /// **Errors**: as [`Damage`].
    pub fn open(bytes: &[u8]) -> Result<Self, Damage> {
        let (length, rest) = bytes.split_first_chunk::<4>().ok_or(Damage::Length)?;
        let (before, after) = rest.split_at_checked(u32::from_le_bytes(*length) as usize).ok_or(Damage::Length)?;
        let records = |bytes: &[u8]| -> Result<BTreeMap<Id, Record>, Damage> {
            Ok(Block::open(bytes.to_vec())?.records().map(|record| (record.id, record)).collect())
        };
        Ok(Self { before: records(before)?, after: records(after)? })
    }

    /// Works out the blocks without the import. What was edited since is written anew as edit `dot` of a session that
    /// has written nothing else.
    pub fn take_back(&self, mut shelf: Shelf, dot: &Dot, entered: &str, most: usize) -> (Fold, Undone) {
        let kept = self.kept(&shelf);
        let brought = self.after.keys().copied().filter(|id| !self.before.contains_key(id));
        let (kept, gone): (BTreeSet<Id>, BTreeSet<Id>) = brought.partition(|id| kept.contains(id));
        for (id, before) in &self.before {
            if let Some(now) = shelf.get(*id) {
                shelf.replace(self.restored(before, &now, dot, entered));
            }
        }
        let fold = shelf.fold_with(most, &mut NoMore, &gone);
        (fold, Undone { restored: self.before.len(), removed: gone.len(), kept: kept.len() })
    }

    /// The record as it stood before the import, with what was edited since.
    fn restored(&self, before: &Record, now: &Record, dot: &Dot, entered: &str) -> Record {
        let seen = self.after.get(&now.id).map(|after| &after.seen);
        let mut edit = Edit::of(before);
        for (field, _) in now.fields.iter().filter(|(_, versions)| seen.is_some_and(|seen| has_later(versions, seen))) {
            edit.set(field, now.shown(field).cloned().unwrap_or_default());
        }
        if edit.is_idle() { before.clone() } else { edit.apply(Some(before), dot, entered) }
    }

    /// The added records that stay: those edited since, and those on which something hangs that stays or is new.
    fn kept(&self, shelf: &Shelf) -> BTreeSet<Id> {
        let edited = |after: &&Record| {
            let now = shelf.get(after.id);
            now.is_some_and(|now| now.fields.values().any(|versions| has_later(versions, &after.seen)))
        };
        let mut kept: BTreeSet<Id> = self.after.values().filter(edited).map(|after| after.id).collect();
        let new = shelf.entries().filter(|entry| !self.after.contains_key(&entry.id) && !entry.deleted);
        let mut above: Vec<Id> = new.filter_map(|entry| entry.parent).collect();
        above.extend(kept.iter().filter_map(|id| shelf.entry(*id)?.parent));
        while let Some(id) = above.pop() {
            if self.after.contains_key(&id) && kept.insert(id) {
                above.extend(shelf.entry(id).and_then(|entry| entry.parent));
            }
        }
        kept
    }
}

/// True when a version was written by an edit that had not been seen.
fn has_later(versions: &[crate::Version], seen: &Seen) -> bool {
    versions.iter().any(|version| version.dot.number > seen.of(&version.dot.replica))
}
