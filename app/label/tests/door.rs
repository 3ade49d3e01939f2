//! The door from the shell, given texts of many languages and texts that nobody would write.
//!
//! **Source**: poppler's `pdftotext -bbox-layout` says which words stand where; without it these tests fail. The words
//! are put together from syllables, so the places are invented.

#[path = "../examples/sheet/door.rs"]
mod door;
#[path = "../examples/sheet/facts.rs"]
mod facts;
#[path = "../examples/sheet/fonts.rs"]
mod fonts;

use door::{Answer, answer};
use serde_json::{Value, json};
use std::process::Command;

const POINTS_PER_MM: f64 = 72.0 / 25.4;

fn opened(facts: &Value) -> Answer {
    answer(&facts.to_string(), &fonts::fonts(&[]).expect("the fonts are part of the project")).expect("it is an array")
}

/// Numbers from a seed, the same on every machine.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).expect("31 bits") % limit
    }

    fn of<'l>(&mut self, list: &[&'l str]) -> &'l str {
        list[self.below(list.len())]
    }
}

/// Syllables of fifteen languages in Latin, Greek and Cyrillic letters.
const SYLLABLES: [&[&str]; 15] = [
    &["stone", "ham", "well", "by", "thwaite", "combe"],
    &["bø", "ås", "fjell", "sjø", "dalen", "ær"],
    &["grün", "straß", "öd", "weiß", "brück", "au"],
    &["châ", "teau", "cœur", "île", "ça", "né"],
    &["niño", "peña", "güe", "río", "cañón", "ía"],
    &["são", "ção", "rês", "ilhé", "ões", "pão"],
    &["łęg", "żół", "ście", "rzę", "dów", "ńsk"],
    &["říč", "ští", "ňov", "ůž", "ěd", "ťa"],
    &["őrs", "űz", "győr", "szék", "ágh", "ény"],
    &["şehr", "ğı", "çay", "ılı", "öz", "ün"],
    &["ằng", "ộc", "ữu", "ẩm", "đồi", "ỳnh"],
    &["ķā", "žū", "ēļ", "ģi", "ņš", "īc"],
    &["Θή", "βα", "ώρος", "ψή", "λί", "ξύ"],
    &["жар", "щё", "ый", "дню", "хоу", "эм"],
    &["їж", "ґан", "єв", "ћу", "џак", "љу"],
];

fn name(chance: &mut Chance) -> String {
    let language = SYLLABLES[chance.below(SYLLABLES.len())];
    let word = |chance: &mut Chance| (0..=chance.below(2)).map(|_| chance.of(language)).collect::<String>();
    (0..=chance.below(3)).map(|_| word(chance)).collect::<Vec<_>>().join(" ")
}

fn catch(chance: &mut Chance) -> Value {
    let day = format!("2027-{:02}-{:02}", 1 + chance.below(12), 1 + chance.below(28));
    let mut facts = json!({
        "country": name(chance), "province": name(chance), "locality": name(chance),
        "latitude": chance.below(180_000) as f64 / 1000.0 - 90.0,
        "longitude": chance.below(360_000) as f64 / 1000.0 - 180.0,
        "radius_m": 1 + chance.below(500), "elevation": chance.below(3000),
        "collectors": [name(chance)],
    });
    facts[["from", "night_of"][chance.below(2)]] = json!(day);
    if chance.below(3) == 0 {
        facts["host"] = json!({ "relation": chance.of(&["on", "reared", "swept"]), "thing": "Salix caprea L." });
    }
    facts
}

/// A word on a page: its middle and edges, mm, and its letters.
struct Word {
    sheet: usize,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
    text: String,
}

fn words(pdf: &[u8], name: &str) -> Vec<Word> {
    let path = std::path::PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.pdf"));
    std::fs::write(&path, pdf).expect("the folder of the tests can be written to");
    let output = Command::new("pdftotext").arg("-bbox-layout").arg(&path).arg("-").output();
    let output = output.expect("pdftotext of poppler-utils is needed for this test");
    assert!(output.status.success());
    let mut sheet = 0;
    let mut words = Vec::new();
    for line in String::from_utf8(output.stdout).expect("poppler writes UTF-8").lines() {
        if line.trim().starts_with("<page ") {
            sheet += 1;
        }
        if let Some(word) = line.trim().strip_prefix("<word ") {
            words.push(word_of(word, sheet - 1));
        }
    }
    words
}

fn word_of(element: &str, sheet: usize) -> Word {
    let (attributes, text) = element.split_once('>').expect("a word has letters");
    let number = |name: &str| {
        let rest = attributes.split_once(&format!("{name}=\"")).expect("a word has four edges").1;
        rest.split('"').next().and_then(|mm| mm.parse::<f64>().ok()).expect("an edge is a number") / POINTS_PER_MM
    };
    let text = text.trim_end_matches("</word>").replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">");
    Word { sheet, left: number("xMin"), top: number("yMin"), right: number("xMax"), bottom: number("yMax"), text }
}

/// Each place of a label in what was told, with the lines that should stand there.
fn places(told: &[Value]) -> Vec<(Value, Vec<String>, f64, f64)> {
    let shares = |label: &Value| {
        let further = label["further_labels"].as_array().cloned().unwrap_or_default();
        [label.clone(), label["second_label"].clone()].into_iter().chain(further).collect::<Vec<_>>()
    };
    let each = |share: &Value| {
        let lines: Vec<String> = serde_json::from_value(share["lines"].clone()).unwrap_or_default();
        let size = |name: &str| share[name].as_f64().unwrap_or(0.0);
        let at = share["at"].as_array().cloned().unwrap_or_default();
        at.into_iter().map(|at| (at, lines.clone(), size("width_mm"), size("height_mm"))).collect::<Vec<_>>()
    };
    told.iter().flat_map(shares).collect::<Vec<_>>().iter().flat_map(each).collect()
}

/// The words that stand within a label, line by line; none may cross its edges.
fn within(words: &[Word], at: &Value, width: f64, height: f64) -> String {
    let number = |name: &str| at[name].as_f64().expect("a place has coordinates");
    let (sheet, x, y) = (at["sheet"].as_u64().map(|sheet| sheet as usize), number("x_mm"), number("y_mm"));
    let middle = |word: &&Word| {
        let (across, down) = ((word.left + word.right) / 2.0 - x, (word.top + word.bottom) / 2.0 - y);
        Some(word.sheet) == sheet && (0.0..width).contains(&across) && (0.0..height).contains(&down)
    };
    let mut inside: Vec<&Word> = words.iter().filter(middle).collect();
    for word in &inside {
        assert!(word.left >= x && word.right <= x + width, "{} crosses the cut beside it", word.text);
    }
    inside.sort_by(|a, b| (a.top + a.bottom).total_cmp(&(b.top + b.bottom)));
    // Lines are at least 4 pt apart; fonts that fill gaps have other heights.
    let same_line = |a: &&Word, b: &&Word| (b.top + b.bottom - a.top - a.bottom) / 2.0 < 0.7;
    let mut read: Vec<&str> = Vec::new();
    for line in inside.chunk_by(same_line) {
        let mut line = line.to_vec();
        line.sort_by(|a, b| a.left.total_cmp(&b.left));
        read.extend(line.iter().map(|word| word.text.as_str()));
    }
    read.join(" ")
}

#[test]
fn a_thousand_labels_read_back_as_they_were_meant() {
    let mut chance = Chance(20_271_125);
    let catches: Vec<Value> = (0..800).map(|_| catch(&mut chance)).collect();
    let answer = opened(&json!(catches));
    let words = words(&answer.pdf, "languages");
    let places = places(&answer.told);
    assert!(places.len() >= 1000, "{} labels", places.len());
    assert!(
        answer.told.iter().all(|label| label["printed"] == true),
        "every letter has its glyph, every word its place"
    );
    for (at, lines, width, height) in places {
        assert_eq!(within(&words, &at, width, height), lines.join(" "), "at {at}");
    }
}

#[test]
fn odd_facts_are_told_and_break_nothing() {
    let long = "Upper Saltmarsh ".repeat(300);
    let facts = json!([
        {}, null, 7, "x", [], { "count": -3, "locality": "a" }, { "count": 1e300, "locality": "a" },
        { "count": 1_000_000_000, "locality": "a" }, { "count": 0, "locality": "a" }, { "count": "2", "locality": "a" },
        { "locality": long }, { "locality": "x".repeat(5000) }, { "locality": "昆虫 🦋 \u{ffff}" },
        { "locality": "שלום עולם" }, { "locality": "\u{200b}\u{feff}\u{0} \u{301}" }, { "latitude": 91, "longitude": 0 },
        { "latitude": 12.5 }, { "radius_m": -4, "latitude": 0, "longitude": 0 }, { "from": "2027-02-30" },
        { "from": "2027-06-20", "until": "2027-06-14" }, { "host": { "relation": "on" } }, { "collectors": [null, 3] },
        { "country": ["x"] }, { "nothing": 1, "country": null, "province": "" },
    ]);
    let answer = opened(&facts);
    let of = |fact: usize| answer.told.iter().find(|label| label["fact"] == fact).expect("each is told");
    assert_eq!(answer.told.len(), 24);
    for fact in [0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13, 16] {
        assert_eq!(of(fact)["printed"], false, "{}", of(fact));
    }
    for fact in [1, 2, 3, 4, 5, 6, 7, 15, 16, 17, 18, 19, 20, 21, 22, 23] {
        assert_ne!(of(fact)["problems"], json!([]), "{}", of(fact));
    }
    assert_eq!(of(9)["copies"], 2);
    assert_eq!(of(12)["missing_glyphs"], json!(["昆", "虫", "🦋", "\u{ffff}"]));
    assert_eq!(of(11)["did_not_fit"][0]["part"], "locality");
    assert!(answer.pdf.starts_with(b"%PDF-"));
}

#[test]
fn what_does_not_fit_stands_on_a_second_label() {
    let facts = json!([{
        "country": "Orreland",
        "locality": "Upper Saltmarsh Reserve beside the old sluice gate, below the abandoned toll house, at the third pool",
        "from": "2027-06-19", "collectors": ["I. Varga"], "count": 2,
    }]);
    let answer = opened(&facts);
    let label = &answer.told[0];
    assert_eq!(label["did_not_fit"][0]["part"], "locality", "{label}");
    assert_eq!(label["second_label"]["at"].as_array().map(Vec::len), Some(2));
    let words = words(&answer.pdf, "second");
    for (at, lines, width, height) in places(&answer.told) {
        assert_eq!(within(&words, &at, width, height), lines.join(" "));
    }
}

/// The project's own second font, named as a person would name theirs, leads and is cut down.
#[test]
fn a_font_of_ones_own_is_used_first_and_cut_down() {
    let own = concat!(env!("CARGO_MANIFEST_DIR"), "/../../public/fonts/DejaVuSansCondensed-gaps.ttf").to_owned();
    let facts = json!([{ "locality": "♀ Tarn", "host": { "relation": "on", "thing": "Salix caprea" } }]);
    let fonts = fonts::fonts(&[own]).expect("the font can be read");
    let answer = answer(&facts.to_string(), &fonts).expect("it is an array");
    assert!(answer.told.iter().all(|label| label["printed"] == true));
    let read: Vec<String> = words(&answer.pdf, "own").into_iter().map(|word| word.text).collect();
    assert!(["♀", "Tarn", "Salix", "caprea"].iter().all(|word| read.iter().any(|known| known == word)), "{read:?}");
    let path = std::path::PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("own.pdf");
    let output =
        Command::new("pdffonts").arg(path).output().expect("pdffonts of poppler-utils is needed for this test");
    let listed = String::from_utf8_lossy(&output.stdout).into_owned();
    for name in ["DejaVuSansCondensed", "FiraSansCondensed-Regular", "FiraSansCondensed-Italic"] {
        let row = listed.lines().find(|row| row.contains(name)).unwrap_or_else(|| panic!("{name} is used: {listed}"));
        assert!(row.contains(" yes yes yes ") && row.contains('+'), "embedded, a subset, mapped: {row}");
    }
}

#[test]
fn codes_are_said_in_the_words_of_labels_and_other_words_as_they_are() {
    let said = |relation: &str, method: &str| {
        let host = json!({ "relation": relation, "thing": "oak" });
        opened(&json!([{ "host": host, "method": method }])).told[0]["lines"].clone()
    };
    assert_eq!(said("reared", "light"), json!(["ex oak", "at light"]));
    assert_eq!(said("reared_from", "hand_net"), json!(["ex oak", "hand net"]));
    assert_eq!(said("under bark of", "by lamp"), json!(["under bark of oak", "by lamp"]));
}

#[test]
fn what_is_no_array_is_refused() {
    let fonts = fonts::fonts(&[]).expect("the fonts are part of the project");
    for text in ["", "{}", "[", "[1e999]", "nul", "[\"\\ud800\"]"] {
        assert!(answer(text, &fonts).is_err(), "{text}");
    }
    assert!(fonts::fonts(&["Cargo.toml".into()]).is_err());
    assert!(fonts::fonts(&["missing.ttf".into()]).is_err());
}
