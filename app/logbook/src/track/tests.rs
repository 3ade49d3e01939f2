use super::*;
use crate::invented::Table;
use record::event::When;

/// A walk due east along the equator, 100 m a minute: invented.
fn walk() -> Track {
    let step = 100.0 / 111_319.490_793; // metres of a degree there: WGS84's equator, 40,075,016.686 m, by 360
    let start = instant(&at("2026-06-19T14:00")).expect("an hour").unix_ms();
    let fix = |minute: i64| ports::track::Fix {
        latitude: 0.0,
        longitude: 30.0 + step * minute as f64,
        unix_ms: start + minute * 60_000,
    };
    track(&[fix(0), fix(10), fix(20)])
}

fn at(from: &str) -> When {
    When { from: from.to_owned(), offset_minutes: Some(120), ..When::default() }
}

fn book(hours: &[&str]) -> Table {
    let mut table = Table::new();
    let person = table.own("I. Varga", "IV26-");
    for hour in hours {
        table.event(hour, person, |edit| {
            edit.put(&event::CAUGHT, &at(hour));
        });
    }
    table
}

#[test]
fn an_event_between_two_fixes_lies_on_the_way() {
    let table = book(&["2026-06-19T14:05"]);
    let offers = table.book.track_offers(&walk(), 0);
    let [offer] = &offers[..] else { panic!("one event") };
    let metres_east = (offer.place.longitude - 30.0) * 111_319.490_793;
    assert!((metres_east - 500.0).abs() < 0.01, "{metres_east}");
    assert_eq!(offer.rests_on, RestsOn::Between(10, 1_000));
    assert!(offer.sure() && offer.place.radius_m.is_some_and(|radius| radius > 30.0));
}

#[test]
fn a_clock_that_is_ahead_is_put_back() {
    let table = book(&["2026-06-19T14:05"]);
    let offers = table.book.track_offers(&walk(), 120);
    let metres_east = (offers[0].place.longitude - 30.0) * 111_319.490_793;
    assert!((metres_east - 300.0).abs() < 0.01, "{metres_east}");
}

#[test]
fn outside_the_track_is_offered_and_not_taken_unasked() {
    let table = book(&["2026-06-19T14:30", "2026-06-19T13:50", "2026-06-15T13:50"]);
    let offers = table.book.track_offers(&walk(), 0);
    let rests: Vec<RestsOn> = offers.iter().map(|offer| offer.rests_on).collect();
    assert_eq!(rests, [RestsOn::Before(10), RestsOn::After(10)], "in the order of the day; another day is left out");
    assert!(offers.iter().all(|offer| !offer.sure()));
}

#[test]
fn what_is_taken_is_written_once() {
    let mut table = book(&["2026-06-19T14:05", "2026-06-19T14:06"]);
    let offers = table.book.track_offers(&walk(), 0);
    let deed = table.book.take_track(&offers[..1]);
    assert_eq!(deed.what, What::Placed(1));
    table.save(&deed);
    let left = table.book.track_offers(&walk(), 0);
    assert_eq!(left.iter().map(|offer| offer.line.clock.as_str()).collect::<Vec<_>>(), ["14:06"]);
    let place = table.book.record(offers[0].id()).and_then(|event| event.get(&event::PLACE)).expect("written");
    assert_eq!((place.how.as_str(), place.datum.as_str()), ("track", "WGS84"));
}

#[test]
fn a_track_is_known_by_its_beginning() {
    let file = |text: &str| File { name: "a".into(), media: String::new(), bytes: text.as_bytes().to_vec() };
    assert!(is_track(&file("<?xml version=\"1.0\"?>\n<gpx version=\"1.1\">")));
    assert!(!is_track(&file("{\"format\":\"glassine-log\"}")));
}

#[test]
fn a_day_lasts_until_its_last_event_ends() {
    let mut table = book(&["2026-06-19T14:05", "2026-06-19"]);
    let day = chrono::NaiveDate::from_ymd_opt(2026, 6, 19).expect("a day");
    let hours = |table: &Table| {
        let (from, until) = table.book.span_of(day).expect("an hour is known");
        (until.unix_ms() - from.unix_ms()) / 3_600_000
    };
    assert_eq!(hours(&table), 24);
    let from = table.book.span_of(day).expect("an hour is known").0;
    assert_eq!(from.unix_ms(), instant(&at("2026-06-19T00:00")).expect("an hour").unix_ms());
    let person = table.own("I. Varga", "IV26-");
    table.event("2026-06-19T22:10", person, |edit| {
        let lamp = When { until: Some("2026-06-20T02:00".to_owned()), ..at("2026-06-19T22:10") };
        edit.put(&event::CAUGHT, &lamp);
    });
    assert_eq!(hours(&table), 26);
    assert_eq!(table.book.span_of(day.succ_opt().expect("a day")), None);
}
