//! What the writing of a distance or a direction says about how sure it is.
//!
//! In go the words, out come their value and how far it may be wrong either way. Words around them are left to others.

use crate::distance::WINDS;
use units::{Degrees, Metres};

/// Metres in the units that distances are written in.
/// **Source**: international yard and pound agreement, 1959: a yard is 0.9144 m; nautical mile 1,852 m (1929).
const UNITS: [(&str, f64); 9] = [
    ("m", 1.0),
    ("km", 1_000.0),
    ("mi", 1_609.344),
    ("mile", 1_609.344),
    ("miles", 1_609.344),
    ("yd", 0.9144),
    ("ft", 0.3048),
    ("nm", 1_852.0),
    ("nmi", 1_852.0),
];

/// A distance as written, `2.4 km`, and how far it may be wrong.
///
/// **Errors**: `None` without a number from 0 in digits and a unit: m, km, mi, yd, ft, nmi.
///
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, table of offset precision, adapted from
/// Wieczorek et al. (2004): half the precision, which is the fraction meant (halves, quarters, eighths), else one of the
/// last decimal, and for whole numbers 10 to the number of digits less two, at least 1.
pub fn distance(written: &str) -> Option<(Metres, Metres)> {
    let written = written.trim();
    let digits = written.find(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == ',')).unwrap_or(0);
    let (number, unit) = written.split_at(digits);
    let unit = unit.trim().trim_end_matches('.').to_lowercase();
    let unit_m = UNITS.iter().find(|(name, _)| *name == unit)?.1;
    let (value, error) = number_with_error(&number.replace(',', "."))?;
    Some((Metres::new(value * unit_m)?, Metres::new(error * unit_m)?))
}

fn number_with_error(number: &str) -> Option<(f64, f64)> {
    let value: f64 = number.parse().ok()?;
    let (whole, decimals) = number.split_once('.').unwrap_or((number, ""));
    let precision = match decimals.trim_end_matches('0') {
        "" if decimals.is_empty() => {
            let digits = whole.trim_start_matches('0').len();
            libm::pow(10.0, digits.saturating_sub(2) as f64)
        }
        "5" => 1.0 / 2.0,
        "25" | "75" => 1.0 / 4.0,
        "125" | "375" | "625" | "875" => 1.0 / 8.0,
        _ => libm::pow(10.0, -(decimals.len() as f64)),
    };
    Some((value, precision / 2.0))
}

/// A direction as written, and how far it may be wrong: a wind of the compass (`N`, `NE`, `NNE`, `NbE`), or degrees
/// (`217`, `217°`, `217.5`), which may be wrong by half of the last digit.
///
/// **Errors**: `None` for what is neither, and for degrees beyond 360.
///
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, table of heading precision: N ± 45°, NE ±
/// 22.5°, NNE ± 11.25°; winds with a "by" half of that by the same rule, which the table does not list.
pub fn direction(written: &str) -> Option<(Degrees, Degrees)> {
    let written = written.trim();
    let (bearing, error) = match wind(written) {
        Some(found) => found,
        None => degrees(written.trim_end_matches('°').trim_end())?,
    };
    Some((Degrees::new(bearing)?, Degrees::new(error)?))
}

fn degrees(number: &str) -> Option<(f64, f64)> {
    if !number.starts_with(|first: char| first.is_ascii_digit()) {
        return None;
    }
    let number = number.replace(',', ".");
    let value: f64 = number.parse().ok().filter(|value| (0.0..=360.0).contains(value))?;
    let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    Some((value, libm::pow(10.0, -(decimals as f64)) / 2.0))
}

fn wind(written: &str) -> Option<(f64, f64)> {
    let letters = written.to_ascii_uppercase();
    if let Some(at) = WINDS.iter().position(|wind| *wind == letters) {
        return Some((at as f64 * 22.5, [45.0, 22.5, 11.25][letters.len() - 1]));
    }
    // "N by E" lies half a wind of three letters from N towards E.
    let (from, towards) = letters.split_once('B')?;
    let at = |name: &str| WINDS.iter().position(|wind| *wind == name && name.len() <= 2);
    let (from, towards) = (at(from)?, at(towards).filter(|at| at.is_multiple_of(4))?);
    let turn = (towards + 16 - from) % 16;
    let side = match turn {
        1..=4 => 1.0,
        12..=15 => -1.0,
        _ => return None,
    };
    Some(((from as f64 * 22.5 + side * 11.25 + 360.0) % 360.0, 5.625))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn distance_m(written: &str) -> Option<(f64, f64)> {
        distance(written).map(|(length, error)| (length.metres(), error.metres()))
    }

    fn direction_deg(written: &str) -> Option<(f64, f64)> {
        direction(written).map(|(bearing, error)| (bearing.degrees(), error.degrees()))
    }

    #[test]
    fn distances_say_how_sure_they_are() {
        for (written, expected) in [
            ("2.4 km", Some((2_400.0, 50.0))),
            ("2,4km", Some((2_400.0, 50.0))),
            ("10.50 km", Some((10_500.0, 250.0))),
            ("10.125 km", Some((10_125.0, 62.5))),
            ("3 m.", Some((3.0, 0.5))),
            ("0 km", Some((0.0, 500.0))),
            ("0010 km", Some((10_000.0, 500.0))),
            (".5 mi", Some((804.672, 402.336))),
            ("km", None),
            ("2.4", None),
            ("2.4.1 km", None),
            ("-2 km", None),
            ("NaN km", None),
            ("", None),
            ("2 leagues", None),
        ] {
            assert_eq!(distance_m(written), expected, "{written}");
        }
    }

    #[test]
    fn directions_say_how_sure_they_are() {
        for (written, expected) in [
            ("N", Some((0.0, 45.0))),
            ("sw", Some((225.0, 22.5))),
            ("NNE", Some((22.5, 11.25))),
            ("NbE", Some((11.25, 5.625))),
            ("NbW", Some((348.75, 5.625))),
            ("NEbN", Some((33.75, 5.625))),
            ("SWbW", Some((236.25, 5.625))),
            ("217", Some((217.0, 0.5))),
            ("217.5°", Some((217.5, 0.05))),
            ("361", None),
            ("NbS", None),
            ("NNEbE", None),
            ("NbNE", None),
            ("NEN", None),
            ("-5", None),
            ("nan", None),
            ("", None),
        ] {
            assert_eq!(direction_deg(written), expected, "{written}");
        }
    }

    proptest! {
        #[test]
        fn no_words_make_them_stumble(written: String) {
            for (length, error) in distance(&written).into_iter() {
                prop_assert!(length >= Metres::ZERO && error >= Metres::ZERO);
            }
            for (bearing, error) in direction(&written).into_iter() {
                prop_assert!((0.0..=360.0).contains(&bearing.degrees()) && error > Degrees::default());
            }
        }

        #[test]
        fn long_numbers_make_them_no_trouble(digits in "[0-9]{1,400}", decimals in "(\\.[0-9]{0,400})?") {
            let _ = distance(&format!("{digits}{decimals} km"));
            let _ = direction(&format!("{digits}{decimals}"));
        }
    }
}
