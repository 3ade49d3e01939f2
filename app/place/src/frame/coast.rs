//! Coasts and borders laid on the plane of the positions, once, and the pieces of them that a frame shows.

use super::{Frame, Ground, between, bounds};
use crate::arcs::Bounds;
use crate::country::Kind;
use crate::outline::Outline;
use crate::position::Position;
use geo_types::{Coord, LineString};
use units::Degrees;

/// Two points of a line further apart on the plane than this lie on both sides of the point opposite its middle.
const TORN_M: f64 = 5.0e6;
/// Points nearer to the one before than this, in units of the sheet, are left out.
const THIN: f64 = 1.0;

/// Coasts and borders on the plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Coast {
    lines: Vec<OnPlane>,
}

#[derive(Clone, Debug, PartialEq)]
struct OnPlane {
    kind: Kind,
    points: Vec<Coord<f64>>,
    low: Coord<f64>,
    high: Coord<f64>,
}

/// A piece of coast or border on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Which of the two it is.
    pub kind: Kind,
    /// Its points.
    pub points: Vec<Coord<f64>>,
}

impl Coast {
    /// Lays the lines of the whole Earth on the plane.
    pub fn new(outline: &Outline, ground: &Ground) -> Self {
        let side = |degrees| Degrees::new(degrees).unwrap_or_default();
        let earth = Bounds::new(side(-180.0), side(-90.0), side(180.0), side(90.0));
        let lines = earth.map(|earth| outline.lines(earth)).unwrap_or_default();
        Self { lines: lines.iter().flat_map(|(kind, line)| on_plane(*kind, line, ground)).collect() }
    }

    /// The pieces that a frame shows.
    pub fn lines(&self, frame: Frame) -> Vec<Line> {
        let (width, height) = (frame.width(), frame.height());
        let low = frame.ground(Coord { x: 0.0, y: height });
        let high = frame.ground(Coord { x: width, y: 0.0 });
        let near = |line: &&OnPlane| {
            line.low.x <= high.x && line.high.x >= low.x && line.low.y <= high.y && line.high.y >= low.y
        };
        self.lines.iter().filter(near).flat_map(|line| shown(line, frame)).collect()
    }
}

/// A line on the plane, torn where it runs round the far side of the Earth.
fn on_plane(kind: Kind, line: &LineString<f64>, ground: &Ground) -> Vec<OnPlane> {
    let place = |at: &Coord<f64>| Position::new(at.y, at.x, None).map(|position| ground.plane().place(position));
    let points: Vec<Coord<f64>> = line.0.iter().filter_map(place).collect();
    let whole = points.chunk_by(|one, next| between(*one, *next) < TORN_M).filter(|piece| piece.len() > 1);
    whole
        .map(|piece| {
            let (low, high) = bounds(piece.iter().copied());
            OnPlane { kind, points: piece.to_vec(), low, high }
        })
        .collect()
}

/// The pieces of a line that come onto the sheet, without the points that nobody could see.
fn shown(line: &OnPlane, frame: Frame) -> Vec<Line> {
    let mut pieces: Vec<Line> = Vec::new();
    let mut drawn = false;
    let mut last = frame.place(line.points[0]);
    let end = line.points.len() - 1;
    for (at, point) in line.points.iter().enumerate().skip(1) {
        let next = frame.place(*point);
        if between(last, next) < THIN && at < end {
            continue;
        }
        if meets(last, next, frame) {
            match pieces.last_mut().filter(|_| drawn) {
                Some(piece) => piece.points.push(next),
                None => pieces.push(Line { kind: line.kind, points: vec![last, next] }),
            }
            drawn = true;
        } else {
            drawn = false;
        }
        last = next;
    }
    pieces
}

/// True when the box round two places meets the sheet.
fn meets(one: Coord<f64>, other: Coord<f64>, frame: Frame) -> bool {
    one.x.max(other.x) >= 0.0
        && one.x.min(other.x) <= frame.width()
        && one.y.max(other.y) >= 0.0
        && one.y.min(other.y) <= frame.height()
}
