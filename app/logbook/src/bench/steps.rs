//! The plain steps: pinned, labelled.

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::labels::Insects;
use crate::moment;
use crate::names::Ids;
use ports::device::Moment;
use record::step::{self, Done};
use record::{Edit, Id, Kind, Record};

/// What is done with a container's catch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deal {
    /// Put on pins.
    Pinned,
    /// Labels put on the pins.
    Labelled,
}

/// What was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepView {
    /// The record.
    pub id: Id,
    /// The deed's code: `pinned`, `labelled`, or one that this version does not know.
    pub deed: String,
    /// How many.
    pub count: u32,
    /// When, local ISO 8601 with offset.
    pub at: String,
    /// By whom; empty when not known.
    pub by: String,
}

/// What comes next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NextStep {
    /// What.
    pub deal: Deal,
    /// With how many.
    pub count: u32,
}

impl Deal {
    /// The code under which it is stored.
    pub fn code(self) -> &'static str {
        match self {
            Self::Pinned => "pinned",
            Self::Labelled => "labelled",
        }
    }
}

/// First all are pinned, then those that are pinned are labelled.
pub(super) fn next(steps: &[StepView], insects: Insects, without: bool) -> Option<NextStep> {
    let done = |deal: Deal| steps.iter().filter(|step| step.deed == deal.code()).map(|step| step.count).sum::<u32>();
    let (pinned, labelled) = (done(Deal::Pinned), done(Deal::Labelled));
    let to_pin = insects.at_least.saturating_sub(pinned.max(labelled));
    let to_label = pinned.saturating_sub(labelled);
    match (to_pin, to_label) {
        _ if without => None,
        (0, 0) => None,
        (0, count) => Some(NextStep { deal: Deal::Labelled, count }),
        (count, _) => Some(NextStep { deal: Deal::Pinned, count }),
    }
}

impl Logbook {
    /// What was done with a container's catch, oldest first.
    pub fn steps(&self, of: Id) -> Vec<StepView> {
        let steps = self.children(of, &Kind::Step).into_iter().filter_map(|record| {
            let done = record.get(&step::DONE)?;
            let by = record.get(&step::BY).and_then(|person| self.person_name(person)).unwrap_or_default();
            Some(StepView { id: record.id, deed: done.deed, count: done.count, at: done.at, by })
        });
        steps.collect()
    }

    /// Records that so many were pinned or labelled.
    pub fn step(&self, of: Id, deal: Deal, count: u32, now: Moment, ids: Ids<'_>) -> Deed {
        let count_of = usize::try_from(count).unwrap_or(usize::MAX);
        let what = match deal {
            Deal::Pinned => What::Pinned(count_of),
            Deal::Labelled => What::Labelled(count_of),
        };
        Deed::new(what, [self.step_edit(of, deal, count, now, ids)])
    }

    pub(crate) fn step_edit(&self, of: Id, deal: Deal, count: u32, now: Moment, ids: Ids<'_>) -> Edit {
        let mut edit = Edit::of(&Record::new(ids(), Kind::Step));
        edit.put(&step::OF, &of);
        edit.put(&step::DONE, &Done { deed: deal.code().to_owned(), count, at: moment::stamp(now) });
        edit.put_or_empty(&step::BY, self.device().person.as_ref());
        edit
    }
}
