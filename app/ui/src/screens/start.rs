//! The field page: what is open, today, and the way to a new catch.

mod drafts;
mod empty;
mod newest;
mod open;

use crate::context::{say, use_page};
use crate::explain;
use crate::far;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{Calm, How};
use crate::route::{Export, Screen};
use drafts::Drafts;
pub use empty::LoadingSample;
use empty::{EmptyBook, EmptyDay};
use leptos::prelude::*;
use logbook::book::{Book, State};
use logbook::view::Start as View;
use newest::Today;
use open::OpenNow;
pub use open::{OpenFor, OpenSays};

/// The field page.
#[component]
pub fn Start() -> impl IntoView {
    let page = use_page();
    let words = say().start;
    let start = narrowed(move || page.logbook.with(|logbook| logbook.start(page.now.get())));
    let today = move || start.with(|start| say().dates.middle(start.today));
    let ready =
        narrowed(move || page.logbook.with(|logbook| matches!(logbook.state(), State::Ready | State::ReadOnly(_))));
    let empty = narrowed(move || start.with(|start| start.empty) && ready.get());
    view! {
        <Page title=words.title() bar=move || view! { <Bar start/> }>
            <header class="head">
                <h1>{today}</h1>
                <span class="commands">
                    <a class="button quiet" href=page.to(Screen::Search(String::new())) hidden=empty>{words.search()}</a>
                    <a class="button quiet phone-only" href=page.to(Screen::Setup)>{say().frame.setup()}</a>
                </span>
            </header>
            <How screen="start" says=vec![words.how_1(), words.how_2(), words.how_3()]/>
            {move || aside(start.with(|start| start.aside))}
            <Drafts/>
            <Show when=move || !empty.get() fallback=|| view! { <EmptyBook/> }>
                {far::today()}
            </Show>
        </Page>
    }
    .into_any()
}

/// What is open, and what was caught today.
#[component]
pub fn TodayColumns() -> impl IntoView {
    let page = use_page();
    let today = narrowed(move || page.logbook.with(|logbook| logbook.today(page.now.get())));
    let open = narrowed(move || today.with(|today| today.open.clone()));
    let newest = narrowed(move || today.with(|today| (today.newest.clone(), today.tally)));
    view! {
        <div class="columns two">
            <div class="column" hidden=move || open.with(Vec::is_empty)><OpenNow open/></div>
            <div class="column">
                <Show when=move || newest.with(|(lines, _)| !lines.is_empty()) fallback=|| view! { <EmptyDay/> }><Today newest/></Show>
                <p class="part"><a class="button quiet" href=page.to(Screen::SetTrap)>{say().start.set_trap()}</a></p>
            </div>
        </div>
    }
    .into_any()
}

fn aside(blocks: u32) -> Option<AnyView> {
    let words = say().faults;
    (blocks > 0).then(|| view! { <Calm says=format!("{} {}", words.aside(blocks), words.aside_do())/> }.into_any())
}

/// What exists only here, and the main command.
#[component]
fn Bar(start: Memo<View>) -> impl IntoView {
    let page = use_page();
    let words = say().start;
    let asked = move || page.logbook.with(|logbook| logbook.device().asked) || page.book() == Book::Sample;
    let href = move || page.to(if asked() { Screen::NewCatch } else { Screen::First });
    let only_here = narrowed(move || start.with(|start| start.only_here));
    let line =
        move || (only_here.get() > 0 && page.book() == Book::Own).then(|| view! { <OnlyHere events=only_here.get()/> });
    view! {
        <div class="bar">
            {line}
            <a class="button main split" href=href data-key="n">
                <span>{words.new_catch()}</span>
                <span class="next">{move || start.with(|start| explain::next(&start.next, start.empty))}</span>
                <kbd class="key">"N"</kbd>
            </a>
        </div>
    }
    .into_any()
}

#[component]
fn OnlyHere(events: usize) -> impl IntoView {
    let words = say().start;
    let export = use_page().to(Screen::Export(Export::NotExported));
    view! {
        <p class="says only-here">
            <span><strong>{words.only_here(events)}</strong>" "{words.only_here_where()}</span>
            " "<a class="button quiet" href=export>{words.export()}</a>
        </p>
    }
    .into_any()
}
