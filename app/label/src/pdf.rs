//! The PDF of whole sheets: frames in, bytes out, PDF/A-2b with the fonts cut down to the letters used.
//!
//! Nothing is printed unless everything fits. Text stands in the file label by label and line by line.

use crate::frame::{Format, Frame, Over, SetLine, SetRun};
use crate::measure::Setter;
use crate::sheet::{BAR_MM, FOOT_MM, MARGIN_MM, Sheet};
use crate::text::{Line, Run};
use crate::{Paper, measure};
use krilla::color::luma;
use krilla::configure::{Archival, Configuration, ConfigurationBuilder};
use krilla::geom::{PathBuilder, Point};
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use units::{Millimetres, Points};

/// Cut lines are as thin as printers set, and grey, so that a cut beside them does not show.
const CUT_PT: f32 = 0.25;
const CUT_GREY: u8 = 140;
const BAR_PT: f32 = 0.5;
const WORDS_LARGEST_PT: i32 = 8;
const WORDS_LEAST_PT: i32 = 4;

/// When a document was made, local: year, month, day, hour, minute, second.
pub type Moment = (u16, u8, u8, u8, u8, u8);

/// What to print besides the labels.
#[derive(Clone, Debug)]
pub struct Job<'a> {
    /// The labels and how many of each, in the order of the bench.
    pub labels: &'a [(Vec<Line>, u32)],
    /// Their size.
    pub format: Format,
    /// The paper.
    pub paper: Paper,
    /// Title of the document.
    pub title: &'a str,
    /// Words beside the bar of 50 mm; if a font lacks one of their letters the bar says "50 mm".
    pub check_words: &'a str,
    /// When it was made.
    pub made: Moment,
}

/// A finished document.
#[derive(Clone, Debug)]
pub struct Printed {
    /// The file.
    pub bytes: Vec<u8>,
    /// How many sheets.
    pub sheets: usize,
    /// How many labels.
    pub labels: usize,
}

/// Why nothing was printed.
#[derive(Clone, Debug, PartialEq)]
pub enum Refused {
    /// These labels do not fit, by their place in the list.
    Over(Vec<(usize, Vec<Over>)>),
    /// A label is larger than the sheet by so much.
    Sheet(Millimetres),
    /// The file could not be written as PDF/A.
    Document(String),
}

/// Sets and prints labels.
///
/// **Errors**: nothing is printed if one label does not fit.
pub fn print(setter: &mut Setter<'_>, job: &Job<'_>) -> Result<Printed, Refused> {
    let sheet = Sheet::new(job.paper, &job.format).map_err(Refused::Sheet)?;
    let frames = framed(setter, job)?;
    let cells: Vec<&Frame> =
        frames.iter().flat_map(|(frame, copies)| std::iter::repeat_n(frame, *copies as usize)).collect();
    let sheets = sheet.sheets(cells.len());
    let words = words(setter, job.paper, job.check_words);
    let fonts = setter.fonts.embedded();
    let mut document = Document::new_with(settings());
    document.set_metadata(metadata(job));
    for number in 0..sheets {
        let first = number * sheet.capacity();
        let on_sheet = &cells[first..cells.len().min(first + sheet.capacity())];
        let mut page = document.start_page_with(page_settings(job.paper));
        let mut ink = Ink { surface: page.surface(), fonts: &fonts };
        ink.labels(&sheet, on_sheet);
        ink.cut_lines(&sheet, on_sheet.len());
        ink.bar(&sheet, &words);
    }
    let bytes = document.finish().map_err(|fault| Refused::Document(fault.to_string()))?;
    Ok(Printed { bytes, sheets, labels: cells.len() })
}

fn framed(setter: &mut Setter<'_>, job: &Job<'_>) -> Result<Vec<(Frame, u32)>, Refused> {
    let mut frames = Vec::with_capacity(job.labels.len());
    let mut over = Vec::new();
    for (index, (lines, copies)) in job.labels.iter().enumerate() {
        let outcome = setter.frame(lines, &job.format);
        if outcome.over.is_empty() {
            frames.push((outcome.frame, *copies));
        } else {
            over.push((index, outcome.over));
        }
    }
    if over.is_empty() { Ok(frames) } else { Err(Refused::Over(over)) }
}

/// The words beside the bar, on one line; only "50 mm" where a font lacks one of their letters.
pub fn words(setter: &mut Setter<'_>, paper: Paper, text: &str) -> Frame {
    let room = paper.size().0.millimetres() - 2.0 * MARGIN_MM - BAR_MM;
    let format = Format {
        width: Millimetres::new(room).expect("paper is wider than the bar"),
        height: Millimetres::new(FOOT_MM).expect("the foot is finite"),
        largest: Points::whole(WORDS_LARGEST_PT),
        least: Points::whole(WORDS_LEAST_PT),
        pin: Millimetres::ZERO,
    };
    let mut set = |text: &str| setter.frame(&[vec![Run { text: text.to_owned(), italic: false }]], &format);
    let outcome = set(text);
    if outcome.over.is_empty() { outcome.frame } else { set("50 mm").frame }
}

fn settings() -> SerializeSettings {
    SerializeSettings { configuration: archival(), ..SerializeSettings::default() }
}

fn archival() -> Configuration {
    let builder = ConfigurationBuilder::new().with_archival_validator(Archival::A2_B);
    builder.finish().expect("one validator has no rival")
}

fn metadata(job: &Job<'_>) -> Metadata {
    let (year, month, day, hour, minute, second) = job.made;
    let made = DateTime::new(year).month(month).day(day).hour(hour).minute(minute).second(second);
    Metadata::new().title(job.title.to_owned()).creator("Glassine".to_owned()).creation_date(made)
}

fn page_settings(paper: Paper) -> PageSettings {
    let (width, height) = paper.size();
    PageSettings::from_wh(pt(width.millimetres()), pt(height.millimetres())).expect("paper has a size")
}

fn pt(mm: f64) -> f32 {
    Millimetres::new(mm).expect("places on a sheet are finite").to_points().points() as f32
}

/// Draws on one sheet.
struct Ink<'s> {
    surface: Surface<'s>,
    fonts: &'s [Font],
}

impl Ink<'_> {
    fn labels(&mut self, sheet: &Sheet, frames: &[&Frame]) {
        self.surface.set_fill(Some(Fill { paint: luma::Color::black().into(), ..Fill::default() }));
        self.surface.set_stroke(None);
        for (index, frame) in frames.iter().enumerate() {
            let cell = sheet.cell(index);
            self.frame(frame, cell.x.millimetres(), cell.y.millimetres());
        }
    }

    fn frame(&mut self, frame: &Frame, x: f64, y: f64) {
        for line in &frame.lines {
            line.runs.iter().for_each(|run| self.run(frame, line, run, (x, y)));
        }
    }

    fn run(&mut self, frame: &Frame, line: &SetLine, run: &SetRun, (x, y): (f64, f64)) {
        let start = Point::from_xy(pt(x + run.x.millimetres()), pt(y + line.baseline.millimetres()));
        let glyphs: Vec<KrillaGlyph> = run.glyphs.iter().map(glyph).collect();
        let font = self.fonts[run.face].clone();
        self.surface.draw_glyphs(start, &glyphs, font, &run.text, frame.size.points() as f32, false);
    }

    /// Lines between all labels of the sheet, a little longer than the rows and columns.
    fn cut_lines(&mut self, sheet: &Sheet, labels: usize) {
        self.stroke(&sheet.cut_lines(labels), CUT_PT, luma::Color::new(CUT_GREY));
    }

    fn bar(&mut self, sheet: &Sheet, words: &Frame) {
        self.stroke(&sheet.bar(), BAR_PT, luma::Color::black());
        self.surface.set_stroke(None);
        let (x, y) = sheet.words_at();
        self.frame(words, x, y);
    }

    fn stroke(&mut self, strokes: &[crate::sheet::Stroke], width: f32, grey: luma::Color) {
        let mut lines = PathBuilder::new();
        for (from, to) in strokes {
            lines.move_to(pt(from.0), pt(from.1));
            lines.line_to(pt(to.0), pt(to.1));
        }
        let fill = self.surface.get_fill().cloned();
        self.surface.set_fill(None);
        self.surface.set_stroke(Some(Stroke {
            paint: grey.into(),
            width,
            opacity: NormalizedF32::ONE,
            ..Stroke::default()
        }));
        if let Some(path) = lines.finish() {
            self.surface.draw_path(&path);
        }
        self.surface.set_fill(fill);
    }
}

fn glyph(glyph: &measure::Glyph) -> KrillaGlyph {
    let id = GlyphId::new(u32::from(glyph.id));
    KrillaGlyph::new(id, glyph.advance, glyph.right, glyph.up, 0.0, glyph.start..glyph.end, None)
}
