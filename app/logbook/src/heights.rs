//! The height of the ground from a device's altitude.
//!
//! In go the altitude as the device gave it, what is known of the device, and the geoid's undulation where it is at hand;
//! out comes what may be taken as the elevation, and how it was worked out. Nothing counts before a person takes it.

use crate::form::PlaceForm;
use crate::setup::DeviceSettings;
use crate::values::platform_code;
use place::Position;
use place::elevation::{Altitude, elevation};
pub use place::elevation::{Grounds, Zero};
pub use place::geoid::Geoid;
use ports::device::Platform;

/// A height above sea level to be taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeviceHeight {
    /// Whole metres above sea level, in as many digits as are known.
    pub metres: i64,
    /// What to print after ±.
    pub plus_minus_m: Option<u64>,
    /// What the device said, metres.
    pub raw_m: f64,
    /// What that was counted from.
    pub zero: Zero,
    /// Why it was read so.
    pub grounds: Grounds,
    /// How far sea level lies above the ellipsoid there, metres, where that was taken off.
    pub undulation_m: Option<f64>,
}

/// The altitude of a form as a device on this platform means it.
fn altitude(form: &PlaceForm, platform: Platform) -> Option<Altitude> {
    let platform = place::elevation::Platform::of(platform_code(platform));
    Altitude::reported(form.altitude_m?, form.altitude_accuracy_m, platform)
}

/// What a person has said of this device.
fn overruled(device: &DeviceSettings) -> Option<Zero> {
    device.altitude_zero.as_deref().and_then(Zero::of)
}

/// Whether the geoid is needed to make a height of what the device said.
pub fn needs_geoid(form: &PlaceForm, platform: Platform, device: &DeviceSettings) -> bool {
    altitude(form, platform).is_some_and(|altitude| altitude.zero(overruled(device)).0 == Zero::Ellipsoid)
}

/// The height that a form's altitude makes; none where there is no altitude, or where the geoid is needed and not here.
pub fn device_height(
    form: &PlaceForm,
    platform: Platform,
    device: &DeviceSettings,
    geoid: Option<&Geoid>,
) -> Option<DeviceHeight> {
    let altitude = altitude(form, platform)?;
    let (latitude, longitude) = form.coordinates()?;
    let position = Position::new(latitude, longitude, None)?;
    let made = elevation(altitude, overruled(device), geoid.map(|geoid| geoid.undulation(position)))?;
    let rounded = made.rounded();
    Some(DeviceHeight {
        metres: rounded.metres,
        plus_minus_m: rounded.plus_minus_m,
        raw_m: form.altitude_m?,
        zero: made.zero,
        grounds: made.grounds,
        undulation_m: made.undulation.map(units::Metres::metres),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Lille, as two phones reported it in public (see `place::elevation`): Android 66.70 m, iPhone 24.24 m.
    fn form(altitude_m: f64) -> PlaceForm {
        PlaceForm {
            latitude: Some(50.632_93),
            longitude: Some(3.066_5),
            altitude_m: Some(altitude_m),
            altitude_accuracy_m: Some(10.0),
            ..PlaceForm::default()
        }
    }

    fn geoid() -> Geoid {
        Geoid::read(include_bytes!("../../../public/geo/egm96.bin")).expect("the file that is served")
    }

    #[test]
    fn two_phones_at_one_place_give_one_height() {
        let device = DeviceSettings::default();
        let android = device_height(&form(66.70), Platform::Android, &device, Some(&geoid())).expect("a height");
        let iphone = device_height(&form(24.24), Platform::Ios, &device, None).expect("a height");
        assert_eq!((android.metres, android.zero), (22, Zero::Ellipsoid));
        assert_eq!((iphone.metres, iphone.zero, iphone.undulation_m), (24, Zero::SeaLevel, None));
        assert!(needs_geoid(&form(66.70), Platform::Android, &device));
        assert!(!needs_geoid(&form(24.24), Platform::Ios, &device));
    }

    #[test]
    fn what_a_person_says_of_the_device_decides() {
        let device = DeviceSettings { altitude_zero: Some("sea_level".to_owned()), ..DeviceSettings::default() };
        let height = device_height(&form(66.70), Platform::Android, &device, None).expect("a height");
        assert_eq!((height.metres, height.grounds), (67, Grounds::Person));
    }

    #[test]
    fn without_the_geoid_nothing_is_guessed() {
        assert_eq!(device_height(&form(66.70), Platform::Android, &DeviceSettings::default(), None), None);
        assert_eq!(device_height(&PlaceForm::default(), Platform::Ios, &DeviceSettings::default(), None), None);
    }
}
