//! What is to be printed, kept on this device, and what was.

use super::Wanted;
use super::outdated::Outdated;
use super::print::Orders;
use super::which::{LabelKind, Which};
use crate::book::{Book, Logbook};
use crate::moment::{self, Day};
use crate::view::{ContentView, EventLine, Plate};
use ports::{Draft, press};
use record::printing::{self, Printed};
use record::{Id, Kind, container};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What is to be printed: a draft of this device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Queue {
    /// In the order in which they were put in.
    pub entries: Vec<Queued>,
    /// Of a part-used first sheet: rows of labels on pins that are cut off, and places used in the next row.
    #[serde(default)]
    pub begin: (u32, u32),
}

/// The labels of one container or event.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Queued {
    /// The container or event.
    pub of: Id,
    /// How many of each label.
    #[serde(default)]
    pub copies: Vec<(Which, u32)>,
    /// Labels that are printed as several, because one does not hold them.
    #[serde(default)]
    pub shared: Vec<Shared>,
    /// Printed with the next sheet.
    pub chosen: bool,
}

/// A label whose lines are shared out among several; it holds as long as the label says the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shared {
    /// Which label.
    pub which: Which,
    /// What it says.
    pub whole: Vec<press::Line>,
    /// The lines of each of the labels.
    pub labels: Vec<Vec<press::Line>>,
}

/// How many labels of each kind.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Totals(BTreeMap<LabelKind, u32>);

/// The queue as the screen shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct QueueView {
    /// Its rows.
    pub rows: Vec<QueueRow>,
    /// Labels of the rows chosen.
    pub totals: Totals,
}

/// One row of the queue.
#[derive(Clone, Debug, PartialEq)]
pub struct QueueRow {
    /// The container or event.
    pub of: Id,
    /// The container's number; `None` for an event.
    pub plate: Option<Plate>,
    /// The event, unless it has not arrived here yet.
    pub event: Option<EventLine>,
    /// What is in the container.
    pub contents: Vec<ContentView>,
    /// What the labels say, with the copies asked for.
    pub wanted: Vec<Wanted>,
    /// Those that are printed as several.
    pub shared: Vec<Shared>,
    /// Printed with the next sheet.
    pub chosen: bool,
    /// How many labels of each kind were printed before.
    pub printed: Totals,
}

impl Totals {
    /// Labels of all kinds.
    pub fn labels(&self) -> u32 {
        self.0.values().copied().fold(0, u32::saturating_add)
    }

    /// Labels of a kind.
    pub fn of(&self, kind: LabelKind) -> u32 {
        self.0.get(&kind).copied().unwrap_or(0)
    }

    /// Kinds of which there are some, with how many.
    pub fn kinds(&self) -> impl Iterator<Item = (LabelKind, u32)> {
        self.0.iter().filter(|(_, copies)| **copies > 0).map(|(kind, copies)| (*kind, *copies))
    }

    /// Counts some more.
    pub fn add(&mut self, kind: LabelKind, copies: u32) {
        let place = self.0.entry(kind).or_insert(0);
        *place = place.saturating_add(copies);
    }
}

impl Queued {
    /// The labels of a container or event, as many as proposed.
    pub fn proposed(of: Id, wanted: &[Wanted]) -> Self {
        let copies = wanted.iter().map(|wanted| (wanted.which, wanted.copies)).filter(|(_, copies)| *copies > 0);
        Self { of, copies: copies.collect(), shared: Vec::new(), chosen: true }
    }

    /// Copies of a label.
    pub fn copies(&self, which: Which) -> u32 {
        self.copies.iter().find(|(known, _)| *known == which).map_or(0, |(_, copies)| *copies)
    }

    /// Says how many copies of a label are wanted.
    pub fn set_copies(&mut self, which: Which, copies: u32) {
        let copies = copies.min(Queue::COPIES_MOST);
        match self.copies.iter_mut().find(|(known, _)| *known == which) {
            Some((_, known)) => *known = copies,
            None => self.copies.push((which, copies)),
        }
    }

    /// Follows pins that were added or taken out: the labels that every pin has are wanted as proposed, and so are those of
    /// the codes that there are now.
    pub fn follow_pins(&mut self, wanted: &[Wanted]) {
        let follows = |which: &Which| which.is_basic() || which.kind == LabelKind::Code;
        self.copies.retain(|(which, _)| !follows(which));
        for one in wanted.iter().filter(|one| follows(&one.which)) {
            self.set_copies(one.which, one.copies);
        }
    }

    /// Prints a label as several from now on; as one again when it is shared out among fewer than two.
    pub fn share(&mut self, shared: Shared) {
        self.shared.retain(|known| known.which != shared.which);
        if shared.labels.len() > 1 {
            self.shared.push(shared);
        }
    }

    /// How many labels.
    pub fn labels(&self) -> u32 {
        self.copies.iter().map(|(_, copies)| *copies).fold(0, u32::saturating_add)
    }
}

impl QueueRow {
    /// The lines of each label as which a label is printed: mostly one.
    pub(super) fn labels(&self, wanted: &Wanted) -> Vec<Vec<press::Line>> {
        let holds = |shared: &&Shared| shared.which == wanted.which && shared.whole == wanted.lines;
        self.shared.iter().find(holds).map_or_else(|| vec![wanted.lines.clone()], |shared| shared.labels.clone())
    }
}

impl Queue {
    /// The most copies of one label on one sheet order.
    pub const COPIES_MOST: u32 = 999;

    /// The queue kept for a book; empty when there is none or it cannot be read.
    pub fn load(draft: &dyn Draft, book: Book) -> Self {
        draft.get(&name(book)).and_then(|text| crate::kept::read(text.as_bytes())).unwrap_or_default()
    }

    /// Keeps the queue; false when the device refused.
    pub fn keep(&self, draft: &dyn Draft, book: Book) -> bool {
        draft.put(&name(book), &serde_json::to_string(self).expect("a queue is plain data"))
    }

    /// The labels of a container or event, if they are in it.
    pub fn of(&self, of: Id) -> Option<&Queued> {
        self.entries.iter().find(|queued| queued.of == of)
    }

    /// Changes the labels of a container or event, if they are in it.
    pub fn change(&mut self, of: Id, change: impl FnOnce(&mut Queued)) {
        if let Some(queued) = self.entries.iter_mut().find(|queued| queued.of == of) {
            change(queued);
        }
    }

    /// Says how many copies of a label are wanted.
    pub fn set_copies(&mut self, of: Id, which: Which, copies: u32) {
        self.change(of, |queued| queued.set_copies(which, copies));
    }

    /// Prints a label of a container or event as several.
    pub fn share(&mut self, of: Id, shared: Shared) {
        self.change(of, |queued| queued.share(shared));
    }

    /// Says whether it is printed with the next sheet.
    pub fn choose(&mut self, of: Id, chosen: bool) {
        self.change(of, |queued| queued.chosen = chosen);
    }

    /// Takes it out.
    pub fn take_out(&mut self, of: Id) {
        self.entries.retain(|queued| queued.of != of);
    }

    /// Takes out the labels that were printed; what has none left goes.
    pub fn take_out_printed(&mut self, printed: &Orders) {
        for (of, which) in &printed.of {
            self.set_copies(*of, *which, 0);
        }
        let touched = |queued: &Queued| printed.of.iter().any(|(of, _)| *of == queued.of);
        self.entries.retain(|queued| !touched(queued) || queued.labels() > 0);
        self.begin = (0, 0);
    }

    /// Puts a label that is out of date in, as often as it was printed.
    pub fn print_again(&mut self, outdated: &Outdated) {
        if self.of(outdated.of).is_none() {
            self.entries.push(Queued::proposed(outdated.of, &[]));
        }
        self.set_copies(outdated.of, outdated.which, outdated.earlier.copies);
        self.choose(outdated.of, true);
    }
}

fn name(book: Book) -> String {
    format!("glassine/{}/queue", book.name())
}

impl Logbook {
    /// Puts a container or event into the queue with as many copies as it needs; nothing changes if it is there.
    pub fn queue_in(&self, queue: &mut Queue, of: Id) {
        if queue.of(of).is_none() && self.living(of).is_some() {
            queue.entries.push(Queued::proposed(of, &self.wanted(of)));
        }
    }

    /// What of a day still needs labels: containers of which none were printed.
    pub fn unlabelled(&self, day: Day) -> Vec<Id> {
        let events = self.shelf.events_on(moment::day_number(day));
        events.into_iter().flat_map(|event| self.to_label(event)).filter(|of| self.printed(*of).labels() == 0).collect()
    }

    /// What of an event gets labels: its containers, or the event itself while it has none.
    pub fn to_label(&self, event: Id) -> Vec<Id> {
        let Some(record) = self.living(event) else { return Vec::new() };
        let containers = self.containers_of(event);
        if containers.is_empty() {
            let nothing = record.get(&record::event::NOTHING) == Some(true);
            return if nothing { Vec::new() } else { vec![event] };
        }
        let kept = containers.into_iter().filter(|container| container.get(&container::RELEASED) != Some(true));
        kept.map(|container| container.id).collect()
    }

    /// How many labels of each kind were printed of a container or event.
    pub fn printed(&self, of: Id) -> Totals {
        let mut totals = Totals::default();
        for printed in self.printings(of) {
            if let Some(kind) = LabelKind::of_code(&printed.label) {
                totals.add(kind, printed.copies);
            }
        }
        totals
    }

    /// What was printed of a container or event, word for word, oldest first.
    pub fn printings(&self, of: Id) -> Vec<Printed> {
        self.children(of, &Kind::Printing).iter().filter_map(|record| record.get(&printing::PRINTED)).collect()
    }

    /// The queue as the screen shows it; what was deleted meanwhile is left out.
    pub fn queue(&self, queue: &Queue) -> QueueView {
        let rows: Vec<QueueRow> = queue.entries.iter().filter_map(|queued| self.queue_row(queued)).collect();
        let mut totals = Totals::default();
        for wanted in rows.iter().filter(|row| row.chosen).flat_map(|row| &row.wanted) {
            totals.add(wanted.which.kind, wanted.copies);
        }
        QueueView { rows, totals }
    }

    fn queue_row(&self, queued: &Queued) -> Option<QueueRow> {
        let (_, event) = self.catch_behind(queued.of)?;
        let container = self.container(queued.of);
        let asked =
            self.labels_of(queued.of).into_iter().filter(|which| queued.copies.iter().any(|(known, _)| known == which));
        let wanted = asked.map(|which| self.worded(queued.of, which, queued.copies(which)));
        Some(QueueRow {
            of: queued.of,
            plate: container.as_ref().map(|container| container.plate.clone()),
            event: event.map(|event| self.line(&event, 1)),
            contents: container.map(|container| container.contents).unwrap_or_default(),
            wanted: wanted.filter(|wanted| !wanted.lines.is_empty()).collect(),
            shared: queued.shared.clone(),
            chosen: queued.chosen,
            printed: self.printed(queued.of),
        })
    }
}
