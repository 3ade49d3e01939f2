//! Simulated writing sessions that keep the rule: a replica is one session, no number is used twice, and every edit
//! goes through `Edit::apply`.

use proptest::prelude::*;
use record::{Dot, Edit, Id, Kind, Record, Replica, merge};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// One session with its own copies of records.
#[derive(Clone, Debug)]
pub struct Session {
    replica: Replica,
    next: u32,
    pub copies: BTreeMap<Id, Record>,
}

impl Session {
    pub fn new(number: usize) -> Self {
        Self { replica: replica(number), next: 1, copies: BTreeMap::new() }
    }

    /// Edits a field of what the form showed, which may be older than what is there now.
    pub fn edit(&mut self, id: Id, shown: Option<&Record>, field: &str, value: Value) {
        self.edit_all(id, shown, &[(field.to_owned(), value)]);
    }

    /// Edits several fields at once.
    pub fn edit_all(&mut self, id: Id, shown: Option<&Record>, writes: &[(String, Value)]) {
        let blank = Record::new(id, kind_of(id));
        let mut edit = Edit::of(shown.unwrap_or(&blank));
        for (field, value) in writes {
            edit.set(field, value.clone());
        }
        let dot = Dot { replica: self.replica.clone(), number: self.next };
        self.next += 1;
        let entered = format!("2027-06-19T21:{:02}:00+02:00", dot.number % 60);
        let after = edit.apply(self.copies.get(&id), &dot, &entered);
        self.copies.insert(id, after);
    }

    pub fn take(&mut self, record: &Record) {
        let now = self.copies.get(&record.id).map_or_else(|| record.clone(), |own| merge(own, record));
        self.copies.insert(record.id, now);
    }
}

pub fn replica(number: usize) -> Replica {
    Replica::fresh([number as u8 + 1; 16])
}

pub fn id(number: usize) -> Id {
    Id::new(1_813_400_000_000 + number as i64 * 60_000, [number as u8; 16])
}

/// Kinds in turn, one of them from a newer version.
pub fn kind_of(id: Id) -> Kind {
    let kinds = [Kind::Event, Kind::Container, Kind::Site, Kind::Printing, Kind::from_name("hologram")];
    kinds[usize::from(id.to_bytes()[15]) % kinds.len()].clone()
}

/// Something that happens among sessions.
#[derive(Clone, Debug)]
pub enum Step {
    /// A session edits fields of a record as it is, or as it was some steps ago.
    Edit { session: usize, record: usize, writes: Vec<(String, Value)>, stale: usize },
    /// A session takes over another's copy of a record, of now or of some steps ago.
    Take { session: usize, from: usize, record: usize, late: usize },
}

pub const SESSIONS: usize = 4;
pub const RECORDS: usize = 5;

pub fn value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        prop::num::f64::NORMAL.prop_map(Value::from),
        Just(json!(49.0)),
        Just(json!(-0.0)),
        "[ -~äöřİ☿\u{1F98B}\"\\\\\n]{0,12}".prop_map(Value::from),
        (0..RECORDS).prop_map(|number| json!(id(number))),
        Just(json!({"text": "IV27-0147", "numbering": id(1)})),
        Just(json!({"from": "2027-06-20T01:10", "night": true, "offset_minutes": 120})),
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
            prop::collection::btree_map("[a-z_]{1,8}", inner, 0..4).prop_map(|map| json!(map)),
        ]
    })
}

pub fn field() -> impl Strategy<Value = String> {
    let plain = prop_oneof![
        Just("caught"),
        Just("place"),
        Just("number"),
        Just("event"),
        Just("deleted"),
        Just("notes"),
        Just("from \"tomorrow\"")
    ];
    prop_oneof![
        4 => plain.prop_map(str::to_owned),
        1 => (0..3_usize).prop_map(|line| format!("collector:{}", id(line))),
        1 => Just("collector:nobody".to_owned()),
    ]
}

pub fn step() -> impl Strategy<Value = Step> {
    let edit = (0..SESSIONS, 0..RECORDS, prop::collection::vec((field(), value()), 1..4), 0..3_usize);
    let take = (0..SESSIONS, 0..SESSIONS, 0..RECORDS, 0..6_usize);
    prop_oneof![
        3 => edit.prop_map(|(session, record, writes, stale)| Step::Edit { session, record, writes, stale }),
        2 => take.prop_map(|(session, from, record, late)| Step::Take { session, from, record, late }),
    ]
}

/// Plays steps and gives all states through which the sessions went, the last at the end.
pub fn play(steps: &[Step]) -> Vec<Vec<Session>> {
    play_on((0..SESSIONS).map(Session::new).collect(), steps)
}

/// The same, from a state on.
pub fn play_on(state: Vec<Session>, steps: &[Step]) -> Vec<Vec<Session>> {
    let mut states = vec![state];
    for step in steps {
        let mut now = states.last().expect("there is a first state").clone();
        let ago = |steps: usize| &states[states.len() - 1 - steps.min(states.len() - 1)];
        match step {
            Step::Edit { session, record, writes, stale } => {
                let shown = ago(*stale)[*session].copies.get(&id(*record)).cloned();
                now[*session].edit_all(id(*record), shown.as_ref(), writes);
            }
            Step::Take { session, from, record, late } => {
                if let Some(copy) = ago(*late)[*from].copies.get(&id(*record)) {
                    now[*session].take(copy);
                }
            }
        }
        states.push(now);
    }
    states
}

/// Every copy of one record through which the sessions went.
pub fn copies(states: &[Vec<Session>], record: usize) -> Vec<Record> {
    let mut copies: Vec<Record> = Vec::new();
    for copy in states.iter().flatten().filter_map(|session| session.copies.get(&id(record))) {
        if !copies.contains(copy) {
            copies.push(copy.clone());
        }
    }
    copies
}

/// Records as some sessions may come to hold them, each id once.
pub fn records() -> impl Strategy<Value = Vec<Record>> {
    prop::collection::vec(step(), 1..40)
        .prop_map(|steps| {
            let last = play(&steps).pop().expect("there is a last state");
            last[0].copies.values().chain(last[1].copies.values()).fold(BTreeMap::new(), |mut all, record| {
                let merged = all.get(&record.id).map_or_else(|| record.clone(), |own| merge(own, record));
                all.insert(record.id, merged);
                all
            })
        })
        .prop_map(|all| all.into_values().collect())
}
