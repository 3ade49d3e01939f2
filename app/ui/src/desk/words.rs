use crate::context::say;
use logbook::moment::{Known, clock_text};
use logbook::view::{ContentView, Fluid};

/// Contents in a line: `3 hover flies ♀, about 40 leaf beetles`.
pub fn contents_words(contents: &[ContentView]) -> String {
    let codes = say().codes;
    let line = |line: &ContentView| {
        let stage =
            if line.stage.is_empty() || line.stage == "adult" { String::new() } else { codes.stages(&line.stage) };
        let sex = if line.sex.is_empty() { String::new() } else { codes.sex_sign(&line.sex) };
        say().desk.content(&line.count_kind, line.count, &line.group, &sex, &stage)
    };
    contents.iter().map(line).filter(|words| !words.is_empty()).collect::<Vec<_>>().join(", ")
}

/// A fluid with its strength, in one's own words where there are some.
pub fn fluid_words(fluid: &Fluid) -> String {
    if fluid.text.is_empty() { say().codes.fluid(&fluid.code, &fluid.strength) } else { fluid.text.clone() }
}

/// A moment as a device's clock stamped it: `19.vi.2027, 14:32`; as it stands where it cannot be read.
pub fn stamp_words(stamp: &str) -> String {
    let known = Known::read(stamp);
    known.map_or_else(|| stamp.to_owned(), |known| when_words(known, true))
}

/// A time as far as it is known: `19.vi.2027, 14:32`.
pub fn when_words(known: Known, year: bool) -> String {
    let day = match known.date().filter(|_| !year) {
        Some(day) => say().dates.roman_short(day),
        None => say().dates.known(known.year, known.month, known.day),
    };
    known.clock.map_or(day.clone(), |clock| format!("{day}, {}", clock_text(clock)))
}
