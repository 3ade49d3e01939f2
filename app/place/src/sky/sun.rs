//! Where the sun stands, seen from the middle of the Earth.

use super::turn::{Tilt, arcseconds};

/// Metres in an astronomical unit.
/// **Source**: IAU 2012, resolution B2.
pub(super) const AU_M: f64 = 149_597_870_700.0;

/// A direction and a distance in the ecliptic of the date.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ecliptic {
    /// Longitude, radians, to the true equinox of the date.
    pub(super) longitude: f64,
    /// Latitude, radians.
    pub(super) latitude: f64,
    /// Distance from the middle of the Earth, metres.
    pub(super) distance_m: f64,
}

/// The apparent place of the sun at a time in Julian centuries.
///
/// **Accuracy**: 1.5″ in this century and the last; compared in `tests/reference`.
///
/// **Source**: Bretagnon & Francou (1988), Astron. Astrophys. 202: 309–315 (VSOP87D, the Earth), cut off at 0.06″;
/// turned round, with the frame of FK5 and aberration, after Meeus (1998), chapter 25.
pub(super) fn sun(t: f64, tilt: &Tilt) -> Ecliptic {
    let thousands = t / 10.0;
    let sums = [&L0[..], &L1, &L2, &L3, &L4].map(|terms| sum(terms, thousands));
    let earth = sums.iter().rev().fold(0.0, |total, sum| total * thousands + sum) / 1e8;
    let distance_au = (sum(&R0, thousands) + sum(&R1, thousands) * thousands) / 1e8;
    let seen_later = arcseconds(-20.489_8) / distance_au;
    Ecliptic {
        longitude: earth + core::f64::consts::PI + arcseconds(-0.090_33) + tilt.nutation + seen_later,
        latitude: -sum(&B0, thousands) / 1e8,
        distance_m: distance_au * AU_M,
    }
}

/// A term: amplitude in 1e-8 radians or astronomical units, phase in radians, radians in a thousand years.
type Term = (f64, f64, f64);

fn sum(terms: &[Term], thousands: f64) -> f64 {
    terms.iter().map(|(amplitude, phase, rate)| amplitude * libm::cos(phase + rate * thousands)).sum()
}

/// Longitude, t⁰.
const L0: [Term; 63] = [
    (175_347_046.0, 0.0, 0.0),
    (3_341_656.0, 4.669_26, 6_283.075_8),
    (34_894.0, 4.626_1, 12_566.151_7),
    (3_497.0, 2.744_12, 5_753.384_9),
    (3_418.0, 2.828_87, 3.523_1),
    (3_136.0, 3.627_67, 77_713.771_5),
    (2_676.0, 4.418_08, 7_860.419_4),
    (2_343.0, 6.135_16, 3_930.209_7),
    (1_324.0, 0.742_46, 11_506.769_8),
    (1_273.0, 2.037_1, 529.691),
    (1_199.0, 1.109_63, 1_577.343_5),
    (990.0, 5.232_68, 5_884.926_8),
    (902.0, 2.045_05, 26.298_3),
    (857.0, 3.508_49, 398.149),
    (780.0, 1.178_83, 5_223.693_9),
    (753.0, 2.533_39, 5_507.553_2),
    (505.0, 4.582_93, 18_849.227_5),
    (492.0, 4.205_07, 775.522_6),
    (357.0, 2.919_54, 0.067_3),
    (317.0, 5.849_02, 11_790.629_1),
    (284.0, 1.898_69, 796.298),
    (271.0, 0.314_89, 10_977.078_8),
    (243.0, 0.344_81, 5_486.777_8),
    (206.0, 4.806_47, 2_544.314_4),
    (205.0, 1.869_48, 5_573.142_8),
    (202.0, 2.457_68, 6_069.776_8),
    (156.0, 0.833_06, 213.299_1),
    (132.0, 3.411_18, 2_942.463_4),
    (126.0, 1.083_03, 20.775_4),
    (115.0, 0.645_45, 0.980_3),
    (103.0, 0.636, 4_694.003),
    (102.0, 0.975_69, 15_720.838_8),
    (102.0, 4.266_8, 7.113_5),
    (99.0, 6.209_93, 2_146.165_4),
    (98.0, 0.681_01, 155.420_4),
    (86.0, 5.983_23, 161_000.685_7),
    (85.0, 1.298_71, 6_275.962_3),
    (85.0, 3.670_8, 71_430.695_6),
    (80.0, 1.807_91, 17_260.154_7),
    (79.0, 3.036_98, 12_036.460_7),
    (75.0, 1.755_09, 5_088.628_8),
    (74.0, 3.503_19, 3_154.687_1),
    (74.0, 4.679_27, 801.820_9),
    (70.0, 0.832_98, 9_437.762_9),
    (62.0, 3.977_64, 8_827.390_3),
    (61.0, 1.818_4, 7_084.896_8),
    (57.0, 2.784_3, 6_286.599),
    (56.0, 4.386_95, 14_143.495_2),
    (56.0, 3.470_06, 6_279.552_7),
    (52.0, 0.189_15, 12_139.553_5),
    (52.0, 1.332_83, 1_748.016_4),
    (51.0, 0.283_07, 5_856.477_7),
    (49.0, 0.487_35, 1_194.447),
    (41.0, 5.368_17, 8_429.241_3),
    (41.0, 2.398_51, 19_651.048_5),
    (39.0, 6.168_33, 10_447.387_8),
    (37.0, 6.041_34, 10_213.285_5),
    (37.0, 2.569_55, 1_059.381_9),
    (36.0, 1.708_76, 2_352.866_2),
    (36.0, 1.775_97, 6_812.766_8),
    (33.0, 0.593_09, 17_789.845_6),
    (30.0, 0.442_94, 83_996.847_3),
    (30.0, 2.739_75, 1_349.867_4),
];

/// Longitude, t¹.
const L1: [Term; 13] = [
    (628_331_966_747.0, 0.0, 0.0),
    (206_059.0, 2.678_23, 6_283.075_8),
    (4_303.0, 2.635_13, 12_566.151_7),
    (425.0, 1.590_47, 3.523_1),
    (119.0, 5.795_57, 26.298_3),
    (109.0, 2.966_18, 1_577.343_5),
    (93.0, 2.592_13, 18_849.227_5),
    (72.0, 1.138_46, 529.691),
    (68.0, 1.874_72, 398.149),
    (67.0, 4.409_18, 5_507.553_2),
    (59.0, 2.887_97, 5_223.693_9),
    (56.0, 2.174_72, 155.420_4),
    (45.0, 0.398_03, 796.298),
];

/// Longitude, t².
const L2: [Term; 3] = [(52_919.0, 0.0, 0.0), (8_720.0, 1.072_1, 6_283.075_8), (309.0, 0.867_29, 12_566.151_7)];

/// Longitude, t³.
const L3: [Term; 2] = [(289.0, 5.843_84, 6_283.075_8), (35.0, 0.0, 0.0)];

/// Longitude, t⁴.
const L4: [Term; 1] = [(-114.0, 0.0, 0.0)];

/// Latitude.
const B0: [Term; 4] = [
    (280.0, 3.198_7, 84_334.661_6),
    (102.0, 5.422_49, 5_507.553_2),
    (80.0, 3.880_13, 5_223.693_9),
    (44.0, 3.704_45, 2_352.866_2),
];

/// Distance.
const R0: [Term; 7] = [
    (100_013_989.0, 0.0, 0.0),
    (1_670_700.0, 3.098_46, 6_283.075_8),
    (13_956.0, 3.055_25, 12_566.151_7),
    (3_084.0, 5.198_47, 77_713.771_5),
    (1_628.0, 1.173_88, 5_753.384_9),
    (1_576.0, 2.846_85, 7_860.419_4),
    (925.0, 5.452_92, 11_506.769_8),
];

/// Distance, t¹.
const R1: [Term; 2] = [(103_019.0, 1.107_49, 6_283.075_8), (1_721.0, 1.064_42, 12_566.151_7)];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sky::turn::{arguments, tilt};

    /// Source: Meeus (1998), example 25.b, the same day by the full theory: longitude 199°54′21.82″, latitude +0.72″,
    /// distance 0.99760775 AU, from memory. Tolerance: 1″, and the 2e-5 AU that the cut distance is good for.
    #[test]
    fn the_published_example_is_met() {
        let t = -0.072_183_436;
        let sun = sun(t, &tilt(t, &arguments(t)));
        let longitude = sun.longitude.to_degrees().rem_euclid(360.0);
        let expected = 199.0 + 54.0 / 60.0 + 21.82 / 3600.0;
        assert!((longitude - expected).abs() < 1.0 / 3600.0, "{longitude} {expected}");
        assert!((sun.latitude - arcseconds(0.72)).abs() < arcseconds(1.0), "{}", sun.latitude);
        assert!((sun.distance_m / AU_M - 0.997_607_75).abs() < 2e-5, "{}", sun.distance_m / AU_M);
    }
}
