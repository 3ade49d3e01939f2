//! `understood`: each line of coordinates on standard input becomes one line of JSON on standard output:
//! `{"readings":[{"latitude":47.6138,"longitude":12.3043,"radius_m":13.4}],"problems":["order"]}`.

mod lines;

use serde_json::{Value, json};
use std::process::ExitCode;

const USAGE: &str = "usage: understood < coordinates, one text a line";

fn main() -> ExitCode {
    lines::answered(USAGE, |line| Ok(understood(line)))
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
