//! The messages of the press in the terms of the typesetter, and back.

use label::{About, Outcome, Setter, Stroke};
use ports::press::{FontSays, Format, Line, Over, Proof};
use units::{Millimetres, Points};

/// Why there is no answer.
#[derive(Debug, PartialEq, Eq)]
pub enum Unanswered {
    /// A length in the question is not a number.
    NoNumber,
    /// A label names a style or has a code that is none.
    NoSuch,
}

pub fn font_says(about: Option<About>) -> Option<FontSays> {
    about.map(|About { family, characters, may_embed }| FontSays { family, characters, may_embed })
}

pub fn path_of(strokes: &[Stroke]) -> String {
    strokes.iter().map(|((x, y), (to_x, to_y))| format!("M{x:.3} {y:.3}L{to_x:.3} {to_y:.3}")).collect()
}

pub fn proof(setter: &Setter<'_>, Outcome { frame, over }: Outcome) -> Proof {
    let middle = |length: Millimetres| length.half().millimetres();
    Proof {
        lines: frame.lines.iter().map(|line| line.text.clone()).collect(),
        path: label::path(setter, &frame),
        type_pt: frame.size.points(),
        pin: (frame.pin_x.millimetres(), middle(frame.height), middle(frame.pin)),
        lines_above_pin: frame.above,
        over: over.into_iter().map(said).collect(),
    }
}

pub fn said(over: label::Over) -> Over {
    match over {
        label::Over::Long { text, by } => Over::Long { text, by_mm: by.millimetres() },
        label::Over::High { by } => Over::High { by_mm: by.millimetres() },
        label::Over::Glyph(letter) => Over::Glyph { letter },
        label::Over::Code { text, by } => Over::Long { text, by_mm: by.millimetres() },
    }
}

pub fn lines(order: &[Line]) -> Vec<label::Line> {
    let line = |line: &Line| line.iter().map(|run| label::Run { text: run.text.clone(), italic: run.italic }).collect();
    order.iter().map(line).collect()
}

pub fn sizes(format: Format) -> Result<label::Format, Unanswered> {
    Ok(label::Format {
        width: Millimetres::new(format.width_mm).ok_or(Unanswered::NoNumber)?,
        height: Millimetres::new(format.height_mm).ok_or(Unanswered::NoNumber)?,
        largest: Points::new(format.type_largest_pt).ok_or(Unanswered::NoNumber)?,
        least: Points::new(format.type_least_pt).ok_or(Unanswered::NoNumber)?,
        pin: Millimetres::new(format.pin_mm).ok_or(Unanswered::NoNumber)?,
        pin_at: label::PinAt::Middle,
    })
}
