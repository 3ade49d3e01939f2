//! What leaves the device.

use super::dates::grouped;
use super::desk::listed;
use super::{ENGLISH, English, counted};
use crate::sentences::say;
use chrono::NaiveDate;

say! { English says Export {
    title: "Export";
    only_here(events: usize): format!("{} only on this phone", counted(events, "event", "events"));
    all_left: "nothing only on this phone";
    what: "What goes out";
    day: "Day";
    chosen: "Chosen";
    not_exported: "Not exported";
    all: "All";
    which_day: "Which day";
    goes_day(day: NaiveDate): ENGLISH.dates.middle(day);
    goes_chosen(count: usize): format!("{} chosen", counted(count, "event", "events"));
    goes_not_exported: "What exists only here";
    goes_all: "The whole book";
    events: "events";
    containers: "containers";
    deleted: "deleted";
    day_says: "The night of a day goes with it. What was deleted goes along, so that it stays deleted elsewhere.";
    deleted_says: "What was deleted goes along, so that it stays deleted elsewhere.";
    whole_says: "Everything that was logged, settings of numbering and labels too: a full backup. Tracks and fonts that this device keeps stay here.";
    along: "Along with";
    along_list(sites: usize, persons: usize, numberings: usize, permits: usize, others: usize): along(sites, persons, numberings, permits, others);
    along_says: "because these events refer to them";
    file: "File";
    file_says(bytes: usize): format!("{}, readable as it stands", ENGLISH.desk.kilobytes(bytes));
    making: "Making the file";
    opening: "The book is still being opened. The file is made when all of it is here.";
    nothing: "There is nothing to export.";
    nothing_new: "Everything has left this phone already.";
    nothing_chosen: "Tick the events that shall go out.";
    coarse: "A share copy with coarser positions";
    coarse_not: "No: the log as it is";
    coarse_to(degrees: &str): format!("To {degrees}°, cells of about {}", cell(degrees));
    coarse_by_radius: "To a radius of your own";
    coarse_radius: "Radius";
    coarse_radius_says(metres: f64): format!("Cells that fit into a circle of {} anywhere on the Earth.", ENGLISH.dates.way(metres));
    coarse_no_radius: "Type the radius, from 1 m to 1,000 km; then the copy is made.";
    coarse_says: "For sharing where an exact place would put insects or their plants at risk. Site names, localities, heights and notes are left out, the radius grows to hold the true place, and the file says what was done. Dates, names and numbers stay. It cannot be merged back, and does not count as exported.";
    copied: "The share copy has left. It does not count as exported.";
    ways: "When it has left this phone";
    share: "Share";
    share_says: "counts when the sheet says it was sent";
    save: "Save to a file";
    save_says: "counts when the file was read back whole";
    save_do: "Save";
    download: "Download";
    download_says: "stays on this phone, so it counts only when you say that a copy is elsewhere";
    share_main(events: usize): format!("Share {}", leaving(events));
    save_main(events: usize): format!("Save {} to a file", leaving(events));
    download_main(events: usize): format!("Download {}", leaving(events));
    left(events: usize): format!("{} left this phone.", if events == 1 { "1 event has".into() } else { format!("{} events have", grouped(events)) });
    left_says: "They no longer count as only here.";
    closed: "Nothing left: it was closed before it was sent.";
    refused: "The system did not take the file.";
    refused_do(reason: &str): format!("Nothing is lost. Try another way below. The system says: {reason}");
    unmarked: "The file left, but this could not be written down. It still counts as only here.";
    downloaded(name: &str): format!("“{name}” was downloaded.");
    downloaded_says(records: usize): format!("Its {} count as only on this phone until the file lies somewhere else.", counted(records, "record", "records"));
    elsewhere: "A copy is elsewhere";
    find: "Find events";
    choose_shown(count: usize): format!("Tick the {} shown", grouped(count));
    choose_none: "Tick none";
    list: "Events to choose from";
    how_1: "The file is plain text. Any device with this page takes it in; importing it twice changes nothing.";
    how_2: "Whole records go out, with all they refer to, so that nothing arrives half.";
    how_3: "Until one of the ways above has counted, the start page keeps saying what exists only on this phone.";
} }

fn along(sites: usize, persons: usize, numberings: usize, permits: usize, others: usize) -> String {
    let kinds = [
        (sites, "site", "sites"),
        (persons, "person", "persons"),
        (numberings, "numbering", "numberings"),
        (permits, "permit", "permits"),
        (others, "other record", "other records"),
    ];
    let there: Vec<String> = kinds
        .into_iter()
        .filter(|(count, ..)| *count > 0)
        .map(|(count, one, many)| counted(count, one, many))
        .collect();
    if there.is_empty() { "nothing else".into() } else { listed(&there) }
}

/// What leaves: a file without events still holds the settings that travel.
fn leaving(events: usize) -> String {
    if events == 0 { "settings".to_owned() } else { counted(events, "event", "events") }
}

fn cell(degrees: &str) -> &str {
    match degrees {
        "0.001" => "100 m",
        "0.01" => "1 km",
        "0.1" => "10 km",
        _ => "100 km",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_goes_along_is_listed_without_what_does_not() {
        assert_eq!(along(4, 2, 1, 0, 0), "4 sites, 2 persons and 1 numbering");
        assert_eq!(along(0, 0, 0, 0, 0), "nothing else");
    }
}
