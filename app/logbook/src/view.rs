//! What screens show: plain data, made from the book for one moment. No sentence stands here; codes and
//! numbers do, and the phrases say them.

use crate::map::DayMap;
use crate::moment::Day;
use record::Id;
pub use record::container::Fluid;
pub use record::event::{Host, Method};
use std::sync::Arc;
pub use wording::looks_latin;

/// A number as it stands on its carrier.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Plate {
    /// `vial`, `envelope`, `jar`, `bag`, `none` for observed and released.
    pub vessel: String,
    /// What stands before the running part: `IV27-`.
    pub prefix: String,
    /// The running part: `0147`, `19a`; empty while it has no number.
    pub run: String,
}

/// Numbers one after the other: first and last are the same for one alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Span {
    /// What stands before the running part.
    pub prefix: String,
    /// The running part of the first.
    pub first: String,
    /// The running part of the last.
    pub last: String,
}

/// What is missing from an event, or wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// Still going on.
    Open,
    /// Nothing was caught, which is a result.
    Nothing,
    /// No site.
    Site,
    /// No coordinates.
    Coordinates,
    /// The radius, metres, is above the limit, metres.
    Radius(f64, f64),
    /// No day.
    Caught,
    /// No method.
    Method,
    /// No host; asked where the method says that there is one.
    Host,
    /// No collector.
    Collector,
    /// No elevation.
    Elevation,
    /// Neither a container nor "nothing caught".
    Catch,
    /// So many containers without a number.
    Unnumbered(usize),
    /// A number that stands twice where that is a fault.
    Twice(String),
    /// Fields in which two people's values stand.
    Conflicts(usize),
}

impl Mark {
    /// True for what counts as missing.
    pub fn is_missing(&self) -> bool {
        !matches!(self, Self::Open | Self::Nothing | Self::Twice(_) | Self::Conflicts(_))
    }
}

/// One event in a list.
#[derive(Clone, Debug, PartialEq)]
pub struct EventLine {
    /// The record.
    pub id: Id,
    /// Its day, where known.
    pub day: Option<Day>,
    /// Its hour, `14:32`; empty when not known.
    pub clock: String,
    /// Its number in the order of the day, from 1.
    pub order: usize,
    /// The site's name, or the station, or empty.
    pub site: String,
    /// Numbers of its containers.
    pub numbers: Vec<Span>,
    /// Containers without a number.
    pub unnumbered: usize,
    /// Containers in all.
    pub containers: usize,
    /// Method.
    pub method: Option<Method>,
    /// Host.
    pub host: Option<Host>,
    /// Names of the collectors.
    pub collectors: Vec<String>,
    /// What is missing or to be known.
    pub marks: Vec<Mark>,
}

/// Counts over a day or a selection.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Events.
    pub events: usize,
    /// Containers.
    pub containers: usize,
    /// Things missing.
    pub missing: usize,
    /// Numbers twice where that is a fault.
    pub twice: usize,
}

/// What a container will be numbered next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Next {
    /// This number.
    Number(Plate),
    /// None is proposed: engraved vials, or no numbers at all.
    None,
    /// The range of this device is used up.
    RangeFull,
    /// How to number has not been said yet.
    Unasked,
}

/// An event still going on.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenLine {
    /// The event, or the trap.
    pub id: Id,
    /// The site's name.
    pub site: String,
    /// What it is.
    pub what: OpenKind,
    /// Its method, a code.
    pub method: String,
    /// Since when, local: day and `21:05`.
    pub since: Option<(Day, String)>,
    /// Minutes since then; 0 when the clock has gone back.
    pub minutes: i64,
    /// Containers so far.
    pub containers: usize,
    /// Minutes after noon of the evening's day at which each container was filled, as far as known.
    pub filled: Vec<f64>,
    /// Minutes after that noon at which it began, and now.
    pub span: (f64, f64),
}

/// What is still going on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenKind {
    /// A lamp that burns.
    Lamp,
    /// Traps out: how many, in how many days due (negative for overdue), if a day was set.
    Traps(u32, Option<i64>),
    /// Anything else left open.
    Other,
}

/// The start screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Start {
    /// Today.
    pub today: Day,
    /// True when nothing was ever logged here.
    pub empty: bool,
    /// Events in the book.
    pub events: usize,
    /// Events that exist only on this device.
    pub only_here: usize,
    /// The next number.
    pub next: Next,
    /// Blocks that were found damaged and set aside.
    pub aside: u32,
}

/// What goes on today.
#[derive(Clone, Debug, PartialEq)]
pub struct Today {
    /// What is open.
    pub open: Vec<OpenLine>,
    /// Today's counts.
    pub tally: Tally,
    /// Today's events, newest first, at most three.
    pub newest: Vec<EventLine>,
}

/// One column of a chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bar<T> {
    /// Of what.
    pub of: T,
    /// How many.
    pub count: usize,
}

/// A day.
#[derive(Clone, Debug, PartialEq)]
pub struct DayView {
    /// The day.
    pub day: Day,
    /// The day before it that has events.
    pub before: Option<Day>,
    /// The day after it that has events.
    pub after: Option<Day>,
    /// Counts.
    pub tally: Tally,
    /// Events in order.
    pub events: Vec<EventLine>,
    /// Events by method code or words.
    pub by_method: Vec<Bar<Method>>,
    /// Containers by host; `None` for no host given.
    pub by_host: Vec<Bar<Option<String>>>,
    /// Where they lie; `None` when no event has coordinates.
    pub map: Option<Arc<DayMap>>,
    /// Orders of the events without coordinates.
    pub without_place: Vec<usize>,
}

/// Everything about one event, for reading.
#[derive(Clone, Debug, PartialEq)]
pub struct EventView {
    /// The line as in lists.
    pub line: EventLine,
    /// The facts of the event.
    pub facts: Facts,
    /// Its containers.
    pub containers: Vec<ContainerView>,
    /// Fields in conflict, by name.
    pub conflicts: Vec<String>,
    /// When it was entered first, as that device's clock said.
    pub entered: String,
    /// True when it was deleted.
    pub deleted: bool,
}

/// The words and numbers of an event, formatted where one rule formats them everywhere.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Facts {
    /// The site's record.
    pub site: Option<Id>,
    /// The site's name.
    pub site_name: String,
    /// Country.
    pub country: String,
    /// Province.
    pub province: String,
    /// Locality.
    pub locality: String,
    /// Offset.
    pub offset: String,
    /// Latitude and longitude with honest digits: `47.6138° N`, `12.3043° E`; empty without a position.
    pub coordinates: Option<(String, String)>,
    /// Metres to print after ±; `None` when no radius is known.
    pub radius: Option<String>,
    /// How the position was got.
    pub place_how: String,
    /// Number of fixes and seconds, for a position of the device.
    pub place_fixes: Option<(u32, u32)>,
    /// Elevation that may stand on a label, metres.
    pub elevation: Option<String>,
    /// How the device's radius is read: of a hundred fixes so many lie within it, and 95 within so many metres.
    pub radius_reading: Option<(u8, Option<u64>)>,
    /// The datum of the coordinates; empty for WGS84.
    pub datum: String,
    /// The device's raw altitude, metres, where nobody has confirmed it.
    pub altitude_raw: Option<String>,
    /// Time of catch: from and until as far as known.
    pub from: Option<crate::moment::Known>,
    /// Until.
    pub until: Option<crate::moment::Known>,
    /// A night.
    pub night: bool,
    /// Method.
    pub method: Option<Method>,
    /// Host.
    pub host: Option<Host>,
    /// Names of the collectors.
    pub collectors: Vec<String>,
    /// Station.
    pub station: String,
    /// Weather.
    pub weather: String,
    /// The permit's number.
    pub permit: String,
    /// Notes.
    pub notes: String,
    /// Height above ground, metres.
    pub height: String,
    /// Microhabitat.
    pub microhabitat: String,
    /// Rows that a person marked as unknown.
    pub unknown: Vec<crate::form::Row>,
}

/// One line of contents for reading.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ContentView {
    /// The group as typed.
    pub group: String,
    /// Sex code.
    pub sex: String,
    /// Stage code.
    pub stage: String,
    /// Kind of count.
    pub count_kind: String,
    /// The count.
    pub count: Option<u32>,
}

/// One container for reading.
#[derive(Clone, Debug, PartialEq)]
pub struct ContainerView {
    /// The record.
    pub id: Id,
    /// Its event.
    pub event: Option<Id>,
    /// Its plate.
    pub plate: Plate,
    /// Contents in order.
    pub contents: Vec<ContentView>,
    /// Killed with.
    pub killed: Option<record::container::Fluid>,
    /// Kept in.
    pub kept: Option<record::container::Fluid>,
    /// Kept alive.
    pub alive: bool,
    /// Observed and released.
    pub released: bool,
    /// Its own collector.
    pub collector: Option<String>,
    /// Its own host.
    pub host: Option<Host>,
    /// Its own hour.
    pub clock: Option<String>,
    /// Links: relation and the other's plate.
    pub links: Vec<(String, Plate)>,
    /// Notes.
    pub notes: String,
    /// Its number stands twice where that is a fault.
    pub twice: bool,
    /// When it was emptied.
    pub emptied: Option<String>,
}
