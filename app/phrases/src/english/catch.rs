//! The form of a catch.

use super::English;
use super::codes::containers;
use super::dates::{plain, way};
use crate::sentences::say;
use chrono::{Datelike, NaiveDate};

say! { English says Catch {
    title: "New catch";
    title_change: "Change catch";
    containers: "Containers";
    add_container: "Add container";
    nothing_caught: "Nothing caught";
    nothing_undo: "Caught something";
    nothing_says: "Nothing was caught: a result, complete and exported like any other.";
    offered: "Caught lately";
    where_when: "Where, when and how";
    whom: "On what and with whom";
    site: "Site";
    site_here(metres: f64): format!("{} from its point", way(metres));
    site_new: "new here";
    site_make: "Write it up";
    sites_offered: "Sites known";
    position: "Position";
    caught: "Caught";
    caught_now: "now";
    caught_day: "Caught on";
    caught_detaches: "Choosing another time detaches the position until you confirm it.";
    caught_night: "of the night";
    night_of: "The night counts for its evening, noon to noon.";
    until: "Until";
    until_day: "Until, on";
    method: "Method";
    method_words: "Method in your words";
    method_other: "Other";
    method_none: "not said";
    host: "Host";
    host_how: "How it was with the host";
    host_none: "no relation said";
    host_thing: "Plant and part, fungus, insect, animal, dung or wood";
    host_hint: "plant, animal …";
    host_what: "What it is";
    host_part: "Part";
    host_voucher: "Voucher";
    host_named_by: "Named by";
    host_more: "More of the host";
    hosts_offered: "Hosts known";
    collectors: "Collec\u{ad}tors";
    collector_more: "One more collector";
    collector_add: "Add";
    weather: "Weather";
    permit: "Permit";
    permit_until(day: NaiveDate): format!("until {} {}", super::ENGLISH.dates.short(day), day.year());
    permit_says: "What needs a permit is said by local rules; the number travels with the catch.";
    notes: "Notes";
    notes_hint: "what you would pencil";
    elevation: "Elevation";
    elevation_unit: "in metres";
    elevation_raw(metres: f64): format!("The phone says {} m, but not above what.", plain(metres));
    elevation_take(metres: i64): format!("Take {} m", plain(metres as f64));
    elevation_sea(metres: i64, plus_minus: Option<u64>): above_sea(metres, plus_minus);
    elevation_from_sea: "So the phone says it; phones of this kind count from sea level.";
    elevation_from_ellipsoid(raw: f64, undulation: f64): format!("The phone says {} m above the ellipsoid; {} (EGM96).", plain(raw.round()), sea_level(undulation));
    elevation_unsure: "Whether this device counts from there is not known: Setup can say so.";
    elevation_said: "Counted as you said in Setup.";
    elevation_taken: "You looked at it and took it.";
    height: "Height";
    height_unit: "m above ground";
    microhabitat: "Micro\u{ad}habitat";
    microhabitat_hint: "under bark, in dung …";
    station: "Station";
    stays_open: "Goes on";
    stays_open_lamp: "the lamp burns on";
    save: "Save catch";
    save_nothing: "Save, nothing caught";
    saved(count: usize): if count == 0 { "Saved.".into() } else { format!("Saved with {}.", containers(count)) };
    saved_nothing: "Saved: nothing caught.";
    saved_changes: "Changes saved.";
    deleted_event: "Event deleted.";
    go_on_draft: "A catch lies half written.";
    throw_draft: "Throw it away";
    lamp_caution: "Do not look into a lamp that gives ultraviolet, and cover your skin near it.";
    how_1: "Everything but saving may be left empty. What is missing is listed, never forbidden.";
    how_2: "A repeat catch takes three taps: New catch, one of the groups offered, Save.";
    how_3: "“Now” and “here” belong together. Choose an earlier time and the position waits until you confirm it.";
    how_4: "What you type is kept at every key. Set it aside, or let the phone die: it is here when you come back.";
} }

fn above_sea(metres: i64, plus_minus: Option<u64>) -> String {
    let metres = plain(metres as f64);
    match plus_minus {
        Some(plus_minus) => format!("{metres} m ± {plus_minus} m above sea level."),
        None => format!("{metres} m above sea level."),
    }
}

fn sea_level(undulation: f64) -> String {
    let metres = plain(undulation.abs().round());
    if undulation < 0.0 {
        format!("sea level lies {metres} m below it here")
    } else {
        format!("sea level lies {metres} m above it here")
    }
}
