//! `country`: each line `latitude longitude [radius]` on standard input becomes one line of JSON on standard output, the
//! countries and regions in which the position may lie, the likeliest first:
//! `[{"code":"AT","country":"Austria","region":"Tirol","part":"","away_m":0.0}]`; none at sea, several near a border.

mod lines;

use place::Position;
use place::country::{Candidate, Regions};
use serde_json::{Value, json};
use std::process::ExitCode;

const USAGE: &str = "usage: country < latitude longitude [radius in metres], one position a line, in degrees";
const BORDERS: &[u8] = include_bytes!("../../../public/geo/regions.bin");

fn main() -> ExitCode {
    let regions = Regions::read(BORDERS).expect("the file that stands in public/geo is whole");
    lines::answered(USAGE, |line| {
        let position = position(line).ok_or_else(|| format!("no position: {line}"))?;
        Ok(Value::from(regions.at(position).iter().map(said).collect::<Vec<Value>>()))
    })
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
