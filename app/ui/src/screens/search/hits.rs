//! What was found, kind by kind.

use super::marked::marked;
use crate::context::{say, use_page};
use crate::desk::{Window, contents_words};
use crate::explain;
use crate::parts::PlateView;
use crate::route::Screen;
use crate::screens::MethodWords;
use leptos::prelude::*;
use logbook::search::{ContainerHit, Found, PersonHit, Show as Kinds, SiteHit};
use logbook::view::{EventLine, Mark};

/// All that was found, a few of each kind or many of one.
#[component]
pub fn Hits(found: Found, kinds: RwSignal<Kinds>) -> impl IntoView {
    let words: Vec<String> = found.text.split_whitespace().map(str::to_owned).collect();
    let say_it = say().search;
    let more = |count: usize, kind: Kinds, says: fn(usize) -> String| {
        let alone = kinds.get_untracked() == kind;
        (count > 0).then(|| if alone {
            view! { <p class="note">{say_it.not_shown(count)}</p> }.into_any()
        } else {
            view! { <button class="button quiet" type="button" on:click=move |_| kinds.set(kind)>{says(count)}</button> }.into_any()
        })
    };
    let (events, containers) = (found.events, found.containers);
    let (sites, persons) = (found.sites, found.persons);
    view! {
        <div class="columns two">
            <div class="column">
                <section class="part" hidden=persons.shown.is_empty()>
                    <h2>{say_it.count_persons(persons.count)}</h2>
                    <ul>{persons.shown.iter().map(|hit| person(hit, &words)).collect_view()}</ul>
                    {more(persons.more(), Kinds::Persons, |count| say().search.more_persons(count))}
                </section>
                <section class="part" hidden=events.shown.is_empty()>
                    <h2>{say_it.count_events(events.count)}</h2>
                    <Events lines=events.shown.clone() words=words.clone()/>
                    {more(events.more(), Kinds::Events, |count| say().search.more_events(count))}
                </section>
            </div>
            <div class="column">
                <section class="part" hidden=containers.shown.is_empty()>
                    <h2>{say_it.count_containers(containers.count)}</h2>
                    <Containers hits=containers.shown.clone() words=words.clone()/>
                    {more(containers.more(), Kinds::Containers, |count| say().search.more_containers(count))}
                </section>
                <section class="part" hidden=sites.shown.is_empty()>
                    <h2>{say_it.count_sites(sites.count)}</h2>
                    <Sites hits=sites.shown.clone() words=words.clone()/>
                    {more(sites.more(), Kinds::Sites, |count| say().search.more_sites(count))}
                </section>
            </div>
        </div>
    }
    .into_any()
}

#[component]
fn Events(lines: Vec<EventLine>, words: Vec<String>) -> impl IntoView {
    let window = Window::new("found-events");
    let count = lines.len();
    let lines = StoredValue::new(lines);
    let rows =
        move || lines.with_value(|lines| window.rows(lines)).into_iter().map(|line| event(line, &words)).collect_view();
    view! {
        {window.before(move || count)}
        <ol class="pin" id="found-events" tabindex="-1">{rows}</ol>
        {window.after(move || count)}
    }
    .into_any()
}

fn event(line: EventLine, words: &[String]) -> AnyView {
    let page = use_page();
    let screen = if line.marks.contains(&Mark::Open) { Screen::Open(line.id) } else { Screen::Event(line.id, None) };
    let site = if line.site.is_empty() { say().event.untitled().to_owned() } else { line.site.clone() };
    let (day, year) = line.day.map(|day| (say().dates.roman_short(day), chrono::Datelike::year(&day))).unzip();
    let people = line.collectors.join(", ");
    let people =
        (!people.is_empty()).then(|| view! { <p class="note">{marked(&say().search.with(&people), words)}</p> });
    view! {
        <li class="event row">
            <div class="row-name">{line.clock.clone()}<span class="order">{day}</span><span class="order">{year}</span></div>
            <div class="row-value">
                <div class="event-head"><h3><a href=page.to(screen)>{marked(&site, words)}</a></h3><p class="numbers">{explain::numbers(&line)}</p></div>
                <p><MethodWords method=line.method.clone() host=line.host.clone()/></p>
                {people}
            </div>
        </li>
    }
    .into_any()
}

#[component]
fn Containers(hits: Vec<ContainerHit>, words: Vec<String>) -> impl IntoView {
    let window = Window::new("found-containers");
    let count = hits.len();
    let hits = StoredValue::new(hits);
    let rows =
        move || hits.with_value(|hits| window.rows(hits)).into_iter().map(|hit| container(hit, &words)).collect_view();
    view! {
        {window.before(move || count)}
        <ul id="found-containers" tabindex="-1">{rows}</ul>
        {window.after(move || count)}
    }
    .into_any()
}

fn container(hit: ContainerHit, words: &[String]) -> AnyView {
    let page = use_page();
    let contents = contents_words(&hit.container.contents);
    let contents = if contents.is_empty() { say().desk.no_contents().to_owned() } else { contents };
    let day = hit.day.map(|day| say().dates.roman(day));
    let note = [hit.container.collector.clone(), Some(hit.site.clone()), day];
    let note: Vec<String> = note.into_iter().flatten().filter(|part| !part.is_empty()).collect();
    let bench = page.to(Screen::Bench(hit.container.id.to_string()));
    view! {
        <li class="container-line whole">
            <PlateView plate=hit.container.plate/>
            <span class="what"><a class="ink" href=bench>{marked(&contents, words)}</a><br/><span class="note">{marked(&note.join(", "), words)}</span></span>
        </li>
    }
    .into_any()
}

#[component]
fn Sites(hits: Vec<SiteHit>, words: Vec<String>) -> impl IntoView {
    let window = Window::new("found-sites");
    let count = hits.len();
    let hits = StoredValue::new(hits);
    let rows = move || hits.with_value(|hits| window.rows(hits)).iter().map(|hit| site(hit, &words)).collect_view();
    view! {
        {window.before(move || count)}
        <ul id="found-sites" tabindex="-1">{rows}</ul>
        {window.after(move || count)}
    }
    .into_any()
}

/// A site that was found.
pub fn site(hit: &SiteHit, words: &[String]) -> AnyView {
    let page = use_page();
    let note = if hit.words.is_empty() { String::new() } else { format!("{}; ", hit.words.join(", ")) };
    view! {
        <li class="container-line whole"><span class="what">
            <a class="ink" href=page.to(Screen::Site(Some(hit.id)))>{marked(&hit.name, words)}</a><br/>
            <span class="note">{marked(&note, words)}{say().search.at_events(hit.events)}</span>
        </span></li>
    }
    .into_any()
}

/// A person who was found.
pub fn person(hit: &PersonHit, words: &[String]) -> AnyView {
    let page = use_page();
    let spelt =
        (!hit.spellings.is_empty()).then(|| format!("{}; ", say().search.also_written(&hit.spellings.join(", "))));
    let events = page.to(Screen::Search(hit.name.clone()));
    view! {
        <li class="container-line whole"><span class="what">
            <a class="ink" href=events>{marked(&hit.name, words)}</a><br/>
            <span class="note">{marked(&spelt.unwrap_or_default(), words)}{say().search.at_events(hit.events)}</span>
        </span></li>
    }
    .into_any()
}
