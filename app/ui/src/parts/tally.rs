use leptos::prelude::*;

/// A few counts in large figures.
#[component]
pub fn Tally(
    /// Name, count, and the class of the figure.
    counts: Vec<(&'static str, String, &'static str)>,
) -> impl IntoView {
    let count = |(name, count, class)| view! { <div><dt>{name}</dt><dd class=class>{count}</dd></div> };
    view! { <dl class="tally">{counts.into_iter().map(count).collect_view()}</dl> }.into_any()
}
