//! Lines that part two areas, each stored once.
//!
//! In go the bytes of a file, out come its lines in whole steps of a grid of degrees. What the areas are is left to
//! [`crate::country`] and [`crate::outline`].
//!
//! Stored are the steps in a degree; the number of pairs of areas, and for each pair how far the first lies from the
//! first before, the second (0 for none, else one more than its number), the number of lines, and for each the number of
//! its points and the points, each as its steps eastwards and northwards from the one before.

use crate::stream::{Reader, Writer};
use geo_types::{Coord, LineString};
use units::Degrees;

/// A line between two areas.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arc {
    /// The area on one side.
    pub one: usize,
    /// The area on the other; none for the sea.
    pub other: Option<usize>,
    /// Its points: steps east and north.
    pub points: Vec<[i32; 2]>,
}

/// Lines on a grid.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arcs {
    per_degree: u32,
    arcs: Vec<Placed>,
}

/// A line with the box it lies in.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Placed {
    arc: Arc,
    least: [i32; 2],
    most: [i32; 2],
}

/// A box of degrees: west, south, east, north. West lies below east; a box over the antimeridian is two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    least: [f64; 2],
    most: [f64; 2],
}

impl Bounds {
    /// A box by its sides in degrees.
    ///
    /// **Errors**: `None` where west does not lie below east or south below north.
    pub fn new(west: Degrees, south: Degrees, east: Degrees, north: Degrees) -> Option<Self> {
        let (least, most) = ([west.degrees(), south.degrees()], [east.degrees(), north.degrees()]);
        (least[0] < most[0] && least[1] < most[1]).then_some(Self { least, most })
    }
}

impl Arcs {
    /// Lines from their points.
    ///
    /// **Errors**: `None` for a grid of no or more than a million steps a degree, for lines of fewer than two points,
    /// and for points outside the Earth.
    pub fn new(per_degree: u32, arcs: Vec<Arc>) -> Option<Self> {
        let steps = i32::try_from(per_degree).ok().filter(|steps| (1..=1_000_000).contains(steps))?;
        let on_earth = |point: &[i32; 2]| point[0].abs() <= 180 * steps && point[1].abs() <= 90 * steps;
        let fits = arcs.iter().all(|arc| arc.points.len() >= 2 && arc.points.iter().all(on_earth));
        fits.then(|| Self { per_degree, arcs: arcs.into_iter().map(placed).collect() })
    }

    pub(crate) fn read(reader: &mut Reader<'_>) -> Option<Self> {
        let per_degree = reader.number()?;
        let (mut arcs, mut one, mut from) = (Vec::new(), 0_usize, [0_i32; 2]);
        for _ in 0..reader.count()? {
            one = one.checked_add(reader.number()? as usize)?;
            let other = (reader.number()? as usize).checked_sub(1);
            for _ in 0..reader.count()? {
                let mut points = Vec::new();
                for _ in 0..reader.count()? {
                    from = [from[0].checked_add(reader.signed()?)?, from[1].checked_add(reader.signed()?)?];
                    points.push(from);
                }
                arcs.push(Arc { one, other, points });
            }
        }
        Self::new(per_degree, arcs)
    }

    /// Writes the lines, those of each pair together.
    pub(crate) fn write(&self, writer: &mut Writer) {
        let mut sorted: Vec<&Arc> = self.arcs().collect();
        sorted.sort_by_key(|arc| (arc.one, arc.other));
        let pairs: Vec<&[&Arc]> = sorted.chunk_by(|a, b| (a.one, a.other) == (b.one, b.other)).collect();
        writer.number(self.per_degree);
        writer.count(pairs.len());
        let (mut one, mut from) = (0, [0_i32; 2]);
        for pair in pairs {
            writer.count(pair[0].one - one);
            one = pair[0].one;
            writer.count(pair[0].other.map_or(0, |other| other + 1));
            writer.count(pair.len());
            for arc in pair {
                writer.count(arc.points.len());
                for point in &arc.points {
                    writer.signed(point[0] - from[0]);
                    writer.signed(point[1] - from[1]);
                    from = *point;
                }
            }
        }
    }

    /// The lines.
    pub fn arcs(&self) -> impl Iterator<Item = &Arc> {
        self.arcs.iter().map(|placed| &placed.arc)
    }

    /// The lines that come near a box, each with its pieces inside.
    pub(crate) fn clipped(&self, bounds: Bounds) -> impl Iterator<Item = (&Arc, Vec<LineString<f64>>)> {
        let degrees = f64::from(self.per_degree);
        let near = move |placed: &&Placed| {
            (0..2).all(|axis| {
                f64::from(placed.least[axis]) <= bounds.most[axis] * degrees
                    && f64::from(placed.most[axis]) >= bounds.least[axis] * degrees
            })
        };
        let pieces = move |placed: &'_ Placed| pieces(&placed.arc, degrees, bounds);
        self.arcs.iter().filter(near).map(move |placed| (&placed.arc, pieces(placed)))
    }

    /// The lines whose box comes within a reach of a place, both in degrees east and north.
    pub(crate) fn near(&self, place: [f64; 2], reach: [f64; 2]) -> impl Iterator<Item = &Arc> {
        let degrees = f64::from(self.per_degree);
        let near = move |placed: &&Placed| {
            (0..2).all(|axis| {
                f64::from(placed.least[axis]) <= (place[axis] + reach[axis]) * degrees
                    && f64::from(placed.most[axis]) >= (place[axis] - reach[axis]) * degrees
            })
        };
        self.arcs.iter().filter(near).map(|placed| &placed.arc)
    }

    /// The lines that a way due north from a place crosses an odd number of times. Places are in degrees.
    pub(crate) fn crossed(&self, place: [f64; 2]) -> impl Iterator<Item = &Arc> {
        let [x, y] = place.map(|degrees| degrees * f64::from(self.per_degree));
        let spans = move |placed: &&Placed| {
            f64::from(placed.least[0]) <= x && x <= f64::from(placed.most[0]) && y <= f64::from(placed.most[1])
        };
        self.arcs.iter().filter(spans).map(|placed| &placed.arc).filter(move |arc| {
            let crossings = arc.points.windows(2).filter(|ends| crosses(ends[0], ends[1], x, y));
            crossings.count() % 2 == 1
        })
    }

    /// A point in degrees.
    pub(crate) fn degrees(&self, point: [i32; 2]) -> [f64; 2] {
        point.map(|steps| f64::from(steps) / f64::from(self.per_degree))
    }
}

fn placed(arc: Arc) -> Placed {
    let first = arc.points[0];
    let fold = |pick: fn(i32, i32) -> i32| {
        arc.points.iter().fold(first, |ends, point| [pick(ends[0], point[0]), pick(ends[1], point[1])])
    };
    let (least, most) = (fold(i32::min), fold(i32::max));
    Placed { arc, least, most }
}

/// Whether a piece of line lies across the way due north from (x, y). Of its two ends the western counts as crossed.
fn crosses(a: [i32; 2], b: [i32; 2], x: f64, y: f64) -> bool {
    let [a, b] = [a, b].map(|point| point.map(f64::from));
    (a[0] <= x) != (b[0] <= x) && y < a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1])
}

/// The pieces of a line inside a box.
fn pieces(arc: &Arc, per_degree: f64, bounds: Bounds) -> Vec<LineString<f64>> {
    let mut pieces: Vec<Vec<Coord<f64>>> = Vec::new();
    for ends in arc.points.windows(2) {
        let [a, b] = [ends[0], ends[1]].map(|point| point.map(|steps| f64::from(steps) / per_degree));
        let Some((from, to)) = inside(a, b, bounds) else { continue };
        let at = |share: f64| Coord { x: a[0] + (b[0] - a[0]) * share, y: a[1] + (b[1] - a[1]) * share };
        match pieces.last_mut() {
            Some(piece) if from == 0.0 && piece.last() == Some(&at(0.0)) => piece.push(at(to)),
            _ => pieces.push(vec![at(from), at(to)]),
        }
    }
    pieces.into_iter().map(LineString).collect()
}

/// From which to which share of its length a piece of line lies inside a box.
///
/// **Source**: Liang & Barsky (1984), A new concept and method for line clipping, ACM Trans. Graph. 3: 1–22.
fn inside(a: [f64; 2], b: [f64; 2], bounds: Bounds) -> Option<(f64, f64)> {
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let way = b[axis] - a[axis];
        let (enter, leave) = (bounds.least[axis] - a[axis], bounds.most[axis] - a[axis]);
        if way == 0.0 {
            if enter > 0.0 || leave < 0.0 {
                return None;
            }
            continue;
        }
        let (enter, leave) = if way > 0.0 { (enter / way, leave / way) } else { (leave / way, enter / way) };
        (from, to) = (from.max(enter), to.min(leave));
    }
    (from < to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn arc(one: usize, other: Option<usize>, points: &[[i32; 2]]) -> Arc {
        Arc { one, other, points: points.to_vec() }
    }

    fn there_and_back(arcs: &Arcs) -> Option<Arcs> {
        let mut writer = Writer::new(b"");
        arcs.write(&mut writer);
        let bytes = writer.bytes();
        let mut reader = Reader::new(&bytes, b"")?;
        Arcs::read(&mut reader).filter(|_| reader.ended())
    }

    fn bounds(west: f64, south: f64, east: f64, north: f64) -> Bounds {
        let side = |degrees| Degrees::new(degrees).expect("finite");
        Bounds::new(side(west), side(south), side(east), side(north)).expect("a box")
    }

    #[test]
    fn lines_are_cut_at_the_box() {
        let arcs = Arcs::new(10, vec![arc(0, None, &[[-20, 5], [20, 5], [20, 30], [5, 30], [5, -5]])]).expect("lines");
        let (_, pieces) = arcs.clipped(bounds(0.0, 0.0, 1.0, 1.0)).next().expect("one line comes near");
        let ends: Vec<_> = pieces.iter().map(|piece| (piece.0[0], *piece.0.last().expect("two points"))).collect();
        let at = |x, y| Coord { x, y };
        assert_eq!(ends, [(at(0.0, 0.5), at(1.0, 0.5)), (at(0.5, 1.0), at(0.5, 0.0))]);
        assert_eq!(arcs.clipped(bounds(5.0, 5.0, 6.0, 6.0)).count(), 0);
    }

    #[test]
    fn a_way_due_north_crosses_what_lies_there() {
        let arcs = Arcs::new(1, vec![arc(0, Some(1), &[[0, 10], [10, 10], [20, 20]])]).expect("lines");
        let crossed = |x, y| arcs.crossed([x, y]).count();
        assert_eq!([crossed(5.0, 0.0), crossed(5.0, 11.0), crossed(0.0, 0.0), crossed(20.0, 0.0)], [1, 0, 1, 0]);
    }

    #[test]
    fn points_off_the_earth_are_refused() {
        assert_eq!(Arcs::new(10, vec![arc(0, None, &[[0, 0], [1_801, 0]])]), None);
        assert_eq!(Arcs::new(10, vec![arc(0, None, &[[0, 0]])]), None);
        assert_eq!(Arcs::new(0, Vec::new()), None);
        assert!(Bounds::new(Degrees::default(), Degrees::default(), Degrees::default(), Degrees::default()).is_none());
    }

    proptest! {
        #[test]
        fn lines_go_there_and_back(lines in proptest::collection::vec(
            (0_usize..5, proptest::option::of(0_usize..5), proptest::collection::vec([-1_800..1_800, -900..900], 2..9)), 0..9
        )) {
            let lines: Vec<Arc> = lines.iter().map(|(one, other, points)| arc(*one, *other, points)).collect();
            let arcs = Arcs::new(10, lines).expect("lines");
            let back = there_and_back(&arcs).expect("a whole file");
            let sorted = |arcs: &Arcs| {
                let mut list: Vec<Arc> = arcs.arcs().cloned().collect();
                list.sort_by_key(|arc| (arc.one, arc.other));
                list
            };
            prop_assert_eq!(sorted(&back), sorted(&arcs));
        }

        #[test]
        fn no_bytes_make_them_stumble(bytes: Vec<u8>) {
            let _ = Reader::new(&bytes, b"").and_then(|mut reader| Arcs::read(&mut reader));
        }
    }
}
