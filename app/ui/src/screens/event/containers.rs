use super::{Shown, of};
use crate::context::{say, use_page};
use crate::parts::{Mark, PlateView, Sign};
use crate::route::Screen;
use crate::screens::HostWords;
use crate::screens::container::{ContentWords, count_words};
use leptos::prelude::*;
use logbook::Id;
use logbook::view::{ContainerView, EventView, Fluid};

/// How many containers are shown at once.
const STEP: usize = 60;

/// The containers of an event, each leading to its form.
#[component]
pub fn Containers(id: Id, event: Shown) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let containers = of(event, |event: &EventView| event.containers.clone());
    let shown = RwSignal::new(STEP);
    let left = move || containers.with(Vec::len).saturating_sub(shown.get());
    let lines = move || {
        containers.get().into_iter().take(shown.get()).map(|container| view! { <Line container/> }).collect_view()
    };
    let nothing = of(event, |event: &EventView| event.line.marks.contains(&logbook::view::Mark::Nothing));
    let none = move || if nothing.get() { say().catch.nothing_says() } else { words.no_containers() };
    view! {
        <section class="part" aria-label=words.containers()>
            <p hidden=move || !containers.with(Vec::is_empty)>{none}</p>
            <ul>{lines}</ul>
            <button class="button quiet" type="button" hidden=move || left() == 0 on:click=move |_| shown.update(|shown| *shown += STEP)>
                {move || say().frame.more_rows(left())}
            </button>
            <p class="note">{move || containers.with(|containers| fluids(containers))}</p>
            <div class="commands apart">
                <a class="button quiet" href=page.to(Screen::EventContainer(id)) data-key="v">{words.add_container()}" "<kbd class="key">"V"</kbd></a>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn Line(container: ContainerView) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let notes = [
        Some(count_words(&container.contents)).filter(|counts| !counts.is_empty()),
        container.alive.then(|| words.alive().to_owned()),
        container.released.then(|| words.released().to_owned()),
        container.clock.clone(),
        container.collector.clone(),
        container.emptied.as_ref().map(|day| words.emptied(day)),
    ];
    let notes: Vec<String> = notes.into_iter().flatten().collect();
    let link = |(relation, plate): (String, logbook::view::Plate)| view! { <br/><span class="note">{say().codes.link(&relation)}" "{plate.prefix}{plate.run}</span> };
    view! {
        <li class="container-line whole">
            <PlateView plate=container.plate.clone()/>
            <span class="what">
                <a class="ink" href=page.to(Screen::Container(container.id))><ContentWords contents=container.contents.clone()/></a>
                <br/><span class="note">{notes.join(", ")}</span>
                {container.twice.then(|| view! { <br/><Mark sign=Sign::Twice words=words.twice()/> })}
                {container.host.clone().map(|host| view! { <br/><span class="note">{words.own_host()}" "<HostWords host/></span> })}
                {container.links.into_iter().map(link).collect_view()}
            </span>
        </li>
    }
    .into_any()
}

/// The fluids in a sentence: what all share, else each with the numbers it holds for.
fn fluids(containers: &[ContainerView]) -> String {
    let killed = each(containers, |container| container.killed.as_ref())
        .into_iter()
        .map(|words| say().container.killed_with(&words));
    let kept =
        each(containers, |container| container.kept.as_ref()).into_iter().map(|words| say().container.kept_in(&words));
    killed.chain(kept).collect::<Vec<_>>().join(" ")
}

fn each(containers: &[ContainerView], of: impl Fn(&ContainerView) -> Option<&Fluid>) -> Vec<String> {
    let mut kinds: Vec<(String, Vec<&str>)> = Vec::new();
    for container in containers {
        let Some(fluid) = of(container) else { continue };
        let words =
            if fluid.code.is_empty() { fluid.text.clone() } else { say().codes.fluid(&fluid.code, &fluid.strength) };
        match kinds.iter_mut().find(|(known, _)| *known == words) {
            Some((_, runs)) => runs.push(&container.plate.run),
            None => kinds.push((words, vec![&container.plate.run])),
        }
    }
    let all = kinds.len() == 1;
    kinds
        .into_iter()
        .map(|(words, runs)| if all { words } else { say().container.fluid_of(&words, &runs.join(", ")) })
        .collect()
}
