//! Which records refer to which.

use super::Shelf;
use crate::packed::{Entry, ids_of};
use crate::{Id, Kind};

impl Shelf {
    /// Tells each living record of the kinds wanted with each id that stands in its values, without decoding the
    /// records that lie in blocks. An id that stands twice in a record is told twice.
    pub fn references(&self, wanted: impl Fn(&Kind) -> bool, mut refers: impl FnMut(Id, Id)) {
        let counts = |entry: &Entry| !entry.deleted && wanted(entry.kind);
        for shelved in &self.blocks {
            for (row, entry) in shelved.block.entries().enumerate() {
                if counts(&entry) && !self.is_over(entry.id) {
                    // A row that cannot be read refers to nothing, as it is no record either.
                    let _ = shelved.block.ids_in(row, &mut |to| refers(entry.id, to));
                }
            }
        }
        for held in self.overlay.values().filter(|held| counts(&held.entry())) {
            for version in held.record.fields.values().flatten() {
                ids_of(&version.value, &mut |to| refers(held.record.id, to));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::event::{self, Collector};
    use crate::packed::pack;
    use crate::{Dot, Edit, Record, Replica};

    fn id(number: u8) -> Id {
        Id::from_bytes([number; 16])
    }

    /// An event with a person and a site, and notes that name an id in words.
    fn event(own: u8) -> Record {
        let mut edit = Edit::of(&Record::new(id(own), Kind::Event));
        edit.put_line(&event::COLLECTORS, id(90), &Collector { person: id(2), order: 0 });
        edit.put(&event::SITE, &id(3));
        edit.put(&event::PLACE, &event::Place { latitude: -47.5, longitude: 12.25, ..event::Place::default() });
        edit.put(&event::NOTES, &format!("like {}", id(4)));
        edit.put(&event::COLLECTION_WORDING, &vec!["a".to_owned(), "b".to_owned()]);
        edit.apply(None, &Dot { replica: Replica::new("phone"), number: 1 }, "2027-06-19T14:32:05+02:00")
    }

    #[test]
    fn packed_and_changed_records_tell_the_same_ids() {
        let mut shelf = Shelf::default();
        shelf.add_block(1, pack(&[event(10), event(11)])).expect("whole");
        let mut changed = event(11);
        changed.fields.remove(event::SITE.name());
        shelf.replace(changed);
        shelf.put(event(12), None);
        let mut told = Vec::new();
        shelf.references(|kind| *kind == Kind::Event, |from, to| told.push((from, to)));
        told.sort_unstable();
        let expected = [(10, 2), (10, 3), (11, 2), (12, 2), (12, 3)].map(|(from, to)| (id(from), id(to)));
        assert_eq!(told, expected);
        shelf.references(|kind| *kind == Kind::Site, |_, _| panic!("there is no site"));
    }
}
