//! Questions in, answers out: batches of labels in several styles, and prints that are made piece by piece.

use crate::terms::{Unanswered, lines, path_of, proof, said, sizes};
use label::{Fonts, Gathering, Job, Layout, Paper, Printed, Printing, Refused, Setter, Shapings, Step, Wanted};
use ports::press::{Batch, Card, Code, Label, Over, PinAt, Run, Shown, Spot, Style, Work, Worked};
use units::Millimetres;

/// Labels to be set or drawn before the page is heard again: some 50 ms on a slow machine.
const PIECE: usize = 200;

/// What the press has before it between two questions.
#[derive(Default)]
pub struct Desk {
    shapings: Shapings,
    printing: Option<Printing>,
}

impl Desk {
    /// Answers one question; the fonts are those of the question before.
    pub fn work(&mut self, fonts: &Fonts, work: Work) -> Result<Worked, Unanswered> {
        let mut setter = Setter::resumed(fonts, std::mem::take(&mut self.shapings));
        let worked = self.worked(&mut setter, work);
        self.shapings = setter.shapings();
        worked
    }

    fn worked(&mut self, setter: &mut Setter<'_>, work: Work) -> Result<Worked, Unanswered> {
        match work {
            Work::Show { batch, words } => shown(setter, &batch, &words),
            Work::Share { labels, styles } => Ok(Worked::Shared(shared(setter, &wanted(&labels, &styles)?))),
            Work::Begin { batch, title, words, made } => {
                let labels = wanted(&batch.labels, &batch.styles)?;
                let layout = layout(batch.card)?;
                let gathering = Gathering::EqualTogether;
                self.printing = Some(Printing::new(Job { labels, gathering, layout, title, words, made }));
                Ok(self.next(setter))
            }
            Work::Continue => Ok(self.next(setter)),
            Work::Cancel => {
                self.printing = None;
                Ok(Worked::Idle)
            }
        }
    }

    /// Does the next piece of the print.
    fn next(&mut self, setter: &mut Setter<'_>) -> Worked {
        let Some(printing) = &mut self.printing else { return Worked::Idle };
        match printing.step(setter, PIECE) {
            Step::More(progress) => Worked::Under { done: progress.done, all: progress.all },
            Step::Done(result) => {
                self.printing = None;
                finished(result)
            }
        }
    }
}

fn finished(result: Result<Printed, Refused>) -> Worked {
    let count = |number: usize| u32::try_from(number).expect("copies are counted in 32 bits");
    match result {
        Ok(Printed { bytes, sheets, labels }) => Worked::Pdf { bytes, sheets: count(sheets), labels: count(labels) },
        Err(Refused::Over(over)) => {
            let each = |(label, over): (usize, Vec<label::Over>)| (label, over.into_iter().map(said).collect());
            Worked::DoesNotFit(over.into_iter().map(each).collect())
        }
        Err(Refused::Sheet(by)) => too_large(by),
        Err(Refused::Document(reason)) => Worked::NotWritten(reason),
    }
}

fn too_large(by: Millimetres) -> Worked {
    Worked::DoesNotFit(vec![(0, vec![Over::Sheet { by_mm: by.millimetres() }])])
}

fn shown(setter: &mut Setter<'_>, batch: &Batch, words: &[String]) -> Result<Worked, Unanswered> {
    let labels = wanted(&batch.labels, &batch.styles)?;
    let layout = layout(batch.card)?;
    let order = label::order(&labels, Gathering::EqualTogether);
    let size = |index: &usize| (labels[*index].format.width, labels[*index].format.height);
    let plan = match label::plan(&order.iter().map(size).collect::<Vec<_>>(), &layout) {
        Ok(plan) => plan,
        Err(by) => return Ok(too_large(by)),
    };
    let spot = |(label, cell): (&usize, &label::Cell)| Spot {
        label: *label,
        sheet: cell.sheet,
        at_mm: (cell.x.millimetres(), cell.y.millimetres()),
    };
    let texts: Vec<&str> = words.iter().map(String::as_str).collect();
    let words = label::words(setter, &layout, &texts);
    let set = |one: &Wanted| {
        let outcome = setter.frame_with(&one.lines, one.code.as_ref(), &one.format);
        proof(setter, outcome)
    };
    Ok(Worked::Shown(Shown {
        proofs: labels.iter().map(set).collect(),
        spots: order.iter().zip(&plan.cells).map(spot).collect(),
        cuts: (0..plan.sheets).map(|sheet| path_of(&plan.cut_lines(sheet, &layout))).collect(),
        bar: path_of(&layout.bar()),
        words_at: layout.words_at(),
        words: words.map_or_else(String::new, |words| label::path(setter, &words)),
    }))
}

fn shared(setter: &mut Setter<'_>, labels: &[Wanted]) -> Vec<Vec<Vec<ports::press::Line>>> {
    let run = |run: &label::Run| Run { text: run.text.clone(), italic: run.italic };
    let plain = |share: label::Share| share.lines.iter().map(|line| line.iter().map(run).collect()).collect();
    labels.iter().map(|one| setter.shares(&one.lines, &one.format).into_iter().map(plain).collect()).collect()
}

fn wanted(labels: &[Label], styles: &[Style]) -> Result<Vec<Wanted>, Unanswered> {
    let one = |label: &Label| {
        let style = styles.get(label.style).ok_or(Unanswered::NoSuch)?;
        let pin_at = match style.pin_at {
            PinAt::Middle => label::PinAt::Middle,
            PinAt::Left => label::PinAt::Left,
            PinAt::Right => label::PinAt::Right,
        };
        let format = label::Format { pin_at, ..sizes(style.format)? };
        let code = label.code.as_ref().map(code).transpose()?;
        Ok(Wanted { lines: lines(&label.lines), code, format, copies: label.copies })
    };
    labels.iter().map(one).collect()
}

fn code(code: &Code) -> Result<label::Code, Unanswered> {
    let modules: Vec<bool> = code.modules.chars().map(|letter| letter == '1').collect();
    let whole = code.columns > 0 && !modules.is_empty() && modules.len().is_multiple_of(code.columns);
    if !whole {
        return Err(Unanswered::NoSuch);
    }
    Ok(label::Code { text: code.text.clone(), columns: code.columns, modules })
}

fn layout(card: Card) -> Result<Layout, Unanswered> {
    let mm = |value: f64| Millimetres::new(value).ok_or(Unanswered::NoNumber);
    Ok(Layout {
        paper: Paper::Own(mm(card.size_mm.0)?, mm(card.size_mm.1)?),
        margin: mm(card.margin_mm)?,
        used_down: mm(card.used_down_mm)?,
        used_across: mm(card.used_across_mm)?,
    })
}

#[cfg(test)]
#[path = "work_tests.rs"]
mod tests;
