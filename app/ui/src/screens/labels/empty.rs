//! No label waits; and what of the last days has none yet.

use super::Desk;
use crate::context::{Context, say, use_page};
use crate::narrow::narrowed;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::moment::Day;

/// How many of the newest days are looked through.
const DAYS: usize = 14;

/// Nothing is to be printed.
#[component]
pub fn Empty() -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M14 38h92v44H14z"/><path class="faint" d="M26 50h62M26 70h44"/><circle class="solid" cx="60" cy="60" r="2.5"/>
            </svg>
            <p class="ink">{words.empty()}</p>
            <p>{words.empty_says()}</p>
        </section>
        <div class="commands"><a class="button grow" href=page.to(Screen::Bench(String::new()))>{words.to_bench()}</a></div>
    }
    .into_any()
}

/// The newest days of which something was never printed and does not wait yet.
#[component]
pub fn NotPrinted(desk: Desk) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let days = narrowed(move || unprinted(page, desk));
    let day = move |(day, ids): (Day, Vec<Id>)| {
        let name = words.add_day(day, ids.len());
        let add = move |_| {
            let put = |queue: &mut _| {
                page.logbook.with_untracked(|logbook| ids.iter().for_each(|id| logbook.queue_in(queue, *id)))
            };
            desk.change(page, put);
        };
        view! { <button class="button" type="button" on:click=add>{name}</button> }
    };
    view! {
        <section class="part" aria-labelledby="not-printed" hidden=move || days.with(Vec::is_empty)>
            <h2 id="not-printed">{words.add()}</h2>
            <div class="commands">{move || days.get().into_iter().map(day).collect_view()}</div>
        </section>
    }
    .into_any()
}

fn unprinted(page: Context, desk: Desk) -> Vec<(Day, Vec<Id>)> {
    page.logbook.with(|logbook| {
        let days = logbook.days().into_iter().rev().take(DAYS);
        let days = days.map(|(day, _)| {
            let waits = |id: &Id| desk.queue.with(|queue| queue.of(*id).is_some());
            (day, logbook.unlabelled(day).into_iter().filter(|id| !waits(id)).collect::<Vec<_>>())
        });
        days.filter(|(_, ids)| !ids.is_empty()).collect()
    })
}
