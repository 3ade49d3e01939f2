use crate::context::{say, use_page};
use crate::draft;
use crate::parts::Calm;
use crate::route::Screen;
use leptos::prelude::*;

/// What lies half written: the way on with it, and the way to throw it away.
#[component]
pub fn Drafts() -> impl IntoView {
    let page = use_page();
    let there = RwSignal::new((draft::is_kept(page, "catch"), draft::is_kept(page, "site")));
    let words = say().start;
    let catch = move || {
        there.get().0.then(|| {
            let throw = move |_| {
                draft::forget_all(page, "catch");
                there.update(|there| there.0 = false);
            };
            view! {
                <Calm says=say().catch.go_on_draft()>
                    <a class="button" href=page.to(Screen::NewCatch)>{words.go_on()}</a>
                    <button class="button quiet" type="button" on:click=throw>{say().catch.throw_draft()}</button>
                </Calm>
            }
        })
    };
    let site = move || {
        there
            .get()
            .1
            .then(|| view! { <p><a class="button quiet" href=page.to(Screen::Site(None))>{words.go_on_site()}</a></p> })
    };
    view! { {catch} {site} }.into_any()
}
