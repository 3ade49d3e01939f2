//! The locks of one device and the words between its tabs.
//!
//! Words wait until the test pumps them. A tab that asks for a lock somebody holds says
//! [`Word::MayI`] and waits; it gets the lock when the holder lets go, and steals it once it has been
//! asked [`PATIENCE`] times, which stands for the second of the real port.

use crate::tabs::Word;
use crate::{Later, Tabs};
use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, VecDeque};
use std::future::poll_fn;
use std::rc::Rc;
use std::task::Poll;

/// How often a waiting tab is asked before it steals the lock.
pub const PATIENCE: u32 = 8;

type Heard = Rc<dyn Fn(Word)>;

struct Holder {
    tab: u32,
    lost: Box<dyn Fn()>,
}

struct Listener {
    tab: u32,
    book: String,
    heard: Heard,
}

struct Letter {
    from: u32,
    book: String,
    word: Word,
}

/// Where the tabs of one device meet.
#[derive(Default)]
pub struct Hall {
    holders: RefCell<BTreeMap<String, Holder>>,
    listeners: RefCell<Vec<Listener>>,
    letters: RefCell<VecDeque<Letter>>,
    tabs: Cell<u32>,
}

impl Hall {
    /// Delivers every word that waits, and those said in answer; how many were delivered.
    pub fn pump(&self) -> usize {
        let mut delivered = 0;
        while let Some(letter) = self.take_letter(0) {
            self.deliver(&letter);
            delivered += 1;
        }
        delivered
    }

    /// How many words wait.
    pub fn waiting(&self) -> usize {
        self.letters.borrow().len()
    }

    /// Delivers one waiting word out of order and keeps it, so that it comes again; the messages of a
    /// channel may repeat after a tab was frozen.
    pub fn repeat(&self, index: usize) {
        if let Some(letter) = self.take_letter(index) {
            self.deliver(&letter);
            self.letters.borrow_mut().push_back(letter);
        }
    }

    /// Loses every word that waits.
    pub fn lose_words(&self) {
        self.letters.borrow_mut().clear();
    }

    fn take_letter(&self, index: usize) -> Option<Letter> {
        self.letters.borrow_mut().remove(index)
    }

    fn deliver(&self, letter: &Letter) {
        let listeners = self.listeners.borrow();
        let hears = |listener: &&Listener| listener.tab != letter.from && listener.book == letter.book;
        let heard: Vec<Heard> = listeners.iter().filter(hears).map(|found| found.heard.clone()).collect();
        drop(listeners);
        for heard in heard {
            heard(letter.word);
        }
    }

    fn is_free(&self, book: &str) -> bool {
        !self.holders.borrow().contains_key(book)
    }

    fn give(&self, book: &str, holder: Holder) {
        let before = self.holders.borrow_mut().insert(book.into(), holder);
        if let Some(before) = before {
            (before.lost)();
        }
    }

    fn post(&self, from: u32, book: &str, word: Word) {
        self.letters.borrow_mut().push_back(Letter { from, book: book.into(), word });
    }

    fn release(&self, tab: u32) {
        self.holders.borrow_mut().retain(|_, holder| holder.tab != tab);
    }
}

/// One tab in a [`Hall`].
pub struct Tab {
    hall: Rc<Hall>,
    id: u32,
}

impl Tab {
    /// Enters the hall.
    pub fn new(hall: Rc<Hall>) -> Self {
        let id = hall.tabs.get();
        hall.tabs.set(id + 1);
        Self { hall, id }
    }

    /// Whether this tab holds the lock of a book.
    pub fn holds(&self, book: &str) -> bool {
        self.hall.holders.borrow().get(book).is_some_and(|holder| holder.tab == self.id)
    }

    /// The tab is closed: its lock is free and it hears nothing more.
    pub fn close(&self) {
        self.hall.release(self.id);
        self.hall.listeners.borrow_mut().retain(|listener| listener.tab != self.id);
    }
}

impl Tabs for Tab {
    fn take(&self, book: &str, lost: Box<dyn Fn()>) -> Later<'_, bool> {
        let book = book.to_owned();
        let mut lost = Some(lost);
        let mut asked = 0;
        Box::pin(poll_fn(move |context| {
            let free = self.hall.is_free(&book);
            if !free && !self.holds(&book) && asked == 0 {
                self.say(&book, Word::MayI);
            }
            if !free && !self.holds(&book) && asked < PATIENCE {
                asked += 1;
                context.waker().wake_by_ref();
                return Poll::Pending;
            }
            let lost = lost.take().expect("a future is not asked again after its end");
            if self.holds(&book) {
                self.hall.release(self.id);
            }
            self.hall.give(&book, Holder { tab: self.id, lost });
            Poll::Ready(true)
        }))
    }

    fn release(&self) {
        self.hall.release(self.id);
    }

    fn say(&self, book: &str, word: Word) {
        self.hall.post(self.id, book, word);
    }

    fn listen(&self, book: &str, heard: Box<dyn Fn(Word)>) {
        let listener = Listener { tab: self.id, book: book.into(), heard: heard.into() };
        self.hall.listeners.borrow_mut().push(listener);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::memory::{Started, block_on};

    fn two() -> (Rc<Hall>, Rc<Tab>, Tab) {
        let hall = Rc::new(Hall::default());
        (hall.clone(), Rc::new(Tab::new(hall.clone())), Tab::new(hall))
    }

    fn nothing() -> Box<dyn Fn()> {
        Box::new(|| ())
    }

    fn never() -> Box<dyn Fn()> {
        Box::new(|| panic!("the lock was handed over, not stolen"))
    }

    #[test]
    fn a_holder_that_hears_the_question_hands_the_lock_over() {
        let (hall, one, two) = two();
        assert!(block_on(one.take("own", never())));
        let holder = one.clone();
        one.listen(
            "own",
            Box::new(move |word| {
                if word == Word::MayI {
                    holder.release();
                }
            }),
        );
        let mut take = Started::new(two.take("own", never()));
        assert_eq!(take.poke(), None);
        assert_eq!(hall.pump(), 1);
        assert_eq!(take.poke(), Some(true));
        assert!(two.holds("own") && !one.holds("own"));
    }

    #[test]
    fn a_frozen_holder_loses_the_lock_and_is_told() {
        let (_hall, one, two) = two();
        let told = Rc::new(Cell::new(0));
        let tell = told.clone();
        assert!(block_on(one.take("own", Box::new(move || tell.set(tell.get() + 1)))));
        assert!(block_on(two.take("own", nothing())));
        assert_eq!(told.get(), 1);
        assert!(two.holds("own") && !one.holds("own"));
    }

    #[test]
    fn a_closed_tab_leaves_its_lock() {
        let (hall, one, two) = two();
        block_on(one.take("own", never()));
        one.close();
        assert_eq!(Started::new(two.take("own", never())).poke(), Some(true));
        assert_eq!(hall.waiting(), 0);
    }

    #[test]
    fn each_book_has_a_lock_of_its_own() {
        let (_hall, one, two) = two();
        assert!(block_on(one.take("own", never())));
        assert!(block_on(two.take("sample", never())));
        assert!(one.holds("own") && two.holds("sample"));
    }

    #[test]
    fn who_holds_the_lock_may_take_it_again() {
        let (hall, one, _) = two();
        assert!(block_on(one.take("own", never())));
        assert!(block_on(one.take("own", never())));
        assert_eq!((one.holds("own"), hall.waiting()), (true, 0));
    }

    #[test]
    fn a_word_reaches_the_others_of_the_book_when_pumped() {
        let (hall, one, two) = two();
        let heard = Rc::new(RefCell::new(Vec::new()));
        for (tab, book) in [(&*one, "own"), (&two, "own"), (&two, "sample")] {
            let (list, id) = (heard.clone(), (tab.id, book));
            tab.listen(book, Box::new(move |word| list.borrow_mut().push((id, word))));
        }
        one.say("own", Word::Changed);
        assert!(heard.borrow().is_empty());
        hall.pump();
        assert_eq!(*heard.borrow(), [((1, "own"), Word::Changed)]);
    }

    #[test]
    fn words_can_repeat_overtake_and_get_lost() {
        let (hall, one, two) = two();
        let heard = Rc::new(RefCell::new(Vec::new()));
        let list = heard.clone();
        two.listen("own", Box::new(move |word| list.borrow_mut().push(word)));
        one.say("own", Word::Changed);
        one.say("own", Word::MayI);
        hall.repeat(1);
        assert_eq!(*heard.borrow(), [Word::MayI]);
        hall.pump();
        assert_eq!(*heard.borrow(), [Word::MayI, Word::Changed, Word::MayI]);
        one.say("own", Word::Changed);
        hall.lose_words();
        assert_eq!(hall.pump(), 0);
    }
}
