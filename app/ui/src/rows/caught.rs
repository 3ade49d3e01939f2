use super::CatchDraft;
use crate::context::{say, use_page};
use crate::parts::{Check, DayLine, Row, TimeLine};
use leptos::prelude::*;
use logbook::form::{CatchForm, Source};

/// The time of catch: now, until another time is chosen.
#[component]
pub fn CaughtRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let now = draft.part(|form| form.caught.now);
    let tick = move |event: web_sys::Event| {
        let on = event_target_checked(&event);
        draft.change(|form| if on { form.caught_here_and_now(page.moment()) } else { form.caught_otherwise() });
    };
    let clock = draft.on(|form: &mut CatchForm, clock: String| {
        form.caught_otherwise();
        form.caught.clock = clock;
    });
    let day = draft.on(|form: &mut CatchForm, day: String| {
        form.caught_otherwise();
        form.caught.day = day;
    });
    let night = draft.on(|form: &mut CatchForm, night: bool| form.caught.night = night);
    let saved = draft.form.with_untracked(|form| form.event.is_some());
    let detached = draft.part(|form| !form.caught.now && form.place.source == Source::None && form.event.is_none());
    let asks_night = draft.part(|form| form.method == "light" || form.caught.night);
    view! {
        <Row of="caught" name=words.caught() class="together">
            <label class="word fit" hidden=saved>
                <input type="checkbox" prop:checked=now aria-describedby="caught-note" on:change=tick/><span>{words.caught_now()}</span>
            </label>
            <TimeLine id="caught" value=draft.part(|form| form.caught.clock.clone()) change=clock/>
            <DayLine id="caught-day" name=words.caught_day() value=draft.part(|form| form.caught.day.clone()) change=day/>
            <span class="unseen" id="caught-note">{words.caught_detaches()}</span>
            <p class="note" hidden=move || !detached.get()>{say().place.detached()}</p>
            <span hidden=move || !asks_night.get()>
                <Check ticked=draft.part(|form| form.caught.night) change=night>{words.caught_night()}</Check>
            </span>
        </Row>
    }
    .into_any()
}
