//! How large a millimetre is on this screen, as a person measures it.

use crate::context::{Context, say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Sign, WithUnit};
use leptos::prelude::*;
use logbook::setup::{Calibration, DeviceSettings};

/// CSS pixels in what a browser takes for a millimetre: 96 in an inch.
const PIXELS_PER_MM: f64 = 96.0 / 25.4;
/// Length of the bar in those millimetres.
const BAR: f64 = 50.0;

/// A bar to be measured, and what was measured.
#[component]
pub fn Calibrate() -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let typed = RwSignal::new(String::new());
    let measured = narrowed(move || page.logbook.with(|logbook| logbook.device().calibration.is_some()));
    let read = move || {
        typed
            .with(|typed| typed.trim().replace(',', ".").parse::<f64>().ok())
            .filter(|length| (10.0..=250.0).contains(length))
    };
    let set = move |_| {
        if let Some(length) = read() {
            keep(page, Some(Calibration { pixels_per_mm: BAR * PIXELS_PER_MM / length }));
        }
    };
    view! {
        <div class="stack">
            <p>{words.calibrate_says()}</p>
            <svg class="drawing" width=format!("{BAR}mm") height="6mm" viewBox="0 0 50 6" aria-hidden="true"><path class="stroke still" d="M.3 0v6M49.7 0v6M0 3h50"/></svg>
            <div class="together">
                <WithUnit id="measured" name=words.calibrate_measured() unit=words.calibrate_unit() figure="few" value=typed change=Callback::new(move |value| typed.set(value))/>
                <button class="button fit" type="button" disabled=move || read().is_none() on:click=set>{words.calibrate_set()}</button>
            </div>
            <div hidden=move || !measured.get()>
                <p class="mark sure" role="status">{Sign::Tick.draw()}<span>{words.calibrated()}</span></p>
                <button class="button quiet" type="button" on:click=move |_| keep(page, None)>{words.calibrate_off()}</button>
            </div>
        </div>
    }
    .into_any()
}

fn keep(page: Context, calibration: Option<Calibration>) {
    let device = page.logbook.with_untracked(|logbook| DeviceSettings { calibration, ..logbook.device().clone() });
    page.set_device(device);
}
