//! Which containers a number as typed calls.

use crate::book::Logbook;
use number::{Matches, Number};
use record::{Id, Kind};

/// Which containers a number calls.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Called {
    /// This one.
    One(Id),
    /// These could be meant.
    Several(Vec<Id>),
    /// None.
    None,
}

impl Logbook {
    /// The numbers of all living containers with their records.
    pub(crate) fn numbers_with_ids(&self) -> impl Iterator<Item = (Id, &str)> {
        let containers = self.shelf.entries().filter(|entry| *entry.kind == Kind::Container && !entry.deleted);
        containers.filter_map(|entry| Some((entry.id, entry.number?)))
    }

    /// Which containers a number as typed calls.
    ///
    /// One is certain when its whole number was typed, or its digits alone and no other carries them. Where only a
    /// part of the prefix was typed it is for the person to say, even of one.
    pub(super) fn called(&self, typed: &str) -> Called {
        let Some(last) = last_digit(typed) else { return Called::None };
        let (ids, texts): (Vec<Id>, Vec<&str>) =
            self.numbers_with_ids().filter(|(_, text)| may_end_in(text, last)).unzip();
        let of = |found: Vec<usize>| found.into_iter().map(|at| ids[at]).collect::<Vec<Id>>();
        match number::matches(typed, texts.iter().copied()) {
            Matches::None => Called::None,
            Matches::Exact(found) => one_or_several(of(found)),
            Matches::Running(found) => match part_of_head(typed, found.iter().map(|at| texts[*at])) {
                Head::NotTyped => one_or_several(of(found)),
                Head::Part => Called::Several(of(found)),
                Head::Other => Called::None,
            },
        }
    }

    /// The containers that carry the digits and letters of a number as typed, under any prefix.
    pub(super) fn same_digits(&self, typed: &str) -> Vec<Id> {
        let Some(number) = Number::read(typed) else { return Vec::new() };
        let carriers = self.carriers(number.running);
        carriers.into_iter().filter(|(_, other)| other.letters == number.letters).map(|(id, _)| id).collect()
    }

    /// The containers with this running number, under any prefix and with any letters.
    pub(super) fn carriers(&self, running: u64) -> Vec<(Id, Number)> {
        let last = b'0' + (running % 10) as u8;
        let likely = self.numbers_with_ids().filter(|(_, text)| may_end_in(text, last));
        let read = likely.filter_map(|(id, text)| Some((id, Number::read(text)?)));
        read.filter(|(_, number)| number.running == running).collect()
    }
}

fn one_or_several(found: Vec<Id>) -> Called {
    match found.as_slice() {
        [] => Called::None,
        [id] => Called::One(*id),
        _ => Called::Several(found),
    }
}

/// How much of the prefix of those found was typed.
enum Head {
    /// Nothing; stray blanks between digits are nothing.
    NotTyped,
    /// Its beginning or end.
    Part,
    /// Something else.
    Other,
}

fn part_of_head<'a>(typed: &str, mut found: impl Iterator<Item = &'a str>) -> Head {
    let head = Number::read(typed).map(|number| number.key().head).unwrap_or_default();
    if head.chars().all(|sign| sign.is_ascii_digit())
        && !typed.contains(|sign: char| !sign.is_alphanumeric() && !sign.is_whitespace())
    {
        return Head::NotTyped;
    }
    let part = found.any(|text| {
        let other = Number::read(text).map(|number| number.key().head).unwrap_or_default();
        other.starts_with(&head) || other.ends_with(&head)
    });
    if part { Head::Part } else { Head::Other }
}

/// The last digit of a number as typed, as ASCII.
fn last_digit(typed: &str) -> Option<u8> {
    Number::read(typed).map(|number| b'0' + (number.running % 10) as u8)
}

/// False when the last digit of a text is certainly not this one: to read every number of a large book in full
/// would take longer than a keystroke may.
fn may_end_in(text: &str, last: u8) -> bool {
    !text.is_ascii() || text.bytes().rev().find(u8::is_ascii_digit) == Some(last)
}

#[cfg(test)]
mod tests {
    use super::may_end_in;

    #[test]
    fn only_numbers_that_certainly_end_otherwise_are_passed_over() {
        for text in ["147", "IV27-0147", "7a", "IV27-0147 b", "IV27–0147", "０１４７"] {
            assert!(may_end_in(text, b'7'), "{text}");
        }
        for text in ["IV27-0148", "147-2", "", "vial"] {
            assert!(!may_end_in(text, b'7'), "{text}");
        }
    }
}
