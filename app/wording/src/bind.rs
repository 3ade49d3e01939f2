//! Where a line must not break: inside a coordinate, between a number and its unit, after "leg." or an initial.
//!
//! In goes text with plain spaces, out comes the same text with no-break spaces; binding twice changes nothing.
//! The same rule serves the words of a record and the words that a person typed over them. Common practice.

use crate::line::NO_BREAK;

const UNITS: [&str; 24] = [
    "m", "km", "cm", "mm", "ft", "mi", "l", "ml", "W", "h", "min", "minutes", "N", "S", "E", "W", "NE", "NW", "SE",
    "SW", "NNE", "NNW", "SSE", "SSW",
];
/// Longer names may break between their words: one that cannot would not fit an ordinary label.
const LATIN_BOUND: usize = 26;
const SHORT_WORD: usize = 5;

/// Puts no-break spaces where a line of this text must hold together.
pub(crate) fn bind(text: &str, latin: bool) -> String {
    let mut bound = String::with_capacity(text.len());
    let mut last = "";
    for (index, word) in text.split(' ').enumerate() {
        if index > 0 {
            let together = holds(last, word) || (latin && index == 1 && text.chars().count() <= LATIN_BOUND);
            bound.push(if together { NO_BREAK } else { ' ' });
        }
        bound.push_str(word);
        last = word.rsplit(NO_BREAK).next().unwrap_or(word);
    }
    bound
}

/// True when two neighbours must stay on one line.
fn holds(left: &str, right: &str) -> bool {
    let unit = right.trim_end_matches([',', ';', '.']);
    let number = left.chars().next_back().is_some_and(|letter| letter.is_ascii_digit() || is_angle(letter));
    let direction = UNITS.contains(&left) && UNITS.contains(&unit) && unit.chars().all(char::is_uppercase);
    is_short_abbreviation(left)
        || (number && UNITS.contains(&unit))
        || direction
        || (ends_angle(left) && has_angle(right))
}

/// "leg.", "I.", "cf.", "L."; a date or an elevation also has stops but no letters only.
fn is_short_abbreviation(word: &str) -> bool {
    let stem = word.trim_start_matches(['(', '[']);
    stem.strip_suffix('.').is_some_and(|letters| {
        !letters.is_empty()
            && letters.chars().count() <= SHORT_WORD
            && letters.chars().all(|letter| letter.is_alphabetic() || letter == '.' || letter == '-')
    })
}

fn is_angle(letter: char) -> bool {
    matches!(letter, '°' | '′' | '″' | '\'' | '"')
}

fn ends_angle(word: &str) -> bool {
    word.chars().next_back().is_some_and(is_angle)
}

fn has_angle(word: &str) -> bool {
    word.chars().any(is_angle)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `~` stands for a no-break space.
    fn check(text: &str, expected: &str) {
        let bound = bind(text, false);
        assert_eq!(bound.replace(NO_BREAK, "~"), expected);
        assert_eq!(bind(&bound, false), bound, "binding twice changes nothing");
    }

    #[test]
    fn coordinates_hold_each_and_part_between() {
        check("47.6138° N 12.3043° E ±8 m", "47.6138°~N 12.3043°~E ±8~m");
        check("47° 36′ 49″ N 12° 18′ 15″ E", "47°~36′~49″~N 12°~18′~15″~E");
    }

    #[test]
    fn numbers_hold_their_units() {
        check("2 km NE of Tarn Abbot, 412 m", "2~km~NE of Tarn Abbot, 412~m");
        check("hand net, 30 minutes", "hand net, 30~minutes");
    }

    #[test]
    fn people_hold_their_initials() {
        check("19.vi.2027, leg. I. Varga", "19.vi.2027, leg.~I.~Varga");
        check("leg. J.-P. Roux, Dana Okoro", "leg.~J.-P.~Roux, Dana Okoro");
    }

    #[test]
    fn short_latin_names_hold_together() {
        assert_eq!(bind("Salix caprea", true), "Salix\u{a0}caprea");
        assert_eq!(bind("Metasequoia glyptostroboides", true), "Metasequoia glyptostroboides");
    }
}
