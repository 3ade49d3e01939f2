//! Words for stored codes.

use super::{English, counted, large};
use crate::sentences::say;

const METHODS: [(&str, &str); 14] = [
    ("hand_net", "Hand net"),
    ("sweeping", "Sweeping"),
    ("beating", "Beating"),
    ("by_hand", "By hand"),
    ("aspirator", "Aspirator"),
    ("light", "Light"),
    ("pan_trap", "Pan traps"),
    ("pitfall_trap", "Pitfall traps"),
    ("malaise_trap", "Malaise trap"),
    ("interception_trap", "Flight interception trap"),
    ("bait", "Bait"),
    ("sifting", "Sifting"),
    ("aquatic_net", "Aquatic net"),
    ("rearing", "Rearing"),
];

/// Code, name, unit behind the figure, and how it stands in a sentence (`#` is the value).
const PARTICULARS: [(&str, &str, &str, &str); 13] = [
    ("minutes", "Time taken", "minutes", "# minutes"),
    ("strokes", "Strokes", "strokes", "# strokes"),
    ("lamp", "Lamp", "", "#"),
    ("lamp_on", "Lamp on", "", "on at #"),
    ("lamp_off", "Lamp off", "", "off at #"),
    ("traps", "Number of traps", "traps", "# traps"),
    ("colour", "Colour", "", "#"),
    ("fluid", "Fluid", "", "#"),
    ("set", "Set on", "", "set #"),
    ("taken_up", "Taken up on", "", "taken up #"),
    ("bait", "Bait", "", "#"),
    ("litres", "Litres sifted", "litres", "# litres"),
    ("mesh_mm", "Mesh", "mm mesh", "# mm mesh"),
];

const RELATIONS: [(&str, &str); 7] = [
    ("flower", "visiting the flower of"),
    ("swept", "swept from"),
    ("beaten", "beaten from"),
    ("on", "on"),
    ("feeding", "feeding on"),
    ("mine_or_gall", "in a mine or gall of"),
    ("reared", "reared from"),
];

const THINGS: [(&str, &str); 6] = [
    ("plant", "plant"),
    ("fungus", "fungus"),
    ("insect", "insect"),
    ("vertebrate", "vertebrate"),
    ("dung", "dung"),
    ("wood", "wood"),
];

const VESSELS: [(&str, &str, &str); 5] = [
    ("vial", "vial", "vials"),
    ("envelope", "envelope", "envelopes"),
    ("jar", "jar", "jars"),
    ("bag", "trap bag", "trap bags"),
    ("none", "record", "records"),
];

const KILLED: [(&str, &str); 4] = [
    ("ethyl_acetate", "Ethyl acetate"),
    ("cold", "Cold"),
    ("preservative", "The preservative"),
    ("cyanide", "Cyanide"),
];

const KEPT: [(&str, &str); 4] =
    [("ethanol", "Ethanol"), ("propylene_glycol", "Propylene glycol"), ("dry", "Dry"), ("papered", "Papered")];

const SEXES: [(&str, &str, &str); 3] = [("female", "female", "♀"), ("male", "male", "♂"), ("both", "both", "♀♂")];

const STAGES: [(&str, &str, &str); 5] = [
    ("egg", "egg", "eggs"),
    ("larva", "larva", "larvae"),
    ("nymph", "nymph", "nymphs"),
    ("pupa", "pupa", "pupae"),
    ("adult", "adult", "adults"),
];

const COUNTS: [(&str, &str); 4] =
    [("exact", "exact"), ("about", "about"), ("least", "at least"), ("uncounted", "uncounted")];

const LINKS: [(&str, &str); 3] =
    [("pair", "a pair with"), ("prey_of", "prey of"), ("same_nest", "from the same nest as")];

const HABITS: [(&str, &str); 4] = [
    ("one", "One number a container"),
    ("letters", "One number an event, with letters"),
    ("engraved", "Engraved vials, used again"),
    ("none", "No numbers in the field"),
];

const THEMES: [(&str, &str); 4] = [("paper", "Paper"), ("sun", "Sun"), ("dark", "Dark"), ("lamp", "Lamp, red only")];

const HOWS: [(&str, &str); 4] = [
    ("device", "by the device"),
    ("typed", "typed"),
    ("site", "the site’s own point, taken over"),
    ("track", "from a recorded track, by the hour"),
];

const FOUND: [(&str, &str); 4] = [("whole", "whole"), ("flooded", "flooded"), ("dry", "dry"), ("dug_out", "dug out")];

say! { English says Codes {
    method(code: &str): word(&METHODS, code);
    method_with(code: &str, particulars: &[(String, String)]): method_with(code, particulars);
    particular(code: &str): particular(code).map_or_else(|| code.into(), |(_, name, ..)| name.into());
    particular_unit(code: &str): particular(code).map_or_else(String::new, |(_, _, unit, _)| unit.into());
    relation(code: &str): word(&RELATIONS, code);
    relation_option(code: &str): large(&word(&RELATIONS, code));
    thing(code: &str): word(&THINGS, code);
    vessel(code: &str): vessel(code, 1);
    vessel_option(code: &str): large(&vessel(code, 1));
    vessels(code: &str, count: usize): format!("{} {}", super::dates::grouped(count), vessel(code, count));
    killed(code: &str): word(&KILLED, code);
    kept(code: &str): word(&KEPT, code);
    fluid(code: &str, strength: &str): fluid(code, strength);
    sex(code: &str): SEXES.iter().find(|(known, ..)| *known == code).map_or_else(|| code.into(), |(_, name, _)| (*name).into());
    sex_sign(code: &str): SEXES.iter().find(|(known, ..)| *known == code).map_or_else(String::new, |(.., sign)| (*sign).into());
    stage(code: &str): STAGES.iter().find(|(known, ..)| *known == code).map_or_else(|| code.into(), |(_, name, _)| (*name).into());
    stages(code: &str): STAGES.iter().find(|(known, ..)| *known == code).map_or_else(|| code.into(), |(.., name)| (*name).into());
    count_kind(code: &str): word(&COUNTS, code);
    counted(kind: &str, count: &str): in_words(kind, count);
    link(code: &str): word(&LINKS, code);
    habit(code: &str): word(&HABITS, code);
    theme(code: &str): word(&THEMES, code);
    place_how(code: &str): word(&HOWS, code);
    found(code: &str): word(&FOUND, code);
} }

fn word(table: &[(&str, &str)], code: &str) -> String {
    table.iter().find(|(known, _)| *known == code).map_or(code, |(_, words)| words).to_owned()
}

fn particular(code: &str) -> Option<(&'static str, &'static str, &'static str, &'static str)> {
    PARTICULARS.into_iter().find(|(known, ..)| *known == code)
}

fn method_with(code: &str, particulars: &[(String, String)]) -> String {
    let mut said = word(&METHODS, code);
    for (code, value) in particulars {
        let part = particular(code).map_or_else(|| format!("{code} {value}"), |(.., form)| form.replace('#', value));
        let part = if value == "1" {
            part.replace("minutes", "minute").replace("strokes", "stroke").replace("traps", "trap")
        } else {
            part
        };
        said.push_str(", ");
        said.push_str(&part);
    }
    said
}

fn vessel(code: &str, count: usize) -> String {
    let known = VESSELS.iter().find(|(known, ..)| *known == code);
    known.map_or(code, |(_, one, many)| if count == 1 { one } else { many }).to_owned()
}

fn fluid(code: &str, strength: &str) -> String {
    let name = KILLED.iter().chain(&KEPT).find(|(known, _)| *known == code).map_or(code, |(_, words)| words);
    if strength.trim().is_empty() { name.to_owned() } else { format!("{name} {} %", strength.trim()) }
}

fn in_words(kind: &str, count: &str) -> String {
    match (kind, count.is_empty()) {
        ("uncounted", _) | (_, true) => "uncounted".into(),
        ("exact", _) => format!("{count} exact"),
        ("about", _) => format!("about {count}"),
        ("least", _) => format!("at least {count}"),
        _ => format!("{count} {kind}"),
    }
}

/// So many containers of mixed kinds.
pub(super) fn containers(count: usize) -> String {
    counted(count, "container", "containers")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with(code: &str, particulars: &[(&str, &str)]) -> String {
        let owned: Vec<(String, String)> =
            particulars.iter().map(|(code, value)| ((*code).into(), (*value).into())).collect();
        method_with(code, &owned)
    }

    #[test]
    fn a_method_is_said_with_its_particulars() {
        assert_eq!(with("hand_net", &[("minutes", "30")]), "Hand net, 30 minutes");
        assert_eq!(with("sweeping", &[("strokes", "50")]), "Sweeping, 50 strokes");
        assert_eq!(with("pan_trap", &[("traps", "1"), ("colour", "yellow")]), "Pan traps, 1 trap, yellow");
    }

    #[test]
    fn an_unknown_code_is_said_as_it_stands() {
        assert_eq!(word(&METHODS, "kite_net"), "kite_net");
        assert_eq!(with("kite_net", &[("hooks", "3")]), "kite_net, hooks 3");
    }

    #[test]
    fn a_count_is_said_with_its_kind() {
        assert_eq!(in_words("least", "12"), "at least 12");
        assert_eq!(in_words("exact", ""), "uncounted");
    }

    #[test]
    fn a_fluid_is_said_with_its_strength() {
        assert_eq!(fluid("ethanol", "80"), "Ethanol 80 %");
        assert_eq!(fluid("brine", ""), "brine");
    }
}
