//! One tab writes, the others follow; and what is being typed.

use crate::Later;

/// A word between tabs of one book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// The storage has changed: read the journal and segment keys again.
    Changed,
    /// A tab wants to write: let go of the lock when no save is under way.
    MayI,
}

/// The write lock and the channel of one book.
pub trait Tabs {
    /// Asks for the write lock of a book; asks its holder to let go, waits up to a second, then steals it.
    /// `lost` is called when another tab has taken it from us. True when it is ours.
    fn take(&self, book: &str, lost: Box<dyn Fn()>) -> Later<'_, bool>;

    /// Lets go of the lock, if it is held.
    fn release(&self);

    /// Says a word to the other tabs of the book.
    fn say(&self, book: &str, word: Word);

    /// Calls `heard` for each word from another tab of the book, for as long as the page lives.
    fn listen(&self, book: &str, heard: Box<dyn Fn(Word)>);
}

/// Small texts kept synchronously: drafts as they are typed, and what belongs to this device only.
pub trait Draft {
    /// The text under a name.
    fn get(&self, name: &str) -> Option<String>;
    /// Keeps a text under a name; false when the device refused (full, or storage is blocked).
    fn put(&self, name: &str, text: &str) -> bool;
    /// Forgets a name.
    fn remove(&self, name: &str);
    /// All names that begin so.
    fn names(&self, prefix: &str) -> Vec<String>;
}
