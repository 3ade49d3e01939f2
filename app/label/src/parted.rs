//! More than one label for what one does not hold: lines in, the lines of each label out.
//!
//! Whole lines stay together if that takes no more labels than parting them after a comma, and those if it takes no
//! more than parting them between any two words. Every word is on one of the labels, in order.

use crate::frame::{Format, Outcome, Over};
use crate::measure::Setter;
use crate::text::{Line, Token, line_of, tokens};

/// What needs more labels than this is not for labels.
const SHARES_MOST: usize = 20;

/// What one of several labels says, set.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// Its lines.
    pub lines: Vec<Line>,
    /// How they were set.
    pub outcome: Outcome,
}

/// After which words a label may end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Cut {
    Line,
    Comma,
    Word,
}

/// One word, which line it is of, and how good a place to cut is after it.
struct Piece {
    line: usize,
    token: Token,
    cut: Cut,
}

impl Outcome {
    /// True when everything has its place, whether the fonts have all letters or not.
    pub fn fits(&self) -> bool {
        self.over.iter().all(|over| matches!(over, Over::Glyph(_)))
    }
}

impl Setter<'_> {
    /// Shares out lines among as few labels of one size as hold them.
    ///
    /// **Shape**: none when a word alone is too long, or when it would take more than twenty.
    pub fn shares(&mut self, lines: &[Line], format: &Format) -> Vec<Share> {
        let pieces: Vec<Piece> = lines.iter().enumerate().flat_map(|(index, line)| cut_up(index, line)).collect();
        let mut best: Vec<Share> = Vec::new();
        for cut in [Cut::Line, Cut::Comma, Cut::Word] {
            let shares = self.shares_at(&pieces, cut, format).unwrap_or_default();
            if !shares.is_empty() && (best.is_empty() || shares.len() < best.len()) {
                best = shares;
            }
        }
        best
    }

    fn shares_at(&mut self, pieces: &[Piece], cut: Cut, format: &Format) -> Option<Vec<Share>> {
        let mut shares = Vec::new();
        let mut from = 0;
        while from < pieces.len() {
            let (until, share) = self.longest(pieces, from, cut, format)?;
            shares.push(share);
            from = until;
            if shares.len() > SHARES_MOST {
                return None;
            }
        }
        Some(shares)
    }

    /// The most words from here on that one label holds.
    fn longest(&mut self, pieces: &[Piece], from: usize, cut: Cut, format: &Format) -> Option<(usize, Share)> {
        let mut longest = None;
        let ends = (from + 1..=pieces.len()).filter(|until| pieces[until - 1].cut <= cut);
        for until in ends {
            let lines = joined(&pieces[from..until]);
            let outcome = self.frame(&lines, format);
            if !outcome.fits() {
                break;
            }
            longest = Some((until, Share { lines, outcome }));
        }
        longest
    }
}

fn cut_up(line: usize, runs: &Line) -> Vec<Piece> {
    let tokens = tokens(runs);
    let count = tokens.len();
    let cut = |(index, token): (usize, Token)| {
        let cut = match (index + 1 == count, token.gap.glad) {
            (true, _) => Cut::Line,
            (false, true) => Cut::Comma,
            (false, false) => Cut::Word,
        };
        Piece { line, token, cut }
    };
    tokens.into_iter().enumerate().map(cut).collect()
}

fn joined(pieces: &[Piece]) -> Vec<Line> {
    let line = |pieces: &[Piece]| line_of(&pieces.iter().map(|piece| piece.token.clone()).collect::<Vec<_>>());
    pieces.chunk_by(|a, b| a.line == b.line).map(line).collect()
}
