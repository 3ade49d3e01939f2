use super::*;
use crate::instant::UtcOffset;

fn at(latitude: f64, longitude: f64) -> Position {
    Position::new(latitude, longitude, None).expect("a position")
}

fn day(year: i32, month: u32, day: u32, offset_minutes: i32) -> Day {
    Day::new(year, month, day, UtcOffset::new(offset_minutes).expect("less than a day")).expect("a day")
}

fn instant(unix_s: i64) -> Instant {
    Instant::new(unix_s * 1000).expect("an instant")
}

#[test]
fn polar_day_and_night_have_no_sunrise_and_say_so() {
    let summer = sun_day(at(78.2, 15.6), day(2026, 6, 21, 60));
    assert_eq!((summer.sunrise.len(), summer.sunset.len()), (0, 0));
    assert_eq!((summer.darkest, summer.brightest), (Light::Day, Light::Day));
    assert!(summer.dawn.iter().chain(&summer.dusk).all(Vec::is_empty));
    let winter = sun_day(at(78.2, 15.6), day(2026, 12, 21, 60));
    assert_eq!((winter.sunrise.len(), winter.sunset.len()), (0, 0));
    assert_eq!((winter.darkest, winter.brightest), (Light::Night, Light::Nautical));
    assert_eq!((winter.dawn[1].len(), winter.dusk[1].len()), (1, 1));
}

#[test]
fn the_poles_have_one_sunrise_a_year() {
    for (latitude, month) in [(90.0, 3), (-90.0, 9)] {
        let rises: usize =
            (15..=28).map(|date| sun_day(at(latitude, 0.0), day(2026, month, date, 0)).sunrise.len()).sum();
        assert_eq!(rises, 1, "{latitude}");
    }
}

/// The sun may rise, set, and rise again on one day: Tromsø, 17 May 2026 (`sun_moon.csv`, id 13).
#[test]
fn a_day_may_have_two_sunrises() {
    let twice = sun_day(at(69.6492, 18.9553), day(2026, 5, 17, 60));
    assert_eq!((twice.sunrise.len(), twice.sunset.len()), (2, 1));
    assert!(twice.sunrise[0] < twice.sunset[0] && twice.sunset[0] < twice.sunrise[1]);
}

#[test]
fn events_belong_to_the_local_day_and_meet_the_next() {
    for offset in [-720, -570, 0, 345, 840] {
        let days = [day(2026, 9, 1, offset), day(2026, 9, 2, offset)];
        assert_eq!(days[0].end(), days[1].start());
        for day in days {
            let sun = sun_day(at(46.0, 8.0), day);
            let lists = [&sun.sunrise, &sun.sunset].into_iter().chain(&sun.dawn).chain(&sun.dusk);
            for list in lists {
                assert_eq!(list.len(), 1, "{offset}");
                assert!(day.start() <= list[0] && list[0] < day.end());
            }
        }
    }
}

#[test]
fn a_nights_hour_is_counted_from_sunset_and_to_sunrise() {
    // Zurich: sunset 2026-06-21T19:26:14Z, next sunrise 2026-06-22T03:29:1x Z (`sun_moon.csv`, id 1, and a day on).
    let sunset_s = 1_782_069_974;
    let night = sky_at(at(47.3769, 8.5417), instant(sunset_s + 7200));
    let Hour::Night { since_sunset: Some(since), before_sunrise: Some(before) } = night.hour else {
        panic!("a night: {night:?}")
    };
    assert!(since.abs_diff(Duration::from_secs(7200)) < Duration::from_secs(2), "{since:?}");
    assert!((since + before).abs_diff(Duration::from_secs(28_990)) < Duration::from_secs(20), "{before:?}");
    assert_eq!(night.light, Light::Astronomical);
    let evening = sky_at(at(47.3769, 8.5417), instant(sunset_s - 600));
    assert_eq!(evening.light, Light::Day);
    assert!(matches!(evening.hour, Hour::Day { since_sunrise: Some(_), before_sunset: Some(before) }
        if before.abs_diff(Duration::from_secs(600)) < Duration::from_secs(2)));
}

#[test]
fn polar_hours_have_no_end() {
    // Longyearbyen, midsummer midnight and midwinter noon.
    let summer = sky_at(at(78.2, 15.6), instant(1_781_996_400));
    assert_eq!(summer.hour, Hour::Day { since_sunrise: None, before_sunset: None });
    let winter = sky_at(at(78.2, 15.6), instant(1_797_850_800));
    assert_eq!(winter.hour, Hour::Night { since_sunset: None, before_sunrise: None });
}

#[test]
fn phases_follow_the_month() {
    for (elongation, phase) in [
        (0.0, Phase::New),
        (359.0, Phase::New),
        (6.2, Phase::WaxingCrescent),
        (84.0, Phase::FirstQuarter),
        (83.8, Phase::WaxingCrescent),
        (96.2, Phase::WaxingGibbous),
        (180.0, Phase::Full),
        (-174.0, Phase::Full),
        (186.2, Phase::WaningGibbous),
        (270.0, Phase::LastQuarter),
        (276.2, Phase::WaningCrescent),
        (353.8, Phase::WaningCrescent),
    ] {
        assert_eq!(Phase::of(elongation), phase, "{elongation}");
    }
    // The eclipse of the sun on 2027-08-02, greatest at 10:07 UTC, and that of the moon on 2026-03-03 at 11:34 UTC,
    // from memory.
    assert_eq!(moon_at(at(25.5, 33.2), instant(1_817_201_220)).phase, Phase::New);
    assert_eq!(moon_at(at(0.0, -170.0), instant(1_772_537_640)).phase, Phase::Full);
}

#[test]
fn every_instant_and_position_has_a_sky() {
    let ends = [-62_135_596_800_000, -1, 0, 1_782_069_974_000, 253_402_300_799_999];
    for unix_ms in ends {
        let instant = Instant::new(unix_ms).expect("within the years");
        for latitude in [-90.0, -66.6, 0.0, 66.6, 90.0] {
            for longitude in [-180.0, 0.0, 179.999_999] {
                let sky = sky_at(at(latitude, longitude), instant);
                assert!((0.0..=1.0).contains(&sky.moon.fraction), "{sky:?}");
                assert!((-90.0..=90.0).contains(&sky.moon.altitude.degrees()), "{sky:?}");
                assert!((0.0..360.0).contains(&sky.moon.azimuth.degrees()), "{sky:?}");
            }
        }
    }
}
