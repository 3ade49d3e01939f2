//! What stands below the map: its buttons, what it shows in words, and the events of the spot that was tapped.

use super::hand::CLOSER;
use super::sheet::{Sheet, screen};
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::turn::Turn;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::map::{Frame, NAMED_MOST, in_the_middle, wants_coast};

/// Milliseconds of rest before a map that moved says what it shows.
const REST_MS: u32 = 400;

/// Closer, wider, all; and the way out of a map that was entered.
#[component]
pub fn Buttons(sheet: Sheet) -> impl IntoView {
    let words = say().day;
    let at_end = move |end: fn(&Frame) -> bool| sheet.frame().is_some_and(|frame| end(&frame));
    view! {
        <div class="commands">
            <button class="button" type="button" disabled=move || at_end(Frame::is_widest) on:click=move |_| sheet.zoom(1.0 / CLOSER)>
                <span aria-hidden="true">"−"</span>{words.map_wider()}
            </button>
            <button class="button" type="button" disabled=move || at_end(Frame::is_closest) on:click=move |_| sheet.zoom(CLOSER)>
                <span aria-hidden="true">"+"</span>{words.map_closer()}
            </button>
            <button class="button" type="button" disabled=move || sheet.is_all() on:click=move |_| sheet.all()>{words.map_all()}</button>
        </div>
    }
    .into_any()
}

/// What is shown, said once the map has come to rest; and how a hand moves it.
#[component]
pub fn Shows(sheet: Sheet) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let said = RwSignal::new(untrack(|| says(sheet)));
    let turn = Turn::new();
    Effect::new(move || {
        let (_, _) = (sheet.frame(), sheet.held.get());
        let mine = turn.next();
        spawn_local(async move {
            page.ports().time.wait(REST_MS).await;
            if turn.is(mine) {
                said.set(untrack(|| says(sheet)));
            }
        });
    });
    let coast = narrowed(move || sheet.frame().is_some_and(wants_coast));
    let hint = move || {
        if sheet.held.get() {
            let leave = move |_| sheet.held.set(false);
            view! { <p class="note held-note">{words.map_held()}" "<button class="button quiet" type="button" on:click=leave>{words.map_leave()}</button></p> }.into_any()
        } else {
            view! { <p class="note">{words.map_touch()}</p> }.into_any()
        }
    };
    view! {
        <p role="status" id="map-shows">{move || said.get()}</p>
        {move || coast.get().then(|| view! { <p class="note">{words.map_coast()}</p> })}
        {hint}
    }
    .into_any()
}

fn says(sheet: Sheet) -> String {
    let Some((map, frame)) = sheet.map().zip(sheet.frame()) else { return String::new() };
    let words = say().day;
    let shows = words.map_shows(frame.across_m(), map.shown(frame), map.events().len());
    let spots = sheet.spots();
    let near = in_the_middle(&spots, frame).filter(|_| sheet.held.get());
    let Some(named) = near.and_then(|near| map.whereabouts(&spots[near..=near]).pop()) else { return shows };
    format!("{shows} {}", words.map_middle(&named.site, &named.orders))
}

/// The events of the spot that was tapped, each a way to its screen.
#[component]
pub fn Chosen(sheet: Sheet) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let shown = move || {
        let map = sheet.map()?;
        let chosen = sheet.chosen.get();
        let events: Vec<_> = chosen.iter().filter_map(|at| map.events().get(*at)).take(NAMED_MOST).cloned().collect();
        let more = chosen.len().saturating_sub(events.len());
        let line = move |event: logbook::map::Placed| {
            let name = words.map_event(event.order, &event.site);
            view! { <li><a class="button quiet" href=page.to(screen(&event))>{name}</a></li> }
        };
        (!events.is_empty()).then(|| {
            view! {
                <p>{words.map_here(chosen.len())}</p>
                <ul class="map-here">{events.into_iter().map(line).collect_view()}</ul>
                {(more > 0).then(|| view! { <p class="note">{words.others(more)}</p> })}
            }
        })
    };
    view! { <div aria-live="polite">{shown}</div> }.into_any()
}
