//! Coasts and borders laid on the plane of the positions, once, and the pieces of them that a frame shows.

use super::on_plane::OnPlane;
use super::{Frame, Ground};
use crate::arcs::Bounds;
use crate::country::Kind;
use crate::outline::Outline;
use crate::position::Position;
use geo_types::{Coord, LineString};
use units::Degrees;

/// Coasts and borders on the plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Coast {
    lines: Vec<(Kind, OnPlane)>,
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
        let laid = |(kind, line): &(Kind, LineString<f64>)| {
            let kind = *kind;
            on_plane(line, ground).into_iter().map(move |line| (kind, line))
        };
        Self { lines: lines.iter().flat_map(laid).collect() }
    }

    /// The pieces that a frame shows.
    pub fn lines(&self, frame: Frame) -> Vec<Line> {
        let shown = |(kind, line): &(Kind, OnPlane)| {
            let kind = *kind;
            line.shown(frame).into_iter().map(move |points| Line { kind, points })
        };
        self.lines.iter().flat_map(shown).collect()
    }
}

fn on_plane(line: &LineString<f64>, ground: &Ground) -> Vec<OnPlane> {
    let place = |at: &Coord<f64>| Position::new(at.y, at.x, None).map(|position| ground.plane().place(position));
    OnPlane::torn(&line.0.iter().filter_map(place).collect::<Vec<_>>())
}
