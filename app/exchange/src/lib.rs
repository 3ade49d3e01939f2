//! The open formats, read without the outside: bytes go in, values and what is wrong with them come out; and log files
//! made fit for other eyes.
//!
//! What is done with the values, and the sentences about faults, are left to others.

mod date_time;
pub mod gpx;
mod lines;
pub mod share_copy;
