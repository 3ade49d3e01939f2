//! One event as lists and screens show it, and what is missing from it.

use crate::book::Logbook;
use crate::moment::{self, Known};
use crate::recent::collectors;
use crate::values::read_number;
use crate::view::{ContainerView, ContentView, EventLine, EventView, Facts, Mark, Plate};
use record::container::{self, Content};
use record::event::{self, Elevation, Place};
use record::order::sort_by_key;
use record::{Id, Kind, Record, permit, site};
use std::collections::BTreeSet;

impl Logbook {
    /// An event as a line of a list.
    pub fn line(&self, event: &Record, order: usize) -> EventLine {
        let containers = self.containers_of(event.id);
        let when = event.get(&event::CAUGHT);
        let known = when.as_ref().and_then(|when| Known::read(&when.from));
        let numbers: Vec<String> =
            containers.iter().filter_map(|record| Some(record.get(&container::NUMBER)?.text)).collect();
        EventLine {
            id: event.id,
            day: when.as_ref().and_then(moment::day_of),
            clock: known.and_then(|known| known.clock).map(moment::clock_text).unwrap_or_default(),
            order,
            site: self.site_words(event),
            unnumbered: containers.iter().filter(|record| waits_for_number(record)).count(),
            containers: containers.len(),
            numbers: self.spans(&numbers),
            method: event.get(&event::METHOD),
            host: event.get(&event::HOST),
            collectors: self.collector_names(event),
            marks: self.marks(event, &containers),
        }
    }

    /// The names of an event's collectors, in order.
    pub fn collector_names(&self, event: &Record) -> Vec<String> {
        collectors(event).into_iter().filter_map(|person| self.person_name(person)).collect()
    }

    /// The site's name, else the station.
    fn site_words(&self, event: &Record) -> String {
        let name = event.get(&event::SITE).and_then(|id| self.record(id)).and_then(|site| site.get(&site::NAME));
        name.or_else(|| event.get(&event::STATION)).unwrap_or_default()
    }

    /// What is missing from an event or to be known of it.
    pub fn marks(&self, event: &Record, containers: &[Record]) -> Vec<Mark> {
        let mut marks = Vec::new();
        let conflicts =
            event.conflicts().count() + containers.iter().map(|record| record.conflicts().count()).sum::<usize>();
        if conflicts > 0 {
            marks.push(Mark::Conflicts(conflicts));
        }
        if event.get(&event::OPEN) == Some(true) {
            marks.push(Mark::Open);
        }
        let numbers = containers.iter().filter_map(|record| Some(record.get(&container::NUMBER)?.text));
        let mut twice = BTreeSet::new();
        twice.extend(numbers.filter(|text| self.stands_twice(text)));
        marks.extend(twice.into_iter().map(Mark::Twice));
        self.missing_values(event, &mut marks);
        let unnumbered = containers.iter().filter(|record| waits_for_number(record)).count();
        if unnumbered > 0 && self.numbers_are_given() {
            marks.push(Mark::Unnumbered(unnumbered));
        }
        match event.get(&event::NOTHING) {
            Some(true) => marks.push(Mark::Nothing),
            _ if containers.is_empty() && event.get(&event::OPEN) != Some(true) => marks.push(Mark::Catch),
            _ => {}
        }
        marks
    }

    fn missing_values(&self, event: &Record, marks: &mut Vec<Mark>) {
        match event.get(&event::PLACE) {
            Some(place) => marks.extend(self.too_vague(&place)),
            None if !event.is_unknown(&event::PLACE) => marks.push(Mark::Coordinates),
            None => {}
        }
        if event.is_empty(&event::SITE) {
            marks.push(Mark::Site);
        }
        if event.is_empty(&event::CAUGHT) {
            marks.push(Mark::Caught);
        }
        if event.is_empty(&event::METHOD) {
            marks.push(Mark::Method);
        }
        if collectors(event).is_empty() {
            marks.push(Mark::Collector);
        }
        let method = event.get(&event::METHOD).map(|method| method.code).unwrap_or_default();
        if event.is_empty(&event::HOST) && host_expected(&method) {
            marks.push(Mark::Host);
        }
    }

    fn too_vague(&self, place: &Place) -> Option<Mark> {
        let limit = self.rules().radius_limit_m;
        place.radius_m.filter(|radius| *radius > limit).map(|radius| Mark::Radius(radius, limit))
    }

    /// Everything about one event.
    pub fn event(&self, id: Id) -> Option<EventView> {
        let event = self.record(id).filter(|record| record.kind == Kind::Event)?;
        let containers = self.containers_of(id).iter().map(|record| self.container_view(record)).collect();
        let first = event.fields.values().flatten().map(|version| version.entered.as_str()).min();
        Some(EventView {
            line: self.line(&event, 1),
            facts: self.facts(&event),
            containers,
            conflicts: event.conflicts().map(str::to_owned).collect(),
            entered: first.unwrap_or_default().to_owned(),
            deleted: event.is_deleted(),
        })
    }

    /// The facts of an event, in the words and digits that every screen and label uses.
    pub fn facts(&self, event: &Record) -> Facts {
        let site = event.get(&event::SITE).and_then(|id| self.record(id));
        let of_site = |field| site.as_ref().and_then(|site| site.get(field)).unwrap_or_default();
        let place = event.get(&event::PLACE);
        let when = event.get(&event::CAUGHT).unwrap_or_default();
        let elevation = event.get(&event::ELEVATION);
        let text = |field| event.get(field).unwrap_or_default();
        let written = place.as_ref().map(crate::places::written);
        Facts {
            site: site.as_ref().map(|site| site.id),
            site_name: of_site(&site::NAME),
            country: of_site(&site::COUNTRY),
            province: of_site(&site::PROVINCE),
            locality: of_site(&site::LOCALITY),
            offset: of_site(&site::OFFSET),
            coordinates: written.as_ref().map(|written| written.coordinates.clone()),
            radius_reading: place.as_ref().and_then(crate::places::radius_reading),
            datum: place
                .as_ref()
                .map(|place| place.datum.clone())
                .filter(|datum| datum != crate::values::WGS84)
                .unwrap_or_default(),
            radius: written.and_then(|written| written.radius),
            place_how: place.as_ref().map(|place| place.how.clone()).unwrap_or_default(),
            place_fixes: place.and_then(|place| Some((place.fixes?, place.seconds.unwrap_or(0)))),
            elevation: elevation.as_ref().filter(|elevation| elevation.how != "device").map(metres_text),
            altitude_raw: elevation.as_ref().filter(|elevation| elevation.how == "device").map(metres_text),
            from: Known::read(&when.from),
            until: when.until.as_deref().and_then(Known::read),
            night: when.night,
            method: event.get(&event::METHOD),
            host: event.get(&event::HOST),
            collectors: self.collector_names(event),
            station: text(&event::STATION),
            weather: text(&event::WEATHER),
            permit: event
                .get(&event::PERMIT)
                .and_then(|id| self.record(id))
                .and_then(|record| record.get(&permit::NUMBER))
                .unwrap_or_default(),
            notes: text(&event::NOTES),
            height: text(&event::HEIGHT),
            microhabitat: text(&event::MICROHABITAT),
            unknown: crate::form_of::unknown_rows(event).into_iter().collect(),
        }
    }

    /// One container, for reading.
    pub fn container(&self, id: Id) -> Option<ContainerView> {
        let record = self.living(id).filter(|record| record.kind == Kind::Container)?;
        Some(self.container_view(&record))
    }

    pub(crate) fn container_view(&self, record: &Record) -> ContainerView {
        let number = record.get(&container::NUMBER);
        let links = record
            .lines(&container::LINKS)
            .into_iter()
            .filter_map(|(_, link)| Some((link.relation, self.plate(&self.living(link.to)?))));
        ContainerView {
            id: record.id,
            event: record.get(&container::EVENT),
            plate: self.plate(record),
            contents: contents(record),
            killed: record.get(&container::KILLED),
            kept: record.get(&container::KEPT),
            alive: record.get(&container::ALIVE).unwrap_or(false),
            released: record.get(&container::RELEASED).unwrap_or(false),
            collector: record.get(&container::COLLECTOR).and_then(|person| self.person_name(person)),
            host: record.get(&container::HOST),
            clock: record
                .get(&container::CAUGHT)
                .and_then(|when| Known::read(&when.from)?.clock)
                .map(moment::clock_text),
            links: links.collect(),
            notes: record.get(&container::NOTES).unwrap_or_default(),
            twice: number.is_some_and(|number| self.stands_twice(&number.text)),
            emptied: record.get(&container::EMPTIED),
        }
    }

    /// The plate of a container.
    pub fn plate(&self, record: &Record) -> Plate {
        let text = record.get(&container::NUMBER).map(|number| number.text).unwrap_or_default();
        let vessel = record.get(&container::VESSEL).unwrap_or_else(|| "vial".to_owned());
        crate::numbers::plate_of(&vessel, &text)
    }
}

/// The contents of a container in their order.
pub fn contents(record: &Record) -> Vec<ContentView> {
    let mut lines: Vec<(Id, Content)> = record.lines(&container::CONTENTS);
    sort_by_key(&mut lines, |(line, content)| (content.order, *line));
    let view = |(_, content): (Id, Content)| ContentView {
        group: content.group,
        sex: content.sex,
        stage: content.stage,
        count_kind: content.count_kind,
        count: content.count,
    };
    lines.into_iter().map(view).collect()
}

/// True for a container that ought to get a number some day.
pub(crate) fn waits_for_number(record: &Record) -> bool {
    record.is_empty(&container::NUMBER) && record.get(&container::RELEASED) != Some(true)
}

/// Methods by which one meets a host as a rule: its absence is then worth a mark.
fn host_expected(method: &str) -> bool {
    matches!(method, "beating" | "rearing")
}

/// An elevation in whole metres, or as exactly as it was typed.
fn metres_text(elevation: &Elevation) -> String {
    match elevation.typed.as_deref().and_then(read_number) {
        Some(metres) if elevation.how != "device" => format!("{metres}"),
        _ => format!("{:.0}", elevation.metres),
    }
}
