//! The product's own code: without the tests that lie among it.

use crate::{Text, texts};

const TEST: &str = "#[cfg(test)]\nmod ";

/// The sources of a crate of `app/`, without modules that are compiled for tests only.
pub fn sources(name: &str) -> Vec<Text> {
    let files = texts(&format!("app/{name}/src"), &[".rs"]);
    let tests: Vec<String> = files.iter().flat_map(test_modules).collect();
    let is_test = |path: &str| {
        tests.iter().any(|module| path == format!("{module}.rs") || path.starts_with(&format!("{module}/")))
    };
    let kept = files.into_iter().filter(|file| !is_test(&file.path));
    kept.map(|file| Text { text: without_tests(&file.text).to_owned(), path: file.path }).collect()
}

/// The paths, without `.rs`, of the modules that a file declares for tests only.
fn test_modules(file: &Text) -> Vec<String> {
    let (folder, name) = file.path.rsplit_once('/').expect("a source lies in a folder");
    let stem = name.trim_end_matches(".rs");
    let home = if ["lib", "main", "mod"].contains(&stem) { folder.to_owned() } else { format!("{folder}/{stem}") };
    let declared = file.text.split(TEST).skip(1).filter_map(|rest| rest.lines().next()?.strip_suffix(';'));
    declared.map(|module| format!("{home}/{module}")).collect()
}

/// A source up to its module of tests, which comes last.
pub fn without_tests(text: &str) -> &str {
    let inline = text
        .match_indices(TEST)
        .find(|(at, _)| text[at + TEST.len()..].lines().next().is_some_and(|line| line.ends_with('{')));
    inline.map_or(text, |(at, _)| &text[..at])
}

#[test]
fn tests_are_not_the_product() {
    assert_eq!(without_tests("fn a() {}\n#[cfg(test)]\nmod tests {\n}"), "fn a() {}\n");
    let declares = "#[cfg(test)]\nmod speed;\nfn a() {}";
    assert_eq!(without_tests(declares), declares);
    let modules = |path: &str| test_modules(&Text { path: path.into(), text: declares.into() });
    assert_eq!(modules("app/x/src/bench.rs"), ["app/x/src/bench/speed"]);
    assert_eq!(modules("app/x/src/lib.rs"), ["app/x/src/speed"]);
}
