//! Numbers that stand twice where that is a fault.

use crate::habit::Habit;
use crate::reading::{Key, Number};
use std::collections::BTreeMap;

/// Groups of positions that carry the same full number, a colleague's too, in order of the number.
///
/// Only numbers of which there should be one a container count; engraved vials come again, and an event's letters
/// are shared on purpose.
pub fn twice<'a>(numbers: impl IntoIterator<Item = (&'a str, Habit)>) -> Vec<Vec<usize>> {
    let mut by_key: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
    for (at, (text, habit)) in numbers.into_iter().enumerate() {
        if let (Habit::OnePerContainer, Some(number)) = (habit, Number::read(text)) {
            by_key.entry(number.key()).or_default().push(at);
        }
    }
    by_key.into_values().filter(|group| group.len() > 1).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use Habit::{Engraved, LettersPerEvent, OnePerContainer};

    #[test]
    fn only_one_number_a_container_can_stand_twice() {
        let numbers = [
            ("IV27-0148", OnePerContainer),
            ("IV27-0147", OnePerContainer),
            ("iv27 147", OnePerContainer),
            ("IV26-0147", OnePerContainer),
            ("IV27-0148", Engraved),
            ("12", Engraved),
            ("12", Engraved),
            ("19a", LettersPerEvent),
            ("19a", LettersPerEvent),
            ("IV27–0148", OnePerContainer),
            ("", OnePerContainer),
            ("", OnePerContainer),
        ];
        assert_eq!(twice(numbers), [vec![1, 2], vec![0, 9]]);
    }
}
