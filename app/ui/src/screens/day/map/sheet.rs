//! What the map shows now, and what can be done to that. What does not outlive a look at the day lives in signals here.

use super::Shared;
use super::trails::Trails;
use crate::context::{Context, use_page};
use crate::narrow::narrowed;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::map::{DayMap, Frame, Placed, Spot, Tapped, Whereabouts, in_the_middle, nearest, spots, step};
use logbook::view::DayView;
use std::sync::Arc;

/// Width of the sheet until the page has said how wide it is.
const WIDTH: f64 = 358.0;
/// Half of the least target of a finger, and a little: from so far, in pixels, a tap finds a spot.
const REACH: f64 = 26.0;

/// The state of the map.
#[derive(Clone, Copy)]
pub struct Sheet {
    map: Memo<Option<Shared>>,
    frame: RwSignal<Option<Frame>>,
    shown: Memo<Option<Frame>>,
    spots: Memo<Arc<Vec<Spot>>>,
    /// Width of the sheet in pixels.
    pub width: RwSignal<f64>,
    /// The map was entered: one finger and the wheel move it.
    pub held: RwSignal<bool>,
    /// The recorded tracks of the day.
    pub trails: Trails,
    /// The events of the spot that was tapped, by their places in the list.
    pub chosen: RwSignal<Vec<usize>>,
    page: Context,
}

impl Sheet {
    /// The map of a day, all of it.
    pub fn new(view: Memo<DayView>) -> Self {
        let map = narrowed(move || view.with(|view| view.map.clone()));
        let (width, frame) = (RwSignal::new(WIDTH), RwSignal::new(None::<Frame>));
        let shown = narrowed(move || {
            let map = map.get()?;
            let (width, height) = (width.get(), height(width.get()));
            match frame.get() {
                Some(frame) => Some(map.ground().resized(frame, width, height)),
                None => map.ground().whole(width, height),
            }
        });
        let step = narrowed(move || shown.get().map(step));
        let spots = narrowed(move || {
            let found = map.get().zip(step.get()).map(|(map, step)| spots(map.ground(), step));
            Arc::new(found.unwrap_or_default())
        });
        let (held, chosen) = (RwSignal::new(false), RwSignal::new(Vec::new()));
        let (page, trails) = (use_page(), Trails::new(view, map));
        Self { map, frame, shown, spots, width, held, trails, chosen, page }
    }

    /// The map.
    pub fn map(self) -> Option<Shared> {
        self.map.get()
    }

    /// What is shown of it.
    pub fn frame(self) -> Option<Frame> {
        self.shown.get()
    }

    /// The spots at this scale, those beyond the edge too.
    pub fn spots(self) -> Arc<Vec<Spot>> {
        self.spots.get()
    }

    /// Shows another piece of ground.
    pub fn change(self, next: impl FnOnce(&DayMap, Frame) -> Frame) {
        let Some((map, frame)) = self.map.get_untracked().zip(self.shown.get_untracked()) else { return };
        let next = next(&map, frame);
        if next != frame {
            self.frame.set(Some(next));
        }
    }

    /// Drags the ground so many pixels.
    pub fn drag(self, x: f64, y: f64) {
        self.change(|map, frame| map.ground().dragged(frame, (x, y).into()));
    }

    /// Comes so many times closer, round the middle.
    pub fn zoom(self, times: f64) {
        self.change(|map, frame| map.ground().zoomed(frame, times, (frame.width() / 2.0, frame.height() / 2.0).into()));
    }

    /// Shows every event.
    pub fn all(self) {
        self.frame.set(None);
        self.chosen.set(Vec::new());
    }

    /// True while every event is shown as at first.
    pub fn is_all(self) -> bool {
        self.frame.with(Option::is_none)
    }

    /// A tap at a place of the sheet; false where nothing lies.
    pub fn tap(self, x: f64, y: f64) -> bool {
        let spots = self.spots.get_untracked();
        let near = self.shown.get_untracked().and_then(|frame| nearest(&spots, frame, (x, y).into(), REACH));
        near.is_some_and(|near| self.take(&spots[near]))
    }

    /// As a tap on what lies nearest the middle.
    pub fn tap_middle(self) {
        let spots = self.spots.get_untracked();
        if let Some(near) = self.shown.get_untracked().and_then(|frame| in_the_middle(&spots, frame)) {
            self.take(&spots[near]);
        }
    }

    fn take(self, spot: &Spot) -> bool {
        let Some((map, frame)) = self.map.get_untracked().zip(self.shown.get_untracked()) else { return false };
        match map.tapped(spot, frame) {
            Tapped::Event(event) => self.page.go(screen(&event)),
            Tapped::Here(members) => self.chosen.set(members),
            Tapped::Closer(closer, few) => {
                self.chosen.set(few);
                self.frame.set(Some(closer));
            }
        }
        true
    }
}

/// Where an event opens.
pub fn screen(event: &Placed) -> Screen {
    if event.open { Screen::Open(event.id) } else { Screen::Event(event.id, None) }
}

/// Height of the ground on a sheet of a width: on a phone there is always page left beside it.
fn height(width: f64) -> f64 {
    (width * 0.8).clamp(240.0, 440.0)
}

/// The spots when all is shown on a phone's sheet.
pub fn spots_of_all(map: &DayMap) -> Vec<Whereabouts> {
    let frame = map.ground().whole(WIDTH, height(WIDTH));
    frame.map(|frame| map.whereabouts(&spots(map.ground(), step(frame)))).unwrap_or_default()
}
