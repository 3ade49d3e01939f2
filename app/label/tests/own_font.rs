//! A font file of a person's own: what it says of itself, and what it adds. The fonts of the tests are invented
//! (tests/fonts).

mod common;

use common::{fonts, fonts_with, format, lines};
use label::{About, Fonts, Over, Setter};

fn file(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/../../tests/fonts/{name}", env!("CARGO_MANIFEST_DIR"))).expect("a font of the tests")
}

#[test]
fn a_font_says_its_name_its_characters_and_whether_it_may_travel() {
    let about = |name: &str| Fonts::about(file(name));
    let open = About { family: "Invented Boxes".to_owned(), characters: 5, may_embed: true };
    assert_eq!(about("shut.ttf"), Some(About { may_embed: false, ..open.clone() }));
    assert_eq!(about("boxes.ttf"), Some(open));
}

#[test]
fn what_is_no_font_says_nothing() {
    let whole = file("boxes.ttf");
    assert_eq!(Fonts::about(Vec::new()), None);
    assert_eq!(Fonts::about(b"no font at all".to_vec()), None);
    assert_eq!(Fonts::about(whole[..40].to_vec()), None);
    for cut in 0..whole.len() {
        let _ = Fonts::about(whole[..cut].to_vec());
    }
}

#[test]
fn letters_that_no_font_had_are_set_in_the_persons_own() {
    let text = lines(&["虫 Tarn 楓林"]);
    let format = format(18.0, 8.0);
    let ours = fonts();
    let lacking = Setter::new(&ours).frame(&text, &format);
    let named: Vec<char> = lacking
        .over
        .iter()
        .filter_map(|over| if let Over::Glyph(letter) = over { Some(*letter) } else { None })
        .collect();
    assert_eq!(named, ['虫', '楓', '林'], "each is named before anything is printed");
    let own = fonts_with(vec![file("boxes.ttf")]);
    let set = Setter::new(&own).frame(&text, &format);
    assert!(set.over.is_empty(), "{:?}", set.over);
    let faces: Vec<usize> = set.frame.lines[0].runs.iter().map(|run| run.face).collect();
    assert_eq!(faces, [3, 0, 3], "only what was lacking is set in it");
}
