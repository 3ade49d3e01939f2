//! Looks through a log file and prints what is wrong with it, one JSON object a line:
//! `cargo run -p record --example check -- FILE`.

use record::check::check;
use record::wire::{Refusal, read};
use serde_json::{Value, json};
use std::io::Write;
use std::process::ExitCode;

const USAGE: &str = "usage: check FILE
Reads a log file and prints what is wrong with it, one JSON object a line.
Exit code 0 when nothing is wrong, 1 when something is, 2 when there is no such file.";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [path] = arguments.as_slice() else { return fail(USAGE) };
    let bytes = match std::fs::read(path) {
        Ok(bytes) => bytes,
        Err(error) => return fail(&format!("{path}: {error}")),
    };
    let problems = problems(&bytes);
    let lines: String = problems.iter().map(|problem| format!("{problem}\n")).collect();
    match std::io::stdout().write_all(lines.as_bytes()) {
        Ok(()) => ExitCode::from(u8::from(!problems.is_empty())),
        Err(error) => fail(&error.to_string()),
    }
}

fn problems(bytes: &[u8]) -> Vec<Value> {
    match read(bytes) {
        Ok(log) => log.problems.iter().chain(&check(&log.records)).map(|problem| json!(problem)).collect(),
        Err(refusal) => vec![refused(&refusal)],
    }
}

fn refused(refusal: &Refusal) -> Value {
    json!({ "problem": "refused", "refusal": refusal })
}

fn fail(reason: &str) -> ExitCode {
    let _ = writeln!(std::io::stderr(), "{reason}");
    ExitCode::from(2)
}
