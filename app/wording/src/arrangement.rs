//! Which parts go on a label, in what order, with which words of its own.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Which label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Where, when and by whom.
    Collection,
    /// On what and how.
    Host,
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
    /// Words for the codes of a host's relation.
    pub relations: BTreeMap<String, String>,
    /// Words for the codes of methods.
    pub methods: BTreeMap<String, String>,
    /// How the particulars of a method are said, by their codes: `#` stands for what was recorded.
    pub particulars: BTreeMap<String, String>,
    /// A person's own abbreviations: whole words, and what stands for them.
    pub abbreviations: BTreeMap<String, String>,
}
