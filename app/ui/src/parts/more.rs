use leptos::prelude::*;

/// Rows that are seldom needed, behind a quiet word.
#[component]
pub fn More(
    /// The word.
    words: &'static str,
    /// Open from the start, because something is written in it.
    #[prop(optional)]
    open: bool,
    /// The rows.
    children: Children,
) -> impl IntoView {
    view! { <details class="more" open=open><summary><span>{words}</span></summary>{children()}</details> }.into_any()
}
