//! Distance and direction between two positions on the ellipsoid, and the way from one to the next.
//!
//! In go positions, out come metres and degrees. Radii are left alone.

use crate::position::Position;
use geographiclib_rs::{DirectGeodesic, Geodesic, InverseGeodesic};
use std::sync::LazyLock;
use units::{Degrees, Latitude, Longitude, Metres};

static WGS84: LazyLock<Geodesic> = LazyLock::new(Geodesic::wgs84);

/// The way from one position to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// Length of the shortest way.
    pub distance: Metres,
    /// Direction in which it starts, from 0 (north) clockwise to below 360.
    pub bearing: Degrees,
}

/// Length of the shortest way between two positions.
///
/// **Accuracy**: a few nanometres anywhere on the Earth.
///
/// **Source**: Karney (2013), Algorithms for geodesics, J. Geodesy 87: 43–55.
pub fn distance(from: Position, to: Position) -> Metres {
    leg(from, to).distance
}

/// About the length of the shortest way between two positions, quickly: on a sphere.
///
/// **Accuracy**: within 0.6 per cent of [`distance`].
///
/// **Source**: the chord between two unit vectors (common practice); mean radius of WGS 84: Moritz (2000), Geodetic
/// Reference System 1980, J. Geodesy 74: 128–133, from memory.
pub fn roughly(from: Position, to: Position) -> Metres {
    const RADIUS_M: f64 = 6_371_008.8;
    let (a, b) = (unit_vector(from), unit_vector(to));
    let chord: f64 = (0..3).map(|axis| (a[axis] - b[axis]) * (a[axis] - b[axis])).sum();
    finite(Metres::new(2.0 * RADIUS_M * libm::asin((libm::sqrt(chord) / 2.0).min(1.0))))
}

/// From the middle of the Earth to a position.
fn unit_vector(position: Position) -> [f64; 3] {
    let (sin_lat, cos_lat) = libm::sincos(position.latitude.degrees().to_radians());
    let (sin_lon, cos_lon) = libm::sincos(position.longitude.degrees().to_radians());
    [cos_lat * cos_lon, cos_lat * sin_lon, sin_lat]
}

/// The shortest way from one position to another; between one and the same it points north.
///
/// **Source**: as [`distance`].
pub fn leg(from: Position, to: Position) -> Leg {
    let (metres, azimuth, _, _): (f64, f64, f64, f64) =
        WGS84.inverse(from.latitude.degrees(), from.longitude.degrees(), to.latitude.degrees(), to.longitude.degrees());
    Leg { distance: finite(Metres::new(metres)), bearing: around(azimuth) }
}

/// Where the shortest way in a direction leads; it has no radius of its own.
///
/// **Source**: as [`distance`].
pub fn destination(from: Position, bearing: Degrees, distance: Metres) -> Position {
    let (latitude, longitude): (f64, f64) =
        WGS84.direct(from.latitude.degrees(), from.longitude.degrees(), bearing.degrees() % 360.0, distance.metres());
    let latitude = finite(Latitude::new(latitude.clamp(-90.0, 90.0)));
    Position { latitude, longitude: finite(Longitude::new(longitude)), radius: None }
}

/// The codes of the sixteen winds, clockwise from north.
pub const WINDS: [&str; 16] =
    ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

/// The code of the wind nearest to a direction.
pub fn wind(bearing: Degrees) -> &'static str {
    let turn = libm::floor(around(bearing.degrees()).degrees() / 22.5 + 0.5);
    WINDS[turn as usize % 16]
}

/// A direction from 0 to below 360.
fn around(degrees: f64) -> Degrees {
    let turned = (degrees % 360.0 + 360.0) % 360.0;
    finite(Degrees::new(turned))
}

/// What the geodesic formulas give for finite angles is finite.
fn finite<T>(value: Option<T>) -> T {
    value.expect("a geodesic between finite positions is finite")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(latitude: f64, longitude: f64) -> Position {
        Position::new(latitude, longitude, None).expect("a position")
    }

    #[test]
    fn sixteen_winds_have_their_names() {
        for (degrees, name) in
            [(0.0, "N"), (11.24, "N"), (11.26, "NNE"), (348.8, "N"), (225.0, "SW"), (-90.0, "W"), (720.0, "N")]
        {
            assert_eq!(wind(Degrees::new(degrees).expect("finite")), name, "{degrees}");
        }
    }

    #[test]
    fn poles_and_the_same_place_have_an_answer() {
        assert_eq!(distance(at(47.0, 12.0), at(47.0, 12.0)).metres(), 0.0);
        assert_eq!(distance(at(90.0, 0.0), at(90.0, 77.0)).metres(), 0.0);
        // Half a meridian ellipse, 20,003,931.4586 m: GeographicLib documentation; tolerance 0.1 mm, its last digit.
        let half_m = distance(at(90.0, 0.0), at(-90.0, 0.0)).metres();
        assert!((half_m - 20_003_931.458_6).abs() < 1e-4, "{half_m}");
    }

    proptest! {
        #[test]
        fn the_way_there_arrives(lat in -89.0..89.0, lon in -180.0..180.0, bearing in 0.0..360.0, metres in 1.0..1e6) {
            let to = destination(at(lat, lon), Degrees::new(bearing).expect("finite"), Metres::new(metres).expect("finite"));
            let back = distance(at(lat, lon), to).metres();
            // A micrometre: what two libraries' trigonometry may differ by.
            prop_assert!((back - metres).abs() < 1e-6, "{} {}", back, metres);
        }

        #[test]
        fn the_rough_way_is_about_as_long(lat in -90.0..90.0, lon in -180.0..180.0, bearing in 0.0..360.0, metres in 1.0..1.9e7) {
            let to = destination(at(lat, lon), Degrees::new(bearing).expect("finite"), Metres::new(metres).expect("finite"));
            let rough = roughly(at(lat, lon), to).metres();
            prop_assert!((rough - metres).abs() < metres * 0.006, "{} {}", rough, metres);
        }
    }
}
