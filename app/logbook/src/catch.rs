//! From a catch being typed to a deed: the event, its site and people where they are new, and its containers.

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::form::{CatchForm, ContainerForm, Row, Shown, Source};
use crate::names::{Ids, same};
use crate::numbers::SpanFault;
use crate::values::{self, OffsetAt};
use ports::device::{Moment, Platform};
use record::event::{self, Collector};
use record::{Edit, Id, Kind, Record, container, site};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// What the moment of saving lends to a form.
pub struct Saving<'a> {
    /// The moment.
    pub now: Moment,
    /// The offset at a local wall time.
    pub offset_at: OffsetAt<'a>,
    /// The platform that gave position and altitude.
    pub platform: Platform,
}

/// Values by field; null empties the field.
pub(crate) type Values = BTreeMap<String, Value>;

impl Logbook {
    /// The deed that saves a catch. Everything may be missing; only a span of numbers that cannot be read is sent back.
    ///
    /// **Errors**: which container's span is at fault, and why; nothing is changed.
    pub fn save_catch(&self, form: &CatchForm, saving: &Saving<'_>, ids: Ids<'_>) -> Result<Deed, (usize, SpanFault)> {
        let mut form = form.clone();
        if form.caught.now {
            form.caught =
                crate::form::CaughtForm { night: form.caught.night, ..crate::prefill::caught_now(saving.now) }
                    .with_end_of(&form.caught);
        }
        let mut edits = Vec::new();
        let event = form.event.unwrap_or_else(&mut *ids);
        let edit = self.event_edit(event, &form, saving, ids, &mut edits);
        edits.push(edit);
        let containers = self.container_edits(event, &form, saving, ids, &mut edits)?;
        if form.take_up {
            edits.extend(form.trap.map(|trap| self.taken_up(trap)));
        }
        let what = match (form.event, containers) {
            (Some(_), _) => What::EventChanged,
            (None, 0) if form.nothing => What::Nothing,
            (None, count) => What::Catch(count),
        };
        Ok(Deed::new(what, edits))
    }

    fn event_edit(&self, id: Id, form: &CatchForm, saving: &Saving<'_>, ids: Ids<'_>, edits: &mut Vec<Edit>) -> Edit {
        let mut values = self.event_values(form, saving, ids, edits);
        if let Some(base) = &form.base {
            let mut unused = Vec::new();
            let shown = self.event_values(base, saving, ids, &mut unused);
            values.retain(|field, value| shown.get(field) != Some(value));
        }
        let mut edit = self.edit(id, Kind::Event, form.shown.of(id));
        for (field, value) in values {
            edit.set(&field, value);
        }
        self.put_collectors(&mut edit, form, ids, edits);
        edit
    }

    fn event_values(&self, form: &CatchForm, saving: &Saving<'_>, ids: Ids<'_>, edits: &mut Vec<Edit>) -> Values {
        let mut values = Values::new();
        let site = self.site_or_new(form, saving, ids, edits);
        put(&mut values, event::SITE.name(), site);
        put(&mut values, event::PLACE.name(), values::place(&form.place, saving.platform));
        put(&mut values, event::CAUGHT.name(), values::when(&form.caught, saving.offset_at));
        put(&mut values, event::METHOD.name(), values::method(form));
        put(&mut values, event::HOST.name(), values::host(&form.host));
        put(&mut values, event::ELEVATION.name(), values::elevation(form, saving.platform));
        put(&mut values, event::PERMIT.name(), self.permit_numbered(&form.permit).map(|permit| permit.id));
        put(&mut values, event::TRAP.name(), form.trap);
        let texts = [
            (event::WEATHER.name(), &form.weather),
            (event::NOTES.name(), &form.notes),
            (event::HEIGHT.name(), &form.height),
            (event::MICROHABITAT.name(), &form.microhabitat),
            (event::STATION.name(), &form.station),
        ];
        for (field, text) in texts {
            put(&mut values, field, values::said(text));
        }
        for row in &form.unknown {
            let field = values::row_field(*row);
            if values.get(field).is_none_or(Value::is_null) {
                values.insert(field.to_owned(), json!({ "unknown": true }));
            }
        }
        values.insert(event::NOTHING.name().to_owned(), Value::Bool(form.nothing));
        values.insert(event::OPEN.name().to_owned(), Value::Bool(form.open));
        values
    }

    /// Ticked collectors in their order, each under a line of its own.
    fn put_collectors(&self, edit: &mut Edit, form: &CatchForm, ids: Ids<'_>, edits: &mut Vec<Edit>) {
        let mut names: Vec<&str> = form
            .collectors
            .iter()
            .filter(|collector| collector.there)
            .map(|collector| collector.name.as_str())
            .collect();
        if let Some(more) = Some(form.collector_more.trim()).filter(|more| !more.is_empty()) {
            names.push(more);
        }
        let wanted: Vec<Id> = names.into_iter().map(|name| self.person_or_new(name, ids, edits)).collect();
        let before: Vec<(Id, Collector)> =
            self.record(edit.id()).map(|record| record.lines(&event::COLLECTORS)).unwrap_or_default();
        for (line, collector) in &before {
            if !wanted.contains(&collector.person) {
                edit.drop_line(&event::COLLECTORS, *line);
            }
        }
        for (order, person) in wanted.into_iter().enumerate() {
            let known = before.iter().find(|(_, collector)| collector.person == person);
            let line = known.map_or_else(&mut *ids, |(line, _)| *line);
            let order = known.map_or(u32::try_from(order).unwrap_or(u32::MAX), |(_, collector)| collector.order);
            edit.put_line(&event::COLLECTORS, line, &Collector { person, order });
        }
    }

    /// The site so named; a new one gets the event's own position as its suggested point.
    pub(crate) fn site_or_new(
        &self,
        form: &CatchForm,
        saving: &Saving<'_>,
        ids: Ids<'_>,
        edits: &mut Vec<Edit>,
    ) -> Option<Id> {
        let name = values::said(&form.site)?;
        if let Some(known) = self.site_named(&name) {
            return Some(known.id);
        }
        let mut edit = Edit::of(&Record::new(ids(), Kind::Site));
        edit.put(&site::NAME, &name);
        if let Some(place) = values::place(&form.place, saving.platform) {
            edit.put(&site::PLACE, &place);
        }
        let id = edit.id();
        edits.push(edit);
        Some(id)
    }

    /// The edits of all containers of a form; returns how many containers they are.
    fn container_edits(
        &self,
        event: Id,
        form: &CatchForm,
        saving: &Saving<'_>,
        ids: Ids<'_>,
        edits: &mut Vec<Edit>,
    ) -> Result<usize, (usize, SpanFault)> {
        let mut count = 0;
        if !form.nothing {
            for (index, container) in form.containers.iter().enumerate() {
                let group = ContainerOf { event, caught: &form.caught, shown: &form.shown, saving, first_order: count };
                count += self.containers_edit(&group, container, ids, edits).map_err(|fault| (index, fault))?;
            }
        }
        let kept: Vec<Id> = if form.nothing {
            Vec::new()
        } else {
            form.containers.iter().filter_map(|container| container.id).collect()
        };
        let gone = form
            .base
            .iter()
            .flat_map(|base| &base.containers)
            .filter_map(|container| container.id)
            .filter(|id| !kept.contains(id));
        for id in gone {
            edits.push(self.deletion(id, Kind::Container));
        }
        Ok(count)
    }

    /// The edits of one container, or of a span of them; returns how many.
    pub(crate) fn containers_edit(
        &self,
        of: &ContainerOf<'_>,
        form: &ContainerForm,
        ids: Ids<'_>,
        edits: &mut Vec<Edit>,
    ) -> Result<usize, SpanFault> {
        let numbers = self.numbers_of(form)?;
        let alone = numbers.len() == 1;
        for (index, number) in numbers.iter().enumerate() {
            let id = form.id.filter(|_| index == 0).unwrap_or_else(&mut *ids);
            let mut edit = self.edit(id, Kind::Container, of.shown.of(id));
            let order = of.first_order + index;
            self.put_container(&mut edit, of, form, number.as_deref(), ids, edits);
            if form.id.is_none() || index > 0 {
                edit.put(&container::ORDER, &u32::try_from(order).unwrap_or(u32::MAX));
            }
            put_contents(&mut edit, self.record(id).as_ref(), form, alone, ids);
            self.put_links(&mut edit, form, ids);
            edits.push(edit);
        }
        Ok(numbers.len())
    }

    fn put_container(
        &self,
        edit: &mut Edit,
        of: &ContainerOf<'_>,
        form: &ContainerForm,
        number: Option<&str>,
        ids: Ids<'_>,
        edits: &mut Vec<Edit>,
    ) {
        let vessel = if form.released { "none" } else { form.vessel.as_str() };
        let number = number.map(|text| container::Number { text: text.to_owned(), numbering: self.numbering_of(text) });
        edit.put(&container::EVENT, &of.event).put(&container::VESSEL, &vessel.to_owned());
        edit.put_or_empty(&container::NUMBER, number.as_ref());
        edit.put_or_empty(
            &container::KILLED,
            values::fluid(&form.killed).filter(|_| !form.alive && !form.released).as_ref(),
        );
        edit.put_or_empty(
            &container::KEPT,
            values::fluid(&form.kept).filter(|_| !form.alive && !form.released).as_ref(),
        );
        edit.put_or_empty(&container::ALIVE, form.alive.then_some(&true));
        edit.put_or_empty(&container::RELEASED, form.released.then_some(&true));
        let collector = values::said(&form.collector).map(|name| self.person_or_new(&name, ids, edits));
        edit.put_or_empty(&container::COLLECTOR, collector.as_ref());
        edit.put_or_empty(&container::HOST, values::host(&form.host).as_ref());
        edit.put_or_empty(&container::CAUGHT, values::container_caught(form, of.caught, of.saving.offset_at).as_ref());
        edit.put_or_empty(&container::NOTES, values::said(&form.notes).as_ref());
    }

    fn put_links(&self, edit: &mut Edit, form: &ContainerForm, ids: Ids<'_>) {
        for link in &form.links {
            let Some(to) = self.container_numbered(&link.number) else { continue };
            let line = link.line.unwrap_or_else(&mut *ids);
            edit.put_line(&container::LINKS, line, &container::Link { to, relation: link.relation.clone() });
        }
        let before = self.record(edit.id()).map(|record| record.lines(&container::LINKS)).unwrap_or_default();
        for (line, _) in before {
            if !form.links.iter().any(|link| link.line == Some(line)) {
                edit.drop_line(&container::LINKS, line);
            }
        }
    }

    /// The edit that deletes a record.
    pub(crate) fn deletion(&self, id: Id, kind: Kind) -> Edit {
        let mut edit = self.edit(id, kind, None);
        edit.delete();
        edit
    }

    /// The deed that deletes an event and its containers.
    pub fn delete_event(&self, id: Id) -> Deed {
        let containers = self.containers_of(id).into_iter().map(|record| self.deletion(record.id, Kind::Container));
        Deed::new(What::EventDeleted, containers.chain([self.deletion(id, Kind::Event)]))
    }

    /// The deed that deletes a container.
    pub fn delete_container(&self, id: Id) -> Deed {
        Deed::new(What::ContainerDeleted, [self.deletion(id, Kind::Container)])
    }
}

/// To which event containers go, and what its form lends them.
pub(crate) struct ContainerOf<'a> {
    pub event: Id,
    pub caught: &'a crate::form::CaughtForm,
    pub shown: &'a Shown,
    pub saving: &'a Saving<'a>,
    pub first_order: usize,
}

fn put_contents(edit: &mut Edit, before: Option<&Record>, form: &ContainerForm, alone: bool, ids: Ids<'_>) {
    for (order, line) in form.contents.iter().enumerate() {
        if let Some(content) = values::content(line, order, alone) {
            edit.put_line(&container::CONTENTS, line.line.filter(|_| alone).unwrap_or_else(&mut *ids), &content);
        }
    }
    let said =
        |line: &Id| form.contents.iter().any(|content| content.line == Some(*line) && !content.group.trim().is_empty());
    for (line, _) in before.map(|record| record.lines(&container::CONTENTS)).unwrap_or_default() {
        if !said(&line) {
            edit.drop_line(&container::CONTENTS, line);
        }
    }
}

pub(crate) fn put<T: serde::Serialize>(values: &mut Values, field: &str, value: Option<T>) {
    let value =
        value.map_or(Value::Null, |value| serde_json::to_value(value).expect("values of fields are plain data"));
    values.insert(field.to_owned(), value);
}

impl Shown {
    /// What had been seen of a record.
    pub(crate) fn of(&self, id: Id) -> Option<&BTreeMap<String, u32>> {
        self.0.get(&id)
    }

    /// Takes note of a record as it is shown.
    pub(crate) fn note(&mut self, record: &Record) {
        self.0.insert(record.id, record.seen.by_name());
    }
}

impl crate::form::CaughtForm {
    fn with_end_of(self, typed: &Self) -> Self {
        Self { until_day: typed.until_day.clone(), until_clock: typed.until_clock.clone(), ..self }
    }
}

impl CatchForm {
    /// A person chose another day or hour: "now" is off, and the device's position no longer belongs to it.
    pub fn caught_otherwise(&mut self) {
        self.caught.now = false;
        self.detach();
    }

    /// The position of the device no longer belongs to this catch, until a person says that it does.
    pub fn detach(&mut self) {
        if matches!(self.place.source, Source::Here) {
            self.place = crate::form::PlaceForm::default();
        }
    }

    /// Caught now after all, and here.
    pub fn caught_here_and_now(&mut self, now: Moment) {
        self.caught = crate::prefill::caught_now(now);
        self.place = crate::form::PlaceForm { source: Source::Here, ..Default::default() };
    }

    /// The position is the device's, although the time is not now: a person said so.
    pub fn confirm_here(&mut self) {
        self.place = crate::form::PlaceForm { source: Source::Here, ..Default::default() };
    }

    /// A row is marked as unknown, or no longer.
    pub fn mark_unknown(&mut self, row: Row, unknown: bool) {
        if unknown {
            self.unknown.insert(row);
        } else {
            self.unknown.remove(&row);
        }
    }

    /// Adds a collector to the list, ticked.
    pub fn add_collector(&mut self, name: &str) {
        match self.collectors.iter_mut().find(|known| same(&known.name, name)) {
            Some(known) => known.there = true,
            None => self.collectors.push(crate::form::CollectorForm { name: name.trim().to_owned(), there: true }),
        }
    }
}
