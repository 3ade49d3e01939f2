//! One transaction: all requests issued at once, then its end awaited.

use crate::js;
use crate::listener::Listener;
use crate::slot::slot;
use js_sys::Array;
use ports::store::StoreFault;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

#[wasm_bindgen]
extern "C" {
    /// A database whose transactions take options, which web-sys has only behind an unstable flag.
    #[wasm_bindgen(extends = IdbDatabase)]
    type Durable;

    #[wasm_bindgen(method, structural, catch)]
    fn transaction(this: &Durable, stores: &Array, mode: &str, options: &JsValue) -> Result<IdbTransaction, JsValue>;
}

/// Whether a transaction may write.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// It reads.
    Read,
    /// It reads and writes, flushed to the disk before it counts as complete.
    Write,
}

/// Gives an object store of the transaction by name.
pub type On<'a> = &'a dyn Fn(&str) -> Result<IdbObjectStore, JsValue>;

type Requests<'a> = Box<dyn Fn(On<'_>) -> Result<Vec<IdbRequest>, JsValue> + 'a>;

/// Bytes that must stand under a key of an object store, none where it has none.
struct Guard {
    store: &'static str,
    key: JsValue,
    expected: Vec<u8>,
}

/// What one transaction does.
pub struct Deed<'a> {
    mode: Mode,
    stores: Array,
    guard: Option<Guard>,
    requests: Requests<'a>,
}

impl<'a> Deed<'a> {
    /// A deed in these object stores. `requests` issues all of its requests and returns those whose
    /// results are wanted; it may be called again over another connection.
    pub fn new(
        mode: Mode,
        stores: &[&str],
        requests: impl Fn(On<'_>) -> Result<Vec<IdbRequest>, JsValue> + 'a,
    ) -> Self {
        Self { mode, stores: js::list(stores.iter().copied()), guard: None, requests: Box::new(requests) }
    }

    /// Does nothing, and fails as [`StoreFault::Taken`], unless these bytes stand there.
    pub fn only_where(mut self, store: &'static str, key: JsValue, expected: Vec<u8>) -> Self {
        self.guard = Some(Guard { store, key, expected });
        self
    }

    /// Whether it writes.
    pub fn writes(&self) -> bool {
        self.mode == Mode::Write
    }

    /// Carries the deed out; the results in the order of its requests. When it fails nothing was kept,
    /// or the connection was cut.
    pub async fn carry_out(&self, database: &IdbDatabase) -> Result<Vec<JsValue>, StoreFault> {
        let transaction = self.begin(database).map_err(|error| fault(&error))?;
        let (teller, told) = slot();
        let _ends = ["complete", "abort"].map(|kind| {
            let teller = teller.clone();
            Listener::new(&transaction, kind, move |_| teller.tell(kind == "complete"))
        });
        let changed = Rc::new(Cell::new(false));
        let _watch = self.watch(&transaction, &changed).map_err(|error| fault(&error))?;
        let requests = match (self.requests)(&|name| transaction.object_store(name)) {
            Ok(requests) => requests,
            Err(error) => {
                // It may have ended by itself already; then there is nothing to take back.
                let _ = transaction.abort();
                return Err(fault(&error));
            }
        };
        match told.await {
            true => Ok(requests.iter().map(|request| request.result().unwrap_or_default()).collect()),
            false if changed.get() => Err(StoreFault::Taken),
            false => Err(fault(&transaction.error().into())),
        }
    }

    /// Reads what is guarded before anything else is done, and takes all of it back where that has changed.
    fn watch(&self, transaction: &IdbTransaction, changed: &Rc<Cell<bool>>) -> Result<Option<Listener>, JsValue> {
        let Some(guard) = &self.guard else { return Ok(None) };
        let request = transaction.object_store(guard.store)?.get(&guard.key)?;
        let (expected, changed, transaction) = (guard.expected.clone(), changed.clone(), transaction.clone());
        let asked = request.clone();
        Ok(Some(Listener::new(&request, "success", move |_| {
            let found = asked.result().unwrap_or_default();
            let found = if found.is_undefined() { Vec::new() } else { js::bytes(&found) };
            if found != expected {
                changed.set(true);
                let _ = transaction.abort();
            }
        })))
    }

    fn begin(&self, database: &IdbDatabase) -> Result<IdbTransaction, JsValue> {
        let (mode, durability) = match self.mode {
            Mode::Read => ("readonly", "default"),
            Mode::Write => ("readwrite", "strict"),
        };
        let options = js::object([("durability", durability.into())]);
        database.unchecked_ref::<Durable>().transaction(&self.stores, mode, &options)
    }
}

/// The port's fault for an error of IndexedDB. What has no name of its own is a cut connection, worth
/// another try.
pub fn fault(error: &JsValue) -> StoreFault {
    match js::name(error).as_str() {
        "QuotaExceededError" => StoreFault::Full,
        "ConstraintError" => StoreFault::Taken,
        "SecurityError" | "NotAllowedError" => StoreFault::Refused(js::reason(error)),
        _ => StoreFault::Cut(js::reason(error)),
    }
}
