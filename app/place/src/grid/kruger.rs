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

fn eccentricity() -> f64 {
    libm::sqrt(FLATTENING * (2.0 - FLATTENING))
}

/// Metres east and north of a latitude, and of a longitude east of the central meridian.
pub(super) fn forward(lat_rad: f64, east_rad: f64) -> (f64, f64) {
    let tau_conformal = conformal(libm::tan(lat_rad));
    let (sin_lon, cos_lon) = libm::sincos(east_rad);
    // Equation 10.
    let xi = libm::atan2(tau_conformal, cos_lon);
    let eta = libm::asinh(sin_lon / libm::hypot(tau_conformal, cos_lon));
    // Equation 11.
    let (mut north, mut east) = (xi, eta);
    for (j, alpha) in (1_u8..).zip(ALPHA) {
        let twice = 2.0 * f64::from(j);
        let (sin, cos) = libm::sincos(twice * xi);
        north += alpha * sin * libm::cosh(twice * eta);
        east += alpha * cos * libm::sinh(twice * eta);
    }
    (RECTIFYING_M * east, RECTIFYING_M * north)
}

/// The latitude, and the longitude east of the central meridian, of metres east and north.
pub(super) fn inverse(east_m: f64, north_m: f64) -> (f64, f64) {
    let (xi, eta) = (north_m / RECTIFYING_M, east_m / RECTIFYING_M);
    // Equation 15.
    let (mut xi_conformal, mut eta_conformal) = (xi, eta);
    for (j, beta) in (1_u8..).zip(BETA) {
        let twice = 2.0 * f64::from(j);
        let (sin, cos) = libm::sincos(twice * xi);
        xi_conformal -= beta * sin * libm::cosh(twice * eta);
        eta_conformal -= beta * cos * libm::sinh(twice * eta);
    }
    // Equation 18.
    let (sin, cos) = libm::sincos(xi_conformal);
    let sinh = libm::sinh(eta_conformal);
    let tau_conformal = sin / libm::hypot(sinh, cos);
    (libm::atan(geographic(tau_conformal)), libm::atan2(sinh, cos))
}

/// Tangent of the conformal latitude from that of the geographic one, equations 7 to 9.
fn conformal(tau: f64) -> f64 {
    let e = eccentricity();
    let secant = libm::hypot(1.0, tau);
    let sigma = libm::sinh(e * libm::atanh(e * tau / secant));
    tau * libm::hypot(1.0, sigma) - sigma * secant
}

/// The way back by Newton's method, equations 19 to 21.
fn geographic(tau_conformal: f64) -> f64 {
    let e2 = FLATTENING * (2.0 - FLATTENING);
    let mut tau = tau_conformal;
    // Three rounds are enough for full precision; more change nothing.
    for _ in 0..4 {
        let near = conformal(tau);
        let slope = (1.0 + (1.0 - e2) * tau * tau) / ((1.0 - e2) * libm::hypot(1.0, tau));
        tau += (tau_conformal - near) / libm::hypot(1.0, near) * slope;
    }
    tau
}
