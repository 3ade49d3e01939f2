use super::{CatchDraft, unknown};
use crate::context::say;
use crate::far;
use crate::parts::{Row, UnknownWord, WithUnit};
use leptos::prelude::*;
use logbook::form::{self, CatchForm};

/// The height of the ground. What the device says is shown, and counts only once a person has taken it.
#[component]
pub fn ElevationRow(draft: CatchDraft) -> impl IntoView {
    let words = say().catch;
    let value = draft.part(|form| form.elevation.clone());
    let raw = draft.part(|form| form.place.altitude_m);
    let taken = draft.part(|form| form.elevation_confirmed);
    let (marked, mark) = unknown(draft, form::Row::Elevation);
    let change = draft.on(|form: &mut CatchForm, text: String| {
        form.elevation = text;
        form.elevation_confirmed = false;
    });
    let says = move || match (taken.get(), raw.get(), value.with(String::is_empty)) {
        (true, ..) => view! { <p class="note">{words.elevation_taken()}</p> }.into_any(),
        (false, Some(_), true) => far::device_height(draft),
        _ => ().into_any(),
    };
    view! {
        <Row of="elevation" name=words.elevation()>
            <div class="together">
                <WithUnit id="elevation" name=words.elevation_unit() unit=say().place.radius_unit() figure="grow" value change/>
                <UnknownWord row=words.elevation() empty=Signal::derive(move || value.with(String::is_empty)) marked change=mark/>
            </div>
            {says}
        </Row>
    }
    .into_any()
}
