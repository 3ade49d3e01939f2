//! Generated records: the same for the same numbers, in the shape of a busy collector's years.

use record::event::{COLLECTORS, Collector, Place};
use record::wire::{Author, Header};
use record::{Dot, Edit, Id, Kind, Lines, Record, Replica, container, event, person, site};
use serde_json::{Value, json};

/// The session that writes every record.
const FIRST: &str = "0000000000000001";
/// The session that changes some of them.
const SECOND: &str = "0000000000000002";
/// Sites in all.
const SITES: usize = 300;
/// Records that an edit of the second session touches: one in so many.
const CHANGED: usize = 10;

/// Events with so many containers each, their sites and their collectors.
pub fn book(events: usize, containers: usize) -> Vec<Record> {
    let mut records: Vec<Record> = (0..SITES).map(made_site).chain((0..5).map(made_person)).collect();
    for number in 0..events {
        records.push(made_event(number));
        records.extend((0..containers).map(|place| made_container(number, place)));
    }
    records
}

/// The same book as another person has it, who changed some records without seeing the first one's last changes.
pub fn other(book: &[Record]) -> Vec<Record> {
    let change = |(number, record): (usize, &Record)| {
        let mut edit = Edit::of(record);
        edit.set("notes", json!(format!("seen again {number}")));
        let dot = Dot { replica: Replica::new(SECOND), number: number as u32 + 1 };
        if number.is_multiple_of(CHANGED) {
            edit.apply(Some(record), &dot, "2027-11-02T20:15:00+01:00")
        } else {
            record.clone()
        }
    };
    book.iter().enumerate().map(change).collect()
}

/// A header for their log file.
pub fn header() -> Header {
    let author =
        Author { device: "Generated".into(), person: "A. Marlow".into(), app: "0.1.0".into(), ..Author::default() };
    Header {
        written: "2027-11-03T09:00:00+01:00".into(),
        device: "Generated".into(),
        person: "A. Marlow".into(),
        app: "0.1.0".into(),
        book: "own".into(),
        replicas: [FIRST, SECOND].map(|name| (Replica::new(name), author.clone())).into(),
        ..Header::default()
    }
}

/// The number of a container.
pub fn number(event: usize, place: usize) -> String {
    format!("AM{:02}-{:05}", 17 + event / 10_000, event % 10_000 * 4 + place)
}

/// A number that looks like chance and is the same every time.
///
/// **Source**: the finish of SplitMix64 (S. Vigna, public domain).
fn mixed(seed: u64) -> u64 {
    let mut mixed = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

/// One between 0 and `below`.
fn drawn(seed: usize, below: usize) -> usize {
    (mixed(seed as u64) % below as u64) as usize
}

fn id(family: usize, number: usize) -> Id {
    let mut random = [family as u8; 16];
    random[8..].copy_from_slice(&mixed(number as u64 ^ ((family as u64) << 40)).to_be_bytes());
    Id::new(1_500_000_000_000 + (number as i64) * 3_000_000, random)
}

fn written(id: Id, kind: Kind, number: usize, fill: impl FnOnce(&mut Edit)) -> Record {
    let blank = Record::new(id, kind);
    let mut edit = Edit::of(&blank);
    fill(&mut edit);
    let entered = format!("{}T{:02}:{:02}:{:02}+02:00", day(number), 18 + number % 5, number % 60, drawn(number, 60));
    edit.apply(None, &Dot { replica: Replica::new(FIRST), number: number as u32 + 1 }, &entered)
}

fn day(number: usize) -> String {
    let (year, rest) = (2017 + number / 10_000, number % 10_000);
    format!("{year}-{:02}-{:02}", 4 + rest / 1_667, 1 + rest % 1_667 / 60)
}

fn made_site(number: usize) -> Record {
    written(id(1, number), Kind::Site, number, |edit| {
        edit.put(&site::NAME, &format!("Marl pit {number}"));
        edit.put(&site::COUNTRY, &"Invented".to_owned());
        edit.put(&site::PROVINCE, &["Norrland", "Südmark", "Pořín"][number % 3].to_owned());
        edit.put(&site::LOCALITY, &format!("{} km NE of Old Weir, left bank", number % 17));
        let degrees = |seed: usize| drawn(number * 2 + seed, 1_000_000) as f64 / 1e6;
        let point = Place { latitude: 48.0 + degrees(0), longitude: 14.0 + degrees(1), ..Place::default() };
        edit.put(&site::PLACE, &Place { datum: "WGS84".to_owned(), how: "typed".to_owned(), ..point });
    })
}

fn made_person(number: usize) -> Record {
    let name = ["A. Marlow", "B. Sedge", "C. Tarn", "D. Heath", "E. Weir"][number].to_owned();
    written(id(2, number), Kind::Person, number, |edit| {
        edit.put(&person::NAME, &name);
    })
}

const METHODS: [&str; 5] = ["hand_net", "sweeping", "light", "beating", "pitfall"];
const HOSTS: [&str; 6] = ["Cirsium", "Salix", "Quercus", "Heracleum", "Rubus", "Crataegus"];
const GROUPS: [&str; 6] = ["Coleoptera", "Syrphidae", "Apidae", "Geometridae", "Carabidae", "Heteroptera"];

fn made_event(number: usize) -> Record {
    const METHOD: record::Field<Value> = record::Field::new(event::METHOD.name());
    written(id(3, number), Kind::Event, number, |edit| {
        let from = format!("{}T{:02}:{:02}", day(number), 8 + number % 12, drawn(number, 60));
        edit.set(event::CAUGHT.name(), json!({"from": from, "offset_minutes": 120, "night": number.is_multiple_of(7)}));
        let degrees = |seed: usize| drawn(number * 2 + seed, 1_000_000) as f64 / 1e6;
        edit.set(
            event::PLACE.name(),
            json!({
                "latitude": 48.0 + degrees(0), "longitude": 14.0 + degrees(1), "datum": "WGS84", "how": "device",
                "radius_m": 4.0 + drawn(number, 200) as f64 / 10.0, "fixes": 12, "seconds": 9, "platform": "android",
            }),
        );
        edit.put(&event::SITE, &id(1, drawn(number, SITES)));
        edit.put(&METHOD, &json!({"code": METHODS[number % 5], "particulars": {"minutes": (number % 60).to_string()}}));
        edit.put_line(&COLLECTORS, id(5, number), &Collector { person: id(2, number % 5), order: 0 });
        if number.is_multiple_of(3) {
            edit.set(event::HOST.name(), json!({"relation": "swept", "thing": HOSTS[number % 6], "what": "plant"}));
        }
        if number.is_multiple_of(4) {
            edit.put(&event::NOTES, &format!("along the ditch, plot {}", drawn(number, 9_000)));
        }
    })
}

fn made_container(event_number: usize, place: usize) -> Record {
    const CONTENTS: Lines<Value> = Lines::new("content");
    let unique = event_number * 8 + place;
    written(id(4, event_number).beside(place), Kind::Container, event_number, |edit| {
        edit.put(&container::EVENT, &id(3, event_number));
        edit.put(&container::VESSEL, &"vial".to_owned());
        edit.set(container::NUMBER.name(), json!({"text": number(event_number, place)}));
        edit.set(container::KEPT.name(), json!({"code": "ethanol", "strength": "70"}));
        let content = json!({"order": 0, "group": GROUPS[unique % 6], "count_kind": "exact", "count": 1 + unique % 9});
        edit.put_line(&CONTENTS, id(6, event_number).beside(place), &content);
    })
}

trait Beside {
    fn beside(self, place: usize) -> Self;
}

impl Beside for Id {
    fn beside(self, place: usize) -> Self {
        let mut bytes = self.to_bytes();
        bytes[15] = place as u8;
        Self::from_bytes(bytes)
    }
}
