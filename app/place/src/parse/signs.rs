//! Signs as people and keyboards write them, made plain; and what stands beside coordinates: a datum, a radius.

use units::Metres;

/// The text with one sign for each meaning: `°` `'` `"` for degrees, minutes and seconds, `-` for every dash, plain
/// digits, `;` for the end of a line.
pub(super) fn plain(text: &str) -> String {
    let text = text.trim();
    let mut one = String::with_capacity(text.len());
    for each in text.chars() {
        match sign(each) {
            // Two marks of minutes are one of seconds.
            '\'' if one.ends_with('\'') => {
                one.pop();
                one.push('"');
            }
            plain => one.push(plain),
        }
    }
    // The mark of ISO 6709 and the name of the datum behind it are two words.
    if one.contains("CRS") { one.replace("CRSWGS", "CRS WGS") } else { one }
}

fn sign(sign: char) -> char {
    match sign {
        // Most of any text; the list below is long.
        '0'..='9' | 'A'..='Z' | 'a'..='z' | ' ' | '.' | ',' | '-' => sign,
        '°' | 'º' | '˚' | '∘' | '⁰' | 'ᵒ' | '˙' | '*' => '°',
        '\'' | '′' | '’' | '‘' | '‛' | 'ʹ' | 'ʼ' | '`' | '´' | '＇' | 'ˈ' | '‵' => '\'',
        '"' | '″' | '”' | '“' | '„' | '‟' | 'ʺ' | '＂' | '˝' | '‶' | '¨' => '"',
        '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{FE58}' | '\u{FE63}' | '\u{FF0D}' => '-',
        '，' | '、' | '‚' => ',',
        '．' | '·' => '.',
        '＋' => '+',
        '０'..='９' => char::from_digit(sign as u32 - '０' as u32, 10).unwrap_or(sign),
        '\n' | '\r' | '；' | '|' => ';',
        _ if sign.is_whitespace() || sign == '\u{200b}' => ' ',
        _ => sign,
    }
}

/// Names of datums by how they begin, in capitals and without blanks.
const DATUMS: [&str; 16] = [
    "WGS84", "WGS72", "NAD27", "NAD83", "ED50", "ETRS89", "TOKYO", "OSGB36", "GDA94", "GDA2020", "AGD66", "AGD84",
    "CH1903", "PULKOVO", "SAD69", "PSAD56",
];

/// Where a datum is named, from byte to byte, and whether it is WGS84.
pub(super) fn datum(text: &str) -> Option<(usize, usize, bool)> {
    let bytes = text.as_bytes();
    for (start, first) in bytes.iter().enumerate().filter(|(_, byte)| byte.is_ascii_alphabetic()) {
        let Some(second) = bytes[start + 1..].iter().find(|byte| !BETWEEN.contains(&char::from(**byte))) else { break };
        let begins = [first.to_ascii_uppercase(), second.to_ascii_uppercase()];
        for datum in DATUMS.into_iter().filter(|datum| datum.as_bytes()[..2] == begins) {
            let inside = text[..start].chars().next_back().is_some_and(char::is_alphanumeric);
            if let Some(length) = spelled(&text[start..], datum).filter(|_| !inside) {
                return Some((start, start + length, datum == "WGS84"));
            }
        }
    }
    None
}

/// What may stand between the signs of a name.
const BETWEEN: [char; 3] = [' ', '-', '_'];

/// How many bytes of a text spell a name, blanks, dashes and underscores between its signs allowed. A longer word or
/// number is another name.
fn spelled(text: &str, name: &str) -> Option<usize> {
    let mut rest = name.chars().peekable();
    for (at, sign) in text.char_indices() {
        match rest.peek() {
            None if sign.is_alphanumeric() => return None,
            None => return Some(at),
            Some(expected) if sign.to_ascii_uppercase() == *expected => {
                rest.next();
            }
            Some(_) if BETWEEN.contains(&sign) => {}
            Some(_) => return None,
        }
    }
    rest.peek().is_none().then_some(text.len())
}

/// Metres in an international foot.
/// **Source**: international yard and pound agreement, 1959.
const METRES_PER_FOOT: f64 = 0.3048;

/// A radius behind `±` or `+/-`, with what stands before and after it.
pub(super) fn stated_radius(text: &str) -> Option<(&str, Metres, &str)> {
    if !text.contains('±') && !text.contains('+') {
        return None;
    }
    let (before, rest) = ["±", "+/-", "+-"].into_iter().find_map(|sign| text.split_once(sign))?;
    let rest = rest.trim_start();
    let digits = rest.find(|sign: char| !(sign.is_ascii_digit() || ".,".contains(sign))).unwrap_or(rest.len());
    let value: f64 = rest[..digits].trim_end_matches([',', '.']).replace(',', ".").parse().ok()?;
    let unit_and_after = rest[digits..].trim_start();
    let letters = unit_and_after.find(|sign: char| !sign.is_alphabetic()).unwrap_or(unit_and_after.len());
    let (factor, after) = match unit_and_after[..letters].to_lowercase().as_str() {
        "m" | "metres" | "meters" => (1.0, &unit_and_after[letters..]),
        "km" => (1000.0, &unit_and_after[letters..]),
        "ft" | "feet" => (METRES_PER_FOOT, &unit_and_after[letters..]),
        "" => (1.0, unit_and_after),
        _ => return None,
    };
    Some((before, Metres::new(value * factor)?, after))
}
