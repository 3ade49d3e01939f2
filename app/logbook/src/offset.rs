//! The point of a site that is described from another one: `2.4 km NNE of Tarn Abbot`.
//!
//! In go the words of the offset and the sites of the book; out comes a point with the circle that holds every position
//! which the words allow, and what the circle is made of. It is offered, never written by itself.

use crate::book::Logbook;
use crate::form::{PlaceForm, SiteForm, Source};
use crate::places::{WrittenPlace, write};
use place::Position;
use place::combine::{Offset, combine};
use place::uncertainty::written;
use record::site;

/// A point worked out from the words.
#[derive(Clone, Debug, PartialEq)]
pub struct OffsetPoint {
    /// The place from which it is measured.
    pub from: String,
    /// The point as screens write it.
    pub written: WrittenPlace,
    /// What the radius is made of: codes and metres.
    pub shares: Vec<(&'static str, f64)>,
    /// The radius by the usual rule, metres, which may fall short.
    pub usual_m: f64,
    coordinates: (f64, f64),
    radius_m: f64,
}

impl OffsetPoint {
    /// The form of a site with this point taken.
    pub fn taken(&self, form: SiteForm) -> SiteForm {
        let place = PlaceForm {
            source: Source::Typed,
            typed: form.offset.trim().to_owned(),
            latitude: Some(self.coordinates.0),
            longitude: Some(self.coordinates.1),
            radius: format!("{:.0}", self.radius_m.ceil()),
            ..PlaceForm::default()
        };
        SiteForm { place, ..form }
    }
}

impl Logbook {
    /// The point that a site's offset describes: none where the words are no offset, or the place named is no site of
    /// this book with a point of its own.
    pub fn offset_point(&self, form: &SiteForm) -> Option<OffsetPoint> {
        let (offset, from) = read(&form.offset)?;
        let named = self.site_named(from).filter(|site| Some(site.id) != form.id)?;
        let point = named.get(&site::PLACE)?;
        let radius = point.radius_m.filter(|radius| *radius >= 0.0);
        let start = Position::new(point.latitude, point.longitude, radius)?;
        let made = combine(start, &[], Some(offset));
        let coordinates = (made.position.latitude.degrees(), made.position.longitude.degrees());
        let radius_m = made.position.radius?.metres();
        Some(OffsetPoint {
            from: named.get(&site::NAME)?,
            written: write(coordinates.0, coordinates.1, Some(radius_m))?,
            shares: made.shares.iter().map(|share| (share.code, share.radius.metres())).collect(),
            usual_m: made.usual.metres(),
            coordinates,
            radius_m,
        })
    }
}

/// Distance and direction with their precision, and the place that they start from.
fn read(text: &str) -> Option<(Offset, &str)> {
    let (way, from) = text.split_once(" of ")?;
    let (distance, direction) = way.trim().rsplit_once(' ')?;
    let (distance, distance_error) = written::distance(distance)?;
    let (bearing, bearing_error) = written::direction(direction)?;
    Some((Offset { distance, distance_error, bearing, bearing_error }, from.trim()))
}

#[cfg(test)]
mod tests;
