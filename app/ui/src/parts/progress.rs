use leptos::prelude::*;

/// Done of all, with its words; a way to stop it where there is one.
#[component]
pub fn Progress(
    /// What is going on, with the numbers.
    #[prop(into)]
    words: Signal<String>,
    /// Done.
    #[prop(into)]
    done: Signal<usize>,
    /// Of all.
    #[prop(into)]
    of: Signal<usize>,
    /// The command that stops it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <div class="progress">
            <label for="progress">{words}</label>
            {children.map(|stop| stop())}
            <progress id="progress" max=move || of.get().to_string() value=move || done.get().to_string()></progress>
        </div>
    }
    .into_any()
}
