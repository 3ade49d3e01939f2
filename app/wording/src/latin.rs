//! Latin names: which words stand in italics.
//!
//! In goes a name as typed, out come runs. Genus, subgenus, epithets in italics; rank and doubt ("subsp.",
//! "cf.", "sp.", "×") and authors upright. Whether a name is right is not looked at.

use crate::line::Run;

/// Rank, doubt and hybrid marks: upright, and a name goes on after them.
const MARKS: [&str; 19] = [
    "cf.",
    "aff.",
    "nr",
    "nr.",
    "subsp.",
    "ssp.",
    "subg.",
    "sect.",
    "ser.",
    "agg.",
    "var.",
    "subvar.",
    "f.",
    "forma",
    "×",
    "x",
    "morph",
    "cv.",
    "nothosubsp.",
];
/// What stands in place of an epithet; a name ends there.
const ENDS: [&str; 5] = ["sp.", "spp.", "sp", "spp", "indet."];
/// Small words of authors' names.
const PARTICLES: [&str; 16] =
    ["de", "da", "di", "du", "del", "della", "von", "van", "der", "den", "la", "le", "ex", "et", "in", "and"];

/// The name in italic and upright runs; their texts together are the name with single spaces.
pub fn latin_split(name: &str) -> Vec<Run> {
    let words: Vec<&str> = name.split_whitespace().collect();
    let mut runs: Vec<Run> = Vec::new();
    let mut reading = Reading::Genus;
    for (index, word) in words.iter().enumerate() {
        let italic = reading.takes(word, words.get(index + 1).copied());
        append(&mut runs, word, italic);
    }
    runs
}

#[derive(Clone, Copy, PartialEq)]
enum Reading {
    Genus,
    /// After the genus.
    Epithet,
    /// After the first epithet: another may follow bare, as zoologists write.
    Further,
    /// After a rank or doubt: the next word belongs to the name.
    AfterMark,
    Author,
}

impl Reading {
    /// Takes one word; true when it stands in italics.
    fn takes(&mut self, word: &str, next: Option<&str>) -> bool {
        if MARKS.contains(&word) {
            if *self != Self::Genus {
                *self = Self::AfterMark;
            }
            return false;
        }
        if ENDS.contains(&word) {
            *self = Self::Author;
            return false;
        }
        let italic = match self {
            Self::Genus => is_word(word.trim_start_matches('×')),
            Self::Epithet => is_epithet(word) || is_subgenus(word, next),
            Self::Further => is_epithet(word) && !PARTICLES.contains(&word),
            Self::AfterMark => is_word(word.trim_start_matches('×')),
            Self::Author => false,
        };
        *self = match (*self, italic) {
            (_, false) => Self::Author,
            (Self::Genus, true) => Self::Epithet,
            (Self::Epithet, true) if is_subgenus(word, next) => Self::Epithet,
            (_, true) => Self::Further,
        };
        italic
    }
}

fn is_word(word: &str) -> bool {
    word.chars().count() > 1 && word.chars().all(|letter| letter.is_alphabetic() || letter == '-')
}

fn is_epithet(word: &str) -> bool {
    let word = word.trim_start_matches('×');
    is_word(word) && word.chars().all(|letter| letter.is_lowercase() || letter == '-')
}

/// "(Archicarabus)" before an epithet is a subgenus; before anything else it is an author.
fn is_subgenus(word: &str, next: Option<&str>) -> bool {
    let inside = word.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'));
    inside.is_some_and(is_word) && next.is_some_and(|next| is_epithet(next) || MARKS.contains(&next))
}

fn append(runs: &mut Vec<Run>, word: &str, italic: bool) {
    match runs.last_mut() {
        Some(last) if last.italic == italic => {
            last.text.push(' ');
            last.text.push_str(word);
        }
        Some(last) if last.italic => runs.push(Run { text: format!(" {word}"), italic }),
        Some(last) => {
            last.text.push(' ');
            runs.push(Run { text: word.to_owned(), italic });
        }
        None => runs.push(Run { text: word.to_owned(), italic }),
    }
}

/// True when this looks like a Latin name of a species: a guess by the form of the first two words.
///
/// **Accuracy**: a genus alone is not recognised, and a local name with a Latin ending would be taken for Latin; a
/// person can say otherwise in the wording of the label.
pub fn looks_latin(name: &str) -> bool {
    let mut words = name.split_whitespace().filter(|word| *word != "×" && *word != "x");
    let (Some(genus), Some(second)) = (words.next(), words.next()) else {
        return false;
    };
    is_genus(genus) && (MARKS.contains(&second) || ENDS.contains(&second) || has_latin_ending(second))
}

fn is_genus(word: &str) -> bool {
    let word = word.trim_start_matches('×');
    let mut letters = word.chars();
    is_word(word)
        && letters.next().is_some_and(char::is_uppercase)
        && letters.all(|letter| letter.is_lowercase() || letter == '-')
}

fn has_latin_ending(word: &str) -> bool {
    const ENDINGS: [&str; 22] = [
        "us", "a", "um", "is", "ae", "i", "ens", "ans", "oides", "ale", "are", "ile", "ense", "estre", "ine", "ix",
        "ax", "ex", "or", "os", "on", "es",
    ];
    is_epithet(word) && word.chars().count() >= 3 && ENDINGS.iter().any(|ending| word.ends_with(ending))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `_` stands around italics.
    fn check(name: &str, expected: &str) {
        let seen: String = latin_split(name)
            .iter()
            .map(|run| if run.italic { format!("_{}_", run.text) } else { run.text.clone() })
            .collect();
        assert_eq!(seen, expected);
    }

    #[test]
    fn names_in_italics_and_authors_upright() {
        check("Heracleum sphondylium L.", "_Heracleum sphondylium_ L.");
        check("Salix", "_Salix_");
        check("Salix  caprea", "_Salix caprea_");
        check("Formica rufa Linnaeus, 1761", "_Formica rufa_ Linnaeus, 1761");
        check("Aus bus de Vries", "_Aus bus_ de Vries");
        check("Aus bus cus (Miller, 1800)", "_Aus bus cus_ (Miller, 1800)");
        check("Capsella bursa-pastoris (L.) Medik.", "_Capsella bursa-pastoris_ (L.) Medik.");
    }

    #[test]
    fn rank_and_doubt_upright() {
        check("Salix cf. caprea L.", "_Salix_ cf. _caprea_ L.");
        check("Salix sp.", "_Salix_ sp.");
        check("Salix sp. 3", "_Salix_ sp. 3");
        check("Salix alba L. subsp. vitellina (L.) Arcang.", "_Salix alba_ L. subsp. _vitellina_ (L.) Arcang.");
        check("Salix alba var. sericea Gaudin", "_Salix alba_ var. _sericea_ Gaudin");
        check("Mentha × piperita L.", "_Mentha_ × _piperita_ L.");
        check("× Sorbaronia fallax", "× _Sorbaronia fallax_");
        check("Aus (Bus) cus Miller", "_Aus (Bus) cus_ Miller");
        check("Aus (Miller, 1800)", "_Aus_ (Miller, 1800)");
    }

    #[test]
    fn species_are_told_from_local_names() {
        for name in [
            "Heracleum sphondylium L.",
            "Salix sp.",
            "Salix cf. caprea",
            "Mentha × piperita",
            "Hordeum vulgare",
            "Poa pratensis",
        ] {
            assert!(looks_latin(name), "{name}");
        }
        for name in ["oak", "Oak", "Apple tree", "fox dung", "Dead wood", "grey willow", ""] {
            assert!(!looks_latin(name), "{name}");
        }
    }
}
