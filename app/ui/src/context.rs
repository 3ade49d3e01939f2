//! What every screen takes from its context: the one logbook, its driver, the ports, where we are, and what time it is.

use crate::far::{self, Reached};
use crate::route::{Route, Screen};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::Id;
use logbook::book::{Book, Logbook};
use logbook::catch::Saving;
use logbook::deed::{Deed, What};
use logbook::driver::{Driver, Held, SaveFault, Saved};
use logbook::setup::{DeviceSettings, Settled};
use phrases::{Language, Phrases, phrases};
use ports::Ports;
use ports::device::Moment;
use std::rc::Rc;

/// The book where it lives: in one signal.
#[derive(Clone, Copy)]
pub struct InSignal(RwSignal<Logbook, LocalStorage>);

impl Held for InSignal {
    fn read<T>(&self, look: impl FnOnce(&Logbook) -> T) -> T {
        self.0.with_untracked(look)
    }

    fn change<T>(&self, change: impl FnOnce(&mut Logbook) -> T) -> T {
        self.0.try_update(change).expect("the book lives as long as the page")
    }
}

/// A deed that was done, with the way back.
#[derive(Clone)]
pub struct Done {
    /// What it was.
    pub what: What,
    /// What undoes it; none for an undoing.
    pub undo: Option<Deed>,
    /// What goes back with it besides the records.
    pub also: Option<Rc<dyn Fn()>>,
    /// When it was done: the way back stays until the person goes on to another screen.
    pub at: Moment,
}

/// A change of screen within so many milliseconds of a deed belongs to it.
const LEADS_ON_MS: i64 = 1_500;

/// What screens take from their context.
#[derive(Clone, Copy)]
pub struct Context {
    /// The one logbook.
    pub logbook: RwSignal<Logbook, LocalStorage>,
    /// Which screen is shown.
    pub route: RwSignal<Route>,
    /// Now, to the minute, for what is shown; a save asks the clock itself.
    pub now: RwSignal<Moment>,
    /// The last deed done, for the undo bar.
    pub done: RwSignal<Option<Done>, LocalStorage>,
    /// Why the last deed was not saved.
    pub fault: RwSignal<Option<SaveFault>, LocalStorage>,
    /// A save is under way.
    pub busy: RwSignal<bool>,
    /// A new version of the app stands ready.
    pub update: RwSignal<bool>,
    /// The new version is to be used as soon as the form is saved.
    pub update_after: RwSignal<bool>,
    /// What is typed could not be kept while typing.
    pub draft_refused: RwSignal<bool>,
    /// The second module.
    pub far: RwSignal<Reached>,
    driver: StoredValue<Driver<InSignal>, LocalStorage>,
    ports: StoredValue<Ports, LocalStorage>,
}

/// The context of the page.
pub fn use_page() -> Context {
    expect_context::<Context>()
}

/// The sentences of the page's language.
pub fn say() -> &'static Phrases {
    phrases(use_context::<Language>().unwrap_or_default())
}

impl Context {
    /// Makes the context of a page that shows the book of this route.
    pub fn new(ports: Ports, route: Route) -> Self {
        let logbook = RwSignal::new_local(Logbook::new(route.book));
        let spawn: logbook::driver::Spawn = Rc::new(|task| spawn_local(task));
        let driver = Driver::new(InSignal(logbook), ports.clone(), spawn);
        Self {
            logbook,
            route: RwSignal::new(route),
            now: RwSignal::new(ports.time.now()),
            done: RwSignal::new_local(None),
            fault: RwSignal::new_local(None),
            busy: RwSignal::new(false),
            update: RwSignal::new(false),
            update_after: RwSignal::new(false),
            draft_refused: RwSignal::new(false),
            far: RwSignal::new(Reached::Not),
            driver: StoredValue::new_local(driver),
            ports: StoredValue::new_local(ports),
        }
    }

    /// The driver of the book.
    pub fn driver(&self) -> Driver<InSignal> {
        self.driver.get_value()
    }

    /// The ports.
    pub fn ports(&self) -> Ports {
        self.ports.get_value()
    }

    /// Which book the page shows.
    pub fn book(&self) -> Book {
        self.route.with_untracked(|route| route.book)
    }

    /// The address of a screen of this book.
    pub fn to(&self, screen: Screen) -> String {
        Route { book: self.book(), screen }.hash()
    }

    /// Goes to a screen of this book, as a link would.
    pub fn go(&self, screen: Screen) {
        let _ = window().location().set_hash(&self.to(screen));
    }

    /// Goes back to where the person came from.
    pub fn go_back(&self) {
        if let Ok(history) = window().history() {
            let _ = history.back();
        }
    }

    /// The moment, asked of the clock.
    pub fn moment(&self) -> Moment {
        self.ports.with_value(|ports| ports.time.now())
    }

    /// True half a second from now: what is done before then needs no words.
    pub fn late(&self) -> ReadSignal<bool> {
        let page = *self;
        let (late, set) = signal(false);
        spawn_local(async move {
            page.ports().time.wait(500).await;
            let _ = set.try_set(true);
        });
        late
    }

    /// Makes something of the book that needs the moment of saving and new ids.
    pub fn make<T>(&self, make: impl FnOnce(&Logbook, &Saving<'_>, &mut dyn FnMut() -> Id) -> T) -> T {
        let ports = self.ports();
        let now = ports.time.now();
        let offset_at = |local: chrono::NaiveDateTime| ports.time.offset_at(parts(local));
        let saving = Saving { now, offset_at: &offset_at, platform: ports.device.platform() };
        let mut ids = Id::in_turn(now.unix_ms, || ports.chance.bytes16());
        self.logbook.with_untracked(|logbook| make(logbook, &saving, &mut ids))
    }

    /// Makes a deed last; `then` runs only once its transaction has completed. A deed that would change nothing
    /// is done at once.
    pub fn save(&self, deed: Deed, then: impl FnOnce(Option<Saved>) + 'static) {
        let page = *self;
        if page.busy.get_untracked() {
            return;
        }
        page.fault.set(None);
        if deed.is_idle() {
            return then(None);
        }
        page.busy.set(true);
        spawn_local(async move {
            let what = deed.what;
            let saved = page.driver().save(deed).await;
            page.busy.set(false);
            match saved {
                Ok(saved) => page.saved(what, saved, then),
                Err(fault) => page.fault.set(Some(fault)),
            }
        });
    }

    fn saved(&self, what: What, saved: Saved, then: impl FnOnce(Option<Saved>)) {
        self.ports.with_value(|ports| ports.device.buzz());
        let undo = (what != What::Undone).then(|| saved.undo.clone());
        self.done.set(Some(Done { what, undo, also: None, at: self.moment() }));
        then(Some(saved));
        far::fold(*self);
    }

    /// Makes what a change in Setup leads to last: the deed first, then what belongs to this device only.
    pub fn settle(&self, settled: Option<Settled>, then: impl FnOnce() + 'static) {
        let page = *self;
        let Some(settled) = settled else { return then() };
        self.save(settled.deed, move |_| {
            page.set_device(settled.device);
            then();
        });
    }

    /// Changes and keeps what belongs to this device only.
    pub fn set_device(&self, device: DeviceSettings) {
        let page = *self;
        let kept = page.driver().set_device(device);
        page.draft_refused.set(!kept);
        spawn_local(async move {
            if !page.driver().keep_device().await {
                page.draft_refused.set(true);
            }
        });
    }

    /// The questions before the first catch were answered or put off.
    pub fn asked(&self) {
        self.set_device(self.logbook.with_untracked(Logbook::asked));
    }

    /// The person has gone on to another screen: the way back from the last deed goes with the one before.
    pub fn gone_on(&self) {
        let now = self.moment().unix_ms;
        let old = self.done.with_untracked(|done| {
            done.as_ref().is_some_and(|done| !(0..LEADS_ON_MS).contains(&(now - done.at.unix_ms)))
        });
        if old {
            self.done.set(None);
        }
    }

    /// What goes back too when the deed just done is undone.
    pub fn when_undone(&self, also: impl Fn() + 'static) {
        self.done.update(|done| {
            if let Some(done) = done {
                done.also = Some(Rc::new(also));
            }
        });
    }

    /// Undoes the last deed.
    pub fn undo(&self) {
        let Some(done) = self.done.get_untracked() else { return };
        let Some(undo) = done.undo else { return };
        self.save(undo, move |_| {
            if let Some(also) = done.also {
                also();
            }
        });
    }

    /// True the first time that a screen is opened on this device.
    pub fn first_visit(&self, screen: &str) -> bool {
        let name = format!("glassine/seen/{screen}");
        self.ports.with_value(|ports| {
            let first = ports.draft.get(&name).is_none();
            if first {
                ports.draft.put(&name, "yes");
            }
            first
        })
    }
}

fn parts(local: chrono::NaiveDateTime) -> (i32, u32, u32, u32, u32) {
    use chrono::{Datelike, Timelike};
    (local.year(), local.month(), local.day(), local.hour(), local.minute())
}
