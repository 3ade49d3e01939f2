//! What goes out: the records of a day, of a choice, of what was not exported yet, or all; with all that hangs on
//! them and all that they refer to, so that nothing arrives half.

use crate::book::Logbook;
use crate::moment::{self, Day, day_number, day_text};
use ports::device::Moment;
use record::wire::Header;
use record::{Id, Kind, Record};
use serde_json::Value;
use std::collections::BTreeSet;

/// What is to go out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Selection {
    /// The events of a day; a night counts for its evening.
    Day(Day),
    /// These events.
    Chosen(Vec<Id>),
    /// The events that exist only here.
    NotExported,
    /// The whole book.
    All,
}

/// How many of what go out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OutCounts {
    /// Living events.
    pub events: usize,
    /// Living containers.
    pub containers: usize,
    /// Deleted records that go along, so that they stay deleted elsewhere.
    pub deleted: usize,
    /// Sites.
    pub sites: usize,
    /// Persons.
    pub persons: usize,
    /// Numberings.
    pub numberings: usize,
    /// Permits.
    pub permits: usize,
    /// Everything else.
    pub others: usize,
}

impl Logbook {
    /// The ids of the records that a selection takes along; `None` for the whole book.
    pub fn outgoing_ids(&self, selection: &Selection) -> Option<BTreeSet<Id>> {
        let events: Vec<Id> = match selection {
            Selection::Day(day) => self.shelf.events_on(day_number(*day)),
            Selection::Chosen(events) => events.clone(),
            Selection::NotExported => self.marks.unexported_events(&self.shelf),
            Selection::All => return None,
        };
        let mut ids = BTreeSet::new();
        for event in events {
            self.take_along(event, &mut ids);
        }
        // Rules, numberings and arrangements are few; they make the other device print and number alike.
        for kind in [Kind::Rules, Kind::Numbering, Kind::Arrangement] {
            for record in self.all(&kind) {
                self.take_references(&record, &mut ids);
                ids.insert(record.id);
            }
        }
        Some(ids)
    }

    /// A record, what hangs on it, and what it refers to.
    fn take_along(&self, id: Id, ids: &mut BTreeSet<Id>) {
        if !ids.insert(id) {
            return;
        }
        let Some(record) = self.record(id) else { return };
        self.take_references(&record, ids);
        for child in self.shelf.children(id) {
            self.take_along(child, ids);
        }
    }

    /// What a record refers to, and what that refers to in turn; not what else hangs on it.
    fn take_references(&self, record: &Record, ids: &mut BTreeSet<Id>) {
        for id in references(record) {
            if let Some(other) = self.record(id)
                && ids.insert(id)
            {
                self.take_references(&other, ids);
            }
        }
    }

    /// How many of what a selection takes along.
    pub fn outgoing_counts(&self, selection: &Selection) -> OutCounts {
        let ids = self.outgoing_ids(selection);
        let mut counts = OutCounts::default();
        for entry in self.shelf.entries().filter(|entry| ids.as_ref().is_none_or(|ids| ids.contains(&entry.id))) {
            let place = match entry.kind {
                _ if entry.deleted => &mut counts.deleted,
                Kind::Event => &mut counts.events,
                Kind::Container => &mut counts.containers,
                Kind::Site => &mut counts.sites,
                Kind::Person => &mut counts.persons,
                Kind::Numbering => &mut counts.numberings,
                Kind::Permit => &mut counts.permits,
                _ => &mut counts.others,
            };
            *place += 1;
        }
        counts
    }

    /// The header of a log file written now.
    pub fn header(&self, now: Moment) -> Header {
        let own = self.own_author();
        Header {
            written: moment::stamp(now),
            device: own.device,
            person: own.person,
            app: own.app,
            book: self.book().name().to_owned(),
            replicas: self.authors().clone(),
            ..Header::default()
        }
    }

    /// The name of a log file: the prefix of this device's numbers and the day. Share sheets refuse `.json` but take a
    /// text file.
    pub fn file_name(&self, selection: &Selection, now: Moment) -> String {
        let whose = self.numbering().map(|numbering| numbering.prefix.trim_end_matches(['-', ' ']).to_owned()).filter(|prefix| !prefix.is_empty());
        let whose = whose.unwrap_or_else(|| "glassine".to_owned());
        let today = day_text(moment::today(now));
        let what = match selection {
            Selection::Day(day) => day_text(*day),
            Selection::Chosen(_) => format!("{today} chosen"),
            Selection::NotExported => format!("{today} new"),
            Selection::All => format!("{today} all"),
        };
        let safe = |letter: char| if letter.is_alphanumeric() || " -_.".contains(letter) { letter } else { '_' };
        format!("{whose} {what}.json.txt").chars().map(safe).collect()
    }
}

/// Every id that stands in a record's values.
fn references(record: &Record) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    for version in record.fields.values().flatten() {
        gather(&version.value, &mut found);
    }
    found.remove(&record.id);
    found
}

fn gather(value: &Value, found: &mut BTreeSet<Id>) {
    match value {
        Value::String(text) if text.len() == 36 => found.extend(text.parse::<Id>().ok()),
        Value::Array(items) => items.iter().for_each(|item| gather(item, found)),
        Value::Object(members) => members.values().for_each(|member| gather(member, found)),
        _ => {}
    }
}
