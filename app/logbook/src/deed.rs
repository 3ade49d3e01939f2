//! Edits that are saved together and undone together.

use record::{Edit, Record};

/// What a deed was, for the words of the undo bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// A catch was saved, with so many containers.
    Catch(usize),
    /// A result without a catch was saved.
    Nothing,
    /// A saved event was changed.
    EventChanged,
    /// So many containers were added.
    Containers(usize),
    /// So many events were given a position.
    Placed(usize),
    /// A container was changed.
    ContainerChanged,
    /// A site was saved.
    Site,
    /// An event was deleted.
    EventDeleted,
    /// A container was deleted.
    ContainerDeleted,
    /// A lamp was put out.
    LampOff,
    /// Traps were set.
    TrapSet,
    /// Traps were taken up.
    TakenUp,
    /// Of a conflict one value was picked.
    Picked,
    /// So many were pinned.
    Pinned(usize),
    /// So many were labelled.
    Labelled(usize),
    /// So many labels were printed.
    Printed(usize),
    /// The wording of a label was changed.
    Wording,
    /// A determination was added.
    Determined,
    /// The days on which insects emerged were written.
    Emerged,
    /// A part kept elsewhere was added.
    Piece,
    /// So many pins were added.
    Mounts(usize),
    /// A pin was taken out.
    MountOut,
    /// The arrangement of a kind of label was changed.
    Arrangement,
    /// Something in Setup was changed.
    Setup,
    /// A deed was undone.
    Undone,
}

/// Edits that are saved in one transaction.
#[derive(Clone, Debug)]
pub struct Deed {
    /// What it is.
    pub what: What,
    /// Its edits, of different records.
    pub edits: Vec<Edit>,
}

impl Deed {
    /// A deed of these edits, without those that would change nothing.
    pub fn new(what: What, edits: impl IntoIterator<Item = Edit>) -> Self {
        Self { what, edits: edits.into_iter().filter(|edit| !edit.is_idle()).collect() }
    }

    /// True when there is nothing to save.
    pub fn is_idle(&self) -> bool {
        self.edits.is_empty()
    }

    /// The deed that brings back what was shown before, once this one has led to these records.
    pub fn undo(&self, after: &[Record]) -> Self {
        let back = self.edits.iter().filter_map(|edit| {
            let record = after.iter().find(|record| record.id == edit.id())?;
            Some(edit.reversed(record))
        });
        Self::new(What::Undone, back)
    }
}
