//! `grid`: each line `latitude longitude` on standard input becomes one line of JSON on standard output:
//! `{"zone":33,"band":"T","hemisphere":"N","easting_m":…,"northing_m":…,"mgrs":"33T…"}`, or
//! `{"problems":["polar"]}` beyond UTM.

mod lines;

use place::Position;
use place::grid::{GridProblem, band, mgrs, utm};
use serde_json::{Value, json};
use std::process::ExitCode;

const USAGE: &str = "usage: grid < latitude longitude, one pair a line, in degrees";

fn main() -> ExitCode {
    lines::answered(USAGE, |line| {
        let position = position(line).ok_or_else(|| format!("no position: {line}"))?;
        Ok(grid(position).unwrap_or_else(|GridProblem::Polar| json!({ "problems": ["polar"] })))
    })
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
