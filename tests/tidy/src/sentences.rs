//! Only `phrases` holds sentences for people.
//!
//! The rule, as far as a machine can see it: a string literal in another crate of the product must not read like a
//! sentence, which is a capital letter, two words or more, and among them a word in small letters; nor may text stand
//! bare between tags. Not meant for people, and so left alone: comments, tests, what a broken invariant says
//! (`expect`, `panic!`, `assert…`, `unreachable!`), and `class` attributes. Nor are these looked at: `wording`, whose
//! words are those of labels and follow the arrangement, not the page's language; `units`, which only documents; the
//! ports' stand-ins in `memory`; programs under `examples/` and `pack`, which speak to developers on a terminal; and
//! the cover in `app/shell/index.html`, which speaks before there are phrases.

use crate::literals::literals;
use crate::product::sources;
use crate::{Text, none};

const SILENT: [&str; 12] = [
    "record", "number", "place", "label", "exchange", "ports", "logbook", "browser", "ui", "shell", "press", "courier",
];

const STAND_INS: &str = "app/ports/src/memory";

const NOT_FOR_PEOPLE: [&str; 7] = ["expect(", "panic!(", "assert", "unreachable!(", "class", "doc", "attr("];

fn reads_like_a_sentence(text: &str) -> bool {
    let mut words = text.split(' ');
    let first = words.next().unwrap_or("");
    let capital = first.chars().next().is_some_and(char::is_uppercase) && first.chars().skip(1).all(is_word);
    let small = |word: &str| word.chars().count() > 1 && word.chars().all(char::is_lowercase);
    capital && words.any(|word| small(word.trim_matches(|c: char| !c.is_alphabetic())))
}

fn is_word(c: char) -> bool {
    c.is_alphabetic() || "'’,-".contains(c)
}

/// Text between a tag's end and the next tag, as view macros allow it.
fn bare(line: &str) -> Option<&str> {
    let (_, rest) = line.split_once('>')?;
    let (text, _) = rest.split_once("</")?;
    let text = text.trim();
    let plain = text.chars().all(|c| c.is_alphabetic() || c.is_whitespace() || ".,:'’-".contains(c));
    (plain && text.chars().any(char::is_alphabetic) && reads_like_a_sentence(text)).then_some(text)
}

fn sentences(file: &Text) -> Vec<String> {
    let literal = literals(&file.text)
        .into_iter()
        .filter(|literal| !NOT_FOR_PEOPLE.iter().any(|word| literal.before.contains(word)))
        .filter(|literal| reads_like_a_sentence(&literal.text))
        .map(|literal| format!("{}:{}: {}", file.path, literal.line, literal.text));
    let code = file.text.lines().enumerate().filter(|(_, line)| !line.trim_start().starts_with("//"));
    let text = code.filter_map(|(at, line)| Some(format!("{}:{}: {}", file.path, at + 1, bare(line)?)));
    literal.chain(text).collect()
}

#[test]
fn only_phrases_holds_sentences() {
    let mut found = Vec::new();
    for name in SILENT {
        if crate::top().join("app").join(name).join("src").is_dir() {
            let files = sources(name);
            found.extend(files.iter().filter(|file| !file.path.starts_with(STAND_INS)).flat_map(sentences));
        }
    }
    none("These sentences belong into app/phrases:", found);
}

#[test]
fn a_sentence_is_seen_and_a_code_is_not() {
    let check = |source: &str, expected: usize| {
        let file = Text { path: "x.rs".into(), text: source.into() };
        assert_eq!(sentences(&file).len(), expected, "{source}");
    };
    check(r#"let a = "Add 6 vials";"#, 1);
    check(r#"let a = "Not saved yet: this phone is full";"#, 1);
    check("view! { <p>Nothing logged here</p> }", 1);
    check("view! { <p>{text}</p> }", 0);
    check(r#"let a = "light-trap"; let b = "button quiet"; let c = "IV27-0147"; let d = "M5 3.5h14v17";"#, 0);
    check(r#"x.expect("The map holds it by construction")"#, 0);
    check("// \"Not for people\"", 0);
}
