//! Two people's values for one field, side by side; one is picked, or neither yet.

use crate::context::{Context, say, use_page};
use crate::desk::{SaidView, caught_words, contents_words, how, said_is_measured};
use crate::explain;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{Mark, PlateView, Row, Sign};
use crate::route::{Group, Screen};
use crate::screens::event_line::method_words;
use leptos::prelude::*;
use logbook::Id;
use logbook::conflict::{Conflict as At, ConflictValue, ConflictView};
use logbook::moment::{Known, clock_text};

/// What a conflict is about: the site of its event, the number, the name.
pub fn conflict_title(view: &ConflictView) -> String {
    let site = view.event.as_ref().map(|line| line.site.clone()).filter(|site| !site.is_empty());
    site.or_else(|| Some(view.name.clone()).filter(|name| !name.is_empty()))
        .unwrap_or_else(|| say().event.untitled().to_owned())
}

/// The conflicts of a record, or of an event and its containers, one after the other.
#[component]
pub fn Conflict(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().conflict;
    let passed = RwSignal::new(Vec::<At>::new());
    let view = narrowed(move || current(page, id, &passed.get()));
    let title = narrowed(move || {
        view.with(|view| view.as_ref().map_or_else(|| words.none().to_owned(), |view| words.title(&view.field)))
    });
    let index = move || view.with(|view| view.as_ref().map(|view| words.index(view.index, view.of)));
    let (top, end) = how("conflict", vec![words.how_1(), words.how_2()]);
    view! {
        <Page title=title bar=move || view! { <Bar/> }>
            <header class="head"><h1>{title}</h1><p class="note">{index}</p></header>
            {top}
            {move || match view.get() {
                Some(view) => view! { <Settle view passed/> }.into_any(),
                None => view! { <p>{words.none_says()}</p> }.into_any(),
            }}
            {end}
        </Page>
    }
    .into_any()
}

/// The first that is not settled and was not put off: of this record, else of the whole book.
fn current(page: Context, id: Id, passed: &[At]) -> Option<ConflictView> {
    page.logbook.with(|logbook| {
        let own = logbook.conflicts_of(id);
        let all = logbook.conflicts();
        let at = own.into_iter().chain(all).find(|at| !passed.contains(at))?;
        logbook.conflict(&at)
    })
}

#[component]
fn Bar() -> impl IntoView {
    let page = use_page();
    view! { <div class="bar"><button class="button quiet" type="button" on:click=move |_| page.go_back()>{say().frame.back()}</button></div> }.into_any()
}

#[component]
fn Settle(view: ConflictView, passed: RwSignal<Vec<At>>) -> impl IntoView {
    let page = use_page();
    let words = say().conflict;
    let at = view.at.clone();
    let later = {
        let at = at.clone();
        move |_| passed.update(|passed| passed.push(at.clone()))
    };
    let write = write_another(&view)
        .map(|screen| view! { <a class="button grow" href=page.to(screen)>{words.write_another()}</a> });
    let values =
        view.values.iter().cloned().enumerate().map(|(index, value)| view! { <Value at=at.clone() index value/> });
    let agrees = view.rest_agrees.then(|| view! { <p><Mark sign=Sign::Tick words=words.agrees()/></p> });
    view! {
        <p>{words.says()}</p>
        <About view=view.clone()/>
        <section class="part pair" aria-label=words.values(view.values.len())>{values.collect_view()}</section>
        <section class="part stack" aria-label=words.other_ways()>
            <div class="commands">{write}<button class="button grow" type="button" on:click=later>{words.later()}</button></div>
            <p class="note">{words.clocks()}</p>
            {agrees}
        </section>
        <Evidence view/>
    }
    .into_any()
}

#[component]
fn About(view: ConflictView) -> impl IntoView {
    let day = view.event.as_ref().and_then(|line| Some(format!("{}, {}", say().dates.roman(line.day?), line.clock)));
    let numbers = view.event.as_ref().map(explain::numbers);
    let plate = view.plate.clone().map(|plate| view! { <p><PlateView plate/></p> });
    view! {
        <section class="part" aria-labelledby="about">
            <h2 class="unseen" id="about">{say().conflict.the_event()}</h2>
            {plate}
            <p class="ink">{conflict_title(&view)}</p>
            <p class="measure">{day.map(|day| day.trim_end_matches([',', ' ']).to_owned())}</p>
            <p class="measure">{numbers}</p>
        </section>
    }
    .into_any()
}

#[component]
fn Value(at: At, index: usize, value: ConflictValue) -> impl IntoView {
    let page = use_page();
    let words = say().conflict;
    let class = if said_is_measured(&value.said) { "value measure" } else { "value" };
    let who = if value.who.is_empty() { words.unnamed().to_owned() } else { value.who.clone() };
    let device = (!value.device.is_empty()).then(|| view! { <br/>{say().desk.on_device(&value.device)} });
    let when = Known::read(&value.when)
        .and_then(|known| Some(words.at(known.date()?, &known.clock.map(clock_text).unwrap_or_default())));
    let key = (index + 1).to_string();
    let dot = value.dot.clone();
    let keep = move |_| page.save(page.logbook.with_untracked(|logbook| logbook.pick(&at, &dot)), |_| {});
    view! {
        <div>
            <p class=class><SaidView said=value.said.clone()/></p>
            <p class="note">{who}{device}<br/><span class="measure">{when}</span></p>
            <button class="button" type="button" data-key=key.clone() on:click=keep>{words.keep()}" "<kbd class="key">{key.clone()}</kbd></button>
        </div>
    }
    .into_any()
}

/// Where another value can be written: the group of rows of the event, the container, the site.
fn write_another(view: &ConflictView) -> Option<Screen> {
    if view.plate.is_some() {
        return Some(Screen::Container(view.at.record));
    }
    let Some(line) = &view.event else {
        let site = view.kind.name() == "site";
        return site.then_some(Screen::Site(Some(view.at.record)));
    };
    let group = match view.field.as_str() {
        "host" => Group::Host,
        "place" | "site" | "elevation" | "height_above_ground" | "microhabitat" => Group::Where,
        "caught" | "method" => Group::When,
        "collector" | "weather" | "permit" | "notes" | "station" => Group::Whom,
        _ => return None,
    };
    Some(Screen::Event(line.id, Some(group)))
}

/// What else is known, to judge by.
#[component]
fn Evidence(view: ConflictView) -> impl IntoView {
    let words = say().bench;
    let facts = view.facts.clone().unwrap_or_default();
    let field = view.field.as_str();
    let row = |name: &'static str, said: String| {
        (!said.is_empty()).then(|| view! { <Row name=name class="ink">{said}</Row> })
    };
    let method = facts.method.as_ref().filter(|_| field != "method").map(method_words).unwrap_or_default();
    let caught = facts
        .from
        .filter(|_| field != "caught")
        .map(|from| caught_words(Some(from), facts.until, facts.night))
        .unwrap_or_default();
    let people = if field == "collector" { String::new() } else { facts.collectors.join(", ") };
    let contents = contents_words(&view.contents);
    let none = [&method, &caught, &people, &contents, &facts.notes].iter().all(|said| said.is_empty());
    view! {
        <section class="part pin still-rows" hidden=none>
            {row(words.method(), method)}
            {row(words.caught(), caught)}
            {row(words.collector(), people)}
            {row(words.contents(), contents)}
            {row(words.notes(), facts.notes.clone())}
        </section>
    }
    .into_any()
}
