//! Search over everything: the words as typed, what they were found in, the newest first.

mod hits;
mod marked;

use crate::context::{Context, say, use_page};
use crate::desk::{after_frame, how};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{Chooser, typed};
use crate::route::Screen;
use hits::Hits;
use leptos::prelude::*;
use logbook::search::{Found, Show as Kinds};

const KINDS: [(&str, Kinds); 5] = [
    ("all", Kinds::All),
    ("events", Kinds::Events),
    ("containers", Kinds::Containers),
    ("sites", Kinds::Sites),
    ("persons", Kinds::Persons),
];

/// Search.
#[component]
pub fn Search(sought: String) -> impl IntoView {
    let page = use_page();
    let words = say().search;
    let text = RwSignal::new(sought);
    let kinds = RwSignal::new(Kinds::All);
    let asked: Signal<String> = after_frame(text.into());
    let found = narrowed(move || {
        let text = asked.get();
        (!text.trim().is_empty()).then(|| page.logbook.with(|logbook| logbook.search(&text, kinds.get())))
    });
    let note = move || {
        found.with(|found| match found {
            None => String::new(),
            Some(found) if found.total == 0 => words.nothing_found().to_owned(),
            Some(found) => words.found(found.total),
        })
    };
    let write = move |event: web_sys::Event| {
        text.set(typed(&event));
        keep_address(page, &text.get_untracked());
    };
    let (top, end) = how("search", vec![words.how_1(), words.how_2()]);
    view! {
        <Page title=words.title() focus="q">
            <header class="head"><h1>{words.title()}</h1><p class="note" role="status">{note}</p></header>
            {top}
            <form class="part" role="search" autocomplete="off" on:submit=|event| event.prevent_default()>
                <label for="q" class="unseen">{words.label()}</label>
                <input class="line seek" id="q" type="search" enterkeyhint="search" autocapitalize="off" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} spellcheck="false"
                    prop:value=text on:input=write/>
            </form>
            <Kind kinds found/>
            {move || results(found.get(), kinds)}
            {end}
        </Page>
    }
    .into_any()
}

/// What is sought stands in the address, so that the way back from what was found leads here again.
fn keep_address(page: Context, text: &str) {
    let address = page.to(Screen::Search(text.to_owned()));
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&address));
    }
}

#[component]
fn Kind(kinds: RwSignal<Kinds>, found: Memo<Option<Found>>) -> impl IntoView {
    let words = say().search;
    let name = |code: &str| match code {
        "events" => words.events(),
        "containers" => words.containers(),
        "sites" => words.sites(),
        "persons" => words.persons(),
        _ => words.all(),
    };
    let options: Vec<(String, String)> =
        KINDS.iter().map(|(code, _)| ((*code).to_owned(), name(code).to_owned())).collect();
    let chosen = Signal::derive(move || {
        let kind = kinds.get();
        KINDS.iter().find(|(_, known)| *known == kind).map(|(code, _)| (*code).to_owned()).unwrap_or_default()
    });
    let choose = Callback::new(move |code: String| {
        if let Some((_, kind)) = KINDS.iter().find(|(known, _)| **known == code) {
            kinds.set(*kind);
        }
    });
    let nothing = move || found.with(|found| found.as_ref().is_none_or(|found| found.total == 0));
    view! {
        <div class="kinds" hidden=nothing>
            <Chooser name="show" legend=words.show() class="thirds" options=Signal::stored(options) chosen choose/>
        </div>
    }
    .into_any()
}

fn results(found: Option<Found>, kinds: RwSignal<Kinds>) -> AnyView {
    let words = say().search;
    match found {
        None => view! { <p class="part note">{words.ask()}</p> }.into_any(),
        Some(found) if found.total == 0 => view! { <Nothing found/> }.into_any(),
        Some(found) => view! { <Hits found kinds/> }.into_any(),
    }
}

#[component]
fn Nothing(found: Found) -> impl IntoView {
    let words = say().search;
    let looked = found.looked;
    let like = found.like.sites.len() + found.like.persons.len() > 0;
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M6 96h108M10 96V70h100v26"/><path class="faint" d="M26 70V44M44 70V44M62 70V44M80 70V44"/>
                <circle class="solid" cx="26" cy="42" r="3.5"/><circle class="solid" cx="44" cy="42" r="3.5"/>
                <circle class="solid" cx="62" cy="42" r="3.5"/><circle class="solid" cx="80" cy="42" r="3.5"/>
                <path class="faint dash" d="M98 70V40"/>
            </svg>
            <p class="ink">{words.nothing(&found.text)}</p>
            <p>{words.looked(looked.events, looked.containers, looked.sites, looked.persons)}</p>
        </section>
        <section class="part" hidden=!like>
            <h2>{words.like()}</h2>
            <ul>
                {found.like.sites.iter().map(|site| hits::site(site, &[])).collect_view()}
                {found.like.persons.iter().map(|person| hits::person(person, &[])).collect_view()}
            </ul>
        </section>
    }
    .into_any()
}
