//! Why a file is no log file that can be read.

use serde::{Deserialize, Serialize};

/// Why a log file was refused. Nothing was taken from it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum Refusal {
    /// There is nothing in it.
    Empty,
    /// It is not JSON, or not UTF-8.
    NotJson {
        /// The first line that is wrong, from 1.
        line: usize,
    },
    /// It is JSON of some other kind.
    NotOurs,
    /// It says that it is a log file, and its header cannot be read.
    BrokenHeader {
        /// The line, from 1.
        line: usize,
    },
    /// A newer version wrote it in a form that this version must not guess at.
    Newer {
        /// The version of the form.
        version: u64,
    },
    /// The end mark is missing.
    CutOff {
        /// The last line that is there, from 1.
        line: usize,
    },
    /// It was changed or damaged after it was written.
    Checksum,
    /// The end mark counts more or fewer records than there are.
    Count {
        /// As the end mark says.
        said: usize,
        /// As counted.
        found: usize,
    },
    /// One record cannot be read.
    BrokenRecord {
        /// The line, from 1.
        line: usize,
        /// What is wrong with it.
        fault: Fault,
    },
    /// It is a share copy: it can be looked at, never merged.
    ShareCopy,
    /// It belongs to another book.
    OtherBook {
        /// Which.
        book: String,
    },
}

/// What is wrong with one record.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "snake_case")]
pub enum Fault {
    /// Not JSON, or a member of the wrong type.
    NotJson {
        /// The column, from 1.
        column: usize,
    },
    /// No kind.
    NoKind,
    /// No id, or not a UUID.
    NoId,
    /// No versions.
    NoVersions,
    /// A member stands there twice.
    Twice {
        /// The member.
        field: String,
    },
    /// A value of which nothing says who wrote it.
    ValueAlone {
        /// The field.
        field: String,
    },
    /// A version without its value.
    VersionAlone {
        /// The field.
        field: String,
    },
    /// A version whose number is greater than the count of what was seen, or zero.
    BeyondSeen {
        /// The field.
        field: String,
    },
    /// Two values written by one and the same edit.
    DotTwice {
        /// The field.
        field: String,
    },
}
