//! The courier binary.

fn main() {}
