//! How a person numbers, and which number comes next.
//!
//! In go the habit and the numbers that exist; out comes the next number, or why there is none.

use crate::reading::{Key, Number};
use crate::signs::compared;

/// A habit of numbering.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Habit {
    /// One number a container; the same number twice is a fault.
    #[default]
    OnePerContainer,
    /// One number an event, and letters for its containers: 19a to 19f.
    LettersPerEvent,
    /// Engraved vials, used again.
    Engraved,
    /// No numbers.
    None,
}

impl Habit {
    /// The stable code under which it is stored.
    pub fn code(self) -> &'static str {
        match self {
            Self::OnePerContainer => "one",
            Self::LettersPerEvent => "letters",
            Self::Engraved => "engraved",
            Self::None => "none",
        }
    }

    /// The habit of a stored code; `None` for a code that this version does not know.
    pub fn of_code(code: &str) -> Option<Self> {
        [Self::OnePerContainer, Self::LettersPerEvent, Self::Engraved, Self::None]
            .into_iter()
            .find(|habit| habit.code() == code)
    }
}

/// A person's numbering on one device.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Numbering {
    /// What stands before the running number: `IV27-`.
    pub prefix: String,
    /// Digits to which the running number is filled with zeros; 0 for none.
    pub width: u8,
    /// The habit.
    pub habit: Habit,
    /// The letter of a second device: `IV27-B0147`.
    pub device_letter: Option<char>,
    /// First and last running number of this device.
    pub range: Option<(u32, u32)>,
}

/// What comes next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Next {
    /// This number.
    Number(String),
    /// None is proposed: the vials are engraved, or there are no numbers.
    None,
    /// The range of this device is used up, or running numbers have come to their end.
    RangeFull,
}

impl Numbering {
    /// The number that comes after the highest that exists with the same prefix and device letter, within the range
    /// of this device. With letters per event it is the number of the next event.
    ///
    /// Numbers outside the range belong to another device of the same person and are passed over.
    pub fn next<'a>(&self, existing: impl IntoIterator<Item = &'a str>) -> Next {
        if matches!(self.habit, Habit::Engraved | Habit::None) {
            return Next::None;
        }
        let (first, last) = self.range.map_or((1, u64::MAX), |(first, last)| (u64::from(first), u64::from(last)));
        let highest = self.keys(existing).map(|key| key.running).filter(|n| (first..=last).contains(n)).max();
        let next = highest.map_or(Some(first), |highest| highest.checked_add(1)).filter(|next| *next <= last);
        next.map_or(Next::RangeFull, |next| Next::Number(self.written(next)))
    }

    /// The number with the letter that comes after the highest one of this event: 19f, then 19g; 19z, then 19aa.
    ///
    /// **Errors**: `None` once 19zz is taken.
    pub fn next_letter<'a>(&self, event: u64, existing: impl IntoIterator<Item = &'a str>) -> Option<String> {
        let of_event = self.keys(existing).filter(|key| key.running == event);
        let highest = of_event.filter_map(|key| letters_order(&key.letters)).max().unwrap_or(0);
        Some(format!("{}{}", self.written(event), letters(highest + 1)?))
    }

    /// A number as typed, completed: without a prefix it gets this numbering's own, with this prefix it is written as
    /// this numbering writes it, with another it keeps that one.
    ///
    /// **Errors**: `None` when it is no number.
    pub fn complete(&self, typed: &str) -> Option<Number> {
        let mut number = Number::read(typed)?;
        let head = number.key().head;
        let own = self.head();
        if head.is_empty() || head == own || head == self.prefix.chars().filter_map(compared).collect::<String>() {
            // A prefix that was typed without the letter belongs to the person's first device.
            let lettered = head.is_empty() || head == own;
            number.prefix.clone_from(&self.prefix);
            number.device = self.device_letter.filter(|_| lettered);
            if self.width > 0 {
                number.digits = self.padded(number.running);
            }
        }
        Some(number)
    }

    /// The running number as this numbering writes it.
    fn written(&self, running: u64) -> String {
        let mut text = self.prefix.clone();
        text.extend(self.device_letter);
        text.push_str(&self.padded(running));
        text
    }

    fn padded(&self, running: u64) -> String {
        format!("{running:0width$}", width = usize::from(self.width.min(18)))
    }

    /// Prefix and device letter as compared.
    fn head(&self) -> String {
        self.prefix.chars().chain(self.device_letter).filter_map(compared).collect()
    }

    /// The keys of the existing numbers that belong to this numbering.
    fn keys<'a>(&self, existing: impl IntoIterator<Item = &'a str>) -> impl Iterator<Item = Key> {
        let head = self.head();
        existing.into_iter().filter_map(Number::read).map(|number| number.key()).filter(move |key| key.head == head)
    }
}

/// Where letters stand in the order a, b, … z, aa, ab, … zz; from 1. `None` for what is not one or two of a to z.
pub(crate) fn letters_order(letters: &str) -> Option<u32> {
    let value = |letter: u8| letter.is_ascii_lowercase().then(|| u32::from(letter - b'a') + 1);
    match *letters.as_bytes() {
        [one] => value(one),
        [first, second] => Some(value(first)? * 26 + value(second)?),
        _ => None,
    }
}

/// The letters at a place in that order. `None` beyond zz.
pub(crate) fn letters(order: u32) -> Option<String> {
    let letter = |value: u32| char::from_u32(u32::from('a') + value - 1);
    match order {
        1..=26 => letter(order).map(String::from),
        27..=702 => Some([letter((order - 1) / 26)?, letter((order - 1) % 26 + 1)?].iter().collect()),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn numbering() -> Numbering {
        Numbering { prefix: "IV27-".into(), width: 4, ..Numbering::default() }
    }

    fn check(numbering: &Numbering, existing: &[&str], next: &str) {
        assert_eq!(numbering.next(existing.iter().copied()), Next::Number(next.into()), "{existing:?}");
    }

    #[test]
    fn the_next_number_is_the_highest_seen_plus_one() {
        check(&numbering(), &[], "IV27-0001");
        check(&numbering(), &["IV27-0146", "iv27 0139"], "IV27-0147");
        check(&numbering(), &["IV26-0800", "DO27-0900", "147", "IV27-B0300", "IV27-0002"], "IV27-0003");
        check(&numbering(), &["IV27-9999"], "IV27-10000");
        check(&Numbering { prefix: String::new(), width: 0, ..numbering() }, &["9", "IV27-0400"], "10");
    }

    #[test]
    fn a_second_device_counts_under_its_letter_or_in_its_range() {
        let lettered = Numbering { device_letter: Some('B'), ..numbering() };
        check(&lettered, &["IV27-0146", "IV27-B0007"], "IV27-B0008");
        let ranged = Numbering { range: Some((500, 502)), ..numbering() };
        check(&ranged, &["IV27-0146", "IV27-0900"], "IV27-0500");
        check(&ranged, &["IV27-0501"], "IV27-0502");
        assert_eq!(ranged.next(["IV27-0502"]), Next::RangeFull);
    }

    #[test]
    fn engraved_vials_propose_none() {
        for habit in [Habit::Engraved, Habit::None] {
            assert_eq!(Numbering { habit, ..numbering() }.next(["IV27-0001"]), Next::None);
        }
    }

    #[test]
    fn letters_go_on_after_z() {
        let numbering = Numbering { habit: Habit::LettersPerEvent, prefix: String::new(), width: 0, ..numbering() };
        check(&numbering, &["18a", "19a", "19 b"], "20");
        let next = |existing: &[&str]| numbering.next_letter(19, existing.iter().copied());
        assert_eq!(next(&["18f"]).as_deref(), Some("19a"));
        assert_eq!(next(&["19a", "19 F", "20x"]).as_deref(), Some("19g"));
        assert_eq!(next(&["19z"]).as_deref(), Some("19aa"));
        assert_eq!(next(&["19az"]).as_deref(), Some("19ba"));
        assert_eq!(next(&["19zz"]), None);
    }

    #[test]
    fn what_is_typed_is_completed() {
        let complete = |typed| numbering().complete(typed).map(|number| number.text());
        assert_eq!(complete("147").as_deref(), Some("IV27-0147"));
        assert_eq!(complete("iv27 147").as_deref(), Some("IV27-0147"));
        assert_eq!(complete("DO27-147").as_deref(), Some("DO27-147"));
        assert_eq!(complete("net"), None);
        let plain = Numbering { habit: Habit::Engraved, ..Numbering::default() };
        assert_eq!(plain.complete("012").map(|number| number.text()).as_deref(), Some("012"));
        let lettered = Numbering { device_letter: Some('B'), ..numbering() };
        let complete = |typed| lettered.complete(typed).map(|number| number.text());
        assert_eq!(complete("7").as_deref(), Some("IV27-B0007"));
        assert_eq!(complete("IV27-7").as_deref(), Some("IV27-0007"));
        assert_eq!(complete("IV27-B7").as_deref(), Some("IV27-B0007"));
    }

    #[test]
    fn codes_come_back() {
        for code in ["one", "letters", "engraved", "none"] {
            assert_eq!(Habit::of_code(code).map(Habit::code), Some(code));
        }
        assert_eq!(Habit::of_code("other"), None);
    }

    proptest! {
        #[test]
        fn letters_and_their_order_round_trip(order in 1_u32..=702) {
            let written = letters(order).expect("up to zz");
            prop_assert_eq!(letters_order(&written), Some(order));
        }

        #[test]
        fn the_next_number_is_free(runs in prop::collection::vec(0_u64..99_999, 0..40)) {
            let existing: Vec<String> = runs.iter().map(|n| format!("IV27-{n:04}")).collect();
            let Next::Number(next) = numbering().next(existing.iter().map(String::as_str)) else {
                return Err(TestCaseError::fail("there is no range"));
            };
            prop_assert!(!existing.contains(&next));
        }
    }
}
