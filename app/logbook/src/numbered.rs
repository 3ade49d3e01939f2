//! The numbers of all living containers, kept in order so that one is found again while it is typed.
//!
//! In go the numbers of a book once, and then each change; out come the containers with a running number, the
//! highest number of a numbering, and all texts. How a number is read is the `number` crate's.

use crate::book::Logbook;
use number::{Number, Numbering};
use record::packed::Entry;
use record::{Id, Kind};
use std::collections::{BTreeMap, BTreeSet};

/// Numbers by their running part, then by container. What has no digits stands under the greatest running number.
#[derive(Debug, Default)]
pub(crate) struct Numbered(BTreeMap<(u64, Id), Box<str>>);

const FIRST: Id = Id::from_bytes([0; 16]);
const LAST: Id = Id::from_bytes([0xff; 16]);

fn running(text: &str) -> u64 {
    Number::read(text).map_or(u64::MAX, |number| number.running)
}

fn number_of<'a>(entry: &Entry<'a>) -> Option<&'a str> {
    entry.number.filter(|_| *entry.kind == Kind::Container && !entry.deleted)
}

impl Numbered {
    /// Takes in what the directory says of a record.
    pub(crate) fn take_in(&mut self, entry: Option<Entry<'_>>) {
        if let Some((entry, text)) = entry.and_then(|entry| Some((entry, number_of(&entry)?))) {
            self.0.insert((running(text), entry.id), text.into());
        }
    }

    /// Takes out what the directory said of a record.
    pub(crate) fn take_out(&mut self, entry: Option<Entry<'_>>) {
        if let Some((entry, text)) = entry.and_then(|entry| Some((entry, number_of(&entry)?))) {
            self.0.remove(&(running(text), entry.id));
        }
    }

    /// All numbers with their containers, in order of the running number.
    pub(crate) fn iter(&self) -> impl DoubleEndedIterator<Item = (Id, &str)> {
        self.0.iter().map(|((_, id), text)| (*id, &**text))
    }

    /// The containers with this running number, or without digits.
    pub(crate) fn with_running(&self, running: Option<u64>) -> impl Iterator<Item = (Id, &str)> {
        let running = running.unwrap_or(u64::MAX);
        self.0.range((running, FIRST)..=(running, LAST)).map(|((_, id), text)| (*id, &**text))
    }

    /// The highest number of a numbering, outside these ranges.
    pub(crate) fn highest(&self, numbering: &Numbering, outside: &[(u64, u64)]) -> Option<(Id, &str)> {
        let head = head_of(&numbering.prefix, numbering.device_letter);
        let (first, last) = numbering.range.map_or((0, u64::MAX), |(first, last)| (u64::from(first), u64::from(last)));
        let falling = self.0.range((first, FIRST)..=(last, LAST)).rev();
        let beside = falling.filter(|((run, _), _)| !outside.iter().any(|(from, to)| (*from..=*to).contains(run)));
        let mut own = beside.filter(|(_, text)| Number::read(text).is_some_and(|number| number.key().head == head));
        own.next().map(|((_, id), text)| (*id, &**text))
    }
}

/// Prefix and device letter as numbers are compared.
pub(crate) fn head_of(prefix: &str, letter: Option<char>) -> String {
    let number = format!("{prefix}{}1", letter.map(String::from).unwrap_or_default());
    Number::read(&number).map(|number| number.key().head).unwrap_or_default()
}

impl Logbook {
    /// The numbers of all living containers; read once and kept up with each change.
    pub(crate) fn numbered(&self) -> &Numbered {
        self.numbered.get_or_init(|| {
            let mut numbered = Numbered::default();
            self.shelf.entries().for_each(|entry| numbered.take_in(Some(entry)));
            numbered
        })
    }

    /// The numbers that could stand in the way of these: those with the same running numbers.
    pub(crate) fn numbers_like<'a>(&'a self, texts: &[String]) -> impl Iterator<Item = (Id, &'a str)> {
        let runs: BTreeSet<u64> = texts.iter().map(|text| running(text)).collect();
        runs.into_iter().flat_map(|run| self.numbered().with_running(Some(run)))
    }
}

#[cfg(test)]
mod tests {
    use crate::bench::BenchView;
    use crate::invented::Table;
    use record::Id;

    fn opened(table: &Table, typed: &str) -> Option<Id> {
        match table.book.bench(typed) {
            BenchView::One(on_bench) => Some(on_bench.container.id),
            _ => None,
        }
    }

    #[test]
    fn a_number_is_known_from_its_save_until_its_container_is_deleted() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        let event = table.event("2027-06-19T14:32", varga, |_| {});
        assert_eq!(opened(&table, "147"), None);
        let vial = table.vial(event, "IV27-0147", "Flies", None);
        assert_eq!(opened(&table, "147"), Some(vial));
        let record = table.book.record(vial).expect("saved");
        table.change(&record, |edit| {
            let number = record::container::Number { text: "IV27-0148".to_owned(), numbering: None };
            edit.put(&record::container::NUMBER, &number);
        });
        assert_eq!((opened(&table, "147"), opened(&table, "148")), (None, Some(vial)));
        let record = table.book.record(vial).expect("saved");
        table.change(&record, |edit| {
            edit.delete();
        });
        assert_eq!(opened(&table, "148"), None);
    }

    #[test]
    fn a_vial_that_carries_a_word_is_found_by_it() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        let event = table.event("2027-06-19T14:32", varga, |_| {});
        let red = table.vial(event, "red", "Flies", None);
        assert_eq!(opened(&table, " Red "), Some(red));
        assert_eq!(opened(&table, "blue"), None);
    }

    #[test]
    fn only_numbers_that_should_be_one_a_container_stand_twice() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        let event = table.event("2027-06-19T14:32", varga, |_| {});
        for number in ["IV27-0147", "IV27-147", "IV27-0148", "12", "12"] {
            table.vial(event, number, "Flies", None);
        }
        let twice = |text: &str| table.book.stands_twice(text);
        assert!(twice("IV27-0147") && twice("IV27-147"));
        assert!(!twice("IV27-0148") && !twice("12") && !twice("red"));
    }
}
