//! Facts as JSON in, the parts of labels out, and what was not understood.

use place::Position;
use place::format::{Notation, height, written};
use serde_json::{Map, Value};
use units::Metres;
use wording::{Day, Host, Parts, Span, looks_latin};

/// The fields that facts may have.
const FIELDS: [&str; 15] = [
    "country",
    "province",
    "locality",
    "latitude",
    "longitude",
    "radius_m",
    "elevation",
    "from",
    "until",
    "night_of",
    "collectors",
    "method",
    "host",
    "emerged",
    "count",
];

/// A field and why it is not on the label.
pub type Problem = (String, String);

/// What is known of one catch.
#[derive(Debug, Default)]
pub struct Facts {
    /// The parts of its labels.
    pub parts: Parts,
    /// How many copies; none where that cannot be said.
    pub count: Option<u32>,
    /// What was not understood.
    pub problems: Vec<Problem>,
}

/// Reads one element of the array.
pub fn facts(value: &Value) -> Facts {
    let empty = Map::new();
    let object = value.as_object().unwrap_or(&empty);
    let mut reader = Reader { object, problems: Vec::new() };
    if !value.is_object() {
        reader.problem("", "facts are an object");
    }
    for name in object.keys().filter(|name| !FIELDS.contains(&name.as_str())) {
        reader.problem(name, "is no field of facts");
    }
    let (coordinates, radius) = reader.place();
    let parts = Parts {
        country: reader.text("country"),
        province: reader.text("province"),
        locality: reader.text("locality"),
        coordinates,
        radius,
        elevation: reader.elevation(),
        caught: reader.caught(),
        emerged: reader.emerged(),
        collectors: reader.collectors(),
        method: reader.text("method"),
        host: reader.host(),
        ..Parts::default()
    };
    let count = if value.is_object() { reader.count() } else { None };
    Facts { parts, count, problems: reader.problems }
}

struct Reader<'v> {
    object: &'v Map<String, Value>,
    problems: Vec<Problem>,
}

impl<'v> Reader<'v> {
    fn problem(&mut self, field: &str, why: &str) {
        self.problems.push((field.to_owned(), why.to_owned()));
    }

    fn get(&self, field: &str) -> Option<&'v Value> {
        self.object.get(field).filter(|value| !value.is_null())
    }

    fn text(&mut self, field: &str) -> String {
        match self.get(field) {
            None => String::new(),
            Some(Value::String(text)) => text.clone(),
            Some(Value::Number(number)) => number.to_string(),
            Some(_) => {
                self.problem(field, "is no text");
                String::new()
            }
        }
    }

    fn number(&mut self, field: &str) -> Option<f64> {
        let value = self.get(field)?;
        let typed = value.as_str().filter(|text| !text.trim().is_empty());
        let number = value.as_f64().or_else(|| typed.and_then(|text| text.trim().parse().ok()));
        let number = number.filter(|number: &f64| number.is_finite());
        if number.is_none() && value.as_str().is_none_or(|text| !text.trim().is_empty()) {
            self.problem(field, "is no number");
        }
        number
    }

    /// Coordinates and what stands after ±, by the one rule of `place`.
    fn place(&mut self) -> (String, String) {
        let (latitude, longitude) = (self.number("latitude"), self.number("longitude"));
        let radius = self.number("radius_m");
        let known = radius.filter(|radius| *radius >= 0.0);
        if radius != known {
            self.problem("radius_m", "is less than nothing");
        }
        let (Some(north), Some(east)) = (latitude, longitude) else {
            if latitude.is_some() != longitude.is_some() {
                let alone = if latitude.is_some() { "latitude" } else { "longitude" };
                self.problem(alone, "stands alone");
            }
            return Default::default();
        };
        let Some(position) = Position::new(north, east, known) else {
            self.problem("latitude", "with this longitude is nowhere on Earth");
            return Default::default();
        };
        let said = written(position, Notation::Decimal);
        let radius = said.plus_minus_m.map(|metres| format!("{metres} m")).unwrap_or_default();
        (format!("{} {}", said.latitude.text(), said.longitude.text()), radius)
    }

    /// A number is metres; a text is as it was typed, with the unit if it has none.
    fn elevation(&mut self) -> String {
        match self.get("elevation") {
            Some(Value::Number(number)) => match number.as_f64().filter(|n| n.abs() < 1e7).and_then(Metres::new) {
                Some(metres) => format!("{} m", height(metres, None).metres),
                None => {
                    self.problem("elevation", "is no height on Earth");
                    String::new()
                }
            },
            _ => {
                let text = self.text("elevation");
                let bare = text.trim().ends_with(|letter: char| letter.is_ascii_digit());
                if bare { format!("{} m", text.trim()) } else { text }
            }
        }
    }

    fn caught(&mut self) -> Option<Span> {
        let night = self.get("night_of").and_then(|value| self.run("night_of", value));
        let from = self.get("from").and_then(|value| self.run("from", value));
        let until = self.get("until").and_then(|value| self.run("until", value)).map(last);
        let mut span = match (night, from, until) {
            (Some(night), _, _) => return Some(Span { night: true, ..night }),
            (None, Some(from), _) => from,
            (None, None, Some(until)) => return Some(Span { from: until, ..Span::default() }),
            (None, None, None) => return None,
        };
        if until.is_some_and(|until| until < span.from) {
            self.problem("until", "is before from");
        } else if until.is_some() {
            span.until = until;
        }
        Some(span)
    }

    fn emerged(&mut self) -> Option<Span> {
        match self.get("emerged")? {
            Value::Object(ends) => {
                let from = ends.get("from").and_then(|value| self.run("emerged", value))?;
                let until = ends.get("until").filter(|until| !until.is_null());
                let until = until.and_then(|value| self.run("emerged", value)).map(last);
                Some(Span { until: until.or(from.until), ..from })
            }
            value => self.run("emerged", value),
        }
    }

    /// A day, a month or a year, or two of them with a slash between, of ISO 8601; hours are left out.
    fn run(&mut self, field: &str, value: &Value) -> Option<Span> {
        let text = value.as_str().map(str::to_owned).or_else(|| value.as_i64().map(|year| year.to_string()));
        if text.as_ref().is_some_and(|text| text.trim().is_empty()) {
            return None;
        }
        let span = text.as_deref().and_then(span);
        if span.is_none() {
            self.problem(field, "is no day of ISO 8601");
        }
        span
    }

    fn collectors(&mut self) -> Vec<String> {
        let Some(Value::Array(list)) = self.get("collectors") else {
            return vec![self.text("collectors")];
        };
        if list.iter().any(|name| !name.is_string() && !name.is_null()) {
            self.problem("collectors", "are not all texts");
        }
        list.iter().filter_map(Value::as_str).map(str::to_owned).collect()
    }

    fn host(&mut self) -> Option<Host> {
        let (relation, thing) = match self.get("host")? {
            Value::Object(host) => {
                let text = |name: &str| host.get(name).and_then(Value::as_str).unwrap_or_default().trim().to_owned();
                if host.values().any(|value| !value.is_string() && !value.is_null()) {
                    self.problem("host", "has relation and thing, both texts");
                }
                (text("relation"), text("thing"))
            }
            _ => (String::new(), self.text("host")),
        };
        if thing.is_empty() && !relation.is_empty() {
            self.problem("host", "has a relation and no thing");
        }
        let latin = looks_latin(&thing);
        Some(Host { relation, thing, latin, part: String::new() }).filter(|host| !host.thing.is_empty())
    }

    fn count(&mut self) -> Option<u32> {
        if self.get("count").is_none() {
            return Some(1);
        }
        let before = self.problems.len();
        let number = self.number("count");
        let whole = number.filter(|number| number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(number));
        if whole.is_none() && self.problems.len() == before {
            self.problem("count", "is no whole number of labels");
        }
        whole.map(|number| number as u32)
    }
}

fn last(span: Span) -> Day {
    span.until.unwrap_or(span.from)
}

fn span(text: &str) -> Option<Span> {
    let mut ends = text.trim().splitn(2, '/');
    let from = day(ends.next()?)?;
    let until = ends.next().map(day);
    match until {
        None => Some(Span { from, ..Span::default() }),
        Some(Some(until)) if until >= from => Some(Span { from, until: Some(until), night: false }),
        Some(_) => None,
    }
}

fn day(text: &str) -> Option<Day> {
    let date = text.trim().split(['T', ' ']).next()?;
    let mut numbers = date.split('-');
    let year = numbers.next().filter(|year| year.len() == 4)?.parse().ok()?;
    let mut small = || numbers.next().map(|number| number.parse::<u8>().ok());
    let day = match (small(), small(), small()) {
        (None, _, _) => Day { year, month: None, day: None },
        (Some(month), None, _) => Day { year, month: Some(month?), day: None },
        (Some(month), Some(of_month), None) => Day::new(year, month?, of_month?),
        _ => return None,
    };
    day.exists().then_some(day)
}
