//! How far off a position may be, in metres.
//!
//! In goes what is known of a source of doubt: how finely coordinates were given and where, what a device reported, the
//! scale of a map, the side of a grid's cell; out comes a radius. Which contributions there are is for the caller to say.

pub mod written;

use crate::combine::Share;
use crate::elevation::Platform;
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

/// How many of a device's fixes lie within the radius that it reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// Half of them: the figure on the screen of a satellite receiver.
    Half,
    /// 68 in a hundred.
    TwoThirds,
    /// 95 in a hundred.
    Most,
}

impl Confidence {
    /// How a platform's radius is read.
    ///
    /// **Source**: the W3C Geolocation specification says 95 %; Android documents 68 %, which browsers pass on, and
    /// iPhones are taken for the same (both from memory).
    pub fn of(platform: Platform) -> Self {
        match platform {
            Platform::Android | Platform::Ios => Self::TwoThirds,
            Platform::Other => Self::Most,
        }
    }

    /// The confidence of a number of per cent: 50, 68 or 95.
    pub fn per_cent(per_cent: u64) -> Option<Self> {
        match per_cent {
            50 => Some(Self::Half),
            68 => Some(Self::TwoThirds),
            95 => Some(Self::Most),
            _ => None,
        }
    }

    /// By how much the reported radius is multiplied for 95 in a hundred.
    ///
    /// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, "Uncertainty due to GPS": at least 2 for the
    /// half; 1.622 for 68 in a hundred is the square root of ln 0.05 / ln 0.32, for errors spread evenly in both
    /// directions (Rayleigh).
    fn factor(self) -> f64 {
        match self {
            Self::Half => 2.0,
            Self::TwoThirds => 1.622,
            Self::Most => 1.0,
        }
    }
}

/// The radius within which 95 in a hundred fixes lie, by what a device reported. The code says how that was read:
/// `device_50`, `device_68`, `device_95`.
pub fn device(reported: Metres, confidence: Confidence) -> Share {
    let code = match confidence {
        Confidence::Half => "device_50",
        Confidence::TwoThirds => "device_68",
        Confidence::Most => "device_95",
    };
    Share { code, radius: finite(reported.metres() * confidence.factor()) }
}

/// The radius of a satellite fix whose accuracy nobody wrote down, since the first of May 2000.
/// **Source**: Zermoglio et al. (2020), Georeferencing Quick Reference Guide, "GPS Accuracy": a lower limit.
pub const FIX_UNRECORDED: Metres = Metres::whole(30);
/// The same before that day, when the signal was made worse on purpose.
/// **Source**: as [`FIX_UNRECORDED`].
pub const FIX_UNRECORDED_BEFORE_MAY_2000: Metres = Metres::whole(100);

/// How far off a line on a printed map may be: half a millimetre of paper.
///
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, table of horizontal accuracy.
pub fn map_accuracy(scale: u32) -> Metres {
    Metres::thousandths(1).half().times(scale)
}

/// How far off a reading by ruler on a printed map may be: a millimetre of paper.
///
/// **Source**: Zermoglio et al. (2020), Georeferencing Quick Reference Guide, "Measurement Error".
pub fn map_reading(scale: u32) -> Metres {
    Metres::thousandths(1).times(scale)
}

/// The radius round the middle of a square cell of a metric grid, by its side.
///
/// **Source**: Zermoglio et al. (2020), Georeferencing Quick Reference Guide, table of default geographic radials: half
/// the diagonal.
pub fn cell(side: Metres) -> Metres {
    finite(side.metres().abs() * core::f64::consts::FRAC_1_SQRT_2)
}

/// How far off a height read between contour lines may be, by their interval.
///
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, "Elevation", maps.
pub fn contours(interval: Metres) -> Metres {
    interval.half()
}

/// Radii of small things that localities are counted from, where nobody measured them, by code.
///
/// **Source**: Zermoglio et al. (2020), Georeferencing Quick Reference Guide, table of default geographic radials.
pub const FEATURES: [(&str, Metres); 5] = [
    ("spring", Metres::whole(3)),
    ("stream", Metres::whole(3)),
    ("crossing_two_lanes", Metres::whole(10)),
    ("crossing_four_lanes", Metres::whole(20)),
    ("crossing", Metres::whole(15)),
];

/// Half the diagonal of a step: the most that rounding to it can move a position.
pub(crate) fn rounding_m(latitude: Latitude, step_deg: f64) -> f64 {
    diagonal_m(latitude, step_deg, step_deg) / 2.0
}

fn diagonal_m(latitude: Latitude, step_latitude_deg: f64, step_longitude_deg: f64) -> f64 {
    let (north_m, east_m) = metres_per_degree(latitude);
    let (north_m, east_m) = (north_m * step_latitude_deg, east_m * step_longitude_deg);
    (north_m * north_m + east_m * east_m).sqrt()
}

/// A length made of finite numbers; too great a one stops at the greatest.
fn finite(metres: f64) -> Metres {
    Metres::new(metres.min(f64::MAX)).unwrap_or(Metres::ZERO)
}
