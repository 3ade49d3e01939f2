//! One label: lines in, the frame out in which each glyph has its place.
//!
//! The result is a [`Frame`] and a list of what does not fit, which is empty in the ordinary case. How size, breaks and
//! places are chosen stands in `fit`.

use crate::area::{areas, clear};
use crate::code::{Code, SetCode};
use crate::compose::set_line;
use crate::fit::{Fit, Text, best, forced, missing, sizes};
use crate::measure::{Glyph, Setter};
use crate::text::{Line, tokens};
use units::{Millimetres, Points};

/// Smaller type cannot be read and not printed.
/// **Source**: below 3 pt a pin hole destroys the text, 3.5 pt is used: a lepidopterist's page on labelling specimens.
const LEAST_PT: f64 = 3.5;

/// The size of a label and of its type.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Format {
    /// Width of the label.
    pub width: Millimetres,
    /// Height of the label.
    pub height: Millimetres,
    /// Largest type.
    pub largest: Points,
    /// Least type; never below 3.5 pt.
    pub least: Points,
    /// Diameter kept clear for the pin; zero for no pin.
    pub pin: Millimetres,
    /// Where the pin passes.
    pub pin_at: PinAt,
}

/// Where the pin passes through a label, halfway up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum PinAt {
    /// In the middle: for insects that are pinned themselves.
    #[default]
    Middle,
    /// Near the left end: for insects on points, which reach to the right of the pin.
    Left,
    /// Near the right end.
    Right,
}

/// What does not fit, or a letter that no font has.
#[derive(Clone, Debug, PartialEq)]
pub enum Over {
    /// This line is too long at the least type.
    Long {
        /// The words of the line as far as it could be broken.
        text: String,
        /// By how much.
        by: Millimetres,
    },
    /// The lines are higher than the label, at the least type.
    High {
        /// By how much.
        by: Millimetres,
    },
    /// No font has this letter.
    Glyph(char),
    /// The code needs more room.
    Code {
        /// What it says.
        text: String,
        /// By how much.
        by: Millimetres,
    },
}

/// Glyphs of one face, in a row.
#[derive(Clone, Debug, PartialEq)]
pub struct SetRun {
    /// Which font.
    pub face: usize,
    /// The letters.
    pub text: String,
    /// The glyphs.
    pub glyphs: Vec<Glyph>,
    /// Where the row begins, from the left edge of the label.
    pub x: Millimetres,
}

/// One line in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct SetLine {
    /// The words, for reading aloud.
    pub text: String,
    /// The rows of glyphs, left to right.
    pub runs: Vec<SetRun>,
    /// The baseline, from the upper edge of the label.
    pub baseline: Millimetres,
}

/// A label with every glyph in its place; positions are from its upper left corner, downwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Width of the label.
    pub width: Millimetres,
    /// Height of the label.
    pub height: Millimetres,
    /// The type size chosen.
    pub size: Points,
    /// The lines, top to bottom.
    pub lines: Vec<SetLine>,
    /// Diameter of the disc kept clear.
    pub pin: Millimetres,
    /// The disc's centre, from the left edge; it lies halfway up.
    pub pin_x: Millimetres,
    /// Between which lines the pin passes: the number of lines above it; all of them where it passes beside the lines.
    pub above: usize,
    /// The code beside the lines.
    pub code: Option<SetCode>,
}

impl Frame {
    /// Radius of the disc in which there is no ink.
    pub fn clear(&self) -> Millimetres {
        millimetres(if self.pin > Millimetres::ZERO { clear(self.pin.millimetres()) } else { 0.0 })
    }
}

/// A frame and what of it does not fit; with anything over it is to be looked at, not to be printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The frame.
    pub frame: Frame,
    /// What does not fit.
    pub over: Vec<Over>,
}

impl Setter<'_> {
    /// Sets one label.
    pub fn frame(&mut self, lines: &[Line], format: &Format) -> Outcome {
        self.frame_with(lines, None, format)
    }

    /// Sets one label with a code beside its lines.
    pub fn frame_with(&mut self, lines: &[Line], code: Option<&Code>, format: &Format) -> Outcome {
        let texts: Vec<Text> = lines.iter().filter_map(|line| self.text(line)).collect();
        let least = format.least.points().max(LEAST_PT);
        let sizes = sizes(format.largest.points().max(least), least);
        let mut over = missing(&texts);
        let (areas, code_over) = areas(format, code);
        over.extend(code_over);
        let fit = best(&texts, &areas, &sizes).unwrap_or_else(|| {
            let (fit, more) = forced(&texts, &areas, least);
            over.extend(more);
            fit
        });
        Outcome { frame: framed(&texts, fit, format), over }
    }

    fn text(&mut self, line: &Line) -> Option<Text> {
        let words: Vec<_> = tokens(line).iter().map(|token| self.word(token)).collect();
        (!words.is_empty()).then(|| Text::new(words))
    }
}

fn framed(texts: &[Text], fit: Fit, format: &Format) -> Frame {
    let size_mm = mm(fit.size_pt);
    let line = |(piece, baseline): (&_, &f64)| set_line(texts, *piece, (fit.area.left, *baseline), size_mm);
    Frame {
        width: format.width,
        height: format.height,
        size: points(fit.size_pt),
        lines: fit.pieces.iter().zip(&fit.placed.baselines).map(line).collect(),
        pin: format.pin,
        pin_x: millimetres(fit.area.pin_x),
        above: fit.placed.above,
        code: fit.area.code,
    }
}

pub(crate) fn mm(size_pt: f64) -> f64 {
    points(size_pt).to_millimetres().millimetres()
}

fn points(size_pt: f64) -> Points {
    Points::new(size_pt).expect("type sizes are finite")
}

pub(crate) fn millimetres(value: f64) -> Millimetres {
    Millimetres::new(value).expect("places on a label are finite")
}
