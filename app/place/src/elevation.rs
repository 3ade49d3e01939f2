//! Height above sea level from what a device says.
//!
//! In go the altitude as reported with its accuracy and platform, what the person has said about the device, and the
//! undulation of the geoid; out comes the height above sea level, how far it may be off, and which reading was used.
//! What was reported is never changed: it is stored as it is, and read anew each time.

use crate::combine::Share;
use crate::format::{Height, height};
use crate::geoid;
use crate::uncertainty::sum;
use units::Metres;

/// What reports altitudes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Platform {
    /// Browsers on Android.
    Android,
    /// Browsers on iPhone and iPad.
    Ios,
    /// Everything else.
    Other,
}

impl Platform {
    /// The platform by the code that stands in records; unknown ones are [`Platform::Other`].
    pub fn of(code: &str) -> Self {
        match code {
            "android" => Self::Android,
            "ios" => Self::Ios,
            _ => Self::Other,
        }
    }
}

/// What an altitude is counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zero {
    /// The ellipsoid of WGS84.
    Ellipsoid,
    /// Sea level.
    SeaLevel,
}

impl Zero {
    /// A stable code.
    pub fn code(self) -> &'static str {
        match self {
            Self::Ellipsoid => "ellipsoid",
            Self::SeaLevel => "sea_level",
        }
    }

    /// The zero of a code.
    pub fn of(code: &str) -> Option<Self> {
        [Self::Ellipsoid, Self::SeaLevel].into_iter().find(|zero| zero.code() == code)
    }
}

/// Why an altitude was read as it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grounds {
    /// The person said so for this device.
    Person,
    /// It is known of the platform.
    Platform,
    /// The specification says so; what the device does is not known.
    Specification,
}

/// An altitude as reported.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Altitude {
    metres: Metres,
    accuracy: Option<Share>,
    platform: Platform,
}

impl Altitude {
    /// An altitude with its accuracy, both in metres.
    ///
    /// **Errors**: `None` where there is none: for NaN and the infinities, and for exactly 0 without an accuracy above
    /// 0, which is what devices say that have no altitude (common practice). A negative accuracy counts as none.
    pub fn reported(altitude_m: f64, accuracy_m: Option<f64>, platform: Platform) -> Option<Self> {
        let accuracy = accuracy_m.and_then(Metres::new).filter(|accuracy| *accuracy > Metres::ZERO);
        let metres = Metres::new(altitude_m)?;
        let said = metres != Metres::ZERO || accuracy.is_some();
        let accuracy = accuracy.map(|radius| Share { code: "device", radius });
        said.then_some(Self { metres, accuracy, platform })
    }

    /// The altitude with an accuracy in any case, where the radius of the position is known: three times that, if the
    /// device gave none.
    ///
    /// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, "Elevation", after USGS (2017): two to three
    /// times the horizontal error; the greater is taken.
    pub fn or_by_radius(self, radius: Option<Metres>) -> Self {
        let by_radius = radius.map(|radius| Share { code: "radius", radius: radius.times(3) });
        Self { accuracy: self.accuracy.or(by_radius), ..self }
    }

    /// What it is counted from, and why it is taken so.
    ///
    /// **Source**: W3C Geolocation, attribute altitude (above the ellipsoid of WGS84), and issue 210 of that
    /// specification (2025): above sea level on iPhone and iPad, above the ellipsoid on Android.
    pub fn zero(&self, overruled: Option<Zero>) -> (Zero, Grounds) {
        match (overruled, self.platform) {
            (Some(zero), _) => (zero, Grounds::Person),
            (None, Platform::Ios) => (Zero::SeaLevel, Grounds::Platform),
            (None, Platform::Android) => (Zero::Ellipsoid, Grounds::Platform),
            (None, Platform::Other) => (Zero::Ellipsoid, Grounds::Specification),
        }
    }
}

/// A height above sea level.
#[derive(Clone, Debug, PartialEq)]
pub struct Elevation {
    /// Metres above sea level.
    pub above_sea: Metres,
    /// How far it may be off; `None` where the device did not say.
    pub accuracy: Option<Metres>,
    /// What the accuracy is made of: `device` or `radius` (three times the position's), `geoid` (grid against model), and
    /// `zero` where the reading of the zero is only the specification's, so that the whole undulation is in doubt. They
    /// add up to it.
    pub shares: Vec<Share>,
    /// What the altitude was counted from.
    pub zero: Zero,
    /// Why it was read so.
    pub grounds: Grounds,
    /// The undulation that was taken off.
    pub undulation: Option<Metres>,
}

impl Elevation {
    /// The height with as many digits as its accuracy warrants, by the one rule of the house.
    pub fn rounded(&self) -> Height {
        height(self.above_sea, self.accuracy)
    }
}

/// The height above sea level: H = h − N, or the altitude itself where it is counted from there.
///
/// **Errors**: `None` where the undulation is needed and not at hand: nothing is guessed.
pub fn elevation(altitude: Altitude, overruled: Option<Zero>, undulation: Option<Metres>) -> Option<Elevation> {
    let (zero, grounds) = altitude.zero(overruled);
    let undulation = match zero {
        Zero::Ellipsoid => Some(undulation?),
        Zero::SeaLevel => None,
    };
    let mut shares = Vec::from_iter(altitude.accuracy);
    if let (Some(undulation), false) = (undulation, shares.is_empty()) {
        shares.push(Share { code: "geoid", radius: geoid::ERROR_MOST });
        if grounds == Grounds::Specification {
            shares.push(Share { code: "zero", radius: undulation.max(-undulation) });
        }
    }
    let accuracy = altitude.accuracy.map(|_| sum(shares.iter().map(|share| share.radius)));
    let above_sea = altitude.metres - undulation.unwrap_or(Metres::ZERO);
    Some(Elevation { above_sea, accuracy, shares, zero, grounds, undulation })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn metres(value: f64) -> Metres {
        Metres::new(value).expect("finite")
    }

    fn reported(altitude_m: f64, accuracy_m: Option<f64>, platform: Platform) -> Altitude {
        Altitude::reported(altitude_m, accuracy_m, platform).expect("an altitude")
    }

    /// Source: two phones at one place, Lille, 50.63293 N 3.06650 E, in a public report of 2020: Android 66.70 m, iPhone
    /// 24.24 m; N of EGM96 there is 44.72 m. Tolerance: the 10 m that both claimed.
    #[test]
    fn two_phones_at_one_place_agree() {
        let undulation = Some(metres(44.72));
        let android = elevation(reported(66.70, Some(10.0), Platform::Android), None, undulation).expect("a height");
        let iphone = elevation(reported(24.24, Some(10.0), Platform::Ios), None, undulation).expect("a height");
        assert!((android.above_sea.metres() - 21.98).abs() < 1e-9);
        assert_eq!(iphone.above_sea.metres(), 24.24);
        assert!((android.above_sea - iphone.above_sea).metres().abs() < 10.0);
        assert_eq!((android.zero, android.grounds), (Zero::Ellipsoid, Grounds::Platform));
        assert_eq!((iphone.zero, iphone.undulation), (Zero::SeaLevel, None));
        assert_eq!(android.rounded().plus_minus_m, Some(12));
    }

    #[test]
    fn the_sign_is_that_of_geodesy() {
        // Source: H = h − N; with N = −31.628 m (38.628155 N 90.220845 W, NIMA) 100 m are 131.628 m.
        let height = elevation(reported(100.0, None, Platform::Android), None, Some(metres(-31.628)));
        let height = height.expect("a height");
        assert!((height.above_sea.metres() - 131.628).abs() < 1e-9);
        assert_eq!((height.accuracy, height.rounded().plus_minus_m), (None, None));
    }

    #[test]
    fn the_person_overrules() {
        let android = reported(500.0, Some(3.0), Platform::Android);
        let height = elevation(android, Some(Zero::SeaLevel), None).expect("a height");
        assert_eq!((height.above_sea, height.grounds), (metres(500.0), Grounds::Person));
        assert_eq!(elevation(android, None, None), None);
    }

    #[test]
    fn an_unknown_device_puts_the_whole_undulation_in_doubt() {
        let height = elevation(reported(500.0, Some(3.0), Platform::of("desk")), None, Some(metres(-30.0)));
        let height = height.expect("a height");
        assert_eq!(height.grounds, Grounds::Specification);
        assert_eq!(height.shares.iter().map(|share| share.code).collect::<Vec<_>>(), ["device", "geoid", "zero"]);
        assert!((height.accuracy.expect("one").metres() - 34.2).abs() < 1e-9);
    }

    #[test]
    fn nothing_is_made_of_no_altitude() {
        for (altitude_m, accuracy_m) in [(0.0, None), (-0.0, Some(0.0)), (f64::NAN, Some(3.0)), (0.0, Some(-1.0))] {
            assert_eq!(Altitude::reported(altitude_m, accuracy_m, Platform::Android), None, "{altitude_m}");
        }
        assert!(Altitude::reported(0.0, Some(4.0), Platform::Ios).is_some());
        assert!(Altitude::reported(12.0, None, Platform::Ios).is_some());
    }

    #[test]
    fn the_radius_stands_in_for_a_missing_accuracy() {
        let silent = reported(1_237.4, None, Platform::Ios).or_by_radius(Some(metres(9.0)));
        let height = elevation(silent, None, None).expect("a height");
        assert_eq!(height.shares, [Share { code: "radius", radius: metres(27.0) }]);
        assert_eq!(height.accuracy, Some(metres(27.0)));
        let said = reported(1_237.4, Some(4.0), Platform::Ios).or_by_radius(Some(metres(9.0)));
        assert_eq!(elevation(said, None, None).expect("a height").accuracy, Some(metres(4.0)));
        assert_eq!(elevation(silent.or_by_radius(None), None, None).expect("a height").accuracy, Some(metres(27.0)));
    }

    #[test]
    fn codes_go_there_and_back() {
        for zero in [Zero::Ellipsoid, Zero::SeaLevel] {
            assert_eq!(Zero::of(zero.code()), Some(zero));
        }
        assert_eq!(Zero::of("msl"), None);
        assert_eq!(
            [Platform::of("ios"), Platform::of("android"), Platform::of("")],
            [Platform::Ios, Platform::Android, Platform::Other]
        );
    }

    proptest! {
        #[test]
        fn shares_add_up_and_print_holds_the_height(altitude in -500.0..9_000.0, accuracy in 0.1..500.0, n in -107.0..86.0) {
            let other = Altitude::reported(altitude, Some(accuracy), Platform::Other).expect("an altitude");
            let height = elevation(other, None, Metres::new(n)).expect("a height");
            let radius = height.accuracy.expect("one").metres();
            let total: f64 = height.shares.iter().map(|share| share.radius.metres()).sum();
            prop_assert!((radius - total).abs() < 1e-9);
            let printed = height.rounded();
            let off = (printed.metres as f64 - height.above_sea.metres()).abs();
            prop_assert!(off + radius <= printed.plus_minus_m.expect("one") as f64 + 1e-9);
        }
    }
}
