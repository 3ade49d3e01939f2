//! What the default labels say, and label dates against published patterns.

use wording::{
    Arrangement, Day, Determination, Host, Item, Kind, Month, Part, Parts, Span, date, defaults, lines, marked,
    part_of, plain, said_parts,
};

/// An invented catch.
fn meadow() -> Parts {
    Parts {
        country: "Orreland".into(),
        province: "Sallow".into(),
        locality: "Tarn Abbot".into(),
        offset: "2 km NE of Tarn Abbot".into(),
        site: "Mill Meadow".into(),
        coordinates: "47.6138° N 12.3043° E".into(),
        radius: "8 m".into(),
        elevation: "412 m".into(),
        caught: Some(Span { from: Day::new(2027, 6, 19), until: None, night: false }),
        collectors: vec!["I. Varga".into(), "D. Okoro".into()],
        method: "hand net".into(),
        particulars: vec!["30 minutes".into()],
        host: Some(Host {
            relation: "flower".into(),
            thing: "Heracleum sphondylium L.".into(),
            latin: true,
            part: String::new(),
        }),
        number: "IV27-0147".into(),
        ..Parts::default()
    }
}

fn check(kind: Kind, parts: &Parts, expected: &[&str]) {
    let seen: Vec<String> = lines(parts, &defaults::arrangement(kind)).iter().map(|line| marked(line)).collect();
    assert_eq!(seen, expected);
}

#[test]
fn a_collection_label_goes_from_large_to_small() {
    check(
        Kind::Collection,
        &meadow(),
        &[
            "ORRELAND: Sallow, Tarn Abbot, 2 km NE, Mill Meadow, 412 m",
            "47.6138° N 12.3043° E ±8 m",
            "19.vi.2027, leg. I. Varga, D. Okoro",
        ],
    );
}

#[test]
fn a_line_breaks_gladly_between_parts_but_not_after_the_country() {
    let lines = lines(&meadow(), &defaults::arrangement(Kind::Collection));
    let text: String = lines[0].iter().map(|run| run.text.replace('\u{a0}', "~").replace('\u{200b}', "|")).collect();
    assert_eq!(text, "ORRELAND: Sallow, |Tarn Abbot, |2~km~NE, |Mill Meadow, |412~m");
}

#[test]
fn what_is_not_known_leaves_no_trace() {
    check(Kind::Collection, &Parts::default(), &[]);
    check(Kind::Host, &Parts::default(), &[]);
    let bare =
        Parts { country: "Orreland".into(), locality: "Tarn Abbot".into(), radius: "8 m".into(), ..Parts::default() };
    check(Kind::Collection, &bare, &["ORRELAND: Tarn Abbot"]);
    let offset_only = Parts { offset: "2 km NE of Tarn Abbot".into(), ..Parts::default() };
    check(Kind::Collection, &offset_only, &["2 km NE of Tarn Abbot"]);
}

#[test]
fn a_host_label_sets_the_latin_name_in_italics() {
    check(
        Kind::Host,
        &meadow(),
        &["visiting the flower of _Heracleum sphondylium_ L.", "hand net, 30 minutes", "IV27-0147"],
    );
}

#[test]
fn only_reared_from_is_ex() {
    for (code, words) in defaults::arrangement(Kind::Host).relations {
        assert_eq!(words == "ex", code == "reared", "{code}: {words}");
    }
    let mut parts = meadow();
    parts.host = Some(Host { relation: "reared".into(), thing: "fox dung".into(), latin: false, part: String::new() });
    parts.emerged = Some(Span { from: Day::new(2027, 7, 2), until: Some(Day::new(2027, 7, 6)), night: false });
    check(Kind::Host, &parts, &["ex fox dung", "hand net, 30 minutes", "em. 2–6.vii.2027, IV27-0147"]);
}

#[test]
fn a_relation_without_words_is_left_out() {
    let mut parts = meadow();
    parts.host.as_mut().expect("the meadow has a host").relation = "from_a_newer_version".into();
    check(Kind::Host, &parts, &["_Heracleum sphondylium_ L.", "hand net, 30 minutes", "IV27-0147"]);
}

#[test]
fn own_abbreviations_replace_whole_words() {
    let mut arrangement = defaults::arrangement(Kind::Collection);
    arrangement.abbreviations.insert("Meadow".into(), "Mdw.".into());
    let parts = Parts { site: "Mill Meadow".into(), locality: "Meadowland".into(), ..Parts::default() };
    assert_eq!(plain(&lines(&parts, &arrangement)[0]), "Meadowland, Mill Mdw.");
}

#[test]
fn an_arrangement_travels_as_json() {
    for kind in [Kind::Collection, Kind::Host] {
        let arrangement = defaults::arrangement(kind);
        let text = serde_json::to_string(&arrangement).expect("an arrangement is plain data");
        assert_eq!(serde_json::from_str::<Arrangement>(&text).expect("and comes back"), arrangement);
    }
    let parts = meadow();
    let text = serde_json::to_string(&parts).expect("parts are plain data");
    assert_eq!(serde_json::from_str::<Parts>(&text).expect("and come back"), parts);
}

/// **Source**: rows "label date" to be written, in `tests/reference/format_check_strings.csv`. Its ranges are typed with a hyphen;
/// ours carry an en dash.
#[test]
fn dates_follow_the_published_patterns() {
    let table = include_str!("../../../tests/reference/format_check_strings.csv");
    let rows: Vec<Vec<&str>> = table
        .lines()
        .filter(|row| row.starts_with("label date,"))
        .map(|row| row.splitn(6, ',').collect())
        .filter(|row: &Vec<&str>| row[4] == "write")
        .collect();
    assert_eq!(rows.len(), 9, "rows LD01 to LD09");
    for row in rows {
        let mut ends = row[2].split('/').map(known);
        let span = Span { from: ends.next().expect("a row has a date"), until: ends.next(), night: false };
        assert_eq!(date(&span, Month::RomanSmall), row[3].replace('-', "–"), "{}", row[1]);
    }
}

fn known(text: &str) -> Day {
    let numbers: Vec<i32> = text.split('-').map(|number| number.parse().expect("the table has ISO dates")).collect();
    let small =
        |index: usize| numbers.get(index).map(|number| u8::try_from(*number).expect("months and days are small"));
    Day { year: numbers[0], month: small(1), day: small(2) }
}

/// An invented bee with everything that a label can say.
fn bee() -> Parts {
    Parts {
        determination: Determination {
            name: "Andrena cf. bicolor".into(),
            author: "Fabricius, 1775".into(),
            by: "C. Novak".into(),
            year: "2027".into(),
        },
        sex: "♀".into(),
        code: "GLS-000147".into(),
        piece: "genitalia".into(),
        linked: "CN 214".into(),
        preservative: "ethanol 80 %".into(),
        count: "12".into(),
        ..meadow()
    }
}

#[test]
fn a_determination_sets_doubt_and_author_upright() {
    check(Kind::Determination, &bee(), &["_Andrena_ cf. _bicolor_ Fabricius, 1775 ♀", "det. C. Novak 2027"]);
    let mut third = bee();
    third.determination =
        Determination { name: "Andrena sp. 3".into(), by: "C. Novak".into(), ..Determination::default() };
    check(Kind::Determination, &third, &["_Andrena_ sp. 3 ♀", "det. C. Novak"]);
    let mut moved = bee();
    moved.determination.author = "(Müller, 1766)".into();
    check(Kind::Determination, &moved, &["_Andrena_ cf. _bicolor_ (Müller, 1766) ♀", "det. C. Novak 2027"]);
}

/// **Source** of the order: La Salle, CSIRO, on labelling reared parasitoids, in the row "order" of the label rules.
#[test]
fn a_rearing_label_has_both_dates() {
    let mut parts = bee();
    parts.host =
        Some(Host { relation: "reared".into(), thing: "Salix caprea".into(), latin: true, part: "gall".into() });
    parts.emerged = Some(Span { from: Day::new(2027, 7, 2), until: Some(Day::new(2027, 8, 6)), night: false });
    check(
        Kind::Rearing,
        &parts,
        &[
            "ORRELAND: Sallow, Tarn Abbot, 2 km NE, Mill Meadow, 412 m",
            "47.6138° N 12.3043° E ±8 m",
            "ex _Salix caprea_, gall",
            "coll. 19.vi.2027, em. 2.vii–6.viii.2027, leg. I. Varga, D. Okoro",
        ],
    );
}

#[test]
fn the_small_kinds() {
    check(Kind::Code, &bee(), &["GLS-000147"]);
    check(Kind::Parts, &bee(), &["genitalia prep. CN 214", "_Andrena_ cf. _bicolor_, ♀", "GLS-000147"]);
    check(Kind::Slip, &bee(), &["IV27-0147 × 12", "19.vi.2027"]);
}

#[test]
fn a_label_for_fluid_says_all_that_two_labels_on_a_pin_say() {
    let said = |kind| said_parts(&bee(), &defaults::arrangement(kind)).into_iter().map(|said| said.part);
    let fluid: Vec<Part> = said(Kind::Fluid).collect();
    assert!(said(Kind::Collection).chain(said(Kind::Host)).all(|part| fluid.contains(&part)));
    assert!(fluid.contains(&Part::Preservative));
}

#[test]
fn every_kind_has_a_code_a_size_and_leaves_out_what_is_not_known() {
    for kind in Kind::ALL {
        assert_eq!(serde_json::to_string(&kind).expect("a kind is plain data"), format!("\"{}\"", kind.code()));
        assert_eq!(lines(&Parts::default(), &defaults::arrangement(kind)), Vec::<wording::Line>::new());
        let size = defaults::size(kind);
        assert!(size.least <= size.largest && size.least.points() >= 3.5);
        let text = serde_json::to_string(&defaults::arrangement(kind)).expect("an arrangement is plain data");
        assert_eq!(serde_json::from_str::<Arrangement>(&text).expect("and comes back"), defaults::arrangement(kind));
    }
}

#[test]
fn words_of_the_arrangement_stand_only_beside_something_known() {
    let mut arrangement = defaults::arrangement(Kind::Collection);
    arrangement.lines.push(vec![Item::new(Part::Words).before("Coll. I. Varga")]);
    assert_eq!(plain(lines(&meadow(), &arrangement).last().expect("four lines")), "Coll. I. Varga");
    assert_eq!(lines(&Parts::default(), &arrangement), Vec::<wording::Line>::new());
}

#[test]
fn several_words_are_abbreviated_before_one() {
    let mut arrangement = defaults::arrangement(Kind::Collection);
    arrangement.abbreviations.insert("Nature Reserve".into(), "N. R.".into());
    arrangement.abbreviations.insert("Reserve".into(), "Res.".into());
    let parts = Parts { locality: "Sallow Nature Reserve".into(), site: "Old Reserve".into(), ..Parts::default() };
    assert_eq!(plain(&lines(&parts, &arrangement)[0]), "Sallow N. R., Old Res.");
}

#[test]
fn words_of_a_label_are_found_in_their_part() {
    let said = said_parts(&meadow(), &defaults::arrangement(Kind::Collection));
    let part = |words: &str| part_of(words, &said).map(|said| said.part);
    assert_eq!(part("Tarn Abbot, 2 km NE"), Some(Part::Locality));
    assert_eq!(part("Abbot"), Some(Part::Locality));
    assert_eq!(part("leg. I. Varga, D. Okoro"), Some(Part::Collectors));
    assert_eq!(part("47.6138° N"), Some(Part::Coordinates));
}
