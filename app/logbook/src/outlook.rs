//! Recent events and sites as seen from one position: worked out once for it, since a form asks at every key.

use crate::book::Logbook;
use crate::names::folded;
use crate::places::{distance_m, distance_rough_m};
use crate::recent::Lately;
use record::event::Place;
use record::order::sort_by;
use record::{Id, Kind, Record, site};
use std::rc::Rc;

/// What counts as within reach, metres.
pub(crate) const REACH_M: f64 = 1_000.0;

/// How far a rough distance is off at most, as a part of it; with room to spare.
const ROUGH: f64 = 0.02;

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
        let near = |lately: &Lately| lately.place.as_ref().is_some_and(|there| within_reach(here, there));
        let (mut events, away): (Vec<usize>, Vec<usize>) =
            (0..recent.events.len()).partition(|at| near(&recent.events[*at]));
        events.extend(away);
        let sites = self.known_sites();
        let away = |site: &KnownSite| here.zip(site.point).map(|(here, point)| distance_rough_m(here, point));
        let away: Vec<f64> = sites.iter().map(|site| away(site).unwrap_or(f64::INFINITY)).collect();
        let mut order: Vec<usize> = (0..sites.len()).rev().collect();
        sort_by(&mut order, |a, b| away[*a].total_cmp(&away[*b]));
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

#[cfg(test)]
mod tests {
    use crate::form::{CatchForm, PlaceForm};
    use crate::invented::Table;
    use record::event::{self, Place};
    use record::{Edit, Field, Id, site};

    const HERE: (f64, f64) = (47.6138, 12.3043);

    fn put_at(edit: &mut Edit, field: &Field<Place>, north_m: f64) {
        let latitude = HERE.0 + north_m / 111_180.0;
        edit.put(field, &Place { latitude, longitude: HERE.1, how: "typed".to_owned(), ..Place::default() });
    }

    fn site(table: &mut Table, name: &str, north_m: f64) {
        let id = table.site(name);
        let record = table.book.record(id).expect("saved");
        table.change(&record, |edit| put_at(edit, &site::PLACE, north_m));
    }

    fn caught(table: &mut Table, person: Id, group: &str, north_m: f64) {
        let event = table.event("2027-06-19T14:32", person, |edit| put_at(edit, &event::PLACE, north_m));
        table.vial(event, "", group, None);
    }

    fn form(here: Option<(f64, f64)>, site: &str) -> CatchForm {
        let (latitude, longitude) = here.unzip();
        let place = PlaceForm { latitude, longitude, ..PlaceForm::default() };
        CatchForm { place, site: site.to_owned(), ..CatchForm::default() }
    }

    fn names(table: &Table, form: &CatchForm) -> Vec<String> {
        table.book.offers(form).sites.into_iter().map(|site| site.name).collect()
    }

    #[test]
    fn sites_stand_nearest_first_and_newest_first_where_no_position_is_known() {
        let mut table = Table::new();
        site(&mut table, "Far Wood", 9_000.0);
        site(&mut table, "Near Wood", 40.0);
        table.site("Wood without a point");
        assert_eq!(names(&table, &form(Some(HERE), "wood")), ["Near Wood", "Far Wood", "Wood without a point"]);
        assert_eq!(names(&table, &form(None, "")), ["Wood without a point", "Near Wood", "Far Wood"]);
        let offers = table.book.offers(&form(Some(HERE), "near  WOOD"));
        assert!(offers.sites.is_empty() && !offers.site_is_new);
        assert!((offers.site_distance_m.expect("both are known") - 40.0).abs() < 0.5);
    }

    #[test]
    fn groups_caught_within_reach_come_before_later_ones_from_afar() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        for (group, north_m) in [("Beetles", 995.0), ("Flies", 1_005.0), ("Wasps", 300.0), ("Moths", 50_000.0)] {
            caught(&mut table, varga, group, north_m);
        }
        let groups = |here| table.book.offers(&form(here, "")).groups.into_iter().map(|group| group.text);
        assert_eq!(groups(Some(HERE)).collect::<Vec<_>>(), ["Wasps", "Beetles", "Moths", "Flies"]);
        assert_eq!(groups(None).collect::<Vec<_>>(), ["Moths", "Wasps", "Flies", "Beetles"]);
    }

    #[test]
    fn what_is_offered_follows_a_save() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        assert!(table.book.offers(&form(None, "")).groups.is_empty());
        caught(&mut table, varga, "Beetles", 0.0);
        assert_eq!(table.book.offers(&form(None, "")).groups[0].text, "Beetles");
    }
}
