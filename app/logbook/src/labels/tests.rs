use super::*;
use crate::bench::Deal;
use crate::deed::What;
use crate::invented::{NOW, Table};
use record::event::{self, Elevation, Host, Method, Place, When};
use record::{container, rules};

mod pins;

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

fn proof(lines: &[&str]) -> press::Proof {
    press::Proof {
        lines: lines.iter().map(|line| (*line).to_owned()).collect(),
        path: String::new(),
        type_pt: 4.0,
        pin: (9.0, 4.0, 0.55),
        lines_above_pin: 1,
        over: Vec::new(),
    }
}

fn orders_of(caught: &Caught, queue: &Queue) -> Orders {
    caught.table.book.print_orders(&caught.table.book.queue(queue), queue.begin)
}

fn text(table: &Table, of: Id, kind: LabelKind) -> String {
    table.book.label_lines(of, Which::of(kind)).text
}

/// The labels that every pin may have, and all others.
fn basic(table: &Table, of: Id) -> [Wanted; 2] {
    [LabelKind::Collection, LabelKind::Host].map(|kind| table.book.wanted_of(of, Which::of(kind)))
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
    let [_, host] = basic(&caught.table, caught.flies);
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
    let [collection, host] = basic(&table, vial);
    assert_eq!((collection.copies, collection.spare), (3, 1));
    assert_eq!((host.copies, host.spare, host.lines.len()), (0, 0, 0));
    assert_eq!(text(&table, vial, LabelKind::Collection), "vi.2027, leg. I. Varga");
}

#[test]
fn copies_are_the_insects_and_the_spare_ones() {
    let mut caught = caught();
    let copies = |table: &Table, of| basic(table, of).map(|wanted| wanted.copies);
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
    let deed = caught.table.book.set_wording(
        caught.flies,
        Which::of(LabelKind::Collection),
        "Mill Meadow\n\n _Heracleum_ stand ",
    );
    assert_eq!(deed.what, What::Wording);
    caught.table.save(&deed);
    let label = caught.table.book.label_lines(caught.flies, Which::of(LabelKind::Collection));
    assert_eq!(
        (label.text.as_str(), label.edited, label.kept_in),
        ("Mill Meadow\n_Heracleum_ stand", true, Some(caught.flies))
    );
    assert_eq!(text(&caught.table, caught.wasps, LabelKind::Collection), usual);
    let clear = caught.table.book.set_wording(caught.flies, Which::of(LabelKind::Collection), "  ");
    caught.table.save(&clear);
    let label = caught.table.book.label_lines(caught.flies, Which::of(LabelKind::Collection));
    assert_eq!((label.text, label.edited), (usual.clone(), false));
    assert!(caught.table.book.set_wording(caught.flies, Which::of(LabelKind::Collection), &usual).is_idle());
}

#[test]
fn a_wording_kept_with_the_event_is_taken_by_containers_like_it() {
    let mut caught = caught();
    let wasps = caught.table.book.record(caught.wasps).expect("saved");
    assert_eq!(caught.table.book.label_lines(caught.flies, Which::of(LabelKind::Host)).others, 1);
    caught.table.change(&wasps, |edit| {
        edit.put(&container::HOST, &host("Angelica sylvestris"));
    });
    assert_eq!(caught.table.book.label_lines(caught.flies, Which::of(LabelKind::Host)).others, 0);
    let third = caught.table.vial(caught.event, "IV27-0149", "Bees", Some(1));
    let deed = caught.table.book.set_wording_for_event(caught.flies, Which::of(LabelKind::Host), "on hogweed");
    caught.table.save(&deed);
    assert_eq!(text(&caught.table, third, LabelKind::Host), "on hogweed");
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Host), "on hogweed");
    assert_eq!(caught.table.book.label_lines(third, Which::of(LabelKind::Host)).kept_in, Some(caught.event));
    assert!(text(&caught.table, caught.wasps, LabelKind::Host).contains("Angelica"));
}

#[test]
fn a_wording_kept_with_the_event_never_lends_a_number() {
    let mut caught = caught();
    let host = Which::of(LabelKind::Host);
    let deed = caught.table.book.set_wording_for_event(caught.flies, host, "on hogweed\nvial IV27-0147");
    caught.table.save(&deed);
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Host), "on hogweed\nvial IV27-0147");
    assert_eq!(text(&caught.table, caught.wasps, LabelKind::Host), "on hogweed\nvial IV27-0148");
}

#[test]
fn a_container_can_have_its_own_words_under_an_edited_event() {
    let mut caught = caught();
    let usual = text(&caught.table, caught.wasps, LabelKind::Collection);
    let deed = caught.table.book.set_wording_for_event(caught.flies, Which::of(LabelKind::Collection), "Mill Meadow");
    caught.table.save(&deed);
    let deed = caught.table.book.set_wording(caught.wasps, Which::of(LabelKind::Collection), &usual);
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
    queue.set_copies(caught.flies, Which::of(LabelKind::Host), 0);
    queue.choose(caught.wasps, false);
    let view = caught.table.book.queue(&queue);
    assert_eq!(view.rows.len(), 2);
    assert_eq!((view.totals.of(LabelKind::Collection), view.totals.labels()), (4, 4));
    let orders = orders_of(&caught, &queue);
    assert_eq!(orders.of, [(caught.flies, Which::of(LabelKind::Collection))]);
    assert_eq!(orders.batch.labels[0].copies, 4);
    let deed = caught.table.with_ids(|book, ids| {
        book.printed_deed(&orders, &[proof(&["ORRELAND: Sallow,", "19.vi.2027"])], Labelled::Yes, NOW, ids)
    });
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
    assert!(orders_of(&caught, &queue).of.is_empty());
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

fn fluid(code: &str) -> record::container::Fluid {
    record::container::Fluid { code: code.into(), strength: "80".into(), ..Default::default() }
}

/// The labels that are proposed without being asked for.
fn proposed(table: &Table, of: Id) -> Vec<(LabelKind, u32)> {
    let wanted = table.book.wanted(of).into_iter();
    wanted.map(|wanted| (wanted.which.kind, wanted.copies)).filter(|(_, copies)| *copies > 0).collect()
}

#[test]
fn the_vessel_proposes_its_own_label() {
    let mut caught = caught();
    let record = caught.table.book.record(caught.flies).expect("saved");
    caught.table.change(&record, |edit| {
        edit.put(&container::KEPT, &fluid("ethanol"));
    });
    let basic = [(LabelKind::Collection, 4), (LabelKind::Host, 4)];
    assert_eq!(proposed(&caught.table, caught.flies), [&basic[..], &[(LabelKind::Fluid, 1)]].concat());
    let wet = text(&caught.table, caught.flies, LabelKind::Fluid);
    assert!(wet.ends_with("IV27-0147, Hover flies 3, ethanol 80 %"), "{wet}");
    let record = caught.table.book.record(caught.flies).expect("saved");
    caught.table.change(&record, |edit| {
        edit.put(&container::VESSEL, &"envelope".to_owned());
        edit.put(&container::KEPT, &fluid("papered"));
    });
    assert_eq!(proposed(&caught.table, caught.flies), [&basic[..], &[(LabelKind::Envelope, 1)]].concat());
}

#[test]
fn a_slip_says_number_and_count() {
    let caught = caught();
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Slip), "IV27-0147 × 3\n19.vi.2027");
    assert_eq!(text(&caught.table, caught.wasps, LabelKind::Slip), "IV27-0148\n19.vi.2027");
    assert_eq!(text(&caught.table, caught.event, LabelKind::Slip), "");
}

fn determined(caught: &mut Caught, name: &str, by: &str) {
    let book = &caught.table.book;
    let form = crate::bench::DeterminationForm {
        name: name.into(),
        qualifier: "cf.".into(),
        author: "(Linnaeus, 1758)".into(),
        by: by.into(),
        ..book.new_determination(NOW)
    };
    let of = caught.flies;
    let deed = caught.table.with_ids(|book, ids| book.determine(of, &form, ids)).expect("it has a name");
    assert_eq!(deed.what, What::Determined);
    caught.table.save(&deed);
}

#[test]
fn determinations_are_added_and_each_has_its_label() {
    let mut caught = caught();
    determined(&mut caught, "Syrphus ribesii", "I. Varga");
    determined(&mut caught, "Eupeodes luniger", "P. Lindqvist");
    let known = caught.table.book.determinations(caught.flies);
    let name =
        |view: &crate::bench::DeterminationView| view.name.iter().map(|run| run.text.clone()).collect::<String>();
    assert_eq!(known.iter().map(name).collect::<Vec<_>>(), ["Syrphus cf. ribesii", "Eupeodes cf. luniger"]);
    assert_eq!(known[0].name.iter().map(|run| run.italic).collect::<Vec<_>>(), [true, false, true]);
    assert_eq!((known[0].by.as_str(), known[0].year.as_str()), ("I. Varga", "2027"));
    assert!(caught.table.book.person_named("P. Lindqvist").is_some(), "whoever is named becomes a person");
    let labels: Vec<Wanted> = caught.table.book.wanted(caught.flies);
    let labels: Vec<&Wanted> = labels.iter().filter(|one| one.which.kind == LabelKind::Determination).collect();
    assert_eq!(labels.iter().map(|one| one.copies).collect::<Vec<_>>(), [0, 0]);
    let newest = caught.table.book.label_lines(caught.flies, labels[0].which).text;
    assert_eq!(newest, "_Eupeodes_ cf. _luniger_ (Linnaeus, 1758)\ndet. P. Lindqvist 2027");
    let empty = crate::bench::DeterminationForm::default();
    let of = caught.flies;
    assert!(caught.table.with_ids(|book, ids| book.determine(of, &empty, ids)).is_none());
}

#[test]
fn a_wording_of_one_determination_leaves_the_others() {
    let mut caught = caught();
    determined(&mut caught, "Syrphus ribesii", "I. Varga");
    determined(&mut caught, "Eupeodes luniger", "I. Varga");
    let which: Vec<Which> = caught.table.book.labels_of(caught.flies);
    let which: Vec<Which> = which.into_iter().filter(|which| which.kind == LabelKind::Determination).collect();
    let deed = caught.table.book.set_wording(caught.flies, which[0], "_E. luniger_");
    caught.table.save(&deed);
    let label = |at: usize| caught.table.book.label_lines(caught.flies, which[at]);
    assert_eq!((label(0).text.as_str(), label(0).edited, label(1).edited), ("_E. luniger_", true, false));
}

#[test]
fn a_reared_insect_says_when_it_was_collected_and_when_it_emerged() {
    let mut caught = caught();
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Rearing), "");
    let deed = caught.table.book.set_emerged(caught.flies, "2027-07-28", "2027-08-03");
    caught.table.save(&deed);
    let label = text(&caught.table, caught.flies, LabelKind::Rearing);
    assert!(label.ends_with("coll. 19.vi.2027, em. 28.vii–3.viii.2027, leg. I. Varga"), "{label}");
    assert_eq!(caught.table.book.emerged(caught.flies), ("2027-07-28".to_owned(), "2027-08-03".to_owned()));
    let deed = caught.table.book.set_emerged(caught.flies, "", "2027-08-03");
    caught.table.save(&deed);
    assert_eq!(caught.table.book.emerged(caught.flies), (String::new(), String::new()));
}

#[test]
fn a_part_kept_elsewhere_has_a_label_with_its_number() {
    let mut caught = caught();
    let of = caught.flies;
    let deed = caught.table.with_ids(|book, ids| book.add_piece(of, "genitalia", " G 112 ", ids)).expect("numbered");
    caught.table.save(&deed);
    assert!(caught.table.with_ids(|book, ids| book.add_piece(of, "leg", " ", ids)).is_none());
    let which = caught.table.book.labels_of(of).into_iter().find(|which| which.kind == LabelKind::Parts);
    let label = caught.table.book.label_lines(of, which.expect("there is one")).text;
    assert!(label.starts_with("genitalia prep. G 112"), "{label}");
}

/// The flies' collection label and fluid label, printed.
fn printed(caught: &mut Caught) -> (Queue, Orders) {
    let mut queue = Queue::default();
    caught.table.book.queue_in(&mut queue, caught.flies);
    queue.set_copies(caught.flies, Which::of(LabelKind::Fluid), 1);
    queue.set_copies(caught.flies, Which::of(LabelKind::Host), 0);
    let orders = orders_of(caught, &queue);
    let proofs: Vec<press::Proof> = orders.of.iter().map(|_| proof(&["as printed"])).collect();
    let deed = caught.table.with_ids(|book, ids| book.printed_deed(&orders, &proofs, Labelled::NotYet, NOW, ids));
    caught.table.save(&deed);
    (queue, orders)
}

#[test]
fn labels_of_different_sizes_go_to_the_press_together() {
    let mut caught = caught();
    let (mut queue, orders) = printed(&mut caught);
    let sizes: Vec<(f64, f64, f64)> = orders
        .batch
        .styles
        .iter()
        .map(|style| (style.format.width_mm, style.format.height_mm, style.format.pin_mm))
        .collect();
    assert_eq!(sizes, [(18.0, 8.0, 1.1), (40.0, 15.0, 0.0)]);
    assert_eq!(orders.batch.labels.iter().map(|label| label.style).collect::<Vec<_>>(), [0, 1]);
    assert_eq!((orders.labels(), orders.on_pins()), (5, true));
    queue.begin = (2, 3);
    let card = orders_of(&caught, &queue).batch.card;
    assert_eq!((card.used_down_mm, card.used_across_mm), (16.0, 54.0));
    queue.take_out_printed(&orders);
    assert_eq!((queue.entries.is_empty(), queue.begin), (true, (0, 0)));
}

#[test]
fn a_label_that_one_does_not_hold_is_printed_as_two_as_long_as_it_says_the_same() {
    let mut caught = caught();
    let mut queue = Queue::default();
    caught.table.book.queue_in(&mut queue, caught.flies);
    let which = Which::of(LabelKind::Collection);
    let whole = caught.table.book.label_lines(caught.flies, which).lines;
    let labels = vec![whole[..1].to_vec(), whole[1..].to_vec()];
    queue.share(caught.flies, Shared { which, whole, labels: labels.clone() });
    let orders = orders_of(&caught, &queue);
    let kinds: Vec<LabelKind> = orders.of.iter().map(|(_, which)| which.kind).collect();
    assert_eq!(kinds, [LabelKind::Collection, LabelKind::Collection, LabelKind::Host]);
    assert_eq!((&orders.batch.labels[1].lines, orders.batch.labels[1].copies), (&labels[1], 4));
    corrected(&mut caught);
    assert_eq!(orders_of(&caught, &queue).of.len(), 2, "the lines are others now");
}

#[test]
fn what_is_not_printed_yet_stays_in_the_queue() {
    let mut caught = caught();
    let (mut queue, orders) = printed(&mut caught);
    queue.set_copies(caught.flies, Which::of(LabelKind::Slip), 2);
    queue.take_out_printed(&orders);
    assert_eq!(queue.of(caught.flies).map(Queued::labels), Some(2));
}

fn corrected(caught: &mut Caught) {
    let record = caught.table.book.record(caught.event).expect("saved");
    caught.table.change(&record, |edit| {
        edit.put(&event::CAUGHT, &When { from: "2027-06-18T14:32".into(), ..When::default() });
    });
}

#[test]
fn a_corrected_event_makes_its_printed_labels_out_of_date() {
    let mut caught = caught();
    printed(&mut caught);
    assert!(caught.table.book.outdated().is_empty());
    corrected(&mut caught);
    let outdated = caught.table.book.outdated();
    let kinds: Vec<LabelKind> = outdated.iter().map(|one| one.which.kind).collect();
    assert_eq!(kinds, [LabelKind::Collection, LabelKind::Fluid]);
    let earlier = &outdated[0].earlier;
    assert_eq!((earlier.old.as_slice(), earlier.copies), (&["as printed".to_owned()][..], 4));
    assert_eq!(earlier.new.last().map(String::as_str), Some("18.vi.2027, leg. I. Varga"));
    assert!(caught.table.book.wanted(caught.flies)[0].earlier.is_some());
    let mut queue = Queue::default();
    queue.print_again(&outdated[0]);
    assert_eq!(queue.of(caught.flies).map(|queued| queued.copies(outdated[0].which)), Some(4));
    printed(&mut caught);
    assert!(caught.table.book.outdated().is_empty(), "printed again they are right");
}

#[test]
fn what_a_label_does_not_say_makes_it_not_out_of_date() {
    let mut caught = caught();
    printed(&mut caught);
    let record = caught.table.book.record(caught.event).expect("saved");
    caught.table.change(&record, |edit| {
        edit.put(&event::NOTES, &"windy".to_owned());
    });
    assert!(caught.table.book.outdated().is_empty());
}

#[test]
fn a_determination_printed_stays_right() {
    let mut caught = caught();
    determined(&mut caught, "Syrphus ribesii", "I. Varga");
    let which = caught.table.book.labels_of(caught.flies).into_iter();
    let which = which.into_iter().find(|which| which.kind == LabelKind::Determination).expect("one was added");
    let mut queue = Queue::default();
    caught.table.book.queue_in(&mut queue, caught.flies);
    queue.set_copies(caught.flies, which, 3);
    let orders = orders_of(&caught, &queue);
    let proofs: Vec<press::Proof> = orders.of.iter().map(|_| proof(&["old"])).collect();
    let deed = caught.table.with_ids(|book, ids| book.printed_deed(&orders, &proofs, Labelled::NotYet, NOW, ids));
    caught.table.save(&deed);
    determined(&mut caught, "Syrphus vitripennis", "I. Varga");
    assert!(caught.table.book.outdated().is_empty());
    assert_eq!(caught.table.book.printed(caught.flies).of(LabelKind::Determination), 3);
}

#[test]
fn an_arrangement_changes_labels_from_its_choice_on_and_makes_none_out_of_date() {
    let mut caught = caught();
    printed(&mut caught);
    let kind = LabelKind::Collection;
    let mut that = caught.table.book.arrangement_used(kind);
    that.name = "Capitals".into();
    that.arrangement.month = wording::Month::RomanCapital;
    that.arrangement.abbreviations.insert("Mill Meadow".into(), "Mill M.".into());
    let deed = caught.table.with_ids(|book, ids| book.save_arrangement(kind, &that, ids));
    caught.table.save(&deed);
    let label = text(&caught.table, caught.flies, kind);
    assert!(label.contains("19.VI.2027") && label.contains("Mill M."), "{label}");
    assert!(caught.table.book.outdated().is_empty());
    let made = caught.table.book.arrangements(kind);
    assert_eq!(made.iter().map(|made| made.name.as_str()).collect::<Vec<_>>(), ["Capitals"]);
    assert!(caught.table.book.arrangements(LabelKind::Host).is_empty());
    let deed = caught.table.with_ids(|book, ids| book.use_arrangement(kind, None, ids));
    caught.table.save(&deed);
    assert!(text(&caught.table, caught.flies, kind).contains("19.vi.2027"));
    let deed = caught.table.book.delete_arrangement(made[0].id);
    caught.table.save(&deed);
    assert!(caught.table.book.arrangements(kind).is_empty());
}

#[test]
fn somebody_elses_arrangement_changes_nothing_unasked() {
    let mut caught = caught();
    let usual = text(&caught.table, caught.flies, LabelKind::Collection);
    caught.table.make(record::Kind::Arrangement, |edit| {
        edit.put(&record::arrangement::LABEL, &"collection".to_owned());
        let other = wording::Arrangement { lines: Vec::new(), ..wording::defaults::arrangement(LabelKind::Collection) };
        edit.put(&record::arrangement::PARTS, &serde_json::to_value(other).expect("plain data"));
    });
    assert_eq!(text(&caught.table, caught.flies, LabelKind::Collection), usual);
}

#[test]
fn an_arrangement_is_shown_with_real_catches() {
    let caught = caught();
    let usual = wording::defaults::arrangement(LabelKind::Host);
    let samples = caught.table.book.sample_lines(LabelKind::Host, &usual, 3);
    assert_eq!(samples.iter().map(|sample| sample.of).collect::<Vec<_>>(), [caught.flies, caught.wasps]);
    assert!(caught.table.book.sample_lines(LabelKind::Rearing, &usual, 3).is_empty());
}
