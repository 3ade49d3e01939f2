//! What is asked of the object stores, and how keys and bytes look in them.

use super::connection::KEPT;
use super::transaction::{Deed, Mode};
use crate::js;
use js_sys::{Array, Uint8Array};
use ports::store::{Damaged, JournalKey, Rows, SegmentKey, Swap};
use wasm_bindgen::{JsCast, JsValue};

/// A journal key as the database sorts it: the writing session, then its running number.
pub fn journal_name(key: &JournalKey) -> JsValue {
    Array::of2(&key.replica.as_str().into(), &key.number.into()).into()
}

/// The journal key of a database key; `None` for one that is not ours.
pub fn journal_key(name: &JsValue) -> Option<JournalKey> {
    let parts: &Array = name.dyn_ref()?;
    Some(JournalKey { replica: parts.get(0).as_string()?, number: parts.get(1).as_f64()? as u32 })
}

fn bytes(bytes: &[u8]) -> Uint8Array {
    Uint8Array::from(bytes)
}

/// Asks for all keys of one object store.
pub fn keys_of(store: &'static str) -> Deed<'static> {
    Deed::new(Mode::Read, &[store], move |on| Ok(vec![on(store)?.get_all_keys()?]))
}

/// Asks for all keys and all values of one object store, in the same order.
pub fn all_of(store: &'static str) -> Deed<'static> {
    Deed::new(Mode::Read, &[store], move |on| Ok(vec![on(store)?.get_all_keys()?, on(store)?.get_all()?]))
}

/// Asks for the values under these keys.
pub fn some_of(store: &'static str, keys: Vec<JsValue>) -> Deed<'static> {
    Deed::new(Mode::Read, &[store], move |on| {
        let store = on(store)?;
        keys.iter().map(|key| store.get(key)).collect()
    })
}

/// Asks how many rows an object store has.
pub fn count_of(store: &'static str) -> Deed<'static> {
    Deed::new(Mode::Read, &[store], move |on| Ok(vec![on(store)?.count()?]))
}

/// Writes a swap: first what goes, then what comes.
pub fn written(swap: &Swap) -> Deed<'_> {
    let deed = Deed::new(Mode::Write, &["segments", "journal", "marks"], move |on| {
        let (segments, journal, marks) = (on("segments")?, on("journal")?, on("marks")?);
        for key in &swap.segments_out {
            segments.delete(&(*key).into())?;
        }
        for key in &swap.journal_out {
            journal.delete(&journal_name(key))?;
        }
        for name in &swap.marks_out {
            marks.delete(&name.as_str().into())?;
        }
        for (key, row) in &swap.segments_in {
            segments.put_with_key(&bytes(row), &(*key).into())?;
        }
        for (key, row) in &swap.journal_in {
            journal.add_with_key(&bytes(row), &journal_name(key))?;
        }
        for (name, row) in &swap.marks_in {
            marks.put_with_key(&bytes(row), &name.as_str().into())?;
        }
        Ok(Vec::new())
    });
    match &swap.expects {
        Some((name, expected)) => deed.only_where("marks", name.as_str().into(), expected.clone()),
        None => deed,
    }
}

/// Keeps a file, or lets it go.
pub fn kept<'a>(name: &'a str, file: Option<&'a [u8]>) -> Deed<'a> {
    Deed::new(Mode::Write, &[KEPT], move |on| {
        let store = on(KEPT)?;
        match file {
            Some(file) => store.put_with_key(&bytes(file), &name.into())?,
            None => store.delete(&name.into())?,
        };
        Ok(Vec::new())
    })
}

fn place(damaged: &Damaged) -> (&'static str, JsValue) {
    match damaged {
        Damaged::Segment(key) => ("segments", (*key).into()),
        Damaged::Journal(key) => ("journal", journal_name(key)),
    }
}

/// Asks for the bytes of a damaged row.
pub fn damaged(damaged: &Damaged) -> Deed<'static> {
    let (store, key) = place(damaged);
    some_of(store, vec![key])
}

/// Moves a damaged row aside, with the name of its store and its key.
pub fn moved_aside(damaged: &Damaged, bytes: &JsValue) -> Deed<'static> {
    let (store, key) = place(damaged);
    let row = Array::of3(&store.into(), &key, bytes);
    Deed::new(Mode::Write, &[store, "aside"], move |on| {
        on("aside")?.add(&row)?;
        on(store)?.delete(&key)?;
        Ok(Vec::new())
    })
}

/// The segment keys of an answer to [`keys_of`], ascending.
pub fn segment_keys(answer: &Array) -> Vec<SegmentKey> {
    members(answer, 0).iter().filter_map(|key| key.as_f64()).map(|key| key as SegmentKey).collect()
}

/// The names of an answer to [`keys_of`].
pub fn names(answer: &Array) -> Vec<String> {
    members(answer, 0).iter().filter_map(|name| name.as_string()).collect()
}

/// The journal keys of an answer to [`keys_of`].
pub fn journal_keys(answer: &Array) -> Vec<JournalKey> {
    members(answer, 0).iter().filter_map(|key| journal_key(&key)).collect()
}

/// The rows of an answer to [`some_of`]; what was not found is left out.
pub fn found<K>(keys: Vec<K>, answer: &Array) -> Rows<K> {
    let rows = keys.into_iter().zip(answer.iter());
    rows.filter(|(_, row)| !row.is_undefined()).map(|(key, row)| (key, js::bytes(&row))).collect()
}

/// The rows of an answer to [`all_of`]; a key that is not ours is left out.
pub fn all<K>(answer: &Array, key: impl Fn(&JsValue) -> Option<K>) -> Rows<K> {
    let rows = members(answer, 0).iter().zip(members(answer, 1).iter()).collect::<Vec<_>>();
    rows.into_iter().filter_map(|(name, row)| Some((key(&name)?, js::bytes(&row)))).collect()
}

/// The number of an answer to [`count_of`].
pub fn count(answer: &Array) -> u32 {
    answer.get(0).as_f64().unwrap_or_default() as u32
}

fn members(answer: &Array, at: u32) -> Array {
    answer.get(at).unchecked_into()
}
