//! Which events and containers refer to a site, person or permit.

use crate::book::Logbook;
use record::{Id, Kind, Record, container, event};
use std::collections::HashMap;
use std::rc::Rc;

/// Who refers to whom.
#[derive(Debug, Default)]
pub(crate) struct Links {
    events: HashMap<Id, Vec<Id>>,
    containers: HashMap<Id, Vec<Id>>,
}

impl Links {
    /// The events that refer to this.
    pub(crate) fn events(&self, to: Id) -> impl Iterator<Item = Id> {
        self.events.get(&to).into_iter().flatten().copied()
    }

    /// The containers that refer to this.
    pub(crate) fn containers(&self, to: Id) -> impl Iterator<Item = Id> {
        self.containers.get(&to).into_iter().flatten().copied()
    }

    fn note(&mut self, record: &Record) {
        if record.kind == Kind::Event {
            let along = record.lines(&event::COLLECTORS).into_iter().map(|(_, collector)| collector.person);
            let others = [record.get(&event::SITE), record.get(&event::PERMIT)].into_iter().flatten();
            along.chain(others).for_each(|to| self.events.entry(to).or_default().push(record.id));
        } else if let Some(person) = record.get(&container::COLLECTOR) {
            self.containers.entry(person).or_default().push(record.id);
        }
    }
}

impl Logbook {
    /// Who refers to whom; worked out when first needed and kept until the next change.
    pub(crate) fn links(&self) -> Rc<Links> {
        self.caches.links.get_or_init(|| Rc::new(self.work_out_links())).clone()
    }

    fn work_out_links(&self) -> Links {
        let mut links = Links::default();
        let refers = |kind: &Kind| matches!(kind, Kind::Event | Kind::Container);
        let catches = self.shelf.entries().filter(|entry| !entry.deleted && refers(entry.kind)).map(|entry| entry.id);
        catches.filter_map(|id| self.record(id)).for_each(|record| links.note(&record));
        links
    }
}
