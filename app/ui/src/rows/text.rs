use super::{CatchDraft, unknown};
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Line, Offer, Offers, Row, UnknownWord, WithUnit};
use leptos::prelude::*;
use logbook::form::{self, CatchForm};

/// The weather.
#[component]
pub fn WeatherRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let value = draft.part(|form| form.weather.clone());
    let (marked, mark) = unknown(draft, form::Row::Weather);
    let change = draft.on(|form: &mut CatchForm, text: String| form.weather = text);
    view! {
        <Row of="weather" name=words.weather() class="together">
            <Line id="weather" value change still=marked/>
            <UnknownWord row=words.weather() empty=Signal::derive(move || value.with(String::is_empty)) marked change=mark/>
        </Row>
    }
    .into_any()
}

/// Notes.
#[component]
pub fn NotesRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let change = draft.on(|form: &mut CatchForm, text: String| form.notes = text);
    view! {
        <Row of="notes" name=words.notes()>
            <Line id="notes" hint=words.notes_hint() capitals="sentences" value=draft.part(|form| form.notes.clone()) change/>
        </Row>
    }
    .into_any()
}

/// Height above the ground.
#[component]
pub fn HeightRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let change = draft.on(|form: &mut CatchForm, text: String| form.height = text);
    view! {
        <Row of="height" name=words.height()>
            <WithUnit id="height" unit=words.height_unit() figure="few" value=draft.part(|form| form.height.clone()) change/>
        </Row>
    }
    .into_any()
}

/// Under bark, in dung …
#[component]
pub fn MicrohabitatRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let value = draft.part(|form| form.microhabitat.clone());
    let change = draft.on(|form: &mut CatchForm, text: String| form.microhabitat = text);
    let offers = narrowed(move || {
        let known = page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form).microhabitats));
        let typed = value.get().to_lowercase();
        let fits = |known: &String| {
            !typed.is_empty() && known.to_lowercase().starts_with(&typed) && known.to_lowercase() != typed
        };
        known
            .into_iter()
            .filter(fits)
            .map(|words| Offer { code: words.clone(), words, ..Offer::default() })
            .collect::<Vec<_>>()
    });
    view! {
        <Row of="micro" name=words.microhabitat()>
            <Line id="micro" hint=words.microhabitat_hint() value change/>
            <Offers name=words.microhabitat() offers take=Callback::new(move |offer: Offer| change.run(offer.code))/>
        </Row>
    }
    .into_any()
}

/// The event's own number.
#[component]
pub fn StationRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let change = draft.on(|form: &mut CatchForm, text: String| form.station = text);
    view! {
        <Row of="station" name=words.station()>
            <Line id="station" class="measure" capitals="characters" value=draft.part(|form| form.station.clone()) change/>
        </Row>
    }
    .into_any()
}
