//! All that is known of the catch in the hand.

use crate::context::{say, use_page};
use crate::desk::{caught_words, contents_words, fluid_words};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{MissingList, Row, plate_words};
use crate::route::Screen;
use crate::screens::{HostWords, event_line::method_words};
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::OnBench;
use logbook::view::{ContainerView, Facts};

/// The event and the container, for reading.
#[component]
pub fn FactsOf(id: Id) -> impl IntoView {
    let page = use_page();
    let on_bench = narrowed(move || page.logbook.with(|logbook| logbook.bench_container(id)));
    move || on_bench.get().map(facts)
}

fn facts(on_bench: OnBench) -> AnyView {
    let page = use_page();
    let words = say().bench;
    let container = on_bench.container;
    let number = plate_words(&container.plate);
    let Some(event) = on_bench.event else {
        return view! { <p class="part note">{words.event_gone()}</p> }.into_any();
    };
    let marks: Vec<_> = event.line.marks.iter().map(explain::mark).map(|(sign, words)| (sign, words, "")).collect();
    let rows = rows(&container, &event.facts);
    view! {
        <section class="part still-rows pin" aria-labelledby="event">
            <h2 class="unseen" id="event">{words.event_of(&number)}</h2>
            {rows}
        </section>
        <MissingList items=Signal::stored(marks)/>
        <p><a class="button quiet" href=page.to(Screen::Event(event.line.id, None)) data-key="e">{words.opens_event()}" "<kbd class="key">"E"</kbd></a></p>
    }
    .into_any()
}

fn rows(container: &ContainerView, facts: &Facts) -> AnyView {
    let words = say().bench;
    let (name, around) = (site(facts), around(facts));
    let place = view! { <Row name=words.site()><p class="ink">{name}</p><p class="note">{around}</p></Row> };
    let caught = facts.from.map(|from| caught(container, caught_words(Some(from), facts.until, facts.night)));
    let caught = caught.map(|said| view! { <Row name=words.caught() class="measure">{said}</Row> });
    let host = container.host.clone().or(facts.host.clone());
    let host = host.map(|host| view! { <Row name=words.host()><p class="ink"><HostWords host/></p></Row> });
    let people = container.collector.clone().unwrap_or_else(|| facts.collectors.join(", "));
    view! {
        {place}
        {position(facts)}
        {caught}
        {line(words.method(), facts.method.as_ref().map(method_words).unwrap_or_default())}
        {host}
        {line(words.collector(), people)}
        {line(words.contents(), contents_words(&container.contents))}
        {line(words.kept(), container.kept.as_ref().map(fluid_words).unwrap_or_default())}
        {line(words.notes(), notes(container, facts))}
    }
    .into_any()
}

fn site(facts: &Facts) -> String {
    if facts.site_name.is_empty() { say().event.untitled().to_owned() } else { facts.site_name.clone() }
}

fn around(facts: &Facts) -> String {
    let parts = [&facts.country, &facts.province, &facts.locality, &facts.offset];
    parts.into_iter().filter(|part| !part.is_empty()).cloned().collect::<Vec<_>>().join(", ")
}

fn position(facts: &Facts) -> Option<AnyView> {
    let (latitude, longitude) = facts.coordinates.clone()?;
    let radius = facts.radius.as_ref().map(|metres| format!("±{metres} m"));
    let elevation = facts.elevation.as_ref().map(|metres| format!("{} m", metres.trim().trim_end_matches([' ', 'm'])));
    let below = [radius, elevation].into_iter().flatten().collect::<Vec<_>>().join(", ");
    Some(
        view! { <Row name=say().bench.position() class="measure"><span class="nowrap">{latitude}</span>" "<span class="nowrap">{longitude}</span><br/>{below}</Row> }
            .into_any(),
    )
}

/// Its own hour, where it differs from the event's.
fn caught(container: &ContainerView, event: String) -> String {
    container.clock.as_ref().map_or(event.clone(), |clock| format!("{event}; {clock}"))
}

fn notes(container: &ContainerView, facts: &Facts) -> String {
    [&container.notes, &facts.notes]
        .into_iter()
        .filter(|notes| !notes.is_empty())
        .cloned()
        .collect::<Vec<_>>()
        .join("; ")
}

fn line(name: &'static str, said: String) -> Option<AnyView> {
    (!said.is_empty()).then(|| view! { <Row name=name class="ink">{said}</Row> }.into_any())
}
