//! The sample survey: valid, and it shows what it promises to show.

use crate::schema::faults;
use record::check::check;
use record::wire::{Log, Refusal, read};
use record::{Field, Id, Kind, Record, container, event, trap};
use std::collections::BTreeMap;

const DEMO: &[u8] = include_bytes!("../../../../demo/sample.json");
const SERVED: &[u8] = include_bytes!("../../../../public/sample/survey.json");

fn demo() -> Log {
    read(DEMO).expect("the survey is a log file")
}

fn of_kind(log: &Log, kind: Kind) -> Vec<&Record> {
    log.records.iter().filter(|record| record.kind == kind && !record.is_deleted()).collect()
}

fn with<'a, T: serde::de::DeserializeOwned>(
    records: &[&'a Record],
    field: &Field<T>,
    wanted: impl Fn(&T) -> bool,
) -> Vec<&'a Record> {
    records.iter().copied().filter(|record| record.get(field).is_some_and(|value| wanted(&value))).collect()
}

#[test]
fn the_survey_is_whole_and_nothing_in_it_is_wrong() {
    assert_eq!(faults(DEMO), Vec::<String>::new());
    assert_eq!(DEMO, SERVED);
    let log = demo();
    assert_eq!(log.problems, []);
    assert_eq!(check(&log.records), []);
}

#[test]
fn the_survey_says_that_it_is_invented_and_goes_into_no_other_book() {
    let log = demo();
    assert!(log.header.more.contains_key("invented"));
    assert_eq!(log.header.mergeable("own"), Err(Refusal::OtherBook { book: "sample".to_owned() }));
}

#[test]
fn the_survey_is_as_large_as_two_weeks_of_work() {
    let log = demo();
    assert!(of_kind(&log, Kind::Event).len() >= 60);
    assert!(of_kind(&log, Kind::Container).len() >= 200);
    assert!(of_kind(&log, Kind::Person).len() >= 3);
    let days: std::collections::BTreeSet<i32> =
        log.records.iter().filter_map(|record| record::facts::Facts::of(record).day).collect();
    assert_eq!(days.len(), 14);
}

#[test]
fn the_survey_has_nights_traps_a_rearing_and_an_empty_trap() {
    let log = demo();
    let (events, containers) = (of_kind(&log, Kind::Event), of_kind(&log, Kind::Container));
    let nights = with(&events, &event::CAUGHT, |when| {
        when.night && when.until.as_ref().is_some_and(|until| until[..10] > when.from[..10])
    });
    assert_eq!(nights.len(), 4, "nights over midnight");
    let services = with(&events, &event::TRAP, |_| true);
    assert!(
        services.len() >= 9
            && services.iter().all(|event| event.get(&event::CAUGHT).is_some_and(|when| when.until.is_some()))
    );
    assert_eq!(with(&services, &event::NOTHING, |nothing| *nothing).len(), 1, "empty traps");
    let traps = of_kind(&log, Kind::Trap);
    assert_eq!((traps.len(), with(&traps, &trap::TAKEN_UP, |up| *up).len()), (4, 3));
    assert_eq!(with(&containers, &container::ALIVE, |alive| *alive).len(), 1);
    assert_eq!(with(&containers, &container::HOST, |host| host.relation == "reared").len(), 1);
}

#[test]
fn the_survey_has_gaps_one_doubled_number_and_one_disagreement() {
    let log = demo();
    let (events, containers) = (of_kind(&log, Kind::Event), of_kind(&log, Kind::Container));
    assert_eq!(events.iter().filter(|event| event.is_empty(&event::PLACE)).count(), 2, "without coordinates");
    assert_eq!(with(&events, &event::PLACE, |place| place.radius_m > Some(1000.0)).len(), 1, "vague");
    assert_eq!(with(&events, &event::HOST, |host| host.thing.is_empty()).len(), 1, "host not named");
    let bare =
        containers.iter().filter(|vial| vial.is_empty(&container::NUMBER) && vial.is_empty(&container::RELEASED));
    assert_eq!(bare.count(), 4, "unnumbered vials");
    // Engraved vials go round; of the numbers given once each, one was given twice.
    let mut given: BTreeMap<String, Vec<Id>> = BTreeMap::new();
    for (vial, number) in containers.iter().filter_map(|vial| Some((vial.id, vial.get(&container::NUMBER)?))) {
        given.entry(number.text).or_default().push(vial);
    }
    let doubled: Vec<&String> = given.iter().filter(|(_, vials)| vials.len() > 1).map(|(text, _)| text).collect();
    assert_eq!(doubled, ["IV26-0152", "ST04"]);
    let conflicts: Vec<&str> = log.records.iter().flat_map(Record::conflicts).collect();
    assert_eq!(conflicts, ["notes"]);
}
