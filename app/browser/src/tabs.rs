//! The write lock through Web Locks, words between tabs through a BroadcastChannel.
//!
//! A lock is held for as long as a promise that we give is open. Who wants it asks the holder first
//! and steals it after a second, since a frozen tab hears nothing; the holder learns of it when its
//! promise is rejected. A browser without Web Locks gives every tab the lock.

use crate::js;
use crate::listener::Listener;
use crate::slot::{Teller, slot};
use crate::timer;
use js_sys::{Function, Object, Promise};
use ports::tabs::Word;
use ports::{Later, Tabs};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{AbortController, BroadcastChannel, MessageEvent};

/// How long a holder that was asked may take to let go.
const PATIENCE_MS: u32 = 1_000;

#[wasm_bindgen]
extern "C" {
    /// `navigator.locks`, which web-sys has only behind an unstable flag.
    type Locks;

    #[wasm_bindgen(method, structural, catch)]
    fn request(this: &Locks, name: &str, options: &Object, granted: &JsValue) -> Result<Promise, JsValue>;
}

struct Held {
    turn: u32,
    book: String,
    let_go: Function,
}

#[derive(Default)]
struct Hold {
    held: RefCell<Option<Held>>,
    turns: Cell<u32>,
    lost: RefCell<Option<Rc<dyn Fn()>>>,
}

/// The lock and the channels of this tab.
#[derive(Default)]
pub struct BookTabs {
    hold: Rc<Hold>,
    channels: RefCell<Vec<BroadcastChannel>>,
    listeners: RefCell<Vec<Listener>>,
}

impl Hold {
    /// Keeps the lock until the promise that is returned here is resolved.
    fn grip(&self, book: &str) -> (u32, Promise) {
        let turn = self.turns.get().wrapping_add(1);
        self.turns.set(turn);
        let promise = Promise::new(&mut |let_go: Function, _| {
            self.held.replace(Some(Held { turn, book: book.to_owned(), let_go }));
        });
        (turn, promise)
    }

    fn holds(&self, book: &str) -> bool {
        self.held.borrow().as_ref().is_some_and(|held| held.book == book)
    }

    fn let_go(&self) {
        if let Some(held) = self.held.take() {
            // Resolving a promise runs nothing of ours and cannot fail.
            let _ = held.let_go.call0(&JsValue::UNDEFINED);
        }
    }

    /// The promise of this turn was rejected: somebody has stolen the lock, unless we took it anew.
    fn stolen(&self, turn: u32) {
        let ours = self.held.borrow_mut().take_if(|held| held.turn == turn);
        let lost = self.lost.borrow().clone();
        if let (Some(_), Some(lost)) = (ours, lost) {
            lost();
        }
    }
}

/// Asks the browser for the lock; true when we have it, false when it is not to be had this way.
async fn asked(hold: Rc<Hold>, locks: &Locks, book: &str, options: Object) -> bool {
    let (teller, told) = slot();
    let turn = Rc::new(Cell::new(None));
    let granted = granted(hold.clone(), book, turn.clone(), teller.clone());
    let Ok(promise) = locks.request(&lock_name(book), &options, granted.as_ref()) else {
        return false;
    };
    spawn_local(async move {
        let end = JsFuture::from(promise).await;
        drop(granted);
        match turn.get() {
            Some(turn) if end.is_err() => hold.stolen(turn),
            Some(_) => {}
            None => teller.tell(false),
        }
    });
    told.await
}

fn granted(
    hold: Rc<Hold>,
    book: &str,
    turn: Rc<Cell<Option<u32>>>,
    teller: Teller<bool>,
) -> Closure<dyn Fn(JsValue) -> JsValue> {
    let book = book.to_owned();
    Closure::new(move |lock: JsValue| {
        if lock.is_null() {
            return JsValue::UNDEFINED;
        }
        let (mine, promise) = hold.grip(&book);
        turn.set(Some(mine));
        teller.tell(true);
        promise.into()
    })
}

fn lock_name(book: &str) -> String {
    format!("glassine/{book}")
}

impl BookTabs {
    async fn taken(&self, book: String) -> bool {
        let Some(locks) = js::get(&js::navigator(), "locks") else { return true };
        let locks: Locks = locks.unchecked_into();
        if self.hold.holds(&book) {
            return true;
        }
        self.hold.let_go();
        let ask = |options| asked(self.hold.clone(), &locks, &book, options);
        if ask(js::object([("ifAvailable", true.into())])).await {
            return true;
        }
        self.say(&book, Word::MayI);
        if self.handed_over(ask).await {
            return true;
        }
        ask(js::object([("steal", true.into())])).await
    }

    /// Waits in the queue of the lock, but no longer than a second.
    async fn handed_over(&self, ask: impl AsyncFn(Object) -> bool) -> bool {
        let Ok(patience) = AbortController::new() else { return false };
        let options = js::object([("signal", patience.signal().into())]);
        let answer = timer::within(PATIENCE_MS, ask(options)).await;
        patience.abort();
        answer.unwrap_or(false)
    }

    /// The channel of a book; one for each, since a second one in this tab would hear the first.
    fn channel(&self, book: &str) -> Option<BroadcastChannel> {
        let name = lock_name(book);
        let mut channels = self.channels.borrow_mut();
        if let Some(channel) = channels.iter().find(|channel| channel.name() == name) {
            return Some(channel.clone());
        }
        let channel = BroadcastChannel::new(&name).ok()?;
        channels.push(channel.clone());
        Some(channel)
    }
}

impl Tabs for BookTabs {
    fn take(&self, book: &str, lost: Box<dyn Fn()>) -> Later<'_, bool> {
        self.hold.lost.replace(Some(lost.into()));
        Box::pin(self.taken(book.to_owned()))
    }

    fn release(&self) {
        self.hold.let_go();
    }

    fn say(&self, book: &str, word: Word) {
        if let Some(channel) = self.channel(book) {
            // Only a closed channel refuses, and ours are never closed.
            let _ = channel.post_message(&spoken(word).into());
        }
    }

    fn listen(&self, book: &str, heard: Box<dyn Fn(Word)>) {
        let Some(channel) = self.channel(book) else { return };
        let listener = Listener::new(&channel, "message", move |event| {
            let said = event.unchecked_into::<MessageEvent>().data().as_string();
            if let Some(word) = said.as_deref().and_then(understood) {
                heard(word);
            }
        });
        self.listeners.borrow_mut().push(listener);
    }
}

fn spoken(word: Word) -> &'static str {
    match word {
        Word::Changed => "changed",
        Word::MayI => "may I",
    }
}

fn understood(said: &str) -> Option<Word> {
    [Word::Changed, Word::MayI].into_iter().find(|word| spoken(*word) == said)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_is_understood_as_spoken_and_others_are_not() {
        for word in [Word::Changed, Word::MayI] {
            assert_eq!(understood(spoken(word)), Some(word));
        }
        assert_eq!(understood("hello"), None);
    }
}
