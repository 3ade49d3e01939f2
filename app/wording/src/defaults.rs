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
//! - Collected and emerged dates both on the label of a reared insect: La Salle, CSIRO.
//! - A label of determination carries the name, its author, "det.", person and year: position Ross 1962, wording common
//!   practice. Code lowest: Schauff (ed.) 2001, Collecting and preserving insects and mites, 5.7.
//! - One label inside the vial with fluid, not folded: Schauff 2001, 5.8; the data of both pinned labels on it, since
//!   there is no second: common practice.
//! - "leg.", "det.", "prep." and the words of envelopes, parts and slips: common practice.
//! - Sizes: 18 by 8 mm is the usual museum size, common practice; 12 by 8 to 22.2 by 7.9 mm are published (NC State
//!   University, ENT 425; Purdue University 4-H 401). Type of 4 pt: Schiefer & MacGown 2016; above 5 pt too large, below
//!   3.5 pt not used: a lepidopterist's page on labelling specimens. Those without a pin: common practice.

use crate::arrangement::{Arrangement, Dash, Item, Joint, Kind, Month, Part};
use std::collections::BTreeMap;
use units::{Millimetres, Points};

/// The arrangement of a kind of label, until a person makes another.
pub fn arrangement(kind: Kind) -> Arrangement {
    let lines = match kind {
        Kind::Collection => collection(),
        Kind::Host => host(),
        Kind::Determination => determination(),
        Kind::Rearing => rearing(),
        Kind::Code => vec![vec![Item::new(Part::Code)]],
        Kind::Fluid => fluid(),
        Kind::Envelope => envelope(),
        Kind::Parts => pieces(),
        Kind::Slip => slip(),
    };
    Arrangement {
        lines,
        month: Month::RomanSmall,
        joint: Joint::Stop,
        dash: Dash::En,
        relations: words(&RELATIONS),
        methods: words(&METHODS),
        particulars: words(&PARTICULARS),
        abbreviations: BTreeMap::new(),
    }
}

/// The size of a kind of label and of its type, until a person chooses another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Width of the label.
    pub width: Millimetres,
    /// Height of the label.
    pub height: Millimetres,
    /// Largest type.
    pub largest: Points,
    /// Least type.
    pub least: Points,
    /// Whether a pin goes through it.
    pub pinned: Pinned,
}

/// Whether a pin goes through a label.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pinned {
    /// It stands on a pin.
    OnPin,
    /// It lies in a vial, an envelope or beside the insect.
    Loose,
}

/// The size of a kind of label to begin with.
pub fn size(kind: Kind) -> Size {
    let (width, height, largest, least, pinned) = match kind {
        Kind::Collection | Kind::Host | Kind::Determination | Kind::Rearing => (18, 8, 5, 4, Pinned::OnPin),
        Kind::Code | Kind::Parts => (18, 8, 5, 4, Pinned::OnPin),
        Kind::Fluid => (40, 15, 8, 5, Pinned::Loose),
        Kind::Envelope => (70, 40, 10, 6, Pinned::Loose),
        Kind::Slip => (25, 10, 9, 6, Pinned::Loose),
    };
    Size {
        width: Millimetres::whole(width),
        height: Millimetres::whole(height),
        largest: Points::whole(largest),
        least: Points::whole(least),
        pinned,
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

fn determination() -> Vec<Vec<Item>> {
    vec![
        vec![Item::new(Part::Name).then(" "), Item::new(Part::Author).then(" "), Item::new(Part::Sex)],
        vec![Item::new(Part::DeterminedBy).before("det. ").then(" "), Item::new(Part::DeterminedIn)],
    ]
}

fn place() -> Vec<Vec<Item>> {
    let mut lines = collection();
    lines.pop();
    lines
}

fn rearing() -> Vec<Vec<Item>> {
    let mut lines = place();
    lines.extend([
        vec![Item::new(Part::Relation).then(" "), Item::new(Part::Thing), Item::new(Part::ThingPart)],
        vec![
            Item::new(Part::Date).before("coll. "),
            Item::new(Part::Emerged).before("em. "),
            Item::new(Part::Collectors).before("leg. "),
        ],
    ]);
    lines
}

fn fluid() -> Vec<Vec<Item>> {
    let mut lines = collection();
    lines.extend([
        vec![Item::new(Part::Relation).then(" "), Item::new(Part::Thing), Item::new(Part::ThingPart)],
        vec![Item::new(Part::Method), Item::new(Part::Particulars), Item::new(Part::Microhabitat)],
        vec![Item::new(Part::Number), Item::new(Part::Contents), Item::new(Part::Preservative)],
    ]);
    lines
}

fn envelope() -> Vec<Vec<Item>> {
    let mut lines = collection();
    lines.extend(host());
    lines.push(vec![Item::new(Part::Contents), Item::new(Part::Sex)]);
    lines
}

fn pieces() -> Vec<Vec<Item>> {
    vec![
        vec![Item::new(Part::Piece).then(" "), Item::new(Part::Linked).before("prep. ")],
        vec![Item::new(Part::Name), Item::new(Part::Sex)],
        vec![Item::new(Part::Code)],
    ]
}

fn slip() -> Vec<Vec<Item>> {
    vec![vec![Item::new(Part::Number).then(" "), Item::new(Part::Count).before("× ")], vec![Item::new(Part::Date)]]
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
