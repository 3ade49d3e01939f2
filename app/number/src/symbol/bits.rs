//! Where the bits of the codewords stand: along diagonals, up and down, with special corners.
//!
//! **Source**: ISO/IEC 16022:2006, Annex F, symbol character placement.

/// The modules of the data, row by row, for a grid without its frames.
pub(super) fn placed(codewords: &[u8], rows: usize, columns: usize) -> Vec<bool> {
    let mut grid =
        Grid { codewords, rows: rows as isize, columns: columns as isize, next: 0, cells: vec![None; rows * columns] };
    grid.fill();
    grid.cells.into_iter().map(|cell| cell.unwrap_or(false)).collect()
}

struct Grid<'c> {
    codewords: &'c [u8],
    rows: isize,
    columns: isize,
    next: usize,
    cells: Vec<Option<bool>>,
}

type Place = (isize, isize);

impl Grid<'_> {
    fn fill(&mut self) {
        let (rows, columns) = (self.rows, self.columns);
        let (mut row, mut column) = (4, 0);
        while row < rows || column < columns {
            self.corners(row, column);
            while row >= 0 && column < columns {
                self.ordinary(row, column);
                (row, column) = (row - 2, column + 2);
            }
            (row, column) = (row + 1, column + 3);
            while row < rows && column >= 0 {
                self.ordinary(row, column);
                (row, column) = (row + 2, column - 2);
            }
            (row, column) = (row + 3, column + 1);
        }
        // A corner that no codeword reaches has a fixed pattern.
        let last = self.cells.len() - 1;
        if self.cells[last].is_none() {
            let above = last - self.columns as usize;
            (self.cells[last], self.cells[above - 1]) = (Some(true), Some(true));
        }
    }

    /// The four codewords that are wrapped round a corner, each at its place on the way.
    fn corners(&mut self, row: isize, column: isize) {
        let (r, c) = (self.rows, self.columns);
        if row == r && column == 0 {
            self.codeword([
                (r - 1, 0),
                (r - 1, 1),
                (r - 1, 2),
                (0, c - 2),
                (0, c - 1),
                (1, c - 1),
                (2, c - 1),
                (3, c - 1),
            ]);
        }
        if row == r - 2 && column == 0 && c % 4 != 0 {
            self.codeword([
                (r - 3, 0),
                (r - 2, 0),
                (r - 1, 0),
                (0, c - 4),
                (0, c - 3),
                (0, c - 2),
                (0, c - 1),
                (1, c - 1),
            ]);
        }
        if row == r - 2 && column == 0 && c % 8 == 4 {
            self.codeword([
                (r - 3, 0),
                (r - 2, 0),
                (r - 1, 0),
                (0, c - 2),
                (0, c - 1),
                (1, c - 1),
                (2, c - 1),
                (3, c - 1),
            ]);
        }
        if row == r + 4 && column == 2 && c % 8 == 0 {
            self.codeword([
                (r - 1, 0),
                (r - 1, c - 1),
                (0, c - 3),
                (0, c - 2),
                (0, c - 1),
                (1, c - 3),
                (1, c - 2),
                (1, c - 1),
            ]);
        }
    }

    /// The usual shape of eight modules, if its last one is on the grid and free.
    fn ordinary(&mut self, row: isize, column: isize) {
        let free = row >= 0 && row < self.rows && column >= 0 && column < self.columns;
        if !free || self.cells[(row * self.columns + column) as usize].is_some() {
            return;
        }
        let steps: [Place; 8] = [(-2, -2), (-2, -1), (-1, -2), (-1, -1), (-1, 0), (0, -2), (0, -1), (0, 0)];
        self.codeword(steps.map(|(down, right)| self.wrapped(row + down, column + right)));
    }

    /// What leaves the grid at one side comes in at the other, shifted.
    fn wrapped(&self, mut row: isize, mut column: isize) -> Place {
        if row < 0 {
            row += self.rows;
            column += 4 - (self.rows + 4) % 8;
        }
        if column < 0 {
            column += self.columns;
            row += 4 - (self.columns + 4) % 8;
        }
        (if row >= self.rows { row - self.rows } else { row }, column)
    }

    /// The bits of the next codeword, the highest first.
    fn codeword(&mut self, places: [Place; 8]) {
        let byte = self.codewords.get(self.next).copied().unwrap_or(0);
        self.next += 1;
        for (bit, (row, column)) in places.into_iter().enumerate() {
            self.cells[(row * self.columns + column) as usize] = Some(byte >> (7 - bit) & 1 == 1);
        }
    }
}
