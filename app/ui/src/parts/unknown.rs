use crate::context::say;
use leptos::prelude::*;

/// "Unknown" beside an empty row; gone when something is written there.
#[component]
pub fn UnknownWord(
    /// The row's name, for those who hear.
    row: &'static str,
    /// The row is empty.
    #[prop(into)]
    empty: Signal<bool>,
    /// Marked as unknown.
    #[prop(into)]
    marked: Signal<bool>,
    /// Called with the new state.
    change: Callback<bool>,
) -> impl IntoView {
    let words = say().frame;
    view! {
        <label class="word unknown fit" hidden=move || !empty.get()>
            <input type="checkbox" aria-label=words.unknown_of(row) prop:checked=marked
                on:change=move |event| change.run(event_target_checked(&event))/>
            <span>{words.unknown()}</span>
        </label>
    }
    .into_any()
}
