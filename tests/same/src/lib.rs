//! What `place` answers to the same questions, as lines of text, natively and in the browser's machine.
//!
//! No input goes in. Each line is `own NAME NUMBER BITS…`, numbers of our own formulas as the bits they are, or
//! `library NAME NUMBER METRES…`, lengths that rest on a library's geodesics. `tests/same/compare.mjs` compares two.

use core::fmt::Write;
use core::time::Duration;
use place::Position;
use place::combine::{Offset, combine};
use place::distance::{destination, leg, roughly};
use place::format::{Notation, iso6709, written};
use place::generalise::{Coarseness, generalise};
use place::geoid::Geoid;
use place::grid::{mgrs, utm};
use place::instant::{Day, Instant, UtcOffset};
use place::local::Plane;
use place::parse::parse;
use place::sky::{moon_at, sky_at, sun_day};
use place::track::{Assumed, Fix, Track};
use units::{Degrees, Metres};
use wasm_bindgen::prelude::wasm_bindgen;

/// Positions that are asked about.
const POSITIONS: usize = 600;
/// About the radius of the Earth, metres.
const RADIUS_M: f64 = 6_371_000.0;

/// All answers.
#[wasm_bindgen]
pub fn answers() -> String {
    let mut lines = String::new();
    let positions = positions();
    let geoid = geoid();
    for (number, position) in positions.iter().enumerate() {
        let other = positions[(number * 7 + 1) % positions.len()];
        own(&mut lines, number, *position, other);
        line(&mut lines, "own", "undulation", number, &bits(&[geoid.undulation(*position).metres()]));
        sky(&mut lines, number, *position);
        library(&mut lines, number, *position, other);
    }
    lines
}

/// Positions spread over the Earth, then its poles and edges.
fn positions() -> Vec<Position> {
    let share = |at: usize, step: f64| (at as f64 * step).fract();
    let spread = |at| (share(at, 0.618_033_988_7) * 180.0 - 90.0, share(at, 0.414_213_562_4) * 360.0 - 180.0);
    let edges = [(90.0, 0.0), (-90.0, 12.0), (0.0, 0.0), (0.0, -180.0), (84.0, 9.0), (-80.0, 179.999_999_999)];
    let radius = |at: usize| Some(1.0 + (at * at % 977) as f64);
    let all = (0..POSITIONS - edges.len()).map(spread).chain(edges).enumerate();
    all.map(|(at, (north, east))| Position::new(north, east, radius(at)).expect("a position")).collect()
}

/// Sea level as it is nowhere: waves of up to a hundred metres, every ten degrees.
fn geoid() -> Geoid {
    let values = (0..19 * 36).map(|at: i16| (at % 7 * 1_430 - at % 11 * 905) / 3).collect();
    Geoid::new(19, 36, 10, values).expect("as many values as rows times columns")
}

fn line(lines: &mut String, group: &str, name: &str, number: usize, values: &[String]) {
    writeln!(lines, "{group} {name} {number} {}", values.join(" ")).expect("a string takes what is written to it");
}

fn bits(values: &[f64]) -> Vec<String> {
    values.iter().map(|value| format!("{:016x}", value.to_bits())).collect()
}

fn own(lines: &mut String, number: usize, position: Position, other: Position) {
    let mut say = |name: &str, values: &[f64]| line(lines, "own", name, number, &bits(values));
    if let Ok(grid) = utm(position) {
        say("utm", &[grid.easting_m, grid.northing_m]);
        let back = grid.position().expect("a place within its zone");
        say("utm_back", &[back.latitude.degrees(), back.longitude.degrees()]);
    }
    say("roughly", &[roughly(position, other).metres()]);
    let error = Offset {
        distance: Metres::new(100.0 + number as f64 * 13.7).expect("finite"),
        distance_error: Metres::new(number as f64).expect("finite"),
        bearing: Degrees::new(number as f64 * 1.7).expect("finite"),
        bearing_error: Degrees::new(number as f64 * 0.3).expect("finite"),
    };
    let combined = combine(position, &[], Some(error));
    say("combine", &[combined.position.radius_m().unwrap_or(0.0), combined.usual.metres()]);
    for coarseness in [Coarseness::Hundredth, Coarseness::Radius(error.distance)] {
        let coarse = generalise(position, coarseness).expect("a radius of the right size").position;
        say("generalise", &[coarse.latitude.degrees(), coarse.longitude.degrees()]);
    }
    let mut texts: Vec<String> = [Notation::Decimal, Notation::Minutes, Notation::Seconds]
        .map(|notation| written(position, notation))
        .map(|written| format!("{}, {}", written.latitude.text(), written.longitude.text()))
        .into();
    texts.push(iso6709(position));
    texts.extend(mgrs(position, 5));
    for text in texts {
        for reading in parse(&text).readings {
            let [north, east] = [reading.latitude.degrees(), reading.longitude.degrees()];
            line(lines, "own", "text", number, &[format!("{text:?}")]);
            line(lines, "own", "parse", number, &bits(&[north, east, reading.radius.metres()]));
        }
    }
}

/// An instant between 1950 and 2050.
fn instant(number: usize) -> Instant {
    Instant::new(-631_152_000_000 + number as i64 * 5_259_487_654).expect("within the years")
}

fn sky(lines: &mut String, number: usize, position: Position) {
    let instant = instant(number);
    let moon = moon_at(position, instant);
    let values = [moon.fraction, moon.altitude.degrees(), moon.azimuth.degrees()];
    line(lines, "own", "moon", number, &bits(&values));
    let sky = sky_at(position, instant);
    line(lines, "own", "sun", number, &bits(&[sky.sun_altitude.degrees()]));
    let offset = UtcOffset::new(number as i32 % 1440 - 720).expect("less than a day");
    let day = Day::holding(instant, offset).expect("within the years");
    let words = format!("{:?} {:?}", sky.hour, sun_day(position, day)).replace(' ', "_");
    line(lines, "own", "sky", number, &[words]);
}

fn library(lines: &mut String, number: usize, position: Position, other: Position) {
    let mut say = |name: &str, values: &[f64]| {
        let values: Vec<String> = values.iter().map(|value| format!("{value:.17e}")).collect();
        line(lines, "library", name, number, &values);
    };
    let whole = leg(position, other);
    let there = destination(position, Degrees::new(number as f64 * 0.77).expect("finite"), whole.distance);
    // Its direction is left out: between antipodes there are many shortest ways, and only their length is the same.
    say("leg", &[whole.distance.metres()]);
    say("destination", &in_metres(there));
    let plane = Plane::at(position);
    let near =
        destination(position, Degrees::new(number as f64).expect("finite"), Metres::new(5_000.0).expect("finite"));
    let place = plane.place(near);
    say("plane", &[place.x, place.y]);
    let fix =
        |position, second: i64| Fix { position, at: instant(number).later(second * 1000).expect("within the years") };
    let track = Track::new(vec![fix(position, 0), fix(near, 3_600)]);
    let assumed = Assumed { time_error: Duration::from_secs(7), ..Assumed::default() };
    if let Some(placed) = track.place(instant(number).later(1_234_567).expect("within the years"), &assumed) {
        say("track", &in_metres(placed.position));
        say("track_radius", &[placed.position.radius_m().unwrap_or(0.0)]);
    }
}

/// Metres from the middle of the Earth along three axes, on a sphere: near the poles degrees of longitude say nothing.
fn in_metres(position: Position) -> [f64; 3] {
    let (sin_lat, cos_lat) = libm::sincos(position.latitude.to_radians());
    let (sin_lon, cos_lon) = libm::sincos(position.longitude.to_radians());
    [cos_lat * cos_lon, cos_lat * sin_lon, sin_lat].map(|share| share * RADIUS_M)
}
