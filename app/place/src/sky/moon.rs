//! Where the moon stands, seen from the middle of the Earth, and how much of it is lit.

use super::sun::Ecliptic;
use super::turn::{Arguments, Tilt, angle};

/// The moon's radius, metres.
/// **Source**: IAU 2015 working group, mean radius, from memory.
pub(super) const RADIUS_M: f64 = 1_737_400.0;

/// The apparent place of the moon at a time in Julian centuries.
///
/// **Accuracy**: 15″ in longitude, 5″ in latitude and 30 km in this century and the last.
///
/// **Source**: Meeus (1998), chapter 47, all terms (from Chapront-Touzé & Chapront, ELP-2000/82).
pub(super) fn moon(t: f64, arguments: &Arguments, tilt: &Tilt) -> Ecliptic {
    // The eccentricity of the Earth's orbit shrinks, and with it what hangs on the sun's anomaly.
    let eccentricity = 1.0 + t * (-0.002_516 - 0.000_007_4 * t);
    let shrunk = |multiples: &[i8; 4]| match multiples[1] {
        0 => 1.0,
        1 | -1 => eccentricity,
        _ => eccentricity * eccentricity,
    };
    let values = [arguments.elongation, arguments.sun, arguments.moon, arguments.latitude];
    let argument = |multiples: &[i8; 4]| -> f64 {
        multiples.iter().zip(values).map(|(multiple, value)| f64::from(*multiple) * value).sum()
    };
    let (mut longitude, mut latitude, mut distance) = (0.0, 0.0, 0.0);
    for (multiples, sine, cosine) in &LONGITUDE_DISTANCE {
        let (sin, cos) = libm::sincos(argument(multiples));
        longitude += shrunk(multiples) * sine * sin;
        distance += shrunk(multiples) * cosine * cos;
    }
    for (multiples, sine) in &LATITUDE {
        latitude += shrunk(multiples) * sine * libm::sin(argument(multiples));
    }
    let mean = angle(t, &[218.316_447_7, 481_267.881_234_21, -0.001_578_6, 1.0 / 538_841.0, -1.0 / 65_194_000.0]);
    let (more_longitude, more_latitude) = planets(t, mean, arguments);
    Ecliptic {
        longitude: mean + ((longitude + more_longitude) / 1e6).to_radians() + tilt.nutation,
        latitude: ((latitude + more_latitude) / 1e6).to_radians(),
        distance_m: 385_000_560.0 + distance,
    }
}

/// What Venus, Jupiter and the flattening of the Earth add to longitude and latitude, millionths of a degree.
fn planets(t: f64, mean: f64, arguments: &Arguments) -> (f64, f64) {
    let venus = angle(t, &[119.75, 131.849]);
    let jupiter = angle(t, &[53.09, 479_264.29]);
    let third = angle(t, &[313.45, 481_266.484]);
    let Arguments { latitude: node_distance, moon, .. } = arguments;
    let longitude = 3_958.0 * libm::sin(venus) + 1_962.0 * libm::sin(mean - node_distance) + 318.0 * libm::sin(jupiter);
    let latitude = -2_235.0 * libm::sin(mean)
        + 382.0 * libm::sin(third)
        + 175.0 * (libm::sin(venus - node_distance) + libm::sin(venus + node_distance))
        + 127.0 * libm::sin(mean - moon)
        - 115.0 * libm::sin(mean + moon);
    (longitude, latitude)
}

/// The share of the moon's disc that is lit, from 0 to 1, seen from the middle of the Earth.
///
/// **Source**: Meeus (1998), equations 48.1 to 48.3.
pub(super) fn lit(moon: &Ecliptic, sun: &Ecliptic) -> f64 {
    let turned = moon.longitude - sun.longitude;
    let cos_apart = (libm::cos(moon.latitude) * libm::cos(turned)).clamp(-1.0, 1.0);
    let sin_apart = (1.0 - cos_apart * cos_apart).sqrt();
    let phase = libm::atan2(sun.distance_m * sin_apart, moon.distance_m - sun.distance_m * cos_apart);
    f64::midpoint(1.0, libm::cos(phase))
}

/// Multiples of D, M, M′ and F, sine in longitude (millionths of a degree) and cosine in distance (metres).
/// **Source**: Meeus (1998), table 47.A.
const LONGITUDE_DISTANCE: [([i8; 4], f64, f64); 60] = [
    ([0, 0, 1, 0], 6_288_774.0, -20_905_355.0),
    ([2, 0, -1, 0], 1_274_027.0, -3_699_111.0),
    ([2, 0, 0, 0], 658_314.0, -2_955_968.0),
    ([0, 0, 2, 0], 213_618.0, -569_925.0),
    ([0, 1, 0, 0], -185_116.0, 48_888.0),
    ([0, 0, 0, 2], -114_332.0, -3_149.0),
    ([2, 0, -2, 0], 58_793.0, 246_158.0),
    ([2, -1, -1, 0], 57_066.0, -152_138.0),
    ([2, 0, 1, 0], 53_322.0, -170_733.0),
    ([2, -1, 0, 0], 45_758.0, -204_586.0),
    ([0, 1, -1, 0], -40_923.0, -129_620.0),
    ([1, 0, 0, 0], -34_720.0, 108_743.0),
    ([0, 1, 1, 0], -30_383.0, 104_755.0),
    ([2, 0, 0, -2], 15_327.0, 10_321.0),
    ([0, 0, 1, 2], -12_528.0, 0.0),
    ([0, 0, 1, -2], 10_980.0, 79_661.0),
    ([4, 0, -1, 0], 10_675.0, -34_782.0),
    ([0, 0, 3, 0], 10_034.0, -23_210.0),
    ([4, 0, -2, 0], 8_548.0, -21_636.0),
    ([2, 1, -1, 0], -7_888.0, 24_208.0),
    ([2, 1, 0, 0], -6_766.0, 30_824.0),
    ([1, 0, -1, 0], -5_163.0, -8_379.0),
    ([1, 1, 0, 0], 4_987.0, -16_675.0),
    ([2, -1, 1, 0], 4_036.0, -12_831.0),
    ([2, 0, 2, 0], 3_994.0, -10_445.0),
    ([4, 0, 0, 0], 3_861.0, -11_650.0),
    ([2, 0, -3, 0], 3_665.0, 14_403.0),
    ([0, 1, -2, 0], -2_689.0, -7_003.0),
    ([2, 0, -1, 2], -2_602.0, 0.0),
    ([2, -1, -2, 0], 2_390.0, 10_056.0),
    ([1, 0, 1, 0], -2_348.0, 6_322.0),
    ([2, -2, 0, 0], 2_236.0, -9_884.0),
    ([0, 1, 2, 0], -2_120.0, 5_751.0),
    ([0, 2, 0, 0], -2_069.0, 0.0),
    ([2, -2, -1, 0], 2_048.0, -4_950.0),
    ([2, 0, 1, -2], -1_773.0, 4_130.0),
    ([2, 0, 0, 2], -1_595.0, 0.0),
    ([4, -1, -1, 0], 1_215.0, -3_958.0),
    ([0, 0, 2, 2], -1_110.0, 0.0),
    ([3, 0, -1, 0], -892.0, 3_258.0),
    ([2, 1, 1, 0], -810.0, 2_616.0),
    ([4, -1, -2, 0], 759.0, -1_897.0),
    ([0, 2, -1, 0], -713.0, -2_117.0),
    ([2, 2, -1, 0], -700.0, 2_354.0),
    ([2, 1, -2, 0], 691.0, 0.0),
    ([2, -1, 0, -2], 596.0, 0.0),
    ([4, 0, 1, 0], 549.0, -1_423.0),
    ([0, 0, 4, 0], 537.0, -1_117.0),
    ([4, -1, 0, 0], 520.0, -1_571.0),
    ([1, 0, -2, 0], -487.0, -1_739.0),
    ([2, 1, 0, -2], -399.0, 0.0),
    ([0, 0, 2, -2], -381.0, -4_421.0),
    ([1, 1, 1, 0], 351.0, 0.0),
    ([3, 0, -2, 0], -340.0, 0.0),
    ([4, 0, -3, 0], 330.0, 0.0),
    ([2, -1, 2, 0], 327.0, 0.0),
    ([0, 2, 1, 0], -323.0, 1_165.0),
    ([1, 1, -1, 0], 299.0, 0.0),
    ([2, 0, 3, 0], 294.0, 0.0),
    ([2, 0, -1, -2], 0.0, 8_752.0),
];

/// Multiples of D, M, M′ and F, sine in latitude (millionths of a degree).
/// **Source**: Meeus (1998), table 47.B.
const LATITUDE: [([i8; 4], f64); 60] = [
    ([0, 0, 0, 1], 5_128_122.0),
    ([0, 0, 1, 1], 280_602.0),
    ([0, 0, 1, -1], 277_693.0),
    ([2, 0, 0, -1], 173_237.0),
    ([2, 0, -1, 1], 55_413.0),
    ([2, 0, -1, -1], 46_271.0),
    ([2, 0, 0, 1], 32_573.0),
    ([0, 0, 2, 1], 17_198.0),
    ([2, 0, 1, -1], 9_266.0),
    ([0, 0, 2, -1], 8_822.0),
    ([2, -1, 0, -1], 8_216.0),
    ([2, 0, -2, -1], 4_324.0),
    ([2, 0, 1, 1], 4_200.0),
    ([2, 1, 0, -1], -3_359.0),
    ([2, -1, -1, 1], 2_463.0),
    ([2, -1, 0, 1], 2_211.0),
    ([2, -1, -1, -1], 2_065.0),
    ([0, 1, -1, -1], -1_870.0),
    ([4, 0, -1, -1], 1_828.0),
    ([0, 1, 0, 1], -1_794.0),
    ([0, 0, 0, 3], -1_749.0),
    ([0, 1, -1, 1], -1_565.0),
    ([1, 0, 0, 1], -1_491.0),
    ([0, 1, 1, 1], -1_475.0),
    ([0, 1, 1, -1], -1_410.0),
    ([0, 1, 0, -1], -1_344.0),
    ([1, 0, 0, -1], -1_335.0),
    ([0, 0, 3, 1], 1_107.0),
    ([4, 0, 0, -1], 1_021.0),
    ([4, 0, -1, 1], 833.0),
    ([0, 0, 1, -3], 777.0),
    ([4, 0, -2, 1], 671.0),
    ([2, 0, 0, -3], 607.0),
    ([2, 0, 2, -1], 596.0),
    ([2, -1, 1, -1], 491.0),
    ([2, 0, -2, 1], -451.0),
    ([0, 0, 3, -1], 439.0),
    ([2, 0, 2, 1], 422.0),
    ([2, 0, -3, -1], 421.0),
    ([2, 1, -1, 1], -366.0),
    ([2, 1, 0, 1], -351.0),
    ([4, 0, 0, 1], 331.0),
    ([2, -1, 1, 1], 315.0),
    ([2, -2, 0, -1], 302.0),
    ([0, 0, 1, 3], -283.0),
    ([2, 1, 1, -1], -229.0),
    ([1, 1, 0, -1], 223.0),
    ([1, 1, 0, 1], 223.0),
    ([0, 1, -2, -1], -220.0),
    ([2, 1, -1, -1], -220.0),
    ([1, 0, 1, 1], -185.0),
    ([2, -1, -2, -1], 181.0),
    ([0, 1, 2, 1], -177.0),
    ([4, 0, -2, -1], 176.0),
    ([4, -1, -1, -1], 166.0),
    ([1, 0, 1, -1], -164.0),
    ([4, 0, 1, -1], 132.0),
    ([1, 0, -1, -1], -119.0),
    ([4, -1, 0, -1], 115.0),
    ([2, -2, 0, 1], 107.0),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sky::sun::sun;
    use crate::sky::turn::{arguments, tilt};

    /// Source: Meeus (1998), examples 47.a and 48.a (`sun_moon_published_examples.csv`, M15 to M17, M20 and M21).
    /// Tolerance: one unit of the last digit printed, 3e-6 degrees for a shorter nutation.
    #[test]
    fn the_published_example_is_met() {
        let t = -0.077_221_081_451;
        let arguments = arguments(t);
        let tilt = tilt(t, &arguments);
        let moon = moon(t, &arguments, &tilt);
        let longitude = moon.longitude.to_degrees().rem_euclid(360.0);
        assert!((longitude - 133.167_265).abs() < 5e-6, "{longitude}");
        assert!((moon.latitude.to_degrees() - -3.229_126).abs() < 2e-6, "{}", moon.latitude.to_degrees());
        assert!((moon.distance_m - 368_409_700.0).abs() < 100.0, "{}", moon.distance_m);
        let fraction = lit(&moon, &sun(t, &tilt));
        assert!((fraction - 0.678_6).abs() < 1e-4, "{fraction}");
    }
}
