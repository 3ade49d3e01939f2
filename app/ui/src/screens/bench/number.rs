//! The number on the vial: it has the focus on arrival; Enter goes on to what it found.

use super::Asked;
use crate::context::{Context, say, use_page};
use crate::parts::{PlateView, typed};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use std::time::Duration;
use wasm_bindgen::JsCast;

/// The field, large; with the plate beside it once a container is found.
#[component]
pub fn NumberField(text: RwSignal<String>, asked: RwSignal<Asked>, found: Memo<Option<Id>>) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let write = move |event: web_sys::Event| {
        let number = typed(&event);
        text.set(number.clone());
        keep_address(page, &number);
        asked.set(Asked::Number(number));
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        // What was typed last is looked up after the next frame.
        request_animation_frame(|| set_timeout(go_on, Duration::from_millis(50)));
    };
    let plate = move || {
        let container = page.logbook.with(|logbook| logbook.container(found.get()?))?;
        Some(view! { <PlateView plate=container.plate size="middle"/> })
    };
    let settled = move || found.with(Option::is_some);
    let label = move || if settled() { "unseen" } else { "note" };
    view! {
        <form class="part" role="search" autocomplete="off" on:submit=submit>
            <label for="number" class=label data-key="n">{words.number()}" "<kbd class="key">"N"</kbd></label>
            <div class:settled=settled>
                <input class="line measure number-in" id="number" autocapitalize="characters"
                    {..leptos::attr::custom::custom_attribute("autocorrect", "off")} autocomplete="off" spellcheck="false"
                    enterkeyhint="go" prop:value=text on:input=write/>
                {plate}
            </div>
        </form>
    }
    .into_any()
}

fn keep_address(page: Context, number: &str) {
    let address = page.to(Screen::Bench(number.trim().to_owned()));
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&address));
    }
}

/// To the main command of the container found, or to the first of those that could be meant.
fn go_on() {
    let next = [".candidate", ".bar .button.main"];
    let next = next.iter().find_map(|name| document().query_selector(name).ok().flatten());
    if let Some(next) = next.and_then(|next| next.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = next.focus();
    }
}
