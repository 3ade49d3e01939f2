//! The labels.

use super::dates::grouped;
use super::{ENGLISH, English, counted};
use crate::sentences::say;
use chrono::NaiveDate;

say! { English says Labels {
    title: "Labels";
    fit(labels: u32, not: usize): fit(labels, not);
    setting: "Setting the labels";
    queue: "To print";
    queue_note: "collection + host + others, true size";
    count(collection: u32, host: u32, others: u32): count(collection, host, others);
    choose(number: &str): format!("Print labels of {number}");
    shorten: "Shorten it";
    type_stops: "Type stops where Setup says. At 3.5 pt, the smallest that is printed, more may fit.";
    type_smaller: "Let type go down to 3.5 pt";
    second_label: "Second label";
    word_too_long: "A second label does not help: one word alone is too long. Shorten it.";
    printed(kinds: &[(&'static str, u32)]): format!("Printed before: {}.", kinds.iter().map(|(code, count)| kind_counted(code, *count)).collect::<Vec<_>>().join(", "));
    copies: "Copies and wording";
    take_out: "Take off the sheet";
    wording: "See it at the bench";
    empty: "No label waits.";
    empty_says: "Put some on the sheet at the bench, vial by vial, or take all of a day that have none yet.";
    to_bench: "To the bench";
    add: "Not printed yet";
    add_day(day: NaiveDate, count: usize): format!("{}, {}", ENGLISH.dates.short(day), counted(count, "container", "containers"));
    sheet: "Sheet, true size";
    sheet_at(at: u32, of: u32): format!("{at} of {of}");
    sheet_back: "Sheet before";
    sheet_on: "Sheet after";
    sheet_scrolls: "Sheet preview, scrolls";
    sheet_title(paper: &str): format!("{paper} sheet in true size");
    sheet_says(labels: usize): format!("{} on this sheet, equal labels together. Cut lines between them. A bar at the foot must measure 50 mm.", counted(labels, "label", "labels"));
    paper(code: &str): paper(code).to_owned();
    paper_change(width: &str, height: &str): format!("{width} × {height} mm, change");
    begin: "Begin on a part-used sheet";
    begin_says: "Places that are cut off already stay empty on the first sheet.";
    begin_row: "Rows used";
    begin_column: "Places used in the next row";
    begin_at(row: u32, column: u32): format!("begins at row {}, place {}", row + 1, column + 1);
    outdated(labels: usize): if labels == 1 { "1 printed label is out of date".into() } else { format!("{} printed labels are out of date", grouped(labels)) };
    outdated_says: "What they say was corrected after printing. What was printed stays noted for ever.";
    outdated_at(at: &str, copies: u32): format!("{} printed {at}", grouped(copies as usize));
    as_printed: "Printed";
    as_now: "Now";
    by_hand: "Worded by hand: the words are the same, the event is not. Look at them.";
    print_again(copies: u32): format!("Print {} again", grouped(copies as usize));
    print_all_again: "Print all again";
    again_waits: "On the sheet to be printed.";
    arrange: "What stands on labels";
    arrange_says: "Which parts, in which order, with which words; shown with catches of this book.";
    arrange_title(kind: &str): format!("Arrangement: {}", kind.to_lowercase());
    arrangement: "In use";
    usual_arrangement: "The usual one";
    arrangement_name: "Name";
    save_arrangement: "Save and use it";
    save_new_arrangement: "Save as a new one";
    delete_arrangement: "Delete it";
    forget_changes: "Forget changes";
    changed_arrangement: "Not saved yet: what is drawn here holds once it is saved.";
    part(code: &str): part(code).to_owned();
    part_before(part: &str): format!("Words before {}", part.to_lowercase());
    part_after(part: &str): format!("Words after {}", part.to_lowercase());
    part_then(part: &str): format!("Between {} and the next", part.to_lowercase());
    capitals: "In capitals";
    before_word: "Before";
    after_word: "After";
    then_word: "Then";
    add_it: "Add it";
    arrangement_needs_name: "Give it a name first.";
    earlier_word: "Earlier";
    later_word: "Later";
    new_line_word: "New line";
    join_word: "Join";
    out_word: "Take out";
    words_word: "Words";
    earlier(part: &str): format!("{part} earlier");
    later(part: &str): format!("{part} later");
    break_before(part: &str): format!("New line before {}", part.to_lowercase());
    join_line(part: &str): format!("Join {} to the line above", part.to_lowercase());
    take_part_out(part: &str): format!("Take out {}", part.to_lowercase());
    add_part: "Add part";
    dates: "Dates";
    month: "Month";
    joint: "Between day, month and year";
    dash: "Between two days";
    abbreviations: "Abbreviations of your own";
    abbreviations_says: "Whole words, as they stand in the book, and what the label says for them.";
    abbreviated: "In the book";
    short: "On the label";
    add_abbreviation: "Add abbreviation";
    take_abbreviation_out(text: &str): format!("Take out {text}");
    sample_none: "No catch in this book has what this label says.";
    sample_head: "As it would be printed";
    arrange_how_1: "A line here begins a line on the label. It may be broken further where it is too long.";
    arrange_how_2: "Parts of which nothing is known are left out with the words around them. Arrangements travel in the log file; which one you use is yours.";
    bar: "This bar must measure 50 mm.";
    bar_print: "Print at 100 %, acid-free paper, pigment ink.";
    sheet_too_small: "The sheet is too small for these labels.";
    making_cancel: "Stop";
    make(labels: u32): format!("Make PDF, {}", counted(labels as usize, "label", "labels"));
    making(labels: u32, done: usize, all: usize): format!("Making the PDF of {}, {} %", counted(labels as usize, "label", "labels"), (done * 100).checked_div(all).unwrap_or(0));
    made(labels: u32, sheets: u32): format!("{} on {}.", counted(labels as usize, "label", "labels"), counted(sheets as usize, "sheet", "sheets"));
    open: "Open the PDF";
    share: "Share it";
    save: "Save it";
    document(day: NaiveDate): format!("Insect labels, {}", ENGLISH.dates.roman(day));
    file(day: &str): format!("labels {day}.pdf");
    advice: "Print at 100 %, never “fit to page”. Then measure the bar at the foot: 50 mm, or the labels are wrong.";
    advice_calm: "Acid-free paper and pigment ink last; dye ink runs in ethanol and fades in light.";
    note_printed(labels: u32): format!("Note {} as printed", grouped(labels as usize));
    note_says: "When the sheet lies before you: what was printed is noted word for word, and leaves this list.";
    labelled_too: "They are on the pins as well";
    not_fit(count: usize): if count == 1 { "1 label does not fit. Nothing was printed.".into() } else { format!("{} labels do not fit. Nothing was printed.", grouped(count)) };
    not_fit_do: "Shorten what is marked below, or leave it off this sheet.";
    calibrate: "Calibrate";
    calibrate_says: "Lay a ruler on the screen. How long is this bar?";
    calibrate_measured: "Length of the bar as measured";
    calibrate_unit: "mm";
    calibrate_set: "Use it";
    calibrate_off: "Forget it";
    calibrated: "This screen was measured: true size is true here.";
    how_1: "What stands on this list goes on the next sheet, equal labels beside each other, so that one cut frees two.";
    how_2: "The pin’s place is drawn here and never printed. No letter lies under it.";
    how_3: "A label that does not fit is never clipped and never left blank: nothing is printed until it is shorter.";
} }

fn count(collection: u32, host: u32, others: u32) -> String {
    let basic = if host == 0 { collection.to_string() } else { format!("{collection} + {host}") };
    match (others, collection + host) {
        (0, _) => basic,
        (others, 0) => others.to_string(),
        (others, _) => format!("{basic} + {others}"),
    }
}

fn kind_counted(code: &str, count: u32) -> String {
    let (one, several) = super::desk::label_kind(code);
    counted(count as usize, &one.to_lowercase(), &several.to_lowercase())
}

fn part(code: &str) -> &str {
    match code {
        "country" => "Country",
        "province" => "Province",
        "locality" => "Locality",
        "offset" => "Distance from it",
        "site" => "Site",
        "habitat" => "Habitat",
        "coordinates" => "Coordinates",
        "radius" => "Uncertainty",
        "elevation" => "Elevation",
        "date" => "Date",
        "emerged" => "Days emerged",
        "collectors" => "Collectors",
        "method" => "Method",
        "particulars" => "Particulars of the method",
        "relation" => "How with the host",
        "thing" => "Host",
        "thing_part" => "Part of the host",
        "number" => "Number",
        "station" => "Station",
        "microhabitat" => "Microhabitat",
        "height" => "Height above ground",
        "contents" => "Contents",
        "name" => "Name",
        "author" => "Author",
        "determined_by" => "Determined by",
        "determined_in" => "Year of determination",
        "sex" => "Sex",
        "code" => "Code",
        "piece" => "Part kept elsewhere",
        "linked" => "Its number",
        "preservative" => "Preservative",
        "count" => "Count",
        "words" => "Words alone",
        other => other,
    }
}

fn fit(labels: u32, not: usize) -> String {
    let fit = if labels == 1 { "1 fits".to_owned() } else { format!("{} fit", grouped(labels as usize)) };
    match not {
        0 => fit,
        1 => format!("{fit}, 1 does not"),
        not => format!("{fit}, {} do not", grouped(not)),
    }
}

fn paper(code: &str) -> &str {
    match code {
        "a4" => "A4",
        "letter" => "Letter",
        "card" => "Own card",
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_fits_and_what_does_not_is_counted() {
        assert_eq!(fit(70, 1), "70 fit, 1 does not");
        assert_eq!(fit(1, 0), "1 fits");
    }

    #[test]
    fn labels_are_counted_by_kind() {
        assert_eq!(count(4, 0, 0), "4");
        assert_eq!(count(4, 4, 0), "4 + 4");
        assert_eq!(count(4, 4, 1), "4 + 4 + 1");
        assert_eq!(count(0, 0, 2), "2");
        assert_eq!(kind_counted("slip", 1), "1 slip");
    }
}
