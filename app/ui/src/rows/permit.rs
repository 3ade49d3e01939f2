use super::CatchDraft;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Line, Offer, Offers, Row};
use leptos::prelude::*;
use logbook::form::CatchForm;
use logbook::moment::read_day;
use logbook::offers::OfferedPermit;

/// The permit: its number as typed, those that hold on the day offered.
#[component]
pub fn PermitRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let value = draft.part(|form| form.permit.clone());
    let change = draft.on(|form: &mut CatchForm, number: String| form.permit = number);
    let known = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form).permits)));
    let note = move || {
        let chosen = known.with(|known| known.iter().find(|permit| permit.number == value.get()).cloned());
        chosen.map(|permit| covers(&permit))
    };
    let offers = narrowed(move || {
        let offered = |permit: OfferedPermit| Offer {
            code: permit.number.clone(),
            note: covers(&permit),
            words: permit.number,
            latin: false,
        };
        known.get().into_iter().filter(|permit| permit.number != value.get()).map(offered).collect::<Vec<_>>()
    });
    view! {
        <Row of="permit" name=words.permit()>
            <Line id="permit" class="measure" capitals="characters" value change/>
            <p class="note">{move || note().unwrap_or_else(|| words.permit_says().to_owned())}</p>
            <Offers name=words.permit() offers take=Callback::new(move |offer: Offer| change.run(offer.code))/>
        </Row>
    }
    .into_any()
}

fn covers(permit: &OfferedPermit) -> String {
    let until = read_day(&permit.until).map(|day| say().catch.permit_until(day));
    [Some(permit.area.clone()).filter(|area| !area.is_empty()), until]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(", ")
}
