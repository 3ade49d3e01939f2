//! Positions as people write them, made up and always the same.

use place::Position;
use place::format::{Notation, iso6709, written};
use place::grid::{mgrs, utm};

/// So many positions between the parallels that UTM covers.
pub fn positions(count: usize) -> Vec<Position> {
    // Steps of the golden section and of the root of two spread evenly.
    let share = |at: usize, step: f64| (at as f64 * step).fract();
    let one = |at| {
        let (latitude, longitude) =
            (share(at, 0.618_033_988_7) * 164.0 - 80.0, share(at, 0.414_213_562_4) * 360.0 - 180.0);
        Position::new(latitude, longitude, Some(8.0)).expect("a position")
    };
    (0..count).map(one).collect()
}

/// Each of the positions in one of ten notations, in turn.
pub fn texts(positions: &[Position]) -> Vec<String> {
    positions.iter().enumerate().map(|(at, position)| text(at % 10, *position)).collect()
}

fn text(notation: usize, position: Position) -> String {
    let (north, east) = (position.latitude.degrees(), position.longitude.degrees());
    let pair = |notation| {
        let written = written(position, notation);
        format!("{}, {}", written.latitude.text(), written.longitude.text())
    };
    match notation {
        0 => pair(Notation::Decimal),
        1 => pair(Notation::Minutes),
        2 => pair(Notation::Seconds),
        3 => format!("{north:.5}, {east:.5}"),
        4 => format!("{:.4} {}; {:.4} {}", north.abs(), side(north, "NS"), east.abs(), side(east, "EW"))
            .replace('.', ","),
        5 => iso6709(position),
        6 => format!("geo:{north:.5},{east:.5};u=8"),
        7 => {
            let grid = utm(position).expect("within the zones");
            format!("{}{} {:.0} {:.0}", grid.zone, grid.hemisphere.code(), grid.easting_m, grid.northing_m)
        }
        8 => mgrs(position, 5).expect("within the zones"),
        _ => format!("lat {north:.5} lon {east:.5} ±8 m WGS84"),
    }
}

fn side(degrees: f64, letters: &str) -> &str {
    if degrees < 0.0 { &letters[1..] } else { &letters[..1] }
}
