//! Keys of the desk: a command carries its key as `data-key`, and the key presses the command.
//!
//! Single letters rest while something is typed. `ctrl+enter` presses the main command from anywhere; plain Enter
//! is left to the forms, whose main command submits them.

use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, KeyboardEvent};

/// Listens for as long as the page lives.
pub fn listen() {
    let handle = window_event_listener(ev::keydown, |event| {
        let Some(name) = name(&event) else { return };
        let command = document().query_selector(&format!("[data-key='{name}']")).ok().flatten();
        if let Some(command) = command.and_then(|command| command.dyn_into::<HtmlElement>().ok()) {
            event.prevent_default();
            command.click();
        }
    });
    on_cleanup(move || handle.remove());
}

/// The name of the key, where it is one that may press a command now.
fn name(event: &KeyboardEvent) -> Option<String> {
    let key = event.key();
    if key == "Enter" && (event.ctrl_key() || event.meta_key()) {
        return Some("ctrl+enter".into());
    }
    let single = key.chars().count() == 1 && key.chars().all(char::is_alphanumeric);
    let free = !(event.ctrl_key() || event.meta_key() || event.alt_key() || typing());
    (single && free).then(|| key.to_lowercase())
}

/// True while something is being typed or chosen.
fn typing() -> bool {
    let active = document().active_element();
    active.is_some_and(|element| {
        let free = ["checkbox", "radio", "button", "submit"];
        match element.tag_name().as_str() {
            "INPUT" => !free.contains(&element.get_attribute("type").unwrap_or_default().as_str()),
            "SELECT" | "TEXTAREA" => true,
            _ => false,
        }
    })
}
