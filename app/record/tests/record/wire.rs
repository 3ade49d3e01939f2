//! The log file: what is written reads back, what is broken is refused.

use crate::schema::{faults, written};
use crate::sessions::{Session, id, records, replica, value};
use proptest::prelude::*;
use record::wire::{Author, Fault, Header, Log, Refusal, read, write};
use record::{Record, check::Problem};
use serde_json::{Map, Value, json};

/// A header with something in every member, and some from a newer version.
pub fn header() -> Header {
    let author =
        |device: &str| Author { device: device.to_owned(), person: "Ada Quill".to_owned(), ..Author::default() };
    let mut replicas: std::collections::BTreeMap<_, _> =
        (0..4).map(|number| (replica(number), author("Phone"))).collect();
    replicas.get_mut(&replica(0)).expect("it is there").more.insert("colour".to_owned(), json!("green"));
    Header {
        written: "2027-06-19T22:10:00+02:00".to_owned(),
        device: "Phone".to_owned(),
        person: "Ada Quill".to_owned(),
        app: "0.1.0".to_owned(),
        book: "own".to_owned(),
        share_copy: None,
        replicas,
        more: Map::from_iter([("moon".to_owned(), json!({"phase": 0.5}))]),
    }
}

fn reread(file: &[u8]) -> Log {
    read(file).expect("it was just written")
}

/// A record with one field.
fn one(number: usize, field: &str, value: Value) -> Record {
    let mut session = Session::new(0);
    session.edit(id(number), None, field, value);
    session.copies.remove(&id(number)).expect("it was just made")
}

proptest! {
    #[test]
    fn what_is_written_reads_back(mut records in records()) {
        let file = written(&header(), &records);
        let log = reread(&file);
        prop_assert_eq!(&log.header, &header());
        prop_assert_eq!(&log.problems, &Vec::new());
        prop_assert_eq!(write(&log.header, &log.records), file);
        records.sort_by(|a, b| (&a.kind, a.id).cmp(&(&b.kind, b.id)));
        prop_assert_eq!(log.records, records);
    }

    #[test]
    fn values_of_every_form_come_back_exactly(value in value()) {
        let record = one(0, "something", value);
        prop_assert_eq!(&reread(&written(&header(), std::slice::from_ref(&record))).records[0], &record);
    }

    #[test]
    fn what_mail_programs_do_does_no_harm(records in records()) {
        let file = write(&header(), &records);
        let text = String::from_utf8(file.clone()).expect("a log file is UTF-8");
        let mailed = format!("\u{feff}{}\r\n\r\n", text.replace('\n', "\r\n"));
        prop_assert_eq!(read(mailed.as_bytes()), read(&file));
    }

    #[test]
    fn a_flipped_bit_is_refused_and_never_a_panic(records in records(), place in any::<prop::sample::Index>(), bit in 0..8_u8) {
        let mut file = write(&header(), &records);
        let place = place.index(file.len() - 1);
        file[place] ^= 1_u8 << bit;
        prop_assert!(read(&file).is_err(), "byte {}", place);
    }

    #[test]
    fn a_cut_file_is_refused(records in records(), place in any::<prop::sample::Index>()) {
        let file = write(&header(), &records);
        let cut = &file[..place.index(file.len() - 1)];
        let line = 1 + cut.strip_suffix(b"\n").unwrap_or(cut).iter().filter(|byte| **byte == b'\n').count();
        let expected = if cut.is_empty() { Refusal::Empty } else { Refusal::CutOff { line } };
        prop_assert_eq!(read(cut), Err(expected));
    }

    #[test]
    fn foreign_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        prop_assert!(read(&bytes).is_err());
    }

    #[test]
    fn a_sealed_file_of_nonsense_is_refused_or_read_but_never_a_panic(
        records in records(), places in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6)
    ) {
        let mut file = write(&header(), &records);
        let sealed = sealed(&file).len();
        for (place, byte) in places {
            file[place.index(sealed)] = byte;
        }
        if let Ok(log) = read(&seal(&file[..sealed], records.len())) {
            let again = write(&log.header, &log.records);
            prop_assert_eq!(reread(&again).records, log.records);
        }
    }
}

/// All before the last line.
fn sealed(file: &[u8]) -> &[u8] {
    let end = file.windows(6).rposition(|bytes| bytes == b"\"end\":").expect("there is an end mark");
    &file[..end]
}

/// Puts a right end mark behind a file that was changed.
fn seal(file: &[u8], records: usize) -> Vec<u8> {
    let end = format!("\"end\":{{\"records\":{records},\"checksum\":\"{:08x}\"}}}}\n", crc32fast::hash(file));
    [file, end.as_bytes()].concat()
}

/// A file of these lines with a right end mark.
fn file_of(lines: &[String]) -> Vec<u8> {
    let empty = write(&header(), &[]);
    let head = String::from_utf8(sealed(&empty).to_vec()).expect("a log file is UTF-8");
    let text = head.replace("\"records\":[\n],", &format!("\"records\":[\n{}\n],", lines.join(",\n")));
    seal(text.as_bytes(), lines.len())
}

fn line(members: &str, seen: &str, at: &str) -> String {
    let id = id(0);
    format!("{{\"kind\":\"event\",\"id\":\"{id}\"{members},\"versions\":{{\"seen\":{{{seen}}},\"at\":{{{at}}}}}}}")
}

fn fault_of(line: String) -> Option<Fault> {
    let good = self::line("", "", "");
    match read(&file_of(&[good, line])) {
        // Before it: the header, its four sessions with two lines of brackets, the bracket of the records, a record.
        Err(Refusal::BrokenRecord { line: 10, fault }) => Some(fault),
        Ok(_) => None,
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_file_looks_as_its_description_says() {
    let file = written(&header(), &[one(0, "notes", json!("by the gate"))]);
    let text = String::from_utf8(file).expect("a log file is UTF-8");
    let lines: Vec<&str> = text.lines().collect();
    assert!(
        lines[0].starts_with(
            r#"{"format":"glassine-log","version":1,"written":"2027-06-19T22:10:00+02:00","device":"Phone""#
        )
    );
    assert_eq!(lines[1], r#""replicas":{"#);
    assert_eq!(lines[6], "},");
    assert_eq!(lines[7], r#""records":["#);
    let replica = replica(0);
    let record = format!(
        r#"{{"kind":"event","id":"{}","notes":"by the gate","versions":{{"seen":{{"{1}":1}},"at":{{"notes":["{1}",1,"2027-06-19T21:01:00+02:00"]}}}}}}"#,
        id(0),
        replica.name()
    );
    assert_eq!(lines[8], record);
    assert_eq!(lines[9], "],");
    assert!(lines[10].starts_with(r#""end":{"records":1,"checksum":""#));
    assert_eq!(lines.len(), 11);
}

#[test]
fn values_in_conflict_stand_beside_the_one_shown() {
    let (mut a, mut b) = (Session::new(0), Session::new(1));
    a.edit(id(0), None, "notes", json!("mine"));
    b.edit(id(0), None, "notes", json!("yours"));
    a.take(&b.copies[&id(0)]);
    let file = written(&header(), &[a.copies[&id(0)].clone()]);
    let text = String::from_utf8(file.clone()).expect("a log file is UTF-8");
    assert!(text.contains(r#""notes":"yours""#) && text.contains(r#""other":{"notes":[["mine","#), "{text}");
    assert_eq!(reread(&file).records[0], a.copies[&id(0)]);
}

#[test]
fn a_share_copy_is_read_and_not_merged() {
    let header = Header { share_copy: Some(Map::from_iter([("rounded_m".to_owned(), json!(1000))])), ..header() };
    let log = reread(&written(&header, &[]));
    assert_eq!(log.header.mergeable("own"), Err(Refusal::ShareCopy));
}

#[test]
fn a_sample_survey_goes_into_no_other_book() {
    let log = reread(&written(&Header { book: "sample".to_owned(), ..header() }, &[]));
    assert_eq!(log.header.mergeable("own"), Err(Refusal::OtherBook { book: "sample".to_owned() }));
    assert_eq!(log.header.mergeable("sample"), Ok(()));
}

#[test]
fn files_that_are_not_ours_are_told_apart() {
    assert_eq!(read(b""), Err(Refusal::Empty));
    assert_eq!(read(b"\xef\xbb\xbf \r\n"), Err(Refusal::Empty));
    assert_eq!(read(b"{\"type\":\"FeatureCollection\"}"), Err(Refusal::NotOurs));
    assert_eq!(read(b"[1,2]"), Err(Refusal::NotOurs));
    assert_eq!(read(b"{\"a\":1,\n\n oh"), Err(Refusal::NotJson { line: 3 }));
    assert_eq!(read(b"\xff\xfe"), Err(Refusal::NotJson { line: 1 }));
    assert_eq!(read(&[b'['; 100_000]), Err(Refusal::NotJson { line: 1 }));
    assert_eq!(read(b"{\"format\":\"glassine-log\",\"version\":2,\"x\""), Err(Refusal::Newer { version: 2 }));
}

#[test]
fn a_file_that_another_program_wrote_anew_is_refused() {
    let file = write(&header(), &[one(0, "notes", json!("by the gate"))]);
    let value: Value = serde_json::from_slice(&file).expect("a log file is JSON");
    let pretty = serde_json::to_vec_pretty(&value).expect("it can be written");
    assert_eq!(read(&pretty), Err(Refusal::Checksum));
}

#[test]
fn a_changed_letter_is_seen_by_the_checksum_and_a_changed_bracket_by_its_line() {
    let file = String::from_utf8(write(&header(), &[one(0, "notes", json!("by the gate"))])).expect("it is UTF-8");
    assert_eq!(read(file.replace("gate", "gale").as_bytes()), Err(Refusal::Checksum));
    let broken = read(file.replace("\"notes\":\"", "\"notes\":").as_bytes());
    assert!(matches!(broken, Err(Refusal::BrokenRecord { line: 9, fault: Fault::NotJson { .. } })), "{broken:?}");
}

#[test]
fn an_end_mark_that_counts_wrongly_is_refused() {
    let file = write(&header(), &[]);
    assert_eq!(read(&seal(sealed(&file), 3)), Err(Refusal::Count { said: 3, found: 0 }));
}

#[test]
fn broken_records_are_told_with_their_reason() {
    let field = |name: &str| name.to_owned();
    let at = |number: &str| format!(r#""notes":["r1",{number},""]"#);
    let good = line(r#","notes":"x""#, r#""r1":1"#, &at("1"));
    assert_eq!(fault_of(good.replace(&id(0).to_string(), &id(1).to_string())), None);
    assert_eq!(fault_of(good.replace("\"kind\":\"event\",", "")), Some(Fault::NoKind));
    assert_eq!(fault_of(good.replace("\"id\":\"0", "\"id\":\"x")), Some(Fault::NoId));
    assert_eq!(
        fault_of("{\"kind\":\"event\",\"id\":\"".to_owned() + &id(0).to_string() + "\"}"),
        Some(Fault::NoVersions)
    );
    assert_eq!(fault_of(line(r#","notes":"x""#, "", "")), Some(Fault::ValueAlone { field: field("notes") }));
    assert_eq!(fault_of(line("", r#""r1":1"#, &at("1"))), Some(Fault::VersionAlone { field: field("notes") }));
    assert_eq!(
        fault_of(line(r#","notes":"x""#, r#""r1":1"#, &at("2"))),
        Some(Fault::BeyondSeen { field: field("notes") })
    );
    assert_eq!(
        fault_of(line(r#","notes":"x""#, r#""r1":1"#, &at("0"))),
        Some(Fault::BeyondSeen { field: field("notes") })
    );
    assert_eq!(
        fault_of(line(r#","notes":"x","notes":"y""#, r#""r1":1"#, &at("1"))),
        Some(Fault::Twice { field: field("notes") })
    );
    let twice = format!(r#"{}}},"other":{{"notes":[["y","r1",1,""]]"#, at("1"));
    assert_eq!(fault_of(line(r#","notes":"x""#, r#""r1":1"#, &twice)), Some(Fault::DotTwice { field: field("notes") }));
    for number in ["-1", "1.5", "4294967296", "1e400"] {
        let fault = fault_of(line(r#","notes":"x""#, r#""r1":1"#, &at(number)));
        assert!(matches!(fault, Some(Fault::NotJson { .. })), "{number}: {fault:?}");
    }
    let deep = format!(",\"notes\":{}{}", "[".repeat(50_000), "]".repeat(50_000));
    assert!(matches!(fault_of(line(&deep, r#""r1":1"#, &at("1"))), Some(Fault::NotJson { .. })));
    let newer = at("1") + r#"}},"more":{"#;
    assert!(matches!(fault_of(line(r#","notes":"x""#, r#""r1":1"#, &newer)), Some(Fault::NotJson { .. })));
}

#[test]
fn a_record_that_stands_there_twice_is_merged_and_told() {
    let (mut a, mut b) = (Session::new(0), Session::new(1));
    a.edit(id(0), None, "notes", json!("mine"));
    b.edit(id(0), None, "host", json!("thistle"));
    let (first, second) = (a.copies[&id(0)].clone(), b.copies[&id(0)].clone());
    a.take(&second);
    let log = reread(&write(&header(), &[first.clone(), second]));
    assert_eq!(log.records, [a.copies[&id(0)].clone()]);
    assert_eq!(log.problems, [Problem::Twice { id: id(0) }]);
    // One edit with two values is a damaged file; both orders read alike.
    let mut forged = first.clone();
    forged.fields.get_mut("notes").expect("it has notes")[0].value = json!("forged");
    let log = reread(&write(&header(), &[first.clone(), forged.clone()]));
    assert_eq!(log.records, reread(&write(&header(), &[forged, first])).records);
    assert!(matches!(log.problems[..], [Problem::Twice { .. }, Problem::DotTwice { number: 1, .. }]));
}

#[test]
fn whatever_is_read_is_valid_for_the_schema_when_written() {
    let log = reread(&file_of(&[line(r#","x":{"y":[1e300,null]}"#, r#""r1":1"#, r#""x":["r1",1,"late"]"#)]));
    assert_eq!(faults(&write(&log.header, &log.records)), Vec::<String>::new());
}
