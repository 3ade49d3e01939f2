//! What is being typed: strings as typed, never half-built values. A form is the draft that survives the phone, and an
//! update of the app: what an older version did not ask for is as in a fresh form.

use crate::kept::{Kept, codes, forms};
use record::Id;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// The rows of a catch that a person may mark as unknown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Row {
    /// The position.
    Place,
    /// The time of catch.
    Caught,
    /// Until when.
    Until,
    /// The method.
    Method,
    /// The host.
    Host,
    /// The weather.
    Weather,
    /// The elevation.
    Elevation,
}

/// Where the position of a form comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Source {
    /// The device, still allowed to improve.
    Here,
    /// The device, kept as it was at some moment.
    Kept,
    /// Typed by a person.
    Typed,
    /// The site's own point, taken by a person.
    Site,
    /// Nothing yet, or detached because time or place was changed.
    #[default]
    None,
}

codes!(Row, Source);

/// What had been seen of each record when a form was opened: session names and their numbers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shown(pub BTreeMap<Id, BTreeMap<String, u32>>);

impl Kept for Shown {
    fn keep(&self) -> Value {
        self.0.keep()
    }

    fn of(kept: &Value) -> Option<Self> {
        Kept::of(kept).map(Self)
    }
}

forms! {
    /// The position row.
    pub struct PlaceForm {
        /// Where it comes from.
        pub source: Source,
        /// As typed, in any notation.
        pub typed: String,
        /// The datum as typed; empty for WGS84.
        pub datum: String,
        /// Degrees north, once there is a position.
        pub latitude: Option<f64>,
        /// Degrees east.
        pub longitude: Option<f64>,
        /// Radius in metres as typed or as the device gave it.
        pub radius: String,
        /// Number of fixes combined.
        pub fixes: u32,
        /// Over how many seconds.
        pub seconds: u32,
        /// Altitude as the device gave it, metres.
        pub altitude_m: Option<f64>,
        /// Its accuracy.
        pub altitude_accuracy_m: Option<f64>,
        /// The radius of the first fix and of one in between, for the drawing.
        pub radii: Vec<f64>,
    }

    /// The time of catch.
    pub struct CaughtForm {
        /// Caught now: follows the clock until the save. Choosing another time turns it off.
        pub now: bool,
        /// The day, `2027-06-19`; empty when not known.
        pub day: String,
        /// The hour, `14:32`; empty when not known.
        pub clock: String,
        /// Until which day; empty for the same.
        pub until_day: String,
        /// Until which hour; empty when not said.
        pub until_clock: String,
        /// The night of that day.
        pub night: bool,
    }

    /// The host row.
    pub struct HostForm {
        /// The relation's code.
        pub relation: String,
        /// The thing as typed.
        pub thing: String,
        /// What it is, a code; empty for not said.
        pub what: String,
        /// Which part.
        pub part: String,
        /// The voucher's number.
        pub voucher: String,
        /// Who named it.
        pub named_by: String,
    }

    /// A fluid, as chosen or typed.
    pub struct FluidForm {
        /// The code; empty for none, `other` for one's own words.
        pub code: String,
        /// One's own words.
        pub text: String,
        /// Strength in per cent.
        pub strength: String,
    }

    /// One line of contents.
    pub struct ContentForm {
        /// The line's id, once saved.
        pub line: Option<Id>,
        /// The group as typed.
        pub group: String,
        /// Its code, where it is one of the list.
        pub group_code: String,
        /// Sex code.
        pub sex: String,
        /// Stage code.
        pub stage: String,
        /// `exact`, `about`, `least`, `uncounted`.
        pub count_kind: String,
        /// The count as typed.
        pub count: String,
    }

    /// A link to another container.
    pub struct LinkForm {
        /// The line's id, once saved.
        pub line: Option<Id>,
        /// The other container's number as typed.
        pub number: String,
        /// The relation's code.
        pub relation: String,
    }

    /// One container, or a span of them that are alike.
    pub struct ContainerForm {
        /// The record, once saved.
        pub id: Option<Id>,
        /// `vial`, `envelope`, `jar`, `bag`.
        pub vessel: String,
        /// The number as typed, or the first of a span; empty when it will be numbered later.
        pub first: String,
        /// The last of a span; empty for one.
        pub last: String,
        /// How many without a number, when numbered later.
        pub unnumbered: String,
        /// Killed with.
        pub killed: FluidForm,
        /// Kept in.
        pub kept: FluidForm,
        /// Kept alive, for rearing.
        pub alive: bool,
        /// Observed and released: no container.
        pub released: bool,
        /// Its own collector; empty for the event's.
        pub collector: String,
        /// Its own host; nothing typed for the event's.
        pub host: HostForm,
        /// Its own hour; empty for the event's.
        pub clock: String,
        /// Contents.
        pub contents: Vec<ContentForm>,
        /// Links.
        pub links: Vec<LinkForm>,
        /// Notes.
        pub notes: String,
    }

    /// A collector in the list of a form.
    pub struct CollectorForm {
        /// The name.
        pub name: String,
        /// Whether there.
        pub there: bool,
    }

    /// One catch being typed: an event and its containers.
    pub struct CatchForm {
        /// The event's record, when a saved one is being changed.
        pub event: Option<Id>,
        /// The trap of which this is a service.
        pub trap: Option<Id>,
        /// With this service the trap is taken up for good.
        pub take_up: bool,
        /// The site's name as typed.
        pub site: String,
        /// The site was chosen or typed by a person: a fix no longer changes it.
        pub site_given: bool,
        /// The position.
        pub place: PlaceForm,
        /// The time.
        pub caught: CaughtForm,
        /// The method's code.
        pub method: String,
        /// The method in one's own words, where no code fits.
        pub method_text: String,
        /// Particulars by code as typed.
        pub particulars: BTreeMap<String, String>,
        /// The host.
        pub host: HostForm,
        /// Collectors, those of last time ticked.
        pub collectors: Vec<CollectorForm>,
        /// The name of one more collector being typed.
        pub collector_more: String,
        /// Weather.
        pub weather: String,
        /// The permit's number, empty for none.
        pub permit: String,
        /// Notes.
        pub notes: String,
        /// Elevation in metres as typed.
        pub elevation: String,
        /// The device's altitude was looked at and taken as the elevation.
        pub elevation_confirmed: bool,
        /// What the altitude was counted from when it was taken, a code.
        pub elevation_zero: String,
        /// Height above ground in metres as typed.
        pub height: String,
        /// Microhabitat.
        pub microhabitat: String,
        /// The event's own number.
        pub station: String,
        /// Rows marked as unknown.
        pub unknown: BTreeSet<Row>,
        /// Containers.
        pub containers: Vec<ContainerForm>,
        /// Nothing was caught.
        pub nothing: bool,
        /// Stays open: the lamp burns on, the trap stays out.
        pub open: bool,
        /// The form as it was opened from a saved event: only what differs from it is written.
        pub base: Option<Box<CatchForm>>,
        /// What had been seen of each record when the form was opened.
        pub shown: Shown,
    }

    /// A site being typed.
    pub struct SiteForm {
        /// The record, when a saved one is being changed.
        pub id: Option<Id>,
        /// Its name.
        pub name: String,
        /// Country.
        pub country: String,
        /// Province.
        pub province: String,
        /// Locality in words.
        pub locality: String,
        /// Offset from a named place.
        pub offset: String,
        /// Habitat.
        pub habitat: String,
        /// Its point.
        pub place: PlaceForm,
        /// The form as it was opened from a saved site.
        pub base: Option<Box<SiteForm>>,
        /// What had been seen of the record then.
        pub shown: Shown,
    }
}

impl HostForm {
    /// True when nothing of it was said.
    pub fn is_empty(&self) -> bool {
        self.thing.trim().is_empty()
    }
}

impl FluidForm {
    /// True when nothing was chosen or typed.
    pub fn is_empty(&self) -> bool {
        self.code.is_empty() && self.text.trim().is_empty()
    }
}

impl PlaceForm {
    /// The position, when there is one.
    pub fn coordinates(&self) -> Option<(f64, f64)> {
        Some((self.latitude?, self.longitude?))
    }
}
