//! `combine`: each line of JSON on standard input, the parts of an uncertainty, becomes one line on standard output:
//! `{"latitude":…,"longitude":…,"radius_m":…,"parts":{"extent":800.0,"offset":2195.3},"usual_m":…}`.
//!
//! Parts given: `latitude` and `longitude` of the starting point; any of `gps_m`, `extent_m`, `precision_deg`,
//! `measurement_m`, `datum_m`; and for an offset `distance_m`, `bearing_deg` with `distance_error_m` and
//! `bearing_error_deg`.

use place::Position;
use place::combine::{Offset, Share, combine};
use place::uncertainty::precision;
use serde_json::{Map, Value, json};
use std::io::{BufRead, Write};
use std::process::ExitCode;
use units::{Degrees, Metres};

const USAGE: &str = "usage: combine < one JSON object a line: latitude, longitude, and any of gps_m, extent_m, \
precision_deg, measurement_m, datum_m, distance_m, distance_error_m, bearing_deg, bearing_error_deg";

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
        let Some(answer) = serde_json::from_str(&line).ok().and_then(|given| answer(&given)) else {
            return refused(&format!("not understood: {line}\n{USAGE}"));
        };
        if writeln!(out, "{answer}").is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// A number of the object; 0 where it is left out.
fn number(given: &Map<String, Value>, name: &str) -> Option<f64> {
    given.get(name).map_or(Some(0.0), Value::as_f64)
}

fn answer(given: &Map<String, Value>) -> Option<Value> {
    let start = Position::new(given.get("latitude")?.as_f64()?, given.get("longitude")?.as_f64()?, None)?;
    let length = |name: &str| Metres::new(number(given, name)?).filter(|length| *length >= Metres::ZERO);
    let step = Degrees::new(number(given, "precision_deg")?)?;
    let coordinates = length("gps_m")? + precision(start.latitude, step, step);
    let start = Position { radius: Some(coordinates), ..start };
    let parts = [
        Share { code: "extent", radius: length("extent_m")? },
        Share { code: "measurement", radius: length("measurement_m")? },
        Share { code: "datum", radius: length("datum_m")? },
    ];
    let offset = Offset {
        distance: length("distance_m")?,
        distance_error: length("distance_error_m")?,
        bearing: Degrees::new(number(given, "bearing_deg")?)?,
        bearing_error: Degrees::new(number(given, "bearing_error_deg")?)?,
    };
    let combined = combine(start, &parts, Some(offset).filter(|_| given.contains_key("distance_m")));
    let shares: Map<String, Value> =
        combined.shares.iter().map(|share| (share.code.to_owned(), json!(share.radius.metres()))).collect();
    Some(json!({
        "latitude": combined.position.latitude.degrees(),
        "longitude": combined.position.longitude.degrees(),
        "radius_m": combined.position.radius_m(),
        "parts": shares,
        "usual_m": combined.usual.metres(),
    }))
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
