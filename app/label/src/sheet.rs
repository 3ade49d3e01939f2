//! The sheet: labels in rows that share their cut lines, so that one cut frees two.
//!
//! In go the paper and the size of a label, out come the cells in the order of the labels. A bar of 50 mm at the
//! foot of each sheet shows whether it was printed in true size.

use crate::frame::Format;
use units::Millimetres;

/// White at all four sides, mm: office printers leave less. Common practice.
pub(crate) const MARGIN_MM: f64 = 10.0;
/// Height kept for the bar above the lower margin, mm.
pub(crate) const FOOT_MM: f64 = 7.0;
/// How far cut lines reach beyond the labels, mm.
const TICK_MM: f64 = 3.0;
/// Length of the bar, mm.
pub(crate) const BAR_MM: f64 = 50.0;
/// Half the height of the ticks at the ends of the bar, mm.
const BAR_TICK_MM: f64 = 1.5;
/// Room for rounding, so that ten labels of 19 mm fit into 190 mm.
const ROUNDING_MM: f64 = 1e-6;

/// The paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm, ISO 216.
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

impl Paper {
    /// Width and height.
    pub fn size(self) -> (Millimetres, Millimetres) {
        match self {
            Self::A4 => (Millimetres::whole(210), Millimetres::whole(297)),
            Self::Letter => (Millimetres::thousandths(215_900), Millimetres::thousandths(279_400)),
        }
    }
}

/// Where one label lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// Which sheet, from 0.
    pub sheet: usize,
    /// Its left edge, from the left edge of the paper.
    pub x: Millimetres,
    /// Its upper edge, from the upper edge of the paper.
    pub y: Millimetres,
}

/// A straight line on a sheet: from and to, millimetres from the upper left corner of the paper.
pub type Stroke = ((f64, f64), (f64, f64));

/// A paper divided into labels of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// The paper.
    pub paper: Paper,
    /// Width of a label.
    pub width: Millimetres,
    /// Height of a label.
    pub height: Millimetres,
    /// Labels beside each other.
    pub columns: usize,
    /// Labels below each other.
    pub rows: usize,
}

impl Sheet {
    /// Divides the paper.
    ///
    /// **Errors**: by how many millimetres the label is larger than the sheet can hold.
    pub fn new(paper: Paper, format: &Format) -> Result<Self, Millimetres> {
        let (across, down) = room(paper);
        let over = (format.width.millimetres() - across).max(format.height.millimetres() - down);
        if over > ROUNDING_MM {
            return Err(Millimetres::new(over).expect("the size of a label is finite"));
        }
        let fits = |room: f64, size: f64| ((room + ROUNDING_MM) / size.max(1.0)) as usize;
        let columns = fits(across, format.width.millimetres());
        let rows = fits(down, format.height.millimetres());
        Ok(Self { paper, width: format.width, height: format.height, columns, rows })
    }

    /// How many labels one sheet holds.
    pub fn capacity(&self) -> usize {
        self.columns * self.rows
    }

    /// How many sheets so many labels need; one for none.
    pub fn sheets(&self, labels: usize) -> usize {
        labels.div_ceil(self.capacity()).max(1)
    }

    /// Where the label with this number lies, from 0: row by row, sheet by sheet.
    pub fn cell(&self, label: usize) -> Cell {
        let on_sheet = label % self.capacity();
        let at = |count: usize, size: Millimetres| {
            let count = u32::try_from(count).expect("a sheet holds few labels");
            Millimetres::new(MARGIN_MM).expect("the margin is finite") + size.times(count)
        };
        Cell {
            sheet: label / self.capacity(),
            x: at(on_sheet % self.columns, self.width),
            y: at(on_sheet / self.columns, self.height),
        }
    }

    /// The lines between all labels of a sheet with so many, a little longer than the rows and columns.
    pub fn cut_lines(&self, labels: usize) -> Vec<Stroke> {
        let Some(last) = labels.checked_sub(1) else { return Vec::new() };
        let (rows, columns) = (last / self.columns + 1, labels.min(self.columns));
        let (width, height) = (self.width.millimetres(), self.height.millimetres());
        let (right, below) = (MARGIN_MM + columns as f64 * width, MARGIN_MM + rows as f64 * height);
        let level = |row: usize| {
            let y = MARGIN_MM + row as f64 * height;
            ((MARGIN_MM - TICK_MM, y), (right + TICK_MM, y))
        };
        let upright = |column: usize| {
            let x = MARGIN_MM + column as f64 * width;
            ((x, MARGIN_MM - TICK_MM), (x, below + TICK_MM))
        };
        (0..=rows).map(level).chain((0..=columns).map(upright)).collect()
    }

    /// The bar of 50 mm with the ticks at its ends.
    pub fn bar(&self) -> [Stroke; 3] {
        let middle = self.foot() + FOOT_MM / 2.0;
        let (left, right) = (MARGIN_MM, MARGIN_MM + BAR_MM);
        let tick = |x: f64| ((x, middle - BAR_TICK_MM), (x, middle + BAR_TICK_MM));
        [((left, middle), (right, middle)), tick(left), tick(right)]
    }

    /// Where the words beside the bar begin.
    pub fn words_at(&self) -> (f64, f64) {
        (MARGIN_MM + BAR_MM + BAR_TICK_MM, self.foot())
    }

    fn foot(&self) -> f64 {
        self.paper.size().1.millimetres() - MARGIN_MM - FOOT_MM
    }
}

fn room(paper: Paper) -> (f64, f64) {
    let (width, height) = paper.size();
    (width.millimetres() - 2.0 * MARGIN_MM, height.millimetres() - 2.0 * MARGIN_MM - FOOT_MM)
}

#[cfg(test)]
mod tests {
    use super::*;
    use units::Points;

    fn format(width: i32, height: i32) -> Format {
        Format {
            width: Millimetres::whole(width),
            height: Millimetres::whole(height),
            largest: Points::whole(5),
            least: Points::whole(4),
            pin: Millimetres::ZERO,
        }
    }

    fn check(paper: Paper, width: i32, height: i32, columns: usize, rows: usize) {
        let sheet = Sheet::new(paper, &format(width, height)).expect("the label is smaller than the paper");
        assert_eq!((sheet.columns, sheet.rows), (columns, rows));
    }

    #[test]
    fn papers_hold_whole_labels() {
        check(Paper::A4, 18, 8, 10, 33);
        check(Paper::A4, 19, 9, 10, 30);
        check(Paper::Letter, 18, 8, 10, 31);
    }

    #[test]
    fn labels_run_row_by_row_and_sheet_by_sheet() {
        let sheet = Sheet::new(Paper::A4, &format(18, 8)).expect("it fits");
        let cell =
            |label| (sheet.cell(label).sheet, sheet.cell(label).x.millimetres(), sheet.cell(label).y.millimetres());
        assert_eq!(cell(0), (0, 10.0, 10.0));
        assert_eq!(cell(9), (0, 172.0, 10.0));
        assert_eq!(cell(10), (0, 10.0, 18.0));
        assert_eq!(cell(330), (1, 10.0, 10.0));
        assert_eq!([0, 1, 330, 331].map(|labels| sheet.sheets(labels)), [1, 1, 1, 2]);
    }

    #[test]
    fn cut_lines_lie_around_every_label() {
        let sheet = Sheet::new(Paper::A4, &format(18, 8)).expect("it fits");
        assert_eq!(sheet.cut_lines(0), []);
        let lines = sheet.cut_lines(12);
        assert_eq!(lines.len(), 3 + 11);
        assert_eq!(lines[1], ((7.0, 18.0), (193.0, 18.0)));
        assert_eq!(lines[13], ((190.0, 7.0), (190.0, 29.0)));
    }

    #[test]
    fn the_bar_is_50_mm_long() {
        let sheet = Sheet::new(Paper::A4, &format(18, 8)).expect("it fits");
        assert_eq!(sheet.bar()[0], ((10.0, 283.5), (60.0, 283.5)));
    }

    #[test]
    fn a_label_larger_than_the_sheet_is_refused() {
        let over = Sheet::new(Paper::A4, &format(200, 8)).expect_err("it is too wide");
        assert!((over.millimetres() - 10.0).abs() < 1e-9);
    }
}
