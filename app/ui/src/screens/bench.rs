//! The bench: a number as written on the vial in, its event with all data out, what its labels will say, and the
//! steps done with it.

mod choose;
mod determine;
mod facts;
mod heights;
mod mounts;
mod number;
mod pieces;
mod proofs;
mod steps;
mod wording;

use crate::context::{Context, say, use_page};
use crate::desk::{after_frame, how};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::route::Screen;
use choose::{Choices, NoneFound};
use determine::DeterminedAs;
use facts::FactsOf;
use heights::Heights;
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::BenchView;
use mounts::Mounts;
use number::NumberField;
use pieces::{Emerged, Pieces};
use proofs::{Copies, LabelsOf};
use steps::{StepBar, StepsOf};

/// What is asked of the bench.
#[derive(Clone, Debug, PartialEq)]
pub enum Asked {
    /// A number as typed.
    Number(String),
    /// This container, picked from a list.
    Container(Id),
    /// All that carry the digits of this number.
    All(String),
}

/// The bench.
#[component]
pub fn Bench(sought: String) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let picked = sought.parse::<Id>().ok();
    let text = RwSignal::new(picked.map_or(sought, |id| number_of(page, id)));
    let asked = RwSignal::new(picked.map_or_else(|| Asked::Number(text.get_untracked()), Asked::Container));
    let settled: Signal<Asked> = after_frame(asked.into());
    let view = narrowed(move || {
        page.logbook.with(|logbook| match settled.get() {
            Asked::Number(number) => logbook.bench(&number),
            Asked::All(number) => logbook.bench_others(&number),
            Asked::Container(id) => {
                logbook.bench_container(id).map_or_else(|| logbook.bench(""), |found| BenchView::One(Box::new(found)))
            }
        })
    });
    let found = narrowed(move || {
        view.with(|view| match view {
            BenchView::One(on_bench) => Some(on_bench.container.id),
            BenchView::Empty { .. } | BenchView::Choose { .. } | BenchView::None { .. } => None,
        })
    });
    let settles = move || found.with(Option::is_some);
    let waiting = narrowed(move || page.logbook.with(|logbook| logbook.waiting()));
    let (top, end) = how("bench", vec![words.how_1(), words.how_2(), words.how_3()]);
    let step = move || found.get().map(|id| view! { <StepBar id/> });
    let bar = move || view! { {step} };
    view! {
        <Page title=words.title() focus="number" bar>
            <header class="head">
                <h1>{words.title()}</h1>
                {move || aside(view, text, asked, waiting.get())}
            </header>
            {top}
            <div class:columns=settles class:three=settles>
                <div class="column">
                    <NumberField text asked found/>
                    {move || found.get().map(|id| view! { <FactsOf id/> })}
                    <div role="status">{move || unsettled(view.get())}</div>
                </div>
                {move || found.get().map(|id| {
                    let copies = Copies::new(page, id);
                    view! {
                        <div class="column"><DeterminedAs id copies/><LabelsOf id copies/></div>
                        <div class="column"><StepsOf id/><Mounts id copies/><Emerged id/><Pieces id/><Heights/></div>
                    }
                })}
            </div>
            {end}
        </Page>
    }
    .into_any()
}

/// The running part of its number: the plate beside the field says the whole.
fn number_of(page: Context, id: Id) -> String {
    let plate = page.logbook.with_untracked(|logbook| logbook.container(id)).map(|container| container.plate);
    plate.map(|plate| plate.run).unwrap_or_default()
}

/// Beside the heading: how many wait, or the way to the others that carry the same digits.
fn aside(view: Memo<BenchView>, text: RwSignal<String>, asked: RwSignal<Asked>, waiting: usize) -> AnyView {
    let words = say().bench;
    let others = view.with(|view| match view {
        BenchView::One(on_bench) => Some(on_bench.others).filter(|others| *others > 0),
        _ => None,
    });
    match others {
        Some(others) => {
            let number = text.get();
            let name = words.others(others, &number);
            view! { <button class="button quiet" type="button" data-key="o" on:click=move |_| asked.set(Asked::All(number.clone()))>{name}</button> }.into_any()
        }
        None => view! { <p class="note">{words.waiting(waiting)}</p> }.into_any(),
    }
}

/// Nothing is opened: nothing was typed, several could be meant, or none is known.
fn unsettled(view: BenchView) -> AnyView {
    let words = say().bench;
    match view {
        BenchView::Empty { .. } => view! {
            <section class="empty">
                <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                    <path class="stroke" d="M18 46h74a14 14 0 0 1 0 28H18zM18 40v40M10 40v40M10 40h8M10 80h8"/><path class="faint" d="M32 54h40v12H32z"/>
                </svg>
                <p class="ink">{words.empty()}</p>
                <p>{words.empty_says()}</p>
            </section>
        }
        .into_any(),
        BenchView::Choose { typed, candidates, more } => view! { <Choices typed candidates more/> }.into_any(),
        BenchView::None { typed, nearest } => view! { <NoneFound typed nearest/> }.into_any(),
        BenchView::One(_) => ().into_any(),
    }
}

/// The address of a container on the bench.
fn bench_of(page: Context, id: Id) -> String {
    page.to(Screen::Bench(id.to_string()))
}
