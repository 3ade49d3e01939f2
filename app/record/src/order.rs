//! Sorting lists that a person could read.
//!
//! The sort of the standard library is compiled anew, some kilobytes each time, for every type and every order, into
//! what a phone fetches before its first catch. Here one sort of places serves all lists. Where there may be a hundred
//! thousand, the standard library's is right.

use std::cmp::Ordering;

/// Sorts a list. Equal ones stay in their order.
pub fn sort_by<T>(list: &mut Vec<T>, order: impl Fn(&T, &T) -> Ordering) {
    if list.len() > 1 {
        let places = places(list.len(), &|a, b| order(&list[a], &list[b]));
        put_in_order(list, &places);
    }
}

/// Sorts a list by what is worked out of each once. Equal ones stay in their order.
pub fn sort_by_key<T, K: Ord>(list: &mut Vec<T>, key: impl Fn(&T) -> K) {
    if list.len() > 1 {
        let keys: Vec<K> = list.iter().map(key).collect();
        let places = places(list.len(), &|a, b| keys[a].cmp(&keys[b]));
        put_in_order(list, &places);
    }
}

fn places(count: usize, order: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|a, b| order(*a, *b));
    places
}

fn put_in_order<T>(list: &mut Vec<T>, places: &[usize]) {
    let mut taken: Vec<Option<T>> = list.drain(..).map(Some).collect();
    list.extend(places.iter().filter_map(|place| taken[*place].take()));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_ones_stay_in_their_order() {
        let mut list = vec![(2, 'a'), (1, 'b'), (2, 'c'), (0, 'd'), (1, 'e')];
        sort_by_key(&mut list, |(key, _)| *key);
        assert_eq!(list, [(0, 'd'), (1, 'b'), (1, 'e'), (2, 'a'), (2, 'c')]);
        sort_by(&mut list, |a, b| b.0.cmp(&a.0));
        assert_eq!(list, [(2, 'a'), (2, 'c'), (1, 'b'), (1, 'e'), (0, 'd')]);
    }

    #[test]
    fn as_the_standard_library_sorts() {
        let mut list: Vec<u32> = (0..500).map(|at| at * 7919 % 503).collect();
        let mut expected = list.clone();
        expected.sort_unstable();
        sort_by_key(&mut list, |number| *number);
        assert_eq!(list, expected);
    }
}
