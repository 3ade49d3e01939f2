use super::{Options, typed};
use leptos::prelude::*;

/// A native select, where more than six words are to choose from.
#[component]
pub fn Pick(
    /// Its id.
    id: &'static str,
    /// What is heard as its name, where no visible label stands beside it.
    #[prop(optional)]
    name: &'static str,
    /// Code and words of each.
    #[prop(into)]
    options: Signal<Options>,
    /// The code chosen.
    #[prop(into)]
    chosen: Signal<String>,
    /// Called with the code chosen.
    choose: Callback<String>,
) -> impl IntoView {
    let option = move |(code, words): (String, String)| {
        let mine = code.clone();
        view! { <option value=code prop:selected=move || chosen.with(|chosen| *chosen == mine)>{words}</option> }
    };
    view! {
        <span class="pick">
            {(!name.is_empty()).then(|| view! { <label class="unseen" for=id>{name}</label> })}
            <select id=id on:change=move |event| choose.run(typed(&event))>
                {move || options.get().into_iter().map(option).collect_view()}
            </select>
        </span>
    }
    .into_any()
}
