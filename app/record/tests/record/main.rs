//! What the record crate promises, tried through its public names.

mod demo;
mod exchange;
mod import;
mod merge;
mod packed;
mod schema;
mod sessions;
mod shelf;
mod wire;
