use crate::context::{say, use_page};
use leptos::prelude::*;

/// How this works: open under the heading at the first visit of a screen, closed ever after.
#[component]
pub fn How(
    /// Name of the screen, under which the visit is remembered.
    screen: &'static str,
    /// What is said.
    says: Vec<&'static str>,
) -> impl IntoView {
    let first = use_page().first_visit(screen);
    view! {
        <details class="more how" open=first>
            <summary><span>{say().frame.how()}</span></summary>
            {says.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
        </details>
    }
    .into_any()
}
