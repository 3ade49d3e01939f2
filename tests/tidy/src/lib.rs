//! The house's own rules as ordinary tests: arrows between crates, paths named, sentences, leftovers, layout.
//!
//! In go the files of the repository as they lie, out comes one failure a rule with every place that breaks it.
//! What the code does is left alone.

#![cfg(test)]

mod arrows;
mod layout;
mod leftovers;
mod literals;
mod paths;
mod product;
mod sentences;

use std::path::{Path, PathBuf};

/// Folders that hold nothing of ours.
const NOT_OURS: [&str; 6] = [".git", "target", "dist", "node_modules", "out", "fonts"];

/// A text file of the repository.
pub struct Text {
    /// Path below the top, with `/` between its parts.
    pub path: String,
    /// What it says.
    pub text: String,
}

/// The top of the repository.
pub fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().expect("this crate lies in tests/tidy")
}

/// The text files below a folder whose names end in one of `ends`, ordered by path.
pub fn texts(folder: &str, ends: &[&str]) -> Vec<Text> {
    let mut found = Vec::new();
    walk(&top().join(folder), &mut |path| {
        let name = path.strip_prefix(top()).expect("the walk stays below the top").to_string_lossy().replace('\\', "/");
        if !ends.iter().any(|end| name.ends_with(end)) {
            return;
        }
        let text = std::fs::read_to_string(path).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        found.push(Text { path: name, text });
    });
    found.sort_by(|a, b| a.path.cmp(&b.path));
    found
}

fn walk(folder: &Path, visit: &mut impl FnMut(&Path)) {
    for entry in std::fs::read_dir(folder).unwrap_or_else(|fault| panic!("{}: {fault}", folder.display())) {
        let entry = entry.expect("a folder's entry can be read");
        let kind = entry.file_type().expect("an entry has a kind");
        if NOT_OURS.iter().any(|name| entry.file_name() == *name) {
            continue;
        }
        if kind.is_dir() {
            walk(&entry.path(), visit);
        } else if kind.is_file() {
            visit(&entry.path());
        }
    }
}

/// Fails with all that was found, one a line.
pub fn none(rule: &str, found: Vec<String>) {
    assert!(found.is_empty(), "{rule}\n  {}\n", found.join("\n  "));
}

#[test]
fn the_walk_finds_this_file() {
    assert!(texts("tests/tidy", &[".rs"]).iter().any(|file| file.path == "tests/tidy/src/lib.rs"));
}
