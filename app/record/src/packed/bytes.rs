//! Small numbers in few bytes, and a cursor that never reads past the end.

/// Appends a number in groups of seven bits, the lowest first (LEB128).
pub(super) fn put_number(out: &mut Vec<u8>, mut number: u64) {
    while number >= 0x80 {
        out.push(number as u8 | 0x80);
        number >>= 7;
    }
    out.push(number as u8);
}

/// The little-endian number at a place.
pub(super) fn u32_at(bytes: &[u8], at: usize) -> Option<u32> {
    bytes.get(at..at.checked_add(4)?)?.try_into().ok().map(u32::from_le_bytes)
}

/// Reads forward through bytes.
pub(super) struct Cursor<'a>(pub(super) &'a [u8]);

impl<'a> Cursor<'a> {
    pub(super) fn byte(&mut self) -> Option<u8> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*first)
    }

    pub(super) fn take(&mut self, length: usize) -> Option<&'a [u8]> {
        let (taken, rest) = self.0.split_at_checked(length)?;
        self.0 = rest;
        Some(taken)
    }

    pub(super) fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        self.take(N)?.try_into().ok()
    }

    /// A number in groups of seven bits.
    pub(super) fn number(&mut self) -> Option<u64> {
        let mut number = 0_u64;
        for shift in (0..64).step_by(7) {
            let byte = self.byte()?;
            let bits = u64::from(byte & 0x7f);
            if (bits << shift) >> shift != bits {
                return None;
            }
            number |= bits << shift;
            if byte & 0x80 == 0 {
                return Some(number);
            }
        }
        None
    }

    pub(super) fn small(&mut self) -> Option<u32> {
        self.number()?.try_into().ok()
    }

    /// How many things follow: never more than there are bytes left, so that nothing huge is set aside for them.
    pub(super) fn count(&mut self) -> Option<usize> {
        let count = usize::try_from(self.number()?).ok()?;
        (count <= self.0.len()).then_some(count)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_every_size_read_back() {
        for number in [0, 1, 127, 128, 16_383, 16_384, u64::from(u32::MAX), u64::MAX] {
            let mut out = Vec::new();
            put_number(&mut out, number);
            assert_eq!(Cursor(&out).number(), Some(number));
            assert_eq!(Cursor(&out[..out.len() - 1]).number(), None);
        }
    }

    #[test]
    fn a_number_too_great_is_none() {
        assert_eq!(Cursor(&[0xff; 10]).number(), None);
        assert_eq!(Cursor(&[0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x7f]).number(), None);
    }
}
