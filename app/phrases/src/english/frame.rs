//! The frame of every screen.

use super::{English, counted};
use crate::sentences::say;

say! { English says Frame {
    title(screen: &str): format!("{screen} · Glassine");
    skip: "Skip to the page";
    places: "Places";
    field: "Field";
    days: "Days";
    bench: "Bench";
    labels: "Labels";
    setup: "Setup";
    back: "Back";
    undo: "Undo";
    later: "Later";
    save: "Save";
    cancel: "Cancel";
    delete: "Delete";
    change: "Change";
    add: "Add";
    use_this: "Use this";
    unknown: "Unknown";
    unknown_of(row: &str): format!("{row} unknown");
    more: "More";
    missing: "Missing";
    how: "How this works";
    kept_as_typed: "Kept as you type";
    set_aside: "Set aside";
    update_waits: "A new version waits.";
    update_now: "Use it now";
    update_after: "Use it after saving";
    update_calm_now: "The new version comes with the save.";
    fetching: "One moment: this part is being loaded.";
    opening(done: usize, of: usize): format!("Opening: {done} of {of} blocks");
    not_found: "Nothing stands here.";
    not_found_says: "The address names a record that this book does not hold. It may come with somebody’s log.";
    to_field: "To the field page";
    which_book: "Which book this is";
    sample_name: "Sample book.";
    sample_says: "Invented, not yours.";
    own_book: "My book";
    throw_away: "Throw away";
    throw_away_says(events: usize): format!("Throws away {} of the sample. Your own book stays as it is.", counted(events, "event", "events"));
    throw_away_do: "Throw it away";
    keep_sample: "Keep it";
    number_keys: "Number keys";
    rub_out: "Rub out";
    key_to: "To";
    key_now: "Now";
    one_fewer: "One fewer";
    one_more: "One more";
    more_rows(left: usize): format!("Show more, {} left", super::dates::grouped(left));
} }
