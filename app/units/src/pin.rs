//! Insect pins by the numbers of the trade.

use crate::Millimetres;

/// The size of an insect pin.
///
/// **Source**: manufacturers' usual series in steps of 0.05 mm, common practice; No. 2 is given as 0.46 mm (Steyskal,
/// Murphy & Hoover 1986).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PinSize(u8);

impl PinSize {
    /// The names of all sizes, from thin to thick.
    pub const NAMES: [&str; 10] = ["000", "00", "0", "1", "2", "3", "4", "5", "6", "7"];

    /// All sizes, from thin to thick.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..10).map(Self)
    }

    /// The size of this name: `000` to `7`.
    pub fn named(name: &str) -> Option<Self> {
        Self::all().find(|size| size.name() == name)
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        Self::NAMES[usize::from(self.0)]
    }

    /// How thick it is.
    pub fn diameter(self) -> Millimetres {
        Millimetres::thousandths(250 + 50 * i32::from(self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// **Source**: `tests/reference/pins.csv`, rows of the metric series.
    #[test]
    fn diameters_follow_the_table() {
        let table = include_str!("../../../tests/reference/pins.csv");
        let series: Vec<(&str, f64)> = table
            .lines()
            .filter(|row| row.contains("steps of 0.05 mm") && !row.starts_with("minuten"))
            .map(|row| row.split(','))
            .map(|mut row| (row.next().unwrap_or_default(), row.next().and_then(|mm| mm.parse().ok()).unwrap_or(0.0)))
            .collect();
        assert_eq!(series.len(), 10);
        for (size, (name, diameter)) in PinSize::all().zip(series) {
            assert_eq!(size.name(), name);
            assert!((size.diameter().millimetres() - diameter).abs() < 1e-9);
            assert_eq!(PinSize::named(name), Some(size));
        }
        assert_eq!(PinSize::named("8"), None);
    }
}
