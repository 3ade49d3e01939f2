//! What lies at the top, how long files are, and that styles stay at home.

use crate::{none, texts, top};

/// What may lie at the top: each has its line in DEVELOPERS.md or is a tool's own file.
const TOP: [&str; 18] = [
    ".cargo",
    ".ci",
    ".git",
    ".gitignore",
    ".rustfmt.toml",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "Trunk.toml",
    "app",
    "demo",
    "public",
    "tests",
    // Built, and ignored.
    "dist",
    "target",
    "node_modules",
];

const LONGEST: usize = 600;

#[test]
fn the_top_holds_what_belongs_there() {
    let entries = std::fs::read_dir(top()).expect("the top can be read");
    let names =
        entries.map(|entry| entry.expect("a folder's entry can be read").file_name().to_string_lossy().into_owned());
    none("These do not belong at the top:", names.filter(|name| !TOP.contains(&name.as_str())).collect());
}

#[test]
fn files_stay_short() {
    let long = texts("", &[".rs", ".mjs", ".js", ".sh", ".css"])
        .into_iter()
        .map(|file| (file.text.lines().count(), file.path))
        .filter(|(lines, _)| *lines > LONGEST)
        .map(|(lines, path)| format!("{path}: {lines} lines"))
        .collect();
    none("These files are too long to be read in one go:", long);
}

#[test]
fn styles_and_the_page_ask_for_nothing_elsewhere() {
    let mut found = Vec::new();
    for file in texts("public", &[".css", ".js", ".webmanifest"]).into_iter().chain(texts("app/shell", &[".html"])) {
        let calls = file.text.lines().enumerate().filter(|(_, line)| line.contains("://") || line.contains("@import"));
        found.extend(calls.map(|(at, line)| format!("{}:{}: {}", file.path, at + 1, line.trim())));
    }
    none("These reach out of the origin:", found);
}
