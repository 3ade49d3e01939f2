//! What went wrong: fact first, then what is safe, then what to do.

use super::{English, counted};
use crate::sentences::say;

say! { English says Faults {
    full: "Not saved yet: this phone’s storage is full.";
    full_do: "What you typed is still here, whole. Free some space, then save again.";
    refused: "Not saved: this browser refuses to keep anything for this page.";
    refused_do(reason: &str): format!("What you typed is still here. Leave private browsing, or allow this site to keep data, then save again. The browser says: {reason}");
    newer: "Not saved: a newer version of this app has written here.";
    newer_do(found: u32): format!("Everything can be read and exported, nothing can be lost by waiting. Load the page again to get the newer version. It writes storage version {found}.");
    outdated: "Not saved yet: another tab is bringing the storage up to date.";
    outdated_do: "What you typed is still here. Load this page again, then save.";
    taken: "Not saved yet: another tab wrote at the same moment.";
    taken_do: "What you typed is still here, whole. Save again.";
    cut: "Not saved yet: the system cut the page off from its storage.";
    cut_do(reason: &str): format!("What you typed is still here, whole. Save again; if it fails again, load the page again first. The browser says: {reason}");
    opening: "Not saved yet: the book is still being opened.";
    opening_do: "What you typed is still here. Save again in a moment.";
    not_ours: "Not saved yet: another tab is writing in this book.";
    not_ours_do: "What you typed is still here. Save again, and this tab takes over.";
    open_failed: "The book could not be opened.";
    draft_refused: "What you type cannot be kept while you type: the browser has no room for it. Save often.";
    save_again: "Save again";
    reload: "Load again";
    read_only_newer: "A newer version of this app has written here. Everything can be read; writing waits until you load the page again.";
    read_only_outdated: "Another tab has brought the storage up to date. Load this page again to write.";
    aside(blocks: u32): format!("{} of the storage could not be read.", counted(blocks as usize, "block", "blocks"));
    aside_do: "It was set aside untouched; everything else is here. Import your last export to bring back what was in it.";
    sample: "The sample could not be loaded.";
    sample_do: "Nothing was changed. Load the page again with a network once; after that it is there without one.";
    not_fetched: "This part of the page could not be loaded.";
    not_fetched_do: "What was saved and typed is still here. Find a network once and try again; after that it works without one.";
    fetch_again: "Try again";
    nothing_changed: "Nothing was changed.";
} }
