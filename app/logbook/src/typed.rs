//! Coordinates as a person types them, read while they are typed.
//!
//! In goes the text, out come the readings that it allows and what is odd about it. Where it can be read in several
//! ways none is chosen: a person picks. The text itself is never changed.

use crate::form::{PlaceForm, Source};
use crate::places::{WrittenPlace, write};
pub use place::parse::{Notation, Problem};

/// One way to understand what was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Degrees north and degrees east.
    pub coordinates: (f64, f64),
    /// As every screen writes it.
    pub written: WrittenPlace,
    /// The radius in metres, as stated or as the digits allow.
    pub radius_m: f64,
    /// How it was written.
    pub notation: Notation,
}

/// What was understood.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    /// The readings; several: a person picks.
    pub readings: Vec<Reading>,
    /// What is wrong or unclear.
    pub problems: Vec<Problem>,
}

/// Reads coordinates as typed.
pub fn read_typed(text: &str) -> Typed {
    let understood = place::parse::parse(text);
    let readings = understood.readings.iter().filter_map(|reading| {
        let coordinates = (reading.latitude.degrees(), reading.longitude.degrees());
        let radius_m = reading.radius.metres();
        let written = write(coordinates.0, coordinates.1, Some(radius_m))?;
        Some(Reading { coordinates, written, radius_m, notation: reading.notation })
    });
    Typed { readings: readings.collect(), problems: understood.problems }
}

impl PlaceForm {
    /// What was typed stands in the form; where it can be read in one way only, so does the position.
    pub fn with_typed(self, typed: &str) -> Self {
        let read = read_typed(typed);
        let only = if let [only] = read.readings.as_slice() { Some(only) } else { None };
        Self { source: Source::Typed, typed: typed.to_owned(), ..Self::default() }.with_reading(only)
    }

    /// One of several readings was picked; or none holds any more.
    pub fn with_reading(self, reading: Option<&Reading>) -> Self {
        Self {
            latitude: reading.map(|reading| reading.coordinates.0),
            longitude: reading.map(|reading| reading.coordinates.1),
            radius: reading.map(|reading| format!("{:.0}", reading.radius_m.ceil())).unwrap_or_default(),
            ..self
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_be_read_in_one_way_stands_in_the_form_with_the_radius_that_its_digits_allow() {
        let form = PlaceForm::default().with_typed("47.6138 N 12.3043 E");
        assert_eq!(form.coordinates(), Some((47.6138, 12.3043)));
        assert_eq!(form.source, Source::Typed);
        assert!(!form.radius.is_empty());
    }

    #[test]
    fn what_cannot_be_read_is_kept_as_typed() {
        let form = PlaceForm::default().with_typed("by the old mill");
        assert_eq!((form.coordinates(), form.typed.as_str()), (None, "by the old mill"));
        assert!(!read_typed("by the old mill").problems.is_empty());
    }

    #[test]
    fn a_new_text_forgets_what_the_one_before_said() {
        let form = PlaceForm::default().with_typed("47.6138 N 12.3043 E").with_typed("47.6138 N 12.3");
        let again = PlaceForm::default().with_typed("47.6138 N 12.3");
        assert_eq!(form, again);
    }
}
