//! Questions to the courier and its answers, as bytes.
//!
//! In goes a shelf and a question, out comes a parcel: what kind it is and its parts, which can be handed to another
//! thread without copying. [`answer`] is all that the courier does: a pure function from parcel to parcel. The first
//! part of each is JSON, the others are blocks, files and marks as they are.
//!
//! ```text
//! question  plan/1   {shelf, book, most}                        overlay  file   blocks …
//!           write/1  {shelf, header, selection}                 overlay  marks  blocks …
//!           fold/1   {shelf, most}                              overlay  –      blocks …
//!           undo/1   {shelf, replica, number, entered, most}    overlay  undo   blocks …
//! answer    plan/1   {fold, summary}   undo  marks  blocks …
//!           write/1  {kinds}           file  marks
//!           fold/1   {fold}            blocks …
//!           undo/1   {fold, undone}    blocks …
//!           refused/1  why             a log file that cannot be imported
//!           garbled/1                  a question that is none
//! ```

mod fold;
mod shelf;

use crate::marks::Marks;
use crate::plan::{Plan, Summary, plan};
use crate::shelf::{Fold, Selection, Shelf};
use crate::undo::{Undo, Undone};
use crate::wire::{Header, Refusal, Writer};
use crate::{Dot, Id, Replica};
use fold::FoldNote;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use shelf::ShelfNote;
use std::collections::{BTreeMap, BTreeSet};

/// A kind and its parts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Parcel {
    /// Which question or answer, and the version of its form.
    pub kind: String,
    /// Its parts, in an order that the kind fixes.
    pub parts: Vec<Vec<u8>>,
}

/// A parcel that is none of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Garbled;

/// What the courier can be asked about a shelf.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// What would the import of a file do?
    Plan {
        /// The name of the book.
        book: String,
        /// The file.
        file: Vec<u8>,
        /// Records a block holds at most.
        most: usize,
    },
    /// Write a log file.
    Write {
        /// Its header; sessions that its records do not name are left out.
        header: Header,
        /// Of what.
        selection: Selection,
        /// What has left the device.
        marks: Marks,
    },
    /// Fold the journal into blocks.
    Fold {
        /// Records a block holds at most.
        most: usize,
    },
    /// Take the last import back.
    Undo {
        /// What the import noted, packed.
        undo: Vec<u8>,
        /// The edit as which later edits are written anew.
        dot: Dot,
        /// The device's local time with offset.
        entered: String,
        /// Records a block holds at most.
        most: usize,
    },
}

/// What the courier answers.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// What the import would do.
    Plan(Box<Plan>),
    /// The file cannot be imported.
    Refused(Refusal),
    /// A log file.
    Written {
        /// Its bytes.
        file: Vec<u8>,
        /// Marks for the records in it, to be kept once it has left the device.
        marks: Marks,
        /// How many living records of each kind, by the kind's name.
        kinds: BTreeMap<String, usize>,
    },
    /// What to write.
    Folded(Fold),
    /// What to write, and what it does.
    Undone(Fold, Undone),
}

#[derive(Serialize, Deserialize)]
struct AskPlan {
    shelf: ShelfNote,
    book: String,
    most: usize,
}

#[derive(Serialize, Deserialize)]
struct AskWrite {
    shelf: ShelfNote,
    header: Header,
    selection: Selection,
}

#[derive(Serialize, Deserialize)]
struct AskFold {
    shelf: ShelfNote,
    most: usize,
}

#[derive(Serialize, Deserialize)]
struct AskUndo {
    shelf: ShelfNote,
    replica: Replica,
    number: u32,
    entered: String,
    most: usize,
}

#[derive(Serialize, Deserialize)]
struct TellPlan {
    fold: FoldNote,
    summary: Summary,
}

#[derive(Serialize, Deserialize)]
struct TellUndone {
    fold: FoldNote,
    undone: Undone,
}

/// So many records are packed anew in less time than a copy of a large shelf takes.
const FEW: usize = 2_000;

const PLAN: &str = "plan/1";
const WRITE: &str = "write/1";
const FOLD: &str = "fold/1";
const UNDO: &str = "undo/1";
const REFUSED: &str = "refused/1";
const GARBLED: &str = "garbled/1";

impl Question {
    /// The parcel that asks this about a shelf, of which it holds a copy: of all of it, or, where a small file is to be
    /// written, of the records that go into it.
    pub fn about(self, shelf: &Shelf) -> Parcel {
        let Self::Write { header, selection, marks } = self else { return self.about_all(shelf) };
        let few = shelf.selected(&selection, &marks);
        if few.len() > FEW {
            return Self::Write { header, selection, marks }.about_all(shelf);
        }
        let part = shelf.part(&few);
        Self::Write { header, selection: Selection::All, marks: Marks::default() }.about_all(&part)
    }

    fn about_all(self, shelf: &Shelf) -> Parcel {
        let note = ShelfNote::of(shelf);
        let (kind, ask, extra) = match self {
            Self::Plan { book, file, most } => (PLAN, json(&AskPlan { shelf: note, book, most }), file),
            Self::Write { header, selection, marks } => {
                (WRITE, json(&AskWrite { shelf: note, header, selection }), marks.pack())
            }
            Self::Fold { most } => (FOLD, json(&AskFold { shelf: note, most }), Vec::new()),
            Self::Undo { undo, dot, entered, most } => {
                let Dot { replica, number } = dot;
                (UNDO, json(&AskUndo { shelf: note, replica, number, entered, most }), undo)
            }
        };
        let mut parts = vec![ask, shelf::overlay(shelf), extra];
        parts.extend(shelf::blocks(shelf));
        Parcel { kind: kind.to_owned(), parts }
    }
}

/// Answers a question.
pub fn answer(question: Parcel) -> Parcel {
    let Parcel { kind, parts } = question;
    let answered = match kind.as_str() {
        PLAN => answer_plan(parts),
        WRITE => answer_write(parts),
        FOLD => answer_fold(parts),
        UNDO => answer_undo(parts),
        _ => Err(Garbled),
    };
    answered.unwrap_or_else(|Garbled| Parcel { kind: GARBLED.to_owned(), parts: Vec::new() })
}

fn answer_plan(parts: Vec<Vec<u8>>) -> Result<Parcel, Garbled> {
    let (AskPlan { shelf, book, most }, overlay, file, blocks) = opened(parts)?;
    let shelf = shelf.rebuilt(overlay, blocks)?;
    let plan = match plan(shelf, &file, &book, most) {
        Ok(plan) => plan,
        Err(refusal) => return Ok(Parcel { kind: REFUSED.to_owned(), parts: vec![json(&refusal)] }),
    };
    let (fold, blocks) = FoldNote::of(plan.fold);
    let mut parts = vec![json(&TellPlan { fold, summary: plan.summary }), plan.undo.pack(), plan.marks.pack()];
    parts.extend(blocks);
    Ok(Parcel { kind: PLAN.to_owned(), parts })
}

fn answer_write(parts: Vec<Vec<u8>>) -> Result<Parcel, Garbled> {
    let (AskWrite { shelf, mut header, selection }, overlay, marks, blocks) = opened(parts)?;
    let shelf = shelf.rebuilt(overlay, blocks)?;
    let marks = Marks::open(&marks).map_err(|_| Garbled)?;
    let ids = shelf.selected(&selection, &marks);
    header.keep_replicas(&replicas_of(&shelf, &ids));
    let mut writer = Writer::new(&header);
    ids.iter().filter_map(|id| shelf.get(*id)).for_each(|record| writer.push(&record));
    let entries = || ids.iter().filter_map(|id| shelf.entry(*id));
    let mut kinds: BTreeMap<String, usize> = BTreeMap::new();
    for entry in entries().filter(|entry| !entry.deleted) {
        *kinds.entry(entry.kind.name().to_owned()).or_insert(0) += 1;
    }
    let marks = Marks::of(entries()).pack();
    Ok(Parcel { kind: WRITE.to_owned(), parts: vec![json(&kinds), writer.end(), marks] })
}

fn replicas_of(shelf: &Shelf, ids: &[Id]) -> BTreeSet<Replica> {
    let mut named = BTreeSet::new();
    for record in ids.iter().filter_map(|id| shelf.get(*id)) {
        named.extend(record.seen.0.into_keys());
    }
    named
}

fn answer_fold(parts: Vec<Vec<u8>>) -> Result<Parcel, Garbled> {
    let (AskFold { shelf, most }, overlay, _, blocks) = opened(parts)?;
    let (fold, blocks) = FoldNote::of(shelf.rebuilt(overlay, blocks)?.fold_plan(most));
    let parts = std::iter::once(json(&fold)).chain(blocks).collect();
    Ok(Parcel { kind: FOLD.to_owned(), parts })
}

fn answer_undo(parts: Vec<Vec<u8>>) -> Result<Parcel, Garbled> {
    let (AskUndo { shelf, replica, number, entered, most }, overlay, undo, blocks) = opened(parts)?;
    let shelf = shelf.rebuilt(overlay, blocks)?;
    let undo = Undo::open(&undo).map_err(|_| Garbled)?;
    let (fold, undone) = undo.take_back(shelf, &Dot { replica, number }, &entered, most);
    let (fold, blocks) = FoldNote::of(fold);
    let parts = std::iter::once(json(&TellUndone { fold, undone })).chain(blocks).collect();
    Ok(Parcel { kind: UNDO.to_owned(), parts })
}

/// The parts of a question: what is asked, the overlay, what the question brings, and the blocks.
type Opened<T> = (T, Vec<u8>, Vec<u8>, Vec<Vec<u8>>);

fn opened<T: DeserializeOwned>(parts: Vec<Vec<u8>>) -> Result<Opened<T>, Garbled> {
    let mut parts = parts.into_iter();
    let mut next = || parts.next().ok_or(Garbled);
    let ask = read(&next()?)?;
    let (overlay, extra) = (next()?, next()?);
    Ok((ask, overlay, extra, parts.collect()))
}

impl Answer {
    /// Reads the courier's answer.
    ///
    /// **Errors**: [`Garbled`].
    pub fn read(parcel: Parcel) -> Result<Self, Garbled> {
        let mut parts = parcel.parts.into_iter();
        let mut next = || parts.next().ok_or(Garbled);
        Ok(match parcel.kind.as_str() {
            PLAN => {
                let TellPlan { fold, summary } = read(&next()?)?;
                let undo = Undo::open(&next()?).map_err(|_| Garbled)?;
                let marks = Marks::open(&next()?).map_err(|_| Garbled)?;
                let fold = fold.with(parts.collect())?;
                Self::Plan(Box::new(Plan { summary, fold, undo, marks }))
            }
            WRITE => {
                let kinds = read(&next()?)?;
                let file = next()?;
                Self::Written { file, marks: Marks::open(&next()?).map_err(|_| Garbled)?, kinds }
            }
            FOLD => Self::Folded(read::<FoldNote>(&next()?)?.with(parts.collect())?),
            UNDO => {
                let TellUndone { fold, undone } = read(&next()?)?;
                Self::Undone(fold.with(parts.collect())?, undone)
            }
            REFUSED => Self::Refused(read(&next()?)?),
            _ => return Err(Garbled),
        })
    }
}

fn json<T: Serialize>(value: &T) -> Vec<u8> {
    serde_json::to_vec(value).expect("plain data can be written as JSON")
}

fn read<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, Garbled> {
    serde_json::from_slice(bytes).map_err(|_| Garbled)
}
