//! The JSON Schema of the log file, asked by an independent validator.

use record::Record;
use record::wire::{Header, write};
use serde_json::Value;
use std::sync::LazyLock;

static SCHEMA: LazyLock<jsonschema::Validator> = LazyLock::new(|| {
    let text = include_str!("../../../../public/glassine-log.schema.json");
    let schema: Value = serde_json::from_str(text).expect("the schema is JSON");
    jsonschema::draft202012::meta::validate(&schema).expect("the schema is a schema");
    jsonschema::draft202012::new(&schema).expect("the schema can be used")
});

/// What the schema has against a file.
pub fn faults(file: &[u8]) -> Vec<String> {
    let value: Value = serde_json::from_slice(file).expect("a log file is one JSON document");
    SCHEMA.iter_errors(&value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// Writes a log file and has it validated.
pub fn written(header: &Header, records: &[Record]) -> Vec<u8> {
    let file = write(header, records);
    assert_eq!(faults(&file), Vec::<String>::new());
    file
}

#[test]
fn the_schema_refuses_what_is_no_log_file() {
    let file = write(&crate::wire::header(), &[]);
    let whole: Value = serde_json::from_slice(&file).expect("a log file is JSON");
    for (member, wrong) in [("format", "log"), ("version", "1"), ("end", "none"), ("book", "mine"), ("records", "")] {
        let mut other = whole.clone();
        other[member] = wrong.into();
        assert_ne!(faults(other.to_string().as_bytes()), Vec::<String>::new(), "{member}");
    }
}

#[test]
fn the_schema_refuses_a_record_without_its_versions() {
    let mut whole: Value = serde_json::from_slice(&write(&crate::wire::header(), &[])).expect("a log file is JSON");
    whole["records"] = serde_json::json!([{"kind": "event", "id": "0190a1b2-c3d4-7e5f-8a9b-0c1d2e3f4a5b"}]);
    assert_ne!(faults(whole.to_string().as_bytes()), Vec::<String>::new());
}
