//! What one value of a field says, as data for the page.

use crate::book::Logbook;
use crate::moment::Known;
use crate::numbers::plate_of;
use crate::view::{ContentView, Plate};
use record::container::{Content, Fluid, Link, Number};
use record::event::{Collector, Elevation, Host, Method, Place, When};
use record::{Id, Kind, permit, person, site};
use serde::de::DeserializeOwned;
use serde_json::Value;

/// What one value says.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// Nothing: the field was emptied.
    Empty,
    /// It was marked as unknown.
    Unknown,
    /// The record was deleted.
    Deleted,
    /// These fields were written, without seeing that the record was deleted.
    Edited(Vec<String>),
    /// Words or figures as typed.
    Text(String),
    /// Yes or no.
    Flag(bool),
    /// A position: latitude, longitude, and the metres after ±.
    Place(String, String, Option<String>),
    /// A time of catch: from, until, and whether it is a night.
    When(Option<Known>, Option<Known>, bool),
    /// Metres above the sea.
    Elevation(String),
    /// A method.
    Method(Method),
    /// A host.
    Host(Host),
    /// A fluid.
    Fluid(Fluid),
    /// A number.
    Number(Plate),
    /// A line of contents.
    Content(ContentView),
    /// A link: the relation's code and the other's number.
    Link(String, Plate),
    /// A person, site or permit by name.
    Name(String),
    /// Lines of a label.
    Lines(Vec<String>),
    /// Something that this version cannot read, as it is stored.
    Stored(String),
}

impl Logbook {
    /// What a value of a field says.
    pub fn said(&self, kind: &Kind, field: &str, value: &Value) -> Said {
        match value {
            Value::Null if field == "deleted" => Said::Flag(false),
            Value::Null => Said::Empty,
            Value::Bool(true) if field == "deleted" => Said::Deleted,
            Value::Bool(flag) => Said::Flag(*flag),
            Value::Object(members) if members.len() == 1 && members.get("unknown") == Some(&Value::Bool(true)) => {
                Said::Unknown
            }
            _ => self.typed(kind, field, value).unwrap_or_else(|| plain(value)),
        }
    }

    fn typed(&self, kind: &Kind, field: &str, value: &Value) -> Option<Said> {
        let list = field.split(':').next().unwrap_or_default();
        match list {
            "place" => read(value).map(|place: Place| {
                let written = crate::places::written(&place);
                Said::Place(written.coordinates.0, written.coordinates.1, written.radius)
            }),
            "caught" | "out" => read(value).map(|when: When| {
                Said::When(Known::read(&when.from), when.until.as_deref().and_then(Known::read), when.night)
            }),
            "elevation" => read(value).map(|elevation: Elevation| {
                Said::Elevation(elevation.typed.unwrap_or_else(|| format!("{:.0}", elevation.metres)))
            }),
            "method" => read(value).map(Said::Method),
            "host" => read(value).map(Said::Host),
            "killed" | "kept" => read(value).map(Said::Fluid),
            "number" if *kind == Kind::Container => {
                read(value).map(|number: Number| Said::Number(plate_of("vial", &number.text)))
            }
            "content" => read(value).map(|content: Content| Said::Content(content_view(content))),
            "collector" if field != list => read(value).and_then(|collector: Collector| self.named(collector.person)),
            "link" => {
                read(value).and_then(|link: Link| Some(Said::Link(link.relation, self.plate(&self.record(link.to)?))))
            }
            _ => read(value).and_then(|id: Id| self.named(id)),
        }
    }

    /// A person, site or permit by name, a container by its number.
    fn named(&self, id: Id) -> Option<Said> {
        let record = self.record(id)?;
        match record.kind {
            Kind::Person => record.get(&person::NAME).map(Said::Name),
            Kind::Site => record.get(&site::NAME).map(Said::Name),
            Kind::Permit => record.get(&permit::NUMBER).map(Said::Name),
            Kind::Container => Some(Said::Number(self.plate(&record))),
            _ => None,
        }
    }
}

fn content_view(content: Content) -> ContentView {
    ContentView {
        group: content.group,
        sex: content.sex,
        stage: content.stage,
        count_kind: content.count_kind,
        count: content.count,
    }
}

fn read<T: DeserializeOwned>(value: &Value) -> Option<T> {
    T::deserialize(value).ok()
}

/// Words, figures or lines; anything else as it is stored.
fn plain(value: &Value) -> Said {
    match value {
        Value::String(text) => Said::Text(text.clone()),
        Value::Number(number) => Said::Text(number.to_string()),
        Value::Array(lines) if lines.iter().all(Value::is_string) => {
            Said::Lines(lines.iter().filter_map(Value::as_str).map(str::to_owned).collect())
        }
        other => Said::Stored(other.to_string()),
    }
}
