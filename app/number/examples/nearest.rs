//! `nearest NUMBER`: reads known numbers, one a line, from standard input and writes the ten nearest as one line of
//! JSON: `{"candidates":[{"number":"IV27-0147","reason":"transposed"}]}`, best first.

use std::io::{Read, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: nearest NUMBER < numbers, one a line";
const LIMIT: usize = 10;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [typed] = arguments.as_slice() else { return refused(USAGE) };
    if !typed.chars().any(char::is_alphanumeric) {
        return refused(USAGE);
    }
    let mut known = String::new();
    if let Err(error) = std::io::stdin().read_to_string(&mut known) {
        return refused(&format!("standard input: {error}\n{USAGE}"));
    }
    let known: Vec<&str> = known.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
    let near = number::nearest(typed, known.iter().copied(), LIMIT);
    let candidates: Vec<_> = near
        .into_iter()
        .map(|near| serde_json::json!({"number": known[near.at], "reason": near.reason.code()}))
        .collect();
    let line = serde_json::json!({ "candidates": candidates });
    match writeln!(std::io::stdout(), "{line}") {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
