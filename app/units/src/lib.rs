//! Metres, degrees, millimetres, points and the sizes of pins as types.
//!
//! In go bare numbers, at the moment when their unit is known; out come values that are finite for good and
//! cannot be mixed up with each other. What a length is a length *of* is left to whoever holds it.

mod angle;
mod length;
mod pin;

pub use angle::{Degrees, Latitude, Longitude};
pub use length::{Metres, Millimetres, Points};
pub use pin::PinSize;
