//! One line of a log file: one record.

use super::refusal::Fault;
use crate::{Dot, Id, Kind, Record, Replica, Seen, Version};
use serde::de::{Deserializer, MapAccess, Visitor};
use serde::{Deserialize, de};
use serde_json::Value;
use std::borrow::Cow;
use std::collections::{BTreeMap, HashMap};
use std::fmt;

/// The sessions named so far: each name is kept once.
#[derive(Default)]
pub(super) struct Replicas(HashMap<String, Replica>);

impl Replicas {
    fn named(&mut self, name: &str) -> Replica {
        if let Some(replica) = self.0.get(name) {
            return replica.clone();
        }
        let replica = Replica::new(name);
        self.0.insert(name.to_owned(), replica.clone());
        replica
    }
}

/// Reads one record.
pub(super) fn record(line: &[u8], replicas: &mut Replicas) -> Result<Record, Fault> {
    let raw: Raw = serde_json::from_slice(line).map_err(|error| Fault::NotJson { column: error.column() })?;
    let kind = raw.kind.ok_or(Fault::NoKind)?;
    let id: Id = raw.id.and_then(|id| id.0.parse().ok()).ok_or(Fault::NoId)?;
    let written = raw.versions.ok_or(Fault::NoVersions)?;
    let mut record = Record::new(id, Kind::from_name(&kind.0));
    record.seen = seen(&written.seen.0, replicas)?;
    let mut values = once(raw.values)?;
    for (field, stamp) in written.at.0 {
        let value =
            values.remove(&field.0).ok_or_else(|| Fault::VersionAlone { field: field.0.clone().into_owned() })?;
        add(&mut record, field.0, value, stamp, replicas)?;
    }
    if let Some((field, _)) = values.pop_first() {
        return Err(Fault::ValueAlone { field: field.into_owned() });
    }
    for (field, versions) in written.other.0 {
        if !record.fields.contains_key(&*field.0) {
            return Err(Fault::VersionAlone { field: field.0.into_owned() });
        }
        for Further(value, stamp) in versions {
            add(&mut record, field.0.clone(), value, stamp, replicas)?;
        }
    }
    Ok(record)
}

fn once<'a>(members: Vec<(Text<'a>, Value)>) -> Result<BTreeMap<Cow<'a, str>, Value>, Fault> {
    let mut values = BTreeMap::new();
    for (field, value) in members {
        if values.contains_key(&field.0) {
            return Err(Fault::Twice { field: field.0.into_owned() });
        }
        values.insert(field.0, value);
    }
    Ok(values)
}

fn seen(counts: &[(Text, u32)], replicas: &mut Replicas) -> Result<Seen, Fault> {
    let mut seen = Seen::default();
    for (name, number) in counts {
        if seen.0.insert(replicas.named(&name.0), *number).is_some() {
            return Err(Fault::Twice { field: "seen".to_owned() });
        }
    }
    Ok(seen)
}

fn add(record: &mut Record, field: Cow<str>, value: Value, stamp: Stamp, replicas: &mut Replicas) -> Result<(), Fault> {
    let Stamp(replica, number, entered) = stamp;
    let dot = Dot { replica: replicas.named(&replica.0), number };
    if number == 0 || number > record.seen.of(&dot.replica) {
        return Err(Fault::BeyondSeen { field: field.into_owned() });
    }
    let version = Version { value, dot, entered: entered.0.into_owned() };
    let Some(versions) = record.fields.get_mut(&*field) else {
        record.fields.insert(field.into_owned(), vec![version]);
        return Ok(());
    };
    match versions.binary_search_by(|other| other.dot.cmp(&version.dot)) {
        Ok(_) => Err(Fault::DotTwice { field: field.into_owned() }),
        Err(place) => {
            versions.insert(place, version);
            Ok(())
        }
    }
}

/// A line as it stands there.
#[derive(Default)]
struct Raw<'a> {
    kind: Option<Text<'a>>,
    id: Option<Text<'a>>,
    values: Vec<(Text<'a>, Value)>,
    versions: Option<Written<'a>>,
}

/// Who wrote what. A newer minor form adds nothing here: what it added could not be kept in step with the versions.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written<'a> {
    #[serde(borrow)]
    seen: Members<'a, u32>,
    #[serde(borrow)]
    at: Members<'a, Stamp<'a>>,
    #[serde(borrow, default)]
    other: Members<'a, Vec<Further<'a>>>,
}

/// Session, number, entered.
#[derive(Deserialize)]
struct Stamp<'a>(#[serde(borrow)] Text<'a>, u32, #[serde(borrow)] Text<'a>);

/// A value with who wrote it: value, session, number, entered.
struct Further<'a>(Value, Stamp<'a>);

impl<'de: 'a, 'a> Deserialize<'de> for Further<'a> {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        struct Flat<'a>(Value, #[serde(borrow)] Text<'a>, u32, #[serde(borrow)] Text<'a>);
        let Flat(value, replica, number, entered) = Flat::deserialize(input)?;
        Ok(Self(value, Stamp(replica, number, entered)))
    }
}

/// Text that is borrowed from the file where it has no escapes.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Text<'a>(Cow<'a, str>);

impl<'de: 'a, 'a> Deserialize<'de> for Text<'a> {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Self, D::Error> {
        struct Read;
        impl<'de> Visitor<'de> for Read {
            type Value = Text<'de>;

            fn expecting(&self, out: &mut fmt::Formatter) -> fmt::Result {
                out.write_str("text")
            }

            fn visit_borrowed_str<E: de::Error>(self, text: &'de str) -> Result<Text<'de>, E> {
                Ok(Text(Cow::Borrowed(text)))
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Text<'de>, E> {
                Ok(Text(Cow::Owned(text.to_owned())))
            }
        }
        input.deserialize_str(Read)
    }
}

/// The members of an object in their order, each as often as it stands there.
struct Members<'a, T>(Vec<(Text<'a>, T)>);

impl<T> Default for Members<'_, T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<'de: 'a, 'a, T: Deserialize<'de>> Deserialize<'de> for Members<'a, T> {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Self, D::Error> {
        struct Read<T>(std::marker::PhantomData<T>);
        impl<'de, T: Deserialize<'de>> Visitor<'de> for Read<T> {
            type Value = Vec<(Text<'de>, T)>;

            fn expecting(&self, out: &mut fmt::Formatter) -> fmt::Result {
                out.write_str("an object")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
                let mut members = Vec::new();
                while let Some(member) = map.next_entry()? {
                    members.push(member);
                }
                Ok(members)
            }
        }
        input.deserialize_map(Read(std::marker::PhantomData)).map(Self)
    }
}

impl<'de: 'a, 'a> Deserialize<'de> for Raw<'a> {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Self, D::Error> {
        struct Read;
        impl<'de> Visitor<'de> for Read {
            type Value = Raw<'de>;

            fn expecting(&self, out: &mut fmt::Formatter) -> fmt::Result {
                out.write_str("a record")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Raw<'de>, A::Error> {
                let mut raw = Raw::default();
                while let Some(name) = map.next_key::<Text>()? {
                    match &*name.0 {
                        "kind" if raw.kind.is_none() => raw.kind = Some(map.next_value()?),
                        "id" if raw.id.is_none() => raw.id = Some(map.next_value()?),
                        "versions" if raw.versions.is_none() => raw.versions = Some(map.next_value()?),
                        _ => raw.values.push((name, map.next_value()?)),
                    }
                }
                Ok(raw)
            }
        }
        input.deserialize_map(Read)
    }
}
