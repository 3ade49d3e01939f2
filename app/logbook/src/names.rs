//! Persons, sites and permits by what is typed.

use crate::book::Logbook;
use record::{Edit, Id, Kind, Record, permit, person};

/// Two names are the same when only case and spaces differ.
pub fn same(a: &str, b: &str) -> bool {
    folded(a) == folded(b)
}

/// A name as compared: small letters, single spaces.
pub fn folded(name: &str) -> String {
    name.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

/// New records are made as they are needed: each gets an id.
pub type Ids<'a> = &'a mut dyn FnMut() -> Id;

impl Logbook {
    /// The name of a person, as labels should say it.
    pub fn person_name(&self, id: Id) -> Option<String> {
        self.record(id)?.get(&person::NAME)
    }

    /// The person so named, by the name or another spelling.
    pub fn person_named(&self, name: &str) -> Option<Record> {
        let spelt = |record: &Record| {
            let spellings: Vec<String> = record.get(&person::SPELLINGS).unwrap_or_default();
            spellings.iter().chain(&record.get(&person::NAME)).any(|known| same(known, name))
        };
        self.all(&Kind::Person).iter().find(|record| spelt(record)).cloned()
    }

    /// The site so named.
    pub fn site_named(&self, name: &str) -> Option<Record> {
        let folded = folded(name);
        let known = self.known_sites().iter().find(|known| known.folded == folded)?.id;
        self.living(known)
    }

    /// The permit with this number.
    pub fn permit_numbered(&self, number: &str) -> Option<Record> {
        self.all(&Kind::Permit)
            .iter()
            .find(|record| record.get(&permit::NUMBER).is_some_and(|known| same(&known, number)))
            .cloned()
    }

    /// The person so named; a new one is made where there is none, and its edit added.
    pub(crate) fn person_or_new(&self, name: &str, ids: Ids<'_>, edits: &mut Vec<Edit>) -> Id {
        if let Some(known) = self.person_named(name) {
            return known.id;
        }
        let made = edits.iter().find(|edit| {
            edit.value_of(person::NAME.name()).and_then(|value| value.as_str()).is_some_and(|known| same(known, name))
        });
        if let Some(made) = made {
            return made.id();
        }
        let mut edit = Edit::of(&Record::new(ids(), Kind::Person));
        edit.put(&person::NAME, &name.trim().to_owned());
        let id = edit.id();
        edits.push(edit);
        id
    }
}
