//! A map of where events lie: which piece of ground is shown on a sheet, and what is drawn on it.
//!
//! In go positions, the size of a sheet and what a finger does; out come numbers to draw, in units of the sheet. Colours,
//! words and which event is which are left to the screen.

mod coast;
mod graticule;
mod on_plane;
mod scale;
mod spots;
mod trail;

pub use coast::{Coast, Line};
pub use graticule::{Graticule, GridLine, graticule};
pub use scale::{Bar, bar, north};
pub use spots::{MERGE, Spot, nearest, spots, step};
pub use trail::Trail;

use crate::local::Plane;
use crate::position::Position;
use geo_types::Coord;
use units::Metres;

/// Units left free on each side when all is shown.
const MARGIN: f64 = 32.0;
/// Metres that the shorter side shows at least when all is shown, so that one position does not fill the sheet with its
/// last digit.
const SHOWN_LEAST_M: f64 = 100.0;
/// So many times the smallest known radius is shown at least; one vague position does not shrink all the others.
const RADII_SHOWN: f64 = 3.0;
/// Metres across the sheet at the closest, and at the widest: the Earth round its middle.
const ACROSS_M: (f64, f64) = (10.0, 4.0e7);

/// Positions laid on a plane, once for all sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    plane: Plane,
    places: Vec<Coord<f64>>,
    radii: Vec<Option<f64>>,
    low: Coord<f64>,
    high: Coord<f64>,
    extent: Metres,
}

/// The piece of ground that a sheet shows, north upwards at the middle of the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    middle: Coord<f64>,
    metres_per_unit: f64,
    width: f64,
    height: f64,
}

impl Ground {
    /// The ground round positions, their middle in its middle.
    ///
    /// **Accuracy**: that of [`Plane`].
    ///
    /// **Errors**: `None` without positions.
    pub fn new(positions: &[Position]) -> Option<Self> {
        let plane = Plane::around(positions)?;
        let places: Vec<Coord<f64>> = positions.iter().map(|position| plane.place(*position)).collect();
        let (low, high) = bounds(places.iter().copied());
        let extent = Metres::new(extent(&places))?;
        Some(Self { plane, radii: positions.iter().map(Position::radius_m).collect(), places, low, high, extent })
    }

    /// The plane.
    pub fn plane(&self) -> Plane {
        self.plane
    }

    /// Where each position lies, in the order given: metres east (x) and north (y) of the middle.
    pub fn places(&self) -> &[Coord<f64>] {
        &self.places
    }

    /// The radius of each position in metres; `None` where unknown.
    pub fn radii(&self) -> &[Option<f64>] {
        &self.radii
    }

    /// Greatest distance between two positions.
    pub fn extent(&self) -> Metres {
        self.extent
    }

    /// The frame that shows every position.
    ///
    /// **Errors**: `None` when a side is not longer than both margins.
    pub fn whole(&self, width: f64, height: f64) -> Option<Frame> {
        let room = Coord { x: width - 2.0 * MARGIN, y: height - 2.0 * MARGIN };
        if !(room.x > 0.0 && room.y > 0.0 && width.is_finite() && height.is_finite()) {
            return None;
        }
        let radius = self.radii.iter().flatten().copied().reduce(f64::min).unwrap_or(0.0);
        let least = SHOWN_LEAST_M.max(radius * RADII_SHOWN) / room.x.min(room.y);
        Some(self.around(self.low, self.high, least, Frame { middle: self.low, metres_per_unit: least, width, height }))
    }

    /// A frame of the same sheet that shows some of the positions, closer than a frame before where that can be.
    pub fn closer(&self, members: &[usize], before: Frame) -> Frame {
        let places = || members.iter().filter_map(|member| self.places.get(*member).copied());
        if places().next().is_none() {
            return before;
        }
        let (low, high) = bounds(places());
        let shown = self.around(low, high, before.closest(), before);
        Frame { metres_per_unit: shown.metres_per_unit.min(before.metres_per_unit), ..shown }
    }

    fn around(&self, low: Coord<f64>, high: Coord<f64>, least: f64, sheet: Frame) -> Frame {
        let across = (high.x - low.x) / (sheet.width - 2.0 * MARGIN);
        let up = (high.y - low.y) / (sheet.height - 2.0 * MARGIN);
        let middle = Coord { x: (low.x + high.x) / 2.0, y: (low.y + high.y) / 2.0 };
        self.kept(Frame { middle, metres_per_unit: across.max(up).max(least), ..sheet })
    }

    /// The frame after the ground was dragged so many units to the right (x) and downwards (y).
    pub fn dragged(&self, frame: Frame, by: Coord<f64>) -> Frame {
        let middle = Coord {
            x: frame.middle.x - by.x * frame.metres_per_unit,
            y: frame.middle.y + by.y * frame.metres_per_unit,
        };
        self.kept(Frame { middle, ..frame })
    }

    /// The frame so many times closer, while what lies at a place of the sheet stays there.
    pub fn zoomed(&self, frame: Frame, times: f64, at: Coord<f64>) -> Frame {
        if !(times.is_finite() && times > 0.0) {
            return frame;
        }
        let held = frame.ground(at);
        let scaled = self.kept(Frame { metres_per_unit: frame.metres_per_unit / times, ..frame });
        let moved = scaled.place(held);
        self.dragged(scaled, Coord { x: at.x - moved.x, y: at.y - moved.y })
    }

    /// The frame with the same middle and scale on another sheet.
    pub fn resized(&self, frame: Frame, width: f64, height: f64) -> Frame {
        let fits = width.is_finite() && height.is_finite() && width > 2.0 * MARGIN && height > 2.0 * MARGIN;
        if fits { self.kept(Frame { width, height, ..frame }) } else { frame }
    }

    /// A frame held within what can be shown: never so far off that nothing of the positions' box is left on it.
    fn kept(&self, frame: Frame) -> Frame {
        let (closest, widest) = (frame.closest(), (ACROSS_M.1 / frame.width).max(frame.closest()));
        let scale = if frame.metres_per_unit.is_finite() { frame.metres_per_unit } else { widest };
        let metres_per_unit = scale.clamp(closest, widest);
        let reach = |side: f64| (side / 2.0 - MARGIN / 2.0).max(0.0) * metres_per_unit;
        let held = |at: f64, low: f64, high: f64, reach: f64| {
            if at.is_finite() { at.clamp(low - reach, high + reach) } else { (low + high) / 2.0 }
        };
        let middle = Coord {
            x: held(frame.middle.x, self.low.x, self.high.x, reach(frame.width)),
            y: held(frame.middle.y, self.low.y, self.high.y, reach(frame.height)),
        };
        Frame { middle, metres_per_unit, ..frame }
    }
}

impl Frame {
    /// Where a place on the ground (metres) lies on the sheet: x to the right, y downwards.
    pub fn place(&self, ground: Coord<f64>) -> Coord<f64> {
        Coord {
            x: self.width / 2.0 + (ground.x - self.middle.x) / self.metres_per_unit,
            y: self.height / 2.0 - (ground.y - self.middle.y) / self.metres_per_unit,
        }
    }

    /// The place on the ground below a place of the sheet.
    pub fn ground(&self, place: Coord<f64>) -> Coord<f64> {
        Coord {
            x: self.middle.x + (place.x - self.width / 2.0) * self.metres_per_unit,
            y: self.middle.y - (place.y - self.height / 2.0) * self.metres_per_unit,
        }
    }

    /// The place on the ground in the middle of the sheet.
    pub fn middle(&self) -> Coord<f64> {
        self.middle
    }

    /// Metres of the ground in one unit of the sheet.
    pub fn metres_per_unit(&self) -> f64 {
        self.metres_per_unit
    }

    /// Width of the sheet.
    pub fn width(&self) -> f64 {
        self.width
    }

    /// Height of the sheet.
    pub fn height(&self) -> f64 {
        self.height
    }

    /// Metres of the ground across the sheet.
    pub fn across_m(&self) -> f64 {
        self.width * self.metres_per_unit
    }

    /// True for a place of the sheet, or one no further beyond its edge than so many units.
    pub fn shows(&self, place: Coord<f64>, beyond: f64) -> bool {
        (-beyond..=self.width + beyond).contains(&place.x) && (-beyond..=self.height + beyond).contains(&place.y)
    }

    /// True when the sheet cannot come closer.
    pub fn is_closest(&self) -> bool {
        self.metres_per_unit <= self.closest()
    }

    /// True when the sheet cannot show more.
    pub fn is_widest(&self) -> bool {
        self.across_m() >= ACROSS_M.1
    }

    fn closest(&self) -> f64 {
        ACROSS_M.0 / self.width
    }
}

/// The lower left and upper right corner of the box round places; zero without one.
fn bounds(mut places: impl Iterator<Item = Coord<f64>>) -> (Coord<f64>, Coord<f64>) {
    let start = places.next().unwrap_or_default();
    places.fold((start, start), |(low, high), at| {
        (Coord { x: low.x.min(at.x), y: low.y.min(at.y) }, Coord { x: high.x.max(at.x), y: high.y.max(at.y) })
    })
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

#[cfg(test)]
mod tests;
