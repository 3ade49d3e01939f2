//! The datums that people write, and how far a position may be off where nobody converted it.
//!
//! In goes the name of a datum as it stands on a map or in a notebook; out come its code and a share of the uncertainty.
//! Nothing is ever converted: the words stay as they were written, and the circle grows.

mod table;

use crate::combine::Share;
use table::{KNOWN, known_by};
use units::Metres;

/// The most that positions on any two datums may lie apart: for one that nobody named.
/// **Source**: Chapman & Wieczorek (2020), Georeferencing Best Practices, "Uncertainty from Unknown Datum": 5,359 m,
/// after Wieczorek (2019); the worst case of the whole world.
pub const UNKNOWN: Metres = Metres::whole(5_359);

/// No name of a datum has more words.
const WORDS_MOST: usize = 12;

/// A datum other than WGS84.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Datum {
    /// Its name, short and stable: `NAD27`.
    pub code: &'static str,
    /// The number of its geographic coordinates in the EPSG dataset, as in `EPSG:4267`.
    pub epsg: u16,
    /// Up to so far from there lies the position that has the same numbers on WGS84, anywhere in the datum's area.
    pub shift: Metres,
    names: &'static [&'static str],
}

/// What the name of a datum means for a position that is taken as if on WGS84.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reading {
    /// It is on WGS84.
    Wgs84,
    /// It is on this one, and was not converted.
    Unconverted(&'static Datum),
    /// No name, or none that is known here.
    Unknown,
}

impl Reading {
    /// What a name means. Case, spaces, accents and signs do not matter: `N.A.D. 1927`, `nad27` and `EPSG:4267` are
    /// one. What follows a year is a place or a realisation: `NAD27 CONUS`, `ED50 (Spain)`, `WGS84 (G1762)`.
    pub fn of(written: &str) -> Self {
        let words: Vec<&str> =
            written.split([' ', '(', ',', ';', '_']).filter(|word| !word.is_empty()).take(WORDS_MOST).collect();
        let names = (1..=words.len()).rev().map(|count| plain(&words[..count].concat()));
        let mut found = names.enumerate().filter(|(at, name)| *at == 0 || name.ends_with(|c: char| c.is_ascii_digit()));
        found.find_map(|(_, name)| Self::of_name(&name)).unwrap_or(Self::Unknown)
    }

    fn of_name(name: &str) -> Option<Self> {
        let number = name.find("epsg").map_or(name, |at| &name[at..]);
        if ["wgs84", "wgs1984", "worldgeodeticsystem1984", "epsg4326", "epsg4979", "gps"].contains(&number) {
            return Some(Self::Wgs84);
        }
        known_by(number).map(Self::Unconverted)
    }

    /// The share of the uncertainty: none on WGS84, the datum's [`Datum::shift`], or [`UNKNOWN`].
    pub fn share(self) -> Share {
        let (code, radius) = match self {
            Self::Wgs84 => ("datum", Metres::ZERO),
            Self::Unconverted(datum) => ("datum", datum.shift),
            Self::Unknown => ("datum_unknown", UNKNOWN),
        };
        Share { code, radius }
    }
}

/// All datums that are known, those asked for most first.
pub fn all() -> &'static [Datum] {
    &KNOWN
}

/// Small letters and digits alone.
fn plain(written: &str) -> String {
    written.chars().filter_map(without_accent).filter(char::is_ascii_alphanumeric).collect()
}

/// A letter as it stands in the names of the table.
fn without_accent(letter: char) -> Option<char> {
    let small = letter.to_lowercase().next()?;
    Some(match small {
        'à' | 'á' | 'â' | 'ã' | 'ä' => 'a',
        'ç' => 'c',
        'é' | 'è' | 'ê' => 'e',
        'í' => 'i',
        'ó' | 'ô' | 'õ' | 'ö' => 'o',
        'ú' | 'ü' => 'u',
        other => other,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn code(written: &str) -> &'static str {
        match Reading::of(written) {
            Reading::Wgs84 => "WGS84",
            Reading::Unconverted(datum) => datum.code,
            Reading::Unknown => "?",
        }
    }

    #[test]
    fn names_are_known_however_they_are_written() {
        for (written, expected) in [
            ("WGS84", "WGS84"),
            ("WGS 84", "WGS84"),
            ("World Geodetic System 1984", "WGS84"),
            ("EPSG:4326", "WGS84"),
            ("N.A.D. 1927", "NAD27"),
            ("North American Datum of 1927", "NAD27"),
            ("epsg:4267", "NAD27"),
            ("ED-50", "ED50"),
            ("European Datum 1950", "ED50"),
            ("Potsdam", "DHDN"),
            ("Pulkovo 1942", "Pulkovo 1942"),
            ("S-42", "Pulkovo 1942"),
            ("OSGB 36", "OSGB36"),
            ("Córrego Alegre", "Corrego Alegre"),
            ("Bogotá 1975", "Bogota 1975"),
            ("AGD66", "AGD66"),
            ("NAD27 CONUS", "NAD27"),
            ("North American Datum 1927 (Alaska)", "NAD27"),
            ("ED50 (Spain)", "ED50"),
            ("Pulkovo 1942(58)", "Pulkovo 1942(58)"),
            ("Pulkovo 1942 (83)", "Pulkovo 1942"),
            ("WGS84 (G1762)", "WGS84"),
            ("WGS 84, assumed", "WGS84"),
            ("urn:ogc:def:crs:EPSG::4267", "NAD27"),
            // Another datum than Cape.
            ("Cape Canaveral", "?"),
            ("27", "?"),
            ("", "?"),
            ("not recorded", "?"),
            // Ellipsoids are no datums.
            ("Clarke 1866", "?"),
            ("Airy 1830", "?"),
            ("EPSG:1", "?"),
        ] {
            assert_eq!(code(written), expected, "{written}");
        }
    }

    #[test]
    fn no_name_means_two_datums() {
        let mut names: Vec<&str> = all().iter().flat_map(|datum| datum.names).copied().collect();
        assert!(names.iter().all(|name| plain(name) == **name), "{names:?}");
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), count);
        assert!(all().iter().all(|datum| datum.shift < UNKNOWN));
    }

    #[test]
    fn an_unknown_datum_costs_the_published_worst_case() {
        assert_eq!(Reading::of("").share().radius.metres(), 5_359.0);
        assert_eq!(Reading::of("WGS84").share().radius, Metres::ZERO);
        assert_eq!(Reading::of("Tokyo").share(), Share { code: "datum", radius: Metres::whole(700) });
    }
}
