//! The known numbers nearest to one that is unknown, with the slip that would explain it.
//!
//! In go what was typed and the numbers that exist; out come positions with reasons, likeliest first. Nothing is
//! chosen for the person.

use crate::flat::{Flat, Sign};
use crate::slip::{Slip, cost, slip};

/// What would explain that this one was meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reason {
    /// It is the number, written another way.
    Same,
    /// The same number, and no prefix was typed.
    PrefixMissing,
    /// The same running number under another prefix.
    PrefixOther,
    /// Two neighbouring signs exchanged.
    Transposed,
    /// One sign written like another: 1 and 7, 0 and 6.
    Confused,
    /// One sign left out.
    Missing,
    /// One sign too many.
    Extra,
    /// One sign different.
    Different,
    /// Its neighbour, and of the run only the typed number is not known.
    Gap,
    /// More than one slip.
    Several,
}

impl Reason {
    /// A stable code.
    pub fn code(self) -> &'static str {
        match self {
            Self::Same => "same",
            Self::PrefixMissing => "prefix_missing",
            Self::PrefixOther => "prefix_other",
            Self::Transposed => "transposed",
            Self::Confused => "confused",
            Self::Missing => "missing",
            Self::Extra => "extra",
            Self::Different => "different",
            Self::Gap => "gap",
            Self::Several => "several",
        }
    }
}

/// One candidate that may be meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Near {
    /// Its position among the candidates.
    pub at: usize,
    /// Why.
    pub reason: Reason,
}

/// A candidate with what decides its rank: cost, then distance of the running numbers, then position.
type Hit = (u16, u64, usize, Reason);

/// What no prefix costs, and another one.
const PREFIX_MISSING: u16 = 5;
const PREFIX_OTHER: u16 = 60;
/// What a neighbour across a gap costs: less than a sign that does not look alike.
const GAP: u16 = 90;

/// At most `limit` candidates nearest to what was typed, likeliest first; ties in order of the running number's
/// distance, then of the candidates.
///
/// **Accuracy**: the costs are common practice, not measured on anybody's handwriting; they only rank.
pub fn nearest<'a>(typed: &str, candidates: impl IntoIterator<Item = &'a str>, limit: usize) -> Vec<Near> {
    let Some(typed) = Flat::of(typed).filter(|_| limit > 0) else { return Vec::new() };
    let mut hits: Vec<Hit> = Vec::new();
    let mut neighbours: Vec<(usize, Flat)> = Vec::new();
    let mut known = false;
    let mut most = cost::MOST;
    for (at, text) in candidates.into_iter().enumerate() {
        let Some(candidate) = Flat::of(text) else { continue };
        if typed.has_digits() && candidate.has_digits() {
            known |= candidate.core() == typed.core() && heads_agree(&typed, &candidate);
            if candidate.letters() == typed.letters() && candidate.running().abs_diff(typed.running()) == 1 {
                neighbours.push((at, candidate));
            }
        }
        if let Some((cost, reason)) = distance(&typed, &candidate, most) {
            hits.push((cost, candidate.running().abs_diff(typed.running()), at, reason));
            if hits.len() >= limit.saturating_mul(2).saturating_add(32) {
                keep_best(&mut hits, limit);
                most = hits.last().map_or(most, |worst| worst.0);
            }
        }
    }
    if !known {
        across_gap(&typed, &neighbours, &mut hits);
    }
    keep_best(&mut hits, limit);
    hits.into_iter().map(|(_, _, at, reason)| Near { at, reason }).collect()
}

fn keep_best(hits: &mut Vec<Hit>, limit: usize) {
    hits.sort_unstable();
    hits.truncate(limit);
}

/// Whether a candidate's prefix is the one typed, or none was typed.
fn heads_agree(typed: &Flat, candidate: &Flat) -> bool {
    typed.head().is_empty() || typed.head() == candidate.head()
}

/// Puts in the two neighbours of a number that is the only one missing between them.
fn across_gap(typed: &Flat, neighbours: &[(usize, Flat)], hits: &mut Vec<Hit>) {
    for (at, one) in neighbours.iter().filter(|(_, one)| heads_agree(typed, one)) {
        let paired = |(_, other): &(usize, Flat)| other.head() == one.head() && other.running() != one.running();
        if !neighbours.iter().any(paired) {
            continue;
        }
        let gap = (GAP, 1, *at, Reason::Gap);
        match hits.iter_mut().find(|hit| hit.2 == *at) {
            Some(hit) if hit.0 > GAP => *hit = gap,
            Some(_) => {}
            None => hits.push(gap),
        }
    }
}

/// The cheapest explanation for one candidate. `None` when all cost more than `most`.
fn distance(typed: &Flat, candidate: &Flat, most: u16) -> Option<(u16, Reason)> {
    let mut best: Option<(u16, Reason)> = None;
    let mut offer = |typed: &[Sign], meant: &[Sign], spent: u16| {
        let most = best.map_or(most, |best| best.0);
        let Some((cost, slip)) = most.checked_sub(spent).and_then(|left| slip(typed, meant, left)) else { return };
        if best.is_none_or(|best| cost + spent < best.0) {
            best = Some((cost + spent, reason(slip, spent)));
        }
    };
    let head = head_cost(typed, candidate);
    if two_slips(typed.core_mask, candidate.core_mask) {
        offer(typed.core(), candidate.core(), head);
    }
    // With leading zeros as written: 1047 for 0147.
    if typed.run().len().max(candidate.run().len()) > typed.core().len().min(candidate.core().len())
        && two_slips(typed.core_mask | ZERO, candidate.core_mask | ZERO)
    {
        offer(typed.run(), candidate.run(), head);
    }
    if !typed.head().is_empty() {
        if two_slips(typed.mask, candidate.mask) {
            offer(typed.whole(), candidate.whole(), 0);
        }
        // Letters typed for digits: l47 for 147, with the prefix left out.
        if two_slips(typed.mask | ZERO, candidate.core_mask | ZERO) {
            offer(typed.whole(), candidate.core(), PREFIX_MISSING);
            offer(typed.whole(), candidate.run(), PREFIX_MISSING);
        }
    }
    best
}

/// The bit of the sign 0 in a mask.
const ZERO: u64 = 1;

/// Whether two slips can be enough: each brings at most one sign in and takes one out.
fn two_slips(typed: u64, meant: u64) -> bool {
    (typed & !meant).count_ones() <= 2 && (meant & !typed).count_ones() <= 2
}

/// What the prefixes cost.
fn head_cost(typed: &Flat, candidate: &Flat) -> u16 {
    match () {
        () if typed.head() == candidate.head() => 0,
        () if typed.head().is_empty() => PREFIX_MISSING,
        () => PREFIX_OTHER,
    }
}

fn reason(slip: Slip, head: u16) -> Reason {
    match slip {
        Slip::None if head == 0 => Reason::Same,
        Slip::None if head == PREFIX_MISSING => Reason::PrefixMissing,
        Slip::None => Reason::PrefixOther,
        Slip::Exchanged => Reason::Transposed,
        Slip::Alike => Reason::Confused,
        Slip::LeftOut => Reason::Missing,
        Slip::TooMany => Reason::Extra,
        Slip::Other => Reason::Different,
        Slip::Several => Reason::Several,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const KNOWN: [&str; 8] =
        ["IV27-0139", "IV27-0141", "IV27-0147", "IV27-0194", "DO27-0147", "IV27-0206", "IV27-1200", "19a"];

    fn first(typed: &str) -> Option<(&'static str, Reason)> {
        nearest(typed, KNOWN, 5).first().map(|near| (KNOWN[near.at], near.reason))
    }

    fn check(typed: &str, meant: &'static str, reason: Reason) {
        assert_eq!(first(typed), Some((meant, reason)), "{typed}");
    }

    #[test]
    fn each_slip_is_explained() {
        check("IV27-0147", "IV27-0147", Reason::Same);
        check("147", "IV27-0147", Reason::PrefixMissing);
        check("XX27-0194", "IV27-0194", Reason::PrefixOther);
        check("IV27-0174", "IV27-0147", Reason::Transposed);
        check("IV27-1047", "IV27-0147", Reason::Transposed);
        check("IV72-0147", "IV27-0147", Reason::Transposed);
        check("IV27-0200", "IV27-0206", Reason::Confused);
        check("IV27-O194", "IV27-0194", Reason::Confused);
        check("lV27-0194", "IV27-0194", Reason::Confused);
        check("IV27-l200", "IV27-1200", Reason::Confused);
        check("l200", "IV27-1200", Reason::Confused);
        check("IV27-120", "IV27-1200", Reason::Missing);
        check("IV27-11200", "IV27-1200", Reason::Extra);
        check("IV27-1500", "IV27-1200", Reason::Different);
        check("19q", "19a", Reason::Different);
    }

    #[test]
    fn a_gap_between_neighbours_is_seen() {
        check("IV27-0140", "IV27-0139", Reason::Gap);
        check("140", "IV27-0139", Reason::Gap);
        // With the number itself known, and with one neighbour alone, there is no gap.
        let reasons = |typed: &str| nearest(typed, KNOWN, 9).into_iter().map(|near| near.reason).collect::<Vec<_>>();
        assert!(!reasons("IV27-0139").contains(&Reason::Gap));
        assert!(!reasons("IV27-0148").contains(&Reason::Gap));
    }

    #[test]
    fn nothing_near_gives_nothing() {
        for typed in ["", "–", "98765", "net"] {
            assert_eq!(nearest(typed, KNOWN, 5), [], "{typed}");
        }
        assert_eq!(nearest("147", KNOWN, 0), []);
    }

    #[test]
    fn codes_differ() {
        use Reason::{Confused, Different, Extra, Gap, Missing, PrefixMissing, PrefixOther, Same, Several, Transposed};
        let all = [Same, PrefixMissing, PrefixOther, Transposed, Confused, Missing, Extra, Different, Gap, Several];
        let codes: std::collections::BTreeSet<&str> = all.map(Reason::code).into();
        assert_eq!(codes.len(), all.len());
    }

    proptest! {
        #[test]
        fn an_exchange_of_neighbours_is_always_explained(run in 0_u32..10_000, at in 0_usize..3) {
            let meant = format!("IV27-{run:04}");
            let mut signs: Vec<char> = meant.chars().collect();
            signs.swap(5 + at, 6 + at);
            let typed: String = signs.into_iter().collect();
            let found = nearest(&typed, [meant.as_str(), "IV27-77777"], 3);
            let expected = if typed == meant { Reason::Same } else { Reason::Transposed };
            prop_assert_eq!(found.first(), Some(&Near { at: 0, reason: expected }));
        }

        #[test]
        fn one_slip_comes_before_several(run in 0_u32..100_000, at in 0_usize..5, other in 0_u32..10) {
            let typed = format!("{run:05}");
            let mut digits = typed.clone();
            digits.replace_range(at..=at, &other.to_string());
            let everything: Vec<String> = (0..100_000).step_by(211).map(|n| format!("{n:05}")).collect();
            let all = everything.iter().map(String::as_str).chain([digits.as_str()]);
            let found = nearest(&typed, all, 120);
            let place = found.iter().position(|near| near.at == everything.len());
            prop_assert!(place.is_some(), "{} not found for {}", digits, typed);
            let several = found.iter().position(|near| near.reason == Reason::Several);
            prop_assert!(several.is_none_or(|several| place < Some(several)));
        }

        #[test]
        fn anything_typed_is_looked_up_without_panic(typed in ".{0,30}", known in prop::collection::vec(".{0,30}", 0..5)) {
            let _ = nearest(&typed, known.iter().map(String::as_str), 5);
        }
    }
}
