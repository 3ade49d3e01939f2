//! Which parts go on a label, in what order, with which words of its own.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Which label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Where, when and by whom.
    Collection,
    /// On what and how.
    Host,
    /// What it is, who says so and since when.
    Determination,
    /// A reared insect: from what, collected when, emerged when.
    Rearing,
    /// The code of the specimen.
    Code,
    /// Inside a vial with fluid.
    Fluid,
    /// The card in the envelope of a papered insect.
    Envelope,
    /// What was taken off the insect, and the number under which it is kept.
    Parts,
    /// The slip beside insects on the spreading board and in the relaxing box.
    Slip,
}

impl Kind {
    /// All of them, in the order in which they stand on a pin; those that are on none last.
    pub const ALL: [Self; 9] = [
        Self::Collection,
        Self::Rearing,
        Self::Host,
        Self::Determination,
        Self::Parts,
        Self::Code,
        Self::Fluid,
        Self::Envelope,
        Self::Slip,
    ];

    /// The kind of a code; `None` for one that this version does not know.
    pub fn of_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.code() == code)
    }

    /// The code under which it is stored: `collection`, `host` …
    pub fn code(self) -> &'static str {
        match self {
            Self::Collection => "collection",
            Self::Host => "host",
            Self::Determination => "determination",
            Self::Rearing => "rearing",
            Self::Code => "code",
            Self::Fluid => "fluid",
            Self::Envelope => "envelope",
            Self::Parts => "parts",
            Self::Slip => "slip",
        }
    }
}

/// One part of a label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Country.
    Country,
    /// Province.
    Province,
    /// The named place.
    Locality,
    /// Distance and direction from it; "of" and the place are dropped where the place stands just before.
    Offset,
    /// Name of the site.
    Site,
    /// Habitat.
    Habitat,
    /// Latitude and longitude.
    Coordinates,
    /// Radius of uncertainty; left out without coordinates.
    Radius,
    /// Height of the ground.
    Elevation,
    /// When it was caught.
    Date,
    /// When it emerged.
    Emerged,
    /// The collectors.
    Collectors,
    /// The method.
    Method,
    /// Particulars of the method.
    Particulars,
    /// The words of the host's relation.
    Relation,
    /// The host itself.
    Thing,
    /// Which part of the host.
    ThingPart,
    /// Number of the container.
    Number,
    /// The event's own number.
    Station,
    /// Where exactly.
    Microhabitat,
    /// Height above the ground.
    Height,
    /// What is in the container.
    Contents,
    /// The name that was determined, in italics as far as it is Latin.
    Name,
    /// The author of the name, brackets as they are.
    Author,
    /// Who determined it.
    DeterminedBy,
    /// In which year.
    DeterminedIn,
    /// Sex and life stage.
    Sex,
    /// The code of the specimen.
    Code,
    /// What was taken off: a genitalia preparation, a leg.
    Piece,
    /// The number under which that is kept.
    Linked,
    /// The fluid and its strength.
    Preservative,
    /// How many insects.
    Count,
    /// Words of the arrangement alone: what stands before and after.
    Words,
}

/// How the month of a date is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Month {
    /// 14.vi.2027
    #[default]
    RomanSmall,
    /// 14.VI.2027
    RomanCapital,
}

/// What stands between the day, the month and the year.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Joint {
    /// 14.vi.2027
    #[default]
    Stop,
    /// 14. vi. 2027
    StopAndSpace,
    /// 14-vi-2027
    Hyphen,
    /// 14 vi 2027
    Space,
}

/// What stands between the first and the last day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Dash {
    /// 14–21.vi.2027
    #[default]
    En,
    /// 14 – 21.vi.2027
    SpacedEn,
    /// 14-21.vi.2027; with a hyphen between day and month as well it is an en dash.
    Hyphen,
}

/// A part with the words around it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Item {
    /// The part.
    pub part: Part,
    /// Words before it: "leg. ".
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub before: String,
    /// Words after it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub after: String,
    /// What stands between it and the next known part of its line.
    #[serde(default = "comma", skip_serializing_if = "is_comma")]
    pub then: String,
    /// True to write it in capitals.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub capitals: bool,
}

fn is_usual<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

fn comma() -> String {
    ", ".to_owned()
}

fn is_comma(text: &str) -> bool {
    text == ", "
}

impl Item {
    /// A part with a comma after it and no words of its own.
    pub fn new(part: Part) -> Self {
        Self { part, before: String::new(), after: String::new(), then: comma(), capitals: false }
    }

    /// The same with words before it.
    pub fn before(mut self, words: &str) -> Self {
        words.clone_into(&mut self.before);
        self
    }

    /// The same with words after it.
    pub fn after(mut self, words: &str) -> Self {
        words.clone_into(&mut self.after);
        self
    }

    /// The same with something else than a comma between it and the next.
    pub fn then(mut self, words: &str) -> Self {
        words.clone_into(&mut self.then);
        self
    }

    /// The same in capitals.
    pub fn capitals(mut self) -> Self {
        self.capitals = true;
        self
    }
}

/// How one kind of label is worded.
///
/// **Shape**: `lines` top to bottom; every one starts on a line of its own, and may be broken further when it is set.
/// A line of which nothing is known is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Arrangement {
    /// The lines.
    pub lines: Vec<Vec<Item>>,
    /// How months are written.
    pub month: Month,
    /// What stands between day, month and year.
    #[serde(skip_serializing_if = "is_usual")]
    pub joint: Joint,
    /// What stands between two days.
    #[serde(skip_serializing_if = "is_usual")]
    pub dash: Dash,
    /// Words for the codes of a host's relation.
    pub relations: BTreeMap<String, String>,
    /// Words for the codes of methods.
    pub methods: BTreeMap<String, String>,
    /// How the particulars of a method are said, by their codes: `#` stands for what was recorded.
    pub particulars: BTreeMap<String, String>,
    /// A person's own abbreviations: whole words or several in a row, and what stands for them.
    pub abbreviations: BTreeMap<String, String>,
}
