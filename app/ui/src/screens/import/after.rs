//! After an import: what waits for a person, and the way back.

use super::{Importing, Last};
use crate::context::{Context, say, use_page};
use crate::desk::how;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{PlateView, Sign, plate_words};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::conflict::{Conflict, ConflictView};
use logbook::exchange::{Counts, Imported};
use logbook::view::Plate;

/// How many of what waits are listed.
const SHOWN: usize = 30;

/// After an import or its undoing.
#[component]
pub fn After(importing: Importing, last: Last) -> impl IntoView {
    match last {
        Last::Done { imported, twice } => view! { <Done importing imported twice/> }.into_any(),
        Last::Undone => view! { <Undone importing/> }.into_any(),
    }
}

fn touched(counts: Counts) -> usize {
    counts.added + counts.changed + counts.deleted
}

#[component]
fn Done(importing: Importing, imported: Imported, twice: Vec<Plate>) -> impl IntoView {
    let words = say().import;
    let count = touched(imported.counts);
    let title = if count == 0 { words.done_nothing().to_owned() } else { words.done(count) };
    let counts = imported.counts;
    let (top, end) = how("imported", vec![words.how_2(), words.how_3()]);
    view! {
        <Page title=title.clone() bar=move || view! { <Bar importing counts=Some(counts)/> }>
            <header class="head"><h1>{title.clone()}</h1><p class="note">{words.done_from(&imported.person)}</p></header>
            {top}
            <div class="columns two">
                <div class="column">
                    <p class="mark sure" role="status">{Sign::Tick.draw()}<span>{words.done_says()}</span></p>
                    <Waits conflicts=imported.conflicts.clone() twice/>
                </div>
                <div class="column">
                    <section class="part stack">
                        <h2>{words.undo_head()}</h2>
                        <p>{words.undo_says()}</p>
                        <p class="note">{words.undo_where()}</p>
                    </section>
                    {end}
                </div>
            </div>
        </Page>
    }
    .into_any()
}

#[component]
fn Undone(importing: Importing) -> impl IntoView {
    let words = say().import;
    view! {
        <Page title=words.undone() bar=move || view! { <Bar importing counts=None/> }>
            <header class="head"><h1>{words.undone()}</h1></header>
            <p class="mark sure" role="status">{Sign::Tick.draw()}<span>{words.undone_says()}</span></p>
        </Page>
    }
    .into_any()
}

#[component]
fn Bar(importing: Importing, counts: Option<Counts>) -> impl IntoView {
    let page = use_page();
    let words = say().import;
    let strip = counts.map(|counts| view! {
        <div class="undo"><span>{words.undo_strip(counts.added, counts.changed)}</span>
            <button class="button quiet" type="button" data-key="u" on:click=move |_| importing.undo(page)>{say().frame.undo()}</button></div>
    });
    view! {
        {strip}
        <div class="bar">
            <button class="button quiet" type="button" on:click=move |_| importing.pick(page)>{words.another()}</button>
            <a class="button main" href=page.to(Screen::Days)>{words.go_on()}</a>
        </div>
    }
    .into_any()
}

/// Conflicts that are not settled yet, and numbers that stand twice.
#[component]
fn Waits(conflicts: Vec<(logbook::Id, String)>, twice: Vec<Plate>) -> impl IntoView {
    let page = use_page();
    let words = say().import;
    let conflicts = StoredValue::new(conflicts);
    let waiting = narrowed(move || conflicts.with_value(|conflicts| unsettled(page, conflicts)));
    let none = twice.is_empty();
    let doubled = twice.into_iter().take(SHOWN).map(|plate| {
        let bench = page.to(Screen::Bench(plate_words(&plate)));
        view! {
            <li class="container-line"><span class="what"><PlateView plate/><br/>
                <span class="mark fault">{Sign::Twice.draw()}<span>{say().event.twice()}</span></span></span>
                <a class="button" href=bench>{words.compare()}</a></li>
        }
    });
    view! {
        <section class="part">
            <h2>{words.waits()}</h2>
            <ul>{move || waiting.get().into_iter().map(conflict).collect_view()}{doubled.collect_view()}</ul>
            <p class="note">{move || if none && waiting.with(Vec::is_empty) { words.nothing_waits() } else { words.can_wait() }}</p>
        </section>
    }
    .into_any()
}

fn unsettled(page: Context, conflicts: &[(logbook::Id, String)]) -> Vec<ConflictView> {
    let at = |(record, field): &(logbook::Id, String)| Conflict { record: *record, field: field.clone() };
    page.logbook
        .with(|logbook| conflicts.iter().take(SHOWN).filter_map(|conflict| logbook.conflict(&at(conflict))).collect())
}

fn conflict(view: ConflictView) -> AnyView {
    let page = use_page();
    let title = crate::screens::conflict_title(&view);
    let when =
        view.event.as_ref().and_then(|line| Some(format!("{} {}, ", say().dates.roman_short(line.day?), line.clock)));
    view! {
        <li class="container-line">
            <span class="what"><span class="ink">{title}</span><br/><span class="note"><span class="measure">{when}</span>{say().event.field(&view.field)}</span></span>
            <a class="button" href=page.to(Screen::Conflict(view.at.record))>{say().import.pick_value()}</a>
        </li>
    }
    .into_any()
}
