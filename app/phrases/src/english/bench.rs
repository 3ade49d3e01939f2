//! The bench.

use super::dates::grouped;
use super::desk::listed;
use super::{English, counted};
use crate::sentences::say;

say! { English says Bench {
    title: "Bench";
    waiting(count: usize): format!("{} wait", counted(count, "container", "containers"));
    number: "Number on the vial";
    empty: "Which vial is in your hand?";
    empty_says: "Type its number as it is written, short or long: 147, iv27 147, IV27-0147.";
    candidates(count: usize, typed: &str): format!("{} containers carry {typed}", grouped(count));
    one_candidate(typed: &str): format!("1 container could be {typed}");
    which: "Which is in your hand?";
    more(count: usize): format!("and {} more; type more of the number", grouped(count));
    why_own: "Your numbers.";
    why_other: "Whose number it is, is not said.";
    why_colleague: "Same digits, a colleague’s.";
    why_last_year: "Last year’s.";
    why_earlier(years: u32): format!("{} years older.", years);
    beside(neighbours: &[String]): format!("{} beside it {} dealt with.", listed(neighbours), if neighbours.len() == 1 { "was" } else { "were" });
    dealt: "Already dealt with.";
    not_dealt: "Not yet dealt with.";
    none(typed: &str): format!("No container carries {typed}");
    nearest: "These are the nearest.";
    none_near: "No number here is like it.";
    reason(code: &str): reason(code).to_owned();
    never: "Was it never logged?";
    never_says: "Write what you know. The date of catch and the date of entry are kept apart.";
    log_now: "Log it now";
    others(count: usize, typed: &str): if count == 1 { format!("1 other carries {typed}") } else { format!("{} others carry {typed}", grouped(count)) };
    event_of(number: &str): format!("Event of {number}");
    event_gone: "Its event has not arrived here yet. It may come with somebody’s log.";
    site: "Site";
    position: "Position";
    caught: "Caught";
    night_of: "night of";
    method: "Method";
    host: "Host";
    collector: "Collector";
    contents: "Contents";
    kept: "Kept in";
    notes: "Notes";
    opens_event: "The event";
    says: "What the labels will say";
    nothing_to_say(kind: &str): format!("{kind}: nothing to say, none is printed.");
    insects(count: u32, exact: bool, spare: u32): insects(count, exact, spare);
    other_labels: "Other labels";
    ink_fluid: "One inside the vial, not folded. Pigment ink on rag paper, dry before it goes in; dye ink and most toner come off in ethanol.";
    ink_card: "The card lies in the envelope with the insect.";
    outdated(at: &str): format!("Corrected after printing on {at}.");
    determined: "Determined as";
    determined_as(by: &str, year: &str): determined_by(by, year);
    determine: "Add determination";
    determine_says: "Author with brackets and year as they are. A determination is added to those before, never in place of one.";
    determined_name: "Name";
    determined_author: "Author";
    determined_doubt: "Doubt";
    no_doubt: "none";
    determined_by: "Det. by";
    determined_year: "Year";
    add_determination: "Add it";
    emerged: "Emerged";
    emerged_from: "First day";
    emerged_until: "Last day";
    emerged_says: "For what was reared: the label says collected and emerged.";
    keep_emerged: "Keep days";
    mounts: "Pins with codes of their own";
    mounts_say: "Where pins are kept apart. From then on labels are counted by pins, and each code has a label of its own.";
    mount_route: "How";
    route(code: &str): route(code).to_owned();
    mount_code: "Code of the first";
    mount_count: "How many pins";
    mount_add(count: u32): if count == 1 { "Add this pin".to_owned() } else { format!("Add {count} pins") };
    mount_of(code: &str, route_code: &str): mount_of(code, route(route_code));
    mount_out: "Take out";
    mount_out_which(pin: &str): format!("Take out {pin}");
    mount_count_fault(most: u64): format!("How many is a number from 1 to {most}.");
    mount_no_digits: "Several pins need a code that ends in digits, to be counted up.";
    mount_taken(code: &str): format!("Another pin is {code} already. None was added.");
    pieces: "Parts kept elsewhere";
    piece_what: "What";
    piece_number: "Its number";
    piece_says: "Genitalia preparation, leg for DNA, exuviae: the label bears the linked number.";
    add_piece: "Add part";
    piece_of(what: &str, number: &str): format!("{what} {number}").trim().to_owned();
    heights: "Heights on the pin";
    heights_says(insect: &str, first: &str, second: &str): format!("Side view of one pin: the insect at {insect} mm above the point, the collection label at {first} mm, the second label at {second} mm. Schools differ; Setup has the numbers.");
    edit: "Edit wording";
    edit_of(kind: &str): format!("Edit wording: {}", kind.to_lowercase());
    wording(kind: &str): format!("Wording: {}", kind.to_lowercase());
    wording_says: "A line on the label is a line here. Words between _ and _ stand in italics.";
    keep_wording: "Keep wording";
    keep_for_event(count: usize): format!("Keep for all {} of the event", grouped(count));
    usual: "As usual";
    edited: "worded by hand";
    put_on_sheet(labels: u32): format!("Put {} on the sheet", counted(labels as usize, "label", "labels"));
    on_sheet: "On the sheet to be printed.";
    take_off: "Take off the sheet";
    to_labels: "To the sheet";
    steps: "Steps";
    step_done(code: &str, count: u32): format!("{count} {}", step(code));
    step_next(code: &str, count: u32): format!("{count} to be {}", step(code));
    step_how_many(code: &str): format!("How many {}", step(code));
    step_do(code: &str, count: u32): format!("{}, {count}", super::large(step(code)));
    step_none: "All are pinned and labelled.";
    caution_fluid(fluid: &str): format!("Wet with {}: let it dry off in open air, away from flame and ovens, by your local rules.", fluid.to_lowercase());
    how_1: "Type the number as written; small letters, missing noughts and stray spaces do not matter. One that several carry opens none unasked.";
    how_2: "Enter goes from the number to what it found. There the figures 1 to 9 pick from a list, and Enter does the main command.";
    how_3: "Labels are counted by insects, with the spare ones of Setup. What is in the drawing is what will be printed.";
} }

fn determined_by(by: &str, year: &str) -> String {
    let said = [by, year].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ");
    if said.is_empty() { said } else { format!("det. {said}") }
}

fn reason(code: &str) -> &'static str {
    match code {
        "same" => "The same number, written another way.",
        "prefix_missing" => "The same digits; no prefix was typed.",
        "prefix_other" => "The same digits under another prefix.",
        "transposed" => "Two signs change places.",
        "confused" => "One sign written like another, as 1 and 7.",
        "missing" => "One sign left out.",
        "extra" => "One sign too many.",
        "different" => "One sign differs.",
        "gap" => "Its neighbour; only the typed number is missing from the run.",
        _ => "More than one slip.",
    }
}

fn step(code: &str) -> &str {
    match code {
        "pinned" => "pinned",
        "labelled" => "labelled",
        other => other,
    }
}

fn insects(count: u32, exact: bool, spare: u32) -> String {
    let insects = counted(count as usize, "insect", "insects");
    let insects = if exact { insects } else { format!("At least {insects}") };
    match spare {
        0 => format!("{insects}, none spare"),
        spare => format!("{insects}, {spare} spare of each"),
    }
}

fn route(code: &str) -> &str {
    match code {
        "direct" => "pinned direct",
        "point" => "on a point",
        "card" => "on a card",
        "minuten" => "on a minuten",
        "spread" => "pinned and spread",
        other => other,
    }
}

fn mount_of(code: &str, route: &str) -> String {
    let parts: Vec<&str> = [code, route].into_iter().filter(|part| !part.is_empty()).collect();
    if parts.is_empty() { "a pin".to_owned() } else { parts.join(", ") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_reason_of_the_number_crate_has_its_sentence() {
        let codes = [
            "same",
            "prefix_missing",
            "prefix_other",
            "transposed",
            "confused",
            "missing",
            "extra",
            "different",
            "gap",
        ];
        for code in codes {
            assert_ne!(reason(code), reason("several"), "{code}");
        }
    }

    #[test]
    fn insects_are_counted_with_the_spare_labels() {
        assert_eq!(insects(3, true, 1), "3 insects, 1 spare of each");
        assert_eq!(insects(1, false, 0), "At least 1 insect, none spare");
    }
}
