//! Nothing is put off, skipped, or tied to one machine.

use crate::{none, texts};

const ENDS: [&str; 10] = [".rs", ".mjs", ".js", ".sh", ".toml", ".md", ".css", ".html", ".json", ".webmanifest"];

/// Words that put work off or skip a test; written apart, so that this file does not find itself.
const PUT_OFF: [&str; 8] = [
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("XX", "X:"),
    concat!("#[ign", "ore"),
    concat!("test.sk", "ip("),
    concat!("it.sk", "ip("),
    concat!("test.on", "ly("),
    concat!("todo", "!("),
];

/// Places that only one machine has.
const MACHINE: [&str; 4] =
    [concat!("/wo", "rk/"), concat!("/ro", "ot/"), concat!(".libr", "ary"), concat!("/ho", "me/")];

fn found(words: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for file in texts("", &ENDS).iter().filter(|file| !file.path.ends_with("package-lock.json")) {
        for (at, line) in file.text.lines().enumerate() {
            found.extend(
                words
                    .iter()
                    .filter(|word| line.contains(**word))
                    .map(|word| format!("{}:{}: {word}", file.path, at + 1)),
            );
        }
    }
    found
}

#[test]
fn nothing_is_put_off_or_skipped() {
    none("Do it, or leave it out:", found(&PUT_OFF));
}

#[test]
fn no_file_names_a_place_on_one_machine() {
    none("These places exist on one machine only:", found(&MACHINE));
}

#[test]
fn a_leftover_is_seen() {
    assert!(found(&["fn a_leftover_is_seen"]).iter().any(|place| place.starts_with("tests/tidy/src/leftovers.rs:")));
}
