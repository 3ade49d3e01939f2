//! Codes as an independent reader sees them.
//!
//! **Source**: `rxing` 0.9, a port of a reader that shares no code with ours. Each grid is drawn with 4 pixels a module and
//! one module of white.

use number::symbol::{Shape, Symbol, symbol};
use proptest::prelude::*;
use rxing::{BarcodeFormat, helpers};

const PIXELS: usize = 4;

fn drawn(symbol: &Symbol) -> (Vec<u8>, u32, u32) {
    let (width, height) = ((symbol.columns + 2) * PIXELS, (symbol.rows() + 2) * PIXELS);
    let pixel = |index: usize| {
        let (row, column) = (index / width / PIXELS, index % width / PIXELS);
        let inside = (1..=symbol.rows()).contains(&row) && (1..=symbol.columns).contains(&column);
        if inside && symbol.modules[(row - 1) * symbol.columns + column - 1] { 0 } else { 255 }
    };
    let size = |pixels: usize| u32::try_from(pixels).expect("codes are small");
    ((0..width * height).map(pixel).collect(), size(width), size(height))
}

fn read(symbol: &Symbol) -> Option<String> {
    let (luma, width, height) = drawn(symbol);
    let read = helpers::detect_in_luma(luma, width, height, Some(BarcodeFormat::DATA_MATRIX)).ok()?;
    Some(read.getText().to_owned())
}

fn check(text: &str, shape: Shape) {
    let symbol = symbol(text, shape).expect("it is short");
    assert_eq!(read(&symbol).as_deref(), Some(text), "{} by {}", symbol.rows(), symbol.columns);
}

#[test]
fn numbers_of_vials_are_read() {
    for text in
        ["7", "0147", "IV27-0147", "IV27-0147a", "GLS-000147", "ABCDEFGHIJKLMNOP", "12345678901234567890", "a b/c:d_e"]
    {
        check(text, Shape::Square);
    }
}

#[test]
fn slim_ones_are_read() {
    for text in ["IV27", "IV27-0147", "GLS-000147-2027", "ABCDEFGHIJKLMNOPQRSTUVWXYZABCD", "the upper saltmarsh 0147"] {
        check(text, Shape::Slim);
    }
}

#[test]
fn letters_beyond_ascii_are_read() {
    check("ŁK27-001", Shape::Square);
    check("ЖЖ-12", Shape::Square);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn whatever_fits_is_read(text in "[A-Z0-9a-z./_:+ -]{1,24}") {
        // A reader cannot tell spaces at the ends from none.
        prop_assume!(text.trim() == text);
        check(&text, Shape::Square);
    }
}
