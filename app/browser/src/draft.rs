//! Drafts and settings in `localStorage`: there as soon as the call returns.
//!
//! Texts are kept as JSON strings, which is also how the page's first script reads the theme. Where
//! storage is blocked nothing is found and nothing is kept, and `put` says so.

use crate::js;
use gloo_storage::{LocalStorage, Storage as _};
use ports::Draft;

/// `localStorage` of the page's origin; names are used as they are.
pub struct LocalDraft;

/// A page with its storage blocked throws already when it asks for it.
fn is_there() -> bool {
    matches!(js::window().local_storage(), Ok(Some(_)))
}

impl Draft for LocalDraft {
    fn get(&self, name: &str) -> Option<String> {
        is_there().then(|| LocalStorage::get(name).ok()).flatten()
    }

    fn put(&self, name: &str, text: &str) -> bool {
        is_there() && LocalStorage::set(name, text).is_ok()
    }

    fn remove(&self, name: &str) {
        if is_there() {
            LocalStorage::delete(name);
        }
    }

    fn names(&self, prefix: &str) -> Vec<String> {
        if !is_there() {
            return Vec::new();
        }
        let names = (0..LocalStorage::length()).filter_map(|at| LocalStorage::raw().key(at).ok().flatten());
        names.filter(|name| name.starts_with(prefix)).collect()
    }
}
