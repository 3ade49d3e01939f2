//! Lines in, frames and PDF bytes out: a small typesetter for labels 18 mm wide.
//!
//! In go [`Line`]s of upright and italic words, millimetres, points and the bytes of fonts. Out comes a [`Frame`]
//! (where each glyph stands on a label, which size was chosen, where the pin passes), its outline as an SVG path, or
//! the PDF of whole sheets; preview and print read the same frame. What a label says, of which insect, is not known
//! here. Nothing is ever clipped or left blank: what does not fit is said ([`Over`]) and then nothing is printed.

mod area;
mod breaking;
mod code;
mod compose;
mod fit;
mod fonts;
mod frame;
mod measure;
mod outline;
mod parted;
mod passage;
mod pdf;
mod place;
mod printing;
mod sheet;
mod text;

pub use code::{Block, Code, SetCode};
pub use fonts::{About, FontFault, Fonts};
pub use frame::{Format, Frame, Outcome, Over, PinAt, SetLine, SetRun};
pub use measure::{Glyph, Setter, Shapings};
pub use outline::path;
pub use parted::Share;
pub use pdf::{Moment, Printed, Refused, words};
pub use printing::{Gathering, Job, Printing, Progress, Step, Wanted, order, print};
pub use sheet::{Cell, Layout, Paper, Plan, Stroke, plan};
pub use text::{Line, Run};
