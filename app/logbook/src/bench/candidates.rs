//! Containers that could be meant, with what tells them apart, and why each is listed.

use crate::book::Logbook;
use crate::moment::Day;
use crate::view::{ContainerView, EventLine};
use chrono::Datelike;
use number::{Key, Number};
use record::{Id, container, event, numbering};
use std::collections::{BTreeSet, HashSet};

/// How many numbers like an unknown one are shown.
const NEAREST: usize = 5;

/// Whose number it is, and of which year.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// This device's person gives numbers like it.
    Own,
    /// It cannot be said whose it is.
    Other,
    /// The same digits, a colleague's.
    Colleague,
    /// Of the year before the newest one listed.
    LastYear,
    /// So many years older than the newest one listed.
    Earlier(u32),
}

/// A container that could be meant.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The container: its number and contents.
    pub container: ContainerView,
    /// Its event, unless that has not arrived here yet.
    pub event: Option<EventLine>,
    /// The day of catch.
    pub day: Option<Day>,
    /// Its own collector, or those of the event.
    pub collectors: Vec<String>,
    /// Whose it is, and of which year.
    pub why: Why,
    /// Running parts of the numbers beside it that were dealt with already.
    pub neighbours: Vec<String>,
    /// Something was done with it already.
    pub dealt: bool,
}

/// A known number like one that is not.
#[derive(Clone, Debug, PartialEq)]
pub struct Near {
    /// The container with it.
    pub container: Candidate,
    /// In what it differs.
    pub reason: number::Reason,
}

impl Logbook {
    /// Containers that could be meant, the likeliest first.
    pub(super) fn candidates(&self, ids: &[Id]) -> Vec<Candidate> {
        let beside = self.beside(ids);
        let mut candidates: Vec<(Id, Candidate)> =
            ids.iter().filter_map(|id| Some((*id, self.candidate(*id, &beside)?))).collect();
        let newest = candidates.iter().filter_map(|(_, candidate)| candidate.day).max();
        for (_, candidate) in &mut candidates {
            if let Some(years) = newest.zip(candidate.day).map(|(newest, day)| newest.year() - day.year()) {
                candidate.why = aged(candidate.why, years);
            }
        }
        candidates.sort_by_key(|(id, candidate)| {
            (candidate.why, candidate.neighbours.is_empty(), std::cmp::Reverse((candidate.day, *id)))
        });
        candidates.into_iter().map(|(_, candidate)| candidate).collect()
    }

    /// Known numbers like one as typed, the nearest first.
    pub(super) fn nearest(&self, typed: &str) -> Vec<Near> {
        let (ids, texts): (Vec<Id>, Vec<&str>) = self.numbered().iter().unzip();
        let near = number::nearest(typed, texts.iter().copied(), NEAREST);
        let beside = HashSet::new();
        let near = near
            .into_iter()
            .filter_map(|near| Some(Near { container: self.candidate(ids[near.at], &beside)?, reason: near.reason }));
        near.collect()
    }

    fn candidate(&self, id: Id, beside: &HashSet<Key>) -> Option<Candidate> {
        let record = self.living(id)?;
        let container = self.container(id)?;
        let event = container.event.and_then(|event| self.living(event));
        let line = event.as_ref().map(|event| self.line(event, 1));
        let own = container.collector.clone().map(|name| vec![name]);
        Some(Candidate {
            why: self.whose(&record, event.as_ref()),
            neighbours: neighbours(&record, beside),
            dealt: !self.steps(id).is_empty(),
            day: line.as_ref().and_then(|line| line.day),
            collectors: own.or_else(|| line.as_ref().map(|line| line.collectors.clone())).unwrap_or_default(),
            event: line,
            container,
        })
    }

    /// Whose number it is: by the numbering, or else by who collected.
    fn whose(&self, record: &record::Record, event: Option<&record::Record>) -> Why {
        let Some(me) = self.device().person else { return Why::Other };
        let number = record.get(&container::NUMBER).unwrap_or_default();
        let numbering = number.numbering.or_else(|| self.numbering_of(&number.text)).and_then(|id| self.living(id));
        let mut persons: BTreeSet<Id> =
            numbering.and_then(|numbering| numbering.get(&numbering::PERSON)).into_iter().collect();
        if persons.is_empty() {
            persons.extend(record.get(&container::COLLECTOR));
        }
        if persons.is_empty() {
            let along = event.map(|event| event.lines(&event::COLLECTORS)).unwrap_or_default();
            persons.extend(along.into_iter().map(|(_, collector)| collector.person));
        }
        match persons.is_empty() {
            true => Why::Other,
            false if persons.contains(&me) => Why::Own,
            false => Why::Colleague,
        }
    }

    /// The numbers just below and above these containers' that were dealt with already.
    fn beside(&self, ids: &[Id]) -> HashSet<Key> {
        let runs: BTreeSet<u64> =
            ids.iter().filter_map(|id| Number::read(&self.number_text(*id)?)).map(|number| number.running).collect();
        let around: BTreeSet<u64> =
            runs.iter().flat_map(|run| [run.saturating_sub(1), run.saturating_add(1)]).collect();
        let carriers = around.iter().take(8).flat_map(|run| self.carriers(*run));
        carriers.filter(|(id, _)| !self.steps(*id).is_empty()).map(|(_, number)| number.key()).collect()
    }

    fn number_text(&self, id: Id) -> Option<String> {
        self.living(id)?.get(&container::NUMBER).map(|number| number.text)
    }
}

fn aged(why: Why, years: i32) -> Why {
    match (why, years) {
        (Why::Colleague, _) | (_, ..=0) => why,
        (_, 1) => Why::LastYear,
        (_, years) => Why::Earlier(years.unsigned_abs()),
    }
}

/// The running parts of the neighbours of a container, as they would be written.
fn neighbours(record: &record::Record, beside: &HashSet<Key>) -> Vec<String> {
    let Some(number) = record.get(&container::NUMBER).and_then(|number| Number::read(&number.text)) else {
        return Vec::new();
    };
    let width = number.digits.len();
    let around = [number.running.checked_sub(1), number.running.checked_add(1)];
    let present = around.into_iter().flatten().filter(|run| beside.contains(&Key { running: *run, ..number.key() }));
    let letter = number.device.map(String::from).unwrap_or_default();
    present.map(|run| format!("{letter}{run:0width$}")).collect()
}
