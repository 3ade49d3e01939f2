//! Native measurements of the pure crates, and the generated records they are measured with.

pub mod made;
pub mod table;
