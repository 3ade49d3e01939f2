//! Writes records as the people of the survey did: each in sessions of their own, with their devices' clocks.

use record::day::day_in;
use record::wire::{Author, Header};
use record::{Dot, Edit, Id, Kind, Record, Replica};
use std::collections::BTreeMap;

/// Who writes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Who {
    Varga,
    Okoro,
    Thorne,
}

impl Who {
    pub const ALL: [Self; 3] = [Self::Varga, Self::Okoro, Self::Thorne];

    pub fn name(self) -> &'static str {
        match self {
            Self::Varga => "I. Varga",
            Self::Okoro => "D. Okoro",
            Self::Thorne => "S. Thorne",
        }
    }

    fn device(self) -> &'static str {
        match self {
            Self::Varga => "Ilka's phone",
            Self::Okoro => "Daniel's tablet",
            Self::Thorne => "Sefa's phone",
        }
    }
}

/// All that was written, and the sessions in which it was.
#[derive(Default)]
pub struct Scribe {
    records: BTreeMap<Id, Record>,
    sessions: BTreeMap<(Who, String), u32>,
    drawn: u64,
}

impl Scribe {
    /// A new record, written at a local time to the minute.
    pub fn create(&mut self, who: Who, at: &str, kind: Kind, fill: impl FnOnce(&mut Edit)) -> Id {
        let id = self.id(at);
        let blank = Record::new(id, kind);
        self.save(who, at, &blank, fill);
        id
    }

    /// A change of a record as it is now.
    pub fn change(&mut self, who: Who, at: &str, id: Id, fill: impl FnOnce(&mut Edit)) {
        let shown = self.get(id);
        self.save(who, at, &shown, fill);
    }

    /// A change by somebody who saw the record as it was then.
    pub fn change_unseen(&mut self, who: Who, at: &str, shown: &Record, fill: impl FnOnce(&mut Edit)) {
        self.save(who, at, shown, fill);
    }

    pub fn get(&self, id: Id) -> Record {
        self.records[&id].clone()
    }

    fn save(&mut self, who: Who, at: &str, shown: &Record, fill: impl FnOnce(&mut Edit)) {
        let session = self.sessions.entry((who, at[..10].to_owned())).or_insert(0);
        *session += 1;
        let dot = Dot { replica: replica(who, &at[..10]), number: *session };
        let mut edit = Edit::of(shown);
        fill(&mut edit);
        let entered = format!("{at}:{:02}+02:00", self.chance(60));
        let after = edit.apply(self.records.get(&edit.id()), &dot, &entered);
        self.records.insert(after.id, after);
    }

    /// A fresh id of that minute.
    pub fn id(&mut self, at: &str) -> Id {
        let number = |range: std::ops::Range<usize>| at[range].parse::<i64>().expect("times are written in full");
        let minutes = i64::from(day_in(at).expect("days exist")) * 1440 + number(11..13) * 60 + number(14..16) - 120;
        let unix_ms = minutes * 60_000 + self.chance(60_000) as i64;
        let halves = [self.draw(), self.draw()].map(u64::to_be_bytes);
        Id::new(unix_ms, halves.concat().try_into().expect("two halves make sixteen bytes"))
    }

    /// A number from 0 to below `below` that looks like chance.
    pub fn chance(&mut self, below: u64) -> u64 {
        self.draw() % below
    }

    fn draw(&mut self) -> u64 {
        self.drawn += 1;
        mixed(self.drawn)
    }

    pub fn records(&self) -> Vec<Record> {
        self.records.values().cloned().collect()
    }

    pub fn header(&self) -> Header {
        let author = |who: Who| Author {
            device: who.device().to_owned(),
            person: who.name().to_owned(),
            app: "0.1.0".to_owned(),
            ..Author::default()
        };
        let replicas = self.sessions.keys().map(|(who, day)| (replica(*who, day), author(*who))).collect();
        let note = "An invented survey: its places, people and catches do not exist.";
        Header {
            written: "2026-06-26T09:30:00+02:00".to_owned(),
            device: Who::Varga.device().to_owned(),
            person: Who::Varga.name().to_owned(),
            app: "0.1.0".to_owned(),
            book: "sample".to_owned(),
            share_copy: None,
            replicas,
            more: [("invented".to_owned(), note.into())].into_iter().collect(),
        }
    }
}

/// Each person has a session a day.
fn replica(who: Who, day: &str) -> Replica {
    let day = u64::try_from(day_in(day).expect("days exist")).expect("the survey is after 1970");
    let halves = [mixed(day * 8 + who as u64), mixed(day * 8 + who as u64 + 4_000_000)].map(u64::to_be_bytes);
    Replica::fresh(halves.concat().try_into().expect("two halves make sixteen bytes"))
}

/// **Source**: the finish of SplitMix64 (S. Vigna, public domain).
fn mixed(seed: u64) -> u64 {
    let mut mixed = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}
