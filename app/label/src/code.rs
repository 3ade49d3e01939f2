//! A code beside the lines: the grid of its modules in, squares of whole printer's dots out.
//!
//! Which symbology it is does not matter here; a quiet zone of one module is kept on all sides, as Data Matrix needs.

use crate::frame::millimetres;
use units::Millimetres;

/// Dots of the printer that codes are made for, per inch.
const DPI: f64 = 600.0;
/// Dots along the side of a module: 7 are 0.296 mm.
const DOTS: f64 = 7.0;
const INCH_MM: f64 = 25.4;
/// White around a code, modules. **Source**: ISO/IEC 16022, one module on all four sides.
const QUIET: f64 = 1.0;

/// The grid of a code.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Code {
    /// What it says, for messages about it.
    pub text: String,
    /// Modules beside each other.
    pub columns: usize,
    /// The modules row by row, true for ink.
    pub modules: Vec<bool>,
}

/// A code in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct SetCode {
    /// Left edge of its modules, from the left edge of the label.
    pub x: Millimetres,
    /// Upper edge of its modules, from the upper edge of the label.
    pub y: Millimetres,
    /// Side of a module.
    pub module: Millimetres,
    /// Modules beside each other.
    pub columns: usize,
    /// The modules row by row, true for ink.
    pub modules: Vec<bool>,
}

/// A rectangle of ink: left and upper edge, width and height, mm.
pub type Block = (f64, f64, f64, f64);

/// Modules with ink beside each other, the first of them by its place in the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Bar {
    pub(crate) column: usize,
    pub(crate) row: usize,
    pub(crate) modules: usize,
}

impl Code {
    /// Width and height of the modules, mm.
    pub(crate) fn size_mm(&self) -> (f64, f64) {
        let columns = self.columns.max(1);
        (columns as f64 * module_mm(), self.modules.len().div_ceil(columns) as f64 * module_mm())
    }

    /// White around them, mm.
    pub(crate) fn quiet_mm() -> f64 {
        QUIET * module_mm()
    }
}

fn module_mm() -> f64 {
    DOTS / DPI * INCH_MM
}

/// Puts a code at a place, mm, moved by less than half a dot onto whole dots of the label.
pub(crate) fn set_code(code: &Code, x: f64, y: f64) -> SetCode {
    let dot = INCH_MM / DPI;
    let on_dot = |mm: f64| millimetres((mm / dot).round() * dot);
    SetCode {
        x: on_dot(x),
        y: on_dot(y),
        module: millimetres(module_mm()),
        columns: code.columns.max(1),
        modules: code.modules.clone(),
    }
}

impl SetCode {
    /// Its ink, neighbours in a row joined.
    pub fn blocks(&self) -> Vec<Block> {
        let (x, y, side) = (self.x.millimetres(), self.y.millimetres(), self.module.millimetres());
        let block = |bar: Bar| {
            let (left, top) = (x + bar.column as f64 * side, y + bar.row as f64 * side);
            (left, top, bar.modules as f64 * side, side)
        };
        self.bars().into_iter().map(block).collect()
    }

    /// The same, counted in modules.
    pub(crate) fn bars(&self) -> Vec<Bar> {
        let mut bars = Vec::new();
        for (row, modules) in self.modules.chunks(self.columns).enumerate() {
            let mut column = 0;
            while column < modules.len() {
                let run = modules[column..].iter().take_while(|ink| **ink).count();
                if run > 0 {
                    bars.push(Bar { column, row, modules: run });
                }
                column += run.max(1);
            }
        }
        bars
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neighbours_are_joined_row_by_row() {
        let grid = "##.#.#..####";
        let code =
            Code { text: String::new(), columns: 4, modules: grid.chars().map(|letter| letter == '#').collect() };
        let blocks = set_code(&code, 0.0, 0.0).blocks();
        let modules = |mm: f64| (mm / module_mm()).round() as i32;
        let grid: Vec<_> = blocks.iter().map(|b| [b.0, b.1, b.2, b.3].map(modules)).collect();
        assert_eq!(grid, [[0, 0, 2, 1], [3, 0, 1, 1], [1, 1, 1, 1], [0, 2, 4, 1]]);
    }

    #[test]
    fn modules_are_whole_dots() {
        assert!((module_mm() / (INCH_MM / DPI) - 7.0).abs() < 1e-12);
    }
}
