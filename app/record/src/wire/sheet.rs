//! The frame of a log file: its header, the lines of its records, its end mark.

use super::header::{FORMAT, Header, VERSION};
use super::refusal::Refusal;
use crate::checksum::checksum;
use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::{Map, Value};
use std::borrow::Cow;
use std::ops::Range;

const OPENING: &[u8] = b"{\"format\":\"glassine-log\",\"version\":";
const RECORDS: &[u8] = b"\"records\":[";

/// A file cut into its parts.
pub(super) struct Sheet<'a> {
    text: Cow<'a, [u8]>,
    /// Where the lines of records are.
    lines: Vec<Range<usize>>,
    /// The number of the first of them, from 1.
    first: usize,
    /// Where the last line begins.
    sealed: usize,
    end: End,
}

#[derive(Deserialize)]
struct End {
    records: usize,
    checksum: String,
}

impl<'a> Sheet<'a> {
    /// Cuts a file into its parts and reads its header.
    pub(super) fn of(bytes: &'a [u8]) -> Result<(Self, Header), Refusal> {
        let text = as_written(bytes);
        check_opening(&text)?;
        let cut = |upto: &[u8]| Refusal::CutOff { line: lines_in(upto) };
        let last = text.iter().rposition(|byte| *byte == b'\n').map_or(0, |place| place + 1);
        let end = text[last..].strip_prefix(b"\"end\":").and_then(|rest| rest.strip_suffix(b"}"));
        let end: End = end.and_then(|end| serde_json::from_slice(end).ok()).ok_or_else(|| cut(&text))?;
        let mut lines = ranges(&text[..last]);
        if lines.pop().map(|line| &text[line]) != Some(b"],".as_slice()) {
            return Err(cut(&text[..last]));
        }
        let head = lines.iter().position(|line| text[line.clone()] == *RECORDS);
        let head = head.ok_or(Refusal::BrokenHeader { line: 1 })?;
        let header = header(&text[..lines[head].start])?;
        lines.drain(..=head);
        lines.retain(|line| !line.is_empty());
        Ok((Self { lines, first: head + 2, sealed: last, end, text }, header))
    }

    /// How many records there are.
    pub(super) fn len(&self) -> usize {
        self.lines.len()
    }

    /// The text of a record without the comma behind it; `None` if a comma is missing or stands behind the last.
    pub(super) fn line(&self, place: usize) -> Option<&[u8]> {
        let line = &self.text[self.lines[place].clone()];
        if place + 1 < self.lines.len() { line.strip_suffix(b",") } else { Some(line) }
    }

    /// The number of a record's line in the file, from 1.
    pub(super) fn number(&self, place: usize) -> usize {
        self.first + place
    }

    /// Compares checksum and count with the end mark.
    pub(super) fn verify(&self) -> Result<(), Refusal> {
        let checksum = format!("{:08x}", checksum(&self.text[..self.sealed]));
        if checksum != self.end.checksum {
            return Err(Refusal::Checksum);
        }
        let (said, found) = (self.end.records, self.len());
        if said == found { Ok(()) } else { Err(Refusal::Count { said, found }) }
    }
}

/// The bytes as they were when they were written: no byte order mark, LF at the ends of lines, no blanks at the end.
fn as_written(bytes: &[u8]) -> Cow<'_, [u8]> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes).trim_ascii_end();
    if memchr::memchr(b'\r', bytes).is_none() {
        return Cow::Borrowed(bytes);
    }
    let mut text = Vec::with_capacity(bytes.len());
    let mut rest = bytes;
    while let Some(place) = memchr::memmem::find(rest, b"\r\n") {
        text.extend_from_slice(&rest[..place]);
        rest = &rest[place + 1..];
    }
    text.extend_from_slice(rest);
    Cow::Owned(text)
}

/// Checks that the file begins as ours do, in a version of the form that this code reads.
fn check_opening(text: &[u8]) -> Result<(), Refusal> {
    let Some(rest) = text.strip_prefix(OPENING) else { return Err(foreign(text)) };
    let digits = rest.iter().take_while(|byte| byte.is_ascii_digit()).count();
    let version = std::str::from_utf8(&rest[..digits]).ok().and_then(|digits| digits.parse().ok());
    match version {
        Some(VERSION) => Ok(()),
        Some(version) if version > VERSION => Err(Refusal::Newer { version }),
        _ if digits == rest.len() => Err(Refusal::CutOff { line: 1 }),
        _ => Err(Refusal::BrokenHeader { line: 1 }),
    }
}

/// Says what a file is that does not begin as ours do.
fn foreign(text: &[u8]) -> Refusal {
    #[derive(Deserialize)]
    struct Any {
        #[serde(default)]
        format: Value,
    }
    if text.is_empty() {
        return Refusal::Empty;
    }
    if OPENING.starts_with(text) {
        return Refusal::CutOff { line: 1 };
    }
    if let Err(error) = serde_json::from_slice::<IgnoredAny>(text) {
        return Refusal::NotJson { line: error.line().max(1) };
    }
    match serde_json::from_slice::<Any>(text) {
        // Another program took the file apart and wrote it anew: what it did to the records nobody can say.
        Ok(any) if any.format == FORMAT => Refusal::Checksum,
        _ => Refusal::NotOurs,
    }
}

fn lines_in(text: &[u8]) -> usize {
    1 + memchr::memchr_iter(b'\n', text.strip_suffix(b"\n").unwrap_or(text)).count()
}

/// The lines of a text that ends with a line end.
fn ranges(text: &[u8]) -> Vec<Range<usize>> {
    let mut start = 0;
    memchr::memchr_iter(b'\n', text).map(|end| std::mem::replace(&mut start, end + 1)..end).collect()
}

/// Reads the lines before the records, which become an object of their own when the comma is taken off.
fn header(head: &[u8]) -> Result<Header, Refusal> {
    let head = head.trim_ascii_end();
    let object = [head.strip_suffix(b",").unwrap_or(head), b"}"].concat();
    let broken = |error: serde_json::Error| Refusal::BrokenHeader { line: error.line().max(1) };
    let mut members: Map<String, Value> = serde_json::from_slice(&object).map_err(broken)?;
    members.remove("format");
    members.remove("version");
    serde_json::from_value(Value::Object(members)).map_err(|_| Refusal::BrokenHeader { line: 1 })
}
