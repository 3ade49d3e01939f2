//! What is to be printed, row by row, with the labels in true size.

use super::{Desk, over_lines};
use crate::context::{say, use_page};
use crate::desk::{ProofView, Window, contents_words, kind_name};
use crate::narrow::narrowed;
use crate::parts::{Check, PlateView, Stepper, plate_words};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::labels::{LabelKind, QueueRow, Totals, Wanted};

/// The queue.
#[component]
pub fn QueueList(desk: Desk) -> impl IntoView {
    let words = say().labels;
    let window = Window::new("queue-rows");
    let count = move || desk.view.with(|view| view.rows.len());
    let ids =
        narrowed(move || desk.view.with(|view| window.rows(&view.rows.iter().map(|row| row.of).collect::<Vec<Id>>())));
    view! {
        <section class="part" aria-labelledby="queue">
            <div class="part-head"><h2 id="queue">{words.queue()}</h2><span class="note">{words.queue_note()}</span></div>
            {window.before(count)}
            <ul class="queue" id="queue-rows" tabindex="-1">
                <For each=move || ids.get() key=|id| *id children=move |id| view! { <Row desk id/> }/>
            </ul>
            {window.after(count)}
        </section>
    }
    .into_any()
}

#[component]
fn Row(desk: Desk, id: Id) -> impl IntoView {
    let page = use_page();
    let row = narrowed(move || desk.view.with(|view| view.rows.iter().find(|row| row.of == id).cloned()));
    let open = RwSignal::new(false);
    let shown = move || {
        row.get().map(|row| {
            let ticked = Signal::stored(row.chosen);
            let change = Callback::new(move |chosen| desk.change(page, |queue| queue.choose(id, chosen)));
            let (choose, head) = (say().labels.choose(&name(&row)), head(&row));
            let count = say().labels.count(row.wanted[0].copies, row.wanted[1].copies);
            view! {
                <div class="top">
                    <Check ticked change><span class="unseen">{choose}</span>{head}</Check>
                    <span class="count">{count}</span>
                </div>
                <div class="below"><span class="say">{says(&row)}</span><Lives desk id/></div>
                {before(row.printed)}
            }
        })
    };
    view! {
        <li>
            {shown}
            <Faults desk id/>
            <button class="button quiet" type="button" aria-expanded=move || open.get().to_string() hidden=open on:click=move |_| open.set(true)>{say().labels.copies()}</button>
            {move || open.get().then(|| view! { <Change desk id row/> })}
        </li>
    }
    .into_any()
}

fn head(row: &QueueRow) -> AnyView {
    match &row.plate {
        Some(plate) => view! { <PlateView plate=plate.clone()/> }.into_any(),
        None => view! { <span class="ink">{name(row)}</span> }.into_any(),
    }
}

fn name(row: &QueueRow) -> String {
    let site = row.event.as_ref().map(|line| line.site.clone()).unwrap_or_default();
    row.plate.as_ref().map(plate_words).filter(|number| !number.is_empty()).unwrap_or(site)
}

fn says(row: &QueueRow) -> String {
    let contents = contents_words(&row.contents);
    if contents.is_empty() { row.event.as_ref().map(|line| line.site.clone()).unwrap_or_default() } else { contents }
}

fn before(printed: Totals) -> Option<AnyView> {
    (printed.labels() > 0)
        .then(|| view! { <p class="note">{say().labels.printed(printed.collection, printed.host)}</p> }.into_any())
}

/// The places of a row's orders in the list of all orders.
fn places(desk: Desk, id: Id) -> Vec<(usize, LabelKind)> {
    desk.orders.with(|orders| {
        orders.of.iter().enumerate().filter(|(_, (of, _))| *of == id).map(|(at, (_, kind))| (at, *kind)).collect()
    })
}

/// The labels in true size.
#[component]
fn Lives(desk: Desk, id: Id) -> impl IntoView {
    let page = use_page();
    let proofs = narrowed(move || {
        places(desk, id).into_iter().filter_map(|(at, kind)| Some((kind, desk.proof(at)?))).collect::<Vec<_>>()
    });
    let size = move || page.logbook.with(|logbook| logbook.rules().format());
    let life =
        move |(kind, proof)| view! { <ProofView proof size=(size().width_mm, size().height_mm) kind life=true/> };
    view! { <span class="lives">{move || proofs.get().into_iter().map(life).collect_view()}</span> }.into_any()
}

/// What does not fit.
#[component]
fn Faults(desk: Desk, id: Id) -> impl IntoView {
    let page = use_page();
    let over = narrowed(move || {
        let proofs = places(desk, id).into_iter().filter_map(|(at, _)| desk.proof(at));
        proofs.filter(|proof| !proof.over.is_empty()).map(|proof| (proof.over, proof.type_pt)).collect::<Vec<_>>()
    });
    move || {
        (!over.with(Vec::is_empty)).then(|| view! {
        {over.get().into_iter().map(|(over, size)| over_lines(&over, size)).collect_view()}
        <div class="commands"><a class="button" href=page.to(Screen::Bench(id.to_string()))>{say().labels.shorten()}</a></div>
    })
    }
}

/// How many of each, the way to the wording, and off the sheet.
#[component]
fn Change(desk: Desk, id: Id, row: Memo<Option<QueueRow>>) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let wanted = move |at: usize| row.with(|row| row.as_ref().map(|row| row.wanted[at].clone()));
    let stepper = move |at: usize, kind: LabelKind| {
        let value = Signal::derive(move || wanted(at).map(|wanted| wanted.copies.to_string()).unwrap_or_default());
        let change = Callback::new(move |typed: String| {
            desk.change(page, |queue| queue.set_copies(id, kind, typed.trim().parse().unwrap_or(0)))
        });
        let says = move || wanted(at).is_none_or(|wanted: Wanted| wanted.lines.is_empty());
        view! { <div class="proof-line" hidden=says><span>{kind_name(kind)}</span><Stepper name=kind_name(kind) value change/></div> }
    };
    let container = move || row.with(|row| row.as_ref().is_some_and(|row| row.plate.is_some()));
    view! {
        {stepper(0, LabelKind::Collection)}
        {stepper(1, LabelKind::Host)}
        <div class="commands">
            {move || container().then(|| view! { <a class="button quiet" href=page.to(Screen::Bench(id.to_string()))>{words.wording()}</a> })}
            <button class="button quiet" type="button" on:click=move |_| desk.change(page, |queue| queue.take_out(id))>{words.take_out()}</button>
        </div>
    }
    .into_any()
}
