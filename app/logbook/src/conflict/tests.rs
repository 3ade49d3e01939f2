use super::*;
use crate::invented::Table;
use record::Replica;
use record::event::{self, Host};
use record::wire::Author;

fn host(thing: &str) -> Host {
    Host { relation: "flower".into(), thing: thing.into(), ..Host::default() }
}

/// Two people gave an event another host without seeing each other.
fn two_hosts() -> (Table, Id) {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "IV27-");
    let event = table.event("2027-06-19T14:32", varga, |_| {});
    table.vial(event, "IV27-0147", "Hover flies", Some(3));
    let seen = table.book.record(event).expect("saved");
    table.change(&seen, |edit| {
        edit.put(&event::HOST, &host("Heracleum sphondylium"));
    });
    table.elsewhere(&seen, "desk000000000000", |edit| {
        edit.put(&event::HOST, &host("Angelica sylvestris"));
    });
    let author = Author { device: "the desk".into(), person: "D. Okoro".into(), ..Author::default() };
    table.book.note_author(Replica::new("desk000000000000"), author);
    (table, event)
}

fn only(table: &Table) -> ConflictView {
    let all = table.book.conflicts();
    assert_eq!(all.len(), 1);
    table.book.conflict(&all[0]).expect("it is not settled")
}

fn wrote<'a>(view: &'a ConflictView, who: &str) -> &'a ConflictValue {
    view.values.iter().find(|value| value.who == who).expect("they wrote a value")
}

#[test]
fn both_values_are_shown_with_who_wrote_them_where_and_when() {
    let (table, event) = two_hosts();
    let view = only(&table);
    assert_eq!((view.at.record, view.field.as_str(), view.index, view.of), (event, "host", 1, 1));
    assert_eq!(view.values.len(), 2);
    let theirs = wrote(&view, "D. Okoro");
    assert_eq!((theirs.device.as_str(), theirs.when.as_str()), ("the desk", "2027-07-03T09:12:00+02:00"));
    assert_eq!(theirs.said, Said::Host(host("Angelica sylvestris")));
    assert!(view.rest_agrees);
    assert_eq!(view.contents[0].group, "Hover flies");
    assert_eq!(view.event.map(|event| event.clock), Some("14:32".to_owned()));
}

#[test]
fn picking_one_value_puts_it_in_the_place_of_all() {
    for who in ["I. Varga", "D. Okoro"] {
        let (mut table, event) = two_hosts();
        let view = only(&table);
        let chosen = wrote(&view, who).clone();
        table.save(&table.book.pick(&view.at, &chosen.dot));
        let record = table.book.record(event).expect("saved");
        assert_eq!(record.get(&event::HOST).map(Said::Host), Some(chosen.said));
        assert!(table.book.conflicts().is_empty());
        assert_eq!(table.book.conflict(&view.at), None);
    }
}

#[test]
fn another_value_can_be_written_in_the_place_of_both() {
    let (mut table, event) = two_hosts();
    let view = only(&table);
    let value = serde_json::to_value(host("Daucus carota")).expect("plain data");
    table.save(&table.book.settle(&view.at, value));
    let record = table.book.record(event).expect("saved");
    assert_eq!(record.get(&event::HOST), Some(host("Daucus carota")));
    assert!(table.book.conflicts().is_empty());
}

#[test]
fn equal_values_are_shown_once_and_the_rest_is_counted() {
    let (mut table, event) = two_hosts();
    let seen = Record::new(event, Kind::Event);
    table.elsewhere(&seen, "camp000000000000", |edit| {
        edit.put(&event::HOST, &host("Angelica sylvestris"));
        edit.put(&event::NOTES, &"wet".to_owned());
    });
    let seen = Record::new(event, Kind::Event);
    table.elsewhere(&seen, "home000000000000", |edit| {
        edit.put(&event::NOTES, &"dry".to_owned());
    });
    let all = table.book.conflicts();
    assert_eq!(all.iter().map(|at| at.field.as_str()).collect::<Vec<_>>(), ["host", "notes"]);
    let view = table.book.conflict(&all[0]).expect("not settled");
    assert_eq!(view.values.len(), 2);
    assert!(!view.rest_agrees);
    assert_eq!(table.book.conflicts_of(event), all);
}

#[test]
fn an_edit_stands_against_a_deletion_that_did_not_see_it() {
    for brings_back in [true, false] {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        let event = table.event("2027-06-19T14:32", varga, |_| {});
        let seen = table.book.record(event).expect("saved");
        table.elsewhere(&seen, "desk000000000000", |edit| {
            edit.put(&event::NOTES, &"dry".to_owned());
            edit.put(&event::HOST, &host("Daucus carota"));
        });
        table.change(&seen, |edit| {
            edit.delete();
        });
        let view = only(&table);
        assert_eq!(view.field, "deleted");
        assert_eq!(view.values[0].said, Said::Deleted);
        assert_eq!(view.values[1].said, Said::Edited(vec!["host".into(), "notes".into()]));
        let chosen = &view.values[usize::from(brings_back)].dot;
        table.save(&table.book.pick(&view.at, chosen));
        assert_eq!(table.book.living(event).is_some(), brings_back);
        assert!(table.book.conflicts().is_empty());
    }
}

#[test]
fn values_are_said_by_what_they_are() {
    let (table, event) = two_hosts();
    let said = |kind: Kind, field: &str, value: Value| table.book.said(&kind, field, &value);
    let varga = table.book.device().person.expect("named");
    assert_eq!(said(Kind::Event, "notes", Value::Null), Said::Empty);
    assert_eq!(said(Kind::Event, "weather", serde_json::json!({"unknown": true})), Said::Unknown);
    assert_eq!(said(Kind::Container, "collector", varga.to_string().into()), Said::Name("I. Varga".into()));
    let line = format!("collector:{event}");
    assert_eq!(
        said(Kind::Event, &line, serde_json::json!({"person": varga, "order": 0})),
        Said::Name("I. Varga".into())
    );
    let number = serde_json::json!({"text": "IV27-0147"});
    assert!(matches!(said(Kind::Container, "number", number), Said::Number(plate) if plate.run == "0147"));
    let place = serde_json::json!({"latitude": 47.61384, "longitude": 12.30427, "datum": "WGS84", "radius_m": 8.0, "how": "typed"});
    assert!(matches!(said(Kind::Event, "place", place), Said::Place(north, ..) if north.starts_with("47.6138")));
    assert_eq!(
        said(Kind::Event, "collection_wording", serde_json::json!(["a", "b"])),
        Said::Lines(vec!["a".into(), "b".into()])
    );
    assert_eq!(said(Kind::Event, "new_thing", serde_json::json!({"x": 1})), Said::Stored("{\"x\":1}".into()));
}
