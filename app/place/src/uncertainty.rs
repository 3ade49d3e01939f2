//! How far off a position may be, in metres.
//!
//! In go how finely coordinates were given and where; out comes a radius. Which contributions there are is for the
//! caller to say.

use crate::ellipsoid::metres_per_degree;
use units::{Degrees, Latitude, Metres};

/// The radius that belongs to coordinates given in steps of this size: the diagonal of one whole step.
///
/// **Accuracy**: twice what rounding alone can do, because nobody knows whether the digits were rounded or cut off.
///
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, "Uncertainty Related to Coordinate
/// Precision", after Wieczorek (2001).
pub fn precision(latitude: Latitude, step_latitude: Degrees, step_longitude: Degrees) -> Metres {
    finite(diagonal_m(latitude, step_latitude.degrees(), step_longitude.degrees()))
}

/// Contributions that do not know each other, added up: the circle that holds them all.
///
/// **Source**: Wieczorek, Guo & Hijmans (2004), Int. J. Geogr. Inf. Sci. 18: 745–767: sources are summed.
pub fn sum(parts: impl IntoIterator<Item = Metres>) -> Metres {
    parts.into_iter().fold(Metres::ZERO, |sum, part| sum + part)
}

/// Half the diagonal of a step: the most that rounding to it can move a position.
pub(crate) fn rounding_m(latitude: Latitude, step_deg: f64) -> f64 {
    diagonal_m(latitude, step_deg, step_deg) / 2.0
}

fn diagonal_m(latitude: Latitude, step_latitude_deg: f64, step_longitude_deg: f64) -> f64 {
    let (north_m, east_m) = metres_per_degree(latitude);
    libm::hypot(north_m * step_latitude_deg, east_m * step_longitude_deg)
}

/// A length that was computed from finite angles.
fn finite(metres: f64) -> Metres {
    Metres::new(metres).unwrap_or(Metres::ZERO)
}
