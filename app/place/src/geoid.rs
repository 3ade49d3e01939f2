//! How far sea level lies above the ellipsoid of WGS84.
//!
//! In go the bytes of a grid and a position, out comes the undulation N of the geoid, by which a height above the
//! ellipsoid is greater than the height above sea level: H = h − N. Loading the bytes is left to others.
//!
//! A file holds the mark `GND1`, then as whole numbers ([`crate::stream`]) the rows from pole to pole, the columns
//! round the Earth, the unit in centimetres, and row by row from the north, each row eastwards from Greenwich, how far
//! each value lies from what its neighbours to the west, north and north-west suggest.

use crate::position::Position;
use crate::stream::{Reader, Writer};
use units::Metres;

/// The model that the grid in `public/geo` was made from.
pub const MODEL: &str = "EGM96";
/// The most by which the grid in `public/geo` differs from the 15-minute grid of the model anywhere.
/// **Source**: 1.02 m measured over every node of that grid and halfway between them (`tests/geoid.rs`); the rest is for
/// what lies between.
pub const ERROR_MOST: Metres = Metres::thousandths(1_200);

const MARK: &[u8] = b"GND1";

/// A grid of undulations that goes round the Earth and from pole to pole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Geoid {
    rows: usize,
    columns: usize,
    unit_cm: u32,
    values: Vec<i16>,
}

impl Geoid {
    /// A grid from its values.
    ///
    /// **Shape**: rows from the north pole to the south pole, each eastwards from Greenwich.
    ///
    /// **Units**: `unit_cm` centimetres.
    ///
    /// **Errors**: `None` without two rows, for an odd number of columns (the way over a pole needs the opposite one),
    /// for a unit of 0 or over a metre, and where the values are not as many as rows times columns.
    pub fn new(rows: usize, columns: usize, unit_cm: u32, values: Vec<i16>) -> Option<Self> {
        let fits = rows >= 2
            && columns >= 4
            && columns.is_multiple_of(2)
            && (1..=100).contains(&unit_cm)
            && rows.checked_mul(columns) == Some(values.len());
        fits.then_some(Self { rows, columns, unit_cm, values })
    }

    /// The grid that a file holds.
    ///
    /// **Errors**: `None` where the bytes are not a whole file of this kind.
    pub fn read(bytes: &[u8]) -> Option<Self> {
        let mut reader = Reader::new(bytes, MARK)?;
        let (rows, columns, unit_cm) = (reader.count()?, reader.count()?, reader.number()?);
        let mut values = Vec::with_capacity(rows.checked_mul(columns)?.min(bytes.len()));
        for at in 0..rows.checked_mul(columns)? {
            let value = i32::from(suggested(&values, columns, at)).checked_add(reader.signed()?)?;
            values.push(i16::try_from(value).ok()?);
        }
        if reader.ended() { Self::new(rows, columns, unit_cm, values) } else { None }
    }

    /// The bytes of a file.
    pub fn bytes(&self) -> Vec<u8> {
        let mut writer = Writer::new(MARK);
        writer.count(self.rows);
        writer.count(self.columns);
        writer.number(self.unit_cm);
        for (at, value) in self.values.iter().enumerate() {
            writer.signed(i32::from(*value) - i32::from(suggested(&self.values, self.columns, at)));
        }
        writer.bytes()
    }

    /// The undulation at a position: positive where sea level lies above the ellipsoid.
    ///
    /// **Accuracy**: [`ERROR_MOST`] against the model's 15-minute grid for the file in `public/geo`; 0.07 m in the
    /// mean. The model itself is good to about a metre (from memory).
    ///
    /// **Source**: cubic convolution of Catmull & Rom (1974), A class of local interpolating splines, with tension ½,
    /// in both directions.
    pub fn undulation(&self, position: Position) -> Metres {
        let sum: f64 = self.shares(position).map(|(at, share)| f64::from(self.values[at]) * share).sum();
        Metres::new(sum * f64::from(self.unit_cm) / 100.0).unwrap_or(Metres::ZERO)
    }

    /// The sixteen nodes that the undulation at a position is made of, each with its share; together they are 1.
    ///
    /// **Shape**: a node is its place in the list of values.
    pub fn shares(&self, position: Position) -> impl Iterator<Item = (usize, f64)> {
        let north = (90.0 - position.latitude.degrees()) / 180.0 * (self.rows - 1) as f64;
        let east = (position.longitude.degrees() + 360.0) % 360.0 / 360.0 * self.columns as f64;
        let (row, column) = (libm::floor(north), libm::floor(east));
        let (down, across) = (weights(north - row), weights(east - column));
        (0..16).map(move |step| {
            let (step_down, step_across) = (step / 4, step % 4);
            let node = self.node(row as i64 + step_down as i64 - 1, column as i64 + step_across as i64 - 1);
            (node, down[step_down] * across[step_across])
        })
    }

    /// A node, also beyond the ends: over a pole the grid goes on half a turn away.
    fn node(&self, row: i64, column: i64) -> usize {
        let last = self.rows as i64 - 1;
        let (row, column) = match row {
            row if row < 0 => (-row, column + self.columns as i64 / 2),
            row if row > last => (2 * last - row, column + self.columns as i64 / 2),
            row => (row, column),
        };
        row.clamp(0, last) as usize * self.columns + column.rem_euclid(self.columns as i64) as usize
    }
}

/// What the neighbours to the west, north and north-west of a value suggest: a plane through them.
fn suggested(values: &[i16], columns: usize, at: usize) -> i16 {
    let (row, column) = (at / columns, at % columns);
    let value = |rows: usize, columns_back: usize| i32::from(values[at - rows * columns - columns_back]);
    let plane = match (row, column) {
        (0, 0) => 0,
        (0, _) => value(0, 1),
        (_, 0) => value(1, 0),
        _ => value(0, 1) + value(1, 0) - value(1, 1),
    };
    plane.clamp(i32::from(i16::MIN), i32::from(i16::MAX)) as i16
}

/// The shares of four neighbours in a row, the place lying this far behind the second.
fn weights(t: f64) -> [f64; 4] {
    let (t2, t3) = (t * t, t * t * t);
    [(-t3 + 2.0 * t2 - t) / 2.0, (3.0 * t3 - 5.0 * t2 + 2.0) / 2.0, (-3.0 * t3 + 4.0 * t2 + t) / 2.0, (t3 - t2) / 2.0]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(latitude: f64, longitude: f64) -> Position {
        Position::new(latitude, longitude, None).expect("a position")
    }

    fn small() -> Geoid {
        let values = (0..5 * 8).map(|at| (at * 37 % 101 - 50) as i16).collect();
        Geoid::new(5, 8, 4, values).expect("a grid")
    }

    #[test]
    fn nodes_have_their_own_value() {
        let geoid = small();
        assert_eq!(geoid.undulation(at(45.0, 90.0)).metres(), f64::from(geoid.values[8 + 2]) * 0.04);
        assert_eq!(geoid.undulation(at(0.0, -45.0)).metres(), f64::from(geoid.values[16 + 7]) * 0.04);
    }

    #[test]
    fn the_way_round_and_over_a_pole_has_no_step() {
        let geoid = small();
        let close = |one: Position, other: Position| {
            let step_m = (geoid.undulation(one).metres() - geoid.undulation(other).metres()).abs();
            assert!(step_m < 1e-6, "{step_m} m between {one:?} and {other:?}");
        };
        close(at(10.0, -1e-9), at(10.0, 1e-9));
        close(at(10.0, 180.0 - 1e-9), at(10.0, -180.0));
        // Every value of the row at the pole is that of the pole in a real grid.
        let level = Geoid::new(3, 4, 1, vec![7, 7, 7, 7, 1, 2, 3, 4, 9, 9, 9, 9]).expect("a grid");
        let step_m =
            level.undulation(at(90.0 - 1e-9, 10.0)).metres() - level.undulation(at(90.0 - 1e-9, -170.0)).metres();
        assert!(step_m.abs() < 1e-6);
        // A nanometre for the sum of the shares.
        assert!((level.undulation(at(90.0, 33.0)).metres() - 0.07).abs() < 1e-9);
        assert!((level.undulation(at(-90.0, 0.0)).metres() - 0.09).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_grid_is_refused() {
        let bytes = small().bytes();
        assert_eq!(Geoid::read(&bytes), Some(small()));
        assert_eq!(Geoid::read(&bytes[..bytes.len() - 1]), None);
        assert_eq!(Geoid::read(&[bytes.as_slice(), &[0]].concat()), None);
        assert_eq!(Geoid::read(b""), None);
        assert_eq!(Geoid::new(1, 8, 1, vec![0; 8]), None);
        assert_eq!(Geoid::new(2, 5, 1, vec![0; 10]), None);
        assert_eq!(Geoid::new(2, 4, 0, vec![0; 8]), None);
        assert_eq!(Geoid::new(2, 4, 1, vec![0; 7]), None);
    }

    proptest! {
        #[test]
        fn no_bytes_make_it_stumble(bytes: Vec<u8>, lat in -90.0..=90.0, lon in -180.0..180.0) {
            let bytes = [MARK, &bytes].concat();
            if let Some(geoid) = Geoid::read(&bytes) {
                prop_assert!(geoid.undulation(at(lat, lon)).metres().is_finite());
            }
        }

        #[test]
        fn extreme_values_go_there_and_back(values in proptest::collection::vec(any::<i16>(), 3 * 4)) {
            let geoid = Geoid::new(3, 4, 1, values).expect("a grid");
            prop_assert_eq!(Geoid::read(&geoid.bytes()), Some(geoid));
        }
    }
}
