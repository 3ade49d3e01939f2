use leptos::prelude::*;

/// A name left of the pin, what is written right of it.
#[component]
pub fn Row(
    /// The id of the input that the name belongs to; empty where the row is a group of several.
    #[prop(optional)]
    of: &'static str,
    /// The name.
    #[prop(into)]
    name: String,
    /// Class of the value besides `row-value`.
    #[prop(optional)]
    class: &'static str,
    /// What is written.
    children: Children,
) -> impl IntoView {
    let value = view! { <div class=format!("row-value {class}")>{children()}</div> };
    if of.is_empty() {
        let label = name.clone();
        view! { <div class="row" role="group" aria-label=label><div class="row-name" aria-hidden="true">{name}</div>{value}</div> }.into_any()
    } else {
        view! { <div class="row"><label class="row-name" for=of>{name}</label>{value}</div> }.into_any()
    }
}
