//! Whole numbers and words in a row of bytes: what the files in `public/geo` are made of.
//!
//! In go numbers, out come bytes with seven bits each and the small ones first, and back. What they mean is left to
//! whoever reads them.

/// Reads from the front; nothing where the bytes end or make no sense.
pub(crate) struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    /// Reads bytes that begin with a mark; `None` for another beginning.
    pub(crate) fn new(bytes: &'a [u8], mark: &[u8]) -> Option<Self> {
        Some(Self { rest: bytes.strip_prefix(mark)? })
    }

    /// A whole number from 0.
    pub(crate) fn number(&mut self) -> Option<u32> {
        let mut value = 0_u32;
        for place in 0..5 {
            let (byte, rest) = self.rest.split_first()?;
            self.rest = rest;
            let bits = u32::from(byte & 0x7f);
            value |= bits.checked_mul(1 << (7 * place))?;
            if byte & 0x80 == 0 {
                return Some(value);
            }
        }
        None
    }

    /// A number of things to come: each takes a byte or more, so that a wrong number cannot ask for more memory than
    /// the bytes themselves.
    pub(crate) fn count(&mut self) -> Option<usize> {
        let count = self.number()? as usize;
        (count <= self.rest.len()).then_some(count)
    }

    /// A whole number with its sign.
    pub(crate) fn signed(&mut self) -> Option<i32> {
        let folded = self.number()?;
        Some((folded >> 1) as i32 ^ -((folded & 1) as i32))
    }

    /// A word.
    pub(crate) fn word(&mut self) -> Option<&'a str> {
        let length = self.count()?;
        let (word, rest) = self.rest.split_at(length);
        self.rest = rest;
        core::str::from_utf8(word).ok()
    }

    /// Whether nothing is left.
    pub(crate) fn ended(&self) -> bool {
        self.rest.is_empty()
    }
}

/// Writes to the end.
pub(crate) struct Writer {
    bytes: Vec<u8>,
}

impl Writer {
    /// Bytes that begin with a mark.
    pub(crate) fn new(mark: &[u8]) -> Self {
        Self { bytes: mark.to_vec() }
    }

    /// A whole number from 0.
    pub(crate) fn number(&mut self, mut value: u32) {
        while value >= 0x80 {
            self.bytes.push(value as u8 | 0x80);
            value >>= 7;
        }
        self.bytes.push(value as u8);
    }

    /// A number of things to come.
    pub(crate) fn count(&mut self, count: usize) {
        self.number(u32::try_from(count).expect("no list here has four thousand million things"));
    }

    /// A whole number with its sign.
    pub(crate) fn signed(&mut self, value: i32) {
        self.number((value << 1 ^ value >> 31) as u32);
    }

    /// A word.
    pub(crate) fn word(&mut self, word: &str) {
        self.count(word.len());
        self.bytes.extend(word.as_bytes());
    }

    /// What was written.
    pub(crate) fn bytes(self) -> Vec<u8> {
        self.bytes
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_cut_off_or_too_great_is_not_read() {
        let read = |bytes: &[u8]| Reader::new(bytes, b"").and_then(|mut reader| reader.number());
        assert_eq!(read(&[0xff, 0xff, 0xff, 0xff, 0x0f]), Some(u32::MAX));
        assert_eq!(read(&[0xff, 0xff, 0xff, 0xff, 0x1f]), None);
        assert_eq!(read(&[0x80, 0x80, 0x80, 0x80, 0x80, 0x00]), None);
        assert_eq!(read(&[0x80]), None);
        assert_eq!(read(&[]), None);
        let mut reader = Reader::new(&[5, b'a'], b"").expect("no mark is asked for");
        assert_eq!(reader.word(), None);
        assert!(Reader::new(b"GEO", b"MAP").is_none());
    }

    proptest! {
        #[test]
        fn what_is_written_is_read(numbers: Vec<u32>, signs: Vec<i32>, word: String) {
            let mut writer = Writer::new(b"MARK");
            numbers.iter().for_each(|number| writer.number(*number));
            signs.iter().for_each(|number| writer.signed(*number));
            writer.word(&word);
            let bytes = writer.bytes();
            let mut reader = Reader::new(&bytes, b"MARK").expect("the mark is there");
            for number in numbers {
                prop_assert_eq!(reader.number(), Some(number));
            }
            for number in signs {
                prop_assert_eq!(reader.signed(), Some(number));
            }
            prop_assert_eq!(reader.word(), Some(word.as_str()));
            prop_assert!(reader.ended());
        }
    }
}
