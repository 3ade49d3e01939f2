//! The shell binary.

fn main() {}
