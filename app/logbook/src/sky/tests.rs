use super::*;
use crate::invented::Table;
use record::event::{Place, When};

/// An open lamp at a position, from an hour at an offset.
fn lamp(latitude: f64, longitude: f64, from: &str, until: Option<&str>, offset_minutes: i32) -> (Table, Id) {
    let mut table = Table::new();
    let person = table.own("I. Varga", "IV26-");
    let place = Place { latitude, longitude, datum: "WGS84".to_owned(), ..Place::default() };
    let when = When {
        from: from.to_owned(),
        until: until.map(str::to_owned),
        offset_minutes: Some(offset_minutes),
        night: false,
    };
    let id = table.event(from, person, |edit| {
        edit.put(&event::PLACE, &place);
        edit.put(&event::CAUGHT, &when);
        edit.put(&event::OPEN, &until.is_none());
    });
    (table, id)
}

fn at(local: &str, offset_minutes: i32) -> Moment {
    let local = Known::read(local).and_then(Known::minute).expect("an hour");
    Moment { unix_ms: local.and_utc().timestamp_millis() - i64::from(offset_minutes) * 60_000, offset_minutes }
}

// Sun and moon over Zurich and Longyearbyen on 21 June 2026: tests/reference/sun_moon.csv, ids 1 and 8 (skyfield, JPL
// DE421): sunset 19:26:14Z, civil dusk 20:06:40Z; at 21:00Z the moon lit by 0.4973 and up.

#[test]
fn a_night_is_dark_between_the_twilights() {
    let (table, id) = lamp(47.3769, 8.5417, "2026-06-21T20:10", None, 60);
    let sky = table.book.sky(id, at("2026-06-21T22:00", 60)).expect("a place and an hour");
    assert_eq!(sky.evening, Day::from_ymd_opt(2026, 6, 21).unwrap());
    assert_eq!(sky.sun.0.as_deref(), Some("20:26"));
    let Dark::Between((from, until), (begins, ends)) = sky.dark else { panic!("a night with an end") };
    assert_eq!((from.as_str(), until.as_str()), ("21:06", "03:48"));
    assert!((begins - 546.7).abs() < 0.1 && (ends - 948.9).abs() < 0.7, "{begins} {ends}");
    let [began, now] = &sky.at[..] else { panic!("two hours") };
    assert_eq!((began.when, began.sun), (Which::Began, Some(FromSun::BeforeSunset(16))));
    assert_eq!((now.clock.as_str(), now.sun), ("22:00", Some(FromSun::AfterSunset(93))));
    assert_eq!((now.moon_percent, now.moon_up, now.light), (50, true, Light::Nautical));
}

#[test]
fn hours_after_midnight_belong_to_the_evening_before() {
    let (table, id) = lamp(47.3769, 8.5417, "2026-06-22T01:30", Some("2026-06-22T02:30"), 60);
    let sky = table.book.sky(id, at("2026-06-23T10:00", 60)).expect("a place and an hour");
    assert_eq!(sky.evening, Day::from_ymd_opt(2026, 6, 21).unwrap());
    let whens: Vec<Which> = sky.at.iter().map(|at| at.when).collect();
    assert_eq!(whens, [Which::Began, Which::Ended], "what is closed has no now");
}

#[test]
fn the_sun_that_does_not_set_leaves_no_dark() {
    let (table, id) = lamp(78.2232, 15.6267, "2026-06-21T23:00", None, 60);
    let sky = table.book.sky(id, at("2026-06-21T23:00", 60)).expect("a place and an hour");
    assert_eq!((sky.dark, sky.sun), (Dark::Never(true), (None, None)));
    assert_eq!((sky.at[0].sun, sky.at[0].light), (None, Light::Day));
    let (table, id) = lamp(78.2232, 15.6267, "2026-12-21T23:00", None, 60);
    let sky = table.book.sky(id, at("2026-12-21T23:00", 60)).expect("a place and an hour");
    assert_eq!((sky.dark, sky.at[0].sun), (Dark::Always, None));
}

#[test]
fn without_a_place_or_an_hour_there_is_no_sky() {
    let mut table = Table::new();
    let person = table.own("I. Varga", "IV26-");
    let nowhere = table.event("2026-06-21T20:10", person, |_| {});
    assert_eq!(table.book.sky(nowhere, at("2026-06-21T22:00", 60)), None);
    let (table, id) = lamp(47.3769, 8.5417, "2026-06-21", None, 60);
    assert_eq!(table.book.sky(id, at("2026-06-21T22:00", 60)), None);
}

#[test]
fn a_log_file_tells_the_sky_beside_the_records() {
    let (table, id) = lamp(47.3769, 8.5417, "2026-06-21T22:00", Some("2026-06-21T23:30"), 60);
    let told = told(&table.book, std::iter::once(id), at("2026-06-22T10:00", 60));
    let sky = &told[&id.to_string()];
    assert_eq!((sky["sunset"].as_str(), sky["dark"][0].as_str()), (Some("20:26"), Some("21:06")));
    assert_eq!((sky["at"][0]["from_sun"].as_str(), sky["at"][0]["minutes"].as_u64()), (Some("after_sunset"), Some(93)));
    assert_eq!((sky["at"][0]["moon_percent"].as_u64(), sky["at"][0]["moon_up"].as_bool()), (Some(50), Some(true)));
}
