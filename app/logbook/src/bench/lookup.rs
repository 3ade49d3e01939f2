//! Which containers a number as typed calls.

use crate::book::Logbook;
use crate::names::same;
use number::{Matches, Number};
use record::Id;
use std::collections::BTreeSet;

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
    /// Which containers a number as typed calls.
    ///
    /// One is certain when its whole number was typed, or its digits alone and no other carries them. Where only a
    /// part of the prefix was typed it is for the person to say, even of one.
    pub(super) fn called(&self, typed: &str) -> Called {
        if Number::read(typed).is_none() {
            let named = self.numbered().with_running(None).filter(|(_, text)| same(text, typed));
            return one_or_several(named.map(|(id, _)| id).collect());
        }
        let runs = endings(typed);
        let (ids, texts): (Vec<Id>, Vec<&str>) =
            runs.into_iter().flat_map(|run| self.numbered().with_running(Some(run))).unzip();
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
        let found = self.numbered().with_running(Some(running));
        found.filter_map(|(id, text)| Some((id, Number::read(text)?))).collect()
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

/// The running numbers in which all digits typed could end, whatever of them belongs to a prefix.
fn endings(typed: &str) -> BTreeSet<u64> {
    let read = Number::read(typed);
    let head = read.as_ref().map(|number| number.key().head).unwrap_or_default();
    let digits = read.map(|number| number.digits).unwrap_or_default();
    let all: String = head.chars().filter(char::is_ascii_digit).chain(digits.chars()).collect();
    (0..all.len()).filter_map(|from| all[from..].parse().ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::endings;

    #[test]
    fn digits_may_belong_to_the_prefix_or_to_the_number() {
        let check = |typed: &str, expected: &[u64]| {
            assert_eq!(endings(typed).into_iter().collect::<Vec<_>>(), expected, "{typed}")
        };
        check("147", &[7, 47, 147]);
        check("0147", &[7, 47, 147]);
        check("iv27 0147", &[7, 47, 147, 70_147, 270_147]);
        check("01 47", &[7, 47, 147]);
        check("19a", &[9, 19]);
        check("vial", &[]);
    }
}
