//! What a list says of a container, site or person that was found.

use crate::book::Logbook;
use crate::moment::Day;
use crate::view::{ContainerView, EventLine};
use record::{Id, person, site};

/// A container that was found.
#[derive(Clone, Debug, PartialEq)]
pub struct ContainerHit {
    /// The container.
    pub container: ContainerView,
    /// The day of its event.
    pub day: Option<Day>,
    /// The site of its event.
    pub site: String,
    /// Its event, unless that has not arrived here yet.
    pub event: Option<EventLine>,
}

/// A site that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SiteHit {
    /// The record.
    pub id: Id,
    /// Its name.
    pub name: String,
    /// What else is said of it, from large to small: country, province, locality, offset, habitat.
    pub words: Vec<String>,
    /// How many events were there.
    pub events: usize,
}

/// A person who was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PersonHit {
    /// The record.
    pub id: Id,
    /// The name.
    pub name: String,
    /// Other spellings.
    pub spellings: Vec<String>,
    /// How many events they were at.
    pub events: usize,
}

impl Logbook {
    pub(super) fn container_hit(&self, id: Id) -> Option<ContainerHit> {
        let container = self.container(id)?;
        let event = container.event.and_then(|event| self.living(event)).map(|event| self.line(&event, 1));
        Some(ContainerHit {
            day: event.as_ref().and_then(|event| event.day),
            site: event.as_ref().map(|event| event.site.clone()).unwrap_or_default(),
            container,
            event,
        })
    }

    pub(super) fn site_hit(&self, id: Id) -> Option<SiteHit> {
        let record = self.living(id)?;
        let fields = [&site::COUNTRY, &site::PROVINCE, &site::LOCALITY, &site::OFFSET, &site::HABITAT];
        let words = fields.into_iter().filter_map(|field| record.get(field)).filter(|words| !words.is_empty());
        Some(SiteHit {
            id,
            name: record.get(&site::NAME).unwrap_or_default(),
            words: words.collect(),
            events: self.links().events(id).len(),
        })
    }

    pub(super) fn person_hit(&self, id: Id) -> Option<PersonHit> {
        let record = self.living(id)?;
        Some(PersonHit {
            id,
            name: record.get(&person::NAME).unwrap_or_default(),
            spellings: record.get(&person::SPELLINGS).unwrap_or_default(),
            events: self.links().events(id).len(),
        })
    }
}
