//! Where records are kept: a journal of small rows and packed segments, as bytes.
//!
//! The store knows keys, bytes and transactions, never what a record is. Every write is strict:
//! it has succeeded only when its transaction completed and was flushed.

use crate::Later;

/// The key of one journal row: the writing session and its running number.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JournalKey {
    /// The id of the writing session.
    pub replica: String,
    /// The running number within the session, from 1.
    pub number: u32,
}

/// The key of a packed segment.
pub type SegmentKey = u32;

/// Everything of one kind that a book holds: key and bytes.
pub type Rows<K> = Vec<(K, Vec<u8>)>;

/// A change of segments and journal in one transaction: all of it or nothing.
#[derive(Clone, Debug, Default)]
pub struct Swap {
    /// Segments to write, new or in place of older bytes.
    pub segments_in: Rows<SegmentKey>,
    /// Segments to remove.
    pub segments_out: Vec<SegmentKey>,
    /// Journal rows to add (an existing key makes the whole swap fail with [`StoreFault::Taken`]).
    pub journal_in: Rows<JournalKey>,
    /// Journal rows to remove.
    pub journal_out: Vec<JournalKey>,
    /// Marks (what has left the device) to write under a name of their own.
    pub marks_in: Rows<String>,
    /// Marks to remove.
    pub marks_out: Vec<String>,
    /// A mark that must still say this, nothing where the bytes are none; else the whole swap fails with
    /// [`StoreFault::Taken`].
    pub expects: Option<(String, Vec<u8>)>,
}

/// Why a question to the store had no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreFault {
    /// The browser has no storage for this page, or refused it (private mode, blocked by a setting).
    Refused(String),
    /// The device is full. Nothing of the write was kept.
    Full,
    /// A newer version of the app has written here; this one may read and not write.
    Newer {
        /// The storage version found.
        found: u32,
    },
    /// Another tab needs this connection closed to bring the storage up to date.
    Outdated,
    /// A row with this key is there already, or what was expected there has changed.
    Taken,
    /// The connection was cut and could not be reopened, or the transaction was aborted.
    Cut(String),
}

/// One book's storage.
pub trait Store {
    /// Opens the book, making its object stores when it is new.
    ///
    /// **Errors**: as [`StoreFault`]; nothing is changed.
    fn open(&self, book: &str) -> Later<'_, Result<(), StoreFault>>;

    /// The keys of all segments, ascending: the newest last.
    fn segment_keys(&self) -> Later<'_, Result<Vec<SegmentKey>, StoreFault>>;

    /// The bytes of these segments, in the order asked; a key that is gone is left out.
    fn segments(&self, keys: Vec<SegmentKey>) -> Later<'_, Result<Rows<SegmentKey>, StoreFault>>;

    /// The keys of all journal rows.
    fn journal_keys(&self) -> Later<'_, Result<Vec<JournalKey>, StoreFault>>;

    /// The bytes of these journal rows; all of them when `keys` is `None`.
    fn journal(&self, keys: Option<Vec<JournalKey>>) -> Later<'_, Result<Rows<JournalKey>, StoreFault>>;

    /// Every mark with its name.
    fn marks(&self) -> Later<'_, Result<Rows<String>, StoreFault>>;

    /// Writes all of a swap in one strict transaction, or nothing of it. Saving one change is a swap
    /// with one journal row.
    ///
    /// **Errors**: as [`StoreFault`]; the storage is then as it was. A cut connection is reopened and the
    /// write tried once more before [`StoreFault::Cut`] is returned.
    fn swap(&self, swap: Swap) -> Later<'_, Result<(), StoreFault>>;

    /// The names of what is kept beside the records: files that this device keeps for a book and that no log file takes
    /// along.
    fn kept_names(&self) -> Later<'_, Result<Vec<String>, StoreFault>>;

    /// The bytes of these kept files, in the order asked; a name that is gone is left out.
    fn kept(&self, names: Vec<String>) -> Later<'_, Result<Rows<String>, StoreFault>>;

    /// Keeps a file under its name in place of an older one, or lets it go where there are no bytes.
    ///
    /// **Errors**: as [`StoreFault`]; the storage is then as it was.
    fn keep(&self, name: String, bytes: Option<Vec<u8>>) -> Later<'_, Result<(), StoreFault>>;

    /// Moves a damaged segment or journal row aside, where nothing reads it and nothing deletes it.
    fn set_aside(&self, damaged: Damaged) -> Later<'_, Result<(), StoreFault>>;

    /// How many rows stand aside.
    fn aside_count(&self) -> Later<'_, Result<u32, StoreFault>>;

    /// Throws a whole book away. Only ever called for the sample survey.
    fn erase(&self, book: &str) -> Later<'_, Result<(), StoreFault>>;
}

/// What was found damaged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Damaged {
    /// A segment.
    Segment(SegmentKey),
    /// A journal row.
    Journal(JournalKey),
}
