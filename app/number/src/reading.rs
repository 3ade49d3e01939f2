//! One number as read from what was typed or pencilled.
//!
//! In goes a text, out comes its parts: what stands before, a device's letter, the running number, the letters of
//! an event. The text itself is kept as it was. Which numbering it belongs to is left to [`crate::Numbering`].

use crate::signs::{compared, plain};

/// Most digits of a running number; what is longer is some other code.
const DIGITS_MOST: usize = 18;

/// A number in its parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Number {
    /// As it was typed or pencilled, untouched.
    pub typed: String,
    /// What stands before the running part, blanks at its ends removed and dashes plain: `IV27-`.
    pub prefix: String,
    /// The letter of a second device, between prefix and digits.
    pub device: Option<char>,
    /// The digits as written, with their leading zeros.
    pub digits: String,
    /// The running number.
    pub running: u64,
    /// The letters after it, small: `a` of `19a`.
    pub letters: String,
}

/// What two writings of one number have in common.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    /// Prefix and device letter in capitals, without separators.
    pub head: String,
    /// The running number.
    pub running: u64,
    /// The letters after it, small.
    pub letters: String,
}

impl Number {
    /// Reads a number: its running part is the last run of digits, letters may follow it.
    ///
    /// A single capital letter between a separator and the digits (`IV27-B0147`) is taken for a device's letter.
    ///
    /// **Errors**: `None` when there is no digit, or more than 18 in a row.
    pub fn read(typed: &str) -> Option<Self> {
        let plain: Vec<char> = typed.trim().chars().map(plain).collect();
        let end = plain.iter().rposition(char::is_ascii_digit)? + 1;
        let start = plain[..end].iter().rposition(|sign| !sign.is_ascii_digit()).map_or(0, |at| at + 1);
        let digits: String = plain[start..end].iter().collect();
        if digits.len() > DIGITS_MOST {
            return None;
        }
        let running = digits.parse().ok()?;
        let (prefix, device) = head(&plain[..start]);
        let letters = plain[end..].iter().flat_map(|sign| sign.to_lowercase()).filter(|sign| sign.is_alphanumeric());
        let letters = letters.collect();
        Some(Self { typed: typed.to_owned(), prefix, device, digits, running, letters })
    }

    /// What is compared with the glass: device letter, digits and event letters: `0147`, `B0147`, `19a`.
    pub fn run(&self) -> String {
        let mut run = String::new();
        run.extend(self.device);
        run.push_str(&self.digits);
        run.push_str(&self.letters);
        run
    }

    /// The whole number in plain signs: prefix and run.
    pub fn text(&self) -> String {
        format!("{}{}", self.prefix, self.run())
    }

    /// The same number with another running part, filled up with zeros to as many digits as this one has.
    pub fn with_running(&self, running: u64) -> Self {
        Self { running, digits: format!("{running:0width$}", width = self.digits.len()), ..self.clone() }
    }

    /// What this writing has in common with others of the same number.
    pub fn key(&self) -> Key {
        let head = self.prefix.chars().chain(self.device).filter_map(compared).collect();
        Key { head, running: self.running, letters: self.letters.clone() }
    }
}

/// Prefix and device letter from what stands before the digits.
fn head(before: &[char]) -> (String, Option<char>) {
    let text: String = before.iter().collect::<String>().trim_start().to_owned();
    let mut signs = text.chars().rev();
    let device = match (signs.next(), signs.next()) {
        (Some(last), Some(before)) if last.is_ascii_uppercase() && !before.is_alphanumeric() => Some(last),
        _ => None,
    };
    let prefix = match device {
        Some(letter) => &text[..text.len() - letter.len_utf8()],
        None => &text,
    };
    // A blank inside a prefix such as `IV27 ` separates it from the digits and stays.
    (prefix.to_owned(), device)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn check(typed: &str, head: &str, running: u64, letters: &str) {
        let key = Number::read(typed).unwrap_or_else(|| panic!("{typed} is a number")).key();
        assert_eq!((key.head.as_str(), key.running, key.letters.as_str()), (head, running, letters), "{typed}");
    }

    #[test]
    fn numbers_are_read_however_they_are_written() {
        check("147", "", 147, "");
        check("0147", "", 147, "");
        check("IV27-0147", "IV27", 147, "");
        check("iv27 0147", "IV27", 147, "");
        check("  iv27 – 0147 ", "IV27", 147, "");
        check("IV27—0147", "IV27", 147, "");
        check("IV27‑0147", "IV27", 147, "");
        check("IV27−0147", "IV27", 147, "");
        check("ＩＶ２７－０１４７", "IV27", 147, "");
        check("19 a", "", 19, "a");
        check("19A", "", 19, "a");
        check("19-b", "", 19, "b");
        check("27/19aa", "27", 19, "aa");
        check("#147", "", 147, "");
        check("IV27-B0147", "IV27B", 147, "");
        check("\u{a0}0147\u{2009}", "", 147, "");
    }

    #[test]
    fn what_has_no_digit_or_too_many_is_no_number() {
        for typed in ["", "  ", "vial", "–", "1234567890123456789"] {
            assert_eq!(Number::read(typed), None, "{typed}");
        }
    }

    #[test]
    fn what_was_typed_stays_as_typed() {
        let number = Number::read(" iv27 – 0147").expect("a number");
        assert_eq!(number.typed, " iv27 – 0147");
        assert_eq!(number.digits, "0147");
    }

    #[test]
    fn a_device_letter_belongs_to_the_run() {
        let number = Number::read("IV27-B0147").expect("a number");
        assert_eq!((number.prefix.as_str(), number.run().as_str()), ("IV27-", "B0147"));
        assert_eq!(number.text(), "IV27-B0147");
    }

    proptest! {
        #[test]
        fn reading_never_panics_and_its_text_reads_the_same(typed in ".{0,40}") {
            if let Some(number) = Number::read(&typed) {
                prop_assert_eq!(&number.typed, &typed);
                let again = Number::read(&number.text()).expect("its own text is a number");
                prop_assert_eq!(again.key(), number.key());
            }
        }
    }
}
