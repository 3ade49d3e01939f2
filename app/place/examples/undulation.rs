//! `undulation`: each line `latitude longitude` on standard input becomes one line of JSON on standard output:
//! `{"undulation_m":44.72,"model":"EGM96"}`: how far sea level lies above the ellipsoid of WGS84.

mod lines;

use place::Position;
use place::geoid::{Geoid, MODEL};
use serde_json::json;
use std::process::ExitCode;

const USAGE: &str = "usage: undulation < latitude longitude, one pair a line, in degrees";
const GRID: &[u8] = include_bytes!("../../../public/geo/egm96.bin");

fn main() -> ExitCode {
    let geoid = Geoid::read(GRID).expect("the grid that stands in public/geo is whole");
    lines::answered(USAGE, |line| {
        let position = position(line).ok_or_else(|| format!("no position: {line}"))?;
        // Millimetres: more than the grid is worth, enough to see that it is the right one.
        let metres = (geoid.undulation(position).metres() * 1000.0).round() / 1000.0;
        Ok(json!({ "undulation_m": metres, "model": MODEL }))
    })
}

fn position(line: &str) -> Option<Position> {
    let numbers: Option<Vec<f64>> = line.split_whitespace().map(|text| text.parse().ok()).collect();
    match numbers?[..] {
        [latitude, longitude] => Position::new(latitude, longitude, None),
        _ => None,
    }
}
