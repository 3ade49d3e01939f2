use crate::context::{say, use_page};
use crate::route::{Route, Screen};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::book::Book;

/// Nothing was ever logged: in one's own book two ways to begin; in the sample book the sample comes in.
#[component]
pub fn EmptyBook() -> impl IntoView {
    let page = use_page();
    let words = say().start;
    if page.book() == Book::Sample {
        return crate::far::sample();
    }
    let sample = Route { book: Book::Sample, screen: Screen::Start }.hash();
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M18 46h74a14 14 0 0 1 0 28H18zM18 40v40M10 40v40M10 40h8M10 80h8"/><path class="faint" d="M32 60h46"/>
            </svg>
            <p class="ink">{words.empty()}</p>
            <p>{words.empty_says()}</p>
        </section>
        <div class="commands">
            <a class="button grow" href=sample>{words.load_sample()}</a>
            <a class="button grow" href=page.to(Screen::Import)>{words.import_log()}</a>
        </div>
    }
    .into_any()
}

/// The sample survey on its way in.
#[component]
pub fn LoadingSample() -> impl IntoView {
    let page = use_page();
    let failed = RwSignal::new(None);
    spawn_local(async move {
        if let Err(fault) = page.driver().load_sample().await {
            let _ = failed.try_set(Some(crate::explain::sample_fault(&fault)));
        }
    });
    let message = move || failed.get().map(|(what, safe)| view! { <crate::parts::Message what safe/> });
    view! { <p role="status" hidden=move || failed.with(Option::is_some)>{say().start.loading_sample()}</p> {message} }
        .into_any()
}

/// Nothing today.
#[component]
pub fn EmptyDay() -> impl IntoView {
    let page = use_page();
    let words = say().start;
    view! {
        <section class="part" aria-labelledby="today">
            <h2 id="today">{words.today()}</h2>
            <p class="ink">{words.no_catch_today()}</p>
            <a class="button quiet" href=page.to(Screen::Days)>{say().frame.days()}</a>
        </section>
    }
    .into_any()
}
