//! What an import would do, worked out before anything is written.
//!
//! In go a shelf and the bytes of a log file, out comes what to show a person (how many records would be added,
//! changed, deleted, are known already; where people did not agree) and what to write if the person agrees: blocks,
//! what is needed to undo it, and marks for the records that are now the same here as in the file. Nothing is written.

use crate::marks::Marks;
use crate::shelf::{Fold, More, Shelf};
use crate::undo::Undo;
use crate::wire::{Header, Reader, Refusal};
use crate::{Change, Id, Kind, Outcome, Record, check::Problem, facts::Facts, merge};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// How many records of one kind an import would touch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tally {
    /// Not there before, and living.
    pub added: usize,
    /// There before, and something is new in them.
    pub changed: usize,
    /// Deleted by the import, or deleted before they ever came here.
    pub deleted: usize,
    /// Nothing new in them.
    pub same: usize,
}

/// What an import would do, to be shown.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    /// What the file says about itself; its sessions belong with the book's.
    pub header: Header,
    /// How many records of each kind, by the kind's name.
    pub kinds: BTreeMap<String, Tally>,
    /// The records that would be added.
    pub added: Vec<Id>,
    /// The records that would be changed.
    pub changed: Vec<Id>,
    /// The fields on which people did not agree, and had until now.
    pub conflicts: Vec<(Id, String)>,
    /// The numbers of the containers that would be added.
    pub numbers: Vec<String>,
    /// The days of the events in the file, and how many each has.
    pub days: BTreeMap<i32, usize>,
    /// What is odd in the file.
    pub problems: Vec<Problem>,
}

impl Summary {
    /// True when the import would change nothing.
    pub fn is_idle(&self) -> bool {
        self.kinds.values().all(|tally| tally.added + tally.changed + tally.deleted == 0)
    }
}

/// What an import would do, and what to write for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// To be shown.
    pub summary: Summary,
    /// To be written.
    pub fold: Fold,
    /// To be kept as long as the import can be undone.
    pub undo: Undo,
    /// The records that are now the same here as in the file: they have left the device, or came from elsewhere.
    pub marks: Marks,
}

/// Works out what the import of a file would do.
///
/// **Errors**: as [`Refusal`].
pub fn plan(shelf: Shelf, file: &[u8], book: &str, most: usize) -> Result<Plan, Refusal> {
    let reader = Reader::open(file)?;
    reader.header.mergeable(book)?;
    let mut work = Work::of(shelf, reader);
    for place in 0..work.reader.len() {
        let record = work.reader.record(place)?;
        work.take(place, record);
    }
    Ok(work.finish(most))
}

/// A plan being worked out.
struct Work<'a> {
    shelf: Shelf,
    reader: Reader<'a>,
    summary: Summary,
    undo: Undo,
    marks: Vec<(Id, u64)>,
    /// New records and their places in the file, where they stay until they are packed.
    fresh: BTreeMap<Id, usize>,
    met: BTreeSet<Id>,
}

impl<'a> Work<'a> {
    fn of(shelf: Shelf, reader: Reader<'a>) -> Self {
        let summary = Summary { header: reader.header.clone(), ..Summary::default() };
        Self {
            shelf,
            reader,
            summary,
            undo: Undo::default(),
            marks: Vec::new(),
            fresh: BTreeMap::new(),
            met: BTreeSet::new(),
        }
    }

    fn take(&mut self, place: usize, record: Record) {
        if !self.met.insert(record.id) {
            return self.take_second(record);
        }
        let facts = Facts::of(&record);
        if let Some(day) = facts.day.filter(|_| !facts.deleted) {
            *self.summary.days.entry(day).or_insert(0) += 1;
        }
        let known = self.shelf.entry(record.id).map(|entry| (entry.digest, entry.deleted));
        match known {
            None => self.take_new(place, &record, facts),
            // Whoever has seen the same edits holds the same record.
            Some((digest, _)) if digest == facts.digest => {
                self.tally(&record.kind).same += 1;
                self.marks.push((record.id, digest));
            }
            Some(_) => self.take_known(&record),
        }
    }

    fn take_new(&mut self, place: usize, record: &Record, facts: Facts) {
        let outcome = Outcome::of(None, record);
        self.note(record.id, outcome);
        self.undo.note(None, record);
        self.marks.push((record.id, facts.digest));
        self.fresh.insert(record.id, place);
        if facts.deleted {
            self.tally(&record.kind).deleted += 1;
        } else {
            self.tally(&record.kind).added += 1;
            self.summary.added.push(record.id);
            self.summary.numbers.extend(facts.number);
        }
    }

    fn take_known(&mut self, record: &Record) {
        let before = self.shelf.get(record.id).expect("the directory names it");
        let after = merge(&before, record);
        let outcome = Outcome::of(Some(&before), &after);
        if after.seen == record.seen {
            self.marks.push((after.id, after.seen.digest()));
        }
        if outcome.change == Change::Same {
            self.tally(&record.kind).same += 1;
            return;
        }
        if after.is_deleted() && !before.is_deleted() {
            self.tally(&record.kind).deleted += 1;
        } else {
            self.tally(&record.kind).changed += 1;
            self.summary.changed.push(after.id);
        }
        self.note(after.id, outcome);
        self.undo.note(Some(&before), &after);
        self.shelf.put(after, None);
    }

    /// A record that stands in the file for the second time.
    fn take_second(&mut self, record: Record) {
        let new = self.fresh.remove(&record.id);
        let first = match new {
            Some(place) => self.reader.record(place).ok(),
            None => self.shelf.get(record.id),
        };
        let first = first.expect("it was met before");
        self.summary.problems.extend(Problem::of_two_copies(&first, &record));
        let both = merge(&first, &record);
        if new.is_some() || self.undo.notes(record.id) {
            self.undo.note(None, &both);
        } else {
            self.undo.note(Some(&first), &both);
        }
        self.shelf.put(both, None);
    }

    fn tally(&mut self, kind: &Kind) -> &mut Tally {
        self.summary.kinds.entry(kind.name().to_owned()).or_default()
    }

    fn note(&mut self, id: Id, outcome: Outcome) {
        self.summary.conflicts.extend(outcome.conflicts.into_iter().map(|field| (id, field)));
    }

    fn finish(mut self, most: usize) -> Plan {
        let mut lines = Lines { reader: &mut self.reader, places: &self.fresh };
        let fold = if self.undo.is_empty() {
            Fold::default()
        } else {
            self.shelf.fold_with(most, &mut lines, &BTreeSet::new())
        };
        Plan { summary: self.summary, fold, undo: self.undo, marks: Marks::sorted(self.marks) }
    }
}

/// Records that stay in the file until they are packed.
struct Lines<'a, 'b> {
    reader: &'a mut Reader<'b>,
    places: &'a BTreeMap<Id, usize>,
}

impl More for Lines<'_, '_> {
    fn ids(&self) -> Vec<Id> {
        self.places.keys().copied().collect()
    }

    fn record(&mut self, id: Id) -> Record {
        self.reader.record(self.places[&id]).expect("the line was read before")
    }
}
