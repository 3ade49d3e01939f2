//! Search over all records of a shelf.

use super::Shelf;
use crate::packed::Block;
use crate::search::{Word, words};
use crate::{Id, Kind, Record};
use serde_json::Value;

/// A record in which every word of a question stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// The record.
    pub id: Id,
    /// What it is.
    pub kind: Kind,
    /// The field in which the first word stands.
    pub field: String,
}

/// What a search found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// How many records.
    pub total: usize,
    /// The newest of them, the newest first.
    pub hits: Vec<Hit>,
}

impl Shelf {
    /// The living records in which every word stands somewhere, whatever its case and accents: how many, and the
    /// newest of them, at most `limit`.
    pub fn search(&self, text: &str, limit: usize) -> Found {
        let words = words(text);
        let found = self.matching(&words, |_| Some(()));
        let hits = found.iter().take(limit).filter_map(|(id, ())| hit(&self.get(*id)?, &words)).collect();
        Found { total: found.len(), hits }
    }

    /// The living records of each of these kinds in which every word stands, the newest first. What is stored is looked
    /// through once for all of them.
    pub fn search_kinds<const N: usize>(&self, text: &str, kinds: [Kind; N]) -> [Vec<Id>; N] {
        let mut found = [const { Vec::new() }; N];
        for (id, at) in self.matching(&words(text), |own| kinds.iter().position(|kind| kind == own)) {
            found[at].push(id);
        }
        found
    }

    /// The records with all words, the newest first, each with what `wanted` says of its kind; none of which that says
    /// nothing.
    fn matching<T>(&self, words: &[Word], wanted: impl Fn(&Kind) -> Option<T>) -> Vec<(Id, T)> {
        if words.is_empty() {
            return Vec::new();
        }
        let over = self.overlay.values().filter(|held| !held.facts.deleted);
        let over = over.filter_map(|held| Some((&held.record, wanted(&held.record.kind)?)));
        let over = over.filter(|(record, _)| words.iter().all(|word| field_with(record, word).is_some()));
        let mut all: Vec<(Id, T)> = over.map(|(record, of)| (record.id, of)).collect();
        for shelved in &self.blocks {
            let found = rows_with_all(&shelved.block, words).into_iter().filter_map(|row| shelved.block.entry(row));
            let found = found.filter(|entry| !entry.deleted && !self.is_over(entry.id));
            all.extend(found.filter_map(|entry| Some((entry.id, wanted(entry.kind)?))));
        }
        all.sort_unstable_by_key(|(id, _)| std::cmp::Reverse(*id));
        all
    }
}

/// The rows of a block in which every word stands.
fn rows_with_all(block: &Block, words: &[Word]) -> Vec<usize> {
    let mut all = vec![u64::MAX; block.len().div_ceil(64)];
    for word in words {
        let mut rows = vec![0; all.len()];
        block.rows_with(word, &mut rows);
        all.iter_mut().zip(&rows).for_each(|(all, rows)| *all &= rows);
        if all.iter().all(|rows| *rows == 0) {
            return Vec::new();
        }
    }
    (0..block.len()).filter(|row| all[row / 64] & (1 << (row % 64)) != 0).collect()
}

fn hit(record: &Record, words: &[Word]) -> Option<Hit> {
    let field = field_with(record, words.first()?)?.to_owned();
    Some(Hit { id: record.id, kind: record.kind.clone(), field })
}

fn field_with<'a>(record: &'a Record, word: &Word) -> Option<&'a str> {
    let stands = |value: &Value| {
        let mut stands = false;
        crate::packed::texts_of(value, &mut |text| stands |= word.is_in(text));
        stands
    };
    let with = record.fields.iter().find(|(_, versions)| versions.iter().any(|version| stands(&version.value)));
    with.map(|(field, _)| field.as_str())
}
