//! The press binary.

fn main() {}
