use super::CatchDraft;
use crate::asset::{Asset, asset};
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use leptos::prelude::*;
use logbook::form::CatchForm;
use logbook::heights::{DeviceHeight, Geoid, Grounds, Zero, device_height, needs_geoid};

/// Where the geoid lies among the files of the app.
const GEOID: &str = "geo/egm96.bin";

/// The height that the device's altitude makes, how it was made, and the button that takes it.
#[component]
pub fn DeviceHeightOffer(
    /// The form.
    draft: CatchDraft,
) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let place = draft.part(|form| form.place.clone());
    let platform = page.ports().device.platform();
    let needed = narrowed(move || {
        page.logbook.with(|logbook| place.with(|place| needs_geoid(place, platform, logbook.device())))
    });
    let geoid = asset(page, GEOID, Geoid::read, move || needed.get());
    let height = narrowed(move || {
        let geoid = geoid.read();
        page.logbook.with(|logbook| place.with(|place| device_height(place, platform, logbook.device(), geoid.there())))
    });
    let raw = move || {
        let failed = matches!(*geoid.read(), Asset::Failed);
        let raw = place.with(|place| place.altitude_m).filter(|_| failed);
        raw.map(|raw| view! { <p class="note">{words.elevation_raw(raw)}</p> })
    };
    let offer = move |height: DeviceHeight| {
        let take = move |_| draft.change(|form| taken(form, &height));
        view! {
            <p>{words.elevation_sea(height.metres, height.plus_minus_m)}</p>
            <p class="note">{how_words(&height)}</p>
            <button class="button quiet" type="button" on:click=take>{words.elevation_take(height.metres)}</button>
        }
    };
    view! { {move || height.get().map(offer)} {raw} }.into_any()
}

fn taken(form: &mut CatchForm, height: &DeviceHeight) {
    form.elevation = height.metres.to_string();
    form.elevation_zero = height.zero.code().to_owned();
    form.elevation_confirmed = true;
}

fn how_words(height: &DeviceHeight) -> String {
    let words = say().catch;
    let from = match (height.zero, height.undulation_m) {
        (Zero::Ellipsoid, Some(undulation)) => words.elevation_from_ellipsoid(height.raw_m, undulation),
        (Zero::Ellipsoid, None) | (Zero::SeaLevel, _) => words.elevation_from_sea().to_owned(),
    };
    match (height.grounds, height.zero) {
        (Grounds::Person, Zero::SeaLevel) => words.elevation_said().to_owned(),
        (Grounds::Person, Zero::Ellipsoid) => format!("{from} {}", words.elevation_said()),
        (Grounds::Specification, _) => format!("{from} {}", words.elevation_unsure()),
        (Grounds::Platform, _) => from,
    }
}
