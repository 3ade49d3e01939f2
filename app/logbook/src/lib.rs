//! What a person can do: event in; new view and requests out.
//!
//! [`Logbook`] holds one book. It is synchronous and never asks the time: moments and random bytes are
//! handed in. A change is a [`Deed`], a list of edits; [`driver`] alone awaits the ports and makes a deed
//! last. What screens show is plain data ([`view`]); what is typed is plain strings ([`form`]).

pub mod codes;
pub mod form;
pub mod moment;
pub mod view;
