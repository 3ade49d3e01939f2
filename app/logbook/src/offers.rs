//! What a form offers while it is typed: most recent and nearest first.

use crate::book::Logbook;
use crate::form::{CatchForm, ContentForm, HostForm, PlaceForm, Source};
use crate::names::{folded, same};
use crate::places::{Fixes, distance_m};
use crate::recent::Lately;
use crate::view::Mark;
use record::event::{self, Place};
use record::{Id, Kind, permit, person, site};

/// A site counts as within reach up to this distance from its point, metres.
const REACH_M: f64 = 1_000.0;

/// How many of each are offered.
const OFFERED: usize = 6;

/// A group of insects that was written before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfferedGroup {
    /// As it was written.
    pub text: String,
    /// Its code, where it is one of the list.
    pub code: String,
}

/// A site.
#[derive(Clone, Debug, PartialEq)]
pub struct OfferedSite {
    /// The record.
    pub id: Id,
    /// Its name.
    pub name: String,
    /// How far its point is, metres, where both positions are known.
    pub distance_m: Option<f64>,
}

/// A permit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfferedPermit {
    /// Its number.
    pub number: String,
    /// Its area in words.
    pub area: String,
    /// Its last day, ISO 8601; empty when not said.
    pub until: String,
}

/// What completes a form.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Offers {
    /// Groups.
    pub groups: Vec<OfferedGroup>,
    /// Sites whose name begins like what is typed, nearest first.
    pub sites: Vec<OfferedSite>,
    /// Distance of the form's position from the point of its site, metres.
    pub site_distance_m: Option<f64>,
    /// The form's site is new: saving makes it.
    pub site_is_new: bool,
    /// Hosts.
    pub hosts: Vec<HostForm>,
    /// Names of all persons.
    pub persons: Vec<String>,
    /// Permits that hold on the form's day.
    pub permits: Vec<OfferedPermit>,
    /// Microhabitats.
    pub microhabitats: Vec<String>,
}

impl Logbook {
    /// What completes a form.
    pub fn offers(&self, form: &CatchForm) -> Offers {
        let recent = self.recent();
        let here = form.place.coordinates();
        let mut nearest: Vec<&Lately> = recent.events.iter().collect();
        // Near ones first, in their own order of time; the sort is stable.
        nearest.sort_by_key(|lately| !near(here, lately.place.as_ref()));
        let contents = nearest.iter().flat_map(|lately| lately.contents());
        let groups =
            distinct(contents.map(|content| OfferedGroup { text: content.group, code: content.group_code }), |a, b| {
                same(&a.text, &b.text)
            });
        let hosts = nearest.iter().filter_map(|lately| lately.host()).map(|host| HostForm {
            thing: host.thing,
            what: host.what,
            ..HostForm::default()
        });
        let hosts = hosts.filter(|host| folded(&host.thing).starts_with(&folded(&form.host.thing)));
        let microhabitats = nearest.iter().filter_map(|lately| lately.event.get(&event::MICROHABITAT));
        let of_form = self.site_named(&form.site);
        let point = of_form.as_ref().and_then(|site| site.get(&site::PLACE));
        Offers {
            groups,
            sites: self.sites_offered(form),
            site_distance_m: here.zip(point).map(|(here, point)| distance_m(here, (point.latitude, point.longitude))),
            site_is_new: of_form.is_none() && !form.site.trim().is_empty(),
            hosts: distinct(hosts, |a, b| same(&a.thing, &b.thing)),
            persons: self.all(&Kind::Person).iter().filter_map(|record| record.get(&person::NAME)).collect(),
            permits: self.permits_offered(&form.caught.day),
            microhabitats: distinct(microhabitats, |a, b| same(a, b)),
        }
    }

    fn sites_offered(&self, form: &CatchForm) -> Vec<OfferedSite> {
        let typed = folded(&form.site);
        let mut sites: Vec<OfferedSite> = self.sites_by_distance(form.place.coordinates());
        sites.retain(|site| {
            let name = folded(&site.name);
            name != typed && name.contains(&typed)
        });
        sites.truncate(OFFERED);
        sites
    }

    /// All sites: those whose distance is known first, the nearest first; then the newest first.
    fn sites_by_distance(&self, here: Option<(f64, f64)>) -> Vec<OfferedSite> {
        let offered = |site: &record::Record| {
            let point: Option<Place> = site.get(&site::PLACE);
            let distance_m = here.zip(point).map(|(here, point)| distance_m(here, (point.latitude, point.longitude)));
            Some(OfferedSite { id: site.id, name: site.get(&site::NAME)?, distance_m })
        };
        let mut sites: Vec<OfferedSite> = self.all(&Kind::Site).iter().rev().filter_map(offered).collect();
        sites.sort_by(|a, b| a.distance_m.unwrap_or(f64::INFINITY).total_cmp(&b.distance_m.unwrap_or(f64::INFINITY)));
        sites
    }

    fn permits_offered(&self, day: &str) -> Vec<OfferedPermit> {
        let offered = |record: &record::Record| {
            let until: String = record.get(&permit::UNTIL).unwrap_or_default();
            let from: String = record.get(&permit::FROM).unwrap_or_default();
            let holds = day.is_empty() || from.as_str() <= day && (until.is_empty() || day <= until.as_str());
            let number: String = record.get(&permit::NUMBER)?;
            holds.then(|| OfferedPermit { number, area: record.get(&permit::AREA).unwrap_or_default(), until })
        };
        self.all(&Kind::Permit).iter().filter_map(offered).collect()
    }

    /// Lets a form follow the device: its position, as long as it says "here"; and with it the site, as long as no person
    /// has chosen one: the nearest within reach, else none.
    pub fn follow(&self, form: &mut CatchForm, fixes: &Fixes) {
        if form.place.source != Source::Here {
            return;
        }
        let Some(best) = fixes.combined() else { return };
        let radii = std::mem::take(&mut form.place.radii);
        form.place = PlaceForm { radii: with_radius(radii, best.radius_m), ..best.into_form() };
        if !form.site_given {
            let nearest = self.sites_by_distance(form.place.coordinates()).into_iter().next();
            let reached = nearest.filter(|site| site.distance_m.is_some_and(|distance| distance <= REACH_M));
            let has_point = |name: &str| self.site_named(name).is_some_and(|site| !site.is_empty(&site::PLACE));
            match reached {
                Some(site) => form.site = site.name,
                None if has_point(&form.site) => form.site.clear(),
                None => {}
            }
        }
    }

    /// What is still missing from a form, as the event would be marked once saved.
    pub fn missing(&self, form: &CatchForm) -> Vec<Mark> {
        use crate::form::Row;
        let unknown = |row: Row| form.unknown.contains(&row);
        let there = form.collectors.iter().any(|collector| collector.there) || !form.collector_more.trim().is_empty();
        let radius =
            crate::values::read_number(&form.place.radius).filter(|radius| *radius > self.rules().radius_limit_m);
        let waiting =
            form.containers.iter().filter(|container| container.first.trim().is_empty() && !container.released);
        let unnumbered: usize = waiting.map(|container| container.unnumbered.trim().parse().unwrap_or(1)).sum();
        let host_asked = !form.host.relation.is_empty() || matches!(form.method.as_str(), "beating" | "rearing");
        let caught = !form.nothing && !form.open && form.containers.is_empty();
        let marks = [
            (form.place.coordinates().is_none() && !unknown(Row::Place), Mark::Coordinates),
            (form.site.trim().is_empty(), Mark::Site),
            (form.caught.day.trim().is_empty() && !unknown(Row::Caught), Mark::Caught),
            (form.method.is_empty() && form.method_text.trim().is_empty() && !unknown(Row::Method), Mark::Method),
            (form.host.is_empty() && host_asked && !unknown(Row::Host), Mark::Host),
            (!there, Mark::Collector),
            (form.elevation.trim().is_empty() && !unknown(Row::Elevation), Mark::Elevation),
            (unnumbered > 0 && !form.nothing && self.numbers_are_given(), Mark::Unnumbered(unnumbered)),
            (caught, Mark::Catch),
        ];
        let radius = radius.map(|radius| Mark::Radius(radius, self.rules().radius_limit_m));
        marks.into_iter().filter(|(missing, _)| *missing).map(|(_, mark)| mark).chain(radius).collect()
    }
}

impl CatchForm {
    /// Writes an offered group into the first container without contents; counting comes later.
    pub fn take_group(&mut self, group: &OfferedGroup) {
        let line = ContentForm {
            group: group.text.clone(),
            group_code: group.code.clone(),
            count_kind: "uncounted".to_owned(),
            ..ContentForm::default()
        };
        let empty = |container: &&mut crate::form::ContainerForm| {
            container.contents.iter().all(|line| line.group.trim().is_empty())
        };
        if let Some(container) = self.containers.iter_mut().find(empty) {
            container.contents = vec![line];
            self.nothing = false;
        } else if let Some(container) = self.containers.last_mut() {
            container.contents.push(line);
        }
    }
}

fn near(here: Option<(f64, f64)>, there: Option<&Place>) -> bool {
    here.zip(there).is_some_and(|(here, there)| distance_m(here, (there.latitude, there.longitude)) <= REACH_M)
}

fn distinct<T>(items: impl Iterator<Item = T>, same: impl Fn(&T, &T) -> bool) -> Vec<T> {
    let mut kept: Vec<T> = Vec::new();
    for item in items {
        if kept.len() < OFFERED && !kept.iter().any(|known| same(known, &item)) {
            kept.push(item);
        }
    }
    kept
}

/// The first radius, one in between and the present one, for the drawing.
fn with_radius(mut radii: Vec<f64>, radius: f64) -> Vec<f64> {
    if radii.last().is_none_or(|last| radius < last * 0.8) {
        radii.push(radius);
    }
    if radii.len() > 3 {
        radii.remove(1);
    }
    radii
}
