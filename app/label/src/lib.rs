//! Lines in, frames and PDF bytes out: a small typesetter for labels 18 mm wide.
//!
//! In go [`Line`]s of upright and italic words, millimetres, points and the bytes of fonts. Out comes a [`Frame`]
//! (where each glyph stands on a label, which size was chosen, where the pin passes), its outline as an SVG path, or
//! the PDF of whole sheets; preview and print read the same frame. What a label says, of which insect, is not known
//! here. Nothing is ever clipped or left blank: what does not fit is said ([`Over`]) and then nothing is printed.

mod breaking;
mod fonts;
mod frame;
mod measure;
mod outline;
mod pdf;
mod place;
mod sheet;
mod text;

pub use fonts::{FontFault, Fonts};
pub use frame::{Format, Frame, Outcome, Over, SetLine, SetRun};
pub use measure::{Glyph, Setter};
pub use outline::path;
pub use pdf::{Job, Moment, Printed, Refused, print, words};
pub use sheet::{Cell, Paper, Sheet, Stroke};
pub use text::{Line, Run};
