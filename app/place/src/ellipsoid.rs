//! The figure of the Earth, WGS84, and lengths of a degree on it.

use units::Latitude;

/// Half the greater axis, metres.
/// **Source**: NIMA TR8350.2 (2000), table 3.1.
pub(crate) const SEMI_MAJOR_M: f64 = 6_378_137.0;
/// Flattening.
/// **Source**: NIMA TR8350.2 (2000), table 3.1.
pub(crate) const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// Metres in one degree along the meridian and along the parallel.
///
/// **Source**: radii of curvature in the meridian M and the prime vertical N, e.g. Snyder (1987), Map Projections: A
/// Working Manual, equations 4-19 and 4-20.
pub(crate) fn metres_per_degree(latitude: Latitude) -> (f64, f64) {
    let e2 = FLATTENING * (2.0 - FLATTENING);
    let (sin, cos) = libm::sincos(latitude.to_radians());
    let w2 = 1.0 - e2 * sin * sin;
    let prime_vertical_m = SEMI_MAJOR_M / w2.sqrt();
    let meridian_m = prime_vertical_m * (1.0 - e2) / w2;
    (meridian_m.to_radians(), (prime_vertical_m * cos.max(0.0)).to_radians())
}
