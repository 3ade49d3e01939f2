//! Angles: a plain angle, and the two that say where something is on the Earth.

/// A plain angle in degrees: a bearing, a height above the horizon, the size of a rounding step.
///
/// **Shape**: any finite number.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Degrees(f64);

/// Degrees north of the equator.
///
/// **Shape**: from −90 to 90, both included.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Latitude(f64);

/// Degrees east of Greenwich.
///
/// **Shape**: from −180, included, to 180, not included.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Longitude(f64);

impl Degrees {
    /// An angle in degrees.
    ///
    /// **Errors**: `None` for NaN and the infinities.
    pub const fn new(degrees: f64) -> Option<Self> {
        if degrees.is_finite() { Some(Self(degrees)) } else { None }
    }

    /// The bare number, for use inside a formula.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The same angle in radians.
    pub fn to_radians(self) -> f64 {
        self.0.to_radians()
    }
}

impl Latitude {
    /// Degrees north, negative for south.
    ///
    /// **Errors**: `None` beyond the poles and for NaN.
    pub const fn new(degrees: f64) -> Option<Self> {
        if degrees >= -90.0 && degrees <= 90.0 { Some(Self(degrees)) } else { None }
    }

    /// The bare number, for use inside a formula.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The same latitude in radians.
    pub fn to_radians(self) -> f64 {
        self.0.to_radians()
    }
}

impl Longitude {
    /// Degrees east, negative for west; 181 is taken for −179.
    ///
    /// **Errors**: `None` for NaN and the infinities.
    pub fn new(degrees: f64) -> Option<Self> {
        degrees.is_finite().then(|| Self(within_half_turn(degrees)))
    }

    /// The bare number, for use inside a formula.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The same longitude in radians.
    pub fn to_radians(self) -> f64 {
        self.0.to_radians()
    }

    /// Degrees to go east (positive) or west (negative) to the other, the shorter way round.
    pub fn to(self, other: Self) -> Degrees {
        Degrees(within_half_turn(other.0 - self.0))
    }
}

/// The same direction between −180, included, and 180, not included.
fn within_half_turn(degrees: f64) -> f64 {
    if (-180.0..180.0).contains(&degrees) {
        // Left as it is, so that no digit is lost on what was right already.
        return degrees;
    }
    let turned = (degrees % 360.0 + 540.0) % 360.0 - 180.0;
    // A value a hair below −180 can round up to a full turn.
    if turned >= 180.0 { turned - 360.0 } else { turned }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn longitude(degrees: f64) -> Longitude {
        Longitude::new(degrees).expect("finite")
    }

    #[test]
    fn longitudes_come_round() {
        for (given, kept) in [
            (180.0, -180.0),
            (-180.0, -180.0),
            (181.5, -178.5),
            (-181.5, 178.5),
            (360.0, 0.0),
            (540.0, -180.0),
            (-900.0, -180.0),
            (12.304_321, 12.304_321),
        ] {
            assert_eq!(longitude(given).degrees(), kept, "{given}");
        }
        assert!(longitude(-180.0 - 1e-14).degrees() < 180.0);
        assert!((-180.0..180.0).contains(&longitude(f64::MAX).degrees()));
    }

    #[test]
    fn no_latitude_beyond_the_poles() {
        assert!(Latitude::new(90.0).is_some() && Latitude::new(-90.0).is_some());
        assert!(Latitude::new(90.000_001).is_none() && Latitude::new(f64::NAN).is_none());
        assert!(Longitude::new(f64::NAN).is_none() && Longitude::new(f64::INFINITY).is_none());
        assert!(Degrees::new(f64::NEG_INFINITY).is_none());
    }

    #[test]
    fn the_way_between_longitudes_is_the_shorter_one() {
        assert_eq!(longitude(179.0).to(longitude(-179.0)).degrees(), 2.0);
        assert_eq!(longitude(-179.0).to(longitude(179.0)).degrees(), -2.0);
    }
}
