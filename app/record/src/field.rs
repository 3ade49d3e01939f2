//! Names of fields with the types of their values.

use crate::{Edit, Id, Record};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::marker::PhantomData;

/// One field: its name in the record and the type of its value.
pub struct Field<T> {
    name: &'static str,
    holds: PhantomData<fn() -> T>,
}

/// Many fields of one type, keyed by the id of the line: `name:id`.
pub struct Lines<T> {
    name: &'static str,
    holds: PhantomData<fn() -> T>,
}

impl<T> Field<T> {
    /// Names a field.
    pub const fn new(name: &'static str) -> Self {
        Self { name, holds: PhantomData }
    }

    /// Its name.
    pub const fn name(&self) -> &'static str {
        self.name
    }
}

impl<T> Lines<T> {
    /// Names a list of lines.
    pub const fn new(name: &'static str) -> Self {
        Self { name, holds: PhantomData }
    }

    /// The field's name of one line.
    pub fn name_of(&self, line: Id) -> String {
        format!("{}:{line}", self.name)
    }

    /// The id of the line in a field's name, if the field is one of these lines.
    pub fn line_of(&self, field: &str) -> Option<Id> {
        field.strip_prefix(self.name)?.strip_prefix(':')?.parse().ok()
    }
}

pub(crate) fn unknown() -> Value {
    json!({ "unknown": true })
}

impl Record {
    /// The value shown of a field; `None` when it is empty, marked unknown, or of a form this version cannot read.
    pub fn get<T: DeserializeOwned>(&self, field: &Field<T>) -> Option<T> {
        read(self.shown(field.name)?)
    }

    /// True when the field was marked as unknown by a person.
    pub fn is_unknown<T>(&self, field: &Field<T>) -> bool {
        self.shown(field.name).is_some_and(|value| *value == unknown())
    }

    /// True when the field holds nothing at all.
    pub fn is_empty<T>(&self, field: &Field<T>) -> bool {
        self.shown(field.name).is_none()
    }

    /// The lines of a list with their ids, in the order of the ids.
    pub fn lines<T: DeserializeOwned>(&self, lines: &Lines<T>) -> Vec<(Id, T)> {
        let shown = self.fields.keys().filter_map(|name| {
            let line = lines.line_of(name)?;
            Some((line, read(self.shown(name)?)?))
        });
        shown.collect()
    }

    /// True when the record was deleted.
    pub fn is_deleted(&self) -> bool {
        self.get(&DELETED).unwrap_or(false)
    }
}

impl Edit {
    /// Writes a value.
    pub fn put<T: Serialize>(&mut self, field: &Field<T>, value: &T) -> &mut Self {
        self.set(field.name, to_value(value))
    }

    /// Writes a value or empties the field.
    pub fn put_or_empty<T: Serialize>(&mut self, field: &Field<T>, value: Option<&T>) -> &mut Self {
        self.set(field.name, value.map_or(Value::Null, to_value))
    }

    /// Marks a field as unknown.
    pub fn put_unknown<T>(&mut self, field: &Field<T>) -> &mut Self {
        self.set(field.name, unknown())
    }

    /// Writes one line of a list.
    pub fn put_line<T: Serialize>(&mut self, lines: &Lines<T>, line: Id, value: &T) -> &mut Self {
        self.set(&lines.name_of(line), to_value(value))
    }

    /// Empties one line of a list.
    pub fn drop_line<T>(&mut self, lines: &Lines<T>, line: Id) -> &mut Self {
        self.set(&lines.name_of(line), Value::Null)
    }
}

/// Every kind has it: the record was deleted.
pub const DELETED: Field<bool> = Field::new("deleted");

fn read<T: DeserializeOwned>(value: &Value) -> Option<T> {
    T::deserialize(value).ok()
}

fn to_value<T: Serialize>(value: &T) -> Value {
    serde_json::to_value(value).expect("values of fields are plain data")
}
