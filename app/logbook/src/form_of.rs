//! From what is stored back to a form: a saved event, container or site to be changed.

use crate::book::Logbook;
use crate::form::{
    CatchForm, CaughtForm, CollectorForm, ContainerForm, ContentForm, HostForm, LinkForm, PlaceForm, Row, Shown,
    SiteForm, Source,
};
use crate::moment::{Known, clock_text, day_text};
use crate::prefill::fluid_form;
use crate::recent::collectors;
use record::container::{self, Content};
use record::event::{self, Host, Place, When};
use record::order::sort_by_key;
use record::{Id, Kind, Record, permit, site};

impl Logbook {
    /// A saved event as a form; what is saved from it is only what differs.
    pub fn catch_of(&self, id: Id) -> Option<CatchForm> {
        let event = self.living(id).filter(|record| record.kind == Kind::Event)?;
        let text = |field| event.get(field).unwrap_or_default();
        let mut shown = Shown::default();
        shown.note(&event);
        let method = event.get(&event::METHOD).unwrap_or_default();
        let elevation = event.get(&event::ELEVATION).filter(|elevation| elevation.how != "device");
        let containers = self.containers_of(id);
        containers.iter().for_each(|record| shown.note(record));
        let mut form = CatchForm {
            event: Some(id),
            trap: event.get(&event::TRAP),
            site: event
                .get(&event::SITE)
                .and_then(|id| self.record(id))
                .and_then(|site| site.get(&site::NAME))
                .unwrap_or_default(),
            site_given: true,
            place: place_form(event.get(&event::PLACE)),
            caught: caught_form(&event.get(&event::CAUGHT).unwrap_or_default()),
            method: method.code,
            method_text: method.text,
            particulars: method.particulars,
            host: host_form(event.get(&event::HOST)),
            collectors: self.collector_forms(&event),
            weather: text(&event::WEATHER),
            permit: event
                .get(&event::PERMIT)
                .and_then(|id| self.record(id))
                .and_then(|record| record.get(&permit::NUMBER))
                .unwrap_or_default(),
            notes: text(&event::NOTES),
            elevation_confirmed: elevation.as_ref().is_some_and(|elevation| elevation.how == "confirmed"),
            elevation: elevation
                .map(|elevation| elevation.typed.unwrap_or_else(|| format!("{}", elevation.metres)))
                .unwrap_or_default(),
            height: text(&event::HEIGHT),
            microhabitat: text(&event::MICROHABITAT),
            station: text(&event::STATION),
            unknown: unknown_rows(&event),
            containers: containers.iter().map(|record| self.container_form(record, &event)).collect(),
            nothing: event.get(&event::NOTHING).unwrap_or(false),
            open: event.get(&event::OPEN).unwrap_or(false),
            shown,
            ..CatchForm::default()
        };
        let altitude = event.get(&event::ELEVATION).filter(|elevation| elevation.how != "typed");
        form.elevation_zero = altitude.as_ref().and_then(|elevation| elevation.zero.clone()).unwrap_or_default();
        form.place.altitude_m = altitude.as_ref().and_then(|elevation| match elevation.how.as_str() {
            "device" => Some(elevation.metres),
            _ => elevation.raw_m,
        });
        form.place.altitude_accuracy_m = altitude.and_then(|elevation| elevation.accuracy_m);
        form.base = Some(Box::new(form.clone()));
        Some(form)
    }

    fn collector_forms(&self, event: &Record) -> Vec<CollectorForm> {
        let there = collectors(event);
        let known = self
            .recent()
            .events
            .iter()
            .flat_map(crate::recent::Lately::collectors)
            .filter(|id| !there.contains(id))
            .collect::<std::collections::BTreeSet<_>>();
        let all = there.iter().map(|id| (*id, true)).chain(known.into_iter().take(8).map(|id| (id, false)));
        all.filter_map(|(id, there)| Some(CollectorForm { name: self.person_name(id)?, there })).collect()
    }

    /// A saved container as a form.
    pub(crate) fn container_form(&self, record: &Record, event: &Record) -> ContainerForm {
        let number = record.get(&container::NUMBER).map(|number| number.text).unwrap_or_default();
        let vessel = record.get(&container::VESSEL).unwrap_or_else(|| "vial".to_owned());
        let mut lines: Vec<(Id, Content)> = record.lines(&container::CONTENTS);
        sort_by_key(&mut lines, |(line, content)| (content.order, *line));
        let links = record.lines(&container::LINKS).into_iter().filter_map(|(line, link)| {
            let number = self.living(link.to)?.get(&container::NUMBER)?.text;
            Some(LinkForm { line: Some(line), number, relation: link.relation })
        });
        let clock = record.get(&container::CAUGHT).and_then(|when| Known::read(&when.from)?.clock);
        let of_event = event.get(&event::CAUGHT).and_then(|when| Known::read(&when.from)?.clock);
        ContainerForm {
            id: Some(record.id),
            released: record.get(&container::RELEASED).unwrap_or(false),
            vessel: if vessel == "none" { "vial".to_owned() } else { vessel },
            unnumbered: if number.is_empty() { "1".to_owned() } else { String::new() },
            first: number,
            last: String::new(),
            killed: fluid_form(record.get(&container::KILLED)),
            kept: fluid_form(record.get(&container::KEPT)),
            alive: record.get(&container::ALIVE).unwrap_or(false),
            collector: record
                .get(&container::COLLECTOR)
                .and_then(|person| self.person_name(person))
                .unwrap_or_default(),
            host: host_form(record.get(&container::HOST)),
            clock: clock.filter(|clock| Some(*clock) != of_event).map(clock_text).unwrap_or_default(),
            contents: lines.into_iter().map(|(line, content)| content_form(line, content)).collect(),
            links: links.collect(),
            notes: record.get(&container::NOTES).unwrap_or_default(),
        }
    }

    /// A saved site as a form.
    pub fn site_of(&self, id: Id) -> Option<SiteForm> {
        let site = self.living(id).filter(|record| record.kind == Kind::Site)?;
        let text = |field| site.get(field).unwrap_or_default();
        let mut shown = Shown::default();
        shown.note(&site);
        let mut form = SiteForm {
            id: Some(id),
            name: text(&site::NAME),
            country: text(&site::COUNTRY),
            province: text(&site::PROVINCE),
            locality: text(&site::LOCALITY),
            offset: text(&site::OFFSET),
            habitat: text(&site::HABITAT),
            place: place_form(site.get(&site::PLACE)),
            base: None,
            shown,
        };
        form.base = Some(Box::new(form.clone()));
        Some(form)
    }
}

pub(crate) fn unknown_rows(event: &Record) -> std::collections::BTreeSet<Row> {
    let marks = [
        (Row::Place, event.is_unknown(&event::PLACE)),
        (Row::Caught, event.is_unknown(&event::CAUGHT)),
        (Row::Method, event.is_unknown(&event::METHOD)),
        (Row::Host, event.is_unknown(&event::HOST)),
        (Row::Weather, event.is_unknown(&event::WEATHER)),
        (Row::Elevation, event.is_unknown(&event::ELEVATION)),
    ];
    marks.into_iter().filter(|(_, unknown)| *unknown).map(|(row, _)| row).collect()
}

fn content_form(line: Id, content: Content) -> ContentForm {
    ContentForm {
        line: Some(line),
        group: content.group,
        group_code: content.group_code,
        sex: content.sex,
        stage: content.stage,
        count_kind: content.count_kind,
        count: content.count.map(|count| count.to_string()).unwrap_or_default(),
    }
}

fn host_form(host: Option<Host>) -> HostForm {
    let host = host.unwrap_or_default();
    HostForm {
        relation: host.relation,
        thing: host.thing,
        what: host.what,
        part: host.part,
        voucher: host.voucher,
        named_by: host.named_by,
    }
}

/// A stored position as a form shows it.
pub(crate) fn place_form(place: Option<Place>) -> PlaceForm {
    let Some(place) = place else { return PlaceForm::default() };
    let source = match place.how.as_str() {
        "device" => Source::Kept,
        "site" => Source::Site,
        _ => Source::Typed,
    };
    PlaceForm {
        source,
        typed: place.typed.unwrap_or_default(),
        datum: Some(place.datum).filter(|datum| datum != crate::values::WGS84).unwrap_or_default(),
        latitude: Some(place.latitude),
        longitude: Some(place.longitude),
        radius: place.radius_m.map(|radius| format!("{radius}")).unwrap_or_default(),
        fixes: place.fixes.unwrap_or(0),
        seconds: place.seconds.unwrap_or(0),
        ..PlaceForm::default()
    }
}

fn caught_form(when: &When) -> CaughtForm {
    let from = Known::read(&when.from);
    let until = when.until.as_deref().and_then(Known::read);
    let day = |known: Option<Known>| known.and_then(Known::date).map(day_text).unwrap_or_default();
    let clock = |known: Option<Known>| known.and_then(|known| known.clock).map(clock_text).unwrap_or_default();
    let known_day = day(from);
    CaughtForm {
        now: false,
        // A date known only to the month or year stays as it was written.
        day: if known_day.is_empty() { when.from.clone() } else { known_day },
        clock: clock(from),
        until_day: day(until),
        until_clock: clock(until),
        night: when.night,
    }
}
