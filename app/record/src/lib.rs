//! What a record is, and how two copies become one.
