//! What is done to open events: lamps put out, containers added, traps set, serviced and taken up.

use crate::book::Logbook;
use crate::catch::{ContainerOf, Saving};
use crate::deed::{Deed, What};
use crate::form::{CatchForm, ContainerForm, PlaceForm};
use crate::moment::{self, Known, clock_text, day_text};
use crate::names::Ids;
use crate::numbers::SpanFault;
use crate::values;
use crate::view::{EventLine, EventView, OpenLine};
use ports::device::Moment;
use record::event::{self, Collector, When};
use record::{Edit, Id, Kind, Record, trap};
use serde_json::Value;

/// An open event or trap, whole.
#[derive(Clone, Debug, PartialEq)]
pub enum OpenView {
    /// An event: a lamp.
    Event(OpenLine, Box<EventView>),
    /// Traps, with their services so far.
    Traps(OpenLine, Vec<EventLine>),
}

impl Logbook {
    /// An open event or trap.
    pub fn open(&self, id: Id, now: Moment) -> Option<OpenView> {
        let record = self.living(id)?;
        let line = self.open_lines(now).into_iter().find(|line| line.id == id);
        match record.kind {
            Kind::Event => {
                Some(OpenView::Event(line.unwrap_or_else(|| self.open_event(&record, now)), Box::new(self.event(id)?)))
            }
            Kind::Trap => {
                let services = self.children(id, &Kind::Event);
                let lines = services.iter().enumerate().map(|(index, event)| self.line(event, index + 1)).collect();
                Some(OpenView::Traps(line?, lines))
            }
            _ => None,
        }
    }

    /// The deed that puts a lamp out and closes its event.
    pub fn lamp_off(&self, id: Id, now: Moment) -> Deed {
        let mut edit = self.edit(id, Kind::Event, None);
        edit.put(&event::OPEN, &false);
        if let Some(record) = self.living(id) {
            let until = moment::local(now);
            let when = record.get(&event::CAUGHT).unwrap_or_default();
            edit.put(&event::CAUGHT, &When { until: Some(moment::minute_text(until)), ..when });
            if let Some(mut method) = record.get(&event::METHOD) {
                method.particulars.insert("lamp_off".to_owned(), clock_text(until.time()));
                edit.put(&event::METHOD, &method);
            }
        }
        Deed::new(What::LampOff, [edit])
    }

    /// The deed that adds containers to an event.
    ///
    /// **Errors**: which form's span cannot be read, and why.
    pub fn add_containers(
        &self,
        event: Id,
        forms: &[ContainerForm],
        saving: &Saving<'_>,
        ids: Ids<'_>,
    ) -> Result<Deed, (usize, SpanFault)> {
        let base = self.catch_of(event).unwrap_or_default();
        let mut edits = Vec::new();
        let mut count = 0;
        for (index, form) in forms.iter().enumerate() {
            let first_order = base.containers.len() + count;
            let of = ContainerOf { event, caught: &base.caught, shown: &base.shown, saving, first_order };
            count += self.containers_edit(&of, form, ids, &mut edits).map_err(|fault| (index, fault))?;
        }
        if base.nothing {
            let mut edit = self.edit(event, Kind::Event, None);
            edit.put(&event::NOTHING, &false);
            edits.push(edit);
        }
        Ok(Deed::new(What::Containers(count), edits))
    }

    /// The deed that changes one saved container.
    ///
    /// **Errors**: why its number cannot be read.
    pub fn save_container(&self, form: &ContainerForm, saving: &Saving<'_>, ids: Ids<'_>) -> Result<Deed, SpanFault> {
        let event = form.id.and_then(|id| self.living(id)).and_then(|record| record.get(&record::container::EVENT));
        let base = event.and_then(|event| self.catch_of(event)).unwrap_or_default();
        let mut edits = Vec::new();
        if let Some(event) = event {
            let of = ContainerOf {
                event,
                caught: &base.caught,
                shown: &base.shown,
                saving,
                first_order: base.containers.len(),
            };
            self.containers_edit(&of, form, ids, &mut edits)?;
        }
        Ok(Deed::new(What::ContainerChanged, edits))
    }

    /// The form of a saved container.
    pub fn container_form_of(&self, id: Id) -> Option<ContainerForm> {
        let record = self.living(id)?;
        let event = record.get(&record::container::EVENT).and_then(|event| self.record(event));
        Some(self.container_form(&record, &event.unwrap_or_else(|| Record::new(id, Kind::Event))))
    }

    /// The deed that sets traps: what the form says becomes a trap in the ground.
    pub fn set_trap(&self, form: &CatchForm, due_days: Option<u32>, saving: &Saving<'_>, ids: Ids<'_>) -> Deed {
        let mut edits = Vec::new();
        let mut edit = Edit::of(&Record::new(ids(), Kind::Trap));
        let typed = CatchForm {
            caught: if form.caught.now { crate::prefill::caught_now(saving.now) } else { form.caught.clone() },
            ..form.clone()
        };
        edit.put_or_empty(&trap::OUT, values::when(&typed.caught, saving.offset_at).as_ref());
        edit.put_or_empty(&trap::METHOD, values::method(form).as_ref());
        edit.put_or_empty(&trap::PLACE, values::place(&form.place, saving.platform).as_ref());
        edit.put_or_empty(&trap::DUE_DAYS, due_days.as_ref());
        edit.put_or_empty(&trap::SITE, self.site_or_new(&typed, saving, ids, &mut edits).as_ref());
        edit.put(&trap::TAKEN_UP, &false);
        for (order, collector) in form.collectors.iter().filter(|collector| collector.there).enumerate() {
            let person = self.person_or_new(&collector.name, ids, &mut edits);
            edit.put_line(
                &trap::COLLECTORS,
                ids(),
                &Collector { person, order: u32::try_from(order).unwrap_or(u32::MAX) },
            );
        }
        edits.push(edit);
        Deed::new(What::TrapSet, edits)
    }

    /// The form of a service: an event from the last service, or from the setting, until now.
    pub fn service(&self, trap: Id, now: Moment, take_up: bool) -> Option<CatchForm> {
        let record = self.living(trap).filter(|record| record.kind == Kind::Trap)?;
        let local = moment::local(now);
        let mut form = self.new_catch(now);
        let method = record.get(&trap::METHOD).unwrap_or_default();
        let set = record.get(&trap::OUT).and_then(|out| Known::read(&out.from));
        let since = self.last_service(&record);
        let first = self.children(trap, &Kind::Event).is_empty();
        form.trap = Some(trap);
        form.take_up = take_up;
        form.open = false;
        form.site = record
            .get(&trap::SITE)
            .and_then(|id| self.record(id))
            .and_then(|site| site.get(&record::site::NAME))
            .unwrap_or_default();
        form.site_given = true;
        form.place =
            record.get(&trap::PLACE).map_or_else(PlaceForm::default, |place| crate::form_of::place_form(Some(place)));
        form.caught.now = false;
        form.caught.day = since.map(day_text).unwrap_or_default();
        form.caught.clock = set.filter(|_| first).and_then(|set| set.clock).map(clock_text).unwrap_or_default();
        form.caught.until_day = day_text(local.date());
        form.caught.until_clock = clock_text(local.time());
        form.method = method.code;
        form.method_text = method.text;
        form.particulars = method.particulars;
        Some(form)
    }

    /// The deed that takes traps up without a service.
    pub fn take_up(&self, trap: Id) -> Deed {
        Deed::new(What::TakenUp, [self.taken_up(trap)])
    }

    pub(crate) fn taken_up(&self, trap: Id) -> Edit {
        let mut edit = self.edit(trap, Kind::Trap, None);
        edit.set(trap::TAKEN_UP.name(), Value::Bool(true));
        edit
    }
}

/// The last moment up to now at which clocks showed this hour; now itself where none is given.
pub fn at_clock(now: Moment, clock: Option<chrono::NaiveTime>) -> Moment {
    let Some(clock) = clock else { return now };
    let minutes = (moment::local(now).time() - clock).num_minutes();
    let back = if minutes < 0 { minutes + 24 * 60 } else { minutes };
    Moment { unix_ms: now.unix_ms - back * 60_000, ..now }
}
