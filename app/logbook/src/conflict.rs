//! Values that two people wrote without seeing each other: the list of them, each for reading, and settling it.
//!
//! In go records in which several values stand, out come views with who wrote what on which device, and deeds that
//! put one value in the place of all that were shown. Nothing is settled unasked, and no clock has a say: the times
//! shown are what each device's own clock said.

mod said;

pub use said::Said;

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::view::{ContentView, EventLine, Facts, Plate};
use record::field::DELETED;
use record::{Dot, Edit, Id, Kind, Record, Version, container, person, site};
use serde_json::Value;

/// Where values stand against each other.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Conflict {
    /// The record.
    pub record: Id,
    /// Its field, as stored; `deleted` when something was written in it without seeing that it was deleted.
    pub field: String,
}

/// One conflict for reading.
#[derive(Clone, Debug, PartialEq)]
pub struct ConflictView {
    /// Where.
    pub at: Conflict,
    /// What kind of record it is.
    pub kind: Kind,
    /// The field's name without the id of a line.
    pub field: String,
    /// The event to which it belongs.
    pub event: Option<EventLine>,
    /// The container's number, when it is a container.
    pub plate: Option<Plate>,
    /// The name of a site or person.
    pub name: String,
    /// The values, in an order that is the same on every device.
    pub values: Vec<ConflictValue>,
    /// Its place in the list, from 1.
    pub index: usize,
    /// How many there are.
    pub of: usize,
    /// Everything else in this event, or record, agrees.
    pub rest_agrees: bool,
    /// What else is known of the event.
    pub facts: Option<Facts>,
    /// The contents of its containers.
    pub contents: Vec<ContentView>,
}

/// One of the values.
#[derive(Clone, Debug, PartialEq)]
pub struct ConflictValue {
    /// What it says.
    pub said: Said,
    /// Who wrote it; empty when not known.
    pub who: String,
    /// On which device; empty when not known.
    pub device: String,
    /// When, by that device's clock: local ISO 8601 with offset.
    pub when: String,
    /// The edit that wrote it.
    pub dot: Dot,
}

impl Logbook {
    /// Everything that is not settled, oldest record first.
    pub fn conflicts(&self) -> Vec<Conflict> {
        let mut found: Vec<Conflict> =
            self.shelf.entries().filter(|entry| entry.conflict).flat_map(|entry| self.conflicts_in(entry.id)).collect();
        found.sort();
        found
    }

    /// What is not settled in an event and its containers.
    pub fn conflicts_of(&self, event: Id) -> Vec<Conflict> {
        let below = self
            .shelf
            .children(event)
            .into_iter()
            .filter(|id| self.shelf.entry(*id).is_some_and(|entry| *entry.kind == Kind::Container));
        std::iter::once(event).chain(below).flat_map(|id| self.conflicts_in(id)).collect()
    }

    /// One conflict for reading; `None` once it is settled.
    pub fn conflict(&self, at: &Conflict) -> Option<ConflictView> {
        let all = self.conflicts();
        let index = all.iter().position(|other| other == at)?;
        let record = self.record(at.record)?;
        let event = self.event_of(&record);
        let around = event.as_ref().map_or_else(|| self.conflicts_in(at.record), |event| self.conflicts_of(event.id));
        let containers = match record.kind {
            Kind::Container => vec![record.clone()],
            _ => event.as_ref().map(|event| self.containers_of(event.id)).unwrap_or_default(),
        };
        Some(ConflictView {
            at: at.clone(),
            field: at.field.split(':').next().unwrap_or_default().to_owned(),
            plate: (record.kind == Kind::Container).then(|| self.plate(&record)),
            name: record.get(&person::NAME).or_else(|| record.get(&site::NAME)).unwrap_or_default(),
            values: self.values(&record, &at.field),
            index: index + 1,
            of: all.len(),
            rest_agrees: around.len() <= 1,
            facts: event.as_ref().map(|event| self.facts(event)),
            contents: containers.iter().flat_map(crate::lines::contents).collect(),
            event: event.map(|event| self.line(&event, 1)),
            kind: record.kind,
        })
    }

    /// The deed that settles a conflict with the value of one edit.
    pub fn pick(&self, at: &Conflict, dot: &Dot) -> Deed {
        let Some(record) = self.record(at.record) else { return Deed::new(What::Picked, []) };
        if at.field == DELETED.name() {
            let deletes = versions(&record, &at.field).iter().any(|version| version.dot == *dot);
            return self.settle_deletion(&record, deletes);
        }
        let chosen = versions(&record, &at.field).iter().find(|version| version.dot == *dot);
        chosen.map_or_else(|| Deed::new(What::Picked, []), |chosen| self.settle(at, chosen.value.clone()))
    }

    /// The deed that settles a conflict with a value that neither had written; null empties the field.
    pub fn settle(&self, at: &Conflict, value: Value) -> Deed {
        let Some(record) = self.record(at.record) else { return Deed::new(What::Picked, []) };
        let mut edit = Edit::of(&record);
        edit.set(&at.field, value);
        Deed::new(What::Picked, [edit])
    }

    fn settle_deletion(&self, record: &Record, deletes: bool) -> Deed {
        let mut edit = Edit::of(record);
        if deletes {
            edit.delete()
        } else {
            edit.restore()
        };
        Deed::new(What::Picked, [edit])
    }

    fn conflicts_in(&self, id: Id) -> Vec<Conflict> {
        let Some(record) = self.record(id) else { return Vec::new() };
        let counts = |field: &&str| !record.is_deleted() || *field == DELETED.name();
        record.conflicts().filter(counts).map(|field| Conflict { record: id, field: field.to_owned() }).collect()
    }

    fn event_of(&self, record: &Record) -> Option<Record> {
        match record.kind {
            Kind::Event => Some(record.clone()),
            Kind::Container => self.record(record.get(&container::EVENT)?),
            _ => None,
        }
    }

    /// The different values of a field; a deletion stands against what was written without seeing it.
    fn values(&self, record: &Record, field: &str) -> Vec<ConflictValue> {
        let mut values: Vec<ConflictValue> = Vec::new();
        for version in versions(record, field) {
            let said = self.said(&record.kind, field, &version.value);
            if !values.iter().any(|known| known.said == said) {
                values.push(self.value(said, version));
            }
        }
        if field == DELETED.name() && record.is_deleted_unseen() {
            values.extend(self.written_unseen(record));
        }
        values
    }

    fn value(&self, said: Said, version: &Version) -> ConflictValue {
        let author = self.author(&version.dot.replica);
        ConflictValue {
            said,
            who: author.map(|author| author.person.clone()).unwrap_or_default(),
            device: author.map(|author| author.device.clone()).unwrap_or_default(),
            when: version.entered.clone(),
            dot: version.dot.clone(),
        }
    }

    /// What was written in a deleted record without seeing that, as one value for each edit.
    fn written_unseen(&self, record: &Record) -> Vec<ConflictValue> {
        let unseen = record.unseen_when_deleted();
        let mut values: Vec<ConflictValue> = Vec::new();
        for (field, version) in unseen {
            let name = field.split(':').next().unwrap_or_default().to_owned();
            match values.iter_mut().find(|value| value.dot == version.dot) {
                Some(ConflictValue { said: Said::Edited(fields), .. }) if !fields.contains(&name) => fields.push(name),
                Some(_) => {}
                None => values.push(self.value(Said::Edited(vec![name]), version)),
            }
        }
        values
    }
}

fn versions<'a>(record: &'a Record, field: &str) -> &'a [Version] {
    record.fields.get(field).map_or(&[], Vec::as_slice)
}

#[cfg(test)]
mod tests;
