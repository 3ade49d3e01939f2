//! Reads log files.

use super::header::{FORMAT, Header, VERSION};
use super::line::{self, Replicas};
use super::refusal::Refusal;
use crate::check::Problem;
use crate::{Id, Record, merge::merge};
use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::{Map, Value};
use std::borrow::Cow;
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

impl Log {
    /// Says whether its records may be merged into a book.
    ///
    /// **Errors**: [`Refusal::ShareCopy`], [`Refusal::OtherBook`].
    pub fn mergeable(&self, book: &str) -> Result<(), Refusal> {
        if self.header.share_copy.is_some() {
            return Err(Refusal::ShareCopy);
        }
        if self.header.book != book {
            return Err(Refusal::OtherBook { book: self.header.book.clone() });
        }
        Ok(())
    }
}

/// Reads a log file.
///
/// **Shape**: a byte order mark, line ends as CR LF and blank space at the end, which mail programs add, do no harm.
///
/// **Errors**: as [`Refusal`]; a file is taken whole or not at all.
pub fn read(bytes: &[u8]) -> Result<Log, Refusal> {
    let text = as_written(bytes);
    let file = text.trim_ascii_end();
    if file.is_empty() {
        return Err(Refusal::Empty);
    }
    if !file.starts_with(OPENING.as_bytes()) {
        return Err(foreign(file));
    }
    let sheet = Sheet::of(file)?;
    let header = header(sheet.head)?;
    let log = records(&sheet, header);
    // A damaged line says more than a checksum; where every line can be read, the checksum speaks.
    let log = log?;
    sheet.verify()?;
    Ok(log)
}

const OPENING: &str = "{\"format\":\"glassine-log\",";
const RECORDS: &[u8] = b"\"records\":[";

/// The bytes as they were when they were written: no byte order mark, LF at the ends of lines.
fn as_written(bytes: &[u8]) -> Cow<'_, [u8]> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if !bytes.contains(&b'\r') {
        return Cow::Borrowed(bytes);
    }
    let mut text = Vec::with_capacity(bytes.len());
    for (index, byte) in bytes.iter().enumerate() {
        if *byte != b'\r' || bytes.get(index + 1) != Some(&b'\n') {
            text.push(*byte);
        }
    }
    Cow::Owned(text)
}

/// Says what a file is that does not begin as ours do.
fn foreign(file: &[u8]) -> Refusal {
    match serde_json::from_slice::<IgnoredAny>(file) {
        Ok(_) => Refusal::NotOurs,
        Err(error) if OPENING.as_bytes().starts_with(file) => Refusal::CutOff { line: error.line() },
        Err(error) => Refusal::NotJson { line: error.line().max(1) },
    }
}

/// A file cut into its parts.
struct Sheet<'a> {
    /// The lines before the records.
    head: &'a [u8],
    /// The lines of records, and after them the bracket.
    lines: Vec<&'a [u8]>,
    /// The number of the first of them, from 1.
    first: usize,
    /// All before the last line.
    sealed: &'a [u8],
    end: End,
}

#[derive(Deserialize)]
struct End {
    records: usize,
    checksum: String,
}

impl<'a> Sheet<'a> {
    fn of(file: &'a [u8]) -> Result<Self, Refusal> {
        let cut = |upto: &[u8]| Refusal::CutOff { line: lines_in(upto) };
        let last = file.iter().rposition(|byte| *byte == b'\n').map_or(0, |place| place + 1);
        let (sealed, last_line) = file.split_at(last);
        let end = last_line.strip_prefix(b"\"end\":").and_then(|rest| rest.strip_suffix(b"}"));
        let end: End = end.and_then(|end| serde_json::from_slice(end).ok()).ok_or_else(|| cut(file))?;
        let mut lines = sealed.split(|byte| *byte == b'\n');
        let head_lines = lines.by_ref().take_while(|line| *line != RECORDS);
        let (count, length) = head_lines.fold((0, 0), |(count, length), line| (count + 1, length + line.len() + 1));
        let head = sealed.get(..length).filter(|head| head.len() < sealed.len());
        let head = head.ok_or(Refusal::BrokenHeader { line: 1 })?;
        let mut lines: Vec<&[u8]> = lines.collect();
        // The last is what stands behind the last line end: nothing.
        lines.pop();
        if lines.pop() != Some(b"],".as_slice()) {
            return Err(cut(sealed));
        }
        Ok(Self { head, lines, first: count + 2, sealed, end })
    }

    fn verify(&self) -> Result<(), Refusal> {
        let checksum = format!("{:08x}", crc32fast::hash(self.sealed));
        if checksum == self.end.checksum { Ok(()) } else { Err(Refusal::Checksum) }
    }
}

fn lines_in(bytes: &[u8]) -> usize {
    1 + bytes.iter().filter(|byte| **byte == b'\n').count()
}

/// Reads the lines before the records, which become an object of their own when the comma is taken off.
fn header(head: &[u8]) -> Result<Header, Refusal> {
    let head = head.trim_ascii_end();
    let object = [head.strip_suffix(b",").unwrap_or(head), b"}"].concat();
    let broken = |error: serde_json::Error| Refusal::BrokenHeader { line: error.line().max(1) };
    let mut members: Map<String, Value> = serde_json::from_slice(&object).map_err(broken)?;
    if members.remove("format") != Some(Value::from(FORMAT)) {
        return Err(Refusal::NotOurs);
    }
    match members.remove("version").and_then(|version| version.as_u64()) {
        Some(VERSION) => {}
        Some(version) if version > VERSION => return Err(Refusal::Newer { version }),
        _ => return Err(Refusal::BrokenHeader { line: 1 }),
    }
    serde_json::from_value(Value::Object(members)).map_err(|_| Refusal::BrokenHeader { line: 1 })
}

fn records(sheet: &Sheet, header: Header) -> Result<Log, Refusal> {
    let mut replicas = Replicas::default();
    let mut places: HashMap<Id, usize> = HashMap::with_capacity(sheet.lines.len());
    let mut log = Log { header, records: Vec::with_capacity(sheet.lines.len()), problems: Vec::new() };
    let count = sheet.lines.iter().filter(|line| !line.is_empty()).count();
    for (index, line) in sheet.lines.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
        let broken = |fault| Refusal::BrokenRecord { line: sheet.first + index, fault };
        let comma = line.strip_suffix(b",");
        let record = line::record(comma.unwrap_or(line), &mut replicas).map_err(broken)?;
        match places.entry(record.id) {
            Entry::Vacant(place) => {
                place.insert(log.records.len());
                log.records.push(record);
            }
            Entry::Occupied(place) => {
                let before = &mut log.records[*place.get()];
                log.problems.push(Problem::Twice { id: record.id });
                log.problems.extend(Problem::dots_of_both(before, &record));
                *before = merge(before, &record);
            }
        }
    }
    if count != sheet.end.records {
        return Err(Refusal::Count { said: sheet.end.records, found: count });
    }
    Ok(log)
}
