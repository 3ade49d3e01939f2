//! Numbers of vials and envelopes: reading what is typed or pencilled, the next number, spans, finding a number
//! again, and numbers that stand twice.
//!
//! In go texts as people write them; out come numbers, texts and the positions of candidates. What a number is the
//! number *of* is left to the caller, and so is every sentence about it.

pub mod check;
mod flat;
mod habit;
mod lookup;
mod nearest;
mod reading;
mod runs;
mod signs;
mod slip;
mod span;
pub mod symbol;
mod twice;

pub use habit::{Habit, Next, Numbering};
pub use lookup::{Matches, matches};
pub use nearest::{Near, Reason, nearest};
pub use reading::{Key, Number};
pub use runs::{Run, compact};
pub use span::{SPAN_LIMIT, SpanProblem, span, span_text, taken};
pub use twice::twice;
