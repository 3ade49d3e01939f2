//! What comes in.

use super::dates::grouped;
use super::desk::listed;
use super::{ENGLISH, English, counted};
use crate::sentences::say;
use chrono::{Datelike, NaiveDate};

say! { English says Import {
    title: "Import";
    drop_here: "Somebody’s log comes in here.";
    pick_says: "Pick the file, drop it on this page, or share it to this app from another. Nothing is written before you have seen what it holds.";
    track_title: "A recorded track";
    track_points(points: usize, fixes: usize): track_points(points, fixes);
    track_faults(count: usize, line: u64, code: &str, early: bool): track_faults(count, line, code, early);
    track_empty: "No point of it has a time, so it can place nothing.";
    track_ahead: "This phone’s clock was ahead by";
    track_ahead_says: "Compare the phone with the receiver that recorded the track. Negative where the phone was behind.";
    track_offers(count: usize): format!("{} without a position", counted(count, "event", "events"));
    track_none: "No event without a position was logged around the time of this track.";
    track_between(minutes: u64, metres: u64): format!("between two fixes {minutes} min and {} m apart", grouped(metres as usize));
    track_before(minutes: u64): format!("{minutes} min before the track begins");
    track_after(minutes: u64): format!("{minutes} min after the track ends");
    track_faster: "faster than on foot";
    track_take(count: usize, keeps: bool): track_take(count, keeps);
    track_keep: "Draw this track on the map of its days";
    track_keep_says: "It stays on this device and leaves with no file. Below the map it can be taken away again.";
    track_says: "The radius holds every place that somebody walking at 2 m a second could have reached between the fixes. Nothing is written before you have looked.";
    pick: "Pick a file";
    reading(name: &str): format!("Reading “{name}”");
    writing: "Writing";
    log_of(person: &str): format!("{person}’s log");
    unnamed_log: "A log without a name";
    nothing_yet: "nothing changed yet";
    added: "added";
    changed: "changed";
    known: "known";
    conflicts: "conflicts";
    twice: "twice";
    the_file: "The file";
    from: "From";
    unnamed: "nobody named";
    on_at(device: &str, day: NaiveDate, clock: &str): on_at(device, day, clock);
    days: "Days";
    days_span(from: NaiveDate, to: NaiveDate): days_span(from, to);
    file: "File";
    whole(records: usize): format!("whole, {}", counted(records, "record", "records"));
    conflicts_head(count: usize): counted(count, "conflict", "conflicts");
    conflicts_says(changed: usize): format!("Among the {} changed. Both values are kept; you pick after the import.", grouped(changed));
    twice_head(count: usize): counted(count, "number twice", "numbers twice");
    twice_says: "Both containers are kept and marked. At the bench both are listed.";
    added_head(count: usize): format!("{} would be added", grouped(count));
    more_added(events: usize, containers: usize, others: usize): more_added(events, containers, others);
    changed_head(count: usize): format!("{} would change", grouped(count));
    changed_more: "The first of them are shown.";
    deleted_says(count: usize): format!("{} deleted there. They would be deleted here as well, and can be brought back.", if count == 1 { "1 record was".into() } else { format!("{} records were", grouped(count)) });
    known_says(count: usize): if count == 1 { "1 record is the same here and there. It stays as it is.".into() } else { format!("{} records are the same here and there. They stay as they are.", grouped(count)) };
    all_known: "All of it is here already. Importing would change nothing.";
    refuse: "Refuse";
    accept(count: usize): format!("Import {}", grouped(count));
    another: "Pick another file";
    theirs: "file";
    done(count: usize): format!("{} imported", grouped(count));
    done_from(person: &str): if person.is_empty() { "from the file".into() } else { format!("from {person}’s log") };
    done_nothing: "Nothing was new";
    done_says: "Saved on this phone. Importing the file again would change nothing.";
    waits: "Waits for you";
    pick_value: "Pick";
    compare: "Compare";
    can_wait: "It can wait. Until you pick, both values are kept and marked.";
    nothing_waits: "Nothing waits for you.";
    undo_head: "If it was the wrong file";
    undo_says: "Undo brings back what stood before. What you have written since stays.";
    undo_where: "Their own records are not touched by it. Undo stays here and in Setup.";
    undo_strip(added: usize, changed: usize): format!("Imported {} new, {} changed", grouped(added), grouped(changed));
    undone: "Import undone";
    undone_says: "What stood before is there again, with what you have written since.";
    go_on: "To the days";
    empty_file: "This file is empty.";
    not_json(line: usize): format!("This file cannot be read from line {} on.", grouped(line));
    not_ours: "This is no log file.";
    broken_header(line: usize): format!("The head of this file cannot be read, line {}.", grouped(line));
    newer(version: u64): format!("A newer version wrote this file, in form {version}.");
    cut_off(line: usize): format!("This file was cut off in line {}.", grouped(line));
    checksum: "This file was changed or damaged after it was written.";
    count(said: usize, found: usize): format!("This file says {} and holds {}.", counted(said, "record", "records"), grouped(found));
    broken_record(line: usize, why: &str): format!("The record in line {} cannot be read: {why}.", grouped(line));
    why_not_json(column: usize): format!("sign {column} does not belong there");
    why_no_kind: "it does not say what it is";
    why_no_id: "it has no id";
    why_no_versions: "nothing says who wrote it";
    why_twice(field: &str): format!("“{field}” stands there twice");
    why_alone(field: &str): format!("“{field}” has a value without its writer, or the other way round");
    why_seen(field: &str): format!("the versions of “{field}” contradict each other");
    share_copy: "This is a share copy: coordinates were rounded or fields left out on purpose.";
    share_copy_do: "It can be read, never imported, or it would overwrite the truth. Ask for the log itself.";
    other_book: "This file belongs to another book.";
    other_book_do: "Nothing was imported and nothing changed. A file of the sample goes into the sample, your own into your own book.";
    refused_do: "Nothing was imported and nothing changed. Ask for the file again.";
    cut_off_do: "Nothing was imported and nothing changed. Have it sent again, whole.";
    newer_do: "Nothing was imported and nothing changed. Load this page again to get the newer version, then import.";
    courier: "The file could not be read.";
    courier_do(reason: &str): format!("Nothing was imported and nothing changed. Load the page again, then import. The browser says: {reason}");
    garbled: "The file could not be read: half of a newer version is running.";
    garbled_do: "Nothing was imported and nothing changed. Load the page again, then import.";
    nothing_to_undo: "There is no import that could be undone.";
    how_1: "Nothing is written before you import. Refuse, and all stays as it was.";
    how_2: "Where two people wrote into the same row without seeing each other, both values stay until one of you picks. No clock decides.";
    how_3: "Undo afterwards brings back what stood before and keeps what you wrote since.";
} }

fn on_at(device: &str, day: NaiveDate, clock: &str) -> String {
    let when = format!("{} {clock}", ENGLISH.dates.roman(day));
    if device.is_empty() { when } else { format!("on {device}, {when}") }
}

fn days_span(from: NaiveDate, to: NaiveDate) -> String {
    let dates = ENGLISH.dates;
    match (from == to, from.year() == to.year()) {
        (true, _) => dates.roman(from),
        (false, true) => format!("{} to {}", dates.roman_short(from), dates.roman(to)),
        (false, false) => format!("{} to {}", dates.roman(from), dates.roman(to)),
    }
}

fn more_added(events: usize, containers: usize, others: usize) -> String {
    let kinds = [
        (events, "more event", "more events"),
        (containers, "container", "containers"),
        (others, "other record", "other records"),
    ];
    let there: Vec<String> = kinds
        .into_iter()
        .filter(|(count, ..)| *count > 0)
        .map(|(count, one, many)| counted(count, one, many))
        .collect();
    if there.is_empty() { String::new() } else { format!("and {}", listed(&there)) }
}

fn track_take(count: usize, keeps: bool) -> String {
    match (count, keeps) {
        (0, _) => "Keep the track".to_owned(),
        (count, false) => format!("Place {}", counted(count, "event", "events")),
        (count, true) => format!("Place {}, keep the track", counted(count, "event", "events")),
    }
}

fn track_points(points: usize, fixes: usize) -> String {
    let all = counted(points, "point", "points");
    if fixes == points { all } else { format!("{all}, {} with a time", grouped(fixes)) }
}

fn track_faults(count: usize, line: u64, code: &str, early: bool) -> String {
    let what = match code {
        "not_gpx" => "it is no GPX file",
        "xml" => "it is no well-formed XML from there on",
        "encoding" => "it is not written in UTF-8 from there on",
        "cut_off" => "it breaks off",
        "latitude" => "a point has no latitude",
        "longitude" => "a point has no longitude",
        "time" => "a time cannot be read",
        "elevation" => "a height cannot be read",
        _ => "it cannot be read any further",
    };
    let first = format!("Line {line}: {what}.");
    match (count, early) {
        (1, false) => first,
        (_, true) => format!("{first} What stood before is here."),
        (count, false) => format!("{first} {} in all were passed over.", grouped(count)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_of_one_year_name_it_once() {
        let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).expect("a day");
        assert_eq!(days_span(day(2027, 7, 1), day(2027, 7, 3)), "1.vii. to 3.vii.2027");
        assert_eq!(days_span(day(2026, 12, 31), day(2027, 1, 1)), "31.xii.2026 to 1.i.2027");
        assert_eq!(days_span(day(2027, 7, 1), day(2027, 7, 1)), "1.vii.2027");
    }

    #[test]
    fn what_is_added_besides_is_listed() {
        assert_eq!(more_added(9, 26, 1), "and 9 more events, 26 containers and 1 other record");
        assert_eq!(more_added(0, 0, 0), "");
    }
}
