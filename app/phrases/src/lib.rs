//! Every sentence that a person reads, one folder per language.
//!
//! In go codes, counts and dates, out come words. Each area of the screens is a trait with one method per
//! sentence ([`area`]); a language answers all of them, so a sentence that it lacks does not compile.
//! Nothing here knows a record, a screen or the device.
//!
//! A second language is one more folder like [`english`], one more arm in [`phrases`], and one more entry in
//! [`Language::ALL`].

pub mod area;
pub mod bench;
pub mod desk;
pub mod english;
pub mod field;
pub mod groups;
mod sentences;

use groups::Group;

/// A language in which the pages speak.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
}

impl Language {
    /// All languages, in the order in which they are offered.
    pub const ALL: [Self; 1] = [Self::English];

    /// The code by which a choice is kept, which is also the page's `lang`.
    pub fn code(self) -> &'static str {
        match self {
            Self::English => "en",
        }
    }

    /// The language's own name for itself.
    pub fn name(self) -> &'static str {
        match self {
            Self::English => "English",
        }
    }

    /// The language with this code; English where there is none.
    pub fn from_code(code: &str) -> Self {
        Self::ALL.into_iter().find(|language| language.code() == code).unwrap_or_default()
    }
}

/// All sentences of one language, area by area.
#[derive(Clone, Copy)]
pub struct Phrases {
    /// The frame of every screen.
    pub frame: &'static dyn area::Frame,
    /// Dates, hours and counts.
    pub dates: &'static dyn area::Dates,
    /// Words for stored codes.
    pub codes: &'static dyn area::Codes,
    /// What is missing or to be known.
    pub marks: &'static dyn area::Marks,
    /// What went wrong.
    pub faults: &'static dyn area::Faults,
    /// The start screen.
    pub start: &'static dyn area::Start,
    /// The first run, and how a device numbers.
    pub first: &'static dyn area::First,
    /// The form of a catch.
    pub catch: &'static dyn area::Catch,
    /// The position row.
    pub place: &'static dyn area::Place,
    /// Containers and what is in them.
    pub container: &'static dyn area::Container,
    /// A site.
    pub site: &'static dyn area::Site,
    /// What is still going on: lamps and traps.
    pub open: &'static dyn area::Open,
    /// Sun and moon.
    pub sky: &'static dyn area::Sky,
    /// A saved event.
    pub event: &'static dyn area::Event,
    /// What several screens of the desk say.
    pub desk: &'static dyn area::Desk,
    /// The days, and one day.
    pub day: &'static dyn area::Day,
    /// Search.
    pub search: &'static dyn area::Search,
    /// What leaves the device.
    pub export: &'static dyn area::Export,
    /// What comes in.
    pub import: &'static dyn area::Import,
    /// Two people's values for one field.
    pub conflict: &'static dyn area::Conflict,
    /// The bench.
    pub bench: &'static dyn area::Bench,
    /// The labels.
    pub labels: &'static dyn area::Labels,
    /// Setup.
    pub setup: &'static dyn area::Setup,
    /// Names of the groups of insects.
    pub groups: &'static [Group],
}

/// The sentences of a language.
pub fn phrases(language: Language) -> &'static Phrases {
    match language {
        Language::English => &english::ENGLISH,
    }
}
