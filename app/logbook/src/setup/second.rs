//! A second device of the same person: two that count for themselves would give the same number twice, so the
//! second one takes a letter or a range of its own, or gives no numbers.
//!
//! Each device has a numbering record of its own. This one is the second when another device's numbering of the
//! same person was there first and both would write the same numbers.

use super::numberings::{read_letter, read_range};
use super::{Refused, Settled};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::names::Ids;
use crate::numbered::head_of;
use crate::numbers::{numbering_of, plate_of};
use crate::view::{Next, Plate};
use number::{Habit, Number, Numbering};
use record::{Id, Kind, Record, container, numbering};

/// Letters that are offered: not A, which the first device might be thought to have, and none that reads like a digit.
const LETTERS: &str = "BCDEFGHJKLMNPRTUVWXY";
/// Numbers in a range that is offered.
const RANGE: u64 = 500;

/// This device must take numbers of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct SecondDevice {
    /// Whose numbers.
    pub person: String,
    /// Those who count already.
    pub others: Vec<OtherNumbering>,
    /// A letter that is free.
    pub letter: String,
    /// A range that is free: first number, filled with zeros.
    pub from: String,
    /// Last number of that range.
    pub to: String,
}

/// Another device that numbers for the same person.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherNumbering {
    /// The numbering.
    pub id: Id,
    /// The device that made it, as its log says; empty when not known.
    pub device: String,
    /// What it will give next, as far as is known here.
    pub next: Next,
    /// The highest number known of it.
    pub highest: Option<Plate>,
    /// When that was entered, by that device's clock; empty without one.
    pub entered: String,
}

/// What a second device takes for its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Own {
    /// A letter before the running number.
    Letter(String),
    /// A range of running numbers: first and last as typed.
    Range(String, String),
    /// It gives no numbers.
    Nothing,
    /// The other device is gone, and this one goes on in its place.
    InItsPlace,
}

impl Logbook {
    /// Whether another device counts for the same person, so that this one must take numbers of its own first.
    pub fn second_device(&self) -> Option<SecondDevice> {
        let first = self.first_device()?;
        let read = numbering_of(&first);
        let others =
            self.numberings_elsewhere().into_iter().filter(|record| numbering_of(record).prefix == read.prefix);
        let (from, to) = self.free_range(&read);
        let width = usize::from(read.width);
        Some(SecondDevice {
            person: self.own_name(),
            others: others.map(|record| self.other_numbering(&record)).collect(),
            letter: self.free_letter(&read.prefix),
            from: format!("{from:0width$}"),
            to: format!("{to:0width$}"),
        })
    }

    /// What this device would give next if it took this for its own.
    ///
    /// **Errors**: why it cannot be taken.
    pub fn own_preview(&self, own: &Own) -> Result<Next, Refused> {
        let Some(first) = self.first_device() else { return Ok(self.next_number()) };
        let read = self.own_numbers(&numbering_of(&first), own)?;
        Ok(self.next_under(&read))
    }

    /// How many numbers a range of this device's own has, all of them free here.
    ///
    /// **Errors**: why it cannot be taken.
    pub fn range_size(&self, from: &str, to: &str) -> Result<u32, Refused> {
        let prefix = self.first_device().map(|first| numbering_of(&first)).unwrap_or_default();
        let read = self.own_numbers(&prefix, &Own::Range(from.to_owned(), to.to_owned()))?;
        Ok(read.range.map_or(0, |(from, to)| to - from + 1))
    }

    /// Takes numbers of this device's own.
    ///
    /// **Errors**: why they cannot be taken; nothing is saved then.
    pub fn take_own(&self, own: &Own, ids: Ids<'_>) -> Result<Settled, Refused> {
        let Some(first) = self.first_device() else {
            return Ok(Settled { deed: Deed::new(What::Setup, []), device: self.device().clone() });
        };
        if *own == Own::InItsPlace {
            return Ok(Settled { deed: Deed::new(What::Setup, []), device: self.device().numbering_from(first.id) });
        }
        let read = self.own_numbers(&numbering_of(&first), own)?;
        Ok(self.settle_numbering(&Record::new(ids(), Kind::Numbering), &read))
    }

    /// The numbering of another device that was there first and would write the same numbers as this one; the
    /// newest where this device has none yet.
    fn first_device(&self) -> Option<Record> {
        let mut elsewhere = self.numberings_elsewhere();
        let Some(own) = self.own_numbering() else { return elsewhere.pop() };
        let read = numbering_of(&own);
        if !counts(&read) {
            return None;
        }
        elsewhere.into_iter().find(|record| record.id < own.id && meet(&numbering_of(record), &read))
    }

    /// The numberings of this person under which other devices count, oldest first.
    fn numberings_elsewhere(&self) -> Vec<Record> {
        let device = self.device();
        let Some(person) = device.person else { return Vec::new() };
        let own = |id: Id| device.numbering == Some(id) || device.numberings.contains(&id);
        let mut elsewhere = self.all(&Kind::Numbering).to_vec();
        elsewhere.retain(|record| {
            record.get(&numbering::PERSON) == Some(person) && !own(record.id) && counts(&numbering_of(record))
        });
        elsewhere
    }

    fn other_numbering(&self, record: &Record) -> OtherNumbering {
        let read = numbering_of(record);
        let highest = self.numbered().highest(&read, &self.ranges_beside(&read)).and_then(|(id, _)| self.living(id));
        let made = record.fields.get(numbering::PREFIX.name()).and_then(|versions| versions.first());
        let entered = |record: &Record| Some(record.fields.get(container::NUMBER.name())?.last()?.entered.clone());
        OtherNumbering {
            id: record.id,
            device: made
                .and_then(|made| self.author(&made.dot.replica))
                .map(|author| author.device.clone())
                .unwrap_or_default(),
            next: self.next_under(&read),
            entered: highest.as_ref().and_then(entered).unwrap_or_default(),
            highest: highest.map(|record| self.plate(&record)),
        }
    }

    /// What a numbering gives next, as far as is known here.
    fn next_under(&self, read: &Numbering) -> Next {
        match read.next(self.highest_beside(read)) {
            number::Next::Number(text) => Next::Number(plate_of("vial", &text)),
            number::Next::None => Next::None,
            number::Next::RangeFull => Next::RangeFull,
        }
    }

    /// The highest number given under a numbering; without a range of its own those in ranges of other devices do
    /// not count.
    pub(crate) fn highest_beside(&self, numbering: &Numbering) -> Option<&str> {
        self.numbered().highest(numbering, &self.ranges_beside(numbering)).map(|(_, text)| text)
    }

    fn ranges_beside(&self, numbering: &Numbering) -> Vec<(u64, u64)> {
        if numbering.range.is_some() { Vec::new() } else { self.ranges_of(&numbering.prefix) }
    }

    fn ranges_of(&self, prefix: &str) -> Vec<(u64, u64)> {
        let numberings = self.all(&Kind::Numbering);
        let numberings = numberings.iter().map(numbering_of);
        let ranges = numberings.filter(|read| read.prefix == prefix && counts(read)).filter_map(|read| read.range);
        ranges.map(|(from, to)| (u64::from(from), u64::from(to))).collect()
    }

    /// The numbering that a device would have with numbers of its own beside the first one.
    fn own_numbers(&self, first: &Numbering, own: &Own) -> Result<Numbering, Refused> {
        let fresh = Numbering { device_letter: None, range: None, ..first.clone() };
        match own {
            Own::Letter(letter) => {
                let letter = read_letter(letter)?.ok_or(Refused::NotALetter)?;
                if self.letter_taken(&first.prefix, letter) {
                    return Err(Refused::LetterTaken);
                }
                Ok(Numbering { device_letter: Some(letter), ..fresh })
            }
            Own::Range(from, to) => {
                let range = read_range(from, to)?.ok_or(Refused::NotARange)?;
                let (from, to) = (u64::from(range.0), u64::from(range.1));
                if self.ranges_of(&first.prefix).iter().any(|(first, last)| *first <= to && from <= *last) {
                    return Err(Refused::RangeTaken);
                }
                let used = self.runs_under(&first.prefix, None).filter(|run| (from..=to).contains(run)).count();
                if used > 0 { Err(Refused::RangeUsed(used)) } else { Ok(Numbering { range: Some(range), ..fresh }) }
            }
            Own::Nothing => Ok(Numbering { habit: Habit::None, prefix: String::new(), width: 0, ..fresh }),
            Own::InItsPlace => Ok(first.clone()),
        }
    }

    fn letter_taken(&self, prefix: &str, letter: char) -> bool {
        let lettered = |record: Record| {
            let read = numbering_of(&record);
            read.prefix == prefix && read.device_letter == Some(letter)
        };
        self.all(&Kind::Numbering).iter().cloned().any(lettered)
            || self.runs_under(prefix, Some(letter)).next().is_some()
    }

    fn free_letter(&self, prefix: &str) -> String {
        LETTERS.chars().find(|letter| !self.letter_taken(prefix, *letter)).map(String::from).unwrap_or_default()
    }

    fn free_range(&self, first: &Numbering) -> (u64, u64) {
        let given = self.runs_under(&first.prefix, None).next_back().unwrap_or(0);
        let highest = self.ranges_of(&first.prefix).iter().map(|(_, to)| *to).fold(given, u64::max);
        let from = (highest / RANGE + 1) * RANGE;
        (from, from + RANGE - 1)
    }

    /// The running numbers given under a prefix and device letter.
    pub(super) fn runs_under(&self, prefix: &str, letter: Option<char>) -> impl DoubleEndedIterator<Item = u64> {
        let head = head_of(prefix, letter);
        let keys = self.numbered().iter().filter_map(|(_, text)| Number::read(text)).map(|number| number.key());
        keys.filter(move |key| key.head == head).map(|key| key.running)
    }
}

/// True for a habit under which a device proposes numbers.
fn counts(numbering: &Numbering) -> bool {
    matches!(numbering.habit, Habit::OnePerContainer | Habit::LettersPerEvent)
}

/// True when two devices would write the same numbers. A range stands apart from a device that has none: that one
/// passes over it.
fn meet(first: &Numbering, second: &Numbering) -> bool {
    let apart = match (first.range, second.range) {
        (Some(first), Some(second)) => first.1 < second.0 || second.1 < first.0,
        (None, None) => false,
        _ => true,
    };
    !apart && first.prefix == second.prefix && first.device_letter == second.device_letter
}
