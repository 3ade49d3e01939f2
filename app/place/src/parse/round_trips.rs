//! Each notation written and read again.

use super::*;
use crate::distance::distance;
use crate::grid::{mgrs, utm};
use proptest::prelude::*;

/// How far a position lies from the nearest reading of a text, metres.
fn off_m(text: &str, position: Position) -> f64 {
    let off = |reading: &Reading| distance(reading.position(), position).metres();
    parse(text).readings.iter().map(off).fold(f64::INFINITY, f64::min)
}

/// The only reading, with the problems that are allowed.
fn one(text: &str, notation: Notation, allowed: &[&str]) -> Result<(), TestCaseError> {
    let understood = parse(text);
    prop_assert!(understood.problems.iter().all(|problem| allowed.contains(&problem.code())), "{:?}", understood);
    prop_assert_eq!(understood.only().map(|reading| reading.notation), Some(notation), "{}", text);
    Ok(())
}

/// Degrees cut into whole ones, minutes and seconds, the last with so many decimals.
fn sexagesimal(degrees: f64, decimals: usize) -> (u32, u32, String) {
    let tens = libm::pow(10.0, decimals as f64);
    let steps = libm::floor(degrees.abs() * 3600.0 * tens) as u64;
    let (whole, per_minute) = (steps / tens as u64, 60);
    let seconds = format!("{:02}.{:0decimals$}", whole % per_minute, steps % tens as u64);
    ((whole / 3600) as u32, (whole / 60 % 60) as u32, seconds)
}

fn letter(degrees: f64, letters: [char; 2]) -> char {
    letters[usize::from(degrees < 0.0)]
}

fn sign(degrees: f64) -> char {
    if degrees < 0.0 { '-' } else { '+' }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    /// Degrees, minutes and seconds with letters before and behind, points and commas, in every mark.
    #[test]
    fn seconds_are_read_as_written(lat in -89.99..89.99, lon in -179.99..179.99, marks in 0..4_usize, comma in any::<bool>()) {
        let position = Position::new(lat, lon, None).expect("a position");
        let [degree, minute, second] = [["°", "'", "\""], ["º", "′", "″"], ["d", "m", "s"], [" ", " ", ""]][marks];
        let part = |value: f64| {
            let (degrees, minutes, seconds) = sexagesimal(value, 4);
            format!("{degrees}{degree}{minutes:02}{minute}{seconds}{second}")
        };
        let (north, east) = (letter(lat, ['N', 'S']), letter(lon, ['E', 'W']));
        for text in [
            format!("{} {north} {} {east}", part(lat), part(lon)),
            format!("{north} {} {east} {}", part(lat), part(lon)),
            format!("{} {east}; {} {north}", part(lon), part(lat)),
        ] {
            let text = if comma { text.replace('.', ",") } else { text };
            one(&text, Notation::Seconds, &[])?;
            // Cut off at the fourth decimal of a second, 3.1 mm, in both.
            prop_assert!(off_m(&text, position) < 0.0045, "{}", text);
        }
    }

    /// Signed pairs in either order, which are unclear where both fit.
    #[test]
    fn signed_pairs_are_read_in_either_order(lat in -90.0..90.0, lon in -180.0..180.0, comma in any::<bool>()) {
        let position = Position::new(lat, lon, None).expect("a position");
        for text in [format!("{lat:.6}, {lon:.6}"), format!("{lon:.6} {lat:.6}"), format!("({lon:+.6}; {lat:+.6})")] {
            let text = if comma { text.replace('.', ",") } else { text };
            // Half a step of a millionth of a degree in both: 0.08 m.
            prop_assert!(off_m(&text, position) < 0.08, "{} {:?}", text, parse(&text));
        }
    }

    #[test]
    fn geo_uris_are_read_as_written(lat in -90.0..90.0, lon in -180.0..179.999_999, radius in 0.0..10_000.0_f64) {
        let position = Position::new(lat, lon, None).expect("a position");
        let text = format!("geo:{lat:.7},{lon:.7};crs=wgs84;u={radius:.1}");
        one(&text, Notation::GeoUri, &["zero_zero"])?;
        prop_assert!(off_m(&text, position) < 0.008, "{}", text);
        let stated = parse(&text).readings[0].radius.metres();
        prop_assert!((stated - radius).abs() < 0.051 && parse(&text).readings[0].stated);
    }

    /// The three forms of ISO 6709, Annex H, with a height and without.
    #[test]
    fn strings_of_the_standard_are_read_as_written(lat in -89.99..89.99, lon in -179.99..179.99, height in -400..8_849) {
        let position = Position::new(lat, lon, None).expect("a position");
        let (north, east) = (sexagesimal(lat, 3), sexagesimal(lon, 3));
        let minutes = |degrees: f64| (degrees.abs() % 1.0 * 60.0 * 1e5).floor() / 1e5;
        let whole = |degrees: f64| degrees.abs().floor();
        let (up, right) = (sign(lat), sign(lon));
        let forms = [
            format!("{up}{:010.7}{right}{:011.7}", lat.abs(), lon.abs()),
            format!("{up}{:02}{:08.5}{right}{:03}{:08.5}", whole(lat), minutes(lat), whole(lon), minutes(lon)),
            format!("{up}{:02}{:02}{}{right}{:03}{:02}{}", north.0, north.1, north.2, east.0, east.1, east.2),
        ];
        for form in forms {
            one(&format!("{form}/"), Notation::Iso6709, &[])?;
            one(&format!("{form}{height:+}CRSWGS_84/"), Notation::Iso6709, &["height"])?;
            // Cut off at a thousandth of a second or a hundred thousandth of a minute: 31 and 19 mm, in both.
            prop_assert!(off_m(&format!("{form}/"), position) < 0.045, "{}", form);
        }
    }

    #[test]
    fn grid_references_of_any_length_are_read_as_written(lat in -80.0..84.0, lon in -180.0..180.0, digits in 0_u32..=5) {
        let position = Position::new(lat, lon, None).expect("a position");
        let text = mgrs(position, digits).expect("within the zones");
        one(&text, Notation::Mgrs, &[])?;
        let radius_m = parse(&text).readings[0].radius.metres();
        // The radius is on the plane: its scale is 0.9996 to 1.001 within a zone.
        prop_assert!(off_m(&text, position) <= radius_m * 1.002, "{}", text);
        let grid = utm(position).expect("within the zones");
        let band = crate::grid::band(position.latitude).expect("within the zones");
        for text in [
            format!("{}{band} {:.3} {:.3}", grid.zone, grid.easting_m, grid.northing_m),
            format!("{:.3} mE {:.3} mN zone {} {band}", grid.easting_m, grid.northing_m, grid.zone),
        ] {
            prop_assert!(off_m(&text, position) < 0.001, "{} {:?}", text, parse(&text));
        }
    }
}
