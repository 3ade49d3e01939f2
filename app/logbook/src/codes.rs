//! The vocabulary that is stored as codes, in the order in which it is offered.

/// Methods of catching.
pub const METHODS: [&str; 14] = [
    "hand_net",
    "sweeping",
    "beating",
    "by_hand",
    "aspirator",
    "light",
    "pan_trap",
    "pitfall_trap",
    "malaise_trap",
    "interception_trap",
    "bait",
    "sifting",
    "aquatic_net",
    "rearing",
];

/// The particulars that the trade records of a method, in the order in which they are asked.
pub fn particulars(method: &str) -> &'static [&'static str] {
    match method {
        "hand_net" | "beating" | "by_hand" | "aspirator" => &["minutes"],
        "sweeping" => &["strokes", "minutes"],
        "light" => &["lamp", "lamp_on", "lamp_off"],
        "pan_trap" => &["traps", "colour", "set", "taken_up"],
        "pitfall_trap" => &["traps", "fluid", "set", "taken_up"],
        "malaise_trap" | "interception_trap" => &["set", "taken_up"],
        "bait" => &["bait", "minutes"],
        "sifting" => &["litres", "mesh_mm"],
        "aquatic_net" => &["mesh_mm", "minutes"],
        _ => &[],
    }
}

/// Methods whose event goes on while containers are added: a lamp that burns. A trap that is out is no event.
pub fn burns(method: &str) -> bool {
    method == "light"
}

/// Methods that are traps left in the ground.
pub fn is_trap(method: &str) -> bool {
    method.ends_with("_trap")
}

/// How a catch was with its host.
pub const RELATIONS: [&str; 7] = ["flower", "swept", "beaten", "on", "feeding", "mine_or_gall", "reared"];

/// What a host is.
pub const THINGS: [&str; 6] = ["plant", "fungus", "insect", "vertebrate", "dung", "wood"];

/// What a catch travels in.
pub const VESSELS: [&str; 4] = ["vial", "envelope", "jar", "bag"];

/// How a catch is killed.
pub const KILLED: [&str; 4] = ["ethyl_acetate", "cold", "preservative", "cyanide"];

/// In what it is kept.
pub const KEPT: [&str; 4] = ["ethanol", "propylene_glycol", "dry", "papered"];

/// How a count is meant.
pub const COUNTS: [&str; 4] = ["exact", "about", "least", "uncounted"];

/// Doubt about a name, and what stands in place of an epithet.
pub const QUALIFIERS: [&str; 3] = ["cf.", "aff.", "sp."];

/// Sexes.
pub const SEXES: [&str; 3] = ["female", "male", "both"];

/// Life stages.
pub const STAGES: [&str; 5] = ["egg", "larva", "nymph", "pupa", "adult"];

/// How containers are linked.
pub const LINKS: [&str; 3] = ["pair", "prey_of", "same_nest"];

/// Habits of numbering.
pub const HABITS: [&str; 4] = ["one", "letters", "engraved", "none"];

/// How an insect is mounted.
pub const ROUTES: [&str; 5] = ["direct", "point", "card", "minuten", "spread"];

/// Sizes of insect pins, from thin to thick.
pub const PINS: [&str; 10] = units::PinSize::NAMES;

/// Label sheets.
pub const SHEETS: [&str; 3] = ["a4", "letter", "card"];

/// Themes of the page.
pub const THEMES: [&str; 4] = ["paper", "sun", "dark", "lamp"];
