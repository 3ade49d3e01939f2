//! The open formats, read without the outside: bytes go in, values and what is wrong with them come out.
//!
//! What is done with the values, and the sentences about faults, are left to others.

mod date_time;
pub mod gpx;
mod lines;
