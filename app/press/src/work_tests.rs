//! Batches and prints as the page asks for them.

use super::*;
use ports::press::Format;

fn fonts() -> Fonts {
    let read = |name: &str| {
        let path = format!("{}/../../public/fonts/{name}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(&path).expect("the fonts are part of the project")
    };
    let further = vec![read("DejaVuSansCondensed-gaps.ttf")];
    Fonts::new(read("FiraSansCondensed-Regular.ttf"), read("FiraSansCondensed-Italic.ttf"), further)
        .expect("the fonts of the project can be read")
}

fn label(text: &str, copies: u32, style: usize) -> Label {
    Label { lines: vec![vec![Run { text: text.to_owned(), italic: false }]], copies, style, code: None }
}

fn styles() -> Vec<Style> {
    let format = |width_mm: f64, height_mm: f64, pin_mm: f64| Format {
        width_mm,
        height_mm,
        type_largest_pt: 5.0,
        type_least_pt: 4.0,
        pin_mm,
    };
    vec![
        Style { format: format(18.0, 8.0, 0.7), pin_at: PinAt::Middle },
        Style { format: format(25.0, 10.0, 0.0), pin_at: PinAt::Left },
    ]
}

fn batch(labels: Vec<Label>) -> Batch {
    Batch { labels, styles: styles(), card: Card::fresh(ports::press::Paper::A4) }
}

fn begin(labels: Vec<Label>) -> Work {
    let words = vec!["50 mm".into(), "100 %".into()];
    Work::Begin { batch: batch(labels), title: "Labels".into(), words, made: (2027, 6, 19, 12, 0, 0) }
}

/// Asks until the print is no longer under way; how far it was each time.
fn finished_print(desk: &mut Desk, fonts: &Fonts, work: Work) -> (Vec<(usize, usize)>, Worked) {
    let mut progress = Vec::new();
    let mut worked = desk.work(fonts, work).expect("it can be answered");
    while let Worked::Under { done, all } = worked {
        progress.push((done, all));
        worked = desk.work(fonts, Work::Continue).expect("it can be answered");
    }
    (progress, worked)
}

#[test]
fn a_long_print_says_how_far_it_is_and_ends_with_the_file() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let labels = (0..900).map(|number| label(&format!("IV27-{number}"), 1, 0)).collect();
    let (progress, worked) = finished_print(&mut desk, &fonts, begin(labels));
    let Worked::Pdf { bytes, sheets, labels } = worked else { panic!("all fit: {worked:?}") };
    assert!(bytes.starts_with(b"%PDF-"));
    assert_eq!((sheets, labels), (3, 900));
    assert!(progress.len() >= 7 && progress.windows(2).all(|pair| pair[0].0 <= pair[1].0 && pair[1].0 < pair[1].1));
    assert_eq!(desk.work(&fonts, Work::Continue), Ok(Worked::Idle));
}

#[test]
fn a_print_can_be_let_go_and_other_questions_asked_meanwhile() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let labels: Vec<Label> = (0..500).map(|number| label(&format!("{number}"), 1, 0)).collect();
    assert!(matches!(desk.work(&fonts, begin(labels.clone())), Ok(Worked::Under { .. })));
    let show = Work::Show { batch: batch(vec![label("a", 1, 0)]), words: Vec::new() };
    assert!(matches!(desk.work(&fonts, show), Ok(Worked::Shown(_))));
    assert!(matches!(desk.work(&fonts, Work::Continue), Ok(Worked::Under { .. })));
    assert_eq!(desk.work(&fonts, Work::Cancel), Ok(Worked::Idle));
    assert_eq!(desk.work(&fonts, Work::Continue), Ok(Worked::Idle));
}

#[test]
fn equal_labels_lie_together_and_strips_by_height() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let labels = vec![label("a", 1, 0), label("b", 1, 0), label("a", 2, 0), label("slip", 1, 1)];
    let show = Work::Show { batch: batch(labels), words: vec!["50 mm".into()] };
    let Ok(Worked::Shown(shown)) = desk.work(&fonts, show) else { panic!("they fit the sheet") };
    let spots: Vec<_> = shown.spots.iter().map(|spot| (spot.label, spot.at_mm)).collect();
    assert_eq!(spots, [(0, (10.0, 20.0)), (2, (28.0, 20.0)), (2, (46.0, 20.0)), (1, (64.0, 20.0)), (3, (10.0, 10.0))]);
    assert_eq!((shown.proofs.len(), shown.cuts.len()), (4, 1));
    assert_eq!(shown.proofs[3].pin, (2.0, 5.0, 0.0));
    assert!(shown.words.starts_with('M') && shown.bar.starts_with('M'));
}

#[test]
fn a_part_used_card_of_ones_own() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let card = Card { size_mm: (100.0, 150.0), margin_mm: 5.0, used_down_mm: 16.0, used_across_mm: 36.0 };
    let batch = Batch { card, ..batch(vec![label("a", 4, 0)]) };
    let Ok(Worked::Shown(shown)) = desk.work(&fonts, Work::Show { batch, words: Vec::new() }) else {
        panic!("it fits")
    };
    let spots: Vec<_> = shown.spots.iter().map(|spot| spot.at_mm).collect();
    assert_eq!(spots, [(41.0, 21.0), (59.0, 21.0), (77.0, 21.0), (5.0, 29.0)]);
}

#[test]
fn what_does_not_fit_is_said_and_shared_out() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let long = label(
        "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty",
        1,
        0,
    );
    let (_, worked) = finished_print(&mut desk, &fonts, begin(vec![label("a", 1, 0), long.clone()]));
    let Worked::DoesNotFit(over) = worked else { panic!("one is too long") };
    assert_eq!(over[0].0, 1);
    let share = Work::Share { labels: vec![long, label(&"x".repeat(99), 1, 0)], styles: styles() };
    let Ok(Worked::Shared(shares)) = desk.work(&fonts, share) else { panic!("labels were shared out") };
    assert_eq!((shares[0].len(), shares[1].len()), (2, 0));
}

#[test]
fn a_code_or_style_that_is_none_is_no_question() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let show = |label: Label| Work::Show { batch: batch(vec![label]), words: Vec::new() };
    assert_eq!(desk.work(&fonts, show(label("a", 1, 7))), Err(Unanswered::NoSuch));
    let coded = |columns: usize, modules: &str| {
        let code = Code { text: "a".into(), columns, modules: modules.into() };
        show(Label { code: Some(code), ..label("a", 1, 0) })
    };
    assert_eq!(desk.work(&fonts, coded(2, "101")), Err(Unanswered::NoSuch));
    assert!(matches!(desk.work(&fonts, coded(2, "1011")), Ok(Worked::Shown(_))));
}

fn card(width_mm: f64, labels: Vec<Label>) -> Batch {
    let format = Format { width_mm, height_mm: 8.0, type_largest_pt: 5.0, type_least_pt: 4.0, pin_mm: 0.7 };
    Batch { styles: vec![Style { format, pin_at: PinAt::Middle }], ..batch(labels) }
}

#[test]
fn a_proof_says_where_the_pin_passes() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let show = Work::Show { batch: batch(vec![label("19.vi.2027", 3, 0)]), words: Vec::new() };
    let Ok(Worked::Shown(Shown { proofs, .. })) = desk.work(&fonts, show) else { panic!("a proof was asked for") };
    assert_eq!(proofs.len(), 1);
    assert_eq!((proofs[0].pin, proofs[0].lines_above_pin), ((9.0, 4.0, 0.35), 1));
    assert_eq!((proofs[0].lines.as_slice(), proofs[0].type_pt), (&["19.vi.2027".to_owned()][..], 5.0));
    assert!(proofs[0].path.starts_with('M') && proofs[0].over.is_empty());
}

#[test]
fn a_print_counts_sheets_and_labels() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let (_, worked) = finished_print(&mut desk, &fonts, begin(vec![label("a", 330, 0), label("b", 1, 0)]));
    let Worked::Pdf { bytes, sheets, labels } = worked else { panic!("both labels fit") };
    assert!(bytes.starts_with(b"%PDF-"));
    assert_eq!((sheets, labels), (2, 331));
}

#[test]
fn what_does_not_fit_is_said_and_nothing_is_printed() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let labels = vec![label("fits", 1, 0), label("Llanfairpwllgwyngyllgogerychwyrn", 1, 0), label("昆虫", 1, 0)];
    let (_, worked) = finished_print(&mut desk, &fonts, begin(labels));
    let Worked::DoesNotFit(over) = worked else { panic!("two labels do not fit") };
    assert_eq!(over.iter().map(|(label, _)| *label).collect::<Vec<_>>(), [1, 2]);
    assert!(matches!(over[0].1[..], [Over::Long { by_mm, .. }] if by_mm > 0.0));
    assert_eq!(over[1].1, [Over::Glyph { letter: '昆' }, Over::Glyph { letter: '虫' }]);
}

#[test]
fn a_label_larger_than_the_sheet_is_said() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let words = vec!["50 mm".into()];
    let batch = card(300.0, vec![label("a", 1, 0)]);
    let work = Work::Begin { batch, title: "Labels".into(), words, made: (2027, 6, 19, 12, 0, 0) };
    let (_, worked) = finished_print(&mut desk, &fonts, work);
    let Worked::DoesNotFit(over) = worked else { panic!("it is too wide") };
    assert_eq!(over, [(0, vec![Over::Sheet { by_mm: 110.0 }])]);
}

#[test]
fn a_sheet_is_laid_as_it_is_printed() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let show = Work::Show { batch: card(18.0, vec![label("a", 331, 0)]), words: vec!["50 mm".into()] };
    let Ok(Worked::Shown(shown)) = desk.work(&fonts, show) else { panic!("it fits") };
    let first = shown.spots.iter().filter(|spot| spot.sheet == 0).count();
    assert_eq!((first, shown.spots[11].at_mm, shown.cuts.len()), (330, (28.0, 18.0), 2));
    assert!(shown.cuts[1].starts_with("M7.000 10.000L31.000 10.000"), "{}", shown.cuts[1]);
    assert!(shown.bar.starts_with("M10.000 283.500L60.000 283.500") && shown.words.starts_with('M'));
}

#[test]
fn questions_and_answers_travel_as_json() {
    let (fonts, mut desk) = (fonts(), Desk::default());
    let work = Work::Show { batch: batch(vec![label("♀ 47.6138° N", 2, 0)]), words: Vec::new() };
    let json = serde_json::to_vec(&work).expect("a question is plain data");
    assert_eq!(serde_json::from_slice::<Work>(&json).expect("and comes back"), work);
    let worked = desk.work(&fonts, work).expect("all lengths are numbers");
    let json = serde_json::to_vec(&worked).expect("an answer is plain data");
    assert_eq!(serde_json::from_slice::<Worked>(&json).expect("and comes back"), worked);
}
