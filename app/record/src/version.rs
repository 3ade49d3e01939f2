//! Versions of fields: who wrote what, and what its author had seen.
//!
//! Each field is a multi-value register under a version vector kept per record. No clock decides.
//!
//! **Source**: Almeida, Shoker & Baquero, Delta State Replicated Data Types, 2018.

use crate::{Id, Kind, order};
use serde::{Deserialize, Serialize, Serializer};
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::Arc;

/// One writing session: whoever takes the write lock draws a fresh one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(from = "String")]
pub struct Replica(Arc<str>);

impl Replica {
    /// The session with this name, 16 letters or digits.
    pub fn new(name: &str) -> Self {
        Self(Arc::from(name))
    }

    /// A fresh session from random bytes: 80 of their bits in Crockford's base 32.
    pub fn fresh(random: [u8; 16]) -> Self {
        const LETTERS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";
        let number = u128::from_be_bytes(random);
        let letter = |place: u32| char::from(LETTERS[(number >> (5 * place) & 31) as usize]);
        Self((0..16).map(letter).collect::<String>().into())
    }

    /// Its name.
    pub fn name(&self) -> &str {
        &self.0
    }
}

impl From<String> for Replica {
    fn from(name: String) -> Self {
        Self(name.into())
    }
}

impl Serialize for Replica {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_str(&self.0)
    }
}

/// One edit of one session to one record.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Dot {
    /// The session.
    pub replica: Replica,
    /// Its running number, from 1; one counter for the whole session.
    pub number: u32,
}

/// A version vector: for each session the greatest number seen.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Seen(pub BTreeMap<Replica, u32>);

impl Seen {
    /// The greatest number seen of a session, 0 for none.
    pub fn of(&self, replica: &Replica) -> u32 {
        self.0.get(replica).copied().unwrap_or(0)
    }

    /// Takes note of an edit.
    pub fn note(&mut self, dot: &Dot) {
        let number = self.0.entry(dot.replica.clone()).or_insert(0);
        *number = (*number).max(dot.number);
    }

    /// Takes note of all that another has seen.
    pub fn join(&mut self, other: &Self) {
        for (replica, number) in &other.0 {
            self.note(&Dot { replica: replica.clone(), number: *number });
        }
    }

    /// A number that stands for all that was seen: equal for equal vectors, different for all others that will
    /// ever meet (64 bits of FNV-1a, with a finish that spreads them).
    ///
    /// **Source**: Fowler, Noll & Vo, FNV-1a; the finish is the 64-bit one of MurmurHash3 (A. Appleby).
    pub fn digest(&self) -> u64 {
        let mut sum = 0xcbf2_9ce4_8422_2325_u64;
        let mut take = |byte: u8| sum = (sum ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
        for (replica, number) in &self.0 {
            replica.name().bytes().for_each(&mut take);
            take(0);
            number.to_le_bytes().into_iter().for_each(&mut take);
        }
        sum = (sum ^ (sum >> 33)).wrapping_mul(0xff51_afd7_ed55_8ccd);
        sum = (sum ^ (sum >> 33)).wrapping_mul(0xc4ce_b9fe_1a85_ec53);
        sum ^ (sum >> 33)
    }

    /// The sessions by their names, as values store it.
    pub fn by_name(&self) -> BTreeMap<String, u32> {
        let mut names = BTreeMap::new();
        names.extend(self.0.iter().map(|(replica, number)| (replica.name().to_owned(), *number)));
        names
    }

    /// Takes note of all that was seen by the names of the sessions.
    pub fn join_named(&mut self, names: &BTreeMap<String, u32>) {
        for (name, number) in names {
            self.note(&Dot { replica: Replica::new(name), number: *number });
        }
    }

    /// True when everything that `other` has seen was seen here.
    pub fn includes(&self, other: &Self) -> bool {
        other.0.iter().all(|(replica, number)| self.of(replica) >= *number)
    }
}

/// One value of a field, by whom it was written and when that device's clock said it was.
#[derive(Clone, Debug, PartialEq)]
pub struct Version {
    /// The value; null when the field was emptied.
    pub value: Value,
    /// The edit that wrote it.
    pub dot: Dot,
    /// The writer's local time with offset, shown to people and never compared.
    pub entered: String,
}

impl Version {
    /// The one of several versions of a field that every device shows: the greatest number, then the greatest session.
    pub fn shown(versions: &[Self]) -> Option<&Self> {
        versions.iter().max_by(|a, b| (a.dot.number, &a.dot.replica).cmp(&(b.dot.number, &b.dot.replica)))
    }
}

/// One record: what is written in it, by whom, and what has been seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: Kind,
    /// What has been seen of it.
    pub seen: Seen,
    /// The versions of each field, ordered by their edits; never an empty list.
    pub fields: BTreeMap<String, Vec<Version>>,
}

impl Record {
    /// Names that no field has, because the log file uses them for the record itself.
    pub const RESERVED: [&'static str; 3] = ["kind", "id", "versions"];

    /// A record in which nothing is written yet.
    pub fn new(id: Id, kind: Kind) -> Self {
        Self { id, kind, seen: Seen::default(), fields: BTreeMap::new() }
    }

    /// The value that every device shows for a field; `None` when it is empty.
    pub fn shown(&self, field: &str) -> Option<&Value> {
        let shown = Version::shown(self.fields.get(field)?)?;
        Some(&shown.value).filter(|value| !value.is_null())
    }

    /// The names of the fields in which several different values stand.
    ///
    /// `deleted` is among them when something was written without seeing that the record was deleted.
    pub fn conflicts(&self) -> impl Iterator<Item = &str> {
        let unseen = self.is_deleted_unseen();
        let stands = move |name: &str, versions: &[Version]| match name {
            "deleted_seen" => false,
            "deleted" if unseen => true,
            _ => differ(versions),
        };
        self.fields.iter().filter(move |(name, versions)| stands(name, versions)).map(|(name, _)| name.as_str())
    }
}

pub(crate) fn differ(versions: &[Version]) -> bool {
    versions.windows(2).any(|pair| pair[0].value != pair[1].value)
}

/// An edit under way: the record as its author was shown it, and what is to be written.
#[derive(Clone, Debug)]
pub struct Edit {
    shown: Record,
    writes: BTreeMap<String, Value>,
}

impl Edit {
    /// Begins to edit a record as it is now shown.
    pub fn of(shown: &Record) -> Self {
        Self { shown: shown.clone(), writes: BTreeMap::new() }
    }

    /// The record to which it belongs.
    pub fn id(&self) -> Id {
        self.shown.id
    }

    /// What had been seen of the record when it was shown.
    pub(crate) fn seen(&self) -> &Seen {
        &self.shown.seen
    }

    /// What is to be written into a field.
    pub fn value_of(&self, field: &str) -> Option<&Value> {
        self.writes.get(field)
    }

    /// Writes a value into a field; null empties it.
    pub fn set(&mut self, field: &str, value: Value) -> &mut Self {
        self.writes.insert(field.to_owned(), value);
        self
    }

    /// Begins to edit a record of which only a part had been seen when it was shown.
    pub fn as_seen(now: &Record, seen: &Seen) -> Self {
        let mut shown = now.clone();
        for versions in shown.fields.values_mut() {
            versions.retain(|version| seen.of(&version.dot.replica) >= version.dot.number);
        }
        shown.fields.retain(|_, versions| !versions.is_empty());
        Self { shown, writes: BTreeMap::new() }
    }

    /// The edit that writes back what was shown before this one led to `after`. A new record is deleted.
    pub fn reversed(&self, after: &Record) -> Self {
        let mut back = Self::of(after);
        if self.shown.fields.is_empty() {
            back.delete();
            return back;
        }
        for field in self.writes.keys() {
            back.set(field, self.shown.shown(field).cloned().unwrap_or(Value::Null));
        }
        back
    }

    /// True when it would change nothing of what was shown.
    pub fn is_idle(&self) -> bool {
        self.writes.iter().all(|(field, value)| self.settled_as(field, value))
    }

    /// Writes the edit into the record as it is now (`None` when it is new), which may hold more than was shown:
    /// replaces exactly the values that were shown, and only in fields whose value it changes.
    pub fn apply(&self, now: Option<&Record>, dot: &Dot, entered: &str) -> Record {
        let mut record = now.unwrap_or(&self.shown).clone();
        for (field, value) in &self.writes {
            if self.settled_as(field, value) {
                continue;
            }
            let shown = self.shown.fields.get(field).map_or(&[][..], Vec::as_slice);
            let versions = record.fields.entry(field.clone()).or_default();
            versions.retain(|version| !shown.iter().any(|seen| seen.dot == version.dot));
            versions.push(Version { value: value.clone(), dot: dot.clone(), entered: entered.to_owned() });
            order::sort_by(versions, |a, b| a.dot.cmp(&b.dot));
        }
        record.seen.note(dot);
        record
    }

    /// True when the field was shown with this value and no other.
    fn settled_as(&self, field: &str, value: &Value) -> bool {
        match self.shown.fields.get(field) {
            None => value.is_null(),
            Some(versions) => versions.iter().all(|version| version.value == *value),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn dot(number: u32) -> Dot {
        Dot { replica: Replica::new("me"), number }
    }

    fn blank() -> Record {
        Record::new(Id::from_bytes([1; 16]), Kind::Site)
    }

    fn edited(record: &Record, number: u32, field: &str, value: Value) -> Record {
        let mut edit = Edit::of(record);
        edit.set(field, value);
        edit.apply(Some(record), &dot(number), "late")
    }

    #[test]
    fn an_edit_writes_only_the_fields_that_it_changes() {
        let before = edited(&edited(&blank(), 1, "name", json!("gate")), 2, "habitat", json!("meadow"));
        let mut edit = Edit::of(&before);
        edit.set("name", json!("gate")).set("habitat", json!("bog")).set("country", Value::Null);
        let after = edit.apply(Some(&before), &dot(3), "late");
        assert_eq!(after.fields["name"][0].dot, dot(1));
        assert_eq!(after.fields["habitat"], [Version { value: json!("bog"), dot: dot(3), entered: "late".to_owned() }]);
        assert!(!after.fields.contains_key("country"));
        assert_eq!(after.seen.of(&Replica::new("me")), 3);
    }

    #[test]
    fn an_edit_that_changes_nothing_is_idle() {
        let before = edited(&blank(), 1, "name", json!("gate"));
        let mut edit = Edit::of(&before);
        edit.set("name", json!("gate")).set("country", Value::Null);
        assert!(edit.is_idle());
        assert!(!edit.set("name", Value::Null).is_idle());
    }

    #[test]
    fn an_edit_replaces_what_its_form_showed_and_leaves_what_came_in_since() {
        let shown = edited(&blank(), 1, "name", json!("gate"));
        let mut now = shown.clone();
        let theirs = Version {
            value: json!("gale"),
            dot: Dot { replica: Replica::new("you"), number: 1 },
            entered: String::new(),
        };
        now.seen.note(&theirs.dot);
        now.fields.get_mut("name").expect("it has a name").push(theirs.clone());
        for mut edit in [Edit::of(&shown), Edit::as_seen(&now, &shown.seen)] {
            let after = edit.set("name", json!("stile")).apply(Some(&now), &dot(2), "");
            let values: Vec<&Value> = after.fields["name"].iter().map(|version| &version.value).collect();
            assert_eq!(values, [&json!("stile"), &json!("gale")]);
        }
    }

    #[test]
    fn picking_one_of_two_values_replaces_both() {
        let mut shown = edited(&blank(), 1, "name", json!("gate"));
        let theirs = Version {
            value: json!("gale"),
            dot: Dot { replica: Replica::new("you"), number: 1 },
            entered: String::new(),
        };
        shown.fields.get_mut("name").expect("it has a name").push(theirs);
        assert_eq!(shown.conflicts().count(), 1);
        let picked = edited(&shown, 2, "name", json!("gate"));
        assert_eq!(picked.fields["name"].len(), 1);
        assert_eq!(picked.shown("name"), Some(&json!("gate")));
    }

    #[test]
    fn an_edit_is_undone_by_another() {
        let before = edited(&blank(), 1, "name", json!("gate"));
        let mut edit = Edit::of(&before);
        edit.set("name", json!("stile")).set("country", json!("Orreland"));
        let after = edit.apply(Some(&before), &dot(2), "");
        let back = edit.reversed(&after).apply(Some(&after), &dot(3), "");
        assert_eq!(back.shown("name"), Some(&json!("gate")));
        assert_eq!(back.shown("country"), None);
        let mut first = Edit::of(&blank());
        first.set("name", json!("gate"));
        let made = first.apply(None, &dot(1), "");
        assert!(first.reversed(&made).apply(Some(&made), &dot(2), "").is_deleted());
    }

    #[test]
    fn fresh_sessions_have_sixteen_letters_and_differ() {
        let names: Vec<String> = (0..3).map(|number| Replica::fresh([number; 16]).name().to_owned()).collect();
        assert!(names.iter().all(|name| name.len() == 16));
        assert!(names[0] != names[1] && names[1] != names[2]);
    }

    #[test]
    fn digests_differ_when_anything_seen_differs() {
        let seen =
            |counts: &[(&str, u32)]| Seen(counts.iter().map(|(name, number)| (Replica::new(name), *number)).collect());
        let vectors = [seen(&[]), seen(&[("a", 1)]), seen(&[("a", 2)]), seen(&[("b", 1)]), seen(&[("a", 1), ("b", 1)])];
        for (place, a) in vectors.iter().enumerate() {
            for b in &vectors[..place] {
                assert_ne!(a.digest(), b.digest());
            }
        }
    }
}
