use super::VialDraft;
use crate::context::{say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Chooser, Key, Stepper, own_keys, typed};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::ContainerForm;
use logbook::numbers::plate_of;

/// Which of the two numbers the keys write into.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum End {
    /// The first, or the only one.
    #[default]
    First,
    /// The last of a span.
    Last,
}

/// The number that the keys write into; the first figure after coming to it replaces what stood there.
#[derive(Clone, Copy)]
pub struct Writing {
    /// Which one.
    pub end: RwSignal<End>,
    /// A number has the focus, so the keys stand ready.
    pub shown: RwSignal<bool>,
    fresh: RwSignal<bool>,
}

impl Writing {
    /// Begins with the first number.
    pub fn new() -> Self {
        Self { end: RwSignal::new(End::First), shown: RwSignal::new(true), fresh: RwSignal::new(true) }
    }

    /// A key was pressed.
    pub fn press(self, draft: VialDraft, key: Key) {
        if key == Key::Word {
            crate::jump::focus("last-number");
            return;
        }
        let end = self.end.get_untracked();
        let replace = self.fresh.replace(false) && matches!(key, Key::Figure(_));
        draft.change(|form| {
            let text = if end == End::First { &mut form.first } else { &mut form.last };
            let now = if replace { String::new() } else { plate_of("vial", text).run };
            *text = key.on(&now);
        });
    }
}

trait Replace {
    fn replace(&self, value: bool) -> bool;
}

impl Replace for RwSignal<bool> {
    fn replace(&self, value: bool) -> bool {
        let before = self.get_untracked();
        self.set(value);
        before
    }
}

/// True when the focus came to one of the two numbers.
pub fn is_number(event: &web_sys::FocusEvent) -> bool {
    use wasm_bindgen::JsCast;
    let element = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    element.is_some_and(|element| matches!(element.id().as_str(), "first-number" | "last-number"))
}

/// What carries it, and its number or span; or how many without a number.
#[component]
pub fn Number(draft: VialDraft, writing: Writing) -> impl IntoView {
    let words = say().container;
    let vessel = draft.part(|form| form.vessel.clone());
    let options =
        codes::VESSELS.iter().map(|code| ((*code).to_owned(), say().codes.vessel_option(code))).collect::<Vec<_>>();
    let choose = draft.on(|form: &mut ContainerForm, code: String| form.vessel = code);
    let numbered = draft.part(|form| form.unnumbered.is_empty());
    let released = draft.part(|form| form.released);
    let entry = move || match (released.get(), numbered.get()) {
        (true, _) => view! { <p class="note">{words.released_says()}</p> }.into_any(),
        (false, true) => view! { <Entry draft writing/> }.into_any(),
        (false, false) => view! { <HowMany draft/> }.into_any(),
    };
    view! {
        <section class="part stack" aria-label=words.number()>
            <Chooser name="kind" legend=words.kind() options=Signal::stored(options) chosen=vessel choose/>
            {entry}
        </section>
    }
    .into_any()
}

/// The plate is the field.
#[component]
fn Entry(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let vessel = draft.part(|form| form.vessel.clone());
    let own_prefix = page.logbook.with_untracked(|logbook| logbook.prefix());
    let prefix = draft.part(move |form| {
        let typed = plate_of("vial", form.first.trim());
        let bare = typed.prefix.is_empty() && form.first.chars().next().is_none_or(|first| first.is_ascii_digit());
        if bare { own_prefix.clone() } else { typed.prefix }
    });
    let saved = draft.form.with_untracked(|form| form.id.is_some());
    let first = draft.part(|form| plate_of("vial", &form.first).run);
    let last = draft.part(|form| plate_of("vial", &form.last).run);
    let on_first = draft.on(|form: &mut ContainerForm, text: String| form.first = text);
    let on_last = draft.on(|form: &mut ContainerForm, text: String| form.last = text);
    let now = move |end: End| move || writing.end.get() == end;
    let mode =
        if first.with_untracked(|run| run.chars().all(|sign| sign.is_ascii_digit())) { own_keys() } else { "text" };
    let come = move |end: End| {
        move |_| {
            writing.end.set(end);
            writing.fresh.set(true);
            writing.shown.set(true);
        }
    };
    let label = move || if saved { words.number_label(&prefix.get()) } else { words.span_label(&prefix.get()) };
    view! {
        <div class=move || format!("plate {} entry", vessel.get()) role="group" aria-label=label>
            <span class="prefix">{prefix}</span>
            <label class="unseen" for="first-number">{words.first_number()}</label>
            <input id="first-number" inputmode=mode autocomplete="off" autocapitalize="characters" aria-describedby="span-says"
                class:now=now(End::First) prop:value=first on:input=move |event| on_first.run(typed(&event)) on:focus=come(End::First)/>
            {(!saved).then(|| view! {
                <span class="to">{words.to()}</span>
                <label class="unseen" for="last-number">{words.last_number()}</label>
                <input id="last-number" inputmode=mode autocomplete="off" autocapitalize="characters" aria-describedby="span-says"
                    class:now=now(End::Last) prop:value=last on:input=move |event| on_last.run(typed(&event)) on:focus=come(End::Last)/>
            })}
        </div>
        <SpanWords draft/>
    }
    .into_any()
}

/// What the page makes of the span.
#[component]
fn SpanWords(draft: VialDraft) -> impl IntoView {
    let page = use_page();
    let says = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.span_says(form))));
    let vessel = draft.part(|form| form.vessel.clone());
    let words = move || {
        let (count, rest, fault) = explain::span(&says.get(), &vessel.get());
        view! { <strong>{count}</strong>" "<span class=if fault { "mark fault" } else { "note" }>{rest}</span> }
    };
    view! { <p id="span-says" aria-live="polite">{words}</p> }.into_any()
}

/// Without a number: how many, and the slip of paper.
#[component]
fn HowMany(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    let count = draft.part(|form| form.unnumbered.clone());
    let change = draft.on(|form: &mut ContainerForm, text: String| {
        form.unnumbered = if text.trim() == "0" { "1".into() } else { text }
    });
    let saved = draft.form.with_untracked(|form| form.id.is_some());
    view! {
        <div class="proof-line">
            <span class="plate none"><span class="run">{words.no_number()}</span></span>
            {(!saved).then(|| view! { <Stepper name=words.how_many() value=count change/> })}
        </div>
        <p class="note">{words.unnumbered_slip()}</p>
    }
    .into_any()
}
