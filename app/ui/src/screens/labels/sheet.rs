//! The sheet in true size, laid by the press itself.

use super::Desk;
use crate::context::{say, use_page};
use crate::desk::{Pressed, true_size};
use crate::narrow::narrowed;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::labels::Orders;
use ports::press::Shown;

/// The sheets, one at a time.
#[component]
pub fn Sheet(desk: Desk) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let rules = narrowed(move || page.logbook.with(|logbook| logbook.rules()));
    let at = RwSignal::new(0_usize);
    let of = narrowed(move || {
        desk.pressed.with(|pressed| if let Pressed::Set(shown) = pressed { shown.cuts.len().max(1) } else { 1 })
    });
    let shown = narrowed(move || at.get().min(of.get() - 1));
    let paper = narrowed(move || rules.with(|rules| words.paper(&rules.paper.sheet)));
    let drawn = move || {
        desk.pressed.with(|pressed| match pressed {
            Pressed::Set(set) => {
                desk.orders.with_untracked(|orders| Some(drawing(set, orders, shown.get(), &paper.get())))
            }
            Pressed::Waiting | Pressed::TooLarge(_) | Pressed::Gone(_) => None,
        })
    };
    let change = move || {
        rules.with(|rules| words.paper_change(&rules.paper.width_mm.to_string(), &rules.paper.height_mm.to_string()))
    };
    let begins = move || {
        let (rows, places) = desk.queue.with(|queue| queue.begin);
        ((rows, places) != (0, 0)).then(|| words.begin_at(rows, places))
    };
    view! {
        <section class="part" aria-labelledby="sheet">
            <div class="part-head"><h2 id="sheet">{words.sheet()}</h2><a class="button quiet" href=page.to(Screen::Setup)>{paper}", "{change}</a></div>
            <div class="commands" hidden=move || of.get() < 2>
                <button class="button quiet" type="button" disabled=move || shown.get() == 0 on:click=move |_| at.update(|at| *at = at.saturating_sub(1))>{words.sheet_back()}</button>
                <span class="measure">{move || words.sheet_at(count(shown.get() + 1), count(of.get()))}</span>
                <button class="button quiet" type="button" disabled=move || shown.get() + 1 == of.get() on:click=move |_| at.set(shown.get() + 1)>{words.sheet_on()}</button>
            </div>
            <div class="sheet-view" tabindex="0" role="region" aria-label=words.sheet_scrolls()>{drawn}</div>
            <p class="note">{begins}</p>
        </section>
    }
    .into_any()
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

fn drawing(set: &Shown, orders: &Orders, sheet: usize, paper: &str) -> AnyView {
    let words = say().labels;
    let (width, height) = orders.batch.card.size_mm;
    let spots: Vec<_> = set.spots.iter().filter(|spot| spot.sheet == sheet).collect();
    let mut labels: Vec<usize> = spots.iter().map(|spot| spot.label).collect();
    labels.sort_unstable();
    labels.dedup();
    let size = |label: usize| {
        let style = orders.batch.labels.get(label).and_then(|label| orders.batch.styles.get(label.style));
        style.map_or((0.0, 0.0), |style| (style.format.width_mm, style.format.height_mm))
    };
    let definition = |label: &usize| {
        set.proofs.get(*label).map(|proof| {
            let (x, y, radius) = proof.pin;
            let (across, down) = size(*label);
            view! {
                <g id=format!("label-{label}")>
                    <path class="label-ink" d=proof.path.clone()/>
                    {(radius > 0.0).then(|| view! { <circle class="label-disc" cx=x.to_string() cy=y.to_string() r=radius.to_string()/> })}
                    {(!proof.over.is_empty()).then(|| view! { <path class="label-over" d=format!("M{across} 0V{down}")/> })}
                </g>
            }
        })
    };
    let label = |spot: &&ports::press::Spot| {
        let (x, y) = spot.at_mm;
        view! { <use href=format!("#label-{}", spot.label) x=x.to_string() y=y.to_string()/> }
    };
    view! {
        <svg class="sheet-svg" width=true_size(width) height=true_size(height) viewBox=format!("0 0 {width} {height}") role="img" aria-labelledby="sheet-title sheet-says">
            <title id="sheet-title">{words.sheet_title(paper)}</title>
            <desc id="sheet-says">{words.sheet_says(spots.len())}</desc>
            <defs>{labels.iter().map(definition).collect_view()}</defs>
            <rect class="label-paper" width=width.to_string() height=height.to_string()/>
            {spots.iter().map(label).collect_view()}
            <path class="label-cut" d=set.cuts.get(sheet).cloned().unwrap_or_default()/>
            <path class="label-rule" d=set.bar.clone()/>
            <path class="label-ink" transform=format!("translate({} {})", set.words_at.0, set.words_at.1) d=set.words.clone()/>
        </svg>
    }
    .into_any()
}
