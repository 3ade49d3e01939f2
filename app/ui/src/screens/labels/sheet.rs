//! The sheet in true size, laid by the press itself.

use super::Desk;
use crate::context::{Context, say, use_page};
use crate::desk::true_size;
use crate::narrow::narrowed;
use crate::route::Screen;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::setup::Rules;
use ports::press::{Answer, Format, Laid, Paper, Request};

/// The sheets, one at a time.
#[component]
pub fn Sheet(desk: Desk) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let rules = narrowed(move || page.logbook.with(|logbook| logbook.rules()));
    let labels =
        narrowed(move || desk.orders.with(|orders| orders.orders.iter().map(|order| order.copies).sum::<u32>()));
    let laid = laid(page, rules, labels);
    let at = RwSignal::new(0_usize);
    let of = narrowed(move || laid.with(|laid| laid.as_ref().map_or(1, |laid| laid.cuts.len().max(1))));
    let shown = narrowed(move || at.get().min(of.get() - 1));
    let drawn = move || laid.get().map(|laid| drawing(desk, &laid, shown.get(), rules, labels.get()));
    let change = move || {
        rules.with(|rules| words.paper_change(&rules.paper.width_mm.to_string(), &rules.paper.height_mm.to_string()))
    };
    let paper = move || rules.with(|rules| words.paper(&rules.paper.sheet));
    view! {
        <section class="part" aria-labelledby="sheet">
            <div class="part-head"><h2 id="sheet">{words.sheet()}</h2><a class="button quiet" href=page.to(Screen::Setup)>{paper}", "{change}</a></div>
            <div class="commands" hidden=move || of.get() < 2>
                <button class="button quiet" type="button" disabled=move || shown.get() == 0 on:click=move |_| at.update(|at| *at = at.saturating_sub(1))>{words.sheet_back()}</button>
                <span class="measure">{move || words.sheet_at(count(shown.get() + 1), count(of.get()))}</span>
                <button class="button quiet" type="button" disabled=move || shown.get() + 1 == of.get() on:click=move |_| at.set(shown.get() + 1)>{words.sheet_on()}</button>
            </div>
            <div class="sheet-view" tabindex="0" role="region" aria-label=words.sheet_scrolls()>{drawn}</div>
        </section>
    }
    .into_any()
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

/// Asks the press how so many labels lie; again when the number, their size or the paper changes.
fn laid(page: Context, rules: Memo<Rules>, labels: Memo<u32>) -> RwSignal<Option<Laid>> {
    let laid = RwSignal::new(None);
    let turn = StoredValue::new(0_u32);
    Effect::new(move |_| {
        let (format, paper): (Format, Paper) = rules.with(|rules| (rules.format(), rules.sheet()));
        let request = Request::Lay { labels: labels.get(), format, paper, check_words: say().labels.bar().to_owned() };
        let mine = turn.with_value(|turn| turn.wrapping_add(1));
        turn.set_value(mine);
        spawn_local(async move {
            let answer = page.ports().press.ask(request).await;
            if turn.try_get_value() == Some(mine) {
                let sheet = if let Ok(Answer::Laid(sheet)) = answer { Some(sheet) } else { None };
                let _ = laid.try_set(sheet);
            }
        });
    });
    laid
}

fn drawing(desk: Desk, laid: &Laid, sheet: usize, rules: Memo<Rules>, labels: u32) -> AnyView {
    let words = say().labels;
    let (width, height) = laid.paper_mm;
    let capacity = laid.places.len();
    let on_sheet = desk.orders.with(|orders| {
        let each = orders
            .orders
            .iter()
            .enumerate()
            .flat_map(|(order, wanted)| std::iter::repeat_n(order, wanted.copies as usize));
        each.skip(sheet * capacity).take(capacity).collect::<Vec<usize>>()
    });
    let mut orders = on_sheet.clone();
    orders.dedup();
    let over = rules.with(|rules| format!("M{} 0V{}", rules.paper.width_mm, rules.paper.height_mm));
    let definition = |order: &usize| {
        desk.proof(*order).map(|proof| {
            let (x, y, radius) = proof.pin;
            view! {
                <g id=format!("label-{order}")>
                    <path class="label-ink" d=proof.path/>
                    <circle class="label-disc" cx=x.to_string() cy=y.to_string() r=radius.to_string()/>
                    {(!proof.over.is_empty()).then(|| view! { <path class="label-over" d=over.clone()/> })}
                </g>
            }
        })
    };
    let label = |(order, (x, y)): (&usize, &(f64, f64))| view! { <use href=format!("#label-{order}") x=x.to_string() y=y.to_string()/> };
    let paper = rules.with(|rules| words.paper(&rules.paper.sheet));
    view! {
        <svg class="sheet-svg" width=true_size(width) height=true_size(height) viewBox=format!("0 0 {width} {height}") role="img" aria-labelledby="sheet-title sheet-says">
            <title id="sheet-title">{words.sheet_title(&paper)}</title>
            <desc id="sheet-says">{words.sheet_says(labels, laid.columns, laid.rows)}</desc>
            <defs>{orders.iter().map(definition).collect_view()}</defs>
            <rect class="label-paper" width=width.to_string() height=height.to_string()/>
            {on_sheet.iter().zip(&laid.places).map(label).collect_view()}
            <path class="label-cut" d=laid.cuts.get(sheet).cloned().unwrap_or_default()/>
            <path class="label-rule" d=laid.bar.clone()/>
            <path class="label-ink" transform=format!("translate({} {})", laid.words_at.0, laid.words_at.1) d=laid.words.clone()/>
        </svg>
    }
    .into_any()
}
