//! What may stand on a label, as plain values: a caller fills in what it knows.

use crate::date::days_in;
use serde::{Deserialize, Serialize};

/// A local day as far as it is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Day {
    /// The year.
    pub year: i32,
    /// The month, 1 to 12.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub month: Option<u8>,
    /// The day of the month, only with a month.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub day: Option<u8>,
}

impl Day {
    /// A day known to the day.
    pub fn new(year: i32, month: u8, day: u8) -> Self {
        Self { year, month: Some(month), day: Some(day) }
    }

    /// True for a day, month or year of the Gregorian calendar.
    pub fn exists(self) -> bool {
        match (self.month, self.day) {
            (None, day) => day.is_none(),
            (Some(month), day) => {
                (1..=12).contains(&month) && day.is_none_or(|day| (1..=days_in(self.year, month)).contains(&day))
            }
        }
    }
}

/// From when until when.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Span {
    /// The first day.
    pub from: Day,
    /// The last day; `None` for one day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub until: Option<Day>,
    /// True for the night that begins on the evening of `from`.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub night: bool,
}

/// A relation to a thing.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Host {
    /// A code for which the arrangement has words; one that it does not know is left out.
    pub relation: String,
    /// The thing.
    pub thing: String,
    /// True when the thing is a Latin name; [`crate::looks_latin`] guesses.
    pub latin: bool,
    /// Which part of it.
    pub part: String,
}

/// A name given to an insect.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Determination {
    /// The name with its doubt: "Andrena cf. bicolor", "Andrena sp. 3".
    pub name: String,
    /// Its author, brackets and year as they are: "Fabricius, 1775".
    pub author: String,
    /// Who says so.
    pub by: String,
    /// In which year.
    pub year: String,
}

/// Everything that a label can say of one catch; what is empty is left out with the words around it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Parts {
    /// Country.
    pub country: String,
    /// Province, state or canton, and what lies below it.
    pub province: String,
    /// The named place.
    pub locality: String,
    /// Distance and direction from the named place: "2 km NE of Tarn Abbot".
    pub offset: String,
    /// Name of the site.
    pub site: String,
    /// Habitat.
    pub habitat: String,
    /// Latitude and longitude with honest digits: "47.6138° N 12.3043° E".
    pub coordinates: String,
    /// The radius with its unit, without a sign: "8 m".
    pub radius: String,
    /// Height of the ground with its unit: "412 m".
    pub elevation: String,
    /// When it was caught.
    pub caught: Option<Span>,
    /// When it emerged, if it was reared.
    pub emerged: Option<Span>,
    /// The collectors as labels name them.
    pub collectors: Vec<String>,
    /// The method in words.
    pub method: String,
    /// Its particulars in words: "30 minutes".
    pub particulars: Vec<String>,
    /// The host.
    pub host: Option<Host>,
    /// Number of the container.
    pub number: String,
    /// The event's own number.
    pub station: String,
    /// Where exactly: "under bark".
    pub microhabitat: String,
    /// Height above the ground with its unit: "2 m".
    pub height: String,
    /// What is in the container.
    pub contents: String,
    /// The name given to it.
    pub determination: Determination,
    /// Sex and life stage: "♀".
    pub sex: String,
    /// The code of the specimen.
    pub code: String,
    /// What was taken off it: "genitalia", "leg, DNA".
    pub piece: String,
    /// The number under which that is kept.
    pub linked: String,
    /// The fluid and its strength: "ethanol 80 %".
    pub preservative: String,
    /// How many insects: "12".
    pub count: String,
}
