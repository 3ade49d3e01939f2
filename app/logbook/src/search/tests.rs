use super::*;
use crate::invented::Table;
use record::{container, event, person};

struct Book {
    table: Table,
    okoro: Id,
    meadow: Id,
    wood: Id,
    own: Id,
}

/// Three events, two with D. Okoro; one vial of Varga's is collected by Okoro alone.
fn book() -> Book {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "IV27-");
    let okoro = table.person("D. Okoro");
    let record = table.book.record(okoro).expect("saved");
    table.change(&record, |edit| {
        edit.put(&person::SPELLINGS, &vec!["Okoro D.".to_owned()]);
    });
    let mill = table.site("Mill Meadow");
    let kestrel = table.site("Kestrel Wood");
    let meadow = table.event("2027-06-19T14:32", okoro, |edit| {
        edit.put(&event::SITE, &mill);
    });
    table.vial(meadow, "DO27-0012", "Leaf beetles", Some(4));
    let wood = table.event("2027-06-19T13:15", okoro, |edit| {
        edit.put(&event::SITE, &kestrel);
        edit.put(&event::NOTES, &"Pořín side".to_owned());
    });
    table.vial(wood, "DO27-0031", "Ground beetles", None);
    let alone = table.event("2027-06-12T11:02", varga, |edit| {
        edit.put(&event::SITE, &mill);
    });
    let own = table.vial(alone, "IV27-0118", "Weevils", Some(1));
    let record = table.book.record(own).expect("saved");
    table.change(&record, |edit| {
        edit.put(&container::COLLECTOR, &okoro);
    });
    Book { table, okoro, meadow, wood, own }
}

fn events(found: &Found) -> Vec<Id> {
    found.events.shown.iter().map(|line| line.id).collect()
}

#[test]
fn a_person_is_found_with_their_events_and_their_own_containers() {
    let book = book();
    let found = book.table.book.search("okoro", Show::All);
    assert_eq!(
        found.persons.shown[0],
        PersonHit { id: book.okoro, name: "D. Okoro".into(), spellings: vec!["Okoro D.".into()], events: 2 }
    );
    assert_eq!(events(&found), [book.wood, book.meadow]);
    assert_eq!(found.containers.shown.iter().map(|hit| hit.container.id).collect::<Vec<_>>(), [book.own]);
    assert_eq!(found.total, 4);
}

#[test]
fn words_may_stand_in_the_site_and_in_the_containers() {
    let book = book();
    assert_eq!(events(&book.table.book.search("KESTREL okoro", Show::All)), [book.wood]);
    assert_eq!(events(&book.table.book.search("kestrel beetles", Show::All)), [book.wood]);
    assert_eq!(events(&book.table.book.search("porin", Show::All)), [book.wood]);
    assert_eq!(events(&book.table.book.search("kestrel weevils", Show::All)), []);
    let found = book.table.book.search("beetles meadow", Show::Containers);
    assert_eq!(found.containers.count, 1);
    assert_eq!(found.containers.shown[0].site, "Mill Meadow");
}

#[test]
fn a_number_is_found_as_it_is_written() {
    let book = book();
    let found = book.table.book.search("0118", Show::All);
    assert_eq!(found.containers.shown[0].container.id, book.own);
    assert_eq!(found.total, 1);
}

#[test]
fn lists_are_cut_and_say_how_many_more_there_are() {
    let mut book = book();
    for hour in 10..15 {
        book.table.event(&format!("2027-07-01T{hour}:00"), book.okoro, |_| {});
    }
    let found = book.table.book.search("okoro", Show::All);
    assert_eq!((found.events.count, found.events.shown.len(), found.events.more()), (7, 3, 4));
    let found = book.table.book.search("okoro", Show::Events);
    assert_eq!((found.events.more(), found.persons.shown.len(), found.persons.count), (0, 0, 1));
}

#[test]
fn a_question_that_finds_nothing_offers_what_is_written_like_it() {
    let book = book();
    let found = book.table.book.search("mil medow", Show::All);
    assert_eq!(found.total, 0);
    assert_eq!(
        found.like.sites.iter().map(|site| (site.name.as_str(), site.events)).collect::<Vec<_>>(),
        [("Mill Meadow", 2)]
    );
    assert_eq!(found.looked, Looked { events: 3, containers: 3, sites: 2, persons: 2 });
    assert_eq!(book.table.book.search("okro", Show::All).like.persons[0].id, book.okoro);
}

#[test]
fn an_empty_question_finds_nothing_and_what_is_deleted_is_not_found() {
    let mut book = book();
    assert_eq!(book.table.book.search("  ", Show::All).total, 0);
    let record = book.table.book.record(book.wood).expect("saved");
    book.table.change(&record, |edit| {
        edit.delete();
    });
    assert_eq!(events(&book.table.book.search("okoro", Show::All)), [book.meadow]);
    assert_eq!(book.table.book.search("okoro", Show::All).persons.shown[0].events, 1);
}

#[test]
fn a_container_is_found_by_what_hangs_on_it() {
    let mut book = book();
    let named = crate::bench::DeterminationForm { name: "Otiorhynchus scaber".into(), ..Default::default() };
    let deed = book.table.with_ids(|logbook, ids| logbook.determine(book.own, &named, ids)).expect("a name");
    book.table.save(&deed);
    let pins = crate::bench::MountForm { route: "point".into(), code: "GLS-0098".into(), count: "3".into() };
    let deed = book.table.with_ids(|logbook, ids| logbook.add_mounts(book.own, &pins, ids)).expect("free codes");
    book.table.save(&deed);
    let deed = book.table.with_ids(|logbook, ids| logbook.add_piece(book.own, "genitalia", "G 112", ids));
    book.table.save(&deed.expect("numbered"));
    for words in ["scaber", "gls-0100", "genitalia", "scaber mill", "G scaber GLS"] {
        let found = book.table.book.search(words, Show::All);
        let ids: Vec<Id> = found.containers.shown.iter().map(|hit| hit.container.id).collect();
        assert_eq!(ids, [book.own], "{words}");
    }
}
