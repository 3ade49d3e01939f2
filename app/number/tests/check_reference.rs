//! Check characters against published and computed examples.
//!
//! Source: `barcodes_checkdigits.csv` (its own columns say where each row is from). Tolerance: none, a check
//! character is right or wrong.

#[path = "../../../tests/reference/table.rs"]
mod table;

use number::check::Signs;

fn signs_of(scheme: &str) -> Option<Signs> {
    match scheme {
        "ISO 7064 MOD 11,10" => Some(Signs::Digits),
        "ISO 7064 MOD 37,36" => Some(Signs::Capitals),
        _ => None,
    }
}

#[test]
fn examples_have_the_check_character_of_the_table() {
    let mut rows_checked = 0;
    for row in table::table("barcodes_checkdigits.csv") {
        let Some(signs) = signs_of(&row["scheme"]).filter(|_| row["row_kind"] == "example") else { continue };
        let code = &row["input_or_right_string"];
        let character = signs.character(code).map(String::from);
        assert_eq!(character.as_deref(), Some(row["check_characters"].as_str()), "{code}");
        assert!(signs.holds(&row["full_or_wrong_string"]), "{code}");
        rows_checked += 1;
    }
    assert_eq!(rows_checked, 9);
}

#[test]
fn wrong_codes_are_found_where_the_scheme_can() {
    let mut rows_checked = 0;
    for row in table::table("barcodes_checkdigits.csv") {
        let Some(signs) = signs_of(&row["scheme"]).filter(|_| row["row_kind"] == "error case") else { continue };
        let wrong = &row["full_or_wrong_string"];
        assert!(signs.holds(&row["input_or_right_string"]), "{wrong}");
        assert_eq!(signs.holds(wrong), row["verdict_or_rate"] == "valid", "{wrong}");
        rows_checked += 1;
    }
    assert_eq!(rows_checked, 3);
}

/// The rates that the table gives by full enumeration: 72 of 45,360 exchanged neighbours are missed.
#[test]
fn exchanged_neighbours_are_missed_as_rarely_as_the_table_says() {
    let alphabet: Vec<char> = ('0'..='9').chain('A'..='Z').collect();
    let (mut cases, mut missed) = (0, 0);
    // One sign before the pair brings the system into each of its states once.
    for before in &alphabet {
        for a in &alphabet {
            for b in alphabet.iter().filter(|b| *b != a) {
                cases += 1;
                let right = Signs::Capitals.character(&format!("{before}{a}{b}"));
                let wrong = Signs::Capitals.character(&format!("{before}{b}{a}"));
                missed += usize::from(right == wrong);
            }
        }
    }
    assert_eq!((cases, missed), (45_360, 72));
}
