//! Native measurements of the pure crates.
