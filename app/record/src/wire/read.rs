//! Reads log files.

use super::header::Header;
use super::line::{self, Replicas};
use super::refusal::{Fault, Refusal};
use super::sheet::Sheet;
use crate::check::Problem;
use crate::{Id, Record, merge};
use std::collections::HashMap;
use std::collections::hash_map::Entry;

/// What a log file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Log {
    /// What it says about itself.
    pub header: Header,
    /// Its records, each id once.
    pub records: Vec<Record>,
    /// What is odd in it and did not keep it from being read.
    pub problems: Vec<Problem>,
}

/// Reads a log file.
///
/// **Shape**: a byte order mark, line ends as CR LF and blank space at the end, which mail programs add, do no harm.
///
/// **Errors**: as [`Refusal`]; a file is taken whole or not at all. A share copy is read: see [`Header::mergeable`].
pub fn read(bytes: &[u8]) -> Result<Log, Refusal> {
    let mut reader = Reader::open(bytes)?;
    let mut places: HashMap<Id, usize> = HashMap::with_capacity(reader.len());
    let mut records: Vec<Record> = Vec::with_capacity(reader.len());
    let mut problems = Vec::new();
    for place in 0..reader.len() {
        let record = reader.record(place)?;
        match places.entry(record.id) {
            Entry::Vacant(place) => {
                place.insert(records.len());
                records.push(record);
            }
            Entry::Occupied(place) => {
                let before = &mut records[*place.get()];
                problems.extend(Problem::of_two_copies(before, &record));
                *before = merge(before, &record);
            }
        }
    }
    Ok(Log { header: reader.header, records, problems })
}

/// A log file whose frame was checked and whose records are read one by one, so that many of them need little memory.
pub struct Reader<'a> {
    /// What the file says about itself.
    pub header: Header,
    sheet: Sheet<'a>,
    replicas: Replicas,
}

impl<'a> Reader<'a> {
    /// Checks that a file is a log file and whole.
    ///
    /// **Errors**: as [`Refusal`]. Of a file that was changed, the first record that cannot be read is told, if there
    /// is one: that says more than the checksum.
    pub fn open(bytes: &'a [u8]) -> Result<Self, Refusal> {
        let (sheet, header) = Sheet::of(bytes)?;
        let mut reader = Self { header, sheet, replicas: Replicas::default() };
        let Err(refusal) = reader.sheet.verify() else { return Ok(reader) };
        (0..reader.len()).try_for_each(|place| reader.record(place).map(|_| ()))?;
        Err(refusal)
    }

    /// How many records it has.
    pub fn len(&self) -> usize {
        self.sheet.len()
    }

    /// True when it has none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Reads a record by its place in the file, from 0.
    ///
    /// **Errors**: [`Refusal::BrokenRecord`].
    pub fn record(&mut self, place: usize) -> Result<Record, Refusal> {
        let line = self.sheet.line(place).ok_or(Fault::NotJson { column: 1 });
        let record = line.and_then(|line| line::record(line, &mut self.replicas));
        record.map_err(|fault| Refusal::BrokenRecord { line: self.sheet.number(place), fault })
    }
}
