//! Widths of words beside those of HarfBuzz.
//!
//! **Source**: `tests/reference/label_widths.csv`, computed once with PyPI uharfbuzz 0.57.0 (HarfBuzz 15.0.0):
//! `buffer.add_str(word); buffer.guess_segment_properties(); hb.shape(font, buffer); sum(p.x_advance for p in
//! buffer.glyph_positions)`. Tolerance: one unit of the font.

mod common;
#[path = "../../../tests/reference/table.rs"]
mod table;

use common::{fonts, format, lines};
use label::Setter;

#[test]
fn words_are_as_wide_as_harfbuzz_sets_them() {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    let rows = table::table("label_widths.csv");
    assert!(rows.len() > 50);
    for row in rows {
        let face = ["regular", "italic", "gaps"].iter().position(|name| *name == row["font"]).expect("a known font");
        let word = if face == 1 { format!("_{}_", row["word"]) } else { row["word"].clone() };
        let frame = setter.frame(&lines(&[&word]), &format(100.0, 8.0)).frame;
        let glyphs = frame.lines[0].runs.iter().flat_map(|run| {
            assert_eq!(run.face, face, "{}", row["word"]);
            &run.glyphs
        });
        let units: f64 = row["units_per_em"].parse().expect("a number");
        let advance = glyphs.map(|glyph| f64::from(glyph.advance)).sum::<f64>() * units;
        let expected: f64 = row["advance"].parse().expect("a number");
        assert!((advance - expected).abs() <= 1.0, "{}: {advance}, HarfBuzz {expected}", row["word"]);
    }
}
