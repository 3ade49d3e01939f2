//! `grid`: each line `latitude longitude` on standard input becomes one line of JSON on standard output:
//! `{"zone":33,"band":"T","hemisphere":"N","easting_m":…,"northing_m":…,"mgrs":"33T…"}`, or
//! `{"problems":["polar"]}` beyond UTM.

use place::Position;
use place::grid::{GridProblem, band, mgrs, utm};
use serde_json::{Value, json};
use std::io::{BufRead, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: grid < latitude longitude, one pair a line, in degrees";

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
        let Some(position) = position(&line) else { return refused(&format!("no position: {line}\n{USAGE}")) };
        let answer = grid(position).unwrap_or_else(|GridProblem::Polar| json!({ "problems": ["polar"] }));
        if writeln!(out, "{answer}").is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn position(line: &str) -> Option<Position> {
    let numbers: Option<Vec<f64>> = line.split_whitespace().map(|text| text.parse().ok()).collect();
    match numbers?[..] {
        [latitude, longitude] => Position::new(latitude, longitude, None),
        _ => None,
    }
}

fn grid(position: Position) -> Result<Value, GridProblem> {
    let utm = utm(position)?;
    Ok(json!({
        "zone": utm.zone,
        "band": band(position.latitude)?,
        "hemisphere": utm.hemisphere.code(),
        "easting_m": utm.easting_m,
        "northing_m": utm.northing_m,
        "mgrs": mgrs(position, 5)?,
    }))
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
