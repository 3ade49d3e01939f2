//! A place on the Earth and how sure we are of it.

use units::{Latitude, Longitude, Metres};

/// A position on WGS84 with the circle that holds where it really was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Degrees north.
    pub latitude: Latitude,
    /// Degrees east.
    pub longitude: Longitude,
    /// Radius of the circle; `None` where unknown, which is not the same as zero.
    pub radius: Option<Metres>,
}

impl Position {
    /// A position from bare numbers as they stand in records: degrees north, degrees east, metres.
    ///
    /// **Errors**: `None` for a latitude beyond the poles, for NaN and the infinities, and for a negative radius.
    pub fn new(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Option<Self> {
        let radius = match radius_m {
            Some(radius) if radius >= 0.0 => Some(Metres::new(radius)?),
            Some(_) => return None,
            None => None,
        };
        Some(Self { latitude: Latitude::new(latitude)?, longitude: Longitude::new(longitude)?, radius })
    }

    /// The radius as a bare number.
    pub fn radius_m(&self) -> Option<f64> {
        self.radius.map(Metres::metres)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn impossible_positions_cannot_be_made() {
        assert!(Position::new(47.6138, 12.3043, Some(9.0)).is_some());
        assert!(Position::new(90.1, 12.3, None).is_none());
        assert!(Position::new(47.6, f64::NAN, None).is_none());
        assert!(Position::new(47.6, 12.3, Some(-1.0)).is_none());
        assert!(Position::new(47.6, 12.3, Some(f64::NAN)).is_none());
    }
}
