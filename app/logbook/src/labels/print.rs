//! What goes to the press, sheet by sheet, and what is kept of it once it was printed.

use super::queue::QueueView;
use super::which::{LabelKind, Which, is_pinned};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::moment;
use crate::names::Ids;
use ports::device::Moment;
use ports::press;
use record::printing::{self, Printed};
use record::{Edit, Id, Kind, Record};
use serde_json::{Value, json};

/// Labels for the press, and of what each is.
#[derive(Clone, Debug, PartialEq)]
pub struct Orders {
    /// The labels.
    pub batch: press::Batch,
    /// For each the container or event, and which of its labels.
    pub of: Vec<(Id, Which)>,
}

/// What one label says, the code beside it, and its kind.
pub type ToLookAt = (Vec<press::Line>, Option<press::Code>, LabelKind);

/// Whether the labels are on the pins as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Labelled {
    /// They are printed, and go on the pins later.
    NotYet,
    /// They are on the pins.
    Yes,
}

impl Default for Orders {
    fn default() -> Self {
        Self { batch: fresh(press::Card::fresh(press::Paper::A4)), of: Vec::new() }
    }
}

impl Orders {
    /// How many labels.
    pub fn labels(&self) -> u32 {
        self.batch.labels.iter().map(|label| label.copies).fold(0, u32::saturating_add)
    }

    /// True when one of them stands on a pin.
    pub fn on_pins(&self) -> bool {
        self.of.iter().any(|(_, which)| is_pinned(which.kind))
    }
}

/// No labels yet on this card.
fn fresh(card: press::Card) -> press::Batch {
    press::Batch { labels: Vec::new(), styles: Vec::new(), card }
}

/// Adds a label to those that are set together.
fn add_label(batch: &mut press::Batch, mut label: press::Label, style: press::Style) {
    let known = batch.styles.iter().position(|known| *known == style);
    label.style = known.unwrap_or_else(|| {
        batch.styles.push(style);
        batch.styles.len() - 1
    });
    batch.labels.push(label);
}

impl Logbook {
    /// Orders for the press of all that is chosen of a queue, in its order, and of the labels on a pin; of the first sheet
    /// so much is used already.
    pub fn print_orders(&self, queue: &QueueView, begin: (u32, u32)) -> Orders {
        let rules = self.rules();
        let mut orders = Orders { batch: fresh(rules.card(begin)), of: Vec::new() };
        for row in queue.rows.iter().filter(|row| row.chosen) {
            for wanted in row.wanted.iter().filter(|wanted| wanted.copies > 0) {
                for lines in row.labels(wanted) {
                    let label = press::Label { lines, copies: wanted.copies, style: 0, code: wanted.code.clone() };
                    add_label(&mut orders.batch, label, rules.style(wanted.which.kind));
                    orders.of.push((row.of, wanted.which));
                }
            }
        }
        orders
    }

    /// Labels to be looked at, one of each.
    pub fn to_look_at(&self, labels: impl IntoIterator<Item = ToLookAt>) -> press::Batch {
        let rules = self.rules();
        let mut batch = fresh(rules.card((0, 0)));
        for (lines, code, kind) in labels {
            add_label(&mut batch, press::Label { lines, copies: 1, style: 0, code }, rules.style(kind));
        }
        batch
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
        let each = orders.batch.labels.iter().zip(&orders.of).zip(proofs);
        let mut edits: Vec<Edit> = each
            .map(|((label, (of, which)), proof)| {
                let printed = Printed {
                    label: which.kind.code().to_owned(),
                    lines: proof.lines.clone(),
                    copies: label.copies,
                    at: moment::stamp(now),
                };
                self.printing(*of, *which, &printed, ids())
            })
            .collect();
        if labelled == Labelled::Yes {
            let mut done: Vec<Id> =
                orders.of.iter().filter(|(_, which)| is_pinned(which.kind)).map(|(of, _)| *of).collect();
            done.dedup();
            edits.extend(
                done.into_iter()
                    .map(|of| self.step_edit(of, crate::bench::Deal::Labelled, self.insects(of).at_least, now, ids)),
            );
        }
        Deed::new(What::Printed(orders.labels() as usize), edits)
    }

    fn printing(&self, of: Id, which: Which, printed: &Printed, id: Id) -> Edit {
        let mut edit = Edit::of(&Record::new(id, Kind::Printing));
        edit.put(&printing::OF, &of);
        edit.put(&printing::PRINTED, printed);
        if let Some(item) = which.item {
            edit.put(&printing::ITEM, &item);
        }
        if let Some(known) = self.label_parts(of, which, &self.arrangement(which.kind)) {
            edit.put(&printing::KNOWN, &without_empty(serde_json::to_value(&known).expect("parts are plain data")));
        }
        edit
    }
}

/// What is empty needs no room in the log.
fn without_empty(value: Value) -> Value {
    let Value::Object(fields) = value else { return value };
    let says = |value: &Value| *value != Value::Null && *value != json!("") && *value != json!([]);
    Value::Object(fields.into_iter().filter(|(_, value)| says(value)).collect())
}
