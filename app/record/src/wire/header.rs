//! The header of a log file.

use super::refusal::Refusal;
use crate::Replica;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};

/// What every log file says it is.
pub const FORMAT: &str = "glassine-log";
/// The version of the form that this code reads and writes.
pub const VERSION: u64 = 1;

/// Who wrote in a session.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Author {
    /// The device.
    #[serde(default)]
    pub device: String,
    /// The person.
    #[serde(default)]
    pub person: String,
    /// The version of the app.
    #[serde(default)]
    pub app: String,
    /// What a newer version says besides.
    #[serde(flatten)]
    pub more: Map<String, Value>,
}

/// What a log file says about itself.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Header {
    /// When it was written, local ISO 8601 with offset; shown to people and never compared.
    #[serde(default)]
    pub written: String,
    /// The device that wrote it.
    #[serde(default)]
    pub device: String,
    /// The person who wrote it.
    #[serde(default)]
    pub person: String,
    /// The version of the app that wrote it.
    #[serde(default)]
    pub app: String,
    /// `own` or `sample`.
    pub book: String,
    /// Of a share copy: what was rounded and what was left out. Such a file is never merged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub share_copy: Option<Map<String, Value>>,
    /// Who wrote in each session that its records name.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub replicas: BTreeMap<Replica, Author>,
    /// What a newer version says besides.
    #[serde(flatten)]
    pub more: Map<String, Value>,
}

impl Header {
    /// Says whether the file's records may be merged into a book.
    ///
    /// **Errors**: [`Refusal::ShareCopy`], [`Refusal::OtherBook`].
    pub fn mergeable(&self, book: &str) -> Result<(), Refusal> {
        if self.share_copy.is_some() {
            return Err(Refusal::ShareCopy);
        }
        if self.book != book {
            return Err(Refusal::OtherBook { book: self.book.clone() });
        }
        Ok(())
    }

    /// Leaves out the sessions that are not named.
    pub fn keep_replicas(&mut self, named: &BTreeSet<Replica>) {
        self.replicas.retain(|replica, _| named.contains(replica));
    }

    /// Takes over from another header what this one lacks: sessions and members that only a newer version knows.
    /// Where both say different things of the same, the same one stays whichever comes first.
    pub fn join(&mut self, other: &Self) {
        for (replica, author) in &other.replicas {
            let own = self.replicas.entry(replica.clone()).or_insert_with(|| author.clone());
            if text(author) > text(own) {
                *own = author.clone();
            }
        }
        for (name, value) in &other.more {
            let own = self.more.entry(name.clone()).or_insert_with(|| value.clone());
            if text(value) > text(own) {
                *own = value.clone();
            }
        }
    }
}

fn text<T: Serialize>(value: &T) -> String {
    serde_json::to_string(value).expect("a header is plain data")
}
