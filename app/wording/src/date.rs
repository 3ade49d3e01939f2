//! Dates as the trade writes them: day, roman month, year.
//!
//! In goes a span as far as it is known, out comes its text. The roman month keeps day and month apart.
//!
//! **Source**: day.month.year with full stops and the month in roman numerals: Wheeler, Huber & Currie 2001,
//! Biological Survey of Canada Document Series 8; runs with the first and last day: La Salle, CSIRO, on labelling
//! reared parasitoids. Capitals with hyphens (26-VII-2008): NC State University, ENT 425. The en dash between two dates
//! is common practice; those sources type a hyphen.

use crate::arrangement::{Arrangement, Dash, Joint, Month};
use crate::line::NO_BREAK;
use crate::parts::{Day, Span};

const ROMAN: [&str; 12] = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"];

/// The text of a span: `14.vi.2027`, `14–21.vi.2027`, `28.vi–3.vii.2027`, `30.xii.2027–2.i.2028`, `vi.2027`, `2027`.
///
/// **Shape**: what both ends share is written once, at the end; a night without another last day ends on the next day.
pub fn date(span: &Span, month: Month) -> String {
    written(span, &Arrangement { month, ..Arrangement::default() })
}

/// The same in the style of an arrangement; it never breaks.
pub fn written(span: &Span, style: &Arrangement) -> String {
    let from = span.from;
    match last_day(span) {
        Some(until) if until != from => range(from, until, style),
        _ => full(from, style),
    }
}

fn last_day(span: &Span) -> Option<Day> {
    let until = span.until.filter(|until| *until != span.from);
    match until {
        None if span.night => next_day(span.from),
        other => other,
    }
}

fn range(from: Day, until: Day, style: &Arrangement) -> String {
    let same_grain = from.day.is_some() == until.day.is_some() && from.month.is_some() == until.month.is_some();
    let first = match (same_grain && from.year == until.year, from.day, from.month) {
        (true, Some(day), Some(_)) if from.month == until.month => day.to_string(),
        (true, Some(day), Some(number)) => format!("{day}{}{}", joint(style), numeral(number, style.month)),
        (true, None, Some(number)) => numeral(number, style.month),
        _ => full(from, style),
    };
    format!("{first}{}{}", dash(style), full(until, style))
}

fn full(day: Day, style: &Arrangement) -> String {
    let joint = joint(style);
    match (day.month, day.day) {
        (Some(number), Some(of_month)) => {
            format!("{of_month}{joint}{}{joint}{}", numeral(number, style.month), day.year)
        }
        (Some(number), None) => format!("{}{joint}{}", numeral(number, style.month), day.year),
        _ => day.year.to_string(),
    }
}

fn joint(style: &Arrangement) -> String {
    match style.joint {
        Joint::Stop => ".".to_owned(),
        Joint::StopAndSpace => format!(".{NO_BREAK}"),
        Joint::Hyphen => "-".to_owned(),
        Joint::Space => NO_BREAK.to_string(),
    }
}

fn dash(style: &Arrangement) -> String {
    match style.dash {
        Dash::Hyphen if style.joint != Joint::Hyphen => "-".to_owned(),
        Dash::En | Dash::Hyphen => "–".to_owned(),
        Dash::SpacedEn => format!("{NO_BREAK}–{NO_BREAK}"),
    }
}

/// A number outside 1 to 12 is no month; it is shown as it is rather than as another month.
fn numeral(number: u8, month: Month) -> String {
    let Some(small) = usize::from(number).checked_sub(1).and_then(|index| ROMAN.get(index)) else {
        return number.to_string();
    };
    match month {
        Month::RomanSmall => (*small).to_owned(),
        Month::RomanCapital => small.to_uppercase(),
    }
}

fn next_day(day: Day) -> Option<Day> {
    let (month, of_month) = (day.month?, day.day?);
    if of_month < days_in(day.year, month) {
        return Some(Day::new(day.year, month, of_month + 1));
    }
    Some(if month < 12 { Day::new(day.year, month + 1, 1) } else { Day::new(day.year + 1, 1, 1) })
}

pub(crate) fn days_in(year: i32, month: u8) -> u8 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn known(text: &str) -> Day {
        let mut numbers = text.split('-').map(|number| number.parse::<i32>().expect("the case is a number"));
        let year = numbers.next().expect("the case has a year");
        let mut small = || numbers.next().map(|number| u8::try_from(number).expect("the case is small"));
        Day { year, month: small(), day: small() }
    }

    fn check(from: &str, until: &str, night: bool, expected: &str) {
        let until = (!until.is_empty()).then(|| known(until));
        assert_eq!(date(&Span { from: known(from), until, night }, Month::RomanSmall), expected);
    }

    #[test]
    fn one_day_keeps_the_precision_known() {
        check("2027-06-14", "", false, "14.vi.2027");
        check("2027-06", "", false, "vi.2027");
        check("2027", "", false, "2027");
        check("2027-06-14", "2027-06-14", false, "14.vi.2027");
    }

    #[test]
    fn a_run_says_once_what_both_ends_share() {
        check("2027-06-14", "2027-06-21", false, "14–21.vi.2027");
        check("2027-06-28", "2027-07-03", false, "28.vi–3.vii.2027");
        check("2027-12-30", "2028-01-02", false, "30.xii.2027–2.i.2028");
        check("2027-06", "2027-07", false, "vi–vii.2027");
        check("2026", "2027", false, "2026–2027");
        check("2027-06-14", "2027-07", false, "14.vi.2027–vii.2027");
        check("2027", "2027-07-01", false, "2027–1.vii.2027");
    }

    #[test]
    fn a_night_ends_on_the_next_day() {
        check("2027-06-14", "", true, "14–15.vi.2027");
        check("2027-06-14", "2027-06-14", true, "14–15.vi.2027");
        check("2027-06-14", "2027-06-15", true, "14–15.vi.2027");
        check("2027-06-30", "", true, "30.vi–1.vii.2027");
        check("2027-12-31", "", true, "31.xii.2027–1.i.2028");
        check("2028-02-28", "", true, "28–29.ii.2028");
        check("2027-02-28", "", true, "28.ii–1.iii.2027");
        check("2100-02-28", "", true, "28.ii–1.iii.2100");
        check("2027-06", "", true, "vi.2027");
    }

    #[test]
    fn an_arrangement_says_how() {
        let span = Span { from: Day::new(2027, 6, 28), until: Some(Day::new(2027, 7, 3)), night: false };
        let said = |month, joint, dash| {
            written(&span, &Arrangement { month, joint, dash, ..Arrangement::default() }).replace(NO_BREAK, "~")
        };
        assert_eq!(said(Month::RomanCapital, Joint::Hyphen, Dash::Hyphen), "28-VI–3-VII-2027");
        assert_eq!(said(Month::RomanSmall, Joint::Stop, Dash::Hyphen), "28.vi-3.vii.2027");
        assert_eq!(said(Month::RomanSmall, Joint::StopAndSpace, Dash::SpacedEn), "28.~vi~–~3.~vii.~2027");
        assert_eq!(said(Month::RomanCapital, Joint::Space, Dash::En), "28~VI–3~VII~2027");
    }

    #[test]
    fn days_that_are_none_are_known() {
        for (text, exists) in
            [("2028-02-29", true), ("2027-02-29", false), ("2027-13", false), ("2027", true), ("2027-04-31", false)]
        {
            assert_eq!(known(text).exists(), exists, "{text}");
        }
    }

    #[test]
    fn capitals_and_impossible_months() {
        let span = Span { from: Day::new(2027, 9, 4), until: None, night: false };
        assert_eq!(date(&span, Month::RomanCapital), "4.IX.2027");
        let span = Span { from: Day::new(2027, 13, 4), until: None, night: false };
        assert_eq!(date(&span, Month::RomanSmall), "4.13.2027");
    }
}
