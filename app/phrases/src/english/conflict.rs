//! Two people's values for one field.

use super::{ENGLISH, English, counted};
use crate::sentences::say;
use chrono::NaiveDate;

say! { English says Conflict {
    title(field: &str): format!("Which {} is right?", ENGLISH.event.field(field));
    index(at: usize, of: usize): format!("{at} of {of}");
    says: "Two people changed it without seeing each other. Both are kept until one of you picks.";
    the_event: "What it is about";
    values(count: usize): counted(count, "value", "values");
    keep: "Keep this";
    other_ways: "Other ways";
    write_another: "Write another";
    later: "Decide later";
    next: "The next one";
    clocks: "Times are what each device’s own clock said. They do not decide.";
    agrees: "Everything else in this record agrees.";
    others(count: usize): format!("{} in this record.", counted(count, "more field waits", "more fields wait"));
    none: "Nothing to settle.";
    none_says: "No field of this record has two values. Everything in it agrees.";
    unnamed: "nobody named";
    at(day: NaiveDate, clock: &str): if clock.is_empty() { ENGLISH.dates.short(day) } else { format!("{}, {clock}", ENGLISH.dates.short(day)) };
    how_1: "Neither value is lost by waiting. Whoever picks first settles it for everybody, with the next exchange of logs.";
    how_2: "Picking can be undone.";
} }
