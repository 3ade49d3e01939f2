//! Determinations, days of emergence, and parts kept elsewhere, as they are written at the bench.
//!
//! A determination is added and never replaced; whether a name is right is not looked at.

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::label_text::for_press;
use crate::moment::{self, Known, day_text};
use crate::names::Ids;
use ports::device::Moment;
use ports::press;
use record::determination::{self, Named};
use record::event::When;
use record::individual::{self, Piece};
use record::{Edit, Id, Kind, Record, container};

/// A determination as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DeterminationForm {
    /// The name, without its author.
    pub name: String,
    /// Doubt, one of [`codes::QUALIFIERS`](crate::codes::QUALIFIERS); empty for none.
    pub qualifier: String,
    /// Its author, brackets and year as they are.
    pub author: String,
    /// Who says so.
    pub by: String,
    /// In which year.
    pub year: String,
}

/// A determination as it was saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DeterminationView {
    /// The record.
    pub id: Id,
    /// The name with its doubt, in italics as far as it is Latin.
    pub name: press::Line,
    /// Its author.
    pub author: String,
    /// Who said so; empty when not known.
    pub by: String,
    /// In which year.
    pub year: String,
}

/// A part kept elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PieceView {
    /// The record.
    pub id: Id,
    /// What it is.
    pub what: String,
    /// The number under which it is kept.
    pub number: String,
}

/// The name as a label says it: doubt stands before the epithet that is doubted, `sp.` before a number.
pub fn full_name(named: &Named) -> String {
    let words: Vec<&str> = named.name.split_whitespace().collect();
    let mark = named.qualifier.trim();
    if mark.is_empty() || words.contains(&mark) {
        return words.join(" ");
    }
    let at = match mark {
        "sp." => words.iter().position(|word| word.starts_with(|sign: char| sign.is_ascii_digit())),
        _ => words.iter().rposition(|word| word.starts_with(char::is_lowercase)),
    };
    let before_genus = mark != "sp." && at.is_none();
    let at = at.unwrap_or(if before_genus { 0 } else { words.len() });
    [&words[..at], &[mark], &words[at..]].concat().join(" ")
}

impl Logbook {
    /// An empty determination by this device's person, of this year.
    pub fn new_determination(&self, now: Moment) -> DeterminationForm {
        let year = chrono::Datelike::year(&moment::today(now)).to_string();
        DeterminationForm { by: self.own_name(), year, ..DeterminationForm::default() }
    }

    /// What a container's insects were determined as, the newest last.
    pub fn determinations(&self, of: Id) -> Vec<DeterminationView> {
        let view = |record: &Record| {
            let named = record.get(&determination::NAMED)?;
            let by = record.get(&determination::BY).and_then(|person| self.person_name(person)).unwrap_or_default();
            let year = record.get(&determination::YEAR).unwrap_or_default();
            let name = for_press(&[wording::latin_split(&full_name(&named))]).remove(0);
            Some(DeterminationView { id: record.id, name, author: named.author, by, year })
        };
        self.children(of, &Kind::Determination).iter().filter_map(view).collect()
    }

    /// Adds a determination; none without a name. Whoever is named becomes a person of the book.
    pub fn determine(&self, of: Id, form: &DeterminationForm, ids: Ids<'_>) -> Option<Deed> {
        let single = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        let (name, by) = (single(&form.name), single(&form.by));
        if name.is_empty() {
            return None;
        }
        let mut edits = Vec::new();
        let mut edit = Edit::of(&Record::new(ids(), Kind::Determination));
        edit.put(&determination::OF, &of);
        let named = Named { name, qualifier: form.qualifier.clone(), author: single(&form.author) };
        edit.put(&determination::NAMED, &named);
        if !by.is_empty() {
            let person = self.person_or_new(&by, ids, &mut edits);
            edit.put(&determination::BY, &person);
        }
        let year = single(&form.year);
        edit.put_or_empty(&determination::YEAR, Some(&year).filter(|year| !year.is_empty()));
        edits.push(edit);
        Some(Deed::new(What::Determined, edits))
    }

    /// From when until when insects emerged in a container: two days as ISO 8601, empty where not written.
    pub fn emerged(&self, of: Id) -> (String, String) {
        let when = self.living(of).and_then(|record| record.get(&container::EMERGED)).unwrap_or_default();
        (when.from, when.until.unwrap_or_default())
    }

    /// Writes from when until when insects emerged; an empty first day takes it away, a last day before it is left out.
    pub fn set_emerged(&self, of: Id, from: &str, until: &str) -> Deed {
        let day = |text: &str| Known::read(text.trim()).and_then(Known::date);
        let when = day(from).map(|first| When {
            from: day_text(first),
            until: day(until).filter(|last| *last > first).map(day_text),
            ..When::default()
        });
        let edit = self.living(of).map(|record| {
            let mut edit = Edit::of(&record);
            edit.put_or_empty(&container::EMERGED, when.as_ref());
            edit
        });
        Deed::new(What::Emerged, edit)
    }

    /// The parts of a container's insects that are kept elsewhere.
    pub fn pieces(&self, of: Id) -> Vec<PieceView> {
        let view = |record: &Record| {
            let piece = record.get(&individual::PIECE)?;
            Some(PieceView { id: record.id, what: piece.what, number: piece.number })
        };
        self.children(of, &Kind::Individual).iter().filter_map(view).collect()
    }

    /// Adds a part that is kept elsewhere; none without a number.
    pub fn add_piece(&self, of: Id, what: &str, number: &str, ids: Ids<'_>) -> Option<Deed> {
        let piece = Piece { what: what.trim().to_owned(), number: number.trim().to_owned() };
        if piece.number.is_empty() {
            return None;
        }
        let mut edit = Edit::of(&Record::new(ids(), Kind::Individual));
        edit.put(&individual::CONTAINER, &of);
        edit.put(&individual::PIECE, &piece);
        Some(Deed::new(What::Piece, [edit]))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(name: &str, qualifier: &str, expected: &str) {
        let named = Named { name: name.into(), qualifier: qualifier.into(), author: String::new() };
        assert_eq!(full_name(&named), expected);
    }

    #[test]
    fn doubt_stands_before_what_is_doubted() {
        check("Andrena  bicolor", "", "Andrena bicolor");
        check("Andrena bicolor", "cf.", "Andrena cf. bicolor");
        check("Andrena bicolor gwynana", "aff.", "Andrena bicolor aff. gwynana");
        check("Andrena (Euandrena) bicolor", "cf.", "Andrena (Euandrena) cf. bicolor");
        check("Andrena", "cf.", "cf. Andrena");
        check("Andrena cf. bicolor", "cf.", "Andrena cf. bicolor");
    }

    #[test]
    fn a_species_without_a_name_keeps_its_number() {
        check("Andrena", "sp.", "Andrena sp.");
        check("Andrena 3", "sp.", "Andrena sp. 3");
        check("Andrena sp. 3", "", "Andrena sp. 3");
    }
}
