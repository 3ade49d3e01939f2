//! Merges two log files and prints the merged one: `cargo run -p record --example merge -- A.json B.json`.
//!
//! The header is the first file's; sessions and members of newer versions come from both. The output depends on the
//! two files alone.

use record::wire::{Log, read, write};
use record::{Record, merge};
use std::collections::BTreeMap;
use std::io::Write;
use std::process::ExitCode;

const USAGE: &str = "usage: merge A.json B.json
Reads two log files, merges them and prints the merged log file.
Exit code 0 when merged, 2 when a file cannot be read or may not be merged.";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [a, b] = arguments.as_slice() else { return fail(USAGE) };
    match merged(a, b) {
        Ok(file) => print(&file),
        Err(reason) => fail(&reason),
    }
}

fn merged(a: &str, b: &str) -> Result<Vec<u8>, String> {
    let (mut a, b) = (log(a)?, log(b)?);
    let mergeable = a.header.mergeable(&b.header.book).and_then(|()| b.header.mergeable(&a.header.book));
    mergeable.map_err(|refusal| format!("these files may not be merged: {refusal:?}"))?;
    a.header.join(&b.header);
    let mut records: BTreeMap<_, Record> = a.records.into_iter().map(|record| (record.id, record)).collect();
    for record in b.records {
        let both = records.get(&record.id).map_or_else(|| record.clone(), |own| merge(own, &record));
        records.insert(record.id, both);
    }
    Ok(write(&a.header, &records.into_values().collect::<Vec<_>>()))
}

fn log(path: &str) -> Result<Log, String> {
    let bytes = std::fs::read(path).map_err(|error| format!("{path}: {error}"))?;
    read(&bytes).map_err(|refusal| format!("{path}: {refusal:?}"))
}

fn print(file: &[u8]) -> ExitCode {
    match std::io::stdout().write_all(file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => fail(&error.to_string()),
    }
}

fn fail(reason: &str) -> ExitCode {
    let _ = writeln!(std::io::stderr(), "{reason}");
    ExitCode::from(2)
}
