//! Messages to and from the press, the worker that sets labels: plain values, versioned.
//!
//! Between page and worker they travel so. The worker posts the string `"ready"` when it has started. The page posts
//! `{fonts: [Uint8Array, Uint8Array, Uint8Array]}` once (regular, italic, the one that fills their gaps; those of the
//! person's own follow) and the worker posts `"set"`; the same again when the person's fonts change. Then each question
//! is `{id: number, request: Uint8Array}` and its reply `{id, answer: Uint8Array, pdf: Uint8Array | undefined}`, buffers
//! transferred. `request` is a [`Work`] and `answer` a [`Worked`], both as JSON: requests are small, other workers read
//! it already, and a file of this size is where a person looks first when something is wrong. The bytes of a PDF are the
//! one large thing and travel beside it, not in it ([`Worked::Pdf`] arrives with `bytes` empty; the page puts them back).
//! Where the worker cannot answer (unreadable message or font, no fonts yet) it posts `{id, fault: string}`, without `id`
//! for the fonts; after a panic it is silent for good and the page hears the worker's `error` event. Both are
//! [`PressFault::Gone`].
//!
//! A font file that a person would add travels as `{id, font: Uint8Array}` and is answered by `{id, answer}`, a
//! [`FontSays`] as JSON, or `null` for what is no font. Those that were added are kept beside the records, under names
//! that begin with [`OWN_FONT`]; the page gives them to each worker that it starts.

mod work;

pub use work::{Batch, Card, Code, Label, PinAt, Shown, Spot, Style, Work, Worked};

use crate::Later;
use serde::{Deserialize, Serialize};

/// A stretch of text in one face.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Run {
    /// The words.
    pub text: String,
    /// True for Latin names.
    pub italic: bool,
}

/// One line that must stand on a line of its own before the press breaks it further.
pub type Line = Vec<Run>;

/// The size of a label and of its type.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Format {
    /// Width of the label, millimetres.
    pub width_mm: f64,
    /// Height of the label, millimetres.
    pub height_mm: f64,
    /// Largest type, points.
    pub type_largest_pt: f64,
    /// Smallest type, points; never below 3.5.
    pub type_least_pt: f64,
    /// Diameter kept clear for the pin at the label's middle, millimetres; 0 for none.
    pub pin_mm: f64,
}

/// The sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

/// What became of one label.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Proof {
    /// The lines as broken, top to bottom, for reading aloud and for the record.
    pub lines: Vec<String>,
    /// One SVG path of all outlines in millimetres, origin at the label's upper left corner, y down.
    pub path: String,
    /// The type size used, points.
    pub type_pt: f64,
    /// Where the pin's clear disc lies: centre x, y and radius, millimetres.
    pub pin: (f64, f64, f64),
    /// Between which lines the pin passes: the number of lines above it.
    pub lines_above_pin: usize,
    /// What does not fit, empty when all does.
    pub over: Vec<Over>,
}

/// A line that does not fit, or a letter the fonts lack.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Over {
    /// This line is too long by so many millimetres at the smallest type.
    Long {
        /// The words.
        text: String,
        /// By how much, millimetres.
        by_mm: f64,
    },
    /// More lines than the height holds, by so many millimetres.
    High {
        /// By how much, millimetres.
        by_mm: f64,
    },
    /// No font has this letter.
    Glyph {
        /// The letter.
        letter: char,
    },
    /// The label is larger than the sheet can hold, by so many millimetres.
    Sheet {
        /// By how much, millimetres.
        by_mm: f64,
    },
}

/// What stands before the names of a person's own fonts among what is kept beside the records.
pub const OWN_FONT: &str = "font/1/";

/// What a font file says of itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FontSays {
    /// Its family; empty where it has no name that can be read.
    pub family: String,
    /// How many characters it has.
    pub characters: usize,
    /// Whether its licence lets a part of it travel in a document.
    pub may_embed: bool,
}

/// Why the press gave no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PressFault {
    /// The worker could not be started or died; why, as the browser said.
    Gone(String),
}

/// A reply as it travels.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reply {
    /// The [`Worked`] as JSON.
    pub answer: Vec<u8>,
    /// The file of [`Worked::Pdf`].
    pub pdf: Option<Vec<u8>>,
}

/// The press port: starts the worker when first asked. It carries bytes and reads none of them, so that only the screens
/// that ask hold what reading takes.
pub trait Press {
    /// Takes a [`Work`] as JSON to the press and brings the reply.
    fn carry(&self, request: Vec<u8>) -> Later<'_, Result<Reply, PressFault>>;

    /// Takes a font file to the press and brings what it says of itself, an `Option` of [`FontSays`] as JSON.
    fn carry_font(&self, font: Vec<u8>) -> Later<'_, Result<Vec<u8>, PressFault>>;

    /// The person's own fonts have changed: whoever asks from now on meets the new ones.
    fn fonts_changed(&self);
}

impl dyn Press {
    /// Asks what a font file says of itself; `None` for what is no font.
    pub async fn judge(&self, font: Vec<u8>) -> Result<Option<FontSays>, PressFault> {
        let says = self.carry_font(font).await?;
        serde_json::from_slice(&says).map_err(|error| PressFault::Gone(error.to_string()))
    }

    /// Asks the press.
    pub async fn work(&self, work: Work) -> Result<Worked, PressFault> {
        let unread = |error: serde_json::Error| PressFault::Gone(error.to_string());
        let reply = self.carry(serde_json::to_vec(&work).map_err(unread)?).await?;
        Ok(match (serde_json::from_slice(&reply.answer).map_err(unread)?, reply.pdf) {
            (Worked::Pdf { sheets, labels, .. }, Some(bytes)) => Worked::Pdf { bytes, sheets, labels },
            (worked, _) => worked,
        })
    }
}
