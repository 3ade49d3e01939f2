//! The PDF of whole sheets: frames in, bytes out, PDF/A-2b with the fonts cut down to the letters used.
//!
//! Nothing is printed unless everything fits. Text stands in the file label by label and line by line. A long print is
//! made in steps ([`Printing`]), between which the caller may show how far it is, or let it go.

use crate::code::SetCode;
use crate::frame::{Format, Frame, Over, PinAt};
use crate::measure::Setter;
use crate::passage::{Passage, SIZE, passages};
use crate::sheet::{FOOT_MM, Layout, Plan};
use crate::text::Run;
use krilla::color::luma;
use krilla::configure::{Archival, Configuration, ConfigurationBuilder};
use krilla::geom::{PathBuilder, Rect, Transform};
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke};
use krilla::surface::Surface;
use krilla::text::Font;
use krilla::{Document, SerializeSettings};
use units::{Millimetres, Points};

/// Cut lines are as thin as printers set, and grey, so that a cut beside them does not show.
const CUT_PT: f32 = 0.25;
const CUT_GREY: u8 = 140;
const BAR_PT: f32 = 0.5;
const WORDS_LARGEST_PT: i32 = 8;
const WORDS_LEAST_PT: i32 = 4;
/// Words beside the bar need at least so much room, mm.
const WORDS_ROOM_MM: f64 = 15.0;

/// When a document was made, local: year, month, day, hour, minute, second.
pub type Moment = (u16, u8, u8, u8, u8, u8);

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

/// The words beside the bar, a line each; only "50 mm" where they do not fit or a font lacks one of their letters, and
/// none on a card that is too narrow.
pub fn words(setter: &mut Setter<'_>, layout: &Layout, texts: &[&str]) -> Option<Frame> {
    let room = layout.words_room();
    if room < WORDS_ROOM_MM {
        return None;
    }
    let format = Format {
        width: Millimetres::new(room).expect("the room beside the bar is finite"),
        height: Millimetres::new(FOOT_MM).expect("the foot is finite"),
        largest: Points::whole(WORDS_LARGEST_PT),
        least: Points::whole(WORDS_LEAST_PT),
        pin: Millimetres::ZERO,
        pin_at: PinAt::Middle,
    };
    let line = |text: &&str| vec![Run { text: (*text).to_owned(), italic: false }];
    let outcome = setter.frame(&texts.iter().map(line).collect::<Vec<_>>(), &format);
    Some(if outcome.over.is_empty() { outcome.frame } else { setter.frame(&[line(&"50 mm")], &format).frame })
}

/// The document while sheets are added to it.
pub(crate) struct Paging {
    document: Document,
    fonts: Vec<Font>,
}

impl Paging {
    pub(crate) fn new(setter: &Setter<'_>, title: &str, made: Moment) -> Self {
        let mut document = Document::new_with(settings());
        document.set_metadata(metadata(title, made));
        Self { document, fonts: setter.fonts.embedded() }
    }

    /// Draws one sheet.
    pub(crate) fn sheet<'f>(
        &mut self,
        plan: &Plan,
        number: usize,
        layout: &Layout,
        frame: impl Fn(usize) -> &'f Frame,
        words: Option<&Frame>,
    ) {
        let mut page = self.document.start_page_with(page_settings(layout));
        let mut ink = Ink { surface: page.surface(), fonts: &self.fonts };
        ink.surface.set_fill(Some(Fill { paint: luma::Color::black().into(), ..Fill::default() }));
        ink.surface.set_stroke(None);
        for label in plan.labels(number) {
            let cell = plan.cells[label];
            ink.frame(frame(label), cell.x.millimetres(), cell.y.millimetres());
        }
        ink.stroke(&plan.cut_lines(number, layout), CUT_PT, luma::Color::new(CUT_GREY));
        ink.bar(layout, words);
    }

    pub(crate) fn finished(self) -> Result<Vec<u8>, Refused> {
        self.document.finish().map_err(|fault| Refused::Document(fault.to_string()))
    }
}

fn settings() -> SerializeSettings {
    SerializeSettings { configuration: archival(), ..SerializeSettings::default() }
}

fn archival() -> Configuration {
    let builder = ConfigurationBuilder::new().with_archival_validator(Archival::A2_B);
    builder.finish().expect("one validator has no rival")
}

fn metadata(title: &str, made: Moment) -> Metadata {
    let (year, month, day, hour, minute, second) = made;
    let made = DateTime::new(year).month(month).day(day).hour(hour).minute(minute).second(second);
    Metadata::new().title(title.to_owned()).creator("Glassine".to_owned()).creation_date(made)
}

fn page_settings(layout: &Layout) -> PageSettings {
    let (width, height) = layout.paper.size();
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
    fn frame(&mut self, frame: &Frame, x: f64, y: f64) {
        let unit = (frame.size.points() / f64::from(SIZE)) as f32;
        self.surface.push_transform(&Transform::from_row(unit, 0.0, 0.0, unit, pt(x), pt(y)));
        for Passage { face, start, text, glyphs, .. } in passages(frame) {
            self.surface.draw_glyphs(start, &glyphs, self.fonts[face].clone(), &text, SIZE, false);
        }
        self.surface.pop();
        if let Some(code) = &frame.code {
            self.code(code, (x, y));
        }
    }

    /// One path for the whole grid, so that neighbours have no seam, in modules, so that its numbers are short.
    fn code(&mut self, code: &SetCode, (x, y): (f64, f64)) {
        let (side, left, top) = (pt(code.module.millimetres()), code.x.millimetres(), code.y.millimetres());
        self.surface.push_transform(&Transform::from_row(side, 0.0, 0.0, side, pt(x + left), pt(y + top)));
        let mut grid = PathBuilder::new();
        for bar in code.bars() {
            let rect = Rect::from_xywh(bar.column as f32, bar.row as f32, bar.modules as f32, 1.0);
            rect.into_iter().for_each(|rect| grid.push_rect(rect));
        }
        if let Some(path) = grid.finish() {
            self.surface.draw_path(&path);
        }
        self.surface.pop();
    }

    fn bar(&mut self, layout: &Layout, words: Option<&Frame>) {
        self.stroke(&layout.bar(), BAR_PT, luma::Color::black());
        self.surface.set_stroke(None);
        if let Some(words) = words {
            let (x, y) = layout.words_at();
            self.frame(words, x, y);
        }
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
