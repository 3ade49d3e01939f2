use leptos::prelude::*;

/// A few counts in large figures.
#[component]
pub fn Tally(
    /// Name, count, and the class of the figure.
    counts: Vec<(&'static str, String, &'static str)>,
    /// Class besides `tally`.
    #[prop(optional)]
    class: &'static str,
) -> impl IntoView {
    let count = |(name, count, figure)| view! { <div><dt>{name}</dt><dd class=figure>{count}</dd></div> };
    view! { <dl class=format!("tally {class}")>{counts.into_iter().map(count).collect_view()}</dl> }.into_any()
}
