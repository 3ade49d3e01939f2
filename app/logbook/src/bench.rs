//! The bench: a number as written on the vial in, its container with all data out, or those that it could be.
//!
//! Nothing is opened unasked: a number opens a container when it names one and only one. What is listed says why
//! it stands there. The words of the labels come from [`crate::labels`]; heights, drying and trays are not here.

mod candidates;
mod determine;
mod lookup;
mod mounts;
mod steps;

pub use candidates::{Candidate, Near, Why};
pub(crate) use determine::full_name;
pub use determine::{DeterminationForm, DeterminationView, PieceView};
pub use mounts::{MountFault, MountForm, MountView};
pub use steps::{Deal, NextStep, StepView};

use crate::book::Logbook;
use crate::labels::{Insects, Wanted};
use crate::view::{ContainerView, EventView};
use lookup::Called;
use record::{Id, Kind};

/// How many are listed at most.
const LISTED: usize = 20;

/// What the bench shows for what is typed.
#[derive(Clone, Debug, PartialEq)]
pub enum BenchView {
    /// Nothing is typed.
    Empty {
        /// Numbered containers with which nothing was done yet.
        waiting: usize,
    },
    /// One container has this number.
    One(Box<OnBench>),
    /// Several could be meant, or it is not certain that the one is.
    Choose {
        /// As typed.
        typed: String,
        /// The likeliest first.
        candidates: Vec<Candidate>,
        /// How many more there are.
        more: usize,
    },
    /// No container has this number.
    None {
        /// As typed.
        typed: String,
        /// Numbers like it, the nearest first.
        nearest: Vec<Near>,
    },
}

/// A container on the bench.
#[derive(Clone, Debug, PartialEq)]
pub struct OnBench {
    /// The container.
    pub container: ContainerView,
    /// Its event, unless that has not arrived here yet.
    pub event: Option<EventView>,
    /// How many others carry the same digits.
    pub others: usize,
    /// How many insects it holds, as far as counted.
    pub insects: Insects,
    /// Its labels.
    pub wanted: Vec<Wanted>,
    /// What was done with it, oldest first.
    pub steps: Vec<StepView>,
    /// What comes next; `None` when all are labelled.
    pub next: Option<NextStep>,
}

impl Logbook {
    /// What the bench shows for a number as typed.
    pub fn bench(&self, typed: &str) -> BenchView {
        if typed.trim().is_empty() {
            return BenchView::Empty { waiting: self.waiting() };
        }
        match self.called(typed) {
            Called::One(id) => match self.bench_container(id) {
                Some(on_bench) => BenchView::One(Box::new(on_bench)),
                None => self.bench_none(typed),
            },
            Called::Several(ids) => self.bench_choose(typed, ids),
            Called::None => match self.container_of_pin(typed).and_then(|id| self.bench_container(id)) {
                Some(on_bench) => BenchView::One(Box::new(on_bench)),
                None => self.bench_none(typed),
            },
        }
    }

    /// Every container that carries the same digits, whatever stands before them.
    pub fn bench_others(&self, typed: &str) -> BenchView {
        let ids = self.same_digits(typed);
        if ids.is_empty() { self.bench_none(typed) } else { self.bench_choose(typed, ids) }
    }

    /// A container on the bench.
    pub fn bench_container(&self, id: Id) -> Option<OnBench> {
        let container = self.container(id)?;
        let number = format!("{}{}", container.plate.prefix, container.plate.run);
        let insects = self.insects(id);
        let steps = self.steps(id);
        Some(OnBench {
            event: container.event.and_then(|event| self.event(event)),
            others: self.same_digits(&number).iter().filter(|other| **other != id).count(),
            wanted: self.wanted(id),
            next: steps::next(&steps, insects, container.alive || container.released),
            insects,
            steps,
            container,
        })
    }

    /// Numbered containers with which nothing was done yet.
    pub fn waiting(&self) -> usize {
        *self.caches.waiting.get_or_init(|| {
            let dealt = self.with_steps();
            self.numbered().iter().filter(|(id, _)| !dealt.contains(id)).count()
        })
    }

    fn bench_choose(&self, typed: &str, ids: Vec<Id>) -> BenchView {
        let mut candidates = self.candidates(&ids);
        let more = candidates.len().saturating_sub(LISTED);
        candidates.truncate(LISTED);
        BenchView::Choose { typed: typed.trim().to_owned(), candidates, more }
    }

    fn bench_none(&self, typed: &str) -> BenchView {
        BenchView::None { typed: typed.trim().to_owned(), nearest: self.nearest(typed) }
    }

    /// The containers on which a step hangs.
    fn with_steps(&self) -> std::collections::HashSet<Id> {
        let steps = self.shelf.entries().filter(|entry| *entry.kind == Kind::Step && !entry.deleted);
        steps.filter_map(|entry| entry.parent).collect()
    }
}

#[cfg(test)]
mod tests;
