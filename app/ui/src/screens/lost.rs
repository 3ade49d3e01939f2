//! The address names a record that is not here.

use crate::context::{say, use_page};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::book::State;

/// Nothing stands here; while the book is still coming in, nothing is said yet.
#[component]
pub fn Lost() -> impl IntoView {
    let page = use_page();
    let words = say().frame;
    let open = narrowed(move || !page.logbook.with(|logbook| matches!(logbook.state(), State::Opening { .. })));
    view! {
        <Page title=words.not_found()>
            <div hidden=move || !open.get()>
                <header class="head"><h1>{words.not_found()}</h1></header>
                <p>{words.not_found_says()}</p>
                <p class="part"><a class="button" href=page.to(Screen::Start)>{words.to_field()}</a></p>
            </div>
        </Page>
    }
    .into_any()
}
