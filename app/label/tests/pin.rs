//! The pin and the code, drawn by poppler at 600 dpi: no ink in the disc wherever the pin passes, and codes that an
//! independent reader reads.
//!
//! **Source**: poppler's `pdftoppm` and the reader `rxing`; without poppler these tests fail.

mod common;
#[path = "common/order.rs"]
mod order;

use common::{fonts, format, lines};
use label::{Code, Format, Layout, Over, Paper, PinAt, Setter, Wanted, path, print};
use number::symbol::{Shape, symbol};
use order::job;
use proptest::prelude::*;
use std::process::Command;
use units::{Millimetres, PinSize};

const DPI: f64 = 600.0;

/// The first sheet as grey pixels, 0 is black.
struct Page {
    width: usize,
    pixels: Vec<u8>,
}

impl Page {
    fn printed(name: &str, labels: Vec<Wanted>) -> Self {
        let fonts = fonts();
        let printed = print(&mut Setter::new(&fonts), job(labels, Paper::A4)).expect("the labels fit");
        let path = std::path::PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.pdf"));
        std::fs::write(&path, &printed.bytes).expect("the folder of the tests can be written to");
        let output = Command::new("pdftoppm").args(["-r", "600", "-gray", "-singlefile"]).arg(&path).output();
        let pgm = output.expect("pdftoppm of poppler-utils is needed for this test").stdout;
        let mut fields = pgm.splitn(4, |byte| *byte == b'\n');
        assert_eq!(fields.next(), Some(&b"P5"[..]));
        let size = String::from_utf8_lossy(fields.next().expect("a PGM has a size")).into_owned();
        let width = size.split(' ').next().and_then(|width| width.parse().ok()).expect("a PGM has a width");
        Self { width, pixels: fields.nth(1).expect("a PGM has pixels").to_vec() }
    }

    /// A rectangle of the page, mm.
    fn cut(&self, x: f64, y: f64, width: f64, height: f64) -> (Vec<u8>, u32, u32) {
        let pixel = |mm: f64| (mm / 25.4 * DPI).round() as usize;
        let (left, top, wide, high) = (pixel(x), pixel(y), pixel(width), pixel(height));
        let rows = (top..top + high).flat_map(|row| &self.pixels[row * self.width + left..][..wide]);
        (rows.copied().collect(), wide as u32, high as u32)
    }

    /// Pixels that are not white within a radius, mm.
    fn ink(&self, x: f64, y: f64, radius: f64) -> usize {
        let to_mm = |pixel: usize| (pixel as f64 + 0.5) / DPI * 25.4;
        let near = |mm: f64| ((mm - radius) / 25.4 * DPI) as usize..((mm + radius) / 25.4 * DPI) as usize + 1;
        near(y)
            .flat_map(|row| near(x).map(move |column| (row, column)))
            .filter(|(row, column)| (to_mm(*column) - x).hypot(to_mm(*row) - y) <= radius)
            .filter(|(row, column)| self.pixels[row * self.width + column] < 250)
            .count()
    }
}

fn at(pin_at: PinAt, width: f64, height: f64) -> Format {
    Format { pin_at, ..format(width, height) }
}

fn coded(text: &str) -> Code {
    let symbol = symbol(text, Shape::Square).expect("it is short");
    Code { text: text.to_owned(), columns: symbol.columns, modules: symbol.modules }
}

const LINES: [&str; 7] = ["Ågotsford", "jgpqy", "47.6138°~N", "_Salix_ L.", "leg.~I.~Varga", "ŐÇĄ", "♀ ♂"];

/// The lowest label in steps of 0.1 mm that holds these lines.
fn lowest(setter: &mut Setter<'_>, texts: &[&str], pin_at: PinAt) -> Format {
    let heights = (20_i32..400).map(|tenths| at(pin_at, 19.0, f64::from(tenths) / 10.0));
    let mut fitting = heights.filter(|format| setter.frame(&lines(texts), format).over.is_empty());
    fitting.next().expect("40 mm hold seven lines")
}

#[test]
fn one_to_seven_lines_leave_no_ink_in_the_disc_wherever_the_pin_passes() {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    let mut wanted = Vec::new();
    for pin_at in [PinAt::Middle, PinAt::Left, PinAt::Right] {
        for count in 1..=LINES.len() {
            let format = lowest(&mut setter, &LINES[..count], pin_at);
            wanted.push(Wanted { lines: lines(&LINES[..count]), code: None, format, copies: 1 });
        }
    }
    let sizes: Vec<_> = wanted.iter().map(|one| (one.format.width, one.format.height)).collect();
    let plan = label::plan(&sizes, &Layout::fresh(Paper::A4)).expect("they fit the paper");
    assert_eq!(plan.sheets, 1);
    let page = Page::printed("pins", wanted.clone());
    for (one, cell) in wanted.iter().zip(plan.cells) {
        let pin = match one.format.pin_at {
            PinAt::Middle => 9.5,
            PinAt::Left => 2.0,
            PinAt::Right => 17.0,
        };
        let (x, y) = (cell.x.millimetres() + pin, cell.y.millimetres() + one.format.height.millimetres() / 2.0);
        assert_eq!(page.ink(x, y, 0.5), 0, "{:?}, {} lines", one.format.pin_at, one.lines.len());
    }
}

#[test]
fn a_pin_near_an_end_leaves_room_for_a_fifth_line() {
    let texts = ["ORRELAND: Sallow", "Tarn Abbot", "47.6138°~N 12.3°~E", "19.vi.2027", "leg.~I.~Varga"];
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    assert!(!setter.frame(&lines(&texts), &at(PinAt::Middle, 18.0, 8.0)).over.is_empty());
    let left = setter.frame(&lines(&texts), &at(PinAt::Left, 18.0, 8.0));
    assert_eq!((left.over, left.frame.lines.len(), left.frame.above), (Vec::new(), 5, 5));
    assert!(left.frame.lines.iter().all(|line| line.runs[0].x.millimetres() >= 2.55));
}

#[test]
fn every_size_of_pin_has_its_disc() {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    for size in PinSize::all() {
        let disc = size.diameter() + Millimetres::thousandths(200);
        let format = Format { pin: disc, ..format(18.0, 8.0) };
        let frame = setter.frame(&lines(&["Tarn Abbot", "19.vi.2027"]), &format).frame;
        assert!(frame.clear().millimetres() > size.diameter().millimetres() / 2.0 + 0.09, "No. {}", size.name());
    }
}

#[test]
fn codes_beside_the_lines_are_read_from_the_print() {
    let texts = ["IV27-0147", "GLS-000148", "ŁK27-0149"];
    let wanted = |(index, text): (usize, &&str)| Wanted {
        lines: lines(&[text, "Coll. Invented"]),
        code: Some(coded(text)),
        format: at([PinAt::Middle, PinAt::Left, PinAt::Right][index], 20.0, 8.0),
        copies: 1,
    };
    let page = Page::printed("codes", texts.iter().enumerate().map(wanted).collect());
    for (index, text) in texts.into_iter().enumerate() {
        // Without the cut lines, which a reader takes for a frame.
        let (luma, width, height) = page.cut(10.0 + index as f64 * 20.0 + 0.12, 10.12, 19.76, 7.76);
        let read = rxing::helpers::detect_in_luma(luma, width, height, Some(rxing::BarcodeFormat::DATA_MATRIX));
        assert_eq!(read.expect("a code is there").getText(), text);
        let pin = [10.0, 2.0, 18.0][index];
        assert_eq!(page.ink(10.0 + index as f64 * 20.0 + pin, 14.0, 0.5), 0, "no ink where the pin passes");
    }
}

#[test]
fn modules_are_seven_whole_dots_in_the_print() {
    let wanted = Wanted { lines: lines(&["x"]), code: Some(coded("IV27-0147")), format: format(20.0, 8.0), copies: 1 };
    let page = Page::printed("modules", vec![wanted]);
    // The lowest row of a code is all ink: 14 modules of 7 dots; the row above the highest is white.
    let (luma, width, _) = page.cut(20.0, 10.2, 9.9, 7.6);
    let rows: Vec<usize> =
        luma.chunks(width as usize).map(|row| row.iter().filter(|pixel| **pixel < 128).count()).collect();
    assert_eq!(rows.iter().filter(|count| **count == 14 * 7).count(), 7, "{rows:?}");
}

#[test]
fn a_code_that_reaches_the_pin_is_said() {
    let fonts = fonts();
    let outcome =
        Setter::new(&fonts).frame_with(&lines(&["x"]), Some(&coded("IV27-0147")), &at(PinAt::Middle, 9.0, 8.0));
    let [Over::Code { text, by }] = &outcome.over[..] else { panic!("the code is too wide: {:?}", outcome.over) };
    assert_eq!(text, "IV27-0147");
    let wider =
        Format { width: Millimetres::new(9.0 + 2.0 * by.millimetres() + 0.01).expect("finite"), ..format(9.0, 8.0) };
    let outcome = Setter::new(&fonts).frame_with(&lines(&["x"]), Some(&coded("IV27-0147")), &wider);
    assert_eq!(outcome.over, [], "so much wider and it fits");
}

/// Left and right edge, upper and lower edge of all ink, control points included.
fn bounds(path: &str) -> [f64; 4] {
    let mut edges = [f64::INFINITY, f64::NEG_INFINITY, f64::INFINITY, f64::NEG_INFINITY];
    for outline in path.split_terminator('Z').filter(|outline| !outline.contains('h')) {
        let spaced = outline.replace('-', " -");
        let mut at = (0.0, 0.0);
        for command in spaced.split(|letter: char| letter.is_ascii_alphabetic()).skip(1) {
            let numbers: Vec<f64> = command.split_whitespace().filter_map(|number| number.parse().ok()).collect();
            let points: Vec<(f64, f64)> = numbers.chunks(2).map(|pair| (at.0 + pair[0], at.1 + pair[1])).collect();
            for (x, y) in &points {
                edges = [edges[0].min(*x), edges[1].max(*x), edges[2].min(*y), edges[3].max(*y)];
            }
            at = points[points.len() - 1];
        }
    }
    edges
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn words_keep_off_the_code_and_the_pin_near_an_end(
        texts in proptest::collection::vec("[a-zA-Zäöęłß0-9., -]{1,14}", 1..5),
        width in 16.0_f64..40.0,
        height in 6.0_f64..20.0,
        right: bool,
    ) {
        let fonts = fonts();
        let mut setter = Setter::new(&fonts);
        let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
        let pin_at = if right { PinAt::Right } else { PinAt::Left };
        let outcome = setter.frame_with(&lines(&texts), Some(&coded("IV27-0147")), &at(pin_at, width, height));
        prop_assume!(outcome.over.is_empty());
        let frame = &outcome.frame;
        let code = frame.code.clone().expect("it was asked for");
        let [left, far, top, bottom] = bounds(&path(&setter, frame));
        prop_assume!(left.is_finite());
        prop_assert!(left >= 0.0 && far <= width && top >= 0.0 && bottom <= height);
        let quiet = code.module.millimetres() * 0.9;
        let code_width = code.columns as f64 * code.module.millimetres();
        let clear_of_code = far <= code.x.millimetres() - quiet || left >= code.x.millimetres() + code_width + quiet;
        prop_assert!(clear_of_code, "{} to {} beside a code at {:?}", left, far, code.x);
        let pin = frame.pin_x.millimetres();
        let beside = left >= pin + 0.5 || far <= pin - 0.5;
        prop_assert!(beside || frame.above < frame.lines.len() || frame.lines.len() == 1);
    }
}
