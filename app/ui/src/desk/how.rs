use crate::context::{say, use_page};
use leptos::prelude::*;

/// How this works: open under the heading at the first visit of a screen, ever after the last line of its sheet.
/// Gives what stands at the two places.
pub fn how(screen: &'static str, says: Vec<&'static str>) -> (Option<AnyView>, Option<AnyView>) {
    let first = use_page().first_visit(screen);
    let words = view! {
        <details class=if first { "more how" } else { "more how part" } open=first>
            <summary><span>{say().frame.how()}</span></summary>
            {says.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
        </details>
    }
    .into_any();
    if first { (Some(words), None) } else { (None, Some(words)) }
}
