//! The sheet: labels in strips that share their cut lines, so that one cut frees two.
//!
//! In go the paper and the sizes of labels, out comes where each lies. Labels of one height stand side by side in a
//! strip across the sheet: a guillotine frees the strips first, then the labels of each. Labels of one size keep the
//! order in which they come, that of the bench. A bar of 50 mm at the foot of each sheet shows whether it was printed
//! in true size.
//!
//! **How**: labels are sorted by height, then by width, higher and wider first, else as they come; each height fills
//! its strips one after the other (next fit), and the strips, from high to low, go each onto the first sheet that has
//! room (first fit decreasing). With one size of label that is the least paper there can be. With several heights it
//! needs at most 11/9 of the least number of sheets plus 6/9 (Dósa 2007, The tight bound of first fit decreasing
//! bin-packing algorithm, from memory) for strips as they are.

use std::cmp::Ordering;
use units::Millimetres;

/// White at all four sides, mm: office printers leave less. Common practice.
const MARGIN_MM: i32 = 10;
/// Height kept for the bar above the lower margin, mm.
pub(crate) const FOOT_MM: f64 = 7.0;
/// How far cut lines reach beyond the labels, mm.
const TICK_MM: f64 = 3.0;
/// The same below the last strip, where the bar may be near, mm.
const TICK_BELOW_MM: f64 = 1.5;
/// Length of the bar, mm.
pub(crate) const BAR_MM: f64 = 50.0;
/// Half the height of the ticks at the ends of the bar, mm.
pub(crate) const BAR_TICK_MM: f64 = 1.5;
/// Room for rounding, so that ten labels of 19 mm fit into 190 mm.
const ROUNDING_MM: f64 = 1e-6;

/// The paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Paper {
    /// 210 by 297 mm, ISO 216.
    A4,
    /// 8.5 by 11 inches.
    Letter,
    /// A card of the person's own: width and height.
    Own(Millimetres, Millimetres),
}

impl Paper {
    /// Width and height.
    pub fn size(self) -> (Millimetres, Millimetres) {
        match self {
            Self::A4 => (Millimetres::whole(210), Millimetres::whole(297)),
            Self::Letter => (Millimetres::thousandths(215_900), Millimetres::thousandths(279_400)),
            Self::Own(width, height) => (width, height),
        }
    }
}

/// Where on the paper labels may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// The paper.
    pub paper: Paper,
    /// White at all four sides.
    pub margin: Millimetres,
    /// Of the first sheet, how far down from the margin it was used.
    pub used_down: Millimetres,
    /// Of the first strip below that, how far across from the margin it was used.
    pub used_across: Millimetres,
}

impl Layout {
    /// Fresh sheets with the usual margins.
    pub fn fresh(paper: Paper) -> Self {
        let (used_down, used_across) = (Millimetres::ZERO, Millimetres::ZERO);
        Self { paper, margin: Millimetres::whole(MARGIN_MM), used_down, used_across }
    }

    /// How many labels of one size lie beside and below each other on a fresh sheet.
    pub fn grid(&self, width: Millimetres, height: Millimetres) -> (usize, usize) {
        let fits = |room: f64, size: Millimetres| ((room + ROUNDING_MM) / size.millimetres().max(1.0)) as usize;
        (fits(self.across(), width), fits(self.down(), height))
    }

    /// The bar of 50 mm with the ticks at its ends; none on a card that is narrower.
    pub fn bar(&self) -> Vec<Stroke> {
        if self.foot_mm() == 0.0 {
            return Vec::new();
        }
        let middle = self.foot_top() + FOOT_MM / 2.0;
        let (left, right) = (self.margin.millimetres(), self.margin.millimetres() + BAR_MM);
        let tick = |x: f64| ((x, middle - BAR_TICK_MM), (x, middle + BAR_TICK_MM));
        vec![((left, middle), (right, middle)), tick(left), tick(right)]
    }

    /// Where the words beside the bar begin, mm.
    pub fn words_at(&self) -> (f64, f64) {
        (self.margin.millimetres() + BAR_MM + BAR_TICK_MM, self.foot_top())
    }

    /// Room for the words beside the bar, mm.
    pub(crate) fn words_room(&self) -> f64 {
        if self.foot_mm() == 0.0 { 0.0 } else { self.across() - BAR_MM - BAR_TICK_MM }
    }

    fn foot_top(&self) -> f64 {
        self.paper.size().1.millimetres() - self.margin.millimetres() - FOOT_MM
    }

    fn foot_mm(&self) -> f64 {
        if self.across() + ROUNDING_MM < BAR_MM { 0.0 } else { FOOT_MM }
    }

    fn across(&self) -> f64 {
        self.paper.size().0.millimetres() - 2.0 * self.margin.millimetres()
    }

    fn down(&self) -> f64 {
        self.paper.size().1.millimetres() - 2.0 * self.margin.millimetres() - self.foot_mm()
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

/// Labels of one height side by side.
#[derive(Clone, Debug, Default, PartialEq)]
struct Strip {
    sheet: usize,
    /// Left edge from the margin, then the right edge of each label.
    edges: Vec<f64>,
    top: f64,
    height: f64,
    /// Which labels, from left to right.
    labels: Vec<usize>,
}

/// Where labels lie on their sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The cell of each label, in the order in which their sizes came.
    pub cells: Vec<Cell>,
    /// How many sheets; one for no labels.
    pub sheets: usize,
    /// From high to low.
    strips: Vec<Strip>,
}

/// Finds a place for labels of these widths and heights.
///
/// **Errors**: by how many millimetres one is larger than a sheet can hold.
pub fn plan(sizes: &[(Millimetres, Millimetres)], layout: &Layout) -> Result<Plan, Millimetres> {
    let bare: Vec<(f64, f64)> =
        sizes.iter().map(|(width, height)| (width.millimetres(), height.millimetres())).collect();
    let over = |size: &(f64, f64)| (size.0 - layout.across()).max(size.1 - layout.down());
    let over = bare.iter().map(over).fold(f64::NEG_INFINITY, f64::max);
    if over > ROUNDING_MM {
        return Err(Millimetres::new(over).expect("sizes are finite"));
    }
    // A paper that is all margin holds nothing, not even nothing.
    let least = layout.across().min(layout.down());
    if least <= 0.0 {
        return Err(Millimetres::new(-least).expect("sizes are finite"));
    }
    let mut strips = strips(&bare, layout);
    let sheets = stacked(&mut strips, layout);
    let mut cells = vec![Cell { sheet: 0, x: Millimetres::ZERO, y: Millimetres::ZERO }; sizes.len()];
    for strip in &strips {
        for (label, left) in strip.labels.iter().zip(&strip.edges) {
            cells[*label] = Cell { sheet: strip.sheet, x: from_edge(layout, *left), y: from_edge(layout, strip.top) };
        }
    }
    Ok(Plan { cells, sheets, strips })
}

fn from_edge(layout: &Layout, mm: f64) -> Millimetres {
    layout.margin + Millimetres::new(mm).expect("places on a sheet are finite")
}

fn strips(sizes: &[(f64, f64)], layout: &Layout) -> Vec<Strip> {
    let mut order: Vec<usize> = (0..sizes.len()).collect();
    order.sort_by(|a, b| larger(sizes[*a], sizes[*b]));
    let mut strips: Vec<Strip> = Vec::new();
    for label in order {
        let (width, height) = sizes[label];
        let fits = |strip: &&mut Strip| {
            strip.height == height && strip.edges[strip.edges.len() - 1] + width <= layout.across() + ROUNDING_MM
        };
        if let Some(strip) = strips.last_mut().filter(fits) {
            strip.edges.push(strip.edges[strip.edges.len() - 1] + width);
            strip.labels.push(label);
        } else {
            let left = if strips.is_empty() { first_left(layout, width, height) } else { 0.0 };
            strips.push(Strip { edges: vec![left, left + width], height, labels: vec![label], ..Strip::default() });
        }
    }
    strips
}

/// Where the first strip begins: after what was used, if it still fits there.
fn first_left(layout: &Layout, width: f64, height: f64) -> f64 {
    let (across, down) = (layout.used_across.millimetres().max(0.0), layout.used_down.millimetres().max(0.0));
    let fits = across + width <= layout.across() + ROUNDING_MM && down + height <= layout.down() + ROUNDING_MM;
    if fits { across } else { 0.0 }
}

fn larger(a: (f64, f64), b: (f64, f64)) -> Ordering {
    b.1.total_cmp(&a.1).then(b.0.total_cmp(&a.0))
}

/// Gives each strip its sheet and its place; says how many sheets there are.
fn stacked(strips: &mut [Strip], layout: &Layout) -> usize {
    let mut filled = vec![layout.used_down.millimetres().clamp(0.0, layout.down())];
    let whole_strip = layout.used_across > Millimetres::ZERO;
    for (index, strip) in strips.iter_mut().enumerate() {
        // A part-used strip that is too narrow for the first label is passed over whole.
        if index == 0 && whole_strip && strip.edges[0] == 0.0 {
            filled[0] = (filled[0] + strip.height).min(layout.down());
        }
        let fits = |top: &f64| top + strip.height <= layout.down() + ROUNDING_MM;
        let sheet = filled.iter().position(fits).unwrap_or(filled.len());
        if sheet == filled.len() {
            filled.push(0.0);
        }
        (strip.sheet, strip.top) = (sheet, filled[sheet]);
        filled[sheet] += strip.height;
    }
    filled.len()
}

impl Plan {
    /// The labels of a sheet, strip by strip, from left to right.
    pub fn labels(&self, sheet: usize) -> Vec<usize> {
        self.on_sheet(sheet).flat_map(|strip| strip.labels.iter().copied()).collect()
    }

    fn on_sheet(&self, sheet: usize) -> impl Iterator<Item = &Strip> {
        self.strips.iter().filter(move |strip| strip.sheet == sheet)
    }

    /// The lines along which a sheet is cut, a little longer than the labels: those across the sheet first.
    pub fn cut_lines(&self, sheet: usize, layout: &Layout) -> Vec<Stroke> {
        let strips: Vec<&Strip> = self.on_sheet(sheet).collect();
        let margin = layout.margin.millimetres();
        let shifted = |((x, y), (to_x, to_y)): Stroke| ((x + margin, y + margin), (to_x + margin, to_y + margin));
        levels(&strips).into_iter().chain(uprights(&strips)).map(shifted).collect()
    }
}

fn levels(strips: &[&Strip]) -> Vec<Stroke> {
    let left = strips.iter().map(|strip| strip.edges[0]).fold(f64::INFINITY, f64::min);
    let right = strips.iter().map(|strip| strip.edges[strip.edges.len() - 1]).fold(0.0, f64::max);
    let mut heights: Vec<f64> = strips.iter().flat_map(|strip| [strip.top, strip.top + strip.height]).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| near(*a, *b));
    heights.into_iter().map(|y| ((left - TICK_MM, y), (right + TICK_MM, y))).collect()
}

/// A line that goes on in the next strip is one cut.
fn uprights(strips: &[&Strip]) -> Vec<Stroke> {
    let mut done: Vec<Stroke> = Vec::new();
    let mut open: Vec<(f64, f64)> = Vec::new();
    for (index, strip) in strips.iter().enumerate() {
        let goes_on = |x: f64| strip.edges.iter().any(|edge| near(*edge, x));
        let (kept, ended): (Vec<_>, Vec<_>) = open.into_iter().partition(|(x, _)| goes_on(*x));
        done.extend(ended.into_iter().map(|(x, from)| ((x, from), (x, strip.top))));
        open = kept;
        for x in &strip.edges {
            if !open.iter().any(|(known, _)| near(*known, *x)) {
                open.push((*x, if index == 0 { strip.top - TICK_MM } else { strip.top }));
            }
        }
    }
    let below = strips.last().map_or(0.0, |strip| strip.top + strip.height + TICK_BELOW_MM);
    done.extend(open.into_iter().map(|(x, from)| ((x, from), (x, below))));
    done.sort_by(|a, b| a.0.0.total_cmp(&b.0.0));
    done
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < ROUNDING_MM
}

#[cfg(test)]
#[path = "sheet_tests.rs"]
mod tests;
