use super::*;
use crate::bench::Deal;
use crate::deed::What;
use crate::invented::{NOW, Table};
use record::event::{self, Elevation, Host, Method, Place, When};
use record::{container, rules};

struct Caught {
    table: Table,
    event: Id,
    flies: Id,
    wasps: Id,
}

/// Two vials from one meadow, with everything that a label can say.
fn caught() -> Caught {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "IV27-");
    let site = table.site("Mill Meadow");
    let event = table.event("2027-06-19T14:32", varga, |edit| {
        edit.put(&event::SITE, &site);
        edit.put(&event::PLACE, &place());
        edit.put(
            &event::ELEVATION,
            &Elevation { metres: 412.0, how: "typed".into(), typed: Some("412".into()), ..Elevation::default() },
        );
        let particulars = [("minutes".to_owned(), "30".to_owned())].into();
        edit.put(&event::METHOD, &Method { code: "hand_net".into(), text: String::new(), particulars });
        edit.put(&event::HOST, &host("Heracleum sphondylium"));
    });
    let flies = table.vial(event, "IV27-0147", "Hover flies", Some(3));
    let wasps = table.vial(event, "IV27-0148", "Wasps", None);
    Caught { table, event, flies, wasps }
}

fn place() -> Place {
    Place {
        latitude: 47.613_84,
        longitude: 12.304_27,
        datum: "WGS84".into(),
        radius_m: Some(8.0),
        how: "device".into(),
        ..Place::default()
    }
}

fn host(thing: &str) -> Host {
    Host { relation: "flower".into(), thing: thing.into(), what: "plant".into(), ..Host::default() }
}

fn text(table: &Table, of: Id, kind: LabelKind) -> String {
    table.book.label_lines(of, kind).text
}

#[test]
fn a_collection_label_says_where_when_and_by_whom() {
    let caught = caught();
    let written = crate::places::written(&place());
    let (north, east) = written.coordinates;
    let expected = [
        "ORRELAND: Sallow, Tarn Abbot, 2 km NE, Mill Meadow, 412 m".to_owned(),
        format!("{north} {east} ±{} m", written.radius.expect("the radius is known")),
        "19.vi.2027, leg. I. Varga".to_owned(),
    ];
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Collection), expected.join("\n"));
}

#[test]
fn a_host_label_says_on_what_and_how() {
    let caught = caught();
    assert_eq!(
        text(&caught.table, caught.flies, LabelKind::Host),
        "visiting the flower of _Heracleum sphondylium_\nhand net, 30 min\nIV27-0147"
    );
    let [_, host] = caught.table.book.wanted(caught.flies);
    assert!(host.lines[0].iter().any(|run| run.italic && run.text.contains("Heracleum")));
}

#[test]
fn the_devices_own_altitude_stays_off_the_label() {
    let mut caught = caught();
    let event = caught.table.book.record(caught.event).expect("saved");
    caught.table.change(&event, |edit| {
        edit.put(&event::ELEVATION, &Elevation { metres: 459.0, how: "device".into(), ..Elevation::default() });
    });
    assert!(text(&caught.table, caught.flies, LabelKind::Collection).contains("Mill Meadow\n"));
}

#[test]
fn a_container_with_data_of_its_own_says_them() {
    let mut caught = caught();
    let okoro = caught.table.person("D. Okoro");
    let wasps = caught.table.book.record(caught.wasps).expect("saved");
    caught.table.change(&wasps, |edit| {
        edit.put(&container::HOST, &host("Angelica sylvestris"));
        edit.put(&container::COLLECTOR, &okoro);
        edit.put(&container::CAUGHT, &When { from: "2027-06-20T01:10".into(), night: true, ..When::default() });
    });
    assert!(text(&caught.table, caught.wasps, LabelKind::Host).contains("_Angelica sylvestris_"));
    assert!(text(&caught.table, caught.wasps, LabelKind::Collection).ends_with("19–20.vi.2027, leg. D. Okoro"));
}

#[test]
fn a_method_alone_makes_no_host_label() {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "IV27-");
    let event = table.event("2027-06", varga, |edit| {
        edit.put(&event::METHOD, &Method { code: "hand_net".into(), ..Method::default() });
    });
    let vial = table.vial(event, "IV27-0001", "Bees", Some(2));
    let [collection, host] = table.book.wanted(vial);
    assert_eq!((collection.copies, collection.spare), (3, 1));
    assert_eq!((host.copies, host.spare, host.lines.len()), (0, 0, 0));
    assert_eq!(text(&table, vial, LabelKind::Collection), "vi.2027, leg. I. Varga");
}

#[test]
fn copies_are_the_insects_and_the_spare_ones() {
    let mut caught = caught();
    let copies = |table: &Table, of| table.book.wanted(of).map(|wanted| wanted.copies);
    assert_eq!(copies(&caught.table, caught.flies), [4, 4]);
    assert_eq!(copies(&caught.table, caught.wasps), [2, 2]);
    assert_eq!(copies(&caught.table, caught.event), [5, 5]);
    caught.table.make(record::Kind::Rules, |edit| {
        edit.put(&rules::SPARES, &0);
    });
    assert_eq!(copies(&caught.table, caught.flies), [3, 3]);
}

#[test]
fn an_edited_wording_holds_until_it_is_cleared() {
    let mut caught = caught();
    let usual = text(&caught.table, caught.flies, LabelKind::Collection);
    let deed = caught.table.book.set_wording(caught.flies, LabelKind::Collection, "Mill Meadow\n\n _Heracleum_ stand ");
    assert_eq!(deed.what, What::Wording);
    caught.table.save(&deed);
    let label = caught.table.book.label_lines(caught.flies, LabelKind::Collection);
    assert_eq!(
        (label.text.as_str(), label.edited, label.kept_in),
        ("Mill Meadow\n_Heracleum_ stand", true, Some(caught.flies))
    );
    assert_eq!(text(&caught.table, caught.wasps, LabelKind::Collection), usual);
    let clear = caught.table.book.set_wording(caught.flies, LabelKind::Collection, "  ");
    caught.table.save(&clear);
    let label = caught.table.book.label_lines(caught.flies, LabelKind::Collection);
    assert_eq!((label.text, label.edited), (usual.clone(), false));
    assert!(caught.table.book.set_wording(caught.flies, LabelKind::Collection, &usual).is_idle());
}

#[test]
fn a_wording_kept_with_the_event_is_taken_by_containers_like_it() {
    let mut caught = caught();
    let wasps = caught.table.book.record(caught.wasps).expect("saved");
    assert_eq!(caught.table.book.label_lines(caught.flies, LabelKind::Host).others, 1);
    caught.table.change(&wasps, |edit| {
        edit.put(&container::HOST, &host("Angelica sylvestris"));
    });
    assert_eq!(caught.table.book.label_lines(caught.flies, LabelKind::Host).others, 0);
    let third = caught.table.vial(caught.event, "IV27-0149", "Bees", Some(1));
    let deed = caught.table.book.set_wording_for_event(caught.flies, LabelKind::Host, "on hogweed");
    caught.table.save(&deed);
    assert_eq!(text(&caught.table, third, LabelKind::Host), "on hogweed");
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Host), "on hogweed");
    assert_eq!(caught.table.book.label_lines(third, LabelKind::Host).kept_in, Some(caught.event));
    assert!(text(&caught.table, caught.wasps, LabelKind::Host).contains("Angelica"));
}

#[test]
fn a_container_can_have_its_own_words_under_an_edited_event() {
    let mut caught = caught();
    let usual = text(&caught.table, caught.wasps, LabelKind::Collection);
    let deed = caught.table.book.set_wording_for_event(caught.flies, LabelKind::Collection, "Mill Meadow");
    caught.table.save(&deed);
    let deed = caught.table.book.set_wording(caught.wasps, LabelKind::Collection, &usual);
    caught.table.save(&deed);
    assert_eq!(text(&caught.table, caught.wasps, LabelKind::Collection), usual);
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Collection), "Mill Meadow");
}

#[test]
fn the_queue_becomes_orders_and_printing_is_recorded_word_for_word() {
    let mut caught = caught();
    let day = crate::moment::today(NOW);
    assert_eq!(caught.table.book.unlabelled(day), [caught.flies, caught.wasps]);
    let mut queue = Queue::default();
    for of in caught.table.book.unlabelled(day) {
        caught.table.book.queue_in(&mut queue, of);
        caught.table.book.queue_in(&mut queue, of);
    }
    queue.set_copies(caught.flies, LabelKind::Host, 0);
    queue.choose(caught.wasps, false);
    let view = caught.table.book.queue(&queue);
    assert_eq!(view.rows.len(), 2);
    assert_eq!(view.totals, Totals { collection: 4, host: 0 });
    let orders = caught.table.book.print_orders(&queue);
    assert_eq!(orders.of, [(caught.flies, LabelKind::Collection)]);
    assert_eq!(orders.orders[0].copies, 4);
    let proof = press::Proof {
        lines: vec!["ORRELAND: Sallow,".into(), "19.vi.2027".into()],
        path: String::new(),
        type_pt: 4.0,
        pin: (9.0, 4.0, 0.55),
        lines_above_pin: 1,
        over: Vec::new(),
    };
    let deed = caught.table.with_ids(|book, ids| book.printed_deed(&orders, &[proof], Labelled::Yes, NOW, ids));
    assert_eq!(deed.what, What::Printed(4));
    caught.table.save(&deed);
    let printed = caught.table.book.printings(caught.flies);
    assert_eq!(printed.len(), 1);
    assert_eq!((printed[0].label.as_str(), printed[0].copies), ("collection", 4));
    assert_eq!(printed[0].lines, ["ORRELAND: Sallow,", "19.vi.2027"]);
    assert_eq!(printed[0].at, "2027-06-19T14:32:05+02:00");
    assert_eq!(caught.table.book.steps(caught.flies)[0].deed, Deal::Labelled.code());
    assert_eq!(caught.table.book.unlabelled(day), [caught.wasps]);
}

#[test]
fn what_was_deleted_leaves_the_queue() {
    let mut caught = caught();
    let mut queue = Queue::default();
    caught.table.book.queue_in(&mut queue, caught.flies);
    let record = caught.table.book.record(caught.flies).expect("saved");
    caught.table.change(&record, |edit| {
        edit.delete();
    });
    assert!(caught.table.book.queue(&queue).rows.is_empty());
    assert!(caught.table.book.print_orders(&queue).orders.is_empty());
}

#[test]
fn what_was_let_go_or_not_caught_gets_no_label() {
    let mut caught = caught();
    let record = caught.table.book.record(caught.wasps).expect("saved");
    caught.table.change(&record, |edit| {
        edit.put(&container::RELEASED, &true);
    });
    assert_eq!(caught.table.book.to_label(caught.event), [caught.flies]);
    let varga = caught.table.book.device().person.expect("named");
    let bare = caught.table.event("2027-06-19", varga, |_| {});
    assert_eq!(caught.table.book.to_label(bare), [bare]);
    let nothing = caught.table.event("2027-06-19", varga, |edit| {
        edit.put(&event::NOTHING, &true);
    });
    assert!(caught.table.book.to_label(nothing).is_empty());
}

#[test]
fn every_method_and_relation_has_its_words_on_labels() {
    let arrangement = wording::defaults::arrangement(wording::Kind::Host);
    assert!(crate::codes::METHODS.iter().all(|code| arrangement.methods.contains_key(*code)));
    assert!(crate::codes::RELATIONS.iter().all(|code| arrangement.relations.contains_key(*code)));
}

#[test]
fn the_queue_is_kept_for_each_book_on_this_device() {
    let mut queue = Queue::default();
    let caught = caught();
    caught.table.book.queue_in(&mut queue, caught.flies);
    let draft = ports::memory::Phone::new(1).page().ports().draft;
    assert!(queue.keep(&*draft, crate::book::Book::Own));
    assert_eq!(Queue::load(&*draft, crate::book::Book::Own), queue);
    assert_eq!(Queue::load(&*draft, crate::book::Book::Sample), Queue::default());
}
