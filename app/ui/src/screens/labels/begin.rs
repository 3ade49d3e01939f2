//! Where labels begin on a sheet of which some are cut off already.

use super::Desk;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{More, Stepper};
use leptos::prelude::*;

/// Rows and places that are used.
#[component]
pub fn Begin(desk: Desk) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let begin = narrowed(move || desk.queue.with(|queue| queue.begin));
    let number = |typed: &str| typed.trim().parse().unwrap_or(0_u32).min(200);
    let rows = Signal::derive(move || begin.get().0.to_string());
    let places = Signal::derive(move || begin.get().1.to_string());
    let set_rows = Callback::new(move |typed: String| desk.change(page, |queue| queue.begin.0 = number(&typed)));
    let set_places = Callback::new(move |typed: String| desk.change(page, |queue| queue.begin.1 = number(&typed)));
    let open = begin.get_untracked() != (0, 0);
    view! {
        <More words=words.begin() open>
            <div class="proof-line"><span>{words.begin_row()}</span><Stepper name=words.begin_row() value=rows change=set_rows/></div>
            <div class="proof-line"><span>{words.begin_column()}</span><Stepper name=words.begin_column() value=places change=set_places/></div>
            <p class="note">{words.begin_says()}</p>
        </More>
    }
    .into_any()
}
