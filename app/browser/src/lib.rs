//! The ports, answered by web APIs.
