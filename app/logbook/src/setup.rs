//! Who a person is, how they number, what paper and limits they use: the first run and the Setup screen.
//!
//! In go the texts of the screen, out come [`Settled`] changes: edits of records that travel (person, numbering,
//! rules) and what stays on this device ([`DeviceSettings`]). Numbers themselves are proposed elsewhere.

mod device;
mod numberings;
mod persons;
mod rules;
mod second;

pub use device::{Calibration, DeviceSettings};
pub use numberings::{NumberingForm, default_prefix, examples};
pub use rules::{Rules, RulesForm};
pub use second::{OtherNumbering, Own, SecondDevice};

use crate::book::Logbook;
use crate::deed::Deed;

/// What a change in Setup leads to: what is saved in the book, and what belongs to this device only.
#[derive(Clone, Debug)]
pub struct Settled {
    /// Edits of the book, possibly none.
    pub deed: Deed,
    /// The settings of the device from then on.
    pub device: DeviceSettings,
}

/// What cannot be taken as it was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// No name was typed.
    NoName,
    /// Not a number of at least this.
    TooSmall {
        /// Which field, by the name in the form.
        field: &'static str,
        /// The least that it may be.
        least: u32,
    },
    /// Not a number of at most this.
    TooLarge {
        /// Which field, by the name in the form.
        field: &'static str,
        /// The most that it may be.
        most: u32,
    },
    /// The prefix ends in a digit, so that it could not be told from the number.
    PrefixEndsInDigit,
    /// The letter is not one letter.
    NotALetter,
    /// The letter is taken by another device.
    LetterTaken,
    /// The range is not two numbers from 1, the first not above the last.
    NotARange,
    /// So many numbers of the range were given by another device.
    RangeUsed(usize),
    /// Another device's range overlaps.
    RangeTaken,
}

/// The first run: at most two questions, both can wait.
#[derive(Clone, Debug, PartialEq)]
pub struct FirstRun {
    /// Ask for the name: what stands there so far.
    pub name: String,
    /// How numbers are given so far, a code; empty when not yet said.
    pub habit: String,
    /// What numbers look like under each habit, by its code.
    pub examples: Vec<(&'static str, Vec<String>)>,
    /// This device must first take numbers of its own.
    pub second: bool,
}

/// The Setup screen.
#[derive(Clone, Debug, PartialEq)]
pub struct SetupView {
    /// The person's name.
    pub name: String,
    /// Those who usually come along.
    pub team: Vec<String>,
    /// How this device numbers.
    pub numbering: NumberingForm,
    /// What it will give next, as this form says.
    pub next: crate::view::Next,
    /// Label paper and limits.
    pub rules: RulesForm,
    /// Another device numbers for the same person: this one must take numbers of its own.
    pub second: Option<SecondDevice>,
}

impl Logbook {
    /// The questions before the first catch; `None` once they were answered or put off.
    pub fn first_run(&self, year: i32) -> Option<FirstRun> {
        let device = self.device();
        (!device.asked).then(|| FirstRun {
            name: self.own_name(),
            habit: self.numbering_form(year).habit,
            examples: crate::codes::HABITS
                .iter()
                .map(|habit| (*habit, examples(habit, &self.own_name(), year)))
                .collect(),
            second: self.second_device().is_some(),
        })
    }

    /// The settings once the first-run questions were answered or put off.
    pub fn asked(&self) -> DeviceSettings {
        DeviceSettings { asked: true, ..self.device().clone() }
    }

    /// What the Setup screen shows; the prefix proposed is of this year.
    pub fn setup(&self, year: i32) -> SetupView {
        let numbering = self.numbering_form(year);
        SetupView {
            name: self.own_name(),
            team: self.team(),
            next: self.preview(&numbering),
            numbering,
            rules: self.rules().form(),
            second: self.second_device(),
        }
    }
}

#[cfg(test)]
mod tests;
