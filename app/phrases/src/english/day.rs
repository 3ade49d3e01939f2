//! The days, and one day.

use super::dates::{MONTHS, WEEKDAYS, way};
use super::desk::listed;
use super::{English, counted};
use crate::desk::Place;
use crate::sentences::say;
use chrono::{Datelike, NaiveDate};

say! { English says Day {
    days: "Days";
    days_events(count: usize): counted(count, "event", "events");
    days_total(days: usize, events: usize): format!("{}, {}", counted(days, "day", "days"), counted(events, "event", "events"));
    days_none: "No day yet.";
    days_none_says: "A day stands here as soon as something is logged on it, or comes with somebody’s log.";
    month(day: NaiveDate): format!("{} {}", MONTHS[day.month0() as usize], day.year());
    day_of_month(day: NaiveDate): format!("{} {}", WEEKDAYS[day.weekday().num_days_from_monday() as usize], day.day());
    go_to: "Go to a day";
    import: "Import a log";
    turn: "Days before and after";
    in_order: "Events in order";
    where_head: "Where they lie";
    map_title: "Where the events lie";
    map(places: &[Place], extent_m: f64, without: &[usize]): map(places, extent_m, without);
    map_touch: "Two fingers move and stretch the map. Tap it, and one finger moves it too. Tap an event to open it.";
    map_keys: "Keys on the map: arrows move it, + and − bring it closer or wider, 0 shows all, Enter opens what lies at the cross.";
    map_held: "One finger moves the map.";
    map_leave: "Leave the map";
    map_closer: "Closer";
    map_wider: "Wider";
    map_all: "All";
    map_shows(across_m: f64, shown: usize, of: usize): shows(across_m, shown, of);
    map_middle(site: &str, orders: &[usize]): format!("At the cross: {}.", event_at(site, orders));
    map_here(count: usize): format!("{} lie here:", counted(count, "event", "events"));
    map_event(order: usize, site: &str): format!("{order} {}", if site.is_empty() { "no site written" } else { site });
    map_track(name: &str, metres: f64): format!("Track: {name}, {}.", way(metres));
    map_track_away: "Take away";
    map_track_gone(name: &str): format!("The track “{name}” is no longer kept.");
    map_track_again: "Keep it after all";
    map_coast: "Coasts and borders are coarse: up to 3.6 km off.";
    parallel(degrees: f64, decimals: usize): degree(degrees, decimals, "N", "S");
    meridian(degrees: f64, decimals: usize): degree(degrees, decimals, "E", "W");
    north: "N";
    without(orders: &[usize]): without(orders);
    none_placed: "No event of this day has coordinates yet.";
    counts: "Counts";
    by_method: "Events by method";
    by_host: "Containers by host";
    no_host: "no host given";
    bar_count: "n";
    drawn: "drawn";
    others(count: usize): format!("and {} more", super::dates::grouped(count));
    export: "Export day";
    search: "Search";
    empty: "Nothing logged on this day.";
    empty_says: "If you were out and caught nothing, that is a result. It takes one tap.";
    nothing_caught: "Nothing caught";
    from_notes: "Add from notes";
    days_how_1: "Every day with events stands here, the newest first. A night counts for its evening.";
    days_how_2: "Open a day to see what is still missing from it, and to export it.";
    how_1: "A day holds what was caught on it; a night counts for its evening.";
    how_2: "The caret says that something goes here. Nothing is forbidden: it stays on this list until it is written or marked unknown.";
    how_3: "Two strokes mark a number that two containers carry.";
    how_4: "Export when the day is done. Until then it exists only on this phone.";
} }

const DIRECTIONS: [&str; 8] =
    ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
const SMALL: [&str; 10] = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"];
/// So many places are named in a sentence, and so many events of one; the others are counted.
const PLACES_SAID: usize = 8;
const ORDERS_SAID: usize = 12;

fn map(places: &[Place], extent_m: f64, missing: &[usize]) -> String {
    let count = SMALL.get(places.len()).map_or_else(|| places.len().to_string(), |word| (*word).to_owned());
    let noun = if places.len() == 1 { "place" } else { "places" };
    let within = if places.len() > 1 { format!(" within {}", way(extent_m)) } else { String::new() };
    let mut each: Vec<String> = places.iter().take(PLACES_SAID).map(place).collect();
    if places.len() > PLACES_SAID {
        each.push(format!("and {} more", super::dates::grouped(places.len() - PLACES_SAID)));
    }
    let said = format!("{count} {noun}{within}: {}.", each.join("; "));
    if missing.is_empty() { said } else { format!("{said} {}", without(missing)) }
}

fn place(place: &Place) -> String {
    let site = if place.site.is_empty() { "no site written" } else { &place.site };
    let from = place.from_first.filter(|(metres, _)| *metres >= 1.0);
    let from = from.map(|(metres, eighth)| format!(", {} {}", way(metres), DIRECTIONS[eighth % 8])).unwrap_or_default();
    format!("{site}{from}, with {}", events(&place.orders))
}

fn shows(across_m: f64, shown: usize, of: usize) -> String {
    let (shown, all) = (super::dates::grouped(shown), counted(of, "event", "events"));
    let which = if of == 1 && shown == "1" { "its event".to_owned() } else { format!("{shown} of {all}") };
    format!("{} from side to side, {which}.", way(across_m))
}

fn event_at(site: &str, orders: &[usize]) -> String {
    let events = events(orders);
    if site.is_empty() { events } else { format!("{events}, {site}") }
}

/// Degrees with the letter of their half of the Earth; none on the line between the halves.
fn degree(degrees: f64, decimals: usize, above: &str, below: &str) -> String {
    let number = format!("{:.decimals$}°", degrees.abs());
    let on_the_line = number.chars().all(|each| matches!(each, '0' | '.' | '°')) || number.starts_with("180");
    if on_the_line { number } else { format!("{number} {}", if degrees > 0.0 { above } else { below }) }
}

fn events(orders: &[usize]) -> String {
    let mut words: Vec<String> = orders.iter().take(ORDERS_SAID).map(usize::to_string).collect();
    if orders.len() > ORDERS_SAID {
        words.push(format!("{} more", super::dates::grouped(orders.len() - ORDERS_SAID)));
    }
    format!("{} {}", if orders.len() == 1 { "event" } else { "events" }, listed(&words))
}

fn without(orders: &[usize]) -> String {
    let said = super::large(&events(orders));
    format!("{said} {} no coordinates yet.", if orders.len() == 1 { "has" } else { "have" })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_map_is_said_in_a_sentence() {
        let first = Place { site: "Mill Meadow".into(), orders: vec![1, 2, 5], from_first: None };
        let second = Place { site: String::new(), orders: vec![3], from_first: Some((904.0, 1)) };
        assert_eq!(
            map(&[first, second], 904.0, &[6]),
            "Two places within 904 m: Mill Meadow, with events 1, 2 and 5; no site written, 904 m north-east, with event 3. Event 6 has no coordinates yet."
        );
    }

    #[test]
    fn many_places_and_events_are_counted() {
        let orders: Vec<usize> = (1..=20).collect();
        assert_eq!(events(&orders), "events 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 8 more");
        let many = vec![Place { site: "S".into(), orders: vec![1], from_first: None }; 1_010];
        assert!(map(&many, 900.0, &[]).ends_with("S, with event 1; and 1,002 more."));
    }

    #[test]
    fn degrees_carry_their_half_of_the_earth() {
        assert_eq!([47.62, -0.5, 0.0].map(|north| degree(north, 2, "N", "S")), ["47.62° N", "0.50° S", "0.00°"]);
        assert_eq!([-180.0, -90.0].map(|east| degree(east, 0, "E", "W")), ["180°", "90° W"]);
    }

    #[test]
    fn what_a_map_shows_is_said() {
        assert_eq!(shows(2_400.0, 3, 7), "2.4 km from side to side, 3 of 7 events.");
        assert_eq!(shows(150.0, 1, 1), "150 m from side to side, its event.");
    }
}
