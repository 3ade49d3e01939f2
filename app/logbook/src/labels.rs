//! Labels: how many a catch needs, what they say, which are to be printed, and what was printed.
//!
//! In go containers (or events that have none) and what a person chose; out come orders for the press and the deeds
//! that keep a wording or a printing. What is to be printed ([`Queue`]) is a draft of this device, not a record.

mod queue;
mod wording_of;

pub use queue::{Labelled, Orders, Queue, QueueRow, QueueView, Queued, Totals};
pub use wording_of::{LabelText, lines_as_typed};

use crate::book::Logbook;
pub use crate::label_text::LabelKind;
use crate::view::ContentView;
use ports::press;
use record::Id;

/// How many insects a container holds, as far as counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Insects {
    /// At least so many: what was counted, and one for each line that was not.
    pub at_least: u32,
    /// Every line was counted exactly.
    pub exact: bool,
}

impl Insects {
    /// Counts contents; a container of which nothing was said holds at least one.
    pub fn of(contents: &[ContentView]) -> Self {
        let at_least = contents.iter().map(|line| line.count.unwrap_or(1)).fold(0, u32::saturating_add);
        let exact =
            !contents.is_empty() && contents.iter().all(|line| line.count_kind == "exact" && line.count.is_some());
        Self { at_least: if contents.is_empty() { 1 } else { at_least }, exact }
    }
}

/// One kind of label of a catch: what it says and how many are wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Which label.
    pub kind: LabelKind,
    /// How many with the spare ones; 0 when there is nothing that it would say.
    pub copies: u32,
    /// How many of them are spare.
    pub spare: u32,
    /// The lines, top to bottom; none when there is nothing to say.
    pub lines: Vec<press::Line>,
    /// A person changed the wording.
    pub edited: bool,
}

impl Logbook {
    /// The collection label and the host label of a container or event, with as many copies as its insects need.
    pub fn wanted(&self, of: Id) -> [Wanted; 2] {
        let spare = self.rules().spares;
        let insects = self.insects(of);
        LabelKind::BOTH.map(|kind| {
            let LabelText { lines, edited, .. } = self.label_lines(of, kind);
            let (copies, spare) =
                if lines.is_empty() { (0, 0) } else { (insects.at_least.saturating_add(spare), spare) };
            Wanted { kind, copies, spare, lines, edited }
        })
    }

    /// How many insects a container holds, or all containers of an event.
    pub fn insects(&self, of: Id) -> Insects {
        if let Some(container) = self.container(of) {
            return Insects::of(&container.contents);
        }
        let all: Vec<ContentView> = self.containers_of(of).iter().flat_map(crate::lines::contents).collect();
        Insects::of(&all)
    }
}

#[cfg(test)]
mod tests;
