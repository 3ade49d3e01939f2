//! What the screens for looking over, the bench and the labels share: long lists in windows, labels as the press
//! sets them, words of stored values, work that waits for the next frame.

mod bars;
mod frames;
mod how;
mod not_stored;
mod press;
mod proofs;
mod said;
mod window;
mod words;

pub use bars::{BarRow, Bars};
pub use frames::after_frame;
pub use how::how;
pub use not_stored::NotStored;
pub use press::{Pressed, Setting, SmallerType, foot_words, proofs};
pub use proofs::{OverList, ProofView, kind_name, kinds_name, over_words, true_size};
pub use said::{SaidView, caught_words, said_is_measured};
pub use window::Window;
pub use words::{contents_words, fluid_words, stamp_words, when_words};
