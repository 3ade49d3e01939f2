//! What the tests of this crate share: the fonts of the project, the usual label, lines from marked text.

use label::{Fonts, Format, Line, PinAt, Run};
use units::{Millimetres, Points};

pub fn fonts() -> Fonts {
    fonts_with(Vec::new())
}

/// The fonts of the project, and these after them.
pub fn fonts_with(own: Vec<Vec<u8>>) -> Fonts {
    let read = |name: &str| {
        let path = format!("{}/../../public/fonts/{name}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(&path).expect("the fonts are part of the project")
    };
    let further = [read("DejaVuSansCondensed-gaps.ttf")].into_iter().chain(own).collect();
    Fonts::new(read("FiraSansCondensed-Regular.ttf"), read("FiraSansCondensed-Italic.ttf"), further)
        .expect("the fonts of the project can be read")
}

pub fn format(width_mm: f64, height_mm: f64) -> Format {
    let mm = |value| Millimetres::new(value).expect("the test gives numbers");
    let pt = |value| Points::new(value).expect("the test gives numbers");
    Format {
        width: mm(width_mm),
        height: mm(height_mm),
        largest: pt(5.0),
        least: pt(4.0),
        pin: mm(0.7),
        pin_at: PinAt::Middle,
    }
}

/// Lines from text in which `_` stands on both sides of italics and `~` is a no-break space.
pub fn lines(texts: &[&str]) -> Vec<Line> {
    let run = |(index, text): (usize, &str)| Run { text: text.replace('~', "\u{a0}"), italic: index % 2 == 1 };
    let line = |text: &&str| text.split('_').enumerate().map(run).filter(|run| !run.text.is_empty()).collect();
    texts.iter().map(line).collect()
}
