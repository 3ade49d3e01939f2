//! Positions on the Earth and how sure we are of them.
//!
//! In go coordinates as people write them and fixes as devices give them; out come positions, what was understood,
//! the digits that are worth printing, distances, and where things lie on a drawing. The datum is WGS84 throughout;
//! another one is named, never silently converted. Sentences are left to others.

pub mod arcs;
pub mod combine;
pub mod country;
pub mod datum;
pub mod distance;
pub mod elevation;
mod ellipsoid;
pub mod fixes;
pub mod format;
pub mod frame;
pub mod generalise;
pub mod geoid;
pub mod grid;
pub mod instant;
pub mod local;
pub mod outline;
pub mod parse;
mod position;
pub mod sky;
mod stream;
pub mod track;
pub mod uncertainty;

pub use position::Position;
