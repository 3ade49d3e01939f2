//! Two weeks of walks by day: nets, sweeping, beating, whatever was at hand.

use crate::land::{Land, put_collectors};
use crate::scribe::{Scribe, Who};
use record::container::{self, Content, Fluid, Number};
use record::event::{self, Host, Method, When};
use record::{Edit, Id, Kind};

/// First and last day of June 2026.
pub const DAYS: std::ops::RangeInclusive<u32> = 12..=25;

type HostWritten = (&'static str, &'static str, &'static str, &'static str);

/// Method, its particulars, host (relation, thing, what, part), groups.
struct Walk {
    method: &'static str,
    particulars: &'static [(&'static str, &'static str)],
    host: Option<HostWritten>,
    groups: &'static [(&'static str, &'static str)],
}

const WALKS: [Walk; 8] = [
    Walk {
        method: "hand_net",
        particulars: &[("minutes", "30")],
        host: Some(("flower", "Cirsium arvense", "plant", "flower")),
        groups: &[("Hover flies", "Syrphidae"), ("Bees", "Anthophila"), ("Butterflies", "Rhopalocera")],
    },
    Walk {
        method: "sweeping",
        particulars: &[("strokes", "50")],
        host: Some(("swept", "Urtica dioica", "plant", "")),
        groups: &[
            ("Land and water bugs", "Heteroptera"),
            ("Weevils", "Curculionidae"),
            ("Leaf beetles", "Chrysomelidae"),
            ("Leafhoppers", "Cicadellidae"),
        ],
    },
    Walk {
        method: "beating",
        particulars: &[("minutes", "20")],
        host: Some(("beaten", "Quercus robur", "plant", "branches")),
        groups: &[
            ("Longhorn beetles", "Cerambycidae"),
            ("Bark lice and lice", "Psocodea"),
            ("Land and water bugs", "Heteroptera"),
        ],
    },
    Walk {
        method: "by_hand",
        particulars: &[("minutes", "15")],
        host: Some(("on", "cattle dung", "dung", "")),
        groups: &[("Scarabs", "Scarabaeidae"), ("Rove beetles", "Staphylinidae")],
    },
    Walk {
        method: "aquatic_net",
        particulars: &[("mesh_mm", "1"), ("minutes", "20")],
        host: None,
        groups: &[("Mayflies", "Ephemeroptera"), ("Diving beetles", "Dytiscidae"), ("Stoneflies", "Plecoptera")],
    },
    Walk {
        method: "hand_net",
        particulars: &[("minutes", "45")],
        host: Some(("flower", "Heracleum sphondylium", "plant", "umbel")),
        groups: &[
            ("Longhorn beetles", "Cerambycidae"),
            ("Ichneumon wasps", "Ichneumonidae"),
            ("Flies", "Diptera"),
            ("Soldier beetles", "Cantharidae"),
        ],
    },
    Walk {
        method: "sifting",
        particulars: &[("litres", "5"), ("mesh_mm", "8")],
        host: Some(("on", "beech stump", "wood", "under bark")),
        groups: &[("Ground beetles", "Carabidae"), ("Rove beetles", "Staphylinidae"), ("Ants", "Formicidae")],
    },
    Walk {
        method: "aspirator",
        particulars: &[("minutes", "25")],
        host: Some(("feeding", "bracket fungus", "fungus", "")),
        groups: &[("Beetles", "Coleoptera"), ("Vinegar flies", "Drosophilidae")],
    },
];

/// Writes the walks: Varga three a day, Okoro two every other day.
pub fn survey(scribe: &mut Scribe, land: &Land) {
    let mut next = 101;
    let mut station = 11;
    for day in DAYS {
        for (turn, hour) in [8, 10, 14].into_iter().enumerate() {
            let number = (day - 12) as usize * 3 + turn;
            walk(scribe, land, Who::Varga, (day, hour, number), &mut |place, count| {
                let _ = (place, count);
                next += 1;
                format!("IV26-{:04}", next - 1)
            });
        }
        if day % 2 == 0 {
            for (turn, hour) in [9, 16].into_iter().enumerate() {
                let number = (day as usize) * 5 + turn * 3 + 1;
                walk(scribe, land, Who::Okoro, (day, hour, number), &mut |place, _| {
                    let letter = char::from(b'a' + place as u8);
                    format!("DO26-{station:02}{letter}")
                });
                station += 1;
            }
        }
    }
}

/// One walk on a day, at an hour, the so manieth.
fn walk(
    scribe: &mut Scribe,
    land: &Land,
    who: Who,
    (day, hour, number): (u32, u32, usize),
    numbered: &mut dyn FnMut(usize, usize) -> String,
) {
    let walk = &WALKS[number % WALKS.len()];
    let site = &land.sites[site_of(walk.method, number)];
    let minute = scribe.chance(50) + 2;
    let at = format!("2026-06-{day:02}T{hour:02}:{minute:02}");
    let place = site.fix(scribe);
    let lines: Vec<(Id, Id)> =
        companions(who, number).iter().map(|who| (scribe.id(&at), land.people[*who as usize])).collect();
    let event = scribe.create(who, &at, Kind::Event, |edit| {
        edit.put(&event::CAUGHT, &When { from: at.clone(), offset_minutes: Some(120), ..When::default() });
        edit.put(&event::PLACE, &place)
            .put(&event::SITE, &site.id)
            .put(&event::METHOD, &method(walk.method, walk.particulars));
        if number % 3 != 1 {
            edit.put(&event::ELEVATION, &site.elevation());
        }
        if let Some(host) = walk.host {
            edit.put(&event::HOST, &host_of(host));
        }
        if site.name != "Quarry floor" && site.name != "Orchard Lane" {
            edit.put(&event::PERMIT, &land.permit);
        }
        if who == Who::Okoro {
            edit.put(&event::STATION, &format!("DO26-{}", day - 1 + u32::from(hour > 12)));
        }
        if let Some(weather) =
            ["sunny, 21 °C", "cloudy, wind 3", "", "after rain, 16 °C"].get(number % 4).filter(|text| !text.is_empty())
        {
            edit.put(&event::WEATHER, &(*weather).to_owned());
        }
        put_collectors(edit, &lines);
    });
    let count = 2 + (number + day as usize) % 3 + usize::from(who == Who::Varga && number % 2 == 0);
    for place in 0..count {
        let text = numbered(place, count);
        let (group, code) = walk.groups[place % walk.groups.len()];
        let kind = scribe.chance(4);
        let line = scribe.id(&at);
        let content = content(group, code, kind, scribe.chance(24) as u32 + 1);
        vessel(scribe, who, &at, event, |edit| {
            put_number(edit, &text, land.numberings[who as usize]);
            edit.put(&container::ORDER, &(place as u32));
            edit.put_line(&container::CONTENTS, line, &content);
            preserved(edit, walk.method, group);
        });
    }
}

/// Water is netted where there is water; all else goes round the sites.
fn site_of(method: &str, number: usize) -> usize {
    match method {
        "aquatic_net" => [2, 6][number % 2],
        "beating" | "sifting" => [1, 5, 6][number % 3],
        _ => (number * 5 + number / 8) % 8,
    }
}

fn companions(who: Who, number: usize) -> Vec<Who> {
    match (who, number % 5) {
        (Who::Varga, 0) => vec![Who::Varga, Who::Thorne],
        (Who::Varga, 3) => vec![Who::Varga, Who::Okoro],
        (who, _) => vec![who],
    }
}

/// A method with its particulars.
pub fn method(code: &str, particulars: &[(&str, &str)]) -> Method {
    let particulars = particulars.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect();
    Method { code: code.into(), text: String::new(), particulars }
}

fn host_of((relation, thing, what, part): HostWritten) -> Host {
    Host { relation: relation.into(), thing: thing.into(), what: what.into(), part: part.into(), ..Host::default() }
}

/// One line of contents; `kind` says how it was counted.
pub fn content(group: &str, code: &str, kind: u64, count: u32) -> Content {
    let (count_kind, count) = match kind {
        0 => ("about", Some(count.div_ceil(5) * 5)),
        1 if count > 12 => ("least", Some(count)),
        2 if count > 20 => ("uncounted", None),
        _ => ("exact", Some(count.min(9))),
    };
    let sex = ["", "", "female", "male", "both"][count.unwrap_or(0) as usize % 5];
    Content {
        group: group.into(),
        group_code: code.into(),
        sex: sex.into(),
        stage: "adult".into(),
        count_kind: count_kind.into(),
        count,
        ..Content::default()
    }
}

/// A container of an event.
pub fn vessel(scribe: &mut Scribe, who: Who, at: &str, event: Id, fill: impl FnOnce(&mut Edit)) -> Id {
    scribe.create(who, at, Kind::Container, |edit| {
        edit.put(&container::EVENT, &event).put(&container::VESSEL, &"vial".to_owned());
        fill(edit);
    })
}

/// Its number.
pub fn put_number(edit: &mut Edit, text: &str, numbering: Id) {
    edit.put(&container::NUMBER, &Number { text: text.to_owned(), numbering: Some(numbering) });
}

/// A fluid or another means by code.
pub fn fluid(code: &str, strength: &str) -> Fluid {
    Fluid { code: code.into(), text: String::new(), strength: strength.into() }
}

/// Butterflies go into envelopes, bees and the like are killed dry, most go into ethanol.
fn preserved(edit: &mut Edit, method: &str, group: &str) {
    match (group, method) {
        ("Butterflies", _) => {
            edit.put(&container::VESSEL, &"envelope".to_owned());
            edit.put(&container::KILLED, &fluid("cold", "")).put(&container::KEPT, &fluid("papered", ""));
        }
        (_, "hand_net") => {
            edit.put(&container::KILLED, &fluid("ethyl_acetate", "")).put(&container::KEPT, &fluid("dry", ""));
        }
        _ => {
            edit.put(&container::KILLED, &fluid("preservative", "")).put(&container::KEPT, &fluid("ethanol", "70"));
        }
    }
}
