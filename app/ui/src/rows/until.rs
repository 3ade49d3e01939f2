use super::{CatchDraft, unknown};
use crate::context::say;
use crate::parts::{DayLine, Row, TimeLine, UnknownWord};
use leptos::prelude::*;
use logbook::form::{self, CatchForm};

/// Until when; the day only where it is another one.
#[component]
pub fn UntilRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let clock = draft.part(|form| form.caught.until_clock.clone());
    let day = draft.part(|form| form.caught.until_day.clone());
    let (marked, mark) = unknown(draft, form::Row::Until);
    let on_clock = draft.on(|form: &mut CatchForm, clock: String| form.caught.until_clock = clock);
    let on_day = draft.on(|form: &mut CatchForm, day: String| form.caught.until_day = day);
    let empty = Signal::derive(move || clock.with(String::is_empty) && day.with(String::is_empty));
    view! {
        <Row of="until" name=words.until() class="together">
            <TimeLine id="until" value=clock change=on_clock/>
            <UnknownWord row=words.until() empty marked change=mark/>
            <DayLine id="until-day" name=words.until_day() value=day change=on_day/>
        </Row>
    }
    .into_any()
}
