//! A line of pitfall traps with its services, one of them empty, and a tent trap that is still out.

use crate::land::{Land, put_collectors};
use crate::scribe::{Scribe, Who};
use crate::walks::{content, fluid, method, put_number, vessel};
use record::container;
use record::event::{self, Place, When};
use record::{Id, Kind, trap};

/// Days of service; the line was set on the first.
const SERVICES: [u32; 4] = [12, 16, 20, 24];

/// Writes the traps.
pub fn survey(scribe: &mut Scribe, land: &Land) {
    let mut number = 401;
    for name in 1..=3_u32 {
        pitfall(scribe, land, name, &mut number);
    }
    tent(scribe, land, &mut number);
}

fn pitfall(scribe: &mut Scribe, land: &Land, name: u32, number: &mut u32) {
    let fluid_of = [("traps", "1"), ("fluid", "propylene glycol")];
    let set = format!("2026-06-12T11:{:02}", name * 10);
    let (trap, place) = set_trap(scribe, land, (1, &format!("P{name}"), "pitfall_trap", &fluid_of), &set);
    for (service, days) in (0..).zip(SERVICES.windows(2)) {
        let from = format!("2026-06-{:02}T11:{:02}", days[0], name * 10);
        let until = format!("2026-06-{:02}T11:{:02}", days[1], name * 10);
        // The second trap was found drowned at its second service.
        let empty = name == 2 && service == 1;
        let event = serviced(scribe, land, trap, &place, (&from, &until), |edit| {
            edit.put(&event::METHOD, &method("pitfall_trap", &fluid_of));
            if empty {
                edit.put(&event::NOTHING, &true).put(&event::NOTES, &"flooded, empty".to_owned());
            }
        });
        if !empty {
            let text = format!("IV26-{number:04}");
            *number += 1;
            let (first, second) = (scribe.id(&until), scribe.id(&until));
            let counts = [scribe.chance(30) as u32 + 3, scribe.chance(12) as u32 + 1];
            vessel(scribe, Who::Varga, &until, event, |edit| {
                put_number(edit, &text, land.numberings[0]);
                edit.put(&container::VESSEL, &"jar".to_owned()).put(&container::ORDER, &0);
                edit.put(&container::KEPT, &fluid("ethanol", "70")).put(&container::KILLED, &fluid("preservative", ""));
                edit.put_line(&container::CONTENTS, first, &content("Ground beetles", "Carabidae", 3, counts[0]));
                let beetles = content("Rove beetles", "Staphylinidae", 0, counts[1]);
                edit.put_line(&container::CONTENTS, second, &container::Content { order: 1, ..beetles });
            });
        }
    }
    scribe.change(Who::Varga, "2026-06-24T11:50", trap, |edit| {
        let out =
            When { from: set.clone(), until: Some("2026-06-24T11:50".into()), offset_minutes: Some(120), night: false };
        edit.put(&trap::OUT, &out).put(&trap::TAKEN_UP, &true);
    });
}

/// The tent trap at the swamp, emptied once and still standing.
fn tent(scribe: &mut Scribe, land: &Land, number: &mut u32) {
    let set = "2026-06-14T10:20";
    let (trap, place) = set_trap(scribe, land, (6, "M1", "malaise_trap", &[]), set);
    let until = "2026-06-21T10:40";
    let event = serviced(scribe, land, trap, &place, (set, until), |edit| {
        edit.put(&event::METHOD, &method("malaise_trap", &[]));
    });
    let text = format!("IV26-{number:04}");
    *number += 1;
    let line = scribe.id(until);
    vessel(scribe, Who::Varga, until, event, |edit| {
        put_number(edit, &text, land.numberings[0]);
        edit.put(&container::VESSEL, &"bag".to_owned()).put(&container::ORDER, &0);
        edit.put(&container::KEPT, &fluid("ethanol", "96")).put(&container::KILLED, &fluid("preservative", ""));
        let mixed = container::Content { count_kind: "uncounted".into(), count: None, ..content("mixed", "", 3, 1) };
        edit.put_line(&container::CONTENTS, line, &mixed);
    });
}

type Trap<'a> = (usize, &'a str, &'a str, &'a [(&'a str, &'a str)]);

fn set_trap(scribe: &mut Scribe, land: &Land, (site, name, code, particulars): Trap, set: &str) -> (Id, Place) {
    let site = &land.sites[site];
    let place = site.fix(scribe);
    let line = scribe.id(set);
    let trap = scribe.create(Who::Varga, set, Kind::Trap, |edit| {
        edit.put(&trap::NAME, &name.to_owned()).put(&trap::SITE, &site.id).put(&trap::PLACE, &place);
        edit.put(&trap::METHOD, &method(code, particulars))
            .put(&trap::DUE_DAYS, &if code == "malaise_trap" { 7 } else { 4 });
        edit.put(&trap::OUT, &When { from: set.to_owned(), offset_minutes: Some(120), ..When::default() });
        put_collectors(edit, &[(line, land.people[0])]);
    });
    (trap, place)
}

fn serviced(
    scribe: &mut Scribe,
    land: &Land,
    trap: Id,
    place: &Place,
    (from, until): (&str, &str),
    fill: impl FnOnce(&mut record::Edit),
) -> Id {
    let line = scribe.id(until);
    let site = scribe.get(trap).get(&trap::SITE);
    scribe.create(Who::Varga, until, Kind::Event, |edit| {
        let when =
            When { from: from.to_owned(), until: Some(until.to_owned()), offset_minutes: Some(120), night: false };
        edit.put(&event::CAUGHT, &when).put(&event::PLACE, place).put(&event::TRAP, &trap);
        edit.put_or_empty(&event::SITE, site.as_ref()).put(&event::PERMIT, &land.permit);
        put_collectors(edit, &[(line, land.people[0])]);
        fill(edit);
    })
}
