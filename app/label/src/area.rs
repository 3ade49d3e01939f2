//! Where on a label words may stand: its size, the pin's place and a code in, areas out.
//!
//! A pin in the middle passes between two lines, so a band across the whole label stays clear. A pin near an end passes
//! between two lines as well, or beside all of them; both are offered, and the cheaper one is taken.

use crate::code::{Code, SetCode, set_code};
use crate::frame::{Format, Over, PinAt, millimetres};
use crate::place::{EDGE_X_MM, EDGE_Y_MM};

/// How far the pin's centre is from the end it is near to, mm. Common practice.
const FROM_END_MM: f64 = 2.0;
/// Ink stays at least so far from the pin's centre, however thin the pin, mm.
const PIN_LEAST_MM: f64 = 0.5;
/// A pixel of a 600 dpi printer, so that half-covered pixels stay clear too, mm.
const PIN_EXTRA_MM: f64 = 0.05;

/// An area for lines, mm from the upper left corner of the label.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Area {
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) height: f64,
    /// Diameter of the disc that must fall between two lines; 0 for none.
    pub(crate) band: f64,
    pub(crate) pin_x: f64,
    pub(crate) code: Option<SetCode>,
}

/// Radius in which there is no ink, for a disc of this diameter.
pub(crate) fn clear(pin_mm: f64) -> f64 {
    (pin_mm / 2.0).max(PIN_LEAST_MM) + PIN_EXTRA_MM
}

/// The areas of a label, at least one, and by how much a code is too large.
pub(crate) fn areas(format: &Format, code: Option<&Code>) -> (Vec<Area>, Option<Over>) {
    let (width, height, pin) = (format.width.millimetres(), format.height.millimetres(), format.pin.millimetres());
    let near_end = FROM_END_MM.min(width / 2.0);
    let pin_x = match format.pin_at {
        PinAt::Middle => width / 2.0,
        PinAt::Left => near_end,
        PinAt::Right => width - near_end,
    };
    let whole = Area { left: EDGE_X_MM, right: width - EDGE_X_MM, height, band: pin, pin_x, code: None };
    let (whole, over) = match code {
        Some(code) => beside(whole, code, format.pin_at),
        None => (whole, None),
    };
    let past = |area: &Area| match format.pin_at {
        PinAt::Left => Area { left: pin_x + clear(pin), band: 0.0, ..area.clone() },
        PinAt::Middle | PinAt::Right => Area { right: area.right.min(pin_x - clear(pin)), band: 0.0, ..area.clone() },
    };
    let beside_pin = (pin > 0.0 && format.pin_at != PinAt::Middle).then(|| past(&whole));
    ([whole].into_iter().chain(beside_pin).collect(), over)
}

/// The area left of a code at the right end, or right of one at the left end if the pin is at the right.
fn beside(area: Area, code: &Code, pin_at: PinAt) -> (Area, Option<Over>) {
    let (wide, high) = code.size_mm();
    let quiet = Code::quiet_mm();
    let width = area.right + EDGE_X_MM;
    // The paper beyond the cut is not ours: the quiet zone lies on the label.
    let margin = quiet.max(EDGE_X_MM);
    let at_left = pin_at == PinAt::Right;
    let x = if at_left { margin } else { width - margin - wide };
    let clear = if area.band > 0.0 { clear(area.band) } else { 0.0 };
    let room = match pin_at {
        PinAt::Middle if area.band > 0.0 => width / 2.0 - clear - margin,
        _ => width - 2.0 * margin,
    };
    let by = (wide - room).max(high + 2.0 * quiet.max(EDGE_Y_MM) - area.height);
    let over = (by > 1e-9).then(|| Over::Code { text: code.text.clone(), by: millimetres(by) });
    let code = over.is_none().then(|| set_code(code, x, (area.height - high) / 2.0));
    let used = margin + wide + quiet;
    let area = match (&code, at_left) {
        (None, _) => area,
        (Some(_), true) => Area { left: used, code, ..area },
        (Some(_), false) => Area { right: width - used, code, ..area },
    };
    (area, over)
}
