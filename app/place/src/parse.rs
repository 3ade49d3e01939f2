//! Coordinates as people write them.
//!
//! In goes a text in any usual notation, out come the readings that it allows and what is wrong or unclear about it.
//! Half-right input keeps its best reading. The text is never corrected: it is kept as it was. Nothing is chosen
//! among several readings, and no sentence is made.
//!
//! Understood are decimal degrees, degrees and minutes, degrees, minutes and seconds with signs or letters on either
//! side, every usual mark, decimal points and commas; strings of ISO 6709; `geo:` URIs; UTM and MGRS; each with a
//! stated radius behind `±`.

mod axes;
mod grids;
mod groups;
mod signs;
mod tokens;
mod uris;

use crate::distance::distance;
use crate::position::Position;
use crate::uncertainty::precision;
use units::{Degrees, Latitude, Longitude, Metres};

/// In which notation something was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Notation {
    /// Degrees with decimals.
    Decimal,
    /// Degrees and minutes.
    Minutes,
    /// Degrees, minutes and seconds.
    Seconds,
    /// A string of ISO 6709.
    Iso6709,
    /// A `geo:` URI.
    GeoUri,
    /// UTM.
    Utm,
    /// MGRS.
    Mgrs,
}

/// One way to understand a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Degrees north.
    pub latitude: Latitude,
    /// Degrees east.
    pub longitude: Longitude,
    /// The size of the last digit written, the coarser of the two; `None` for grid references.
    pub step: Option<Degrees>,
    /// The radius as stated, or what the digits written allow.
    pub radius: Metres,
    /// True when the radius was stated.
    pub stated: bool,
    /// How it was written.
    pub notation: Notation,
}

/// What is wrong or unclear.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// There are no coordinates in it.
    Nothing,
    /// Only one of the two coordinates is there.
    OneNumber,
    /// More numbers than two coordinates have.
    TooManyNumbers,
    /// A latitude of so many degrees, beyond the pole.
    LatitudeRange(f64),
    /// A longitude of so many degrees, beyond half a turn.
    LongitudeRange(f64),
    /// So many minutes, 60 or more.
    Minutes(f64),
    /// So many seconds, 60 or more.
    Seconds(f64),
    /// A fraction stands before a smaller unit: 46.5° 30′.
    FractionBefore,
    /// Sign and letter disagree: −46 N.
    SignAndLetter,
    /// Latitude and longitude may stand in either order.
    Order,
    /// They make sense only, or lie near the other events only, in the other order.
    Swapped,
    /// The other events of the day lie near with the other sign.
    Sign,
    /// The previous event lies so many metres away.
    Far(f64),
    /// Both are zero: more often a device's mistake than a place.
    ZeroZero,
    /// `O` is east in some languages and west in others.
    LetterO,
    /// A comma may part two whole numbers or be a decimal comma.
    Comma,
    /// The letter of the zone may be a hemisphere or a band, or does not fit the northing.
    ZoneLetter(char),
    /// The zone has no letter, and the northing may count in either hemisphere.
    ZoneHemisphere,
    /// No such zone, square or place on its plane.
    Grid,
    /// A string like those of ISO 6709 with other numbers of digits.
    Iso6709Digits,
    /// A string of ISO 6709 without the solidus at its end.
    Iso6709End,
    /// Another datum than WGS84, as written: the numbers were read as they are and not converted.
    Datum(String),
    /// A height of so many metres came with it.
    Height(f64),
    /// These words were not understood.
    NotUnderstood(String),
}

impl Problem {
    /// A stable code.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::OneNumber => "one_number",
            Self::TooManyNumbers => "too_many_numbers",
            Self::LatitudeRange(_) => "latitude_range",
            Self::LongitudeRange(_) => "longitude_range",
            Self::Minutes(_) => "minutes",
            Self::Seconds(_) => "seconds",
            Self::FractionBefore => "fraction_before",
            Self::SignAndLetter => "sign_and_letter",
            Self::Order => "order",
            Self::Swapped => "swapped",
            Self::Sign => "sign",
            Self::Far(_) => "far",
            Self::ZeroZero => "zero_zero",
            Self::LetterO => "letter_o",
            Self::Comma => "comma",
            Self::ZoneLetter(_) => "zone_letter",
            Self::ZoneHemisphere => "zone_hemisphere",
            Self::Grid => "grid",
            Self::Iso6709Digits => "iso6709_digits",
            Self::Iso6709End => "iso6709_end",
            Self::Datum(_) => "datum",
            Self::Height(_) => "height",
            Self::NotUnderstood(_) => "not_understood",
        }
    }
}

/// What was understood of a text.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Understood {
    /// The text as it was.
    pub text: String,
    /// The readings it allows, the most usual first; none: refused; several: a person picks.
    pub readings: Vec<Reading>,
    /// What is wrong or unclear.
    pub problems: Vec<Problem>,
}

impl Understood {
    /// The reading, when there is only one.
    pub fn only(&self) -> Option<&Reading> {
        match self.readings.as_slice() {
            [one] => Some(one),
            _ => None,
        }
    }
}

impl Reading {
    /// The position with its radius.
    pub fn position(&self) -> Position {
        Position { latitude: self.latitude, longitude: self.longitude, radius: Some(self.radius) }
    }
}

/// Reads coordinates.
pub fn parse(text: &str) -> Understood {
    let mut work = Work { understood: Understood { text: text.to_owned(), ..Understood::default() }, stated: None };
    let plain = signs::plain(text);
    let plain = work.without_datum(plain);
    let plain = work.without_radius(plain);
    let done = uris::geo(&mut work, &plain)
        || uris::iso6709(&mut work, &plain)
        || grids::mgrs(&mut work, &plain)
        || grids::utm(&mut work, &plain);
    if !done {
        axes::read(&mut work, &plain);
    }
    work.finished()
}

/// What is odd about a position beside one that is known, such as the previous event's: further than 1,000 km away;
/// and, when it is, within 100 km once latitude and longitude or a sign are exchanged.
pub fn beside(position: Position, known: Position) -> Vec<Problem> {
    const FAR_M: f64 = 1_000_000.0;
    const NEAR_M: f64 = 100_000.0;
    let away_m = distance(position, known).metres();
    if away_m < FAR_M {
        return Vec::new();
    }
    let (latitude, longitude) = (position.latitude.degrees(), position.longitude.degrees());
    let near = |latitude: f64, longitude: f64| {
        Position::new(latitude, longitude, None).is_some_and(|other| distance(other, known).metres() < NEAR_M)
    };
    let mut problems = vec![Problem::Far(away_m)];
    if near(longitude, latitude) {
        problems.push(Problem::Swapped);
    }
    if near(-latitude, longitude) || near(latitude, -longitude) || near(-latitude, -longitude) {
        problems.push(Problem::Sign);
    }
    problems
}

/// A text being read.
struct Work {
    understood: Understood,
    /// The radius that was stated.
    stated: Option<Metres>,
}

impl Work {
    fn problem(&mut self, problem: Problem) {
        if !self.understood.problems.contains(&problem) {
            self.understood.problems.push(problem);
        }
    }

    fn words_left(&mut self, words: &str) {
        if words.chars().any(char::is_alphanumeric) {
            self.problem(Problem::NotUnderstood(words.trim().to_owned()));
        }
    }

    /// Adds a reading of degrees with the sizes of their last digits.
    fn reading(&mut self, latitude: (Latitude, Degrees), longitude: (Longitude, Degrees), notation: Notation) {
        let radius = precision(latitude.0, latitude.1, longitude.1);
        let step = if latitude.1 > longitude.1 { latitude.1 } else { longitude.1 };
        self.add(latitude.0, longitude.0, Some(step), radius, notation);
    }

    /// Adds a reading of a grid reference with the radius of its cell.
    fn grid_reading(&mut self, position: Position, radius: Metres, notation: Notation) {
        self.add(position.latitude, position.longitude, None, radius, notation);
    }

    fn add(
        &mut self,
        latitude: Latitude,
        longitude: Longitude,
        step: Option<Degrees>,
        radius: Metres,
        notation: Notation,
    ) {
        let stated = self.stated.is_some();
        let radius = self.stated.unwrap_or(radius);
        let reading = Reading { latitude, longitude, step, radius, stated, notation };
        if latitude.degrees() == 0.0 && longitude.degrees() == 0.0 {
            self.problem(Problem::ZeroZero);
        }
        if !self.understood.readings.contains(&reading) {
            self.understood.readings.push(reading);
        }
    }

    /// Takes the name of a datum out of the text.
    fn without_datum(&mut self, text: String) -> String {
        let Some((start, end, wgs84)) = signs::datum(&text) else { return text };
        if !wgs84 {
            self.problem(Problem::Datum(text[start..end].to_owned()));
        }
        let brackets = |sign: char| "()[]{} ".contains(sign);
        format!("{} {}", text[..start].trim_end_matches(brackets), text[end..].trim_start_matches(brackets))
    }

    /// Takes a stated radius out of the text.
    fn without_radius(&mut self, text: String) -> String {
        let Some((before, radius, after)) = signs::stated_radius(&text) else { return text };
        self.stated = Some(radius);
        format!("{before} {after}")
    }

    fn finished(mut self) -> Understood {
        if self.understood.readings.is_empty() && self.understood.problems.is_empty() {
            self.problem(Problem::Nothing);
        }
        self.understood
    }
}

#[cfg(test)]
mod round_trips;
#[cfg(test)]
mod tests;
