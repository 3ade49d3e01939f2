//! One device with its pages, answered from memory.

use logbook::{Book, Driver, Held, Logbook, Saving};
use ports::device::{Moment, Platform};
use ports::memory::{Page, Phone, block_on};
use record::Id;
use record::parcel::{Parcel, answer};
use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// A device with empty storage, on the afternoon of 19 June 2027.
pub fn phone(seed: u64) -> Phone {
    let phone = Phone::new(seed);
    phone.clock.set(Moment { unix_ms: 1_813_408_325_000, offset_minutes: 120 });
    phone
}

/// The book of one page.
#[derive(Clone)]
pub struct Shared(Rc<RefCell<Logbook>>);

impl Held for Shared {
    fn read<T>(&self, look: impl FnOnce(&Logbook) -> T) -> T {
        look(&self.0.borrow())
    }

    fn change<T>(&self, change: impl FnOnce(&mut Logbook) -> T) -> T {
        change(&mut self.0.borrow_mut())
    }
}

/// One page of a device.
pub struct Tab {
    pub driver: Driver<Shared>,
    pub held: Shared,
    questions: Rc<Cell<usize>>,
    meanwhile: Meanwhile,
}

type Meanwhile = Rc<RefCell<Option<Box<dyn FnOnce()>>>>;

impl Tab {
    /// Opens a page on a person's own book.
    pub fn open(phone: &Phone) -> Self {
        Self::over(&phone.page())
    }

    /// Opens a person's own book on this page.
    pub fn over(page: &Page) -> Self {
        let questions = Rc::new(Cell::new(0));
        let meanwhile = Meanwhile::default();
        let (count, happens) = (questions.clone(), meanwhile.clone());
        page.courier.answer(move |sent| {
            count.set(count.get() + 1);
            if let Some(happens) = happens.take() {
                happens();
            }
            let back = answer(Parcel { kind: sent.kind, parts: sent.parts });
            Ok(ports::courier::Parcel { kind: back.kind, parts: back.parts })
        });
        let held = Shared(Rc::new(RefCell::new(Logbook::new(Book::Own))));
        let driver = Driver::new(held.clone(), page.ports(), Rc::new(block_on));
        block_on(driver.open());
        Self { driver, held, questions, meanwhile }
    }

    /// What happens while the courier works on the next question of this page.
    pub fn meanwhile(&self, happens: impl FnOnce() + 'static) {
        self.meanwhile.replace(Some(Box::new(happens)));
    }

    /// Looks into the book.
    pub fn read<T>(&self, look: impl FnOnce(&Logbook) -> T) -> T {
        self.held.read(look)
    }

    /// How many questions the courier was asked.
    pub fn questions(&self) -> usize {
        self.questions.get()
    }

    /// Now.
    pub fn now(&self) -> Moment {
        self.driver.ports.time.now()
    }

    /// Answers the two questions of the first run.
    pub fn name(&self, name: &str) {
        let settled = self.read(|book| book.name_oneself(name, &mut ids(self))).expect("a name");
        self.settle(settled);
        let settled = self.read(|book| book.set_habit("one", 2027, &mut ids(self)));
        self.settle(settled);
    }

    fn settle(&self, settled: logbook::setup::Settled) {
        block_on(self.driver.save(settled.deed)).expect("saved");
        assert!(self.driver.set_device(settled.device) && block_on(self.driver.keep_device()), "kept");
    }
}

/// Ids from the device's chance.
pub fn ids(tab: &Tab) -> impl FnMut() -> Id + use<> {
    let ports = tab.driver.ports.clone();
    move || Id::new(ports.time.now().unix_ms, ports.chance.bytes16())
}

/// What the moment of saving lends.
pub fn saving(tab: &Tab) -> Saving<'static> {
    Saving { now: tab.now(), offset_at: &|_| 120, platform: Platform::Android }
}
