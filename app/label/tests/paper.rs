//! The PDF as others see it: poppler measures the page, lists the fonts, reads the words, and draws it at 600 dpi.
//!
//! **Source**: poppler's `pdfinfo`, `pdffonts`, `pdftotext` and `pdftoppm`, and `qpdf`; without them these tests fail.

mod common;
#[path = "common/order.rs"]
mod order;

use common::{fonts, format, lines};
use label::{Line, Paper, Printed, Setter, Wanted, print};
use order::job;
use std::path::PathBuf;
use std::process::Command;
use units::Millimetres;

const DPI: f64 = 600.0;

/// Prints labels into a file of its own.
fn printed(name: &str, labels: &[(Vec<Line>, u32)], paper: Paper) -> (PathBuf, Printed) {
    let fonts = fonts();
    let wanted = |(lines, copies): &(Vec<Line>, u32)| Wanted {
        lines: lines.clone(),
        code: None,
        format: format(18.0, 8.0),
        copies: *copies,
    };
    let job = job(labels.iter().map(wanted).collect(), paper);
    let printed = print(&mut Setter::new(&fonts), job).expect("the labels fit");
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.pdf"));
    std::fs::write(&path, &printed.bytes).expect("the folder of the tests can be written to");
    (path, printed)
}

fn told(tool: &str, arguments: &[&str]) -> Vec<u8> {
    let output = Command::new(tool).args(arguments).output();
    let output = output.unwrap_or_else(|fault| panic!("{tool} is needed for this test: {fault}"));
    assert!(output.status.success(), "{tool} {arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    output.stdout
}

fn text(tool: &str, arguments: &[&str]) -> String {
    String::from_utf8(told(tool, arguments)).expect("poppler writes UTF-8")
}

fn catch() -> Vec<(Vec<Line>, u32)> {
    vec![
        (lines(&["ORRELAND:~Sallow,~Tarn~Abbot", "47.6138°~N 12.3043°~E ±8~m", "19–20.vi.2027, leg.~I.~Varga"]), 12),
        (lines(&["visiting the flower of", "_Heracleum~sphondylium_ L.", "hand net, 30~minutes"]), 3),
        (lines(&["♀ ♂", "47°36′49.7″~N"]), 2),
        (lines(&["Ångström, Łódź, Dvořák", "Ευρώπη, Сибирь", "fjord, office, afflict", "Ḥaḍramawt, q̃"]), 1),
    ]
}

fn catch_words() -> Vec<String> {
    let shown = |line: &Line| line.iter().map(|run| run.text.replace('\u{a0}', " ")).collect::<String>();
    let label = |(lines, copies): &(Vec<Line>, u32)| {
        let words: Vec<String> = lines.iter().map(shown).collect();
        (0..*copies).flat_map(|_| words.clone()).collect::<Vec<_>>()
    };
    catch().iter().flat_map(label).chain(["This bar must measure 50 mm.".to_owned()]).collect()
}

#[test]
fn pages_have_their_true_size_and_number() {
    let card = Paper::Own(Millimetres::whole(100), Millimetres::whole(150));
    for (name, paper, size, sheets) in [
        ("a4", Paper::A4, "595.276 x 841.89 pts (A4)", 2),
        ("letter", Paper::Letter, "612 x 792 pts (letter)", 2),
        ("card", card, "283.465 x 425.197 pts", 6),
    ] {
        let (path, printed) = printed(&format!("pages-{name}"), &[(lines(&["19.vi.2027"]), 331)], paper);
        let info = text("pdfinfo", &[path.to_str().expect("the path is text")]);
        let line =
            |name: &str| info.lines().find_map(|line| line.strip_prefix(name)).unwrap_or_default().trim().to_owned();
        assert_eq!((line("Page size:").as_str(), line("Pages:")), (size, sheets.to_string()));
        assert_eq!((printed.sheets, printed.labels), (sheets, 331));
        assert_eq!(line("Title:"), "Labels of an invented survey");
    }
}

#[test]
fn fonts_are_embedded_cut_down_and_mapped_to_letters() {
    let (path, printed) = printed("fonts", &catch(), Paper::A4);
    let fonts = text("pdffonts", &[path.to_str().expect("the path is text")]);
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert_eq!(rows.len(), 3, "{fonts}");
    for row in rows {
        assert!(row.contains("CID TrueType") && row.contains(" yes yes yes "), "{row}");
    }
    assert!(printed.bytes.len() < 60_000, "{} bytes are more than subsets need", printed.bytes.len());
    let has = |words: &[u8]| printed.bytes.windows(words.len()).any(|window| window == words);
    assert!(has(b"<pdfaid:part>2</pdfaid:part>") && has(b"<pdfaid:conformance>B</pdfaid:conformance>"));
}

#[test]
fn the_file_is_sound() {
    let (path, _) = printed("sound", &catch(), Paper::A4);
    let said = text("qpdf", &["--check", path.to_str().expect("the path is text")]);
    assert!(said.contains("No syntax or stream encoding errors found"), "{said}");
}

/// Two labels of one line beside each other come back as one line: poppler joins what follows on the same baseline.
#[test]
fn words_come_back_label_by_label_and_line_by_line() {
    let (path, _) = printed("words", &catch(), Paper::A4);
    let words = text("pdftotext", &["-raw", path.to_str().expect("the path is text"), "-"]);
    let words: Vec<&str> =
        words.lines().map(|line| line.trim_end_matches('\u{c}')).filter(|line| !line.is_empty()).collect();
    assert_eq!(words, catch_words());
}

/// A page as grey pixels at 600 dpi, 0 is black.
struct Page {
    width: usize,
    pixels: Vec<u8>,
}

impl Page {
    fn drawn(path: &std::path::Path) -> Self {
        let pgm = told("pdftoppm", &["-r", "600", "-gray", "-singlefile", path.to_str().expect("the path is text")]);
        let mut fields = pgm.splitn(4, |byte| *byte == b'\n');
        assert_eq!(fields.next(), Some(&b"P5"[..]));
        let size = String::from_utf8_lossy(fields.next().expect("a PGM has a size")).into_owned();
        let width = size.split(' ').next().and_then(|width| width.parse().ok()).expect("a PGM has a width");
        let pixels = fields.nth(1).expect("a PGM has pixels").to_vec();
        Self { width, pixels }
    }

    /// True where a pixel is not white.
    fn inked(&self, x_mm: f64, y_mm: f64) -> bool {
        let pixel = |mm: f64| (mm / 25.4 * DPI) as usize;
        self.pixels[pixel(y_mm) * self.width + pixel(x_mm)] < 250
    }

    /// Inked steps of a fiftieth of a millimetre between two heights or two sides.
    fn count(&self, xs: (f64, f64), ys: (f64, f64), inside: impl Fn(f64, f64) -> bool) -> usize {
        let steps = |(from, until): (f64, f64)| {
            (0..((until - from) * 50.0) as usize).map(move |step| from + step as f64 / 50.0)
        };
        steps(ys).map(|y| steps(xs).filter(|x| inside(*x, y) && self.inked(*x, y)).count()).sum()
    }
}

#[test]
fn no_ink_near_the_pin_or_the_cut() {
    let (path, printed) = printed("raster", &catch(), Paper::A4);
    let page = Page::drawn(&path);
    for label in 0..printed.labels {
        let (x, y) = (10.0 + (label % 10) as f64 * 18.0, 10.0 + (label / 10) as f64 * 8.0);
        let from_pin = |px: f64, py: f64| (px - x - 9.0).hypot(py - y - 4.0);
        let pin = page.count((x + 8.0, x + 10.0), (y + 3.0, y + 5.0), |px, py| from_pin(px, py) <= 0.5);
        assert_eq!(pin, 0, "label {label} has ink near the pin");
        // Between the cut line, half of which is 0.05 mm, and the words.
        let rim = |px: f64, py: f64| (px - x).min(x + 18.0 - px).min(py - y).min(y + 8.0 - py) <= 0.2;
        assert_eq!(page.count((x + 0.12, x + 17.86), (y + 0.12, y + 7.86), rim), 0, "label {label} has ink at the cut");
        let words = page.count((x + 0.2, x + 17.8), (y + 0.2, y + 7.8), |_, _| true);
        assert!(words > 1000, "label {label} is printed");
    }
}

/// The centres of the ticks at both ends of the bar, and the cut lines left and right of the first label.
#[test]
fn the_bar_measures_fifty_millimetres_and_labels_eighteen() {
    let (path, _) = printed("bar", &catch(), Paper::A4);
    let page = Page::drawn(&path);
    let centre = |from: f64, until: f64, y: f64| {
        let inked: Vec<f64> = (0..((until - from) * 500.0) as usize)
            .map(|step| from + step as f64 / 500.0)
            .filter(|x| page.inked(*x, y))
            .collect();
        assert!(!inked.is_empty(), "there is a line between {from} and {until} mm");
        inked.iter().sum::<f64>() / inked.len() as f64
    };
    let tick = 297.0 - 10.0 - 3.5 - 1.0;
    let bar = centre(59.0, 61.0, tick) - centre(9.0, 11.0, tick);
    assert!((bar - 50.0).abs() < 0.05, "the bar measures {bar} mm");
    let cut = centre(27.0, 29.0, 8.5) - centre(9.0, 11.0, 8.5);
    assert!((cut - 18.0).abs() < 0.05, "a label measures {cut} mm");
}
