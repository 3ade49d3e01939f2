//! A share copy as it is asked of the courier: `share/1`.
//!
//! The question has two parts: how coarse, as JSON, and the bytes of a log file. The answer has one, the copy; or none
//! where the file was no log file.

use serde::{Deserialize, Serialize};

/// The kind of question and answer.
pub const KIND: &str = "share/1";

/// How coarse positions become.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Coarse {
    /// A grid of 0.001°.
    Thousandth,
    /// A grid of 0.01°.
    Hundredth,
    /// A grid of 0.1°.
    Tenth,
    /// A grid of one degree.
    Whole,
    /// A grid whose cells fit into a circle of so many metres.
    Radius(f64),
}
