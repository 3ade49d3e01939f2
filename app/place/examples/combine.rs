//! `combine`: each line of JSON on standard input, the parts of an uncertainty, becomes one line on standard output:
//! `{"latitude":…,"longitude":…,"radius_m":…,"parts":{"extent":800.0,"offset":2195.3},"usual_m":…}`.
//!
//! Parts given: `latitude` and `longitude` of the starting point, and any of
//!
//! - `gps_m`, as reported, with `gps_percent` (50, 68 or 95, which is taken where it is left out);
//! - `precision_deg`, the step in which the coordinates are given;
//! - `extent_m`, `measurement_m`, `datum_m`; `cell_m`, the side of a metric grid's cell; `map_scale`, the number after 1:;
//! - `datum`, a name as written: nothing for WGS84, its own shift for one that is known, the worst case for others;
//! - for an offset `distance_m` with `distance_error_m`, or `distance` as written (`2.4 km`); `bearing_deg` with
//!   `bearing_error_deg`, or `direction` as written (`NNE`, `217°`).
//!
//! The parts that come out add up to the radius.

mod lines;

use place::Position;
use place::combine::{Combined, Offset, Share, combine};
use place::datum::Reading;
use place::uncertainty::{Confidence, cell, device, map_accuracy, precision, written};
use serde_json::{Map, Value, json};
use std::process::ExitCode;
use units::{Degrees, Metres};

const USAGE: &str = "usage: combine < one JSON object a line: latitude, longitude, and any of gps_m, gps_percent, \
extent_m, precision_deg, measurement_m, datum_m, datum, cell_m, map_scale, distance_m, distance_error_m, distance, \
bearing_deg, bearing_error_deg, direction";
/// Half way round the Earth by the poles: no offset is longer.
/// **Source**: GeographicLib documentation, 20,003,931.4586 m.
const DISTANCE_MOST: Metres = Metres::whole(20_003_931);

fn main() -> ExitCode {
    lines::answered(USAGE, |line| {
        let given = serde_json::from_str(line).ok();
        given.and_then(|given| answer(&given)).ok_or_else(|| format!("not understood: {line}"))
    })
}

/// A number of the object; 0 where it is left out.
fn number(given: &Map<String, Value>, name: &str) -> Option<f64> {
    given.get(name).map_or(Some(0.0), Value::as_f64)
}

/// A length of the object, from 0; 0 where it is left out.
fn length(given: &Map<String, Value>, name: &str) -> Option<Metres> {
    Metres::new(number(given, name)?).filter(|length| *length >= Metres::ZERO)
}

/// Words of the object; `None` where they are left out.
fn words<'a>(given: &'a Map<String, Value>, name: &str) -> Option<Option<&'a str>> {
    given.get(name).map_or(Some(None), |value| value.as_str().map(Some))
}

fn answer(given: &Map<String, Value>) -> Option<Value> {
    let start = Position::new(given.get("latitude")?.as_f64()?, given.get("longitude")?.as_f64()?, None)?;
    let coordinates = coordinates(given, start)?;
    let radius = coordinates.iter().fold(Metres::ZERO, |sum, share| sum + share.radius);
    let combined = combine(Position { radius: Some(radius), ..start }, &parts(given)?, offset(given)?);
    Some(said(&combined, &coordinates))
}

/// What the coordinates themselves leave open.
fn coordinates(given: &Map<String, Value>, start: Position) -> Option<[Share; 2]> {
    let step = Degrees::new(number(given, "precision_deg")?).filter(|step| *step >= Degrees::default())?;
    let per_cent = given.get("gps_percent").map_or(Some(95), Value::as_u64)?;
    Some([
        device(length(given, "gps_m")?, Confidence::per_cent(per_cent)?),
        Share { code: "precision", radius: precision(start.latitude, step, step) },
    ])
}

/// What lies between them and the place that was meant.
fn parts(given: &Map<String, Value>) -> Option<Vec<Share>> {
    let scale = given.get("map_scale").map_or(Some(0), Value::as_u64)?;
    let mut parts = vec![
        Share { code: "extent", radius: length(given, "extent_m")? },
        Share { code: "measurement", radius: length(given, "measurement_m")? },
        Share { code: "cell", radius: cell(length(given, "cell_m")?) },
        Share { code: "map", radius: map_accuracy(u32::try_from(scale).ok()?) },
    ];
    match words(given, "datum")? {
        Some(_) if given.contains_key("datum_m") => return None,
        Some(name) => parts.push(Reading::of(name).share()),
        None => parts.push(Share { code: "datum", radius: length(given, "datum_m")? }),
    }
    Some(parts)
}

/// The way from the start, where there is one; what is given twice is refused.
fn offset(given: &Map<String, Value>) -> Option<Option<Offset>> {
    let numbers = (length(given, "distance_m")?, length(given, "distance_error_m")?);
    let bearing = Degrees::new(number(given, "bearing_deg")?)?;
    let bearings = (bearing, Degrees::new(number(given, "bearing_error_deg")?)?);
    let either = |written: bool, name: &str| written && given.contains_key(name);
    let (way, direction) = (words(given, "distance")?, words(given, "direction")?);
    if either(way.is_some(), "distance_m") || either(direction.is_some(), "bearing_deg") {
        return None;
    }
    let (distance, distance_error) = way.map_or(Some(numbers), written::distance)?;
    let (bearing, bearing_error) = direction.map_or(Some(bearings), written::direction)?;
    if distance + distance_error > DISTANCE_MOST {
        return None;
    }
    let there = given.contains_key("distance_m") || way.is_some();
    Some(there.then_some(Offset { distance, distance_error, bearing, bearing_error }))
}

/// The answer; the coordinates' share is shown in its own parts.
fn said(combined: &Combined, coordinates: &[Share]) -> Value {
    let others = combined.shares.iter().filter(|share| share.code != "coordinates");
    let shares: Map<String, Value> = coordinates
        .iter()
        .chain(others)
        .filter(|share| share.radius > Metres::ZERO)
        .map(|share| (share.code.to_owned(), json!(share.radius.metres())))
        .collect();
    json!({
        "latitude": combined.position.latitude.degrees(),
        "longitude": combined.position.longitude.degrees(),
        "radius_m": combined.position.radius_m(),
        "parts": shares,
        "usual_m": combined.usual.metres(),
    })
}
