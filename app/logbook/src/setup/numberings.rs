//! How this device numbers: the habit, what stands before the running number, digits.

use super::{Refused, Settled};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::names::Ids;
use crate::numbers::{numbering_of, plate_of};
use crate::view::Next;
use number::{Habit, Numbering};
use record::{Edit, Kind, Record, numbering};
use serde::{Deserialize, Serialize};

/// Most digits to which a running number is filled.
const WIDTH_MOST: u32 = 9;

/// A numbering as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct NumberingForm {
    /// `one`, `letters`, `engraved`, `none`; empty when not yet said.
    pub habit: String,
    /// What stands before the running number.
    pub prefix: String,
    /// Digits of the running number; 0 or empty for as many as it needs.
    pub width: String,
    /// The letter of this device; empty for none.
    pub letter: String,
    /// First number of this device's range; empty for none.
    pub from: String,
    /// Last number of this device's range.
    pub to: String,
}

/// The prefix proposed for a person: initials and the year in two digits, `IV27-`.
pub fn default_prefix(name: &str, year: i32) -> String {
    let spoken = name.split_once(',').map_or_else(|| name.to_owned(), |(last, first)| format!("{first} {last}"));
    let words = spoken.split(|sign: char| sign.is_whitespace() || sign == '.' || sign == '-');
    let initials: Vec<char> = words.filter_map(|word| word.chars().find(|sign| sign.is_alphabetic())).collect();
    let capitals = initials.iter().filter(|sign| sign.is_uppercase()).count();
    let chosen = initials.iter().filter(|sign| capitals == 0 || sign.is_uppercase()).take(3);
    let letters: String = chosen.flat_map(|sign| sign.to_uppercase()).collect();
    if letters.is_empty() { String::new() } else { format!("{letters}{:02}-", year.rem_euclid(100)) }
}

/// What numbers look like under a habit.
pub fn examples(habit: &str, name: &str, year: i32) -> Vec<String> {
    match habit {
        "one" => (1..=3).map(|run| format!("{}{run:04}", default_prefix(name, year))).collect(),
        "letters" => ["1a", "1b", "1c", "2a"].map(str::to_owned).to_vec(),
        "engraved" => ["12", "40", "7", "12"].map(str::to_owned).to_vec(),
        _ => Vec::new(),
    }
}

impl NumberingForm {
    /// What is usual under a habit.
    fn usual(habit: &str, name: &str, year: i32) -> Self {
        let one = matches!(habit, "one" | "");
        Self {
            habit: habit.to_owned(),
            prefix: if one { default_prefix(name, year) } else { String::new() },
            width: if one { "4" } else { "0" }.to_owned(),
            ..Self::default()
        }
    }

    fn of(record: &Record) -> Self {
        let read = numbering_of(record);
        let (from, to) = read.range.map_or_else(Default::default, |(from, to)| (from.to_string(), to.to_string()));
        Self {
            habit: read.habit.code().to_owned(),
            prefix: read.prefix,
            width: read.width.to_string(),
            letter: read.device_letter.map(String::from).unwrap_or_default(),
            from,
            to,
        }
    }

    /// Reads it.
    ///
    /// **Errors**: all that cannot be taken.
    pub fn read(&self) -> Result<Numbering, Vec<Refused>> {
        let mut refused = Vec::new();
        let prefix = self.prefix.trim().to_owned();
        if prefix.chars().next_back().is_some_and(char::is_numeric) {
            refused.push(Refused::PrefixEndsInDigit);
        }
        let width = if self.width.trim().is_empty() { Some(0) } else { self.width.trim().parse::<u8>().ok() };
        let width = width.filter(|width| u32::from(*width) <= WIDTH_MOST);
        if width.is_none() {
            refused.push(Refused::TooLarge { field: "width", most: WIDTH_MOST });
        }
        let device_letter = read_letter(&self.letter).map_err(|why| refused.push(why)).ok().flatten();
        let range = read_range(&self.from, &self.to).map_err(|why| refused.push(why)).ok().flatten();
        let habit = Habit::of_code(&self.habit).unwrap_or_default();
        let read = Numbering { prefix, width: width.unwrap_or(0), habit, device_letter, range };
        if refused.is_empty() { Ok(read) } else { Err(refused) }
    }
}

/// A device's letter: one letter of A to Z, or none.
pub(super) fn read_letter(text: &str) -> Result<Option<char>, Refused> {
    let mut signs = text.trim().chars();
    match (signs.next(), signs.next()) {
        (None, _) => Ok(None),
        (Some(letter), None) if letter.is_ascii_alphabetic() => Ok(Some(letter.to_ascii_uppercase())),
        _ => Err(Refused::NotALetter),
    }
}

/// A device's range: two numbers from 1, or none.
pub(super) fn read_range(from: &str, to: &str) -> Result<Option<(u32, u32)>, Refused> {
    if from.trim().is_empty() && to.trim().is_empty() {
        return Ok(None);
    }
    let read = |text: &str| text.trim().parse::<u32>().ok();
    match (read(from), read(to)) {
        (Some(from), Some(to)) if (1..=to).contains(&from) => Ok(Some((from, to))),
        _ => Err(Refused::NotARange),
    }
}

/// Writes a numbering into its record.
pub(super) fn write(edit: &mut Edit, read: &Numbering) {
    edit.put(&numbering::HABIT, &read.habit.code().to_owned());
    edit.put(&numbering::PREFIX, &read.prefix);
    edit.put(&numbering::WIDTH, &u32::from(read.width));
    edit.put_or_empty(&numbering::LETTER, read.device_letter.map(String::from).as_ref());
    edit.put_or_empty(&numbering::RANGE, read.range.as_ref());
}

impl Logbook {
    /// The numbering of this device as the Setup screen shows it, or what is proposed for this year.
    pub fn numbering_form(&self, year: i32) -> NumberingForm {
        match self.own_numbering() {
            Some(record) => NumberingForm::of(&record),
            None => NumberingForm::usual("", &self.own_name(), year),
        }
    }

    /// What a numbering as typed would give next.
    pub fn preview(&self, form: &NumberingForm) -> Next {
        let Ok(numbering) = form.read() else { return Next::None };
        if form.habit.is_empty() {
            return Next::Unasked;
        }
        let letter = if numbering.habit == Habit::LettersPerEvent { "a" } else { "" };
        match numbering.next(self.highest_beside(&numbering)) {
            number::Next::Number(text) => Next::Number(plate_of("vial", &format!("{text}{letter}"))),
            number::Next::None => Next::None,
            number::Next::RangeFull => Next::RangeFull,
        }
    }

    /// Says how numbers are given, with what is usual under that habit.
    pub fn set_habit(&self, habit: &str, year: i32, ids: Ids<'_>) -> Settled {
        let form = match self.own_numbering() {
            Some(record) if record.get(&numbering::HABIT).as_deref() == Some(habit) => NumberingForm::of(&record),
            _ => NumberingForm::usual(habit, &self.own_name(), year),
        };
        self.set_numbering(&form, ids).expect("what is usual under a habit can be read")
    }

    /// Saves how this device numbers.
    ///
    /// Where numbers were given under another prefix a new numbering begins, so that the old one goes on saying
    /// how the old numbers are to be read.
    ///
    /// **Errors**: all that cannot be taken; nothing is saved then.
    pub fn set_numbering(&self, form: &NumberingForm, ids: Ids<'_>) -> Result<Settled, Vec<Refused>> {
        let read = form.read()?;
        let known = self.own_numberings().find(|record| {
            let known = numbering_of(record);
            (known.prefix, known.device_letter, known.range) == (read.prefix.clone(), read.device_letter, read.range)
        });
        let unused = || self.own_numbering().filter(|record| !self.is_used(&numbering_of(record)));
        let record = known.or_else(unused).unwrap_or_else(|| Record::new(ids(), Kind::Numbering));
        Ok(self.settle_numbering(&record, &read))
    }

    pub(super) fn settle_numbering(&self, record: &Record, read: &Numbering) -> Settled {
        let mut edit = Edit::of(record);
        write(&mut edit, read);
        if let Some(person) = self.device().person {
            edit.put(&numbering::PERSON, &person);
        }
        Settled { deed: Deed::new(What::Setup, [edit]), device: self.device().numbering_from(record.id) }
    }

    /// The numbering from which this device gives numbers.
    pub(super) fn own_numbering(&self) -> Option<Record> {
        self.living(self.device().numbering?).filter(|record| record.kind == Kind::Numbering)
    }

    /// Every numbering from which this device gave numbers.
    fn own_numberings(&self) -> impl Iterator<Item = Record> {
        let device = self.device();
        device.numbering.iter().chain(&device.numberings).filter_map(|id| self.living(*id))
    }

    /// True when a number of the book belongs to it.
    fn is_used(&self, numbering: &Numbering) -> bool {
        self.runs_under(&numbering.prefix, numbering.device_letter).next().is_some()
    }
}
