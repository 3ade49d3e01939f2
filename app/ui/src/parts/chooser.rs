use super::Options;
use leptos::prelude::*;

/// Words side by side, the chosen one inked in: up to six.
#[component]
pub fn Chooser(
    /// Name of the group in the page.
    name: &'static str,
    /// What is chosen here.
    #[prop(into)]
    legend: Signal<String>,
    /// The legend stands there as a heading; else it is only heard.
    #[prop(optional)]
    headed: bool,
    /// Class of the row of words, besides `words`.
    #[prop(optional)]
    class: &'static str,
    /// Code and words of each.
    #[prop(into)]
    options: Signal<Options>,
    /// The code chosen.
    #[prop(into)]
    chosen: Signal<String>,
    /// Called with the code chosen.
    choose: Callback<String>,
) -> impl IntoView {
    let word = move |(code, words): (String, String)| {
        let mine = code.clone();
        view! {
            <label class="word">
                <input type="radio" name=name prop:checked=move || chosen.with(|chosen| *chosen == mine)
                    on:change=move |_| choose.run(code.clone())/>
                <span>{words}</span>
            </label>
        }
    };
    view! {
        <fieldset class=if headed { "chooser part" } else { "chooser" }>
            <legend class:unseen=!headed>{if headed { view! { <h2>{legend}</h2> }.into_any() } else { legend.into_any() }}</legend>
            <div class=format!("words {class}")>{move || options.get().into_iter().map(word).collect_view()}</div>
        </fieldset>
    }
    .into_any()
}
