//! One line: shaped words in, rows of glyphs in their places out.
//!
//! Words of scripts that run from right to left stand in that order among themselves; the line as a whole runs from
//! left to right.

use crate::fit::{Piece, Text, said};
use crate::frame::{SetLine, SetRun, millimetres};
use crate::measure::{Glyph, Shaped, Stretch, Way, Word};

/// Sets one line with its left edge and baseline at a place, mm.
pub(crate) fn set_line(texts: &[Text], piece: Piece, at: (f64, f64), size_mm: f64) -> SetLine {
    let text = &texts[piece.text];
    let parts = visual(text, piece);
    let left = parts.first().map_or(0.0, |part| -part.ink.left).max(0.0);
    let mut line = Composer { pen: f64::from(left), left: at.0, size_mm, runs: Vec::new() };
    parts.iter().for_each(|part| line.take(&part.stretches));
    SetLine { text: said(&text.line(piece)), runs: line.runs, baseline: millimetres(at.1) }
}

/// The words from left to right.
fn visual(text: &Text, piece: Piece) -> Vec<&Shaped> {
    let leftwards = leftwards(&text.words[piece.from..piece.until]);
    let mut parts: Vec<&Shaped> = Vec::new();
    let mut from = piece.from;
    while from < piece.until {
        let way = |index: usize| leftwards[index - piece.from];
        let until = (from..piece.until).find(|index| way(*index) != way(from)).unwrap_or(piece.until);
        if from > piece.from {
            parts.push(&text.words[from - 1].space);
        }
        let words: Vec<usize> = if way(from) { (from..until).rev().collect() } else { (from..until).collect() };
        for (place, index) in words.into_iter().enumerate() {
            if place > 0 {
                parts.push(&text.words[if way(from) { index } else { index - 1 }].space);
            }
            parts.extend(text.extent(index, piece).parts.iter().map(|part| &**part));
        }
        from = until;
    }
    parts
}

/// Which words run from right to left: numbers do between two that do.
fn leftwards(words: &[Word]) -> Vec<bool> {
    let along = |index: usize| {
        let sure = |word: &&Word| word.way != Way::Either;
        let before = words[..index].iter().rev().find(sure).map(|word| word.way);
        let after = words[index..].iter().find(sure).map(|word| word.way);
        before == Some(Way::Leftwards) && after == before
    };
    let one = |(index, word): (usize, &Word)| match word.way {
        Way::Leftwards => true,
        Way::Rightwards => false,
        Way::Either => along(index),
    };
    words.iter().enumerate().map(one).collect()
}

struct Composer {
    /// Where the pen is, em from the left margin.
    pen: f64,
    /// The left margin, mm.
    left: f64,
    size_mm: f64,
    runs: Vec<SetRun>,
}

impl Composer {
    fn take(&mut self, stretches: &[Stretch]) {
        for stretch in stretches {
            if self.runs.last().is_none_or(|run| run.face != stretch.face) {
                let x = millimetres(self.left + self.pen * self.size_mm);
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
