//! Sun and moon over a position: when the day begins and ends, and what stands in the sky at an instant.
//!
//! In go a position, a local day or an instant; out come times, heights and codes. Sea level and a free horizon are
//! meant, light is bent as usual. Weather, hills and sentences are left to others.
//!
//! **Accuracy**: against JPL's ephemeris DE421, 1900 to 2050: the sun passes a height within 1 s, and where it only
//! grazes it within 0.0003° of it; the moon stands within 0.003°, and its lit share is right to 0.0002. Real air bends
//! the light at the horizon by more or less than usual, which is worth half a minute at mid-latitudes.

mod crossing;
mod horizon;
mod moon;
mod sun;
mod turn;

use crate::instant::{Day, Instant};
use crate::position::Position;
use core::time::Duration;
use crossing::{Heights, Passages};
use horizon::{Observer, Place, equatorial};
use turn::{arguments, centuries, days_universal, sidereal, tilt};
use units::Degrees;

/// Altitude of the sun's middle when its upper edge is seen on the horizon, degrees: 34′ that the light is bent and
/// 16′ of half the disc.
/// **Source**: Meeus (1998), chapter 15; the same in the almanacs.
const HORIZON: f64 = -50.0 / 60.0;
/// What the bending of light lifts at the horizon, degrees.
/// **Source**: as [`HORIZON`].
const LIFTED: f64 = 34.0 / 60.0;
/// Altitudes of the sun's middle at which each twilight begins and ends, degrees.
/// **Source**: convention of the almanacs; Meeus (1998), chapter 15.
const TWILIGHTS: [f64; 3] = [-6.0, -12.0, -18.0];

const HALF_DAY_MS: i64 = 43_200_000;

/// How dark it is, from the altitude of the sun.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Light {
    /// The sun is more than 18° below the horizon.
    Night,
    /// 12° to 18° below.
    Astronomical,
    /// 6° to 12° below.
    Nautical,
    /// Below the horizon by at most 6°.
    Civil,
    /// Some of the sun is above the horizon.
    Day,
}

impl Light {
    /// A stable code.
    pub fn code(self) -> &'static str {
        match self {
            Self::Night => "night",
            Self::Astronomical => "astronomical_twilight",
            Self::Nautical => "nautical_twilight",
            Self::Civil => "civil_twilight",
            Self::Day => "day",
        }
    }

    fn at(altitude: f64) -> Self {
        let [civil, nautical, astronomical] = TWILIGHTS;
        match altitude {
            _ if altitude >= HORIZON => Self::Day,
            _ if altitude >= civil => Self::Civil,
            _ if altitude >= nautical => Self::Nautical,
            _ if altitude >= astronomical => Self::Astronomical,
            _ => Self::Night,
        }
    }
}

/// The course of the sun over a local day.
///
/// **Shape**: each list holds the instants within the day, in order and to the whole second: none, one, or two where
/// the same comes again before midnight.
#[derive(Clone, Debug, PartialEq)]
pub struct SunDay {
    /// Its upper edge rises.
    pub sunrise: Vec<Instant>,
    /// Its upper edge sets.
    pub sunset: Vec<Instant>,
    /// Civil, nautical and astronomical twilight begin.
    pub dawn: [Vec<Instant>; 3],
    /// Civil, nautical and astronomical twilight end.
    pub dusk: [Vec<Instant>; 3],
    /// When it is darkest: [`Light::Day`] in the polar day.
    pub darkest: Light,
    /// When it is brightest: below [`Light::Day`] in the polar night.
    pub brightest: Light,
}

/// The course of the sun over a local day.
///
/// **Accuracy**: as the module says; a height that the sun only just reaches may be missed or seen within 0.0003°.
pub fn sun_day(position: Position, day: Day) -> SunDay {
    let (from_ms, to_ms) = (day.start().unix_ms(), day.end().unix_ms());
    let heights = sun_heights(position, from_ms, to_ms);
    let within = |times: Vec<i64>| times.into_iter().filter_map(|at| whole_second(at, day)).collect();
    let Passages { up, down } = heights.passages(HORIZON);
    let twilights = TWILIGHTS.map(|level| heights.passages(level));
    let dawn = twilights.each_ref().map(|passages| within(passages.up.clone()));
    let dusk = twilights.each_ref().map(|passages| within(passages.down.clone()));
    let (low, high) = heights.reach();
    let (darkest, brightest) = (Light::at(low), Light::at(high));
    SunDay { sunrise: within(up), sunset: within(down), dawn, dusk, darkest, brightest }
}

/// The nearest whole second that belongs to the day.
fn whole_second(at_ms: i64, day: Day) -> Option<Instant> {
    let rounded = (at_ms + 500).div_euclid(1000) * 1000;
    Instant::new(if rounded < day.end().unix_ms() { rounded } else { rounded - 1000 })
}

/// The altitude of the sun's middle in degrees, over at most a day.
///
/// The place of the sun is computed at both ends and in the middle; a parabola through the three is within 0.01″.
fn sun_heights(position: Position, from_ms: i64, to_ms: i64) -> Heights<impl Fn(f64) -> f64> {
    let observer = Observer::at(position);
    let middle_ms = from_ms.midpoint(to_ms);
    let at = |unix_ms: i64| Sphere::at_ms(unix_ms).sun_place();
    let (before, middle, after) = (at(middle_ms - HALF_DAY_MS), at(middle_ms), at(middle_ms + HALF_DAY_MS));
    let now = Sphere::at_ms(middle_ms);
    let (days, tilt) = (now.days, now.tilt);
    Heights::new(from_ms, to_ms, move |at_ms| {
        let share = (at_ms - middle_ms as f64) / HALF_DAY_MS as f64;
        let place = core::array::from_fn(|axis| {
            let slope = (after[axis] - before[axis]) / 2.0;
            let bend = (after[axis] + before[axis]) / 2.0 - middle[axis];
            middle[axis] + share * (slope + share * bend)
        });
        observer.look(&place, sidereal(days + share / 2.0, &tilt)).altitude.to_degrees()
    })
}

/// The sky at an instant, seen from the middle of the Earth.
struct Sphere {
    /// Days of universal time since 2000-01-01 12:00.
    days: f64,
    t: f64,
    arguments: turn::Arguments,
    tilt: turn::Tilt,
}

impl Sphere {
    fn at_ms(unix_ms: i64) -> Self {
        let days = days_universal(unix_ms);
        let t = centuries(days);
        let arguments = arguments(t);
        let tilt = tilt(t, &arguments);
        Self { days, t, arguments, tilt }
    }

    fn sun(&self) -> sun::Ecliptic {
        sun::sun(self.t, &self.tilt)
    }

    fn sun_place(&self) -> Place {
        equatorial(&self.sun(), &self.tilt)
    }

    fn moon(&self) -> sun::Ecliptic {
        moon::moon(self.t, &self.arguments, &self.tilt)
    }
}

/// Where the moon stands in its month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// With the sun.
    New,
    /// Between new and first quarter.
    WaxingCrescent,
    /// A quarter turn east of the sun.
    FirstQuarter,
    /// Between first quarter and full.
    WaxingGibbous,
    /// Across from the sun.
    Full,
    /// Between full and last quarter.
    WaningGibbous,
    /// A quarter turn west of the sun.
    LastQuarter,
    /// Between last quarter and new.
    WaningCrescent,
}

impl Phase {
    /// A stable code.
    pub fn code(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::WaxingCrescent => "waxing_crescent",
            Self::FirstQuarter => "first_quarter",
            Self::WaxingGibbous => "waxing_gibbous",
            Self::Full => "full",
            Self::WaningGibbous => "waning_gibbous",
            Self::LastQuarter => "last_quarter",
            Self::WaningCrescent => "waning_crescent",
        }
    }

    /// By the longitude east of the sun. A quarter is named within half a day of it, in which the moon goes 6.1°
    /// (common practice).
    fn of(elongation: f64) -> Self {
        const HALF_DAYS_WAY: f64 = 6.1;
        let turned = elongation.rem_euclid(360.0);
        let quarter = libm::round(turned / 90.0);
        let near = (turned - quarter * 90.0).abs() <= HALF_DAYS_WAY;
        match (near, quarter as u8 % 4, (turned / 90.0) as u8) {
            (true, 0, _) => Self::New,
            (true, 1, _) => Self::FirstQuarter,
            (true, 2, _) => Self::Full,
            (true, ..) => Self::LastQuarter,
            (false, _, 0) => Self::WaxingCrescent,
            (false, _, 1) => Self::WaxingGibbous,
            (false, _, 2) => Self::WaningGibbous,
            (false, ..) => Self::WaningCrescent,
        }
    }
}

/// The moon at an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moon {
    /// The share of its disc that is lit, from 0 to 1.
    pub fraction: f64,
    /// Where it stands in its month.
    pub phase: Phase,
    /// Height of its middle above the horizon, without the bending of light.
    pub altitude: Degrees,
    /// Its direction, clockwise from north, from 0 to below 360.
    pub azimuth: Degrees,
    /// Whether some of it is seen above a free horizon: middle, half its disc and the bending of light together.
    pub up: bool,
}

/// The moon at an instant.
///
/// **Accuracy**: as the module says; nearer than a day to new moon the lit share may be less than it is off.
pub fn moon_at(position: Position, instant: Instant) -> Moon {
    let sphere = Sphere::at_ms(instant.unix_ms());
    let (sun, moon) = (sphere.sun(), sphere.moon());
    let place = equatorial(&moon, &sphere.tilt);
    let seen = Observer::at(position).look(&place, sidereal(sphere.days, &sphere.tilt));
    let altitude = seen.altitude.to_degrees();
    let half_disc = libm::asin((moon::RADIUS_M / seen.distance_m).min(1.0)).to_degrees();
    let angle = |degrees: f64| Degrees::new(degrees).expect("a direction to a finite place is finite");
    Moon {
        fraction: moon::lit(&moon, &sun),
        phase: Phase::of((moon.longitude - sun.longitude).to_degrees()),
        altitude: angle(altitude),
        azimuth: angle(seen.azimuth.to_degrees().rem_euclid(360.0)),
        up: altitude + half_disc + LIFTED > 0.0,
    }
}

/// How an instant lies between sunset and sunrise.
///
/// **Shape**: `None` where there was or will be no such passage for more than a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hour {
    /// The sun is up.
    Day {
        /// Since it rose.
        since_sunrise: Option<Duration>,
        /// Until it sets.
        before_sunset: Option<Duration>,
    },
    /// The sun is down.
    Night {
        /// Since it set.
        since_sunset: Option<Duration>,
        /// Until it rises.
        before_sunrise: Option<Duration>,
    },
}

/// What a night's log says of an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sky {
    /// How dark it is.
    pub light: Light,
    /// How long since sunset and until sunrise, or the other way round by day.
    pub hour: Hour,
    /// Height of the sun's middle above the horizon, without the bending of light.
    pub sun_altitude: Degrees,
    /// The moon.
    pub moon: Moon,
}

/// The sky at an instant.
///
/// **Accuracy**: times within a second or two where the sun sets at a slant.
pub fn sky_at(position: Position, instant: Instant) -> Sky {
    let at_ms = instant.unix_ms();
    let before = sun_heights(position, at_ms - 2 * HALF_DAY_MS, at_ms);
    let after = sun_heights(position, at_ms, at_ms + 2 * HALF_DAY_MS);
    let altitude = before.last();
    let (last, next) = (before.passages(HORIZON), after.passages(HORIZON));
    let since = |times: &[i64]| times.last().map(|time| lasting(at_ms - time));
    let until = |times: &[i64]| times.first().map(|time| lasting(time - at_ms));
    let light = Light::at(altitude);
    let hour = match light {
        Light::Day => Hour::Day { since_sunrise: since(&last.up), before_sunset: until(&next.down) },
        _ => Hour::Night { since_sunset: since(&last.down), before_sunrise: until(&next.up) },
    };
    let sun_altitude = Degrees::new(altitude).expect("a direction to a finite place is finite");
    Sky { light, hour, sun_altitude, moon: moon_at(position, instant) }
}

fn lasting(ms: i64) -> Duration {
    Duration::from_millis(ms.unsigned_abs())
}

#[cfg(test)]
mod tests;
