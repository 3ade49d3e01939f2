//! What is to be printed, kept on this device, and what was.

use super::Wanted;
use crate::book::{Book, Logbook};
use crate::deed::{Deed, What};
use crate::label_text::LabelKind;
use crate::moment::{self, Day};
use crate::names::Ids;
use crate::view::{ContentView, EventLine, Plate};
use ports::device::Moment;
use ports::{Draft, press};
use record::printing::{self, Printed};
use record::{Edit, Id, Kind, Record, container};
use serde::{Deserialize, Serialize};

/// What is to be printed: a draft of this device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Queue {
    /// In the order in which they were put in.
    pub entries: Vec<Queued>,
}

/// The labels of one container or event.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Queued {
    /// The container or event.
    pub of: Id,
    /// Copies of the collection label.
    pub collection: u32,
    /// Copies of the host label.
    pub host: u32,
    /// Printed with the next sheet.
    pub chosen: bool,
}

/// How many labels.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Totals {
    /// Collection labels.
    pub collection: u32,
    /// Host labels.
    pub host: u32,
}

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
    pub wanted: [Wanted; 2],
    /// Printed with the next sheet.
    pub chosen: bool,
    /// How many labels of each kind were printed before.
    pub printed: Totals,
}

/// Orders for the press, and of what each is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Orders {
    /// The orders.
    pub orders: Vec<press::Order>,
    /// For each order the container or event, and the kind.
    pub of: Vec<(Id, LabelKind)>,
}

impl Totals {
    /// Labels of both kinds.
    pub fn labels(self) -> u32 {
        self.collection.saturating_add(self.host)
    }

    fn add(&mut self, kind: LabelKind, copies: u32) {
        let place = match kind {
            LabelKind::Collection => &mut self.collection,
            LabelKind::Host => &mut self.host,
        };
        *place = place.saturating_add(copies);
    }
}

impl Queued {
    /// Copies of a kind.
    pub fn copies(&self, kind: LabelKind) -> u32 {
        match kind {
            LabelKind::Collection => self.collection,
            LabelKind::Host => self.host,
        }
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

    /// Says how many copies of a kind are wanted.
    pub fn set_copies(&mut self, of: Id, kind: LabelKind, copies: u32) {
        let copies = copies.min(Self::COPIES_MOST);
        let Some(queued) = self.entries.iter_mut().find(|queued| queued.of == of) else { return };
        match kind {
            LabelKind::Collection => queued.collection = copies,
            LabelKind::Host => queued.host = copies,
        }
    }

    /// Says whether it is printed with the next sheet.
    pub fn choose(&mut self, of: Id, chosen: bool) {
        self.entries.iter_mut().filter(|queued| queued.of == of).for_each(|queued| queued.chosen = chosen);
    }

    /// Takes it out.
    pub fn take_out(&mut self, of: Id) {
        self.entries.retain(|queued| queued.of != of);
    }

    /// Takes out what was chosen and is printed now.
    pub fn take_out_chosen(&mut self) {
        self.entries.retain(|queued| !queued.chosen);
    }
}

fn name(book: Book) -> String {
    format!("glassine/{}/queue", book.name())
}

impl Logbook {
    /// Puts a container or event into the queue with as many copies as it needs; nothing changes if it is there.
    pub fn queue_in(&self, queue: &mut Queue, of: Id) {
        if queue.of(of).is_none() && self.living(of).is_some() {
            let [collection, host] = self.wanted(of).map(|wanted| wanted.copies);
            queue.entries.push(Queued { of, collection, host, chosen: true });
        }
    }

    /// What of a day still needs labels: containers of which none were printed.
    pub fn unlabelled(&self, day: Day) -> Vec<Id> {
        let events = self.shelf.events_on(moment::day_number(day));
        events
            .into_iter()
            .flat_map(|event| self.to_label(event))
            .filter(|of| self.printed(*of) == Totals::default())
            .collect()
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
            if let Some(kind) = LabelKind::BOTH.into_iter().find(|kind| kind.code() == printed.label) {
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
            totals.add(wanted.kind, wanted.copies);
        }
        QueueView { rows, totals }
    }

    fn queue_row(&self, queued: &Queued) -> Option<QueueRow> {
        let (_, event) = self.catch_behind(queued.of)?;
        let container = self.container(queued.of);
        let mut wanted = self.wanted(queued.of);
        for wanted in wanted.iter_mut().filter(|wanted| !wanted.lines.is_empty()) {
            wanted.copies = queued.copies(wanted.kind);
        }
        Some(QueueRow {
            of: queued.of,
            plate: container.as_ref().map(|container| container.plate.clone()),
            event: event.map(|event| self.line(&event, 1)),
            contents: container.map(|container| container.contents).unwrap_or_default(),
            wanted,
            chosen: queued.chosen,
            printed: self.printed(queued.of),
        })
    }

    /// Orders for the press of all that is chosen, collection label before host label.
    pub fn print_orders(&self, queue: &Queue) -> Orders {
        let mut orders = Orders::default();
        for row in self.queue(queue).rows.into_iter().filter(|row| row.chosen) {
            for wanted in row.wanted.into_iter().filter(|wanted| wanted.copies > 0) {
                orders.orders.push(press::Order { lines: wanted.lines, copies: wanted.copies });
                orders.of.push((row.of, wanted.kind));
            }
        }
        orders
    }

    /// Records what was printed, word for word as the press broke it; with `labelled` also that the pins got their
    /// labels.
    ///
    /// **Shape**: one proof an order, in their order.
    pub fn printed_deed(
        &self,
        orders: &Orders,
        proofs: &[press::Proof],
        labelled: Labelled,
        now: Moment,
        ids: Ids<'_>,
    ) -> Deed {
        let mut edits = Vec::new();
        let mut copies = 0_usize;
        for ((order, (of, kind)), proof) in orders.orders.iter().zip(&orders.of).zip(proofs) {
            let mut edit = Edit::of(&Record::new(ids(), Kind::Printing));
            edit.put(&printing::OF, of);
            edit.put(
                &printing::PRINTED,
                &Printed {
                    label: kind.code().to_owned(),
                    lines: proof.lines.clone(),
                    copies: order.copies,
                    at: moment::stamp(now),
                },
            );
            edits.push(edit);
            copies += order.copies as usize;
        }
        if labelled == Labelled::Yes {
            let mut done: Vec<Id> = orders.of.iter().map(|(of, _)| *of).collect();
            done.dedup();
            edits.extend(
                done.into_iter()
                    .map(|of| self.step_edit(of, crate::bench::Deal::Labelled, self.insects(of).at_least, now, ids)),
            );
        }
        Deed::new(What::Printed(copies), edits)
    }
}

/// Whether the labels are on the pins as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Labelled {
    /// They are printed, and go on the pins later.
    NotYet,
    /// They are on the pins.
    Yes,
}
