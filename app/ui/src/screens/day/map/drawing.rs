//! The drawing: lines gathered into one path a layer, so that ten thousand events are as few elements as ten.

use super::hand::Hand;
use super::sheet::Sheet;
use crate::asset::asset;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use leptos::ev;
use leptos::prelude::*;
use leptos::svg;
use logbook::map::{Coast, Coord, DayMap, Frame, Kind, Outline, Spot, bar, graticule, north, wants_coast};
use std::fmt::Write;
use std::sync::Arc;

/// Where the coasts lie among the files of the app.
const OUTLINE: &str = "geo/outline.bin";
/// Height below the ground, for scale bar and north.
const FOOT: f64 = 36.0;
/// A spot of up to so many events carries their orders; one of more, their count in a circle.
const ORDERS_MOST: usize = 4;
/// Spots up to so far beyond the edge are drawn, for their numbers.
const BEYOND: f64 = 30.0;

/// A spot on the sheet.
#[derive(Clone, PartialEq)]
struct Drawn {
    x: f64,
    y: f64,
    orders: Vec<usize>,
    count: usize,
}

/// The map as it is drawn.
#[component]
pub fn Drawing(sheet: Sheet) -> impl IntoView {
    let words = say().day;
    let hand = Hand::new(sheet);
    let svg: NodeRef<svg::Svg> = NodeRef::new();
    measured(svg, sheet);
    let size = narrowed(move || sheet.frame().map(|frame| (frame.width(), frame.height())).unwrap_or((1.0, 1.0)));
    let box_of = move || format!("0 0 {:.0} {:.0}", size.get().0, size.get().1 + FOOT);
    let edge = move || format!("M.5 .5H{:.1}V{:.1}H.5Z", size.get().0 - 0.5, size.get().1 - 0.5);
    let drawn = narrowed(move || on_sheet(sheet).unwrap_or_default());
    view! {
        <svg node_ref=svg class="drawing chart" class:held=move || sheet.held.get() viewBox=box_of tabindex="0" role="application"
            aria-label=words.map_title() aria-describedby="map-says map-keys"
            on:pointerdown=move |event| hand.down(&event) on:pointermove=move |event| hand.moves(&event)
            on:pointerup=move |event| hand.up(&event) on:pointercancel=move |event| hand.cancel(&event)
            on:touchstart=move |event| hand.touch(&event) on:touchmove=move |event| hand.touch(&event)
            on:wheel=move |event| hand.wheel(&event) on:keydown=move |event| hand.key(&event)
            on:focus=move |_| sheet.held.set(true)>
            <defs><clipPath id="map-edge"><rect width=move || size.get().0.to_string() height=move || size.get().1.to_string()/></clipPath></defs>
            <g clip-path="url(#map-edge)" aria-hidden="true">
                <Ground sheet/>
                <path class="faint" d=move || sheet.frame().map(|frame| circles(&sheet.spots(), frame)).unwrap_or_default()/>
                <path class="track" d=move || tracks(sheet).unwrap_or_default()/>
                <path class="faint dash" d=move || way(sheet).unwrap_or_default()/>
                <path class="paper" d=move || drawn.with(|drawn| rims(drawn))/>
                <path class="solid" d=move || drawn.with(|drawn| dots(drawn))/>
                {move || drawn.with(|drawn| drawn.iter().map(|spot| number(spot, drawn, size.get_untracked())).collect_view())}
                <path class="cross" d=move || cross(sheet)/>
            </g>
            <path class="edge" d=edge/>
            <Foot sheet/>
        </svg>
    }
    .into_any()
}

/// Keeps the sheet as wide as the page makes it.
fn measured(svg: NodeRef<svg::Svg>, sheet: Sheet) {
    let measure = move || {
        let width = svg.get_untracked().map(|svg| svg.get_bounding_client_rect().width());
        if let Some(width) = width.filter(|width| *width >= 120.0) {
            sheet.width.set(width);
        }
    };
    Effect::new(move || {
        if svg.get().is_some() {
            request_animation_frame(measure);
        }
    });
    let resized = window_event_listener(ev::resize, move |_| measure());
    on_cleanup(move || resized.remove());
}

/// Coasts, borders and degrees, with the numbers of the degrees.
#[component]
fn Ground(sheet: Sheet) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let wanted = move || sheet.frame().is_some_and(wants_coast);
    let outline = asset(page, OUTLINE, Outline::read, wanted);
    let coast = narrowed(move || {
        let map = sheet.map()?;
        outline.with(|outline| outline.there().map(|outline| Arc::new(Coast::new(outline, map.ground()))))
    });
    let lines = move |kind: Kind| {
        let frame = sheet.frame().filter(|frame| wants_coast(*frame));
        let shown = frame.zip(coast.get()).map(|(frame, coast)| coast.lines(frame)).unwrap_or_default();
        shown.iter().filter(|line| line.kind == kind).map(|line| open(&line.points)).collect::<String>()
    };
    let grid = narrowed(move || sheet.map().zip(sheet.frame()).map(|(map, frame)| graticule(map.ground(), frame)));
    let path = move || {
        grid.with(|grid| {
            let lines = grid.iter().flat_map(|grid| grid.parallels.iter().chain(&grid.meridians));
            lines.map(|line| open(&line.points)).collect::<String>()
        })
    };
    let numbers = move || {
        grid.with(|grid| {
            let grid = grid.as_ref()?;
            let (north, east) = grid.decimals;
            let parallels = grid.parallels.iter().filter_map(|line| {
                let at = line.label.filter(|at| at.y > 44.0)?;
                Some(degree(4.0, at.y - 4.0, "start", words.parallel(line.degrees, north)))
            });
            let meridians = grid.meridians.iter().filter_map(|line| {
                let at = line.label.filter(|at| at.x > 48.0 && at.x < sheet.width.get_untracked() - 48.0)?;
                Some(degree(at.x, 17.0, "middle", words.meridian(line.degrees, east)))
            });
            Some(parallels.chain(meridians).collect_view())
        })
    };
    view! {
        <path class="grid" d=path/>
        <path class="coast" d=move || lines(Kind::Coast)/>
        <path class="coast dash" d=move || lines(Kind::Country)/>
        {numbers}
    }
    .into_any()
}

fn degree(x: f64, y: f64, anchor: &'static str, words: String) -> AnyView {
    view! { <text class="measure degree" text-anchor=anchor x=format!("{x:.1}") y=format!("{y:.1}")>{words}</text> }
        .into_any()
}

/// The scale bar, and the arrow to the north.
#[component]
fn Foot(sheet: Sheet) -> impl IntoView {
    let words = say().day;
    let shown = move || {
        let (map, frame) = sheet.map().zip(sheet.frame())?;
        let foot = frame.height() + 16.0;
        let bar = bar(map.ground(), frame).map(|bar| {
            view! {
                <path class="stroke" d=format!("M8 {foot}v6h{:.1}v-6", bar.length)/>
                <text x=format!("{:.1}", bar.length + 16.0) y=(foot + 9.0).to_string()>{say().dates.way(bar.metres)}</text>
            }
        });
        let turn = north(map.ground(), frame);
        let (x, y) = (frame.width() - 16.0, foot + 4.0);
        Some(view! {
            {bar}
            <path class="stroke" transform=format!("rotate({turn:.1} {x:.1} {y:.1})") d=format!("M{x:.1} {:.1}v-22m-6 8l6-8 6 8", y + 11.0)/>
            <text x=format!("{:.1}", x - 28.0) y=(foot + 13.0).to_string()>{words.north()}</text>
        })
    };
    view! { <g aria-hidden="true">{shown}</g> }.into_any()
}

fn on_sheet(sheet: Sheet) -> Option<Vec<Drawn>> {
    let (map, frame) = sheet.map().zip(sheet.frame())?;
    let spots = sheet.spots();
    Some(spots.iter().filter_map(|spot| drawn(spot, &map, frame)).collect())
}

fn drawn(spot: &Spot, map: &DayMap, frame: Frame) -> Option<Drawn> {
    let at = frame.place(spot.place);
    let first = spot.members.iter().take(ORDERS_MOST).map(|member| map.events()[*member].order);
    frame.shows(at, BEYOND).then(|| Drawn { x: at.x, y: at.y, orders: first.collect(), count: spot.members.len() })
}

impl Drawn {
    fn is_many(&self) -> bool {
        self.count > ORDERS_MOST
    }

    /// Radius of the circle round its count.
    fn rim(&self) -> f64 {
        if self.is_many() { (say().dates.number(self.count).len() as f64 * 5.0 + 5.0).max(15.0) } else { 6.0 }
    }
}

fn rims(drawn: &[Drawn]) -> String {
    drawn.iter().map(|spot| ring(spot.x, spot.y, spot.rim())).collect()
}

fn dots(drawn: &[Drawn]) -> String {
    drawn.iter().filter(|spot| !spot.is_many()).map(|spot| ring(spot.x, spot.y, 2.5)).collect()
}

/// The count in its circle, or the orders beside the point.
fn number(spot: &Drawn, all: &[Drawn], sheet: (f64, f64)) -> AnyView {
    let (words, y) = if spot.is_many() {
        (say().dates.number(spot.count), spot.y + 6.0)
    } else {
        let orders: Vec<String> = spot.orders.iter().map(usize::to_string).collect();
        (orders.join(" "), if below(spot, all, sheet.1) { spot.y + 24.0 } else { spot.y - 11.0 })
    };
    let half = words.len() as f64 * 5.0;
    let x = if (0.0..=sheet.0).contains(&spot.x) && sheet.0 > 2.0 * half {
        spot.x.clamp(half, sheet.0 - half)
    } else {
        spot.x
    };
    view! { <text class="measure" text-anchor="middle" x=format!("{x:.1}") y=format!("{y:.1}")>{words}</text> }
        .into_any()
}

/// The orders stand below their spot, unless the sheet ends there or another spot lies there.
fn below(spot: &Drawn, all: &[Drawn], height: f64) -> bool {
    let taken = all.iter().any(|other| (other.x - spot.x).abs() < 34.0 && (4.0..42.0).contains(&(other.y - spot.y)));
    let room_above = spot.y > 24.0;
    !room_above || (spot.y < height - 28.0 && !taken)
}

/// The circles of uncertainty that are larger than the points.
fn circles(spots: &[Spot], frame: Frame) -> String {
    let circle = |spot: &Spot| {
        let (place, metres) = spot.widest?;
        let (at, radius) = (frame.place(place), metres / frame.metres_per_unit());
        (radius > 7.0 && frame.shows(at, radius)).then(|| ring(at.x, at.y, radius))
    };
    spots.iter().filter_map(circle).collect()
}

/// The tracks that were recorded.
fn tracks(sheet: Sheet) -> Option<String> {
    let frame = sheet.frame()?;
    let laid = sheet.trails.laid();
    Some(laid.iter().flat_map(|laid| laid.trail.lines(frame)).map(|line| open(&line)).collect())
}

/// From event to event, where no track tells the way.
fn way(sheet: Sheet) -> Option<String> {
    if !sheet.trails.laid().is_empty() {
        return None;
    }
    let (map, frame) = sheet.map().zip(sheet.frame())?;
    let spots = sheet.spots();
    let places: Vec<_> = map.way(&spots).iter().map(|spot| frame.place(spots[*spot].place)).collect();
    Some(open(&places))
}

/// A cross in the middle of a map that was entered: Enter opens what lies there.
fn cross(sheet: Sheet) -> String {
    let middle = sheet.frame().filter(|_| sheet.held.get()).map(|frame| (frame.width() / 2.0, frame.height() / 2.0));
    middle.map(|(x, y)| format!("M{:.1} {y:.1}h20M{x:.1} {:.1}v20", x - 10.0, y - 10.0)).unwrap_or_default()
}

fn open(points: &[Coord<f64>]) -> String {
    let mut path = String::new();
    for (at, point) in points.iter().enumerate() {
        let _ = write!(path, "{}{:.1} {:.1}", if at == 0 { 'M' } else { 'L' }, point.x, point.y);
    }
    path
}

fn ring(x: f64, y: f64, radius: f64) -> String {
    format!(
        "M{:.1} {y:.1}a{radius:.1} {radius:.1} 0 1 0 {:.1} 0a{radius:.1} {radius:.1} 0 1 0 {:.1} 0",
        x - radius,
        2.0 * radius,
        -2.0 * radius
    )
}
