//! Which records go into a file.

use super::Shelf;
use super::left::STEPS;
use crate::check::references;
use crate::day::DayNumber;
use crate::marks::Marks;
use crate::{Id, Kind, Record};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// What is to be exported.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Selection {
    /// Everything.
    All,
    /// The events of a day, which counts nights for their evening.
    Day(DayNumber),
    /// These records.
    Ids(Vec<Id>),
    /// All that has not left the device as it is now.
    NotExported,
}

impl Shelf {
    /// The records that a file of a selection holds, in canonical order: by kind, then by id.
    ///
    /// With what was selected, deleted records too, goes all that hangs on it and all that those records refer to.
    pub fn selected(&self, selection: &Selection, marks: &Marks) -> Vec<Id> {
        let roots: Vec<Id> = match selection {
            Selection::All => return self.in_order(self.entries().map(|entry| entry.id)),
            Selection::Day(day) => self.of_day(*day).map(|entry| entry.id).collect(),
            Selection::Ids(ids) => ids.iter().copied().filter(|id| self.entry(*id).is_some()).collect(),
            Selection::NotExported => self.not_exported(marks),
        };
        self.in_order(self.with_all_around(roots))
    }

    /// Events that have not left, and other records that have not left and hang on no event.
    fn not_exported(&self, marks: &Marks) -> Vec<Id> {
        let mut roots = self.unexported_events(marks);
        let unmarked = self.entries().filter(|entry| !marks.has(entry) && *entry.kind != Kind::Event);
        roots.extend(unmarked.filter(|entry| self.event_above(*entry, None).is_none()).map(|entry| entry.id));
        roots
    }

    fn with_all_around(&self, roots: Vec<Id>) -> BTreeSet<Id> {
        let mut wanted: BTreeSet<Id> = BTreeSet::new();
        let mut below = roots;
        for _ in 0..STEPS {
            below.retain(|id| wanted.insert(*id));
            below = below.iter().flat_map(|id| self.children(*id)).collect();
        }
        let mut around: Vec<Id> = wanted.iter().copied().collect();
        while let Some(id) = around.pop() {
            let named = self.get(id).map(|record| named_by(&record)).unwrap_or_default();
            around.extend(named.into_iter().filter(|id| self.entry(*id).is_some() && wanted.insert(*id)));
        }
        wanted
    }

    /// A shelf of these records alone.
    pub(crate) fn part(&self, ids: &[Id]) -> Self {
        let mut part = Self::default();
        ids.iter().filter_map(|id| self.get(*id)).for_each(|record| part.put(record, None));
        part
    }

    fn in_order(&self, ids: impl IntoIterator<Item = Id>) -> Vec<Id> {
        let mut keyed: Vec<(&Kind, Id)> =
            ids.into_iter().filter_map(|id| self.entry(id).map(|entry| (entry.kind, id))).collect();
        keyed.sort_unstable();
        keyed.into_iter().map(|(_, id)| id).collect()
    }
}

/// The records that any version of any field names.
fn named_by(record: &Record) -> Vec<Id> {
    record.fields.values().flatten().flat_map(|version| references(&version.value)).collect()
}
