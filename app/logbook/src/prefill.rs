//! A new catch, filled with what can be known: now, here, the same people, method and fluids as last time, and
//! the next number. The host is never carried over.

use crate::book::Logbook;
use crate::form::{CatchForm, CaughtForm, CollectorForm, ContainerForm, FluidForm, PlaceForm, Source};
use crate::moment;
use crate::recent::Lately;
use crate::view::Next;
use ports::device::Moment;
use record::container::{self, Fluid};
use record::{Id, person, site};
use std::collections::BTreeMap;

/// Particulars that stay the same from one event to the next; the others are counted afresh.
const LASTING: [&str; 5] = ["lamp", "mesh_mm", "bait", "colour", "fluid"];

impl Logbook {
    /// The form of a new catch, caught here and now.
    pub fn new_catch(&self, now: Moment) -> CatchForm {
        let recent = self.recent();
        // The service of a trap says nothing about what is done with net and vial.
        let last = recent.events.iter().find(|lately| lately.event.get(&record::event::TRAP).is_none());
        let method = last.and_then(Lately::method).unwrap_or_default();
        let mut form = CatchForm {
            place: PlaceForm { source: Source::Here, ..PlaceForm::default() },
            caught: caught_now(now),
            site: last
                .filter(|last| self.was_today(last, now))
                .and_then(|last| self.site_name(last))
                .unwrap_or_default(),
            particulars: lasting(&method.particulars),
            method: method.code,
            method_text: method.text,
            collectors: self.collectors_offered(last),
            ..CatchForm::default()
        };
        form.open = crate::codes::burns(&form.method);
        form.permit = last.and_then(|last| self.permit_still_good(last, now)).unwrap_or_default();
        form.containers.push(self.next_container(&form));
        form
    }

    /// The next container of a form: the next number, in the same vessel and fluids as the one before.
    pub fn next_container(&self, form: &CatchForm) -> ContainerForm {
        let before = form.containers.last().filter(|container| !container.released);
        let like = before
            .cloned()
            .or_else(|| self.last_container())
            .unwrap_or_else(|| ContainerForm { vessel: "vial".to_owned(), ..ContainerForm::default() });
        let first = match self.next_number_after(form) {
            Next::Number(plate) => format!("{}{}", plate.prefix, plate.run),
            Next::None | Next::RangeFull | Next::Unasked => String::new(),
        };
        let unnumbered = if first.is_empty() { "1".to_owned() } else { String::new() };
        ContainerForm {
            vessel: like.vessel,
            first,
            unnumbered,
            killed: like.killed,
            kept: like.kept,
            ..ContainerForm::default()
        }
    }

    fn last_container(&self) -> Option<ContainerForm> {
        let recent = self.recent();
        let last = recent.events.iter().find_map(|event| event.containers.last())?;
        let vessel =
            last.get(&container::VESSEL).filter(|vessel| vessel != "none").unwrap_or_else(|| "vial".to_owned());
        Some(ContainerForm {
            vessel,
            killed: fluid_form(last.get(&container::KILLED)),
            kept: fluid_form(last.get(&container::KEPT)),
            ..ContainerForm::default()
        })
    }

    fn was_today(&self, last: &Lately, now: Moment) -> bool {
        let day = last.event.get(&record::event::CAUGHT).and_then(|when| moment::day_of(&when));
        day == Some(moment::today(now))
    }

    fn site_name(&self, last: &Lately) -> Option<String> {
        self.living(last.event.get(&record::event::SITE)?)?.get(&site::NAME)
    }

    /// Persons of late, those of the last event ticked; before the first event the device's own person.
    fn collectors_offered(&self, last: Option<&Lately>) -> Vec<CollectorForm> {
        let there: Vec<Id> = last.map(Lately::collectors).unwrap_or_else(|| self.device().person.into_iter().collect());
        let recent = self.recent();
        let mut ids = there.clone();
        for id in recent.events.iter().flat_map(Lately::collectors).chain(self.device().person) {
            if !ids.contains(&id) && ids.len() < 8 {
                ids.push(id);
            }
        }
        let named =
            |id: &Id| Some(CollectorForm { name: self.living(*id)?.get(&person::NAME)?, there: there.contains(id) });
        ids.iter().filter_map(named).collect()
    }

    fn permit_still_good(&self, last: &Lately, now: Moment) -> Option<String> {
        let permit = self.living(last.event.get(&record::event::PERMIT)?)?;
        let today = moment::day_text(moment::today(now));
        let over = permit.get(&record::permit::UNTIL).is_some_and(|until| until < today);
        permit.get(&record::permit::NUMBER).filter(|_| !over)
    }
}

/// Caught now, by this device's clock.
pub fn caught_now(now: Moment) -> CaughtForm {
    let local = moment::local(now);
    CaughtForm {
        now: true,
        day: moment::day_text(local.date()),
        clock: moment::clock_text(local.time()),
        ..CaughtForm::default()
    }
}

fn lasting(particulars: &BTreeMap<String, String>) -> BTreeMap<String, String> {
    let mut lasting = particulars.clone();
    lasting.retain(|code, _| LASTING.contains(&code.as_str()));
    lasting
}

/// A stored fluid as a form shows it.
pub fn fluid_form(fluid: Option<Fluid>) -> FluidForm {
    let fluid = fluid.unwrap_or_default();
    let code = if fluid.code.is_empty() && !fluid.text.is_empty() { "other".to_owned() } else { fluid.code };
    FluidForm { code, text: fluid.text, strength: fluid.strength }
}
