//! The arrangements to begin with, and where their rules come from.
//!
//! - From large to small: country, province, place; then date; then collector: Schiefer & MacGown 2016 (Mississippi
//!   Entomological Museum Report 2016-01); NC State University, ENT 425; Museum of Southwestern Biology, Division of
//!   Arthropods, specimen labels, version 09/2002.
//! - Country in full, in capitals: Schiefer & MacGown 2016; Museum of Southwestern Biology 2002.
//! - Coordinates with the radius: Chapman & Wieczorek 2020, Georeferencing Best Practices, on small labels (the
//!   datum is WGS84 unless the text given says otherwise).
//! - Host and other data on a label of their own, below the first: Ross 1962, Illinois Natural History Survey
//!   Circular 39; Purdue University 4-H 401.
//! - "ex" for reared from, "on" for found on, "em." before the days of emergence: La Salle, CSIRO, on labelling
//!   reared parasitoids. "ex" is never used for anything else here.
//! - "leg." before the collectors: common practice.

use crate::arrangement::{Arrangement, Item, Kind, Month, Part};
use std::collections::BTreeMap;

/// The arrangement of a kind of label, until a person makes another.
pub fn arrangement(kind: Kind) -> Arrangement {
    let lines = match kind {
        Kind::Collection => collection(),
        Kind::Host => host(),
    };
    Arrangement {
        lines,
        month: Month::RomanSmall,
        relations: words(&RELATIONS),
        methods: words(&METHODS),
        particulars: words(&PARTICULARS),
        abbreviations: BTreeMap::new(),
    }
}

fn collection() -> Vec<Vec<Item>> {
    vec![
        vec![
            Item::new(Part::Country).capitals().then(": "),
            Item::new(Part::Province),
            Item::new(Part::Locality),
            Item::new(Part::Offset),
            Item::new(Part::Site),
            Item::new(Part::Elevation),
        ],
        vec![Item::new(Part::Coordinates).then(" "), Item::new(Part::Radius).before("±")],
        vec![Item::new(Part::Date), Item::new(Part::Collectors).before("leg. ")],
    ]
}

fn host() -> Vec<Vec<Item>> {
    vec![
        vec![Item::new(Part::Relation).then(" "), Item::new(Part::Thing), Item::new(Part::ThingPart)],
        vec![
            Item::new(Part::Method),
            Item::new(Part::Particulars),
            Item::new(Part::Microhabitat),
            Item::new(Part::Height).before("h. "),
        ],
        vec![Item::new(Part::Emerged).before("em. "), Item::new(Part::Number)],
    ]
}

const RELATIONS: [(&str, &str); 7] = [
    ("flower", "visiting the flower of"),
    ("swept", "swept from"),
    ("beaten", "beaten from"),
    ("on", "on"),
    ("feeding", "feeding on"),
    ("mine_or_gall", "in mine or gall of"),
    ("reared", "ex"),
];

/// Methods as labels name them: common practice.
const METHODS: [(&str, &str); 14] = [
    ("hand_net", "hand net"),
    ("sweeping", "sweeping"),
    ("beating", "beating"),
    ("by_hand", "by hand"),
    ("aspirator", "aspirator"),
    ("light", "at light"),
    ("pan_trap", "pan trap"),
    ("pitfall_trap", "pitfall trap"),
    ("malaise_trap", "Malaise trap"),
    ("interception_trap", "flight interception trap"),
    ("bait", "at bait"),
    ("sifting", "sifted"),
    ("aquatic_net", "aquatic net"),
    ("rearing", "reared"),
];

/// Their particulars, with `#` for the value; symbols of units where there are any: common practice.
const PARTICULARS: [(&str, &str); 6] = [
    ("minutes", "# min"),
    ("strokes", "# strokes"),
    ("traps", "# traps"),
    ("litres", "# l"),
    ("mesh_mm", "mesh # mm"),
    ("colour", "#"),
];

fn words(table: &[(&str, &str)]) -> BTreeMap<String, String> {
    table.iter().map(|(code, words)| ((*code).to_owned(), (*words).to_owned())).collect()
}
