//! The start screen.

use super::English;
use super::dates::grouped;
use crate::sentences::say;

say! { English says Start {
    title: "Field";
    open_now: "Open now";
    open_for: "open for";
    today: "Today";
    events: "events";
    containers: "containers";
    missing: "missing";
    twice: "twice";
    whole_day: "Whole day";
    only_here(events: usize): if events == 1 { "1 event".into() } else { format!("{} events", grouped(events)) };
    only_here_where: "only on this phone";
    export: "Export";
    new_catch: "New catch";
    go_on: "Go on with catch";
    next: "next";
    first: "first";
    next_none: "no number proposed";
    next_full: "range used up";
    empty: "No catch yet.";
    empty_says: "The first one takes a minute; after that most of it is filled in for you.";
    no_catch_today: "No catch today.";
    load_sample: "Load a sample";
    loading_sample: "Loading the sample";
    import_log: "Import a log";
    set_trap: "Set a trap";
    search: "Search";
    go_on_site: "Go on with site";
    how_1: "New catch opens an event already filled with now, here, and what you used last. Type over what differs, then save.";
    how_2: "A lamp that burns and a trap that is out stand under “Open now” until you end them.";
    how_3: "What is logged lives on this phone alone until you export it. The line above the button counts it.";
} }
