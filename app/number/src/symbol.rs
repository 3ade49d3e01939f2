//! The Data Matrix of a number: text in, a grid of modules out (ECC 200).
//!
//! Letters go as they are, two digits in one codeword, capitals three in two where that saves room; what is not ASCII
//! goes as UTF-8 and says so. Where the grid is drawn, how large and with how much white around it, is left to the
//! caller: one module of white on all sides is the least.
//!
//! **Source**: ISO/IEC 16022:2006, with the sizes of its Table 7 up to 26 by 26 and the rectangles.

mod bits;
mod correction;
mod encoding;

use bits::placed;
use correction::corrected;
use encoding::encoded;

/// The shape of a code.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shape {
    /// As high as wide.
    #[default]
    Square,
    /// Lower than wide.
    Slim,
}

/// A grid of modules.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Symbol {
    /// Modules beside each other.
    pub columns: usize,
    /// The modules row by row from the top, true for ink.
    pub modules: Vec<bool>,
}

impl Symbol {
    /// Modules below each other.
    pub fn rows(&self) -> usize {
        self.modules.len() / self.columns
    }
}

/// One size of symbol: rows, columns, data codewords, codewords for correction.
#[derive(Clone, Copy, Debug)]
struct Size {
    rows: usize,
    columns: usize,
    data: usize,
    correction: usize,
}

const fn size(rows: usize, columns: usize, data: usize, correction: usize) -> Size {
    Size { rows, columns, data, correction }
}

const SQUARES: [Size; 9] = [
    size(10, 10, 3, 5),
    size(12, 12, 5, 7),
    size(14, 14, 8, 10),
    size(16, 16, 12, 12),
    size(18, 18, 18, 14),
    size(20, 20, 22, 18),
    size(22, 22, 30, 20),
    size(24, 24, 36, 24),
    size(26, 26, 44, 28),
];

const SLIM: [Size; 6] = [
    size(8, 18, 5, 7),
    size(8, 32, 10, 11),
    size(12, 26, 16, 14),
    size(12, 36, 22, 18),
    size(16, 36, 32, 24),
    size(16, 48, 49, 28),
];

/// Wider symbols are two regions side by side.
const REGION_WIDEST: usize = 26;

/// The least symbol that holds a text; `None` for an empty text or one that is too long.
pub fn symbol(text: &str, shape: Shape) -> Option<Symbol> {
    if text.is_empty() {
        return None;
    }
    let sizes: &[Size] = match shape {
        Shape::Square => &SQUARES,
        Shape::Slim => &SLIM,
    };
    sizes.iter().find_map(|size| encoded(text, size.data).map(|codewords| drawn(codewords, *size)))
}

fn drawn(mut codewords: Vec<u8>, size: Size) -> Symbol {
    let correction = corrected(&codewords, size.correction);
    codewords.extend(correction);
    let regions = if size.columns > REGION_WIDEST { 2 } else { 1 };
    let (inner_rows, inner_columns) = (size.rows - 2, size.columns / regions - 2);
    let bits = placed(&codewords, inner_rows, inner_columns * regions);
    let width = size.columns / regions;
    let module = |row: usize, column: usize| {
        let (region, x) = (column / width, column % width);
        match (row, x) {
            (_, 0) => true,
            _ if row + 1 == size.rows => true,
            (0, x) => x.is_multiple_of(2),
            (row, x) if x + 1 == width => !row.is_multiple_of(2),
            (row, x) => bits[(row - 1) * inner_columns * regions + region * inner_columns + x - 1],
        }
    };
    let modules = (0..size.rows).flat_map(|row| (0..size.columns).map(move |column| (row, column)));
    Symbol { columns: size.columns, modules: modules.map(|(row, column)| module(row, column)).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_symbol_has_its_frame() {
        for (text, shape) in [("IV27-0147", Shape::Square), ("IV27-0147", Shape::Slim), ("GLS-000147-X", Shape::Slim)] {
            let symbol = symbol(text, shape).expect("it is short");
            let (rows, columns) = (symbol.rows(), symbol.columns);
            let at = |row: usize, column: usize| symbol.modules[row * columns + column];
            assert!((0..rows).all(|row| at(row, 0)) && (0..columns).all(|column| at(rows - 1, column)));
            assert!((0..columns).all(|column| at(0, column) == (column % 2 == 0)), "{text} {shape:?}");
            assert!((0..rows).all(|row| at(row, columns - 1) == (row % 2 == 1)));
        }
    }

    #[test]
    fn what_is_too_long_or_empty_has_none() {
        assert_eq!(symbol("", Shape::Square), None);
        assert_eq!(symbol(&"x".repeat(200), Shape::Square), None);
    }

    /// **Source**: `tests/reference/barcode_symbol_sizes.csv`, capacities of ISO/IEC 16022 Table 7, re-measured there with
    /// another encoder.
    #[test]
    fn each_size_holds_what_the_table_says_and_no_more() {
        let table = include_str!("../../../tests/reference/barcode_symbol_sizes.csv");
        let mut checked = 0;
        for row in table.lines() {
            let cells: Vec<&str> = row.split(',').collect();
            let shape = match cells[0] {
                "Data Matrix ECC200" => Shape::Square,
                "Data Matrix ECC200 rectangular" => Shape::Slim,
                _ => continue,
            };
            let number = |cell: &str| cell.parse::<usize>().expect("the table has numbers");
            let size: Vec<usize> = cells[1].split('x').map(number).collect();
            if shape == Shape::Square && size[0] > 26 {
                continue;
            }
            let (digits, capitals) = (number(cells[5]), number(cells[6]));
            let found = |text: String| symbol(&text, shape).map(|symbol| vec![symbol.rows(), symbol.columns]);
            assert_eq!(found("7".repeat(digits)), Some(size.clone()), "{row}");
            assert_ne!(found("7".repeat(digits + 1)), Some(size.clone()), "{row}");
            assert_eq!(found("A".repeat(capitals)), Some(size.clone()), "{row}");
            assert_ne!(found("A".repeat(capitals + 1)), Some(size.clone()), "{row}");
            checked += 1;
        }
        assert_eq!(checked, 15);
    }
}
