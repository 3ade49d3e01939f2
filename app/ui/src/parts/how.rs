use crate::context::{say, use_page};
use leptos::prelude::*;

/// What is said below the sheet, once a screen has been visited before.
#[derive(Clone, Copy)]
pub struct HowBelow(pub RwSignal<Vec<&'static str>>);

/// How this works: open under the heading at the first visit of a screen, ever after closed as the last line of the
/// sheet.
#[component]
pub fn How(
    /// Name of the screen, under which the visit is remembered.
    screen: &'static str,
    /// What is said.
    says: Vec<&'static str>,
) -> impl IntoView {
    if use_page().first_visit(screen) {
        return view! { <HowWords says open=true/> }.into_any();
    }
    if let Some(HowBelow(below)) = use_context() {
        below.set(says);
    }
    ().into_any()
}

/// The words themselves.
#[component]
pub fn HowWords(
    /// What is said.
    says: Vec<&'static str>,
    /// Open from the start.
    open: bool,
) -> impl IntoView {
    view! {
        <details class="more how" open=open>
            <summary>
                <span>{say().frame.how()}</span>
            </summary>
            {says.into_iter().map(|sentence| view! { <p>{sentence}</p> }).collect_view()}
        </details>
    }
    .into_any()
}
