//! Values of fields as bytes.

use super::bytes::{Cursor, put_number};
use crate::Id;
use serde_json::{Map, Number, Value};

const NULL: u8 = 0;
const FALSE: u8 = 1;
const TRUE: u8 = 2;
const WHOLE: u8 = 3;
const NEGATIVE: u8 = 4;
const FLOAT: u8 = 5;
const TEXT: u8 = 6;
const LIST: u8 = 7;
const OBJECT: u8 = 8;
const ID: u8 = 9;

/// Values nested deeper than any log file can bring are damage.
const DEPTH: u8 = 130;

/// Members whose texts a search never looks at: they say the same in most records.
const NOT_SEARCHED: [&str; 4] = ["datum", "how", "platform", "count_kind"];

/// Tells each string of a value to `texts`, and each that a search leaves alone to `others`.
pub(super) fn strings<'a>(value: &'a Value, texts: &mut dyn FnMut(&'a str), others: &mut dyn FnMut(&'a str)) {
    match value {
        Value::String(text) if Id::as_written(text).is_none() => texts(text),
        Value::Array(items) => items.iter().for_each(|item| strings(item, texts, others)),
        Value::Object(members) => {
            for (name, member) in members {
                others(name);
                match member {
                    Value::String(text) if NOT_SEARCHED.contains(&name.as_str()) => others(text),
                    member => strings(member, texts, others),
                }
            }
        }
        _ => {}
    }
}

/// Tells each id in a value.
pub(crate) fn ids_of(value: &Value, ids: &mut dyn FnMut(Id)) {
    match value {
        Value::String(text) => _ = Id::as_written(text).map(ids),
        Value::Array(items) => items.iter().for_each(|item| ids_of(item, ids)),
        Value::Object(members) => members.values().for_each(|member| ids_of(member, ids)),
        _ => {}
    }
}

/// The texts of a value that a search may find.
pub(crate) fn texts_of<'a>(value: &'a Value, texts: &mut dyn FnMut(&'a str)) {
    strings(value, texts, &mut |_| ());
}

/// Appends a value; `index` finds a string in the table.
pub(super) fn put(out: &mut Vec<u8>, value: &Value, index: &dyn Fn(&str) -> u32) {
    match value {
        Value::Null => out.push(NULL),
        Value::Bool(false) => out.push(FALSE),
        Value::Bool(true) => out.push(TRUE),
        Value::Number(number) => put_numeral(out, number),
        Value::String(text) => match Id::as_written(text) {
            Some(id) => {
                out.push(ID);
                out.extend_from_slice(&id.to_bytes());
            }
            None => {
                out.push(TEXT);
                put_number(out, index(text).into());
            }
        },
        Value::Array(items) => {
            out.push(LIST);
            put_number(out, items.len() as u64);
            items.iter().for_each(|item| put(out, item, index));
        }
        Value::Object(members) => {
            out.push(OBJECT);
            put_number(out, members.len() as u64);
            for (name, member) in members {
                put_number(out, index(name).into());
                put(out, member, index);
            }
        }
    }
}

fn put_numeral(out: &mut Vec<u8>, number: &Number) {
    if let Some(whole) = number.as_u64() {
        out.push(WHOLE);
        put_number(out, whole);
    } else if let Some(negative) = number.as_i64() {
        out.push(NEGATIVE);
        put_number(out, !negative as u64);
    } else {
        out.push(FLOAT);
        let float = number.as_f64().expect("a number of JSON is whole or floating");
        out.extend_from_slice(&float.to_le_bytes());
    }
}

/// Reads a value; `text` is the string at an index.
pub(super) fn take<'a>(from: &mut Cursor, text: &dyn Fn(u32) -> Option<&'a str>) -> Option<Value> {
    take_within(from, text, DEPTH)
}

/// Passes over a value and tells each id in it.
pub(super) fn pass(from: &mut Cursor, ids: &mut dyn FnMut(Id)) -> Option<()> {
    pass_within(from, ids, DEPTH)
}

fn pass_within(from: &mut Cursor, ids: &mut dyn FnMut(Id), depth: u8) -> Option<()> {
    let inner = depth.checked_sub(1)?;
    match from.byte()? {
        NULL | FALSE | TRUE => {}
        WHOLE | NEGATIVE | TEXT => _ = from.number()?,
        FLOAT => _ = from.array::<8>()?,
        ID => ids(Id::from_bytes(from.array()?)),
        LIST => {
            for _ in 0..from.count()? {
                pass_within(from, ids, inner)?;
            }
        }
        OBJECT => {
            for _ in 0..from.count()? {
                from.number()?;
                pass_within(from, ids, inner)?;
            }
        }
        _ => return None,
    }
    Some(())
}

fn take_within<'a>(from: &mut Cursor, text: &dyn Fn(u32) -> Option<&'a str>, depth: u8) -> Option<Value> {
    let inner = depth.checked_sub(1)?;
    Some(match from.byte()? {
        NULL => Value::Null,
        FALSE => Value::Bool(false),
        TRUE => Value::Bool(true),
        WHOLE => from.number()?.into(),
        NEGATIVE => i64::try_from(from.number()?).ok().map(|number| !number)?.into(),
        FLOAT => Value::Number(Number::from_f64(f64::from_le_bytes(from.array()?))?),
        TEXT => text(from.small()?)?.into(),
        ID => Id::from_bytes(from.array()?).to_string().into(),
        LIST => {
            let count = from.count()?;
            Value::Array((0..count).map(|_| take_within(from, text, inner)).collect::<Option<_>>()?)
        }
        OBJECT => {
            let count = from.count()?;
            let mut members = Map::new();
            for _ in 0..count {
                let name = text(from.small()?)?.to_owned();
                members.insert(name, take_within(from, text, inner)?);
            }
            Value::Object(members)
        }
        _ => return None,
    })
}
