//! A print in steps: labels in, progress out, and in the end the PDF.
//!
//! Equal labels are set once. Between two steps nothing is held but this value, so that a worker can answer other
//! questions, say how far it is, and let a print go.

use crate::code::Code;
use crate::frame::{Format, Frame, Outcome, Over};
use crate::measure::Setter;
use crate::pdf::{Moment, Paging, Printed, Refused, words};
use crate::sheet::{Layout, Plan, plan};
use crate::text::Line;
use std::collections::HashMap;

/// One label, and how many of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// What it says.
    pub lines: Vec<Line>,
    /// The code beside the lines.
    pub code: Option<Code>,
    /// Its size.
    pub format: Format,
    /// How many.
    pub copies: u32,
}

/// Whether labels that say the same lie together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Gathering {
    /// Labels lie in the order given.
    #[default]
    AsGiven,
    /// Labels that are equal lie where the first of them does.
    EqualTogether,
}

/// What to print.
#[derive(Clone, Debug)]
pub struct Job {
    /// The labels in the order of the bench.
    pub labels: Vec<Wanted>,
    /// Whether equal ones lie together.
    pub gathering: Gathering,
    /// The paper.
    pub layout: Layout,
    /// Title of the document.
    pub title: String,
    /// Words beside the bar of 50 mm, a line each: that it must measure 50 mm, how to print.
    pub words: Vec<String>,
    /// When it was made.
    pub made: Moment,
}

/// How far a print is: steps done of all, at least one of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Done.
    pub done: usize,
    /// Of so many.
    pub all: usize,
}

/// What a step came to.
#[derive(Debug)]
pub enum Step {
    /// There is more to do.
    More(Progress),
    /// It is finished.
    Done(Result<Printed, Refused>),
}

/// A print under way.
pub struct Printing {
    job: Job,
    /// For each label wanted which of the outcomes is its own.
    outcome_of: Vec<usize>,
    /// Which label wanted was the first of each outcome.
    distinct: Vec<usize>,
    outcomes: Vec<Outcome>,
    sheets: Option<Sheets>,
}

/// Labels that all fit, on their sheets.
struct Sheets {
    plan: Plan,
    /// For each cell which of the outcomes lies there.
    outcome_at: Vec<usize>,
    words: Option<Frame>,
    paging: Paging,
    drawn: usize,
}

/// Prints in one go.
///
/// **Errors**: nothing is printed if one label does not fit.
pub fn print(setter: &mut Setter<'_>, job: Job) -> Result<Printed, Refused> {
    let mut printing = Printing::new(job);
    loop {
        if let Step::Done(result) = printing.step(setter, usize::MAX) {
            return result;
        }
    }
}

impl Printing {
    /// A print at its beginning.
    pub fn new(job: Job) -> Self {
        let (outcome_of, distinct) = distinct(&job.labels);
        Self { job, outcome_of, distinct, outcomes: Vec::new(), sheets: None }
    }

    /// How far it is.
    pub fn progress(&self) -> Progress {
        let sheets = self.sheets.as_ref();
        let all = self.distinct.len() + sheets.map_or(1, |sheets| sheets.plan.sheets) + 1;
        Progress { done: self.outcomes.len() + sheets.map_or(0, |sheets| sheets.drawn), all }
    }

    /// Sets or draws about so many labels, or writes the file. A setter in other fonts than before must not come.
    pub fn step(&mut self, setter: &mut Setter<'_>, labels: usize) -> Step {
        if self.outcomes.len() < self.distinct.len() {
            self.set(setter, labels);
        } else if let Some(sheets) = self.sheets.take_if(|sheets| sheets.drawn == sheets.plan.sheets) {
            let (count, labels) = (sheets.plan.sheets, sheets.plan.cells.len());
            return Step::Done(sheets.paging.finished().map(|bytes| Printed { bytes, sheets: count, labels }));
        } else if self.sheets.is_some() {
            self.draw(labels);
        } else if let Err(refused) = self.lay(setter) {
            return Step::Done(Err(refused));
        }
        Step::More(self.progress())
    }

    fn set(&mut self, setter: &mut Setter<'_>, labels: usize) {
        let next = self.outcomes.len();
        for index in self.distinct[next..].iter().take(labels.max(1)) {
            let wanted = &self.job.labels[*index];
            self.outcomes.push(setter.frame_with(&wanted.lines, wanted.code.as_ref(), &wanted.format));
        }
    }

    fn lay(&mut self, setter: &mut Setter<'_>) -> Result<(), Refused> {
        let over = |(index, outcome): (usize, &usize)| (index, self.outcomes[*outcome].over.clone());
        let over: Vec<(usize, Vec<Over>)> =
            self.outcome_of.iter().enumerate().map(over).filter(|(_, over)| !over.is_empty()).collect();
        if !over.is_empty() {
            return Err(Refused::Over(over));
        }
        let order = order(&self.job.labels, self.job.gathering);
        let outcome_at: Vec<usize> = order.into_iter().map(|index| self.outcome_of[index]).collect();
        let size = |outcome: &usize| (self.outcomes[*outcome].frame.width, self.outcomes[*outcome].frame.height);
        let sizes: Vec<_> = outcome_at.iter().map(size).collect();
        let plan = plan(&sizes, &self.job.layout).map_err(Refused::Sheet)?;
        let texts: Vec<&str> = self.job.words.iter().map(String::as_str).collect();
        let words = words(setter, &self.job.layout, &texts);
        let paging = Paging::new(setter, &self.job.title, self.job.made);
        self.sheets = Some(Sheets { plan, outcome_at, words, paging, drawn: 0 });
        Ok(())
    }

    fn draw(&mut self, labels: usize) {
        let Some(sheets) = &mut self.sheets else { return };
        let mut left = labels.max(1);
        while left > 0 && sheets.drawn < sheets.plan.sheets {
            let frame = |label: usize| &self.outcomes[sheets.outcome_at[label]].frame;
            sheets.paging.sheet(&sheets.plan, sheets.drawn, &self.job.layout, frame, sheets.words.as_ref());
            left = left.saturating_sub(sheets.plan.labels(sheets.drawn).len().max(1));
            sheets.drawn += 1;
        }
    }
}

/// Which label wanted each copy is of, in the order in which copies lie.
pub fn order(labels: &[Wanted], gathering: Gathering) -> Vec<usize> {
    let mut indices: Vec<usize> = (0..labels.len()).collect();
    if gathering == Gathering::EqualTogether {
        // Outcomes are numbered by the first label that has them.
        let (outcome_of, _) = distinct(labels);
        indices.sort_by_key(|index| outcome_of[*index]);
    }
    let copies = |index: usize| std::iter::repeat_n(index, labels[index].copies as usize);
    indices.into_iter().flat_map(copies).collect()
}

/// For each label which of the different ones it is, and the first label of each.
fn distinct(labels: &[Wanted]) -> (Vec<usize>, Vec<usize>) {
    let mut known: HashMap<(&[Line], Option<&Code>, FormatKey), usize> = HashMap::new();
    let (mut which, mut first) = (Vec::with_capacity(labels.len()), Vec::new());
    for (index, wanted) in labels.iter().enumerate() {
        let key = (wanted.lines.as_slice(), wanted.code.as_ref(), key(&wanted.format));
        let outcome = *known.entry(key).or_insert(first.len());
        if outcome == first.len() {
            first.push(index);
        }
        which.push(outcome);
    }
    (which, first)
}

type FormatKey = ([u64; 5], crate::frame::PinAt);

fn key(format: &Format) -> FormatKey {
    let lengths = [format.width, format.height, format.pin].map(|length| length.millimetres().to_bits());
    let sizes = [format.largest, format.least].map(|size| size.points().to_bits());
    ([lengths[0], lengths[1], lengths[2], sizes[0], sizes[1]], format.pin_at)
}
