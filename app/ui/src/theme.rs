//! The theme of the page: chosen, or the system's.
//!
//! What is chosen is kept under the name that the page's first script reads before the first paint.

use crate::context::Context;
use leptos::prelude::*;

const NAME: &str = "glassine/theme";

/// Puts a theme on the page and keeps the choice; `None` follows the system again, from the next load at the latest.
pub fn choose(page: Context, theme: Option<&str>) {
    let draft = page.ports().draft;
    match theme {
        Some(theme) => {
            draft.put(NAME, theme);
        }
        None => draft.remove(NAME),
    }
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-theme", theme.unwrap_or(system()));
    }
}

/// The theme that the system asks for.
fn system() -> &'static str {
    let asks = |query: &str| window().match_media(query).ok().flatten().is_some_and(|list| list.matches());
    if asks("(prefers-contrast: more)") {
        "sun"
    } else if asks("(prefers-color-scheme: dark)") {
        "dark"
    } else {
        "paper"
    }
}
