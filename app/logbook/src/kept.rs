//! Small texts of JSON that the device keeps: drafts, settings, marks.
//!
//! They are read by way of a tree. Forms are [`Kept`], which says each field once and costs a call a field in what a
//! phone has to fetch; settings and marks are few and have the readers of serde.

use record::Id;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::str::FromStr;

/// Reads what was kept; `None` when it is not as this version keeps it.
pub fn read<T: DeserializeOwned>(json: &[u8]) -> Option<T> {
    let tree: Value = serde_json::from_slice(json).ok()?;
    T::deserialize(&tree).ok()
}

/// A form as JSON.
pub fn form_as_json(form: &impl Kept) -> String {
    form.keep().to_string()
}

/// The form that was kept: what an older version did not ask for, or kept otherwise, is as in an empty form. `None` for
/// what is no form at all.
pub fn form_of_json<T: Kept>(json: &str) -> Option<T> {
    let tree: Value = serde_json::from_slice(json.as_bytes()).ok()?;
    T::of(&tree)
}

/// What stands in a form.
pub trait Kept: Sized {
    /// As a tree.
    fn keep(&self) -> Value;
    /// From a tree; `None` when that is something else.
    fn of(kept: &Value) -> Option<Self>;
}

/// Structs whose fields are kept under their names.
macro_rules! forms {
    ($($(#[$of_form:meta])* pub struct $form:ident { $($(#[$of_field:meta])* pub $field:ident: $type:ty,)* })*) => {$(
        $(#[$of_form])*
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct $form { $($(#[$of_field])* pub $field: $type,)* }

        impl crate::kept::Kept for $form {
            fn keep(&self) -> serde_json::Value {
                let mut kept = serde_json::Map::new();
                $(crate::kept::put(&mut kept, stringify!($field), self.$field.keep());)*
                serde_json::Value::Object(kept)
            }

            fn of(kept: &serde_json::Value) -> Option<Self> {
                let kept = kept.as_object()?;
                let mut form = Self::default();
                $(crate::kept::take(kept, stringify!($field), &mut form.$field);)*
                Some(form)
            }
        }
    )*};
}
pub(crate) use forms;

pub(crate) fn put(kept: &mut Map<String, Value>, name: &str, value: Value) {
    kept.insert(name.to_owned(), value);
}

pub(crate) fn take<T: Kept>(kept: &Map<String, Value>, name: &str, field: &mut T) {
    if let Some(value) = kept.get(name).and_then(T::of) {
        *field = value;
    }
}

/// Codes that serde writes as their names.
macro_rules! codes {
    ($($code:ty),*) => {$(
        impl crate::kept::Kept for $code {
            fn keep(&self) -> serde_json::Value {
                serde_json::to_value(self).expect("a code is a word")
            }

            fn of(kept: &serde_json::Value) -> Option<Self> {
                serde::Deserialize::deserialize(kept).ok()
            }
        }
    )*};
}
pub(crate) use codes;

impl Kept for String {
    fn keep(&self) -> Value {
        Value::String(self.clone())
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_str().map(str::to_owned)
    }
}

impl Kept for bool {
    fn keep(&self) -> Value {
        Value::Bool(*self)
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_bool()
    }
}

impl Kept for u32 {
    fn keep(&self) -> Value {
        (*self).into()
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_u64()?.try_into().ok()
    }
}

impl Kept for f64 {
    fn keep(&self) -> Value {
        (*self).into()
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_f64()
    }
}

impl Kept for Id {
    fn keep(&self) -> Value {
        Value::String(self.to_string())
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_str()?.parse().ok()
    }
}

impl<T: Kept> Kept for Option<T> {
    fn keep(&self) -> Value {
        self.as_ref().map_or(Value::Null, T::keep)
    }

    fn of(kept: &Value) -> Option<Self> {
        if kept.is_null() { Some(None) } else { T::of(kept).map(Some) }
    }
}

impl<T: Kept> Kept for Box<T> {
    fn keep(&self) -> Value {
        (**self).keep()
    }

    fn of(kept: &Value) -> Option<Self> {
        T::of(kept).map(Box::new)
    }
}

impl<T: Kept> Kept for Vec<T> {
    fn keep(&self) -> Value {
        Value::Array(self.iter().map(T::keep).collect())
    }

    fn of(kept: &Value) -> Option<Self> {
        kept.as_array().map(|all| all.iter().filter_map(T::of).collect())
    }
}

impl<T: Kept + Ord> Kept for BTreeSet<T> {
    fn keep(&self) -> Value {
        Value::Array(self.iter().map(T::keep).collect())
    }

    fn of(kept: &Value) -> Option<Self> {
        let mut set = Self::new();
        set.extend(kept.as_array()?.iter().filter_map(T::of));
        Some(set)
    }
}

impl<K: FromStr + ToString + Ord, T: Kept> Kept for BTreeMap<K, T> {
    fn keep(&self) -> Value {
        let mut kept = Map::new();
        self.iter().for_each(|(name, value)| put(&mut kept, &name.to_string(), value.keep()));
        Value::Object(kept)
    }

    fn of(kept: &Value) -> Option<Self> {
        let mut map = Self::new();
        map.extend(kept.as_object()?.iter().filter_map(|(name, value)| Some((name.parse().ok()?, T::of(value)?))));
        Some(map)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::{CatchForm, ContainerForm, ContentForm, Row, Shown, Source};

    #[test]
    fn a_form_comes_back_as_it_was_typed() {
        let id: Id = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f".parse().expect("an id");
        let mut form =
            CatchForm { event: Some(id), site: "Mühlwiese \"unten\"".into(), nothing: true, ..CatchForm::default() };
        form.place.source = Source::Kept;
        form.place.latitude = Some(47.123_456_789_012_3);
        form.place.radii = vec![12.0, 4.5];
        form.particulars.insert("lamp".into(), "UV".into());
        form.unknown.insert(Row::Weather);
        let line = ContentForm { line: Some(id), group: "Diptera".into(), ..ContentForm::default() };
        form.containers.push(ContainerForm { first: "0147".into(), contents: vec![line], ..ContainerForm::default() });
        form.shown = Shown([(id, [("a".to_owned(), 3)].into())].into());
        form.base = Some(Box::new(form.clone()));
        assert_eq!(form_of_json(&form_as_json(&form)), Some(form));
    }

    #[test]
    fn a_form_that_another_version_kept_is_read_with_what_it_says() {
        let kept = r#"{"site": "Mill Meadow", "open": "yes", "soon": 1, "containers": [{"first": "0147"}, 7]}"#;
        let form: CatchForm = form_of_json(kept).expect("a form");
        let numbers: Vec<&str> = form.containers.iter().map(|container| container.first.as_str()).collect();
        assert_eq!((form.site.as_str(), form.open, numbers), ("Mill Meadow", false, vec!["0147"]));
        assert_eq!(form_of_json::<CatchForm>("{\"site\": \"Mill Mea"), None);
        assert_eq!(form_of_json::<CatchForm>("[]"), None);
    }
}
