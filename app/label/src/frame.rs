//! One label: lines in, the frame out in which each glyph has its place.
//!
//! The type size and the breaks are chosen together: every size between the largest and the least (steps of 0.1 pt)
//! is weighed with its best breaks, and smaller type, breaks and uneven lines each have their price. A break after a
//! comma costs as much as 0.3 pt; one between words that belong together is taken only if no size avoids it. The
//! result is a [`Frame`] and a list of what does not fit, which is empty in the ordinary case.

use crate::breaking::{Block, Width, shared, ways, width};
use crate::measure::{Extent, Glyph, Ink, Setter, Shaped, Stretch, Word};
use crate::place::{EDGE_X_MM, Placed, Room, place};
use crate::text::{Line, tokens};
use units::{Millimetres, Points};

/// The price of 0.1 pt; breaking has the others.
const SMALLER: f32 = 1.0;
/// Smaller type cannot be read and not printed.
/// **Source**: below 3 pt a pin hole destroys the text, 3.5 pt is used: a lepidopterist's page on labelling specimens.
const LEAST_PT: f64 = 3.5;
/// More lines than this on one label are not tried.
const LINES_MOST: usize = 12;

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
    /// Diameter kept clear for the pin at the middle of the label; zero for no pin.
    pub pin: Millimetres,
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
    /// Diameter of the disc kept clear at the middle.
    pub pin: Millimetres,
    /// Between which lines the pin passes: the number of lines above it.
    pub above: usize,
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
        let texts: Vec<Text> = lines.iter().filter_map(|line| self.text(line)).collect();
        let least = format.least.points().max(LEAST_PT);
        let sizes = sizes(format.largest.points().max(least), least);
        let mut over = missing(&texts);
        let fit = fitting(&texts, format, &sizes).unwrap_or_else(|| {
            let (fit, more) = forced(&texts, format, least);
            over.extend(more);
            fit
        });
        Outcome { frame: self.framed(&texts, &fit, format), over }
    }

    fn text(&mut self, line: &Line) -> Option<Text> {
        let words: Vec<Word> = tokens(line).iter().map(|token| self.word(token)).collect();
        let blocks = words.iter().map(block).collect();
        (!words.is_empty()).then_some(Text { words, blocks })
    }

    fn framed(&self, texts: &[Text], fit: &Fit, format: &Format) -> Frame {
        let pieces = fit.pieces.iter().map(|piece| texts[piece.text].line(*piece));
        let size_mm = mm(fit.size_pt);
        let lines =
            pieces.zip(&fit.placed.baselines).map(|(parts, baseline)| set_line(&parts, *baseline, size_mm)).collect();
        Frame {
            width: format.width,
            height: format.height,
            size: points(fit.size_pt),
            lines,
            pin: format.pin,
            above: fit.placed.above,
        }
    }
}

/// One line as given, shaped.
struct Text {
    words: Vec<Word>,
    blocks: Vec<Block>,
}

impl Text {
    /// What stands on one line: words and the spaces between them, shaped.
    fn line(&self, piece: Piece) -> Vec<&Shaped> {
        let mut parts: Vec<&Shaped> = Vec::new();
        for index in piece.from..piece.until {
            if index > piece.from {
                parts.push(&self.words[index - 1].space);
            }
            parts.extend(self.extent(index, piece).parts.iter().map(|part| &**part));
        }
        parts
    }

    /// The last word of a line that is broken after it looks different.
    fn extent(&self, index: usize, piece: Piece) -> &Extent {
        let broken = index + 1 == piece.until && piece.until < self.words.len();
        if broken { &self.words[index].at_break } else { &self.words[index].inside }
    }
}

/// Words of one text that stand on one line.
#[derive(Clone, Copy)]
struct Piece {
    text: usize,
    from: usize,
    until: usize,
}

/// A size, breaks and places.
struct Fit {
    size_pt: f64,
    pieces: Vec<Piece>,
    placed: Placed,
}

fn block(word: &Word) -> Block {
    Block {
        left: (-word.inside.ink.left).max(0.0),
        right: word.at_break.advance.max(word.at_break.ink.right),
        advance: word.inside.advance,
        space: word.space.advance,
        glad: word.glad,
    }
}

/// From the largest to the least, in steps of 0.1 pt counted in whole tenths.
fn sizes(largest: f64, least: f64) -> Vec<f64> {
    let (first, last) = ((largest * 10.0 + 1e-6) as u32, (least * 10.0 - 1e-6) as u32 + 1);
    let mut sizes: Vec<f64> = (last..=first.max(last)).rev().map(|tenths| f64::from(tenths) / 10.0).collect();
    sizes.retain(|size| *size <= largest.max(least));
    if sizes.is_empty() {
        sizes.push(least);
    }
    sizes
}

fn mm(size_pt: f64) -> f64 {
    points(size_pt).to_millimetres().millimetres()
}

fn points(size_pt: f64) -> Points {
    Points::new(size_pt).expect("type sizes are finite")
}

fn millimetres(value: f64) -> Millimetres {
    Millimetres::new(value).expect("places on a label are finite")
}

fn room(format: &Format, size_pt: f64) -> Room {
    Room { height: format.height.millimetres(), pin: format.pin.millimetres(), size: mm(size_pt) }
}

/// The width that a line may have, em.
fn measure(format: &Format, size_pt: f64) -> f32 {
    ((format.width.millimetres() - 2.0 * EDGE_X_MM).max(0.0) / mm(size_pt)) as f32
}

fn missing(texts: &[Text]) -> Vec<Over> {
    let mut letters: Vec<char> = Vec::new();
    let parts = texts.iter().flat_map(|text| &text.words).flat_map(|word| &word.inside.parts);
    for letter in parts.flat_map(|part| &part.missing) {
        if !letters.contains(letter) {
            letters.push(*letter);
        }
    }
    letters.into_iter().map(Over::Glyph).collect()
}

/// The cheapest size and breaks with which everything fits.
fn fitting(texts: &[Text], format: &Format, sizes: &[f64]) -> Option<Fit> {
    let mut best: Option<(f32, Fit)> = None;
    for (step, size) in sizes.iter().enumerate() {
        let smaller = step as f32 * SMALLER;
        if best.as_ref().is_some_and(|(cost, _)| smaller >= *cost) {
            break;
        }
        if let Some((cost, fit)) = broken(texts, format, *size, Width::Hard(measure(format, *size)))
            && best.as_ref().is_none_or(|(known, _)| smaller + cost < *known)
        {
            best = Some((smaller + cost, fit));
        }
    }
    best.map(|(_, fit)| fit)
}

/// The cheapest breaks at one size whose lines also fit the height.
fn broken(texts: &[Text], format: &Format, size_pt: f64, limit: Width) -> Option<(f32, Fit)> {
    let ways: Vec<_> = texts.iter().map(|text| ways(&text.blocks, limit, LINES_MOST)).collect();
    let mut best: Option<(f32, Fit)> = None;
    for total in texts.len()..=LINES_MOST.max(texts.len()) {
        let Some((cost, breaks)) = shared(&ways, total) else {
            continue;
        };
        let pieces = pieces(breaks.iter().map(|way| way.ends.as_slice()));
        // More lines only get higher.
        let Ok(placed) = place(&inks(texts, &pieces), room(format, size_pt)) else {
            break;
        };
        if best.as_ref().is_none_or(|(known, _)| cost < *known) {
            best = Some((cost, Fit { size_pt, pieces, placed }));
        }
    }
    best
}

/// What comes nearest at the least type, and what is over.
fn forced(texts: &[Text], format: &Format, least: f64) -> (Fit, Vec<Over>) {
    let limit = measure(format, least);
    if let Some((_, fit)) = broken(texts, format, least, Width::Soft(limit)) {
        let over = fit.pieces.iter().filter_map(|piece| long(&texts[piece.text], *piece, limit, least)).collect();
        return (fit, over);
    }
    let whole = pieces(texts.iter().map(|text| text.words.len()).collect::<Vec<_>>().iter().map(std::slice::from_ref));
    let by = place(&inks(texts, &whole), room(format, least)).expect_err("it did not fit a moment ago");
    let mut over = vec![Over::High { by: millimetres(by) }];
    over.extend(whole.iter().filter_map(|piece| long(&texts[piece.text], *piece, limit, least)));
    let higher = Room { height: format.height.millimetres() + by + 1e-6, ..room(format, least) };
    let placed = place(&inks(texts, &whole), higher).expect("a label that is higher by what was missing holds it");
    (Fit { size_pt: least, pieces: whole, placed }, over)
}

fn long(text: &Text, piece: Piece, limit: f32, size_pt: f64) -> Option<Over> {
    let by = f64::from(width(&text.blocks, piece.from, piece.until) - limit) * mm(size_pt);
    (by > 0.0).then(|| Over::Long { text: said(&text.line(piece)), by: millimetres(by) })
}

fn pieces<'e>(ends: impl Iterator<Item = &'e [usize]>) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (text, ends) in ends.enumerate() {
        let mut from = 0;
        for until in ends {
            pieces.push(Piece { text, from, until: *until });
            from = *until;
        }
    }
    pieces
}

fn inks(texts: &[Text], pieces: &[Piece]) -> Vec<Ink> {
    let ink = |piece: &Piece| {
        let extents = (piece.from..piece.until).map(|index| texts[piece.text].extent(index, *piece));
        extents.fold(Ink::default(), |ink, extent| ink.joined(extent.ink, 0.0))
    };
    pieces.iter().map(ink).collect()
}

fn said(parts: &[&Shaped]) -> String {
    parts.iter().flat_map(|part| &part.stretches).map(|stretch| stretch.text.as_str()).collect()
}

fn set_line(parts: &[&Shaped], baseline: f64, size_mm: f64) -> SetLine {
    let left = parts.first().map_or(0.0, |part| -part.ink.left).max(0.0);
    let mut line = Composer { pen: f64::from(left), size_mm, runs: Vec::new() };
    parts.iter().for_each(|part| line.take(&part.stretches));
    SetLine { text: said(parts), runs: line.runs, baseline: millimetres(baseline) }
}

struct Composer {
    /// Where the pen is, em from the left margin.
    pen: f64,
    size_mm: f64,
    runs: Vec<SetRun>,
}

impl Composer {
    fn take(&mut self, stretches: &[Stretch]) {
        for stretch in stretches {
            if self.runs.last().is_none_or(|run| run.face != stretch.face) {
                let x = millimetres(EDGE_X_MM + self.pen * self.size_mm);
                self.runs.push(SetRun { face: stretch.face, text: String::new(), glyphs: Vec::new(), x });
            }
            let run = self.runs.last_mut().expect("a run was just begun");
            let moved = run.text.len();
            run.text.push_str(&stretch.text);
            run.glyphs.extend(stretch.glyphs.iter().map(|g| Glyph {
                start: g.start + moved,
                end: g.end + moved,
                ..*g
            }));
            self.pen += stretch.glyphs.iter().map(|glyph| f64::from(glyph.advance)).sum::<f64>();
        }
    }
}
