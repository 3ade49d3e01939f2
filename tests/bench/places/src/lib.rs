//! What `place` works out, many times in one call, for the browser and for the native bench to time.
//!
//! In go positions as pairs of degrees north and east; out comes all that was worked out, so that nothing can be left
//! out unseen and another library's answers can be held against it (`tests/bench/browser/places.mjs`).

pub mod written;

use place::Position;
use place::distance::leg;
use place::grid::utm;
use place::parse::parse;
use wasm_bindgen::prelude::wasm_bindgen;

/// Each position to UTM and back: easting, northing, latitude, longitude.
#[wasm_bindgen]
pub fn there_and_back(places: &[f64]) -> Vec<f64> {
    let mut found = Vec::with_capacity(places.len() * 2);
    for position in positions(places) {
        let grid = utm(position).expect("within the zones");
        let back = grid.position().expect("a place within its zone");
        found.extend([grid.easting_m, grid.northing_m, back.latitude.degrees(), back.longitude.degrees()]);
    }
    found
}

/// The zone of each position, negative in the south.
#[wasm_bindgen]
pub fn zones(places: &[f64]) -> Vec<i8> {
    let zone = |position: Position| {
        let zone = utm(position).expect("within the zones").zone as i8;
        if position.latitude.degrees() < 0.0 { -zone } else { zone }
    };
    positions(places).map(zone).collect()
}

/// From each position to the one in the same place of the other list: metres, and the bearing at the start.
#[wasm_bindgen]
pub fn legs(from: &[f64], to: &[f64]) -> Vec<f64> {
    let mut found = Vec::with_capacity(from.len());
    for (one, other) in positions(from).zip(positions(to)) {
        let leg = leg(one, other);
        found.extend([leg.distance.metres(), leg.bearing.degrees()]);
    }
    found
}

/// So many positions, as people write them.
#[wasm_bindgen]
pub struct Written {
    positions: Vec<Position>,
    texts: Vec<String>,
}

#[wasm_bindgen]
impl Written {
    /// The same ones every time, in ten notations.
    #[wasm_bindgen(constructor)]
    pub fn new(count: usize) -> Self {
        let positions = written::positions(count);
        let texts = written::texts(&positions);
        Self { positions, texts }
    }

    /// The positions: latitude, longitude.
    pub fn positions(&self) -> Vec<f64> {
        self.positions.iter().flat_map(pair).collect()
    }

    /// The first reading of each text: latitude, longitude; nothing for one that is refused.
    pub fn read(&self) -> Vec<f64> {
        let first = |text: &String| parse(text).readings.first().map(place::parse::Reading::position);
        self.texts.iter().filter_map(first).flat_map(|position| pair(&position)).collect()
    }
}

fn pair(position: &Position) -> [f64; 2] {
    [position.latitude.degrees(), position.longitude.degrees()]
}

fn positions(places: &[f64]) -> impl Iterator<Item = Position> {
    places.chunks_exact(2).map(|pair| Position::new(pair[0], pair[1], None).expect("degrees of a position"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_text_is_read_where_it_was_written() {
        let written = Written::new(1000);
        let (read, positions) = (written.read(), written.positions());
        assert_eq!(read.len(), positions.len());
        // The fewest digits are four decimals of a degree, or metres.
        for (one, other) in read.iter().zip(&positions) {
            assert!((one - other).abs() < 2e-4, "{one} {other}");
        }
    }

    #[test]
    fn answers_stand_in_the_order_of_the_questions() {
        let from = [47.0, 12.0, -33.0, 151.0];
        let there = there_and_back(&from);
        assert_eq!(there.len(), 8);
        assert!((there[2] - 47.0).abs() < 1e-9 && (there[7] - 151.0).abs() < 1e-9);
        assert_eq!(zones(&from), [33, -56]);
        let legs = legs(&from, &[48.0, 12.0, -33.0, 151.0]);
        assert!((legs[0] - 111_000.0).abs() < 300.0 && legs[1] == 0.0 && legs[2] == 0.0, "{legs:?}");
    }
}
