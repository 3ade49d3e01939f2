//! The strings of a block, each kept once.

use super::bytes::put_number;
use super::value;
use crate::facts::Facts;
use crate::quick::{Map, Set};
use crate::{Id, Record};

/// The parts of the table, in their order.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Ascii,
    Text,
    Other,
}

/// The strings of records in the order of the table: texts in ASCII, other texts, then all else.
pub(super) struct Strings<'a> {
    pub(super) all: Vec<&'a str>,
    pub(super) ascii: usize,
    /// For each text the records in which it stands, ascending.
    pub(super) postings: Vec<Vec<u32>>,
    places: Map<&'a str, u32>,
}

impl<'a> Strings<'a> {
    /// Gathers them from records in the order of the directory, and from what the directory says of them: a number that
    /// looks like an id is packed as one in its record.
    pub(super) fn of(records: &[&'a Record], facts: &'a [Facts]) -> Self {
        let mut texts: Map<&str, Vec<u32>> = Map::default();
        let mut others: Set<&str> = Set::default();
        for (row, record) in (0..).zip(records) {
            others.insert(record.kind.name());
            others.extend(record.seen.0.keys().map(|replica| replica.name()));
            for (field, versions) in &record.fields {
                others.insert(Name::of(field).plain());
                for version in versions {
                    others.extend([version.dot.replica.name(), &version.entered]);
                    let mut text = |text| {
                        let rows = texts.entry(text).or_default();
                        if rows.last() != Some(&row) {
                            rows.push(row);
                        }
                    };
                    value::strings(&version.value, &mut text, &mut |other| {
                        others.insert(other);
                    });
                }
            }
        }
        others.extend(facts.iter().filter_map(|facts| facts.number.as_deref()));
        Self::in_order(texts, others)
    }

    fn in_order(mut texts: Map<&'a str, Vec<u32>>, others: Set<&'a str>) -> Self {
        let others = others.into_iter().filter(|other| !texts.contains_key(other)).map(|other| (Part::Other, other));
        let part = |text: &str| if text.is_ascii() { Part::Ascii } else { Part::Text };
        let mut sorted: Vec<(Part, &str)> = texts.keys().map(|text| (part(text), *text)).chain(others).collect();
        sorted.sort_unstable();
        let ascii = sorted.iter().filter(|(part, _)| *part == Part::Ascii).count();
        let all: Vec<&str> = sorted.into_iter().map(|(_, text)| text).collect();
        let postings = all.iter().map_while(|text| texts.remove(text)).collect();
        let places = (0..).zip(&all).map(|(place, text)| (*text, place)).collect();
        Self { all, ascii, postings, places }
    }

    /// The place of a string in the table.
    pub(super) fn place(&self, text: &str) -> u32 {
        self.places[text]
    }

    /// The postings as bytes, and where those of each text end.
    pub(super) fn packed_postings(&self) -> (Vec<u8>, Vec<usize>) {
        let mut out = Vec::new();
        let mut ends = Vec::with_capacity(self.postings.len());
        for rows in &self.postings {
            let mut before = 0;
            for row in rows {
                put_number(&mut out, u64::from(row - before));
                before = *row;
            }
            ends.push(out.len());
        }
        (out, ends)
    }
}

/// A field's name: plain, or that of a line, which ends with an id.
pub(super) enum Name<'a> {
    Plain(&'a str),
    Line(&'a str, Id),
}

impl<'a> Name<'a> {
    pub(super) fn of(field: &'a str) -> Self {
        match field.rsplit_once(':').and_then(|(list, line)| Some((list, Id::as_written(line)?))) {
            Some((list, line)) => Self::Line(list, line),
            None => Self::Plain(field),
        }
    }

    pub(super) fn plain(&self) -> &'a str {
        match self {
            Self::Plain(name) | Self::Line(name, _) => name,
        }
    }
}
