//! What is to be printed, row by row, with the labels in true size.

use super::{Desk, over_lines};
use crate::context::{Context, say, use_page};
use crate::desk::{ProofView, Window, contents_words, kinds_name};
use crate::narrow::narrowed;
use crate::parts::{Check, PlateView, Stepper, plate_words};
use crate::route::Screen;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::Id;
use logbook::labels::{LabelKind, QueueRow, Shared, Totals, Wanted, Which};
use ports::press::{Over, Work, Worked};

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
            let count = counts(&row.wanted);
            view! {
                <div class="top">
                    <Check ticked change><span class="unseen">{choose}</span>{head}</Check>
                    <span class="count">{count}</span>
                </div>
                <div class="below"><span class="say">{says(&row)}</span><Lives desk id/></div>
                {before(&row.printed)}
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

/// `4 + 4`: collection labels, host labels, and all others.
fn counts(wanted: &[Wanted]) -> String {
    let mut totals = Totals::default();
    wanted.iter().for_each(|wanted| totals.add(wanted.which.kind, wanted.copies));
    let (collection, host) = (totals.of(LabelKind::Collection), totals.of(LabelKind::Host));
    say().labels.count(collection, host, totals.labels() - collection - host)
}

fn before(printed: &Totals) -> Option<AnyView> {
    let kinds: Vec<(&'static str, u32)> = printed.kinds().map(|(kind, copies)| (kind.code(), copies)).collect();
    (!kinds.is_empty()).then(|| view! { <p class="note">{say().labels.printed(&kinds)}</p> }.into_any())
}

/// The places of a row's orders in the list of all orders.
fn places(desk: Desk, id: Id) -> Vec<(usize, LabelKind)> {
    desk.orders.with(|orders| {
        orders.of.iter().enumerate().filter(|(_, (of, _))| *of == id).map(|(at, (_, which))| (at, which.kind)).collect()
    })
}

/// The labels in true size.
#[component]
fn Lives(desk: Desk, id: Id) -> impl IntoView {
    let page = use_page();
    let proofs = narrowed(move || {
        places(desk, id).into_iter().filter_map(|(at, kind)| Some((kind, desk.proof(at)?))).collect::<Vec<_>>()
    });
    let life = move |(kind, proof)| {
        let size = page.logbook.with(|logbook| logbook.rules().format(kind));
        view! { <ProofView proof size=(size.width_mm, size.height_mm) kind life=true/> }
    };
    view! { <span class="lives">{move || proofs.get().into_iter().map(life).collect_view()}</span> }.into_any()
}

/// What does not fit, the way to its words, and a second label for what one does not hold.
#[component]
fn Faults(desk: Desk, id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let over = narrowed(move || {
        let proofs = places(desk, id).into_iter().filter_map(|(at, _)| Some((at, desk.proof(at)?)));
        proofs
            .filter(|(_, proof)| !proof.over.is_empty())
            .map(|(at, proof)| (at, proof.over, proof.type_pt))
            .collect::<Vec<_>>()
    });
    let alone = RwSignal::new(false);
    let second = move |_| {
        over.get_untracked().into_iter().for_each(|(at, ..)| share(page, desk, id, at, alone));
    };
    let lines = move |(_, over, size): (usize, Vec<Over>, f64)| over_lines(&over, size);
    move || {
        (!over.with(Vec::is_empty)).then(|| {
            view! {
                {over.get().into_iter().map(lines).collect_view()}
                <p class="note" role="status" hidden=move || !alone.get()>{words.word_too_long()}</p>
                <div class="commands">
                    <a class="button" href=page.to(Screen::Bench(id.to_string()))>{words.shorten()}</a>
                    <button class="button" type="button" on:click=second>{words.second_label()}</button>
                </div>
            }
        })
    }
}

/// Asks the press to share out the lines of an order, and prints it as several labels from then on.
fn share(page: Context, desk: Desk, id: Id, at: usize, alone: RwSignal<bool>) {
    let order = desk.orders.with_untracked(|orders| {
        let (of, which) = orders.of.get(at)?;
        let label = orders.batch.labels.get(at).filter(|_| *of == id)?;
        Some((*which, label.clone(), orders.batch.styles.clone()))
    });
    let Some((which, label, styles)) = order else { return };
    let whole = label.lines.clone();
    spawn_local(async move {
        let answer = page.ports().press.work(Work::Share { labels: vec![label], styles }).await;
        let shared = if let Ok(Worked::Shared(shared)) = answer { shared } else { Vec::new() };
        let labels = shared.into_iter().next().unwrap_or_default();
        let left_the_screen = alone.try_set(labels.len() < 2).is_some();
        if left_the_screen {
            return;
        }
        desk.change(page, |queue| queue.share(id, Shared { which, whole, labels }));
    });
}

/// How many of each, the way to the wording, and off the sheet.
#[component]
fn Change(desk: Desk, id: Id, row: Memo<Option<QueueRow>>) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let which = narrowed(move || {
        let wanted = row.with(|row| row.as_ref().map(|row| row.wanted.clone())).unwrap_or_default();
        wanted.into_iter().map(|wanted| (wanted.which, wanted.item)).collect::<Vec<(Which, String)>>()
    });
    let copies = move |which: Which| {
        row.with(|row| {
            let wanted = row.as_ref()?.wanted.iter().find(|wanted| wanted.which == which)?;
            Some(wanted.copies.to_string())
        })
    };
    let stepper = move |(which, item): (Which, String)| {
        let value = Signal::derive(move || copies(which).unwrap_or_else(|| "0".to_owned()));
        let change = Callback::new(move |typed: String| {
            desk.change(page, |queue| queue.set_copies(id, which, typed.trim().parse().unwrap_or(0)))
        });
        let name = kinds_name(which.kind, &item);
        view! { <div class="proof-line"><span>{name.clone()}</span><Stepper name value change/></div> }
    };
    let container = move || row.with(|row| row.as_ref().is_some_and(|row| row.plate.is_some()));
    view! {
        <For each=move || which.get() key=|(which, _)| *which children=stepper/>
        <div class="commands">
            {move || container().then(|| view! { <a class="button quiet" href=page.to(Screen::Bench(id.to_string()))>{words.wording()}</a> })}
            <button class="button quiet" type="button" on:click=move |_| desk.change(page, |queue| queue.take_out(id))>{words.take_out()}</button>
        </div>
    }
    .into_any()
}
