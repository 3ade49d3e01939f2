//! Which events and containers refer to a site, person or permit.

use crate::book::Logbook;
use record::{Id, Kind};
use std::collections::HashMap;
use std::rc::Rc;

/// Who refers to whom.
#[derive(Debug, Default)]
pub(crate) struct Links {
    /// For each site, person and permit the events and containers that refer to it, ordered by id, each once.
    events: HashMap<Id, Vec<Id>>,
    containers: HashMap<Id, Vec<Id>>,
}

impl Links {
    /// The events that refer to this.
    pub(crate) fn events(&self, to: Id) -> &[Id] {
        self.events.get(&to).map_or(&[], Vec::as_slice)
    }

    /// The containers that refer to this.
    pub(crate) fn containers(&self, to: Id) -> &[Id] {
        self.containers.get(&to).map_or(&[], Vec::as_slice)
    }
}

impl Logbook {
    /// Who refers to whom; worked out when first needed and kept until the next change.
    pub(crate) fn links(&self) -> Rc<Links> {
        let worked_out =
            || Rc::new(Links { events: self.linked(&Kind::Event), containers: self.linked(&Kind::Container) });
        self.caches.links.get_or_init(worked_out).clone()
    }

    fn linked(&self, from: &Kind) -> HashMap<Id, Vec<Id>> {
        let referred = [Kind::Site, Kind::Person, Kind::Permit];
        let targets = referred.iter().flat_map(|kind| self.shelf.by_kind(kind));
        let mut links: HashMap<Id, Vec<Id>> = targets.map(|id| (id, Vec::new())).collect();
        self.shelf.references(
            |kind| kind == from,
            |from, to| {
                if let Some(known) = links.get_mut(&to) {
                    known.push(from);
                }
            },
        );
        for known in links.values_mut() {
            known.sort_unstable();
            known.dedup();
        }
        links
    }
}
