//! The outline of a frame: one SVG path in millimetres, the same glyphs in the same places as in the PDF.

use crate::frame::{Frame, SetRun};
use crate::measure::Setter;
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use std::fmt::Write;

/// The letters of a frame as the data of one SVG path.
///
/// **Units**: millimetres, origin at the upper left corner of the label, y downwards.
///
/// **Accuracy**: a thousandth of a millimetre.
pub fn path(setter: &Setter<'_>, frame: &Frame) -> String {
    let mut path = String::new();
    for line in &frame.lines {
        line.runs.iter().for_each(|run| draw(setter, frame, run, line.baseline.millimetres(), &mut path));
    }
    path
}

fn draw(setter: &Setter<'_>, frame: &Frame, run: &SetRun, baseline: f64, path: &mut String) {
    let face = &setter.faces[run.face];
    let size = frame.size.to_millimetres().millimetres();
    let scale = size / f64::from(face.units_per_em());
    let mut pen = run.x.millimetres();
    for glyph in &run.glyphs {
        let x = pen + f64::from(glyph.right) * size;
        let y = baseline - f64::from(glyph.up) * size;
        face.outline_glyph(GlyphId(glyph.id), &mut Pen { path, x, y, scale });
        pen += f64::from(glyph.advance) * size;
    }
}

struct Pen<'p> {
    path: &'p mut String,
    x: f64,
    y: f64,
    scale: f64,
}

impl Pen<'_> {
    fn point(&mut self, command: &str, points: &[(f32, f32)]) {
        self.path.push_str(command);
        for (index, (x, y)) in points.iter().enumerate() {
            let (x, y) = (self.x + f64::from(*x) * self.scale, self.y - f64::from(*y) * self.scale);
            let between = if index == 0 { "" } else { " " };
            write!(self.path, "{between}{} {}", thousandths(x), thousandths(y))
                .expect("a string takes all that is written");
        }
    }
}

impl OutlineBuilder for Pen<'_> {
    fn move_to(&mut self, x: f32, y: f32) {
        self.point("M", &[(x, y)]);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.point("L", &[(x, y)]);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.point("Q", &[(x1, y1), (x, y)]);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.point("C", &[(x1, y1), (x2, y2), (x, y)]);
    }
    fn close(&mut self) {
        self.path.push('Z');
    }
}

fn thousandths(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
