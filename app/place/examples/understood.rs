//! `understood`: each line of coordinates on standard input becomes one line of JSON on standard output:
//! `{"readings":[{"latitude":47.6138,"longitude":12.3043,"radius_m":13.4}],"problems":["order"]}`.

use serde_json::{Value, json};
use std::io::{BufRead, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: understood < coordinates, one text a line";

fn main() -> ExitCode {
    if std::env::args().count() > 1 {
        return refused(USAGE);
    }
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let line = match line {
            Ok(line) => line,
            Err(error) => return refused(&format!("standard input: {error}\n{USAGE}")),
        };
        if writeln!(out, "{}", understood(&line)).is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// What was understood of one text.
fn understood(text: &str) -> Value {
    let understood = place::parse::parse(text);
    let reading = |reading: &place::parse::Reading| {
        json!({
            "latitude": reading.latitude.degrees(),
            "longitude": reading.longitude.degrees(),
            "radius_m": reading.radius.metres(),
        })
    };
    let readings: Vec<Value> = understood.readings.iter().map(reading).collect();
    let problems: Vec<&str> = understood.problems.iter().map(place::parse::Problem::code).collect();
    json!({ "readings": readings, "problems": problems })
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
