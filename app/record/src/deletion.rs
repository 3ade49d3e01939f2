//! Deleting a record, and what was written in it without seeing that.
//!
//! Deleting is a value like any other. Beside it stands what its author had seen, so that an edit made elsewhere
//! without knowing of it does not vanish with the record: the two stand against each other until a person decides.

use crate::field::{DELETED, Field};
use crate::{Edit, Record, Seen, Version};
use std::collections::BTreeMap;

/// Every kind has it: what had been seen of the record by whoever deleted it.
pub const DELETED_SEEN: Field<BTreeMap<String, u32>> = Field::new("deleted_seen");

impl Edit {
    /// Deletes the record as it is shown.
    pub fn delete(&mut self) -> &mut Self {
        let seen = self.seen().by_name();
        self.put(&DELETED, &true).put(&DELETED_SEEN, &seen)
    }

    /// Brings a deleted record back.
    pub fn restore(&mut self) -> &mut Self {
        self.put_or_empty(&DELETED, None).put_or_empty(&DELETED_SEEN, None)
    }
}

impl Record {
    /// True when something stands in a deleted record that nobody who deleted it had seen.
    pub fn is_deleted_unseen(&self) -> bool {
        self.is_deleted() && !self.unseen_when_deleted().is_empty()
    }

    /// What was written in a deleted record without being seen by anybody who deleted it, with the names of the fields.
    pub fn unseen_when_deleted(&self) -> Vec<(&str, &Version)> {
        if !self.fields.contains_key(DELETED_SEEN.name()) {
            return Vec::new();
        }
        let seen = self.seen_when_deleted();
        let about_deletion = |name: &str| name == DELETED.name() || name == DELETED_SEEN.name();
        let others = self.fields.iter().filter(|(name, _)| !about_deletion(name));
        let versions = others.flat_map(|(name, versions)| versions.iter().map(move |version| (name.as_str(), version)));
        versions.filter(|(_, version)| seen.of(&version.dot.replica) < version.dot.number).collect()
    }

    /// What had been seen by those who deleted it, all together.
    fn seen_when_deleted(&self) -> Seen {
        let mut seen = Seen::default();
        for version in self.fields.get(DELETED_SEEN.name()).into_iter().flatten() {
            seen.join_named(&serde::Deserialize::deserialize(&version.value).unwrap_or_default());
        }
        seen
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::merge::merge;
    use crate::{Dot, Id, Kind, Replica, event};

    fn dot(replica: &str, number: u32) -> Dot {
        Dot { replica: Replica::new(replica), number }
    }

    fn noted(record: &Record, notes: &str, dot: &Dot) -> Record {
        let mut edit = Edit::of(record);
        edit.put(&event::NOTES, &notes.to_owned());
        edit.apply(Some(record), dot, "")
    }

    fn deleted(record: &Record, dot: &Dot) -> Record {
        Edit::of(record).delete().apply(Some(record), dot, "")
    }

    fn written() -> Record {
        noted(&Record::new(Id::from_bytes([1; 16]), Kind::Event), "wet", &dot("phone", 1))
    }

    fn conflicts(record: &Record) -> Vec<&str> {
        record.conflicts().collect()
    }

    #[test]
    fn a_record_deleted_by_somebody_who_had_seen_it_all_is_settled() {
        let record = deleted(&written(), &dot("desk", 1));
        assert!(record.is_deleted());
        assert!(conflicts(&record).is_empty());
    }

    #[test]
    fn an_edit_made_without_seeing_the_deletion_stands_against_it() {
        let (gone, edited) = (deleted(&written(), &dot("desk", 1)), noted(&written(), "dry", &dot("phone", 2)));
        let merged = merge(&gone, &edited);
        assert!(merged.is_deleted());
        assert_eq!(conflicts(&merged), ["deleted"]);
        let back = Edit::of(&merged).restore().apply(Some(&merged), &dot("phone", 3), "");
        assert!(!back.is_deleted() && conflicts(&back).is_empty());
        let gone_for_good = deleted(&merged, &dot("phone", 3));
        assert!(gone_for_good.is_deleted() && conflicts(&gone_for_good).is_empty());
    }

    #[test]
    fn two_who_deleted_it_apart_agree() {
        let merged = merge(&deleted(&written(), &dot("desk", 1)), &deleted(&written(), &dot("phone", 2)));
        assert!(conflicts(&merged).is_empty());
    }
}
