//! What has not left the device.

use super::{Shelf, Shelved};
use crate::marks::Marks;
use crate::packed::Entry;
use crate::{Id, Kind};

/// No chain of records is longer than this; a longer one is a circle.
pub(super) const STEPS: usize = 32;

impl Shelf {
    /// How many events have not left the device as they are now: living events that are not marked or on which
    /// something hangs that is not marked, and events whose deletion has not left while they had.
    pub fn unexported(&self, marks: &Marks) -> usize {
        self.unexported_events(marks).len()
    }

    /// Those events, ordered by id.
    pub fn unexported_events(&self, marks: &Marks) -> Vec<Id> {
        if marks.is_empty() {
            // Nothing has ever left: a living event is its own reason, and a deleted one was never known elsewhere.
            return self.by_kind(&Kind::Event);
        }
        let mut events = Vec::new();
        let mut note = |entry: Entry, near: Option<&Shelved>| {
            let event = if marks.has(&entry) { None } else { self.event_above(entry, near) };
            events.extend(event.filter(|event| !event.deleted || marks.knows(event.id)).map(|event| event.id));
        };
        for shelved in &self.blocks {
            let entries = shelved.block.entries().filter(|entry| !self.is_over(entry.id));
            entries.for_each(|entry| note(entry, Some(shelved)));
        }
        self.overlay.values().for_each(|held| note(held.entry(), None));
        events.sort_unstable();
        events.dedup();
        events
    }

    /// True when this event has not left the device as it is now, with all that hangs on it.
    pub fn is_unexported(&self, event: Id, marks: &Marks) -> bool {
        let Some(entry) = self.entry(event) else { return false };
        (!entry.deleted || marks.knows(event)) && self.holds_unmarked(entry, marks, STEPS)
    }

    fn holds_unmarked(&self, entry: Entry, marks: &Marks, steps: usize) -> bool {
        let below = || self.children(entry.id).into_iter().filter_map(|id| self.entry(id));
        let hangs_here = |entry: &Entry| *entry.kind != Kind::Event;
        !marks.has(&entry)
            || steps > 0 && below().filter(hangs_here).any(|child| self.holds_unmarked(child, marks, steps - 1))
    }

    /// The event on which a record hangs, or which it is.
    pub fn event_of(&self, id: Id) -> Option<Id> {
        self.event_above(self.entry(id)?, None).map(|event| event.id)
    }

    /// The event on which a record hangs, or which it is; looked for first in the block where the record lies.
    pub(super) fn event_above<'a>(&'a self, entry: Entry<'a>, near: Option<&'a Shelved>) -> Option<Entry<'a>> {
        let mut at = entry;
        for _ in 0..STEPS {
            if *at.kind == Kind::Event {
                return Some(at);
            }
            let parent = at.parent?;
            let beside = near.filter(|near| super::lies_in(parent, near.range) && !self.is_over(parent));
            let beside = beside.and_then(|near| near.block.entry(near.block.find(parent)?));
            at = beside.or_else(|| self.entry(parent))?;
        }
        None
    }
}
