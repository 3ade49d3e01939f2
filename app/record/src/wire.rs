//! The log file: JSON that a person and any program can read, one record a line.
//!
//! In go a header and records, out come bytes, and the other way round. A file that is cut off, damaged, foreign or
//! from a newer version is refused with the line and the reason. Fields, kinds, values and members of the header that
//! this version does not know go through unchanged. Nothing is merged into anything here, except records that stand
//! in one file twice.
//!
//! ```text
//! {"format":"glassine-log","version":1,"written":"2027-06-19T22:10:00+02:00", … ,
//! "replicas":{
//! "4t0kfe53b19xw2qd":{"device":"Phone","person":"Ada Quill","app":"0.1.0"}
//! },
//! "records":[
//! {"kind":"event","id":"0190…","caught":{ … },"versions":{"seen":{"4t0k…":1},"at":{"caught":["4t0k…",1,"2027-06-19T21:58:03+02:00"]}}}
//! ],
//! "end":{"records":1,"checksum":"9c0f51aa"}}
//! ```
//!
//! The checksum is the CRC-32 (as in ISO 3309) of all bytes before the last line, with line ends as LF and without a
//! byte order mark.

mod header;
mod line;
mod read;
mod refusal;
mod sheet;
mod write;

pub use header::{Author, FORMAT, Header, VERSION};
pub use read::{Log, Reader, read};
pub use refusal::{Fault, Refusal};
pub use write::{Writer, write};
