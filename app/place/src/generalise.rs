//! Positions made coarser for sharing.
//!
//! In go a position with its circle and how coarse it shall be; out come a position on a grid of degrees, with a circle
//! that holds the true one, and what was done. Nothing is drawn by lot: a cell is true, a shifted point is not. The
//! position that is kept stays as it is; what else in a record betrays the place is left to others.

use crate::distance::distance;
use crate::position::Position;
use core::ops::RangeInclusive;
use units::{Degrees, Metres};

/// How coarse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coarseness {
    /// A grid of 0.001°, about 100 m: sensitivity category 4.
    Thousandth,
    /// A grid of 0.01°, about 1 km: category 3.
    Hundredth,
    /// A grid of 0.1°, about 10 km: category 2.
    Tenth,
    /// A grid of one degree, about 100 km: category 1.
    Whole,
    /// A grid whose cells fit into a circle of this radius anywhere on the Earth.
    Radius(Metres),
}

/// The radii that may be chosen, metres.
const RADII_M: RangeInclusive<f64> = 1.0..=1e6;

/// Metres from the middle of a cell of one degree to its corner where that is greatest, at the equator, rounded up.
/// **Source**: computed on WGS84 (geographiclib 2.1), `tests/reference/generalisation_checks.csv`: 78,452 m; ten metres
/// are added for cells greater than a degree.
const DEGREE_M: f64 = 78_462.0;

impl Coarseness {
    /// A grid whose cells fit into a circle of a radius in metres.
    ///
    /// **Errors**: `None` below a metre, beyond 1,000 km, and for NaN.
    pub fn within(radius_m: f64) -> Option<Self> {
        Metres::new(radius_m).filter(|_| RADII_M.contains(&radius_m)).map(Self::Radius)
    }

    /// Cells in a degree.
    ///
    /// **Errors**: `None` for a radius below a metre or beyond 1,000 km.
    fn per_degree(self) -> Option<f64> {
        match self {
            Self::Thousandth => Some(1_000.0),
            Self::Hundredth => Some(100.0),
            Self::Tenth => Some(10.0),
            Self::Whole => Some(1.0),
            Self::Radius(radius) => RADII_M.contains(&radius.metres()).then(|| DEGREE_M / radius.metres()),
        }
    }

    /// A stable code of the method: `degree_grid`, or `degree_grid_radius` where the cell came of a radius.
    pub fn code(self) -> &'static str {
        match self {
            Self::Radius(_) => "degree_grid_radius",
            _ => "degree_grid",
        }
    }
}

/// A position made coarser.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Generalised {
    /// The middle of the cell. Its radius holds the true circle; unknown where the true one was.
    pub position: Position,
    /// What was done: the code of the method.
    pub method: &'static str,
    /// Side of the cells.
    pub cell: Degrees,
    /// What that adds to the radius: from the middle of the cell to its farthest corner, whole metres, rounded up.
    pub added: Metres,
}

/// A position made coarser: the nearest point of the grid, halves away from zero.
///
/// **Errors**: `None` for a radius below a metre or beyond 1,000 km.
///
/// **Source**: Chapman (2020), Current Best Practices for Generalizing Sensitive Species Occurrence Data, Tables 6 and 7:
/// a geographic grid, never lots, and an uncertainty that covers the whole cell. That the cell's half diagonal and the
/// radius before are added is our reading of it; for a grid by radius the document has no rule.
pub fn generalise(position: Position, coarseness: Coarseness) -> Option<Generalised> {
    let per_degree = coarseness.per_degree()?;
    let latitude = on_grid(position.latitude.degrees(), per_degree).clamp(-90.0, 90.0);
    let longitude = on_grid(position.longitude.degrees(), per_degree);
    let middle = Position::new(latitude, longitude, None)?;
    let added = reach(middle, 0.5 / per_degree)?;
    let radius = position.radius.map(|radius| radius + added);
    Some(Generalised {
        position: Position { radius, ..middle },
        method: coarseness.code(),
        cell: Degrees::new(1.0 / per_degree)?,
        added,
    })
}

/// The nearest multiple of a cell; never −0.
fn on_grid(degrees: f64, per_degree: f64) -> f64 {
    libm::round(degrees * per_degree) / per_degree + 0.0
}

/// From the middle of a cell to its farthest corner.
fn reach(middle: Position, half: f64) -> Option<Metres> {
    let corner = |side: f64| {
        let latitude = (middle.latitude.degrees() + side * half).clamp(-90.0, 90.0);
        let corner = Position::new(latitude, middle.longitude.degrees() + half, None)?;
        Some(distance(middle, corner))
    };
    Metres::new(libm::ceil(corner(1.0)?.max(corner(-1.0)?).metres()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_was_done_is_said() {
        let position = Position::new(47.6138, 12.3043, Some(9.0)).expect("a position");
        let tenth = generalise(position, Coarseness::Tenth).expect("a grid");
        assert_eq!((tenth.method, tenth.cell.degrees()), ("degree_grid", 0.1));
        assert_eq!((tenth.position.latitude.degrees(), tenth.position.longitude.degrees()), (47.6, 12.3));
        assert_eq!(tenth.position.radius, Some(tenth.added + Metres::whole(9)));
        let circle = generalise(position, Coarseness::Radius(Metres::whole(2_000))).expect("a grid");
        assert_eq!(circle.method, "degree_grid_radius");
        assert!(circle.added <= Metres::whole(2_000) && circle.added > Metres::whole(1_500), "{circle:?}");
    }

    #[test]
    fn an_unknown_radius_stays_unknown() {
        let position = Position::new(47.6138, 12.3043, None).expect("a position");
        let tenth = generalise(position, Coarseness::Tenth).expect("a grid");
        assert_eq!(tenth.position.radius, None);
        assert!(tenth.added > Metres::whole(6_000));
    }

    #[test]
    fn no_circle_is_made_of_nothing() {
        let position = Position::new(0.0, 0.0, None).expect("a position");
        for radius_m in [0.0, -5.0, 0.5, 2e6] {
            let radius = Metres::new(radius_m).expect("finite");
            assert_eq!(generalise(position, Coarseness::Radius(radius)), None);
        }
    }

    fn coarseness() -> impl Strategy<Value = Coarseness> {
        prop_oneof![
            Just(Coarseness::Thousandth),
            Just(Coarseness::Hundredth),
            Just(Coarseness::Tenth),
            Just(Coarseness::Whole),
            (1.0..1e6).prop_map(|radius| Coarseness::Radius(Metres::new(radius).expect("finite"))),
        ]
    }

    proptest! {
        #[test]
        fn the_true_circle_lies_inside(lat in -90.0..=90.0, lon in -180.0..180.0, radius in 0.0..50_000.0, how in coarseness()) {
            let position = Position::new(lat, lon, Some(radius)).expect("a position");
            let coarse = generalise(position, how).expect("a grid");
            let moved = distance(position, coarse.position).metres();
            // A micrometre for the last bits.
            prop_assert!(moved + radius <= coarse.position.radius_m().expect("a radius") + 1e-6, "{} {:?}", moved, coarse);
            if let Coarseness::Radius(most) = how {
                prop_assert!(coarse.added.metres() <= libm::ceil(most.metres()), "{:?}", coarse);
            }
        }

        #[test]
        fn the_corners_of_a_cell_are_held(row in -89..89, column in -179..179, south: bool, west: bool, fine: bool) {
            let (cells, how) = if fine { (10.0, Coarseness::Tenth) } else { (1.0, Coarseness::Whole) };
            let corner = |middle: i32, below: bool| (f64::from(middle) + if below { -0.499_999_9 } else { 0.499_999_9 }) / cells;
            let position = Position::new(corner(row, south), corner(column, west), Some(0.0)).expect("a position");
            let coarse = generalise(position, how).expect("a grid");
            let moved = distance(position, coarse.position).metres();
            prop_assert!(moved <= coarse.added.metres(), "{} {:?}", moved, coarse);
        }

        #[test]
        fn made_coarser_twice_it_stays(lat in -90.0..=90.0, lon in -180.0..180.0) {
            let position = Position::new(lat, lon, None).expect("a position");
            let once = generalise(position, Coarseness::Hundredth).expect("a grid").position;
            prop_assert_eq!(generalise(once, Coarseness::Hundredth).expect("a grid").position, once);
        }
    }
}
