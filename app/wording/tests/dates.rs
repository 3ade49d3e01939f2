//! Every label date reads back as the days it was written for.

use proptest::prelude::*;
use wording::{Arrangement, Dash, Day, Joint, Month, Span, written};

const ROMAN: [&str; 12] = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"];

/// Reads a label date written with stops: what the first day does not say is as in the last.
fn read(text: &str) -> Option<(Day, Day)> {
    let (first, last) = text.split_once(['–', '-']).unwrap_or((text, text));
    let last: Vec<&str> = last.split('.').collect();
    let first: Vec<&str> = first.split('.').collect();
    let [day, month, year] = last[..] else { return None };
    let until = Day::new(year.parse().ok()?, roman(month)?, day.parse().ok()?);
    let from = match first[..] {
        [day] => Day::new(until.year, until.month?, day.parse().ok()?),
        [day, month] => Day::new(until.year, roman(month)?, day.parse().ok()?),
        [day, month, year] => Day::new(year.parse().ok()?, roman(month)?, day.parse().ok()?),
        _ => return None,
    };
    Some((from, until))
}

fn roman(text: &str) -> Option<u8> {
    ROMAN.iter().position(|numeral| *numeral == text.to_lowercase()).and_then(|at| u8::try_from(at + 1).ok())
}

/// The day with this number, counted by stepping from the first of January 2023.
fn day(number: u16) -> Day {
    let (mut year, mut month, mut left) = (2023, 1, number);
    loop {
        let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let days = [31, if leap { 29 } else { 28 }, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
        if left < days {
            return Day::new(
                year,
                u8::try_from(month).expect("twelve"),
                u8::try_from(left + 1).expect("a day is small"),
            );
        }
        left -= days;
        (year, month) = if month == 12 { (year + 1, 1) } else { (year, month + 1) };
    }
}

fn arrangement(capital: bool, hyphen: bool) -> Arrangement {
    let month = if capital { Month::RomanCapital } else { Month::RomanSmall };
    Arrangement { month, dash: if hyphen { Dash::Hyphen } else { Dash::En }, ..Arrangement::default() }
}

proptest! {
    #[test]
    fn runs_read_back(first in 0_u16..2000, length in 0_u16..500, capital: bool, hyphen: bool) {
        let (from, until) = (day(first), day(first + length));
        let span = Span { from, until: Some(until), night: false };
        prop_assert_eq!(read(&written(&span, &arrangement(capital, hyphen))), Some((from, until)));
    }

    #[test]
    fn a_night_is_two_neighbouring_days(first in 0_u16..2000) {
        let from = day(first);
        let span = Span { from, until: None, night: true };
        prop_assert_eq!(read(&written(&span, &arrangement(false, false))), Some((from, day(first + 1))));
    }

    #[test]
    fn no_style_writes_an_arabic_month_or_a_place_to_break(first in 0_u16..2000, length in 0_u16..500, joint in 0_usize..4, dash in 0_usize..3) {
        let span = Span { from: day(first), until: Some(day(first + length)), night: false };
        let style = Arrangement {
            joint: [Joint::Stop, Joint::StopAndSpace, Joint::Hyphen, Joint::Space][joint],
            dash: [Dash::En, Dash::SpacedEn, Dash::Hyphen][dash],
            ..Arrangement::default()
        };
        let text = written(&span, &style);
        prop_assert!(!text.contains(' '), "{}", text);
        let numbers: Vec<u32> = text.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect();
        prop_assert!((2..=4).contains(&numbers.len()), "{}: one or two days, one or two years", text);
    }
}
