//! The transverse Mercator projection of the ellipsoid by Krüger's series to the sixth order.
//!
//! In go radians, out come metres from the equator and the central meridian at a scale of 1, and back.
//!
//! **Source**: Karney (2011), J. Geodesy 85: 475–485; equation numbers below are his.

use crate::ellipsoid::{FLATTENING, SEMI_MAJOR_M};

/// The third flattening.
const N: f64 = FLATTENING / (2.0 - FLATTENING);
const N2: f64 = N * N;
const N3: f64 = N2 * N;
const N4: f64 = N3 * N;
const N5: f64 = N4 * N;
const N6: f64 = N5 * N;

/// Radius of the circle as long as the meridian, equation 14.
const RECTIFYING_M: f64 = SEMI_MAJOR_M / (1.0 + N) * (1.0 + N2 / 4.0 + N4 / 64.0 + N6 / 256.0);

/// Equation 35.
const ALPHA: [f64; 6] = [
    N / 2.0 - 2.0 / 3.0 * N2 + 5.0 / 16.0 * N3 + 41.0 / 180.0 * N4 - 127.0 / 288.0 * N5 + 7891.0 / 37800.0 * N6,
    13.0 / 48.0 * N2 - 3.0 / 5.0 * N3 + 557.0 / 1440.0 * N4 + 281.0 / 630.0 * N5 - 1_983_433.0 / 1_935_360.0 * N6,
    61.0 / 240.0 * N3 - 103.0 / 140.0 * N4 + 15061.0 / 26880.0 * N5 + 167_603.0 / 181_440.0 * N6,
    49561.0 / 161_280.0 * N4 - 179.0 / 168.0 * N5 + 6_601_661.0 / 7_257_600.0 * N6,
    34729.0 / 80640.0 * N5 - 3_418_889.0 / 1_995_840.0 * N6,
    212_378_941.0 / 319_334_400.0 * N6,
];

/// Equation 36.
const BETA: [f64; 6] = [
    N / 2.0 - 2.0 / 3.0 * N2 + 37.0 / 96.0 * N3 - 1.0 / 360.0 * N4 - 81.0 / 512.0 * N5 + 96199.0 / 604_800.0 * N6,
    1.0 / 48.0 * N2 + 1.0 / 15.0 * N3 - 437.0 / 1440.0 * N4 + 46.0 / 105.0 * N5 - 1_118_711.0 / 3_870_720.0 * N6,
    17.0 / 480.0 * N3 - 37.0 / 840.0 * N4 - 209.0 / 4480.0 * N5 + 5569.0 / 90720.0 * N6,
    4397.0 / 161_280.0 * N4 - 11.0 / 504.0 * N5 - 830_251.0 / 7_257_600.0 * N6,
    4583.0 / 161_280.0 * N5 - 108_847.0 / 3_991_680.0 * N6,
    20_648_693.0 / 638_668_800.0 * N6,
];

/// From the conformal to the geographic latitude; what is left out is below 1e-17 radians.
/// **Source**: Krüger (1912), Konforme Abbildung des Erdellipsoids in der Ebene, extended to the sixth order; from
/// memory, held to the way there by a test.
const DELTA: [f64; 6] = [
    2.0 * N - 2.0 / 3.0 * N2 - 2.0 * N3 + 116.0 / 45.0 * N4 + 26.0 / 45.0 * N5 - 2854.0 / 675.0 * N6,
    7.0 / 3.0 * N2 - 8.0 / 5.0 * N3 - 227.0 / 45.0 * N4 + 2704.0 / 315.0 * N5 + 2323.0 / 945.0 * N6,
    56.0 / 15.0 * N3 - 136.0 / 35.0 * N4 - 1262.0 / 105.0 * N5 + 73814.0 / 2835.0 * N6,
    4279.0 / 630.0 * N4 - 332.0 / 35.0 * N5 - 399_572.0 / 14175.0 * N6,
    4174.0 / 315.0 * N5 - 144_838.0 / 6237.0 * N6,
    601_676.0 / 22275.0 * N6,
];

/// The square of the eccentricity.
const E2: f64 = FLATTENING * (2.0 - FLATTENING);

/// Metres east and north of a latitude, and of a longitude east of the central meridian.
pub(super) fn forward(lat_rad: f64, east_rad: f64) -> (f64, f64) {
    let (sin_lat, cos_lat) = libm::sincos(lat_rad);
    let tau = conformal(sin_lat / cos_lat);
    let (sin_lon, cos_lon) = libm::sincos(east_rad);
    // Equation 10; the functions of twice the angles follow from it without the angles.
    let (tau2, cos2) = (tau * tau, cos_lon * cos_lon);
    let sinh = sin_lon / (tau2 + cos2).sqrt();
    let (xi, eta) = (libm::atan2(tau, cos_lon), area_sinh(sinh));
    let twice = Twice {
        sin: 2.0 * tau * cos_lon / (tau2 + cos2),
        cos: (cos2 - tau2) / (tau2 + cos2),
        sinh: 2.0 * sinh * secant(sinh),
        cosh: 1.0 + 2.0 * sinh * sinh,
    };
    // Equation 11.
    let (north, east) = twice.sum(&ALPHA);
    (RECTIFYING_M * (eta + east), RECTIFYING_M * (xi + north))
}

/// The latitude, and the longitude east of the central meridian, of metres east and north.
pub(super) fn inverse(east_m: f64, north_m: f64) -> (f64, f64) {
    let (xi, eta) = (north_m / RECTIFYING_M, east_m / RECTIFYING_M);
    let (sin, cos) = libm::sincos(2.0 * xi);
    let (sinh, cosh) = hyperbolic(2.0 * eta);
    // Equation 15.
    let (north, east) = Twice { sin, cos, sinh, cosh }.sum(&BETA);
    // Equation 18.
    let (sin, cos) = libm::sincos(xi - north);
    let (sinh, cosh) = hyperbolic(eta - east);
    // The conformal latitude has this sine and cosine over cosh.
    let side = (sinh * sinh + cos * cos).sqrt();
    let cosh2 = cosh * cosh;
    let twice = (2.0 * sin * side / cosh2, (side * side - sin * sin) / cosh2);
    (libm::atan2(sin, side) + sines(twice, &DELTA), libm::atan2(sinh, cos))
}

/// The sum over j of c sin 2jχ, from sine and cosine of 2χ; after Clenshaw as below.
fn sines((sin, cos): (f64, f64), coefficients: &[f64; 6]) -> f64 {
    let (mut one, mut two) = (0.0, 0.0);
    for coefficient in coefficients.iter().rev() {
        (one, two) = (coefficient + 2.0 * cos * one - two, one);
    }
    one * sin
}

/// Functions of twice the two coordinates.
struct Twice {
    sin: f64,
    cos: f64,
    sinh: f64,
    cosh: f64,
}

impl Twice {
    /// The sums over j of c sin 2jξ cosh 2jη, and of c cos 2jξ sinh 2jη: real and imaginary part of one sum of sines.
    ///
    /// **Source**: Clenshaw (1955), A note on the summation of Chebyshev series, Math. Comp. 9: 118–120, in complex
    /// numbers.
    fn sum(&self, coefficients: &[f64; 6]) -> (f64, f64) {
        let (real, imaginary) = (2.0 * self.cos * self.cosh, -2.0 * self.sin * self.sinh);
        let (mut one, mut two) = ((0.0, 0.0), (0.0, 0.0));
        for coefficient in coefficients.iter().rev() {
            let next =
                (coefficient + real * one.0 - imaginary * one.1 - two.0, real * one.1 + imaginary * one.0 - two.1);
            (one, two) = (next, one);
        }
        let (sin, cos) = (self.sin * self.cosh, self.cos * self.sinh);
        (one.0 * sin - one.1 * cos, one.0 * cos + one.1 * sin)
    }
}

/// Root of 1 + x²: the secant of an angle from its tangent, and cosh from sinh.
fn secant(tangent: f64) -> f64 {
    (1.0 + tangent * tangent).sqrt()
}

/// The number whose hyperbolic sine this is.
fn area_sinh(sinh: f64) -> f64 {
    let size = sinh.abs();
    libm::copysign(libm::log1p(size + size * size / (1.0 + secant(size))), sinh)
}

/// Hyperbolic sine and cosine; where the sine is small it is right to 1e-16, not to sixteen digits.
fn hyperbolic(value: f64) -> (f64, f64) {
    let grown = libm::exp(value);
    ((grown - 1.0 / grown) / 2.0, (grown + 1.0 / grown) / 2.0)
}

/// Tangent of the conformal latitude from that of the geographic one, equations 7 to 9.
fn conformal(tau: f64) -> f64 {
    let secant_lat = secant(tau);
    let sigma = flattened(tau / secant_lat);
    tau * secant(sigma) - sigma * secant_lat
}

/// sinh(e artanh(e sin φ)), of at most 0.0067, by the series of both: what is left out is below 1e-17 of it.
fn flattened(sin_lat: f64) -> f64 {
    let z = E2 * sin_lat * sin_lat;
    let series = [1.0 / 15.0, 1.0 / 13.0, 1.0 / 11.0, 1.0 / 9.0, 1.0 / 7.0, 1.0 / 5.0, 1.0 / 3.0, 1.0];
    let small = E2 * sin_lat * series.into_iter().fold(0.0, |sum, coefficient| sum * z + coefficient);
    let square = small * small;
    small * (1.0 + square / 6.0 * (1.0 + square / 20.0 * (1.0 + square / 42.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_latitude_comes_back_from_the_conformal_one() {
        for tenth in -900..=900 {
            let lat_rad = (f64::from(tenth) / 10.0).to_radians();
            let (sin, cos) = libm::sincos(lat_rad);
            let chi = libm::atan(conformal(sin / cos));
            let back = chi + sines(libm::sincos(2.0 * chi), &DELTA);
            // Two of the last bit: 3 nm on the ground.
            assert!((back - lat_rad).abs() < 5e-16, "{tenth} {:e}", back - lat_rad);
        }
    }

    #[test]
    fn far_from_the_meridian_the_way_back_still_arrives() {
        for (lat, east) in [(0.0, 6.0), (47.6, -6.0), (83.9, 12.0), (-80.0, 3.0), (89.999, 30.0)] {
            let (east_m, north_m) = forward(f64::to_radians(lat), f64::to_radians(east));
            let (lat_rad, east_rad) = inverse(east_m, north_m);
            // A micrometre.
            assert!((lat_rad.to_degrees() - lat).abs() < 1e-11, "{lat} {lat_rad}");
            assert!((east_rad.to_degrees() - east).abs() * libm::cos(lat_rad) < 1e-11, "{east} {east_rad}");
        }
    }
}
