//! What a form offers while it is typed: most recent and nearest first.

use crate::book::Logbook;
use crate::form::{CatchForm, ContentForm, HostForm, PlaceForm, Source};
use crate::names::folded;
use crate::outlook::{KnownSite, REACH_M};
use crate::places::Fixes;
use crate::recent::Written;
use crate::view::Mark;
use record::{Id, Kind, permit, person};

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

/// What of a form decides what is offered.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Asked {
    here: Option<(f64, f64)>,
    site: String,
    thing: String,
    day: String,
}

impl Asked {
    fn of(form: &CatchForm) -> Self {
        Self {
            here: form.place.coordinates(),
            site: folded(&form.site),
            thing: folded(&form.host.thing),
            day: form.caught.day.clone(),
        }
    }
}

impl Logbook {
    /// What completes a form.
    pub fn offers(&self, form: &CatchForm) -> Offers {
        let asked = Asked::of(form);
        if let Some((_, offers)) = self.caches.offers.borrow().as_ref().filter(|(known, _)| *known == asked) {
            return offers.clone();
        }
        let offers = self.work_out_offers(&asked);
        self.caches.offers.replace(Some((asked, offers.clone())));
        offers
    }

    fn work_out_offers(&self, asked: &Asked) -> Offers {
        let recent = self.recent();
        let outlook = self.outlook(asked.here);
        let lately = || outlook.events.iter().map(|at| &recent.events[*at]);
        let hosts = lately().filter_map(|lately| lately.host.as_ref());
        let sites = self.known_sites();
        let of_form = sites.iter().find(|site| site.folded == asked.site);
        Offers {
            groups: distinct(lately().flat_map(|lately| &lately.groups)),
            sites: self.sites_offered(asked),
            site_distance_m: of_form.and_then(|site| site.distance_m(asked.here)),
            site_is_new: of_form.is_none() && !asked.site.is_empty(),
            hosts: distinct(hosts.filter(|host| host.folded.starts_with(&asked.thing))),
            persons: self.all(&Kind::Person).iter().filter_map(|record| record.get(&person::NAME)).collect(),
            permits: self.permits_offered(&asked.day),
            microhabitats: distinct(lately().filter_map(|lately| lately.microhabitat.as_ref())),
        }
    }

    fn sites_offered(&self, asked: &Asked) -> Vec<OfferedSite> {
        let sites = self.known_sites();
        let outlook = self.outlook(asked.here);
        let nearest = outlook.sites.iter().map(|at| &sites[*at]);
        let like = nearest.filter(|site| site.folded != asked.site && site.folded.contains(&asked.site));
        let offered = |site: &KnownSite| OfferedSite {
            id: site.id,
            name: site.name.clone(),
            distance_m: site.distance_m(asked.here),
        };
        like.take(OFFERED).map(offered).collect()
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
            let here = form.place.coordinates();
            let sites = self.known_sites();
            let nearest = self.outlook(here).sites.first().map(|at| &sites[*at]);
            let reached = nearest.filter(|site| site.distance_m(here).is_some_and(|distance| distance <= REACH_M));
            let has_point = |name: &str| sites.iter().any(|site| site.folded == folded(name) && site.point.is_some());
            match reached {
                Some(site) => form.site = site.name.clone(),
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

/// The first few of what was written, each once.
fn distinct<'a, T: Clone + 'a>(all: impl Iterator<Item = &'a Written<T>>) -> Vec<T> {
    let mut kept: Vec<&Written<T>> = Vec::new();
    for written in all {
        if !kept.iter().any(|known| known.folded == written.folded) {
            kept.push(written);
        }
        if kept.len() == OFFERED {
            break;
        }
    }
    kept.into_iter().map(|written| written.what.clone()).collect()
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
