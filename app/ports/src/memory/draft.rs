//! Drafts and settings in a map that all tabs of a device share.

use crate::Draft;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// Texts under names, with an optional limit.
#[derive(Default)]
pub struct Notes {
    texts: RefCell<BTreeMap<String, String>>,
    limit: Cell<Option<usize>>,
}

impl Notes {
    /// From now on refuses what would make names and texts together longer than so many bytes.
    pub fn limit(&self, bytes: Option<usize>) {
        self.limit.set(bytes);
    }

    fn size_with(&self, name: &str, text: &str) -> usize {
        let texts = self.texts.borrow();
        let others = texts.iter().filter(|(key, _)| *key != name);
        others.map(|(key, text)| key.len() + text.len()).sum::<usize>() + name.len() + text.len()
    }
}

impl Draft for Notes {
    fn get(&self, name: &str) -> Option<String> {
        self.texts.borrow().get(name).cloned()
    }

    fn put(&self, name: &str, text: &str) -> bool {
        let fits = self.limit.get().is_none_or(|limit| self.size_with(name, text) <= limit);
        if fits {
            self.texts.borrow_mut().insert(name.into(), text.into());
        }
        fits
    }

    fn remove(&self, name: &str) {
        self.texts.borrow_mut().remove(name);
    }

    fn names(&self, prefix: &str) -> Vec<String> {
        self.texts.borrow().keys().filter(|name| name.starts_with(prefix)).cloned().collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_device_refuses_and_keeps_what_was_there() {
        let notes = Notes::default();
        assert!(notes.put("a", "12"));
        notes.limit(Some(4));
        assert!(!notes.put("a", "1234"));
        assert_eq!(notes.get("a").as_deref(), Some("12"));
        assert!(notes.put("a", "123"), "the old text does not count against its successor");
    }

    #[test]
    fn names_are_found_by_their_beginning() {
        let notes = Notes::default();
        for name in ["own/a", "own/b", "sample/a"] {
            notes.put(name, "x");
        }
        notes.remove("own/a");
        assert_eq!(notes.names("own/"), ["own/b"]);
    }
}
