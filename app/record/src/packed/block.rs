//! Blocks opened for reading.

use super::bytes::{Cursor, u32_at};
use super::layout::{Damage, ENTRY, KIND, Layout};
use super::value;
use crate::day::DayNumber;
use crate::search::{Folded, Word};
use crate::{Dot, Id, Kind, Record, Replica, Version};
use std::cell::OnceCell;
use std::ops::Range;

/// A block of packed records. Its bytes stay packed; a record is decoded when it is asked for.
#[derive(Clone, Debug)]
pub struct Block {
    bytes: Vec<u8>,
    layout: Layout,
    kinds: Vec<(Kind, usize)>,
    /// The texts beyond ASCII as a search compares them, made when a search first needs them.
    folded: OnceCell<Folded>,
}

/// What the directory says of one record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entry<'a> {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: &'a Kind,
    /// It was deleted.
    pub deleted: bool,
    /// The day of an event; a night counts for its evening.
    pub day: Option<DayNumber>,
    /// What it hangs on.
    pub parent: Option<Id>,
    /// The number of a container as written on it.
    pub number: Option<&'a str>,
    /// Different values stand in some field.
    pub conflict: bool,
    /// What had been seen of it.
    pub digest: u64,
}

impl Block {
    /// Opens a block: checks that it is whole, and decodes no record.
    ///
    /// **Errors**: as [`Damage`]; never a panic, whatever the bytes are.
    pub fn open(bytes: Vec<u8>) -> Result<Self, Damage> {
        let layout = Layout::read(&bytes)?;
        std::str::from_utf8(&bytes[layout.strings.clone()]).map_err(|_| Damage::Content)?;
        let mut block = Self { bytes, layout, kinds: Vec::new(), folded: OnceCell::new() };
        block.kinds = block.read_kinds().ok_or(Damage::Content)?;
        Ok(block)
    }

    fn read_kinds(&self) -> Option<Vec<(Kind, usize)>> {
        let kinds = self.bytes[self.layout.kinds.clone()].chunks_exact(KIND);
        kinds.map(|kind| Some((Kind::from_name(self.text(u32_at(kind, 0)?)?), u32_at(kind, 4)? as usize))).collect()
    }

    /// Its bytes.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// Its checksum, by which a block is told from its earlier and later forms.
    pub fn checksum(&self) -> u32 {
        u32_at(&self.bytes, 8).expect("a block has a head")
    }

    /// How many records it holds, deleted ones too.
    pub fn len(&self) -> usize {
        self.layout.counts.records
    }

    /// True when it holds none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// How many living records of a kind it holds.
    pub fn count(&self, kind: &Kind) -> usize {
        self.kinds.iter().filter(|(own, _)| own == kind).map(|(_, living)| living).sum()
    }

    /// The kinds it holds with their numbers of living records.
    pub fn kinds(&self) -> &[(Kind, usize)] {
        &self.kinds
    }

    /// The least and the greatest id.
    pub fn range(&self) -> Option<(Id, Id)> {
        Some((self.id_at(0)?, self.id_at(self.len().checked_sub(1)?)?))
    }

    /// The row of the record with this id.
    pub fn find(&self, id: Id) -> Option<usize> {
        let (mut low, mut high) = (0, self.len());
        while low < high {
            let middle = low.midpoint(high);
            match self.id_at(middle)?.cmp(&id) {
                std::cmp::Ordering::Less => low = middle + 1,
                std::cmp::Ordering::Greater => high = middle,
                std::cmp::Ordering::Equal => return Some(middle),
            }
        }
        None
    }

    /// What the directory says of a row.
    pub fn entry(&self, row: usize) -> Option<Entry<'_>> {
        let entry = self.raw(row)?;
        let id = |at: usize| Some(Id::from_bytes(entry[at..at + 16].try_into().ok()?));
        let day = i32::from_le_bytes(entry[40..44].try_into().ok()?);
        let kind = u16::from_le_bytes(entry[52..54].try_into().ok()?);
        Some(Entry {
            id: id(0)?,
            kind: &self.kinds.get(usize::from(kind))?.0,
            deleted: entry[54] & 1 == 1,
            day: (day != i32::MIN).then_some(day),
            parent: id(16).filter(|parent| *parent != Id::from_bytes([0; 16])),
            number: u32_at(entry, 44).and_then(|place| self.text(place)),
            conflict: entry[54] & 2 == 2,
            digest: u64::from_le_bytes(entry[32..40].try_into().ok()?),
        })
    }

    /// All directory entries, ordered by id.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = Entry<'_>> {
        (0..self.len()).filter_map(|row| self.entry(row))
    }

    /// The record of a row.
    pub fn record(&self, row: usize) -> Option<Record> {
        let entry = self.entry(row)?;
        let mut record = Record::new(entry.id, entry.kind.clone());
        self.read_row(&mut Cursor(self.row(row)?), &mut record)?;
        Some(record)
    }

    fn row(&self, row: usize) -> Option<&[u8]> {
        let end = |row: usize| u32_at(self.raw(row)?, 48).map(|end| end as usize);
        let start = row.checked_sub(1).map_or(Some(0), end)?;
        self.bytes[self.layout.rows.clone()].get(start..end(row)?)
    }

    /// Tells each id that stands in the values of a row, without decoding the record.
    pub(crate) fn ids_in(&self, row: usize, ids: &mut dyn FnMut(Id)) -> Option<()> {
        let from = &mut Cursor(self.row(row)?);
        for _ in 0..from.count()? {
            from.number()?;
            from.number()?;
        }
        for _ in 0..from.count()? {
            if from.number()? % 2 == 1 {
                from.take(16)?;
            }
            let coded = from.small()?;
            for number in 0..coded / 2 {
                let stamped = number > 0 || coded % 2 == 0;
                for _ in 0..if stamped { 3 } else { 0 } {
                    from.number()?;
                }
                value::pass(from, ids)?;
            }
        }
        Some(())
    }

    /// All records, ordered by id.
    pub fn records(&self) -> impl Iterator<Item = Record> {
        (0..self.len()).filter_map(|row| self.record(row))
    }

    fn read_row(&self, from: &mut Cursor, record: &mut Record) -> Option<()> {
        let mut replicas: Vec<(u32, Replica)> = Vec::new();
        let count = from.count()?;
        for _ in 0..count {
            let place = from.small()?;
            let replica = Replica::new(self.text(place)?);
            record.seen.0.insert(replica.clone(), from.small()?);
            replicas.push((place, replica));
        }
        let text = |place: u32| self.text(place);
        let stamp = |from: &mut Cursor| {
            let place = from.small()?;
            let known = replicas.iter().find(|(known, _)| *known == place);
            let replica = known.map_or_else(|| text(place).map(Replica::new), |(_, replica)| Some(replica.clone()));
            Some((Dot { replica: replica?, number: from.small()? }, text(from.small()?)?.to_owned()))
        };
        let mut before = None;
        for _ in 0..from.count()? {
            let name = self.read_name(from)?;
            let coded = from.small()?;
            let mut versions = Vec::new();
            for number in 0..coded / 2 {
                let same = number == 0 && coded % 2 == 1;
                let (dot, entered) = if same { before.clone()? } else { stamp(from)? };
                if number == 0 {
                    before = Some((dot.clone(), entered.clone()));
                }
                versions.push(Version { value: value::take(from, &text)?, dot, entered });
            }
            record.fields.insert(name, versions);
        }
        from.0.is_empty().then_some(())
    }

    fn read_name(&self, from: &mut Cursor) -> Option<String> {
        let coded = from.number()?;
        let name = self.text(u32::try_from(coded / 2).ok()?)?;
        if coded % 2 == 0 {
            return Some(name.to_owned());
        }
        Some(format!("{name}:{}", Id::from_bytes(from.array()?)))
    }

    /// The least and the greatest of the ids on which its records hang.
    pub fn parents(&self) -> Option<(Id, Id)> {
        let parent = |place: usize| self.entry(self.row_at(&self.layout.by_parent, place)?)?.parent;
        Some((parent(0)?, parent(self.layout.counts.with_parent.checked_sub(1)?)?))
    }

    /// The rows that hang on a record, ordered by id.
    pub fn children(&self, parent: Id) -> impl Iterator<Item = usize> {
        let parent_of = |row: usize| Some(Id::from_bytes(self.raw(row)?[16..32].try_into().ok()?));
        self.ordered(&self.layout.by_parent, parent, parent_of)
    }

    /// The rows of a day, ordered by id.
    pub fn of_day(&self, day: DayNumber) -> impl Iterator<Item = usize> {
        self.ordered(&self.layout.by_day, day, |row| self.entry_day(row))
    }

    /// The days of its rows, in order, as often as there are rows.
    pub fn days(&self) -> impl Iterator<Item = (DayNumber, usize)> {
        let rows = (0..self.layout.counts.with_day).filter_map(|place| self.row_at(&self.layout.by_day, place));
        rows.filter_map(|row| Some((self.entry_day(row)?, row)))
    }

    fn entry_day(&self, row: usize) -> Option<DayNumber> {
        Some(i32::from_le_bytes(self.raw(row)?[40..44].try_into().ok()?))
    }

    /// True when the row was deleted.
    pub(crate) fn is_deleted(&self, row: usize) -> bool {
        self.raw(row).is_some_and(|entry| entry[54] & 1 == 1)
    }

    /// The rows with a key in an index sorted by that key.
    fn ordered<K: Ord + Copy>(
        &self,
        index: &Range<usize>,
        key: K,
        key_of: impl Fn(usize) -> Option<K> + Copy,
    ) -> impl Iterator<Item = usize> {
        let row_at = {
            let index = index.clone();
            move |place: usize| self.row_at(&index, place)
        };
        let (mut low, mut high) = (0, index.len() / 4);
        while low < high {
            let middle = low.midpoint(high);
            if row_at(middle).and_then(key_of) < Some(key) { low = middle + 1 } else { high = middle }
        }
        (low..).map_while(row_at).take_while(move |row| key_of(*row) == Some(key))
    }

    fn row_at(&self, index: &Range<usize>, place: usize) -> Option<usize> {
        u32_at(&self.bytes[index.clone()], place.checked_mul(4)?).map(|row| row as usize)
    }

    fn raw(&self, row: usize) -> Option<&[u8]> {
        let start = row.checked_mul(ENTRY)?;
        self.bytes[self.layout.directory.clone()].get(start..start.checked_add(ENTRY)?)
    }

    fn id_at(&self, row: usize) -> Option<Id> {
        Some(Id::from_bytes(self.raw(row)?[..16].try_into().ok()?))
    }

    fn text(&self, place: u32) -> Option<&str> {
        let range = self.range_of(place as usize)?;
        std::str::from_utf8(self.bytes[self.layout.strings.clone()].get(range)?).ok()
    }

    fn range_of(&self, place: usize) -> Option<Range<usize>> {
        let start = place.checked_sub(1).map_or(Some(0), |before| self.end_of(before))?;
        Some(start..self.end_of(place)?)
    }

    fn end_of(&self, place: usize) -> Option<usize> {
        u32_at(&self.bytes[self.layout.ends.clone()], place.checked_mul(4)?).map(|end| end as usize)
    }

    /// Notes the rows in which a word stands.
    pub(crate) fn rows_with(&self, word: &Word, rows: &mut [u64]) {
        let texts = &self.layout.counts;
        let mut note = |place: usize| self.note_rows(place, rows).unwrap_or(());
        if let Some(end) = texts.ascii.checked_sub(1).and_then(|last| self.end_of(last)) {
            let ascii = self.bytes[self.layout.strings.clone()].get(..end).unwrap_or_default();
            word.find_in_ascii(ascii, |place| self.end_of(place), texts.ascii, &mut note);
        }
        let folded = self.folded.get_or_init(|| {
            Folded::of((texts.ascii..texts.texts).filter_map(|place| self.text(u32::try_from(place).ok()?)))
        });
        folded.find(word, &mut |place| note(texts.ascii + place));
    }

    fn note_rows(&self, place: usize, rows: &mut [u64]) -> Option<()> {
        let ends = &self.bytes[self.layout.posting_ends.clone()];
        let end = |place: usize| u32_at(ends, place * 4).map(|end| end as usize);
        let start = place.checked_sub(1).map_or(Some(0), end)?;
        let mut postings = Cursor(self.bytes[self.layout.postings.clone()].get(start..end(place)?)?);
        let mut row = 0_usize;
        while let Some(gap) = postings.number() {
            row = row.checked_add(usize::try_from(gap).ok()?)?;
            *rows.get_mut(row / 64)? |= 1 << (row % 64);
        }
        Some(())
    }
}
