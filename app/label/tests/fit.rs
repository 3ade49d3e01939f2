//! Whatever is asked for, ink stays on the label and off the pin, and what does not fit is said.

mod common;

use common::{fonts, format, lines};
use label::{Outcome, Over, Setter, path};
use proptest::prelude::*;

/// Ink stays this far from the pin's centre, mm.
const CLEAR_MM: f64 = 0.5;

/// Left, upper, right and lower edge of each closed outline of a path.
fn outlines(path: &str) -> Vec<[f64; 4]> {
    path.split_terminator('Z').map(bounds).collect()
}

fn bounds(outline: &str) -> [f64; 4] {
    let mut edges = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    let mut at = (0.0, 0.0);
    for command in commands(outline) {
        let points: Vec<(f64, f64)> = command.chunks(2).map(|pair| (at.0 + pair[0], at.1 + pair[1])).collect();
        for (x, y) in &points {
            edges = [edges[0].min(*x), edges[1].min(*y), edges[2].max(*x), edges[3].max(*y)];
        }
        at = points[points.len() - 1];
    }
    edges
}

/// The numbers of each command: `M` with a place, then steps from where the last one ended.
fn commands(outline: &str) -> Vec<Vec<f64>> {
    let spaced = outline.replace('-', " -");
    let numbers =
        |text: &str| text.split_whitespace().map(|n| n.parse().expect("a path is letters and numbers")).collect();
    spaced.split(|letter: char| letter.is_ascii_alphabetic()).skip(1).map(numbers).collect()
}

/// No outline leaves the label, and none comes near the pin. Control points count as ink, which is stricter.
fn stays_clear(setter: &Setter<'_>, outcome: &Outcome) -> Result<(), String> {
    let frame = &outcome.frame;
    let (width, height) = (frame.width.millimetres(), frame.height.millimetres());
    for [left, top, right, bottom] in outlines(&path(setter, frame)) {
        if left < 0.0 || top < 0.0 || right > width || bottom > height {
            return Err(format!("{left} {top} {right} {bottom} leaves {width} by {height}"));
        }
        if bottom > height / 2.0 - CLEAR_MM && top < height / 2.0 + CLEAR_MM {
            return Err(format!("{top} to {bottom} meets the pin at {}", height / 2.0));
        }
    }
    Ok(())
}

fn check(texts: &[&str], width: f64, height: f64, expected: &[&str]) -> Outcome {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    let outcome = setter.frame(&lines(texts), &format(width, height));
    assert_eq!(outcome.over, [], "{texts:?}");
    assert_eq!(outcome.frame.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>(), expected);
    stays_clear(&setter, &outcome).expect("ink stays on the label and off the pin");
    outcome
}

#[test]
fn one_to_seven_lines_leave_the_pin_free() {
    let texts = ["Ågotsford", "jgpqy", "47.6138°~N", "_Salix_ L.", "leg.~I.~Varga", "ŐÇĄ", "♀ ♂"];
    for count in 1..=7 {
        let height = 3.5 + 3.3 * f64::from(u32::try_from(count).expect("few lines"));
        let outcome = check(
            &texts[..count],
            18.0,
            height,
            &texts[..count]
                .iter()
                .map(|t| t.replace(['_'], "").replace('~', " "))
                .collect::<Vec<_>>()
                .iter()
                .map(String::as_str)
                .collect::<Vec<_>>(),
        );
        assert!(outcome.frame.above > 0);
        assert!(count == 1 || outcome.frame.above < count, "the pin passes between lines");
    }
}

#[test]
fn the_usual_label_holds_a_whole_catch() {
    let outcome = check(
        &[
            "ORRELAND: Sallow, \u{200b}Tarn Abbot, \u{200b}2~km~NE, \u{200b}Mill Meadow, \u{200b}412~m",
            "47.6138°~N 12.3043°~E ±8~m",
            "19.vi.2027, leg.~I.~Varga",
        ],
        18.0,
        8.0,
        &[
            "ORRELAND: Sallow, Tarn Abbot",
            "2 km NE, Mill Meadow, 412 m",
            "47.6138° N 12.3043° E ±8 m",
            "19.vi.2027, leg. I. Varga",
        ],
    );
    assert_eq!(outcome.frame.above, 2);
    assert_eq!(outcome.frame.size.points(), 4.0);
}

#[test]
fn short_lines_take_the_largest_type() {
    assert_eq!(check(&["19.vi.2027"], 18.0, 8.0, &["19.vi.2027"]).frame.size.points(), 5.0);
}

#[test]
fn smaller_type_comes_before_a_break_within_a_name() {
    let outcome = check(&["Upper Saltmarsh Reserve"], 16.5, 12.0, &["Upper Saltmarsh Reserve"]);
    assert!(outcome.frame.size.points() < 5.0);
    check(&["Upper Saltmarsh Reserve"], 9.0, 12.0, &["Upper", "Saltmarsh", "Reserve"]);
}

#[test]
fn a_line_too_long_is_named_with_what_is_missing() {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    let texts = ["ORRELAND: Sallow", "Upper~Saltmarsh~Reserve,~old~sluice~gate", "47.5901°~N", "21.vi.2027"];
    let outcome = setter.frame(&lines(&texts), &format(18.0, 8.0));
    let [Over::Long { text, by }] = &outcome.over[..] else { panic!("one line is too long: {:?}", outcome.over) };
    assert_eq!(text, "Upper Saltmarsh Reserve, old sluice gate");
    assert_eq!(outcome.frame.size.points(), 4.0);
    let wider = setter.frame(&lines(&texts), &format(18.0 + by.millimetres() + 1e-3, 8.0));
    assert_eq!(wider.over, [], "so much wider and it fits");
    let narrower = setter.frame(&lines(&texts), &format(18.0 + by.millimetres() - 0.02, 8.0));
    assert_ne!(narrower.over, [], "a little less and it does not");
}

#[test]
fn too_many_lines_are_said_with_what_is_missing() {
    let fonts = fonts();
    let mut setter = Setter::new(&fonts);
    let texts = ["one", "two", "three", "four", "five", "six"];
    let outcome = setter.frame(&lines(&texts), &format(18.0, 8.0));
    let [Over::High { by }] = outcome.over[..] else { panic!("six lines are too many: {:?}", outcome.over) };
    assert_eq!(setter.frame(&lines(&texts), &format(18.0, 8.0 + by.millimetres() + 1e-3)).over, []);
    assert_ne!(setter.frame(&lines(&texts), &format(18.0, 8.0 + by.millimetres() - 0.02)).over, []);
}

#[test]
fn a_letter_that_no_font_has_is_named() {
    let fonts = fonts();
    let outcome = Setter::new(&fonts).frame(&lines(&["Karte 昆 Ω Ж"]), &format(18.0, 8.0));
    assert_eq!(outcome.over, [Over::Glyph('昆')]);
    let outcome = Setter::new(&fonts).frame(&lines(&["a\u{ffff}\u{e000}🦋"]), &format(18.0, 8.0));
    assert_eq!(outcome.over, ['\u{ffff}', '\u{e000}', '🦋'].map(Over::Glyph));
}

/// No font of the project has these letters; their places are found all the same.
#[test]
fn words_from_right_to_left_stand_in_that_order() {
    let fonts = fonts();
    let outcome = Setter::new(&fonts).frame(&lines(&["Tarn שלום 12 עולם Abbot 7"]), &format(60.0, 8.0));
    let line = &outcome.frame.lines[0];
    assert_eq!(line.text, "Tarn שלום 12 עולם Abbot 7", "as it is read");
    let seen: String = line.runs.iter().map(|run| run.text.as_str()).collect();
    assert_eq!(seen, "Tarn עולם 12 שלום Abbot 7", "word by word from the left");
}

#[test]
fn signs_of_the_trade_are_all_there() {
    let signs = "♀♂⚥☿°′″±×–—−½¼µ→≥≤№†²³";
    for texts in [signs.to_owned(), format!("_{signs}_")] {
        let fonts = fonts();
        let outcome = Setter::new(&fonts).frame(&lines(&[&texts]), &format(40.0, 8.0));
        assert_eq!(outcome.over, []);
    }
}

#[test]
fn nothing_is_smaller_than_three_and_a_half_points() {
    let fonts = fonts();
    let mut tiny = format(9.0, 8.0);
    tiny.least = units::Points::whole(1);
    let outcome = Setter::new(&fonts).frame(&lines(&["Llanfairpwllgwyngyllgogerychwyrn"]), &tiny);
    assert_eq!(outcome.frame.size.points(), 3.5);
    assert!(matches!(outcome.over[..], [Over::Long { .. }]));
}

#[test]
fn an_empty_label_is_an_empty_label() {
    check(&[], 18.0, 8.0, &[]);
    check(&["", "  "], 18.0, 8.0, &[]);
}

fn words() -> impl Strategy<Value = String> {
    let letters =
        "[a-zA-Z0-9ÅÄÖåäöéèñçĄęŁőŘžßÆøÐþΑΩαωЖЯжя.,;:()°±×–'′″♀♂fjgQy\u{300}\u{301}\u{308}\u{327}ấỔ/&\u{a0} _-]{0,40}";
    letters.prop_map(|text| text)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn ink_never_leaves_the_label(
        texts in proptest::collection::vec(words(), 0..7),
        width in 6.0_f64..40.0,
        height in 4.0_f64..25.0,
    ) {
        let fonts = fonts();
        let mut setter = Setter::new(&fonts);
        let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
        let outcome = setter.frame(&lines(&texts), &format(width, height));
        if outcome.over.is_empty() {
            prop_assert_eq!(stays_clear(&setter, &outcome), Ok(()));
            let given: String = texts.iter().flat_map(|text| text.chars()).filter(|c| !c.is_whitespace() && !['_', ','].contains(c)).collect();
            let set: String = outcome.frame.lines.iter().flat_map(|line| line.text.chars()).filter(|c| ![' ', ','].contains(c)).collect();
            prop_assert_eq!(set, given, "every letter is there, in order, but for commas at breaks");
        }
    }
}
