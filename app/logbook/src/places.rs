//! Positions between the record, the device and the screen.

use crate::form::{PlaceForm, Source};
use place::Position;
use place::elevation::Platform;
use place::fixes;
use place::format::{Notation, height, written as written_by};
use place::uncertainty::{Confidence, device};
use record::event::Place;
use units::Metres;

/// A position as every screen and label writes it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenPlace {
    /// Latitude and longitude with honest digits.
    pub coordinates: (String, String),
    /// Metres after ±.
    pub radius: Option<String>,
}

/// A stored position as every screen and label writes it.
pub fn written(place: &Place) -> WrittenPlace {
    write(place.latitude, place.longitude, place.radius_m).unwrap_or_else(|| WrittenPlace {
        // What lies outside the globe was stored by somebody else's hand; it is shown as it stands.
        coordinates: (place.latitude.to_string(), place.longitude.to_string()),
        radius: place.radius_m.map(|radius| radius.to_string()),
    })
}

/// A position as every screen and label writes it; `None` for what lies outside the globe.
pub fn write(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Option<WrittenPlace> {
    let position = Position::new(latitude, longitude, radius_m)?;
    let written = written_by(position, Notation::default());
    Some(WrittenPlace {
        coordinates: (written.latitude.text(), written.longitude.text()),
        radius: written.plus_minus_m.map(|metres| metres.to_string()),
    })
}

/// A height as every screen writes it: whole metres, rounded to its accuracy.
pub fn written_height(metres: f64, accuracy_m: Option<f64>) -> Option<String> {
    let height = height(Metres::new(metres)?, accuracy_m.and_then(Metres::new));
    Some(height.metres.to_string())
}

/// How the radius that a device reported is read: how many of a hundred fixes lie within it, and the metres within which
/// 95 do, where those are not the same. What is kept and printed is what was reported.
pub fn radius_reading(place: &Place) -> Option<(u8, Option<u64>)> {
    let reported = Metres::new(place.radius_m?).filter(|_| place.how == "device")?;
    let confidence = Confidence::of(Platform::of(place.platform.as_deref()?));
    let most = device(reported, confidence).radius.metres().ceil() as u64;
    Some(match confidence {
        Confidence::Half => (50, Some(most)),
        Confidence::TwoThirds => (68, Some(most)),
        Confidence::Most => (95, None),
    })
}

/// Length of the shortest way between two positions, metres; infinite when one of them is none.
pub fn distance_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    let position = |(latitude, longitude)| Position::new(latitude, longitude, None);
    position(a).zip(position(b)).map_or(f64::INFINITY, |(a, b)| place::distance::distance(a, b).metres())
}

/// Much the same, quickly.
pub(crate) fn distance_rough_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    let position = |(latitude, longitude)| Position::new(latitude, longitude, None);
    position(a).zip(position(b)).map_or(f64::INFINITY, |(a, b)| place::distance::roughly(a, b).metres())
}

/// The fixes that came in while a form is open.
#[derive(Clone, Debug, Default)]
pub struct Fixes {
    opened_ms: f64,
    fixes: Vec<ports::position::Fix>,
}

/// What the fixes give together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Best {
    latitude: f64,
    longitude: f64,
    /// The radius, metres.
    pub radius_m: f64,
    fixes: u32,
    seconds: u32,
    altitude: Option<(f64, Option<f64>)>,
}

/// Fixes kept while a form is open: more add nothing.
const KEPT: usize = 120;

impl Fixes {
    /// None yet, for a form opened at this moment.
    pub fn since(opened_ms: i64) -> Self {
        Self { opened_ms: opened_ms as f64, fixes: Vec::new() }
    }

    /// Takes a fix.
    pub fn take(&mut self, fix: ports::position::Fix) {
        self.fixes.push(fix);
        if self.fixes.len() > KEPT {
            let worst =
                (0..self.fixes.len()).max_by(|a, b| self.fixes[*a].accuracy_m.total_cmp(&self.fixes[*b].accuracy_m));
            worst.map(|index| self.fixes.remove(index));
        }
    }

    /// What they give together.
    pub fn combined(&self) -> Option<Best> {
        let plain = |fix: &ports::position::Fix| fixes::Fix {
            latitude: fix.latitude,
            longitude: fix.longitude,
            accuracy_m: fix.accuracy_m,
            at_ms: fix.at_ms,
        };
        let all: Vec<fixes::Fix> = self.fixes.iter().map(plain).collect();
        let combined = fixes::combine(&all, self.opened_ms)?;
        let with_altitude = self.fixes.iter().filter(|fix| fix.altitude_m.is_some());
        let altitude = with_altitude
            .min_by(|a, b| a.accuracy_m.total_cmp(&b.accuracy_m))
            .and_then(|fix| Some((fix.altitude_m?, fix.altitude_accuracy_m)));
        Some(Best {
            latitude: combined.position.latitude.degrees(),
            longitude: combined.position.longitude.degrees(),
            radius_m: combined.position.radius_m()?,
            fixes: combined.fixes,
            seconds: combined.seconds,
            altitude,
        })
    }
}

impl Best {
    /// As the position row shows it.
    pub(crate) fn into_form(self) -> PlaceForm {
        PlaceForm {
            source: Source::Here,
            latitude: Some(self.latitude),
            longitude: Some(self.longitude),
            radius: format!("{:.0}", self.radius_m.ceil()),
            fixes: self.fixes,
            seconds: self.seconds,
            altitude_m: self.altitude.map(|(metres, _)| metres),
            altitude_accuracy_m: self.altitude.and_then(|(_, accuracy)| accuracy),
            ..PlaceForm::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reported_radius_is_read_by_platform_and_never_doubled_silently() {
        let place = |how: &str, platform: Option<&str>| Place {
            radius_m: Some(8.0),
            how: how.to_owned(),
            platform: platform.map(str::to_owned),
            ..Place::default()
        };
        // 1.622 is the factor from 68 to 95 in a hundred (see `place::uncertainty`).
        assert_eq!(radius_reading(&place("device", Some("android"))), Some((68, Some(13))));
        assert_eq!(radius_reading(&place("device", Some("other"))), Some((95, None)));
        assert_eq!(radius_reading(&place("typed", None)), None);
    }
}
