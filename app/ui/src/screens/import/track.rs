//! A recorded track: which events without a position it places, and how surely, before anything is written.

use super::{Importing, Stage};
use crate::context::{say, use_page};
use crate::desk::NotStored;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{Check, Message, WithUnit};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::Id;
use logbook::track::{Read, RestsOn, TrackOffer};
use ports::store::StoreFault;
use std::collections::BTreeMap;
use std::sync::Arc;

/// How many offers are shown at most.
const SHOWN: usize = 200;

/// What a track gives.
#[component]
pub fn TrackView(importing: Importing) -> impl IntoView {
    let read =
        importing.stage.with_untracked(|stage| if let Stage::Track(read) = stage { Some(read.clone()) } else { None });
    read.map(|read| view! { <Offered importing read/> })
}

#[component]
fn Offered(importing: Importing, read: Arc<Read>) -> impl IntoView {
    let page = use_page();
    let words = say().import;
    let ahead = RwSignal::new("0".to_owned());
    let chosen = RwSignal::new(BTreeMap::<Id, bool>::new());
    let kept = StoredValue::new_local(read.clone());
    let offers = narrowed(move || {
        let ahead_s = ahead_s(&ahead.get());
        kept.with_value(|read| page.logbook.with(|logbook| logbook.track_offers(&read.track, ahead_s)))
    });
    let taken = narrowed(move || {
        let ticked = |offer: &&TrackOffer| ticked(&chosen.get(), offer);
        offers.with(|offers| offers.iter().filter(ticked).cloned().collect::<Vec<_>>())
    });
    let none = narrowed(move || offers.with(Vec::is_empty));
    let drawn = RwSignal::new(true);
    let to_keep = move || {
        let ahead_s = ahead_s(&ahead.get());
        kept.with_value(|read| read.to_keep(ahead_s)).filter(|_| drawn.get())
    };
    let is_way = read.is_way();
    let keeps = move || is_way && drawn.get();
    let fault = RwSignal::new(None::<StoreFault>);
    let bar = move || {
        let take = move |_| {
            let deed = page.logbook.with_untracked(|logbook| taken.with_untracked(|taken| logbook.take_track(taken)));
            let to_keep = untrack(to_keep);
            fault.set(None);
            page.save(deed, move |_| {
                spawn_local(async move {
                    let kept = match &to_keep {
                        Some(track) => page.driver().keep_track(track).await,
                        None => Ok(()),
                    };
                    match kept {
                        Ok(()) => drop(importing.stage.try_set(Stage::Waiting)),
                        Err(why) => drop(fault.try_set(Some(why))),
                    }
                });
            });
        };
        view! {
            <div class="bar">
                <button class="button quiet" type="button" on:click=move |_| importing.stage.set(Stage::Waiting)>{words.refuse()}</button>
                <button class="button main" type="button" data-key="ctrl+enter" hidden=move || taken.with(Vec::is_empty) && !keeps() on:click=take>
                    {move || words.track_take(taken.with(Vec::len), keeps())}" "<kbd class="key">"Ctrl ⏎"</kbd>
                </button>
            </div>
        }
    };
    let rows = move || offers.get().into_iter().take(SHOWN).map(|offer| view! { <Offer chosen offer/> }).collect_view();
    view! {
        <Page title=words.track_title() form=true bar>
            <header class="head"><h1>{words.track_title()}</h1><p class="note">{words.nothing_yet()}</p></header>
            <FileSays read/>
            <section class="part">
                <h2><label for="ahead">{words.track_ahead()}</label></h2>
                <WithUnit id="ahead" unit="s" class="fit" figure="few" value=ahead change=Callback::new(move |typed| ahead.set(typed))/>
                <p class="note">{words.track_ahead_says()}</p>
            </section>
            <section class="part" aria-labelledby="offers">
                <h2 id="offers">{move || words.track_offers(offers.with(Vec::len))}</h2>
                <p class="note" hidden=move || !none.get()>{words.track_none()}</p>
                <ul class="queue" hidden=none>{rows}</ul>
                <p class="note" hidden=none>{words.track_says()}</p>
            </section>
            <section class="part" hidden=!is_way>
                <Check ticked=drawn change=Callback::new(move |on| drawn.set(on))>{words.track_keep()}</Check>
                <p class="note">{words.track_keep_says()}</p>
            </section>
            <NotStored fault/>
        </Page>
    }
    .into_any()
}

/// By how many seconds the clock is ahead, as typed.
fn ahead_s(typed: &str) -> i64 {
    logbook::values::read_number(typed).unwrap_or_default() as i64
}

/// What was chosen by hand; else what stands on fixes before and after.
fn ticked(chosen: &BTreeMap<Id, bool>, offer: &TrackOffer) -> bool {
    chosen.get(&offer.id()).copied().unwrap_or_else(|| offer.sure())
}

#[component]
fn FileSays(read: Arc<Read>) -> impl IntoView {
    let words = say().import;
    let told = &read.told;
    let fault = told.faults.first().map(|(line, code)| {
        let says = words.track_faults(told.faults.len(), *line, code, told.ends_early);
        view! { <p class="note">{says}</p> }
    });
    let empty = read.track.is_empty().then(|| view! { <Message what=words.track_empty() safe=words.nothing_yet()/> });
    view! {
        <section class="part">
            <p class="ink">{told.names.join(", ")}</p>
            <p class="measure">{read.file.clone()}</p>
            <p class="note">{words.track_points(told.points, read.track.len())}</p>
            {fault}
            {empty}
        </section>
    }
    .into_any()
}

#[component]
fn Offer(chosen: RwSignal<BTreeMap<Id, bool>>, offer: TrackOffer) -> impl IntoView {
    let words = say().import;
    let id = offer.id();
    let sure = offer.sure();
    let on = Signal::derive(move || chosen.with(|chosen| chosen.get(&id).copied().unwrap_or(sure)));
    let change = Callback::new(move |on| {
        chosen.update(|chosen| {
            chosen.insert(id, on);
        });
    });
    let rests = match offer.rests_on {
        RestsOn::Between(minutes, metres) => words.track_between(minutes, metres),
        RestsOn::Before(minutes) => words.track_before(minutes),
        RestsOn::After(minutes) => words.track_after(minutes),
    };
    let faster = offer.faster.then(|| format!(", {}", words.track_faster()));
    let (latitude, longitude) = offer.written.coordinates.clone();
    let radius = offer.written.radius.map(|radius| format!(" ±{radius} m")).unwrap_or_default();
    let site = if offer.line.site.is_empty() { say().event.untitled().to_owned() } else { offer.line.site.clone() };
    view! {
        <li class="container-line">
            <Check ticked=on change><span class="what"><span class="measure">{offer.line.clock}</span>" "{site}<br/>
                <span class="measure">{latitude}" "{longitude}{radius}</span><br/><span class="note">{rests}{faster}</span></span></Check>
        </li>
    }
    .into_any()
}
