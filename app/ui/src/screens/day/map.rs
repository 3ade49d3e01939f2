//! Where the events of a day lie: ink on ground, kilometre grid in hair lines, scale bar, north.

use crate::context::say;
use crate::narrow::narrowed;
use leptos::prelude::*;
use logbook::view::{DayMap, DayView, Spot};
use phrases::desk::Place;

/// Width of the drawing.
const WIDTH: f64 = 358.0;
/// Height below the map, for the scale bar.
const FOOT: f64 = 34.0;

/// The drawing, with a sentence that says the same.
#[component]
pub fn Map(view: Memo<DayView>) -> impl IntoView {
    let words = say().day;
    let map = narrowed(move || view.with(|view| (view.map.clone(), view.without_place.clone())));
    let drawn = move || match map.get() {
        (Some(map), without) => view! { <Drawing map without/> }.into_any(),
        (None, _) => view! { <p class="note">{words.none_placed()}</p> }.into_any(),
    };
    view! { <section class="part" aria-labelledby="where"><h2 id="where">{words.where_head()}</h2>{drawn}</section> }
        .into_any()
}

#[component]
fn Drawing(map: DayMap, without: Vec<usize>) -> impl IntoView {
    let words = say().day;
    let says = words.map(&places(&map), map.extent_m, &without);
    let missing = (!without.is_empty()).then(|| words.without(&without));
    let bottom = map.height + FOOT;
    let grid: String = map
        .grid_x
        .iter()
        .map(|x| format!("M{x:.1} 0V{:.1}", map.height))
        .chain(map.grid_y.iter().map(|y| format!("M0 {y:.1}H{WIDTH}")))
        .collect();
    let way: Vec<String> = map.way.iter().map(|(x, y)| format!("{x:.1} {y:.1}")).collect();
    let way = if way.len() > 1 { format!("M{}", way.join("L")) } else { String::new() };
    let (metres, length) = map.bar;
    let foot = map.height + 16.0;
    view! {
        <figure class="map">
            <svg class="drawing" viewBox=format!("0 0 {WIDTH} {bottom}") role="img" aria-labelledby="map-title map-says">
                <title id="map-title">{words.map_title()}</title>
                <desc id="map-says">{says}</desc>
                <defs><clipPath id="map-edge"><rect width=WIDTH.to_string() height=map.height.to_string()/></clipPath></defs>
                <path class="grid" d=grid/>
                <g clip-path="url(#map-edge)">{map.spots.iter().map(accuracy).collect_view()}<path class="faint dash" d=way/></g>
                {map.spots.iter().map(|spot| point(spot, &map)).collect_view()}
                <path class="stroke" d=format!("M8 {foot}v6h{length:.1}v-6")/>
                <text x=format!("{:.1}", length + 16.0) y=(foot + 8.0).to_string()>{say().dates.way(metres)}</text>
                <path class="stroke" d=format!("M346 {}v-22M340 {}l6-8 6 8", foot + 13.0, foot - 1.0)/>
                <text x="322" y=(foot + 13.0).to_string()>{words.north()}</text>
            </svg>
            {missing.map(|missing| view! { <figcaption class="note">{missing}</figcaption> })}
        </figure>
    }
    .into_any()
}

fn accuracy(spot: &Spot) -> Option<AnyView> {
    let radius = spot.radius.filter(|radius| *radius > 7.0)?;
    Some(view! { <circle class="faint" cx=format!("{:.1}", spot.x) cy=format!("{:.1}", spot.y) r=format!("{radius:.1}")/> }.into_any())
}

fn point(spot: &Spot, map: &DayMap) -> AnyView {
    let (x, y) = (format!("{:.1}", spot.x), format!("{:.1}", spot.y));
    let orders: Vec<String> = spot.orders.iter().take(4).map(usize::to_string).collect();
    let more = if spot.orders.len() > 4 { " …" } else { "" };
    let at = (spot.x.clamp(18.0, WIDTH - 18.0), if below(spot, map) { spot.y + 25.0 } else { spot.y - 11.0 });
    view! {
        <circle class="paper" cx=x.clone() cy=y.clone() r="6"/><circle class="solid" cx=x cy=y r="2.5"/>
        <text class="measure" text-anchor="middle" x=format!("{:.1}", at.0) y=format!("{:.1}", at.1)>{orders.join(" ")}{more}</text>
    }
    .into_any()
}

/// The orders stand below their spot, unless the drawing ends there or another spot lies there.
fn below(spot: &Spot, map: &DayMap) -> bool {
    let taken =
        map.spots.iter().any(|other| (other.x - spot.x).abs() < 30.0 && (4.0..38.0).contains(&(other.y - spot.y)));
    let room_above = spot.y > 24.0;
    !room_above || (spot.y < map.height - 28.0 && !taken)
}

/// The spots as the sentence names them: way and direction from the first one.
fn places(map: &DayMap) -> Vec<Place> {
    let (metres, length) = map.bar;
    let scale = if length > 0.0 { metres / length } else { 0.0 };
    let first = map.spots.first().map(|spot| (spot.x, spot.y)).unwrap_or_default();
    let place = |(index, spot): (usize, &Spot)| {
        let (east, south) = (spot.x - first.0, spot.y - first.1);
        let way = (east * east + south * south).sqrt() * scale;
        let from_first = (index > 0).then(|| (way, eighth(east, -south)));
        Place { site: spot.site.clone(), orders: spot.orders.clone(), from_first }
    };
    map.spots.iter().enumerate().map(place).collect()
}

/// Direction in eighths of a turn, from north by east.
fn eighth(east: f64, north: f64) -> usize {
    /// The tangent of 22.5 degrees: half an eighth to both sides.
    const HALF: f64 = 0.414_213_562_373_095;
    match (east.abs() <= HALF * north.abs(), north.abs() <= HALF * east.abs()) {
        (true, _) => {
            if north >= 0.0 {
                0
            } else {
                4
            }
        }
        (false, true) => {
            if east > 0.0 {
                2
            } else {
                6
            }
        }
        (false, false) => match (east > 0.0, north > 0.0) {
            (true, true) => 1,
            (true, false) => 3,
            (false, false) => 5,
            (false, true) => 7,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn directions_are_eighths_of_a_turn() {
        let ways =
            [(0.0, 1.0), (1.0, 1.0), (1.0, 0.1), (1.0, -0.9), (0.1, -1.0), (-1.0, -1.0), (-1.0, 0.0), (-0.9, 1.0)];
        assert_eq!(ways.map(|(east, north)| eighth(east, north)), [0, 1, 2, 3, 4, 5, 6, 7]);
    }

    #[test]
    fn the_sentence_measures_from_the_first_spot() {
        let spot = |x, y, order| Spot { x, y, radius: None, orders: vec![order], site: "S".into() };
        let map = DayMap {
            height: 180.0,
            spots: vec![spot(70.0, 138.0, 1), spot(170.0, 38.0, 2)],
            grid_x: vec![],
            grid_y: vec![],
            bar: (1000.0, 100.0),
            extent_m: 1414.0,
            way: vec![],
        };
        let places = places(&map);
        assert_eq!(places[0].from_first, None);
        let (metres, direction) = places[1].from_first.expect("it is not the first");
        assert_eq!((metres.round(), direction), (1414.0, 1));
    }
}
