//! Coordinates as a person types them, read while they are typed.
//!
//! In goes the text, out come the readings that it allows and what is odd about it. Where it can be read in several
//! ways none is chosen: a person picks. The text itself is never changed.

use crate::form::{PlaceForm, Source};
use crate::places::{WrittenPlace, write};
pub use place::datum::Reading as Datum;
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
        let typed = typed.to_owned();
        Self { source: Source::Typed, typed, datum: self.datum, ..Self::default() }.with_reading(only)
    }

    /// The datum stands in the form, as typed; nothing is converted, and the radius grows by what is published for it.
    pub fn with_datum(self, datum: &str) -> Self {
        let typed = self.typed.clone();
        Self { datum: datum.to_owned(), ..self }.with_typed(&typed)
    }

    /// One of several readings was picked; or none holds any more.
    pub fn with_reading(self, reading: Option<&Reading>) -> Self {
        Self {
            latitude: reading.map(|reading| reading.coordinates.0),
            longitude: reading.map(|reading| reading.coordinates.1),
            radius: reading
                .map(|reading| format!("{:.0}", (reading.radius_m + datum_m(&self.datum)).ceil()))
                .unwrap_or_default(),
            ..self
        }
    }
}

/// What a datum adds to the radius, metres.
fn datum_m(written: &str) -> f64 {
    read_datum(written).map_or(0.0, |datum| datum.share().radius.metres())
}

/// What was understood of a datum as typed; nothing where nothing was typed.
pub fn read_datum(written: &str) -> Option<Datum> {
    (!written.trim().is_empty()).then(|| Datum::of(written))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_datum_is_kept_as_typed_and_widens_the_circle() {
        let plain = PlaceForm::default().with_typed("47.6138 N 12.3043 E");
        let before: f64 = plain.radius.parse().expect("metres");
        let form = plain.clone().with_datum("ED-50");
        let Some(Datum::Unconverted(datum)) = read_datum("ED-50") else { panic!("a known datum") };
        assert_eq!((form.datum.as_str(), form.coordinates()), ("ED-50", plain.coordinates()));
        let after: f64 = form.radius.parse().expect("metres");
        assert!((after - before - datum.shift.metres()).abs() <= 1.0, "{before} {after}");
        assert_eq!(form.clone().with_typed("47.6139 N 12.3043 E").datum, "ED-50");
        assert_eq!(form.with_datum("").radius, plain.radius);
    }

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
