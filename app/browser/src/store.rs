//! The store port over IndexedDB: one database a book, its object stores made once.
//!
//! Rows are byte arrays under the keys of `ports::store`. Every question reads or writes in one
//! transaction: all requests are issued at once and only the transaction's end is awaited, so nothing
//! foreign can come between. A connection that the system cut is reopened and the question asked once
//! more.

use crate::js;
use js_sys::Array;
use ports::store::{Damaged, JournalKey, Rows, SegmentKey, StoreFault, Swap};
use ports::{Later, Store};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;

mod connection;
mod rows;
mod transaction;

use connection::{Connection, KEPT};
use transaction::Deed;

/// The storage of the book that is open.
#[derive(Default)]
pub struct BookStore {
    book: RefCell<Option<String>>,
    connection: RefCell<Option<Rc<Connection>>>,
}

impl BookStore {
    /// The connection, opened again where it was cut.
    async fn connection(&self) -> Result<Rc<Connection>, StoreFault> {
        let there = self.connection.borrow().clone();
        if let Some(connection) = there.filter(|connection| !connection.is_cut()) {
            return Ok(connection);
        }
        let book = self.book.borrow().clone().ok_or_else(|| StoreFault::Cut("no book is open".into()))?;
        let connection = Rc::new(Connection::open(&book).await?);
        self.connection.replace(Some(connection.clone()));
        Ok(connection)
    }

    async fn tried(&self, deed: &Deed<'_>) -> Result<Vec<JsValue>, StoreFault> {
        self.connection().await?.carry_out(deed).await
    }

    /// Carries a deed out; when the connection turns out to be cut, once more over a new one.
    async fn carried_out(&self, deed: &Deed<'_>) -> Result<Vec<JsValue>, StoreFault> {
        match self.tried(deed).await {
            Err(StoreFault::Cut(_)) => {
                self.connection.take();
                self.tried(deed).await
            }
            answer => answer,
        }
    }

    async fn read(&self, deed: Deed<'_>) -> Result<Array, StoreFault> {
        Ok(js::list(self.carried_out(&deed).await?))
    }

    /// Writes a swap. A cut connection does not tell whether the first try was kept: if the second finds
    /// its own rows there, it was.
    async fn written(&self, swap: &Swap) -> Result<(), StoreFault> {
        let deed = rows::written(swap);
        match self.tried(&deed).await {
            Err(StoreFault::Cut(_)) => {}
            answer => return answer.map(drop),
        }
        self.connection.take();
        match self.tried(&deed).await {
            Err(StoreFault::Taken) if self.has_kept(swap).await? => Ok(()),
            answer => answer.map(drop),
        }
    }

    async fn has_kept(&self, swap: &Swap) -> Result<bool, StoreFault> {
        if swap.expects.is_some() {
            let marks = self.marks().await?;
            if !swap.marks_in.iter().all(|mark| marks.contains(mark)) {
                return Ok(false);
            }
        }
        self.holds(&swap.journal_in).await
    }

    async fn holds(&self, rows: &Rows<JournalKey>) -> Result<bool, StoreFault> {
        let keys = rows.iter().map(|(key, _)| key.clone()).collect();
        Ok(self.journal(Some(keys)).await? == *rows)
    }

    async fn opened(&self, book: String) -> Result<(), StoreFault> {
        self.connection.take();
        self.book.replace(Some(book));
        let answer = self.connection().await.map_err(|fault| match fault {
            StoreFault::Cut(reason) => StoreFault::Refused(reason),
            fault => fault,
        });
        answer?.check_format()
    }

    async fn moved_aside(&self, damaged: Damaged) -> Result<(), StoreFault> {
        let found = self.carried_out(&rows::damaged(&damaged)).await?;
        match found.first() {
            Some(bytes) if !bytes.is_undefined() => {
                self.carried_out(&rows::moved_aside(&damaged, bytes)).await.map(drop)
            }
            _ => Ok(()),
        }
    }
}

impl Store for BookStore {
    fn open(&self, book: &str) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(self.opened(book.to_owned()))
    }

    fn segment_keys(&self) -> Later<'_, Result<Vec<SegmentKey>, StoreFault>> {
        Box::pin(async { Ok(rows::segment_keys(&self.read(rows::keys_of("segments")).await?)) })
    }

    fn segments(&self, keys: Vec<SegmentKey>) -> Later<'_, Result<Rows<SegmentKey>, StoreFault>> {
        Box::pin(async move {
            let names = keys.iter().map(|key| (*key).into()).collect();
            Ok(rows::found(keys, &self.read(rows::some_of("segments", names)).await?))
        })
    }

    fn journal_keys(&self) -> Later<'_, Result<Vec<JournalKey>, StoreFault>> {
        Box::pin(async { Ok(rows::journal_keys(&self.read(rows::keys_of("journal")).await?)) })
    }

    fn journal(&self, keys: Option<Vec<JournalKey>>) -> Later<'_, Result<Rows<JournalKey>, StoreFault>> {
        Box::pin(async move {
            let Some(keys) = keys else {
                return Ok(rows::all(&self.read(rows::all_of("journal")).await?, rows::journal_key));
            };
            let names = keys.iter().map(rows::journal_name).collect();
            Ok(rows::found(keys, &self.read(rows::some_of("journal", names)).await?))
        })
    }

    fn marks(&self) -> Later<'_, Result<Rows<String>, StoreFault>> {
        Box::pin(async {
            let found = self.read(rows::all_of("marks")).await?;
            Ok(rows::all(&found, |name| name.as_string()))
        })
    }

    fn swap(&self, swap: Swap) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(async move { self.written(&swap).await })
    }

    fn kept_names(&self) -> Later<'_, Result<Vec<String>, StoreFault>> {
        Box::pin(async { Ok(rows::names(&self.read(rows::keys_of(KEPT)).await?)) })
    }

    fn kept(&self, names: Vec<String>) -> Later<'_, Result<Rows<String>, StoreFault>> {
        Box::pin(async move {
            let keys = names.iter().map(|name| name.as_str().into()).collect();
            Ok(rows::found(names, &self.read(rows::some_of(KEPT, keys)).await?))
        })
    }

    fn keep(&self, name: String, bytes: Option<Vec<u8>>) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(async move { self.carried_out(&rows::kept(&name, bytes.as_deref())).await.map(drop) })
    }

    fn set_aside(&self, damaged: Damaged) -> Later<'_, Result<(), StoreFault>> {
        Box::pin(self.moved_aside(damaged))
    }

    fn aside_count(&self) -> Later<'_, Result<u32, StoreFault>> {
        Box::pin(async { Ok(rows::count(&self.read(rows::count_of("aside")).await?)) })
    }

    fn erase(&self, book: &str) -> Later<'_, Result<(), StoreFault>> {
        let book = book.to_owned();
        if self.book.borrow().as_ref() == Some(&book) {
            self.connection.take();
            self.book.take();
        }
        Box::pin(async move { connection::erase(&book).await })
    }
}
