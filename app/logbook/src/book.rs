//! One book in memory: its records, what has left the device, and the writing session.

use crate::deed::Deed;
use crate::moment::{self, Day};
use crate::recent::Recent;
use crate::setup::DeviceSettings;
use ports::device::Moment;
use ports::store::{JournalKey, StoreFault};
use record::marks::Marks;
use record::shelf::Shelf;
use record::wire::Author;
use record::{Dot, Edit, Id, Kind, Record, Replica, Seen};
use serde::Serialize;
use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// Which book is open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Book {
    /// A person's own records.
    #[default]
    Own,
    /// The sample survey, which can be thrown away.
    Sample,
}

impl Book {
    /// Its name in storage and in log files.
    pub fn name(self) -> &'static str {
        match self {
            Self::Own => "own",
            Self::Sample => "sample",
        }
    }
}

/// How far a book is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum State {
    /// Segments are still coming in.
    Opening {
        /// Segments read.
        done: usize,
        /// Segments in all.
        of: usize,
    },
    /// Open for reading and writing.
    Ready,
    /// Open for reading only.
    ReadOnly(ReadOnly),
    /// It could not be opened.
    Failed(StoreFault),
}

/// Why a book is open for reading only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadOnly {
    /// A newer version of the app has written here.
    Newer,
    /// Another tab has brought the storage up to date.
    Outdated,
}

/// The writing session: drawn afresh whenever the write lock is taken.
#[derive(Clone, Debug)]
struct Session {
    replica: Replica,
    next: u32,
    announced: bool,
}

/// What is to be written to make a deed last.
#[derive(Clone, Debug)]
pub struct Enacted {
    /// The key of the journal row.
    pub key: JournalKey,
    /// The row.
    pub row: Vec<u8>,
    /// The records as they are then.
    pub records: Vec<Record>,
    /// The session's author, to be written with its first row: name and text.
    pub author: Option<(String, Vec<u8>)>,
}

/// One book.
pub struct Logbook {
    book: Book,
    pub(crate) state: State,
    pub(crate) shelf: Shelf,
    pub(crate) marks: Marks,
    session: Option<Session>,
    device: DeviceSettings,
    authors: BTreeMap<Replica, Author>,
    describe: Author,
    pub(crate) aside: u32,
    /// Changes whenever blocks are written anew.
    pub(crate) generation: Vec<u8>,
    pub(crate) recent: OnceCell<Rc<Recent>>,
    pub(crate) caches: crate::caches::Caches,
    pub(crate) numbered: OnceCell<crate::numbered::Numbered>,
    pub(crate) only_here: OnceCell<BTreeSet<Id>>,
}

impl Logbook {
    /// A book of which nothing has been read yet.
    pub fn new(book: Book) -> Self {
        Self {
            book,
            state: State::Opening { done: 0, of: 0 },
            shelf: Shelf::default(),
            marks: Marks::default(),
            session: None,
            device: DeviceSettings::default(),
            authors: BTreeMap::new(),
            describe: Author::default(),
            aside: 0,
            generation: Vec::new(),
            recent: OnceCell::new(),
            caches: crate::caches::Caches::default(),
            numbered: OnceCell::new(),
            only_here: OnceCell::new(),
        }
    }

    /// Which book it is.
    pub fn book(&self) -> Book {
        self.book
    }

    /// How far it is open.
    pub fn state(&self) -> &State {
        &self.state
    }

    /// What belongs to this device only.
    pub fn device(&self) -> &DeviceSettings {
        &self.device
    }

    /// Changes what belongs to this device only.
    pub fn set_device(&mut self, device: DeviceSettings) {
        if device.person != self.device.person
            && let Some(session) = &mut self.session
        {
            // Who writes is said once more, with the next row.
            session.announced = false;
        }
        self.device = device;
        self.touch();
    }

    /// The record with this id, deleted or not.
    pub fn record(&self, id: Id) -> Option<Record> {
        self.shelf.get(id)
    }

    /// The record, unless it was deleted.
    pub fn living(&self, id: Id) -> Option<Record> {
        self.record(id).filter(|record| !record.is_deleted())
    }

    /// The living records of a kind that hang on another one, in the order of their ids.
    pub fn children(&self, parent: Id, kind: &Kind) -> Vec<Record> {
        self.shelf
            .children(parent)
            .into_iter()
            .filter_map(|id| self.living(id))
            .filter(|record| record.kind == *kind)
            .collect()
    }

    /// The living records of a kind of which there are few (sites, persons, numberings …), ordered by id; decoded once and
    /// kept until the book changes.
    pub fn all(&self, kind: &Kind) -> Rc<Vec<Record>> {
        if let Some(known) = self.caches.few.borrow().get(kind) {
            return known.clone();
        }
        let records = self.shelf.by_kind(kind).into_iter().filter_map(|id| self.living(id)).collect();
        self.caches.few.borrow_mut().entry(kind.clone()).or_insert(Rc::new(records)).clone()
    }

    /// The days with events, in order, and how many each has.
    pub fn days(&self) -> Vec<(Day, usize)> {
        self.shelf.days().into_iter().filter_map(|(day, count)| Some((moment::day_from_number(day)?, count))).collect()
    }

    /// Who wrote in a session.
    pub fn author(&self, replica: &Replica) -> Option<&Author> {
        self.authors.get(replica)
    }

    /// All authors known.
    pub fn authors(&self) -> &BTreeMap<Replica, Author> {
        &self.authors
    }

    /// Takes note of an author.
    pub fn note_author(&mut self, replica: Replica, author: Author) {
        self.authors.insert(replica, author);
    }

    /// Says what device and version of the app this is; the person's name comes from the book.
    pub fn describe(&mut self, device: String, app: String) {
        self.describe = Author { device, app, ..Author::default() };
    }

    /// The author that this device writes as.
    pub fn own_author(&self) -> Author {
        let person =
            self.device.person.and_then(|id| self.living(id)).and_then(|record| record.get(&record::person::NAME));
        Author { person: person.unwrap_or_default(), ..self.describe.clone() }
    }

    /// Begins a fresh writing session.
    pub fn begin_session(&mut self, random: [u8; 16]) {
        self.session = Some(Session { replica: Replica::fresh(random), next: 1, announced: false });
    }

    /// Ends the writing session: the lock is no longer ours.
    pub fn end_session(&mut self) {
        self.session = None;
    }

    /// True while a writing session is under way.
    pub fn has_session(&self) -> bool {
        self.session.is_some()
    }

    /// Works a deed into the records as they are now and says what is to be written. Nothing is changed in the
    /// book until [`Logbook::keep`]; the number is used up even if the write fails.
    pub fn enact(&mut self, deed: &Deed, now: Moment) -> Enacted {
        let dot = self.next_dot();
        let stamp = moment::stamp(now);
        let apply = |edit: &Edit| edit.apply(self.shelf.get(edit.id()).as_ref(), &dot, &stamp);
        let records: Vec<Record> = deed.edits.iter().map(apply).collect();
        let author = self.unannounced();
        Enacted {
            key: JournalKey { replica: dot.replica.name().to_owned(), number: dot.number },
            row: record::packed::pack(&records),
            records,
            author,
        }
    }

    /// Uses up the next number of the session.
    pub(crate) fn next_dot(&mut self) -> Dot {
        let session = self.session.as_mut().expect("edits are numbered within a writing session");
        session.next += 1;
        Dot { replica: session.replica.clone(), number: session.next - 1 }
    }

    /// The session's author, as long as it was not written yet: name and text.
    pub(crate) fn unannounced(&self) -> Option<(String, Vec<u8>)> {
        let session = self.session.as_ref().filter(|session| !session.announced)?;
        Some((author_name(&session.replica), to_json(&self.own_author())))
    }

    /// Takes what was written into the book.
    pub fn keep(&mut self, enacted: &Enacted) {
        if let (Some(session), Some(_)) = (self.session.as_mut(), &enacted.author) {
            session.announced = true;
            let replica = session.replica.clone();
            let author = self.own_author();
            self.note_author(replica, author);
        }
        let mut numbered = self.numbered.take();
        let mut only_here = self.only_here.take();
        for record in &enacted.records {
            let before = self.shelf.event_of(record.id);
            numbered.as_mut().into_iter().for_each(|numbered| numbered.take_out(self.shelf.entry(record.id)));
            self.shelf.put(record.clone(), Some(crate::driver::row_key(&enacted.key)));
            numbered.as_mut().into_iter().for_each(|numbered| numbered.take_in(self.shelf.entry(record.id)));
            let touched = [before, self.shelf.event_of(record.id)];
            only_here.as_mut().into_iter().for_each(|events| self.note_only_here(events, touched));
        }
        self.touch();
        self.numbered = numbered.map(OnceCell::from).unwrap_or_default();
        self.only_here = only_here.map(OnceCell::from).unwrap_or_default();
    }

    fn note_only_here(&self, only_here: &mut BTreeSet<Id>, touched: [Option<Id>; 2]) {
        for event in touched.into_iter().flatten() {
            if self.shelf.is_unexported(event, &self.marks) {
                only_here.insert(event);
            } else {
                only_here.remove(&event);
            }
        }
    }

    /// An edit of a record of which only `seen` had been shown; of a new record, when it is not there.
    pub(crate) fn edit(&self, id: Id, kind: Kind, seen: Option<&BTreeMap<String, u32>>) -> Edit {
        match (self.record(id), seen) {
            (Some(now), Some(seen)) => {
                let mut shown = Seen::default();
                shown.join_named(seen);
                Edit::as_seen(&now, &shown)
            }
            (Some(now), None) => Edit::of(&now),
            (None, _) => Edit::of(&Record::new(id, kind)),
        }
    }

    /// Forgets what was worked out from the records, after they changed.
    pub(crate) fn touch(&mut self) {
        self.recent = OnceCell::new();
        self.caches = crate::caches::Caches::default();
        self.numbered = OnceCell::new();
        self.only_here = OnceCell::new();
    }
}

/// The name under which an author is kept.
pub fn author_name(replica: &Replica) -> String {
    format!("author/{}", replica.name())
}

pub(crate) fn to_json<T: Serialize>(value: &T) -> Vec<u8> {
    serde_json::to_vec(value).expect("plain data can be written as JSON")
}
