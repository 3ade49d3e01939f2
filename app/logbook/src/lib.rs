//! What a person can do: event in; new view and requests out.
//!
//! [`Logbook`] holds one book. It is synchronous and never asks the time: moments and random bytes are
//! handed in. A change is a [`Deed`], a list of edits; [`driver`] alone awaits the ports and makes a deed
//! last. What screens show is plain data ([`view`]); what is typed is plain strings ([`form`]).

pub mod bench;
pub mod beside;
pub mod book;
mod caches;
pub mod catch;
pub mod codes;
pub mod conflict;
mod day;
pub mod deed;
pub mod driver;
pub mod exchange;
pub mod fonts;
pub mod form;
mod form_of;
pub mod heights;
#[cfg(test)]
mod invented;
pub mod kept;
mod label_text;
pub mod labels;
pub mod land;
mod lines;
pub mod map;
pub mod moment;
mod names;
mod numbered;
pub mod numbers;
pub mod offers;
mod offset;
pub mod open;
mod outlook;
pub mod places;
mod prefill;
mod recent;
mod sample;
pub mod search;
pub mod setup;
mod site;
pub mod sky;
mod start;
pub mod track;
pub mod typed;
mod typing;
pub mod values;
pub mod view;
pub mod written;

pub use book::{Book, Logbook, ReadOnly, State};
pub use catch::Saving;
pub use deed::{Deed, What};
pub use driver::{Driver, Held, SaveFault, Saved};
pub use exchange::{ExchangeFault, Selection};
pub use offset::OffsetPoint;
pub use record::Id;
