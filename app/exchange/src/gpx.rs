//! Tracks of GPX 1.0 and 1.1.
//!
//! In go the bytes of a file, piece by piece; out come its tracks with their segments and points, and what is wrong
//! with it, line by line. A point that cannot be read is passed over, a file that breaks off gives what stood before.
//! Waypoints, routes and extensions are left alone, and so is which faults matter.
//!
//! **Source**: GPX 1.1 schema, <http://www.topografix.com/GPX/1/1>; what is read here is the same in 1.0.

use crate::date_time;
use crate::lines::Lines;
use place::Position;
use place::instant::Instant;
use place::track::Fix;
use quick_xml::errors::SyntaxError;
use quick_xml::events::{BytesStart, Event};
use quick_xml::{Error, Reader};
use std::io::BufRead;
use units::Metres;

/// Most bytes of a text that are looked at: no name, time or number needs more.
const TEXT_MOST: usize = 1_000;

/// What was read of a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Gpx {
    /// The tracks, in order.
    pub tracks: Vec<Track>,
    /// What is wrong, in order.
    pub faults: Vec<Fault>,
}

/// One track.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Track {
    /// Its name, where it has one.
    pub name: Option<String>,
    /// Its segments: between two of them nothing was recorded.
    pub segments: Vec<Vec<Point>>,
}

/// One point of a track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Where; the format has no radius.
    pub position: Position,
    /// When, where it says so.
    pub at: Option<Instant>,
    /// The height as written; what it is above is not said in the file.
    pub elevation: Option<Metres>,
    /// The horizontal dilution of precision, where it is given.
    pub dilution: Option<f64>,
}

/// Something wrong in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line, from 1.
    pub line: u64,
    /// What it is.
    pub reason: Reason,
}

/// What may be wrong. A value is given as written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// It is not a GPX file.
    NotGpx,
    /// It is no well-formed XML from here on.
    Xml,
    /// It is not written in UTF-8 from here on.
    Encoding,
    /// It ends before it is finished.
    CutOff,
    /// It could not be read any further.
    Unread,
    /// A point without a latitude, or with one that is none; passed over.
    Latitude(String),
    /// A point without a longitude, or with one that is none; passed over.
    Longitude(String),
    /// A time that is none; the point has no time then.
    Time(String),
    /// A height that is none; the point has no height then.
    Elevation(String),
}

impl Reason {
    /// A stable code.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotGpx => "not_gpx",
            Self::Xml => "xml",
            Self::Encoding => "encoding",
            Self::CutOff => "cut_off",
            Self::Unread => "unread",
            Self::Latitude(_) => "latitude",
            Self::Longitude(_) => "longitude",
            Self::Time(_) => "time",
            Self::Elevation(_) => "elevation",
        }
    }

    /// Whether the rest of the file could not be read.
    pub fn ends(&self) -> bool {
        matches!(self, Self::NotGpx | Self::Xml | Self::Encoding | Self::CutOff | Self::Unread)
    }
}

impl Gpx {
    /// All points with a time, as fixes.
    pub fn fixes(&self) -> Vec<Fix> {
        let points = self.tracks.iter().flat_map(|track| &track.segments).flatten();
        points.filter_map(|point| Some(Fix { position: point.position, at: point.at? })).collect()
    }
}

/// Reads the tracks of a file.
pub fn read(source: impl BufRead) -> Gpx {
    let mut reader = Reader::from_reader(Lines::new(source));
    let mut work = Work::default();
    let mut buffer = Vec::new();
    loop {
        let line = reader.get_ref().line();
        buffer.clear();
        match reader.read_event_into(&mut buffer) {
            Ok(Event::Eof) => {
                if !work.open.is_empty() {
                    work.fault(line, Reason::CutOff);
                } else if !work.begun {
                    work.fault(line, Reason::NotGpx);
                }
                break;
            }
            Ok(event) => work.event(event, line),
            Err(error) => {
                work.fault(line, reason(&error));
                break;
            }
        }
        if work.ended() {
            break;
        }
    }
    work.gpx
}

fn reason(error: &Error) -> Reason {
    match error {
        Error::Io(_) => Reason::Unread,
        Error::Encoding(_) => Reason::Encoding,
        // What is begun and not ended at the end of the file was cut off; only this one is seen at once.
        Error::Syntax(SyntaxError::InvalidBangMarkup) => Reason::Xml,
        Error::Syntax(_) => Reason::CutOff,
        _ => Reason::Xml,
    }
}

/// The elements that matter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Tag {
    Gpx,
    Track,
    Segment,
    Point,
    Name,
    Time,
    Elevation,
    Dilution,
    Other,
}

/// A file being read.
#[derive(Default)]
struct Work {
    gpx: Gpx,
    /// The elements that are open, outermost first.
    open: Vec<Tag>,
    /// Whether the outermost element was there.
    begun: bool,
    /// The point being read; `None` where it is passed over.
    point: Option<Point>,
    /// The text of the innermost element.
    text: String,
}

impl Work {
    fn fault(&mut self, line: u64, reason: Reason) {
        self.gpx.faults.push(Fault { line, reason });
    }

    fn ended(&self) -> bool {
        self.gpx.faults.last().is_some_and(|fault| fault.reason.ends())
    }

    fn event(&mut self, event: Event, line: u64) {
        match event {
            Event::Start(start) => self.start(&start, line),
            Event::Empty(start) => {
                self.start(&start, line);
                self.end(line);
            }
            Event::End(_) => self.end(line),
            Event::Text(text) => self.add(&text.xml10_content()),
            Event::CData(text) => self.add(&text.xml10_content()),
            Event::GeneralRef(reference) => match reference.resolve_char_ref() {
                Ok(Some(sign)) => self.add(sign.encode_utf8(&mut [0; 4])),
                Ok(None) => self.add(quick_xml::escape::resolve_xml_entity(&reference).unwrap_or("")),
                Err(_) => self.fault(line, Reason::Xml),
            },
            Event::Comment(_) | Event::Decl(_) | Event::PI(_) | Event::DocType(_) | Event::Eof => {}
        }
    }

    fn add(&mut self, text: &str) {
        let kept = matches!(self.open.last(), Some(Tag::Name | Tag::Time | Tag::Elevation | Tag::Dilution));
        if kept && self.text.len() < TEXT_MOST {
            self.text.extend(text.chars().take(TEXT_MOST));
        }
    }

    fn start(&mut self, start: &BytesStart, line: u64) {
        let tag = self.tag(start.local_name().as_ref());
        if self.open.is_empty() {
            if tag != Tag::Gpx || self.begun {
                return self.fault(line, Reason::NotGpx);
            }
            self.begun = true;
        }
        self.open.push(tag);
        self.text.clear();
        match tag {
            Tag::Track => self.gpx.tracks.push(Track::default()),
            Tag::Segment => self.track(|track| track.segments.push(Vec::new())),
            Tag::Point => self.point = self.placed(start, line),
            _ => {}
        }
    }

    /// What an element is, by its name and the one that it stands in.
    fn tag(&self, name: &str) -> Tag {
        match (self.open.last(), name) {
            (None, "gpx") => Tag::Gpx,
            (Some(Tag::Gpx), "trk") => Tag::Track,
            (Some(Tag::Track), "trkseg") => Tag::Segment,
            (Some(Tag::Track), "name") => Tag::Name,
            (Some(Tag::Segment), "trkpt") => Tag::Point,
            (Some(Tag::Point), "time") => Tag::Time,
            (Some(Tag::Point), "ele") => Tag::Elevation,
            (Some(Tag::Point), "hdop") => Tag::Dilution,
            _ => Tag::Other,
        }
    }

    fn track(&mut self, change: impl FnOnce(&mut Track)) {
        // A segment, name or point stands inside a track, which was put there when it began.
        change(self.gpx.tracks.last_mut().expect("the track has begun"));
    }

    /// A point by its attributes.
    fn placed(&mut self, start: &BytesStart, line: u64) -> Option<Point> {
        let value = |name: &str| {
            let found = start.attributes().filter_map(Result::ok).find(|attribute| attribute.key.as_ref() == name);
            found.map_or(String::new(), |attribute| attribute.value.chars().take(TEXT_MOST).collect())
        };
        let (latitude, longitude) = (value("lat"), value("lon"));
        let north = decimal(&latitude).filter(|north| north.abs() <= 90.0);
        let east = decimal(&longitude).filter(|east| east.abs() <= 180.0);
        if north.is_none() {
            self.fault(line, Reason::Latitude(latitude));
        }
        if east.is_none() {
            self.fault(line, Reason::Longitude(longitude));
        }
        let position = Position::new(north?, east?, None)?;
        Some(Point { position, at: None, elevation: None, dilution: None })
    }

    fn end(&mut self, line: u64) {
        let text = std::mem::take(&mut self.text);
        match self.open.pop() {
            Some(Tag::Name) => {
                self.track(|track| track.name = Some(text.trim().to_owned()).filter(|name| !name.is_empty()))
            }
            Some(Tag::Time) => self.time(text, line),
            Some(Tag::Elevation) => self.elevation(text, line),
            Some(Tag::Dilution) => {
                if let Some(point) = &mut self.point {
                    point.dilution = decimal(&text).filter(|dilution| *dilution >= 0.0);
                }
            }
            Some(Tag::Point) => {
                if let Some(point) = self.point.take() {
                    self.track(|track| track.segments.last_mut().expect("the segment has begun").push(point));
                }
            }
            _ => {}
        }
    }

    fn time(&mut self, text: String, line: u64) {
        let at = date_time::instant(&text);
        match &mut self.point {
            Some(point) => point.at = at,
            None => return,
        }
        if at.is_none() {
            self.fault(line, Reason::Time(text));
        }
    }

    fn elevation(&mut self, text: String, line: u64) {
        let elevation = decimal(&text).and_then(Metres::new);
        match &mut self.point {
            Some(point) => point.elevation = elevation,
            None => return,
        }
        if elevation.is_none() {
            self.fault(line, Reason::Elevation(text));
        }
    }
}

/// A number of digits with a sign and a point at most; an exponent is not allowed.
///
/// **Source**: XML Schema part 2 (2004), 3.2.3 decimal.
fn decimal(text: &str) -> Option<f64> {
    let text = text.trim();
    let plain = text.bytes().all(|sign| sign.is_ascii_digit() || b"+-.".contains(&sign));
    text.parse::<f64>().ok().filter(|value| plain && value.is_finite())
}

#[cfg(test)]
mod tests;
