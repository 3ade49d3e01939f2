//! `undulation`: each line `latitude longitude` on standard input becomes one line of JSON on standard output:
//! `{"undulation_m":44.72,"model":"EGM96"}`: how far sea level lies above the ellipsoid of WGS84.

use place::Position;
use place::geoid::{Geoid, MODEL};
use serde_json::json;
use std::io::{BufRead, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: undulation < latitude longitude, one pair a line, in degrees";
const GRID: &[u8] = include_bytes!("../../../public/geo/egm96.bin");

fn main() -> ExitCode {
    if std::env::args().count() > 1 {
        return refused(USAGE);
    }
    let geoid = Geoid::read(GRID).expect("the grid that stands in public/geo is whole");
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let line = match line {
            Ok(line) => line,
            Err(error) => return refused(&format!("standard input: {error}\n{USAGE}")),
        };
        let Some(position) = position(&line) else { return refused(&format!("no position: {line}\n{USAGE}")) };
        // Millimetres: more than the grid is worth, enough to see that it is the right one.
        let metres = (geoid.undulation(position).metres() * 1000.0).round() / 1000.0;
        if writeln!(out, "{}", json!({ "undulation_m": metres, "model": MODEL })).is_err() {
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

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
