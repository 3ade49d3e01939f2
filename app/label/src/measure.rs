//! Shaping: words in, glyphs with their advances and ink out; each distinct word is shaped once.
//!
//! **Units**: everything here is in em (the type size), so that one shaping serves all sizes.

use crate::fonts::{Fonts, chain};
use crate::text::{Run, Token, is_leftwards};
use rustybuzz::{Face, UnicodeBuffer};
use std::collections::HashMap;
use std::rc::Rc;

/// One glyph of a stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glyph {
    /// Its number in the font.
    pub id: u16,
    /// How far the pen moves, em.
    pub advance: f32,
    /// How far the glyph stands from the pen to the right, em.
    pub right: f32,
    /// How far upwards, em.
    pub up: f32,
    /// Where its letters begin in the text, in bytes.
    pub start: usize,
    /// Where they end.
    pub end: usize,
}

/// Where ink lies around a pen at 0, em; `up` and `down` count away from the baseline.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Ink {
    pub(crate) left: f32,
    pub(crate) right: f32,
    pub(crate) up: f32,
    pub(crate) down: f32,
}

impl Ink {
    pub(crate) fn joined(self, other: Self, moved: f32) -> Self {
        Self {
            left: self.left.min(other.left + moved),
            right: self.right.max(other.right + moved),
            up: self.up.max(other.up),
            down: self.down.max(other.down),
        }
    }
}

/// Text in one face, shaped.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Stretch {
    pub(crate) face: usize,
    pub(crate) text: String,
    pub(crate) glyphs: Vec<Glyph>,
}

/// A word or a part of one, shaped.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Shaped {
    pub(crate) stretches: Vec<Stretch>,
    pub(crate) advance: f32,
    pub(crate) ink: Ink,
    /// Letters that no font has.
    pub(crate) missing: Vec<char>,
}

/// Which way a word runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    Rightwards,
    Leftwards,
    /// It has no letters and goes along with its neighbours: a number.
    Either,
}

/// A token, shaped.
pub(crate) struct Word {
    /// Within a line.
    pub(crate) inside: Extent,
    /// At the end of a line that is broken after it.
    pub(crate) at_break: Extent,
    pub(crate) glad: bool,
    pub(crate) way: Way,
    pub(crate) space: Rc<Shaped>,
}

/// Shaped parts in a row.
#[derive(Clone, Default)]
pub(crate) struct Extent {
    pub(crate) parts: Vec<Rc<Shaped>>,
    pub(crate) advance: f32,
    pub(crate) ink: Ink,
}

/// Words that were shaped, upright and italic; of use only with the fonts they were shaped in.
#[derive(Default)]
pub struct Shapings([HashMap<String, Rc<Shaped>>; 2]);

/// Sets labels in the given fonts and remembers the words it has shaped.
pub struct Setter<'f> {
    pub(crate) fonts: &'f Fonts,
    pub(crate) faces: Vec<Face<'f>>,
    shaped: Shapings,
    buffer: Option<UnicodeBuffer>,
}

impl<'f> Setter<'f> {
    /// A setter in these fonts.
    pub fn new(fonts: &'f Fonts) -> Self {
        Self::resumed(fonts, Shapings::default())
    }

    /// A setter in the fonts of an earlier one, with the words that it had shaped.
    pub fn resumed(fonts: &'f Fonts, shaped: Shapings) -> Self {
        Self { fonts, faces: fonts.faces(), shaped, buffer: Some(UnicodeBuffer::new()) }
    }

    /// The words that were shaped, for the next setter.
    pub fn shapings(self) -> Shapings {
        self.shaped
    }

    pub(crate) fn word(&mut self, token: &Token) -> Word {
        let inside = self.extent(&token.runs);
        let at_break = if token.gap.instead { self.extent(&token.at_break()) } else { inside.clone() };
        let space = match token.gap.tight {
            true => Rc::default(),
            false => self.part(&Run { text: " ".to_owned(), italic: token.gap.italic }),
        };
        let has = |letter: fn(char) -> bool| token.runs.iter().any(|run| run.text.contains(letter));
        let way = match (has(is_leftwards), has(char::is_alphabetic)) {
            (true, _) => Way::Leftwards,
            (false, true) => Way::Rightwards,
            (false, false) => Way::Either,
        };
        Word { inside, at_break, glad: token.gap.glad, way, space }
    }

    fn extent(&mut self, runs: &[Run]) -> Extent {
        let mut extent = Extent::default();
        for run in runs {
            let part = self.part(run);
            extent.ink = extent.ink.joined(part.ink, extent.advance);
            extent.advance += part.advance;
            extent.parts.push(part);
        }
        extent
    }

    fn part(&mut self, run: &Run) -> Rc<Shaped> {
        let known = &self.shaped.0[usize::from(run.italic)];
        if let Some(shaped) = known.get(&run.text) {
            return Rc::clone(shaped);
        }
        let shaped = Rc::new(self.shape(run));
        self.shaped.0[usize::from(run.italic)].insert(run.text.clone(), Rc::clone(&shaped));
        shaped
    }

    fn shape(&mut self, run: &Run) -> Shaped {
        let mut shaped = Shaped::default();
        let mut pieces: Vec<(usize, String)> = self.by_face(run, &mut shaped.missing);
        if run.text.contains(is_leftwards) {
            pieces.reverse();
        }
        for (face, text) in pieces {
            let glyphs = self.glyphs(face, &text);
            for glyph in &glyphs {
                shaped.ink = shaped.ink.joined(self.ink(face, glyph), shaped.advance);
                shaped.advance += glyph.advance;
            }
            shaped.stretches.push(Stretch { face, text, glyphs });
        }
        shaped
    }

    /// Cuts a text where another font must help out, or where it turns round; letters that none has stay in the first and are named.
    fn by_face(&mut self, run: &Run, missing: &mut Vec<char>) -> Vec<(usize, String)> {
        let mut pieces: Vec<(usize, String)> = Vec::new();
        let mixed = run.text.contains(is_leftwards);
        for cluster in clusters(&run.text) {
            let face = self.face_of(cluster, run.italic);
            if face.is_none() {
                missing.extend(cluster.chars().find(|letter| !self.any_has(*letter)).or(cluster.chars().next()));
            }
            let face = face.or(chain(run.italic, self.faces.len()).next()).expect("there is a first font");
            match pieces.last_mut() {
                Some((last, text)) if *last == face && !(mixed && turns(text, cluster)) => text.push_str(cluster),
                _ => pieces.push((face, cluster.to_owned())),
            }
        }
        pieces
    }

    fn any_has(&self, letter: char) -> bool {
        (0..self.faces.len()).any(|face| self.has(face, letter))
    }

    /// Some tables send a letter to glyph 0, which is the box for what is missing.
    fn has(&self, face: usize, letter: char) -> bool {
        self.faces[face].glyph_index(letter).is_some_and(|glyph| glyph.0 != 0)
    }

    fn face_of(&mut self, cluster: &str, italic: bool) -> Option<usize> {
        chain(italic, self.faces.len()).find(|face| self.can_set(*face, cluster))
    }

    /// A letter with its marks may have one glyph where its parts have none, so only shaping can tell.
    fn can_set(&mut self, face: usize, cluster: &str) -> bool {
        let mut letters = cluster.chars();
        match (letters.next(), letters.next()) {
            (Some(only), None) => self.has(face, only),
            _ => self.glyphs(face, cluster).iter().all(|glyph| glyph.id != 0),
        }
    }

    fn glyphs(&mut self, face: usize, text: &str) -> Vec<Glyph> {
        let mut buffer = self.buffer.take().unwrap_or_default();
        buffer.push_str(text);
        let leftwards = text.contains(is_leftwards);
        buffer.set_direction(if leftwards {
            rustybuzz::Direction::RightToLeft
        } else {
            rustybuzz::Direction::LeftToRight
        });
        buffer.guess_segment_properties();
        let set = rustybuzz::shape(&self.faces[face], &[], buffer);
        // Divided, because a thousandth is no binary number: kerns would be written as 9.999817 where they are 10.
        let per_em = self.faces[face].units_per_em() as f32;
        let starts: Vec<usize> = set.glyph_infos().iter().map(|info| info.cluster as usize).collect();
        let glyph = |(index, (info, at)): (usize, (&rustybuzz::GlyphInfo, &rustybuzz::GlyphPosition))| Glyph {
            id: u16::try_from(info.glyph_id).unwrap_or(0),
            advance: at.x_advance as f32 / per_em,
            right: at.x_offset as f32 / per_em,
            up: at.y_offset as f32 / per_em,
            start: starts[index],
            end: starts.iter().copied().filter(|start| *start > starts[index]).min().unwrap_or(text.len()),
        };
        let glyphs = set.glyph_infos().iter().zip(set.glyph_positions()).enumerate().map(glyph).collect();
        self.buffer = Some(set.clear());
        glyphs
    }

    /// The ink of one glyph from its pen; a space has none.
    fn ink(&self, face: usize, glyph: &Glyph) -> Ink {
        let Some(bounds) = self.faces[face].glyph_bounding_box(rustybuzz::ttf_parser::GlyphId(glyph.id)) else {
            return Ink::default();
        };
        let em = 1.0 / self.faces[face].units_per_em() as f32;
        Ink {
            left: f32::from(bounds.x_min) * em + glyph.right,
            right: f32::from(bounds.x_max) * em + glyph.right,
            up: f32::from(bounds.y_max) * em + glyph.up,
            down: -(f32::from(bounds.y_min) * em + glyph.up),
        }
    }
}

/// True where a text goes on in the other direction: digits and Latin run to the right among letters that do not.
fn turns(text: &str, next: &str) -> bool {
    let rightwards = |letter: char| letter.is_alphanumeric() && !is_leftwards(letter);
    next.contains(rightwards) != text.contains(rightwards)
}

/// Letters with the marks that stand on them.
fn clusters(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    std::iter::from_fn(move || {
        let first = rest.chars().next()?.len_utf8();
        let end = rest[first..].find(|letter| !is_mark(letter)).map_or(rest.len(), |marks| first + marks);
        let (cluster, after) = rest.split_at(end);
        rest = after;
        Some(cluster)
    })
}

/// Combining marks that fonts of European scripts have.
/// **Source**: Unicode 17 code charts, the blocks of combining diacritical marks.
fn is_mark(letter: char) -> bool {
    matches!(letter, '\u{300}'..='\u{36f}' | '\u{483}'..='\u{489}' | '\u{1ab0}'..='\u{1aff}' | '\u{1dc0}'..='\u{1dff}')
        || matches!(letter, '\u{20d0}'..='\u{20ff}' | '\u{fe20}'..='\u{fe2f}')
}
