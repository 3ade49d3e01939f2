use crate::context::{say, use_page};
use crate::route::Route;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Another book: its name stands above every screen, with the way home and the way to throw it away.
#[component]
pub fn BookStrip() -> impl IntoView {
    let page = use_page();
    let words = say().frame;
    let asked = RwSignal::new(false);
    let home = Route::default().hash();
    let events = move || page.logbook.with(|logbook| logbook.start(page.now.get()).events);
    let throw = move |_| {
        spawn_local(async move {
            if page.driver().throw_sample_away().await.is_ok() {
                let _ = window().location().set_hash(&Route::default().hash());
            }
        });
    };
    let question = move || {
        asked.get().then(|| {
            view! {
                <p>{words.throw_away_says(events())}</p>
                <span class="commands">
                    <button class="button quiet" type="button" on:click=move |_| asked.set(false)>{words.keep_sample()}</button>
                    <button class="button" type="button" on:click=throw>{words.throw_away_do()}</button>
                </span>
            }
        })
    };
    view! {
        <aside class="book" aria-label=words.which_book()>
            <p><strong>{words.sample_name()}</strong>" "{words.sample_says()}</p>
            <span class="commands">
                <button class="button quiet" type="button" hidden=asked on:click=move |_| asked.set(true)>{words.throw_away()}</button>
                <a class="button quiet" href=home>{words.own_book()}</a>
            </span>
            {question}
        </aside>
    }
    .into_any()
}
