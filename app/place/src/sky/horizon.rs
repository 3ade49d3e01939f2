//! From a place in space to a height above somebody's horizon.

use super::sun::Ecliptic;
use super::turn::Tilt;
use crate::ellipsoid::{FLATTENING, SEMI_MAJOR_M};
use crate::position::Position;

/// Metres along the axes of the true equator: to the equinox, a quarter turn east of it, and north.
pub(super) type Place = [f64; 3];

/// A place of the ecliptic along the axes of the equator.
pub(super) fn equatorial(ecliptic: &Ecliptic, tilt: &Tilt) -> Place {
    let (sin_lon, cos_lon) = libm::sincos(ecliptic.longitude);
    let (sin_lat, cos_lat) = libm::sincos(ecliptic.latitude);
    let (sin_tilt, cos_tilt) = libm::sincos(tilt.obliquity);
    let (x, y, z) = (cos_lat * cos_lon, cos_lat * sin_lon, sin_lat);
    [x, y * cos_tilt - z * sin_tilt, y * sin_tilt + z * cos_tilt].map(|share| share * ecliptic.distance_m)
}

/// Somebody who looks up, at sea level.
pub(super) struct Observer {
    latitude: (f64, f64),
    longitude: f64,
    /// Distance from the axis of the Earth and from the plane of the equator, metres.
    from_axis_m: f64,
    from_equator_m: f64,
}

/// Where something is seen.
pub(super) struct Seen {
    /// Height of its middle above the horizon without the bending of light, radians.
    pub(super) altitude: f64,
    /// Direction clockwise from north, radians.
    pub(super) azimuth: f64,
    /// How far it is, metres.
    pub(super) distance_m: f64,
}

impl Observer {
    /// **Source**: the ellipsoid in the space round it, e.g. Meeus (1998), chapter 11.
    pub(super) fn at(position: Position) -> Self {
        let (sin, cos) = libm::sincos(position.latitude.to_radians());
        let e2 = FLATTENING * (2.0 - FLATTENING);
        let prime_vertical_m = SEMI_MAJOR_M / (1.0 - e2 * sin * sin).sqrt();
        Self {
            latitude: (sin, cos),
            longitude: position.longitude.to_radians(),
            from_axis_m: prime_vertical_m * cos,
            from_equator_m: prime_vertical_m * (1.0 - e2) * sin,
        }
    }

    /// What is seen of a place in space, `sidereal` radians of Greenwich time. Parallax is in it, refraction is not.
    pub(super) fn look(&self, place: &Place, sidereal: f64) -> Seen {
        let (north, east, up) = self.axes(place, sidereal);
        let level2 = north * north + east * east;
        Seen {
            altitude: libm::atan2(up, level2.sqrt()),
            azimuth: libm::atan2(east, north),
            distance_m: (level2 + up * up).sqrt(),
        }
    }

    /// Metres north, east and up of the observer.
    fn axes(&self, place: &Place, sidereal: f64) -> (f64, f64, f64) {
        let (sin_turn, cos_turn) = libm::sincos(sidereal + self.longitude);
        let outward = place[0] * cos_turn + place[1] * sin_turn - self.from_axis_m;
        let east = place[1] * cos_turn - place[0] * sin_turn;
        let northward = place[2] - self.from_equator_m;
        let (sin, cos) = self.latitude;
        (northward * cos - outward * sin, east, northward * sin + outward * cos)
    }
}
