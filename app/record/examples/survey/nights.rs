//! Five nights at the lamp, from dusk till after midnight.

use crate::land::{Land, put_collectors};
use crate::scribe::{Scribe, Who};
use crate::walks::{content, fluid, method, put_number, vessel};
use record::container;
use record::event::{self, When};
use record::{Id, Kind};

/// Day of June, site, when the lamp went on and off, how many vials.
const NIGHTS: [(u32, usize, &str, &str, u32); 5] = [
    (12, 1, "21:05", "01:30", 5),
    (15, 6, "21:15", "00:45", 4),
    (19, 0, "21:05", "02:10", 6),
    (22, 4, "21:20", "01:15", 5),
    (24, 7, "21:10", "23:50", 4),
];

const GROUPS: [(&str, &str); 5] = [
    ("Noctuids", "Noctuidae"),
    ("Geometers", "Geometridae"),
    ("Caddisflies", "Trichoptera"),
    ("Grass moths", "Crambidae"),
    ("Ichneumon wasps", "Ichneumonidae"),
];

/// Writes the nights. What came after midnight has an hour of its own.
pub fn survey(scribe: &mut Scribe, land: &Land) {
    let mut number = 301;
    for (day, site, on, off, vials) in NIGHTS {
        let at = format!("2026-06-{day:02}T{on}");
        let off_day = if off < "12:00" { day + 1 } else { day };
        let until = format!("2026-06-{off_day:02}T{off}");
        let event = lamp(scribe, land, site, &at, &until, (on, off));
        for vial in 0..vials {
            let hour = 22 + vial;
            let (own_day, own_hour) = if hour < 24 { (day, hour) } else { (day + 1, hour - 24) };
            let caught = format!("2026-06-{own_day:02}T{own_hour:02}:{:02}", scribe.chance(60));
            if caught > until {
                continue;
            }
            let (group, code) = GROUPS[(day + vial) as usize % GROUPS.len()];
            let line = scribe.id(&caught);
            let content = content(group, code, scribe.chance(4), scribe.chance(40) as u32 + 1);
            let text = format!("IV26-{number:04}");
            number += 1;
            vessel(scribe, Who::Varga, &caught.clone(), event, |edit| {
                put_number(edit, &text, land.numberings[0]);
                edit.put(&container::ORDER, &vial);
                edit.put(&container::CAUGHT, &When { from: caught, offset_minutes: Some(120), ..When::default() });
                edit.put(&container::KILLED, &fluid("ethyl_acetate", "")).put(&container::KEPT, &fluid("dry", ""));
                edit.put_line(&container::CONTENTS, line, &content);
            });
        }
    }
}

fn lamp(scribe: &mut Scribe, land: &Land, site: usize, at: &str, until: &str, (on, off): (&str, &str)) -> Id {
    let site = &land.sites[site];
    let place = site.fix(scribe);
    let lines: Vec<(Id, Id)> = [0, 2].into_iter().map(|who| (scribe.id(at), land.people[who])).collect();
    let event = scribe.create(Who::Varga, at, Kind::Event, |edit| {
        edit.put(&event::CAUGHT, &When { from: at.to_owned(), until: None, offset_minutes: Some(120), night: true });
        edit.put(&event::PLACE, &place).put(&event::SITE, &site.id).put(&event::ELEVATION, &site.elevation());
        edit.put(&event::METHOD, &method("light", &[("lamp", "LED, 20 W, white sheet"), ("lamp_on", on)]));
        edit.put(&event::OPEN, &true);
        put_collectors(edit, &lines);
    });
    scribe.change(Who::Varga, until, event, |edit| {
        let when = When { from: at.to_owned(), until: Some(until.to_owned()), offset_minutes: Some(120), night: true };
        edit.put(&event::CAUGHT, &when).put(&event::OPEN, &false);
        edit.put(
            &event::METHOD,
            &method("light", &[("lamp", "LED, 20 W, white sheet"), ("lamp_on", on), ("lamp_off", off)]),
        );
    });
    event
}
