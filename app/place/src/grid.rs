//! UTM and MGRS: a position as metres on a zone's plane, and back.
//!
//! In go positions or grid references, out comes the other. Beyond 84° N and 80° S lies UPS, which is refused; so is
//! any datum but WGS84. Reading what people type is left to [`crate::parse`].

mod kruger;

use crate::position::Position;
use units::Latitude;

/// Metres added to every easting.
const FALSE_EASTING_M: f64 = 500_000.0;
/// Metres added to a northing south of the equator.
const FALSE_NORTHING_M: f64 = 10_000_000.0;
/// Scale on the central meridian.
/// **Source**: NIMA TM8358.2 (1989), chapter 2: these three.
const SCALE: f64 = 0.9996;
/// Bands from south to north, 8° each but the last, which has 12°.
const BANDS: &[u8; 20] = b"CDEFGHJKLMNPQRSTUVWX";
/// Letters of the columns of 100 km in three zones, one after the other.
const COLUMNS: &[u8; 24] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
/// Letters of the rows of 100 km; in even zones they start at F.
const ROWS: &[u8; 20] = b"ABCDEFGHJKLMNPQRSTUV";
/// Side of a lettered square.
const SQUARE_M: f64 = 100_000.0;

/// Which half of the Earth a northing counts in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hemisphere {
    /// From the equator.
    North,
    /// From ten million metres south of it.
    South,
}

impl Hemisphere {
    /// `N` or `S`.
    pub fn code(self) -> char {
        match self {
            Self::North => 'N',
            Self::South => 'S',
        }
    }
}

/// A place on the plane of a zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Utm {
    /// Zone, 1 to 60.
    pub zone: u8,
    /// Hemisphere.
    pub hemisphere: Hemisphere,
    /// Easting in metres, 500,000 on the central meridian.
    pub easting_m: f64,
    /// Northing in metres.
    pub northing_m: f64,
}

/// Why a position has no grid reference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GridProblem {
    /// It lies beyond 84° N or 80° S.
    Polar,
}

/// The zone in which a position belongs, with the exceptions for Norway and Svalbard.
///
/// **Errors**: [`GridProblem::Polar`].
///
/// **Source**: NIMA TM8358.1 (1990), chapter 2.
pub fn zone(position: Position) -> Result<u8, GridProblem> {
    let (latitude, longitude) = (position.latitude.degrees(), position.longitude.degrees());
    if !(-80.0..=84.0).contains(&latitude) {
        return Err(GridProblem::Polar);
    }
    let usual = (libm::floor((longitude + 180.0) / 6.0) as u8).min(59) + 1;
    Ok(match longitude {
        3.0..12.0 if (56.0..64.0).contains(&latitude) => 32,
        0.0..9.0 if latitude >= 72.0 => 31,
        9.0..21.0 if latitude >= 72.0 => 33,
        21.0..33.0 if latitude >= 72.0 => 35,
        33.0..42.0 if latitude >= 72.0 => 37,
        _ => usual,
    })
}

/// The letter of the band in which a latitude lies.
///
/// **Errors**: [`GridProblem::Polar`].
pub fn band(latitude: Latitude) -> Result<char, GridProblem> {
    let degrees = latitude.degrees();
    if !(-80.0..=84.0).contains(&degrees) {
        return Err(GridProblem::Polar);
    }
    let index = (libm::floor((degrees + 80.0) / 8.0) as usize).min(BANDS.len() - 1);
    Ok(char::from(BANDS[index]))
}

/// From which latitude to which a band reaches. `None` for what is no band.
pub(crate) fn band_reach(band: char) -> Option<(f64, f64)> {
    let index = BANDS.iter().position(|letter| char::from(*letter) == band)?;
    let south = index as f64 * 8.0 - 80.0;
    Some((south, if band == 'X' { 84.0 } else { south + 8.0 }))
}

/// The place of a position on the plane of its zone.
///
/// **Accuracy**: better than a micrometre within a zone, and than a millimetre within 6° of its central meridian.
///
/// **Errors**: [`GridProblem::Polar`].
///
/// **Source**: Karney (2011), Transverse Mercator with an accuracy of a few nanometers, J. Geodesy 85: 475–485.
pub fn utm(position: Position) -> Result<Utm, GridProblem> {
    let zone = zone(position)?;
    let east_rad = (position.longitude.degrees() - central_meridian(zone)).to_radians();
    let (easting_m, northing_m) = kruger::forward(position.latitude.to_radians(), east_rad);
    let hemisphere = if position.latitude.degrees() < 0.0 { Hemisphere::South } else { Hemisphere::North };
    let northing_m = SCALE * northing_m + false_northing_m(hemisphere);
    Ok(Utm { zone, hemisphere, easting_m: FALSE_EASTING_M + SCALE * easting_m, northing_m })
}

impl Utm {
    /// The position of a place on the plane of a zone; without a radius.
    ///
    /// **Errors**: `None` for a zone that does not exist and for metres that no zone has.
    pub fn position(&self) -> Option<Position> {
        let fits = (1..=60).contains(&self.zone)
            && (0.0..=1_000_000.0).contains(&self.easting_m)
            && (-1.0..=FALSE_NORTHING_M).contains(&self.northing_m);
        if !fits {
            return None;
        }
        let northing_m = self.northing_m - false_northing_m(self.hemisphere);
        let (lat_rad, east_rad) = kruger::inverse((self.easting_m - FALSE_EASTING_M) / SCALE, northing_m / SCALE);
        Position::new(lat_rad.to_degrees(), central_meridian(self.zone) + east_rad.to_degrees(), None)
    }
}

/// The MGRS reference of a position with so many digits in each direction, at most 5: the square that holds it, so
/// digits are cut off and not rounded.
///
/// **Errors**: [`GridProblem::Polar`].
///
/// **Source**: NIMA TM8358.1 (1990), chapter 3.
pub fn mgrs(position: Position, digits: u32) -> Result<String, GridProblem> {
    let utm = utm(position)?;
    let band = band(position.latitude)?;
    let (column, row) = (libm::floor(utm.easting_m / SQUARE_M), libm::floor(utm.northing_m / SQUARE_M));
    let first_column = usize::from(utm.zone - 1) % 3 * 8;
    let column_letter = char::from(COLUMNS[(first_column + column as usize - 1) % COLUMNS.len()]);
    let row_letter = char::from(ROWS[(row as usize + first_row(utm.zone)) % ROWS.len()]);
    let digits = digits.min(5);
    let side_m = libm::pow(10.0, f64::from(5 - digits));
    let within = |metres: f64, square: f64| libm::floor((metres - square * SQUARE_M) / side_m) as u32;
    let mut text = format!("{:02}{band}{column_letter}{row_letter}", utm.zone);
    if digits > 0 {
        let width = digits as usize;
        let (east, north) = (within(utm.easting_m, column), within(utm.northing_m, row));
        text.push_str(&format!("{east:0width$}{north:0width$}"));
    }
    Ok(text)
}

/// The middle of the square that an MGRS reference names, and the side of the square in metres.
///
/// **Errors**: `None` for what names no square: wrong letters for the zone, a band in which it does not lie.
pub(crate) fn square(reference: &str) -> Option<(Position, f64)> {
    let signs: Vec<char> = reference.chars().collect();
    let zone_digits = signs.iter().take_while(|sign| sign.is_ascii_digit()).count();
    let zone: u8 = signs.get(..zone_digits)?.iter().collect::<String>().parse().ok()?;
    let [band, column, row] = *signs.get(zone_digits..zone_digits + 3)? else { return None };
    let digits: String = signs[zone_digits + 3..].iter().collect();
    if !(1..=60).contains(&zone)
        || digits.len() % 2 == 1
        || digits.len() > 10
        || !digits.bytes().all(|b| b.is_ascii_digit())
    {
        return None;
    }
    let half = digits.len() / 2;
    let side_m = libm::pow(10.0, 5.0 - half as f64);
    let within = |text: &str| if text.is_empty() { Some(0.0) } else { text.parse::<f64>().ok() };
    let (east_m, north_m) = (within(&digits[..half])? * side_m, within(&digits[half..])? * side_m);
    let letter = |letters: &[u8], sign: char| letters.iter().position(|letter| char::from(*letter) == sign);
    let first_column = usize::from(zone - 1) % 3 * 8;
    let column = letter(COLUMNS, column)?.checked_sub(first_column).filter(|column| *column < 8)? + 1;
    let row = (letter(ROWS, row)? + ROWS.len() - first_row(zone)) % ROWS.len();
    let easting_m = column as f64 * SQUARE_M + east_m + side_m / 2.0;
    let row_m = row as f64 * SQUARE_M + north_m + side_m / 2.0;
    let (south, north) = band_reach(band)?;
    let hemisphere = if band < 'N' { Hemisphere::South } else { Hemisphere::North };
    // Rows repeat every 2,000 km, which is 18° and more than a band; a square may reach over the edge of its band.
    let slack = 1.0;
    (0..5)
        .map(|turn| Utm { zone, hemisphere, easting_m, northing_m: row_m + f64::from(turn) * 2_000_000.0 })
        .filter_map(|utm| utm.position())
        .find(|position| (south - slack..north + slack).contains(&position.latitude.degrees()))
        .map(|position| (position, side_m))
}

/// By how many letters the rows of a zone are shifted.
fn first_row(zone: u8) -> usize {
    if zone.is_multiple_of(2) { 5 } else { 0 }
}

fn central_meridian(zone: u8) -> f64 {
    f64::from(zone) * 6.0 - 183.0
}

fn false_northing_m(hemisphere: Hemisphere) -> f64 {
    match hemisphere {
        Hemisphere::North => 0.0,
        Hemisphere::South => FALSE_NORTHING_M,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn beyond_the_zones_is_refused() {
        for latitude in [84.000_1, -80.000_1, 90.0] {
            let position = Position::new(latitude, 12.0, None).expect("a position");
            assert_eq!(utm(position), Err(GridProblem::Polar));
            assert_eq!(mgrs(position, 5), Err(GridProblem::Polar));
        }
    }

    #[test]
    fn squares_that_do_not_exist_are_refused() {
        for reference in ["", "33", "33T", "33TVN1", "61TVN", "0TVN", "33IVN", "33TAN", "33TVO", "33TVA00", "33TVNab"] {
            assert_eq!(square(reference), None, "{reference}");
        }
    }

    proptest! {
        #[test]
        fn positions_go_to_the_grid_and_back(lat in -80.0..84.0, lon in -180.0..180.0) {
            let position = Position::new(lat, lon, None).expect("a position");
            let back = utm(position).expect("within the zones").position().expect("a zone");
            // A micrometre: 1e-11 degrees.
            prop_assert!((back.latitude.degrees() - lat).abs() < 1e-11);
            prop_assert!(position.longitude.to(back.longitude).degrees().abs() * libm::cos(lat.to_radians()) < 1e-11);
        }

        #[test]
        fn a_square_holds_its_position(lat in -80.0..84.0, lon in -180.0..180.0, digits in 0_u32..=5) {
            let position = Position::new(lat, lon, None).expect("a position");
            let reference = mgrs(position, digits).expect("within the zones");
            let (middle, side_m) = square(&reference).expect("its own reference");
            let metres = crate::distance::distance(position, middle).metres();
            // Half the diagonal, with the scale of the zone and its edge allowed for.
            prop_assert!(metres <= side_m * 0.708 * 1.002, "{} {} {}", reference, metres, side_m);
        }
    }
}
