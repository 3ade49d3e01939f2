//! Grid references as people write them.

use super::{Notation, Problem, Work};
use crate::grid::{Hemisphere, Utm, band, band_reach, square};
use crate::position::Position;
use units::Metres;

/// Least metres of an easting or northing: anything smaller is an angle.
const METRES_LEAST: f64 = 10_000.0;

/// Reads an MGRS reference; false when the text has not its form.
pub(super) fn mgrs(work: &mut Work, text: &str) -> bool {
    // Any other sign is seen at once, without a copy in capitals.
    if text.bytes().any(|sign| sign.is_ascii() && !sign.is_ascii_alphanumeric() && !b" :-".contains(&sign)) {
        return false;
    }
    let upper = text.to_uppercase();
    let compact: String = upper.trim_start_matches("MGRS").chars().filter(|sign| !" :-".contains(*sign)).collect();
    let digits = compact.chars().take_while(char::is_ascii_digit).count();
    let letters = compact[digits..].chars().take_while(char::is_ascii_uppercase).count();
    let rest_digits = compact[digits + letters..].chars().all(|sign| sign.is_ascii_digit());
    if !(1..=2).contains(&digits) || letters != 3 || !rest_digits {
        return false;
    }
    match square(&compact) {
        Some((middle, side_m)) => work.grid_reading(middle, half_diagonal(side_m), Notation::Mgrs),
        None => work.problem(Problem::Grid),
    }
    true
}

/// Reads a UTM reference: zone and letter, easting, northing; or the zone at the end. False when it has not the form.
pub(super) fn utm(work: &mut Work, text: &str) -> bool {
    if !has_metres(text) {
        return false;
    }
    let upper = text.to_uppercase();
    let pieces: Vec<Piece> = pieces(&upper);
    let numbers: Vec<(usize, f64, usize)> = pieces
        .iter()
        .enumerate()
        .filter_map(|(at, piece)| match piece {
            Piece::Number(value, decimals) => Some((at, *value, *decimals)),
            Piece::Word(_) => None,
        })
        .collect();
    let metric = |(_, value, _): &(usize, f64, usize)| *value >= METRES_LEAST;
    let (zone, one, two) = match numbers[..] {
        [zone, one, two]
            if metric(&one) && (metric(&two) || two.1 < METRES_LEAST && one.1 >= 100_000.0) && !metric(&zone) =>
        {
            (zone, one, two)
        }
        [one, two, zone] if metric(&one) && (metric(&two) || one.1 >= 100_000.0) && !metric(&zone) => (zone, one, two),
        _ => return false,
    };
    let letter = match pieces.get(zone.0 + 1) {
        // E and N before the metres are directions, not bands.
        Some(Piece::Word(word))
            if word == "E" && matches!(pieces.get(zone.0 + 3), Some(Piece::Word(word)) if word == "N") =>
        {
            None
        }
        Some(Piece::Word(word)) => single(word),
        _ => None,
    };
    let named = || zone.0 < one.0 || pieces.iter().any(|piece| matches!(piece, Piece::Word(word) if word == "ZONE"));
    if zone.2 > 0 || (letter.is_none() && !(named() && [one, two].iter().any(is_easting))) {
        return false;
    }
    for piece in &pieces {
        match piece {
            Piece::Word(word)
                if !KNOWN.contains(&word.as_str()) && letter.is_none_or(|letter| *word != letter.to_string()) =>
            {
                work.words_left(word)
            }
            _ => {}
        }
    }
    // An easting never reaches a million; a northing given first is taken for one.
    let (easting, northing) = if one.1 >= 1_000_000.0 && two.1 < 1_000_000.0 {
        work.problem(Problem::Swapped);
        (two, one)
    } else {
        (one, two)
    };
    let side_m = libm::pow(10.0, -(easting.2.min(northing.2).min(9) as f64));
    let zone = if (1.0..=60.0).contains(&zone.1) { zone.1 as u8 } else { 0 };
    let of = |hemisphere| Utm { zone, hemisphere, easting_m: easting.1, northing_m: northing.1 }.position();
    let found = match letter {
        Some(letter) => lettered(work, letter, of),
        None => unlettered(work, of),
    };
    if found.is_empty() {
        work.problem(Problem::Grid);
    }
    for position in found {
        work.grid_reading(position, half_diagonal(side_m), Notation::Utm);
    }
    true
}

/// Whether five digits in a row begin a number, as every easting has them.
fn has_metres(text: &str) -> bool {
    let (mut digits, mut decimals) = (0, false);
    text.bytes().any(|sign| {
        match sign {
            b'0'..=b'9' if !decimals => digits += 1,
            b'0'..=b'9' => {}
            // A point before a number is none of it.
            b'.' => decimals = digits > 0,
            _ => (digits, decimals) = (0, false),
        }
        digits >= 5
    })
}

/// Words that belong to a UTM reference.
const KNOWN: [&str; 14] =
    ["UTM", "ZONE", "E", "N", "M", "ME", "MN", "EASTING", "NORTHING", "EAST", "NORTH", "SOUTH", "UPS", "EN"];

/// Whether a number may be an easting, which no angle and no height is.
fn is_easting((_, metres, _): &(usize, f64, usize)) -> bool {
    (100_000.0..1_000_000.0).contains(metres)
}

/// What the letter behind a zone allows, of the places in either hemisphere.
fn lettered(work: &mut Work, letter: char, of: impl Fn(Hemisphere) -> Option<Position>) -> Vec<Position> {
    let reach = band_reach(letter);
    let as_band = reach.and_then(|(south, north)| {
        let position = of(if letter < 'N' { Hemisphere::South } else { Hemisphere::North })?;
        // A hundredth of a degree: a place on the edge of its band.
        (south - 0.01..=north + 0.01).contains(&position.latitude.degrees()).then_some(position)
    });
    let as_hemisphere = match letter {
        'N' => of(Hemisphere::North),
        'S' => of(Hemisphere::South),
        _ => None,
    };
    let mut found: Vec<_> = as_hemisphere.into_iter().chain(as_band).collect();
    found.dedup();
    if found.len() > 1 || (found.is_empty() && reach.is_some()) {
        work.problem(Problem::ZoneLetter(letter));
    }
    if found.is_empty() {
        // The letter does not fit; the northing alone still says something in its hemisphere.
        let hemisphere = if letter < 'N' { Hemisphere::South } else { Hemisphere::North };
        found.extend(of(hemisphere).filter(|_| reach.is_some()));
    }
    found
}

/// Both hemispheres, where UTM reaches so far.
fn unlettered(work: &mut Work, of: impl Fn(Hemisphere) -> Option<Position>) -> Vec<Position> {
    let within = |position: &Position| band(position.latitude).is_ok();
    let found: Vec<_> = [Hemisphere::North, Hemisphere::South].into_iter().filter_map(of).filter(within).collect();
    if found.len() > 1 {
        work.problem(Problem::ZoneHemisphere);
    }
    found
}

fn half_diagonal(side_m: f64) -> Metres {
    Metres::new(side_m * core::f64::consts::FRAC_1_SQRT_2).expect("the side of a square is finite")
}

enum Piece {
    /// A number and how many decimals it has.
    Number(f64, usize),
    Word(String),
}

/// Numbers and words in their order.
fn pieces(text: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let number = first.is_ascii_digit();
        let same = |sign: char| if number { sign.is_ascii_digit() || sign == '.' } else { sign.is_alphabetic() };
        let end = rest.find(|sign| !same(sign)).unwrap_or(rest.len());
        if end == 0 {
            rest = &rest[first.len_utf8()..];
            continue;
        }
        let word = &rest[..end];
        rest = &rest[end..];
        match word.trim_end_matches('.').parse::<f64>() {
            Ok(value) if number && value.is_finite() => {
                let decimals = word.split_once('.').map_or(0, |(_, decimals)| decimals.len());
                pieces.push(Piece::Number(value, decimals));
            }
            _ => pieces.push(Piece::Word(word.to_owned())),
        }
    }
    pieces
}

/// The only letter of a word, N and S for the words that say them. `None` for other words.
fn single(word: &str) -> Option<char> {
    match word {
        "NORTH" => Some('N'),
        "SOUTH" => Some('S'),
        _ => {
            let mut signs = word.chars();
            signs.next().filter(|_| signs.next().is_none())
        }
    }
}
