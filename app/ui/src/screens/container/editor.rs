use super::VialDraft;
use super::contents::Contents;
use super::fluids::Fluids;
use super::number::{self, Number, Writing};
use super::own::{Fate, Own};
use crate::context::{say, use_page};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{How, NumberKeys};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::numbers::SpanSays;

/// The form of a container, whoever it belongs to.
#[component]
pub fn Editor(
    /// The form.
    draft: VialDraft,
    /// The heading.
    title: &'static str,
    /// To what it belongs.
    #[prop(into)]
    note: Signal<String>,
    /// Where the way out leads.
    back: Screen,
    /// The words of the main command.
    #[prop(into)]
    name: Signal<String>,
    /// Called by the main command.
    done: Callback<()>,
    /// What else can be done with it, at the end of the sheet.
    #[prop(optional, into)]
    end: ViewFn,
) -> impl IntoView {
    let words = say().container;
    let writing = Writing::new();
    let keys = move || view! { <Keys draft writing/> };
    let bar = move || view! { <Bar draft back=back.clone() name done/> };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        done.run(());
    };
    view! {
        <Page title form=true focus="first-number" keys bar>
            <header class="head"><h1>{title}</h1><p class="note">{note}</p></header>
            <How screen="container" says=vec![words.how_1(), words.how_2(), words.how_3()]/>
            <form class="columns two" id="container" autocomplete="off" novalidate on:submit=submit on:focusin=move |event| writing.shown.set(number::is_number(&event))>
                <div class="column"><Number draft writing/><Contents draft/></div>
                <div class="column"><Fluids draft/><Fate draft/><Own draft/>{end.run()}</div>
            </form>
        </Page>
    }
    .into_any()
}

/// Own keys while a number of figures is written.
#[component]
fn Keys(draft: VialDraft, writing: Writing) -> impl IntoView {
    let saved = draft.form.with_untracked(|form| form.id.is_some());
    let shown = draft.part(|form| {
        let run = logbook::numbers::plate_of("vial", &form.first).run;
        form.unnumbered.is_empty() && !form.released && run.chars().all(|sign| sign.is_ascii_digit())
    });
    let word = (!saved).then(|| say().frame.key_to());
    let press = Callback::new(move |key| writing.press(draft, key));
    view! { <Show when=move || shown.get() && writing.shown.get()><NumberKeys word=Signal::stored(word) press/></Show> }
        .into_any()
}

/// Number later or now, and the main command.
#[component]
fn Bar(draft: VialDraft, back: Screen, #[prop(into)] name: Signal<String>, done: Callback<()>) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let numbered = draft.part(|form| form.unnumbered.is_empty());
    let toggle = move |_| {
        let next =
            page.logbook.with_untracked(|logbook| logbook.next_container(&logbook::form::CatchForm::default()).first);
        draft.change(|form| {
            if form.unnumbered.is_empty() {
                form.unnumbered = "1".into();
                form.first.clear();
                form.last.clear();
            } else {
                form.unnumbered.clear();
                form.first = next;
            }
        });
    };
    let says = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.span_says(form))));
    let faulty = move || says.with(|says| matches!(says, SpanSays::Fault(_)));
    let leave = move |_| draft.forget();
    view! {
        <div class="bar">
            <button class="button quiet" type="button" on:click=toggle>{move || if numbered.get() { words.number_later() } else { words.number_now() }}</button>
            <a class="button quiet" href=page.to(back) on:click=leave>{say().frame.cancel()}</a>
            <button class="button main" type="submit" form="container" data-key="ctrl+enter" aria-disabled=move || faulty().then_some("true")
                on:click=move |event| { event.prevent_default(); if !faulty() { done.run(()); } }>
                {name}" "<kbd class="key">"⏎"</kbd>
            </button>
        </div>
    }
    .into_any()
}
