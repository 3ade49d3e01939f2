//! Search over everything in a book: events, containers, sites and persons.
//!
//! In go the words as typed, out come counts and the newest of each kind. An event is found by its own words, by
//! those of its site, its people and its permit, and by what its containers say; a container by its own words, by those of
//! its determinations, pins and parts, and those of its event. Which letters are marked on the screen is left to the screen.

mod hits;
mod like;
mod links;

pub use hits::{ContainerHit, PersonHit, SiteHit};
pub(crate) use links::Links;

use crate::book::Logbook;
use crate::view::EventLine;
use record::{Id, Kind};

/// Which kinds are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Show {
    /// All, a few of each.
    #[default]
    All,
    /// Events.
    Events,
    /// Containers.
    Containers,
    /// Sites.
    Sites,
    /// Persons.
    Persons,
}

/// What of one kind was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Hits<T> {
    /// How many.
    pub count: usize,
    /// The newest of them.
    pub shown: Vec<T>,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The question as typed.
    pub text: String,
    /// How many in all.
    pub total: usize,
    /// Events.
    pub events: Hits<EventLine>,
    /// Containers.
    pub containers: Hits<ContainerHit>,
    /// Sites.
    pub sites: Hits<SiteHit>,
    /// Persons.
    pub persons: Hits<PersonHit>,
    /// How many were looked through.
    pub looked: Looked,
    /// Sites and persons written like the question, where nothing was found.
    pub like: Like,
}

/// How many records of each kind were looked through.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Looked {
    /// Events.
    pub events: usize,
    /// Containers.
    pub containers: usize,
    /// Sites.
    pub sites: usize,
    /// Persons.
    pub persons: usize,
}

/// What is written like a question that found nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Like {
    /// Sites.
    pub sites: Vec<SiteHit>,
    /// Persons.
    pub persons: Vec<PersonHit>,
}

/// How many of a kind are shown beside others.
const FEW: usize = 3;
/// How many of a kind are shown alone.
const MANY: usize = 100;

impl<T> Hits<T> {
    /// How many are not shown.
    pub fn more(&self) -> usize {
        self.count.saturating_sub(self.shown.len())
    }
}

impl Show {
    fn limit(self, kind: Self) -> usize {
        match self {
            Self::All => FEW,
            own if own == kind => MANY,
            _ => 0,
        }
    }
}

/// The records in which one word stands, by their own words or those of what they refer to; ordered by id.
struct Standing {
    events: Vec<Id>,
    containers: Vec<Id>,
    sites: Vec<Id>,
    persons: Vec<Id>,
    /// The events of those containers.
    filled: Vec<Id>,
}

impl Logbook {
    /// Searches everything. All words must stand somewhere, in any order.
    pub fn search(&self, text: &str, show: Show) -> Found {
        let words: Vec<&str> = text.split_whitespace().collect();
        let standing: Vec<Standing> = words.iter().map(|word| self.standing(word, words.len() == 1)).collect();
        let (events, containers) = self.catches_with(&standing);
        let (sites, persons) = (in_all(&standing, |word| &word.sites), in_all(&standing, |word| &word.persons));
        let total = events.len() + containers.len() + sites.len() + persons.len();
        let like = if total == 0 { self.like(text) } else { Like::default() };
        Found {
            text: text.trim().to_owned(),
            total,
            events: hits(&events, show.limit(Show::Events), |id| Some(self.line(&self.living(id)?, 1))),
            containers: hits(&containers, show.limit(Show::Containers), |id| self.container_hit(id)),
            sites: hits(&sites, show.limit(Show::Sites), |id| self.site_hit(id)),
            persons: hits(&persons, show.limit(Show::Persons), |id| self.person_hit(id)),
            looked: self.looked(),
            like,
        }
    }

    fn looked(&self) -> Looked {
        let count = |kind| self.shelf.count(&kind);
        Looked {
            events: count(Kind::Event),
            containers: count(Kind::Container),
            sites: count(Kind::Site),
            persons: count(Kind::Person),
        }
    }

    /// Events and containers with all words, newest first. At least one word must stand in the event (the
    /// container) itself; the others may stand in what belongs to it.
    fn catches_with(&self, standing: &[Standing]) -> (Vec<Id>, Vec<Id>) {
        if let [Standing { events, containers, .. }] = standing {
            return (newest_first(events.clone()), newest_first(containers.clone()));
        }
        let mut events = ordered(standing.iter().flat_map(|word| &word.events).copied().collect());
        events.retain(|event| standing.iter().all(|word| has(&word.events, event) || has(&word.filled, event)));
        let mut containers = ordered(standing.iter().flat_map(|word| &word.containers).copied().collect());
        containers.retain(|container| {
            let elsewhere =
                |word: &Standing| self.event_above(container).is_some_and(|event| has(&word.events, &event));
            standing.iter().all(|word| has(&word.containers, container) || elsewhere(word))
        });
        (newest_first(events), newest_first(containers))
    }

    fn event_above(&self, container: &Id) -> Option<Id> {
        self.shelf.entry(*container)?.parent
    }

    fn standing(&self, word: &str, alone: bool) -> Standing {
        let kinds = [
            Kind::Event,
            Kind::Container,
            Kind::Site,
            Kind::Person,
            Kind::Permit,
            Kind::Determination,
            Kind::Mount,
            Kind::Individual,
        ];
        let [mut events, mut containers, sites, persons, permits, named, pinned, parted] =
            self.shelf.search_kinds(word, kinds);
        for id in sites.iter().chain(&persons).chain(&permits) {
            let links = self.links();
            events.extend(links.events(*id));
            containers.extend(links.containers(*id));
        }
        for id in named.into_iter().chain(pinned).chain(parted) {
            let Some(of) = self.shelf.entry(id).and_then(|entry| entry.parent) else { continue };
            match self.shelf.entry(of).filter(|entry| !entry.deleted).map(|entry| entry.kind) {
                Some(Kind::Event) => events.push(of),
                Some(Kind::Container) => containers.push(of),
                _ => {}
            }
        }
        let filled = if alone { Vec::new() } else { containers.iter().filter_map(|id| self.event_above(id)).collect() };
        Standing {
            events: ordered(events),
            containers: ordered(containers),
            sites: ordered(sites),
            persons: ordered(persons),
            filled: ordered(filled),
        }
    }
}

fn has(ids: &[Id], id: &Id) -> bool {
    ids.binary_search(id).is_ok()
}

/// What stands in the list of every word, newest first.
fn in_all(standing: &[Standing], list: fn(&Standing) -> &Vec<Id>) -> Vec<Id> {
    let Some((first, others)) = standing.split_first() else { return Vec::new() };
    let mut ids = list(first).clone();
    ids.retain(|id| others.iter().all(|word| has(list(word), id)));
    newest_first(ids)
}

fn ordered(mut ids: Vec<Id>) -> Vec<Id> {
    ids.sort_unstable();
    ids.dedup();
    ids
}

fn newest_first(mut ids: Vec<Id>) -> Vec<Id> {
    ids.reverse();
    ids
}

fn hits<T>(ids: &[Id], limit: usize, shown: impl Fn(Id) -> Option<T>) -> Hits<T> {
    Hits { count: ids.len(), shown: ids.iter().take(limit).filter_map(|id| shown(*id)).collect() }
}

#[cfg(test)]
mod tests;
