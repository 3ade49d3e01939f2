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

fn map(places: &[Place], extent_m: f64, missing: &[usize]) -> String {
    let count = SMALL.get(places.len()).map_or_else(|| places.len().to_string(), |word| (*word).to_owned());
    let noun = if places.len() == 1 { "place" } else { "places" };
    let within = if places.len() > 1 { format!(" within {}", way(extent_m)) } else { String::new() };
    let each: Vec<String> = places.iter().map(place).collect();
    let said = format!("{count} {noun}{within}: {}.", each.join("; "));
    if missing.is_empty() { said } else { format!("{said} {}", without(missing)) }
}

fn place(place: &Place) -> String {
    let site = if place.site.is_empty() { "no site written" } else { &place.site };
    let from = place.from_first.filter(|(metres, _)| *metres >= 1.0);
    let from = from.map(|(metres, eighth)| format!(", {} {}", way(metres), DIRECTIONS[eighth % 8])).unwrap_or_default();
    format!("{site}{from}, with {}", events(&place.orders))
}

fn events(orders: &[usize]) -> String {
    let words: Vec<String> = orders.iter().map(usize::to_string).collect();
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
}
