use super::typed;
use crate::context::say;
use leptos::prelude::*;

/// Minus, number, plus; the number can be typed.
#[component]
pub fn Stepper(
    /// What is counted, for those who hear.
    #[prop(into)]
    name: Signal<String>,
    /// The number as typed; empty for none.
    #[prop(into)]
    value: Signal<String>,
    /// Called with the new number.
    change: Callback<String>,
    /// What the keyboard should offer.
    #[prop(optional, default = "numeric")]
    mode: &'static str,
) -> impl IntoView {
    let step = move |by: i64| {
        let now: i64 = value.with(|value| value.trim().parse().unwrap_or(0));
        change.run(now.saturating_add(by).max(0).to_string());
    };
    view! {
        <div class="stepper" role="group" aria-label=name>
            <button type="button" aria-label=say().frame.one_fewer() on:click=move |_| step(-1)>"−"</button>
            <input inputmode=mode autocomplete="off" aria-label=name prop:value=value on:input=move |event| change.run(typed(&event))/>
            <button type="button" aria-label=say().frame.one_more() on:click=move |_| step(1)>"+"</button>
        </div>
    }
    .into_any()
}
