//! Messages to and from the courier, the worker that reads, merges and writes large files.
//!
//! Bytes go in, bytes come out: the courier never opens the storage. The page's message is `{id, kind, parts}`, with
//! the buffers of the parts handed over, and the answer has the same form and the same id. The worker says "ready"
//! when it listens. Questions are `plan/1` (what would the import of a file do), `write/1` (a log file), `fold/1`
//! (the journal into segments) and `undo/1` (take the last import back), all written down in
//! `record::parcel`, `track/1` (read a GPX file), written down in
//! [`crate::track`], and `share/1` (make a share copy), written down in [`crate::share_copy`]; answers have the kind of their question, or
//! `refused/1` for a file that cannot be imported, or `garbled/1` for what is no question. Their parts are written
//! down where they are packed, in `record::parcel`.

use crate::Later;

/// A question to the courier: a kind and its parts, as the `record` crate's own codec packs them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parcel {
    /// Which question, and the version of its form.
    pub kind: String,
    /// Its parts, in an order that the kind fixes.
    pub parts: Vec<Vec<u8>>,
}

/// Why the courier gave no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CourierFault {
    /// The worker could not be started or died; why, as the browser said.
    Gone(String),
}

/// The courier port: starts the worker when first asked.
pub trait Courier {
    /// Sends a parcel and waits for the one that comes back.
    fn send(&self, parcel: Parcel) -> Later<'_, Result<Parcel, CourierFault>>;
}
