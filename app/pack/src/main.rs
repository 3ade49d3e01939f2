//! The pack binary.

fn main() {}
