//! Screens and parts.
