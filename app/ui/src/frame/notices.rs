use crate::context::{say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Calm, Message, Progress};
use leptos::prelude::*;
use logbook::book::{ReadOnly, State};

/// What must be known on any screen: the book is still coming in, cannot be written, or a deed was not saved.
#[component]
pub fn Notices() -> impl IntoView {
    let page = use_page();
    let state = narrowed(move || page.logbook.with(|logbook| logbook.state().clone()));
    let reload = move |_| drop(window().location().reload());
    let again = move || view! { <button class="button" type="button" on:click=reload>{say().faults.reload()}</button> };
    let book = move || match state.get() {
        State::Opening { done, of } => view! { <Opening done of/> }.into_any(),
        State::Ready => ().into_any(),
        State::ReadOnly(ReadOnly::Newer) => {
            view! { <Calm says=say().faults.read_only_newer()>{again()}</Calm> }.into_any()
        }
        State::ReadOnly(ReadOnly::Outdated) => {
            view! { <Calm says=say().faults.read_only_outdated()>{again()}</Calm> }.into_any()
        }
        State::Failed(fault) => {
            let (_, safe) = explain::store_fault(&fault);
            view! { <Message what=say().faults.open_failed() safe=safe>{again()}</Message> }.into_any()
        }
    };
    Effect::new(move |_| {
        if page.fault.with(Option::is_some) {
            crate::jump::to_top();
        }
    });
    let fault = move || {
        page.fault.get().map(|fault| {
            let (what, safe) = explain::save_fault(&fault);
            view! { <Message what safe/> }
        })
    };
    let refused = move || page.draft_refused.get().then(|| view! { <Calm says=say().faults.draft_refused()/> });
    view! { {book} {fault} {refused} }.into_any()
}

/// Shown after half a second: most books are open before.
#[component]
fn Opening(done: usize, of: usize) -> impl IntoView {
    let late = use_page().late();
    view! { <div hidden=move || done == 0 && !late.get()><Progress words=say().frame.opening(done, of) done of=of.max(1)/></div> }
        .into_any()
}
