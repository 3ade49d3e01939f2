//! The way of a recorded track laid on the plane of the positions, once, and the pieces of it that a frame shows.

use super::on_plane::OnPlane;
use super::{Frame, Ground, between};
use crate::instant::Instant;
use crate::track::Track;
use geo_types::Coord;
use units::Metres;

/// A recorded way on the plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Trail {
    lines: Vec<OnPlane>,
    length: Metres,
}

impl Trail {
    /// Lays a track on the plane from one instant until another, by the clock of the track.
    ///
    /// **Errors**: `None` where nothing was recorded then.
    pub fn new(track: &Track, (from, until): (Instant, Instant), ground: &Ground) -> Option<Self> {
        let pieces = track.pieces(from, until);
        let laid: Vec<Vec<Coord<f64>>> =
            pieces.iter().map(|piece| piece.iter().map(|fix| ground.plane().place(fix.position)).collect()).collect();
        let way = |piece: &Vec<Coord<f64>>| piece.windows(2).map(|leg| between(leg[0], leg[1])).sum::<f64>();
        let length = Metres::new(laid.iter().map(way).sum())?;
        let lines: Vec<OnPlane> = laid.iter().flat_map(|piece| OnPlane::torn(piece)).collect();
        (!lines.is_empty()).then_some(Self { lines, length })
    }

    /// The pieces that a frame shows.
    pub fn lines(&self, frame: Frame) -> Vec<Vec<Coord<f64>>> {
        self.lines.iter().flat_map(|line| line.shown(frame)).collect()
    }

    /// How long the way is on the plane, gaps left out; what a receiver that stands still seems to walk is in it.
    ///
    /// **Accuracy**: that of [`Plane`](crate::local::Plane).
    pub fn length(&self) -> Metres {
        self.length
    }
}
