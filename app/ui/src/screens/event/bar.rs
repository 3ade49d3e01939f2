use super::{Shown, of};
use crate::context::{say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::MissingList;
use crate::route::{Group, Screen};
use leptos::prelude::*;
use logbook::Id;
use logbook::view::{EventView, Mark};

/// What is missing, and the command that mends the first of it; while a group is open, the command that keeps it.
#[component]
pub fn Bar(id: Id, group: Option<Group>, event: Shown) -> impl IntoView {
    match group {
        Some(group) => view! { <Keep id group/> }.into_any(),
        None => view! { <Mend id event/> }.into_any(),
    }
}

#[component]
fn Keep(id: Id, group: Group) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let name = match group {
        Group::Host => words.keep_host(),
        Group::Where => words.keep_where(),
        Group::When => words.keep_when(),
        Group::Whom => words.keep_whom(),
    };
    let leave = move |_| crate::draft::forget(page, &format!("event/{id}"));
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Event(id, None)) on:click=leave>{words.leave()}</a>
            <button class="button main" type="submit" form="change" data-key="ctrl+enter">{name}" "<kbd class="key">"Ctrl ⏎"</kbd></button>
        </div>
    }
    .into_any()
}

#[component]
fn Mend(id: Id, event: Shown) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let marks = of(event, |event: &EventView| event.line.marks.clone());
    let items = narrowed(move || {
        marks.with(|marks| marks.iter().map(explain::mark).map(|(sign, words)| (sign, words, "")).collect::<Vec<_>>())
    });
    let settles = move || marks.with(|marks| marks.iter().any(|mark| matches!(mark, Mark::Conflicts(_))));
    let conflicts = move || {
        settles().then(|| {
            view! { <a class="button main" href=page.to(Screen::Conflict(id)) data-key="m">{words.settle()}" "<kbd class="key">"M"</kbd></a> }
        })
    };
    let first =
        move || marks.with(|marks| marks.iter().find_map(|mark| Some((mark_screen(id, mark)?, explain::mend(mark)?))));
    let mend = move || {
        first().filter(|_| !settles()).map(|(screen, name)| view! { <a class="button main" href=page.to(screen) data-key="m">{name}" "<kbd class="key">"M"</kbd></a> })
    };
    let bench = move || {
        let number = event.with(|event| {
            event.as_ref().and_then(|event| {
                event
                    .containers
                    .iter()
                    .find(|container| !container.plate.run.is_empty())
                    .map(|container| crate::parts::plate_words(&container.plate))
            })
        });
        let class = if settles() || first().is_some() { "button quiet" } else { "button main" };
        number.map(|number| view! { <a class=class href=page.to(Screen::Bench(number))>{words.bench()}</a> })
    };
    view! { <div class="bar"><MissingList class="says" name=say().frame.missing() items/>{bench}{conflicts}{mend}</div> }.into_any()
}

/// The screen on which a mark is mended.
fn mark_screen(id: Id, mark: &Mark) -> Option<Screen> {
    let group = match mark {
        Mark::Site | Mark::Coordinates | Mark::Radius(..) | Mark::Elevation => Group::Where,
        Mark::Caught | Mark::Method => Group::When,
        Mark::Host => Group::Host,
        Mark::Collector => Group::Whom,
        Mark::Catch => return Some(Screen::EventContainer(id)),
        Mark::Open => return Some(Screen::Open(id)),
        Mark::Unnumbered(_) | Mark::Nothing | Mark::Twice(_) | Mark::Conflicts(_) => return None,
    };
    Some(Screen::Event(id, Some(group)))
}
