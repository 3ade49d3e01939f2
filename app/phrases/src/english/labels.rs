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
    queue_note: "collection + host, true size";
    count(collection: u32, host: u32): if host == 0 { collection.to_string() } else { format!("{collection} + {host}") };
    choose(number: &str): format!("Print labels of {number}");
    shorten: "Shorten it";
    printed(collection: u32, host: u32): format!("Printed before: {}.", ENGLISH.labels.count(collection, host));
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
    sheet_says(labels: u32, columns: usize, rows: usize): format!("{} in up to {} of {}, equal labels together. Cut lines between them. A bar at the foot must measure 50 mm.", counted(labels as usize, "label", "labels"), counted(rows, "row", "rows"), columns);
    paper(code: &str): paper(code).to_owned();
    paper_change(width: &str, height: &str): format!("{width} × {height} mm, change");
    bar: "This bar must measure 50 mm. Print at 100 %, acid-free paper, pigment ink.";
    make(labels: u32): format!("Make PDF, {}", counted(labels as usize, "label", "labels"));
    making(labels: u32): format!("Making the PDF of {}", counted(labels as usize, "label", "labels"));
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
}
