//! Two copies of a record become one.
//!
//! In go two copies that were written apart, out comes one that holds all that neither author had replaced.
//! Nothing is chosen here: where two people wrote without seeing each other both values stay. No clock is read.
//!
//! **Source**: Almeida, Shoker & Baquero, Delta State Replicated Data Types, 2018.

use crate::{Record, Seen, Version, order};
use std::cmp::Ordering;

/// One record from two copies of it.
///
/// A version of one copy stays if the other has it too or had never seen the edit that wrote it.
/// The result is the same whichever copy comes first, however often and in whatever order copies are merged.
pub fn merge(a: &Record, b: &Record) -> Record {
    let mut merged = a.clone();
    merged.absorb(b);
    merged
}

impl Record {
    /// Merges another copy into this one, as [`merge`] does; what both hold already is not copied.
    pub fn absorb(&mut self, other: &Self) {
        let own_seen = &self.seen;
        self.fields.retain(|name, versions| {
            let theirs = versions_of(other, name);
            if theirs != versions.as_slice() {
                *versions = merge_field(versions, own_seen, theirs, &other.seen);
            }
            !versions.is_empty()
        });
        for (name, theirs) in &other.fields {
            if !self.fields.contains_key(name) {
                let unseen: Vec<Version> = staying(theirs, &[], &self.seen).cloned().collect();
                if !unseen.is_empty() {
                    self.fields.insert(name.clone(), unseen);
                }
            }
        }
        self.seen.join(&other.seen);
        self.id = self.id.min(other.id);
        if other.kind < self.kind {
            self.kind = other.kind.clone();
        }
    }
}

fn versions_of<'a>(record: &'a Record, field: &str) -> &'a [Version] {
    record.fields.get(field).map_or(&[], Vec::as_slice)
}

fn merge_field(a: &[Version], a_seen: &Seen, b: &[Version], b_seen: &Seen) -> Vec<Version> {
    let mut kept: Vec<Version> = staying(a, b, b_seen).chain(staying(b, a, a_seen)).cloned().collect();
    order::sort_by(&mut kept, by_edit);
    kept.dedup_by(|later, earlier| later.dot == earlier.dot);
    kept
}

/// The versions of one copy that the other has too, or had not seen.
fn staying<'a>(own: &'a [Version], other: &'a [Version], seen: &'a Seen) -> impl Iterator<Item = &'a Version> {
    own.iter().filter(|version| {
        let unseen = version.dot.number > seen.of(&version.dot.replica);
        unseen || other.iter().any(|theirs| theirs.dot == version.dot)
    })
}

/// By edit. Two values under one edit are a damaged copy: the same one comes first on every device.
fn by_edit(a: &Version, b: &Version) -> Ordering {
    a.dot.cmp(&b.dot).then_with(|| {
        let text = |version: &Version| (version.value.to_string(), version.entered.clone());
        if a == b { Ordering::Equal } else { text(a).cmp(&text(b)) }
    })
}

/// How a record stands after a merge, compared with what was there before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// It was not there.
    Added,
    /// It holds something that was not there.
    Changed,
    /// All of it was there.
    Same,
}

/// What a merge did to one record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// How it stands.
    pub change: Change,
    /// The fields in which different values stand now and did not before.
    pub conflicts: Vec<String>,
}

impl Outcome {
    /// Compares a record with what was there before the merge.
    pub fn of(before: Option<&Record>, after: &Record) -> Self {
        let change = match before {
            None => Change::Added,
            Some(before) if before == after => Change::Same,
            Some(_) => Change::Changed,
        };
        let settled = |name: &str| !before.is_some_and(|before| before.conflicts().any(|known| known == name));
        let conflicts = after.conflicts().filter(|name| settled(name)).map(str::to_owned).collect();
        Self { change, conflicts }
    }
}
