//! What is wrong with a set of records.
//!
//! In go records, out comes a list of what a person may want to look at. Nothing is mended: references may dangle for
//! a while, and a value that this version cannot read may be a newer version's.

use crate::version::Record;
use crate::{Dot, Id, Kind, container, known};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// One thing that is wrong.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "problem", rename_all = "snake_case")]
pub enum Problem {
    /// A file holds the record twice; both copies were merged.
    Twice {
        /// The record.
        id: Id,
    },
    /// One edit is said to have written two different values: a damaged file.
    DotTwice {
        /// The record.
        id: Id,
        /// The field.
        field: String,
        /// The session.
        replica: String,
        /// The number of the edit.
        number: u32,
    },
    /// A value was written by an edit that the record does not count as seen.
    BeyondSeen {
        /// The record.
        id: Id,
        /// The field.
        field: String,
    },
    /// A field names a record that is not there.
    Dangling {
        /// The record.
        id: Id,
        /// The field.
        field: String,
        /// What it names.
        to: Id,
    },
    /// Containers are said to be sorted from each other in a circle, which is cut before the first of them.
    Loop {
        /// The containers, from the least id on, each sorted from the next.
        ids: Vec<Id>,
    },
    /// The value shown of a field has a form that this version cannot read.
    Unreadable {
        /// The record.
        id: Id,
        /// The field.
        field: String,
    },
}

impl Problem {
    /// What is wrong with two copies of one record in one file.
    pub(crate) fn of_two_copies(a: &Record, b: &Record) -> Vec<Self> {
        let mut problems = vec![Self::Twice { id: a.id }];
        for (field, versions) in &a.fields {
            let others = b.fields.get(field).map_or(&[][..], Vec::as_slice);
            for version in versions {
                if others.iter().any(|other| other.dot == version.dot && other.value != version.value) {
                    problems.push(dot_twice(a.id, field, &version.dot));
                }
            }
        }
        problems
    }
}

fn dot_twice(id: Id, field: &str, dot: &Dot) -> Problem {
    Problem::DotTwice { id, field: field.to_owned(), replica: dot.replica.name().to_owned(), number: dot.number }
}

/// Looks through a whole set of records.
pub fn check(records: &[Record]) -> Vec<Problem> {
    let ids: BTreeSet<Id> = records.iter().map(|record| record.id).collect();
    let mut problems: Vec<Problem> = records.iter().flat_map(|record| check_one(record, &ids)).collect();
    problems.extend(loops(records));
    problems
}

fn check_one(record: &Record, ids: &BTreeSet<Id>) -> Vec<Problem> {
    let id = record.id;
    let mut problems = Vec::new();
    for (field, versions) in &record.fields {
        for (place, version) in versions.iter().enumerate() {
            if version.dot.number == 0 || version.dot.number > record.seen.of(&version.dot.replica) {
                problems.push(Problem::BeyondSeen { id, field: field.clone() });
            }
            if versions[..place].iter().any(|other| other.dot == version.dot) {
                problems.push(dot_twice(id, field, &version.dot));
            }
        }
        let Some(value) = record.shown(field) else { continue };
        if !known::is_readable(&record.kind, field, value) {
            problems.push(Problem::Unreadable { id, field: field.clone() });
        }
        let named = references(value).into_iter().filter(|to| !ids.contains(to));
        problems.extend(named.map(|to| Problem::Dangling { id, field: field.clone(), to }));
    }
    problems
}

/// The ids that a value names, at any depth.
pub fn references(value: &Value) -> Vec<Id> {
    let mut ids = Vec::new();
    gather(value, &mut ids);
    ids
}

fn gather(value: &Value, ids: &mut Vec<Id>) {
    match value {
        Value::String(text) if text.len() == 36 => ids.extend(text.parse::<Id>()),
        Value::Array(items) => items.iter().for_each(|item| gather(item, ids)),
        Value::Object(members) => members.values().for_each(|member| gather(member, ids)),
        _ => {}
    }
}

fn loops(records: &[Record]) -> Vec<Problem> {
    let containers = records.iter().filter(|record| record.kind == Kind::Container);
    let from: BTreeMap<Id, Id> =
        containers.filter_map(|record| Some((record.id, record.get(&container::SORTED_FROM)?))).collect();
    let circles = from.keys().filter_map(|id| circle(*id, |id| from.get(&id).copied()));
    circles.filter(|circle| circle.iter().min() == circle.first()).map(|ids| Problem::Loop { ids }).collect()
}

/// The circle in which a container lies, from itself on, if its way leads back to it.
fn circle(start: Id, from: impl Fn(Id) -> Option<Id>) -> Option<Vec<Id>> {
    let mut way = vec![start];
    let mut met = BTreeSet::from([start]);
    loop {
        let next = from(*way.last()?)?;
        if next == start {
            return Some(way);
        }
        if !met.insert(next) {
            return None;
        }
        way.push(next);
    }
}

/// What a container was sorted from. Where records of several people make a circle, the link of the container with the
/// least id is left out, so that every device cuts it at the same place.
pub fn sorted_from(id: Id, from: impl Fn(Id) -> Option<Id>) -> Option<Id> {
    let parent = from(id)?;
    let cut = circle(id, from).is_some_and(|circle| circle.iter().min() == Some(&id));
    (!cut).then_some(parent)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Edit, Replica, person};
    use serde_json::json;

    fn id(number: u8) -> Id {
        Id::from_bytes([number; 16])
    }

    fn record(number: u8, kind: Kind, fields: &[(&str, Value)]) -> Record {
        let mut edit = Edit::of(&Record::new(id(number), kind));
        for (field, value) in fields {
            edit.set(field, value.clone());
        }
        edit.apply(None, &Dot { replica: Replica::new("r"), number: 1 }, "")
    }

    fn vial(number: u8, from: u8) -> Record {
        record(number, Kind::Container, &[("sorted_from", json!(id(from)))])
    }

    #[test]
    fn references_to_what_is_not_there_dangle() {
        let records = [
            record(1, Kind::Event, &[("site", json!(id(2))), ("collector:x", json!({"person": id(9), "order": 0}))]),
            record(2, Kind::Site, &[("name", json!("gate"))]),
        ];
        let to = |field: &str, to: u8| Problem::Dangling { id: id(1), field: field.to_owned(), to: id(to) };
        assert_eq!(check(&records), [to("collector:x", 9)]);
        assert_eq!(check(&records[..1]), [to("collector:x", 9), to("site", 2)]);
    }

    #[test]
    fn a_loop_is_told_once_and_cut_before_its_least_container() {
        let records = [vial(3, 5), vial(5, 4), vial(4, 3), vial(6, 3), vial(7, 7)];
        let told = [Problem::Loop { ids: vec![id(3), id(5), id(4)] }, Problem::Loop { ids: vec![id(7)] }];
        assert_eq!(check(&records), told);
        let from = |id: Id| records.iter().find(|record| record.id == id)?.get(&container::SORTED_FROM);
        let cut: Vec<Option<Id>> = (3..=7).map(|number| sorted_from(id(number), from)).collect();
        assert_eq!(cut, [None, Some(id(3)), Some(id(4)), Some(id(3)), None]);
    }

    #[test]
    fn values_of_a_form_that_is_not_known_are_told_and_unknown_fields_are_not() {
        let mut person = record(1, Kind::Person, &[("name", json!(7)), ("song", json!(7))]);
        assert_eq!(check(std::slice::from_ref(&person)), [Problem::Unreadable { id: id(1), field: "name".to_owned() }]);
        let unknown = json!({"unknown": true});
        for right in [json!("Ada"), unknown, Value::Null] {
            person.fields.get_mut(person::NAME.name()).expect("it has a name")[0].value = right;
            assert_eq!(check(std::slice::from_ref(&person)), []);
        }
        let event = record(2, Kind::Event, &[("caught", json!("June")), ("deleted", json!("yes"))]);
        assert_eq!(check(&[event]).len(), 2);
    }

    #[test]
    fn versions_that_cannot_be_are_told() {
        let mut damaged = record(1, Kind::Site, &[("name", json!("gate"))]);
        let versions = damaged.fields.get_mut("name").expect("it has a name");
        versions.push(crate::Version { value: json!("gale"), ..versions[0].clone() });
        damaged.seen = crate::Seen::default();
        let beyond = Problem::BeyondSeen { id: id(1), field: "name".to_owned() };
        let twice = Problem::DotTwice { id: id(1), field: "name".to_owned(), replica: "r".to_owned(), number: 1 };
        assert_eq!(check(&[damaged]), [beyond.clone(), beyond, twice]);
    }
}
