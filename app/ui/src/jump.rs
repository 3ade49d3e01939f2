//! Moves the focus within the page: to a row that a list names, to the sheet after a change of screen.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, FocusOptions, HtmlDetailsElement, HtmlElement, MouseEvent};

/// Follows a link to a row of the same screen without touching the address: what hides it is opened, and the
/// first thing in it that can be written gets the focus.
pub fn to(event: &MouseEvent, id: &str) {
    event.prevent_default();
    focus(id);
}

/// Opens what hides the element with this id and gives it the focus.
pub fn focus(id: &str) {
    let Some(element) = document().get_element_by_id(id) else { return };
    open_around(&element);
    element.scroll_into_view();
    let field = element.query_selector("input, select, textarea, button").ok().flatten();
    let target = if element.has_attribute("tabindex") || is_field(&element) { Some(element) } else { field };
    if let Some(target) = target.and_then(|target| target.dyn_into::<HtmlElement>().ok()) {
        let _ = target.focus();
    }
}

/// Shows the top of the sheet, where messages stand.
pub fn to_top() {
    if let Some(sheet) = document().get_element_by_id("main") {
        sheet.set_scroll_top(0);
    }
}

/// Gives the focus to the element with this id without moving the page.
pub fn focus_still(id: &str) {
    let element = document().get_element_by_id(id).and_then(|element| element.dyn_into::<HtmlElement>().ok());
    if let Some(element) = element {
        let still = FocusOptions::new();
        still.set_prevent_scroll(true);
        let _ = element.focus_with_options(&still);
    }
}

fn is_field(element: &Element) -> bool {
    matches!(element.tag_name().as_str(), "INPUT" | "SELECT" | "TEXTAREA" | "BUTTON" | "A")
}

fn open_around(element: &Element) {
    let mut around = element.closest("details").ok().flatten();
    while let Some(details) = around {
        if let Some(details) = details.dyn_ref::<HtmlDetailsElement>() {
            details.set_open(true);
        }
        around = details.parent_element().and_then(|parent| parent.closest("details").ok().flatten());
    }
}

/// In a long form Enter on a line goes on to the next row instead of saving by accident; Ctrl and Enter saves.
pub fn enter_goes_on(event: web_sys::KeyboardEvent) {
    let target = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    let line = target.filter(|element| matches!(element.tag_name().as_str(), "INPUT" | "SELECT"));
    if event.key() != "Enter" || event.ctrl_key() || event.meta_key() {
        return;
    }
    if let Some(line) = line {
        event.prevent_default();
        focus_after(&line);
    }
}

fn focus_after(element: &Element) {
    let Some(form) = element.closest("form").ok().flatten() else { return };
    let Ok(fields) = form.query_selector_all("input:not([type=checkbox]):not([type=radio]), select") else { return };
    let all = (0..fields.length()).filter_map(|at| fields.item(at)?.dyn_into::<HtmlElement>().ok());
    let after = all.skip_while(|field| !field.is_same_node(Some(element))).skip(1);
    if let Some(next) = after.into_iter().find(|field| field.offset_parent().is_some()) {
        let _ = next.focus();
    }
}
