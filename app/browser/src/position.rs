//! One running watch on the device's position, with values as the device gives them.

use crate::js;
use crate::timer::Timer;
use ports::Position;
use ports::position::{Fix, NoFix, Watch};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Geolocation, Position as Found, PositionError, PositionOptions};

/// After so long without a first word the page is told that it takes long; the watch goes on.
const SLOW_MS: u32 = 30_000;

type Heard = Rc<dyn Fn(Result<Fix, NoFix>)>;

/// The browser's geolocation.
pub struct DevicePosition;

impl Position for DevicePosition {
    fn watch(&self, heard: Box<dyn Fn(Result<Fix, NoFix>)>) -> Box<dyn Watch> {
        let heard: Heard = heard.into();
        match js::navigator().geolocation() {
            Ok(geolocation) if !geolocation.is_undefined() => Box::new(Running::new(geolocation, heard)),
            _ => Box::new(Missing { _says: Timer::new(0, move || heard(Err(NoFix::Denied))) }),
        }
    }
}

/// A browser without geolocation says no, a moment later, as one that refuses would.
struct Missing {
    _says: Timer,
}

impl Watch for Missing {}

struct Running {
    geolocation: Geolocation,
    id: Option<i32>,
    _fixed: Closure<dyn Fn(Found)>,
    _failed: Closure<dyn Fn(PositionError)>,
    _slow: Rc<RefCell<Option<Timer>>>,
}

impl Watch for Running {}

impl Running {
    fn new(geolocation: Geolocation, heard: Heard) -> Self {
        let late = heard.clone();
        let slow = Rc::new(RefCell::new(Some(Timer::new(SLOW_MS, move || late(Err(NoFix::Slow))))));
        let (quick, late) = (slow.clone(), heard.clone());
        let fixed = Closure::<dyn Fn(Found)>::new(move |position| {
            quick.borrow_mut().take();
            late(Ok(fix(&position)));
        });
        let quick = slow.clone();
        let failed = Closure::<dyn Fn(PositionError)>::new(move |error| {
            quick.borrow_mut().take();
            heard(Err(no_fix(&error)));
        });
        let id = watch(&geolocation, &fixed, &failed);
        Self { geolocation, id, _fixed: fixed, _failed: failed, _slow: slow }
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        if let Some(id) = self.id {
            self.geolocation.clear_watch(id);
        }
    }
}

/// Starts the watch; `None` when the browser throws, and then the slow notice is all that is heard.
fn watch(
    geolocation: &Geolocation,
    fixed: &Closure<dyn Fn(Found)>,
    failed: &Closure<dyn Fn(PositionError)>,
) -> Option<i32> {
    let options = PositionOptions::new();
    options.set_enable_high_accuracy(true);
    let (fixed, failed) = (fixed.as_ref().unchecked_ref(), failed.as_ref().unchecked_ref());
    geolocation.watch_position_with_error_callback_and_options(fixed, Some(failed), &options).ok()
}

fn fix(position: &Found) -> Fix {
    let at = position.coords();
    Fix {
        latitude: at.latitude(),
        longitude: at.longitude(),
        accuracy_m: at.accuracy(),
        altitude_m: at.altitude(),
        altitude_accuracy_m: at.altitude_accuracy(),
        at_ms: position.timestamp(),
    }
}

/// Codes of the W3C Geolocation API: 1 denied, 2 unavailable, 3 timed out.
fn no_fix(error: &PositionError) -> NoFix {
    match error.code() {
        1 => NoFix::Denied,
        3 => NoFix::Slow,
        _ => NoFix::Unavailable,
    }
}
