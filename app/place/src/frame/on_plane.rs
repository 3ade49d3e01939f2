//! A line laid on the plane of the positions, once, and the pieces of it that a frame shows.

use super::{Frame, between, bounds};
use geo_types::Coord;

/// Two points of a line further apart on the plane than this lie on both sides of the point opposite its middle.
const TORN_M: f64 = 5.0e6;
/// Points nearer to the one before than this, in units of the sheet, are left out.
const THIN: f64 = 1.0;

/// A line on the plane, in metres, with its box.
#[derive(Clone, Debug, PartialEq)]
pub struct OnPlane {
    points: Vec<Coord<f64>>,
    low: Coord<f64>,
    high: Coord<f64>,
}

impl OnPlane {
    /// A line, torn where it runs round the far side of the Earth.
    pub fn torn(points: &[Coord<f64>]) -> Vec<Self> {
        let whole = points.chunk_by(|one, next| between(*one, *next) < TORN_M).filter(|piece| piece.len() > 1);
        whole
            .map(|piece| {
                let (low, high) = bounds(piece.iter().copied());
                Self { points: piece.to_vec(), low, high }
            })
            .collect()
    }

    /// The pieces that come onto the sheet, without the points that nobody could see.
    pub fn shown(&self, frame: Frame) -> Vec<Vec<Coord<f64>>> {
        if !self.is_near(frame) {
            return Vec::new();
        }
        let mut pieces: Vec<Vec<Coord<f64>>> = Vec::new();
        let mut drawn = false;
        let mut last = frame.place(self.points[0]);
        let end = self.points.len() - 1;
        for (at, point) in self.points.iter().enumerate().skip(1) {
            let next = frame.place(*point);
            if between(last, next) < THIN && at < end {
                continue;
            }
            if meets(last, next, frame) {
                match pieces.last_mut().filter(|_| drawn) {
                    Some(piece) => piece.push(next),
                    None => pieces.push(vec![last, next]),
                }
                drawn = true;
            } else {
                drawn = false;
            }
            last = next;
        }
        pieces
    }

    fn is_near(&self, frame: Frame) -> bool {
        let low = frame.ground(Coord { x: 0.0, y: frame.height() });
        let high = frame.ground(Coord { x: frame.width(), y: 0.0 });
        self.low.x <= high.x && self.high.x >= low.x && self.low.y <= high.y && self.high.y >= low.y
    }
}

/// True when the box round two places meets the sheet.
fn meets(one: Coord<f64>, other: Coord<f64>, frame: Frame) -> bool {
    one.x.max(other.x) >= 0.0
        && one.x.min(other.x) <= frame.width()
        && one.y.max(other.y) >= 0.0
        && one.y.min(other.y) <= frame.height()
}
