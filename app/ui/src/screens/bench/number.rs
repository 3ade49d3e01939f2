//! The number on the vial: it has the focus on arrival; Enter goes on to what it found.

use super::Asked;
use crate::context::{Context, say, use_page};
use crate::jump;
use crate::parts::{PlateView, typed};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use wasm_bindgen::JsCast;

/// The field, large; with the plate beside it once a container is found.
#[component]
pub fn NumberField(text: RwSignal<String>, asked: RwSignal<Asked>, id: Option<Id>) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let write = move |event: web_sys::Event| {
        let number = typed(&event);
        text.set(number.clone());
        asked.set(Asked::Number(number));
        keep_address(page, &text.get_untracked());
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        request_animation_frame(|| set_timeout(go_on, std::time::Duration::from_millis(30)));
    };
    let plate =
        id.and_then(|id| page.logbook.with_untracked(|logbook| logbook.container(id))).map(|container| container.plate);
    // The field is made anew when a container is found or lost: whoever is typing in it types on.
    Effect::new(move |_| {
        if typing_nowhere() {
            jump::focus_still("number");
        }
    });
    view! {
        <form class="part" role="search" autocomplete="off" on:submit=submit>
            <div class:settled=id.is_some()>
                <label for="number" class=if id.is_some() { "unseen" } else { "note" } data-key="n">{words.number()}" "<kbd class="key">"N"</kbd></label>
                <input class="line measure number-in" id="number" autocapitalize="characters" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} autocomplete="off" spellcheck="false"
                    enterkeyhint="go" prop:value=text on:input=write/>
                {plate.map(|plate| view! { <PlateView plate size="middle"/> })}
            </div>
        </form>
    }
    .into_any()
}

fn typing_nowhere() -> bool {
    document().active_element().is_none_or(|element| element.tag_name() == "BODY")
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
