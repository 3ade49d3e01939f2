//! Dates, hours and counts. Day before month, the month in words or in Roman numerals, so that no date can be
//! read two ways.

use super::{English, counted};
use crate::sentences::say;
use chrono::{Datelike, NaiveDate};

pub(super) const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];
const ROMAN: [&str; 12] = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"];
pub(super) const WEEKDAYS: [&str; 7] = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

say! { English says Dates {
    long(day: NaiveDate): format!("{} {} {}", weekday(day), short(day), day.year());
    middle(day: NaiveDate): format!("{} {}", weekday(day), short(day));
    short(day: NaiveDate): short(day);
    roman(day: NaiveDate): format!("{}.{}.{}", day.day(), ROMAN[day.month0() as usize], day.year());
    roman_short(day: NaiveDate): format!("{}.{}.", day.day(), ROMAN[day.month0() as usize]);
    known(year: i32, month: Option<u32>, day: Option<u32>): known(year, month, day);
    number(count: usize): grouped(count);
    way(metres: f64): way(metres);
    minutes_long(minutes: i64): long_minutes(minutes);
    hour_unit: "h";
    minute_unit: "min";
    day_unit(days: i64): if days == 1 { "day".into() } else { "days".into() };
    to: "to";
    until(day: NaiveDate): format!("until {}", short(day));
    megabytes(bytes: f64): megabytes(bytes);
} }

fn weekday(day: NaiveDate) -> &'static str {
    WEEKDAYS[day.weekday().num_days_from_monday() as usize]
}

fn short(day: NaiveDate) -> String {
    format!("{} {}", day.day(), MONTHS[day.month0() as usize])
}

fn known(year: i32, month: Option<u32>, day: Option<u32>) -> String {
    let roman = month.and_then(|month| ROMAN.get((month as usize).wrapping_sub(1)));
    match (roman, day) {
        (Some(month), Some(day)) => format!("{day}.{month}.{year}"),
        (Some(month), None) => format!("{month}.{year}"),
        (None, _) => year.to_string(),
    }
}

/// A count with its thousands set apart: `10,000`.
pub(super) fn grouped(count: usize) -> String {
    let digits = count.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// A measure without needless digits: whole from 10 up, one decimal below.
pub(super) fn plain(value: f64) -> String {
    if value.abs() >= 9.95 || (value - value.round()).abs() < 0.05 {
        grouped_signed(value.round())
    } else {
        let tenths = (value.abs() * 10.0).round() as u64;
        format!("{}{}.{}", if value < 0.0 { "-" } else { "" }, tenths / 10, tenths % 10)
    }
}

fn grouped_signed(value: f64) -> String {
    let sign = if value < 0.0 { "-" } else { "" };
    format!("{sign}{}", grouped(value.abs() as usize))
}

/// A way on the ground: `38 m`, `1.5 km`, `24 km`.
pub(super) fn way(metres: f64) -> String {
    if metres < 999.5 { format!("{} m", metres.round() as u64) } else { format!("{} km", plain(metres / 1000.0)) }
}

fn long_minutes(minutes: i64) -> String {
    let (days, hours, rest) = (minutes / 1440, minutes / 60 % 24, minutes % 60);
    let days_words = counted(days.max(0) as usize, "day", "days");
    match (days, hours, rest) {
        (0, 0, rest) => format!("{rest} min"),
        (0, hours, rest) => format!("{hours} h {rest} min"),
        (_, 0, _) | (100.., ..) => days_words,
        (_, hours, _) => format!("{days_words} {hours} h"),
    }
}

fn megabytes(bytes: f64) -> String {
    let megabytes = bytes / 1_000_000.0;
    if megabytes < 0.05 { "under 0.1 MB".into() } else { format!("{} MB", plain(megabytes)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day() -> NaiveDate {
        NaiveDate::from_ymd_opt(2027, 6, 19).expect("a day of the calendar")
    }

    #[test]
    fn a_day_is_said_with_its_weekday() {
        assert_eq!(crate::english::ENGLISH.dates.long(day()), "Saturday 19 June 2027");
        assert_eq!(crate::english::ENGLISH.dates.roman(day()), "19.vi.2027");
    }

    #[test]
    fn a_date_known_in_part_is_said_in_part() {
        assert_eq!(known(2027, Some(6), None), "vi.2027");
        assert_eq!(known(2027, None, None), "2027");
    }

    #[test]
    fn thousands_are_set_apart() {
        assert_eq!([0, 999, 1000, 10_000, 1_234_567].map(grouped), ["0", "999", "1,000", "10,000", "1,234,567"]);
    }

    #[test]
    fn a_measure_has_no_needless_digits() {
        assert_eq!([8.0, 8.04, 8.25, 65.4, 0.0, -3.5].map(plain), ["8", "8", "8.3", "65", "0", "-3.5"]);
    }

    #[test]
    fn a_way_changes_to_kilometres() {
        assert_eq!([38.2, 999.0, 1500.0, 24_300.0].map(way), ["38 m", "999 m", "1.5 km", "24 km"]);
    }

    #[test]
    fn minutes_become_hours_and_days() {
        assert_eq!(
            [9, 134, 1440, 11_700, 236_760].map(long_minutes),
            ["9 min", "2 h 14 min", "1 day", "8 days 3 h", "164 days"]
        );
    }
}
