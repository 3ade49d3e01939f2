//! The invented land: its sites, its people, how they number, the permit they hold.

use crate::scribe::{Scribe, Who};
use record::event::{COLLECTORS, Collector, Elevation, Place};
use record::{Edit, Id, Kind, numbering, permit, person, rules, site};

/// A site with its point.
pub struct Site {
    pub id: Id,
    pub name: &'static str,
    pub latitude: f64,
    pub longitude: f64,
    pub metres: f64,
}

/// What the survey refers to.
pub struct Land {
    pub sites: Vec<Site>,
    pub people: Vec<Id>,
    pub numberings: Vec<Id>,
    pub permit: Id,
}

type Written = (&'static str, &'static str, &'static str, &'static str, (f64, f64, f64));

/// Name, locality, offset, habitat, point and height.
const SITES: [Written; 8] = [
    ("Mill Meadow", "Tarn Abbot", "2 km NE", "hay meadow, not yet cut", (47.6138, 12.3043, 412.0)),
    ("Kestrel Wood", "Tarn Abbot", "3 km N", "oak and hornbeam, old coppice", (47.6247, 12.2986, 468.0)),
    ("Tarn Beck, gravel bar", "Tarn Abbot", "1.5 km E", "bare gravel, willow scrub", (47.6089, 12.3127, 395.0)),
    ("High Moor", "Sallow Head", "4 km SW", "blanket bog, dwarf shrubs", (47.5814, 12.2411, 1120.0)),
    ("Quarry floor", "Lower Cleve", "1 km S", "limestone, sparse thyme", (47.6392, 12.3518, 520.0)),
    ("Orchard Lane", "Lower Cleve", "at the chapel", "old apple trees, sheep", (47.6471, 12.3466, 447.0)),
    ("Alder Carr", "Tarn Abbot", "2.5 km SE", "alder swamp, sedges", (47.5962, 12.3205, 388.0)),
    ("Ridge path", "Sallow Head", "", "south-facing scree and scrub", (47.5703, 12.2594, 1340.0)),
];

/// Writes the land down.
pub fn survey(scribe: &mut Scribe) -> Land {
    let people: Vec<Id> = Who::ALL.into_iter().map(|who| person(scribe, who)).collect();
    let numberings = [("one", "IV26-", 4), ("letters", "DO26-", 2), ("engraved", "ST", 2)];
    let numberings = Who::ALL.into_iter().zip(numberings).map(|(who, (habit, prefix, width))| {
        scribe.create(who, "2026-06-11T18:05", Kind::Numbering, |edit| {
            edit.put(&numbering::PERSON, &people[who as usize]).put(&numbering::HABIT, &habit.to_owned());
            edit.put(&numbering::PREFIX, &prefix.to_owned()).put(&numbering::WIDTH, &width);
        })
    });
    let numberings = numberings.collect();
    let permit = scribe.create(Who::Varga, "2026-06-11T18:12", Kind::Permit, |edit| {
        edit.put(&permit::NUMBER, &"SNO 118/2026".to_owned());
        edit.put(&permit::AUTHORITY, &"Sallow Nature Office".to_owned());
        edit.put(&permit::FROM, &"2026-05-01".to_owned()).put(&permit::UNTIL, &"2026-09-30".to_owned());
        edit.put(&permit::AREA, &"Tarn Abbot and Sallow Head".to_owned());
    });
    scribe.create(Who::Varga, "2026-06-11T18:15", Kind::Rules, |edit| {
        let pinned = rules::Pinned {
            largest_pt: 5.0,
            least_pt: 3.5,
            pin: "3".into(),
            at: "middle".into(),
            ..Default::default()
        };
        edit.put(&rules::RADIUS_LIMIT, &100.0).put(&rules::PINNED, &pinned);
    });
    let sites = SITES.iter().map(|written| write_site(scribe, written, permit)).collect();
    Land { sites, people, numberings, permit }
}

fn person(scribe: &mut Scribe, who: Who) -> Id {
    scribe.create(who, "2026-06-11T18:00", Kind::Person, |edit| {
        edit.put(&person::NAME, &who.name().to_owned());
        if who == Who::Varga {
            edit.put(&person::SPELLINGS, &vec!["Ilka Varga".to_owned(), "Varga I.".to_owned()]);
        }
    })
}

fn write_site(scribe: &mut Scribe, written: &Written, permit: Id) -> Site {
    let (name, locality, offset, habitat, (latitude, longitude, metres)) = *written;
    let id = scribe.create(Who::Varga, "2026-06-11T19:20", Kind::Site, |edit| {
        edit.put(&site::NAME, &name.to_owned()).put(&site::COUNTRY, &"Orreland".to_owned());
        edit.put(&site::PROVINCE, &"Sallow".to_owned()).put(&site::LOCALITY, &locality.to_owned());
        edit.put(&site::HABITAT, &habitat.to_owned());
        if !offset.is_empty() {
            edit.put(&site::OFFSET, &offset.to_owned());
        }
        let point = Place {
            radius_m: Some(150.0),
            how: "typed".into(),
            datum: "WGS84".into(),
            latitude,
            longitude,
            ..Place::default()
        };
        edit.put(&site::PLACE, &point);
        if locality != "Lower Cleve" {
            edit.put(&site::PERMIT, &permit);
        }
    });
    Site { id, name, latitude, longitude, metres }
}

impl Site {
    /// A fix of a phone somewhere on the site.
    pub fn fix(&self, scribe: &mut Scribe) -> Place {
        let off = |scribe: &mut Scribe| (scribe.chance(200) as f64 - 100.0) * 1e-5;
        let rounded = |degrees: f64| (degrees * 1e6).round() / 1e6;
        Place {
            latitude: rounded(self.latitude + off(scribe)),
            longitude: rounded(self.longitude + off(scribe)),
            datum: "WGS84".into(),
            radius_m: Some(4.0 + scribe.chance(12) as f64),
            how: "device".into(),
            fixes: Some(6 + scribe.chance(20) as u32),
            seconds: Some(8 + scribe.chance(25) as u32),
            platform: Some("android".into()),
            typed: None,
        }
    }

    /// The height as a person typed it.
    pub fn elevation(&self) -> Elevation {
        Elevation {
            metres: self.metres,
            how: "typed".into(),
            typed: Some(format!("{} m", self.metres)),
            ..Elevation::default()
        }
    }
}

/// Writes the collectors of an event or a trap, in their order.
pub fn put_collectors(edit: &mut Edit, lines: &[(Id, Id)]) {
    for (order, (line, person)) in (0..).zip(lines) {
        edit.put_line(&COLLECTORS, *line, &Collector { person: *person, order });
    }
}
