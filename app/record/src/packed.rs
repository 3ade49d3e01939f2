//! Packed blocks: about a thousand records as checksummed bytes, opened by slicing.
//!
//! In go records, out come bytes; in go bytes, out come directory entries at once and records when asked for.
//! Every repeated string is kept once, and the strings that a search may find come first, with the records in which
//! each stands. A journal row has the same form. Blocks know no storage and no key.
//!
//! The bytes, all numbers little-endian:
//!
//! ```text
//! magic "GLSP", format u32, CRC-32 of all that follows u32, length of the whole u32,
//! counts u32: records, texts in ASCII, texts, strings, kinds, with a parent, with a day,
//! lengths u32: strings, postings, rows
//! kinds        per kind: its name's string u32, living records u32
//! directory    per record, sorted by id: id 16, parent 16, digest u64, day i32, number's string u32, end of row u32,
//!              kind u16, flags u16 (1: deleted, 2: values in
//!              conflict)
//! by parent    records that hang on another, sorted by parent then id: u32
//! by day       records that have a day, sorted by day then id: u32
//! ends         per string the end of its bytes u32; then per text the end of its postings u32
//! strings      texts in ASCII, other texts, then field names, sessions and stamps
//! postings     per text the records in which it stands: varint gaps
//! rows         per record: what was seen, then each field with its versions; a stamp that is the last field's is left out
//! ```

mod block;
mod bytes;
mod interned;
mod layout;
mod value;
mod write;

pub use block::{Block, Entry};
pub use layout::{Damage, FORMAT};
pub(crate) use value::{ids_of, texts_of};
pub use write::pack;
