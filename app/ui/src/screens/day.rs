//! A day: its events in order with what is missing, what was caught how and on what, and where they lie.

mod empty;
mod map;

use crate::context::{say, use_page};
use crate::desk::{BarRow, Bars, Window, how};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::Tally;
use crate::route::{Export, Screen};
use crate::screens::EventItem;
use crate::screens::event_line::method_words;
use empty::EmptyDay;
use leptos::prelude::*;
use logbook::moment::Day as Date;
use logbook::view::{Bar as Counted, DayView, Method, Tally as Counts, looks_latin};
use map::Map;

/// A day.
#[component]
pub fn Day(day: Date) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let view = narrowed(move || page.logbook.with(|logbook| logbook.day(day)));
    let empty = narrowed(move || view.with(|view| view.events.is_empty()));
    let (top, end) = how("day", vec![words.how_1(), words.how_2(), words.how_3(), words.how_4()]);
    view! {
        <Page title=say().dates.long(day) bar=move || view! { <Bar day empty/> }>
            <header class="head">
                <h1>{say().dates.long(day)}</h1>
                <Turn view/>
            </header>
            {top}
            <Show when=move || !empty.get() fallback=move || view! { <EmptyDay day/> }>
                <div class="columns two">
                    <div class="column"><Counted view/><Events view/></div>
                    <div class="column"><Map view/><Charts view/></div>
                </div>
            </Show>
            {end}
        </Page>
    }
    .into_any()
}

/// The days before and after that have events.
#[component]
fn Turn(view: Memo<DayView>) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let days = narrowed(move || view.with(|view| (view.before, view.after)));
    let link = move |day: Option<Date>, key: &'static str| match day {
        Some(day) => {
            view! { <a class="button quiet" href=page.to(Screen::Day(day)) data-key=key>{words.day_of_month(day)}</a> }
                .into_any()
        }
        None => view! { <span></span> }.into_any(),
    };
    view! { <nav class="turn" aria-label=words.turn()>{move || link(days.get().0, "p")}" "{move || link(days.get().1, "n")}</nav> }.into_any()
}

#[component]
fn Bar(day: Date, empty: Memo<bool>) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let main = move || {
        if empty.get() {
            view! { <a class="button main" href=page.to(Screen::NewCatch) data-key="c">{say().start.new_catch()}" "<kbd class="key">"C"</kbd></a> }.into_any()
        } else {
            let export = page.to(Screen::Export(Export::Day(day)));
            view! { <a class="button main" href=export data-key="e">{words.export()}" "<kbd class="key">"E"</kbd></a> }
                .into_any()
        }
    };
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Search(String::new()))>{words.search()}</a>
            {main}
        </div>
    }
    .into_any()
}

#[component]
fn Counted(view: Memo<DayView>) -> impl IntoView {
    let counts = narrowed(move || view.with(|view| view.tally));
    move || view! { <Tally counts=tally(counts.get())/> }
}

/// Counts in large figures; what is wrong stands there only when something is.
fn tally(counts: Counts) -> Vec<(&'static str, String, &'static str)> {
    let words = say().start;
    let number = |count| say().dates.number(count);
    let mut shown =
        vec![(words.events(), number(counts.events), ""), (words.containers(), number(counts.containers), "")];
    if counts.missing > 0 {
        shown.push((words.missing(), number(counts.missing), "caution-number"));
    }
    if counts.twice > 0 {
        shown.push((words.twice(), number(counts.twice), "fault-number"));
    }
    shown
}

#[component]
fn Events(view: Memo<DayView>) -> impl IntoView {
    let window = Window::new("in-order-list");
    let count = move || view.with(|view| view.events.len());
    let rows = move || view.with(|view| window.rows(&view.events));
    view! {
        <section class="part pin" aria-labelledby="in-order">
            <h2 class="unseen" id="in-order">{say().day.in_order()}</h2>
            {window.before(count)}
            <ol id="in-order-list" tabindex="-1">
                {move || rows().into_iter().map(|line| view! { <EventItem line ordered=true marked=true/> }).collect_view()}
            </ol>
            {window.after(count)}
        </section>
    }
    .into_any()
}

#[component]
fn Charts(view: Memo<DayView>) -> impl IntoView {
    let words = say().day;
    let methods = narrowed(move || view.with(|view| view.by_method.iter().map(by_method).collect::<Vec<_>>()));
    let hosts = narrowed(move || view.with(|view| view.by_host.iter().map(by_host).collect::<Vec<_>>()));
    let some = |name: &'static str, rows: Vec<BarRow>| (!rows.is_empty()).then(|| view! { <Bars name rows/> });
    let none = move || methods.with(Vec::is_empty) && hosts.with(Vec::is_empty);
    view! {
        <section class="part" aria-labelledby="counts" hidden=none>
            <h2 id="counts">{words.counts()}</h2>
            {move || some(words.by_method(), methods.get())}
            {move || some(words.by_host(), hosts.get())}
        </section>
    }
    .into_any()
}

fn by_method(bar: &Counted<Method>) -> BarRow {
    BarRow { words: method_words(&bar.of), latin: false, count: bar.count }
}

fn by_host(bar: &Counted<Option<String>>) -> BarRow {
    let words = bar.of.clone().unwrap_or_else(|| say().day.no_host().to_owned());
    BarRow { latin: bar.of.as_deref().is_some_and(looks_latin), words, count: bar.count }
}
