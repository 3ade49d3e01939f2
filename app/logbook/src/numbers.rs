//! The numbers of a book: the next one, spans as typed, plates as drawn, and those that stand twice.

use crate::book::Logbook;
use crate::form::{CatchForm, ContainerForm};
use crate::view::{Next, Plate, Span};
use number::{Habit, Number, Numbering};
use record::{Id, Kind, Record, numbering};

pub use number::{SPAN_LIMIT, SpanProblem as SpanFault};

/// What the page says under a span while it is typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SpanSays {
    /// Nothing is typed: so many without a number.
    Unnumbered(usize),
    /// So many, none of them taken here.
    Free(usize),
    /// So many, and these are taken here already.
    Taken(usize, Vec<String>),
    /// It cannot be read as a span.
    Fault(SpanFault),
}

impl Logbook {
    /// The numbering of this device, as the number crate reads it.
    pub fn numbering(&self) -> Option<Numbering> {
        self.living(self.device().numbering?).map(|record| numbering_of(&record))
    }

    /// True when containers get numbers at all.
    pub(crate) fn numbers_are_given(&self) -> bool {
        self.numbering().is_none_or(|numbering| numbering.habit != Habit::None)
    }

    /// The next number after those in the book.
    pub fn next_number(&self) -> Next {
        self.next_number_after(&CatchForm::default())
    }

    /// The next number after those in the book and in the form.
    pub(crate) fn next_number_after(&self, form: &CatchForm) -> Next {
        let Some(numbering) = self.numbering() else { return Next::Unasked };
        let typed: Vec<String> = form
            .containers
            .iter()
            .filter_map(|container| self.numbers_of(container).ok())
            .flatten()
            .flatten()
            .collect();
        if numbering.habit == Habit::LettersPerEvent {
            if let Some(first) = typed.first().and_then(|text| Number::read(text)) {
                let next = numbering.next_letter(first.running, typed.iter().map(String::as_str));
                return next.map_or(Next::RangeFull, |text| Next::Number(plate_of("vial", &text)));
            }
            return match numbering.next(self.highest_beside(&numbering)) {
                number::Next::Number(text) => Next::Number(plate_of("vial", &format!("{text}a"))),
                number::Next::None => Next::None,
                number::Next::RangeFull => Next::RangeFull,
            };
        }
        match numbering.next(self.highest_beside(&numbering).into_iter().chain(typed.iter().map(String::as_str))) {
            number::Next::Number(text) => Next::Number(plate_of("vial", &text)),
            number::Next::None => Next::None,
            number::Next::RangeFull => Next::RangeFull,
        }
    }

    /// The numbers of all living containers.
    pub(crate) fn number_texts(&self) -> impl Iterator<Item = &str> {
        self.numbered().iter().map(|(_, text)| text)
    }

    /// The numbers that a container form stands for, completed with the prefix; `None` for one without a number.
    ///
    /// **Errors**: why it cannot be read as a number or span.
    pub(crate) fn numbers_of(&self, form: &ContainerForm) -> Result<Vec<Option<String>>, SpanFault> {
        if form.released || form.first.trim().is_empty() {
            let count = form.unnumbered.trim().parse::<usize>().unwrap_or(1).clamp(1, number::SPAN_LIMIT as usize);
            return Ok(vec![None; if form.released { 1 } else { count }]);
        }
        let numbering = self.numbering().unwrap_or(Numbering { habit: Habit::Engraved, ..Numbering::default() });
        if form.last.trim().is_empty() {
            // What is no number, such as a colour, is still what stands on the glass.
            let text =
                numbering.complete(&form.first).map_or_else(|| form.first.trim().to_owned(), |number| number.text());
            return Ok(vec![Some(text)]);
        }
        Ok(number::span(&numbering, &form.first, &form.last)?.into_iter().map(Some).collect())
    }

    /// What to say under a span.
    pub fn span_says(&self, form: &ContainerForm) -> SpanSays {
        let numbers = match self.numbers_of(form) {
            Ok(numbers) => numbers,
            Err(fault) => return SpanSays::Fault(fault),
        };
        let texts: Vec<String> = numbers.iter().flatten().cloned().collect();
        if texts.is_empty() {
            return SpanSays::Unnumbered(numbers.len());
        }
        let own = form
            .id
            .and_then(|id| self.living(id))
            .and_then(|record| record.get(&record::container::NUMBER))
            .map(|number| number.text);
        let faulty = self.numbering().is_some_and(|numbering| numbering.habit == Habit::OnePerContainer);
        let others =
            self.numbers_like(&texts).map(|(_, text)| text).filter(|text| faulty && own.as_deref() != Some(*text));
        let taken = number::taken(&texts, others);
        if taken.is_empty() { SpanSays::Free(texts.len()) } else { SpanSays::Taken(texts.len(), taken) }
    }

    /// The container with this number as typed; `None` when none or several carry it.
    pub(crate) fn container_numbered(&self, typed: &str) -> Option<Id> {
        let numbering = self.numbering().unwrap_or_default();
        let key = numbering.complete(typed)?.key();
        let carries = |text: &str| Number::read(text).is_some_and(|number| number.key() == key);
        let mut found = self.numbered().with_running(Some(key.running)).filter(|(_, text)| carries(text));
        let (one, _) = found.next()?;
        found.next().is_none().then_some(one)
    }

    /// The numbering of the book whose prefix a number carries.
    pub(crate) fn numbering_of(&self, text: &str) -> Option<Id> {
        let prefix = Number::read(text)?.prefix;
        let fits = |record: &Record| record.get(&numbering::PREFIX).unwrap_or_default() == prefix;
        let own = self.device().numbering.and_then(|id| self.living(id)).filter(&fits);
        own.or_else(|| self.all(&Kind::Numbering).iter().find(|record| fits(record)).cloned()).map(|record| record.id)
    }

    /// True when another container carries the same number where that is a fault.
    pub fn stands_twice(&self, text: &str) -> bool {
        let Some(number) = Number::read(text) else { return false };
        let like: Vec<&str> = self.numbered().with_running(Some(number.running)).map(|(_, text)| text).collect();
        let groups = number::twice(like.iter().map(|text| (*text, self.habit_of(text))));
        groups.iter().flatten().any(|at| like[*at] == text)
    }

    /// The habit under whose prefix a number was given; a number under none can stand twice.
    fn habit_of(&self, text: &str) -> Habit {
        let prefix = Number::read(text).map(|number| number.prefix).unwrap_or_default();
        let numberings = self.all(&Kind::Numbering);
        let mut fits = numberings.iter().map(numbering_of).filter(|numbering| numbering.prefix == prefix);
        fits.next().map_or(Habit::Engraved, |numbering| numbering.habit)
    }

    /// Numbers as spans, for lists.
    pub(crate) fn spans(&self, numbers: &[String]) -> Vec<Span> {
        number::compact(numbers.iter().map(String::as_str))
            .into_iter()
            .map(|run| Span { prefix: run.prefix, first: run.first, last: run.last })
            .collect()
    }
}

/// A stored numbering as the number crate reads it.
pub(crate) fn numbering_of(record: &Record) -> Numbering {
    let habit = record.get(&numbering::HABIT).as_deref().and_then(Habit::of_code);
    Numbering {
        prefix: record.get(&numbering::PREFIX).unwrap_or_default(),
        width: record.get(&numbering::WIDTH).map_or(0, |width| width.min(18) as u8),
        habit: habit.unwrap_or_default(),
        device_letter: record.get(&numbering::LETTER).and_then(|letter| letter.chars().next()),
        range: record.get(&numbering::RANGE),
    }
}

/// The plate of a number on a vessel.
pub fn plate_of(vessel: &str, text: &str) -> Plate {
    let (prefix, run) = match Number::read(text) {
        Some(number) => (number.prefix.clone(), number.run()),
        None => (String::new(), text.to_owned()),
    };
    Plate { vessel: vessel.to_owned(), prefix, run }
}
