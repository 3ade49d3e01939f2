//! What has left the device.
//!
//! In go directory entries, out comes which of them have left as they are now. A mark is an id and a number that
//! stands for what had been seen of the record when it left.

use crate::Id;
use crate::checksum::checksum;
use crate::packed::Entry;

/// A sorted set of marks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Marks(Vec<(Id, u64)>);

const MAGIC: &[u8; 4] = b"GLSM";
const MARK: usize = 24;

/// Bytes that are no marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoMarks;

impl Marks {
    /// Marks these records as they are now.
    pub fn of<'a>(entries: impl IntoIterator<Item = Entry<'a>>) -> Self {
        Self::sorted(entries.into_iter().map(|entry| (entry.id, entry.digest)).collect())
    }

    pub(crate) fn sorted(mut marks: Vec<(Id, u64)>) -> Self {
        marks.sort_unstable();
        marks.dedup_by_key(|mark| mark.0);
        Self(marks)
    }

    /// How many records are marked.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// True when none is.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The marks as bytes.
    pub fn pack(&self) -> Vec<u8> {
        let mut out = Vec::with_capacity(8 + self.0.len() * MARK);
        out.extend_from_slice(MAGIC);
        out.extend_from_slice(&[0; 4]);
        for (id, digest) in &self.0 {
            out.extend_from_slice(&id.to_bytes());
            out.extend_from_slice(&digest.to_le_bytes());
        }
        let sum = checksum(&out[8..]);
        out[4..8].copy_from_slice(&sum.to_le_bytes());
        out
    }

    /// Reads marks.
    ///
    /// **Errors**: [`NoMarks`] for anything that [`Marks::pack`] did not write. Taking nothing as marked is then right:
    /// the page asks for an export once too often.
    pub fn open(bytes: &[u8]) -> Result<Self, NoMarks> {
        let rest = bytes.strip_prefix(MAGIC).ok_or(NoMarks)?;
        let (sum, marks) = rest.split_first_chunk::<4>().ok_or(NoMarks)?;
        if marks.len() % MARK != 0 || checksum(marks) != u32::from_le_bytes(*sum) {
            return Err(NoMarks);
        }
        let mark = |mark: &[u8]| {
            let (id, digest) = mark.split_first_chunk::<16>()?;
            Some((Id::from_bytes(*id), u64::from_le_bytes(digest.try_into().ok()?)))
        };
        marks.chunks_exact(MARK).map(mark).collect::<Option<_>>().map(Self::sorted).ok_or(NoMarks)
    }

    /// Adds marks that were made later, which take the place of earlier ones.
    pub fn merge(&mut self, later: &Self) {
        self.0.retain(|(id, _)| later.digest_of(*id).is_none());
        self.0.extend_from_slice(&later.0);
        self.0.sort_unstable();
    }

    /// True when the record has left as it is now.
    pub fn has(&self, entry: &Entry) -> bool {
        self.digest_of(entry.id) == Some(entry.digest)
    }

    /// True when some form of the record has left.
    pub fn knows(&self, id: Id) -> bool {
        self.digest_of(id).is_some()
    }

    fn digest_of(&self, id: Id) -> Option<u64> {
        let place = self.0.binary_search_by_key(&id, |mark| mark.0).ok()?;
        Some(self.0[place].1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn id(number: u8) -> Id {
        Id::from_bytes([number; 16])
    }

    fn marks(marks: &[(u8, u64)]) -> Marks {
        Marks::sorted(marks.iter().map(|(number, digest)| (id(*number), *digest)).collect())
    }

    #[test]
    fn marks_read_back_and_damaged_ones_do_not() {
        let some = marks(&[(3, 30), (1, 10)]);
        let bytes = some.pack();
        assert_eq!(Marks::open(&bytes), Ok(some));
        for place in 0..bytes.len() {
            let mut damaged = bytes.clone();
            damaged[place] ^= 0x10;
            assert_eq!(Marks::open(&damaged), Err(NoMarks));
            assert_eq!(Marks::open(&bytes[..place]), Err(NoMarks));
        }
    }

    #[test]
    fn a_later_mark_takes_the_place_of_an_earlier_one() {
        let mut some = marks(&[(1, 10), (2, 20)]);
        some.merge(&marks(&[(2, 21), (3, 30)]));
        assert_eq!(some, marks(&[(1, 10), (2, 21), (3, 30)]));
    }
}
