//! Editing an arrangement: parts put in, taken out and moved, lines broken and joined.
//!
//! In goes an arrangement and a place in it, out comes the arrangement changed; a place that it does not have changes
//! nothing, so that a screen that is a step behind does no harm. A line without parts is taken away.

use crate::arrangement::{Arrangement, Item};

/// A place in an arrangement: which line, which item of it, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct At {
    /// The line.
    pub line: usize,
    /// The item in the line.
    pub item: usize,
}

impl Arrangement {
    /// All items with their places, in reading order.
    pub fn items(&self) -> impl Iterator<Item = (At, &Item)> {
        let of_line = |(line, items): (usize, &'_ Vec<Item>)| (line, items.len());
        let places: Vec<At> = self
            .lines
            .iter()
            .enumerate()
            .map(of_line)
            .flat_map(|(line, count)| (0..count).map(move |item| At { line, item }))
            .collect();
        places.into_iter().map(|at| (at, &self.lines[at.line][at.item]))
    }

    /// The item at a place, to be changed.
    pub fn item_mut(&mut self, at: At) -> Option<&mut Item> {
        self.lines.get_mut(at.line)?.get_mut(at.item)
    }

    /// Puts an item before the one at this place; one past the last item or line puts it at the end.
    pub fn insert(&mut self, at: At, item: Item) {
        if at.line == self.lines.len() {
            self.lines.push(vec![item]);
        } else if let Some(line) = self.lines.get_mut(at.line).filter(|line| at.item <= line.len()) {
            line.insert(at.item, item);
        }
    }

    /// Takes an item out.
    pub fn remove(&mut self, at: At) -> Option<Item> {
        let line = self.lines.get_mut(at.line).filter(|line| at.item < line.len())?;
        let item = line.remove(at.item);
        self.lines.retain(|line| !line.is_empty());
        Some(item)
    }

    /// Moves an item one place earlier: past its neighbour, or to the end of the line above. Says where it is now.
    pub fn earlier(&mut self, at: At) -> At {
        let known = self.item_mut(at).is_some();
        match at {
            At { line, item } if known && item > 0 => {
                self.lines[line].swap(item, item - 1);
                At { line, item: item - 1 }
            }
            At { line, .. } if known && line > 0 => {
                let item = self.lines[line].remove(0);
                self.lines[line - 1].push(item);
                let now = At { line: line - 1, item: self.lines[line - 1].len() - 1 };
                self.lines.retain(|line| !line.is_empty());
                now
            }
            _ => at,
        }
    }

    /// Moves an item one place later: past its neighbour, or to the beginning of the line below. Says where it is now.
    pub fn later(&mut self, at: At) -> At {
        let Some(count) = self.lines.get(at.line).map(Vec::len).filter(|count| at.item < *count) else { return at };
        if at.item + 1 < count {
            self.lines[at.line].swap(at.item, at.item + 1);
            return At { item: at.item + 1, ..at };
        }
        if at.line + 1 == self.lines.len() {
            return at;
        }
        let item = self.lines[at.line].remove(at.item);
        self.lines[at.line + 1].insert(0, item);
        let emptied = self.lines[at.line].is_empty();
        self.lines.retain(|line| !line.is_empty());
        At { line: at.line + usize::from(!emptied), item: 0 }
    }

    /// From now on a line must break before this item.
    pub fn break_before(&mut self, at: At) {
        if at.item > 0 && self.item_mut(at).is_some() {
            let rest = self.lines[at.line].split_off(at.item);
            self.lines.insert(at.line + 1, rest);
        }
    }

    /// The line goes on where the one before it ended.
    pub fn join_to_previous(&mut self, line: usize) {
        if line > 0 && line < self.lines.len() {
            let items = self.lines.remove(line);
            self.lines[line - 1].extend(items);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::arrangement::Part;

    fn two_lines() -> Arrangement {
        let items = |parts: &[Part]| parts.iter().map(|part| Item::new(*part)).collect();
        let lines = vec![items(&[Part::Country, Part::Locality]), items(&[Part::Date, Part::Collectors])];
        Arrangement { lines, ..Arrangement::default() }
    }

    fn check(change: impl Fn(&mut Arrangement), expected: &[&[Part]]) {
        let mut arrangement = two_lines();
        change(&mut arrangement);
        let parts: Vec<Vec<Part>> =
            arrangement.lines.iter().map(|line| line.iter().map(|item| item.part).collect()).collect();
        assert_eq!(parts, expected);
    }

    use Part::{Collectors, Country, Date, Elevation, Locality};

    #[test]
    fn items_are_put_in_and_taken_out() {
        let put = |line, item| {
            move |arrangement: &mut Arrangement| arrangement.insert(At { line, item }, Item::new(Elevation))
        };
        check(put(0, 1), &[&[Country, Elevation, Locality], &[Date, Collectors]]);
        check(put(1, 2), &[&[Country, Locality], &[Date, Collectors, Elevation]]);
        check(put(2, 0), &[&[Country, Locality], &[Date, Collectors], &[Elevation]]);
        check(put(0, 7), &[&[Country, Locality], &[Date, Collectors]]);
        check(|a| drop((a.remove(At { line: 0, item: 0 }), a.remove(At { line: 0, item: 0 }))), &[&[Date, Collectors]]);
        check(|a| assert_eq!(a.remove(At { line: 3, item: 0 }), None), &[&[Country, Locality], &[Date, Collectors]]);
    }

    #[test]
    fn items_move_within_and_between_lines() {
        let at = |line, item| At { line, item };
        check(|a| assert_eq!(a.earlier(at(0, 1)), at(0, 0)), &[&[Locality, Country], &[Date, Collectors]]);
        check(|a| assert_eq!(a.earlier(at(1, 0)), at(0, 2)), &[&[Country, Locality, Date], &[Collectors]]);
        check(|a| assert_eq!(a.earlier(at(0, 0)), at(0, 0)), &[&[Country, Locality], &[Date, Collectors]]);
        check(|a| assert_eq!(a.later(at(0, 1)), at(1, 0)), &[&[Country], &[Locality, Date, Collectors]]);
        check(|a| assert_eq!(a.later(at(1, 1)), at(1, 1)), &[&[Country, Locality], &[Date, Collectors]]);
        check(|a| assert_eq!(a.later(at(9, 9)), at(9, 9)), &[&[Country, Locality], &[Date, Collectors]]);
    }

    #[test]
    fn moving_the_last_item_of_a_line_takes_the_line_away() {
        let mut arrangement = two_lines();
        arrangement.break_before(At { line: 0, item: 1 });
        assert_eq!(arrangement.later(At { line: 0, item: 0 }), At { line: 0, item: 0 });
        assert_eq!(arrangement.lines.len(), 2);
    }

    #[test]
    fn lines_are_broken_and_joined() {
        check(|a| a.break_before(At { line: 0, item: 1 }), &[&[Country], &[Locality], &[Date, Collectors]]);
        check(|a| a.break_before(At { line: 0, item: 0 }), &[&[Country, Locality], &[Date, Collectors]]);
        check(|a| a.join_to_previous(1), &[&[Country, Locality, Date, Collectors]]);
        check(|a| a.join_to_previous(0), &[&[Country, Locality], &[Date, Collectors]]);
        assert_eq!(two_lines().items().map(|(at, item)| (at.line, item.part)).last(), Some((1, Collectors)));
    }
}
