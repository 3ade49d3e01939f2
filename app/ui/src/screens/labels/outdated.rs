//! Printed labels that a correction made out of date: old beside new, and the way to print them again.

use super::Desk;
use crate::context::{say, use_page};
use crate::desk::{Window, kind_name, stamp_words};
use crate::narrow::narrowed;
use crate::parts::{PlateView, Sign};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::labels::{Outdated, Which};

/// The list; nothing where none is out of date.
#[component]
pub fn OutOfDate(desk: Desk) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let all = narrowed(move || page.logbook.with(|logbook| logbook.outdated().to_vec()));
    let window = Window::new("outdated-rows");
    let count = move || all.with(Vec::len);
    let shown = narrowed(move || {
        let keys: Vec<(Id, Which)> = all.with(|all| all.iter().map(|one| (one.of, one.which)).collect());
        window.rows(&keys)
    });
    let again = move |_| {
        let all = all.get_untracked();
        desk.change(page, |queue| all.iter().for_each(|one| queue.print_again(one)));
    };
    view! {
        <section class="part" aria-labelledby="outdated" hidden=move || all.with(Vec::is_empty)>
            <div class="part-head"><h2 id="outdated">{move || words.outdated(count())}</h2></div>
            <p class="note">{words.outdated_says()}</p>
            {window.before(count)}
            <ul class="queue" id="outdated-rows" tabindex="-1">
                <For each=move || shown.get() key=|key| *key children=move |key| view! { <Pair desk all key/> }/>
            </ul>
            {window.after(count)}
            <div class="commands" hidden=move || count() < 2><button class="button" type="button" on:click=again>{words.print_all_again()}</button></div>
        </section>
    }
    .into_any()
}

#[component]
fn Pair(desk: Desk, all: Memo<Vec<Outdated>>, key: (Id, Which)) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let mine = narrowed(move || all.with(|all| all.iter().find(|one| (one.of, one.which) == key).cloned()));
    let waits = move || desk.queue.with(|queue| queue.of(key.0).is_some_and(|queued| queued.copies(key.1) > 0));
    let again = move |_| {
        if let Some(one) = mine.get_untracked() {
            desk.change(page, |queue| queue.print_again(&one));
        }
    };
    move || {
        mine.get().map(|one| {
            let plate = page.logbook.with(|logbook| logbook.container(one.of)).map(|container| container.plate);
            let (old, new) = (one.earlier.old.join(" / "), one.earlier.new.join(" / "));
            let same = old.split_whitespace().eq(new.split_whitespace());
            view! {
                <li>
                    <div class="top">
                        {plate.map(|plate| view! { <PlateView plate/> })}
                        <span class="note">{kind_name(one.which.kind)}", "{words.outdated_at(&stamp_words(&one.earlier.at), one.earlier.copies)}</span>
                    </div>
                    <dl class="old-new">
                        <div><dt class="note">{words.as_printed()}</dt><dd>{old}</dd></div>
                        <div><dt class="note">{words.as_now()}</dt><dd class="ink">{new}</dd></div>
                    </dl>
                    {same.then(|| view! { <p class="note">{words.by_hand()}</p> })}
                    <div class="commands">
                        <button class="button" type="button" hidden=waits on:click=again>{words.print_again(one.earlier.copies)}</button>
                        <span class="mark sure" role="status" hidden=move || !waits()>{Sign::Tick.draw()}<span>{words.again_waits()}</span></span>
                        <a class="button quiet" href=page.to(Screen::Bench(one.of.to_string()))>{words.wording()}</a>
                    </div>
                </li>
            }
        })
    }
}
