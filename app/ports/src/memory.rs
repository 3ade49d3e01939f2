//! Every port answered from memory, for tests.
//!
//! In goes what a test sets: the clock, fixes, faults, files that are picked. Out come the same
//! answers a browser would give, and a record of what was shared, saved and downloaded. Nothing
//! here knows time or threads: an answer is ready at once, or after the step that the test takes
//! where order matters ([`store::Disk::hold`], [`tabs::Hall::pump`], [`device::Clock::hold`]).
//!
//! A [`Phone`] is what several tabs share; a [`Page`] is one tab.

use crate::Ports;
use std::rc::Rc;

pub mod device;
pub mod draft;
pub mod files;
pub mod position;
pub mod run;
pub mod store;
pub mod tabs;
pub mod workers;

pub use run::{Started, block_on};

/// What all tabs of one device share: storage, locks, drafts, clock, chance.
#[derive(Clone)]
pub struct Phone {
    /// The storage of all books.
    pub disk: Rc<store::Disk>,
    /// The locks, and the words between tabs.
    pub hall: Rc<tabs::Hall>,
    /// Drafts and settings.
    pub notes: Rc<draft::Notes>,
    /// The clock.
    pub clock: Rc<device::Clock>,
    /// Random bytes.
    pub dice: Rc<device::Dice>,
}

impl Phone {
    /// A new device with empty storage, whose random bytes follow from a seed.
    pub fn new(seed: u64) -> Self {
        Self {
            disk: Rc::default(),
            hall: Rc::default(),
            notes: Rc::default(),
            clock: Rc::default(),
            dice: Rc::new(device::Dice::new(seed)),
        }
    }

    /// Opens another tab on this device.
    pub fn page(&self) -> Page {
        Page {
            phone: self.clone(),
            store: Rc::new(store::Connection::new(self.disk.clone())),
            tab: Rc::new(tabs::Tab::new(self.hall.clone())),
            sky: Rc::default(),
            hands: Rc::default(),
            shelf: Rc::default(),
            handset: Rc::default(),
            press: Rc::default(),
            courier: Rc::default(),
        }
    }
}

/// One tab of a [`Phone`].
pub struct Page {
    /// The device that it runs on.
    pub phone: Phone,
    /// Its connection to the storage.
    pub store: Rc<store::Connection>,
    /// Its place in the hall: the lock it holds, the words it hears.
    pub tab: Rc<tabs::Tab>,
    /// Fixes fed by the test.
    pub sky: Rc<position::Sky>,
    /// Files in and out.
    pub hands: Rc<files::Hands>,
    /// Files of the app.
    pub shelf: Rc<files::Shelf>,
    /// What the device is.
    pub handset: Rc<device::Handset>,
    /// Stands in for the press.
    pub press: Rc<workers::Press>,
    /// Stands in for the courier.
    pub courier: Rc<workers::Courier>,
}

impl Page {
    /// The ports of this tab.
    pub fn ports(&self) -> Ports {
        Ports {
            store: self.store.clone(),
            tabs: self.tab.clone(),
            draft: self.phone.notes.clone(),
            position: self.sky.clone(),
            files: self.hands.clone(),
            assets: self.shelf.clone(),
            time: self.phone.clock.clone(),
            chance: self.phone.dice.clone(),
            device: self.handset.clone(),
            press: self.press.clone(),
            courier: self.courier.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::{JournalKey, Swap};

    #[test]
    fn two_pages_of_a_phone_share_its_storage_and_drafts() {
        let phone = Phone::new(1);
        let (one, two) = (phone.page().ports(), phone.page().ports());
        block_on(one.store.open("own")).unwrap();
        block_on(two.store.open("own")).unwrap();
        let key = JournalKey { replica: "r".into(), number: 1 };
        let swap = Swap { journal_in: vec![(key.clone(), vec![7])], ..Swap::default() };
        block_on(one.store.swap(swap)).unwrap();
        assert_eq!(block_on(two.store.journal(None)), Ok(vec![(key, vec![7])]));
        assert!(one.draft.put("own/catch", "typed"));
        assert_eq!(two.draft.get("own/catch").as_deref(), Some("typed"));
    }

    #[test]
    fn two_phones_share_nothing() {
        let (one, two) = (Phone::new(1).page().ports(), Phone::new(2).page().ports());
        one.draft.put("a", "b");
        assert_eq!(two.draft.get("a"), None);
        assert_ne!(one.chance.bytes16(), two.chance.bytes16());
    }
}
