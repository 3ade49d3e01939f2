//! A saved event.

use super::dates::grouped;
use super::{English, counted};
use crate::sentences::say;

say! { English says Event {
    untitled: "No site written";
    order(order: usize, of: usize): format!("event {order} of {}", grouped(of));
    turn: "Events of the day";
    event(order: usize): format!("Event {order}");
    containers: "Containers";
    no_containers: "No container.";
    add_container: "Add container";
    host_head: "On what";
    host_change: "on what";
    where_head: "Where";
    where_change: "where";
    when_head: "When and how";
    when_change: "when and how";
    whom_head: "With whom";
    whom_change: "with whom";
    nothing_written: "nothing written";
    marked_unknown: "unknown";
    site: "Site";
    position: "Position";
    radius_reading(share: u8, most: Option<u64>): match most {
        Some(most) => format!("As the device reported it: {share} of 100 fixes lie within. 95 of 100 lie within ±{most} m."),
        None => format!("As the device reported it: {share} of 100 fixes lie within."),
    };
    radius: "Radius";
    elevation: "Elevation";
    altitude: "Altitude";
    altitude_says: "raw from the device; never on a label";
    height(metres: &str): format!("{metres} m above ground");
    by_device(fixes: u32, seconds: u32): format!("by the device, {} in {seconds} s", counted(fixes as usize, "fix", "fixes"));
    caught: "Caught";
    night_of: "night of";
    keep_host: "Keep host";
    keep_where: "Keep where";
    keep_when: "Keep when and how";
    keep_whom: "Keep with whom";
    leave: "Leave as it was";
    who: "Who wrote what";
    who_line(device: &str, fields: &str): format!("on {device}: {fields}");
    clocks: "Times are what each device’s own clock said. They do not decide.";
    picked: "Settled.";
    placed(count: usize): format!("{} given a position.", counted(count, "event was", "events were"));
    pinned(count: usize): format!("Pinned {}.", grouped(count));
    labelled(count: usize): format!("Labelled {}.", grouped(count));
    determined: "Determination added.";
    emerged: "Days of emergence kept.";
    piece: "Part added.";
    mounts(count: usize): if count == 1 { "1 pin was added.".to_owned() } else { format!("{count} pins were added.") };
    mount_out: "The pin was taken out.";
    arrangement: "Arrangement changed.";
    printed(count: usize): format!("Noted as printed: {}.", counted(count, "label", "labels"));
    wording: "Wording kept.";
    setup: "Kept.";
    undone: "Undone.";
    delete: "Delete event";
    deleted_says: "This event was deleted. It still stands in the log, so that it can come back.";
    bring_back: "Bring it back";
    bench: "Bench";
    twice: "twice";
    conflicts(count: usize): counted(count, "value was written by two people", "values were written by two people");
    settle: "Settle it";
    own_host: "own host:";
    released: "observed, released";
    alive: "alive";
    emptied(day: &str): format!("emptied {day}");
    field(name: &str): field(name);
    how_1: "A saved event reads as text. “Change” opens one group in place; everything else stays as it was.";
    how_2: "Deleting can be undone, also later: the record stays in the log, marked.";
} }

const FIELDS: [(&str, &str); 20] = [
    ("caught", "time of catch"),
    ("place", "position"),
    ("site", "site"),
    ("elevation", "elevation"),
    ("height_above_ground", "height"),
    ("microhabitat", "microhabitat"),
    ("method", "method"),
    ("host", "host"),
    ("collector", "collectors"),
    ("station", "station"),
    ("weather", "weather"),
    ("permit", "permit"),
    ("notes", "notes"),
    ("nothing_caught", "nothing caught"),
    ("open", "still open"),
    ("deleted", "deleted"),
    ("content", "contents"),
    ("number", "number"),
    ("kept", "kept in"),
    ("killed", "killed with"),
];

fn field(name: &str) -> String {
    let stem = name.split(':').next().unwrap_or(name);
    FIELDS.iter().find(|(known, _)| *known == stem).map_or(stem, |(_, words)| words).to_owned()
}
