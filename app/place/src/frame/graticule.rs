//! Lines of equal latitude and longitude across a frame.

use super::{Frame, Ground};
use crate::position::Position;
use geo_types::Coord;

/// Degrees between two lines: the first that keeps them apart is taken.
const STEPS: [f64; 25] = [
    1e-5, 2e-5, 5e-5, 1e-4, 2e-4, 5e-4, 1e-3, 2e-3, 5e-3, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 15.0,
    20.0, 30.0, 45.0, 60.0, 90.0,
];
/// Least distance of two parallels in the middle of the sheet, in units, and of two meridians, which carry wider numbers.
const APART: (f64, f64) = (64.0, 104.0);
/// Pieces of which a line is drawn, and of which across much of the Earth, where it is bent.
const PIECES: (i32, i32) = (8, 60);
/// Metres across the sheet from which on that is so.
const BENT_FROM_M: f64 = 5.0e5;
/// Half a sheet of so many metres shows the whole Earth, as far as lines go.
const HALF_EARTH_M: f64 = 9.0e6;

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct GridLine {
    /// Degrees north or east.
    pub degrees: f64,
    /// Its points on the sheet.
    pub points: Vec<Coord<f64>>,
    /// Where its number stands: a parallel's at the left edge of the sheet, a meridian's at the upper; none where it does
    /// not cross that edge.
    pub label: Option<Coord<f64>>,
}

/// The lines of a frame.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Graticule {
    /// Lines of equal latitude.
    pub parallels: Vec<GridLine>,
    /// Lines of equal longitude.
    pub meridians: Vec<GridLine>,
    /// Digits behind the point that a parallel's number needs, and a meridian's.
    pub decimals: (usize, usize),
}

/// What of the Earth a frame shows: degrees north, and degrees east of a meridian, which is given last.
struct Shown {
    south: f64,
    north: f64,
    west: f64,
    east: f64,
    meridian: f64,
}

/// The lines of a frame. A sheet with a pole on it has meridians all round.
pub fn graticule(ground: &Ground, frame: Frame) -> Graticule {
    let Some(shown) = shown(ground, frame) else { return Graticule::default() };
    let apart = |span: f64, side: f64, least: f64| step(span * least / side);
    let up = apart(shown.north - shown.south, frame.height(), APART.0);
    let along = apart(shown.east - shown.west, frame.width(), APART.1);
    let at = |north: f64, east: f64| {
        let position = Position::new(north.clamp(-90.0, 90.0), around(shown.meridian + east), None)?;
        Some(frame.place(ground.plane().place(position)))
    };
    let pieces = if frame.across_m() > BENT_FROM_M { PIECES.1 } else { PIECES.0 };
    let share = |from: f64, to: f64, piece: i32| from + (to - from) * f64::from(piece) / f64::from(pieces);
    let parallel = |north: f64| {
        let points: Vec<_> = (0..=pieces).filter_map(|piece| at(north, share(shown.west, shown.east, piece))).collect();
        let label = crossing(&points, |point| point.x, frame.height(), |point| point.y);
        GridLine { degrees: north, label: label.map(|y| Coord { x: 0.0, y }), points }
    };
    let meridian = |east: f64| {
        let points: Vec<_> = (0..=pieces)
            .filter_map(|piece| at(share(shown.south, shown.north, piece), east - shown.meridian))
            .collect();
        let label = crossing(&points, |point| point.y, frame.width(), |point| point.x);
        GridLine { degrees: around(east), label: label.map(|x| Coord { x, y: 0.0 }), points }
    };
    let round = shown.east - shown.west >= 360.0;
    // The meridian that both ends of a full circle stand for is drawn once.
    let east_end = shown.meridian + shown.east - if round { along * 1e-6 } else { 0.0 };
    Graticule {
        parallels: multiples(shown.south, shown.north, up).filter(|north| north.abs() < 90.0).map(parallel).collect(),
        meridians: multiples(shown.meridian + shown.west, east_end, along).map(meridian).collect(),
        decimals: (decimals(up), decimals(along)),
    }
}

/// The extent of a frame, from positions along its edge; of half the Earth and more, all of it.
fn shown(ground: &Ground, frame: Frame) -> Option<Shown> {
    let plane = ground.plane();
    let centre = plane.position(frame.middle())?;
    let meridian = centre.longitude.degrees();
    let all = Shown { south: -90.0, north: 90.0, west: -180.0, east: 180.0, meridian };
    let half = libm::hypot(frame.width(), frame.height()) / 2.0 * frame.metres_per_unit();
    if half + libm::hypot(frame.middle().x, frame.middle().y) > HALF_EARTH_M {
        return Some(all);
    }
    let mut seen = Shown { south: 90.0, north: -90.0, west: 180.0, east: -180.0, meridian };
    for place in edge(frame) {
        let position = plane.position(frame.ground(place))?;
        let (north, east) = (position.latitude.degrees(), around(position.longitude.degrees() - meridian));
        seen.south = seen.south.min(north);
        seen.north = seen.north.max(north);
        seen.west = seen.west.min(east);
        seen.east = seen.east.max(east);
    }
    for pole in [90.0, -90.0] {
        if frame.shows(frame.place(plane.place(Position::new(pole, 0.0, None)?)), 0.0) {
            (seen.west, seen.east) = (-180.0, 180.0);
            (seen.south, seen.north) = (seen.south.min(pole), seen.north.max(pole));
        }
    }
    Some(seen)
}

fn edge(frame: Frame) -> impl Iterator<Item = Coord<f64>> {
    let (width, height) = (frame.width(), frame.height());
    (0..=8).map(|eighth| f64::from(eighth) / 8.0).flat_map(move |share| {
        let (x, y) = (width * share, height * share);
        [Coord { x, y: 0.0 }, Coord { x, y: height }, Coord { x: 0.0, y }, Coord { x: width, y }]
    })
}

/// Where a line crosses the edge at which one of its coordinates is zero: the other one, if that lies on the sheet.
fn crossing(
    points: &[Coord<f64>],
    across: impl Fn(&Coord<f64>) -> f64,
    side: f64,
    along: impl Fn(&Coord<f64>) -> f64,
) -> Option<f64> {
    points.windows(2).find_map(|ends| {
        let (a, b) = (across(&ends[0]), across(&ends[1]));
        if (a <= 0.0) == (b <= 0.0) {
            return None;
        }
        let at = along(&ends[0]) + (along(&ends[1]) - along(&ends[0])) * (0.0 - a) / (b - a);
        (0.0..=side).contains(&at).then_some(at)
    })
}

fn step(least: f64) -> f64 {
    STEPS.into_iter().find(|step| *step >= least).unwrap_or(STEPS[STEPS.len() - 1])
}

/// The whole multiples of a step between two numbers.
fn multiples(from: f64, to: f64, step: f64) -> impl Iterator<Item = f64> {
    let (first, last) = (libm::ceil(from / step) as i64, libm::floor(to / step) as i64);
    (first..=last).map(move |count| count as f64 * step)
}

fn decimals(step: f64) -> usize {
    (0..5).find(|digits| step * libm::pow(10.0, f64::from(*digits)) > 0.999).unwrap_or(5) as usize
}

/// Degrees east from -180 to below 180.
fn around(east: f64) -> f64 {
    east - 360.0 * libm::floor((east + 180.0) / 360.0)
}
