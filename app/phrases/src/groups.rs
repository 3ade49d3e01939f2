//! Groups of insects: what a person types, and the Latin name that stands beside it as a code.
//!
//! In goes what was typed, out comes the code where it is one of the list, or the names that would complete it.
//! What was typed is never changed here.

/// One order or family.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Group {
    /// The Latin name, which is the code.
    pub code: &'static str,
    /// Names in the language, the one to be offered first.
    pub names: &'static [&'static str],
}

/// The code of what was typed, where it is a name in the language or the Latin name.
pub fn code_of(groups: &[Group], typed: &str) -> Option<&'static str> {
    let typed = folded(typed);
    let named = |group: &&Group| folded(group.code) == typed || group.names.iter().any(|name| folded(name) == typed);
    groups.iter().find(named).map(|group| group.code)
}

/// The name of a code in the language.
pub fn name_of(groups: &[Group], code: &str) -> Option<&'static str> {
    groups.iter().find(|group| group.code == code)?.names.first().copied()
}

/// Names that complete what was typed: those that begin so, then those with a word that begins so; at most `most`.
pub fn completions(groups: &[Group], typed: &str, most: usize) -> Vec<(&'static str, &'static str)> {
    let typed = folded(typed);
    if typed.is_empty() {
        return Vec::new();
    }
    let mut begins = Vec::new();
    let mut within = Vec::new();
    for group in groups {
        let names = || group.names.iter().copied().chain([group.code]);
        if let Some(name) = names().find(|name| folded(name).starts_with(&typed)) {
            begins.push((name, group.code));
        } else if let Some(name) = names().find(|name| folded(name).contains(&format!(" {typed}"))) {
            within.push((name, group.code));
        }
    }
    begins.into_iter().chain(within).take(most).collect()
}

fn folded(name: &str) -> String {
    name.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ").replace('-', " ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::english::ENGLISH;

    #[test]
    fn english_and_latin_names_lead_to_the_same_code() {
        for typed in ["Hover flies", "hoverfly", "syrphidae", " Hover  fly "] {
            assert_eq!(code_of(ENGLISH.groups, typed), Some("Syrphidae"), "{typed}");
        }
        assert_eq!(code_of(ENGLISH.groups, "dragons"), None);
    }

    #[test]
    fn every_code_stands_once_and_has_a_name() {
        for group in ENGLISH.groups {
            assert_eq!(ENGLISH.groups.iter().filter(|other| other.code == group.code).count(), 1, "{}", group.code);
            assert!(name_of(ENGLISH.groups, group.code).is_some(), "{}", group.code);
        }
    }

    #[test]
    fn no_name_means_two_groups() {
        for group in ENGLISH.groups {
            for name in group.names {
                assert_eq!(code_of(ENGLISH.groups, name), Some(group.code), "{name}");
            }
        }
    }

    #[test]
    fn completions_begin_as_typed_before_those_that_hold_it() {
        let found = completions(ENGLISH.groups, "fl", 6);
        assert_eq!(found.first(), Some(&("Flies", "Diptera")));
        let moths = completions(ENGLISH.groups, "moth", 12);
        let at = |wanted: &str| moths.iter().position(|(name, _)| *name == wanted);
        assert!(at("Moths") < at("Burnet moths"), "{moths:?}");
        assert_eq!(completions(ENGLISH.groups, "", 6), []);
    }
}
