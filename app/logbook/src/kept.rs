//! Small texts of JSON that the device keeps: drafts, settings, marks.
//!
//! They are read by way of a tree, as the values of records are, so that one reader of each type serves both: readers
//! are among the largest parts of what a phone has to fetch.

use serde::de::DeserializeOwned;
use serde_json::Value;

/// Reads what was kept; `None` when it is not as this version keeps it.
pub fn read<T: DeserializeOwned>(json: &[u8]) -> Option<T> {
    let tree: Value = serde_json::from_slice(json).ok()?;
    T::deserialize(&tree).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::CatchForm;

    #[test]
    fn a_form_that_an_older_version_kept_is_read_with_what_it_says() {
        let form: CatchForm = read(br#"{"site": "Mill Meadow", "containers": [{"first": "0147"}]}"#).expect("a form");
        assert_eq!((form.site.as_str(), form.containers[0].first.as_str()), ("Mill Meadow", "0147"));
        assert_eq!(read::<CatchForm>(b"{\"site\": \"Mill Mea"), None);
    }
}
