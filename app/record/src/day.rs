//! Local days as numbers, from stored ISO 8601 text.
//!
//! In goes text as typed into a time of catch, out comes the day to which it belongs, counted from 1970-01-01,
//! or nothing where the day is not known. No calendar library, no clock.

use crate::event::When;

/// A local day, counted from 1970-01-01.
pub type DayNumber = i32;

/// The day to which a time of catch belongs; a night counts for its evening, so its hours before noon go to the day
/// before.
pub fn day_of(when: &When) -> Option<DayNumber> {
    let day = day_in(&when.from)?;
    let hour = when.from.get(11..13).and_then(|hour| hour.parse::<u32>().ok());
    let after_midnight = when.night && hour.is_some_and(|hour| hour < 12);
    Some(if after_midnight { day - 1 } else { day })
}

/// The day at the beginning of an ISO 8601 text.
pub fn day_in(text: &str) -> Option<DayNumber> {
    let date = text.get(..10)?;
    if !matches!(text.as_bytes().get(10), None | Some(b'T' | b' ')) {
        return None;
    }
    let mut parts = date.split('-');
    let mut part = |digits: usize| {
        let part = parts.next().filter(|part| part.len() == digits && part.bytes().all(|byte| byte.is_ascii_digit()));
        part?.parse::<i32>().ok()
    };
    let (year, month, day) = (part(4)?, part(2)?, part(2)?);
    let right = (1..=12).contains(&month) && (1..=days_in(year, month)).contains(&day);
    right.then(|| day_number(year, month, day))
}

fn days_in(year: i32, month: i32) -> i32 {
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Counts days in years that begin with March, so that the leap day is the last of its year.
///
/// **Source**: the Gregorian rule (a leap year every 4, not every 100, but every 400 years).
fn day_number(year: i32, month: i32, day: i32) -> DayNumber {
    let year = if month < 3 { year - 1 } else { year };
    let months_after_march = (month + 9) % 12;
    let days_before_month = (153 * months_after_march + 2) / 5;
    365 * year + year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400) + days_before_month + day
        - 1
        - 719_468
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: Option<i32>) {
        assert_eq!(day_in(text), expected, "{text}");
    }

    /// Numbers from `date -u -d DATE +%s` divided by 86,400 (GNU coreutils 9.1).
    #[test]
    fn days_are_counted_from_1970() {
        check("1970-01-01", Some(0));
        check("1969-12-31", Some(-1));
        check("2000-02-29", Some(11_016));
        check("2000-03-01", Some(11_017));
        check("2027-06-19T14:32", Some(20_988));
        check("1874-05-02", Some(-34_942));
    }

    #[test]
    fn what_is_no_day_has_no_number() {
        for text in
            ["", "2027", "2027-06", "2027-02-29", "2027-13-01", "2027-00-10", "2027-6-1", "2027-06-190", "+027-06-19"]
        {
            check(text, None);
        }
    }

    #[test]
    fn small_hours_of_a_night_count_for_its_evening() {
        let night = |from: &str| When { from: from.into(), night: true, ..When::default() };
        assert_eq!(day_of(&night("2027-06-20T01:10")), Some(20_988));
        assert_eq!(day_of(&night("2027-06-19T22:10")), Some(20_988));
        assert_eq!(day_of(&night("2027-06-19")), Some(20_988));
    }
}
