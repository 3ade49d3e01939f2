//! The outline of a frame: one SVG path in millimetres, the same glyphs in the same places as in the PDF.

use crate::frame::{Frame, SetRun};
use crate::measure::Setter;
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use std::fmt::Write;

/// The letters and the code of a frame as the data of one SVG path.
///
/// **Units**: millimetres, origin at the upper left corner of the label, y downwards.
///
/// **Accuracy**: a thousandth of a millimetre.
pub fn path(setter: &Setter<'_>, frame: &Frame) -> String {
    let mut path = String::new();
    for line in &frame.lines {
        line.runs.iter().for_each(|run| draw(setter, frame, run, line.baseline.millimetres(), &mut path));
    }
    for (x, y, width, height) in frame.code.iter().flat_map(crate::code::SetCode::blocks) {
        let (width, height) = (thousandths(width), thousandths(height));
        path.push('M');
        number(&mut path, thousandths(x), true);
        number(&mut path, thousandths(y), false);
        path.push('h');
        number(&mut path, width, true);
        path.push('v');
        number(&mut path, height, true);
        path.push('h');
        number(&mut path, -width, true);
        path.push('Z');
    }
    path
}

fn thousandths(mm: f64) -> i32 {
    (mm * 1000.0).round() as i32
}

fn draw(setter: &Setter<'_>, frame: &Frame, run: &SetRun, baseline: f64, path: &mut String) {
    let face = &setter.faces[run.face];
    let size = frame.size.to_millimetres().millimetres();
    let scale = size / f64::from(face.units_per_em());
    let mut pen = run.x.millimetres();
    for glyph in &run.glyphs {
        let x = pen + f64::from(glyph.right) * size;
        let y = baseline - f64::from(glyph.up) * size;
        face.outline_glyph(GlyphId(glyph.id), &mut Pen { path, x, y, scale, at: (0, 0) });
        pen += f64::from(glyph.advance) * size;
    }
}

/// Writes outlines: each begins at its own place and goes on in steps from point to point, which are short numbers.
struct Pen<'p> {
    path: &'p mut String,
    x: f64,
    y: f64,
    scale: f64,
    /// Where the path has come to, thousandths of a millimetre: steps are between rounded places, so none adds up.
    at: (i32, i32),
}

impl Pen<'_> {
    fn place(&self, (x, y): (f32, f32)) -> (i32, i32) {
        (thousandths(self.x + f64::from(x) * self.scale), thousandths(self.y - f64::from(y) * self.scale))
    }

    fn steps(&mut self, command: char, points: &[(f32, f32)]) {
        self.path.push(command);
        for (index, point) in points.iter().enumerate() {
            let (x, y) = self.place(*point);
            number(self.path, x - self.at.0, index == 0);
            number(self.path, y - self.at.1, false);
        }
        if let Some(last) = points.last() {
            self.at = self.place(*last);
        }
    }
}

impl OutlineBuilder for Pen<'_> {
    fn move_to(&mut self, x: f32, y: f32) {
        self.at = (0, 0);
        self.steps('M', &[(x, y)]);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.steps('l', &[(x, y)]);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.steps('q', &[(x1, y1), (x, y)]);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.steps('c', &[(x1, y1), (x2, y2), (x, y)]);
    }
    fn close(&mut self) {
        self.path.push('Z');
    }
}

/// Writes thousandths as a decimal number as short as SVG allows, with a space where one is needed before it.
fn number(path: &mut String, thousandths: i32, first: bool) {
    if thousandths < 0 {
        path.push('-');
    } else if !first {
        path.push(' ');
    }
    let (whole, part) = (thousandths.unsigned_abs() / 1000, thousandths.unsigned_abs() % 1000);
    if whole > 0 || part == 0 {
        write!(path, "{whole}").expect("a string takes all that is written");
    }
    if part > 0 {
        let digits = format!("{part:03}");
        path.push('.');
        path.push_str(digits.trim_end_matches('0'));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(thousandths: i32, first: bool, expected: &str) {
        let mut path = String::new();
        number(&mut path, thousandths, first);
        assert_eq!(path, expected);
    }

    #[test]
    fn numbers_are_short_and_apart() {
        check(0, true, "0");
        check(0, false, " 0");
        check(12, true, ".012");
        check(-12, false, "-.012");
        check(1250, false, " 1.25");
        check(-18_000, true, "-18");
    }
}
