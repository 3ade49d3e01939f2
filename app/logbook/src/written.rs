//! Who wrote what in an event, session by session. Times are what each device's own clock said; nothing is decided by
//! them but the order of this list.

use crate::book::Logbook;
use crate::moment::{Day, Known, clock_text};
use record::{Id, Record, Replica};
use std::collections::{BTreeMap, BTreeSet};

/// What one session wrote.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// The day, by that device's clock.
    pub day: Option<Day>,
    /// The hour.
    pub clock: String,
    /// The person; empty when not known.
    pub person: String,
    /// The device; empty when not known.
    pub device: String,
    /// Names of the fields that stand as it wrote them, those of lists without their lines.
    pub fields: Vec<String>,
}

impl Logbook {
    /// Who wrote what of an event, in the order of the clocks.
    pub fn written_by(&self, id: Id) -> Vec<Written> {
        let Some(record) = self.record(id) else { return Vec::new() };
        let mut sessions: Vec<(String, Written)> = sessions(&record)
            .into_iter()
            .map(|(replica, (entered, fields))| self.session(&replica, entered, fields))
            .collect();
        sessions.sort_by(|a, b| a.0.cmp(&b.0));
        sessions.into_iter().map(|(_, written)| written).collect()
    }

    fn session(&self, replica: &Replica, entered: String, fields: BTreeSet<String>) -> (String, Written) {
        let author = self.author(replica).cloned().unwrap_or_default();
        let known = Known::read(&entered);
        let written = Written {
            day: known.and_then(Known::date),
            clock: known.and_then(|known| known.clock).map(clock_text).unwrap_or_default(),
            person: author.person,
            device: author.device,
            fields: fields.into_iter().collect(),
        };
        (entered, written)
    }
}

/// For each session the first moment and the fields, without those that were emptied.
fn sessions(record: &Record) -> BTreeMap<Replica, (String, BTreeSet<String>)> {
    let mut sessions: BTreeMap<Replica, (String, BTreeSet<String>)> = BTreeMap::new();
    for (name, versions) in &record.fields {
        for version in versions.iter().filter(|version| says_something(&version.value)) {
            let (entered, fields) = sessions.entry(version.dot.replica.clone()).or_default();
            if entered.is_empty() || version.entered < *entered {
                entered.clone_from(&version.entered);
            }
            fields.insert(name.split(':').next().unwrap_or(name).to_owned());
        }
    }
    sessions
}

/// An emptied field and a plain "no" are not worth a word.
fn says_something(value: &serde_json::Value) -> bool {
    !(value.is_null() || *value == serde_json::Value::Bool(false))
}
