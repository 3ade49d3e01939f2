//! Lists of numbers drawn together: 0139 to 0141 and 0145.

use crate::habit::letters_order;
use crate::reading::Number;

/// Numbers one after the other; first and last are the same for one alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run {
    /// What stands before the running part, as on the first.
    pub prefix: String,
    /// The running part of the first, with device and event letters.
    pub first: String,
    /// The running part of the last.
    pub last: String,
}

/// The runs in a list of numbers, in order of prefix and number; a number twice is drawn once.
///
/// What is no number stands alone at the end, as it is.
pub fn compact<'a>(numbers: impl IntoIterator<Item = &'a str>) -> Vec<Run> {
    let mut read = Vec::new();
    let mut other = Vec::new();
    for text in numbers {
        match Number::read(text) {
            Some(number) => read.push((number.key(), number)),
            None => other.push(Run { prefix: String::new(), first: text.to_owned(), last: text.to_owned() }),
        }
    }
    read.sort_by(|(a, _), (b, _)| order(a).cmp(&order(b)));
    read.dedup_by(|(a, _), (b, _)| a == b);
    let mut runs: Vec<Run> = Vec::new();
    let mut before: Option<&crate::Key> = None;
    for (key, number) in &read {
        match runs.last_mut() {
            Some(run) if before.is_some_and(|before| follows(before, key)) => run.last = number.run(),
            _ => runs.push(Run { prefix: number.prefix.clone(), first: number.run(), last: number.run() }),
        }
        before = Some(key);
    }
    runs.extend(other);
    runs
}

/// By head, number, and letters in their own order: z before aa.
fn order(key: &crate::Key) -> (&str, u64, Option<u32>, &str) {
    (&key.head, key.running, letters_order(&key.letters), &key.letters)
}

/// Whether the second number comes right after the first.
fn follows(first: &crate::Key, second: &crate::Key) -> bool {
    let next_running = first.running.checked_add(1) == Some(second.running);
    let plain = first.letters.is_empty() && second.letters.is_empty() && next_running;
    let next_letter = letters_order(&first.letters).map(|order| order + 1) == letters_order(&second.letters);
    let lettered = !first.letters.is_empty() && first.running == second.running && next_letter;
    first.head == second.head && (plain || lettered)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Numbering, span};
    use proptest::prelude::*;

    fn check(numbers: &[&str], expected: &[(&str, &str, &str)]) {
        let runs = compact(numbers.iter().copied());
        let runs: Vec<_> = runs.iter().map(|r| (r.prefix.as_str(), r.first.as_str(), r.last.as_str())).collect();
        assert_eq!(runs, expected, "{numbers:?}");
    }

    #[test]
    fn neighbours_are_drawn_together() {
        check(&["0139", "0140", "0141", "0145"], &[("", "0139", "0141"), ("", "0145", "0145")]);
        check(&["IV27-0141", "iv27 0139", "IV27-0140", "IV27-0140"], &[("iv27 ", "0139", "0141")]);
        check(&["IV27-0002", "DO27-0001"], &[("DO27-", "0001", "0001"), ("IV27-", "0002", "0002")]);
        check(&["IV27-B0001", "IV27-B0002"], &[("IV27-", "B0001", "B0002")]);
        check(&["19z", "19aa", "19c", "19y", "20"], &[("", "19c", "19c"), ("", "19y", "19aa"), ("", "20", "20")]);
        check(&["99", "100", "net"], &[("", "99", "100"), ("", "net", "net")]);
        check(&[], &[]);
    }

    proptest! {
        #[test]
        fn a_span_compacts_to_its_ends(first in 0_u64..9_000, more in 0_u64..499) {
            let numbering = Numbering { prefix: "IV27-".into(), width: 4, ..Numbering::default() };
            let (first, last) = (format!("{first:04}"), format!("{:04}", first + more));
            let list = span(&numbering, &first, &last).expect("a span");
            let runs = compact(list.iter().map(String::as_str));
            prop_assert_eq!(runs, vec![Run { prefix: "IV27-".into(), first, last }]);
        }
    }
}
