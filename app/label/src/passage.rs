//! What one command of a document draws: a frame in, its glyphs out as far as one face sets them one after the other.
//!
//! Deflate finds what was written before in the same bytes. So a label counts from its own corner, and its places are
//! short binary numbers: equal labels are equal bytes wherever they lie, and lines in the same place begin alike. Where
//! on the sheet a label lies, and how large its type is, stands in the transform around it.

use crate::frame::{Frame, SetRun};
use crate::measure::Glyph;
use crate::text::is_leftwards;
use krilla::geom::Point;
use krilla::text::{GlyphId, KrillaGlyph};
use units::Millimetres;

/// The size of all type before the transform, units: a power of two, so that no place is rounded on its way, and near
/// the true sizes, because PDFium, which is in Chromium, tells lines apart by it. At 64 it made one of several.
pub(crate) const SIZE: f32 = 4.0;
/// Places are whole parts of a unit: so many.
const PARTS: f32 = 256.0;

/// Glyphs of one face, of one line or of several.
pub(crate) struct Passage {
    /// Which font.
    pub(crate) face: usize,
    /// Where the pen begins, units from the upper left corner of the label, downwards.
    pub(crate) start: Point,
    /// The letters.
    pub(crate) text: String,
    /// The glyphs; at the end of a line the pen moves to the beginning of the next, which stands lower.
    pub(crate) glyphs: Vec<KrillaGlyph>,
    /// Where the pen stands before the last glyph, and behind it, units.
    pens: (f32, f32),
}

/// The letters of a frame in the order in which they are read.
///
/// **Accuracy**: runs begin within a 2048th of the type size of their place, less than 0.001 mm in type of 5 pt.
pub(crate) fn passages(frame: &Frame) -> Vec<Passage> {
    let size = frame.size.to_millimetres().millimetres();
    let units = |mm: Millimetres| (mm.millimetres() / size * f64::from(SIZE * PARTS)).round() as f32 / PARTS;
    let mut passages: Vec<Passage> = Vec::new();
    for line in &frame.lines {
        for run in &line.runs {
            let at = Point::from_xy(units(run.x), units(line.baseline));
            match passages.last_mut() {
                Some(passage) if passage.goes_on_with(run) => passage.take(run, at),
                _ => passages.push(Passage::new(run, at)),
            }
        }
    }
    passages
}

impl Passage {
    fn new(run: &SetRun, at: Point) -> Self {
        let (text, glyphs) = (String::new(), Vec::new());
        let mut passage = Self { face: run.face, start: at, text, glyphs, pens: (at.x, at.x) };
        passage.take(run, at);
        passage
    }

    /// Letters from right to left stay by themselves: only then can the document mark them as such.
    fn goes_on_with(&self, run: &SetRun) -> bool {
        self.face == run.face && !self.text.contains(is_leftwards) && !run.text.contains(is_leftwards)
    }

    fn take(&mut self, run: &SetRun, at: Point) {
        self.move_pen(at.x);
        let (moved, down) = (self.text.len(), (at.y - self.start.y) / SIZE);
        self.text.push_str(&run.text);
        for glyph in &run.glyphs {
            self.glyphs.push(drawn(glyph, moved, down));
            self.pens = (self.pens.1, self.pens.1 + glyph.advance * SIZE);
        }
    }

    /// Lets the last glyph move the pen to a place, exactly: the document adds up the same advances in the same order.
    fn move_pen(&mut self, x: f32) {
        if let Some(last) = self.glyphs.last_mut() {
            last.x_advance = (x - self.pens.0) / SIZE;
            self.pens.1 = x;
        }
    }
}

fn drawn(glyph: &Glyph, moved: usize, down: f32) -> KrillaGlyph {
    let id = GlyphId::new(u32::from(glyph.id));
    let letters = glyph.start + moved..glyph.end + moved;
    KrillaGlyph::new(id, glyph.advance, glyph.right, glyph.up - down, 0.0, letters, None)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frame::SetLine;
    use units::Points;

    /// A line for each text, in a face each, with glyphs of 0.537 em.
    fn frame(texts: &[(&str, usize)]) -> Frame {
        let glyph = |start| Glyph { id: 1, advance: 0.537, right: 0.0, up: 0.0, start, end: start + 1 };
        let line = |(index, (text, face)): (usize, &(&str, usize))| SetLine {
            text: (*text).to_owned(),
            runs: vec![SetRun {
                face: *face,
                text: (*text).to_owned(),
                glyphs: (0..text.len()).map(glyph).collect(),
                x: Millimetres::new(0.2 + index as f64 / 7.0).expect("a place"),
            }],
            baseline: Millimetres::whole(1 + index as i32 * 2),
        };
        Frame {
            width: Millimetres::whole(18),
            height: Millimetres::whole(10),
            size: Points::new(4.4).expect("a size"),
            lines: texts.iter().enumerate().map(line).collect(),
            pin: Millimetres::ZERO,
            pin_x: Millimetres::ZERO,
            above: 0,
            code: None,
        }
    }

    fn check(texts: &[(&str, usize)], expected: &[&str]) {
        let passages = passages(&frame(texts));
        assert_eq!(passages.iter().map(|passage| passage.text.as_str()).collect::<Vec<_>>(), expected);
    }

    #[test]
    fn lines_of_one_face_are_drawn_together() {
        check(&[("Tarn", 0), ("Abbot", 0), ("leg.", 0)], &["TarnAbbotleg."]);
        check(&[("ex", 0), ("Salix", 1), ("fjord", 1), ("L.", 0)], &["ex", "Salixfjord", "L."]);
        check(
            &[("Tarn", 0), ("\u{5d0}\u{5d1}", 0), ("\u{5d2}\u{5d3}", 0), ("leg.", 0)],
            &["Tarn", "\u{5d0}\u{5d1}", "\u{5d2}\u{5d3}", "leg."],
        );
    }

    /// Both sums are those of the document, in the same order.
    #[test]
    fn each_line_begins_at_a_short_number() {
        let passages = passages(&frame(&[("ORRELAND", 0), ("47.0142", 0), ("1.vi.2010", 0)]));
        let [passage] = passages.as_slice() else { panic!("one face is one passage") };
        let (mut x, mut begun) = (passage.start.x, Vec::new());
        for (index, glyph) in passage.glyphs.iter().enumerate() {
            if [0, 8, 15].contains(&index) {
                begun.push((x * PARTS, (passage.start.y - glyph.y_offset * SIZE) * PARTS));
            }
            x += glyph.x_advance * SIZE;
        }
        assert_eq!(begun, [(132.0, 660.0), (226.0, 1979.0), (320.0, 3298.0)]);
    }
}
