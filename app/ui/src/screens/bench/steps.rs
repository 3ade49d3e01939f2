//! What was done with the catch in the hand, and what comes next.

use crate::context::{say, use_page};
use crate::desk::{contents_words, fluid_words};
use crate::narrow::narrowed;
use crate::parts::{Sign, Stepper};
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::{NextStep, OnBench, StepView};
use logbook::moment::Known;

/// Fluids that must dry off before heat: common practice.
const WET: [&str; 2] = ["ethanol", "propylene_glycol"];

/// Steps as heads on the pin: filled when done, a thick ring for the one that comes next.
#[component]
pub fn StepsOf(id: Id) -> impl IntoView {
    let page = use_page();
    let on_bench = narrowed(move || page.logbook.with(|logbook| logbook.bench_container(id)));
    move || on_bench.get().map(steps)
}

fn steps(on_bench: OnBench) -> AnyView {
    let words = say().bench;
    let contents = contents_words(&on_bench.container.contents);
    let head = if contents.is_empty() { words.steps().to_owned() } else { contents };
    let kept = on_bench.container.kept.as_ref().filter(|fluid| WET.contains(&fluid.code.as_str()));
    let wet = kept
        .filter(|_| on_bench.steps.is_empty())
        .map(|fluid| view! { <p class="caution">{say().bench.caution_fluid(&fluid_words(fluid))}</p> });
    let finished = on_bench.next.is_none() && !on_bench.steps.is_empty();
    let next = on_bench.next.map(next);
    view! {
        <section class="part" aria-labelledby="steps">
            <h2 id="steps">{head}</h2>
            <ol class="steps pin">
                {on_bench.steps.iter().map(done).collect_view()}
                {next}
            </ol>
            {finished.then(|| view! { <p class="mark sure">{Sign::Tick.draw()}<span>{words.step_none()}</span></p> })}
            {wet}
        </section>
    }
    .into_any()
}

fn done(step: &StepView) -> AnyView {
    let day = Known::read(&step.at).and_then(Known::date).map(|day| say().dates.roman_short(day));
    view! {
        <li class="done"><div class="row">
            <div class="row-name">{day}</div>
            <div class="row-value">{say().bench.step_done(&step.deed, step.count)}" "<span class="note">{step.by.clone()}</span></div>
        </div></li>
    }
    .into_any()
}

fn next(next: NextStep) -> AnyView {
    view! {
        <li class="next"><div class="row">
            <div class="row-name"></div>
            <div class="row-value"><strong>{say().bench.step_next(next.deal.code(), next.count)}</strong></div>
        </div></li>
    }
    .into_any()
}

/// The next step, with how many; Enter does it once the number has led here.
#[component]
pub fn StepBar(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let next =
        narrowed(move || page.logbook.with(|logbook| logbook.bench_container(id)).and_then(|on_bench| on_bench.next));
    let bar = move |next: NextStep| {
        let count = RwSignal::new(next.count.to_string());
        let number = move || count.with(|count| count.trim().parse::<u32>().ok()).filter(|count| *count > 0);
        let press = move |_| {
            let Some(count) = number() else { return };
            page.save(page.make(|logbook, saving, ids| logbook.step(id, next.deal, count, saving.now, ids)), |_| {});
        };
        let name = move || words.step_do(next.deal.code(), number().unwrap_or(0));
        view! {
            <div class="bar">
                <Stepper name=words.step_how_many(next.deal.code()) value=count change=Callback::new(move |typed| count.set(typed))/>
                <button class="button main" type="button" data-key="ctrl+enter" disabled=move || number().is_none() on:click=press>
                    {name}" "<kbd class="key">"⏎"</kbd>
                </button>
            </div>
        }
    };
    move || next.get().map(bar)
}
