//! Which crate of ours may use which, and what each must not know of the outside.

use crate::product::sources;
use crate::{none, top};

/// Each crate with those of ours that it may use. A crate that is missing here is a new room in the house: draw its
/// arrows first.
const ARROWS: [(&str, &[&str]); 18] = [
    ("units", &[]),
    ("record", &["units"]),
    ("number", &["units"]),
    ("place", &["units"]),
    ("wording", &["units"]),
    ("label", &["units"]),
    ("ports", &["units"]),
    ("exchange", &["number", "place", "record", "units"]),
    ("logbook", &["number", "place", "ports", "record", "units", "wording"]),
    ("phrases", &[]),
    ("browser", &["ports", "units"]),
    ("ui", &["logbook", "phrases", "ports"]),
    ("shell", &["browser", "ports", "ui"]),
    ("press", &["label", "ports", "units"]),
    ("courier", &["exchange", "number", "place", "ports", "record"]),
    ("reader", &["number", "ports"]),
    ("pack", &[]),
    ("tidy", &[]),
];

/// What a crate of ours must not depend on, or name in its code.
const UNKNOWN: [(&str, &[&str]); 3] = [
    ("browser", &["leptos"]),
    (
        "ui",
        &["gloo_storage", "gloo-storage", "indexed_db", "IdbDatabase", "localStorage", "local_storage", "Geolocation"],
    ),
    ("logbook", &["web_sys", "web-sys", "js_sys", "js-sys", "SystemTime", "Instant::now"]),
];

/// Crates that behave the same natively and in the browser.
const PURE: [&str; 9] = ["units", "record", "number", "place", "wording", "label", "exchange", "ports", "logbook"];

/// What tells the two apart, or asks the outside.
const IMPURE: [&str; 7] =
    ["target_arch", "std::thread", "SystemTime", "Instant::now", "Utc::now", "Local::now", "std::env::var"];

/// Trigonometry that differs in the last bits between the targets; `libm` does not.
const TRIGONOMETRY: [&str; 9] =
    [".sin()", ".cos()", ".tan()", ".asin()", ".acos()", ".atan()", ".atan2(", ".sin_cos()", ".sinh()"];

/// The names under `[dependencies]`, target-specific ones too; dev-dependencies stay out of the product.
fn dependencies(manifest: &str) -> Vec<&str> {
    let mut inside = false;
    let mut found = Vec::new();
    for line in manifest.lines() {
        if line.starts_with('[') {
            inside = line.ends_with("dependencies]") && !line.contains("dev-dependencies");
        } else if inside && line.starts_with(|first: char| first.is_ascii_alphabetic()) {
            found.push(line.split(['.', ' ', '=']).next().expect("a split has a first part"));
        }
    }
    found
}

fn allowed(name: &str) -> Option<&'static [&'static str]> {
    ARROWS.iter().find(|(from, _)| *from == name).map(|(_, to)| *to)
}

/// The crates of ours that a manifest uses against the arrows.
fn crossed(name: &str, manifest: &str) -> Vec<String> {
    let Some(allowed) = allowed(name) else {
        return vec![format!("{name} has no arrows yet")];
    };
    dependencies(manifest)
        .into_iter()
        .filter(|used| ARROWS.iter().any(|(ours, _)| ours == used) && !allowed.contains(used))
        .map(|used| format!("{name} uses {used}"))
        .collect()
}

fn rooms() -> Vec<String> {
    let entries = std::fs::read_dir(top().join("app")).expect("there is an app folder");
    let mut names: Vec<String> = entries
        .map(|entry| entry.expect("a folder's entry can be read"))
        .filter(|entry| entry.path().join("Cargo.toml").is_file())
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// A source without its comments.
fn code(text: &str) -> String {
    text.lines().map(|line| line.split("//").next().expect("a split has a first part")).collect::<Vec<_>>().join("\n")
}

/// The places where a crate's code says one of the words.
fn said(name: &str, words: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for file in sources(name) {
        let code = code(&file.text);
        found.extend(words.iter().filter(|word| code.contains(**word)).map(|word| format!("{}: {word}", file.path)));
    }
    found
}

#[test]
fn crates_use_what_their_arrows_say() {
    let manifest = |name: &str| {
        std::fs::read_to_string(top().join("app").join(name).join("Cargo.toml")).expect("each crate has a manifest")
    };
    none("These arrows are not drawn:", rooms().iter().flat_map(|name| crossed(name, &manifest(name))).collect());
}

#[test]
fn crates_do_not_name_what_they_must_not_know() {
    let mut found = Vec::new();
    for (name, words) in UNKNOWN {
        found.extend(said(name, words));
        let manifest =
            std::fs::read_to_string(top().join("app").join(name).join("Cargo.toml")).expect("it has a manifest");
        let used = dependencies(&manifest);
        found.extend(
            words.iter().filter(|word| used.contains(word)).map(|word| format!("app/{name}/Cargo.toml: {word}")),
        );
    }
    none("These crates know too much:", found);
}

#[test]
fn pure_crates_are_the_same_on_every_target() {
    let words: Vec<&str> = IMPURE.iter().chain(&TRIGONOMETRY).copied().collect();
    let rooms = rooms();
    let pure = PURE.iter().filter(|name| rooms.iter().any(|room| room == *name));
    none("These would differ between targets, or ask the outside:", pure.flat_map(|name| said(name, &words)).collect());
}

#[test]
fn a_crossed_arrow_is_seen() {
    let manifest = "[package]\nname = \"label\"\n[dependencies]\nunits.workspace = true\nrecord = { path = \"..\" }\n\
                    [dev-dependencies]\nplace.workspace = true\n";
    assert_eq!(crossed("label", manifest), ["label uses record"]);
    assert_eq!(crossed("attic", manifest), ["attic has no arrows yet"]);
}

#[test]
fn comments_are_not_code() {
    assert_eq!(code("let a = 1; // .sin()\nlet b"), "let a = 1; \nlet b");
}
