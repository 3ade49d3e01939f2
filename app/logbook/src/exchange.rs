//! Log files out and in: what goes out and when it counts as having left, what comes in and how it is undone.

mod incoming;
mod outgoing;

pub use incoming::{Counts, Difference, Doubled, Imported, Preview};
pub(crate) use outgoing::LEFT;
pub use outgoing::{OutCounts, Outgoing, Waiting, coarse_radius};

use crate::driver::SaveFault;
use ports::courier::CourierFault;
pub use record::wire::{Fault, Refusal};

/// Why a file was not made or not taken. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ExchangeFault {
    /// The selection holds nothing.
    Empty,
    /// The file is none that this book can take.
    Refused(Refusal),
    /// The courier could not be started, or died.
    Courier(CourierFault),
    /// What the courier sent back cannot be understood: it is of another version of the app.
    Garbled,
    /// The book cannot be written to now.
    Save(SaveFault),
}

/// What of a book goes out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Selection {
    /// The events of a day; a night counts for its evening.
    Day(crate::moment::Day),
    /// These events.
    Chosen(Vec<record::Id>),
    /// What exists only here.
    NotExported,
    /// The whole book.
    All,
}

impl Selection {
    fn of_shelf(&self) -> record::shelf::Selection {
        match self {
            Self::Day(day) => record::shelf::Selection::Day(crate::moment::day_number(*day)),
            Self::Chosen(ids) => record::shelf::Selection::Ids(ids.clone()),
            Self::NotExported => record::shelf::Selection::NotExported,
            Self::All => record::shelf::Selection::All,
        }
    }
}
