//! `sky`: each line `latitude longitude date offset` on standard input becomes one line of JSON on standard output:
//! `{"sunrise":"2026-06-21T04:29:03+01:00","sunset":…,"civil_dawn":…,"civil_dusk":…,"moon_fraction":0.4973,
//! "moon_altitude_deg":20.474,"moon_up":true}`; times are local, `null` where there is none and a list where there are
//! two; the moon is that at 22:00. What cannot be answered becomes `{"problems":["date"]}`.
//!
//! The date is written `2026-06-21`, the offset from UTC `+01:00`, `+0100`, `Z` or in hours, `1` or `5.75`.

mod lines;

use place::Position;
use place::instant::{Day, Instant, UtcOffset};
use place::sky::{moon_at, sun_day};
use serde_json::{Value, json};
use std::process::ExitCode;
use units::{Latitude, Longitude};

const USAGE: &str = "usage: sky < latitude longitude date offset, one a line: 47.3769 8.5417 2026-06-21 +01:00";

fn main() -> ExitCode {
    lines::answered(USAGE, |line| Ok(answer(line).unwrap_or_else(|problems| json!({ "problems": problems }))))
}

/// The sky of one line, or what is wrong with it.
fn answer(line: &str) -> Result<Value, Vec<&'static str>> {
    let pieces: Vec<&str> = line.split_whitespace().collect();
    let [latitude, longitude, date, offset] = pieces[..] else { return Err(vec!["pieces"]) };
    let latitude = latitude.parse().ok().and_then(Latitude::new).ok_or("latitude");
    let longitude =
        longitude.parse().ok().filter(|east: &f64| east.abs() <= 180.0).and_then(Longitude::new).ok_or("longitude");
    let offset = utc_offset(offset).ok_or("offset");
    let day = day(date, offset.unwrap_or_default()).ok_or("date");
    match (latitude, longitude, offset, day) {
        (Ok(latitude), Ok(longitude), Ok(_), Ok(day)) => {
            sky(Position { latitude, longitude, radius: None }, day).ok_or_else(|| vec!["date"])
        }
        (latitude, longitude, offset, day) => {
            Err([latitude.err(), longitude.err(), day.err(), offset.err()].into_iter().flatten().collect())
        }
    }
}

/// A day by its date, `2026-06-21`.
fn day(date: &str, offset: UtcOffset) -> Option<Day> {
    let parts: Vec<&str> = date.split('-').collect();
    let [year, month, day] = parts[..] else { return None };
    let right = [(year, 4), (month, 2), (day, 2)].iter().all(|(part, length)| digits(part) && part.len() == *length);
    if !right {
        return None;
    }
    Day::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?, offset)
}

fn digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit())
}

/// An offset as ISO 8601 writes it, or in hours.
fn utc_offset(text: &str) -> Option<UtcOffset> {
    if text.eq_ignore_ascii_case("z") {
        return Some(UtcOffset::default());
    }
    let (west, rest) = match (text.strip_prefix(['-', '−']), text.strip_prefix('+')) {
        (Some(rest), _) => (true, rest),
        (None, Some(rest)) => (false, rest),
        (None, None) => (false, text),
    };
    let minutes = match rest.split_once(':') {
        Some((hours, minutes)) => clock(hours, minutes)?,
        None if rest.len() == 4 && digits(rest) => clock(&rest[..2], &rest[2..])?,
        None => hours(rest)?,
    };
    UtcOffset::new(if west { -minutes } else { minutes })
}

/// Minutes from hours and minutes of one or two digits.
fn clock(hours: &str, minutes: &str) -> Option<i32> {
    if !(digits(hours) && digits(minutes) && hours.len() <= 2 && minutes.len() == 2) {
        return None;
    }
    let minutes: i32 = minutes.parse().ok().filter(|minutes| *minutes < 60)?;
    Some(hours.parse::<i32>().ok()? * 60 + minutes)
}

/// Minutes from hours with decimals, when they are whole.
fn hours(text: &str) -> Option<i32> {
    let plain = text.bytes().all(|sign| sign.is_ascii_digit() || sign == b'.');
    let minutes = text.parse::<f64>().ok().filter(|hours| plain && *hours < 24.0)? * 60.0;
    // A thousandth of a minute is what three decimals of an hour may be short of one.
    let whole = minutes.round();
    ((minutes - whole).abs() < 0.05).then_some(whole as i32)
}

fn sky(position: Position, day: Day) -> Option<Value> {
    let sun = sun_day(position, day);
    let moon = moon_at(position, day.at(22)?);
    let times = |list: &[Instant]| {
        let texts: Vec<String> = list.iter().map(|instant| instant.text(day.offset())).collect();
        match texts.as_slice() {
            [] => Value::Null,
            [one] => json!(one),
            _ => json!(texts),
        }
    };
    Some(json!({
        "sunrise": times(&sun.sunrise),
        "sunset": times(&sun.sunset),
        "civil_dawn": times(&sun.dawn[0]),
        "civil_dusk": times(&sun.dusk[0]),
        "moon_fraction": rounded(moon.fraction),
        "moon_altitude_deg": rounded(moon.altitude.degrees()),
        "moon_up": moon.up,
    }))
}

/// To four decimals, which is more than it is right to.
fn rounded(value: f64) -> f64 {
    (value * 1e4).round() / 1e4
}
