//! What stands beside a form or an event: what was used lately, sites near by, the events before and after.

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::form::{CatchForm, ContainerForm, HostForm, PlaceForm, SiteForm, Source};
use crate::moment::Day;
use crate::offers::OfferedGroup;
use crate::places::distance_m;
use ports::device::Moment;
use record::order::sort_by;
use record::{Id, Kind, site};

/// How far around sites count as near, metres.
const NEAR_M: f64 = 2_000.0;

/// How many near sites are named.
const NEAR: usize = 3;

/// A site near a new one.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteNear {
    /// Its name.
    pub name: String,
    /// How far, metres.
    pub distance_m: f64,
    /// Events there.
    pub events: usize,
}

/// An event among those of its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Around {
    /// The event before it, with its order.
    pub before: Option<(Id, usize)>,
    /// Its own order, from 1.
    pub order: usize,
    /// How many events the day has.
    pub of: usize,
    /// The event after it, with its order.
    pub after: Option<(Id, usize)>,
}

impl Logbook {
    /// Groups caught lately, the newest first.
    pub fn groups_lately(&self) -> Vec<OfferedGroup> {
        self.offers(&CatchForm::default()).groups
    }

    /// Hosts written lately, on events and on containers, the newest first.
    pub fn hosts_lately(&self) -> Vec<HostForm> {
        self.offers(&CatchForm::default()).hosts
    }

    /// The prefix of this device's numbers; empty for none.
    pub fn prefix(&self) -> String {
        self.numbering().map(|numbering| numbering.prefix).unwrap_or_default()
    }

    /// The next container of a saved event: the next number, in the vessel and fluids of its last one.
    pub fn next_container_of(&self, event: Id) -> ContainerForm {
        let form = self.catch_of(event).unwrap_or_default();
        ContainerForm {
            killed: form.containers.last().map(|last| last.killed.clone()).unwrap_or_default(),
            ..self.next_container(&form)
        }
    }

    /// What stays open begins without a container: the first comes with what is caught. Any other catch has one ready.
    pub fn fit_containers(&self, form: &mut CatchForm) {
        let bare = |container: &ContainerForm| container.contents.iter().all(|line| line.group.trim().is_empty());
        if form.event.is_some() || form.nothing {
            return;
        }
        if form.open {
            form.containers.retain(|container| !bare(container));
        } else if form.containers.is_empty() {
            form.containers.push(self.next_container(form));
        }
    }

    /// The form of traps to be set, here and now.
    pub fn new_trap(&self, now: Moment) -> CatchForm {
        let like = self.new_catch(now);
        let method = if crate::codes::is_trap(&like.method) { like.method } else { "pitfall_trap".to_owned() };
        CatchForm {
            particulars: [("traps".to_owned(), "1".to_owned())].into(),
            method,
            containers: Vec::new(),
            open: false,
            ..like
        }
    }

    /// The form of a new site: named and placed as the catch that is being typed; country and province as at the site
    /// nearest to it, which a person sees and can change.
    pub fn new_site(&self, form: &CatchForm) -> SiteForm {
        let here = form.place.coordinates();
        let text = |site: &record::Record, field| site.get(field).unwrap_or_default();
        let near = self.near(here, None).into_iter().next().and_then(|(_, id)| self.living(id));
        let place =
            PlaceForm { source: if here.is_some() { Source::Kept } else { Source::None }, ..form.place.clone() };
        SiteForm {
            name: form.site.clone(),
            country: near.as_ref().map(|site| text(site, &site::COUNTRY)).unwrap_or_default(),
            province: near.as_ref().map(|site| text(site, &site::PROVINCE)).unwrap_or_default(),
            place,
            ..self.site_named(&form.site).and_then(|known| self.site_of(known.id)).unwrap_or_default()
        }
    }

    /// Sites near the one that is being typed, the nearest first.
    pub fn sites_near(&self, form: &SiteForm) -> Vec<SiteNear> {
        let near = self.near(form.place.coordinates(), form.id);
        let named = |(distance_m, id): (f64, Id)| {
            let name = self.living(id)?.get(&site::NAME)?;
            Some(SiteNear { name, distance_m, events: self.children(id, &Kind::Event).len() })
        };
        near.into_iter().filter_map(named).take(NEAR).collect()
    }

    fn near(&self, here: Option<(f64, f64)>, but: Option<Id>) -> Vec<(f64, Id)> {
        let Some(here) = here else { return Vec::new() };
        let away = |site: &record::Record| {
            let point = site.get(&site::PLACE)?;
            Some((distance_m(here, (point.latitude, point.longitude)), site.id))
                .filter(|(away, id)| *away <= NEAR_M && Some(*id) != but)
        };
        let mut near: Vec<(f64, Id)> = self.all(&Kind::Site).iter().filter_map(away).collect();
        sort_by(&mut near, |a, b| a.0.total_cmp(&b.0));
        near
    }

    /// An event among those of its day.
    pub fn around(&self, day: Day, id: Id) -> Option<Around> {
        let ids = self.ids_of(day);
        let at = ids.iter().position(|known| *known == id)?;
        let turn = |at: usize| ids.get(at).map(|id| (*id, at + 1));
        Some(Around { before: at.checked_sub(1).and_then(turn), order: at + 1, of: ids.len(), after: turn(at + 1) })
    }

    /// The deed that brings a deleted event back, with the containers that were deleted with it.
    pub fn bring_back(&self, id: Id) -> Deed {
        let containers = self.deleted_containers_of(id).into_iter().map(|id| self.revival(id, Kind::Container));
        Deed::new(What::Undone, containers.chain([self.revival(id, Kind::Event)]))
    }

    fn revival(&self, id: Id, kind: Kind) -> record::Edit {
        let mut edit = self.edit(id, kind, None);
        edit.put(&record::field::DELETED, &false);
        edit
    }

    fn deleted_containers_of(&self, event: Id) -> Vec<Id> {
        let deleted =
            |id: &Id| self.record(*id).is_some_and(|record| record.kind == Kind::Container && record.is_deleted());
        self.shelf.children(event).into_iter().filter(deleted).collect()
    }
}
