//! English.

mod bench;
mod catch;
mod codes;
mod conflict;
mod container;
mod dates;
mod day;
mod desk;
mod event;
mod export;
mod faults;
mod first;
mod frame;
mod groups;
mod import;
mod labels;
mod marks;
mod open;
mod place;
mod search;
mod setup;
mod site;
mod sky;
mod start;

use crate::Phrases;
use std::iter;

/// The language.
struct English;

/// All sentences in English.
pub static ENGLISH: Phrases = Phrases {
    frame: &English,
    dates: &English,
    codes: &English,
    marks: &English,
    faults: &English,
    start: &English,
    first: &English,
    catch: &English,
    place: &English,
    container: &English,
    site: &English,
    open: &English,
    sky: &English,
    event: &English,
    desk: &English,
    day: &English,
    search: &English,
    export: &English,
    import: &English,
    conflict: &English,
    bench: &English,
    labels: &English,
    setup: &English,
    groups: groups::GROUPS,
};

/// `1 vial`, `6 vials`.
fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{} {}", dates::grouped(count), if count == 1 { one } else { many })
}

/// The first letter large, for the start of a sentence: our own words, which begin with letters of ASCII.
fn large(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| iter::once(first.to_ascii_uppercase()).chain(letters).collect())
}
