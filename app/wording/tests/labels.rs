//! What the default labels say, and label dates against published patterns.

use wording::{Arrangement, Day, Host, Kind, Month, Parts, Span, date, defaults, lines, marked, plain};

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
