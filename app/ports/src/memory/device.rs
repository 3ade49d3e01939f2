//! A clock that a test sets, seeded chance, and a device as a test describes it.

use crate::device::{Moment, Platform, Storage};
use crate::{Chance, Device, Later, Time};
use std::cell::{Cell, RefCell};
use std::future::poll_fn;
use std::task::Poll;

/// Local wall time: year, month 1-12, day, hour, minute.
pub type Local = (i32, u32, u32, u32, u32);

/// The offset in minutes at a local time.
type Zone = Box<dyn Fn(Local) -> i32>;

/// 25 May 2027, 12:00 UTC: where a clock starts that nobody has set.
const START_MS: i64 = 1_811_246_400_000;

/// A clock that moves only when told to, or by the length of a wait.
pub struct Clock {
    now_ms: Cell<i64>,
    offset_minutes: Cell<i32>,
    zone: RefCell<Option<Zone>>,
    held: Cell<bool>,
}

impl Default for Clock {
    fn default() -> Self {
        Self {
            now_ms: Cell::new(START_MS),
            offset_minutes: Cell::new(120),
            zone: RefCell::new(None),
            held: Cell::new(false),
        }
    }
}

impl Clock {
    /// Sets the clock, forwards or backwards.
    pub fn set(&self, moment: Moment) {
        self.now_ms.set(moment.unix_ms);
        self.offset_minutes.set(moment.offset_minutes);
    }

    /// Moves the clock on, or back.
    pub fn advance(&self, ms: i64) {
        self.now_ms.set(self.now_ms.get() + ms);
    }

    /// Sets the offset of the device's zone at each local time; unset, it is the clock's own.
    pub fn set_zone(&self, zone: impl Fn(Local) -> i32 + 'static) {
        self.zone.replace(Some(Box::new(zone)));
    }

    /// From now on a wait ends when the clock has been moved past its end. Before, it ends at once
    /// and takes the clock with it.
    pub fn hold(&self) {
        self.held.set(true);
    }
}

impl Time for Clock {
    fn now(&self) -> Moment {
        Moment { unix_ms: self.now_ms.get(), offset_minutes: self.offset_minutes.get() }
    }

    fn offset_at(&self, local: Local) -> i32 {
        match self.zone.borrow().as_ref() {
            Some(zone) => zone(local),
            None => self.offset_minutes.get(),
        }
    }

    fn wait(&self, ms: u32) -> Later<'_, ()> {
        let due = self.now_ms.get() + i64::from(ms);
        Box::pin(poll_fn(move |context| {
            if self.held.get() && self.now_ms.get() < due {
                context.waker().wake_by_ref();
                return Poll::Pending;
            }
            self.now_ms.set(self.now_ms.get().max(due));
            Poll::Ready(())
        }))
    }
}

/// Random bytes that follow from a seed.
pub struct Dice {
    state: Cell<u64>,
}

impl Dice {
    /// Dice that fall the same way for the same seed.
    pub fn new(seed: u64) -> Self {
        Self { state: Cell::new(seed) }
    }

    /// The next number of Steele, Lea and Flood's SplitMix64 (2014), constants from memory.
    fn next(&self) -> u64 {
        let state = self.state.get().wrapping_add(0x9e37_79b9_7f4a_7c15);
        self.state.set(state);
        let mixed = (state ^ (state >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}

impl Chance for Dice {
    fn bytes16(&self) -> [u8; 16] {
        let (high, low) = (self.next(), self.next());
        ((u128::from(high) << 64) | u128::from(low)).to_le_bytes()
    }
}

/// A device as a test describes it.
pub struct Handset {
    platform: Cell<Platform>,
    installed: Cell<bool>,
    storage: Cell<Storage>,
    promise: Cell<Option<bool>>,
    waiting: RefCell<Vec<Box<dyn Fn()>>>,
    switches: Cell<u32>,
    buzzes: Cell<u32>,
}

impl Default for Handset {
    fn default() -> Self {
        Self {
            platform: Cell::new(Platform::Android),
            installed: Cell::new(true),
            storage: Cell::new(Storage::default()),
            promise: Cell::new(None),
            waiting: RefCell::default(),
            switches: Cell::new(0),
            buzzes: Cell::new(0),
        }
    }
}

impl Handset {
    /// Sets the platform, and whether the page runs as an installed app.
    pub fn describe_as(&self, platform: Platform, installed: bool) {
        self.platform.set(platform);
        self.installed.set(installed);
    }

    /// Sets what the browser says of our storage, and its answer when asked to promise.
    pub fn set_storage(&self, storage: Storage, promise: Option<bool>) {
        self.storage.set(storage);
        self.promise.set(promise);
    }

    /// A new version stands ready.
    pub fn update(&self) {
        for waiting in self.waiting.borrow().iter() {
            waiting();
        }
    }

    /// How often the page switched to a new version.
    pub fn switches(&self) -> u32 {
        self.switches.get()
    }

    /// How often the device gave a sign that can be felt.
    pub fn buzzes(&self) -> u32 {
        self.buzzes.get()
    }
}

impl Device for Handset {
    fn platform(&self) -> Platform {
        self.platform.get()
    }

    fn describe(&self) -> String {
        "Test device".into()
    }

    fn installed(&self) -> bool {
        self.installed.get()
    }

    fn storage(&self) -> Later<'_, Storage> {
        Box::pin(async { self.storage.get() })
    }

    fn ask_promise(&self) -> Later<'_, Option<bool>> {
        Box::pin(async { self.promise.get() })
    }

    fn on_update(&self, waiting: Box<dyn Fn()>) {
        self.waiting.borrow_mut().push(waiting);
    }

    fn use_update(&self) {
        self.switches.set(self.switches.get() + 1);
    }

    fn buzz(&self) {
        self.buzzes.set(self.buzzes.get() + 1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::memory::{Started, block_on};

    #[test]
    fn a_wait_takes_the_clock_with_it() {
        let clock = Clock::default();
        block_on(clock.wait(500));
        assert_eq!(clock.now().unix_ms, START_MS + 500);
    }

    #[test]
    fn a_held_wait_ends_when_the_clock_is_moved() {
        let clock = Clock::default();
        clock.hold();
        let mut wait = Started::new(clock.wait(500));
        assert_eq!(wait.poke(), None);
        clock.advance(499);
        assert_eq!(wait.poke(), None);
        clock.advance(1);
        assert_eq!(wait.poke(), Some(()));
    }

    #[test]
    fn a_clock_jumps_and_has_a_zone() {
        let clock = Clock::default();
        clock.set(Moment { unix_ms: 5, offset_minutes: 60 });
        assert_eq!(clock.offset_at((2027, 7, 1, 12, 0)), 60);
        clock.set_zone(|(_, month, ..)| if (4..=9).contains(&month) { 120 } else { 60 });
        assert_eq!(clock.offset_at((2027, 7, 1, 12, 0)), 120);
        assert_eq!(clock.now(), Moment { unix_ms: 5, offset_minutes: 60 });
    }

    #[test]
    fn dice_fall_the_same_way_for_the_same_seed_and_never_repeat() {
        let (one, two) = (Dice::new(7), Dice::new(7));
        let first = one.bytes16();
        assert_eq!(first, two.bytes16());
        assert_ne!(first, one.bytes16());
    }

    #[test]
    fn an_update_is_told_to_who_asked() {
        let handset = Handset::default();
        let told = std::rc::Rc::new(Cell::new(false));
        let tell = told.clone();
        handset.on_update(Box::new(move || tell.set(true)));
        handset.update();
        handset.use_update();
        assert_eq!((told.get(), handset.switches()), (true, 1));
    }
}
