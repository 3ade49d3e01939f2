//! Every question we ask the outside world, as traits; and the messages of the workers.
//!
//! In go plain values, out come plain values or a fault that says what a caller may do next.
//! Nothing here knows the browser, Leptos or a record: stored things are bytes, files are bytes
//! with a name. `memory` answers every question in tests; the `browser` crate answers them with
//! web APIs.

use std::future::Future;
use std::pin::Pin;
use std::rc::Rc;

pub mod courier;
pub mod device;
pub mod files;
pub mod memory;
pub mod position;
pub mod press;
pub mod share_copy;
pub mod store;
pub mod tabs;
pub mod track;

pub use device::{Chance, Device, Time};
pub use files::{Assets, Files};
pub use position::Position;
pub use store::Store;
pub use tabs::{Draft, Tabs};

/// An answer that arrives later, on the same thread.
pub type Later<'a, T> = Pin<Box<dyn Future<Output = T> + 'a>>;

/// All ports of one running page.
#[derive(Clone)]
pub struct Ports {
    /// Records as bytes, one book.
    pub store: Rc<dyn Store>,
    /// The write lock and word to and from the other tabs of the same book.
    pub tabs: Rc<dyn Tabs>,
    /// What is being typed, and the settings of this device.
    pub draft: Rc<dyn Draft>,
    /// Where the device is.
    pub position: Rc<dyn Position>,
    /// Files in and out: share sheet, pickers, downloads.
    pub files: Rc<dyn Files>,
    /// Bytes that belong to the app: fonts, the sample survey.
    pub assets: Rc<dyn Assets>,
    /// The clock on the wall.
    pub time: Rc<dyn Time>,
    /// Random bytes.
    pub chance: Rc<dyn Chance>,
    /// What the device is and can do; its promises about storage; a new version waiting.
    pub device: Rc<dyn Device>,
    /// The worker that sets and prints labels.
    pub press: Rc<dyn press::Press>,
    /// The worker that reads, merges and writes large files.
    pub courier: Rc<dyn courier::Courier>,
}
