use crate::context::say;
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Line, WithUnit};
use leptos::prelude::*;
use logbook::form::PlaceForm;
use logbook::typed::{Datum, Reading, read_datum, read_typed};

/// Coordinates as a person has them; what was understood stands below.
#[component]
pub fn TypedPlace(
    /// The position.
    place: Signal<PlaceForm>,
    /// Called with the new one.
    change: Callback<PlaceForm>,
) -> impl IntoView {
    let words = say().place;
    let text = Signal::derive(move || place.with(|place| place.typed.clone()));
    let radius = Signal::derive(move || place.with(|place| place.radius.clone()));
    let read = narrowed(move || read_typed(&text.get()));
    let write = Callback::new(move |typed: String| change.run(place.get_untracked().with_typed(&typed)));
    let write_radius = Callback::new(move |radius: String| change.run(PlaceForm { radius, ..place.get_untracked() }));
    let datum = Signal::derive(move || place.with(|place| place.datum.clone()));
    let write_datum = Callback::new(move |datum: String| change.run(place.get_untracked().with_datum(&datum)));
    let datum_says = move || {
        read_datum(&datum.get()).map_or_else(
            || words.datum_wgs84().to_owned(),
            |read| match read {
                Datum::Wgs84 => words.datum_wgs84().to_owned(),
                Datum::Unconverted(known) => words.datum_known(known.code, known.shift.metres()),
                Datum::Unknown => words.datum_unknown(read.share().radius.metres()),
            },
        )
    };
    let pick = move |reading: Reading| {
        let several = read.with(|read| read.readings.len() > 1);
        let (latitude, longitude) = reading.written.coordinates.clone();
        let says = explain::notation(reading.notation);
        let take = move |_| change.run(place.get_untracked().with_reading(Some(&reading)));
        view! {
            <p class="measure">{latitude}" "{longitude}</p>
            <p class="note">{says}</p>
            <button class="button quiet" type="button" hidden=!several on:click=take>{words.pick()}</button>
        }
    };
    let unsure = move || read.with(|read| read.readings.len() > 1).then(|| view! { <p>{words.pick_says()}</p> });
    let understood = move || read.with(|read| read.readings.clone()).into_iter().map(pick).collect_view();
    let problems = move || {
        let problems = read.with(explain::place_problems);
        let show = text.with(|text| !text.trim().is_empty());
        show.then(|| problems.into_iter().map(|problem| view! { <p class="note">{problem}</p> }).collect_view())
    };
    view! {
        <div class="typed-place" role="group" aria-label=words.typed()>
            <label class="unseen" for="coordinates">{words.typed()}</label>
            <Line id="coordinates" class="measure" hint=words.typed_hint() described="coordinates-say" value=text change=write/>
            <div id="coordinates-say" aria-live="polite">{unsure}{understood}{problems}</div>
            <div class="named">
                <label class="note" for="datum">{words.datum()}</label>
                <Line id="datum" hint=words.datum_hint() described="datum-says" value=datum change=write_datum/>
            </div>
            <p class="note" id="datum-says">{datum_says}</p>
            <WithUnit id="radius" name=words.radius() unit=words.radius_unit() sign="±" class="radius" value=radius change=write_radius/>
        </div>
    }
    .into_any()
}
