//! The fields of a collecting event, and the values that other kinds share with it.

use crate::{Field, Id, Lines};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Local wall time at the precision known.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct When {
    /// From when, ISO 8601 without offset, as precise as known: `2027-06-19T14:32`, `2027-06-19`, `2027-06`, `2027`.
    pub from: String,
    /// Until when, in the same form.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub until: Option<String>,
    /// Minutes by which the wall time is ahead of UTC, where an hour is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub offset_minutes: Option<i32>,
    /// True for the night of `from`, noon to noon: it counts for its evening.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub night: bool,
}

/// A position: one field, never mixed from two people.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// The datum, `WGS84` unless a person said another.
    pub datum: String,
    /// Radius of the circle that encloses where it was, metres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius_m: Option<f64>,
    /// How it was got: `device`, `typed`, `site` (the site's own point).
    pub how: String,
    /// Number of fixes that were combined.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fixes: Option<u32>,
    /// Over how many seconds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seconds: Option<u32>,
    /// The platform that reported the radius: `android`, `ios`, `other`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub platform: Option<String>,
    /// What a person typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub typed: Option<String>,
}

/// A height of the ground.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Elevation {
    /// Metres.
    pub metres: f64,
    /// How it was got: `typed`, `device`, or `confirmed` where a person looked at the device's and agreed.
    pub how: String,
    /// The device's accuracy, metres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub accuracy_m: Option<f64>,
    /// The platform: its altitude is above the ellipsoid on some, above sea level on others.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub platform: Option<String>,
    /// What the device said, metres, where a person confirmed the height that was made of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub raw_m: Option<f64>,
    /// What that was counted from: `ellipsoid` or `sea_level`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zero: Option<String>,
    /// What a person typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub typed: Option<String>,
}

/// How it was caught, with the particulars that the trade records.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Method {
    /// A stable code (`hand_net`, `sweeping`, `light`, …); empty where only words are known.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub code: String,
    /// The person's own words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub text: String,
    /// Particulars by code as typed: `minutes`, `strokes`, `lamp`, `lamp_on`, `lamp_off`, `traps`, `bait`, `mesh_mm`, …
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub particulars: BTreeMap<String, String>,
}

/// A relation to a thing: one field.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Host {
    /// A stable code: `flower`, `swept`, `beaten`, `on`, `feeding`, `mine_or_gall`, `reared`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub relation: String,
    /// The thing as typed.
    pub thing: String,
    /// What it is: `plant`, `fungus`, `insect`, `vertebrate`, `dung`, `wood`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub what: String,
    /// Which part of it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub part: String,
    /// Number of the voucher.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub voucher: String,
    /// Who named it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub named_by: String,
}

/// One collector of an event: which person; the order is the line's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Collector {
    /// The person.
    pub person: Id,
    /// Position in the list, from 0.
    pub order: u32,
}

/// When it was caught, which is not when it was entered.
pub const CAUGHT: Field<When> = Field::new("caught");
/// Where.
pub const PLACE: Field<Place> = Field::new("place");
/// The site that lends its words.
pub const SITE: Field<Id> = Field::new("site");
/// Height of the ground.
pub const ELEVATION: Field<Elevation> = Field::new("elevation");
/// Height above the ground, metres, as typed.
pub const HEIGHT: Field<String> = Field::new("height_above_ground");
/// Under bark, in dung …
pub const MICROHABITAT: Field<String> = Field::new("microhabitat");
/// How.
pub const METHOD: Field<Method> = Field::new("method");
/// On what.
pub const HOST: Field<Host> = Field::new("host");
/// With whom.
pub const COLLECTORS: Lines<Collector> = Lines::new("collector");
/// The event's own number.
pub const STATION: Field<String> = Field::new("station");
/// Weather as typed.
pub const WEATHER: Field<String> = Field::new("weather");
/// The permit under which it was done.
pub const PERMIT: Field<Id> = Field::new("permit");
/// Notes as typed.
pub const NOTES: Field<String> = Field::new("notes");
/// Nothing was caught, which is a result.
pub const NOTHING: Field<bool> = Field::new("nothing_caught");
/// Still going on: the lamp burns, the trap is out.
pub const OPEN: Field<bool> = Field::new("open");
/// The trap of which this is a service.
pub const TRAP: Field<Id> = Field::new("trap");
/// The lines of its collection labels as a person edited them (a container may have its own); `_` on both sides sets italics.
pub const COLLECTION_WORDING: Field<Vec<String>> = Field::new("collection_wording");
/// The lines of its host labels as a person edited them, likewise.
pub const HOST_WORDING: Field<Vec<String>> = Field::new("host_wording");
