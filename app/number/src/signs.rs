//! Single characters as people and keyboards write them, folded to the plain ones.

/// The plain sign for what was typed: ASCII for full-width signs and other decimal digits, `-` for every dash,
/// a space for every blank. Other characters stay as they are.
pub(crate) fn plain(sign: char) -> char {
    match sign {
        '\u{FF01}'..='\u{FF5E}' => shifted(sign, 0xFF01, '!'),
        // Hyphens, dashes, the minus sign and their small and full forms.
        '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{FE58}' | '\u{FE63}' | '\u{00AD}' | '\u{2043}' => '-',
        // Arabic-Indic, extended Arabic-Indic and Devanagari digits.
        '\u{0660}'..='\u{0669}' => shifted(sign, 0x0660, '0'),
        '\u{06F0}'..='\u{06F9}' => shifted(sign, 0x06F0, '0'),
        '\u{0966}'..='\u{096F}' => shifted(sign, 0x0966, '0'),
        _ if sign.is_whitespace() => ' ',
        _ => sign,
    }
}

/// The sign as far after `base` as the given one is after `from`.
fn shifted(sign: char, from: u32, base: char) -> char {
    char::from_u32(sign as u32 - from + base as u32).unwrap_or(sign)
}

/// The sign as it is compared: plain, a letter of ASCII as its capital and any other as its small letter. `None` for
/// what only separates.
pub(crate) fn compared(sign: char) -> Option<char> {
    let sign = plain(sign);
    if !sign.is_alphanumeric() {
        return None;
    }
    if sign.is_ascii() {
        return Some(sign.to_ascii_uppercase());
    }
    let mut small = sign.to_lowercase();
    match (small.next(), small.next()) {
        (Some(small), None) => Some(small.to_ascii_uppercase()),
        _ => Some(sign),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dashes_blanks_and_wide_signs_become_plain() {
        let typed = "ＩＶ２７–０１４７ ‐‑‒—―−－\u{a0}\u{2009}٣";
        let read: String = typed.chars().map(plain).collect();
        assert_eq!(read, "IV27-0147 -------  3");
    }

    #[test]
    fn separators_are_not_compared_and_large_letters_are_as_small_ones() {
        let read: String = "iv 27/Ä-ß_1".chars().filter_map(compared).collect();
        assert_eq!(read, "IV27äß1");
    }
}
