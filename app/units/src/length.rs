//! Lengths on the ground and on paper.

use core::ops::{Add, Neg, Sub};

/// Millimetres in an inch.
/// **Source**: international yard and pound agreement, 1959.
const MILLIMETRES_PER_INCH: f64 = 25.4;
/// Points in an inch.
/// **Source**: ISO 32000-1:2008, 8.3.2.3: one unit of default user space is 1/72 inch.
const POINTS_PER_INCH: f64 = 72.0;

/// Keeps a sum of two finite numbers finite.
fn saturated(value: f64) -> f64 {
    value.clamp(f64::MIN, f64::MAX)
}

macro_rules! length {
    ($name:ident, $getter:ident, $doc:literal) => {
        #[doc = $doc]
        ///
        /// **Shape**: any finite number, negative for downwards or leftwards. Sums stop at the largest finite number.
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// No length at all.
            pub const ZERO: Self = Self(0.0);

            /// A length in this unit.
            ///
            /// **Errors**: `None` for NaN and the infinities.
            pub const fn new(value: f64) -> Option<Self> {
                if value.is_finite() { Some(Self(value)) } else { None }
            }

            /// A whole number of this unit.
            pub const fn whole(value: i32) -> Self {
                Self(value as f64)
            }

            /// A whole number of thousandths of this unit, for constants such as 0.125.
            pub const fn thousandths(value: i32) -> Self {
                Self(value as f64 / 1000.0)
            }

            /// The bare number, for use inside a formula.
            pub const fn $getter(self) -> f64 {
                self.0
            }

            /// This many times the length.
            pub fn times(self, count: u32) -> Self {
                Self(saturated(self.0 * f64::from(count)))
            }

            /// Half of the length.
            pub fn half(self) -> Self {
                Self(self.0 / 2.0)
            }

            /// The greater of the two.
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of the two.
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(saturated(self.0 + other.0))
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(saturated(self.0 - other.0))
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
    };
}

length!(Metres, metres, "A length on the ground, in metres.");
length!(Millimetres, millimetres, "A length on paper, in millimetres.");
length!(Points, points, "A length on paper, in points of 1/72 inch.");

impl Millimetres {
    /// The same length in points.
    pub fn to_points(self) -> Points {
        Points(saturated(self.0 / MILLIMETRES_PER_INCH * POINTS_PER_INCH))
    }
}

impl Points {
    /// The same length in millimetres.
    pub fn to_millimetres(self) -> Millimetres {
        Millimetres(self.0 / POINTS_PER_INCH * MILLIMETRES_PER_INCH)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nan_and_infinities_cannot_be_constructed() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Metres::new(bad), None);
            assert_eq!(Millimetres::new(bad), None);
            assert_eq!(Points::new(bad), None);
        }
    }

    #[test]
    fn arithmetic_stays_finite_at_the_ends() {
        let most = Metres::new(f64::MAX).expect("the largest number is finite");
        assert_eq!(most + most, most);
        assert_eq!(-most - most, -most);
        assert_eq!(most.times(3), most);
        let most = Millimetres::new(f64::MAX).expect("the largest number is finite");
        assert!(most.to_points().points().is_finite());
    }

    #[test]
    fn an_a4_sheet_is_as_wide_in_points_as_it_should_be() {
        // 210 / 25.4 × 72, by hand; tolerance: far below a dot of any printer.
        let width = Millimetres::whole(210).to_points();
        assert!((width.points() - 595.275_590_551).abs() < 1e-6);
        assert!((width.to_millimetres().millimetres() - 210.0).abs() < 1e-9);
    }

    #[test]
    fn thousandths_are_thousandths() {
        assert_eq!(Millimetres::thousandths(254), Millimetres::new(0.254).expect("finite"));
    }
}
