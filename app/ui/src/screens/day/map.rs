//! Where the events of a day lie: a map to be dragged, stretched and tapped. Ink on ground, degrees in hair lines, scale bar,
//! north; what a hand does to it stands in [`hand`], what it shows in [`sheet`].
//!
//! One finger scrolls the page over it until the map is entered by a tap: on a phone held in one hand the map must not be a
//! trap. Sideways one finger always moves it, and two fingers do in every direction.

mod below;
mod drawing;
mod hand;
mod sheet;
mod trails;

use crate::context::say;
use crate::narrow::narrowed;
use below::{Buttons, Chosen, Shows};
use drawing::Drawing;
use leptos::prelude::*;
use logbook::map::{DayMap, Whereabouts};
use logbook::view::DayView;
use phrases::desk::Place;
use sheet::Sheet;
use std::sync::Arc;
use trails::Tracks;

/// The map, with a sentence that says the same.
#[component]
pub fn Map(view: Memo<DayView>) -> impl IntoView {
    let words = say().day;
    let placed = narrowed(move || view.with(|view| view.map.is_some()));
    let drawn = move || match placed.get() {
        true => view! { <Figure view/> }.into_any(),
        false => view! { <p class="note">{words.none_placed()}</p> }.into_any(),
    };
    view! { <section class="part" aria-labelledby="where"><h2 id="where">{words.where_head()}</h2>{drawn}</section> }
        .into_any()
}

#[component]
fn Figure(view: Memo<DayView>) -> impl IntoView {
    let words = say().day;
    let sheet = Sheet::new(view);
    let without = narrowed(move || view.with(|view| view.without_place.clone()));
    let says = move || sheet.map().map(|map| without.with(|without| sentence(&map, without))).unwrap_or_default();
    let missing = move || without.with(|without| (!without.is_empty()).then(|| words.without(without)));
    view! {
        <figure class="map" id="map">
            <Drawing sheet/>
            <Buttons sheet/>
            <figcaption>
                <p class="unseen" id="map-says">{says}</p>
                <Shows sheet/>
                <Chosen sheet/>
                <Tracks trails=sheet.trails/>
                {move || missing().map(|missing| view! { <p class="note">{missing}</p> })}
                <p class="note desk-note" id="map-keys">{words.map_keys()}</p>
            </figcaption>
        </figure>
    }
    .into_any()
}

/// The map in a sentence, as it is when all is shown.
fn sentence(map: &DayMap, without: &[usize]) -> String {
    let places: Vec<Place> = sheet::spots_of_all(map).iter().map(place).collect();
    say().day.map(&places, map.ground().extent().metres(), without)
}

fn place(spot: &Whereabouts) -> Place {
    Place { site: spot.site.clone(), orders: spot.orders.clone(), from_first: spot.from_first }
}

/// What the parts of the map hand about.
type Shared = Arc<DayMap>;
