//! Finding a number again as it is typed at the bench.
//!
//! In go what was typed and the numbers that exist; out come the positions of those that are meant. Opening one of
//! several is left to a person.

use crate::flat::{Flat, Sign};

/// Which of the candidates a typed number means, by their positions.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Matches {
    /// The full number: more than one only when it really stands more than once, or reads in two ways.
    Exact(Vec<usize>),
    /// The running number, under one or several prefixes: last year's, a colleague's.
    Running(Vec<usize>),
    /// No candidate.
    #[default]
    None,
}

/// How well a candidate fits; the best fit that occurs wins alone.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    Exact,
    ExactOtherLetters,
    Running,
    RunningOtherLetters,
    HeadPart,
    HeadPartOtherLetters,
    HeadOther,
    HeadOtherLetters,
    Rejoined,
}

/// The candidates that a typed number means.
///
/// **Shape**: with a prefix typed, candidates with that prefix; failing these, with a prefix that begins or ends like
/// it (`27-147`, `B147`); failing these, with any other. Without one, every candidate with this running number.
/// Letters that were not typed are free: `19` means 19 if it exists, otherwise 19a to 19f.
pub fn matches<'a>(typed: &str, candidates: impl IntoIterator<Item = &'a str>) -> Matches {
    let Some(typed) = Flat::of(typed).filter(Flat::has_digits) else { return Matches::None };
    let mut best: Option<Fit> = None;
    let mut found = Vec::new();
    let mut bare = true;
    for (at, text) in candidates.into_iter().enumerate() {
        let Some((candidate, fit)) = Flat::of(text).and_then(|c| fit(&typed, &c).map(|fit| (c, fit))) else { continue };
        if best.is_none_or(|best| fit < best) {
            best = Some(fit);
            found.clear();
            bare = true;
        }
        if best == Some(fit) {
            found.push(at);
            bare &= candidate.head().is_empty();
        }
    }
    match best {
        None => Matches::None,
        Some(Fit::Exact | Fit::ExactOtherLetters) => Matches::Exact(found),
        Some(Fit::Running | Fit::RunningOtherLetters) if bare => Matches::Exact(found),
        Some(_) => Matches::Running(found),
    }
}

/// How well one candidate fits. `None` for not at all.
fn fit(typed: &Flat, candidate: &Flat) -> Option<Fit> {
    if !candidate.has_digits() {
        return None;
    }
    let whole = typed.whole() == candidate.whole();
    // Written in one go, `iv27147`: where the prefix ends can only be seen from the candidate.
    let joined = joined(typed.whole(), candidate);
    if whole || joined {
        return Some(if typed.head().is_empty() && typed.run() == typed.whole() && candidate.head().is_empty() {
            Fit::Running
        } else {
            Fit::Exact
        });
    }
    if typed.figure() != candidate.figure() {
        return rejoined(typed, candidate);
    }
    let same = typed.letters() == candidate.letters();
    if !same && !typed.letters().is_empty() {
        return None;
    }
    let (head, other) = (typed.head(), candidate.head());
    Some(match () {
        () if head.is_empty() && same => Fit::Running,
        () if head.is_empty() => Fit::RunningOtherLetters,
        () if head == other && same => Fit::Exact,
        () if head == other => Fit::ExactOtherLetters,
        () if (other.starts_with(head) || other.ends_with(head)) && same => Fit::HeadPart,
        () if other.starts_with(head) || other.ends_with(head) => Fit::HeadPartOtherLetters,
        () if same => Fit::HeadOther,
        () => Fit::HeadOtherLetters,
    })
}

/// Whether the typed signs are the candidate's prefix followed at once by its number without zeros.
fn joined(typed: &[Sign], candidate: &Flat) -> bool {
    !candidate.head().is_empty() && typed.strip_prefix(candidate.head()) == Some(candidate.core())
}

/// Digits with a stray blank in them, `01 47`: tried last.
fn rejoined(typed: &Flat, candidate: &Flat) -> Option<Fit> {
    if typed.head().is_empty() || !typed.head_is_digits() {
        return None;
    }
    let zeros = typed.whole().iter().take_while(|sign| **sign == 0).count();
    (&typed.whole()[zeros..] == candidate.core()).then_some(Fit::Rejoined)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const KNOWN: [&str; 9] =
        ["IV27-0147", "DO27-0147", "IV26-0147", "IV27-0148", "19a", "19b", "20", "20a", "IV27-B0150"];

    fn check(typed: &str, expected: Matches) {
        assert_eq!(matches(typed, KNOWN), expected, "{typed}");
    }

    #[test]
    fn a_full_number_means_itself() {
        for typed in ["IV27-0147", "iv27 0147", "IV27–147", "iv270147", "iv27147", " Iv27/0147 "] {
            check(typed, Matches::Exact(vec![0]));
        }
        check("IV27-B0150", Matches::Exact(vec![8]));
        check("20", Matches::Exact(vec![6]));
        check("20A", Matches::Exact(vec![7]));
    }

    #[test]
    fn a_running_number_means_every_prefix() {
        check("147", Matches::Running(vec![0, 1, 2]));
        check("0147", Matches::Running(vec![0, 1, 2]));
        check("01 47", Matches::Running(vec![0, 1, 2]));
        check("148", Matches::Running(vec![3]));
    }

    #[test]
    fn a_number_without_prefix_does_not_hide_one_with() {
        assert_eq!(matches("147", ["147", "IV27-0147"]), Matches::Running(vec![0, 1]));
        assert_eq!(matches("147", ["147", "0147", "148"]), Matches::Exact(vec![0, 1]));
    }

    #[test]
    fn part_of_a_prefix_comes_before_another() {
        check("27-147", Matches::Running(vec![0, 1]));
        check("iv 147", Matches::Running(vec![0, 2]));
        check("B150", Matches::Running(vec![8]));
        check("XX-147", Matches::Running(vec![0, 1, 2]));
    }

    #[test]
    fn letters_not_typed_are_free() {
        check("19", Matches::Exact(vec![4, 5]));
        check("19 b", Matches::Exact(vec![5]));
        check("19c", Matches::None);
    }

    #[test]
    fn unknown_numbers_mean_nothing() {
        for typed in ["149", "IV27-0149", "", "vial", "ßß"] {
            check(typed, Matches::None);
        }
    }

    proptest! {
        #[test]
        fn every_number_finds_itself(head in "([A-Z]{1,3}[0-9]{0,2}-)?", run in 0_u64..100_000, letters in "[a-z]{0,2}") {
            let number = format!("{head}{run:04}{letters}");
            let found = matches(&number, [number.as_str(), "ZZ99-123456"]);
            prop_assert_eq!(found, Matches::Exact(vec![0]));
        }

        #[test]
        fn anything_typed_is_looked_up_without_panic(typed in ".{0,30}") {
            let _ = matches(&typed, KNOWN);
        }
    }
}
