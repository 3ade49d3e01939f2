//! The drawing of where a day's events lie: places, circles, grid and scale bar in units of the drawing.
//!
//! In go positions and the size of the drawing, out come numbers to draw. Colours, words and which event is which
//! are left to the screen.

use crate::local::Plane;
use crate::position::Position;
use geo_types::Coord;
use std::collections::HashMap;

/// Units left free on each side.
const MARGIN: f64 = 24.0;
/// Places nearer to each other than this, in units, are drawn as one spot.
const MERGE: f64 = 24.0;
/// Least distance of two grid lines, in units.
const GRID_LEAST: f64 = 48.0;
/// The scale bar is at most this share of the width.
const BAR_SHARE: f64 = 0.35;
/// Metres that the shorter side shows at least, so that one position does not fill the drawing with its last digit.
const SHOWN_LEAST_M: f64 = 100.0;
/// So many times the smallest known radius is shown at least; one vague position does not shrink all the others.
const RADII_SHOWN: f64 = 3.0;

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Metres of one unit.
    pub metres_per_unit: f64,
    /// Each position in the order given: x to the right, y downwards.
    pub places: Vec<Coord<f64>>,
    /// The spots to draw, in the order of their first member.
    pub spots: Vec<Spot>,
    /// Metres of the scale bar: 1, 2 or 5 times a power of ten.
    pub bar_m: f64,
    /// Its length in units.
    pub bar: f64,
    /// Metres between grid lines: 1, 2 or 5 times a power of ten.
    pub grid_m: f64,
    /// x of the upright grid lines.
    pub grid_x: Vec<f64>,
    /// y of the level grid lines.
    pub grid_y: Vec<f64>,
    /// Greatest distance between two positions, metres.
    pub extent_m: f64,
}

/// Positions that lie so close that they are drawn as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Where: the mean of its members.
    pub place: Coord<f64>,
    /// The greatest radius among its members in units, at most half of the drawing's shorter side; `None` where no
    /// radius is known.
    pub radius: Option<f64>,
    /// Which positions, by their place in the list given.
    pub members: Vec<usize>,
}

/// Lays positions out on a drawing, north upwards, the middle of their extent in its middle.
///
/// **Accuracy**: that of [`Plane`]; far below a unit for what can be visited in a day.
///
/// **Errors**: `None` without positions, or when a side is not longer than both margins.
pub fn frame(positions: &[Position], width: f64, height: f64) -> Option<Frame> {
    let inner = Coord { x: width - 2.0 * MARGIN, y: height - 2.0 * MARGIN };
    if !(inner.x > 0.0 && inner.y > 0.0 && width.is_finite() && height.is_finite()) {
        return None;
    }
    let plane = Plane::around(positions)?;
    let ground: Vec<Coord<f64>> = positions.iter().map(|position| plane.place(*position)).collect();
    let (low, high) = bounds(&ground);
    let radius_m = positions.iter().filter_map(Position::radius_m).reduce(f64::min).unwrap_or(0.0);
    let least_m = SHOWN_LEAST_M.max(radius_m * RADII_SHOWN);
    let metres_per_unit =
        ((high.x - low.x) / inner.x).max((high.y - low.y) / inner.y).max(least_m / inner.x.min(inner.y));
    let middle = Coord { x: (low.x + high.x) / 2.0, y: (low.y + high.y) / 2.0 };
    let places: Vec<Coord<f64>> = ground
        .iter()
        .map(|at| Coord {
            x: width / 2.0 + (at.x - middle.x) / metres_per_unit,
            y: height / 2.0 - (at.y - middle.y) / metres_per_unit,
        })
        .collect();
    let radius_most = width.min(height) / 2.0;
    let radius = |at: usize| positions[at].radius_m().map(|metres| (metres / metres_per_unit).min(radius_most));
    let bar_m = nice_below(width * BAR_SHARE * metres_per_unit);
    let grid_m = nice_above(GRID_LEAST * metres_per_unit);
    let grid = grid_m / metres_per_unit;
    Some(Frame {
        metres_per_unit,
        spots: spots(&places, radius),
        places,
        bar_m,
        bar: bar_m / metres_per_unit,
        grid_m,
        grid_x: lines(width, grid),
        grid_y: lines(height, grid),
        extent_m: extent(&ground),
    })
}

fn bounds(places: &[Coord<f64>]) -> (Coord<f64>, Coord<f64>) {
    let start = places.first().copied().unwrap_or_default();
    places.iter().fold((start, start), |(low, high), at| {
        (Coord { x: low.x.min(at.x), y: low.y.min(at.y) }, Coord { x: high.x.max(at.x), y: high.y.max(at.y) })
    })
}

/// Places gathered into spots: each joins the first spot whose first member is near, found through a net of cells.
fn spots(places: &[Coord<f64>], radius: impl Fn(usize) -> Option<f64>) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    let mut cells: HashMap<(i64, i64), Vec<usize>> = HashMap::new();
    for (at, place) in places.iter().enumerate() {
        let cell = (libm::floor(place.x / MERGE) as i64, libm::floor(place.y / MERGE) as i64);
        let around = (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (cell.0 + dx, cell.1 + dy)));
        let near = around
            .filter_map(|cell| cells.get(&cell))
            .flatten()
            .copied()
            .filter(|spot| between(places[spots[*spot].members[0]], *place) < MERGE)
            .min();
        match near {
            Some(spot) => spots[spot].members.push(at),
            None => {
                cells.entry(cell).or_default().push(spots.len());
                spots.push(Spot { place: *place, radius: None, members: vec![at] });
            }
        }
    }
    for spot in &mut spots {
        let count = spot.members.len() as f64;
        spot.place.x = spot.members.iter().map(|at| places[*at].x).sum::<f64>() / count;
        spot.place.y = spot.members.iter().map(|at| places[*at].y).sum::<f64>() / count;
        spot.radius = spot.members.iter().filter_map(|at| radius(*at)).reduce(f64::max);
    }
    spots
}

/// Grid lines through the middle of a side and outwards.
fn lines(side: f64, step: f64) -> Vec<f64> {
    let count = libm::floor(side / 2.0 / step) as i32;
    (-count..=count).map(|line| side / 2.0 + f64::from(line) * step).collect()
}

/// The greatest distance between two places: between two corners of their hull.
fn extent(places: &[Coord<f64>]) -> f64 {
    let hull = hull(places);
    let far = |at: &Coord<f64>| hull.iter().map(|other| between(*at, *other)).fold(0.0, f64::max);
    hull.iter().map(far).fold(0.0, f64::max)
}

/// Corners of the convex hull.
///
/// **Source**: Andrew (1979), Another efficient algorithm for convex hulls in two dimensions.
fn hull(places: &[Coord<f64>]) -> Vec<Coord<f64>> {
    let mut sorted = places.to_vec();
    sorted.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let mut corners = half_hull(sorted.iter());
    corners.extend(half_hull(sorted.iter().rev()));
    corners
}

fn half_hull<'a>(places: impl Iterator<Item = &'a Coord<f64>>) -> Vec<Coord<f64>> {
    let mut half: Vec<Coord<f64>> = Vec::new();
    for place in places {
        while let [.., a, b] = half[..]
            && (b.x - a.x) * (place.y - a.y) - (b.y - a.y) * (place.x - a.x) <= 0.0
        {
            half.pop();
        }
        half.push(*place);
    }
    half
}

fn between(one: Coord<f64>, other: Coord<f64>) -> f64 {
    libm::hypot(one.x - other.x, one.y - other.y)
}

/// The greatest of 1, 2 or 5 times a power of ten that is not above a length.
fn nice_below(length: f64) -> f64 {
    let power = power_of_ten(length);
    [5.0, 2.0].into_iter().map(|nice| nice * power).find(|nice| *nice <= length).unwrap_or(power)
}

/// The smallest of 1, 2 or 5 times a power of ten that is not below a length.
fn nice_above(length: f64) -> f64 {
    let power = power_of_ten(length);
    [1.0, 2.0, 5.0].into_iter().map(|nice| nice * power).find(|nice| *nice >= length).unwrap_or(power * 10.0)
}

/// The power of ten at or below a length.
fn power_of_ten(length: f64) -> f64 {
    libm::pow(10.0, libm::floor(libm::log10(length)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Position {
        Position::new(latitude, longitude, radius_m).expect("a position")
    }

    fn drawn(positions: &[Position]) -> Frame {
        frame(positions, 358.0, 240.0).expect("positions and a drawing")
    }

    #[test]
    fn one_position_lies_in_the_middle_with_its_circle() {
        let frame = drawn(&[at(47.6, 12.3, Some(9.0))]);
        assert_eq!(frame.places, [Coord { x: 179.0, y: 120.0 }]);
        assert_eq!(frame.extent_m, 0.0);
        let radius = frame.spots[0].radius.expect("a radius");
        assert!((radius * frame.metres_per_unit - 9.0).abs() < 1e-9);
        assert!(frame.bar <= 358.0 * BAR_SHARE && frame.bar_m >= 1.0);
    }

    #[test]
    fn the_same_position_often_is_one_spot() {
        let frame = drawn(&[at(47.6, 12.3, None); 40]);
        assert_eq!(frame.spots.len(), 1);
        assert_eq!((frame.spots[0].members.len(), frame.spots[0].radius), (40, None));
    }

    #[test]
    fn north_is_up_and_east_is_right_across_the_antimeridian() {
        let frame = drawn(&[at(-17.0, 179.99, None), at(-16.99, -179.99, None)]);
        assert!(frame.places[0].x < frame.places[1].x && frame.places[0].y > frame.places[1].y);
        // 0.02° of longitude and 0.01° of latitude at 17° S: 2,129 m and 1,107 m; tolerance one per cent.
        assert!((frame.extent_m - 2_400.0).abs() < 24.0, "{}", frame.extent_m);
    }

    #[test]
    fn a_vague_position_does_not_shrink_the_others() {
        let frame = drawn(&[at(47.6, 12.3, Some(2e7)), at(47.61, 12.3, Some(5.0))]);
        assert_eq!(frame.spots.len(), 2);
        assert_eq!(frame.spots[0].radius, Some(120.0));
    }

    #[test]
    fn without_positions_or_room_there_is_no_drawing() {
        assert_eq!(frame(&[], 358.0, 240.0), None);
        assert_eq!(frame(&[at(47.6, 12.3, None)], 358.0, 48.0), None);
        assert_eq!(frame(&[at(47.6, 12.3, None)], f64::NAN, 240.0), None);
    }

    #[test]
    fn nice_lengths_are_nice() {
        for (length, below, above) in [(1.0, 1.0, 1.0), (1.9, 1.0, 2.0), (3.0, 2.0, 5.0), (730.0, 500.0, 1000.0)] {
            assert!((nice_below(length) - below).abs() < 1e-9 && (nice_above(length) - above).abs() < 1e-9, "{length}");
        }
    }

    proptest! {
        #[test]
        fn everything_is_drawn_once_and_inside(
            list in prop::collection::vec((-0.2..0.2, -0.2..0.2, 0.0..500.0), 1..60), lat in -85.0..85.0, lon in -180.0..180.0
        ) {
            let positions: Vec<Position> =
                list.iter().map(|(north, east, radius)| at(lat + north, lon + east, Some(*radius))).collect();
            let frame = drawn(&positions);
            let mut members: Vec<usize> = frame.spots.iter().flat_map(|spot| spot.members.clone()).collect();
            members.sort_unstable();
            prop_assert_eq!(members, (0..positions.len()).collect::<Vec<_>>());
            for place in &frame.places {
                prop_assert!((23.9..334.1).contains(&place.x) && (23.9..216.1).contains(&place.y));
            }
            for pair in frame.places.windows(2) {
                prop_assert!(between(pair[0], pair[1]) * frame.metres_per_unit <= frame.extent_m + 1e-6);
            }
        }
    }
}
