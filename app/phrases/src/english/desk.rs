//! What several of the desk's screens say.

use super::English;
use super::dates::plain;
use crate::sentences::say;

say! { English says Desk {
    rows_before: "Show those before";
    here: "here";
    empty_value: "empty";
    yes: "yes";
    no: "no";
    unknown_value: "unknown";
    deleted_value: "deleted";
    on_device(device: &str): format!("on {device}");
    content(count_kind: &str, count: Option<u32>, group: &str, sex: &str, stage: &str): content(count_kind, count, group, sex, stage);
    no_contents: "nothing written of what is in it";
    kilobytes(bytes: usize): kilobytes(bytes);
    heard_label(kind: &str, lines: &[String], above: usize): heard(kind, lines, above);
    label_kind(code: &str): label_kind(code).0.to_owned();
    label_kinds(code: &str): label_kind(code).1.to_owned();
    label_of(kind: &str, item: &str): format!("{kind}, {item}");
    long(text: &str, by_mm: f64, type_pt: f64): format!("“{text}” is {} mm too long at {} pt.", plain(by_mm.max(0.1)), plain(type_pt));
    high(by_mm: f64): format!("The lines are {} mm too high for the label.", plain(by_mm.max(0.1)));
    too_large_for_sheet(by_mm: f64): format!("The label is {} mm larger than the sheet can hold.", plain(by_mm.max(0.1)));
    glyph(letter: char): format!("No font of the labels has “{letter}”. One that has it can be added in Setup.");
    press_gone: "The labels could not be set.";
    press_gone_do(reason: &str): format!("Nothing was lost. Load the page again. The browser says: {reason}");
} }

/// One label of a kind, and several.
pub(super) fn label_kind(code: &str) -> (&str, &str) {
    match code {
        "collection" => ("Collection label", "Collection labels"),
        "host" => ("Host label", "Host labels"),
        "determination" => ("Determination label", "Determination labels"),
        "rearing" => ("Rearing label", "Rearing labels"),
        "code" => ("Code label", "Code labels"),
        "fluid" => ("Label in the fluid", "Labels in the fluid"),
        "envelope" => ("Card of the envelope", "Cards of the envelope"),
        "parts" => ("Label of a part", "Labels of a part"),
        "slip" => ("Slip", "Slips"),
        other => (other, other),
    }
}

fn content(kind: &str, count: Option<u32>, group: &str, sex: &str, stage: &str) -> String {
    let number = count.map(|count| match kind {
        "about" => format!("about {count}"),
        "least" => format!("at least {count}"),
        _ => count.to_string(),
    });
    // A group stands in the plural, as it was typed: one of it is counted behind.
    let (number, behind) = if count == Some(1) { (None, number) } else { (number, None) };
    let group = if number.is_none() { group.to_owned() } else { small(group) };
    let said = [number.unwrap_or_default(), group, sex.to_owned(), stage.to_owned()];
    let said = said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ");
    behind.map_or(said.clone(), |number| format!("{said}, {number}"))
}

/// A name of the list within a sentence; a Latin name, or one with another capital, keeps its letters.
fn small(group: &str) -> String {
    let mut letters = group.chars();
    let known = super::ENGLISH.groups.iter().any(|known| known.names.contains(&group));
    match letters.next() {
        Some(first) if known => first.to_lowercase().chain(letters).collect(),
        _ => group.to_owned(),
    }
}

fn heard(kind: &str, lines: &[String], above: usize) -> String {
    const ORDINALS: [&str; 8] = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
    let says = format!("{kind}: {}.", lines.join("; "));
    let pair = above.checked_sub(1).and_then(|before| Some((ORDINALS.get(before)?, ORDINALS.get(above)?)));
    match pair.filter(|_| above < lines.len()) {
        Some((before, after)) => format!("{says} The pin passes between the {before} and {after} line."),
        None => says,
    }
}

fn kilobytes(bytes: usize) -> String {
    let size = bytes as f64;
    if size < 999_500.0 {
        format!("{} KB", plain((size / 1_000.0).max(0.1)))
    } else {
        format!("{} MB", plain(size / 1_000_000.0))
    }
}

/// `1, 2 and 5`.
pub(super) fn listed(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contents_are_said_with_count_sex_and_stage() {
        assert_eq!(content("exact", Some(3), "Hover flies", "♀", ""), "3 hover flies ♀");
        assert_eq!(content("about", Some(40), "Leaf beetles", "", "larvae"), "about 40 leaf beetles larvae");
        assert_eq!(content("uncounted", None, "Moths", "", ""), "Moths");
        assert_eq!(content("exact", Some(1), "Bombus", "♀", ""), "Bombus ♀, 1");
        assert_eq!(content("exact", Some(2), "Bombus", "", ""), "2 Bombus");
    }

    #[test]
    fn a_label_is_heard_with_its_pin() {
        let lines = ["A".to_owned(), "B".to_owned(), "C".to_owned()];
        assert_eq!(
            heard("Host label", &lines, 2),
            "Host label: A; B; C. The pin passes between the second and third line."
        );
        assert_eq!(heard("Host label", &lines, 3), "Host label: A; B; C.");
        assert_eq!(heard("Host label", &lines, 0), "Host label: A; B; C.");
    }

    #[test]
    fn sizes_are_said_in_thousands() {
        assert_eq!([10, 41_230, 1_500_000].map(kilobytes), ["0.1 KB", "41 KB", "1.5 MB"]);
    }
}
