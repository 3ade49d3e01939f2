//! An event listener that ends when it is dropped.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Event, EventTarget};

/// Hears one kind of event for as long as it is kept.
pub struct Listener {
    target: EventTarget,
    kind: &'static str,
    heard: Closure<dyn Fn(Event)>,
}

impl Listener {
    /// Calls `heard` for each event of this kind.
    pub fn new(target: &EventTarget, kind: &'static str, heard: impl Fn(Event) + 'static) -> Self {
        let heard = Closure::<dyn Fn(Event)>::new(heard);
        target
            .add_event_listener_with_callback(kind, heard.as_ref().unchecked_ref())
            .expect("adding a listener to a target never throws");
        Self { target: target.clone(), kind, heard }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let heard = self.heard.as_ref().unchecked_ref();
        self.target
            .remove_event_listener_with_callback(self.kind, heard)
            .expect("removing a listener from a target never throws");
    }
}
