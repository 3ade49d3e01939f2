//! What fingers, mouse, wheel and keys do to the map.

use super::sheet::Sheet;
use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, Node, PointerEvent, TouchEvent, WheelEvent};

/// A finger that moved less than this, in pixels, has tapped.
const TAP: f64 = 9.0;
/// Each press of a key or a button comes so much closer.
pub const CLOSER: f64 = 1.6;
/// Share of the sheet by which an arrow moves it.
const ARROW: f64 = 0.2;
/// Pixels of the wheel that double the scale, and pixels of a line of it.
const WHEEL: (f64, f64) = (240.0, 16.0);

/// The fingers on the map.
#[derive(Clone, Default)]
struct Fingers {
    down: Vec<(i32, f64, f64)>,
    moved: f64,
    several: bool,
}

/// A hand on the map.
#[derive(Clone, Copy)]
pub struct Hand {
    sheet: Sheet,
    fingers: StoredValue<Fingers>,
}

impl Hand {
    /// No finger is on the map yet. The map is left when something beside it is touched or gets the focus.
    pub fn new(sheet: Sheet) -> Self {
        let leave = move |event: web_sys::Event| {
            if sheet.held.get_untracked() && !within_map(&event) {
                sheet.held.set(false);
            }
        };
        let touched = window_event_listener(ev::pointerdown, move |event| leave(event.into()));
        let focused = window_event_listener(ev::focusin, move |event| leave(event.into()));
        on_cleanup(move || {
            touched.remove();
            focused.remove();
        });
        Self { sheet, fingers: StoredValue::new(Fingers::default()) }
    }

    /// A finger or button goes down.
    pub fn down(self, event: &PointerEvent) {
        if event.button() != 0 {
            return;
        }
        if let Some(map) = map_of(event) {
            let _ = map.set_pointer_capture(event.pointer_id());
        }
        let (x, y) = place(event);
        self.fingers.update_value(|fingers| {
            if fingers.down.is_empty() {
                (fingers.moved, fingers.several) = (0.0, false);
            }
            fingers.down.retain(|(id, ..)| *id != event.pointer_id());
            fingers.down.push((event.pointer_id(), x, y));
            fingers.several |= fingers.down.len() > 1;
        });
    }

    /// It moves: one drags, two drag and stretch.
    pub fn moves(self, event: &PointerEvent) {
        let (x, y) = place(event);
        let before = self.fingers.with_value(|fingers| fingers.down.clone());
        let Some(at) = before.iter().position(|(id, ..)| *id == event.pointer_id()) else { return };
        let (_, from_x, from_y) = before[at];
        self.fingers.update_value(|fingers| {
            fingers.down[at] = (event.pointer_id(), x, y);
            fingers.moved += (x - from_x).abs() + (y - from_y).abs();
        });
        if self.fingers.with_value(|fingers| fingers.moved < TAP) {
            return;
        }
        let Some((_, other_x, other_y)) =
            before.iter().enumerate().find(|(other, _)| *other != at).map(|(_, one)| *one)
        else {
            return self.sheet.drag(x - from_x, y - from_y);
        };
        let apart = |x: f64, y: f64| ((x - other_x).powi(2) + (y - other_y).powi(2)).sqrt().max(1.0);
        let times = apart(x, y) / apart(from_x, from_y);
        let middle = ((x + other_x) / 2.0, (y + other_y) / 2.0);
        self.sheet.change(|map, frame| {
            let dragged = map.ground().dragged(frame, ((x - from_x) / 2.0, (y - from_y) / 2.0).into());
            map.ground().zoomed(dragged, times, middle.into())
        });
    }

    /// It goes up: without a way behind it, it was a tap. Where nothing lies, the tap enters the map.
    pub fn up(self, event: &PointerEvent) {
        let tapped = self.fingers.with_value(|fingers| fingers.moved < TAP && !fingers.several);
        if !self.lift(event) || !tapped {
            return;
        }
        let (x, y) = place(event);
        if !self.sheet.tap(x, y) {
            self.sheet.held.set(true);
        }
    }

    /// The browser took the finger for scrolling.
    pub fn cancel(self, event: &PointerEvent) {
        self.lift(event);
    }

    fn lift(self, event: &PointerEvent) -> bool {
        let before = self.fingers.with_value(|fingers| fingers.down.len());
        self.fingers.update_value(|fingers| fingers.down.retain(|(id, ..)| *id != event.pointer_id()));
        self.fingers.with_value(|fingers| fingers.down.len()) < before
    }

    /// Two fingers are the map's; one is the page's until the map is entered.
    pub fn touch(self, event: &TouchEvent) {
        if event.cancelable() && (event.touches().length() > 1 || self.sheet.held.get_untracked()) {
            event.prevent_default();
        }
    }

    /// The wheel scrolls the page until the map is entered; with two fingers on a touch pad it stretches the map.
    pub fn wheel(self, event: &WheelEvent) {
        if !self.sheet.held.get_untracked() && !event.ctrl_key() {
            return;
        }
        event.prevent_default();
        let pixels = if event.delta_mode() == WheelEvent::DOM_DELTA_PIXEL { 1.0 } else { WHEEL.1 };
        // A touch pad sends a pinch as small steps of a wheel with the control key.
        let pinch = if event.ctrl_key() { 4.0 } else { 1.0 };
        let times = (-event.delta_y() * pixels * pinch / WHEEL.0).clamp(-2.0, 2.0).exp2();
        let at = place(event);
        self.sheet.change(|map, frame| map.ground().zoomed(frame, times, at.into()));
    }

    /// The keys of the map.
    pub fn key(self, event: &KeyboardEvent) {
        if event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        let sheet = self.sheet;
        let (across, up) = (sheet.width.get_untracked() * ARROW, sheet.width.get_untracked() * ARROW * 0.8);
        match event.key().as_str() {
            "ArrowLeft" => sheet.drag(across, 0.0),
            "ArrowRight" => sheet.drag(-across, 0.0),
            "ArrowUp" => sheet.drag(0.0, up),
            "ArrowDown" => sheet.drag(0.0, -up),
            "+" | "=" => sheet.zoom(CLOSER),
            "-" | "−" | "_" => sheet.zoom(1.0 / CLOSER),
            "0" => sheet.all(),
            "Enter" => sheet.tap_middle(),
            "Escape" => sheet.held.set(false),
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    }
}

/// Where on the sheet an event of the mouse's kind was, in its pixels.
fn place(event: &web_sys::MouseEvent) -> (f64, f64) {
    let corner = map_of(event).map(|map| map.get_bounding_client_rect());
    let (left, top) = corner.map(|corner| (corner.left(), corner.top())).unwrap_or_default();
    (f64::from(event.client_x()) - left, f64::from(event.client_y()) - top)
}

fn map_of(event: &web_sys::Event) -> Option<Element> {
    event.current_target().and_then(|target| target.dyn_into::<Element>().ok())
}

fn within_map(event: &web_sys::Event) -> bool {
    let target = event.target().and_then(|target| target.dyn_into::<Node>().ok());
    let map = document().get_element_by_id("map");
    map.is_some_and(|map| map.contains(target.as_ref()))
}
