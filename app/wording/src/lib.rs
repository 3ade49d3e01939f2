//! The parts of a record in, the lines of a label out, as an arrangement says.
//!
//! In go plain words that a caller took from its records ([`Parts`]) and an [`Arrangement`]: which of them
//! stand on a label, in what order, with which words before and after. Out come [`Line`]s of upright and
//! italic runs. The words of a label ("leg.", "ex") are data of the arrangement, which is stored and travels,
//! and not sentences of the page. How wide a line is and where it breaks is left to whoever sets it; a
//! [no-break space](NO_BREAK) says where it must not, a [soft break](SOFT_BREAK) where it does so gladly.
//!
//! **Source** of the defaults: the published guides named in [`defaults`].

mod arrangement;
mod bind;
mod date;
pub mod defaults;
mod edit;
mod latin;
mod line;
mod parts;
mod say;

pub use arrangement::{Arrangement, Dash, Item, Joint, Kind, Month, Part};
pub use date::{date, written};
pub use edit::At;
pub use latin::{latin_split, looks_latin};
pub use line::{Line, NO_BREAK, Run, SOFT_BREAK, marked, plain, unmarked};
pub use parts::{Day, Determination, Host, Parts, Span};
pub use say::{Said, lines, part_of, said_parts};
