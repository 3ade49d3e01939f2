use crate::context::{Done, say, use_page};
use crate::explain;
use leptos::prelude::*;

/// Above the bar: the way back from the last deed, or word of a new version.
#[component]
pub fn Strip(
    /// Something is being typed: the new version waits for the save.
    form: bool,
) -> impl IntoView {
    let page = use_page();
    let undo = move |done: Done| {
        let way_back = done.undo.is_some().then(|| {
            view! { <button class="button quiet" type="button" data-key="u" on:click=move |_| page.undo()>{say().frame.undo()}</button> }
        });
        view! { <span class="mark sure">{crate::parts::Sign::Tick.draw()}<span>{explain::done(done.what)}</span></span> {way_back} }.into_any()
    };
    let inner = move || match page.done.get() {
        Some(done) => Some(undo(done)),
        None => page.update.get().then(|| view! { <Update form/> }.into_any()),
    };
    let empty = move || page.done.with(Option::is_none) && !page.update.get();
    view! { <div class="undo" role="status" hidden=empty>{inner}</div> }.into_any()
}

#[component]
fn Update(form: bool) -> impl IntoView {
    let page = use_page();
    let words = say().frame;
    let now = move |_| page.ports().device.use_update();
    let command = move || {
        match (form, page.update_after.get()) {
        (false, _) => view! { <button class="button quiet" type="button" on:click=now>{words.update_now()}</button> }.into_any(),
        (true, false) => {
            view! { <button class="button quiet" type="button" on:click=move |_| page.update_after.set(true)>{words.update_after()}</button> }.into_any()
        }
        (true, true) => view! { <span class="note">{words.update_calm_now()}</span> }.into_any(),
    }
    };
    view! { <span>{words.update_waits()}</span> {command} }.into_any()
}
