//! What makes a survey real: gaps, a number given twice, a rearing, things seen and let go, people who disagree.

use crate::land::{Land, put_collectors};
use crate::scribe::{Scribe, Who};
use crate::walks::{content, fluid, method, put_number, vessel};
use record::container::{self, Content, Link};
use record::event::{self, Host, Place, When};
use record::field::DELETED;
use record::{Edit, Id, Kind, printing, step};

/// Writes them.
pub fn survey(scribe: &mut Scribe, land: &Land) {
    gaps(scribe, land);
    twice(scribe, land);
    rearing(scribe, land);
    links(scribe, land);
    nothing(scribe, land);
    deleted(scribe, land);
    disagreement(scribe);
    bench(scribe, land);
}

/// An event of Thorne, who numbers with engraved vials.
fn of_thorne(scribe: &mut Scribe, land: &Land, caught: &str, entered: &str, fill: impl FnOnce(&mut Edit)) -> Id {
    let line = scribe.id(entered);
    scribe.create(Who::Thorne, entered, Kind::Event, |edit| {
        edit.put(&event::CAUGHT, &When { from: caught.to_owned(), ..When::default() });
        put_collectors(edit, &[(line, land.people[2])]);
        fill(edit);
    })
}

fn vials(scribe: &mut Scribe, land: &Land, event: Id, at: &str, texts: &[&str], group: (&str, &str)) -> Vec<Id> {
    let mut ids = Vec::new();
    for (order, text) in (0..).zip(texts) {
        let line = scribe.id(at);
        let count = scribe.chance(9) as u32 + 1;
        ids.push(vessel(scribe, Who::Thorne, at, event, |edit| {
            if !text.is_empty() {
                put_number(edit, text, land.numberings[2]);
            }
            edit.put(&container::ORDER, &order).put(&container::KEPT, &fluid("ethanol", "70"));
            edit.put_line(&container::CONTENTS, line, &content(group.0, group.1, 3, count));
        }));
    }
    ids
}

/// Written up in the evening: no coordinates, a vague position, no hour, vials without a number, a host not named.
fn gaps(scribe: &mut Scribe, land: &Land) {
    let evening = "2026-06-17T20:40";
    let event = of_thorne(scribe, land, "2026-06-17", evening, |edit| {
        edit.put(&event::SITE, &land.sites[3].id).put(&event::METHOD, &method("hand_net", &[]));
        edit.put(&event::NOTES, &"written up at camp, phone was flat".to_owned());
    });
    vials(scribe, land, event, evening, &["ST04", "ST11", ""], ("Dragonflies and damselflies", "Odonata"));
    let event = of_thorne(scribe, land, "2026-06-18", "2026-06-18T21:05", |edit| {
        let site = &land.sites[7];
        let vague = Place {
            latitude: site.latitude,
            longitude: site.longitude,
            datum: "WGS84".into(),
            radius_m: Some(1200.0),
            how: "typed".into(),
            typed: Some("ridge between the two huts".into()),
            ..Place::default()
        };
        edit.put(&event::PLACE, &vague).put(&event::SITE, &site.id).put(&event::METHOD, &method("by_hand", &[]));
        edit.put_unknown(&event::ELEVATION);
    });
    vials(scribe, land, event, "2026-06-18T21:05", &["ST07", "", ""], ("Ground beetles", "Carabidae"));
    let event = of_thorne(scribe, land, "2026-06-21T10:15", "2026-06-21T10:20", |edit| {
        edit.put(&event::METHOD, &method("beating", &[("minutes", "20")])).put(&event::SITE, &land.sites[5].id);
        edit.put(&event::HOST, &Host { relation: "beaten".into(), ..Host::default() });
    });
    vials(scribe, land, event, "2026-06-21T10:20", &["ST02", "ST09", ""], ("Weevils", "Curculionidae"));
    // The engraved vial goes round: emptied, and used again for something else.
    let event = of_thorne(scribe, land, "2026-06-25T09:10", "2026-06-25T09:15", |edit| {
        let place = Place {
            latitude: 47.61401,
            longitude: 12.30377,
            datum: "WGS84".into(),
            radius_m: Some(6.0),
            how: "device".into(),
            platform: Some("ios".into()),
            ..Place::default()
        };
        edit.put(&event::PLACE, &place)
            .put(&event::SITE, &land.sites[0].id)
            .put(&event::METHOD, &method("sweeping", &[("strokes", "100")]));
    });
    vials(scribe, land, event, "2026-06-25T09:15", &["ST04", "ST15"], ("Grasshoppers and crickets", "Orthoptera"));
}

fn with_number(scribe: &Scribe, text: &str) -> (Id, Id) {
    let numbered = |record: &record::Record| record.get(&container::NUMBER).is_some_and(|number| number.text == text);
    let found = scribe.records().into_iter().find(numbered).expect("the number was given");
    (found.id, found.get(&container::EVENT).expect("a container has an event"))
}

/// Varga wrote 0152 on a second vial, three days later.
fn twice(scribe: &mut Scribe, land: &Land) {
    let (vial, _) = with_number(scribe, "IV26-0160");
    scribe.change(Who::Varga, "2026-06-19T20:15", vial, |edit| put_number(edit, "IV26-0152", land.numberings[0]));
}

/// Mines collected alive; what hatched went into a vial of its own, with the day on which it did.
fn rearing(scribe: &mut Scribe, land: &Land) {
    let at = "2026-06-13T16:25";
    let site = &land.sites[6];
    let (place, line, mines, hatched) = (site.fix(scribe), scribe.id(at), scribe.id(at), scribe.id("2026-06-24T08:30"));
    let host = Host {
        relation: "mine_or_gall".into(),
        thing: "Alnus glutinosa".into(),
        what: "plant".into(),
        part: "leaf".into(),
        voucher: "SV 214".into(),
        named_by: "S. Thorne".into(),
    };
    let event = scribe.create(Who::Varga, at, Kind::Event, |edit| {
        edit.put(&event::CAUGHT, &When { from: at.to_owned(), offset_minutes: Some(120), ..When::default() });
        edit.put(&event::PLACE, &place).put(&event::SITE, &site.id).put(&event::METHOD, &method("rearing", &[]));
        edit.put(&event::HOST, &host).put(&event::ELEVATION, &site.elevation());
        put_collectors(edit, &[(line, land.people[0])]);
    });
    let alive = vessel(scribe, Who::Varga, at, event, |edit| {
        edit.put(&container::VESSEL, &"jar".to_owned()).put(&container::ALIVE, &true).put(&container::ORDER, &0);
        put_number(edit, "IV26-0501", land.numberings[0]);
        let larvae = Content { stage: "larva".into(), sex: String::new(), ..content("Leaf-mining moths", "", 0, 18) };
        edit.put_line(&container::CONTENTS, mines, &larvae);
    });
    vessel(scribe, Who::Varga, "2026-06-24T08:30", event, |edit| {
        put_number(edit, "IV26-0502", land.numberings[0]);
        edit.put(&container::ORDER, &1).put(&container::SORTED_FROM, &alive);
        edit.put(&container::HOST, &Host { relation: "reared".into(), ..host.clone() });
        edit.put(&container::NOTES, &"pupated 17.vi., emerged 23. and 24.vi.2026".to_owned());
        edit.put(&container::KILLED, &fluid("cold", "")).put(&container::KEPT, &fluid("dry", ""));
        edit.put_line(&container::CONTENTS, hatched, &content("Leaf-mining moths", "", 3, 7));
    });
}

/// A pair, a wasp with its prey, and a butterfly that was let go.
fn links(scribe: &mut Scribe, land: &Land) {
    let at = "2026-06-20T13:05";
    let event = of_thorne(scribe, land, at, at, |edit| {
        let place = Place {
            latitude: 47.639021,
            longitude: 12.352204,
            datum: "WGS84".into(),
            radius_m: Some(5.0),
            how: "device".into(),
            platform: Some("ios".into()),
            ..Place::default()
        };
        edit.put(&event::PLACE, &place)
            .put(&event::SITE, &land.sites[4].id)
            .put(&event::METHOD, &method("hand_net", &[("minutes", "40")]));
    });
    let ids =
        vials(scribe, land, event, at, &["ST01", "ST03", "ST05", "ST06", ""], ("Thread-waisted wasps", "Sphecidae"));
    for (from, to, relation) in [(0, 1, "pair"), (2, 3, "prey_of")] {
        let line = scribe.id(at);
        let link = Link { to: ids[to], relation: relation.to_owned() };
        scribe.change(Who::Thorne, "2026-06-20T13:12", ids[from], |edit| {
            edit.put_line(&container::LINKS, line, &link);
        });
    }
    scribe.change(Who::Thorne, "2026-06-20T13:14", ids[4], |edit| {
        edit.put(&container::VESSEL, &"none".to_owned()).put(&container::RELEASED, &true);
        edit.put_or_empty(&container::KEPT, None).put(&container::NOTES, &"Papilio, seen and let go".to_owned());
    });
}

/// A result without a catch.
fn nothing(scribe: &mut Scribe, land: &Land) {
    let at = "2026-06-16T07:30";
    let (line, place) = (scribe.id(at), land.sites[2].fix(scribe));
    scribe.create(Who::Varga, at, Kind::Event, |edit| {
        edit.put(&event::CAUGHT, &When { from: at.to_owned(), offset_minutes: Some(120), ..When::default() });
        edit.put(&event::PLACE, &place).put(&event::SITE, &land.sites[2].id).put(&event::NOTHING, &true);
        edit.put(&event::METHOD, &method("sweeping", &[("strokes", "50")]))
            .put(&event::WEATHER, &"drizzle, 9 °C".to_owned());
        put_collectors(edit, &[(line, land.people[0])]);
    });
}

/// An event that was begun by mistake.
fn deleted(scribe: &mut Scribe, land: &Land) {
    let event = of_thorne(scribe, land, "2026-06-18T12:00", "2026-06-18T12:01", |edit| {
        edit.put(&event::SITE, &land.sites[1].id);
    });
    scribe.change(Who::Thorne, "2026-06-18T12:03", event, |edit| {
        edit.put(&DELETED, &true);
    });
}

/// Two people noted different things about the same catch and did not see each other's note.
fn disagreement(scribe: &mut Scribe) {
    let (_, event) = with_number(scribe, "IV26-0152");
    let shown = scribe.get(event);
    scribe.change_unseen(Who::Varga, "2026-06-15T19:30", &shown, |edit| {
        edit.put(&event::NOTES, &"north end, by the fallen oak".to_owned());
    });
    scribe.change_unseen(Who::Okoro, "2026-06-15T20:10", &shown, |edit| {
        edit.put(&event::NOTES, &"south end, by the gate".to_owned());
    });
}

/// The first vials have been to the bench.
fn bench(scribe: &mut Scribe, land: &Land) {
    for number in 101..=106 {
        let (vial, _) = with_number(scribe, &format!("IV26-{number:04}"));
        let done = |deed: &str, hour: u32| step::Done {
            deed: deed.into(),
            count: 3,
            at: format!("2026-06-25T{hour}:{:02}:00+02:00", number - 100),
        };
        for (deed, hour) in [("pinned", 19), ("labelled", 20)] {
            if deed == "labelled" && number > 103 {
                continue;
            }
            scribe.create(Who::Varga, &format!("2026-06-25T{hour}:{:02}", number - 100), Kind::Step, |edit| {
                edit.put(&step::OF, &vial).put(&step::DONE, &done(deed, hour)).put(&step::BY, &land.people[0]);
            });
        }
    }
    let (vial, _) = with_number(scribe, "IV26-0101");
    scribe.create(Who::Varga, "2026-06-25T20:00", Kind::Printing, |edit| {
        let lines =
            ["ORRELAND: Sallow", "Tarn Abbot, Mill Meadow", "12.vi.2026, leg. I. Varga"].map(str::to_owned).to_vec();
        let printed =
            printing::Printed { label: "collection".into(), lines, copies: 5, at: "2026-06-25T20:00:00+02:00".into() };
        edit.put(&printing::OF, &vial).put(&printing::PRINTED, &printed);
    });
}
