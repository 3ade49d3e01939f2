//! A plane laid on the ground round a few positions, in metres east and north of its middle.
//!
//! In go positions, out come places on the plane and back. Their radii stay what they are.

use crate::distance::{destination, leg};
use crate::position::Position;
use geo_types::Coord;
use units::{Degrees, Metres};

/// The plane: every place keeps its true distance and direction from the middle (azimuthal equidistant).
///
/// **Accuracy**: exact to and from the middle; between two places d metres from the middle a distance is too long by
/// at most the share d²/(6 R²) across the direction to the middle: 1 in 24,000 at 100 km, 1 in 240 at 1,000 km.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    middle: Position,
}

impl Plane {
    /// The plane round these positions: its middle is the mean of their directions from the centre of the Earth, so
    /// that positions on both sides of the antimeridian or round a pole have it between them.
    ///
    /// **Errors**: `None` without positions. Where the mean has no direction (antipodes), the first is the middle.
    pub fn around(positions: &[Position]) -> Option<Self> {
        let first = positions.first()?;
        let (mut x, mut y, mut z) = (0.0, 0.0, 0.0);
        for position in positions {
            let (sin_lat, cos_lat) = libm::sincos(position.latitude.to_radians());
            let (sin_lon, cos_lon) = libm::sincos(position.longitude.to_radians());
            x += cos_lat * cos_lon;
            y += cos_lat * sin_lon;
            z += sin_lat;
        }
        let level = libm::hypot(x, y);
        let share = libm::hypot(level, z) / positions.len() as f64;
        let mean = (share > 1e-9)
            .then(|| Position::new(libm::atan2(z, level).to_degrees(), libm::atan2(y, x).to_degrees(), None));
        let middle = mean.flatten().unwrap_or(Position { radius: None, ..*first });
        Some(Self { middle })
    }

    /// The plane whose middle is this position.
    pub fn at(middle: Position) -> Self {
        Self { middle: Position { radius: None, ..middle } }
    }

    /// Metres east (x) and north (y) of the middle.
    pub fn place(&self, position: Position) -> Coord<f64> {
        let leg = leg(self.middle, position);
        let (sin, cos) = libm::sincos(leg.bearing.to_radians());
        Coord { x: leg.distance.metres() * sin, y: leg.distance.metres() * cos }
    }

    /// The position of a place on the plane. `None` for NaN and the infinities.
    pub fn position(&self, place: Coord<f64>) -> Option<Position> {
        let bearing = Degrees::new(libm::atan2(place.x, place.y).to_degrees())?;
        let distance = Metres::new(libm::hypot(place.x, place.y))?;
        Some(destination(self.middle, bearing, distance))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::distance::distance;
    use proptest::prelude::*;

    fn at(latitude: f64, longitude: f64) -> Position {
        Position::new(latitude, longitude, None).expect("a position")
    }

    #[test]
    fn positions_across_the_antimeridian_lie_side_by_side() {
        let ends = [at(-17.0, 179.99), at(-17.0, -179.99)];
        let plane = Plane::around(&ends).expect("two positions");
        let (west, east) = (plane.place(ends[0]), plane.place(ends[1]));
        // 0.02 degrees of longitude at 17 S on WGS84: 2,130 m; tolerance: half a per cent, it is a check of sides.
        assert!((east.x - west.x - 2_130.0).abs() < 10.0, "{}", east.x - west.x);
        assert!(west.x < 0.0 && east.x > 0.0);
    }

    #[test]
    fn the_middle_lies_in_the_middle() {
        let ends = [at(40.0, 12.0), at(50.0, 12.0)];
        let plane = Plane::around(&ends).expect("two positions");
        let (south, north) = (plane.place(ends[0]), plane.place(ends[1]));
        // A degree is longer in the north by 0.2 per cent: 1 km in 555 km, allowed twice.
        assert!((south.y + north.y).abs() < 2_000.0, "{south:?} {north:?}");
    }

    #[test]
    fn antipodes_still_have_a_plane() {
        let plane = Plane::around(&[at(0.0, 0.0), at(0.0, 180.0)]).expect("two positions");
        assert!(plane.place(at(0.0, 180.0)).x.is_finite());
        assert_eq!(Plane::around(&[]), None);
    }

    proptest! {
        #[test]
        fn places_go_there_and_back(lat in -89.0..89.0, lon in -180.0..180.0, x in -5e4..5e4, y in -5e4..5e4) {
            let plane = Plane::at(at(lat, lon));
            let position = plane.position(Coord { x, y }).expect("finite");
            let place = plane.place(position);
            // A tenth of a millimetre at 70 km: bearing kept to 1e-9 rad.
            prop_assert!((place.x - x).abs() < 1e-4 && (place.y - y).abs() < 1e-4);
        }

        #[test]
        fn distances_on_the_plane_are_as_good_as_promised(lat in -80.0..80.0, lon in -180.0..180.0,
            x in -7e4..7e4, y in -7e4..7e4, u in -7e4..7e4, v in -7e4..7e4) {
            let plane = Plane::at(at(lat, lon));
            let (one, two) = (Coord { x, y }, Coord { x: u, y: v });
            let drawn = libm::hypot(x - u, y - v);
            let (one, two) = (plane.position(one).expect("finite"), plane.position(two).expect("finite"));
            let real = distance(one, two).metres();
            prop_assert!((drawn - real).abs() <= real / 24_000.0 + 1e-3, "{} {}", drawn, real);
        }
    }
}
