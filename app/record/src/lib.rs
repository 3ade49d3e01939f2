//! What a record is, and how two copies of it become one.
//!
//! A [`Record`] is an id, a kind, a version vector and fields; each field holds one value, or several
//! where people wrote without seeing each other. [`event`], [`container`] and their sisters name the
//! fields of each kind and the types of their values. Nothing here knows a clock, a screen, a position
//! on the Earth or the form of a vial number.

pub mod check;
mod checksum;
pub mod day;
pub mod deletion;
pub mod event;
pub mod facts;
pub mod field;
pub mod id;
pub mod kind;
pub mod kinds;
mod known;
pub mod marks;
pub mod merge;
pub mod order;
pub mod packed;
pub mod parcel;
pub mod plan;
mod quick;
pub mod search;
pub mod shelf;
pub mod undo;
pub mod version;
pub mod wire;

pub use field::{Field, Lines};
pub use id::Id;
pub use kind::Kind;
pub use kinds::{
    arrangement, container, determination, individual, mount, numbering, permit, person, printing, rules, site, step,
    trap,
};
pub use merge::{Change, Outcome, merge};
pub use version::{Dot, Edit, Record, Replica, Seen, Version};
