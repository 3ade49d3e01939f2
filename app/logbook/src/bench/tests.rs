use super::*;
use crate::invented::{NOW, Table};
use record::{container, event};

/// I. Varga of this device, D. Okoro and last year: three vials carry 147.
struct Bench {
    table: Table,
    own: Id,
    colleague: Id,
    last_year: Id,
}

fn bench() -> Bench {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "IV27-");
    let okoro = table.person("D. Okoro");
    table.numbering(okoro, "DO27-", |_| {});
    table.numbering(varga, "IV26-", |_| {});
    let old = table.event("2026-06-11T10:00", varga, |_| {});
    let last_year = table.vial(old, "IV26-0147", "Moths", Some(1));
    let june = table.event("2027-06-19T14:32", varga, |_| {});
    let own = table.vial(june, "IV27-0147", "Hover flies", Some(3));
    table.vial(june, "IV27-0148", "Hover flies", None);
    let july = table.event("2027-07-02T11:00", okoro, |_| {});
    let colleague = table.vial(july, "DO27-0147", "Leaf beetles", Some(40));
    table.vial(july, "DO27-0031", "Ground beetles", Some(7));
    Bench { table, own, colleague, last_year }
}

fn opened(view: &BenchView) -> Option<Id> {
    match view {
        BenchView::One(on_bench) => Some(on_bench.container.id),
        _ => None,
    }
}

fn listed(view: &BenchView) -> Vec<Id> {
    match view {
        BenchView::Choose { candidates, .. } => candidates.iter().map(|candidate| candidate.container.id).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn a_whole_number_opens_its_container_however_it_is_written() {
    let bench = bench();
    for typed in ["IV27-0147", "iv27-147", " iv27 0147 ", "iv27147", "IV27 - 147"] {
        assert_eq!(opened(&bench.table.book.bench(typed)), Some(bench.own), "{typed}");
    }
    let BenchView::One(on_bench) = bench.table.book.bench("IV27-0147") else { panic!("it is open") };
    assert_eq!(on_bench.others, 2);
    assert_eq!(on_bench.event.map(|event| event.line.clock), Some("14:32".to_owned()));
}

#[test]
fn digits_that_only_one_carries_open_it() {
    let bench = bench();
    assert!(opened(&bench.table.book.bench("31")).is_some());
    assert!(opened(&bench.table.book.bench("0031")).is_some());
}

#[test]
fn digits_that_several_carry_open_none() {
    let bench = bench();
    let view = bench.table.book.bench("147");
    assert_eq!(listed(&view), [bench.own, bench.colleague, bench.last_year]);
    let BenchView::Choose { candidates, .. } = view else { panic!("several are listed") };
    assert_eq!(
        candidates.iter().map(|candidate| candidate.why).collect::<Vec<_>>(),
        [Why::Own, Why::Colleague, Why::LastYear]
    );
    assert_eq!(candidates[1].collectors, ["D. Okoro"]);
    assert_eq!(candidates[1].container.contents[0].group, "Leaf beetles");
}

#[test]
fn a_number_that_stands_twice_is_listed_even_with_its_prefix() {
    let mut bench = bench();
    let event = bench.table.book.container(bench.own).and_then(|container| container.event).expect("it has an event");
    let doubled = bench.table.vial(event, "IV27-0147", "Wasps", Some(1));
    assert_eq!(listed(&bench.table.book.bench("IV27-147")), [doubled, bench.own]);
}

#[test]
fn part_of_a_prefix_opens_nothing_unasked() {
    let bench = bench();
    assert_eq!(listed(&bench.table.book.bench("IV-147")).len(), 2);
    assert_eq!(listed(&bench.table.book.bench("DO-147")), [bench.colleague]);
}

#[test]
fn an_unknown_number_gives_the_nearest_known_ones() {
    let bench = bench();
    let BenchView::None { typed, nearest } = bench.table.book.bench(" 0417 ") else { panic!("nobody carries it") };
    assert_eq!(typed, "0417");
    assert_eq!(nearest[0].reason, number::Reason::Transposed);
    assert!(nearest[0].container.container.plate.run.ends_with("0147"));
    assert!(matches!(bench.table.book.bench("XY27-0147"), BenchView::None { nearest, .. } if !nearest.is_empty()));
}

#[test]
fn neighbours_already_dealt_with_speak_for_a_container() {
    let mut bench = bench();
    let BenchView::One(neighbour) = bench.table.book.bench("IV27-0148") else { panic!("it is open") };
    let deed = bench.table.with_ids(|book, ids| book.step(neighbour.container.id, Deal::Pinned, 1, NOW, ids));
    bench.table.save(&deed);
    let BenchView::Choose { candidates, .. } = bench.table.book.bench("147") else { panic!("several are listed") };
    assert_eq!(candidates[0].neighbours, ["0148"]);
    assert!(candidates[1].neighbours.is_empty() && !candidates[0].dealt);
}

#[test]
fn letters_of_an_event_that_were_left_out_are_listed() {
    let mut table = Table::new();
    let varga = table.own("I. Varga", "");
    let event = table.event("2027-06-19T14:32", varga, |_| {});
    let vials: Vec<Id> = ["19a", "19b"].map(|number| table.vial(event, number, "Flies", None)).to_vec();
    assert_eq!(listed(&table.book.bench("19")).len(), 2);
    assert_eq!(opened(&table.book.bench("19 B")), Some(vials[1]));
}

#[test]
fn steps_follow_one_another_until_all_are_labelled() {
    let mut bench = bench();
    let next = |table: &Table| table.book.bench_container(bench.own).and_then(|on_bench| on_bench.next);
    assert_eq!(next(&bench.table), Some(NextStep { deal: Deal::Pinned, count: 3 }));
    let waiting = bench.table.book.waiting();
    for (deal, count) in [(Deal::Pinned, 2), (Deal::Pinned, 1)] {
        let deed = bench.table.with_ids(|book, ids| book.step(bench.own, deal, count, NOW, ids));
        bench.table.save(&deed);
    }
    assert_eq!(next(&bench.table), Some(NextStep { deal: Deal::Labelled, count: 3 }));
    assert_eq!(bench.table.book.waiting(), waiting - 1);
    let deed = bench.table.with_ids(|book, ids| book.step(bench.own, Deal::Labelled, 3, NOW, ids));
    bench.table.save(&deed);
    assert_eq!(next(&bench.table), None);
    let steps = bench.table.book.steps(bench.own);
    assert_eq!(
        steps.iter().map(|step| (step.deed.as_str(), step.count, step.by.as_str())).collect::<Vec<_>>(),
        [("pinned", 2, "I. Varga"), ("pinned", 1, "I. Varga"), ("labelled", 3, "I. Varga"),]
    );
}

#[test]
fn what_is_deleted_or_empty_is_not_found() {
    let mut bench = bench();
    assert_eq!(bench.table.book.bench("  "), BenchView::Empty { waiting: 5 });
    let record = bench.table.book.record(bench.colleague).expect("it is there");
    bench.table.change(&record, |edit| {
        edit.delete();
    });
    assert_eq!(listed(&bench.table.book.bench("147")).len(), 2);
    assert!(matches!(bench.table.book.bench("vial"), BenchView::None { .. }));
}

#[test]
fn a_container_with_a_collector_of_its_own_is_theirs() {
    let mut bench = bench();
    let okoro = bench.table.book.person_named("D. Okoro").expect("known").id;
    let event = bench.table.event("2027-07-09", okoro, |edit| {
        edit.put(&event::NOTES, &"invented".to_owned());
    });
    let vial = bench.table.vial(event, "900", "Bees", Some(1));
    let record = bench.table.book.record(vial).expect("it is there");
    let varga = bench.table.book.device().person.expect("named");
    bench.table.change(&record, |edit| {
        edit.put(&container::COLLECTOR, &varga);
    });
    bench.table.vial(event, "XX-900", "Bees", Some(1));
    let BenchView::Choose { candidates, .. } = bench.table.book.bench("900") else { panic!("two carry it") };
    assert_eq!(
        candidates.iter().map(|one| (one.why, one.collectors[0].as_str())).collect::<Vec<_>>(),
        [(Why::Own, "I. Varga"), (Why::Colleague, "D. Okoro"),]
    );
}
