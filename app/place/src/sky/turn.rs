//! How the Earth turns and tilts: the time scales, the obliquity, the nutation and the sidereal time.

/// Milliseconds from 1970-01-01T00:00Z to the noon from which the series count.
const J2000_MS: f64 = 946_728_000_000.0;
const DAY_MS: f64 = 86_400_000.0;

/// Terrestrial less universal time in seconds, by year.
/// **Source**: Morrison & Stephenson (2004), J. Hist. Astron. 35: 327–336, and the Astronomical Almanac for later
/// years, rounded to seconds, from memory.
const DELTA_T_S: [(f64, f64); 16] = [
    (1600.0, 120.0),
    (1650.0, 50.0),
    (1700.0, 9.0),
    (1750.0, 13.0),
    (1800.0, 14.0),
    (1850.0, 7.0),
    (1870.0, 1.0),
    (1900.0, -3.0),
    (1910.0, 10.0),
    (1920.0, 21.0),
    (1940.0, 24.0),
    (1960.0, 33.0),
    (1980.0, 51.0),
    (2000.0, 64.0),
    (2017.0, 69.0),
    (2030.0, 70.0),
];

/// Days since noon of 2000-01-01 by universal time, for which UTC is taken: they differ by less than 0.9 s.
pub(super) fn days_universal(unix_ms: i64) -> f64 {
    (unix_ms as f64 - J2000_MS) / DAY_MS
}

/// Julian centuries of terrestrial time since noon of 2000-01-01, from days of universal time.
pub(super) fn centuries(days: f64) -> f64 {
    (days + delta_t_s(2000.0 + days / 365.25) / 86_400.0) / 36_525.0
}

/// Terrestrial less universal time.
///
/// **Accuracy**: within 2 s from 1900 to now, within 10 s from 1700; a guess for the future. A second moves the moon
/// by half a second of arc and the sun by a twenty-fourth of one.
///
/// **Source**: between the years of the table a straight line; outside it the parabola of Morrison & Stephenson (2004),
/// −20 + 32 u² with u in centuries from 1820, moved so that it joins the table.
fn delta_t_s(year: f64) -> f64 {
    let parabola = |year: f64| {
        let u = (year - 1820.0) / 100.0;
        32.0 * u * u - 20.0
    };
    let ends = [DELTA_T_S[0], DELTA_T_S[DELTA_T_S.len() - 1]];
    if year <= ends[0].0 {
        return parabola(year) - parabola(ends[0].0) + ends[0].1;
    }
    let line = DELTA_T_S.windows(2).find(|pair| year < pair[1].0).map(|pair| {
        let share = (year - pair[0].0) / (pair[1].0 - pair[0].0);
        pair[0].1 + share * (pair[1].1 - pair[0].1)
    });
    line.unwrap_or_else(|| parabola(year) - parabola(ends[1].0) + ends[1].1)
}

/// The five arguments on which moon and nutation rest, radians.
pub(super) struct Arguments {
    /// D: the moon's mean elongation from the sun.
    pub(super) elongation: f64,
    /// M: the sun's mean anomaly.
    pub(super) sun: f64,
    /// M′: the moon's mean anomaly.
    pub(super) moon: f64,
    /// F: the moon's mean distance from its ascending node.
    pub(super) latitude: f64,
    /// Ω: the longitude of that node.
    pub(super) node: f64,
}

/// A polynomial in degrees, as radians of one turn.
pub(super) fn angle(t: f64, coefficients: &[f64]) -> f64 {
    let degrees = coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * t + coefficient);
    (degrees % 360.0).to_radians()
}

/// The arguments at a time in Julian centuries.
///
/// **Source**: Meeus (1998), Astronomical Algorithms, 2nd ed., equations 47.2 to 47.5 and 47.7.
pub(super) fn arguments(t: f64) -> Arguments {
    Arguments {
        elongation: angle(t, &[297.850_192_1, 445_267.111_403_4, -0.001_881_9, 1.0 / 545_868.0, -1.0 / 113_065_000.0]),
        sun: angle(t, &[357.529_109_2, 35_999.050_290_9, -0.000_153_6, 1.0 / 24_490_000.0]),
        moon: angle(t, &[134.963_396_4, 477_198.867_505_5, 0.008_741_4, 1.0 / 69_699.0, -1.0 / 14_712_000.0]),
        latitude: angle(t, &[93.272_095_0, 483_202.017_523_3, -0.003_653_9, -1.0 / 3_526_000.0, 1.0 / 863_310_000.0]),
        node: angle(t, &[125.044_547_9, -1_934.136_289_1, 0.002_075_4, 1.0 / 467_441.0, -1.0 / 60_616_000.0]),
    }
}

/// How the Earth stands in space.
pub(super) struct Tilt {
    /// Nutation in longitude, radians.
    pub(super) nutation: f64,
    /// True obliquity of the ecliptic, radians.
    pub(super) obliquity: f64,
}

/// Terms of the nutation: multiples of D, M, M′, F and Ω, sine in longitude and cosine in obliquity, 0.0001″.
/// **Source**: Meeus (1998), table 22.A (IAU 1980), those above 0.01″; their changes with time are below 0.02″ a
/// century and left out.
const NUTATION: [([i8; 5], f64, f64); 13] = [
    ([0, 0, 0, 0, 1], -171_996.0, 92_025.0),
    ([-2, 0, 0, 2, 2], -13_187.0, 5_736.0),
    ([0, 0, 0, 2, 2], -2_274.0, 977.0),
    ([0, 0, 0, 0, 2], 2_062.0, -895.0),
    ([0, 1, 0, 0, 0], 1_426.0, 54.0),
    ([0, 0, 1, 0, 0], 712.0, -7.0),
    ([-2, 1, 0, 2, 2], -517.0, 224.0),
    ([0, 0, 0, 2, 1], -386.0, 200.0),
    ([0, 0, 1, 2, 2], -301.0, 129.0),
    ([-2, -1, 0, 2, 2], 217.0, -95.0),
    ([-2, 0, 1, 0, 0], -158.0, 0.0),
    ([-2, 0, 0, 2, 1], 129.0, -70.0),
    ([0, 0, -1, 2, 2], 123.0, -53.0),
];

/// The tilt at a time in Julian centuries.
///
/// **Accuracy**: 0.03″ in this century.
///
/// **Source**: Meeus (1998), equation 22.2 for the mean obliquity and table 22.A.
pub(super) fn tilt(t: f64, arguments: &Arguments) -> Tilt {
    let values = [arguments.elongation, arguments.sun, arguments.moon, arguments.latitude, arguments.node];
    let (mut nutation, mut change) = (0.0, 0.0);
    for (multiples, longitude, obliquity) in NUTATION {
        let argument: f64 = multiples.iter().zip(values).map(|(multiple, value)| f64::from(*multiple) * value).sum();
        let (sin, cos) = libm::sincos(argument);
        nutation += longitude * sin;
        change += obliquity * cos;
    }
    let mean = angle(t, &[23.439_291_111, -0.013_004_167, -0.000_000_164, 0.000_000_503_6]);
    Tilt { nutation: arcseconds(nutation / 1e4), obliquity: mean + arcseconds(change / 1e4) }
}

/// Seconds of arc as radians.
pub(super) fn arcseconds(seconds: f64) -> f64 {
    (seconds / 3600.0).to_radians()
}

/// Apparent sidereal time at Greenwich, radians, at so many days of universal time.
///
/// **Source**: Meeus (1998), equation 12.4, and the equation of the equinoxes.
pub(super) fn sidereal(days: f64, tilt: &Tilt) -> f64 {
    let t = days / 36_525.0;
    // The whole turns of the days go first, so that no digits are lost on them.
    let turned = (days % 1.0) * 360.0 + days * 0.985_647_366_29;
    let degrees = 280.460_618_37 + turned + t * t * (0.000_387_933 - t / 38_710_000.0);
    (degrees % 360.0).to_radians() + tilt.nutation * libm::cos(tilt.obliquity)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_two_time_scales_join() {
        for year in [1600.0, 1750.0, 2000.0, 2030.0] {
            assert!((delta_t_s(year - 1e-9) - delta_t_s(year + 1e-9)).abs() < 1e-6, "{year}");
        }
        // Astronomical Almanac, from memory: 29.1 s in 1950, 63.8 s in 2000, 69.2 s in 2024. Tolerance as promised.
        for (year, seconds) in [(1950.0, 29.1), (2000.0, 63.8), (2024.0, 69.2)] {
            assert!((delta_t_s(year) - seconds).abs() < 2.0, "{year} {}", delta_t_s(year));
        }
    }

    /// Source: Meeus (1998), examples 12.a and 12.b (`sun_moon_published_examples.csv`, M3 to M5).
    /// Tolerance: 0.01 s of time.
    #[test]
    fn sidereal_time_is_as_published() {
        for (day_ms, mean_h, apparent_h) in [
            (0, 13.0 + 10.0 / 60.0 + 46.366_8 / 3600.0, Some(13.0 + 10.0 / 60.0 + 46.135_1 / 3600.0)),
            (69_660_000, 8.0 + 34.0 / 60.0 + 57.089_6 / 3600.0, None),
        ] {
            let days = days_universal(545_011_200_000 + day_ms);
            let t = centuries(days);
            let hours = |tilt: &Tilt| sidereal(days, tilt).to_degrees().rem_euclid(360.0) / 15.0;
            let level = Tilt { nutation: 0.0, obliquity: 0.0 };
            assert!((hours(&level) - mean_h).abs() < 0.01 / 3600.0, "{}", hours(&level));
            if let Some(apparent_h) = apparent_h {
                let apparent = hours(&tilt(t, &arguments(t)));
                assert!((apparent - apparent_h).abs() < 0.01 / 3600.0, "{apparent}");
            }
        }
    }
}
