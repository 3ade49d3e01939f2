//! The scale bar and the arrow to the north, true for the middle of what is shown.

use super::{Frame, Ground};
use crate::distance::{distance, leg};
use crate::position::Position;
use geo_types::Coord;

/// The scale bar is at most this share of the width.
const BAR_SHARE: f64 = 0.35;

/// A scale bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Its metres: 1, 2 or 5 times a power of ten.
    pub metres: f64,
    /// Its length in units of the sheet.
    pub length: f64,
}

/// The scale bar of a frame.
///
/// **Accuracy**: laid level across the middle of the sheet it is as long as the ground, measured by the shortest way on
/// the ellipsoid, within one per cent.
///
/// **Errors**: `None` where what is shown reaches so far round the Earth that no length is true.
pub fn bar(ground: &Ground, frame: Frame) -> Option<Bar> {
    let room = frame.width() * BAR_SHARE;
    let metres = nice_below(across(ground, frame, room)?);
    let mut length = metres / frame.metres_per_unit();
    // The scale changes along the plane only slowly: each round takes the error of the length to its square or less.
    for _ in 0..4 {
        length *= metres / across(ground, frame, length)?;
    }
    let true_m = across(ground, frame, length)?;
    (length <= room * 1.5 && (true_m - metres).abs() <= metres * 0.005).then_some(Bar { metres, length })
}

/// The metres below a level line through the middle of the sheet.
fn across(ground: &Ground, frame: Frame, length: f64) -> Option<f64> {
    let end = |side: f64| {
        let at = Coord { x: frame.width() / 2.0 + side * length / 2.0, y: frame.height() / 2.0 };
        ground.plane().position(frame.ground(at))
    };
    let metres = distance(end(-1.0)?, end(1.0)?).metres();
    (metres > 0.0).then_some(metres)
}

/// Degrees by which north is turned clockwise from upwards, in the middle of the sheet: zero unless a wide piece of the
/// Earth is shown.
pub fn north(ground: &Ground, frame: Frame) -> f64 {
    let turned = || {
        let plane = ground.plane();
        let middle = plane.position(frame.middle())?;
        let pole = Position::new(90.0, 0.0, None)?;
        let way = leg(middle, pole);
        let bit = way.distance.metres().min(1_000.0);
        let on = crate::distance::destination(middle, way.bearing, units::Metres::new(bit)?);
        let (from, to) = (plane.place(middle), plane.place(on));
        Some(libm::atan2(to.x - from.x, to.y - from.y).to_degrees())
    };
    turned().unwrap_or(0.0)
}

/// The greatest of 1, 2 or 5 times a power of ten that is not above a length.
fn nice_below(length: f64) -> f64 {
    let power = libm::pow(10.0, libm::floor(libm::log10(length)));
    [5.0, 2.0].into_iter().map(|nice| nice * power).find(|nice| *nice <= length).unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nice_lengths_are_nice() {
        for (length, below) in [(1.0, 1.0), (1.9, 1.0), (3.0, 2.0), (730.0, 500.0), (99.0, 50.0)] {
            assert!((nice_below(length) - below).abs() < 1e-9, "{length}");
        }
    }
}
