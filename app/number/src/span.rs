//! Spans of numbers: "0147 to 0152".
//!
//! In go two ends, or one text with both; out comes the list of whole numbers, or why there is none. Whether they are
//! free is a second question ([`taken`]).

use crate::habit::{Numbering, letters, letters_order};
use crate::reading::{Key, Number};
use crate::signs::plain;
use std::collections::BTreeSet;

/// Most numbers that one span may have; more is a slip of the hand.
pub const SPAN_LIMIT: u64 = 500;

/// Words that stand between the ends of a span, in the languages of those who write them.
const WORDS: [&str; 4] = ["to", "bis", "à", "until"];

/// Why two ends make no span.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SpanProblem {
    /// The first end is no number.
    First,
    /// The last end is no number.
    Last,
    /// The last comes before the first.
    Reversed,
    /// So many numbers, more than [`SPAN_LIMIT`].
    TooLong(u64),
    /// The ends have different prefixes.
    PrefixDiffers,
    /// One end has letters and the other none, or letters of another event, or others than a to zz.
    Letters,
}

/// The numbers from the first to the last, both included, with prefix and zeros as the numbering writes them.
///
/// An empty last end means the first alone. A last end with fewer digits takes the leading ones of the first
/// (0147 to 52), and letters alone stay in the event (19a to f).
///
/// **Errors**: see [`SpanProblem`].
pub fn span(numbering: &Numbering, first: &str, last: &str) -> Result<Vec<String>, SpanProblem> {
    let first = numbering.complete(first).ok_or(SpanProblem::First)?;
    if last.trim().is_empty() {
        return Ok(vec![first.text()]);
    }
    let last = last_end(numbering, &first, last)?;
    if last.key().head != first.key().head {
        return Err(SpanProblem::PrefixDiffers);
    }
    match (first.letters.is_empty(), last.letters.is_empty()) {
        (true, true) => running(&first, last.running),
        (false, false) if first.running == last.running => lettered(&first, &last.letters),
        _ => Err(SpanProblem::Letters),
    }
}

/// The numbers of one text: "0147 to 0152", "147-152", "147..152", "IV27-0147 – IV27-0152", or a single number.
///
/// **Errors**: see [`SpanProblem`].
pub fn span_text(numbering: &Numbering, text: &str) -> Result<Vec<String>, SpanProblem> {
    let text: String = text.trim().chars().map(plain).collect();
    let (first, last) = between_words(&text).or_else(|| at_dash(numbering, &text)).unwrap_or((&text, ""));
    span(numbering, first, last)
}

/// Those of the numbers that exist already, in their order.
pub fn taken<'a>(numbers: &[String], existing: impl IntoIterator<Item = &'a str>) -> Vec<String> {
    let key = |text: &str| Number::read(text).map(|number| number.key());
    let existing: BTreeSet<Key> = existing.into_iter().filter_map(key).collect();
    numbers.iter().filter(|number| key(number).is_some_and(|key| existing.contains(&key))).cloned().collect()
}

/// The last end as a whole number.
fn last_end(numbering: &Numbering, first: &Number, typed: &str) -> Result<Number, SpanProblem> {
    let Some(mut last) = Number::read(typed) else {
        return letters_alone(first, typed).ok_or(SpanProblem::Last);
    };
    if !last.key().head.is_empty() {
        return numbering.complete(typed).ok_or(SpanProblem::Last);
    }
    last.prefix.clone_from(&first.prefix);
    last.device = first.device;
    if last.digits.len() < first.digits.len() && last.running < first.running {
        let lead = first.digits.len() - last.digits.len();
        last.digits = format!("{}{}", &first.digits[..lead], last.digits);
        last.running = last.digits.parse().map_err(|_| SpanProblem::Last)?;
    }
    Ok(last)
}

/// The first end with other letters: `f` after `19a`.
fn letters_alone(first: &Number, typed: &str) -> Option<Number> {
    let letters = typed.trim().to_lowercase();
    let fits = !first.letters.is_empty() && letters_order(&letters).is_some();
    fits.then(|| Number { letters, ..first.clone() })
}

fn running(first: &Number, last: u64) -> Result<Vec<String>, SpanProblem> {
    let count = last.checked_sub(first.running).ok_or(SpanProblem::Reversed)? + 1;
    if count > SPAN_LIMIT {
        return Err(SpanProblem::TooLong(count));
    }
    Ok((first.running..=last).map(|running| first.with_running(running).text()).collect())
}

fn lettered(first: &Number, last: &str) -> Result<Vec<String>, SpanProblem> {
    let from = letters_order(&first.letters).ok_or(SpanProblem::Letters)?;
    let until = letters_order(last).ok_or(SpanProblem::Letters)?;
    let count = u64::from(until.checked_sub(from).ok_or(SpanProblem::Reversed)?) + 1;
    if count > SPAN_LIMIT {
        return Err(SpanProblem::TooLong(count));
    }
    let number = |letters| Number { letters, ..first.clone() };
    Ok((from..=until).filter_map(letters).map(|letters| number(letters).text()).collect())
}

/// Both ends of a text with a word, dots or an ellipsis between them.
fn between_words(text: &str) -> Option<(&str, &str)> {
    for dots in ["...", "..", "…"] {
        if let Some((first, last)) = text.split_once(dots) {
            return Some((first.trim(), last.trim()));
        }
    }
    let mut words = text.split(' ');
    let word = words.find(|word| WORDS.contains(&word.to_lowercase().as_str()))?;
    let at = word.as_ptr() as usize - text.as_ptr() as usize;
    Some((text[..at].trim(), text[at + word.len()..].trim()))
}

/// Both ends of a text with a dash between them that does not belong to the numbers themselves.
fn at_dash<'a>(numbering: &Numbering, text: &'a str) -> Option<(&'a str, &'a str)> {
    let dashes: Vec<usize> = text.match_indices('-').map(|(at, _)| at).collect();
    let split = |at: usize| (text[..at].trim(), text[at + 1..].trim());
    // A dash between two whole numbers with the same prefix.
    let paired = dashes.iter().copied().find(|&at| {
        let (first, last) = split(at);
        head(first).is_some_and(|one| !one.is_empty() && head(last) == Some(one))
    });
    // The last dash, when what stands before it is a number and not the prefix of one.
    let last = dashes.last().copied().filter(|&at| {
        let (first, last) = split(at);
        ends_alike(first, last) && !is_prefix(numbering, first)
    });
    paired.or(last).map(split)
}

/// Whether a text may be the last end after this first one: no prefix, or letters after a first end with letters.
fn ends_alike(first: &str, last: &str) -> bool {
    let Some(read) = Number::read(first) else { return false };
    let whole = read.prefix.is_empty() || first.contains(['-', ' ', '/']);
    match head(last) {
        Some(head) => head.is_empty() && whole,
        None => letters_alone(&read, last).is_some() && !read.letters.is_empty(),
    }
}

fn head(text: &str) -> Option<String> {
    Number::read(text).map(|number| number.key().head)
}

/// Whether this is what stands before every number of the numbering.
fn is_prefix(numbering: &Numbering, text: &str) -> bool {
    let signs = |text: &str| text.chars().filter_map(crate::signs::compared).collect::<String>();
    signs(text) == signs(&numbering.prefix)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn numbering() -> Numbering {
        Numbering { prefix: "IV27-".into(), width: 4, ..Numbering::default() }
    }

    fn check(text: &str, first: &str, last: &str, count: usize) {
        let list = span_text(&numbering(), text).unwrap_or_else(|problem| panic!("{text}: {problem:?}"));
        let ends = (list.first().map(String::as_str), list.last().map(String::as_str), list.len());
        assert_eq!(ends, (Some(first), Some(last), count), "{text}");
    }

    fn refused(text: &str, problem: SpanProblem) {
        assert_eq!(span_text(&numbering(), text), Err(problem), "{text}");
    }

    #[test]
    fn spans_are_read_however_they_are_written() {
        for text in [
            "0147 to 0152",
            "147-152",
            "147..152",
            "147…152",
            "0147 – 52",
            "0147 TO 52",
            "147 bis 152",
            "IV27-0147 to IV27-0152",
            "IV27-0147-IV27-0152",
            "iv27 0147 — 0152",
            "IV27-0147-0152",
            "IV27-0147–52",
        ] {
            check(text, "IV27-0147", "IV27-0152", 6);
        }
    }

    #[test]
    fn a_single_number_is_a_span_of_one() {
        check("IV27-0147", "IV27-0147", "IV27-0147", 1);
        check("147", "IV27-0147", "IV27-0147", 1);
        check("DO27-0147", "DO27-0147", "DO27-0147", 1);
        check("19-a", "IV27-0019a", "IV27-0019a", 1);
    }

    #[test]
    fn a_prefix_of_digits_is_not_taken_for_the_first_end() {
        let years = Numbering { prefix: "2027-".into(), width: 4, ..Numbering::default() };
        assert_eq!(span_text(&years, "2027-0147"), Ok(vec!["2027-0147".into()]));
        assert_eq!(span_text(&years, "2027-0147 to 0148").map(|list| list.len()), Ok(2));
    }

    #[test]
    fn letters_make_spans_within_their_event() {
        let plain = Numbering::default();
        let expected: Vec<String> = ["19a", "19b", "19c"].map(String::from).into();
        for text in ["19a to 19c", "19a-c", "19a – 19c", "19 a to c"] {
            assert_eq!(span_text(&plain, text).as_ref(), Ok(&expected), "{text}");
        }
        assert_eq!(span_text(&plain, "19y to 19ab").map(|list| list.len()), Ok(4));
        assert_eq!(span_text(&plain, "19a to 20c"), Err(SpanProblem::Letters));
        assert_eq!(span_text(&plain, "19c to 19a"), Err(SpanProblem::Reversed));
    }

    #[test]
    fn what_is_no_span_says_why() {
        refused("0152 to 0147", SpanProblem::Reversed);
        refused("1 to 501", SpanProblem::TooLong(501));
        refused("IV27-0147 to DO27-0152", SpanProblem::PrefixDiffers);
        refused("0147 to 0152b", SpanProblem::Letters);
        refused("0147 to net", SpanProblem::Last);
        refused("net to 0147", SpanProblem::First);
        refused("", SpanProblem::First);
    }

    #[test]
    fn what_is_taken_is_said() {
        let list = span_text(&numbering(), "147-149").expect("a span");
        assert_eq!(taken(&list, ["iv27 148", "IV26-0147", "149"]), ["IV27-0148"]);
    }

    proptest! {
        #[test]
        fn reading_never_panics(text in "[0-9a-zA-Z .…–-]{0,24}") {
            let _ = span_text(&numbering(), &text);
        }

        #[test]
        fn a_span_is_as_long_forwards_as_it_is_refused_backwards(first in 0_u64..9_999, more in 1_u64..600) {
            let (low, high) = (format!("{first:04}"), format!("{:04}", first + more));
            match span(&numbering(), &low, &high) {
                Ok(list) => prop_assert_eq!(list.len() as u64, more + 1),
                Err(problem) => prop_assert_eq!(problem, SpanProblem::TooLong(more + 1)),
            }
            if low.len() == high.len() {
                prop_assert_eq!(span(&numbering(), &high, &low), Err(SpanProblem::Reversed));
            }
        }
    }
}
