//! The shelf: whatever lies in blocks and journal, it shows what one flat list of merged records would.

use crate::sessions::{SESSIONS, Session, id, play, step};
use proptest::prelude::*;
use record::marks::Marks;
use record::packed::{Damage, pack};
use record::shelf::{Selection, Shelf};
use record::{Id, Kind, Record, merge};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A flat list of merged records, slow and plainly right.
#[derive(Default)]
struct Flat(BTreeMap<Id, Record>);

impl Flat {
    fn put(&mut self, record: &Record) {
        let now = self.0.get(&record.id).map_or_else(|| record.clone(), |own| merge(own, record));
        self.0.insert(record.id, now);
    }
}

fn compare(shelf: &Shelf, flat: &Flat) {
    for (id, record) in &flat.0 {
        assert_eq!(shelf.get(*id).as_ref(), Some(record));
    }
    let mut ids: Vec<Id> = shelf.entries().map(|entry| entry.id).collect();
    ids.sort();
    assert_eq!(ids, flat.0.keys().copied().collect::<Vec<_>>());
    let living = |kind: &Kind| {
        let of_kind = flat.0.values().filter(|record| record.kind == *kind && !record.is_deleted());
        of_kind.map(|record| record.id).collect::<Vec<_>>()
    };
    for kind in [Kind::Event, Kind::Container, Kind::Site, Kind::Printing, Kind::from_name("hologram"), Kind::Mount] {
        assert_eq!(shelf.count(&kind), living(&kind).len(), "{kind:?}");
        assert_eq!(shelf.by_kind(&kind), living(&kind));
        let newest: Vec<Id> = living(&kind).into_iter().rev().take(1).collect();
        assert_eq!(shelf.newest(&kind, 1), newest);
    }
    for entry in shelf.entries() {
        let facts = record::facts::Facts::of(&flat.0[&entry.id]);
        assert_eq!(
            (entry.deleted, entry.day, entry.parent, entry.digest),
            (facts.deleted, facts.day, facts.parent, facts.digest)
        );
        assert_eq!(entry.number, facts.number.as_deref());
        if let Some(parent) = entry.parent {
            assert!(shelf.children(parent).contains(&entry.id));
        }
        assert!(
            shelf
                .children(entry.id)
                .iter()
                .all(|child| shelf.entry(*child).and_then(|child| child.parent) == Some(entry.id))
        );
    }
    for (day, count) in shelf.days() {
        let events = shelf.events_on(day);
        assert_eq!(events.len(), count);
        assert!(events.iter().all(|id| shelf.entry(*id).is_some_and(|entry| entry.day == Some(day) && !entry.deleted)));
    }
    let dated = shelf.entries().filter(|entry| entry.day.is_some() && !entry.deleted).count();
    assert_eq!(shelf.days().iter().map(|(_, count)| count).sum::<usize>(), dated);
}

proptest! {
    #[test]
    fn blocks_and_journal_in_any_order_are_one_list(
        steps in prop::collection::vec(step(), 1..40), most in 1..4_usize, folds in prop::collection::vec(any::<bool>(), 8)
    ) {
        let mut shelf = Shelf::default();
        let mut flat = Flat::default();
        let states = play(&steps);
        let stride = states.len() / 8 + 1;
        for (number, (state, fold)) in states.iter().step_by(stride).zip(folds).enumerate() {
            for record in state.iter().take(SESSIONS).flat_map(|session| session.copies.values()) {
                shelf.put(record.clone(), Some((format!("row{number}"), 1)));
                flat.put(record);
            }
            compare(&shelf, &flat);
            if fold {
                let plan = shelf.fold_plan(most);
                prop_assert!(plan.blocks_in.iter().all(|(_, bytes)| !bytes.is_empty()));
                prop_assert!(shelf.stands_on(&plan));
                shelf.apply_fold(plan).expect("the plan's blocks open");
                prop_assert_eq!(shelf.waiting(), 0);
                prop_assert_eq!(shelf.rows().count(), 0);
                compare(&shelf, &flat);
            }
        }
        // Opened anew, rows first, then blocks from the newest to the oldest.
        let mut anew = Shelf::default();
        let rows: Vec<Record> = shelf.overlaid().cloned().collect();
        anew.add_row(pack(&rows), ("row".to_owned(), 1)).expect("it was just packed");
        let keys: Vec<u32> = shelf.block_keys().collect();
        for key in keys.iter().rev() {
            anew.days();
            anew.add_block(*key, shelf.block_bytes(*key).expect("it is there").to_vec()).expect("it was just packed");
        }
        compare(&anew, &flat);
        let mut packed: Vec<Id> = Vec::new();
        for key in keys {
            let block = record::packed::Block::open(shelf.block_bytes(key).expect("it is there").to_vec()).expect("it opens");
            prop_assert!(block.len() <= most);
            packed.extend(block.entries().map(|entry| entry.id));
        }
        let all = packed.len();
        packed.sort();
        packed.dedup();
        prop_assert_eq!(packed.len(), all, "each id lies in one block");
    }
}

fn record(number: usize, kind: Kind, fields: Value) -> Record {
    let mut session = Session::new(number);
    for (field, value) in fields.as_object().expect("fields are an object") {
        let shown = session.copies.get(&id(number)).cloned();
        session.edit(id(number), shown.as_ref(), field, value.clone());
    }
    Record { kind, ..session.copies.remove(&id(number)).expect("it has fields") }
}

fn shelf_of(records: &[Record]) -> Shelf {
    let mut shelf = Shelf::default();
    shelf.add_block(1, pack(records)).expect("it was just packed");
    shelf
}

#[test]
fn a_row_saved_while_a_fold_is_written_stays_above_it() {
    let mut shelf = Shelf::default();
    let mut session = Session::new(0);
    session.edit(id(0), None, "notes", json!("first"));
    shelf.put(session.copies[&id(0)].clone(), Some(("a".to_owned(), 1)));
    let fold = shelf.fold_plan(1000);
    let stale = fold.clone();
    let shown = session.copies[&id(0)].clone();
    session.edit(id(0), Some(&shown), "notes", json!("second"));
    shelf.put(session.copies[&id(0)].clone(), Some(("a".to_owned(), 2)));
    shelf.apply_fold(fold).expect("its blocks open");
    assert_eq!(shelf.get(id(0)).as_ref(), session.copies.get(&id(0)));
    assert_eq!(shelf.rows().cloned().collect::<Vec<_>>(), [("a".to_owned(), 2)]);
    assert_eq!(shelf.waiting(), 1);
    assert!(!shelf.stands_on(&stale), "the blocks are others now");
}

#[test]
fn a_block_that_comes_after_a_row_is_merged_with_it() {
    let (mut a, mut b) = (Session::new(0), Session::new(1));
    a.edit(id(0), None, "notes", json!("packed"));
    b.edit(id(0), None, "host", json!("in the journal"));
    let mut shelf = Shelf::default();
    shelf.add_row(pack(&[b.copies[&id(0)].clone()]), ("b".to_owned(), 1)).expect("it was just packed");
    shelf.add_block(1, pack(&[a.copies[&id(0)].clone()])).expect("it was just packed");
    assert_eq!(shelf.get(id(0)), Some(merge(&a.copies[&id(0)], &b.copies[&id(0)])));
    assert_eq!(shelf.count(&Kind::Event), 1);
}

#[test]
fn a_damaged_block_or_row_leaves_the_shelf_as_it_was() {
    let mut shelf = shelf_of(&[record(0, Kind::Event, json!({"notes": "x"}))]);
    let mut bytes = shelf.block_bytes(1).expect("it is there").to_vec();
    *bytes.last_mut().expect("it has bytes") ^= 1;
    assert_eq!(shelf.add_block(1, bytes.clone()), Err(Damage::Checksum));
    assert_eq!(shelf.add_row(bytes, ("a".to_owned(), 1)), Err(Damage::Checksum));
    assert_eq!(shelf.count(&Kind::Event), 1);
    assert_eq!(shelf.rows().count(), 0);
}

#[test]
fn every_word_must_stand_somewhere_in_the_record() {
    let records = [
        record(0, Kind::Site, json!({"name": "Pořín meadow", "habitat": "wet meadow with sedges"})),
        record(1, Kind::Site, json!({"name": "PORIN QUARRY"})),
        record(2, Kind::Event, json!({"notes": "meadow by Pořín", "deleted": true})),
        record(3, Kind::Container, json!({"number": {"text": "IV27-0147"}, "killed": {"code": "cold"}})),
        record(4, Kind::Event, json!({"place": {"datum": "WGS84", "how": "device", "typed": "grid ref"}})),
    ];
    let ids = |found: record::shelf::Found| found.hits.into_iter().map(|hit| hit.id).collect::<Vec<_>>();
    let mut shelf = shelf_of(&records);
    for over in [false, true] {
        assert_eq!(ids(shelf.search("porin", 9)), [id(1), id(0)]);
        assert_eq!(ids(shelf.search("MEADOW pořín", 9)), [id(0)]);
        assert_eq!(ids(shelf.search("sedges Porin", 9)), [id(0)]);
        assert_eq!(ids(shelf.search("0147", 9)), [id(3)]);
        assert_eq!(shelf.search("iv27-0147", 9).hits[0].field, "number");
        assert_eq!(ids(shelf.search("wgs84", 9)), [] as [Id; 0]);
        assert_eq!(ids(shelf.search("device", 9)), [] as [Id; 0]);
        assert_eq!(ids(shelf.search("grid", 9)), [id(4)]);
        assert_eq!(ids(shelf.search("  ", 9)), [] as [Id; 0]);
        assert_eq!(shelf.search("porin", 1).total, 2);
        assert_eq!(shelf.search("porin", 1).hits.len(), 1);
        assert_eq!(shelf.search_kinds("o", [Kind::Site, Kind::Container])[1], [id(3)]);
        if !over {
            // The same from the overlay as from a block.
            shelf = Shelf::default();
            shelf.add_row(pack(&records), ("a".to_owned(), 1)).expect("it was just packed");
        }
    }
}

#[test]
fn a_file_of_a_day_holds_what_hangs_on_it_and_what_it_refers_to() {
    let night = json!({"from": "2027-06-20T01:10", "night": true});
    let records = [
        record(0, Kind::Event, json!({"caught": night, "site": id(1)})),
        record(1, Kind::Site, json!({"name": "gate", "permit": id(2)})),
        record(2, Kind::Permit, json!({"number": "7"})),
        record(3, Kind::Container, json!({"event": id(0), "deleted": true})),
        record(4, Kind::Printing, json!({"of": id(3)})),
        record(5, Kind::Event, json!({"caught": {"from": "2027-06-20"}, "site": id(1)})),
        record(6, Kind::Container, json!({"event": id(5)})),
        record(7, Kind::Event, json!({"caught": {"from": "2027-06-19"}, "deleted": true})),
        record(8, Kind::Person, json!({"name": "Ada Quill"})),
    ];
    let shelf = shelf_of(&records);
    let selected = |selection| shelf.selected(&selection, &Marks::default());
    // Sites before events, events before containers, permits, printings.
    assert_eq!(selected(Selection::Day(20_988)), [id(1), id(0), id(7), id(3), id(2), id(4)]);
    assert_eq!(selected(Selection::Ids(vec![id(6), id(99)])), [id(1), id(5), id(6), id(2)]);
    assert_eq!(selected(Selection::All).len(), 9);
}

#[test]
fn events_count_as_exported_until_they_or_what_hangs_on_them_changes() {
    let mut shelf = shelf_of(&[
        record(0, Kind::Event, json!({"notes": "x"})),
        record(1, Kind::Container, json!({"event": id(0)})),
        record(2, Kind::Step, json!({"of": id(1)})),
        record(3, Kind::Event, json!({"notes": "y"})),
        record(4, Kind::Event, json!({"notes": "never left", "deleted": true})),
        record(5, Kind::Person, json!({"name": "Ada Quill"})),
    ]);
    assert_eq!(shelf.unexported(&Marks::default()), 2);
    let marks = Marks::of(shelf.entries().filter(|entry| entry.id != id(4)));
    assert_eq!(shelf.unexported(&marks), 0);
    assert_eq!(shelf.selected(&Selection::NotExported, &marks), [] as [Id; 0]);
    let mut later = Session::new(9);
    let mut change = |number: usize, field: &str, value: Value| {
        let now = shelf.get(id(number)).expect("it is there");
        later.take(&now);
        later.edit(id(number), Some(&now), field, value);
        shelf.put(later.copies[&id(number)].clone(), None);
        let one_by_one = [0, 3, 4].map(id).into_iter().filter(|event| shelf.is_unexported(*event, &marks));
        assert_eq!(one_by_one.collect::<Vec<Id>>(), shelf.unexported_events(&marks));
        (shelf.unexported(&marks), shelf.selected(&Selection::NotExported, &marks))
    };
    assert_eq!(change(5, "spellings", json!(["A. Quill"])), (0, vec![id(5)]));
    assert_eq!(change(2, "by", json!(id(5))), (1, vec![id(0), id(1), id(5), id(2)]));
    assert_eq!(change(3, "deleted", json!(true)).0, 2);
    assert_eq!([0, 1, 2, 5].map(|number| shelf.event_of(id(number))), [Some(id(0)), Some(id(0)), Some(id(0)), None]);
}
