use super::{CatchDraft, unknown};
use crate::context::{say, use_page};
use crate::parts::{Caution, Check, DayLine, Line, Options, Pick, Row, TimeLine, UnknownWord, WithUnit};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::{self, CatchForm};

/// Stands for one's own words in the select.
const OWN: &str = "other";

/// How it was caught, with the particulars that the trade records.
#[component]
pub fn MethodRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let own = RwSignal::new(draft.form.with_untracked(|form| form.method.is_empty() && !form.method_text.is_empty()));
    let code = draft.part(|form| form.method.clone());
    let chosen = Signal::derive(move || if own.get() { OWN.to_owned() } else { code.get() });
    let choose = Callback::new(move |code: String| {
        own.set(code == OWN);
        draft.change(|form| {
            set_method(form, if code == OWN { "" } else { &code });
            page.logbook.with_untracked(|logbook| logbook.fit_containers(form));
        });
    });
    let (marked, mark) = unknown(draft, form::Row::Method);
    let text = draft.on(|form: &mut CatchForm, text: String| form.method_text = text);
    view! {
        <Row of="method" name=words.method() class="together">
            <Pick id="method" options=Signal::stored(methods()) chosen choose/>
            <UnknownWord row=words.method() empty=Signal::derive(move || chosen.with(String::is_empty)) marked change=mark/>
            <span hidden=move || !own.get()>
                <label class="unseen" for="method-text">{words.method_words()}</label>
                <Line id="method-text" hint=words.method_words() value=draft.part(|form| form.method_text.clone()) change=text/>
            </span>
            <Particulars draft code/>
        </Row>
        {move || (code.get() == "light").then(|| view! { <div class="row"><div class="row-name"></div><div class="row-value"><Caution says=words.lamp_caution()/></div></div> })}
    }
    .into_any()
}

fn methods() -> Options {
    let words = say();
    let known = codes::METHODS.iter().map(|code| ((*code).to_owned(), words.codes.method(code)));
    let none = (String::new(), words.catch.method_none().to_owned());
    std::iter::once(none).chain(known).chain([(OWN.to_owned(), words.catch.method_other().to_owned())]).collect()
}

/// Another method: particulars that it does not have are let go.
fn set_method(form: &mut CatchForm, code: &str) {
    form.method = code.to_owned();
    form.particulars.retain(|particular, _| codes::particulars(code).contains(&particular.as_str()));
    form.open = codes::burns(code) && form.event.is_none();
    if !code.is_empty() {
        form.method_text.clear();
    }
}

/// The particulars of a method.
#[component]
pub fn Particulars(
    /// The form.
    draft: CatchDraft,
    /// The method.
    #[prop(into)]
    code: Signal<String>,
) -> impl IntoView {
    let fields = move || {
        codes::particulars(&code.get())
            .iter()
            .map(|particular| view! { <Particular draft code=particular/> })
            .collect_view()
    };
    view! { {fields} }.into_any()
}

#[component]
fn Particular(draft: CatchDraft, code: &'static str) -> impl IntoView {
    let words = say().codes;
    let value = draft.part(move |form| form.particulars.get(code).cloned().unwrap_or_default());
    let change = draft.on(move |form: &mut CatchForm, text: String| {
        if text.trim().is_empty() {
            form.particulars.remove(code);
        } else {
            form.particulars.insert(code.to_owned(), text);
        }
    });
    let unit = words.particular_unit(code);
    match code {
        "lamp_on" | "lamp_off" => view! {
            <div class="named"><label class="note" for=code>{words.particular(code)}</label><TimeLine id=code value change/></div>
        }
        .into_any(),
        "set" | "taken_up" => view! {
            <div class="named"><span class="note" aria-hidden="true">{words.particular(code)}</span><DayLine id=code name=words.particular(code) value change/></div>
        }
        .into_any(),
        _ if unit.is_empty() => view! { <Line id=code hint=words.particular(code) named=words.particular(code) value change/> }.into_any(),
        _ => view! { <WithUnit id=code name=words.particular(code) unit class="fit" value change/> }.into_any(),
    }
}

/// The lamp burns on after the save.
#[component]
pub fn OpenRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let asked = draft.part(|form| codes::burns(&form.method) && !form.nothing);
    let change = draft.on(|form: &mut CatchForm, open: bool| form.open = open);
    view! {
        <Show when=move || asked.get()>
            <Row name=words.stays_open()>
                <Check ticked=draft.part(|form| form.open) change>{words.stays_open_lamp()}</Check>
            </Row>
        </Show>
    }
    .into_any()
}
