//! Awaits the ports for the logbook: opening a book, making deeds last, following other tabs.
//!
//! The book itself lives with the screens ([`Held`]); the driver reads and changes it for moments only, never across
//! an await.

use crate::book::{Book, Enacted, Logbook, ReadOnly, State};
use crate::deed::Deed;
use crate::exchange::LEFT;
use crate::kept;
use crate::setup::DeviceSettings;
use ports::store::{Damaged, JournalKey, SegmentKey, StoreFault, Swap};
use ports::tabs::Word;
use ports::{Later, Ports};
use record::marks::Marks;
use record::shelf::{Fold, Shelf};
use record::{Record, Replica};
use std::cell::{Cell, RefCell};
use std::collections::BTreeSet;
use std::rc::Rc;

/// Where the one book of a page lives.
pub trait Held: Clone + 'static {
    /// Looks into the book.
    fn read<T>(&self, look: impl FnOnce(&Logbook) -> T) -> T;
    /// Changes the book; whoever shows it is told.
    fn change<T>(&self, change: impl FnOnce(&mut Logbook) -> T) -> T;
}

/// How tasks that nobody awaits are started.
pub type Spawn = Rc<dyn Fn(Later<'static, ()>)>;

/// Segments read at a time while opening.
const BATCH: usize = 16;

/// Records in a block.
const BLOCK: usize = 1_000;

/// Journal rows after which they are folded into segments.
const FOLD_AFTER: usize = 400;

/// Why a deed was not saved. What was typed is untouched.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveFault {
    /// The storage said no.
    Store(StoreFault),
    /// Another tab keeps the write lock.
    Locked,
    /// The book is open for reading only.
    ReadOnly(ReadOnly),
    /// The book is not open yet.
    Opening,
}

/// A deed that lasts.
#[derive(Clone, Debug)]
pub struct Saved {
    /// What brings back what stood before.
    pub undo: Deed,
    /// The records as saved.
    pub records: Vec<Record>,
}

/// The driver of one book.
#[derive(Clone)]
pub struct Driver<H: Held> {
    pub(crate) held: H,
    /// The ports.
    pub ports: Ports,
    book: Book,
    spawn: Spawn,
    turn: Rc<Turn>,
    /// The journal rows that are in memory.
    known: Rc<RefCell<BTreeSet<JournalKey>>>,
}

/// One write at a time; and whether another tab has asked for the lock meanwhile.
#[derive(Default)]
struct Turn {
    busy: Cell<bool>,
    asked: Cell<bool>,
    folding_fails: Cell<bool>,
}

impl<H: Held> Driver<H> {
    /// A driver for the book that `held` holds.
    pub fn new(held: H, ports: Ports, spawn: Spawn) -> Self {
        let book = held.read(Logbook::book);
        Self { held, ports, book, spawn, turn: Rc::default(), known: Rc::default() }
    }

    /// Opens the book: the journal first, then the segments, the newest first. What is damaged is set aside and counted.
    pub async fn open(&self) {
        let newer = match self.ports.store.open(self.book.name()).await {
            Ok(()) => false,
            Err(StoreFault::Newer { .. }) => true,
            Err(fault) => return self.held.change(|book| book.state = State::Failed(fault)),
        };
        let device = DeviceSettings::load(&*self.ports.draft, self.book);
        let describe = self.ports.device.describe();
        self.held.change(|book| {
            book.describe(describe, env!("CARGO_PKG_VERSION").to_owned());
            book.set_device(device);
        });
        if let Err(fault) = self.read_all().await {
            return self.held.change(|book| book.state = State::Failed(fault));
        }
        self.held.change(|book| book.state = if newer { State::ReadOnly(ReadOnly::Newer) } else { State::Ready });
        self.listen();
    }

    async fn read_all(&self) -> Result<(), StoreFault> {
        let store = &self.ports.store;
        let aside = store.aside_count().await?;
        self.held.change(|book| book.aside = aside);
        for (name, bytes) in store.marks().await? {
            self.held.change(|book| book.take_mark(&name, &bytes));
            if name == DEVICE {
                self.held.change(|book| book.set_device(book.device().clone().or_with_book(&bytes)));
            }
        }
        self.take_journal(None).await?;
        let mut keys = store.segment_keys().await?;
        keys.reverse();
        let of = keys.len();
        for (index, batch) in keys.chunks(BATCH).enumerate() {
            self.held.change(|book| book.state = State::Opening { done: index * BATCH, of });
            self.take_segments(batch.to_vec()).await?;
        }
        Ok(())
    }

    async fn take_journal(&self, keys: Option<Vec<JournalKey>>) -> Result<(), StoreFault> {
        for (key, bytes) in self.ports.store.journal(keys).await? {
            let taken = self.held.change(|book| book.take_row(&key, bytes));
            self.note_or_set_aside(taken, Damaged::Journal(key.clone())).await?;
            self.known.borrow_mut().insert(key);
        }
        Ok(())
    }

    async fn take_segments(&self, keys: Vec<SegmentKey>) -> Result<(), StoreFault> {
        for (key, bytes) in self.ports.store.segments(keys).await? {
            let taken = self.held.change(|book| book.take_segment(key, bytes));
            self.note_or_set_aside(taken, Damaged::Segment(key)).await?;
        }
        Ok(())
    }

    /// Damage in one block stays in that block: it is moved aside, where nothing deletes it. What a newer version wrote
    /// is left where it is.
    async fn note_or_set_aside(
        &self,
        taken: Result<(), record::packed::Damage>,
        what: Damaged,
    ) -> Result<(), StoreFault> {
        match taken {
            Ok(()) => Ok(()),
            Err(record::packed::Damage::Newer(found)) => Err(StoreFault::Newer { found }),
            Err(_) => {
                self.held.change(|book| book.aside += 1);
                self.ports.store.set_aside(what).await
            }
        }
    }

    /// Changes what belongs to this device only and keeps it as small texts, at once. False when the device refused.
    pub fn set_device(&self, device: DeviceSettings) -> bool {
        let kept = device.keep(&*self.ports.draft, self.book);
        self.held.change(|book| book.set_device(device));
        kept
    }

    /// Keeps what belongs to this device only in the book's storage as well, which has it for certain. False when the
    /// device refused.
    pub async fn keep_device(&self) -> bool {
        let device = self.held.read(|book| book.device().with_book());
        let swap = Swap { marks_in: vec![(DEVICE.to_owned(), device)], ..Swap::default() };
        self.ports.store.swap(swap).await.is_ok()
    }

    /// Makes a deed last. It has been saved only when this returns `Ok`.
    ///
    /// **Errors**: why not; the book and the storage are as they were.
    pub async fn save(&self, deed: Deed) -> Result<Saved, SaveFault> {
        self.enter().await;
        let saved = self.save_in_turn(&deed).await;
        self.leave();
        saved
    }

    async fn save_in_turn(&self, deed: &Deed) -> Result<Saved, SaveFault> {
        self.hold_the_lock().await?;
        let enacted = match self.write(deed).await {
            Err(StoreFault::Taken) => {
                // Somebody else wrote under our session: never again under the same name.
                self.begin_session();
                self.write(deed).await
            }
            other => other,
        };
        let enacted = enacted.map_err(|fault| self.refused(fault))?;
        self.known.borrow_mut().insert(enacted.key.clone());
        self.held.change(|book| book.keep(&enacted));
        self.ports.tabs.say(self.book.name(), Word::Changed);
        Ok(Saved { undo: deed.undo(&enacted.records), records: enacted.records })
    }

    async fn write(&self, deed: &Deed) -> Result<Enacted, StoreFault> {
        let now = self.ports.time.now();
        let enacted = self.held.change(|book| book.enact(deed, now));
        let swap = Swap {
            journal_in: vec![(enacted.key.clone(), enacted.row.clone())],
            marks_in: enacted.author.iter().cloned().collect(),
            ..Swap::default()
        };
        self.ports.store.swap(swap).await.map(|()| enacted)
    }

    fn refused(&self, fault: StoreFault) -> SaveFault {
        if fault == StoreFault::Outdated {
            self.held.change(|book| book.state = State::ReadOnly(ReadOnly::Outdated));
        }
        SaveFault::Store(fault)
    }

    /// Takes the write lock, if it is not ours, and begins a session on top of all that was written meanwhile.
    pub(crate) async fn hold_the_lock(&self) -> Result<(), SaveFault> {
        match self.held.read(|book| book.state().clone()) {
            State::Ready => {}
            State::ReadOnly(why) => return Err(SaveFault::ReadOnly(why)),
            State::Failed(fault) => return Err(SaveFault::Store(fault)),
            State::Opening { .. } => return Err(SaveFault::Opening),
        }
        if self.held.read(Logbook::has_session) {
            return Ok(());
        }
        let held = self.held.clone();
        if !self.ports.tabs.take(self.book.name(), Box::new(move || held.change(Logbook::end_session))).await {
            return Err(SaveFault::Locked);
        }
        self.catch_up().await.map_err(SaveFault::Store)?;
        self.begin_session();
        Ok(())
    }

    fn begin_session(&self) {
        let random = self.ports.chance.bytes16();
        self.held.change(|book| book.begin_session(random));
    }

    /// Reads what other tabs have written since: new journal rows; or everything, when blocks were written anew.
    pub async fn catch_up(&self) -> Result<(), StoreFault> {
        let store = &self.ports.store;
        let before = self.held.read(|book| book.generation.clone());
        for (name, bytes) in store.marks().await? {
            self.held.change(|book| book.take_mark(&name, &bytes));
        }
        if self.held.read(|book| book.generation != before) {
            return self.read_anew().await;
        }
        let journal = store.journal_keys().await?;
        let rows: Vec<JournalKey> = journal.into_iter().filter(|key| !self.known.borrow().contains(key)).collect();
        if rows.is_empty() { Ok(()) } else { self.take_journal(Some(rows)).await }
    }

    async fn read_anew(&self) -> Result<(), StoreFault> {
        let store = &self.ports.store;
        let mut shelf = Shelf::default();
        let mut damaged = Vec::new();
        for (key, bytes) in store.segments(store.segment_keys().await?).await? {
            damaged.extend(shelf.add_block(key, bytes).err().map(|damage| (damage, Damaged::Segment(key))));
        }
        let mut known = BTreeSet::new();
        for (key, bytes) in store.journal(None).await? {
            damaged.extend(
                shelf.add_row(bytes, row_key(&key)).err().map(|damage| (damage, Damaged::Journal(key.clone()))),
            );
            known.insert(key);
        }
        self.held.change(|book| {
            book.shelf = shelf;
            book.touch();
        });
        *self.known.borrow_mut() = known;
        for (damage, what) in damaged {
            self.note_or_set_aside(Err(damage), what).await?;
        }
        Ok(())
    }

    fn listen(&self) {
        let driver = self.clone();
        let heard = move |word| match word {
            Word::MayI if driver.turn.busy.get() => driver.turn.asked.set(true),
            Word::MayI => driver.let_go(),
            Word::Changed => {
                let follower = driver.clone();
                (driver.spawn)(Box::pin(async move {
                    // A tab that cannot read now reads again at the next word, or when it wants to write.
                    let _ = follower.catch_up().await;
                }));
            }
        };
        self.ports.tabs.listen(self.book.name(), Box::new(heard));
    }

    fn let_go(&self) {
        self.held.change(Logbook::end_session);
        self.ports.tabs.release();
    }

    pub(crate) async fn enter(&self) {
        while self.turn.busy.replace(true) {
            self.ports.time.wait(4).await;
        }
    }

    pub(crate) fn leave(&self) {
        self.turn.busy.set(false);
        if self.turn.asked.replace(false) {
            self.let_go();
        }
    }

    /// True when the journal has grown so long that it should be folded.
    pub fn should_fold(&self) -> bool {
        self.known.borrow().len() > FOLD_AFTER && !self.turn.folding_fails.get()
    }

    /// Folds the journal into segments. A fold that fails changes nothing and is not tried again by this page.
    pub async fn fold(&self) {
        self.enter().await;
        let folded = self.fold_in_turn().await;
        self.turn.folding_fails.set(folded.is_err());
        self.leave();
    }

    async fn fold_in_turn(&self) -> Result<(), SaveFault> {
        self.hold_the_lock().await?;
        let fold = self.held.read(|book| book.shelf.fold_plan(BLOCK));
        self.write_fold(fold, Vec::new()).await.map_err(SaveFault::Store)
    }

    /// Writes new blocks in the place of old ones and of the journal rows that went into them, in one transaction. Where
    /// another tab has written blocks since this one last looked, as happens to a tab that slept, nothing is written.
    pub(crate) async fn write_fold(&self, fold: Fold, marks: Vec<(String, Vec<u8>)>) -> Result<(), StoreFault> {
        let generation = self.ports.chance.bytes16().to_vec();
        let journal_out: Vec<JournalKey> = fold.journal_out.iter().map(journal_key).collect();
        let swap = Swap {
            segments_in: fold.blocks_in.clone(),
            segments_out: fold.blocks_out.clone(),
            journal_out: journal_out.clone(),
            marks_in: marks.iter().cloned().chain([(GENERATION.to_owned(), generation.clone())]).collect(),
            expects: Some((GENERATION.to_owned(), self.held.read(|book| book.generation.clone()))),
            ..Swap::default()
        };
        if let Err(fault) = self.ports.store.swap(swap).await {
            if fault == StoreFault::Taken {
                self.held.change(Logbook::end_session);
            }
            return Err(fault);
        }
        self.known.borrow_mut().retain(|key| !journal_out.contains(key));
        self.held.change(|book| {
            book.shelf.apply_fold(fold).expect("blocks that were just packed can be opened");
            book.generation = generation;
            marks.iter().for_each(|(name, bytes)| book.take_mark(name, bytes));
            book.touch();
        });
        self.ports.tabs.say(self.book.name(), Word::Changed);
        Ok(())
    }
}

/// The mark of what belongs to this device only.
const DEVICE: &str = "device";

/// The mark that changes whenever blocks are written anew.
const GENERATION: &str = "generation";

pub(crate) fn row_key(key: &JournalKey) -> (String, u32) {
    (key.replica.clone(), key.number)
}

fn journal_key((replica, number): &(String, u32)) -> JournalKey {
    JournalKey { replica: replica.clone(), number: *number }
}

impl Logbook {
    /// Takes a journal row that was read.
    pub(crate) fn take_row(&mut self, key: &JournalKey, bytes: Vec<u8>) -> Result<(), record::packed::Damage> {
        self.shelf.add_row(bytes, row_key(key))?;
        self.touch();
        Ok(())
    }

    /// Takes a segment that was read.
    pub(crate) fn take_segment(&mut self, key: SegmentKey, bytes: Vec<u8>) -> Result<(), record::packed::Damage> {
        self.shelf.add_block(key, bytes)?;
        self.touch();
        Ok(())
    }

    /// Takes a mark that was read: an author, or what has left the device. One that cannot be read is passed over:
    /// the worst that follows is to be told once more that something exists only here.
    pub(crate) fn take_mark(&mut self, name: &str, bytes: &[u8]) {
        if let Some(replica) = name.strip_prefix("author/") {
            if let Some(author) = kept::read(bytes) {
                self.note_author(Replica::new(replica), author);
            }
        } else if name == LEFT {
            if let Ok(left) = Marks::open(bytes) {
                self.marks.merge(&left);
                self.only_here.take();
            }
        } else if name == GENERATION {
            self.generation = bytes.to_vec();
        }
    }
}
