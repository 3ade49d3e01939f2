//! A connection to one book's database, and how it ends.

use super::transaction::{Deed, fault};
use crate::js;
use crate::listener::Listener;
use crate::slot::slot;
use crate::timer;
use ports::store::StoreFault;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, IdbDatabase, IdbFactory, IdbObjectStoreParameters, IdbOpenDbRequest, IdbVersionChangeEvent};

/// The form of the object stores that this version of the app makes and writes.
const FORMAT: u32 = 1;

/// The object store of what is kept beside the records. It was made before it had a use, and has the name from then.
pub const KEPT: &str = "spare";

/// Object stores whose rows lie under keys that we give. `photos` stands ready for a later version, so that it needs no
/// new form.
const STORES: [&str; 5] = ["segments", "journal", "marks", "photos", KEPT];

/// How long a book that is erased waits for other tabs to close theirs.
const ERASE_MS: u32 = 5_000;

#[derive(Clone, Copy, PartialEq, Eq)]
enum End {
    /// The system cut it, or the book was erased in another tab.
    Cut,
    /// Another tab brings the storage up to date.
    Outdated,
}

/// An open connection; closed when dropped.
pub struct Connection {
    database: IdbDatabase,
    end: Rc<Cell<Option<End>>>,
    _ends: [Listener; 2],
}

impl Connection {
    /// Opens a book at whatever format it has, making the object stores when it is new.
    pub async fn open(book: &str) -> Result<Self, StoreFault> {
        let request = factory()?.open(&name(book)).map_err(|error| fault(&error))?;
        let opening = request.clone();
        let _makes = Listener::new(&request, "upgradeneeded", move |_| make(&opening));
        let database: IdbDatabase = answer(&request).await?.unchecked_into();
        Ok(Self::new(database))
    }

    fn new(database: IdbDatabase) -> Self {
        let end = Rc::new(Cell::new(None));
        let (cut, changed, closing) = (end.clone(), end.clone(), database.clone());
        let ends = [
            Listener::new(&database, "close", move |_| cut.set(Some(End::Cut))),
            Listener::new(&database, "versionchange", move |event| {
                closing.close();
                changed.set(Some(wanted(&event)));
            }),
        ];
        Self { database, end, _ends: ends }
    }

    /// Whether it must be opened again.
    pub fn is_cut(&self) -> bool {
        self.end.get() == Some(End::Cut)
    }

    /// Says so when a newer version of the app has made this database.
    pub fn check_format(&self) -> Result<(), StoreFault> {
        let found = self.database.version() as u32;
        if found > FORMAT { Err(StoreFault::Newer { found }) } else { Ok(()) }
    }

    /// Carries a deed out, unless this connection may not.
    pub async fn carry_out(&self, deed: &Deed<'_>) -> Result<Vec<JsValue>, StoreFault> {
        if self.end.get() == Some(End::Outdated) {
            return Err(StoreFault::Outdated);
        }
        if deed.writes() {
            self.check_format()?;
        }
        deed.carry_out(&self.database).await
    }
}

impl Drop for Connection {
    fn drop(&mut self) {
        self.database.close();
    }
}

/// What another tab wants that asks us to close: a new version, or the book erased.
fn wanted(event: &Event) -> End {
    match event.unchecked_ref::<IdbVersionChangeEvent>().new_version() {
        Some(_) => End::Outdated,
        None => End::Cut,
    }
}

/// Throws a book away.
pub async fn erase(book: &str) -> Result<(), StoreFault> {
    let request = factory()?.delete_database(&name(book)).map_err(|error| fault(&error))?;
    let blocked = || Err(StoreFault::Cut("blocked".into()));
    timer::within(ERASE_MS, answer(&request)).await.unwrap_or_else(blocked).map(drop)
}

fn name(book: &str) -> String {
    format!("glassine-{book}")
}

fn factory() -> Result<IdbFactory, StoreFault> {
    let refused = || StoreFault::Refused("no IndexedDB".into());
    let there = js::window().indexed_db().map_err(|error| StoreFault::Refused(js::reason(&error)))?;
    there.ok_or_else(refused)
}

fn make(opening: &IdbOpenDbRequest) {
    let database: IdbDatabase = opening.result().unwrap_or_default().unchecked_into();
    let numbered = IdbObjectStoreParameters::new();
    numbered.set_auto_increment(true);
    let made = STORES.iter().try_for_each(|store| database.create_object_store(store).map(drop));
    let made = made.and_then(|()| database.create_object_store_with_optional_parameters("aside", &numbered).map(drop));
    made.expect("object stores can be made while a database is new");
}

/// Waits for a request to open or delete a database.
async fn answer(request: &IdbOpenDbRequest) -> Result<JsValue, StoreFault> {
    let (teller, told) = slot();
    let _ends = ["success", "error"].map(|kind| {
        let teller = teller.clone();
        Listener::new(request, kind, move |_| teller.tell(kind == "success"))
    });
    match told.await {
        true => Ok(request.result().unwrap_or_default()),
        false => Err(fault(&request.error().ok().flatten().into())),
    }
}
