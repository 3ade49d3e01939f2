//! Labels that say what was corrected since: old beside new.
//!
//! A label is out of date when what its event and container say has changed since it was printed, so far as that kind
//! of label says it. Another arrangement, or another style of dates, makes none out of date. A determination is added
//! and never replaced: its label stays right.

use super::which::{LabelKind, Which};
use crate::book::Logbook;
use crate::label_text::lines_of;
use record::printing::{self, Printed};
use record::{Id, Kind, Record};
use std::rc::Rc;
use wording::Parts;

/// What was printed before something was corrected, and what the label says now.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Earlier {
    /// The lines as printed.
    pub old: Vec<String>,
    /// The lines as they would be printed now, before they are broken.
    pub new: Vec<String>,
    /// When the old ones were printed, local ISO 8601 with offset.
    pub at: String,
    /// How many of them.
    pub copies: u32,
}

/// A printed label that is out of date.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outdated {
    /// The container or event.
    pub of: Id,
    /// Which of its labels.
    pub which: Which,
    /// Old and new.
    pub earlier: Earlier,
}

impl Logbook {
    /// Every printed label that is out of date, the one printed first first.
    pub fn outdated(&self) -> Rc<Vec<Outdated>> {
        self.caches.outdated.get_or_init(|| Rc::new(self.all_outdated())).clone()
    }

    fn all_outdated(&self) -> Vec<Outdated> {
        let printings = self.shelf.by_kind(&Kind::Printing).into_iter().filter_map(|id| self.living(id));
        let mut printed: Vec<(Id, Which)> = printings.filter_map(|record| whose(&record)).collect();
        printed.sort_unstable();
        printed.dedup();
        let mut outdated: Vec<Outdated> = printed
            .into_iter()
            .filter_map(|(of, which)| Some(Outdated { of, which, earlier: self.earlier(of, which)? }))
            .collect();
        outdated.sort_by(|a, b| a.earlier.at.cmp(&b.earlier.at).then(a.of.cmp(&b.of)).then(a.which.cmp(&b.which)));
        outdated
    }

    /// What was printed last of a label, where that is out of date.
    pub fn earlier(&self, of: Id, which: Which) -> Option<Earlier> {
        if which.kind == LabelKind::Determination {
            return None;
        }
        let printings = self.children(of, &Kind::Printing);
        let last = printings.iter().rev().find(|record| whose(record) == Some((of, which)))?;
        let printed = last.get(&printing::PRINTED)?;
        let now = self.label_lines(of, which);
        let new: Vec<String> = now.text.lines().map(|line| wording::plain(&wording::unmarked(line))).collect();
        let changed = match last.get(&printing::KNOWN).and_then(|known| serde_json::from_value(known).ok()) {
            _ if new.is_empty() => false,
            Some(known) => self.corrected(of, which, &known) || (now.edited && !same_words(&printed, &new)),
            None => !same_words(&printed, &new),
        };
        changed.then_some(Earlier { old: printed.lines, new, at: printed.at, copies: printed.copies })
    }

    /// True when the same arrangement now says something else than of what was known then.
    fn corrected(&self, of: Id, which: Which, known: &Parts) -> bool {
        let arrangement = self.arrangement(which.kind);
        let now = self.label_parts(of, which, &arrangement);
        now.is_some_and(|now| lines_of(which.kind, &now, &arrangement) != lines_of(which.kind, known, &arrangement))
    }
}

fn whose(record: &Record) -> Option<(Id, Which)> {
    let printed = record.get(&printing::PRINTED)?;
    let kind = LabelKind::of_code(&printed.label)?;
    Some((record.get(&printing::OF)?, Which { kind, item: record.get(&printing::ITEM) }))
}

/// Where lines were broken does not matter.
fn same_words(printed: &Printed, now: &[String]) -> bool {
    let letters = |lines: &[String]| -> String {
        let all = lines.iter().flat_map(|line| line.chars());
        all.filter(|letter| !letter.is_whitespace() && *letter != wording::SOFT_BREAK).collect()
    };
    letters(&printed.lines) == letters(now)
}
