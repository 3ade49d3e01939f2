//! Recent events and sites as seen from one position: worked out once for it, since a form asks at every key.

use crate::book::Logbook;
use crate::names::folded;
use crate::places::{distance_m, distance_rough_m};
use crate::recent::Lately;
use record::event::Place;
use record::{Id, Kind, Record, site};
use std::rc::Rc;

/// What counts as within reach, metres.
pub(crate) const REACH_M: f64 = 1_000.0;

/// How far the rough distance may be off near the limit of reach.
const ROUGH: f64 = 0.05;

/// A site, decoded.
pub(crate) struct KnownSite {
    pub(crate) id: Id,
    pub(crate) name: String,
    pub(crate) folded: String,
    pub(crate) point: Option<(f64, f64)>,
}

/// All that has an order as seen from one position, or from nowhere.
pub(crate) struct Outlook {
    here: Option<(f64, f64)>,
    /// Places in the list of recent events: those within reach first, each part in its order of time.
    pub(crate) events: Vec<usize>,
    /// Places in the list of sites: those whose distance is known first, the nearest first; then the newest first.
    pub(crate) sites: Vec<usize>,
}

impl KnownSite {
    fn of(record: &Record) -> Option<Self> {
        let name = record.get(&site::NAME)?;
        let point = record.get(&site::PLACE).map(|point| (point.latitude, point.longitude));
        Some(Self { id: record.id, folded: folded(&name), name, point })
    }

    /// How far its point is, metres, where both positions are known.
    pub(crate) fn distance_m(&self, here: Option<(f64, f64)>) -> Option<f64> {
        here.zip(self.point).map(|(here, point)| distance_m(here, point))
    }
}

impl Logbook {
    /// All sites with a name, decoded, ordered by id.
    pub(crate) fn known_sites(&self) -> Rc<Vec<KnownSite>> {
        let decoded = || Rc::new(self.all(&Kind::Site).iter().filter_map(KnownSite::of).collect());
        self.caches.sites.get_or_init(decoded).clone()
    }

    /// How recent events and sites lie as seen from a position.
    pub(crate) fn outlook(&self, here: Option<(f64, f64)>) -> Rc<Outlook> {
        if let Some(known) = self.caches.outlook.borrow().as_ref().filter(|known| known.here == here) {
            return known.clone();
        }
        let outlook = Rc::new(self.looked_out(here));
        self.caches.outlook.replace(Some(outlook.clone()));
        outlook
    }

    fn looked_out(&self, here: Option<(f64, f64)>) -> Outlook {
        let recent = self.recent();
        let mut events: Vec<usize> = (0..recent.events.len()).collect();
        let far = |lately: &Lately| !lately.place.as_ref().is_some_and(|there| within_reach(here, there));
        // The sort is stable.
        events.sort_by_cached_key(|at| far(&recent.events[*at]));
        let sites = self.known_sites();
        let away = |site: &KnownSite| here.zip(site.point).map(|(here, point)| distance_rough_m(here, point));
        let away: Vec<f64> = sites.iter().map(|site| away(site).unwrap_or(f64::INFINITY)).collect();
        let mut order: Vec<usize> = (0..sites.len()).rev().collect();
        order.sort_by(|a, b| away[*a].total_cmp(&away[*b]));
        Outlook { here, events, sites: order }
    }
}

fn within_reach(here: Option<(f64, f64)>, there: &Place) -> bool {
    let Some(here) = here else { return false };
    let there = (there.latitude, there.longitude);
    let rough = distance_rough_m(here, there);
    let clear = (rough - REACH_M).abs() > REACH_M * ROUGH;
    if clear { rough < REACH_M } else { distance_m(here, there) <= REACH_M }
}
