//! Coasts and borders of countries at small scale, for a drawing.
//!
//! In go the bytes of a file and a box, out come the lines inside it in degrees. Loading the bytes and drawing are left to
//! others; finer lines, those of regions too, come from [`crate::country`].
//!
//! A file holds the mark `OUT1` and the lines ([`crate::arcs`]).

use crate::arcs::{Arcs, Bounds};
use crate::country::Kind;
use crate::stream::{Reader, Writer};
use geo_types::LineString;

const MARK: &[u8] = b"OUT1";

/// Coasts and borders.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline {
    arcs: Arcs,
}

impl Outline {
    /// An outline from lines between countries, or a country and the sea.
    pub fn new(arcs: Arcs) -> Self {
        Self { arcs }
    }

    /// The outline that a file holds.
    ///
    /// **Errors**: `None` where the bytes are not a whole file of this kind.
    pub fn read(bytes: &[u8]) -> Option<Self> {
        let mut reader = Reader::new(bytes, MARK)?;
        let arcs = Arcs::read(&mut reader)?;
        reader.ended().then_some(Self { arcs })
    }

    /// The bytes of a file.
    pub fn bytes(&self) -> Vec<u8> {
        let mut writer = Writer::new(MARK);
        self.arcs.write(&mut writer);
        writer.bytes()
    }

    /// The pieces of coast and border inside a box: degrees east (x) and north (y).
    ///
    /// **Accuracy**: for the file in `public/geo`, lines of a map of 1:50,000,000, moved by no more than 3.6 km.
    pub fn lines(&self, bounds: Bounds) -> Vec<(Kind, LineString<f64>)> {
        let lines = self.arcs.clipped(bounds);
        lines
            .flat_map(|(arc, pieces)| {
                let kind = if arc.other.is_some() { Kind::Country } else { Kind::Coast };
                pieces.into_iter().map(move |piece| (kind, piece))
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::arcs::Arc;
    use proptest::prelude::*;
    use units::Degrees;

    #[test]
    fn coasts_and_borders_are_told_apart() {
        let arc = |other, points: &[[i32; 2]]| Arc { one: 0, other, points: points.to_vec() };
        let arcs = Arcs::new(10, vec![arc(None, &[[0, 0], [9, 9]]), arc(Some(1), &[[9, 9], [20, 0]])]).expect("lines");
        let outline = Outline::new(arcs);
        let side = |degrees| Degrees::new(degrees).expect("finite");
        let lines = outline.lines(Bounds::new(side(0.0), side(0.0), side(1.0), side(1.0)).expect("a box"));
        assert_eq!(lines.iter().map(|(kind, _)| *kind).collect::<Vec<_>>(), [Kind::Coast, Kind::Country]);
        assert_eq!(Outline::read(&outline.bytes()), Some(outline));
    }

    proptest! {
        #[test]
        fn no_bytes_make_it_stumble(bytes: Vec<u8>) {
            let _ = Outline::read(&[MARK, &bytes].concat());
        }
    }
}
