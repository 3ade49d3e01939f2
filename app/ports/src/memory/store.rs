//! The storage of one device, shared by the connections of its tabs, with faults to switch on.
//!
//! A write is all or nothing, as in a browser. What a test finds below the port (damaged bytes, rows
//! of another version) it puts there itself with [`Disk::with`].

use crate::store::{Damaged, JournalKey, Rows, SegmentKey, StoreFault, Swap};
use crate::{Later, Store};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::future::poll_fn;
use std::rc::Rc;
use std::task::Poll;

/// Everything that one book keeps.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Book {
    /// Packed segments.
    pub segments: BTreeMap<SegmentKey, Vec<u8>>,
    /// Journal rows.
    pub journal: BTreeMap<JournalKey, Vec<u8>>,
    /// What has left the device.
    pub marks: BTreeMap<String, Vec<u8>>,
    /// Files beside the records.
    pub kept: BTreeMap<String, Vec<u8>>,
    /// Damaged rows, oldest first.
    pub aside: Vec<(Damaged, Vec<u8>)>,
}

impl Book {
    fn apply(&mut self, swap: Swap) -> Result<(), StoreFault> {
        let is_taken = |key| self.journal.contains_key(key) && !swap.journal_out.contains(key);
        if swap.journal_in.iter().any(|(key, _)| is_taken(key)) {
            return Err(StoreFault::Taken);
        }
        if let Some((name, expected)) = &swap.expects
            && self.marks.get(name).map_or(&[][..], Vec::as_slice) != expected
        {
            return Err(StoreFault::Taken);
        }
        self.segments.retain(|key, _| !swap.segments_out.contains(key));
        self.segments.extend(swap.segments_in);
        self.journal.retain(|key, _| !swap.journal_out.contains(key));
        self.journal.extend(swap.journal_in);
        self.marks.retain(|key, _| !swap.marks_out.contains(key));
        self.marks.extend(swap.marks_in);
        Ok(())
    }

    fn move_aside(&mut self, damaged: Damaged) {
        let bytes = match &damaged {
            Damaged::Segment(key) => self.segments.remove(key),
            Damaged::Journal(key) => self.journal.remove(key),
        };
        self.aside.extend(bytes.map(|bytes| (damaged, bytes)));
    }
}

/// What goes wrong, as a test switches it on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Every write finds the device full.
    Full,
    /// The next question finds the connection cut; nothing of a write is kept.
    CutOnce,
    /// The next write is kept, and then the connection is cut before the answer.
    CutAfterWrite,
    /// Every question finds the connection cut.
    Cut,
    /// The next write never gets an answer and is not kept: the page died before the commit.
    LostBeforeCommit,
    /// Every write finds that a newer version has written here.
    Newer(u32),
    /// Every write finds that another tab wants the connection closed.
    Outdated,
    /// Nothing can be opened.
    Refused,
    /// The next write finds its key taken.
    Taken,
}

impl Fault {
    fn is_for_once(self) -> bool {
        use Fault::{CutAfterWrite, CutOnce, LostBeforeCommit, Taken};
        matches!(self, CutOnce | CutAfterWrite | LostBeforeCommit | Taken)
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Question {
    Open,
    Read,
    Write,
}

/// The storage of one device.
#[derive(Default)]
pub struct Disk {
    books: RefCell<BTreeMap<String, Book>>,
    fault: Cell<Option<Fault>>,
    held: Cell<bool>,
    steps: Cell<usize>,
}

impl Disk {
    /// Switches a fault on, in place of the one before.
    pub fn fail(&self, fault: Fault) {
        self.fault.set(Some(fault));
    }

    /// Switches every fault off.
    pub fn heal(&self) {
        self.fault.set(None);
    }

    /// From now on no question is answered until [`Disk::step`] or [`Disk::go`].
    pub fn hold(&self) {
        self.held.set(true);
    }

    /// Lets the next question that is asked again be carried out.
    pub fn step(&self) {
        self.steps.set(self.steps.get() + 1);
    }

    /// Answers at once again.
    pub fn go(&self) {
        self.held.set(false);
        self.steps.set(0);
    }

    /// Looks into a book, or changes it behind the port's back.
    pub fn with<T>(&self, book: &str, look: impl FnOnce(&mut Book) -> T) -> T {
        look(self.books.borrow_mut().entry(book.into()).or_default())
    }

    /// Resolves when the test lets the next question pass.
    async fn turn(&self) {
        poll_fn(|context| match (self.held.get(), self.steps.get()) {
            (false, _) => Poll::Ready(()),
            (true, 0) => {
                context.waker().wake_by_ref();
                Poll::Pending
            }
            (true, steps) => {
                self.steps.set(steps - 1);
                Poll::Ready(())
            }
        })
        .await;
    }

    /// The fault that this question meets; one that strikes once is spent with it.
    fn met(&self, question: Question) -> Option<Fault> {
        let fault = self.fault.get().filter(|fault| match fault {
            Fault::CutOnce | Fault::Cut => true,
            Fault::Refused => question == Question::Open,
            Fault::Newer(_) => question != Question::Read,
            _ => question == Question::Write,
        })?;
        if fault.is_for_once() {
            self.heal();
        }
        Some(fault)
    }
}

/// One tab's connection to a [`Disk`].
pub struct Connection {
    disk: Rc<Disk>,
    book: RefCell<Option<String>>,
}

impl Connection {
    /// A connection to a device's storage, with no book open.
    pub fn new(disk: Rc<Disk>) -> Self {
        Self { disk, book: RefCell::new(None) }
    }

    fn with_book<T>(&self, look: impl FnOnce(&mut Book) -> T) -> Result<T, StoreFault> {
        let book = self.book.borrow().clone();
        let book = book.ok_or_else(|| StoreFault::Cut("no book is open".into()))?;
        Ok(self.disk.with(&book, look))
    }

    fn read<T: 'static>(&self, look: impl Fn(&Book) -> T + 'static) -> Later<'_, Result<T, StoreFault>> {
        Box::pin(async move {
            self.disk.turn().await;
            match self.disk.met(Question::Read) {
                Some(_) => Err(StoreFault::Cut("switched on".into())),
                None => self.with_book(|book| look(book)),
            }
        })
    }

    async fn write(&self, change: impl FnOnce(&mut Book) -> Result<(), StoreFault>) -> Result<(), StoreFault> {
        self.disk.turn().await;
        let cut = StoreFault::Cut("switched on".into());
        match self.disk.met(Question::Write) {
            None | Some(Fault::Refused) => self.with_book(change)?,
            Some(Fault::CutAfterWrite) => self.with_book(change)?.and(Err(cut)),
            Some(Fault::LostBeforeCommit) => std::future::pending().await,
            Some(Fault::CutOnce | Fault::Cut) => Err(cut),
            Some(Fault::Full) => Err(StoreFault::Full),
            Some(Fault::Newer(found)) => Err(StoreFault::Newer { found }),
            Some(Fault::Outdated) => Err(StoreFault::Outdated),
            Some(Fault::Taken) => Err(StoreFault::Taken),
        }
    }
}

fn rows<K: Clone + Ord>(kept: &BTreeMap<K, Vec<u8>>, keys: &[K]) -> Rows<K> {
    keys.iter().filter_map(|key| kept.get(key).map(|bytes| (key.clone(), bytes.clone()))).collect()
}

fn all<K: Clone>(kept: &BTreeMap<K, Vec<u8>>) -> Rows<K> {
    kept.iter().map(|(key, bytes)| (key.clone(), bytes.clone())).collect()
}

impl Store for Connection {
    fn open(&self, book: &str) -> Later<'_, Result<(), StoreFault>> {
        let book = book.to_owned();
        Box::pin(async move {
            self.disk.turn().await;
            let met = self.disk.met(Question::Open);
            if matches!(met, None | Some(Fault::Newer(_))) {
                self.disk.with(&book, |_| ());
                self.book.replace(Some(book));
            }
            match met {
                None => Ok(()),
                Some(Fault::Newer(found)) => Err(StoreFault::Newer { found }),
                Some(Fault::Refused) => Err(StoreFault::Refused("switched on".into())),
                Some(_) => Err(StoreFault::Cut("switched on".into())),
            }
        })
    }

    fn segment_keys(&self) -> Later<'_, Result<Vec<SegmentKey>, StoreFault>> {
        self.read(|book| book.segments.keys().copied().collect())
    }

    fn segments(&self, keys: Vec<SegmentKey>) -> Later<'_, Result<Rows<SegmentKey>, StoreFault>> {
        self.read(move |book| rows(&book.segments, &keys))
    }

    fn journal_keys(&self) -> Later<'_, Result<Vec<JournalKey>, StoreFault>> {
        self.read(|book| book.journal.keys().cloned().collect())
    }

    fn journal(&self, keys: Option<Vec<JournalKey>>) -> Later<'_, Result<Rows<JournalKey>, StoreFault>> {
        self.read(move |book| match &keys {
            Some(keys) => rows(&book.journal, keys),
            None => all(&book.journal),
        })
    }

    fn marks(&self) -> Later<'_, Result<Rows<String>, StoreFault>> {
        self.read(|book| all(&book.marks))
    }

    fn swap(&self, swap: Swap) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(self.write(|book| book.apply(swap)))
    }

    fn kept_names(&self) -> Later<'_, Result<Vec<String>, StoreFault>> {
        self.read(|book| book.kept.keys().cloned().collect())
    }

    fn kept(&self, names: Vec<String>) -> Later<'_, Result<Rows<String>, StoreFault>> {
        self.read(move |book| rows(&book.kept, &names))
    }

    fn keep(&self, name: String, bytes: Option<Vec<u8>>) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(self.write(|book| {
            match bytes {
                Some(bytes) => book.kept.insert(name, bytes),
                None => book.kept.remove(&name),
            };
            Ok(())
        }))
    }

    fn set_aside(&self, damaged: Damaged) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(self.write(|book| {
            book.move_aside(damaged);
            Ok(())
        }))
    }

    fn aside_count(&self) -> Later<'_, Result<u32, StoreFault>> {
        self.read(|book| book.aside.len() as u32)
    }

    fn erase(&self, book: &str) -> Later<'_, Result<(), StoreFault>> {
        let book = book.to_owned();
        Box::pin(async move {
            self.disk.turn().await;
            match self.disk.met(Question::Open) {
                None | Some(Fault::Newer(_)) => {}
                Some(_) => return Err(StoreFault::Cut("switched on".into())),
            }
            self.disk.books.borrow_mut().remove(&book);
            self.book.borrow_mut().take_if(|open| *open == book);
            Ok(())
        })
    }
}

#[cfg(test)]
mod tests;
