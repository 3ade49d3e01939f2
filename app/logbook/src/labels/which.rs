//! Which label of a catch is meant.

use record::Id;
use serde::{Deserialize, Serialize};
use wording::defaults::{Pinned, size};

pub use wording::Kind as LabelKind;

/// One of the labels of a container or event.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Which {
    /// Its kind.
    pub kind: LabelKind,
    /// The determination, mount or individual, where there may be several of a kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub item: Option<Id>,
}

impl Which {
    /// The label of this kind of which there is one.
    pub fn of(kind: LabelKind) -> Self {
        Self { kind, item: None }
    }

    /// True for the two that every pin may have.
    pub fn is_basic(self) -> bool {
        matches!(self.kind, LabelKind::Collection | LabelKind::Host)
    }
}

/// True for labels that stand on a pin.
pub fn is_pinned(kind: LabelKind) -> bool {
    size(kind).pinned == Pinned::OnPin
}
