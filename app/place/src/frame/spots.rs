//! Positions gathered into spots that a finger can tell apart.

use super::{Frame, Ground, between};
use geo_types::Coord;
use std::collections::HashMap;

/// Places nearer to each other than this, in units of the sheet, may be drawn as one spot: the size of a finger's target.
pub const MERGE: f64 = 44.0;

/// Positions that lie so close that they are drawn as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Where, on the ground: the mean of its members.
    pub place: Coord<f64>,
    /// Where the member with the greatest known radius lies on the ground, and that radius in metres.
    pub widest: Option<(Coord<f64>, f64)>,
    /// Which positions, by their place in the list given.
    pub members: Vec<usize>,
}

/// The step of the scale that a frame's spots belong to: as long as it stays the same, so do they.
pub fn step(frame: Frame) -> i32 {
    libm::ceil(2.0 * libm::log2(frame.metres_per_unit()) - 1e-9) as i32
}

/// The spots of a step, in the order of the places that they grew round. They hang on the scale alone, in steps of √2, so
/// that none changes while the ground is dragged. A place far from every one before it begins a spot; then each joins the
/// nearest. Both look through a net of cells.
pub fn spots(ground: &Ground, step: i32) -> Vec<Spot> {
    let apart = MERGE * libm::exp2(f64::from(step) / 2.0);
    let places = ground.places();
    let mut seeds: Vec<Coord<f64>> = Vec::new();
    let mut cells: HashMap<(i64, i64), Vec<usize>> = HashMap::new();
    for place in places {
        if near(&seeds, &cells, *place, apart).is_none() {
            cells.entry(cell(*place, apart)).or_default().push(seeds.len());
            seeds.push(*place);
        }
    }
    let mut spots: Vec<Spot> =
        seeds.iter().map(|place| Spot { place: *place, widest: None, members: vec![] }).collect();
    for (at, place) in places.iter().enumerate() {
        if let Some(nearest) = near(&seeds, &cells, *place, apart) {
            spots[nearest].members.push(at);
        }
    }
    for spot in &mut spots {
        settle(spot, ground);
    }
    spots
}

fn cell(place: Coord<f64>, apart: f64) -> (i64, i64) {
    (libm::floor(place.x / apart) as i64, libm::floor(place.y / apart) as i64)
}

/// The seed nearest to a place, if it is less than so far away.
fn near(seeds: &[Coord<f64>], cells: &HashMap<(i64, i64), Vec<usize>>, place: Coord<f64>, apart: f64) -> Option<usize> {
    let (x, y) = cell(place, apart);
    let around = (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (x + dx, y + dy)));
    let known = around.filter_map(|cell| cells.get(&cell)).flatten().copied();
    let away = known.map(|seed| (seed, between(seeds[seed], place))).filter(|(_, away)| *away < apart);
    away.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(seed, _)| seed)
}

fn settle(spot: &mut Spot, ground: &Ground) {
    let places = ground.places();
    let count = spot.members.len() as f64;
    spot.place.x = spot.members.iter().map(|at| places[*at].x).sum::<f64>() / count;
    spot.place.y = spot.members.iter().map(|at| places[*at].y).sum::<f64>() / count;
    let known = spot.members.iter().filter_map(|at| Some((places[*at], ground.radii()[*at]?)));
    spot.widest = known.max_by(|a, b| a.1.total_cmp(&b.1));
}

/// The spot nearest to a place of the sheet, if it lies within a reach; both in units.
pub fn nearest(spots: &[Spot], frame: Frame, at: Coord<f64>, reach: f64) -> Option<usize> {
    let away = |spot: &Spot| between(frame.place(spot.place), at);
    let near = spots.iter().enumerate().map(|(index, spot)| (index, away(spot))).filter(|(_, away)| *away <= reach);
    near.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(index, _)| index)
}
