//! The wording of one label: by the rules, or as a person changed it.

use super::which::{LabelKind, Which};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::label_text::for_press;
use ports::press;
use record::{Edit, Field, Id, Kind, Record, container, event};

/// What one label says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LabelText {
    /// The lines, top to bottom; none when there is nothing that it would say.
    pub lines: Vec<press::Line>,
    /// A person changed the wording.
    pub edited: bool,
    /// The same as a text to be edited: a line a row, `_` on both sides of italics.
    pub text: String,
    /// The record that keeps the changed wording: the container, or its event for all containers of it.
    pub kept_in: Option<Id>,
    /// How many other containers of the event would take the wording, if it were kept there.
    pub others: usize,
}

impl Logbook {
    /// What a label of a container or event says.
    pub fn label_lines(&self, of: Id, which: Which) -> LabelText {
        let changed = self.changed_wording(of, which);
        let kept_in = changed.as_ref().map(|(id, _)| *id);
        let lines = match changed {
            Some((_, lines)) => lines.iter().map(|line| wording::unmarked(line)).collect(),
            None => self.usual_lines(of, which),
        };
        let text: Vec<String> = lines.iter().map(|line| wording::marked(line)).collect();
        LabelText {
            lines: for_press(&lines),
            edited: kept_in.is_some(),
            text: text.join("\n"),
            kept_in,
            others: self.followers(of, which).len(),
        }
    }

    /// Keeps a changed wording with one container or event; an empty text, or the usual one, brings the usual
    /// wording back.
    pub fn set_wording(&self, of: Id, which: Which, text: &str) -> Deed {
        let lines = lines_of(text);
        let usual: Vec<String> = self.usual_lines(of, which).iter().map(|line| wording::marked(line)).collect();
        let inherited = self.event_wording(of, which).filter(|(event, _)| *event != of);
        let back = lines.is_empty() || (lines == usual && inherited.is_none());
        let edit = self
            .living(which.item.unwrap_or(of))
            .map(|record| wording_edit(&record, which, if back { None } else { Some(&lines) }));
        Deed::new(What::Wording, edit)
    }

    /// Keeps a changed wording with the event, so that its containers take it; those with a wording of their own
    /// or with a host, hour or collector of their own do not.
    pub fn set_wording_for_event(&self, of: Id, which: Which, text: &str) -> Deed {
        let lines = lines_of(text);
        let Some((container, Some(event))) = self.catch_behind(of) else { return Deed::new(What::Wording, []) };
        let lines = with_mark(lines, &number_of(container.as_ref()));
        let own = container.filter(|record| !differs(record, which)).map(|record| wording_edit(&record, which, None));
        let kept = wording_edit(&event, which, Some(&lines).filter(|lines| !lines.is_empty()));
        Deed::new(What::Wording, own.into_iter().chain([kept]))
    }

    /// The changed wording that holds for a label, and the record that keeps it.
    fn changed_wording(&self, of: Id, which: Which) -> Option<(Id, Vec<String>)> {
        let record = self.living(which.item.unwrap_or(of))?;
        let own = record.get(&field(which.kind)).filter(|lines: &Vec<String>| !lines.is_empty());
        let own = own.map(|lines| match record.kind {
            Kind::Event => lines.iter().map(|line| line.replace(OWN_NUMBER, "")).collect(),
            _ => lines,
        });
        own.map(|lines| (record.id, lines)).or_else(|| self.event_wording(of, which))
    }

    /// The wording that a container takes from its event, unless it differs from it in what the label says.
    fn event_wording(&self, of: Id, which: Which) -> Option<(Id, Vec<String>)> {
        let (container, event) = self.catch_behind(of)?;
        let container = container.filter(|record| !differs(record, which));
        let event = event.filter(|_| container.is_some())?;
        let lines = event.get(&field(which.kind)).filter(|lines: &Vec<String>| !lines.is_empty())?;
        let number = number_of(self.living(of).as_ref());
        Some((event.id, lines.iter().map(|line| line.replace(OWN_NUMBER, &number)).collect()))
    }

    /// The other containers of the event that would take its wording.
    fn followers(&self, of: Id, which: Which) -> Vec<Id> {
        let event = self
            .living(of)
            .filter(|record| record.kind == Kind::Container)
            .and_then(|record| record.get(&container::EVENT));
        let containers = event.map(|event| self.containers_of(event)).unwrap_or_default();
        let following = containers
            .into_iter()
            .filter(|record| record.id != of && !differs(record, which) && record.is_empty(&field(which.kind)));
        following.map(|record| record.id).collect()
    }
}

/// Stands in an event's wording for the number of each container: a label never bears another vial's.
const OWN_NUMBER: &str = "{number}";

fn number_of(container: Option<&Record>) -> String {
    container.and_then(|record| record.get(&container::NUMBER)).map(|number| number.text).unwrap_or_default()
}

fn with_mark(lines: Vec<String>, number: &str) -> Vec<String> {
    if number.is_empty() {
        return lines;
    }
    lines.into_iter().map(|line| line.replace(number, OWN_NUMBER)).collect()
}

/// The lines of a text as typed, for a preview while it is typed.
pub fn lines_as_typed(text: &str) -> Vec<press::Line> {
    let lines: Vec<wording::Line> = lines_of(text).iter().map(|line| wording::unmarked(line)).collect();
    for_press(&lines)
}

fn lines_of(text: &str) -> Vec<String> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
}

fn wording_edit(record: &Record, which: Which, lines: Option<&Vec<String>>) -> Edit {
    let mut edit = Edit::of(record);
    edit.put_or_empty(&field(which.kind), lines);
    edit
}

/// True when a container has data of its own that stand on this kind of label; some say its number or contents.
fn differs(record: &Record, which: Which) -> bool {
    let has = |fields: &[bool]| fields.iter().any(|empty| !empty);
    let collected = [record.is_empty(&container::COLLECTOR), record.is_empty(&container::CAUGHT)];
    let on = [record.is_empty(&container::HOST)];
    match which.kind {
        LabelKind::Collection => has(&collected),
        LabelKind::Host => has(&on),
        LabelKind::Rearing => has(&collected) || has(&on) || !record.is_empty(&container::EMERGED),
        LabelKind::Determination
        | LabelKind::Code
        | LabelKind::Fluid
        | LabelKind::Envelope
        | LabelKind::Parts
        | LabelKind::Slip => true,
    }
}

fn field(kind: LabelKind) -> Field<Vec<String>> {
    match kind {
        LabelKind::Collection => event::COLLECTION_WORDING,
        LabelKind::Host => event::HOST_WORDING,
        LabelKind::Determination => Field::new("determination_wording"),
        LabelKind::Rearing => Field::new("rearing_wording"),
        LabelKind::Code => Field::new("code_wording"),
        LabelKind::Fluid => Field::new("fluid_wording"),
        LabelKind::Envelope => Field::new("envelope_wording"),
        LabelKind::Parts => Field::new("parts_wording"),
        LabelKind::Slip => Field::new("slip_wording"),
    }
}
