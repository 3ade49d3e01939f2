//! Time-ordered random ids.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::str::FromStr;

/// The id of a record: a UUID of version 7, so ids sort by when they were made.
///
/// **Source**: RFC 9562, section 5.7.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id([u8; 16]);

/// A text that is not an id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotAnId;

/// Letters of an id in text.
const LENGTH: usize = 36;

impl Id {
    /// Makes an id from the time and sixteen random bytes.
    pub fn new(unix_ms: i64, mut random: [u8; 16]) -> Self {
        let ms = u64::try_from(unix_ms).unwrap_or(0).to_be_bytes();
        random[..6].copy_from_slice(&ms[2..]);
        random[6] = 0x70 | (random[6] & 0x0f);
        random[8] = 0x80 | (random[8] & 0x3f);
        Self(random)
    }

    /// Ids of one moment, each greater than the one before: what is made together keeps its order.
    ///
    /// **Source**: RFC 9562, section 6.2, method 1: the twelve bits behind the time count. After 4,096 they begin again.
    pub fn in_turn(unix_ms: i64, random: impl Fn() -> [u8; 16]) -> impl FnMut() -> Self {
        let mut count = 0_u16;
        move || {
            let mut bytes = random();
            bytes[6..8].copy_from_slice(&count.to_be_bytes());
            count = (count + 1) & 0x0fff;
            Self::new(unix_ms, bytes)
        }
    }

    /// The id with these bytes.
    pub const fn from_bytes(bytes: [u8; 16]) -> Self {
        Self(bytes)
    }

    /// The id that a text is, if it is written as [`Display`](fmt::Display) writes it: small letters, hyphens in place.
    pub fn as_written(text: &str) -> Option<Self> {
        if text.len() != LENGTH {
            return None;
        }
        let id: Self = text.parse().ok()?;
        (id.letters() == text.as_bytes()).then_some(id)
    }

    fn letters(self) -> [u8; LENGTH] {
        const DIGITS: &[u8; 16] = b"0123456789abcdef";
        let mut letters = [b'-'; LENGTH];
        let mut places = (0..LENGTH).filter(|place| !matches!(place, 8 | 13 | 18 | 23));
        for digit in self.0.iter().flat_map(|byte| [byte >> 4, byte & 15]) {
            let place = places.next().expect("there are 32 places for 32 digits");
            letters[place] = DIGITS[usize::from(digit)];
        }
        letters
    }

    /// Its bytes.
    pub const fn to_bytes(self) -> [u8; 16] {
        self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letters = self.letters();
        out.write_str(std::str::from_utf8(&letters).expect("hexadecimal digits are ASCII"))
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, out)
    }
}

impl FromStr for Id {
    type Err = NotAnId;

    fn from_str(text: &str) -> Result<Self, NotAnId> {
        let mut bytes = [0; 16];
        let mut digits = text.bytes().filter(|letter| *letter != b'-');
        for byte in &mut bytes {
            let mut digit = || digits.next().and_then(|letter| char::from(letter).to_digit(16)).ok_or(NotAnId);
            *byte = (digit()? * 16 + digit()?) as u8;
        }
        if digits.next().is_some() { Err(NotAnId) } else { Ok(Self(bytes)) }
    }
}

impl Serialize for Id {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_str(std::str::from_utf8(&self.letters()).expect("hexadecimal digits are ASCII"))
    }
}

impl<'de> Deserialize<'de> for Id {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Self, D::Error> {
        let text = String::deserialize(input)?;
        text.parse().map_err(|NotAnId| serde::de::Error::custom("not an id"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_of_an_id_reads_back() {
        let id = Id::new(1_813_400_000_000, [0xab; 16]);
        assert_eq!(id.to_string().parse(), Ok(id));
    }

    /// RFC 9562, appendix A.6: 2022-02-22 19:22:22 UTC.
    #[test]
    fn time_and_version_stand_where_the_standard_puts_them() {
        let random = [0, 0, 0, 0, 0, 0, 0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
        let id = Id::new(0x017F_22E2_79B0, random);
        assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    }

    #[test]
    fn a_text_in_another_spelling_is_read_and_not_taken_for_one_of_ours() {
        let id = Id::new(1_813_400_000_000, [0xab; 16]);
        let text = id.to_string();
        assert_eq!(Id::as_written(&text), Some(id));
        for other in [text.to_uppercase(), text.replace('-', ""), text.replacen('-', "", 1) + "-"] {
            assert_eq!(other.parse(), Ok(id));
            assert_eq!(Id::as_written(&other), None);
        }
    }

    #[test]
    fn a_short_or_long_text_is_no_id() {
        assert_eq!("017f22e2".parse::<Id>(), Err(NotAnId));
        assert_eq!("017f22e2-79b0-7cc3-98c4-dc0c0c07398f0".parse::<Id>(), Err(NotAnId));
        assert_eq!("".parse::<Id>(), Err(NotAnId));
    }

    #[test]
    fn ids_made_together_keep_their_order() {
        let drawn = std::cell::Cell::new(0_u8);
        let random = || {
            drawn.set(drawn.get().wrapping_mul(181).wrapping_add(97));
            [drawn.get(); 16]
        };
        let mut next = Id::in_turn(1_813_400_000_000, random);
        let ids: Vec<Id> = (0..500).map(|_| next()).collect();
        assert!(ids.is_sorted_by(|one, other| one < other), "{ids:?}");
        assert!(ids.iter().all(|id| id.to_string().as_bytes()[14] == b'7'), "all are of version 7");
    }
}
