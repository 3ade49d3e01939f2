//! Every path that DEVELOPERS.md names exists.

use crate::{none, texts, top};

const ENDS: [&str; 9] = [".rs", ".toml", ".md", ".mjs", ".js", ".sh", ".css", ".html", ".json"];

/// The words in backticks that are meant as paths: with a slash, or an ending of ours, and nothing to fill in.
fn named(text: &str) -> Vec<&str> {
    let fenced = text.split("```").step_by(2);
    let quoted = fenced.flat_map(|prose| prose.split('`').skip(1).step_by(2));
    quoted.filter(|word| looks_like_path(word)).collect()
}

fn looks_like_path(word: &str) -> bool {
    let plain = word.chars().all(|c| c.is_ascii_alphanumeric() || "/._-".contains(c));
    let relative = !word.starts_with(['/', '-']) && !word.starts_with("./") && !word.starts_with("..");
    plain && relative && (word.trim_end_matches('/').contains('/') || ENDS.iter().any(|end| word.ends_with(end)))
}

/// A path counts from the top, or from `app/`.
fn exists(path: &str) -> bool {
    top().join(path).exists() || top().join("app").join(path).exists()
}

#[test]
fn every_path_in_the_developers_page_exists() {
    let page = std::fs::read_to_string(top().join("DEVELOPERS.md")).expect("there is a DEVELOPERS.md");
    let found = named(&page).into_iter().filter(|path| !exists(path)).map(str::to_owned).collect();
    none("DEVELOPERS.md names what is not there:", found);
}

#[test]
fn every_path_in_the_readme_exists() {
    for file in texts("", &["README.md"]).iter().filter(|file| file.path == "README.md") {
        let links = file.text.split("](").skip(1).filter_map(|rest| rest.split(')').next());
        let local = links.filter(|link| !link.contains("://") && !link.starts_with('#'));
        none("README.md links to what is not there:", local.filter(|link| !exists(link)).map(str::to_owned).collect());
    }
}

#[test]
fn words_that_are_no_paths_are_left_alone() {
    let text = "`tests/run.sh` and `app/ui/`, `cargo test`, `a::b`, `./code/`, `code-<digest>/`, `Trunk.toml`\n```\n`x/y`\n```\n";
    assert_eq!(named(text), ["tests/run.sh", "app/ui/", "Trunk.toml"]);
    assert!(exists("tests/run.sh") && !exists("tests/walk.sh"));
}
