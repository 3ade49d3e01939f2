//! Where the parts of a block lie.

use super::bytes::u32_at;
use crate::checksum::checksum_of;
use std::ops::Range;

/// The format of blocks that this code writes.
pub const FORMAT: u32 = 1;

pub(super) const MAGIC: &[u8; 4] = b"GLSP";
/// Bytes before the parts.
pub(super) const HEAD: usize = 56;
/// The checksum covers all from here.
pub(super) const SEALED: usize = 12;
/// Bytes of one directory entry.
pub(super) const ENTRY: usize = 56;
/// Bytes of one kind.
pub(super) const KIND: usize = 8;

/// Why bytes are no block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// Not a block at all.
    Foreign,
    /// A newer version of the app wrote it, in this format.
    Newer(u32),
    /// Bytes are missing or too many.
    Length,
    /// Bytes were changed.
    Checksum,
    /// The checksum is right and the content makes no sense.
    Content,
}

/// How many of what a block holds.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Counts {
    pub(super) records: usize,
    pub(super) ascii: usize,
    pub(super) texts: usize,
    pub(super) strings: usize,
    pub(super) kinds: usize,
    pub(super) with_parent: usize,
    pub(super) with_day: usize,
    pub(super) string_bytes: usize,
    pub(super) posting_bytes: usize,
    pub(super) row_bytes: usize,
}

impl Counts {
    pub(super) fn numbers(&self) -> [usize; 10] {
        [
            self.records,
            self.ascii,
            self.texts,
            self.strings,
            self.kinds,
            self.with_parent,
            self.with_day,
            self.string_bytes,
            self.posting_bytes,
            self.row_bytes,
        ]
    }

    fn read(bytes: &[u8]) -> Option<Self> {
        let mut at = SEALED + 4;
        let mut next = || {
            at += 4;
            u32_at(bytes, at - 4).map(|number| number as usize)
        };
        Some(Self {
            records: next()?,
            ascii: next()?,
            texts: next()?,
            strings: next()?,
            kinds: next()?,
            with_parent: next()?,
            with_day: next()?,
            string_bytes: next()?,
            posting_bytes: next()?,
            row_bytes: next()?,
        })
    }
}

/// Where each part lies.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) counts: Counts,
    pub(super) kinds: Range<usize>,
    pub(super) directory: Range<usize>,
    pub(super) by_parent: Range<usize>,
    pub(super) by_day: Range<usize>,
    pub(super) ends: Range<usize>,
    pub(super) posting_ends: Range<usize>,
    pub(super) strings: Range<usize>,
    pub(super) postings: Range<usize>,
    pub(super) rows: Range<usize>,
}

impl Layout {
    /// Checks magic, format, length and checksum, and cuts the bytes into parts.
    pub(super) fn read(bytes: &[u8]) -> Result<Self, Damage> {
        if !bytes.starts_with(MAGIC) {
            return Err(Damage::Foreign);
        }
        match u32_at(bytes, 4).ok_or(Damage::Length)? {
            FORMAT => {}
            format if format > FORMAT => return Err(newer(bytes, format)),
            _ => return Err(Damage::Foreign),
        }
        if u32_at(bytes, SEALED).map(|length| length as usize) != Some(bytes.len()) {
            return Err(Damage::Length);
        }
        if !sealed(bytes) {
            return Err(Damage::Checksum);
        }
        let counts = Counts::read(bytes).ok_or(Damage::Length)?;
        Self::of(counts).filter(|layout| layout.rows.end == bytes.len()).ok_or(Damage::Content)
    }

    pub(super) fn of(counts: Counts) -> Option<Self> {
        let mut at = HEAD;
        let mut part = |count: usize, size: usize| {
            let start = at;
            at = at.checked_add(count.checked_mul(size)?)?;
            Some(start..at)
        };
        let in_order = counts.ascii <= counts.texts && counts.texts <= counts.strings;
        in_order.then_some(())?;
        Some(Self {
            kinds: part(counts.kinds, KIND)?,
            directory: part(counts.records, ENTRY)?,
            by_parent: part(counts.with_parent, 4)?,
            by_day: part(counts.with_day, 4)?,
            ends: part(counts.strings, 4)?,
            posting_ends: part(counts.texts, 4)?,
            strings: part(counts.string_bytes, 1)?,
            postings: part(counts.posting_bytes, 1)?,
            rows: part(counts.row_bytes, 1)?,
            counts,
        })
    }
}

/// A newer format keeps magic, format, checksum and length where they are, so that a flipped bit in the format is not
/// taken for a newer version.
fn newer(bytes: &[u8], format: u32) -> Damage {
    if sealed(bytes) { Damage::Newer(format) } else { Damage::Checksum }
}

fn sealed(bytes: &[u8]) -> bool {
    let rest = bytes.get(SEALED..).unwrap_or_default();
    u32_at(bytes, 8) == Some(checksum(bytes.get(4..8).unwrap_or_default(), rest))
}

/// Over the format and all that follows the checksum.
pub(super) fn checksum(format: &[u8], rest: &[u8]) -> u32 {
    checksum_of(&[format, rest])
}
