//! The storage: how much is used, whether the browser promised to keep it, the full backup, import and its undoing.

use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Mark, Message, Sign, Tally};
use crate::route::{Export, Screen};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::exchange::ExchangeFault;
use ports::device::Storage as Says;

/// Storage.
#[component]
pub fn Storage() -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let says = RwSignal::new(None::<Says>);
    spawn_local(async move {
        let storage = page.ports().device.storage().await;
        let _ = says.try_set(Some(storage));
    });
    let start = narrowed(move || page.logbook.with(|logbook| logbook.start(page.now.get())));
    let tally = move || {
        let (events, only_here) = start.with(|start| (start.events, start.only_here));
        let used = says
            .get()
            .and_then(|says| says.used)
            .map_or_else(|| words.used_none().to_owned(), |used| say().dates.megabytes(used));
        let class = if only_here > 0 { "caution-number" } else { "" };
        let counts = vec![
            (words.events(), say().dates.number(events), ""),
            (words.only_here(), say().dates.number(only_here), class),
            (words.used(), used, "used"),
        ];
        view! { <Tally counts/> }
    };
    let ask = move |_| {
        spawn_local(async move {
            let promised = page.ports().device.ask_promise().await;
            let _ = says.try_update(|says| *says = Some(Says { promised, ..says.unwrap_or_default() }));
        });
    };
    let promise = move || match says.get().map(|says| says.promised) {
        None => ().into_any(),
        Some(Some(true)) => view! { <p><Mark sign=Sign::Tick words=words.promised()/></p> }.into_any(),
        Some(answer) => {
            let sentence = if answer.is_some() { words.not_promised() } else { words.not_said() };
            view! { <p>{sentence}</p><button class="button quiet" type="button" on:click=ask>{words.ask_promise()}</button> }.into_any()
        }
    };
    view! {
        <section class="part" aria-labelledby="s-store">
            <h2 id="s-store">{words.storage()}</h2>
            {tally}
            <div role="status">{promise}</div>
            <p class="note">{words.no_backup()}</p>
            <div class="commands">
                <a class="button" href=page.to(Screen::Export(Export::All))>{words.backup()}</a>
                <a class="button" href=page.to(Screen::Import)>{words.import()}</a>
            </div>
            <UndoImport/>
            <p class="note">{words.version(env!("CARGO_PKG_VERSION"))}</p>
        </section>
    }
    .into_any()
}

/// The way back from the last import, while there is one.
#[component]
fn UndoImport() -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let can = RwSignal::new(false);
    let fault = RwSignal::new_local(None::<ExchangeFault>);
    let look = move || {
        spawn_local(async move {
            let there = page.driver().can_undo_import().await;
            let _ = can.try_set(there);
        });
    };
    look();
    let undo = move |_| {
        spawn_local(async move {
            let undone = page.driver().undo_import().await;
            let _ = fault.try_set(undone.err());
            look();
        });
    };
    let message = move || {
        fault.get().map(|fault| {
            let (what, safe) = crate::screens::exchange_fault(&fault);
            view! { <Message what safe/> }
        })
    };
    view! {
        <div class="part" hidden=move || !can.get()>
            <button class="button" type="button" on:click=undo>{words.undo_import()}</button>
            <p class="note">{words.undo_import_says()}</p>
        </div>
        {message}
    }
    .into_any()
}
