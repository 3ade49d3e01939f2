//! Labels: how many a catch needs, what they say, which are to be printed, and what was printed.
//!
//! In go containers (or events that have none) and what a person chose; out come orders for the press and the deeds
//! that keep a wording or a printing. What is to be printed ([`Queue`]) is a draft of this device, not a record.

mod arrangements;
mod outdated;
mod print;
mod queue;
mod which;
mod wording_of;

pub use arrangements::{
    Arrangement, At, DASHES, Dash, Item, JOINTS, Joint, MONTHS, Month, NamedArrangement, PARTS, Part, SampleLines,
    ThatArrangement, date_examples, part_code,
};
pub use outdated::{Earlier, Outdated};
pub use print::{Labelled, Orders};
pub use queue::{Queue, QueueRow, QueueView, Queued, Shared, Totals};
pub use which::{LabelKind, Which, is_pinned};
pub use wording_of::{LabelText, lines_as_typed};

use crate::bench::full_name;
use crate::book::Logbook;
use crate::label_text::is_fluid;
use crate::view::ContentView;
use ports::press;
use record::{Id, Kind, Record, container, determination, individual, mount};

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

/// One label of a catch: what it says and how many are wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Which label.
    pub which: Which,
    /// The name of its determination, the number of its part, or its code, where there may be several of a kind.
    pub item: String,
    /// How many with the spare ones; 0 when there is nothing that it would say, or when nobody asked for it.
    pub copies: u32,
    /// How many of them are spare.
    pub spare: u32,
    /// The lines, top to bottom; none when there is nothing to say.
    pub lines: Vec<press::Line>,
    /// The Data Matrix beside the lines.
    pub code: Option<press::Code>,
    /// A person changed the wording.
    pub edited: bool,
    /// What was printed last, where a later correction made it out of date.
    pub earlier: Option<Earlier>,
}

impl Logbook {
    /// The labels of a container or event, with as many copies as its insects need of those that go on every pin, and
    /// of those that its vessel asks for. Those of which nothing could be said are left out, but for the first two.
    pub fn wanted(&self, of: Id) -> Vec<Wanted> {
        let all = self.labels_of(of).into_iter().map(|which| self.wanted_of(of, which));
        all.filter(|wanted| !wanted.lines.is_empty() || wanted.which.is_basic()).collect()
    }

    /// One label of a container or event, with as many copies as are proposed.
    pub fn wanted_of(&self, of: Id, which: Which) -> Wanted {
        let label = self.worded(of, which, 0);
        let (copies, spare) = if label.lines.is_empty() { (0, 0) } else { self.copies(of, which) };
        Wanted { copies, spare, earlier: self.earlier(of, which), ..label }
    }

    /// One label with so many copies, without a look at what was printed.
    pub(crate) fn worded(&self, of: Id, which: Which, copies: u32) -> Wanted {
        let LabelText { lines, edited, .. } = self.label_lines(of, which);
        let item = which.item.and_then(|item| self.living(item)).map(|item| item_words(&item)).unwrap_or_default();
        let code = self.label_code(of, which);
        Wanted { which, item, copies, spare: 0, lines, code, edited, earlier: None }
    }

    /// The Data Matrix of a code label, where a person wishes one.
    fn label_code(&self, of: Id, which: Which) -> Option<press::Code> {
        let parts = (which.kind == LabelKind::Code).then(|| self.label_parts(of, which, &self.arrangement(which.kind)));
        self.rules().code(&parts??.code)
    }

    /// Which labels a container or event may have, in the order in which they stand on a pin: one for each
    /// determination, the newest first, each part kept elsewhere and each code.
    pub fn labels_of(&self, of: Id) -> Vec<Which> {
        let items = |kind: &Kind| self.children(of, kind).into_iter().rev().map(|record| record.id);
        let each = |kind: LabelKind| -> Vec<Which> {
            let items: Vec<Id> = match kind {
                LabelKind::Determination => items(&Kind::Determination).collect(),
                LabelKind::Parts => items(&Kind::Individual).collect(),
                LabelKind::Code => items(&Kind::Mount).collect(),
                _ => return vec![Which::of(kind)],
            };
            let none = items.is_empty() && kind == LabelKind::Code;
            let items = items.into_iter().map(|item| Which { kind, item: Some(item) });
            items.chain(none.then(|| Which::of(kind))).collect()
        };
        LabelKind::ALL.into_iter().flat_map(each).collect()
    }

    /// How many copies are proposed, and how many of them are spare: those of every pin, that of each code, and those that
    /// a vessel asks for.
    fn copies(&self, of: Id, which: Which) -> (u32, u32) {
        let spare = self.rules().spares;
        let container = self.living(of).filter(|record| record.kind == Kind::Container);
        let wet = |record: &Record| record.get(&container::KEPT).is_some_and(|fluid| is_fluid(&fluid));
        let vessel = |record: &Record| record.get(&container::VESSEL).unwrap_or_default();
        match which.kind {
            LabelKind::Code if which.item.is_some() => (1, 0),
            LabelKind::Collection | LabelKind::Host => (self.insects(of).at_least.saturating_add(spare), spare),
            LabelKind::Fluid if container.as_ref().is_some_and(wet) => (1, 0),
            LabelKind::Envelope if container.is_some_and(|record| vessel(&record) == "envelope") => (1, 0),
            _ => (0, 0),
        }
    }

    /// How many insects a container holds, or all containers of an event; where there are mounts, they are counted.
    pub fn insects(&self, of: Id) -> Insects {
        if let Some(container) = self.container(of) {
            let mounts = u32::try_from(self.children(of, &Kind::Mount).len()).unwrap_or(u32::MAX);
            let counted = Insects::of(&container.contents);
            return if mounts == 0 { counted } else { Insects { at_least: mounts, exact: counted.exact } };
        }
        let all: Vec<ContentView> = self.containers_of(of).iter().flat_map(crate::lines::contents).collect();
        Insects::of(&all)
    }
}

fn item_words(item: &Record) -> String {
    match item.kind {
        Kind::Determination => item.get(&determination::NAMED).map(|named| full_name(&named)),
        Kind::Individual => item.get(&individual::PIECE).map(|piece| piece.number),
        _ => item.get(&mount::CODE),
    }
    .unwrap_or_default()
}

#[cfg(test)]
mod tests;
