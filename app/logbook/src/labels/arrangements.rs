//! Arrangements that people made: which there are, which is used, and what one would make of real catches.
//!
//! An arrangement is a record and travels in the log file; which one is used stands in a person's rules, so that a
//! colleague's never changes labels unasked. One that cannot be read is as if it were not there.

use super::which::{LabelKind, Which};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::label_text::{for_press, lines_of};
use crate::names::Ids;
use ports::press;
use record::{Edit, Id, Kind, Record, arrangement, rules};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::rc::Rc;
use wording::{Day, Span};

pub use wording::{Arrangement, At, Dash, Item, Joint, Month, Part};

/// An arrangement by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedArrangement {
    /// The record.
    pub id: Id,
    /// Its name.
    pub name: String,
}

/// What an arrangement makes of a real catch.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SampleLines {
    /// The container or event.
    pub of: Id,
    /// The lines, top to bottom.
    pub lines: Vec<press::Line>,
}

/// An arrangement that is edited.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct ThatArrangement {
    /// Its record; none for the usual one.
    pub id: Option<Id>,
    /// Its name; empty for the usual one.
    pub name: String,
    /// The arrangement.
    pub arrangement: Arrangement,
}

/// How months can be written, by a code.
pub const MONTHS: [(&str, Month); 2] = [("small", Month::RomanSmall), ("capital", Month::RomanCapital)];
/// What can stand between day, month and year, by a code.
pub const JOINTS: [(&str, Joint); 4] = [
    ("stop", Joint::Stop),
    ("stop_and_space", Joint::StopAndSpace),
    ("hyphen", Joint::Hyphen),
    ("space", Joint::Space),
];
/// What can stand between two days, by a code.
pub const DASHES: [(&str, Dash); 3] = [("en", Dash::En), ("spaced_en", Dash::SpacedEn), ("hyphen", Dash::Hyphen)];

/// Every part that a label may have, in the order in which they are offered.
pub const PARTS: [Part; 33] = [
    Part::Country,
    Part::Province,
    Part::Locality,
    Part::Offset,
    Part::Site,
    Part::Habitat,
    Part::Coordinates,
    Part::Radius,
    Part::Elevation,
    Part::Date,
    Part::Emerged,
    Part::Collectors,
    Part::Method,
    Part::Particulars,
    Part::Relation,
    Part::Thing,
    Part::ThingPart,
    Part::Number,
    Part::Station,
    Part::Microhabitat,
    Part::Height,
    Part::Contents,
    Part::Name,
    Part::Author,
    Part::DeterminedBy,
    Part::DeterminedIn,
    Part::Sex,
    Part::Code,
    Part::Piece,
    Part::Linked,
    Part::Preservative,
    Part::Count,
    Part::Words,
];

/// The code of a part: `country`, `thing_part` …
pub fn part_code(part: Part) -> String {
    serde_json::to_value(part).ok().and_then(|code| code.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A day, and two days, as this arrangement writes them.
pub fn date_examples(arrangement: &Arrangement) -> (String, String) {
    let span = |until| Span { from: Day::new(2027, 6, 14), until, night: false };
    let written = |until| wording::written(&span(until), arrangement);
    (written(None), written(Some(Day::new(2027, 6, 21))))
}

/// How many catches are looked through for those of which a kind of label says something.
const LOOKED_THROUGH: usize = 60;

impl Logbook {
    /// The arrangement in use for a kind of label.
    pub(crate) fn arrangement(&self, kind: LabelKind) -> Rc<Arrangement> {
        if let Some(known) = self.caches.arrangements.borrow().get(&kind) {
            return known.clone();
        }
        let used = Rc::new(self.arrangement_used(kind).arrangement);
        self.caches.arrangements.borrow_mut().entry(kind).or_insert(used).clone()
    }

    /// The arrangement in use for a kind of label, with its name.
    pub fn arrangement_used(&self, kind: LabelKind) -> ThatArrangement {
        self.arrangement_with(kind, self.arrangement_choices().get(kind.code()).copied())
    }

    /// An arrangement by its record; the usual one where there is none.
    pub fn arrangement_with(&self, kind: LabelKind, id: Option<Id>) -> ThatArrangement {
        let own = id.and_then(|id| self.living(id)).and_then(|record| {
            let arrangement = read(&record, kind)?;
            Some(ThatArrangement { id: Some(record.id), name: name(&record), arrangement })
        });
        own.unwrap_or_else(|| ThatArrangement {
            id: None,
            name: String::new(),
            arrangement: wording::defaults::arrangement(kind),
        })
    }

    /// The arrangements that people made for a kind of label, the oldest first.
    pub fn arrangements(&self, kind: LabelKind) -> Vec<NamedArrangement> {
        let all = self.all(&Kind::Arrangement);
        let readable = all.iter().filter(|record| read(record, kind).is_some());
        readable.map(|record| NamedArrangement { id: record.id, name: name(record) }).collect()
    }

    /// Saves an arrangement under a name and uses it from now on; with a record, that one is changed.
    pub fn save_arrangement(&self, kind: LabelKind, that: &ThatArrangement, ids: Ids<'_>) -> Deed {
        let record = that.id.and_then(|id| self.living(id));
        let record = record.unwrap_or_else(|| Record::new(ids(), Kind::Arrangement));
        let mut edit = Edit::of(&record);
        edit.put(&arrangement::NAME, &that.name.trim().to_owned());
        edit.put(&arrangement::LABEL, &kind.code().to_owned());
        let parts = serde_json::to_value(&that.arrangement).expect("an arrangement is plain data");
        edit.put(&arrangement::PARTS, &parts);
        let used = self.use_edit(kind, Some(record.id), ids);
        Deed::new(What::Arrangement, [edit, used])
    }

    /// Uses an arrangement from now on; the usual one where none is named.
    pub fn use_arrangement(&self, kind: LabelKind, id: Option<Id>, ids: Ids<'_>) -> Deed {
        Deed::new(What::Arrangement, [self.use_edit(kind, id, ids)])
    }

    /// Deletes an arrangement; labels that used it are worded as usual.
    pub fn delete_arrangement(&self, id: Id) -> Deed {
        let edit = self.living(id).map(|record| {
            let mut edit = Edit::of(&record);
            edit.delete();
            edit
        });
        Deed::new(What::Arrangement, edit)
    }

    /// What an arrangement would make of catches in the book, the newest first: those of which it says something.
    pub fn sample_lines(&self, kind: LabelKind, arrangement: &Arrangement, most: usize) -> Vec<SampleLines> {
        let mut found = Vec::new();
        for (day, _) in self.days().into_iter().rev().take(LOOKED_THROUGH) {
            let events = self.shelf.events_on(crate::moment::day_number(day));
            for of in events.into_iter().flat_map(|event| self.to_label(event)) {
                let which = self.labels_of(of).into_iter().find(|which| which.kind == kind);
                let lines = which.map(|which| self.lines_under(of, which, arrangement)).unwrap_or_default();
                if !lines.is_empty() && found.iter().all(|known: &SampleLines| known.lines != lines) {
                    found.push(SampleLines { of, lines });
                }
                if found.len() == most {
                    return found;
                }
            }
        }
        found
    }

    fn lines_under(&self, of: Id, which: Which, arrangement: &Arrangement) -> Vec<press::Line> {
        let parts = self.label_parts(of, which, arrangement);
        parts.map(|parts| for_press(&lines_of(which.kind, &parts, arrangement))).unwrap_or_default()
    }

    fn arrangement_choices(&self) -> BTreeMap<String, Id> {
        self.own_rules().and_then(|rules| rules.get(&rules::ARRANGEMENTS)).unwrap_or_default()
    }

    fn use_edit(&self, kind: LabelKind, id: Option<Id>, ids: Ids<'_>) -> Edit {
        let mut choices = self.arrangement_choices();
        match id {
            Some(id) => choices.insert(kind.code().to_owned(), id),
            None => choices.remove(kind.code()),
        };
        let mut edit = self.edit_rules(ids);
        edit.put(&rules::ARRANGEMENTS, &choices);
        edit
    }
}

fn read(record: &Record, kind: LabelKind) -> Option<Arrangement> {
    let of_kind = record.get(&arrangement::LABEL).as_deref() == Some(kind.code());
    record.get(&arrangement::PARTS).filter(|_| of_kind).and_then(|parts| serde_json::from_value(parts).ok())
}

fn name(record: &Record) -> String {
    record.get(&arrangement::NAME).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_of_the_usual_arrangements_is_offered_once() {
        let codes: std::collections::BTreeSet<String> = PARTS.into_iter().map(part_code).collect();
        assert_eq!(codes.len(), PARTS.len());
        let usual = LabelKind::ALL.into_iter().flat_map(|kind| wording::defaults::arrangement(kind).lines).flatten();
        assert!(usual.into_iter().all(|item| PARTS.contains(&item.part)));
        assert!(codes.contains("thing_part") && codes.contains("words"));
    }

    #[test]
    fn dates_are_shown_as_they_would_be_written() {
        let mut arrangement = Arrangement::default();
        assert_eq!(date_examples(&arrangement), ("14.vi.2027".to_owned(), "14–21.vi.2027".to_owned()));
        (arrangement.month, arrangement.joint, arrangement.dash) = (MONTHS[1].1, JOINTS[2].1, DASHES[2].1);
        assert_eq!(date_examples(&arrangement), ("14-VI-2027".to_owned(), "14–21-VI-2027".to_owned()));
    }
}
