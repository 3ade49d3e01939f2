//! What a directory says of a record without opening it.
//!
//! In goes a record, out comes what lists, counts and look-ups need: deleted or not, its day, what it hangs on, its
//! number, and what had been seen of it.

use crate::day::{DayNumber, day_of};
use crate::field::{DELETED, Field};
use crate::{Id, Kind, Record, container, event, mount, printing};

/// What a directory says of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Facts {
    /// It was deleted.
    pub deleted: bool,
    /// The day of an event; a night counts for its evening.
    pub day: Option<DayNumber>,
    /// What it hangs on.
    pub parent: Option<Id>,
    /// The number of a container as written on it.
    pub number: Option<String>,
    /// Different values stand in some field.
    pub conflict: bool,
    /// What had been seen of it, as [`Seen::digest`](crate::Seen::digest) says.
    pub digest: u64,
}

impl Facts {
    /// Reads them from a record.
    pub fn of(record: &Record) -> Self {
        let is_event = record.kind == Kind::Event;
        let number = (record.kind == Kind::Container).then(|| record.get(&container::NUMBER)).flatten();
        Self {
            deleted: record.get(&DELETED).unwrap_or(false),
            day: is_event.then(|| record.get(&event::CAUGHT)).flatten().and_then(|when| day_of(&when)),
            parent: parent_of(record),
            number: number.map(|number| number.text),
            conflict: record.conflicts().next().is_some(),
            digest: record.seen.digest(),
        }
    }
}

/// The fields that say what a record of some kind hangs on, the nearest first.
const OF: &[Field<Id>] = &[printing::OF];
const OF_EVENT: &[Field<Id>] = &[event::TRAP];
const OF_CONTAINER: &[Field<Id>] = &[container::EVENT, container::SORTED_FROM];
const OF_MOUNT: &[Field<Id>] = &[mount::CONTAINER];
const OF_INDIVIDUAL: &[Field<Id>] = &[Field::new("mount"), mount::CONTAINER];
const OF_UNKNOWN: &[Field<Id>] = &[printing::OF, Field::new("mount"), mount::CONTAINER, container::EVENT];

fn parent_of(record: &Record) -> Option<Id> {
    let fields = match record.kind {
        Kind::Event => OF_EVENT,
        Kind::Container | Kind::Lot => OF_CONTAINER,
        Kind::Mount => OF_MOUNT,
        Kind::Individual => OF_INDIVIDUAL,
        Kind::Determination | Kind::Printing | Kind::Step | Kind::Keeping | Kind::Photo => OF,
        Kind::Other(_) => OF_UNKNOWN,
        Kind::Site | Kind::Trap | Kind::Permit | Kind::Person | Kind::Numbering | Kind::Arrangement | Kind::Rules => {
            &[]
        }
    };
    fields.iter().find_map(|field| record.get(field)).filter(|parent| *parent != record.id)
}
