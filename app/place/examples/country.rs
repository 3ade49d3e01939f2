//! `country`: each line `latitude longitude [radius]` on standard input becomes one line of JSON on standard output, the
//! countries and regions in which the position may lie, the likeliest first:
//! `[{"code":"AT","country":"Austria","region":"Tirol","part":"","away_m":0.0}]`; none at sea, several near a border.

use place::Position;
use place::country::{Candidate, Regions};
use serde_json::{Value, json};
use std::io::{BufRead, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: country < latitude longitude [radius in metres], one position a line, in degrees";
const BORDERS: &[u8] = include_bytes!("../../../public/geo/regions.bin");

fn main() -> ExitCode {
    if std::env::args().count() > 1 {
        return refused(USAGE);
    }
    let regions = Regions::read(BORDERS).expect("the file that stands in public/geo is whole");
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let line = match line {
            Ok(line) => line,
            Err(error) => return refused(&format!("standard input: {error}\n{USAGE}")),
        };
        let Some(position) = position(&line) else { return refused(&format!("no position: {line}\n{USAGE}")) };
        let found: Vec<Value> = regions.at(position).iter().map(said).collect();
        if writeln!(out, "{}", Value::from(found)).is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn said(candidate: &Candidate<'_>) -> Value {
    json!({
        "code": candidate.country.code,
        "country": candidate.country.name,
        "region": candidate.area.region,
        "part": candidate.area.part,
        "away_m": candidate.away.metres().round(),
    })
}

fn position(line: &str) -> Option<Position> {
    let numbers: Option<Vec<f64>> = line.split_whitespace().map(|text| text.parse().ok()).collect();
    match numbers?[..] {
        [latitude, longitude] => Position::new(latitude, longitude, None),
        [latitude, longitude, radius_m] => Position::new(latitude, longitude, Some(radius_m)),
        _ => None,
    }
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
