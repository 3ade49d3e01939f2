//! The uncertainty of a locality in words: "2.4 km NNE of …", put together from its parts.
//!
//! In go the starting point, what is unsure about it, and the offset from it; out comes the position with a circle
//! that holds every position which the parts allow, and each part's share of it. Reading the words is left to others.

use crate::distance::destination;
use crate::position::Position;
use crate::uncertainty::sum;
use units::{Degrees, Metres};

/// The way from the starting point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// How far.
    pub distance: Metres,
    /// By how much the distance may be wrong, either way.
    pub distance_error: Metres,
    /// In which direction, clockwise from north.
    pub bearing: Degrees,
    /// By how much the direction may be wrong, either way; 180 and more for any direction.
    pub bearing_error: Degrees,
}

/// What the circle is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// A stable code: the part's own as given, `coordinates` for the start's own radius, or `offset`.
    pub code: &'static str,
    /// Its share of the radius.
    pub radius: Metres,
}

/// A position with its circle.
#[derive(Clone, Debug, PartialEq)]
pub struct Combined {
    /// The position, with the radius that holds everything.
    pub position: Position,
    /// The parts of the radius; they add up to it.
    pub shares: Vec<Share>,
    /// The radius by the usual rule, which puts all lengths into one cosine rule; it may fall short of the circle.
    pub usual: Metres,
}

/// The position at the end of an offset, and the circle that holds every position that the parts allow.
///
/// **Shape**: the radius of the start is that of its coordinates (device, digits); the other parts say how far what it
/// stands for may lie from it (extent, measurement, datum).
///
/// **Accuracy**: a triangle on the Earth is no wider than one in the plane, so the circle is not too small for that. A
/// direction is meant at the stated start: from elsewhere within its circle meridians are turned a little, by 0.001° a
/// kilometre at 7° and 0.009° at 45°.
///
/// **Source**: parts as in Wieczorek, Guo & Hijmans (2004), Int. J. Geogr. Inf. Sci. 18: 745–767, whose rule is
/// `usual`; instead of it the far corner of the sector is taken and the other parts are added, because a starting
/// point that lies elsewhere moves the whole sector.
pub fn combine(start: Position, parts: &[Share], offset: Option<Offset>) -> Combined {
    let coordinates = start.radius.unwrap_or(Metres::ZERO);
    let others = sum(parts.iter().map(|part| part.radius));
    let mut shares = parts.to_vec();
    shares.push(Share { code: "coordinates", radius: coordinates });
    let (mut end, mut usual) = (start, others + coordinates);
    if let Some(offset) = offset {
        shares.push(Share { code: "offset", radius: far_corner(&offset, offset.distance_error) });
        end = destination(start, offset.bearing, offset.distance);
        usual = far_corner(&offset, offset.distance_error + others) + coordinates;
    }
    shares.retain(|share| share.radius > Metres::ZERO);
    let radius = sum(shares.iter().map(|share| share.radius));
    Combined { position: Position { radius: Some(radius), ..end }, shares, usual }
}

/// From the stated end of an offset to the corner of its sector that lies further out by an error; the corner further
/// in is never farther.
fn far_corner(offset: &Offset, error: Metres) -> Metres {
    let far_m = (offset.distance + error).metres();
    // Too great a length stops at the greatest; sides of finite lengths are no NaN.
    Metres::new(third_side(offset.distance.metres(), far_m, offset.bearing_error).min(f64::MAX)).unwrap_or(Metres::ZERO)
}

/// The side across from an angle, by the cosine rule in the form that loses no digits for small angles.
fn third_side(one_m: f64, other_m: f64, angle: Degrees) -> f64 {
    let half_sin = libm::sin(angle.degrees().abs().min(180.0).to_radians() / 2.0);
    libm::hypot(one_m - other_m, 2.0 * libm::sqrt(one_m.max(0.0)) * libm::sqrt(other_m.max(0.0)) * half_sin)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::distance::distance;
    use proptest::prelude::*;

    fn metres(value: f64) -> Metres {
        Metres::new(value).expect("finite")
    }

    fn offset(distance_m: f64, error_m: f64, bearing: f64, bearing_error: f64) -> Offset {
        Offset {
            distance: metres(distance_m),
            distance_error: metres(error_m),
            bearing: Degrees::new(bearing).expect("finite"),
            bearing_error: Degrees::new(bearing_error).expect("finite"),
        }
    }

    fn start() -> Position {
        Position::new(47.0, 12.0, None).expect("a position")
    }

    /// Source: `uncertainty_worked_examples.csv`: P3 is published (Chapman & Wieczorek 2020, "Uncertainty Related to
    /// Heading": 3.90 km), C1 to C5 are computed apart, both readings. Tolerance: half the last digit of each.
    #[test]
    fn worked_examples_are_met() {
        for (distance_km, bearing_error, others_km, coordinates_km, error_km, usual_km, circle_km) in [
            (10.0, 22.5, 0.0, 0.0, 0.0, 3.9018, 3.9018),
            (10.0, 22.5, 3.0, 0.04, 0.5, 5.7673, 7.0693),
            (5.6, 22.5, 0.824, 0.0015, 0.05, 2.5081, 3.0208),
            (12.0, 11.25, 1.279, 0.04, 0.5, 3.1253, 3.7714),
            (2.5, 45.0, 0.01, 0.0015, 0.25, 2.0287, 2.0338),
            (0.8, 0.5, 0.033, 0.0015, 0.05, 0.0848, 0.0850),
        ] {
            let start = Position { radius: Metres::new(coordinates_km * 1000.0), ..start() };
            let parts = [Share { code: "extent", radius: metres(others_km * 1000.0) }];
            let offset = offset(distance_km * 1000.0, error_km * 1000.0, 45.0, bearing_error);
            let combined = combine(start, &parts, Some(offset));
            assert!((combined.usual.metres() / 1000.0 - usual_km).abs() < 6e-5, "{combined:?}");
            let radius_m = combined.position.radius_m().expect("a radius");
            assert!((radius_m / 1000.0 - circle_km).abs() < 6e-5, "{combined:?}");
        }
    }

    #[test]
    fn without_an_offset_parts_add_up() {
        // Source: the same table, C6: 8 m of the device and 1.35 m of the digits are 9.35 m.
        let start = Position { radius: Metres::new(1.35), ..start() };
        let combined = combine(start, &[Share { code: "device", radius: metres(8.0) }], None);
        assert_eq!(combined.position.radius_m(), Some(9.35));
        assert_eq!(combined.shares.iter().map(|share| share.code).collect::<Vec<_>>(), ["device", "coordinates"]);
    }

    proptest! {
        #[test]
        fn no_part_is_too_great(
            latitude in -90.0..=90.0, distance_m in 0.0..=f64::MAX, error_m in 0.0..=f64::MAX, bearing: f64,
            bearing_error: f64, extent_m in 0.0..=f64::MAX
        ) {
            prop_assume!(bearing.is_finite() && bearing_error.is_finite());
            let start = Position::new(latitude, 12.0, Some(extent_m)).expect("a position");
            let parts = [Share { code: "extent", radius: metres(extent_m) }];
            let combined = combine(start, &parts, Some(offset(distance_m, error_m, bearing, bearing_error)));
            prop_assert!(combined.position.radius_m().expect("a radius") >= extent_m);
            prop_assert!(combined.usual.metres() >= extent_m);
        }

        /// By brute force: whatever start, direction and distance the parts allow, the circle holds where it leads.
        #[test]
        fn the_circle_holds_everything(
            latitude in -85.0..85.0, distance_m in 0.0..50_000.0, error in 0.0..1.0, bearing in 0.0..360.0,
            bearing_error in 0.0..180.0, extent_m in 0.0..5_000.0
        ) {
            let start = Position::new(latitude, 12.0, None).expect("a position");
            let error_m = distance_m * error;
            let parts = [Share { code: "extent", radius: metres(extent_m) }];
            let combined = combine(start, &parts, Some(offset(distance_m, error_m, bearing, bearing_error)));
            let radius_m = combined.position.radius_m().expect("a radius");
            for turn in 0..12 {
                let moved = destination(start, Degrees::new(f64::from(turn) * 30.0).expect("finite"), metres(extent_m));
                for (side, length) in [(-1.0, -1.0), (-1.0, 1.0), (0.0, 1.0), (1.0, -1.0), (1.0, 1.0), (0.5, 0.5)] {
                    let bearing = Degrees::new(bearing + side * bearing_error).expect("finite");
                    let end = destination(moved, bearing, metres(distance_m + length * error_m));
                    let away_m = distance(combined.position, end).metres();
                    // Meridians converge between the start and where it may be: the same bearing is another direction
                    // there. At 85° and 5 km that is 0.5°, by which the sector turns.
                    let turned = libm::tan(latitude.abs().to_radians()) * extent_m / 6_350_000.0 * 1.1;
                    prop_assert!(away_m <= radius_m + (distance_m + error_m) * turned + 1e-6, "{} {}", away_m, radius_m);
                }
            }
        }
    }
}
