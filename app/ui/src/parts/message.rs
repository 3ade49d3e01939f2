use leptos::prelude::*;

/// What happened, what is safe, what to do, between two heavy rules.
#[component]
pub fn Message(
    /// What happened.
    #[prop(into)]
    what: String,
    /// What is safe, and what to do.
    #[prop(into)]
    safe: String,
    /// Commands.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <section class="message" role="alert">
            <h2>{what}</h2>
            <p>{safe}</p>
            {children.map(|commands| view! { <div class="commands">{commands()}</div> })}
        </section>
    }
    .into_any()
}

/// Something to know, between two thin rules.
#[component]
pub fn Calm(
    /// The sentence.
    #[prop(into)]
    says: String,
    /// Commands.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <section class="message calm part">
            <p>{says}</p>
            {children.map(|commands| view! { <div class="commands">{commands()}</div> })}
        </section>
    }
    .into_any()
}

/// One sentence where harm could happen.
#[component]
pub fn Caution(
    /// The sentence.
    says: &'static str,
) -> impl IntoView {
    view! { <p class="caution">{says}</p> }.into_any()
}
