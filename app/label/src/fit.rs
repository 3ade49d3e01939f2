//! Type size, breaks and places of one label, chosen together.
//!
//! Every size between the largest and the least (steps of 0.1 pt) is weighed with its best breaks, in each of the areas
//! that the label offers, and smaller type, breaks and uneven lines each have their price. A break after a comma costs
//! as much as 0.3 pt; one between words that belong together is taken only if no size avoids it; coordinates, dates
//! and names that come with no-break spaces are never broken.

use crate::area::Area;
use crate::breaking::{Block, Width, shared, ways, width};
use crate::frame::{Over, millimetres, mm};
use crate::measure::{Extent, Ink, Shaped, Word};
use crate::place::{Placed, Room, place};

/// The price of 0.1 pt; breaking has the others.
const SMALLER: f32 = 1.0;
/// With more words than this no label is near to holding them, and what comes nearest is not looked for.
const NEAR_MOST: usize = 300;
/// More lines than this on one label are not tried.
const LINES_MOST: usize = 12;

/// One line as given, shaped.
pub(crate) struct Text {
    pub(crate) words: Vec<Word>,
    blocks: Vec<Block>,
}

impl Text {
    pub(crate) fn new(words: Vec<Word>) -> Self {
        let blocks = words.iter().map(block).collect();
        Self { words, blocks }
    }

    /// What stands on one line in reading order: words and the spaces between them, shaped.
    pub(crate) fn line(&self, piece: Piece) -> Vec<&Shaped> {
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
    pub(crate) fn extent(&self, index: usize, piece: Piece) -> &Extent {
        let broken = index + 1 == piece.until && piece.until < self.words.len();
        if broken { &self.words[index].at_break } else { &self.words[index].inside }
    }
}

/// Words of one text that stand on one line.
#[derive(Clone, Copy)]
pub(crate) struct Piece {
    pub(crate) text: usize,
    pub(crate) from: usize,
    pub(crate) until: usize,
}

/// A size, breaks and places.
pub(crate) struct Fit {
    pub(crate) size_pt: f64,
    pub(crate) pieces: Vec<Piece>,
    pub(crate) placed: Placed,
    pub(crate) area: Area,
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
pub(crate) fn sizes(largest: f64, least: f64) -> Vec<f64> {
    let (first, last) = ((largest * 10.0 + 1e-6) as u32, (least * 10.0 - 1e-6) as u32 + 1);
    let mut sizes: Vec<f64> = (last..=first.max(last)).rev().map(|tenths| f64::from(tenths) / 10.0).collect();
    sizes.retain(|size| *size <= largest.max(least));
    if sizes.is_empty() {
        sizes.push(least);
    }
    sizes
}

fn room(area: &Area, size_pt: f64) -> Room {
    Room { height: area.height, pin: area.band, size: mm(size_pt) }
}

/// The width that a line may have, em.
fn measure(area: &Area, size_pt: f64) -> f32 {
    ((area.right - area.left).max(0.0) / mm(size_pt)) as f32
}

pub(crate) fn missing(texts: &[Text]) -> Vec<Over> {
    let mut letters: Vec<char> = Vec::new();
    let parts = texts.iter().flat_map(|text| &text.words).flat_map(|word| &word.inside.parts);
    for letter in parts.flat_map(|part| &part.missing) {
        if !letters.contains(letter) {
            letters.push(*letter);
        }
    }
    letters.into_iter().map(Over::Glyph).collect()
}

/// The cheapest area, size and breaks with which everything fits.
pub(crate) fn best(texts: &[Text], areas: &[Area], sizes: &[f64]) -> Option<Fit> {
    let fits = areas.iter().filter_map(|area| fitting(texts, area, sizes));
    fits.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, fit)| fit)
}

fn fitting(texts: &[Text], area: &Area, sizes: &[f64]) -> Option<(f32, Fit)> {
    let mut best: Option<(f32, Fit)> = None;
    for (step, size) in sizes.iter().enumerate() {
        let smaller = step as f32 * SMALLER;
        if best.as_ref().is_some_and(|(cost, _)| smaller >= *cost) {
            break;
        }
        if let Some((cost, fit)) = broken(texts, area, *size, Width::Hard(measure(area, *size)))
            && best.as_ref().is_none_or(|(known, _)| smaller + cost < *known)
        {
            best = Some((smaller + cost, fit));
        }
    }
    best
}

/// The cheapest breaks at one size whose lines also fit the height.
fn broken(texts: &[Text], area: &Area, size_pt: f64, limit: Width) -> Option<(f32, Fit)> {
    let ways: Vec<_> = texts.iter().map(|text| ways(&text.blocks, limit, LINES_MOST)).collect();
    let mut best: Option<(f32, Fit)> = None;
    for total in texts.len()..=LINES_MOST.max(texts.len()) {
        let Some((cost, breaks)) = shared(&ways, total) else {
            continue;
        };
        let pieces = pieces(breaks.iter().map(|way| way.ends.as_slice()));
        // More lines only get higher.
        let Ok(placed) = place(&inks(texts, &pieces), room(area, size_pt)) else {
            break;
        };
        if best.as_ref().is_none_or(|(known, _)| cost < *known) {
            best = Some((cost, Fit { size_pt, pieces, placed, area: area.clone() }));
        }
    }
    best
}

/// What comes nearest at the least type, in the widest area, and what is over.
pub(crate) fn forced(texts: &[Text], areas: &[Area], least: f64) -> (Fit, Vec<Over>) {
    let area = areas.iter().max_by(|a, b| (a.right - a.left).total_cmp(&(b.right - b.left))).expect("there is an area");
    let limit = measure(area, least);
    let near = texts.iter().map(|text| text.words.len()).sum::<usize>() <= NEAR_MOST;
    if near && let Some((_, fit)) = broken(texts, area, least, Width::Soft(limit)) {
        let over = fit.pieces.iter().filter_map(|piece| long(&texts[piece.text], *piece, limit, least)).collect();
        return (fit, over);
    }
    let whole = pieces(texts.iter().map(|text| text.words.len()).collect::<Vec<_>>().iter().map(std::slice::from_ref));
    let by = place(&inks(texts, &whole), room(area, least)).err().unwrap_or(0.0);
    let mut over: Vec<Over> = (by > 0.0).then(|| Over::High { by: millimetres(by) }).into_iter().collect();
    over.extend(whole.iter().filter_map(|piece| long(&texts[piece.text], *piece, limit, least)));
    let higher = Room { height: area.height + by + 1e-6, ..room(area, least) };
    let placed = place(&inks(texts, &whole), higher).expect("a label that is higher by what was missing holds it");
    (Fit { size_pt: least, pieces: whole, placed, area: area.clone() }, over)
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

pub(crate) fn said(parts: &[&Shaped]) -> String {
    parts.iter().flat_map(|part| &part.stretches).map(|stretch| stretch.text.as_str()).collect()
}
