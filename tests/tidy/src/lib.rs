//! Style as ordinary tests.
