use leptos::prelude::*;

/// A box to tick, with its words.
#[component]
pub fn Check(
    /// Whether ticked.
    #[prop(into)]
    ticked: Signal<bool>,
    /// Called with the new state.
    change: Callback<bool>,
    /// The words.
    children: Children,
) -> impl IntoView {
    view! {
        <label class="check">
            <input type="checkbox" prop:checked=ticked on:change=move |event| change.run(event_target_checked(&event))/>
            {children()}
        </label>
    }
    .into_any()
}
