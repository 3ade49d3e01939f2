//! Coordinates and heights with only as many digits as they are worth.
//!
//! In goes a position with its radius, out come the parts of what is printed. The one rule of the house stands here:
//! the fewest digits whose rounding adds less than a tenth to the uncertainty, and the ± printed is the uncertainty
//! plus half the diagonal of the printed step, rounded up.

use crate::position::Position;
use crate::uncertainty::rounding_m;
use units::{Latitude, Metres};

/// How degrees are divided.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Notation {
    /// 47.6138°.
    #[default]
    Decimal,
    /// 47° 36.828′.
    Minutes,
    /// 47° 36′ 49.7″.
    Seconds,
}

/// Most decimals of each notation: beyond them lies less than a centimetre.
const DECIMALS_MOST: [u32; 3] = [7, 6, 4];
/// Decimals where no radius is known: about a metre. Common practice.
const DECIMALS_UNKNOWN: [u32; 3] = [5, 3, 1];

impl Notation {
    fn index(self) -> usize {
        match self {
            Self::Decimal => 0,
            Self::Minutes => 1,
            Self::Seconds => 2,
        }
    }

    /// Smallest undivided parts of a degree: degrees, minutes or seconds.
    fn per_degree(self) -> u64 {
        [1, 60, 3600][self.index()]
    }
}

/// One of two coordinates, ready to print.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Angle {
    /// Degrees: `47.6138` or `47`.
    pub degrees: String,
    /// Minutes: `36.828` or `36`; two digits before the point.
    pub minutes: Option<String>,
    /// Seconds: `49.7`.
    pub seconds: Option<String>,
    /// `N`, `S`, `E` or `W`.
    pub hemisphere: char,
}

impl Angle {
    /// The usual writing: `47.6138° N`, `47° 36.828′ N`, `47° 36′ 49.7″ N`.
    pub fn text(&self) -> String {
        let mut text = format!("{}°", self.degrees);
        if let Some(minutes) = &self.minutes {
            text = format!("{text} {minutes}′");
        }
        if let Some(seconds) = &self.seconds {
            text = format!("{text} {seconds}″");
        }
        format!("{text} {}", self.hemisphere)
    }
}

/// A position, ready to print.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// Latitude.
    pub latitude: Angle,
    /// Longitude.
    pub longitude: Angle,
    /// What to print after ±, whole metres; `None` where no radius is known.
    pub plus_minus_m: Option<u64>,
}

/// A position in a notation, with the digits that its radius warrants.
pub fn written(position: Position, notation: Notation) -> Written {
    let decimals = decimals(position, notation);
    let (latitude, longitude) = (position.latitude.degrees(), position.longitude.degrees());
    Written {
        latitude: angle(latitude, ['N', 'S'], notation, decimals),
        longitude: angle(longitude, ['E', 'W'], notation, decimals),
        plus_minus_m: position.radius.map(|radius| plus_minus_m(position.latitude, radius, notation, decimals)),
    }
}

/// The string of ISO 6709 in decimal degrees, with the digits that the radius warrants: `+47.6138+012.3043/`.
///
/// **Source**: ISO 6709:2008, Annex H: two and three digits before the point, the sign always written; a height only
/// together with its reference.
pub fn iso6709(position: Position) -> String {
    let decimals = decimals(position, Notation::Decimal);
    let one = |degrees: f64, digits: usize| {
        let text = divided(degrees, Notation::Decimal, decimals).0;
        let whole = text.split('.').next().unwrap_or(&text).len();
        let sign = if degrees < 0.0 { '-' } else { '+' };
        format!("{sign}{}{text}", "0".repeat(digits.saturating_sub(whole)))
    };
    format!("{}{}/", one(position.latitude.degrees(), 2), one(position.longitude.degrees(), 3))
}

/// The fewest decimals whose rounding adds less than a tenth to the radius.
fn decimals(position: Position, notation: Notation) -> u32 {
    let most = DECIMALS_MOST[notation.index()];
    let Some(radius) = position.radius else { return DECIMALS_UNKNOWN[notation.index()] };
    let enough = |decimals: &u32| rounding(position.latitude, notation, *decimals) < radius.metres() / 10.0;
    (0..most).find(enough).unwrap_or(most)
}

/// The most that rounding to so many decimals can move a position, metres.
fn rounding(latitude: Latitude, notation: Notation, decimals: u32) -> f64 {
    let steps = notation.per_degree() as f64 * libm::pow(10.0, f64::from(decimals));
    rounding_m(latitude, 1.0 / steps)
}

fn plus_minus_m(latitude: Latitude, radius: Metres, notation: Notation, decimals: u32) -> u64 {
    // Greater than the Earth is no number worth printing; the cast stops there.
    libm::ceil(radius.metres() + rounding(latitude, notation, decimals)) as u64
}

/// One coordinate in its parts. The letter follows the unrounded value.
fn angle(degrees: f64, letters: [char; 2], notation: Notation, decimals: u32) -> Angle {
    let (whole, minutes, seconds) = divided(degrees, notation, decimals);
    let hemisphere = letters[usize::from(degrees < 0.0)];
    Angle { degrees: whole, minutes, seconds, hemisphere }
}

/// Degrees, minutes and seconds. Rounded once, on the smallest part, and then split: there is never a 60.
fn divided(degrees: f64, notation: Notation, decimals: u32) -> (String, Option<String>, Option<String>) {
    let tens = 10_u64.pow(decimals);
    let per_degree = notation.per_degree() * tens;
    let steps = libm::round(degrees.abs() * per_degree as f64) as u64;
    let last = |steps: u64, digits: usize| match decimals {
        0 => format!("{steps:0digits$}"),
        _ => format!("{:0digits$}.{:0width$}", steps / tens, steps % tens, width = decimals as usize),
    };
    match notation {
        Notation::Decimal => (last(steps, 1), None, None),
        Notation::Minutes => ((steps / per_degree).to_string(), Some(last(steps % per_degree, 2)), None),
        Notation::Seconds => {
            let rest = steps % per_degree;
            let minute = 60 * tens;
            let minutes = format!("{:02}", rest / minute);
            ((steps / per_degree).to_string(), Some(minutes), Some(last(rest % minute, 2)))
        }
    }
}

/// A height, ready to print.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Height {
    /// Whole metres, rounded to 1, 10, 100, …
    pub metres: i64,
    /// What to print after ±; `None` where no accuracy is known.
    pub plus_minus_m: Option<u64>,
}

/// A height rounded by the same rule: the coarsest of 1, 10, 100 … metres that adds less than a tenth.
pub fn height(metres: Metres, accuracy: Option<Metres>) -> Height {
    let step = accuracy.map_or(1.0, |accuracy| height_step(accuracy.metres()));
    Height {
        metres: (libm::round(metres.metres() / step) * step) as i64,
        plus_minus_m: accuracy.map(|accuracy| libm::ceil(accuracy.metres().max(0.0) + step / 2.0) as u64),
    }
}

fn height_step(accuracy_m: f64) -> f64 {
    let mut step = 1.0;
    // Half a step is what rounding adds; no mountain needs more than thousands.
    while step < 1000.0 && step * 10.0 / 2.0 < accuracy_m / 10.0 {
        step *= 10.0;
    }
    step
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Position {
        Position::new(latitude, longitude, radius_m).expect("a position")
    }

    fn check(radius_m: f64, latitude: &str, longitude: &str, plus_minus_m: u64) {
        let written = written(at(47.613_812, 12.304_321, Some(radius_m)), Notation::Decimal);
        assert_eq!(written.latitude.text(), latitude);
        assert_eq!(written.longitude.text(), longitude);
        assert_eq!(written.plus_minus_m, Some(plus_minus_m));
    }

    #[test]
    fn digits_follow_the_radius() {
        // Half the diagonal of a step of 0.0001° at 47.6° N is 6.71 m, by the formula of the precision table.
        check(9.0, "47.61381° N", "12.30432° E", 10);
        check(67.0, "47.61381° N", "12.30432° E", 68);
        check(68.0, "47.6138° N", "12.3043° E", 75);
        check(1_000.0, "47.614° N", "12.304° E", 1_068);
        check(50_000.0, "47.61° N", "12.30° E", 50_672);
        check(70_000.0, "47.6° N", "12.3° E", 76_711);
        check(0.0, "47.6138120° N", "12.3043210° E", 1);
    }

    #[test]
    fn notations_are_divided_without_a_60() {
        let whole = |latitude, notation| written(at(latitude, -0.000_01, Some(5_000.0)), notation);
        assert_eq!(whole(47.999_99, Notation::Seconds).latitude.text(), "48° 00′ 00″ N");
        assert_eq!(whole(47.999_99, Notation::Minutes).latitude.text(), "48° 00.0′ N");
        assert_eq!(whole(-33.508_333_3, Notation::Seconds).latitude.text(), "33° 30′ 30″ S");
        // The letter follows the unrounded value.
        assert_eq!(whole(1.0, Notation::Decimal).longitude.text(), "0.000° W");
    }

    #[test]
    fn heights_are_rounded_like_coordinates() {
        let rounded = |metres, accuracy| {
            let height = height(Metres::new(metres).expect("finite"), accuracy);
            (height.metres, height.plus_minus_m)
        };
        assert_eq!(rounded(1_237.4, None), (1_237, None));
        assert_eq!(rounded(1_237.4, Metres::new(12.0)), (1_237, Some(13)));
        assert_eq!(rounded(1_237.4, Metres::new(60.0)), (1_240, Some(65)));
        assert_eq!(rounded(-3.6, Metres::new(3.0)), (-4, Some(4)));
    }

    proptest! {
        #[test]
        fn what_is_printed_holds_the_position(lat in -89.0..89.0, lon in -180.0..180.0, radius in 0.1..100_000.0) {
            let position = at(lat, lon, Some(radius));
            let written = written(position, Notation::Decimal);
            let signed = |angle: &Angle| {
                let degrees: f64 = angle.degrees.parse().expect("digits");
                if "SW".contains(angle.hemisphere) { -degrees } else { degrees }
            };
            let printed = at(signed(&written.latitude), signed(&written.longitude), None);
            let moved = crate::distance::distance(position, printed).metres();
            let allowed = written.plus_minus_m.expect("a radius") as f64 - radius;
            // A micrometre for the binary digits of the printed value, a thousandth for the curvature of the step.
            prop_assert!(moved <= allowed * 1.001 + 1e-6, "{} {}", moved, allowed);
        }
    }
}
