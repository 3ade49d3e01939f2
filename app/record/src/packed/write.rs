//! Packs records.

use super::bytes::put_number;
use super::interned::{Name, Strings};
use super::layout::{Counts, ENTRY, FORMAT, HEAD, MAGIC, checksum};
use super::value;
use crate::facts::Facts;
use crate::{Id, Kind, Record, Version, order};
use std::collections::BTreeMap;

/// Packs records into a block.
///
/// **Shape**: each id once, in any order; at most some thousands.
pub fn pack(records: &[Record]) -> Vec<u8> {
    let mut sorted: Vec<&Record> = records.iter().collect();
    order::sort_by_key(&mut sorted, |record| record.id);
    pack_sorted(&sorted)
}

fn pack_sorted(records: &[&Record]) -> Vec<u8> {
    let facts: Vec<Facts> = records.iter().map(|record| Facts::of(record)).collect();
    let strings = Strings::of(records, &facts);
    let kinds = kinds(records, &facts);
    let (rows, row_ends) = rows(records, &strings);
    let (postings, posting_ends) = strings.packed_postings();
    let by_parent = rows_by(&facts, |facts| facts.parent);
    let by_day = rows_by(&facts, |facts| facts.day);
    let string_bytes = strings.all.iter().map(|text| text.len()).sum();
    let counts = Counts {
        records: records.len(),
        ascii: strings.ascii,
        texts: strings.postings.len(),
        strings: strings.all.len(),
        kinds: kinds.len(),
        with_parent: by_parent.len(),
        with_day: by_day.len(),
        string_bytes,
        posting_bytes: postings.len(),
        row_bytes: rows.len(),
    };
    let mut out = Vec::with_capacity(HEAD + records.len() * ENTRY + string_bytes + postings.len() + rows.len());
    out.resize(HEAD, 0);
    for (kind, living) in &kinds {
        put(&mut out, strings.place(kind.name()));
        put(&mut out, *living);
    }
    for (place, (record, facts)) in records.iter().zip(&facts).enumerate() {
        let kind = kinds.keys().position(|kind| *kind == &record.kind).expect("every kind is in the table");
        put_entry(&mut out, record, facts, &strings, row_ends[place], kind);
    }
    by_parent.iter().chain(&by_day).for_each(|row| put(&mut out, *row));
    let mut end = 0;
    for text in &strings.all {
        end += text.len();
        put(&mut out, fits(end));
    }
    posting_ends.iter().for_each(|end| put(&mut out, fits(*end)));
    strings.all.iter().for_each(|text| out.extend_from_slice(text.as_bytes()));
    out.extend_from_slice(&postings);
    out.extend_from_slice(&rows);
    seal(&mut out, &counts);
    out
}

/// Writes the head over the room left for it.
fn seal(out: &mut [u8], counts: &Counts) {
    let mut head = Vec::with_capacity(HEAD);
    head.extend_from_slice(MAGIC);
    put(&mut head, FORMAT);
    put(&mut head, 0);
    put(&mut head, fits(out.len()));
    counts.numbers().iter().for_each(|number| put(&mut head, fits(*number)));
    out[..HEAD].copy_from_slice(&head);
    let sum = checksum(&out[4..8], &out[12..]);
    out[8..12].copy_from_slice(&sum.to_le_bytes());
}

/// The kinds with their numbers of living records.
fn kinds<'a>(records: &[&'a Record], facts: &[Facts]) -> BTreeMap<&'a Kind, u32> {
    let mut kinds = BTreeMap::new();
    for (record, facts) in records.iter().zip(facts) {
        *kinds.entry(&record.kind).or_insert(0) += u32::from(!facts.deleted);
    }
    kinds
}

/// The rows that have something, sorted by it and then by id.
fn rows_by<T: Ord>(facts: &[Facts], key: impl Fn(&Facts) -> Option<T>) -> Vec<u32> {
    let mut keyed: Vec<(T, u32)> =
        (0..).zip(facts).filter_map(|(row, facts)| key(facts).map(|key| (key, row))).collect();
    keyed.sort_unstable();
    keyed.into_iter().map(|(_, row)| row).collect()
}

fn put_entry(out: &mut Vec<u8>, record: &Record, facts: &Facts, strings: &Strings, row_end: usize, kind: usize) {
    out.extend_from_slice(&record.id.to_bytes());
    out.extend_from_slice(&facts.parent.map_or([0; 16], Id::to_bytes));
    out.extend_from_slice(&facts.digest.to_le_bytes());
    out.extend_from_slice(&facts.day.unwrap_or(i32::MIN).to_le_bytes());
    put(out, facts.number.as_deref().map_or(u32::MAX, |text| strings.place(text)));
    put(out, fits(row_end));
    let kind = u16::try_from(kind).expect("a block has fewer than 65,536 kinds");
    out.extend_from_slice(&kind.to_le_bytes());
    let flags = u16::from(facts.deleted) | u16::from(facts.conflict) << 1;
    out.extend_from_slice(&flags.to_le_bytes());
}

fn rows(records: &[&Record], strings: &Strings) -> (Vec<u8>, Vec<usize>) {
    let mut out = Vec::new();
    let mut ends = Vec::with_capacity(records.len());
    for record in records {
        put_row(&mut out, record, strings);
        ends.push(out.len());
    }
    (out, ends)
}

fn put_row(out: &mut Vec<u8>, record: &Record, strings: &Strings) {
    let place = |text: &str| strings.place(text);
    put_number(out, record.seen.0.len() as u64);
    for (replica, number) in &record.seen.0 {
        put_number(out, place(replica.name()).into());
        put_number(out, (*number).into());
    }
    put_number(out, record.fields.len() as u64);
    // Most fields of a record were written by the same edit: its stamp stands before the first of them.
    let mut before: Option<&Version> = None;
    for (field, versions) in &record.fields {
        match Name::of(field) {
            Name::Plain(name) => put_number(out, u64::from(place(name)) * 2),
            Name::Line(list, line) => {
                put_number(out, u64::from(place(list)) * 2 + 1);
                out.extend_from_slice(&line.to_bytes());
            }
        }
        let first = versions.first().expect("a field has at least one version");
        let same = before.is_some_and(|before| before.dot == first.dot && before.entered == first.entered);
        before = Some(first);
        put_number(out, versions.len() as u64 * 2 + u64::from(same));
        for (number, version) in versions.iter().enumerate() {
            if number > 0 || !same {
                put_number(out, place(version.dot.replica.name()).into());
                put_number(out, version.dot.number.into());
                put_number(out, place(&version.entered).into());
            }
            value::put(out, &version.value, &place);
        }
    }
}

fn put(out: &mut Vec<u8>, number: u32) {
    out.extend_from_slice(&number.to_le_bytes());
}

fn fits(length: usize) -> u32 {
    u32::try_from(length).expect("a block is far smaller than 4 GB")
}
