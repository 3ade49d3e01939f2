//! The work of the press: labels of several kinds and sizes on one sheet, codes beside the lines, a part-used
//! sheet, and a print that says how far it is and can be let go.
//!
//! A question is a [`Work`], its answer a [`Worked`]. The press does a piece of a print for each question: [`Work::Begin`], then [`Work::Continue`] until something else than [`Worked::Under`] comes back, or
//! [`Work::Cancel`]. In between it answers others. One print is under way at a time; a new one lets the old one go.

use super::{Format, Line, Over, Paper, Proof};
use serde::{Deserialize, Serialize};

/// Where the pin passes through a label, halfway up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum PinAt {
    /// In the middle.
    #[default]
    Middle,
    /// Near the left end, as for insects on points.
    Left,
    /// Near the right end.
    Right,
}

/// The size of a label and of its type, and its pin.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Style {
    /// The sizes.
    pub format: Format,
    /// Where the pin passes.
    #[serde(default)]
    pub pin_at: PinAt,
}

/// The grid of a code.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Code {
    /// What it says.
    pub text: String,
    /// Modules beside each other.
    pub columns: usize,
    /// The modules row by row: `1` for ink, `0` for none.
    pub modules: String,
}

/// One label, and how many are wanted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Label {
    /// The lines, top to bottom.
    pub lines: Vec<Line>,
    /// How many copies.
    pub copies: u32,
    /// Which of the styles.
    pub style: usize,
    /// The code beside the lines.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub code: Option<Code>,
}

/// The paper of a print.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Card {
    /// Width and height, millimetres.
    pub size_mm: (f64, f64),
    /// White at all four sides, millimetres.
    pub margin_mm: f64,
    /// Of the first sheet, how far down from the margin it was used, millimetres.
    #[serde(default)]
    pub used_down_mm: f64,
    /// Of the first strip below that, how far across from the margin it was used, millimetres.
    #[serde(default)]
    pub used_across_mm: f64,
}

impl Card {
    /// A fresh sheet of a usual paper with 10 mm of white.
    pub fn fresh(paper: Paper) -> Self {
        let size_mm = match paper {
            Paper::A4 => (210.0, 297.0),
            Paper::Letter => (215.9, 279.4),
        };
        Self { size_mm, margin_mm: 10.0, used_down_mm: 0.0, used_across_mm: 0.0 }
    }
}

/// Labels to be set together.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Batch {
    /// The labels in the order of the bench.
    pub labels: Vec<Label>,
    /// The styles that they name.
    pub styles: Vec<Style>,
    /// The paper.
    pub card: Card,
}

/// A question.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Work {
    /// Show what these labels will look like and where each copy lies.
    Show {
        /// The labels.
        batch: Batch,
        /// Words beside the 50 mm bar, a line each.
        words: Vec<String>,
    },
    /// Share out the lines of labels that do not fit among as few as hold them; one style is enough.
    Share {
        /// The labels.
        labels: Vec<Label>,
        /// The styles that they name.
        styles: Vec<Style>,
    },
    /// Begin a print. Equal labels lie together, where the first of them does.
    Begin {
        /// The labels.
        batch: Batch,
        /// Title of the document.
        title: String,
        /// Words beside the 50 mm bar, a line each: that it must measure 50 mm, how to print.
        words: Vec<String>,
        /// When, local, for the document's date: year, month, day, hour, minute, second.
        made: (u16, u8, u8, u8, u8, u8),
    },
    /// Do the next piece of the print.
    Continue,
    /// Let the print go.
    Cancel,
}

/// Where one copy of a label lies.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// Which of the labels.
    pub label: usize,
    /// Which sheet, from 0.
    pub sheet: usize,
    /// Left and upper edge from the corner of the paper, millimetres.
    pub at_mm: (f64, f64),
}

/// Labels on their sheets.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Shown {
    /// One proof for each label.
    pub proofs: Vec<Proof>,
    /// One spot for each copy, in the order in which they lie.
    pub spots: Vec<Spot>,
    /// For each sheet its cut lines, one SVG path.
    pub cuts: Vec<String>,
    /// The bar of 50 mm, one SVG path; empty on a card that is narrower.
    pub bar: String,
    /// Where the words beside the bar begin.
    pub words_at: (f64, f64),
    /// Their outlines from there, one SVG path.
    pub words: String,
}

/// An answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Worked {
    /// What labels look like and where they lie.
    Shown(Shown),
    /// For each label the lines of those that hold it; none where a word alone is too long.
    Shared(Vec<Vec<Vec<Line>>>),
    /// The print is under way: so much is done of all.
    Under {
        /// Pieces done.
        done: usize,
        /// Of so many.
        all: usize,
    },
    /// The print is finished; the file travels beside it.
    Pdf {
        /// The file.
        bytes: Vec<u8>,
        /// Sheets.
        sheets: u32,
        /// Labels.
        labels: u32,
    },
    /// Some labels do not fit; nothing was printed. Label number (from 0) and what is over.
    DoesNotFit(Vec<(usize, Vec<Over>)>),
    /// The file could not be written, for a reason that is not in the labels: what the writer said.
    NotWritten(String),
    /// No print is under way, or no longer.
    Idle,
}
