//! What was used lately, for completing what is typed: the newest events and their containers.

use crate::book::Logbook;
use crate::form::HostForm;
use crate::names::folded;
use crate::offers::OfferedGroup;
use record::container::{CONTENTS, Content};
use record::event::{self, Collector, Method, Place};
use record::order::sort_by_key;
use record::{Id, Kind, Record};
use std::rc::Rc;

/// How many of the newest events are looked at.
const EVENTS: usize = 200;

/// One event of late, with what can be offered again.
pub struct Lately {
    /// The record.
    pub event: Record,
    /// Where it was.
    pub place: Option<Place>,
    /// Its containers in order.
    pub containers: Vec<Record>,
    /// The groups in its containers.
    pub(crate) groups: Vec<Written<OfferedGroup>>,
    /// Its host: the thing and what it is.
    pub(crate) host: Option<Written<HostForm>>,
    /// Its microhabitat.
    pub(crate) microhabitat: Option<Written<String>>,
}

/// Something that was written, and its words as they are compared.
pub(crate) struct Written<T> {
    pub(crate) folded: String,
    pub(crate) what: T,
}

impl<T> Written<T> {
    fn of(words: &str, what: T) -> Self {
        Self { folded: folded(words), what }
    }
}

/// The newest events, newest first.
pub struct Recent {
    /// The events.
    pub events: Vec<Lately>,
}

impl Lately {
    fn of(event: Record, containers: Vec<Record>) -> Self {
        let group = |content: Content| {
            Written::of(&content.group.clone(), OfferedGroup { text: content.group, code: content.group_code })
        };
        let host = event.get(&event::HOST).map(|host| {
            Written::of(&host.thing.clone(), HostForm { thing: host.thing, what: host.what, ..HostForm::default() })
        });
        let microhabitat = event.get(&event::MICROHABITAT).map(|words| Written::of(&words.clone(), words));
        Self {
            place: event.get(&event::PLACE),
            groups: containers.iter().flat_map(contents).map(group).collect(),
            host,
            microhabitat,
            containers,
            event,
        }
    }

    /// Its method.
    pub fn method(&self) -> Option<Method> {
        self.event.get(&event::METHOD)
    }

    /// Its collectors in order.
    pub fn collectors(&self) -> Vec<Id> {
        collectors(&self.event)
    }
}

fn contents(container: &Record) -> Vec<Content> {
    let mut lines: Vec<Content> = container.lines(&CONTENTS).into_iter().map(|(_, line)| line).collect();
    sort_by_key(&mut lines, |line| line.order);
    lines
}

/// The collectors of an event or trap, in order.
pub fn collectors(record: &Record) -> Vec<Id> {
    let mut lines: Vec<(Id, Collector)> = record.lines(&event::COLLECTORS);
    sort_by_key(&mut lines, |(line, collector)| (collector.order, *line));
    lines.into_iter().map(|(_, collector)| collector.person).collect()
}

impl Logbook {
    /// What was used lately; worked out once and kept until the next change.
    pub fn recent(&self) -> Rc<Recent> {
        self.recent.get_or_init(|| Rc::new(self.work_out_recent())).clone()
    }

    fn work_out_recent(&self) -> Recent {
        let events =
            self.shelf.newest(&Kind::Event, EVENTS).into_iter().filter_map(|id| self.living(id)).map(|event| {
                let containers = self.containers_of(event.id);
                Lately::of(event, containers)
            });
        Recent { events: events.collect() }
    }

    /// The living containers of an event, in their order.
    pub fn containers_of(&self, event: Id) -> Vec<Record> {
        let mut containers = self.children(event, &Kind::Container);
        sort_by_key(&mut containers, |record| (record.get(&record::container::ORDER).unwrap_or(u32::MAX), record.id));
        containers
    }
}
