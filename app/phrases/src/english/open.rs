//! What is still going on: lamps and traps.

use super::codes::containers;
use super::dates::plain;
use super::{English, counted, large};
use crate::sentences::say;
use chrono::NaiveDate;

say! { English says Open {
    add_container: "Add container";
    lamp_off: "Lamp off";
    lamp_off_at(clock: &str): format!("Lamp off {clock}");
    service: "Service traps";
    lamp_since(clock: &str, day: Option<NaiveDate>): since("Lamp since", clock, day);
    open_since(clock: &str, day: Option<NaiveDate>): since("Open since", clock, day);
    containers(count: usize): containers(count);
    due(days: i64): due(days);
    lamp_on_for: "lamp on for";
    night: "The night";
    night_span(on: &str, count: usize, now: &str): format!("Noon to noon. Lamp on from {on}; {} so far; now {now}.", containers(count));
    traps_span(count: u32): format!("{} in the ground, in walking order.", large(&counted(count as usize, "trap", "traps")));
    next_container: "Next container";
    caught_at: "caught at";
    ago(minutes: i64): format!("{} ago.", super::ENGLISH.dates.minutes_long(minutes));
    free: "Free on this phone.";
    own_host_says: "Written here before. What came to the lamp itself has none.";
    tonight: "Tonight";
    none_yet: "Nothing yet.";
    when_off: "When the lamp went off";
    off_now(clock: &str): format!("now, {clock}");
    off_earlier: "earlier";
    off_hour: "Off at";
    closes_at(minutes: i64): format!("Closes it after {}. Containers can still be added.", super::ENGLISH.dates.minutes_long(minutes));
    close: "Close it";
    close_at(clock: &str): format!("Close it {clock}");
    whole_event: "The whole event";
    closed: "The lamp is off. Containers can still be added.";
    off_done: "Lamp off.";
    add(vessel: &str): format!("Add {}", super::ENGLISH.codes.vessel(vessel));
    night_how_1: "Each container keeps the hour at which it was filled. “Now” follows the clock; type another hour when you write it up later.";
    night_how_2: "The night is one event, noon to noon, and counts for its evening.";
    trap_title: "Trap";
    trap_in_ground: "in the ground for";
    trap_up: "Taken up";
    trap_up_day: "Taken up on";
    trap_found: "Found";
    trap_set: "Set";
    trap_set_day: "Set on";
    trap_kind: "Trap";
    trap_own: "Own number";
    trap_bait: "Bait";
    trap_fluid: "Fluid";
    trap_opening: "Opening";
    trap_opening_unit: "cm";
    trap_count: "How many";
    trap_due: "Due after";
    trap_due_unit: "days";
    trap_empty: "Empty it, leave it set";
    trap_empty_says: "Emptied and left: this interval closes, the next begins now.";
    trap_services: "Emptied before";
    trap_take_up: "Take up";
    trap_set_title: "Set a trap";
    trap_set_do: "Set trap";
    trap_where: "Where";
    trap_stands: "It stands under “Open now” until it is taken up.";
    trap_caution: "Animals drink from traps: a roof, no ethylene glycol, and what your permit says.";
    trap_set_done: "Trap set.";
    trap_up_done: "Trap taken up.";
    trap_how_1: "A trap in the ground is not an event. Each time it is emptied, the interval since it was set becomes one.";
    trap_how_2: "A trap that caught nothing, or was flooded or dug out, is a result: say so and save.";
} }

fn since(words: &str, clock: &str, day: Option<NaiveDate>) -> String {
    match day {
        Some(day) => format!("{words} {}, {clock}", super::ENGLISH.dates.short(day)),
        None => format!("{words} {clock}"),
    }
}

fn due(days: i64) -> String {
    match days {
        0 => "due today".into(),
        1 => "due tomorrow".into(),
        2.. => format!("due in {days} days"),
        -1 => "due since yesterday".into(),
        _ => format!("due since {} days", plain(-days as f64)),
    }
}
