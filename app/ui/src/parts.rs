//! The parts of which screens are built. They take values and callbacks and know no book; the words that they
//! say by themselves come from [`say`](crate::context::say).

mod check;
mod chooser;
pub mod field;
mod how;
mod keys;
mod line;
mod mark;
mod message;
mod more;
mod offers;
mod pick;
mod plate;
mod progress;
mod row;
mod span_line;
mod stepper;
mod tally;
mod unknown;

pub use check::Check;
pub use chooser::Chooser;
pub use how::{How, HowBelow, HowWords};
pub use keys::{Key, NumberKeys, own_keys};
pub use line::{DayLine, Line, TimeLine, WithUnit};
pub use mark::{Mark, MissingList, Sign};
pub use message::{Calm, Caution, Message};
pub use more::More;
pub use offers::{Offer, Offers};
pub use pick::Pick;
pub use plate::{PlateView, plate_words};
pub use progress::Progress;
pub use row::Row;
pub use span_line::{Night, TrapRow};
pub use stepper::Stepper;
pub use tally::Tally;
pub use unknown::UnknownWord;

/// Choices of a chooser or a native select: code and words.
pub type Options = Vec<(String, String)>;

/// The value of the input, select or area in which something happened.
pub fn typed(event: &web_sys::Event) -> String {
    leptos::prelude::event_target_value(event)
}
