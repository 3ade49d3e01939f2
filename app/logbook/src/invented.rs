//! Small invented books for the tests of this crate.

use crate::book::{Book, Logbook, State};
use crate::deed::{Deed, What};
use crate::setup::DeviceSettings;
use ports::device::Moment;
use record::container::{self, Content, Number};
use record::event::{self, Collector, When};
use record::{Edit, Id, Kind, Record, numbering, person, site};

/// 19 June 2027, 14:32 local.
pub(crate) const NOW: Moment = Moment { unix_ms: 1_813_408_325_000, offset_minutes: 120 };

/// A book on a table, with everything that writes in it.
pub(crate) struct Table {
    pub(crate) book: Logbook,
    made: u32,
}

/// The id that was made so many-th.
pub(crate) fn id(number: u32) -> Id {
    let mut random = [0; 16];
    random[12..].copy_from_slice(&number.to_be_bytes());
    Id::new(i64::from(number), random)
}

impl Table {
    pub(crate) fn new() -> Self {
        let mut book = Logbook::new(Book::Own);
        book.state = State::Ready;
        book.begin_session([7; 16]);
        Self { book, made: 0 }
    }

    pub(crate) fn id(&mut self) -> Id {
        self.made += 1;
        id(self.made)
    }

    /// Saves a deed.
    pub(crate) fn save(&mut self, deed: &Deed) {
        let enacted = self.book.enact(deed, NOW);
        self.book.keep(&enacted);
    }

    /// Works something out with fresh ids.
    pub(crate) fn with_ids<T>(&mut self, work: impl FnOnce(&Logbook, &mut dyn FnMut() -> Id) -> T) -> T {
        let made = &mut self.made;
        let mut fresh = || {
            *made += 1;
            id(*made)
        };
        work(&self.book, &mut fresh)
    }

    /// Makes a record.
    pub(crate) fn make(&mut self, kind: Kind, write: impl FnOnce(&mut Edit)) -> Id {
        let id = self.id();
        self.change(&Record::new(id, kind), write);
        id
    }

    /// Changes a record as it is handed in.
    pub(crate) fn change(&mut self, record: &Record, write: impl FnOnce(&mut Edit)) {
        let mut edit = Edit::of(record);
        write(&mut edit);
        self.save(&Deed::new(What::Setup, [edit]));
    }

    pub(crate) fn person(&mut self, name: &str) -> Id {
        self.make(Kind::Person, |edit| {
            edit.put(&person::NAME, &name.to_owned());
        })
    }

    pub(crate) fn site(&mut self, name: &str) -> Id {
        self.make(Kind::Site, |edit| {
            edit.put(&site::NAME, &name.to_owned());
            edit.put(&site::COUNTRY, &"Orreland".to_owned());
            edit.put(&site::PROVINCE, &"Sallow".to_owned());
            edit.put(&site::LOCALITY, &"Tarn Abbot".to_owned());
            edit.put(&site::OFFSET, &"2 km NE of Tarn Abbot".to_owned());
        })
    }

    /// Names the device's person and gives them a numbering with this prefix.
    pub(crate) fn own(&mut self, name: &str, prefix: &str) -> Id {
        let person = self.person(name);
        let numbering = self.numbering(person, prefix, |_| {});
        let device = DeviceSettings {
            person: Some(person),
            numbering: Some(numbering),
            numberings: vec![numbering],
            ..self.book.device().clone()
        };
        self.book.set_device(device);
        person
    }

    pub(crate) fn numbering(&mut self, person: Id, prefix: &str, write: impl FnOnce(&mut Edit)) -> Id {
        self.make(Kind::Numbering, |edit| {
            edit.put(&numbering::PERSON, &person);
            edit.put(&numbering::HABIT, &"one".to_owned());
            edit.put(&numbering::PREFIX, &prefix.to_owned());
            edit.put(&numbering::WIDTH, &4);
            write(edit);
        })
    }

    /// An event at a time of catch, with one collector.
    pub(crate) fn event(&mut self, from: &str, collector: Id, write: impl FnOnce(&mut Edit)) -> Id {
        let line = self.id();
        self.make(Kind::Event, |edit| {
            edit.put(&event::CAUGHT, &When { from: from.to_owned(), ..When::default() });
            edit.put_line(&event::COLLECTORS, line, &Collector { person: collector, order: 0 });
            write(edit);
        })
    }

    /// A vial of an event with so many insects of a group.
    pub(crate) fn vial(&mut self, event: Id, number: &str, group: &str, count: Option<u32>) -> Id {
        let line = self.id();
        let kind = if count.is_some() { "exact" } else { "uncounted" };
        self.make(Kind::Container, |edit| {
            edit.put(&container::EVENT, &event);
            edit.put(&container::VESSEL, &"vial".to_owned());
            edit.put(&container::NUMBER, &Number { text: number.to_owned(), numbering: None });
            let content = Content { group: group.to_owned(), count_kind: kind.to_owned(), count, ..Content::default() };
            edit.put_line(&container::CONTENTS, line, &content);
        })
    }

    /// Writes in a record as another device would that had seen it as handed in.
    pub(crate) fn elsewhere(&mut self, seen: &Record, replica: &str, write: impl FnOnce(&mut Edit)) {
        let mut edit = Edit::of(seen);
        write(&mut edit);
        let dot = record::Dot { replica: record::Replica::new(replica), number: 1 };
        let theirs = edit.apply(Some(seen), &dot, "2027-07-03T09:12:00+02:00");
        self.book.shelf.put(theirs, None);
        self.book.touch();
    }
}
